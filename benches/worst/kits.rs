//! Kits drawn at random for a profile: tools of the kinds that it asks, with
//! figures about its limits, lots, shared parts, facts that nobody knows. The
//! same seed always gives the same kit. Nothing in them is real.

// Not everybody who borrows this module uses all of it.
#![allow(dead_code, clippy::unwrap_used)]

use super::fleet::draw::Draw;
use kitmuster::load::{self, Library};
use kitmuster::measure::{Day, Figure, Length, Quantity, Rounding, System};
use kitmuster::model::profile::Profile;
use kitmuster::model::rule::{Need, Spec, Test};
use kitmuster::model::vessel::{Datum, FreeboardReading, How, Reading, State, Station};
use kitmuster::model::vessel::{Tool, Vessel};
use kitmuster::model::vocabulary::{AttributeId, AttributeShape, Vocabulary};
use std::sync::Arc;

/// The day on which they are checked.
pub(crate) const DAY: &str = "2026-03-02";

/// The made-up profile in which twelve requirements compete.
const RIVALS: &str = include_str!("rivals.yaml");

/// Every profile that is encoded, with the made-up one.
pub(crate) fn profiles(library: &Library) -> Vec<Arc<Profile>> {
    let shipped = library.profiles.iter().filter(|profile| profile.encoded && !profile.base);
    let rivals = library.draft_text("rivals.yaml", RIVALS).unwrap();
    shipped.cloned().chain([rivals]).collect()
}

/// A kit of so many tools for the profile.
pub(crate) fn kit(words: &Vocabulary, profile: &Profile, seed: u64, tools: usize) -> Vessel {
    let mut draw = Draw::of(seed, tools as u64);
    let text = "format: vessel/1
name: Test Dunlin
freeboard: 4 ft
permits: []
gear: [trap]
areas: []
features: { wheelhouse: yes }
hooks: [{ name: circle hooks, type: circle, size: 18/0, offset: 0 degrees, wire: 3 mm, round-wire: yes, outer-diameter: 56 mm, gap: 28 mm, corrodible: yes }]
lines: [{ name: mainline, diameter: 2 mm }]
people: [{ name: A. Holder, roles: [owner, operator], certificates: [{ kind: workshop certificate, issued: 2026-01-02 }] }]
kit: []
";
    let (mut vessel, _) = load::read_vessel("drawn.yaml", text, words).unwrap();
    let mut low = FreeboardReading::exactly(length(draw.between(12, 72)));
    if draw.percent(25) {
        low.high = figure(length(draw.between(72, 100)));
    }
    vessel.freeboard.from = profile.freeboard_from;
    vessel.freeboard.stations = vec![Station::of(vec![low])];
    // Of some kits much is missing, of most nothing.
    let unknown = if draw.percent(40) { draw.below(30) } else { 0 };
    let specs: Vec<&Spec> = profile
        .requirements
        .iter()
        .filter(|requirement| matches!(requirement.need, Need::Tools { .. }))
        .flat_map(|requirement| requirement.need.specs())
        .collect();
    for number in 0..tools {
        let spec = specs[at(&mut draw, specs.len())];
        let place = vessel.freeboard.stations[0].readings[0].place.clone();
        let mut tool = Tool::bare(format!("T-{number}"), spec.kind, 1, place);
        tool.state = State::Serviceable;
        if draw.percent(10) {
            tool.count = u32::try_from(draw.between(2, 4)).unwrap();
        }
        if draw.percent(unknown) {
            tool.state = State::Unknown;
        }
        tool.inspected = Some(Day::parse("2026-02-01").unwrap());
        if draw.percent(10) {
            tool.expires = Some(days_after(DAY, draw.between(0, 40)));
        }
        fill(&mut tool, &spec.tests, words, unknown, &mut draw);
        if draw.percent(5) {
            tool.parts = vec![format!("pole {}", draw.below(4))];
        }
        vessel.kit.push(tool);
    }
    name_what_spares_fit(&mut vessel, profile, unknown, &mut draw);
    vessel
}

/// Gives the tool a figure or a word for each attribute that is asked.
fn fill(tool: &mut Tool, tests: &[Test], words: &Vocabulary, unknown: u64, draw: &mut Draw) {
    Test::each(tests, &mut |test| {
        let (attribute, datum) = match test {
            Test::Limit { attribute, .. } => (*attribute, measured(words, *attribute, draw)),
            Test::Feature { attribute, wanted } => {
                (*attribute, Some(Datum::Feature(*wanted != draw.percent(3))))
            }
            Test::Choice { attribute, allowed } => {
                let word = allowed[at(draw, allowed.len())].clone();
                (*attribute, Some(Datum::Word(word)))
            }
            Test::AcquiredBefore(_) | Test::AnyOf(_) | Test::Readings(_) => return,
        };
        let Some(datum) = datum.filter(|_| !draw.percent(unknown)) else { return };
        let reading = Reading { datum, by: None, on: None, how: How::Measured, error: None };
        tool.set(attribute, vec![reading]);
    });
}

fn measured(words: &Vocabulary, attribute: AttributeId, draw: &mut Draw) -> Option<Datum> {
    match &words.attribute(attribute).shape {
        AttributeShape::Quantity(kind) => Some(Datum::Figure(match kind {
            kitmuster::measure::QuantityKind::Length => figure(length(draw.between(5, 110))),
            other => Figure::reckoned(
                Quantity::from_steps(*other, draw.between(1, 2_000_000)),
                System::Metric,
                Rounding::Up,
            ),
        })),
        _ => None,
    }
}

/// Spares fit one tool or two of those they are for.
fn name_what_spares_fit(vessel: &mut Vessel, profile: &Profile, unknown: u64, draw: &mut Draw) {
    for requirement in &profile.requirements {
        let Need::Tools { spare_for: Some(served), .. } = &requirement.need else { continue };
        let kinds = profile.requirements[*served].kinds();
        let served = vessel.kit.iter().filter(|tool| kinds.contains(&tool.kind));
        let marks: Vec<String> = served.map(|tool| tool.mark.clone()).collect();
        for tool in &mut vessel.kit {
            if requirement.kinds().contains(&tool.kind)
                && !marks.is_empty()
                && !draw.percent(unknown)
            {
                let two = draw.between(1, 2);
                tool.fits = (0..two).map(|_| marks[at(draw, marks.len())].clone()).collect();
            }
        }
    }
}

fn at(draw: &mut Draw, below: usize) -> usize {
    usize::try_from(draw.below(below as u64)).unwrap()
}

/// So many inches.
fn length(inches: i64) -> Length {
    Length::from_nanometres(inches * 25_400_000).unwrap()
}

fn figure(length: Length) -> Figure {
    Figure::reckoned(Quantity::Length(length), System::Customary, Rounding::Up)
}

fn days_after(day: &str, days: i64) -> Day {
    (0..days).fold(Day::parse(day).unwrap(), |day, _| day.next())
}
