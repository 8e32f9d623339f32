//! Ready until: the last day with the required findings met on every day from
//! departure to it.

use super::breakpoints;
use super::editions::ApplicableEdition;
use super::verdict::{self, Look};
use crate::engine::completions::{self, Part};
use crate::engine::evaluate::point::Point;
use crate::engine::judge::breakpoints::Subject;
use crate::engine::work::Work;
use crate::measure::{Day, DaySpan};
use crate::model::finding::{ReadyUntil, Verdict};
use crate::model::profile::Profile;

/// The last day with the required findings met on every day from departure
/// (or from the first day that the edition judges) to it; the assignment may
/// differ by day. What the trip came to, and the bounds of the days that were
/// judged, are known.
pub(crate) fn ready_until(
    subject: &Subject<'_>,
    edition: &ApplicableEdition<'_>,
    (trip, judged): (Verdict, &[(Day, Verdict)]),
    work: &Work,
) -> ReadyUntil {
    let mut look = Look::new(work);
    // A trip of one day came to what that day did, and one that is ready is so on
    // each of its days.
    let settles_days = judged.len() == 1 || trip == Verdict::Ready;
    let known = |day: Day| {
        let (_, bound) = judged.iter().find(|(judged, _)| *judged == day)?;
        if settles_days { Some(trip) } else { Some(*bound).filter(|it| *it != Verdict::CannotTell) }
    };
    let mut ready_on = |day: Day| {
        let verdict = match (known(day), edition.governing(day)) {
            (Some(verdict), _) => verdict,
            (None, Some(profile)) => on(Point { profile, ..subject.point }, day, &mut look),
            (None, None) => Verdict::CannotTell,
        };
        verdict == Verdict::Ready
    };
    let start = subject.point.day.max(subject.point.departure);
    if !ready_on(start) {
        return ReadyUntil::None;
    }
    let editions: Vec<&Profile> = edition.of_rule.iter().map(|profile| profile.as_ref()).collect();
    breakpoints::days(subject.point.vessel, &editions, start)
        .into_iter()
        .find(|day| !ready_on(*day))
        .map_or(ReadyUntil::NoEnd, |day| ReadyUntil::Day(day.previous()))
}

/// The verdict on one day, over all freeboards of the vessel.
pub(crate) fn on<'a>(point: Point<'a>, day: Day, look: &mut Look<'_, 'a>) -> Verdict {
    let part = Part { point, days: DaySpan { from: Some(day), until: Some(day) } };
    let subject = Subject::over(point, part.days);
    completions::verdict(part, &verdict::on_next(&subject, day, look), look.work)
}
