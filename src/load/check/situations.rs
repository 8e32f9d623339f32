//! From situations as written to situations with their choices, in which
//! techniques are named by index.
//!
//! Imports `model`; whether the situations of a file fit together is judged
//! in `judge_practice`.

use crate::load::check::facts::pattern;
use crate::load::check::lines::{Desk, ids_of};
use crate::load::check::value::filled;
use crate::load::form::techniques::{SituationForm, TechniquesFile};
use crate::load::read::problem::Problem;
use crate::load::read::spot::Spot;
use crate::model::technique::{Fact, Situation};

/// What stands between two techniques of one choice.
const THEN: &str = ", then ";

/// What situations name.
pub(crate) struct Known<'a> {
    /// The facts.
    pub(crate) facts: &'a [Fact],
    /// The ids of the techniques.
    pub(crate) techniques: &'a [String],
}

/// The situations, and what goes along with them.
pub(crate) fn situations(
    file: &TechniquesFile,
    known: &Known<'_>,
    top: &Spot<'_>,
    desk: &mut Desk<'_>,
) -> (Vec<Situation>, Vec<Situation>) {
    let own = top.key("situations");
    let along = top.key("goes along");
    let forms = desk.entries(file.situations.as_deref(), &own);
    let others = desk.entries(file.goes_along.as_deref(), &along);
    let ids = ids_of(forms.iter().map(|form| form.id.as_deref()));
    let mut reader = Reader { known, ids: &ids, seen: Vec::new() };
    let mut situations = Vec::new();
    for (index, form) in forms.iter().enumerate() {
        situations.push(reader.situation(form, &own.entry(index), desk));
    }
    if forms.is_empty() {
        let mend = "write each with `when` and its choices";
        desk.problems.add_at_key(Problem::new(own.place(), "no situation is written").mend(mend));
    }
    let mut beside = Vec::new();
    for (index, form) in others.iter().enumerate() {
        let here = along.entry(index);
        beside.push(reader.situation(form, &here, desk));
        if form.goes_before.is_some() {
            let place = here.key("goes before").place();
            desk.problems.add_at_key(
                Problem::new(place, "`goes before` has no place here")
                    .expected("nothing, since this goes along with whatever situation fits")
                    .mend("take the line away"),
            );
        }
    }
    (situations, beside)
}

struct Reader<'a> {
    known: &'a Known<'a>,
    /// The ids of the situations, what goes along left out.
    ids: &'a [String],
    /// The ids that were read so far.
    seen: Vec<String>,
}

impl Reader<'_> {
    fn situation(
        &mut self,
        form: &SituationForm,
        spot: &Spot<'_>,
        desk: &mut Desk<'_>,
    ) -> Situation {
        let id = desk.id(form.id.as_deref(), spot, "id");
        self.seen.push(id.clone());
        desk.refuse_twin(&self.seen, "situations", &spot.key("id"));
        let title = desk.title(form.title.as_ref(), spot, "title", "write what it is");
        let when = form.when.as_ref();
        let when = when.map(|when| pattern(when, self.known.facts, &spot.key("when"), desk));
        if when.is_none() {
            desk.missing(spot, "when", "write which cases it is");
        }
        let goes_before = match form.goes_before.as_ref() {
            // What goes along has no ids of its own here; the line is refused.
            Some(names) if self.seen.len() <= self.ids.len() => {
                desk.all_named(Some(names), self.ids, "situation", &spot.key("goes before"))
            }
            _ => Vec::new(),
        };
        Situation {
            id,
            title: title.unwrap_or_default(),
            when: when.unwrap_or_default(),
            choices: self.choices(form, spot, desk),
            goes_before,
            reading: desk.remark(form.reading.as_ref(), &spot.key("reading")),
            place: spot.place(),
        }
    }

    fn choices(
        &self,
        form: &SituationForm,
        above: &Spot<'_>,
        desk: &mut Desk<'_>,
    ) -> Vec<Vec<usize>> {
        let list = above.key("choices");
        let written = desk.entries(form.choices.as_deref(), &list);
        if written.is_empty() {
            desk.missing(above, "choices", "write techniques, from the best to the last");
        }
        let mut choices = Vec::new();
        for (index, text) in written.iter().enumerate() {
            let here = list.entry(index);
            let Some(choice) = self.choice(text, &here, desk) else { continue };
            if choices.contains(&choice) {
                desk.add(
                    Problem::new(here.place(), "this choice stands here twice")
                        .offending(text)
                        .expected("each choice once, from the best to the last")
                        .mend("take one of them away"),
                );
            }
            choices.push(choice);
        }
        choices
    }

    /// `dipnet, then cut-free-on-deck`.
    fn choice(&self, text: &str, spot: &Spot<'_>, desk: &mut Desk<'_>) -> Option<Vec<usize>> {
        // In a list in brackets the comma would end the entry.
        if text.trim_start().starts_with("then ") {
            desk.add(
                Problem::new(spot.place(), "a choice cannot begin with `then`")
                    .offending(text)
                    .expected("a technique, or several like `dipnet, then cut-free-on-deck`")
                    .mend("put the whole choice in quotation marks, or on a line of its own"),
            );
            return None;
        }
        let mut choice = Vec::new();
        for name in text.split(THEN) {
            if filled(Some(name)).is_none() {
                let what = "a technique is missing in this choice";
                desk.add(Problem::new(spot.place(), what).offending(text));
                return None;
            }
            let found = desk.named(name, self.known.techniques, "technique", spot)?;
            if choice.contains(&found) {
                desk.add(
                    Problem::new(spot.place(), "a technique stands in this choice twice")
                        .offending(text)
                        .expected("each technique once in a choice"),
                );
                return None;
            }
            choice.push(found);
        }
        Some(choice)
    }
}
