//! What could be done about the kit: every tool that can be mended, and
//! everything that may be brought, at the price of its deed; the assignment
//! then finds the cheapest.

use super::assign;
use super::deeds::{self, Mend};
use super::fit;
use super::pose as posing;
use super::scene::Scene;
use super::seats::{Candidate, Link, Places, Pose, Seat, Solution, SpareFit, Tools, Use, Worth};
use crate::measure::Answer;
use crate::model::finding::{Deed, Slot, Step, Target};
use crate::model::profile::{Level, Profile, Requirement};
use crate::model::rule::{Member, Need};
use crate::model::vocabulary::Class;

/// One change, and in lower digits one of that deed: prices add up so that
/// fewer changes always win, then fewer of the dearest deed, and so on down.
fn price(deed: Deed) -> u128 {
    let rank = deed as u32;
    (1 << 110) + (1 << (12 * rank))
}

/// Whether the requirement counts towards the verdict in any of the scenes.
pub(super) fn is_wanted(requirement: &Requirement, scenes: &[Scene<'_>]) -> bool {
    requirement.level == Level::Required
        && scenes.iter().any(|scene| scene.binds(requirement) != Ok(false))
}

/// What stands behind a tool of the pose that is none of the kit's.
enum Extra {
    /// A type to acquire, or to look for.
    Bring { requirement: usize, slot: Slot, deed: Deed },
    /// A lot of the kit, mended so that it fills one place: equal tools stay
    /// equal, so that it cannot fill places that ask for different ones.
    Lot { tool: usize },
}

/// The pose in which every tool that can be mended serves at a price, and
/// whatever is missing may be brought.
struct Offer {
    pose: Pose,
    extras: Vec<Extra>,
    /// By requirement, tool and place: what has to be mended.
    mends: Vec<(usize, usize, Slot, Mend)>,
    /// Lots that were added as tools of their own.
    lots: Vec<usize>,
}

/// The cheapest steps that let every required finding about tools be met in
/// all the scenes, and how many they are.
pub(super) fn for_tools(profile: &Profile, scenes: &[Scene<'_>]) -> (Vec<Step>, usize) {
    let Some(first) = scenes.first() else {
        return (Vec::new(), 0);
    };
    let views = posing::views(first);
    let mut offer = Offer {
        pose: posing::pose(&views, first, posing::Pass::Strict),
        extras: Vec::new(),
        mends: Vec::new(),
        lots: Vec::new(),
    };
    offer.pose.lot_parts = Some(offer.pose.part_count);
    offer.pose.groups = first.vessel.kit.len();
    for (index, requirement) in profile.requirements.iter().enumerate() {
        offer.pose.seats[index] = offer_seat(&mut offer, index, requirement, scenes);
    }
    let solution = assign::assign(&offer.pose);
    let steps = steps(&offer, &solution);
    let count = steps.len();
    (steps, count)
}

fn offer_seat(
    offer: &mut Offer,
    index: usize,
    requirement: &Requirement,
    scenes: &[Scene<'_>],
) -> Seat {
    let Need::Tools { least, types, spare_for } = &requirement.need else {
        return Seat { worth: Worth::LeftOut, ..Seat::default() };
    };
    if !is_wanted(requirement, scenes) {
        return Seat { worth: Worth::LeftOut, ..Seat::default() };
    }
    let mut seat = Seat { least: usize::try_from(*least).unwrap_or(1), ..Seat::default() };
    for (of_type, the_type) in types.iter().enumerate() {
        let acquire = offer.pose.groups;
        offer.pose.groups += 2;
        let places = the_type
            .members
            .iter()
            .enumerate()
            .map(|(place, member)| {
                let slot = Slot { of_type, member: place, choice: 0, count: 1 };
                offer_place(offer, index, requirement, member, slot, acquire, scenes)
            })
            .collect();
        seat.types.push(places);
    }
    seat.links = offer_links(requirement, scenes);
    seat.fits = spare_for.map(|served| (served, offer_fits(&seat, offer, scenes)));
    seat
}

fn offer_place(
    offer: &mut Offer,
    index: usize,
    requirement: &Requirement,
    member: &Member,
    slot: Slot,
    acquire: usize,
    scenes: &[Scene<'_>],
) -> Places {
    let mut candidates = Vec::new();
    let kit = &scenes[0].vessel.kit;
    let type_clause = match &requirement.need {
        Need::Tools { types, .. } => types[slot.of_type].clause.as_deref(),
        _ => None,
    };
    for (tool_index, tool) in kit.iter().enumerate() {
        let options = member.choices.iter().enumerate().filter(|(_, spec)| spec.kind == tool.kind);
        let mends = options.filter_map(|(choice, spec)| {
            deeds::mend(tool, spec, type_clause, requirement, scenes)
                .ok()
                .map(|mend| (choice, mend))
        });
        let cost = |mend: &Option<Mend>| mend.as_ref().map_or(0, |mend| price(mend.deed));
        let Some((choice, mend)) = mends.min_by_key(|(_, mend)| cost(mend)) else {
            continue;
        };
        let once = mend.as_ref().map(|mend| (tool_index, price(mend.deed)));
        let serves = if tool.count > 1 && mend.is_some() {
            lot(offer, tool_index, tool.count)
        } else {
            tool_index
        };
        candidates.push(Candidate { tool: serves, price: 0, once });
        offer.mends.extend(mend.map(|mend| (index, tool_index, Slot { choice, ..slot }, mend)));
    }
    let look = scenes.iter().any(|scene| !posing::may_be_unlisted(member, scene).is_empty());
    for (deed, group) in [(Deed::Measure, acquire), (Deed::Acquire, acquire + 1)] {
        let Some(choice) = bringable(member, scenes).filter(|_| deed == Deed::Acquire || look)
        else {
            continue;
        };
        let document =
            scenes[0].vocabulary.kind(member.choices[choice].kind).class == Class::Document;
        let deed = if document && deed == Deed::Acquire { Deed::Document } else { deed };
        let tool = posing::unlisted(&mut offer.pose, member.count);
        candidates.push(Candidate { tool, price: 0, once: Some((group, price(deed))) });
        let slot = Slot { choice, ..slot };
        offer.extras.push(Extra::Bring { requirement: index, slot, deed });
    }
    Places { count: member.count, candidates }
}

/// The first alternative that is open in every scene.
fn bringable(member: &Member, scenes: &[Scene<'_>]) -> Option<usize> {
    member
        .choices
        .iter()
        .position(|spec| scenes.iter().all(|scene| scene.holds_all(&spec.when) == Ok(true)))
}

fn offer_links(requirement: &Requirement, scenes: &[Scene<'_>]) -> Vec<Link> {
    let kit = &scenes[0].vessel.kit;
    let deemed = requirement.deemed.iter().map(|deemed| {
        let counts = |index: &usize| {
            let keeps = |scene| fit::keeps(&deemed.tests, &kit[*index], scene) == Answer::Yes;
            scenes.iter().all(keeps)
        };
        let tools = (0..kit.len()).filter(counts).collect();
        Link { from: deemed.requirement, tools: Tools::These(tools) }
    });
    let shared = requirement.shares.iter().map(|from| Link { from: *from, tools: Tools::Fitting });
    deemed.chain(shared).collect()
}

fn offer_fits(seat: &Seat, offer: &Offer, scenes: &[Scene<'_>]) -> Vec<SpareFit> {
    let kit = &scenes[0].vessel.kit;
    let candidates = seat.types.iter().flatten().flat_map(|places| &places.candidates);
    candidates
        .map(|candidate| {
            let named = kit.get(candidate.tool).map(|spare| &spare.fits);
            let fits = named.filter(|fits| !fits.is_empty()).map(|fits| {
                let is_named = |tool: usize| fits.contains(&kit[tool].mark);
                let lots = offer.extras.iter().enumerate().filter_map(|(extra, what)| match what {
                    Extra::Lot { tool } if is_named(*tool) => Some(offer.pose.listed + extra),
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
    let part = offer.pose.lot_parts.unwrap_or(0) + part;
    offer.pose.part_count = offer.pose.part_count.max(part + 1);
    if !offer.pose.parts[tool].contains(&part) {
        offer.pose.parts[tool].push(part);
    }
    let made = posing::unlisted(&mut offer.pose, count);
    offer.pose.parts[made] = offer.pose.parts[tool].clone();
    offer.extras.push(Extra::Lot { tool });
    made
}

/// Reads the steps off the solution, in the order of the requirements. A tool
/// that is shared may have to be mended for each that it serves.
fn steps(offer: &Offer, solution: &Solution) -> Vec<Step> {
    let mut steps: Vec<Step> = Vec::new();
    for (requirement, uses) in solution.uses.iter().enumerate() {
        for used in uses.iter().flatten() {
            let also = match used.through {
                Some(_) => Vec::new(),
                None => also(solution, requirement, used.tool),
            };
            let extra = used.tool.checked_sub(offer.pose.listed).map(|extra| &offer.extras[extra]);
            match extra {
                None => steps.extend(mend_step(offer, requirement, used.tool, used, also)),
                Some(Extra::Lot { tool }) => {
                    steps.extend(mend_step(offer, requirement, *tool, used, also));
                }
                Some(Extra::Bring { requirement, slot, deed }) if used.through.is_none() => {
                    bring_step(&mut steps, *requirement, *slot, *deed, also);
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
    let (_, _, slot, mend) = offer.mends.iter().find(|(r, t, slot, _)| {
        (*r, *t, slot.of_type, slot.member) == (requirement, tool, used.of_type, used.place)
    })?;
    let (slots, reasons) = (vec![*slot], mend.reasons.clone());
    let target = Target::Tool(tool);
    Some(Step { deed: mend.deed, target, requirement, also, slots, reasons })
}

fn also(solution: &Solution, from: usize, tool: usize) -> Vec<usize> {
    let through = |uses: &Option<Vec<Use>>| {
        uses.iter().flatten().any(|u| u.tool == tool && u.through == Some(from))
    };
    (0..solution.uses.len()).filter(|index| through(&solution.uses[*index])).collect()
}

fn bring_step(steps: &mut Vec<Step>, requirement: usize, slot: Slot, deed: Deed, also: Vec<usize>) {
    let target = Target::Type(slot.of_type);
    let same = steps
        .iter_mut()
        .find(|step| step.requirement == requirement && step.target == target && step.deed == deed);
    let Some(step) = same else {
        let slots = vec![slot];
        steps.push(Step { deed, target, requirement, also, slots, reasons: Vec::new() });
        return;
    };
    match step.slots.iter_mut().find(|s| s.member == slot.member) {
        Some(slot) => slot.count += 1,
        None => step.slots.push(slot),
    }
}

/// A lot that fills several places of one requirement is mended once.
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

    /// One change less is worth more than any choice of deeds; among as many,
    /// one of a dear deed less is worth more than all that is cheaper.
    #[test]
    fn a_dearer_deed_costs_more_than_any_number_of_cheaper_ones() {
        let deeds = [
            Deed::Measure,
            Deed::Reinspect,
            Deed::BringAboard,
            Deed::Repair,
            Deed::Lengthen,
            Deed::Document,
            Deed::Certify,
            Deed::ChangeGear,
            Deed::Acquire,
        ];
        let most = 200;
        let change = 1_u128 << 110;
        let mut ranked = deeds.map(|deed| (deed as u32, price(deed) - change));
        ranked.sort_unstable();
        for [(_, cheap), (_, dear)] in ranked.array_windows() {
            assert!(*dear > most * cheap, "{dear} {cheap}");
        }
        assert!(most * ranked[ranked.len() - 1].1 < change);
    }
}
