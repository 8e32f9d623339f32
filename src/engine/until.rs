//! Ready until: the last day on which the kit still meets everything.

use super::bench::Bench;
use super::edges;
use super::scene::Missing;
use crate::measure::Day;
use crate::model::finding::{ReadyUntil, Verdict};
use crate::model::profile::Profile;

/// The last day with the required findings met on every day from departure
/// (or from the first day that the edition judges) to it; the assignment may
/// differ by day.
pub(super) fn ready_until(bench: &Bench<'_>) -> ReadyUntil {
    let start = bench.course.days.from.unwrap_or(bench.departure).max(bench.departure);
    if bench.verdict_on(start) != Verdict::Ready {
        return ReadyUntil::None;
    }
    all_edges(bench, start)
        .into_iter()
        .find(|day| bench.verdict_on(*day) != Verdict::Ready)
        .map_or(ReadyUntil::NoEnd, |day| ReadyUntil::Day(day.previous()))
}

fn all_edges(bench: &Bench<'_>, start: Day) -> Vec<Day> {
    let editions: Vec<&Profile> = bench.course.editions.iter().map(|p| p.as_ref()).collect();
    let scene = bench.scene(&bench.course.profile, Err(Missing::NotMeasured), start);
    edges::days(&scene, &editions, start)
}
