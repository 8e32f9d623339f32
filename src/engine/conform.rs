//! Carries out the steps of the shortest way on a copy of the vessel, so
//! that the engine can judge the result itself.

use super::bench::Bench;
use super::fit;
use super::holders;
use super::limit;
use super::scene::Scene;
use super::select::Course;
use crate::measure::Day;
use crate::measure::{Answer, Figure, Length, Quantity, Rounding, System};
use crate::model::check::Judgement;
use crate::model::finding::{Deed, Slot, Step, Target, WayToReady};
use crate::model::place::Place;
use crate::model::profile::{Level, Profile, Requirement};
use crate::model::reason::{Reason, VesselFact};
use crate::model::rule::{Holders, Need, Spec, Test};
use crate::model::vessel::{
    Certificate, Datum, Freeboard, FreeboardReading, GearPiece, How, Person, Reading, State,
    Station, Tool, Vessel, Whereabouts,
};
use crate::model::vocabulary::{AttributeShape, Class, Vocabulary};
use std::sync::Arc;

/// The vessel after every step of the judgement's way to ready, with the
/// measurements assumed to turn out well.
pub fn perform(
    vocabulary: &Vocabulary,
    vessel: &Vessel,
    judgement: &Judgement,
    departure: Day,
) -> Vessel {
    let Some(WayToReady::Steps { steps, .. }) = judgement.inverses.as_ref().map(|i| &i.way) else {
        return vessel.clone();
    };
    let course = Course {
        profile: Arc::clone(&judgement.profile),
        why: judgement.why.clone(),
        days: judgement.days,
        always: true,
        editions: Vec::new(),
    };
    let profile = &judgement.profile;
    let bench = Bench { vocabulary, vessel, course: &course, departure };
    let (settled, _) = settle(&bench, profile);
    let bench = Bench { vessel: &settled, ..bench };
    let days = bench.days(profile, judgement.days);
    let scenes = super::bench::scenes(&bench, profile, &days);
    apply(&bench, profile, steps, &scenes)
}

/// Missing facts of the vessel itself, each settled as if it turned out
/// well, with a step for each.
pub(super) fn settle(bench: &Bench<'_>, profile: &Profile) -> (Vessel, Vec<Step>) {
    let mut vessel = bench.vessel.clone();
    let mut steps = Vec::new();
    let mut settled = Vec::new();
    for (requirement, fact) in missing_facts(bench, profile) {
        if settled.contains(&fact) {
            continue;
        }
        settle_fact(&mut vessel, &fact, bench, profile);
        let reasons = vec![Reason::VesselFactUnknown { fact: fact.clone() }];
        let (also, slots) = (Vec::new(), Vec::new());
        steps.push(Step {
            deed: Deed::Measure,
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

/// The facts, each with the first requirement that hangs on it.
fn missing_facts(bench: &Bench<'_>, profile: &Profile) -> Vec<(usize, VesselFact)> {
    let mut facts = Vec::new();
    let waters = bench.waters(profile);
    let disputed = waters.as_ref().is_ok_and(|w| w.iter().any(|readings| readings.len() > 1));
    let first = bench.course.days.from.unwrap_or(bench.departure);
    let at = waters.as_ref().map(|w| w[0][0].0).map_err(|missing| *missing);
    let scene = bench.scene(profile, at, first);
    let required = |requirement: &Requirement| {
        requirement.level == Level::Required && scene.binds(requirement) != Ok(false)
    };
    let rail = match waters {
        Err(missing) => Some(VesselFact::from(missing)),
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
        own.extend(scene.binds(requirement).err());
        for spec in super::edges::specs(&requirement.need) {
            own.extend(scene.holds_all(&spec.when).err());
            for test in &spec.tests {
                if let Test::Limit { limit, .. } = test {
                    own.extend(limit::missing_fact(limit, &scene));
                }
            }
        }
        if matches!(requirement.need, Need::Gear { .. }) {
            let reasons = holders::reasons(requirement, &scene).unwrap_or_default();
            own.extend(reasons.into_iter().filter_map(|reason| match reason {
                Reason::VesselFactUnknown { fact } => Some(fact),
                _ => None,
            }));
        }
        facts.extend(own.into_iter().map(|fact| (index, fact)));
    }
    facts
}

fn settle_fact(vessel: &mut Vessel, fact: &VesselFact, bench: &Bench<'_>, profile: &Profile) {
    match fact {
        VesselFact::Freeboard | VesselFact::FreeboardFrom => {
            vessel.freeboard = Freeboard {
                from: profile.freeboard_from,
                stations: vec![Station { name: None, readings: vec![low_freeboard()] }],
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
            thin(&mut vessel.hooks, "wire", bench.vocabulary);
            vessel.coverage.all_seen.extend(bench.vocabulary.find_kind("hook"));
        }
        VesselFact::Lines => {
            thin(&mut vessel.lines, "diameter", bench.vocabulary);
            if let (Some([]), Some(kind)) =
                (vessel.lines.as_deref(), bench.vocabulary.find_kind("fishing-line"))
            {
                let tool = Tool::bare("line", kind, 1, Place::default());
                vessel.lines = Some(vec![GearPiece { name: "line".to_owned(), tool }]);
                thin(&mut vessel.lines, "diameter", bench.vocabulary);
            }
            vessel.coverage.all_seen.extend(bench.vocabulary.find_kind("fishing-line"));
        }
        VesselFact::People => {}
        VesselFact::Aboard(kind) => {
            vessel.coverage.all_seen.insert(*kind);
        }
    }
}

/// A tenth of a metre: the lowest rail that a working vessel might have.
fn low_freeboard() -> FreeboardReading {
    let figure = figure(Quantity::Length(Length::from_millimetres(100)));
    FreeboardReading {
        low: figure.clone(),
        high: figure,
        load: None,
        by: None,
        on: None,
        how: How::Measured,
        error: None,
        place: Place::default(),
    }
}

fn thin(pieces: &mut Option<Vec<GearPiece>>, key: &str, vocabulary: &Vocabulary) {
    let Some(attribute) = vocabulary.find_attribute(key) else {
        return;
    };
    let datum = Datum::Figure(figure(Quantity::Length(Length::from_millimetres(1))));
    for piece in pieces.get_or_insert_with(Vec::new) {
        if piece.tool.readings(attribute).is_empty() {
            piece.tool.set(attribute, vec![reading(datum.clone())]);
        }
    }
}

fn figure(quantity: Quantity) -> Figure {
    Figure::reckoned(quantity, System::Metric, Rounding::Up)
}

fn reading(datum: Datum) -> Reading {
    Reading { datum, by: None, on: None, how: How::Measured, error: None }
}

/// The vessel after the steps; those on the vessel itself are settled
/// already.
pub(super) fn apply(
    bench: &Bench<'_>,
    profile: &Profile,
    steps: &[Step],
    scenes: &[Scene<'_>],
) -> Vessel {
    let mut vessel = bench.vessel.clone();
    for step in steps {
        let requirement = &profile.requirements[step.requirement];
        match &step.target {
            Target::Vessel => {}
            Target::Tool(index) => {
                let slot = step.slots.first().copied();
                mend_tool(&mut vessel.kit[*index], requirement, slot, scenes, bench.departure);
            }
            Target::Type(_) => {
                for slot in &step.slots {
                    let tool = new_tool(profile, step, *slot, scenes, bench.departure);
                    vessel.kit.extend(tool);
                }
            }
            Target::Role(role) => certify(&mut vessel, requirement, role.as_ref(), bench.departure),
            Target::Gear(name) => change_gear(&mut vessel, name, requirement, scenes),
        }
    }
    fit_spares(&mut vessel, profile, steps);
    vessel
}

fn spec_at(requirement: &Requirement, slot: Slot) -> Option<&Spec> {
    match &requirement.need {
        Need::Tools { types, .. } => {
            types.get(slot.of_type)?.members.get(slot.member)?.choices.get(slot.choice)
        }
        _ => None,
    }
}

fn mend_tool(
    tool: &mut Tool,
    requirement: &Requirement,
    slot: Option<Slot>,
    scenes: &[Scene<'_>],
    departure: Day,
) {
    tool.state = State::Serviceable;
    tool.whereabouts = Whereabouts::Aboard;
    if tool.acquired.is_some_and(|day| day > departure) {
        tool.acquired = Some(departure);
    }
    // Another copy of a document replaces the one that ran out.
    let class = scenes.first().map(|scene| scene.vocabulary.kind(tool.kind).class);
    if class == Some(Class::Document) {
        tool.expires = None;
    }
    if requirement.inspection.is_some() {
        tool.inspected = Some(departure);
    }
    if let Some(spec) = slot.and_then(|slot| spec_at(requirement, slot)) {
        let binding: Vec<_> =
            scenes.iter().filter(|scene| scene.binds(requirement) != Ok(false)).copied().collect();
        make_conform(tool, &spec.tests, &binding);
    }
}

fn new_tool(
    profile: &Profile,
    step: &Step,
    slot: Slot,
    scenes: &[Scene<'_>],
    departure: Day,
) -> Option<Tool> {
    let requirement = &profile.requirements[step.requirement];
    let spec = spec_at(requirement, slot)?;
    let mark = format!("new {} {}.{}", requirement.id, slot.of_type, slot.member);
    let mut tool = Tool::bare(mark, spec.kind, slot.count, Place::default());
    mend_tool(&mut tool, requirement, Some(slot), scenes, departure);
    for also in &step.also {
        for deemed in &profile.requirements[*also].deemed {
            if deemed.requirement == step.requirement {
                make_conform(&mut tool, &deemed.tests, scenes);
            }
        }
    }
    Some(tool)
}

/// Gives the tool whatever the tests ask and it does not show yet.
fn make_conform(tool: &mut Tool, tests: &[Test], scenes: &[Scene<'_>]) {
    for test in tests {
        let passes = |tool: &Tool| {
            let test = std::slice::from_ref(test);
            scenes.iter().all(|scene| fit::keeps(test, tool, scene) == Answer::Yes)
        };
        if passes(tool) {
            continue;
        }
        match test {
            Test::Limit { attribute, limit, .. } => {
                let Some(scene) = scenes.first() else {
                    continue;
                };
                let AttributeShape::Quantity(kind) = scene.vocabulary.attribute(*attribute).shape
                else {
                    continue;
                };
                if let Some(figure) = limit::example(limit, kind, scenes) {
                    tool.set(*attribute, vec![reading(Datum::Figure(figure))]);
                }
            }
            Test::Feature { attribute, wanted } => {
                tool.set(*attribute, vec![reading(Datum::Feature(*wanted))]);
            }
            Test::Choice { attribute, allowed } => {
                if let Some(word) = allowed.first() {
                    tool.set(*attribute, vec![reading(Datum::Word(word.clone()))]);
                }
            }
            Test::AcquiredBefore(day) => tool.acquired = Some(day.previous()),
            // The first group that settles it; for rival readings all of them
            // one after the other, in either order, or one that suits all.
            Test::AnyOf(groups) | Test::Readings(groups) => {
                let along = |groups: &mut dyn Iterator<Item = &Vec<Test>>| {
                    let mut attempt = tool.clone();
                    groups.for_each(|group| make_conform(&mut attempt, group, scenes));
                    attempt
                };
                let singles = groups.iter().map(|group| along(&mut std::iter::once(group)));
                let mut attempts: Vec<Tool> = singles.collect();
                if matches!(test, Test::Readings(_)) {
                    attempts.push(along(&mut groups.iter()));
                    attempts.push(along(&mut groups.iter().rev()));
                }
                if let Some(good) = attempts.into_iter().find(passes) {
                    *tool = good;
                }
            }
        }
    }
}

/// Certifies the first person who holds the role (for no single role: all
/// that the rule names), hired if there is none. Where the rule names no role
/// it may be anybody, so it is nobody on whom another requirement could count.
fn certify(vessel: &mut Vessel, requirement: &Requirement, role: Option<&String>, departure: Day) {
    let Need::Certificates { kind, holders, .. } = &requirement.need else { return };
    let roles: Vec<String> = match (role, holders) {
        (Some(role), _) => vec![role.clone()],
        (None, Holders::EachRole(roles)) => roles.clone(),
        (None, Holders::People(_)) => Vec::new(),
    };
    let people = vessel.people.get_or_insert_with(Vec::new);
    let holds = |person: &Person| roles.iter().all(|role| person.roles.contains(role));
    let position = people.iter().position(|person| !roles.is_empty() && holds(person));
    let index = position.unwrap_or_else(|| {
        let (name, certificates) = (roles.join(" and "), Vec::new());
        people.push(Person { name, roles, certificates, place: Place::default() });
        people.len() - 1
    });
    people[index].certificates.push(Certificate {
        kind: *kind,
        issued: Some(departure),
        expires: None,
        number: None,
        place: Place::default(),
    });
}

fn change_gear(vessel: &mut Vessel, name: &str, requirement: &Requirement, scenes: &[Scene<'_>]) {
    let Need::Gear { choices, .. } = &requirement.need else {
        return;
    };
    let open = |spec: &&Spec| scenes.iter().all(|scene| scene.holds_all(&spec.when) == Ok(true));
    let Some(spec) = choices.iter().find(open) else {
        return;
    };
    for piece in vessel.hooks.iter_mut().chain(&mut vessel.lines).flatten() {
        if piece.name == name {
            piece.tool.state = State::Serviceable;
            make_conform(&mut piece.tool, &spec.tests, scenes);
        }
    }
}

/// Spares that were brought, or of which nobody knew what they fit, fit
/// whatever serves the requirement they are for; others what they did.
fn fit_spares(vessel: &mut Vessel, profile: &Profile, steps: &[Step]) {
    for step in steps {
        let requirement = &profile.requirements[step.requirement];
        let Need::Tools { spare_for: Some(served), .. } = &requirement.need else {
            continue;
        };
        let kinds = profile.requirements[*served].kinds();
        let marks: Vec<String> = vessel
            .kit
            .iter()
            .filter(|tool| kinds.contains(&tool.kind))
            .map(|tool| tool.mark.clone())
            .collect();
        let brought = format!("new {} ", requirement.id);
        for (index, tool) in vessel.kit.iter_mut().enumerate() {
            let looked_at = step.target == Target::Tool(index) && tool.fits.is_empty();
            if looked_at || tool.mark.starts_with(&brought) {
                tool.fits.clone_from(&marks);
            }
        }
    }
}
