//! The verdict of one vessel under one edition: the outcomes at its evaluation
//! points, the worst over its freeboards, what its readings agree on, the
//! worst of the days of the trip; and until when it stays ready.

use super::breakpoints::{self, Range, Subject};
use super::editions::ApplicableEdition;
use super::evaluation::{Evaluation, evaluate};
use crate::engine::evaluate::point::{Missing, Point};
use crate::measure::{Day, Length};
use crate::model::finding::{Outcome, ReadyUntil, Verdict};
use crate::model::profile::Profile;
use std::cmp::Ordering;

/// Where one requirement came out as it did.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct At {
    pub(crate) outcome: Outcome,
    pub(crate) freeboard: Result<Length, Missing>,
    pub(crate) day: Day,
    /// Readings of the freeboard differ on it.
    pub(crate) disputed: bool,
}

/// The outcomes over several points, by requirement, and the verdict.
#[derive(Debug, Clone)]
pub(crate) struct Combined {
    pub(crate) outcomes: Vec<Option<At>>,
    pub(crate) verdict: Verdict,
}

/// The whole trip.
pub(crate) struct Trip<'a> {
    /// The worst of it.
    pub(crate) worst: Combined,
    /// The verdict on each day that was looked at.
    pub(crate) verdicts: Vec<(Day, Verdict)>,
    /// Every point that was evaluated.
    pub(crate) evaluations: Vec<Evaluation<'a>>,
}

/// Is given a point that was evaluated.
type Keep<'k, 'a> = dyn FnMut(Evaluation<'a>) + 'k;

/// Judges every day of the trip.
pub(crate) fn of_trip<'a>(subject: &Subject<'a>) -> Trip<'a> {
    let mut evaluations = Vec::new();
    let mut keep = |evaluation| evaluations.push(evaluation);
    let days = &subject.days;
    let by_day: Vec<Combined> = days.iter().map(|day| kept_on(subject, *day, &mut keep)).collect();
    let verdicts = days.iter().zip(&by_day).map(|(day, of)| (*day, of.verdict)).collect();
    let nothing = Combined { outcomes: Vec::new(), verdict: Verdict::CannotTell };
    let worst = by_day.into_iter().reduce(worse_day).unwrap_or(nothing);
    Trip { worst, verdicts, evaluations }
}

/// The verdict over all freeboards of the vessel on one day.
pub(crate) fn on(subject: &Subject<'_>, day: Day) -> Verdict {
    kept_on(subject, day, &mut |_| ()).verdict
}

/// The last day with the required findings met on every day from departure
/// (or from the first day that the edition judges) to it; the assignment may
/// differ by day. The verdicts of the days that were judged are known.
pub(crate) fn ready_until(
    subject: &Subject<'_>,
    edition: &ApplicableEdition<'_>,
    judged: &[(Day, Verdict)],
) -> ReadyUntil {
    let verdict_on = |day: Day| {
        let known = judged.iter().find(|(judged, _)| *judged == day);
        known.map_or_else(|| governed_on(subject, edition, day), |(_, verdict)| *verdict)
    };
    let start = subject.point.day.max(subject.point.departure);
    if verdict_on(start) != Verdict::Ready {
        return ReadyUntil::None;
    }
    let editions: Vec<&Profile> = edition.of_rule.iter().map(|profile| profile.as_ref()).collect();
    breakpoints::days(subject.point.vessel, &editions, start)
        .into_iter()
        .find(|day| verdict_on(*day) != Verdict::Ready)
        .map_or(ReadyUntil::NoEnd, |day| ReadyUntil::Day(day.previous()))
}

/// The verdict on one day under whatever edition governs then.
fn governed_on(subject: &Subject<'_>, edition: &ApplicableEdition<'_>, day: Day) -> Verdict {
    edition.governing(day).map_or(Verdict::CannotTell, |profile| {
        on(&Subject::new(Point { profile, ..subject.point }, Vec::new()), day)
    })
}

fn kept_on<'a>(subject: &Subject<'a>, day: Day, keep: &mut Keep<'_, 'a>) -> Combined {
    let point = Point { day, ..subject.point };
    let stations = match &subject.freeboards {
        Err(missing) => return at_point(&Point { freeboard: Err(*missing), ..point }, keep),
        Ok(stations) => stations,
    };
    let mut over = |range: &Range| over_range(*range, &subject.between, &point, keep);
    // The readings of one station must agree, or nobody can tell.
    let mut at_stations = Vec::with_capacity(stations.len());
    for readings in stations {
        let readings: Vec<Combined> = readings.iter().map(&mut over).collect();
        at_stations.extend(readings.into_iter().reduce(agreeing));
    }
    at_stations.into_iter().reduce(worse).unwrap_or_else(|| at_point(&point, keep))
}

/// The outcomes at a single point.
fn at_point<'a>(point: &Point<'a>, keep: &mut Keep<'_, 'a>) -> Combined {
    let evaluation = evaluate(point);
    let at = |outcome| At { outcome, freeboard: point.freeboard, day: point.day, disputed: false };
    let outcomes = evaluation.outcomes.iter().map(|outcome| outcome.map(at)).collect();
    let combined = Combined { outcomes, verdict: evaluation.verdict };
    keep(evaluation);
    combined
}

/// One range of freeboards: the worst over every piece of it, shown at the
/// freeboard where it is worst.
fn over_range<'a>(
    (low, high): Range,
    breakpoints: &[Length],
    point: &Point<'a>,
    keep: &mut Keep<'_, 'a>,
) -> Combined {
    let mut at = |length| at_point(&Point { freeboard: Ok(length), ..*point }, keep);
    if low == high {
        return at(low);
    }
    let later = breakpoints.iter().copied().filter(|length| *length > low && *length <= high);
    let starts: Vec<_> = std::iter::once(low).chain(later).collect();
    let ends = starts.iter().skip(1).map(|next| next.just_below()).chain([high]);
    let pieces: Vec<_> = starts.iter().zip(ends).map(|(start, end)| (end, at(*start))).collect();
    let count = point.profile.requirements.len();
    let outcomes = (0..count).map(|index| worst_piece(index, &pieces)).collect();
    let verdict = pieces.iter().map(|(_, piece)| piece.verdict).max();
    Combined { outcomes, verdict: verdict.unwrap_or(Verdict::CannotTell) }
}

/// Where the finding is worst: at the top of the last piece in which it
/// binds, if it is as bad there as anywhere (a least length grows with the
/// freeboard), else at the bottom of the first piece where it is. Each piece
/// goes by its end.
fn worst_piece(index: usize, pieces: &[(Length, Combined)]) -> Option<At> {
    let binding = || pieces.iter().filter_map(|(end, of)| Some((*end, of.outcomes[index]?)));
    let worst = binding().map(|(_, at)| at.outcome).max()?;
    let (end, last) = binding().next_back()?;
    if last.outcome == worst {
        return Some(At { freeboard: Ok(end), ..last });
    }
    binding().map(|(_, at)| at).find(|at| at.outcome == worst)
}

impl Combined {
    /// Brings two together, requirement by requirement.
    fn with(
        self,
        other: Self,
        verdict: Verdict,
        each: impl Fn(Option<At>, Option<At>) -> Option<At>,
    ) -> Self {
        let pairs = self.outcomes.into_iter().zip(other.outcomes);
        Self { outcomes: pairs.map(|(a, b)| each(a, b)).collect(), verdict }
    }
}

/// The worse of the two; of two that are as bad the one at the higher
/// freeboard, where the least length is greatest.
fn worse_of(a: At, b: At) -> At {
    match a.outcome.cmp(&b.outcome) {
        Ordering::Greater => a,
        Ordering::Equal if a.freeboard.ok() > b.freeboard.ok() => a,
        Ordering::Equal | Ordering::Less => b,
    }
}

/// The worse of the two for every requirement.
fn worse(a: Combined, b: Combined) -> Combined {
    let verdict = a.verdict.max(b.verdict);
    a.with(b, verdict, |a, b| match (a, b) {
        (Some(a), Some(b)) => Some(worse_of(a, b)),
        (a, b) => a.or(b),
    })
}

/// What two readings of one freeboard agree on.
fn agreeing(a: Combined, b: Combined) -> Combined {
    let verdict = if a.verdict == b.verdict { a.verdict } else { Verdict::CannotTell };
    let disputed = |at| At { outcome: Outcome::CannotTell, disputed: true, ..at };
    a.with(b, verdict, |a, b| match (a, b) {
        (Some(a), Some(b)) if a.outcome == b.outcome => Some(worse_of(a, b)),
        (Some(a), Some(b)) => Some(disputed(worse_of(a, b))),
        // It binds at one reading only; if it is met there, no matter.
        (Some(at), None) | (None, Some(at)) if at.outcome == Outcome::Met => Some(at),
        (Some(at), None) | (None, Some(at)) => Some(disputed(at)),
        (None, None) => None,
    })
}

/// Over several days: the worst, shown on the first day that is as bad.
fn worse_day(first: Combined, later: Combined) -> Combined {
    let verdict = first.verdict.max(later.verdict);
    first.with(later, verdict, |a, b| match (a, b) {
        (Some(a), Some(b)) => Some(if b.outcome > a.outcome { b } else { a }),
        (a, b) => a.or(b),
    })
}
