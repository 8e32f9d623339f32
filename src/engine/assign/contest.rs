//! What nothing can come between, though facts are missing: a demand that has a
//! tool which nobody else wants is met whatever becomes of the others, and one
//! that cannot be filled takes nothing from them.

use super::slots::{Problem, Slot, ToolDemand, Tools, Worth};

/// How a demand stands among those that may want its tools.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Contest {
    /// It is met in every best assignment.
    Sure,
    /// It is met in none.
    Hopeless,
    /// Nobody else that is open wants its tools.
    Alone,
    /// Others may come before it.
    Contested,
}

/// How each demand stands, by what serves for certain (strict) and by what may
/// (generous).
pub(crate) fn contests(strict: &Problem, generous: &Problem) -> Vec<Contest> {
    let mut contests = vec![Contest::Contested; generous.demands.len()];
    let mut open: Vec<usize> = Vec::new();
    for (index, contest) in contests.iter_mut().enumerate() {
        if generous.demands[index].worth == Worth::LeftOut || is_hopeless(generous, index) {
            *contest = Contest::Hopeless;
        } else {
            open.push(index);
        }
    }
    // Whom nothing can come between comes between nobody: in an assignment in
    // which it has another's tool, it could have its own instead. But where others
    // lean on its tools it may have that of another for their sake.
    let mut wanting = open.clone();
    loop {
        let wanted = wanted_by(generous, &wanting);
        let sure = |index: &usize| has_its_own(strict, *index, &wanted);
        let Some(at) = open.iter().position(sure) else { break };
        let index = open.swap_remove(at);
        contests[index] = Contest::Sure;
        wanting.retain(|other| *other != index || leans(generous, index));
    }
    let wanted = wanted_by(generous, &wanting);
    for index in open {
        let demand = &generous.demands[index];
        let own = |tool: usize| wanted[tool] == 1 && generous.parts[tool].is_empty();
        let alone = demand.links.is_empty()
            && demand.fits.is_none()
            && slots(demand).flat_map(|slot| &slot.candidates).all(|c| own(c.tool));
        if alone && !leans(generous, index) {
            contests[index] = Contest::Alone;
        }
    }
    contests
}

fn slots(demand: &ToolDemand) -> impl Iterator<Item = &Slot> {
    demand.types.iter().flatten()
}

/// Whether another demand leans on this one's tools.
fn leans(problem: &Problem, index: usize) -> bool {
    let on = |demand: &ToolDemand| {
        demand.links.iter().any(|link| link.from == index)
            || demand.fits.as_ref().is_some_and(|(served, _)| *served == index)
    };
    problem.demands.iter().any(on)
}

/// How many of the demands want each tool.
fn wanted_by(problem: &Problem, demands: &[usize]) -> Vec<u32> {
    let mut wanted = vec![0; problem.capacity.len()];
    for demand in demands {
        let mut tools: Vec<usize> =
            slots(&problem.demands[*demand]).flat_map(|s| &s.candidates).map(|c| c.tool).collect();
        tools.sort_unstable();
        tools.dedup();
        tools.into_iter().for_each(|tool| wanted[tool] += 1);
    }
    wanted
}

/// Whether it can be filled with tools that nobody else wants, and that serve
/// for certain.
fn has_its_own(problem: &Problem, index: usize, wanted: &[u32]) -> bool {
    let demand = &problem.demands[index];
    if !demand.worth.is_wanted() || demand.fits.is_some() {
        return false;
    }
    let places =
        |tool: usize| slots(demand).filter(move |s| s.candidates.iter().any(|c| c.tool == tool));
    let own = |tool: usize| {
        wanted[tool] == 1 && problem.parts[tool].is_empty() && places(tool).count() == 1
    };
    let filled = |slot: &Slot| {
        let tools = slot.candidates.iter().map(|c| c.tool).filter(|tool| own(*tool));
        tools.map(|tool| u64::from(problem.capacity[tool])).sum::<u64>() >= u64::from(slot.count)
    };
    demand.types.iter().filter(|slots| slots.iter().all(filled)).count() >= demand.least
}

/// Whether it could not be filled if it had everything for itself.
fn is_hopeless(problem: &Problem, index: usize) -> bool {
    let demand = &problem.demands[index];
    let lent = demand.links.iter().any(|link| {
        let from = slots(&problem.demands[link.from]).flat_map(|slot| &slot.candidates);
        let counts = |tool: usize| match &link.tools {
            Tools::These(tools) => tool >= problem.listed || tools.contains(&tool),
            Tools::Fitting => slots(demand).any(|s| s.candidates.iter().any(|c| c.tool == tool)),
        };
        problem.demands[link.from].worth != Worth::LeftOut
            && from.map(|candidate| candidate.tool).any(counts)
    });
    let fillable = |slot: &Slot| {
        let there = slot.candidates.iter().map(|c| u64::from(problem.capacity[c.tool]));
        lent || there.sum::<u64>() >= u64::from(slot.count)
    };
    demand.types.iter().filter(|slots| slots.iter().all(fillable)).count() < demand.least
}
