//! How the readings of a tool stand to what is asked: a limit on a quantity,
//! a feature, a word out of a list.

use super::conformity::Clauses;
use super::limit;
use super::notes::Notes;
use super::point::Point;
use crate::measure::{Answer, Figure, Length, Quantity};
use crate::model::reason::{Demand, DisputedReading, Has, Reason};
use crate::model::rule::{Limit, Test};
use crate::model::vessel::{Datum, Reading, Tool};
use crate::model::vocabulary::AttributeId;
use std::sync::Arc;

/// Whether the readings of an attribute say what is asked.
pub(crate) fn say_words<N: Notes>(
    attribute: AttributeId,
    demand: impl Fn() -> Demand,
    says: impl Fn(&Datum) -> Answer,
    tool: &Tool,
    clauses: Clauses<'_>,
    point: &Point<'_>,
    notes: &mut N,
) {
    let readings = tool.readings(attribute);
    match Answer::consensus(readings.iter().map(|reading| says(&reading.datum))) {
        Answer::Yes => {}
        Answer::No => notes.fault(|| {
            let has = has(&readings[0].datum);
            Reason::OutOfSpecification { attribute, has, demand: demand(), by: None }
        }),
        Answer::Unknown if readings.iter().any(|r| says(&r.datum) == Answer::No) => {
            notes.open(|| disputed(attribute, readings, demand()));
        }
        Answer::Unknown if clauses.settle(attribute, tool, point) => {}
        Answer::Unknown => notes.open(|| {
            let said = readings.first().map(|reading| has(&reading.datum));
            Reason::Unmeasured { attribute, has: said, demand: demand() }
        }),
    }
}

/// Whether the word is one of those allowed, or may be one of them.
pub(crate) fn word_answer(
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
pub(crate) fn keep_limit<N: Notes>(
    attribute: AttributeId,
    limit: &Limit,
    tool: &Tool,
    clauses: Clauses<'_>,
    point: &Point<'_>,
    notes: &mut N,
) {
    let readings = tool.readings(attribute);
    let mut figures = readings.iter().filter_map(figure_of).peekable();
    if figures.peek().is_none() {
        if !clauses.settle(attribute, tool, point) {
            let demand = || limit::demand(limit, point);
            notes.open(|| Reason::Unmeasured { attribute, has: None, demand: demand() });
        }
        return;
    }
    let answer = Answer::consensus(figures.map(|(figure, error)| match error {
        0 => limit::keeps(limit, figure.quantity, point),
        _ => limit::keeps_all(limit, &spread(figure.quantity, error), point),
    }));
    let figures = || -> Vec<_> { readings.iter().filter_map(figure_of).collect() };
    match answer {
        Answer::Yes => {}
        Answer::No => notes.fault(|| fault(attribute, limit, figures()[0].0, point)),
        Answer::Unknown => notes.open(|| open(attribute, limit, &figures(), readings, point)),
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
pub(crate) fn spread(quantity: Quantity, error: i64) -> [Quantity; 3] {
    let kind = quantity.kind();
    [-error, 0, error].map(|shift| Quantity::from_steps(kind, quantity.steps() + shift))
}

fn fault(attribute: AttributeId, limit: &Limit, has: &Figure, point: &Point<'_>) -> Reason {
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
        };
    }
    Reason::OutOfSpecification { attribute, has: Has::Figure(has.clone()), demand, by }
}

fn open(
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
    let readings = readings
        .iter()
        .map(|reading| DisputedReading {
            has: has(&reading.datum),
            by: reading.by.as_deref().map(str::to_owned),
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
pub(crate) fn to_spare(tool: &Tool, tests: &[Test], point: &Point<'_>) -> Length {
    for test in tests {
        let Test::Limit { attribute, limit, .. } = test else {
            continue;
        };
        if !limit.is_reach() {
            continue;
        }
        let has = tool.readings(*attribute).iter().find_map(figure_of);
        if let (Some(least), Some((has, _))) = (limit::least(limit, point), has)
            && let (Some(has), Some(least)) = (has.length(), least.length())
        {
            return has.less(least);
        }
    }
    Length::ZERO
}
