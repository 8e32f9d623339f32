//! The engine: one vessel checked on one trip. Records are laid over the
//! vessel's list; for every edition that applies, the breakpoints of its
//! freeboards and days are found, each point between them is evaluated, tools
//! are assigned, and the worst of it is the verdict; each inverse is another
//! use of the same three.
//!
//! Imports `model` and `measure` only. Pure: no files, no clock, no terminal,
//! no threads, no global state, no floating point.
#![deny(clippy::float_arithmetic)]

mod assign;
pub mod demand;
mod evaluate;
mod judge;
mod repair;
mod request;
mod statements;
pub mod supply;

pub use evaluate::validity;
pub use repair::apply::repaired;
pub use request::{Depth, Request, Terms};
pub use statements::{judged_vessel, lay_over};

use crate::measure::DaySpan;
use crate::model::check::{Check, Inverses, Judgement, Notice, Why};
use crate::model::finding::{Asked, GoodUpTo, ReadyUntil, Verdict, WayToReady};
use crate::model::inspection::Inspection;
use crate::model::vessel::Vessel;
use evaluate::point::Point;
use judge::breakpoints::Subject;
use judge::editions::{self, Applicable, ApplicableEdition};
use judge::verdict::{self, Trip};
use judge::{clash, findings, good_up_to};
use std::sync::Arc;

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
    let mut notices = statements::tell::of_records(&vessel, &known, terms.vocabulary);
    let vessel = statements::judged(vessel, &known, terms.vocabulary, terms.trust);
    let asked = Asked {
        departure: terms.departure,
        back: terms.back.unwrap_or(terms.departure).max(terms.departure),
        trust: terms.trust,
    };
    let days = DaySpan { from: Some(asked.departure), until: Some(asked.back) };
    notices.extend(statements::tell::of_vessel(&vessel, terms.vocabulary));
    let Applicable { editions, notices: of_rules } = editions::applicable(terms, &vessel, days);
    notices.splice(0..0, of_rules);
    let elsewhere = |record: &&Inspection| {
        record.freeboard.as_ref().is_some_and(|taken| taken.from != declared_from) && measured
    };
    let other_place = |record: &Inspection| Notice::FreeboardOtherPlace { on: record.on };
    notices.extend(known.iter().filter(elsewhere).map(other_place));
    notices.extend(ahead.iter().map(|record| Notice::RecordAfterDeparture { on: record.on }));
    if terms.back.is_none() {
        notices.push(Notice::NoReturn);
    }
    let judgements: Vec<_> =
        editions.iter().map(|edition| judge(terms, &vessel, edition, asked)).collect();
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

/// Judges the vessel under one edition.
fn judge(
    terms: &Terms<'_>,
    vessel: &Vessel,
    edition: &ApplicableEdition<'_>,
    asked: Asked,
) -> Judgement {
    let profile = &edition.profile;
    let judgement = Judgement {
        profile: Arc::clone(profile),
        why: edition.why.clone(),
        days: edition.days,
        verdict: Verdict::CannotTell,
        findings: Vec::new(),
        ready_until: ReadyUntil::None,
        inverses: Some(Inverses {
            good_up_to: GoodUpTo::None,
            stretches: Vec::new(),
            clashes: Vec::new(),
            way: WayToReady::None,
        }),
    };
    if !profile.encoded {
        return judgement;
    }
    let by_name = edition.why.is_asked();
    let point = Point::of(terms.vocabulary, profile, vessel, asked.departure, by_name);
    let subject = Subject::over(point, edition.days);
    let Trip { worst, verdicts, evaluations } = verdict::of_trip(&subject);
    let ready_until = verdict::ready_until(&subject, edition, &verdicts);
    let findings = findings::findings(&subject, &worst, edition.days.until, evaluations);
    let inverses = (terms.depth != Depth::Findings).then(|| {
        let (good_up_to, stretches) = match terms.depth {
            Depth::Whole => good_up_to::good_up_to(&subject),
            _ => (GoodUpTo::None, Vec::new()),
        };
        let clashes = clash::clashes(&subject, &worst);
        Inverses { good_up_to, stretches, clashes, way: repair::shortest(&subject, worst.verdict) }
    });
    Judgement { verdict: worst.verdict, ready_until, findings, inverses, ..judgement }
}
