//! Why it cannot work: requirements that compete for too few tools.

use super::breakpoints::Subject;
use super::verdict::Combined;
use crate::engine::assign::can_all_be_met;
use crate::engine::assign::candidates::{self, Pass};
use crate::engine::assign::slots::{Problem, Worth};
use crate::engine::evaluate::point::Point;
use crate::engine::evaluate::requirement::views;
use crate::engine::work::Work;
use crate::model::finding::{Clash, Outcome, Verdict};

/// Sets of required findings that cannot all be met together while every
/// proper subset can, found by dropping one at a time in profile order in
/// the generous pass.
pub(crate) fn clashes(subject: &Subject<'_>, worst: &Combined, work: &Work) -> Vec<Clash> {
    if worst.verdict != Verdict::NotReady {
        return Vec::new();
    }
    let mut found: Vec<Clash> = Vec::new();
    let mut looked = Vec::new();
    for at in worst.outcomes.iter().flatten().filter(|at| at.outcome != Outcome::Met) {
        if looked.contains(&(at.freeboard, at.day)) {
            continue;
        }
        looked.push((at.freeboard, at.day));
        let point = Point { freeboard: at.freeboard, day: at.day, ..subject.point };
        let problem = candidates::problem(&views(&point), &point, Pass::Generous);
        for clash in in_problem(&problem, work) {
            if !found.iter().any(|other| other.requirements == clash.requirements) {
                found.push(clash);
            }
        }
    }
    found
}

/// Sets of demands of a problem that cannot all be met together.
fn in_problem(problem: &Problem, work: &Work) -> Vec<Clash> {
    let wanted = |index: &usize| problem.demands[*index].worth == Worth::Required;
    // What cannot be met even alone is no clash.
    let mut open: Vec<usize> = (0..problem.demands.len())
        .filter(wanted)
        .filter(|index| possible(problem, &[*index], work))
        .collect();
    let mut found = Vec::new();
    while !possible(problem, &open, work) {
        let core = core(problem, &open, work);
        if core.is_empty() {
            break;
        }
        open.retain(|index| !core.contains(index));
        found.push(Clash { tools: tools(problem, &core), requirements: core });
    }
    found
}

/// So many demands that want the same tools are gone through set by set.
const FEW_RIVALS: usize = 6;

/// Every set of these required demands that cannot be met together while each
/// proper subset can, whatever their order. Of more than a few: all of them that
/// can be met alone, if they cannot be together.
pub(crate) fn among(problem: &Problem, demands: &[usize], work: &Work) -> Vec<Vec<usize>> {
    let mut open = demands.to_vec();
    open.retain(|index| problem.demands[*index].worth == Worth::Required);
    open.retain(|index| possible(problem, &[*index], work));
    if possible(problem, &open, work) {
        return Vec::new();
    }
    if open.len() > FEW_RIVALS {
        return vec![open];
    }
    let mut sets: Vec<Vec<usize>> = (0..1_usize << open.len())
        .map(|set| (0..open.len()).filter(|at| set & (1 << at) != 0).map(|at| open[at]).collect())
        .collect();
    sets.sort_by_key(Vec::len);
    let mut found: Vec<Vec<usize>> = Vec::new();
    for set in sets {
        let holds = |smaller: &Vec<usize>| smaller.iter().all(|index| set.contains(index));
        if !found.iter().any(holds) && !possible(problem, &set, work) {
            found.push(set);
        }
    }
    found
}

/// Drops one after another as long as the rest still cannot be met.
fn core(problem: &Problem, all: &[usize], work: &Work) -> Vec<usize> {
    let mut core = all.to_vec();
    for index in all {
        let rest: Vec<_> = core.iter().copied().filter(|other| other != index).collect();
        if !possible(problem, &rest, work) {
            core = rest;
        }
    }
    core
}

/// Whether all of these can be met together; a search that was stopped
/// proves nothing, so it counts as possible.
fn possible(problem: &Problem, wanted: &[usize], work: &Work) -> bool {
    let mut problem = problem.clone();
    for (index, demand) in problem.demands.iter_mut().enumerate() {
        if demand.worth != Worth::LeftOut {
            demand.worth = if wanted.contains(&index) { Worth::Required } else { Worth::Nothing };
        }
    }
    // Which tools it takes is no matter.
    let slots = problem.demands.iter_mut().flat_map(|demand| demand.types.iter_mut().flatten());
    slots.flat_map(|slot| &mut slot.candidates).for_each(|candidate| candidate.price = 0);
    // A demand that counts nothing takes part only if others lean on it.
    let leaned: Vec<usize> = problem
        .demands
        .iter()
        .flat_map(|demand| {
            demand
                .links
                .iter()
                .map(|link| link.from)
                .chain(demand.fits.as_ref().map(|(from, _)| *from))
        })
        .collect();
    for (index, demand) in problem.demands.iter_mut().enumerate() {
        if demand.worth == Worth::Nothing && !leaned.contains(&index) {
            demand.worth = Worth::LeftOut;
        }
    }
    can_all_be_met(&problem, work).unwrap_or(true)
}

fn tools(problem: &Problem, demands: &[usize]) -> Vec<usize> {
    let mut tools: Vec<usize> = demands
        .iter()
        .flat_map(|demand| problem.demands[*demand].types.iter().flatten())
        .flat_map(|slot| slot.candidates.iter().map(|c| c.tool))
        .filter(|tool| *tool < problem.listed)
        .collect();
    tools.sort_unstable();
    tools.dedup();
    tools
}
