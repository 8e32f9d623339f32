//! From tools and documents as written to the tools of a vessel.
//!
//! Imports `model`; must not judge whether a tool will do, only what is said of
//! it.

use crate::load::check::reading::{AttributeReader, Attributes, Unsaid, retire};
use crate::load::check::value::kept;
use crate::load::form::loose::{Single, Texts};
use crate::load::form::open::Attributed;
use crate::load::form::vessel::{
    CONDITIONS, ChangeForm, LARGEST_LOT, StatementForm, ToolForm, WHEREABOUTS, WhereForm,
};
use crate::load::read::fault::Fault;
use crate::load::read::spot::{Spot, filled};
use crate::model::vessel::{
    Change, Datum, Disputes, Reading, Split, State, Statement, Tool, Whereabouts,
};
use crate::model::vocabulary::{AttributeId, Class, KindId, Vocabulary};

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
    pub(crate) words: &'a Vocabulary,
    /// What plain figures leave unsaid.
    pub(crate) unsaid: &'a Unsaid,
    /// The condition of tools that do not say.
    pub(crate) condition: Option<State>,
}

impl ToolReader<'_> {
    /// A tool, or two where some of a lot are broken. A document without a
    /// mark takes the spare one.
    pub(crate) fn tools(
        &self,
        written: Attributed<ToolForm>,
        list: List,
        spare_mark: Option<String>,
        spot: &Spot<'_>,
    ) -> Option<(Tool, Option<Tool>)> {
        let Attributed { form, keys, attributes } = written;
        let mark = spot.must("mark", kept(form.mark).or(spare_mark), Fault::NoMark);
        let classes: &[Class] = match list {
            List::Kit => &Class::CARRIED,
            List::Documents => &[Class::Document],
        };
        spot.must("kind", filled(&form.kind), Fault::NoKind);
        let kinds = self.kinds(&form.kind, classes, spot);
        let kind = kinds.first().copied();
        let keys = [keys, &["state"]].concat();
        let reader = AttributeReader { words: self.words, unsaid: self.unsaid, keys: &keys };
        let mut attributes = match kinds.is_empty() {
            false => reader.attributes(attributes, &kinds, spot),
            true => Vec::new(),
        };
        let lost = take_lost(&mut attributes, self.words);
        let changes = form.changes.into_iter().flatten();
        let changes =
            spot.each("changes", changes, |at, form| self.change(form, &mut attributes, at));
        let lot = spot.count("count", &form.count, 1, LARGEST_LOT).unwrap_or(1);
        let broken = spot.count("broken", &form.broken, 0, lot).unwrap_or(0);
        let state = self.state(&form.condition, kind, spot);
        let whereabouts = whereabouts(form.location, &spot.key("where"));
        let acquired = spot.day("acquired", &form.acquired);
        let inspected = spot.day("inspected", &form.inspected);
        let expires = spot.day("expires", &form.expires);
        let mut conforms = spot.each("conforms", form.conforms.into_iter().flatten(), statement);
        // A new head is another tool: what was said of the old one is void.
        let renewed = |change: &&Change| self.words.changes.get(&change.what) == Some(&None);
        if let Some(day) = changes.iter().filter(renewed).map(|change| change.on).max() {
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
            disputes: Disputes::of_name(kinds),
            conforms,
            parts: marks(form.parts),
            fits: marks(form.fits),
            changes,
            evidence: kept(form.evidence),
            remark: kept(form.remark),
            part_of: None,
            place: spot.place(),
        };
        Some(split(tool, broken))
    }

    /// The kind, or each that it may be by an everyday word.
    fn kinds(&self, text: &Option<String>, classes: &[Class], spot: &Spot<'_>) -> Vec<KindId> {
        let wide = filled(text).and_then(|text| self.words.find_wide_kind(text));
        let fits = |kind: &&KindId| classes.contains(&self.words.kind(**kind).class);
        let several = wide.iter().flat_map(|wide| &wide.may_be).filter(fits).copied();
        match several.collect::<Vec<_>>() {
            several if several.is_empty() => {
                spot.kind("kind", text, classes, self.words).into_iter().collect()
            }
            several => several,
        }
    }

    /// The condition; a document that is there can be read.
    fn state(&self, text: &Option<String>, kind: Option<KindId>, spot: &Spot<'_>) -> State {
        let is_document = kind.is_some_and(|kind| self.words.kind(kind).class == Class::Document);
        let unsaid = if is_document { Some(State::Serviceable) } else { self.condition };
        spot.word("condition", text, &CONDITIONS).or(unsaid).unwrap_or(State::Unknown)
    }

    /// A change; the readings that it retires are taken away.
    fn change(
        &self,
        form: ChangeForm,
        attributes: &mut Attributes,
        spot: &Spot<'_>,
    ) -> Option<Change> {
        let word = change_word(&form.what, self.words, spot);
        spot.must("on", filled(&form.on), Fault::NoChangeDay);
        let on = spot.day("on", &form.on);
        let ((what, retired), on) = (word?, on?);
        retire(attributes, retired, on);
        Some(Change { what: what.to_owned(), on })
    }
}

fn whereabouts(written: Option<Single<WhereForm>>, spot: &Spot<'_>) -> Whereabouts {
    match written {
        None => Whereabouts::Aboard,
        Some(Single::Plain(text)) => {
            spot.word_of(&text, &WHEREABOUTS).map_or(Whereabouts::Aboard, |build| build())
        }
        Some(Single::Form(form)) => {
            let span = spot.span(&form.from, &form.until);
            let to = spot.must("lent to", kept(form.lent_to), Fault::NoBorrower);
            to.map_or(Whereabouts::Unknown, |to| Whereabouts::Lent { to, span })
        }
    }
}

fn statement(spot: &Spot<'_>, form: StatementForm) -> Option<Statement> {
    let to = spot.must("to", kept(form.to), Fault::NoStatementClause);
    spot.must("on", filled(&form.on), Fault::NoStatementDay);
    let on = spot.day("on", &form.on);
    Some(Statement { to: to?, on: on?, by: kept(form.by) })
}

/// A change as the vocabulary knows it, with the attributes that it retires
/// (`None` for all of them).
pub(crate) fn change_word<'v>(
    text: &Option<String>,
    words: &'v Vocabulary,
    spot: &Spot<'_>,
) -> Option<(&'v str, Option<&'v [AttributeId]>)> {
    let text = spot.must("what", filled(text), Fault::NoChangeWord)?;
    if let Some((what, retired)) = words.changes.get_key_value(&text.to_lowercase()) {
        return Some((what, retired.as_deref()));
    }
    let known = words.changes.keys().map(String::as_str);
    spot.key("what").wrong(Fault::UnknownChange).none_of(text, known).none()
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
pub(crate) fn refuse_lost(attributes: &mut Attributes, words: &Vocabulary, spot: &Spot<'_>) {
    if take_lost(attributes, words).is_some() {
        spot.key("state").wrong(Fault::LostHere).of(LOST).tell();
    }
}

/// Takes the broken ones out of a lot.
fn split(mut tool: Tool, broken: u32) -> (Tool, Option<Tool>) {
    if broken == 0 || broken >= tool.count {
        return (tool, None);
    }
    let rest = Tool { state: State::Broken, ..tool.part(Split::Broken, broken) };
    tool.count -= broken;
    (tool, Some(rest))
}

fn marks(written: Option<Texts>) -> Vec<String> {
    written.into_iter().flatten().filter_map(|mark| kept(Some(mark))).collect()
}
