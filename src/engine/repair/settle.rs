//! What has to be done beside tools: facts of the vessel itself that are
//! missing, settled as if they turned out well, its people and its gear.

use super::mend::counts;
use crate::engine::evaluate::point::Point;
use crate::engine::evaluate::{holders, limit};
use crate::engine::judge::breakpoints::Subject;
use crate::measure::{Figure, Length, Quantity, Rounding, System};
use crate::model::finding::{Action, Step, Target};
use crate::model::place::Place;
use crate::model::profile::{Level, Profile, Requirement};
use crate::model::reason::{Reason, VesselFact};
use crate::model::rule::{Holders, Need, Test};
use crate::model::vessel::{
    Datum, Freeboard, FreeboardReading, GearPiece, How, Reading, Station, Tool, Vessel,
};
use crate::model::vocabulary::Vocabulary;

/// Missing facts of the vessel itself, each settled as if it turned out
/// well, with a step for each.
pub(crate) fn settle(subject: &Subject<'_>) -> (Vessel, Vec<Step>) {
    let mut vessel = subject.point.vessel.clone();
    let mut steps = Vec::new();
    let mut settled = Vec::new();
    for (requirement, fact) in missing_facts(subject) {
        if settled.contains(&fact) {
            continue;
        }
        settle_fact(&mut vessel, &fact, &subject.point);
        let reasons = vec![Reason::VesselFactUnknown { fact: fact.clone() }];
        let (also, slots) = (Vec::new(), Vec::new());
        steps.push(Step {
            action: Action::Measure,
            target: Target::Vessel,
            requirement,
            also,
            slots,
            reasons,
        });
        settled.push(fact);
    }
    (vessel, steps)
}

/// What a limit comes to by a fact that was only assumed is no demand: there
/// stands what the vessel as it is known makes of it.
pub(super) fn demand_what_is_known(steps: &mut [Step], known: &Point<'_>) {
    for step in steps {
        let requirement = &known.profile.requirements[step.requirement];
        let limit_of = |wanted| {
            let tests = requirement.need.specs().flat_map(|spec| &spec.tests);
            let mut limits = tests.filter_map(|test| match test {
                Test::Limit { attribute, limit, .. } if *attribute == wanted => Some(limit),
                _ => None,
            });
            limits.find(|limit| limit::missing_fact(limit, known).is_some())
        };
        for reason in &mut step.reasons {
            let Reason::Unmeasured { attribute, demand, .. } = reason else { continue };
            if let Some(limit) = limit_of(*attribute) {
                *demand = limit::demand(limit, known);
            }
        }
    }
}

/// The facts, each with the first requirement that hangs on it.
fn missing_facts(subject: &Subject<'_>) -> Vec<(usize, VesselFact)> {
    let mut facts = Vec::new();
    let Subject { freeboards, point, .. } = subject;
    let disputed = freeboards.as_ref().is_ok_and(|w| w.iter().any(|readings| readings.len() > 1));
    let lowest = freeboards.as_ref().map(|w| w[0][0].0).map_err(|missing| *missing);
    let point = Point { freeboard: lowest, ..*point };
    let profile = point.profile;
    let required = |requirement: &Requirement| {
        requirement.level == Level::Required && point.binds(requirement) != Ok(false)
    };
    let rail = match freeboards {
        Err(missing) => Some(VesselFact::from(*missing)),
        Ok(_) if disputed => Some(VesselFact::FreeboardDisputed),
        Ok(_) => None,
    };
    let bound = profile.requirements.iter().position(required).unwrap_or(0);
    facts.extend(rail.map(|fact| (bound, fact)));
    for (index, requirement) in profile.requirements.iter().enumerate() {
        if !required(requirement) {
            continue;
        }
        let mut own = Vec::new();
        own.extend(point.binds(requirement).err());
        for spec in requirement.need.specs() {
            own.extend(point.holds_all(&spec.when).err());
            for test in &spec.tests {
                if let Test::Limit { limit, .. } = test {
                    own.extend(limit::missing_fact(limit, &point));
                }
            }
        }
        if matches!(requirement.need, Need::Gear { .. }) {
            let reasons = holders::reasons(requirement, &point).unwrap_or_default();
            own.extend(reasons.into_iter().filter_map(|reason| match reason {
                Reason::VesselFactUnknown { fact } => Some(fact),
                _ => None,
            }));
        }
        facts.extend(own.into_iter().map(|fact| (index, fact)));
    }
    facts
}

fn settle_fact(vessel: &mut Vessel, fact: &VesselFact, point: &Point<'_>) {
    let vocabulary = point.vocabulary;
    match fact {
        VesselFact::Freeboard | VesselFact::FreeboardFrom => {
            vessel.freeboard = Freeboard {
                from: point.profile.freeboard_from,
                stations: vec![Station::of(vec![low_freeboard()])],
                other: Vec::new(),
            };
        }
        VesselFact::FreeboardDisputed => {
            for station in &mut vessel.freeboard.stations {
                station.readings.sort_by_key(FreeboardReading::highest);
                station.readings.truncate(1);
                station.readings.iter_mut().for_each(|reading| reading.error = None);
            }
        }
        VesselFact::Permits => vessel.permits = Some(Vec::new()),
        VesselFact::Gear => vessel.gears = Some(Vec::new()),
        VesselFact::Areas => vessel.areas = Some(Vec::new()),
        VesselFact::Feature(feature) => {
            vessel.features.insert(feature.clone(), true);
        }
        VesselFact::Hooks => {
            thin(&mut vessel.hooks, "wire", vocabulary);
            vessel.coverage.all_seen.extend(vocabulary.find_kind("hook"));
        }
        VesselFact::Lines => {
            thin(&mut vessel.lines, "diameter", vocabulary);
            if let (Some([]), Some(kind)) =
                (vessel.lines.as_deref(), vocabulary.find_kind("fishing-line"))
            {
                let tool = Tool::bare("line", kind, 1, Place::default());
                vessel.lines = Some(vec![GearPiece { name: "line".to_owned(), tool }]);
                thin(&mut vessel.lines, "diameter", vocabulary);
            }
            vessel.coverage.all_seen.extend(vocabulary.find_kind("fishing-line"));
        }
        VesselFact::People => {}
        VesselFact::Aboard(kind) => {
            vessel.coverage.all_seen.insert(*kind);
        }
    }
}

/// A tenth of a metre: the lowest rail that a working vessel might have.
fn low_freeboard() -> FreeboardReading {
    FreeboardReading::exactly(Length::from_millimetres(100))
}

fn thin(pieces: &mut Option<Vec<GearPiece>>, key: &str, vocabulary: &Vocabulary) {
    let Some(attribute) = vocabulary.find_attribute(key) else {
        return;
    };
    let datum = Datum::Figure(figure(Quantity::Length(Length::from_millimetres(1))));
    for piece in pieces.get_or_insert_with(Vec::new) {
        if piece.tool.readings(attribute).is_empty() {
            piece.tool.set(attribute, vec![assumed(datum.clone())]);
        }
    }
}

fn figure(quantity: Quantity) -> Figure {
    Figure::reckoned(quantity, System::Metric, Rounding::Up)
}

/// A reading that is assumed to turn out so.
pub(super) fn assumed(datum: Datum) -> Reading {
    Reading { datum, by: None, on: None, how: How::Measured, error: None }
}

/// Steps for certificates and for the vessel's own gear.
pub(super) fn for_people_and_gear(profile: &Profile, points: &[Point<'_>]) -> Vec<Step> {
    let mut steps: Vec<Step> = Vec::new();
    for (requirement, wanted) in profile.requirements.iter().enumerate() {
        if !counts(wanted, points) {
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
                | Reason::CertificateDisputed { .. }
                | Reason::PersonDisputed { .. }
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
