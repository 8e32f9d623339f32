//! Leaves out tools that cannot matter to an assignment, so that a large
//! kit costs no more to assign than the requirements ask.

use super::slots::{Problem, Slot, Tools, Worth};

/// Where a tool is a candidate, and at which price.
#[derive(Default, Clone)]
struct Standing {
    class: Class,
    prices: Vec<u128>,
    /// Whether it pays once for what other tools may use too.
    shares_price: bool,
}

/// Tools of one class can stand in for each other wherever they serve.
#[derive(Default, Clone, PartialEq, Eq, PartialOrd, Ord)]
struct Class {
    slots: Vec<(usize, usize, usize)>,
    links: Vec<(usize, usize)>,
    named: Vec<usize>,
}

/// So few tools are tried all in less time than it takes to compare them.
const FEW_TOOLS: usize = 16;

/// The capacities with every tool set to none that has, in its own class,
/// at least as many tools before it as all the demands of the class ask
/// together. By exchange, an assignment that uses it can use one of those
/// instead at no higher price.
pub(crate) fn capacities(problem: &Problem, capacity: &[u32]) -> Vec<u32> {
    if capacity.len() < FEW_TOOLS || !is_crowded(problem) {
        return capacity.to_vec();
    }
    without_idle(problem, capacity)
}

/// The same, however few tools there are.
fn without_idle(problem: &Problem, capacity: &[u32]) -> Vec<u32> {
    let mut capacity = capacity.to_vec();
    let standings = standings(problem, &capacity);
    let serves = |tool: &usize| {
        let standing = &standings[*tool];
        let wanted = !standing.class.slots.is_empty() && !standing.shares_price;
        wanted && capacity[*tool] > 0 && problem.parts[*tool].is_empty()
    };
    let mut tools: Vec<usize> = (0..capacity.len()).filter(serves).collect();
    // Stable: within a class they stay in the order of the file.
    tools.sort_by(|a, b| standings[*a].class.cmp(&standings[*b].class));
    for class in tools.chunk_by(|a, b| standings[*a].class == standings[*b].class) {
        let demand = demand(problem, &standings[class[0]]);
        if class.len() <= demand {
            continue;
        }
        for tool in class {
            let before = class
                .iter()
                .filter(|other| *other != tool && capacity[**other] > 0)
                .filter(|other| goes_before(&standings[**other], &standings[*tool], *other < tool))
                .take(demand)
                .count();
            if before >= demand {
                capacity[*tool] = 0;
            }
        }
    }
    capacity
}

/// Whether any slot has more candidates than it asks tools, and two: where
/// none has, no tool can be left out.
fn is_crowded(problem: &Problem) -> bool {
    let crowded = |slot: &Slot| slot.candidates.len() as u64 > u64::from(slot.count) + 1;
    problem.demands.iter().flat_map(|demand| demand.types.iter().flatten()).any(crowded)
}

fn standings(problem: &Problem, capacity: &[u32]) -> Vec<Standing> {
    let mut standings = vec![Standing::default(); capacity.len()];
    let mut paid_by_others = Vec::new();
    for (index, demand) in problem.demands.iter().enumerate() {
        if demand.worth == Worth::LeftOut {
            continue;
        }
        for (of_type, slots) in demand.types.iter().enumerate() {
            for (at, slot) in slots.iter().enumerate() {
                for candidate in &slot.candidates {
                    let standing = &mut standings[candidate.tool];
                    standing.class.slots.push((index, of_type, at));
                    // A mend of the tool's own is paid with its use.
                    let once = candidate.once.map_or(0, |(_, price)| price);
                    standing.prices.push(candidate.price + once);
                    let group = candidate.once.map(|(group, _)| group);
                    let others = group.filter(|group| *group != candidate.tool);
                    standing.shares_price |=
                        others.is_some() || capacity[candidate.tool] > 1 && once > 0;
                    paid_by_others.extend(others);
                }
            }
        }
        for (number, link) in demand.links.iter().enumerate() {
            if let Tools::These(tools) = &link.tools {
                tools.iter().for_each(|tool| standings[*tool].class.links.push((index, number)));
            }
        }
        for (spare, tools) in demand.fits.iter().flat_map(|(_, fits)| fits) {
            standings[*spare].class.named.push(usize::MAX - *spare);
            tools.iter().flatten().for_each(|tool| standings[*tool].class.named.push(*spare));
        }
    }
    // What another tool may have paid already is no price of its own either.
    for tool in paid_by_others {
        if let Some(standing) = standings.get_mut(tool) {
            standing.shares_price = true;
        }
    }
    standings
}

fn demand(problem: &Problem, standing: &Standing) -> usize {
    let counts = standing.class.slots.iter().map(|(demand, of_type, slot)| {
        usize::try_from(problem.demands[*demand].types[*of_type][*slot].count).unwrap_or(usize::MAX)
    });
    counts.fold(1, usize::saturating_add)
}

/// Whether one of a class can stand in for another of it at no higher price; of
/// two that are equal, the first in the file goes before.
fn goes_before(one: &Standing, other: &Standing, first: bool) -> bool {
    one.prices.iter().zip(&other.prices).all(|(a, b)| a <= b)
        && (first || one.prices != other.prices)
}

#[cfg(test)]
#[path = "pruning_tests.rs"]
mod tests;
