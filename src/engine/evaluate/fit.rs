//! Fit: does this tool satisfy this spec at this point? Every reason why
//! not, and every fact that is missing.

use super::notes::Notes;
use super::point::Point;
use super::satisfy::{self, Clauses};
use crate::measure::{Answer, Day, Interval};
use crate::model::profile::Requirement;
use crate::model::reason::Reason;
use crate::model::rule::Spec;
use crate::model::vessel::{State, Tool, Whereabouts};
use crate::model::vocabulary::{Class, Vocabulary};

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
        satisfy::run(&spec.tests, tool, clauses, point, &mut notes);
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
    if let Some(interval) = inspection_of(tool, interval, point.vocabulary) {
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
    if let Some(last) = tool.expires {
        match (tool.in_date(point.day), tool.disputes.expiry) {
            (Answer::No, _) => notes.fault(|| lapse(last.next(), false, point)),
            (Answer::Unknown, Some(sure)) => notes.open(|| Reason::ExpiryDisputed { sure, last }),
            _ => {}
        }
    }
    if !tool.disputes.kinds.is_empty() {
        notes.open(|| Reason::KindDisputed {
            kinds: tool.disputes.kinds.clone(),
            by_name: tool.disputes.by_name,
        });
    }
}

/// Documents are read, not inspected.
pub(super) fn inspection_of(
    tool: &Tool,
    interval: Option<Interval>,
    vocabulary: &Vocabulary,
) -> Option<Interval> {
    let class = vocabulary.kind(tool.kind).class;
    interval.filter(|_| matches!(class, Class::Tool | Class::Spare))
}

/// The last day on which the tool serves for certain, if there is one.
pub(crate) fn serves_through(
    tool: &Tool,
    interval: Option<Interval>,
    vocabulary: &Vocabulary,
) -> Option<Day> {
    let inspected = inspection_of(tool, interval, vocabulary)
        .and_then(|interval| tool.inspected.map(|day| day.through(interval)));
    [tool.disputes.expiry.or(tool.expires), inspected].into_iter().flatten().min()
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
