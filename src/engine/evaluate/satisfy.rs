//! Does a tool satisfy the tests of a spec: its readings against a limit, a
//! feature or a list of words, or a statement of conformity where nobody can
//! measure.

use super::limit;
use super::notes::{Notes, Sum};
use super::point::Point;
use crate::measure::{Answer, Figure, Length, Quantity};
use crate::model::profile::Requirement;
use crate::model::reason::{Demand, DisputedReading, Has, Reason};
use crate::model::rule::{Limit, Spec, Test};
use crate::model::vessel::{Datum, How, Reading, Tool};
use crate::model::vocabulary::{AttributeId, Class};
use std::sync::Arc;

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
            keep_limit(*attribute, limit, tool, clauses, point, notes);
        }
        Test::Feature { attribute, wanted } => {
            let demand = || Demand::Is(*wanted);
            let says = |datum: &Datum| matches!(datum, Datum::Feature(has) if has == wanted).into();
            say_words(*attribute, demand, says, tool, clauses, point, notes);
        }
        Test::Choice { attribute, allowed } => {
            let demand = || Demand::OneOf(allowed.clone());
            let says = |datum: &Datum| word_answer(datum, allowed, *attribute, point);
            say_words(*attribute, demand, says, tool, clauses, point, notes);
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

/// Whether the readings of an attribute say what is asked.
fn say_words<N: Notes>(
    attribute: AttributeId,
    demand: impl Fn() -> Demand,
    says: impl Fn(&Datum) -> Answer,
    tool: &Tool,
    clauses: Clauses<'_>,
    point: &Point<'_>,
    notes: &mut N,
) {
    let readings = tool.readings(attribute);
    let counted = || counted(tool, attribute, point);
    match agreed(counted(), |reading| says(&reading.datum)) {
        Answer::Yes => {}
        Answer::No => notes.fault(|| {
            let has = counted().max_by_key(|reading| reading.on).map(|one| Has::of(&one.datum));
            let has = has.unwrap_or(Has::Feature(false));
            let overruled = overruled(readings, counted());
            Reason::OutOfSpecification { attribute, has, demand: demand(), by: None, overruled }
        }),
        Answer::Unknown if counted().any(|r| says(&r.datum) == Answer::No) => {
            notes.open(|| disputed(attribute, readings, demand()));
        }
        Answer::Unknown if clauses.settle(attribute, tool, point) => {}
        Answer::Unknown => notes.open(|| {
            let said = readings.first().map(|reading| Has::of(&reading.datum));
            Reason::Unmeasured { attribute, has: said, demand: demand() }
        }),
    }
}

/// Whether the word is one of those allowed, or may be one of them.
fn word_answer(
    datum: &Datum,
    allowed: &[String],
    attribute: AttributeId,
    point: &Point<'_>,
) -> Answer {
    let Datum::Word(word) = datum else { return Answer::No };
    if allowed.contains(word) {
        return Answer::Yes;
    }
    let may_be = point.vocabulary.attribute(attribute).may_be.get(word);
    let open = may_be.is_some_and(|words| words.iter().any(|word| allowed.contains(word)));
    if open { Answer::Unknown } else { Answer::No }
}

/// Whether the readings of an attribute keep a limit.
fn keep_limit<N: Notes>(
    attribute: AttributeId,
    limit: &Limit,
    tool: &Tool,
    clauses: Clauses<'_>,
    point: &Point<'_>,
    notes: &mut N,
) {
    let readings = tool.readings(attribute);
    let figures = || counted(tool, attribute, point).filter_map(figure_of);
    if figures().next().is_none() {
        if !clauses.settle(attribute, tool, point) {
            let demand = || limit::demand(limit, point);
            notes.open(|| Reason::Unmeasured { attribute, has: None, demand: demand() });
        }
        return;
    }
    let says = |reading: &Reading| match figure_of(reading) {
        Some((figure, 0)) => limit::keeps(limit, figure.quantity, point),
        Some((figure, error)) => limit::keeps_all(limit, &spread(figure.quantity, error), point),
        None => Answer::Unknown,
    };
    let of_figures = counted(tool, attribute, point).filter(|one| figure_of(one).is_some());
    match agreed(of_figures.clone(), says) {
        Answer::Yes => {}
        Answer::No => {
            let of_last_day = of_figures.max_by_key(|reading| reading.on).and_then(figure_of);
            let Some((has, _)) = of_last_day else { return };
            let overruled = || overruled(readings, counted(tool, attribute, point));
            notes.fault(|| missed(attribute, limit, has, overruled(), point));
        }
        Answer::Unknown => {
            let figures: Vec<_> = figures().collect();
            notes.open(|| unsettled(attribute, limit, &figures, readings, point));
        }
    }
}

/// The readings of an attribute that count. A paper may be changed for another of
/// its kind, so that of a paper those of the last day count, and what was seen
/// before what was listed.
pub(crate) fn counted<'t>(
    tool: &'t Tool,
    attribute: AttributeId,
    point: &Point<'_>,
) -> impl Iterator<Item = &'t Reading> + Clone {
    let readings = tool.readings(attribute);
    let paper = point.vocabulary.kind(tool.kind).class == Class::Document;
    let measured = |reading: &Reading| reading.how == How::Measured;
    let weight = move |reading: &Reading| (reading.on.filter(|_| paper), measured(reading));
    // Of a tool the day is no matter.
    let last = readings.iter().map(weight).max();
    readings.iter().filter(move |reading| Some(weight(reading)) == last)
}

/// What the readings that count come to. Where they were measured and those of
/// the last day all say no, it is no: what was measured before does not bring back
/// what broke off. Else it is what they agree on: a pole does not grow.
fn agreed<'t>(
    counted: impl Iterator<Item = &'t Reading> + Clone,
    says: impl Fn(&Reading) -> Answer,
) -> Answer {
    let last = counted.clone().map(|reading| reading.on).max();
    let mut of_last_day = counted.clone().filter(|reading| Some(reading.on) == last);
    let worse = of_last_day.all(|one| one.how == How::Measured && says(one) == Answer::No);
    match last {
        Some(_) if worse => Answer::No,
        _ => Answer::consensus(counted.map(says)),
    }
}

/// What is said otherwise by readings that do not count.
fn overruled<'t>(
    readings: &[Reading],
    counted: impl Iterator<Item = &'t Reading> + Clone,
) -> Vec<DisputedReading> {
    let otherwise = readings.iter().filter(|one| counted.clone().all(|c| c.datum != one.datum));
    otherwise.map(DisputedReading::of).collect()
}

pub(crate) fn figure_of(reading: &Reading) -> Option<(&Figure, i64)> {
    match &reading.datum {
        Datum::Figure(figure) => {
            Some((figure, reading.error.as_ref().map_or(0, |e| e.quantity.steps())))
        }
        _ => None,
    }
}

/// The middle and both ends of what a reading with a tape error may mean.
pub(crate) fn spread(quantity: Quantity, error: i64) -> [Quantity; 3] {
    let kind = quantity.kind();
    [-error, 0, error].map(|shift| Quantity::from_steps(kind, quantity.steps() + shift))
}

fn missed(
    attribute: AttributeId,
    limit: &Limit,
    has: &Figure,
    overruled: Vec<DisputedReading>,
    point: &Point<'_>,
) -> Reason {
    // Missed for certain: by what is known so far of the hooks and lines.
    let demand = limit::demand(limit, &Point { missed: true, ..*point });
    let by = limit::missed_by(&demand, has.quantity);
    if let (true, Demand::Least(least), Ok(freeboard), Some(Quantity::Length(short))) =
        (limit.is_reach(), &demand, point.freeboard, by)
    {
        return Reason::TooShortForRail {
            attribute,
            has: has.clone(),
            least: least.clone(),
            short,
            freeboard,
            overruled,
        };
    }
    let has = Has::Figure(has.clone());
    Reason::OutOfSpecification { attribute, has, demand, by, overruled }
}

fn unsettled(
    attribute: AttributeId,
    limit: &Limit,
    figures: &[(&Figure, i64)],
    readings: &[Reading],
    point: &Point<'_>,
) -> Reason {
    if let Some(fact) = limit::missing_fact(limit, point) {
        return Reason::VesselFactUnknown { fact };
    }
    let agree = figures.iter().all(|(figure, _)| figure.quantity == figures[0].0.quantity);
    if matches!(limit, Limit::About { .. }) && agree {
        let limit = Arc::new(limit.clone());
        return Reason::Approximate { attribute, has: figures[0].0.clone(), limit };
    }
    disputed(attribute, readings, limit::demand(limit, point))
}

fn disputed(attribute: AttributeId, readings: &[Reading], demand: Demand) -> Reason {
    let readings = readings.iter().map(DisputedReading::of).collect();
    Reason::Disputed { attribute, readings, demand }
}

/// How much longer than the least a tool is that a reach rule measures; the
/// assignment spends the shortest tools that will do.
pub(crate) fn to_spare(tool: &Tool, tests: &[Test], point: &Point<'_>) -> Length {
    for test in tests {
        let Test::Limit { attribute, limit, .. } = test else {
            continue;
        };
        if !limit.is_reach() {
            continue;
        }
        let figures = tool.counted(*attribute).filter_map(figure_of);
        let has = figures.filter_map(|(figure, _)| figure.length()).min();
        if let (Some(least), Some(has)) = (limit::least(limit, point), has)
            && let Some(least) = least.length()
        {
            return has.less(least);
        }
    }
    Length::ZERO
}

/// The clauses of one choice; a statement of conformity to any of them
/// speaks for the tool.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Clauses<'a>([Option<&'a str>; 3]);

impl<'a> Clauses<'a> {
    /// No statement speaks for the tool.
    pub(crate) const NONE: Self = Self([None; 3]);

    /// The clauses of the spec, of its type and of the requirement.
    pub(crate) fn of(
        spec: &'a Spec,
        of_type: Option<&'a str>,
        requirement: &'a Requirement,
    ) -> Self {
        Self([spec.clause.as_deref(), of_type, Some(requirement.clause.as_str())])
    }

    /// Whether a statement made by the day settles an attribute that nobody
    /// measured: one that neither a tape nor an eye can show.
    fn settle(self, attribute: AttributeId, tool: &Tool, point: &Point<'_>) -> bool {
        if tool.conforms.is_empty() || point.vocabulary.attribute(attribute).shown {
            return false;
        }
        let source = point.profile.source.as_str();
        let mut made = tool.conforms.iter().filter(|statement| statement.on <= point.day);
        made.any(|statement| {
            let names = |clause: &&str| {
                let (to, plain_clause) = (statement.to.as_str(), || plain(clause));
                to == *clause
                    || plain(to).eq(plain_clause())
                    || plain(to).eq(plain(source).chain(plain_clause()))
            };
            self.0.iter().flatten().any(names)
        })
    }
}

/// A clause without case, commas and spaces, so that two ways to write it
/// are the same.
fn plain(clause: &str) -> impl Iterator<Item = char> {
    clause.chars().filter(|c| !c.is_whitespace() && *c != ',').flat_map(char::to_lowercase)
}
