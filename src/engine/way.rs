//! The shortest way to ready: the fewest changes, and among equals those
//! that cost least trouble.

use super::bench::{Bench, scenes};
use super::conform;
use super::holders;
use super::offer;
use super::scene::Scene;
use crate::measure::Day;
use crate::model::finding::{Deed, Step, Target, Verdict, WayToReady};
use crate::model::profile::Profile;
use crate::model::reason::{Reason, VesselFact};
use crate::model::rule::{Holders, Need};
use crate::model::vessel::Vessel;

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
    let (tool_steps, most) = offer::for_tools(profile, &scenes);
    let least = scenes
        .iter()
        .map(|scene| offer::for_tools(profile, std::slice::from_ref(scene)).1)
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
    // A fact of the vessel that is settled one way might be shorter another.
    let settled_facts = steps.iter().any(|step| step.target == Target::Vessel);
    let fewest = !settled_facts && (least == most || steps.len() + most == before + least);
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

/// Steps for certificates and for the vessel's own gear.
fn for_people_and_gear(profile: &Profile, scenes: &[Scene<'_>]) -> Vec<Step> {
    let mut steps: Vec<Step> = Vec::new();
    for (requirement, wanted) in profile.requirements.iter().enumerate() {
        if !offer::is_wanted(wanted, scenes) {
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
                Reason::CertificateUndated { .. }
                | Reason::VesselFactUnknown { fact: VesselFact::People } => {
                    (Deed::Measure, Target::Role(None))
                }
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
            let people = missing_people(&step.reasons[0]);
            let same = |s: &&Step| s.requirement == requirement && s.target == step.target;
            if steps.iter().filter(same).count() < people {
                steps.extend(std::iter::repeat_n(step, people));
            }
        }
    }
    steps
}

/// How many people have to be certified for want of a number of people; one
/// step for everything else.
fn missing_people(reason: &Reason) -> usize {
    match reason {
        Reason::NoCertificate { role: None, have, need, .. } => {
            usize::try_from(need.saturating_sub(*have)).unwrap_or(1)
        }
        _ => 1,
    }
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
