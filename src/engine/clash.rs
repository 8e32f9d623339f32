//! Why it cannot work: requirements that compete for too few tools.

use super::assign;
use super::bench::{Bench, Tally};
use super::pose::{self, Pass};
use super::seats::{Pose, Worth};
use crate::model::finding::{Clash, Outcome, Verdict};
use crate::model::profile::Profile;

/// Sets of required findings that cannot all be met together while every
/// proper subset can, found by dropping one at a time in profile order in
/// the generous pass.
pub(super) fn clashes(bench: &Bench<'_>, profile: &Profile, tally: &Tally) -> Vec<Clash> {
    if tally.verdict != Verdict::NotReady {
        return Vec::new();
    }
    let mut found: Vec<Clash> = Vec::new();
    let mut looked = Vec::new();
    for at in tally.findings.iter().flatten().filter(|at| at.outcome != Outcome::Met) {
        if looked.contains(&(at.freeboard, at.day)) {
            continue;
        }
        looked.push((at.freeboard, at.day));
        let scene = bench.scene(profile, at.freeboard, at.day);
        let pose = pose::pose(&pose::views(&scene), &scene, Pass::Generous);
        for clash in in_pose(&pose) {
            if !found.iter().any(|other| other.requirements == clash.requirements) {
                found.push(clash);
            }
        }
    }
    found
}

fn in_pose(pose: &Pose) -> Vec<Clash> {
    let wanted = |index: &usize| pose.seats[*index].worth == Worth::Required;
    // What cannot be met even alone is no clash.
    let mut open: Vec<usize> =
        (0..pose.seats.len()).filter(wanted).filter(|index| possible(pose, &[*index])).collect();
    let mut found = Vec::new();
    while !possible(pose, &open) {
        let core = core(pose, &open);
        if core.is_empty() {
            break;
        }
        open.retain(|index| !core.contains(index));
        found.push(Clash { tools: tools(pose, &core), requirements: core });
    }
    found
}

/// Drops one after another as long as the rest still cannot be met.
fn core(pose: &Pose, all: &[usize]) -> Vec<usize> {
    let mut core = all.to_vec();
    for index in all {
        let rest: Vec<_> = core.iter().copied().filter(|other| other != index).collect();
        if !possible(pose, &rest) {
            core = rest;
        }
    }
    core
}

/// Whether all of these can be met together; a search that was stopped
/// proves nothing, so it counts as possible.
fn possible(pose: &Pose, wanted: &[usize]) -> bool {
    let mut pose = pose.clone();
    for (index, seat) in pose.seats.iter_mut().enumerate() {
        if seat.worth != Worth::LeftOut {
            seat.worth = if wanted.contains(&index) { Worth::Required } else { Worth::Nothing };
        }
    }
    // A seat that counts nothing takes part only if others lean on it.
    let leaned: Vec<usize> = pose
        .seats
        .iter()
        .flat_map(|seat| {
            seat.links.iter().map(|link| link.from).chain(seat.fits.as_ref().map(|(from, _)| *from))
        })
        .collect();
    for (index, seat) in pose.seats.iter_mut().enumerate() {
        if seat.worth == Worth::Nothing && !leaned.contains(&index) {
            seat.worth = Worth::LeftOut;
        }
    }
    let solution = assign::assign(&pose);
    solution.stopped || usize::try_from(solution.score.required) == Ok(wanted.len())
}

fn tools(pose: &Pose, seats: &[usize]) -> Vec<usize> {
    let mut tools: Vec<usize> = seats
        .iter()
        .flat_map(|seat| pose.seats[*seat].types.iter().flatten())
        .flat_map(|places| places.candidates.iter().map(|c| c.tool))
        .filter(|tool| *tool < pose.listed)
        .collect();
    tools.sort_unstable();
    tools.dedup();
    tools
}
