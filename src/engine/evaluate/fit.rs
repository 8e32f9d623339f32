//! Fit: does this tool satisfy this spec at this point? Every reason why
//! not, and every fact that is missing.

use super::conformity::Clauses;
use super::notes::{Notes, Sum};
use super::point::Point;
use super::readings;
use crate::measure::{Answer, Day, Interval};
use crate::model::profile::Requirement;
use crate::model::reason::{Demand, Reason};
use crate::model::rule::{Spec, Test};
use crate::model::vessel::{Datum, State, Tool, Whereabouts};
use crate::model::vocabulary::{AttributeId, Class};

/// Every reason why the tool does not satisfy the spec; none if it does.
/// The kinds must agree already.
pub(crate) fn fit(
    tool: &Tool,
    spec: &Spec,
    type_clause: Option<&str>,
    requirement: &Requirement,
    point: &Point<'_>,
) -> Vec<Reason> {
    noted(tool, spec, type_clause, requirement, point)
}

/// The same, noted in whatever way is wanted.
pub(crate) fn noted<N: Notes>(
    tool: &Tool,
    spec: &Spec,
    type_clause: Option<&str>,
    requirement: &Requirement,
    point: &Point<'_>,
) -> N {
    let mut notes: N = at_hand(tool, requirement.inspection, point);
    if !notes.is_settled() {
        let clauses = Clauses::of(spec, type_clause, requirement);
        run(&spec.tests, tool, clauses, point, &mut notes);
    }
    notes
}

/// Reasons why the tool is not there, does not work or is out of date.
fn at_hand<N: Notes>(tool: &Tool, interval: Option<Interval>, point: &Point<'_>) -> N {
    let mut notes = N::default();
    there_and_works(tool, point, &mut notes);
    if !tool.parts.is_empty() {
        parts(tool, point, &mut notes);
    }
    if let Some(interval) = inspection_of(tool, interval, point) {
        // An inspection that lies ahead is none yet.
        let done = tool.inspected.filter(|day| *day <= point.day);
        match done.map(|day| day.through(interval)) {
            None => notes.open(|| Reason::InspectionUndated),
            Some(last) if point.day > last => notes.fault(|| lapse(last.next(), true, point)),
            Some(_) => {}
        }
    }
    notes
}

/// What is wrong with the parts that the kit lists as tools of their own,
/// each reason once.
fn parts<N: Notes>(tool: &Tool, point: &Point<'_>, notes: &mut N) {
    let mut reasons: Vec<Reason> = Vec::new();
    there_and_works(tool, point, &mut reasons);
    for part in point.vessel.kit.iter().filter(|part| tool.parts.contains(&part.mark)) {
        let mut own: Vec<Reason> = Vec::new();
        there_and_works(part, point, &mut own);
        for reason in own {
            if !reasons.contains(&reason) {
                reasons.push(reason.clone());
                match reason.is_open() {
                    true => notes.open(|| reason),
                    false => notes.fault(|| reason),
                }
            }
        }
    }
}

/// Reasons why the tool is not aboard, does not work or has expired.
fn there_and_works<N: Notes>(tool: &Tool, point: &Point<'_>, notes: &mut N) {
    let late = tool.acquired.is_some_and(|day| point.day < day);
    match &tool.whereabouts {
        Whereabouts::Aboard if late => notes.fault(|| Reason::NotAboard { lent_to: None }),
        Whereabouts::Aboard => {}
        Whereabouts::Ashore => notes.fault(|| Reason::NotAboard { lent_to: None }),
        Whereabouts::Lent { to, span } if span.holds(point.day) => {
            notes.fault(|| Reason::NotAboard { lent_to: Some(to.clone()) });
        }
        Whereabouts::Lent { .. } if late => notes.fault(|| Reason::NotAboard { lent_to: None }),
        Whereabouts::Lent { .. } => {}
        Whereabouts::Missing => notes.fault(|| Reason::Missing),
        Whereabouts::Unknown => notes.open(|| Reason::WhereaboutsUnknown),
    }
    // A document is there or not; whether it works is no question.
    let document = point.vocabulary.kind(tool.kind).class == Class::Document;
    match tool.state {
        _ if document => {}
        State::Serviceable => {}
        State::Broken => notes.fault(|| Reason::NotServiceable),
        State::Unknown => notes.open(|| Reason::StateUnknown),
    }
    if let Some(day) = tool.expires.filter(|day| point.day > *day) {
        notes.fault(|| lapse(day.next(), false, point));
    }
}

/// Documents are read, not inspected.
fn inspection_of(tool: &Tool, interval: Option<Interval>, point: &Point<'_>) -> Option<Interval> {
    let class = point.vocabulary.kind(tool.kind).class;
    interval.filter(|_| matches!(class, Class::Tool | Class::Spare))
}

/// The last day on which the tool serves, if there is one.
pub(crate) fn serves_through(
    tool: &Tool,
    interval: Option<Interval>,
    point: &Point<'_>,
) -> Option<Day> {
    let inspected = inspection_of(tool, interval, point)
        .and_then(|interval| tool.inspected.map(|day| day.through(interval)));
    [tool.expires, inspected].into_iter().flatten().min()
}

fn lapse(first_day_without: Day, inspection: bool, point: &Point<'_>) -> Reason {
    if first_day_without > point.departure {
        Reason::LapsesDuringTrip { on: first_day_without, inspection }
    } else if inspection {
        Reason::InspectionLapsed { since: first_day_without }
    } else {
        Reason::Expired { since: first_day_without }
    }
}

/// Runs every test and notes what fails or is open.
pub(crate) fn run<N: Notes>(
    tests: &[Test],
    tool: &Tool,
    clauses: Clauses<'_>,
    point: &Point<'_>,
    notes: &mut N,
) {
    for test in tests {
        run_one(test, tool, clauses, point, notes);
    }
}

/// Whether the tool keeps all the tests, no statement speaking for it.
pub(crate) fn keeps(tests: &[Test], tool: &Tool, point: &Point<'_>) -> Answer {
    let mut sum = Sum::default();
    run(tests, tool, Clauses::NONE, point, &mut sum);
    sum.answer()
}

fn run_one<N: Notes>(
    test: &Test,
    tool: &Tool,
    clauses: Clauses<'_>,
    point: &Point<'_>,
    notes: &mut N,
) {
    match test {
        Test::Limit { attribute, limit, .. } => {
            readings::keep_limit(*attribute, limit, tool, clauses, point, notes);
        }
        Test::Feature { attribute, wanted } => {
            let demand = || Demand::Is(*wanted);
            let says = |datum: &Datum| matches!(datum, Datum::Feature(has) if has == wanted).into();
            readings::say_words(*attribute, demand, says, tool, clauses, point, notes);
        }
        Test::Choice { attribute, allowed } => {
            let demand = || Demand::OneOf(allowed.clone());
            let says = |datum: &Datum| readings::word_answer(datum, allowed, *attribute, point);
            readings::say_words(*attribute, demand, says, tool, clauses, point, notes);
        }
        Test::AcquiredBefore(before) => match tool.acquired {
            None => notes.open(|| Reason::AcquiredUnknown { before: *before }),
            Some(acquired) if acquired >= *before => {
                notes.fault(|| Reason::AcquiredTooLate { acquired, before: *before });
            }
            Some(_) => {}
        },
        Test::AnyOf(groups) => run_any(groups, tool, clauses, point, notes),
        Test::Readings(groups) => run_readings(groups, tool, clauses, point, notes),
    }
}

fn run_group<N: Notes>(group: &[Test], tool: &Tool, clauses: Clauses<'_>, point: &Point<'_>) -> N {
    let mut notes = N::default();
    run(group, tool, clauses, point, &mut notes);
    notes
}

/// One group that holds settles it; else the missing facts of the first
/// group that they leave open; else none of them holds.
fn run_any<N: Notes>(
    groups: &[Vec<Test>],
    tool: &Tool,
    clauses: Clauses<'_>,
    point: &Point<'_>,
    notes: &mut N,
) {
    let (mut open, mut failed) = (None, None);
    for group in groups {
        let own: N = run_group(group, tool, clauses, point);
        match own.answer() {
            Answer::Yes => return,
            Answer::Unknown => open = open.or(Some(own)),
            Answer::No => failed = Some(own),
        }
    }
    match (open, failed) {
        (Some(open), _) => notes.append(open),
        (None, Some(only)) if groups.len() == 1 => notes.append(only),
        (None, _) => notes.fault(|| Reason::NoAlternative { attributes: attributes_of(groups) }),
    }
}

/// What the rival readings agree on; where they differ nobody can tell.
fn run_readings<N: Notes>(
    groups: &[Vec<Test>],
    tool: &Tool,
    clauses: Clauses<'_>,
    point: &Point<'_>,
    notes: &mut N,
) {
    let (mut kept, mut failed, mut open, mut first) = (0, 0, None, None);
    for group in groups {
        let own: N = run_group(group, tool, clauses, point);
        match own.answer() {
            Answer::Yes => kept += 1,
            Answer::No => {
                failed += 1;
                first = first.or(Some(own));
            }
            Answer::Unknown => open = open.or(Some(own)),
        }
    }
    if kept == groups.len() {
        return;
    }
    match (first, open) {
        (Some(first), _) if failed == groups.len() => notes.append(first),
        (Some(_), _) if kept > 0 => {
            notes.open(|| Reason::WordingDisputed { attributes: attributes_of(groups) });
        }
        (_, Some(open)) => notes.append(open),
        _ => {}
    }
}

/// The attributes that the tests speak of, each once.
pub(crate) fn attributes_of(groups: &[Vec<Test>]) -> Vec<AttributeId> {
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
