//! From situations as written to situations with their choices, in which
//! techniques are named by index.
//!
//! Imports `model`; whether the situations of a file fit together is judged
//! in `practice`.

use crate::load::check::facts::when;
use crate::load::check::lines::ids_of;
use crate::load::form::techniques::{SituationForm, TechniquesFile};
use crate::load::read::spot::{Spot, said};
use crate::model::technique::{Fact, Situation};

/// What stands between two techniques of one choice.
const THEN: &str = ", then ";

/// What situations name.
pub(crate) struct Known<'a> {
    /// The facts.
    pub(crate) facts: &'a [Fact],
    /// The ids of the techniques.
    pub(crate) techniques: &'a [String],
    /// The governing language.
    pub(crate) language: &'a str,
}

/// The situations, and what goes along with them.
pub(crate) fn situations(
    file: &TechniquesFile,
    known: &Known<'_>,
    top: &Spot<'_>,
) -> (Vec<Situation>, Vec<Situation>) {
    let ids = ids_of(file.situations.iter().flatten().map(|form| &form.id));
    let mut seen = Vec::new();
    let own = top.listed("situations", file.situations.as_deref(), |at, form| {
        let mut read = situation(form, known, &mut seen, at);
        let before = form.goes_before.as_deref();
        read.goes_before = at.all_named("goes before", before, &ids, "situation");
        Some(read)
    });
    if own.is_empty() {
        let wrong = top.wrong_key("situations", "no situation is written");
        wrong.mend("write each with `when` and its choices").tell();
    }
    let along = top.listed("goes along", file.goes_along.as_deref(), |at, form| {
        if form.goes_before.is_some() {
            at.wrong_key("goes before", "`goes before` has no place here")
                .expected("nothing, since this goes along with whatever situation fits")
                .mend("take the line away")
                .tell();
        }
        Some(situation(form, known, &mut seen, at))
    });
    (own, along)
}

/// A situation, without what it goes before.
fn situation(
    form: &SituationForm,
    known: &Known<'_>,
    seen: &mut Vec<String>,
    spot: &Spot<'_>,
) -> Situation {
    let id = spot.own_id(&form.id, seen, "situations");
    let title = spot.title("title", &form.title, known.language, "write what it is");
    let when = when(&form.when, known.facts, spot, "write which cases it is");
    Situation {
        id,
        title: title.unwrap_or_default(),
        when: when.unwrap_or_default(),
        choices: choices(form, known, spot),
        goes_before: Vec::new(),
        reading: spot.remark("reading", &form.reading, known.language),
        place: spot.place(),
    }
}

fn choices(form: &SituationForm, known: &Known<'_>, spot: &Spot<'_>) -> Vec<Vec<usize>> {
    let written = form.choices.as_deref();
    if written.is_none_or(<[String]>::is_empty) {
        spot.missing("choices", "write techniques, from the best to the last");
    }
    let mut choices = Vec::new();
    spot.listed("choices", written, |at, text| {
        let choice = choice(text, known.techniques, at)?;
        if choices.contains(&choice) {
            at.wrong("this choice stands here twice")
                .of(text)
                .expected("each choice once, from the best to the last")
                .mend("take one of them away")
                .tell();
        }
        choices.push(choice);
        Some(())
    });
    choices
}

/// `dipnet, then cut-free-on-deck`.
fn choice(text: &str, techniques: &[String], spot: &Spot<'_>) -> Option<Vec<usize>> {
    // In a list in brackets the comma would end the entry.
    if text.trim_start().starts_with("then ") {
        return spot
            .wrong("a choice cannot begin with `then`")
            .of(text)
            .expected("a technique, or several like `dipnet, then cut-free-on-deck`")
            .mend("put the whole choice in quotation marks, or on a line of its own")
            .none();
    }
    let mut choice = Vec::new();
    for name in text.split(THEN) {
        if said(name).is_none() {
            return spot.wrong("a technique is missing in this choice").of(text).none();
        }
        let found = spot.named(name, techniques, "technique")?;
        if choice.contains(&found) {
            let wrong = spot.wrong("a technique stands in this choice twice").of(text);
            return wrong.expected("each technique once in a choice").none();
        }
        choice.push(found);
    }
    Some(choice)
}
