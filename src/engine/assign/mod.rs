//! Assignment: which tool serves which requirement, the best one found.
//! Demands that cannot disturb each other are filled one by one; the search
//! over those that can is in `search`.

mod bound;
pub(crate) mod candidates;
pub(crate) mod contest;
pub(crate) mod groups;
mod pruning;
pub(crate) mod search;
pub(crate) mod slots;

use super::work::Work;
use groups::Groups;
use search::{Forced, Search, Stopped};
use slots::{Assignment, Problem, Score, Slot, ToolDemand, Use, Worth};

/// Finds the best assignment: most required demands, then most recommended,
/// then the lowest price, then the first in order.
pub(crate) fn assign(problem: &Problem, work: &Work) -> Assignment {
    assign_from(problem, &problem.capacity, work)
}

/// The same with so many of each tool.
pub(crate) fn assign_from(problem: &Problem, capacity: &[u32], work: &Work) -> Assignment {
    let left = pruning::capacities(problem, capacity);
    let groups = Groups::of(problem);
    let mut assignment =
        Assignment { uses: vec![None; problem.demands.len()], ..Assignment::default() };
    for demand in groups.alone() {
        fill_alone(problem, &left, demand, &mut assignment);
    }
    let mut search = None;
    for group in groups.together() {
        let search =
            search.get_or_insert_with(|| Search::new(problem, capacity, left.clone(), work));
        search.solve(&group, &mut assignment);
    }
    assignment
}

/// Sets of demands of these groups that compete for too few tools as equals: each is met in
/// one assignment that meets as much as any other, and is not in another. How
/// large a tool is chooses among tools, not among demands.
pub(crate) fn ties(
    problem: &Problem,
    best: &Assignment,
    groups: &[Vec<usize>],
    work: &Work,
) -> Result<Vec<Vec<usize>>, Stopped> {
    let mut search = None;
    let mut ties = Vec::new();
    for group in groups {
        let mut wanted: Vec<usize> = group.clone();
        wanted.retain(|demand| problem.demands[*demand].worth.is_wanted());
        let met = |demand: &usize| best.uses[*demand].is_some();
        if wanted.iter().all(met) {
            continue;
        }
        let search = search.get_or_insert_with(|| searched(problem, work));
        let most = met_by(search.score_with(group, Forced::Nothing)?);
        let mut tied = Vec::new();
        // Where none that is not met could be, none that is could fail to be.
        wanted.sort_by_key(|demand| met(demand));
        for demand in wanted {
            if met(&demand) && tied.is_empty() {
                break;
            }
            let otherwise = if met(&demand) { Forced::NotMet(demand) } else { Forced::Met(demand) };
            if met_by(search.score_with(group, otherwise)?) == most {
                tied.push(demand);
            }
        }
        if !tied.is_empty() {
            tied.sort_unstable();
            ties.push(tied);
        }
    }
    Ok(ties)
}

/// How many required and recommended demands are met.
fn met_by(score: Option<Score>) -> Option<(u32, u32)> {
    score.map(|score| (score.required, score.recommended))
}

/// Whether a demand could be met if nothing else mattered.
pub(crate) fn can_be_met(problem: &Problem, demand: usize, work: &Work) -> bool {
    let group = Groups::of(problem).together().find(|group| group.contains(&demand));
    match group {
        Some(group) => searched(problem, work).score_with(&group, Forced::Met(demand)) != Ok(None),
        None => cheapest(&problem.demands[demand], &problem.capacity).is_some(),
    }
}

/// Whether every required demand can be met at once.
pub(crate) fn can_all_be_met(problem: &Problem, work: &Work) -> Result<bool, Stopped> {
    let groups = Groups::of(problem);
    let wanted = |demand: &usize| problem.demands[*demand].worth == Worth::Required;
    let is_met = |demand: usize| cheapest(&problem.demands[demand], &problem.capacity).is_some();
    if !groups.alone().filter(wanted).all(is_met) {
        return Ok(false);
    }
    for group in groups.together().filter(|group| group.iter().any(wanted)) {
        if searched(problem, work).score_with(&group, Forced::All)?.is_none() {
            return Ok(false);
        }
    }
    Ok(true)
}

fn searched<'p>(problem: &'p Problem, work: &'p Work) -> Search<'p> {
    let left = pruning::capacities(problem, &problem.capacity);
    Search::new(problem, &problem.capacity, left, work)
}

/// Fills a demand whose tools are wanted nowhere else: each of its types on its
/// own, the cheapest first, among equals the first in order.
fn fill_alone(problem: &Problem, left: &[u32], index: usize, assignment: &mut Assignment) {
    let demand = &problem.demands[index];
    let Some((uses, price)) = cheapest(demand, left) else { return };
    assignment.uses[index] = Some(uses);
    assignment.score.add(Score::of(demand.worth, price));
}

fn cheapest(demand: &ToolDemand, left: &[u32]) -> Option<(Vec<Use>, u128)> {
    let mut filled: Vec<(u128, usize)> = Vec::with_capacity(demand.types.len());
    for (of_type, slots) in demand.types.iter().enumerate() {
        let prices = slots.iter().map(|slot| fill(slot, left, |_| ()));
        if let Some(price) = prices.sum::<Option<u128>>() {
            filled.push((price, of_type));
        }
    }
    if filled.len() < demand.least {
        return None;
    }
    // A stable sort: of types at one price the first goes before.
    filled.sort_by_key(|(price, _)| *price);
    filled.truncate(demand.least);
    filled.sort_by_key(|(_, of_type)| *of_type);
    let mut uses = Vec::new();
    for (_, of_type) in &filled {
        for (index, slot) in demand.types[*of_type].iter().enumerate() {
            let first = uses.len();
            fill(slot, left, |tool| {
                uses.push(Use { tool, of_type: *of_type, slot: index, through: None });
            });
            in_order(&mut uses[first..], slot);
        }
    }
    Some((uses, filled.iter().map(|(price, _)| price).sum()))
}

/// Takes as many tools as are asked, the cheapest first, and gives their
/// price; none if there are too few.
fn fill(slot: &Slot, left: &[u32], mut take: impl FnMut(usize)) -> Option<u128> {
    let (mut missing, mut price) = (slot.count, 0);
    if let [only] = slot.candidates.as_slice() {
        let count = missing.min(left[only.tool]);
        (0..count).for_each(|_| take(only.tool));
        return (count == missing).then_some(u128::from(count) * only.price);
    }
    let mut candidates: Vec<_> = slot.candidates.iter().collect();
    candidates.sort_by_key(|candidate| candidate.price);
    for candidate in candidates {
        let count = missing.min(left[candidate.tool]);
        (0..count).for_each(|_| take(candidate.tool));
        price += u128::from(count) * candidate.price;
        missing -= count;
    }
    (missing == 0).then_some(price)
}

/// The uses in the order of the candidates.
fn in_order(uses: &mut [Use], slot: &Slot) {
    if uses.len() > 1 {
        uses.sort_by_key(|used| slot.candidates.iter().position(|c| c.tool == used.tool));
    }
}

#[cfg(test)]
mod tests;

#[cfg(test)]
mod brute;

#[cfg(test)]
#[path = "bounded_tests.rs"]
mod bounded;
