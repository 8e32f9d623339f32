//! What could be done about the kit: every tool that can be mended, and
//! everything that may be brought, at the price of its action; the assignment
//! then finds the cheapest.

use super::mend::{Service, counts, services};
use crate::engine::assign::assign;
use crate::engine::assign::candidates::{self, Pass, unlisted};
use crate::engine::assign::slots::{
    Assignment, Candidate, Link, Problem, Slot, SpareFit, ToolDemand, Tools, Use, Worth,
};
use crate::engine::evaluate::point::Point;
use crate::engine::evaluate::requirement::{may_be_unlisted, views};
use crate::engine::evaluate::satisfy;
use crate::engine::work::Work;
use crate::measure::Answer;
use crate::model::finding::{Action, FilledSlot, Step, Target};
use crate::model::profile::{Profile, Requirement};
use crate::model::rule::{Member, Need};
use crate::model::vocabulary::Class;

/// One change, and in lower digits one of that action: prices add up so that
/// fewer changes always win, then fewer of the dearest action, and so on down.
fn price(action: Action) -> u128 {
    let rank = action as u32;
    (1 << CHANGE) + (1 << (12 * rank))
}

/// The binary digit from which on a price counts changes.
const CHANGE: u32 = 110;

/// What stands behind a tool of the problem that is none of the kit's.
enum Extra {
    /// A type to acquire, or to look for.
    Bring { requirement: usize, slot: FilledSlot, action: Action },
    /// A lot of the kit, mended so that it fills one slot: equal tools stay
    /// equal, so that it cannot fill slots that ask for different ones.
    Lot { tool: usize },
}

/// The problem in which every tool that can be mended serves at a price, and
/// whatever is missing may be brought.
struct Offer {
    problem: Problem,
    extras: Vec<Extra>,
    /// Which tools of the kit serve, and what has to be mended.
    services: Vec<Service>,
    /// Lots that were added as tools of their own.
    lots: Vec<usize>,
    lots_mended: Lots,
}

/// What a lot that was mended for one slot does for others.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Lots {
    /// It serves no other that takes a mend.
    Apart,
    /// It serves every one of them, as if all that they ask could be true at once.
    ServeAll,
}

/// The cheapest steps that let every required finding about tools be met in
/// all the points.
pub(crate) fn for_tools(profile: &Profile, points: &[Point<'_>], work: &Work) -> Vec<Step> {
    let Some(offer) = offer(profile, points, Lots::Apart) else { return Vec::new() };
    let assignment = assign(&offer.problem, work);
    steps(&offer, &assignment)
}

/// A number of changes below which no way to that is; none where the search for
/// it was stopped.
pub(crate) fn least_changes(profile: &Profile, points: &[Point<'_>], work: &Work) -> Option<usize> {
    let Some(offer) = offer(profile, points, Lots::ServeAll) else { return Some(0) };
    let assignment = assign(&offer.problem, work);
    let changes = usize::try_from(assignment.score.price >> CHANGE).ok();
    changes.filter(|_| !assignment.stopped)
}

fn offer(profile: &Profile, points: &[Point<'_>], lots_mended: Lots) -> Option<Offer> {
    let first = points.first()?;
    let views = views(first);
    let mut offer = Offer {
        problem: candidates::problem(&views, first, Pass::Strict),
        extras: Vec::new(),
        services: services(profile, points),
        lots: Vec::new(),
        lots_mended,
    };
    offer.problem.lot_parts = Some(offer.problem.parts_there.len());
    offer.problem.groups = first.vessel.kit.len();
    for (index, requirement) in profile.requirements.iter().enumerate() {
        offer.problem.demands[index] = offer_demand(&mut offer, index, requirement, points);
    }
    Some(offer)
}

fn offer_demand(
    offer: &mut Offer,
    index: usize,
    requirement: &Requirement,
    points: &[Point<'_>],
) -> ToolDemand {
    let Need::Tools { least, types, spare_for } = &requirement.need else {
        return ToolDemand { worth: Worth::LeftOut, ..ToolDemand::default() };
    };
    if !counts(requirement, points) {
        return ToolDemand { worth: Worth::LeftOut, ..ToolDemand::default() };
    }
    let mut demand =
        ToolDemand { least: usize::try_from(*least).unwrap_or(1), ..ToolDemand::default() };
    for (of_type, the_type) in types.iter().enumerate() {
        let acquire = offer.problem.groups;
        offer.problem.groups += 2;
        let slots = the_type
            .members
            .iter()
            .enumerate()
            .map(|(at, member)| {
                let slot = FilledSlot { of_type, member: at, choice: 0, count: 1 };
                offer_slot(offer, index, member, slot, acquire, points)
            })
            .collect();
        demand.types.push(slots);
    }
    demand.links = offer_links(requirement, points);
    demand.fits = spare_for.map(|served| (served, offer_fits(&demand, offer, points)));
    demand
}

fn offer_slot(
    offer: &mut Offer,
    index: usize,
    member: &Member,
    slot: FilledSlot,
    acquire: usize,
    points: &[Point<'_>],
) -> Slot {
    let mut candidates = Vec::new();
    for at in 0..offer.services.len() {
        let Service { tool, mend, .. } = &offer.services[at];
        if !offer.services[at].fills(index, slot.of_type, slot.member) {
            continue;
        }
        let (tool, once) = (*tool, mend.as_ref().map(|mend| (*tool, price(mend.action))));
        let count = points[0].vessel.kit[tool].count;
        let apart = count > 1 && once.is_some() && offer.lots_mended == Lots::Apart;
        let serves = if apart { lot(offer, tool, count) } else { tool };
        candidates.push(Candidate { tool: serves, price: 0, once });
    }
    let look = points.iter().any(|point| !may_be_unlisted(member, point).is_empty());
    for (action, group) in [(Action::Measure, acquire), (Action::Acquire, acquire + 1)] {
        let Some(choice) = bringable(member, points).filter(|_| action == Action::Acquire || look)
        else {
            continue;
        };
        let document =
            points[0].vocabulary.kind(member.choices[choice].kind).class == Class::Document;
        let action = if document && action == Action::Acquire { Action::Document } else { action };
        let tool = unlisted(&mut offer.problem, member.count);
        candidates.push(Candidate { tool, price: 0, once: Some((group, price(action))) });
        let slot = FilledSlot { choice, ..slot };
        offer.extras.push(Extra::Bring { requirement: index, slot, action });
    }
    Slot { count: member.count, candidates }
}

/// The first alternative that is open at every point.
fn bringable(member: &Member, points: &[Point<'_>]) -> Option<usize> {
    member
        .choices
        .iter()
        .position(|spec| points.iter().all(|point| point.holds_all(&spec.when) == Ok(true)))
}

fn offer_links(requirement: &Requirement, points: &[Point<'_>]) -> Vec<Link> {
    let kit = &points[0].vessel.kit;
    let deemed = requirement.deemed.iter().map(|deemed| {
        let counts = |index: &usize| {
            let keeps = |point| satisfy::keeps(&deemed.tests, &kit[*index], point) == Answer::Yes;
            points.iter().all(keeps)
        };
        let tools = (0..kit.len()).filter(counts).collect();
        Link { from: deemed.requirement, tools: Tools::These(tools) }
    });
    let shared = requirement.shares.iter().map(|from| Link { from: *from, tools: Tools::Fitting });
    deemed.chain(shared).collect()
}

fn offer_fits(demand: &ToolDemand, offer: &Offer, points: &[Point<'_>]) -> Vec<SpareFit> {
    let kit = &points[0].vessel.kit;
    let candidates = demand.types.iter().flatten().flat_map(|slot| &slot.candidates);
    candidates
        .map(|candidate| {
            let named = kit.get(candidate.tool).map(|spare| &spare.fits);
            let fits = named.filter(|fits| !fits.is_empty()).map(|fits| {
                let is_named = |tool: usize| fits.contains(&kit[tool].mark);
                let lots = offer.extras.iter().enumerate().filter_map(|(extra, what)| match what {
                    Extra::Lot { tool } if is_named(*tool) => Some(offer.problem.listed + extra),
                    _ => None,
                });
                (0..kit.len()).filter(|tool| is_named(*tool)).chain(lots).collect()
            });
            (candidate.tool, fits)
        })
        .collect()
}

/// Adds the lot as a tool of its own that shares, with the lot as it is and
/// with its other makings, a part that only one of them can use.
fn lot(offer: &mut Offer, tool: usize, count: u32) -> usize {
    let part = offer.lots.iter().position(|lot| *lot == tool).unwrap_or_else(|| {
        offer.lots.push(tool);
        offer.lots.len() - 1
    });
    let part = offer.problem.lot_parts.unwrap_or(0) + part;
    let parts = offer.problem.parts_there.len().max(part + 1);
    offer.problem.parts_there.resize(parts, 1);
    if !offer.problem.parts[tool].contains(&part) {
        offer.problem.parts[tool].push(part);
    }
    let made = unlisted(&mut offer.problem, count);
    offer.problem.parts[made] = offer.problem.parts[tool].clone();
    offer.extras.push(Extra::Lot { tool });
    made
}

/// Reads the steps off the assignment, in the order of the requirements. A tool
/// that is shared may have to be mended for each that it serves.
fn steps(offer: &Offer, assignment: &Assignment) -> Vec<Step> {
    let mut steps: Vec<Step> = Vec::new();
    for (requirement, uses) in assignment.uses.iter().enumerate() {
        for used in uses.iter().flatten() {
            let also = match used.through {
                Some(_) => Vec::new(),
                None => also(assignment, requirement, used.tool),
            };
            let extra =
                used.tool.checked_sub(offer.problem.listed).map(|extra| &offer.extras[extra]);
            match extra {
                None => steps.extend(mend_step(offer, requirement, used.tool, used, also)),
                Some(Extra::Lot { tool }) => {
                    steps.extend(mend_step(offer, requirement, *tool, used, also));
                }
                Some(Extra::Bring { requirement, slot, action }) if used.through.is_none() => {
                    bring_step(&mut steps, *requirement, *slot, *action, also);
                }
                Some(Extra::Bring { .. }) => {}
            }
        }
    }
    merge_same_tool(&mut steps);
    steps
}

fn mend_step(
    offer: &Offer,
    requirement: usize,
    tool: usize,
    used: &Use,
    also: Vec<usize>,
) -> Option<Step> {
    let fills = |service: &&Service| {
        service.tool == tool && service.fills(requirement, used.of_type, used.slot)
    };
    let Service { slot, mend, .. } = offer.services.iter().find(fills)?;
    let mend = mend.as_ref()?;
    let (slots, reasons) = (vec![*slot], mend.reasons.clone());
    let target = Target::Tool(tool);
    Some(Step { action: mend.action, target, requirement, also, slots, reasons })
}

fn also(assignment: &Assignment, from: usize, tool: usize) -> Vec<usize> {
    let through = |uses: &Option<Vec<Use>>| {
        uses.iter().flatten().any(|u| u.tool == tool && u.through == Some(from))
    };
    (0..assignment.uses.len()).filter(|index| through(&assignment.uses[*index])).collect()
}

fn bring_step(
    steps: &mut Vec<Step>,
    requirement: usize,
    slot: FilledSlot,
    action: Action,
    also: Vec<usize>,
) {
    let target = Target::Type(slot.of_type);
    let same = steps.iter_mut().find(|step| {
        step.requirement == requirement && step.target == target && step.action == action
    });
    let Some(step) = same else {
        let slots = vec![slot];
        steps.push(Step { action, target, requirement, also, slots, reasons: Vec::new() });
        return;
    };
    match step.slots.iter_mut().find(|s| s.member == slot.member) {
        Some(slot) => slot.count += 1,
        None => step.slots.push(slot),
    }
}

/// A lot that fills several slots of one requirement is mended once.
fn merge_same_tool(steps: &mut Vec<Step>) {
    let mut merged: Vec<Step> = Vec::new();
    for step in steps.drain(..) {
        let same = merged.iter_mut().find(|other| {
            matches!(step.target, Target::Tool(_))
                && other.target == step.target
                && other.requirement == step.requirement
        });
        match same {
            Some(other) => other.slots.extend(step.slots),
            None => merged.push(step),
        }
    }
    *steps = merged;
}

#[cfg(test)]
mod tests {
    use super::*;

    /// One change less is worth more than any choice of actions; among as many,
    /// one of a dear action less is worth more than all that is cheaper.
    #[test]
    fn a_dearer_action_costs_more_than_any_number_of_cheaper_ones() {
        let actions = [
            Action::Measure,
            Action::Reinspect,
            Action::BringAboard,
            Action::Repair,
            Action::Lengthen,
            Action::Document,
            Action::Certify,
            Action::ChangeGear,
            Action::Acquire,
        ];
        let most = 200;
        let change = 1_u128 << CHANGE;
        let mut ranked = actions.map(|action| (action as u32, price(action) - change));
        ranked.sort_unstable();
        for [(_, cheap), (_, dear)] in ranked.array_windows() {
            assert!(*dear > most * cheap, "{dear} {cheap}");
        }
        assert!(most * ranked[ranked.len() - 1].1 < change);
    }
}
