//! Ready until: the last day on which the kit still meets everything.

use super::bench::Bench;
use super::edges;
use crate::measure::Day;
use crate::model::finding::{ReadyUntil, Verdict};
use crate::model::profile::Profile;

/// The last day with the required findings met on every day from departure
/// (or from the first day that the edition judges) to it; the assignment may
/// differ by day. The verdicts of the days that were judged are known.
pub(super) fn ready_until(bench: &Bench<'_>, judged: &[(Day, Verdict)]) -> ReadyUntil {
    let known = |day: Day| judged.iter().find(|(judged, _)| *judged == day);
    let verdict_on = |day| known(day).map_or_else(|| bench.verdict_on(day), |(_, v)| *v);
    let start = bench.course.days.from.unwrap_or(bench.departure).max(bench.departure);
    if verdict_on(start) != Verdict::Ready {
        return ReadyUntil::None;
    }
    let editions: Vec<&Profile> = bench.course.editions.iter().map(|p| p.as_ref()).collect();
    edges::days(bench.vessel, &editions, start)
        .into_iter()
        .find(|day| verdict_on(*day) != Verdict::Ready)
        .map_or(ReadyUntil::NoEnd, |day| ReadyUntil::Day(day.previous()))
}
