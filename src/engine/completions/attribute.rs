//! What an attribute of a thing can be: one value for each answer that it can
//! make to what the rules ask of it.

use super::fact::{Part, Thing, Value, each_test};
use super::world::{World, said};
use crate::engine::evaluate::limit;
use crate::engine::evaluate::point::Point;
use crate::engine::evaluate::satisfy;
use crate::engine::judge::breakpoints::Subject;
use crate::measure::{Answer, Figure, Length, Quantity, Rounding, System};
use crate::model::rule::{Base, Limit, Test};
use crate::model::vessel::{Datum, Tool, Vessel};
use crate::model::vocabulary::{AttributeId, AttributeShape};
use std::collections::BTreeSet;

/// More units of a lot than these are taken alike.
pub(super) const MOST_UNITS: u32 = 4;

/// Where they could be in more ways than these, too.
const MOST_WAYS: u64 = 1_000;

/// Of more figures beyond an *approximately* than these nothing is told apart.
const MOST_STRAYS: usize = 4;

/// What an attribute can be, each answer to what the rules ask of it once, that
/// first which most of them take.
pub(super) fn values(
    thing: Thing,
    attribute: AttributeId,
    world: &World<'_>,
    parts: &[Part<'_>],
) -> Vec<Value> {
    let Some(tool) = thing.of(&world.vessel) else { return Vec::new() };
    let subjects: Vec<Subject<'_>> = parts.iter().map(|part| world.subject(part)).collect();
    let points: Vec<Vec<Point<'_>>> = subjects.iter().map(points_of).collect();
    let tests = tests_of(attribute, &subjects);
    let mut strays = strays(attribute, &tests, &world.vessel);
    strays.iter_mut().filter(|of| of.are_many()).for_each(|of| of.distances.clear());
    let data = data(tool, attribute, (&tests, &strays), &points, parts);
    // By what they answer, and which others a margin lets in before them; a figure
    // that others are measured by is told from every other.
    let measures = matches!(thing, Thing::Hook(_) | Thing::Line(_));
    let mut known: Vec<(Vec<Answer>, Vec<Rank>, Datum)> = Vec::new();
    for datum in data {
        let ranks: Vec<Rank> = strays.iter().map(|of| of.rank(&datum)).collect();
        let mut probe = tool.clone();
        probe.set(attribute, vec![said(datum.clone())]);
        let answers: Vec<Answer> = tests
            .iter()
            .flat_map(|(part, test)| points[*part].iter().map(move |point| (test, point)))
            .map(|(test, point)| satisfy::keeps(std::slice::from_ref(*test), &probe, point))
            .collect();
        let is_new = |(others, ranked, _): &(Vec<Answer>, Vec<Rank>, Datum)| {
            *others != answers || *ranked != ranks
        };
        if measures || known.iter().all(is_new) {
            known.push((answers, ranks, datum));
        }
    }
    known.sort_by_key(|(answers, _, _)| {
        std::cmp::Reverse(answers.iter().filter(|answer| **answer == Answer::Yes).count())
    });
    let data: Vec<Datum> = known.into_iter().map(|(_, _, datum)| datum).collect();
    spread_over(tool.count, &data)
}

/// Whether those that a margin lets in one after another were told apart.
pub(super) fn tells_strays(attribute: AttributeId, world: &World<'_>, parts: &[Part<'_>]) -> bool {
    let subjects: Vec<Subject<'_>> = parts.iter().map(|part| world.subject(part)).collect();
    let strays = strays(attribute, &tests_of(attribute, &subjects), &world.vessel);
    !strays.iter().any(Strays::are_many)
}

fn points_of<'w>(subject: &Subject<'w>) -> Vec<Point<'w>> {
    let points = subject.points();
    if points.is_empty() { vec![subject.point] } else { points }
}

/// The tests of the attribute, each with its part.
fn tests_of<'w>(attribute: AttributeId, subjects: &[Subject<'w>]) -> Vec<(usize, &'w Test)> {
    let mut tests: Vec<(usize, &Test)> = Vec::new();
    for (part, subject) in subjects.iter().enumerate() {
        for requirement in &subject.point.profile.requirements {
            each_test(requirement, &mut |test| {
                let of = match test {
                    Test::Limit { attribute, .. }
                    | Test::Feature { attribute, .. }
                    | Test::Choice { attribute, .. } => *attribute,
                    Test::AcquiredBefore(_) | Test::AnyOf(_) | Test::Readings(_) => return,
                };
                if of == attribute && !tests.contains(&(part, test)) {
                    tests.push((part, test));
                }
            });
        }
    }
    tests
}

/// How far a figure lies beyond those that *approximately* names, in steps; less
/// than none within them. None where the limit is another.
pub(super) fn beyond(limit: &Limit, datum: &Datum) -> Option<i64> {
    let (Limit::About { low, high, .. }, Datum::Figure(figure)) = (limit, datum) else {
        return None;
    };
    let steps = figure.quantity.steps();
    Some((low.quantity.steps() - steps).max(steps - high.quantity.steps()))
}

/// How many of the kit a margin lets in before a figure, and whether any with it.
type Rank = (usize, bool);

/// Beyond the margin of an *approximately*: how far the figures of the kit lie. A
/// margin that lets one in lets in all that lie nearer.
struct Strays<'t> {
    limit: &'t Limit,
    margin: i64,
    distances: BTreeSet<i64>,
}

impl Strays<'_> {
    fn are_many(&self) -> bool {
        self.distances.len() > MOST_STRAYS
    }

    fn rank(&self, datum: &Datum) -> Rank {
        match beyond(self.limit, datum).filter(|own| *own > self.margin) {
            Some(own) => (1 + self.distances.range(..own).count(), self.distances.contains(&own)),
            None => (0, false),
        }
    }
}

fn strays<'t>(
    attribute: AttributeId,
    tests: &[(usize, &'t Test)],
    vessel: &Vessel,
) -> Vec<Strays<'t>> {
    let of = |(_, test): &(usize, &'t Test)| {
        let Test::Limit { limit: limit @ Limit::About { margin, .. }, .. } = *test else {
            return None;
        };
        let margin = margin.quantity.steps();
        let readings = vessel.kit.iter().flat_map(|tool| tool.readings(attribute));
        let distances = readings.filter_map(|reading| beyond(limit, &reading.datum));
        Some(Strays { limit, margin, distances: distances.filter(|own| *own > margin).collect() })
    };
    tests.iter().filter_map(of).collect()
}

/// Everything that the attribute can be, as far as it can matter.
fn data(
    tool: &Tool,
    attribute: AttributeId,
    (tests, strays): (&[(usize, &Test)], &[Strays<'_>]),
    points: &[Vec<Point<'_>>],
    parts: &[Part<'_>],
) -> Vec<Datum> {
    let vocabulary = parts[0].point.vocabulary;
    let readings: Vec<_> = match points.iter().flatten().next() {
        Some(point) => satisfy::counted(tool, attribute, point).collect(),
        None => tool.counted(attribute).collect(),
    };
    match &vocabulary.attribute(attribute).shape {
        AttributeShape::Feature if readings.is_empty() => {
            vec![Datum::Feature(true), Datum::Feature(false)]
        }
        AttributeShape::Choice(words) => {
            let meant: Vec<&Datum> = readings.iter().map(|reading| &reading.datum).collect();
            let of = |word: &String| vocabulary.attribute(attribute).may_be.get(word);
            let allowed = |word: &&String| {
                meant.is_empty()
                    || meant.iter().any(|datum| match datum {
                        Datum::Word(said) => {
                            said == *word || of(said).is_some_and(|words| words.contains(word))
                        }
                        _ => false,
                    })
            };
            // A word that leaves others open is no answer itself.
            let sure = |word: &&String| of(word).is_none();
            words.iter().filter(allowed).filter(sure).cloned().map(Datum::Word).collect()
        }
        AttributeShape::Name if readings.is_empty() => {
            let mut words: Vec<String> = Vec::new();
            for (_, test) in tests {
                if let Test::Choice { allowed, .. } = test {
                    words.extend(allowed.iter().cloned());
                }
            }
            // Any other name.
            words.push(String::new());
            words.into_iter().map(Datum::Word).collect()
        }
        AttributeShape::Quantity(kind) => {
            // Where any will do, what nobody measured may not be there at all.
            let any =
                |(_, test): &(usize, &Test)| matches!(test, Test::Limit { limit: Limit::Any, .. });
            let least = i64::from(!(readings.is_empty() && tests.iter().any(any)));
            let breakpoints = quantities(attribute, (tests, strays), points);
            let steps: BTreeSet<i64> = match &readings[..] {
                [] => breakpoints,
                readings => readings
                    .iter()
                    .copied()
                    .filter_map(satisfy::figure_of)
                    .flat_map(|(figure, error)| {
                        let (low, high) =
                            (figure.quantity.steps() - error, figure.quantity.steps() + error);
                        let inside = breakpoints.range(low..=high).copied();
                        inside.chain([low, figure.quantity.steps(), high]).collect::<Vec<_>>()
                    })
                    .collect(),
            };
            let figure = |steps| {
                Figure::reckoned(Quantity::from_steps(*kind, steps), System::Metric, Rounding::Up)
            };
            steps
                .into_iter()
                .filter(|steps| *steps >= least)
                .map(|steps| Datum::Figure(figure(steps)))
                .collect()
        }
        AttributeShape::Feature | AttributeShape::Name => {
            let mut data: Vec<Datum> = Vec::new();
            for reading in &readings {
                if !data.contains(&reading.datum) {
                    data.push(reading.datum.clone());
                }
            }
            data
        }
    }
}

/// The figures at and beside which an answer turns, in steps.
fn quantities(
    attribute: AttributeId,
    (tests, strays): (&[(usize, &Test)], &[Strays<'_>]),
    points: &[Vec<Point<'_>>],
) -> BTreeSet<i64> {
    let mut found = BTreeSet::from([1]);
    for (part, test) in tests {
        let Test::Limit { limit, .. } = test else { continue };
        for point in &points[*part] {
            found.extend(limit.bounds().flat_map(|bound| limit::turns(bound, point)));
        }
    }
    for Strays { limit, margin, distances } in strays {
        let Limit::About { low, high, .. } = limit else { continue };
        for own in distances.iter().chain([margin]) {
            found.extend([low.quantity.steps() - own, high.quantity.steps() + own]);
        }
    }
    for point in points.iter().filter_map(|points| points.first()) {
        found.extend(turns_of_gear(attribute, point));
    }
    let around: Vec<i64> = found.iter().flat_map(|steps| [steps - 1, *steps, steps + 1]).collect();
    around.into_iter().collect()
}

/// Where the thickness of a hook or a line turns what a tool is asked.
fn turns_of_gear(attribute: AttributeId, point: &Point<'_>) -> Vec<i64> {
    let of = |key| point.vocabulary.find_attribute(key) == Some(attribute);
    let mut bases = Vec::new();
    if of("wire") {
        bases.push(Base::HeaviestHook);
    }
    if of("diameter") {
        bases.extend([Base::ThickestLine, Base::ThickestLeader]);
    }
    let mut found = Vec::new();
    for requirement in point.profile.requirements.iter().filter(|_| !bases.is_empty()) {
        each_test(requirement, &mut |test| {
            let Test::Limit { attribute, limit, .. } = test else { return };
            for percent in bases.iter().flat_map(|base| limit.shares_of(*base)) {
                let readings = point.vessel.kit.iter().flat_map(|tool| tool.readings(*attribute));
                let lengths =
                    readings.filter_map(satisfy::figure_of).filter_map(|(f, _)| f.length());
                found.extend(
                    lengths
                        .filter_map(|length| length.greatest_base(percent))
                        .map(Length::nanometres),
                );
            }
        });
    }
    found
}

/// Ways in which the units of a lot can have the data: of few units every one,
/// of more all alike, and where the ways are too many.
fn spread_over(count: u32, data: &[Datum]) -> Vec<Value> {
    let kinds = data.len() as u64;
    let ways = (1..=u64::from(count.min(MOST_UNITS))).fold(1, |ways, n| ways * (kinds + n - 1) / n);
    if count <= 1 || count > MOST_UNITS || ways > MOST_WAYS {
        return data.iter().map(|datum| Value::Data(vec![(count, datum.clone())])).collect();
    }
    let mut ways: Vec<Vec<(u32, Datum)>> = vec![Vec::new()];
    let left = |way: &Vec<(u32, Datum)>| count - way.iter().map(|(n, _)| n).sum::<u32>();
    for (index, datum) in data.iter().enumerate() {
        let is_last = index + 1 == data.len();
        ways = ways
            .into_iter()
            .flat_map(|way| {
                let left = left(&way);
                let takes = if is_last { left..=left } else { 0..=left };
                takes
                    .rev()
                    .map(move |n| {
                        let more = (n > 0).then(|| (n, datum.clone()));
                        way.iter().cloned().chain(more).collect()
                    })
                    .collect::<Vec<_>>()
            })
            .collect();
    }
    ways.into_iter().map(Value::Data).collect()
}
