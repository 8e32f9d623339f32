//! What lasts longest: of the assignments that meet as much, the one whose
//! tools lapse latest.

use super::evaluation::Evaluation;
use crate::engine::assign::assign_from;
use crate::engine::assign::slots::{Assignment, Problem, Slot};
use crate::engine::evaluate::fit;
use crate::engine::work::Work;
use crate::measure::Day;

/// The strict assignment that, among those that meet as much, keeps its
/// first lapse latest: tools that lapse early are left out as far as they
/// can be.
pub(crate) fn latest_lapse(at: &Evaluation<'_>, work: &Work) -> Assignment {
    let point = &at.point;
    let first = at.strict.clone();
    let lapses: Vec<Option<Day>> = point
        .vessel
        .kit
        .iter()
        .map(|tool| {
            let intervals = point.profile.requirements.iter().filter_map(|r| r.inspection);
            fit::serves_through(
                tool,
                intervals.min_by_key(|i| tool.inspected.map(|d| d.through(*i))),
                point.vocabulary,
            )
        })
        .collect();
    let mut days: Vec<Day> = lapses.iter().flatten().copied().collect();
    days.sort_unstable();
    days.dedup();
    if days.is_empty() {
        return first;
    }
    let problem = &at.problem;
    let as_good = |assignment: &Assignment| {
        assignment.uses.iter().map(Option::is_some).eq(first.uses.iter().map(Option::is_some))
    };
    let enough = |day: &Day| is_enough(problem, &first, &without(problem, &lapses, *day));
    let (mut low, mut high, mut best) = (0, days.partition_point(enough), first.clone());
    while low < high {
        let middle = low.midpoint(high);
        let assignment = assign_from(problem, &without(problem, &lapses, days[middle]), work);
        if as_good(&assignment) {
            best = assignment;
            low = middle + 1;
        } else {
            high = middle;
        }
    }
    best
}

/// Whether each demand that is met has enough of so many tools, whatever the
/// others take; where it has not, the assignment cannot be as good.
fn is_enough(problem: &Problem, assignment: &Assignment, capacity: &[u32]) -> bool {
    let left = |slot: &Slot| {
        let tools = slot.candidates.iter().map(|c| u64::from(capacity[c.tool]));
        tools.sum::<u64>() >= u64::from(slot.count)
    };
    problem.demands.iter().zip(&assignment.uses).all(|(demand, uses)| {
        let wants_all = demand.links.is_empty() && demand.least == demand.types.len();
        uses.is_none() || !wants_all || demand.types.iter().flatten().all(left)
    })
}

/// How many of each tool there are without those that serve no longer than
/// the day.
fn without(problem: &Problem, lapses: &[Option<Day>], day: Day) -> Vec<u32> {
    let mut capacity = problem.capacity.clone();
    for (left, lapse) in capacity.iter_mut().zip(lapses) {
        if lapse.is_some_and(|lapse| lapse <= day) {
            *left = 0;
        }
    }
    capacity
}
