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
mod completions;
pub mod demand;
mod evaluate;
mod judge;
mod repair;
mod request;
mod statements;
pub mod supply;
mod work;

pub use evaluate::validity;
pub use repair::apply::repaired;
pub use request::{Depth, Request, Terms};
pub use statements::{judged_vessel, lay_over};

use crate::measure::DaySpan;
use crate::model::check::{Check, Inverse, Inverses, Judgement, Notice, Why};
use crate::model::finding::{Asked, GoodUpTo, ReadyUntil, Verdict, WayToReady};
use crate::model::inspection::Inspection;
use crate::model::vessel::Vessel;
use completions::Part;
use evaluate::point::Point;
use judge::breakpoints::Subject;
use judge::editions::{self, Applicable, ApplicableEdition};
use judge::verdict::{self, Trip};
use judge::{clash, findings, good_up_to, ready_until};
use std::sync::Arc;
use work::Work;

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
    notices.extend(ahead.iter().map(|record| Notice::RecordAfterDeparture { on: record.on }));
    if terms.back.is_none() {
        notices.push(Notice::NoReturn);
    }
    let (judgements, settled) = judge_all(terms, &vessel, &editions, asked, &mut notices);
    let gaps = notices.iter().any(Notice::leaves_open);
    let floor = if gaps || judgements.is_empty() { Verdict::CannotTell } else { Verdict::Ready };
    // Where a word is not known a rule may bind in place of the house, so that
    // what the house says decides nothing.
    let unknown = notices.iter().any(|notice| matches!(notice, Notice::UnknownWords { .. }));
    let decides = |judgement: &&Judgement| !unknown || judgement.why != Why::Fallback;
    let mut deciding = judgements.iter().filter(decides).map(|judgement| judgement.verdict);
    // What all editions together come to is known where all of them decide.
    let together = settled.filter(|_| judgements.iter().all(|judgement| decides(&judgement)));
    let verdict = deciding.by_ref().fold(floor, Verdict::max).max(together.unwrap_or(floor));
    Check { vessel, asked, verdict, judgements, notices }
}

/// What one edition is judged by: the subject with what its trip came to.
struct Judged<'a> {
    subject: Subject<'a>,
    part: Part<'a>,
    trip: Trip<'a>,
}

/// Judges the vessel under every edition; with the verdict that all of them
/// together come to, where facts that are missing hang together.
fn judge_all(
    terms: &Terms<'_>,
    vessel: &Vessel,
    editions: &[ApplicableEdition<'_>],
    asked: Asked,
    notices: &mut Vec<Notice>,
) -> (Vec<Judgement>, Option<Verdict>) {
    let judged = |edition: &&ApplicableEdition<'_>| edition.profile.encoded;
    let mut trips: Vec<Judged<'_>> = Vec::new();
    let work = Work::share();
    for edition in editions.iter().filter(judged) {
        let by_name = edition.why.is_asked();
        let point = Point::of(terms.vocabulary, &edition.profile, vessel, asked.departure, by_name);
        let subject = Subject::over(point, edition.days);
        let trip = verdict::of_trip(&subject, &work);
        trips.push(Judged { subject, part: Part { point, days: edition.days }, trip });
    }
    let parts: Vec<Part<'_>> = trips.iter().map(|judged| judged.part).collect();
    let bounds: Vec<&Trip<'_>> = trips.iter().map(|judged| &judged.trip).collect();
    let settled = completions::settle(&parts, &bounds, &work);
    if let Some(settled) = &settled {
        let each = trips.iter_mut().enumerate();
        each.for_each(|(index, judged)| settled.carry_into(index, &mut judged.trip));
    }
    if settled.as_ref().is_some_and(|settled| !settled.exact) {
        notices.push(Notice::TooManyFacts);
    }
    let mut trips = trips.into_iter();
    let judgement = |edition: &ApplicableEdition<'_>| {
        let judged = if edition.profile.encoded { trips.next() } else { None };
        judge(terms, edition, judged, &work)
    };
    let judgements = editions.iter().map(judgement).collect();
    (judgements, settled.map(|settled| settled.verdict))
}

/// Judges the vessel under one edition.
fn judge(
    terms: &Terms<'_>,
    edition: &ApplicableEdition<'_>,
    judged: Option<Judged<'_>>,
    work: &Work,
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
        left_open: Vec::new(),
    };
    let Some(Judged { subject, trip, .. }) = judged else { return judgement };
    let Trip { worst, verdicts, evaluations, .. } = trip;
    let findings = findings::findings(&subject, &worst, edition.days.until, evaluations, work);
    let mut left_open = Vec::new();
    let mut open = |inverse, is_open| left_open.extend(Some(inverse).filter(|_| is_open));
    let work = Work::share();
    let ready_until =
        ready_until::ready_until(&subject, edition, (worst.verdict, &verdicts), &work);
    open(Inverse::ReadyUntil, work.ran_out());
    let inverses = (terms.depth != Depth::Findings).then(|| {
        let work = Work::share();
        let (good_up_to, stretches) = match terms.depth {
            Depth::Whole => good_up_to::good_up_to(&subject, &work),
            _ => (GoodUpTo::None, Vec::new()),
        };
        open(Inverse::GoodUpTo, work.ran_out());
        let work = Work::share();
        let clashes = clash::clashes(&subject, &worst, &work);
        open(Inverse::Clashes, work.ran_out());
        let work = Work::share();
        let way = repair::shortest(&subject, worst.verdict, &work);
        // A way that was found was tried; only that it is the shortest is not sure.
        open(Inverse::Way, way == WayToReady::None && work.ran_out());
        Inverses { good_up_to, stretches, clashes, way }
    });
    Judgement { verdict: worst.verdict, ready_until, findings, inverses, left_open, ..judgement }
}
