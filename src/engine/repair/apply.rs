//! Carries out the steps of the shortest way on a copy of the vessel, so
//! that the engine can judge the result itself.

use super::settle::{assumed, settle};
use crate::engine::evaluate::point::Point;
use crate::engine::evaluate::{limit, satisfy};
use crate::engine::judge::breakpoints::Subject;
use crate::measure::{Answer, Day};
use crate::model::check::Judgement;
use crate::model::finding::{FilledSlot, Step, Target, WayToReady};
use crate::model::place::Place;
use crate::model::profile::{Profile, Requirement};
use crate::model::rule::{Holders, Need, Spec, Test};
use crate::model::vessel::{
    Certificate, Datum, Disputes, Person, State, Tool, Vessel, Whereabouts,
};
use crate::model::vocabulary::{AttributeShape, Class, Vocabulary};

/// The vessel after every step of the judgement's way to ready, with the
/// measurements assumed to turn out well.
pub fn repaired(
    vocabulary: &Vocabulary,
    vessel: &Vessel,
    judgement: &Judgement,
    departure: Day,
) -> Vessel {
    let Some(WayToReady::Steps { steps, .. }) = judgement.inverses.as_ref().map(|i| &i.way) else {
        return vessel.clone();
    };
    let by_name = judgement.why.is_asked();
    let point = Point::of(vocabulary, &judgement.profile, vessel, departure, by_name);
    let subject = Subject::over(point, judgement.days);
    let (settled, _) = settle(&subject);
    let subject = Subject::new(Point { vessel: &settled, ..subject.point }, subject.days);
    apply(&subject.point, steps, &subject.points())
}

/// The vessel after the steps; those on the vessel itself are settled
/// already.
pub(crate) fn apply(point: &Point<'_>, steps: &[Step], points: &[Point<'_>]) -> Vessel {
    let profile = point.profile;
    let mut vessel = point.vessel.clone();
    for step in steps {
        let requirement = &profile.requirements[step.requirement];
        match &step.target {
            Target::Vessel => {}
            Target::Tool(index) => {
                let slot = step.slots.first().copied();
                mend_tool(&mut vessel.kit[*index], requirement, slot, points, point.departure);
            }
            Target::Type(_) => {
                for slot in &step.slots {
                    let tool = new_tool(profile, step, *slot, points, point.departure);
                    vessel.kit.extend(tool);
                }
            }
            Target::Role(role) => certify(&mut vessel, requirement, role.as_ref(), point.departure),
            Target::Gear(name) => change_gear(&mut vessel, name, requirement, points),
        }
    }
    fit_spares(&mut vessel, profile, steps);
    vessel
}

fn spec_at(requirement: &Requirement, slot: FilledSlot) -> Option<&Spec> {
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
    slot: Option<FilledSlot>,
    points: &[Point<'_>],
    departure: Day,
) {
    tool.state = State::Serviceable;
    tool.whereabouts = Whereabouts::Aboard;
    tool.disputes = Disputes::default();
    if tool.acquired.is_some_and(|day| day > departure) {
        tool.acquired = Some(departure);
    }
    // Another copy of a document replaces the one that ran out.
    let class = points.first().map(|point| point.vocabulary.kind(tool.kind).class);
    if class == Some(Class::Document) {
        tool.expires = None;
    }
    if requirement.inspection.is_some() {
        tool.inspected = Some(departure);
    }
    if let Some(spec) = slot.and_then(|slot| spec_at(requirement, slot)) {
        let binding: Vec<_> =
            points.iter().filter(|point| point.binds(requirement) != Ok(false)).copied().collect();
        make_conform(tool, &spec.tests, &binding);
    }
}

fn new_tool(
    profile: &Profile,
    step: &Step,
    slot: FilledSlot,
    points: &[Point<'_>],
    departure: Day,
) -> Option<Tool> {
    let requirement = &profile.requirements[step.requirement];
    let spec = spec_at(requirement, slot)?;
    let mark = format!("new {} {}.{}", requirement.id, slot.of_type, slot.member);
    let mut tool = Tool::bare(mark, spec.kind, slot.count, Place::default());
    mend_tool(&mut tool, requirement, Some(slot), points, departure);
    for also in &step.also {
        for deemed in &profile.requirements[*also].deemed {
            if deemed.requirement == step.requirement {
                make_conform(&mut tool, &deemed.tests, points);
            }
        }
    }
    Some(tool)
}

/// Gives the tool whatever the tests ask and it does not show yet.
fn make_conform(tool: &mut Tool, tests: &[Test], points: &[Point<'_>]) {
    for test in tests {
        let passes = |tool: &Tool| {
            let test = std::slice::from_ref(test);
            points.iter().all(|point| satisfy::keeps(test, tool, point) == Answer::Yes)
        };
        if passes(tool) {
            continue;
        }
        // Of several words on it one is true.
        if let Some(good) = as_said(tool, test).into_iter().find(passes) {
            *tool = good;
            continue;
        }
        match test {
            Test::Limit { attribute, limit, .. } => {
                let Some(point) = points.first() else {
                    continue;
                };
                let AttributeShape::Quantity(kind) = point.vocabulary.attribute(*attribute).shape
                else {
                    continue;
                };
                if let Some(figure) = limit::example(limit, kind, points) {
                    tool.set(*attribute, vec![assumed(Datum::Figure(figure))]);
                }
            }
            Test::Feature { attribute, wanted } => {
                tool.set(*attribute, vec![assumed(Datum::Feature(*wanted))]);
            }
            Test::Choice { attribute, allowed } => {
                if let Some(word) = allowed.first() {
                    tool.set(*attribute, vec![assumed(Datum::Word(word.clone()))]);
                }
            }
            Test::AcquiredBefore(day) => tool.acquired = Some(day.previous()),
            // The first group that settles it; for rival readings all of them
            // one after the other, in either order, or one that suits all.
            Test::AnyOf(groups) | Test::Readings(groups) => {
                let along = |groups: &mut dyn Iterator<Item = &Vec<Test>>| {
                    let mut attempt = tool.clone();
                    groups.for_each(|group| make_conform(&mut attempt, group, points));
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

/// The tool by each word on each attribute of the test of which there are several.
fn as_said(tool: &Tool, test: &Test) -> Vec<Tool> {
    let mut ways = Vec::new();
    for attribute in satisfy::attributes_of(std::slice::from_ref(&vec![test.clone()])) {
        let readings = tool.readings(attribute);
        for reading in readings.iter().filter(|_| readings.len() > 1) {
            let mut way = tool.clone();
            way.set(attribute, vec![assumed(reading.datum.clone())]);
            ways.push(way);
        }
    }
    ways
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
        people.push(Person { name, roles, certificates, in_doubt: false, place: Place::default() });
        people.len() - 1
    });
    people[index].in_doubt = false;
    people[index].certificates.push(Certificate {
        kind: *kind,
        issued: Some(departure),
        expires: None,
        number: None,
        rivals: Vec::new(),
        place: Place::default(),
    });
}

fn change_gear(vessel: &mut Vessel, name: &str, requirement: &Requirement, points: &[Point<'_>]) {
    let Need::Gear { choices, .. } = &requirement.need else {
        return;
    };
    let open = |spec: &&Spec| points.iter().all(|point| point.holds_all(&spec.when) == Ok(true));
    let Some(spec) = choices.iter().find(open) else {
        return;
    };
    for piece in vessel.hooks.iter_mut().chain(&mut vessel.lines).flatten() {
        if piece.name == name {
            piece.tool.state = State::Serviceable;
            make_conform(&mut piece.tool, &spec.tests, points);
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
