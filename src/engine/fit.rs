//! Fit: does this tool satisfy this spec in this scene? Every reason why
//! not, and every fact that is missing.

use super::limit;
use super::scene::Scene;
use crate::measure::{Answer, Day, Figure, Interval, Length, Quantity};
use crate::model::profile::Requirement;
use crate::model::reason::{Demand, DisputedReading, Has, Reason};
use crate::model::rule::{Limit, Spec, Test};
use crate::model::vessel::{Datum, Reading, State, Tool, Whereabouts};
use crate::model::vocabulary::{AttributeId, Class};
use std::sync::Arc;

/// The answer of a list of reasons: a fault settles it, a missing fact
/// leaves it open.
pub(super) fn answer(reasons: &[Reason]) -> Answer {
    if reasons.iter().any(|reason| !reason.is_open()) {
        Answer::No
    } else if reasons.is_empty() {
        Answer::Yes
    } else {
        Answer::Unknown
    }
}

/// Every reason why the tool does not satisfy the spec; none if it does.
/// The kinds must agree already.
pub(super) fn fit(
    tool: &Tool,
    spec: &Spec,
    type_clause: Option<&str>,
    requirement: &Requirement,
    scene: &Scene<'_>,
) -> Vec<Reason> {
    let mut reasons = at_hand(tool, requirement.inspection, scene);
    // Of what is not there nothing more is worth asking.
    if reasons.contains(&Reason::Missing) {
        return reasons;
    }
    let vouched = vouched(
        tool,
        &[spec.clause.as_deref(), type_clause, Some(requirement.clause.as_str())],
        scene,
    );
    run(&spec.tests, tool, vouched, scene, &mut reasons);
    reasons
}

/// Reasons why the tool is not there, does not work or is out of date.
pub(super) fn at_hand(tool: &Tool, interval: Option<Interval>, scene: &Scene<'_>) -> Vec<Reason> {
    let mut reasons = there_and_works(tool, scene);
    for part in scene.vessel.kit.iter().filter(|part| tool.parts.contains(&part.mark)) {
        for reason in there_and_works(part, scene) {
            if !reasons.contains(&reason) {
                reasons.push(reason);
            }
        }
    }
    if let Some(interval) = inspection_of(tool, interval, scene) {
        // An inspection that lies ahead is none yet.
        let done = tool.inspected.filter(|day| *day <= scene.day);
        match done.map(|day| day.through(interval)) {
            None => reasons.push(Reason::InspectionUndated),
            Some(last) if scene.day > last => reasons.push(lapse(last.next(), true, scene)),
            Some(_) => {}
        }
    }
    reasons
}

/// Reasons why the tool is not aboard, does not work or has expired.
fn there_and_works(tool: &Tool, scene: &Scene<'_>) -> Vec<Reason> {
    let mut reasons = Vec::new();
    let late = tool.acquired.is_some_and(|day| scene.day < day);
    match &tool.whereabouts {
        Whereabouts::Aboard if late => reasons.push(Reason::NotAboard { lent_to: None }),
        Whereabouts::Aboard => {}
        Whereabouts::Ashore => reasons.push(Reason::NotAboard { lent_to: None }),
        Whereabouts::Lent { to, span } if span.holds(scene.day) => {
            reasons.push(Reason::NotAboard { lent_to: Some(to.clone()) });
        }
        Whereabouts::Lent { .. } if late => reasons.push(Reason::NotAboard { lent_to: None }),
        Whereabouts::Lent { .. } => {}
        Whereabouts::Missing => reasons.push(Reason::Missing),
        Whereabouts::Unknown => reasons.push(Reason::WhereaboutsUnknown),
    }
    // A document is there or not; whether it works is no question.
    let document = scene.vocabulary.kind(tool.kind).class == Class::Document;
    match tool.state {
        _ if document => {}
        State::Serviceable => {}
        State::Broken => reasons.push(Reason::NotServiceable),
        State::Unknown => reasons.push(Reason::StateUnknown),
    }
    if let Some(day) = tool.expires.filter(|day| scene.day > *day) {
        reasons.push(lapse(day.next(), false, scene));
    }
    reasons
}

/// Documents are read, not inspected.
fn inspection_of(tool: &Tool, interval: Option<Interval>, scene: &Scene<'_>) -> Option<Interval> {
    let class = scene.vocabulary.kind(tool.kind).class;
    interval.filter(|_| matches!(class, Class::Tool | Class::Spare))
}

/// The last day on which the tool serves, if there is one.
pub(super) fn serves_through(
    tool: &Tool,
    interval: Option<Interval>,
    scene: &Scene<'_>,
) -> Option<Day> {
    let inspected = inspection_of(tool, interval, scene)
        .and_then(|interval| tool.inspected.map(|day| day.through(interval)));
    [tool.expires, inspected].into_iter().flatten().min()
}

fn lapse(first_day_without: Day, inspection: bool, scene: &Scene<'_>) -> Reason {
    if first_day_without > scene.departure {
        Reason::LapsesDuringTrip { on: first_day_without, inspection }
    } else if inspection {
        Reason::InspectionLapsed { since: first_day_without }
    } else {
        Reason::Expired { since: first_day_without }
    }
}

/// Whether a dated statement of conformity to this clause is there.
fn vouched(tool: &Tool, clauses: &[Option<&str>], scene: &Scene<'_>) -> bool {
    let source = &scene.profile.source;
    let made = tool.conforms.iter().filter(|statement| statement.on <= scene.day);
    made.into_iter().any(|statement| {
        let to = plain(&statement.to);
        clauses
            .iter()
            .flatten()
            .any(|clause| to == plain(clause) || to == plain(&format!("{source} {clause}")))
    })
}

/// A clause without case, commas and spaces, so that two ways to write it
/// are the same.
fn plain(clause: &str) -> String {
    clause
        .chars()
        .filter(|c| !c.is_whitespace() && *c != ',')
        .flat_map(char::to_lowercase)
        .collect()
}

/// Runs every test and notes what fails or is open.
pub(super) fn run(
    tests: &[Test],
    tool: &Tool,
    vouched: bool,
    scene: &Scene<'_>,
    reasons: &mut Vec<Reason>,
) {
    for test in tests {
        run_one(test, tool, vouched, scene, reasons);
    }
}

fn run_one(test: &Test, tool: &Tool, vouched: bool, scene: &Scene<'_>, reasons: &mut Vec<Reason>) {
    match test {
        Test::Limit { attribute, limit, .. } => {
            reasons.extend(run_limit(*attribute, limit, tool, vouched, scene));
        }
        Test::Feature { attribute, wanted } => {
            let demand = || Demand::Is(*wanted);
            let says = |datum: &Datum| matches!(datum, Datum::Feature(has) if has == wanted).into();
            reasons.extend(run_words(*attribute, demand, says, tool, vouched, scene));
        }
        Test::Choice { attribute, allowed } => {
            let demand = || Demand::OneOf(allowed.clone());
            let says = |datum: &Datum| word_answer(datum, allowed, *attribute, scene);
            reasons.extend(run_words(*attribute, demand, says, tool, vouched, scene));
        }
        Test::AcquiredBefore(before) => match tool.acquired {
            None => reasons.push(Reason::AcquiredUnknown { before: *before }),
            Some(acquired) if acquired >= *before => {
                reasons.push(Reason::AcquiredTooLate { acquired, before: *before });
            }
            Some(_) => {}
        },
        Test::AnyOf(groups) => reasons.extend(run_any(groups, tool, vouched, scene)),
        Test::Readings(groups) => reasons.extend(run_readings(groups, tool, vouched, scene)),
    }
}

fn run_groups(
    groups: &[Vec<Test>],
    tool: &Tool,
    vouched: bool,
    scene: &Scene<'_>,
) -> Vec<Vec<Reason>> {
    groups
        .iter()
        .map(|group| {
            let mut reasons = Vec::new();
            run(group, tool, vouched, scene, &mut reasons);
            reasons
        })
        .collect()
}

/// One group that holds settles it; else the missing facts of the first
/// group that they leave open; else none of them holds.
fn run_any(groups: &[Vec<Test>], tool: &Tool, vouched: bool, scene: &Scene<'_>) -> Vec<Reason> {
    let results = run_groups(groups, tool, vouched, scene);
    if results.iter().any(Vec::is_empty) {
        return Vec::new();
    }
    if let Some(open) = results.iter().find(|reasons| answer(reasons) == Answer::Unknown) {
        return open.clone();
    }
    if let [only] = results.as_slice() {
        return only.clone();
    }
    vec![Reason::NoAlternative { attributes: attributes_of(groups) }]
}

/// What the rival readings agree on; where they differ nobody can tell.
fn run_readings(
    groups: &[Vec<Test>],
    tool: &Tool,
    vouched: bool,
    scene: &Scene<'_>,
) -> Vec<Reason> {
    let results = run_groups(groups, tool, vouched, scene);
    let answers: Vec<_> = results.iter().map(|reasons| answer(reasons)).collect();
    if answers.iter().all(|a| *a == Answer::Yes) {
        return Vec::new();
    }
    if answers.iter().all(|a| *a == Answer::No) {
        return results.into_iter().next().unwrap_or_default();
    }
    if answers.contains(&Answer::Yes) && answers.contains(&Answer::No) {
        return vec![Reason::WordingDisputed { attributes: attributes_of(groups) }];
    }
    let open = results.into_iter().find(|reasons| answer(reasons) == Answer::Unknown);
    open.unwrap_or_default()
}

/// The attributes that the tests speak of, each once.
pub(super) fn attributes_of(groups: &[Vec<Test>]) -> Vec<AttributeId> {
    let mut found = Vec::new();
    for test in groups.iter().flatten() {
        let ids = match test {
            Test::Limit { attribute, .. }
            | Test::Feature { attribute, .. }
            | Test::Choice { attribute, .. } => vec![*attribute],
            Test::AcquiredBefore(_) => Vec::new(),
            Test::AnyOf(groups) | Test::Readings(groups) => attributes_of(groups),
        };
        for id in ids {
            if !found.contains(&id) {
                found.push(id);
            }
        }
    }
    found
}

fn run_words(
    attribute: AttributeId,
    demand: impl Fn() -> Demand,
    says: impl Fn(&Datum) -> Answer,
    tool: &Tool,
    vouched: bool,
    scene: &Scene<'_>,
) -> Option<Reason> {
    let readings = tool.readings(attribute);
    match Answer::consensus(readings.iter().map(|reading| says(&reading.datum))) {
        Answer::Yes => None,
        Answer::No => {
            let has = has(&readings[0].datum);
            Some(Reason::OutOfSpecification { attribute, has, demand: demand(), by: None })
        }
        Answer::Unknown if readings.iter().any(|r| says(&r.datum) == Answer::No) => {
            Some(disputed(attribute, readings, demand()))
        }
        Answer::Unknown => {
            let settled = vouched && !scene.vocabulary.attribute(attribute).shown;
            let said = readings.first().map(|reading| has(&reading.datum));
            (!settled).then(|| Reason::Unmeasured { attribute, has: said, demand: demand() })
        }
    }
}

/// Whether the word is one of those allowed, or may be one of them.
fn word_answer(
    datum: &Datum,
    allowed: &[String],
    attribute: AttributeId,
    scene: &Scene<'_>,
) -> Answer {
    let Datum::Word(word) = datum else { return Answer::No };
    if allowed.contains(word) {
        return Answer::Yes;
    }
    let may_be = scene.vocabulary.attribute(attribute).may_be.get(word);
    let open = may_be.is_some_and(|words| words.iter().any(|word| allowed.contains(word)));
    if open { Answer::Unknown } else { Answer::No }
}

fn run_limit(
    attribute: AttributeId,
    limit: &Limit,
    tool: &Tool,
    vouched: bool,
    scene: &Scene<'_>,
) -> Option<Reason> {
    let readings = tool.readings(attribute);
    let figures: Vec<_> = readings.iter().filter_map(figure_of).collect();
    if figures.is_empty() {
        let settled = vouched && !scene.vocabulary.attribute(attribute).shown;
        return (!settled).then(|| Reason::Unmeasured {
            attribute,
            has: None,
            demand: limit::demand(limit, scene),
        });
    }
    let answers = figures.iter().flat_map(|(figure, error)| {
        spread(figure.quantity, *error).map(|quantity| limit::keeps(limit, quantity, scene))
    });
    match Answer::consensus(answers) {
        Answer::Yes => None,
        Answer::No => Some(fault(attribute, limit, figures[0].0, scene)),
        Answer::Unknown => Some(open(attribute, limit, &figures, readings, scene)),
    }
}

fn figure_of(reading: &Reading) -> Option<(&Figure, i64)> {
    match &reading.datum {
        Datum::Figure(figure) => {
            Some((figure, reading.error.as_ref().map_or(0, |e| e.quantity.steps())))
        }
        _ => None,
    }
}

/// The middle and both ends of what a reading with a tape error may mean.
pub(super) fn spread(quantity: Quantity, error: i64) -> [Quantity; 3] {
    let kind = quantity.kind();
    [-error, 0, error].map(|shift| Quantity::from_steps(kind, quantity.steps() + shift))
}

fn fault(attribute: AttributeId, limit: &Limit, has: &Figure, scene: &Scene<'_>) -> Reason {
    let demand = limit::demand(limit, scene);
    let by = limit::missed_by(&demand, has.quantity);
    if let (true, Demand::Least(least), Ok(freeboard), Some(Quantity::Length(short))) =
        (limit::reaches(limit), &demand, scene.freeboard, by)
    {
        return Reason::TooShortForRail {
            attribute,
            has: has.clone(),
            least: least.clone(),
            short,
            freeboard,
        };
    }
    Reason::OutOfSpecification { attribute, has: Has::Figure(has.clone()), demand, by }
}

fn open(
    attribute: AttributeId,
    limit: &Limit,
    figures: &[(&Figure, i64)],
    readings: &[Reading],
    scene: &Scene<'_>,
) -> Reason {
    if let Some(fact) = limit::missing_fact(limit, scene) {
        return Reason::VesselFactUnknown { fact };
    }
    let agree = figures.iter().all(|(figure, _)| figure.quantity == figures[0].0.quantity);
    if matches!(limit, Limit::About { .. }) && agree {
        let limit = Arc::new(limit.clone());
        return Reason::Approximate { attribute, has: figures[0].0.clone(), limit };
    }
    disputed(attribute, readings, limit::demand(limit, scene))
}

fn disputed(attribute: AttributeId, readings: &[Reading], demand: Demand) -> Reason {
    let readings = readings
        .iter()
        .map(|reading| DisputedReading {
            has: has(&reading.datum),
            by: reading.by.clone(),
            on: reading.on,
        })
        .collect();
    Reason::Disputed { attribute, readings, demand }
}

fn has(datum: &Datum) -> Has {
    match datum {
        Datum::Figure(figure) => Has::Figure(figure.clone()),
        Datum::Feature(has) => Has::Feature(*has),
        Datum::Word(word) => Has::Word(word.clone()),
    }
}

/// How much longer than the least a tool is that a reach rule measures; the
/// assignment spends the shortest tools that will do.
pub(super) fn to_spare(tool: &Tool, tests: &[Test], scene: &Scene<'_>) -> Length {
    for test in tests {
        let Test::Limit { attribute, limit, .. } = test else {
            continue;
        };
        if !limit::reaches(limit) {
            continue;
        }
        let has = tool.readings(*attribute).iter().filter_map(figure_of).next();
        if let (Demand::Least(least), Some((has, _))) = (limit::demand(limit, scene), has)
            && let (Some(has), Some(least)) = (has.length(), least.length())
        {
            return has.less(least);
        }
    }
    Length::ZERO
}
