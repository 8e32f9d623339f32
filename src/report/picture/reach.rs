//! What the reach drawings show and tell: each long tool held at the rail.
//!
//! Imports `model`, `measure`, the drawing and the words. Which tools serve
//! and which are too short was decided in the engine.

use super::system;
use crate::measure::{Figure, Length, Rounding};
use crate::model::check::Judgement;
use crate::model::finding::Finding;
use crate::model::profile::{FreeboardFrom, Requirement};
use crate::model::reason::{Demand, Reason};
use crate::model::rule::{Limit, Spec, Test};
use crate::model::vessel::{Datum, Vessel};
use crate::model::vocabulary::AttributeId;
use crate::report::draw::reach::{Scale, Tool, Waters, picture};
use crate::report::render::base::{prose, shown};
use crate::report::words::pages::reach_down;
use crate::report::words::{Words, figures, specs, taken_from};
use maud::{Markup, html};

/// A long tool at the rail.
struct Held {
    requirement: usize,
    tool: usize,
    attribute: AttributeId,
    has: Option<Figure>,
    least: Option<Figure>,
    short: Option<Length>,
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
                Err(why) => p.caution { (shown(&why)) },
                Ok(_) if held.is_empty() => p { (words.locale.reach_not_drawn_empty()) },
                Ok(waters) => (drawings(words, &held, &waters, id)),
            }
    })
}

fn drawings(words: &Words<'_>, held: &[Held], waters: &Waters, id: &str) -> Markup {
    let tools: Vec<_> = held.iter().map(|one| one.drawn(words)).collect();
    let scale = Scale::of(&tools, waters);
    html! {
        div class="panels" {
            @for (index, (one, tool)) in held.iter().zip(&tools).enumerate() {
                @let id = format!("{id}-{index}");
                (figure(words, one, waters, |texts| picture(&id, texts, tool, waters, scale)))
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
    picture: impl Fn((&str, &str)) -> Markup,
) -> Markup {
    let attribute = &words.vocabulary.attribute(held.attribute).name;
    let mark = words.lot(held.tool);
    let kind = words.vessel.kit.get(held.tool).map_or("", |tool| words.kind(tool.kind));
    let lengths =
        words.has_and_asked(attribute, held.has.as_ref(), held.least.as_ref(), held.short);
    let down = held.length().map(|has| reach_down(has, held.hangs(words)));
    let reaches = down.map(|down| words.reaches(down, waters.high.0));
    let title = words.title(held.requirement);
    let name = words.locale.reach_held(&mark, &kind, &title);
    let facts: Vec<_> = std::iter::once(lengths.clone())
        .chain(std::iter::once(freeboard(words, waters)))
        .chain(reaches.clone())
        .collect();
    html! {
        figure {
            (picture((&name, &facts.join("; "))))
            figcaption {
                b { (shown(mark)) } ", " (shown(&words.locale.reach_kind(&kind, &title)))
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
    if waters.low.0 == waters.high.0 {
        words.locale.reach_freeboard(&at(waters.high.0), &from)
    } else {
        words.locale.reach_freeboard_between(&at(waters.low.0), &at(waters.high.0), &from)
    }
}

impl Held {
    fn length(&self) -> Option<Length> {
        self.has.as_ref().and_then(Figure::length)
    }

    /// What is called a rope hangs; everything else is a pole.
    fn hangs(&self, words: &Words<'_>) -> bool {
        words.vocabulary.attribute(self.attribute).id.starts_with("rope")
    }

    /// What is drawn of it.
    fn drawn(&self, words: &Words<'_>) -> Tool {
        let (system, say) = (system(words), words.locale);
        let shown = |figure: &Figure, rounding| figure.show(system.alone(), rounding);
        let has = self.has.as_ref().map(|has| say.drawing_aboard(&shown(has, Rounding::Down)));
        let has = has.unwrap_or_else(|| say.drawing_aboard_not_measured().to_owned());
        let least = self.least.as_ref();
        let least = least.and_then(|least| {
            Some((least.length()?, say.drawing_asked(&shown(least, Rounding::Up))))
        });
        let short = self.short.map(|short| figures::difference(short, system, say.only(system)));
        Tool {
            hangs: self.hangs(words),
            has: (self.length(), has),
            least,
            short: short.map(|short| say.drawing_short(&short)),
        }
    }
}

/// The freeboard as this rule takes it, or why it is not known.
fn waters(words: &Words<'_>) -> Result<Waters, String> {
    let (Vessel { freeboard, .. }, say) = (words.vessel, words.locale);
    if freeboard.stations.iter().any(|station| station.readings.is_empty()) {
        return Err(say.reach_not_drawn_station().to_owned());
    }
    let Some((low, high)) = freeboard.lowest().zip(freeboard.highest()) else {
        return Err(say.reach_not_drawn_freeboard().to_owned());
    };
    if freeboard.from != words.profile.freeboard_from {
        let place = |from| taken_from(from, say);
        let (own, rule) = (place(freeboard.from), place(words.profile.freeboard_from));
        return Err(say.reach_not_drawn_place(&own, &rule));
    }
    let system = system(words);
    let label = |length| figures::freeboard(length, system, say.only(system));
    let from = match freeboard.from {
        FreeboardFrom::Rail => say.drawing_rail(),
        FreeboardFrom::Deck => say.drawing_deck(),
    };
    let below = if low == high { label(high) } else { say.drawing_to(&label(high)) };
    Ok(Waters { low: (low, label(low)), high: (high, below), from, water: say.drawing_water() })
}

/// What of a requirement's kinds hangs a least length on the freeboard.
fn reaches(requirement: &Requirement) -> Vec<(&Spec, AttributeId, &Limit)> {
    let mut all = Vec::new();
    for spec in specs(requirement) {
        Test::each(&spec.tests, &mut |test| {
            if let Test::Limit { attribute, limit, .. } = test
                && limit.is_least_reach()
            {
                all.push((spec, *attribute, limit));
            }
        });
    }
    all
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
    let lengths = listed.counted(attribute).filter_map(|reading| match &reading.datum {
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
