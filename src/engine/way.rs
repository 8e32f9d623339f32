//! The shortest way to ready: the fewest changes, and among equals those
//! that cost least trouble.

use super::assign::{self, Candidate, Link, Places, Pose, Seat, SpareFit, Tools, Worth};
use super::conform;
use super::deeds::{self, Mend};
use super::fit;
use super::judge::Bench;
use super::pose as posing;
use super::scene::Scene;
use super::{edges, holders};
use crate::measure::{Answer, Day, Length};
use crate::model::finding::{Deed, Slot, Step, Target, Verdict, WayToReady};
use crate::model::profile::{Level, Profile, Requirement};
use crate::model::reason::Reason;
use crate::model::rule::{Holders, Member, Need};
use crate::model::vessel::Vessel;
use crate::model::vocabulary::Class;

/// One change, and in lower digits one of that deed: prices add up so that
/// fewer changes always win, then fewer of the dearest deed, and so on down.
fn price(deed: Deed) -> u128 {
    let rank = deed as u32;
    (1 << 110) + (1 << (12 * rank))
}

/// The shortest way to ready for the vessel on all days of the course.
pub(super) fn shortest(bench: &Bench<'_>, profile: &Profile, verdict: Verdict) -> WayToReady {
    if verdict == Verdict::Ready {
        return WayToReady::Already;
    }
    let (settled, mut steps) = conform::settle(bench, profile);
    let bench = Bench { vessel: &settled, ..*bench };
    let days = bench.days(profile, bench.course.days);
    let scenes = scenes(&bench, profile, &days);
    steps.extend(for_people_and_gear(profile, &scenes));
    let (tool_steps, most) = for_tools(profile, &scenes);
    let least = scenes
        .iter()
        .map(|scene| for_tools(profile, std::slice::from_ref(scene)).1)
        .max()
        .unwrap_or(most);
    steps.extend(tool_steps);
    let makes_ready = |steps: &[Step]| {
        let vessel = conform::apply(&bench, profile, steps, &scenes);
        is_ready(&Bench { vessel: &vessel, ..bench }, profile, &days)
    };
    if !makes_ready(&steps) {
        return WayToReady::None;
    }
    let before = steps.len();
    drop_needless(&mut steps, makes_ready);
    let fewest = least == most || before - steps.len() == most - least;
    WayToReady::Steps { steps, fewest }
}

fn is_ready(bench: &Bench<'_>, profile: &Profile, days: &[Day]) -> bool {
    days.iter().all(|day| bench.on(*day, profile).verdict == Verdict::Ready)
}

/// A step that the rest can do without is left out. Needed where the best
/// assignment differs from one freeboard or day to another.
fn drop_needless(steps: &mut Vec<Step>, makes_ready: impl Fn(&[Step]) -> bool) {
    let mut index = 0;
    while index < steps.len() {
        if steps[index].target == Target::Vessel {
            index += 1;
            continue;
        }
        let mut rest = steps.clone();
        rest.remove(index);
        if makes_ready(&rest) {
            *steps = rest;
        } else {
            index += 1;
        }
    }
}

/// Every scene that the vessel has to stand: both ends of each piece of its
/// freeboards, on each day on which something changes.
pub(super) fn scenes<'s>(bench: &Bench<'s>, profile: &'s Profile, days: &[Day]) -> Vec<Scene<'s>> {
    let Some(first) = days.first() else {
        return Vec::new();
    };
    let Ok(waters) = bench.waters(profile) else {
        return Vec::new();
    };
    let edges = edges::freeboards(&bench.scene(profile, Ok(Length::ZERO), *first));
    let mut freeboards: Vec<Length> = Vec::new();
    for (low, high) in waters.into_iter().flatten() {
        freeboards.extend([low, high]);
        for edge in edges.iter().filter(|edge| **edge > low && **edge <= high) {
            freeboards.extend([edge.just_below(), *edge]);
        }
    }
    freeboards.sort_unstable();
    freeboards.dedup();
    let at = |day: &Day| {
        let day = *day;
        freeboards.iter().map(move |f| bench.scene(profile, Ok(*f), day)).collect::<Vec<_>>()
    };
    days.iter().flat_map(at).collect()
}

fn is_wanted(requirement: &Requirement, scenes: &[Scene<'_>]) -> bool {
    requirement.level == Level::Required
        && scenes.iter().any(|scene| scene.binds(requirement) != Ok(false))
}

/// One thing that may be brought: a type to acquire, or to look for.
struct Bring {
    requirement: usize,
    of_type: usize,
    member: usize,
    choice: usize,
    deed: Deed,
}

/// The pose in which every tool that can be mended serves at a price, and
/// whatever is missing may be brought.
struct Offer {
    pose: Pose,
    bring: Vec<Bring>,
    mends: Vec<(usize, usize, Slot, Mend)>,
}

fn for_tools(profile: &Profile, scenes: &[Scene<'_>]) -> (Vec<Step>, usize) {
    let Some(first) = scenes.first() else {
        return (Vec::new(), 0);
    };
    let views = posing::views(first);
    let mut offer = Offer {
        pose: posing::pose(&views, first, posing::Pass::Strict),
        bring: Vec::new(),
        mends: Vec::new(),
    };
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
        candidates.push(Candidate { tool: tool_index, price: 0, once });
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
        let (of_type, place) = (slot.of_type, slot.member);
        offer.bring.push(Bring { requirement: index, of_type, member: place, choice, deed });
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
            scenes.iter().all(|scene| {
                let mut reasons = Vec::new();
                fit::run(&deemed.tests, &kit[*index], false, scene, &mut reasons);
                fit::answer(&reasons) == Answer::Yes
            })
        };
        let tools = (0..kit.len()).filter(counts).collect();
        Link { from: deemed.requirement, tools: Tools::These(tools) }
    });
    let shared = requirement.shares.iter().map(|from| Link { from: *from, tools: Tools::Fitting });
    deemed.chain(shared).collect()
}

fn offer_fits(seat: &Seat, offer: &mut Offer, scenes: &[Scene<'_>]) -> Vec<SpareFit> {
    let kit = &scenes[0].vessel.kit;
    let candidates = seat.types.iter().flatten().flat_map(|places| &places.candidates);
    candidates
        .map(|candidate| {
            let named = kit.get(candidate.tool).map(|spare| &spare.fits);
            let fits = named.filter(|fits| !fits.is_empty()).map(|fits| {
                (0..kit.len()).filter(|index| fits.contains(&kit[*index].mark)).collect()
            });
            (candidate.tool, fits)
        })
        .filter(|(tool, _)| *tool < offer.pose.capacity.len())
        .collect()
}

/// Reads the steps off the solution, in the order of the requirements.
fn steps(offer: &Offer, solution: &assign::Solution) -> Vec<Step> {
    let mut steps: Vec<Step> = Vec::new();
    for (requirement, uses) in solution.uses.iter().enumerate() {
        for used in uses.iter().flatten().filter(|used| used.through.is_none()) {
            let also = also(solution, requirement, used.tool);
            if used.tool < offer.pose.listed {
                let mend = offer.mends.iter().find(|(r, tool, slot, _)| {
                    (*r, *tool, slot.of_type, slot.member)
                        == (requirement, used.tool, used.of_type, used.place)
                });
                let Some((_, tool, slot, mend)) = mend else {
                    continue;
                };
                let target = Target::Tool(*tool);
                let reasons = mend.reasons.clone();
                steps.push(Step {
                    deed: mend.deed,
                    target,
                    requirement,
                    also,
                    slots: vec![*slot],
                    reasons,
                });
            } else if let Some(bring) = offer.bring.get(used.tool - offer.pose.listed) {
                bring_step(&mut steps, bring, also);
            }
        }
    }
    merge_same_tool(&mut steps);
    steps
}

fn also(solution: &assign::Solution, from: usize, tool: usize) -> Vec<usize> {
    let through = |uses: &Option<Vec<assign::Use>>| {
        uses.iter().flatten().any(|u| u.tool == tool && u.through == Some(from))
    };
    (0..solution.uses.len()).filter(|index| through(&solution.uses[*index])).collect()
}

fn bring_step(steps: &mut Vec<Step>, bring: &Bring, also: Vec<usize>) {
    let slot =
        Slot { of_type: bring.of_type, member: bring.member, choice: bring.choice, count: 1 };
    let target = Target::Type(bring.of_type);
    let same = steps.iter_mut().find(|step| {
        step.requirement == bring.requirement && step.target == target && step.deed == bring.deed
    });
    let Some(step) = same else {
        let (deed, requirement) = (bring.deed, bring.requirement);
        steps.push(Step {
            deed,
            target,
            requirement,
            also,
            slots: vec![slot],
            reasons: Vec::new(),
        });
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

/// Steps for certificates and for the vessel's own gear.
fn for_people_and_gear(profile: &Profile, scenes: &[Scene<'_>]) -> Vec<Step> {
    let mut steps: Vec<Step> = Vec::new();
    for (requirement, wanted) in profile.requirements.iter().enumerate() {
        if !is_wanted(wanted, scenes) {
            continue;
        }
        let binding = scenes.iter().filter(|scene| scene.binds(wanted) != Ok(false));
        let reasons: Vec<Reason> =
            binding.filter_map(|scene| holders::reasons(wanted, scene)).flatten().collect();
        for reason in reasons {
            let (deed, target) = match &reason {
                Reason::GearOutside { piece, why } => {
                    let deed = if why.is_open() { Deed::Measure } else { Deed::ChangeGear };
                    (deed, Target::Gear(piece.clone()))
                }
                Reason::NoCertificate { role, .. } => {
                    (Deed::Certify, Target::Role(one_person(role, &wanted.need, scenes[0].vessel)))
                }
                Reason::CertificateUndated { .. } => (Deed::Measure, Target::Role(None)),
                _ => (Deed::Measure, Target::Vessel),
            };
            let step = Step {
                deed,
                target,
                requirement,
                also: Vec::new(),
                slots: Vec::new(),
                reasons: vec![reason],
            };
            if !steps.iter().any(|s| s.requirement == requirement && s.target == step.target) {
                steps.push(step);
            }
        }
    }
    steps
}

/// One person who holds every role that the rule names is certified once:
/// the step then names no single role.
fn one_person(role: &Option<String>, need: &Need, vessel: &Vessel) -> Option<String> {
    let Need::Certificates { holders: Holders::EachRole(roles), .. } = need else {
        return role.clone();
    };
    let people = vessel.people.iter().flatten();
    let all_in_one = people.clone().any(|p| roles.iter().all(|role| p.roles.contains(role)));
    if all_in_one { None } else { role.clone() }
}
