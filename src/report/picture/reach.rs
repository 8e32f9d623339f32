//! The reach drawing: the vessel's side with rail and water line, and each
//! long tool held at the rail, all to one scale.
//!
//! Imports `model`, `measure` and the words beside it. Which tools serve and
//! which are too short was decided in the engine.

use super::{Drawing, area, drawn, label, label_to, line, n, system};
use crate::measure::{Figure, Length, Rounding, System};
use crate::model::check::Judgement;
use crate::model::finding::Finding;
use crate::model::profile::{FreeboardFrom, Requirement};
use crate::model::reason::{Demand, Reason};
use crate::model::rule::{Base, Bound, Limit, Spec, Test};
use crate::model::vessel::{Datum, Vessel};
use crate::model::vocabulary::AttributeId;
use crate::report::render::base::{prose, shown};
use crate::report::words::pages::{GRIP, reach_down};
use crate::report::words::{Words, figures, specs, taken_from};
use maud::{Markup, html};

/// Where the vessel's side is, from the left.
const SIDE: f64 = 130.0;
/// Where the rail is, from the top.
const RAIL: f64 = 72.0;
/// How wide a label on the side may be, and one of the legend.
const ROOM: f64 = SIDE - 22.0;
const LEGEND: f64 = super::WIDTH - 156.0;
/// The sine and cosine of the working slant of 30 degrees.
const SINE: f64 = 0.5;
const COSINE: f64 = 0.866;

/// A long tool at the rail.
struct Held {
    requirement: usize,
    tool: usize,
    attribute: AttributeId,
    has: Option<Figure>,
    least: Option<Figure>,
    short: Option<Length>,
}

/// The water below the rail: the lowest and the highest freeboard.
struct Waters {
    low: Length,
    high: Length,
}

/// The figures of one judgement, one for each long tool; nothing where no
/// requirement hangs a length on the freeboard.
pub(in crate::report) fn figures(
    words: &Words<'_>,
    judgement: &Judgement,
    id: &str,
) -> Option<Markup> {
    let held = held(words, judgement);
    let asks = judgement.findings.iter().any(|finding| {
        words.requirement(finding.requirement).is_some_and(|r| !reaches(r).is_empty())
    });
    if !asks {
        return None;
    }
    Some(html! {
            @match waters(words) {
                Err(why) => p.caution { "Not drawn: " (shown(&why)) },
                Ok(_) if held.is_empty() => p {
                    "Not drawn: nothing aboard is listed that could be held at the rail."
                },
                Ok(waters) => (drawings(words, &held, &waters, id)),
            }
    })
}

fn drawings(words: &Words<'_>, held: &[Held], waters: &Waters, id: &str) -> Markup {
    let scale = scale(words, held, waters);
    let bottom = height(words, held, waters, scale);
    html! {
        div class="panels" {
            @for (index, one) in held.iter().enumerate() {
                (figure(words, one, waters, (scale, bottom), &format!("{id}-{index}")))
            }
            div.soft {
                p { (words.locale.hold()) }
                @if words.vessel.freeboard.from == FreeboardFrom::Deck {
                    p { (words.locale.hold_at_deck()) }
                }
            }
        }
    }
}

fn figure(
    words: &Words<'_>,
    held: &Held,
    waters: &Waters,
    (scale, bottom): (f64, f64),
    id: &str,
) -> Markup {
    let attribute = &words.vocabulary.attribute(held.attribute).name;
    let mark = words.lot(held.tool);
    let kind = words.vessel.kit.get(held.tool).map_or("", |tool| words.kind(tool.kind));
    let lengths =
        words.has_and_asked(attribute, held.has.as_ref(), held.least.as_ref(), held.short);
    let down = held.length().map(|has| reach_down(has, held.hangs(words)));
    let reaches = down.map(|down| words.reaches(down, waters.high));
    let title = words.title(held.requirement);
    let name = format!("{mark}, {kind}, held at the rail for: {title}");
    let facts: Vec<_> = std::iter::once(lengths.clone())
        .chain(std::iter::once(freeboard(words, waters)))
        .chain(reaches.clone())
        .collect();
    let drawing = Drawing {
        id: id.to_owned(),
        height: bottom,
        title: name,
        facts: facts.join("; "),
        body: body(words, held, waters, (scale, bottom)),
    };
    html! {
        figure {
            (drawing.svg())
            figcaption {
                b { (shown(mark)) } ", " (shown(kind)) ", for: " (shown(&title))
                ul {
                    li class=[held.short.map(|_| "lack")] { (prose(&lengths)) }
                    @if let Some(reaches) = &reaches { li { (prose(reaches)) } }
                }
            }
        }
    }
}

/// The freeboard in words.
fn freeboard(words: &Words<'_>, waters: &Waters) -> String {
    let from = taken_from(words.vessel.freeboard.from, words.locale);
    let at = |length| words.freeboard(length);
    if waters.low == waters.high {
        format!("freeboard {} from {from}", at(waters.high))
    } else {
        format!("freeboard {} to {} from {from}", at(waters.low), at(waters.high))
    }
}

impl Held {
    fn length(&self) -> Option<Length> {
        self.has.as_ref().and_then(Figure::length)
    }

    fn asked(&self) -> Option<Length> {
        self.least.as_ref().and_then(Figure::length)
    }

    /// What is called a rope hangs; everything else is a pole.
    fn hangs(&self, words: &Words<'_>) -> bool {
        words.vocabulary.attribute(self.attribute).id.starts_with("rope")
    }

    fn longest(&self) -> Length {
        self.length().max(self.asked()).unwrap_or(Length::ZERO)
    }
}

/// The place of a point of the tool, so far from its grip end.
fn point(along: f64, hangs: bool, scale: f64) -> (f64, f64) {
    let outboard = (along - drawn(GRIP)) * scale;
    if hangs && outboard > 0.0 {
        return (SIDE + 8.0, RAIL + outboard);
    }
    (SIDE + outboard * SINE, RAIL + outboard * COSINE)
}

fn deepest(words: &Words<'_>, held: &Held) -> f64 {
    drawn(reach_down(held.longest(), held.hangs(words)))
}

/// Drawing units for each millimetre: everything fits.
fn scale(words: &Words<'_>, held: &[Held], waters: &Waters) -> f64 {
    let down = held.iter().map(|one| deepest(words, one)).fold(drawn(waters.high), f64::max);
    (190.0 / down.max(1.0)).min(0.16)
}

fn height(words: &Words<'_>, held: &[Held], waters: &Waters, scale: f64) -> f64 {
    let down = held.iter().map(|one| deepest(words, one)).fold(drawn(waters.high), f64::max);
    RAIL + down * scale + 26.0
}

fn body(words: &Words<'_>, held: &Held, waters: &Waters, (scale, bottom): (f64, f64)) -> Markup {
    html! {
        (vessel(words, waters, scale, bottom))
        (tool(words, held, scale))
        (legend(words, held))
    }
}

/// The vessel's side, the rail, the water and the freeboard between them.
fn vessel(words: &Words<'_>, waters: &Waters, scale: f64, bottom: f64) -> Markup {
    let right = super::WIDTH;
    let at = |freeboard: Length| RAIL + drawn(freeboard) * scale;
    let (upper, lower) = (at(waters.low), at(waters.high));
    let system = system(words);
    let one = |length: Length| figures::freeboard(length, system, words.locale.only(system));
    let middle = ((RAIL + lower) / 2.0 + 6.0).max(RAIL + 20.0);
    let cap = match words.vessel.freeboard.from {
        FreeboardFrom::Rail => "rail",
        FreeboardFrom::Deck => "working deck",
    };
    html! {
        (area("water", (SIDE, upper), (right - SIDE, bottom - upper)))
        (area("hull", (0.0, RAIL), (SIDE, bottom - RAIL)))
        (line("surface", (SIDE, lower), (right, lower)))
        @if waters.low != waters.high { (line("surface", (SIDE, upper), (right, upper))) }
        (line("side", (SIDE, RAIL), (SIDE, bottom)))
        (line("rail-cap", (0.0, RAIL), (SIDE + 3.0, RAIL)))
        (label("", (4.0, RAIL - 9.0), ROOM, cap))
        (line("span", (SIDE - 10.0, RAIL + 3.0), (SIDE - 10.0, lower)))
        (line("span", (SIDE - 15.0, lower), (SIDE, lower)))
        @if waters.low == waters.high {
            (label_to("", (SIDE - 18.0, middle), ROOM, &one(waters.high)))
        } @else {
            (line("span", (SIDE - 15.0, upper), (SIDE, upper)))
            (label_to("", (SIDE - 18.0, middle - 10.0), ROOM, &one(waters.low)))
            (label_to("", (SIDE - 18.0, middle + 9.0), ROOM, &format!("to {}", one(waters.high))))
        }
        (label_to("", (right - 5.0, lower + 19.0), ROOM, "water"))
    }
}

/// The tool with its grip, its end, what is asked and what it lacks.
fn tool(words: &Words<'_>, held: &Held, scale: f64) -> Markup {
    let hangs = held.hangs(words);
    let place = |length: Length| point(drawn(length), hangs, scale);
    let (grip, rail) = (place(Length::ZERO), (SIDE, RAIL));
    let bend = point(drawn(GRIP) + 0.001, hangs, scale);
    html! {
        @if let Some((has, asked)) = held.length().zip(held.asked()).filter(|(has, asked)| has < asked) {
            (line("missing", place(has), place(asked)))
        }
        @match held.length().or(held.asked()) {
            Some(length) => {
                (line("grip", grip, rail))
                @let class = if held.has.is_some() { "pole" } else { "pole guess" };
                (line(class, grip, rail))
                @if hangs { (line(class, rail, bend)) }
                (line(class, bend, place(length)))
                circle class="hand" cx=(n(grip.0)) cy=(n(grip.1)) r="6" {}
            },
            None => {},
        }
        @if let Some(has) = held.length() {
            @let (x, y) = place(has);
            circle class="tip" cx=(n(x)) cy=(n(y)) r="5" {}
        }
        @if let Some(asked) = held.asked() {
            @let (x, y) = place(asked);
            @let (dx, dy) = if hangs { (12.0, 0.0) } else { (12.0 * COSINE, -12.0 * SINE) };
            (line("asked", (x - dx, y - dy), (x + dx, y + dy)))
        }
    }
}

/// The figures, each behind the sign that it has in the drawing.
fn legend(words: &Words<'_>, held: &Held) -> Markup {
    let system = system(words);
    let figure = |figure: &Figure, rounding| figure.show(system.alone(), rounding);
    let has = held.has.as_ref().map_or("not measured".to_owned(), |f| figure(f, Rounding::Down));
    html! {
        circle class="tip" cx="141" cy="13" r="5" {}
        (label("", (152.0, 18.0), LEGEND, &format!("aboard {has}")))
        @if let Some(least) = &held.least {
            (line("asked", (134.0, 33.0), (147.0, 33.0)))
            (label("", (152.0, 38.0), LEGEND, &format!("asked {}", figure(least, Rounding::Up))))
        }
        @if let Some(short) = held.short {
            (line("missing", (134.0, 53.0), (147.0, 53.0)))
            (label("lack", (152.0, 58.0), LEGEND, &format!("short {}", short_in(short, system))))
        }
    }
}

fn short_in(short: Length, system: System) -> String {
    figures::difference(short, system, system.alone().into())
}

/// The freeboard as this rule takes it, or why it is not known.
fn waters(words: &Words<'_>) -> Result<Waters, String> {
    let Vessel { freeboard, .. } = words.vessel;
    if freeboard.stations.iter().any(|station| station.readings.is_empty()) {
        return Err("the freeboard is not known at every station".to_owned());
    }
    let readings = || freeboard.stations.iter().flat_map(|station| &station.readings);
    let low = readings().map(|reading| reading.lowest()).min();
    let high = readings().map(|reading| reading.highest()).max();
    let Some((low, high)) = low.zip(high) else {
        return Err("the freeboard is not known".to_owned());
    };
    if freeboard.from != words.profile.freeboard_from {
        let place = |from| taken_from(from, words.locale);
        let (own, rule) = (place(freeboard.from), place(words.profile.freeboard_from));
        return Err(format!(
            "the freeboard was taken from {own}, and this rule counts from {rule}"
        ));
    }
    Ok(Waters { low, high })
}

/// What of a requirement's kinds hangs a least length on the freeboard.
fn reaches(requirement: &Requirement) -> Vec<(&Spec, AttributeId, &Limit)> {
    let mut all = Vec::new();
    for spec in specs(requirement) {
        of_tests(&spec.tests, &mut |attribute, limit| all.push((spec, attribute, limit)));
    }
    all
}

fn of_tests<'a>(tests: &'a [Test], found: &mut impl FnMut(AttributeId, &'a Limit)) {
    for test in tests {
        match test {
            Test::Limit { attribute, limit, .. } => {
                let low = match limit {
                    Limit::AtLeast(bound) | Limit::MoreThan(bound) | Limit::Within(bound, _) => {
                        Some(bound)
                    }
                    Limit::Any | Limit::AtMost(_) | Limit::LessThan(_) | Limit::About { .. } => {
                        None
                    }
                };
                if low.is_some_and(of_freeboard) {
                    found(*attribute, limit);
                }
            }
            Test::AnyOf(groups) | Test::Readings(groups) => {
                groups.iter().for_each(|group| of_tests(group, found));
            }
            Test::Feature { .. } | Test::Choice { .. } | Test::AcquiredBefore(_) => {}
        }
    }
}

fn of_freeboard(bound: &Bound) -> bool {
    match bound {
        Bound::Fixed { .. } => false,
        Bound::Share(_, base) => *base == Base::Freeboard,
        Bound::Greater(limbs) | Bound::Lesser(limbs) => limbs.iter().any(of_freeboard),
    }
}

/// Every long tool that serves, or the nearest that does not, each once.
fn held(words: &Words<'_>, judgement: &Judgement) -> Vec<Held> {
    let mut all: Vec<Held> = Vec::new();
    for finding in &judgement.findings {
        let Some(requirement) = words.requirement(finding.requirement) else { continue };
        let reaches = reaches(requirement);
        let serving = finding.serving.iter().filter(|s| s.through.is_none()).map(|s| s.tool);
        let nearest = finding.reasons.iter().filter_map(|because| because.tool);
        let found: Vec<Held> = if finding.serving.is_empty() {
            nearest.filter_map(|tool| of_tool(words, finding, &reaches, tool)).take(1).collect()
        } else {
            serving.filter_map(|tool| of_tool(words, finding, &reaches, tool)).collect()
        };
        for one in found {
            let known = |other: &Held| {
                (other.tool, other.attribute, &other.least) == (one.tool, one.attribute, &one.least)
            };
            if !all.iter().any(known) {
                all.push(one);
            }
        }
    }
    all
}

fn of_tool(
    words: &Words<'_>,
    finding: &Finding,
    reaches: &[(&Spec, AttributeId, &Limit)],
    tool: usize,
) -> Option<Held> {
    let listed = words.vessel.kit.get(tool)?;
    let told = finding.reasons.iter().find_map(|because| match &because.reason {
        Reason::TooShortForRail { attribute, has, least, short, .. }
            if because.tool == Some(tool) =>
        {
            Some((*attribute, has, least, *short))
        }
        _ => None,
    });
    let requirement = finding.requirement;
    if let Some((attribute, has, least, short)) = told {
        let (has, least, short) = (Some(has.clone()), Some(least.clone()), Some(short));
        return Some(Held { requirement, tool, attribute, has, least, short });
    }
    let mut of_kind = reaches.iter().filter(|(spec, _, _)| spec.kind == listed.kind);
    let measured =
        of_kind.clone().find(|(_, attribute, _)| !listed.readings(*attribute).is_empty());
    let (spec, attribute, limit) = *measured.or_else(|| of_kind.next())?;
    let lengths = listed.readings(attribute).iter().filter_map(|reading| match &reading.datum {
        Datum::Figure(figure) => Some(figure.clone()),
        _ => None,
    });
    let has = lengths.min_by_key(|figure| figure.quantity.steps());
    let ends = words.requirement(requirement).and_then(|r| words.ends(r, Some(spec)));
    let at = finding.freeboard.or(ends.map(|ends| ends.high));
    let least = match words.worked_out(limit, at)? {
        Demand::Least(figure) | Demand::Above(figure) | Demand::Between(figure, _) => Some(figure),
        _ => None,
    };
    Some(Held { requirement, tool, attribute, has, least, short: None })
}
