//! The engine: fit, assignment, verdict and the four inverses.
//!
//! Imports `model` and `measure` only. Pure: no files, no clock, no
//! terminal, no threads, no global state, no floating point.
#![deny(clippy::float_arithmetic)]

mod assign;
mod bench;
mod clash;
mod conform;
mod deeds;
mod edges;
mod evaluate;
mod explain;
mod fit;
mod holders;
mod judge;
mod lay;
mod limit;
mod offer;
mod pose;
mod prune;
mod scene;
mod search;
mod seats;
mod select;
mod until;
mod upto;
pub mod validity;
mod way;

pub use conform::perform;
pub use lay::lay_over;

use crate::measure::{Day, DaySpan};
use crate::model::check::{Check, Notice};
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

/// How much of a check is worked out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Depth {
    /// Everything, the inverses too.
    #[default]
    Whole,
    /// The verdict, the findings and *ready until*, for many vessels at once.
    Findings,
}

/// Checks one vessel against every profile that binds it, or against those
/// that were asked for.
pub fn check(request: &Request<'_>) -> Check {
    let (known, ahead): (Vec<_>, Vec<_>) =
        request.inspections.iter().cloned().partition(|record| record.on <= request.departure);
    let laid = lay_over(request.vessel, &known, request.vocabulary);
    let vessel = lay::believe(&laid, request.trust);
    let asked = Asked {
        departure: request.departure,
        back: request.back.unwrap_or(request.departure).max(request.departure),
        trust: request.trust,
    };
    let days = DaySpan { from: Some(asked.departure), until: Some(asked.back) };
    let selection = select::select(request, &vessel, days);
    let mut notices = selection.notices;
    let elsewhere = |record: &&Inspection| {
        let declared = &request.vessel.freeboard;
        record.freeboard.as_ref().is_some_and(|taken| taken.from != declared.from)
            && !declared.stations.is_empty()
    };
    let other_place = |record: &Inspection| Notice::FreeboardOtherPlace { on: record.on };
    notices.extend(known.iter().filter(elsewhere).map(other_place));
    notices.extend(ahead.iter().map(|record| Notice::RecordAfterDeparture { on: record.on }));
    if request.back.is_none() {
        notices.push(Notice::NoReturn);
    }
    let judgements: Vec<_> = selection
        .courses
        .iter()
        .map(|course| judge::judge(request, &vessel, course, asked))
        .collect();
    let open =
        |notice: &Notice| matches!(notice, Notice::NoEdition { .. } | Notice::MayBind { .. });
    let gaps = notices.iter().any(open);
    let floor = if gaps || judgements.is_empty() { Verdict::CannotTell } else { Verdict::Ready };
    let verdict = judgements.iter().map(|j| j.verdict).fold(floor, Verdict::max);
    Check { vessel, asked, verdict, judgements, notices }
}
