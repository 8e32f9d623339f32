//! Papers for the deck, and the way back from paper to data: the inspector's
//! sheet, the skipper's checklist, the empty inspection record and the empty
//! inventory.
//!
//! Imports `model`, `load` for the text of the vessel's file, and the words
//! beside it. Decides nothing: who is bound and what is proved was decided in
//! the engine; here it is ordered for a walk around the deck.

mod asks;
mod blank;
mod boxes;
mod digest;
mod inspector;
mod lapses;
mod look_for;
mod met;
mod record;
mod rows;
mod shared;
mod skipper;
mod yaml;

pub use blank::blank_vessel;
pub use digest::Digest;

use super::Subject;
use super::words::sheet as said;
use crate::measure::Length;
use crate::model::check::Check;

/// The digest of the papers of this check: of the vessel's file and of the
/// rules that judged it.
pub fn digest(subject: &Subject<'_>) -> Digest {
    let own = |file: &str| *file == *subject.check.vessel.place.file;
    let source = subject.sources.iter().find(|source| own(&source.file));
    let text = source.map_or("", |source| &*source.text);
    let rules = subject.check.judgements.iter().map(|judgement| &*judgement.profile);
    Digest::new(text, rules)
}

/// How far above the highest listed freeboard the vessel is to be judged once
/// more, for the rows of what is asked there.
pub const NEAR_ABOVE: Length = said::NEAR_ABOVE;

/// The sheet for the inspector, as one document of HTML. `above` is the same
/// vessel judged somewhat above its highest freeboard, where it has one.
pub fn for_inspector(subject: &Subject<'_>, above: Option<&Check>) -> String {
    inspector::page(subject, above, &digest(subject))
}

/// The checklist for the skipper, as one document of HTML. `measured` is the
/// same vessel judged by what was measured alone.
pub fn for_skipper(subject: &Subject<'_>, measured: &Check) -> String {
    skipper::page(subject, measured, &digest(subject))
}

/// The inspection record with its rows still empty, as YAML. `above` is as
/// for the inspector's sheet, so that the rows are the same.
pub fn empty_record(subject: &Subject<'_>, above: Option<&Check>) -> String {
    record::yaml(subject, above, &digest(subject))
}
