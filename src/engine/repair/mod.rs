//! The shortest way to ready: the fewest changes, and among equals those
//! that cost least trouble.

pub(crate) mod apply;
pub(crate) mod mend;
mod settle;
mod tools;

use crate::engine::evaluate::holders;
use crate::engine::evaluate::point::Point;
use crate::engine::judge::subject::Subject;
use crate::engine::judge::verdict;
use crate::measure::Day;
use crate::model::finding::{Action, Step, Target, Verdict, WayToReady};
use crate::model::profile::Profile;
use crate::model::reason::{Reason, VesselFact};
use crate::model::rule::{Holders, Need};
use crate::model::vessel::Vessel;

/// The shortest way to ready for the vessel on all days of the edition.
pub(crate) fn shortest(subject: &Subject<'_>, profile: &Profile, verdict: Verdict) -> WayToReady {
    if verdict == Verdict::Ready {
        return WayToReady::Already;
    }
    let (settled, mut steps) = settle::settle(subject, profile);
    let subject = Subject { vessel: &settled, ..*subject };
    let days = subject.days(profile);
    let points = subject.points(profile, &days);
    steps.extend(for_people_and_gear(profile, &points));
    let (tool_steps, most) = tools::for_tools(profile, &points);
    let least = points
        .iter()
        .map(|point| tools::for_tools(profile, std::slice::from_ref(point)).1)
        .max()
        .unwrap_or(most);
    steps.extend(tool_steps);
    let makes_ready = |steps: &[Step]| {
        let vessel = apply::apply(&subject, profile, steps, &points);
        is_ready(&Subject { vessel: &vessel, ..subject }, profile, &days)
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

fn is_ready(subject: &Subject<'_>, profile: &Profile, days: &[Day]) -> bool {
    days.iter().all(|day| verdict::on(subject, *day, profile) == Verdict::Ready)
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
fn for_people_and_gear(profile: &Profile, points: &[Point<'_>]) -> Vec<Step> {
    let mut steps: Vec<Step> = Vec::new();
    for (requirement, wanted) in profile.requirements.iter().enumerate() {
        if !tools::is_wanted(wanted, points) {
            continue;
        }
        let binding = points.iter().filter(|point| point.binds(wanted) != Ok(false));
        let reasons: Vec<Reason> =
            binding.filter_map(|point| holders::reasons(wanted, point)).flatten().collect();
        for reason in reasons {
            let (action, target) = match &reason {
                Reason::GearOutside { piece, why } => {
                    let action = if why.is_open() { Action::Measure } else { Action::ChangeGear };
                    (action, Target::Gear(piece.clone()))
                }
                Reason::NoCertificate { role, .. } => (
                    Action::Certify,
                    Target::Role(one_person(role, &wanted.need, points[0].vessel)),
                ),
                Reason::CertificateUndated { .. }
                | Reason::VesselFactUnknown { fact: VesselFact::People } => {
                    (Action::Measure, Target::Role(None))
                }
                _ => (Action::Measure, Target::Vessel),
            };
            let step = Step {
                action,
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
