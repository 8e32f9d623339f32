//! From tools and documents as written to the tools of a vessel.
//!
//! Imports `model`; must not judge whether a tool will do, only what is said of
//! it.

use crate::load::check::reading::{AttributeReader, Attributes, Unsaid, WrittenAttributes, retire};
use crate::load::check::value::{choice, count, day, filled, kept, kind, missing, span};
use crate::load::form::loose::{Single, Texts};
use crate::load::form::vessel::CONDITIONS;
use crate::load::form::vessel::LARGEST_LOT;
use crate::load::form::vessel::WHEREABOUTS;
use crate::load::form::vessel::{ChangeForm, StatementForm, ToolForm, WhereForm};
use crate::load::read::problem::{Problem, Problems};
use crate::load::read::spot::Spot;
use crate::load::read::suggest::{did_you_mean, nearest};
use crate::model::vessel::{Change, Datum, Reading, State, Statement, Tool, Whereabouts};
use crate::model::vocabulary::{AttributeId, Class, KindId, Vocabulary};

/// The keys of a tool that are no attributes.
const FIXED: [&str; 18] = [
    "mark",
    "kind",
    "name",
    "count",
    "broken",
    "condition",
    "where",
    "stowed",
    "acquired",
    "inspected",
    "expires",
    "conforms",
    "parts",
    "fits",
    "changes",
    "evidence",
    "remark",
    "state",
];

/// Which list a tool stands in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum List {
    /// The kit.
    Kit,
    /// The documents.
    Documents,
}

/// Reads tools against a vocabulary.
pub(crate) struct ToolReader<'a> {
    /// The words.
    pub(crate) vocabulary: &'a Vocabulary,
    /// What plain figures leave unsaid.
    pub(crate) unsaid: &'a Unsaid,
    /// The condition of tools that do not say.
    pub(crate) condition: Option<State>,
    /// Where problems go.
    pub(crate) problems: &'a mut Problems,
}

impl ToolReader<'_> {
    /// A tool, or two where some of a lot are broken. A document without a
    /// mark takes the spare one.
    pub(crate) fn tools(
        &mut self,
        form: ToolForm,
        list: List,
        spare_mark: Option<String>,
        spot: &Spot<'_>,
    ) -> Option<(Tool, Option<Tool>)> {
        let mark = kept(form.mark).or(spare_mark);
        if mark.is_none() {
            let mend = "write a mark that is on the tool and on no other, like `LC-1`";
            missing(spot, "mark", self.problems, mend);
        }
        let kind = self.kind(form.kind.as_deref(), list, spot);
        let mut attributes = match kind {
            Some(kind) => self.attributes(form.attributes, kind, spot),
            None => Vec::new(),
        };
        let lost = take_lost(&mut attributes, self.vocabulary);
        let changes = self.changes(form.changes, &mut attributes, spot);
        let lot = self.number(form.count.as_deref(), "count", 1, LARGEST_LOT, spot).unwrap_or(1);
        let broken = self.number(form.broken.as_deref(), "broken", 0, lot, spot).unwrap_or(0);
        let state = self.state(form.condition.as_deref(), kind, spot);
        let whereabouts = self.whereabouts(form.location, spot);
        let (acquired, inspected, expires) = (
            self.day(form.acquired.as_deref(), "acquired", spot),
            self.day(form.inspected.as_deref(), "inspected", spot),
            self.day(form.expires.as_deref(), "expires", spot),
        );
        let mut conforms = self.statements(form.conforms, spot);
        // A new head is another tool: what was said of the old one is void.
        let renewed = |change: &Change| self.vocabulary.changes.get(&change.what) == Some(&None);
        if let Some(day) = changes.iter().filter(|c| renewed(c)).map(|c| c.on).max() {
            conforms.retain(|statement| statement.on > day);
        }
        let tool = Tool {
            mark: mark?,
            name: kept(form.name),
            kind: kind?,
            count: lot,
            attributes,
            state: if broken == lot { State::Broken } else { state },
            whereabouts: lost.unwrap_or(whereabouts),
            stowed: kept(form.stowed),
            acquired,
            inspected,
            expires,
            conforms,
            parts: marks(form.parts),
            fits: marks(form.fits),
            changes,
            evidence: kept(form.evidence),
            remark: kept(form.remark),
            place: spot.place(),
        };
        Some(split(tool, broken))
    }

    fn kind(&mut self, text: Option<&str>, list: List, spot: &Spot<'_>) -> Option<KindId> {
        let Some(text) = filled(text) else {
            missing(spot, "kind", self.problems, "write the kind, like `pliers`");
            return None;
        };
        let classes: &[Class] = match list {
            List::Kit => &Class::CARRIED,
            List::Documents => &[Class::Document],
        };
        kind(text, classes, self.vocabulary, &spot.key("kind"), self.problems)
    }

    fn attributes(
        &mut self,
        written: WrittenAttributes,
        kind: KindId,
        spot: &Spot<'_>,
    ) -> Attributes {
        AttributeReader { vocabulary: self.vocabulary, unsaid: self.unsaid, fixed: &FIXED }
            .attributes(written, Some(kind), spot, self.problems)
    }

    fn number(
        &mut self,
        text: Option<&str>,
        key: &str,
        least: u32,
        most: u32,
        spot: &Spot<'_>,
    ) -> Option<u32> {
        count(filled(text)?, least, most, &spot.key(key), self.problems)
    }

    fn day(
        &mut self,
        text: Option<&str>,
        key: &str,
        spot: &Spot<'_>,
    ) -> Option<crate::measure::Day> {
        day(text, &spot.key(key), self.problems)
    }

    /// The condition; a document that is there can be read.
    fn state(&mut self, text: Option<&str>, kind: Option<KindId>, spot: &Spot<'_>) -> State {
        let said = filled(text)
            .and_then(|text| choice(text, &CONDITIONS, &spot.key("condition"), self.problems));
        let is_document =
            kind.is_some_and(|kind| self.vocabulary.kind(kind).class == Class::Document);
        match said {
            Some(said) => said,
            None if is_document => State::Serviceable,
            None => self.condition.unwrap_or(State::Unknown),
        }
    }

    fn whereabouts(&mut self, written: Option<Single<WhereForm>>, spot: &Spot<'_>) -> Whereabouts {
        let spot = spot.key("where");
        match written {
            None => Whereabouts::Aboard,
            Some(Single::Plain(text)) => choice(&text, &WHEREABOUTS, &spot, self.problems)
                .map_or(Whereabouts::Aboard, |build| build()),
            Some(Single::Form(form)) => {
                let (from, until) = (form.from.as_deref(), form.until.as_deref());
                let span = span(from, until, &spot, self.problems);
                let to = kept(form.lent_to);
                if to.is_none() {
                    let mend = "write the vessel that has it";
                    missing(&spot, "lent to", self.problems, mend);
                }
                to.map_or(Whereabouts::Unknown, |to| Whereabouts::Lent { to, span })
            }
        }
    }

    fn statements(
        &mut self,
        written: Option<Vec<StatementForm>>,
        spot: &Spot<'_>,
    ) -> Vec<Statement> {
        let list = spot.key("conforms");
        let mut statements = Vec::new();
        for (index, form) in written.into_iter().flatten().enumerate() {
            let spot = list.entry(index);
            let to = kept(form.to);
            if to.is_none() {
                missing(&spot, "to", self.problems, "write the clause, like `\"Appendix F, A.1\"`");
            }
            if filled(form.on.as_deref()).is_none() {
                missing(&spot, "on", self.problems, "write the day of the statement");
            }
            let on = day(form.on.as_deref(), &spot.key("on"), self.problems);
            if let (Some(to), Some(on)) = (to, on) {
                statements.push(Statement { to, on, by: kept(form.by) });
            }
        }
        statements
    }

    /// The changes; the readings that they retire are taken away.
    fn changes(
        &mut self,
        written: Option<Vec<ChangeForm>>,
        attributes: &mut Attributes,
        spot: &Spot<'_>,
    ) -> Vec<Change> {
        let list = spot.key("changes");
        let mut changes = Vec::new();
        for (index, form) in written.into_iter().flatten().enumerate() {
            let spot = list.entry(index);
            let retired = change_word(form.what.as_deref(), self.vocabulary, &spot, self.problems);
            if filled(form.on.as_deref()).is_none() {
                missing(&spot, "on", self.problems, "write the day of the change");
            }
            let on = day(form.on.as_deref(), &spot.key("on"), self.problems);
            if let (Some((what, retired)), Some(on)) = (retired, on) {
                retire(attributes, retired, on);
                changes.push(Change { what: what.to_owned(), on });
            }
        }
        changes
    }
}

/// A change as the vocabulary knows it, with the attributes that it retires
/// (`None` for all of them).
pub(crate) fn change_word<'v>(
    text: Option<&str>,
    vocabulary: &'v Vocabulary,
    spot: &Spot<'_>,
    problems: &mut Problems,
) -> Option<(&'v str, Option<&'v [AttributeId]>)> {
    let Some(text) = filled(text) else {
        missing(spot, "what", problems, "write what was done, like `lengthened`");
        return None;
    };
    let folded = text.to_lowercase();
    if let Some((what, retired)) = vocabulary.changes.get_key_value(&folded) {
        return Some((what, retired.as_deref()));
    }
    let known: Vec<&str> = vocabulary.changes.keys().map(String::as_str).collect();
    problems.add(
        Problem::new(spot.key("what").place(), "no such change is known")
            .offending(text)
            .expected(crate::load::read::suggest::or_list(&known))
            .mend_if(did_you_mean(nearest(text, known.iter().copied()))),
    );
    None
}

/// The word of a paper's `state` that says that it is not aboard.
const LOST: &str = "lost";

/// Takes `state: lost` out of what is known of a paper, and says where that
/// leaves it: of several readings the latest speaks, and those of one day that
/// differ leave it open. Nothing where it is not lost.
pub(crate) fn take_lost(
    attributes: &mut Attributes,
    vocabulary: &Vocabulary,
) -> Option<Whereabouts> {
    let state = vocabulary.find_attribute("state")?;
    let (_, readings) = attributes.iter_mut().find(|(id, _)| *id == state)?;
    let is_lost = |reading: &Reading| matches!(&reading.datum, Datum::Word(word) if word == LOST);
    let last = readings.iter().map(|reading| reading.on).max()?;
    let latest: Vec<bool> = readings.iter().filter(|r| r.on == last).map(is_lost).collect();
    readings.retain(|reading| !is_lost(reading));
    attributes.retain(|(_, readings)| !readings.is_empty());
    match (latest.contains(&true), latest.contains(&false)) {
        (true, true) => Some(Whereabouts::Unknown),
        (true, false) => Some(Whereabouts::Missing),
        _ => None,
    }
}

/// Refuses `state: lost` where nothing can be lost: of what is sold, and of
/// what was put right.
pub(crate) fn refuse_lost(
    attributes: &mut Attributes,
    vocabulary: &Vocabulary,
    spot: &Spot<'_>,
    problems: &mut Problems,
) {
    if take_lost(attributes, vocabulary).is_some() {
        let problem = Problem::new(spot.key("state").place(), "what is lost has no place here");
        problems.add(problem.offending(LOST).expected("`aboard`, `posted` or `copy`"));
    }
}

/// Takes the broken ones out of a lot.
fn split(mut tool: Tool, broken: u32) -> (Tool, Option<Tool>) {
    if broken == 0 || broken >= tool.count {
        return (tool, None);
    }
    let mut rest = tool.clone();
    rest.mark.push_str(" (broken)");
    rest.count = broken;
    rest.state = State::Broken;
    tool.count -= broken;
    (tool, Some(rest))
}

fn marks(written: Option<Texts>) -> Vec<String> {
    written.into_iter().flatten().filter_map(|mark| kept(Some(mark))).collect()
}
