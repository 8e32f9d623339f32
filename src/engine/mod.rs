//! The engine: fit, assignment, verdict and the four inverses.
//!
//! Imports `model` and `measure` only. Pure: no files, no clock, no
//! terminal, no threads, no global state, no floating point.
#![deny(clippy::float_arithmetic)]

mod assign;
mod bench;
pub mod choices;
mod clash;
mod conform;
mod deeds;
mod edges;
mod evaluate;
mod explain;
mod fit;
mod groups;
mod holders;
mod judge;
mod lay;
mod limit;
mod notes;
mod offer;
mod pose;
mod prune;
mod readings;
mod scene;
mod search;
mod seats;
mod select;
pub mod supply;
mod until;
mod upto;
pub mod validity;
mod vouch;
pub mod wants;
mod way;

pub use conform::perform;
pub use lay::lay_over;

use crate::measure::{Day, DaySpan};
use crate::model::check::{Check, Judgement, Notice, Why};
use crate::model::finding::{Asked, Verdict};
use crate::model::profile::Profile;
use crate::model::vessel::{Inspection, Trust, Vessel};
use crate::model::vocabulary::Vocabulary;
use std::sync::Arc;

/// What to check.
#[derive(Debug, Clone, Copy)]
pub struct Request<'a> {
    /// The trade's words.
    pub vocabulary: &'a Vocabulary,
    /// Every profile that is known.
    pub profiles: &'a [Arc<Profile>],
    /// The profiles that were asked for; if none, every one that binds.
    pub asked: &'a [Arc<Profile>],
    /// The vessel as declared.
    pub vessel: &'a Vessel,
    /// Inspection records to lay over it, in any order.
    pub inspections: &'a [Inspection],
    /// The day of departure.
    pub departure: Day,
    /// The day of return; a trip of one day if it is not known.
    pub back: Option<Day>,
    /// Which figures are believed.
    pub trust: Trust,
    /// How much is worked out.
    pub depth: Depth,
}

/// What one vessel after another is checked by: a request without a vessel.
#[derive(Debug, Clone, Copy)]
pub struct Terms<'a> {
    /// The trade's words.
    pub vocabulary: &'a Vocabulary,
    /// Every profile that is known.
    pub profiles: &'a [Arc<Profile>],
    /// The profiles that were asked for; if none, every one that binds.
    pub asked: &'a [Arc<Profile>],
    /// The day of departure.
    pub departure: Day,
    /// The day of return; a trip of one day if it is not known.
    pub back: Option<Day>,
    /// Which figures are believed.
    pub trust: Trust,
    /// How much is worked out.
    pub depth: Depth,
}

/// How much of a check is worked out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Depth {
    /// Everything, the inverses too.
    #[default]
    Whole,
    /// The verdict, the findings and *ready until*, for many vessels at once.
    Findings,
    /// The same, with clashes and the shortest way to ready, but without the
    /// freeboards beyond the vessel's own.
    Way,
}

/// Checks one vessel against every profile that binds it, or against those
/// that were asked for.
pub fn check(request: &Request<'_>) -> Check {
    let terms = Terms {
        vocabulary: request.vocabulary,
        profiles: request.profiles,
        asked: request.asked,
        departure: request.departure,
        back: request.back,
        trust: request.trust,
        depth: request.depth,
    };
    check_own(request.vessel.clone(), request.inspections, &terms)
}

/// The same for a vessel that nobody else needs: it becomes the check's own,
/// which spares a copy of it where many are checked.
pub fn check_own(vessel: Vessel, inspections: &[Inspection], terms: &Terms<'_>) -> Check {
    let (known, ahead): (Vec<_>, Vec<_>) =
        inspections.iter().cloned().partition(|record| record.on <= terms.departure);
    let (declared_from, measured) = (vessel.freeboard.from, !vessel.freeboard.stations.is_empty());
    let vessel = as_judged(vessel, &known, terms.vocabulary, terms.trust);
    let asked = Asked {
        departure: terms.departure,
        back: terms.back.unwrap_or(terms.departure).max(terms.departure),
        trust: terms.trust,
    };
    let days = DaySpan { from: Some(asked.departure), until: Some(asked.back) };
    let selection = select::select(terms, &vessel, days);
    let mut notices = selection.notices;
    let elsewhere = |record: &&Inspection| {
        record.freeboard.as_ref().is_some_and(|taken| taken.from != declared_from) && measured
    };
    let other_place = |record: &Inspection| Notice::FreeboardOtherPlace { on: record.on };
    notices.extend(known.iter().filter(elsewhere).map(other_place));
    notices.extend(ahead.iter().map(|record| Notice::RecordAfterDeparture { on: record.on }));
    if terms.back.is_none() {
        notices.push(Notice::NoReturn);
    }
    let judgements: Vec<_> = selection
        .courses
        .iter()
        .map(|course| judge::judge(terms, &vessel, course, asked))
        .collect();
    let gaps = notices.iter().any(Notice::leaves_open);
    let floor = if gaps || judgements.is_empty() { Verdict::CannotTell } else { Verdict::Ready };
    // Where a word is not known a rule may bind in place of the house, so that
    // what the house says decides nothing.
    let unknown = notices.iter().any(|notice| matches!(notice, Notice::UnknownWords { .. }));
    let decides = |judgement: &&Judgement| !unknown || judgement.why != Why::Fallback;
    let deciding = judgements.iter().filter(decides);
    let verdict = deciding.map(|judgement| judgement.verdict).fold(floor, Verdict::max);
    Check { vessel, asked, verdict, judgements, notices }
}

/// The vessel as a check of that departure judges it: with the records laid
/// over that are not dated after it, and what is not believed left out.
pub fn judged_vessel(
    vessel: Vessel,
    inspections: &[Inspection],
    vocabulary: &Vocabulary,
    (departure, trust): (Day, Trust),
) -> Vessel {
    let known: Vec<_> = inspections.iter().filter(|r| r.on <= departure).cloned().collect();
    as_judged(vessel, &known, vocabulary, trust)
}

/// The vessel with the records laid over and what is not believed left out.
fn as_judged(
    vessel: Vessel,
    records: &[Inspection],
    vocabulary: &Vocabulary,
    trust: Trust,
) -> Vessel {
    let mut vessel = match records {
        [] => vessel,
        _ => lay_over(&vessel, records, vocabulary),
    };
    if trust != Trust::All {
        lay::leave_out_unmeasured(&mut vessel);
    }
    vessel
}
