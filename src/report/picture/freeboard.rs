//! The freeboard line: from zero to twice the vessel's own freeboard, where
//! the kit is ready, where it gives out and which requirements fail there.
//!
//! Imports `model`, `measure` and the words beside it. The stretches come
//! from the engine.

use super::{Drawing, WIDTH, area, drawn, label, label_at, label_to, line, system};
use crate::measure::Length;
use crate::model::check::Judgement;
use crate::model::finding::{Stretch, Verdict};
use crate::model::vessel::FreeboardReading;
use crate::report::render::base;
use crate::report::words::{Words, figures, taken_from};
use maud::{Markup, html};

/// Where the line begins and ends, from the left.
const LEFT: f64 = 112.0;
const RIGHT: f64 = WIDTH - 8.0;
/// How tall one lane is, and where the first begins.
const LANE: f64 = 30.0;
const TOP: f64 = 36.0;

/// The lanes from above: a verdict each, so that the place says what the
/// colour says.
const LANES: [(Verdict, &str, &str); 3] = [
    (Verdict::Ready, "good", "✓ ready"),
    (Verdict::CannotTell, "open", "? can't tell"),
    (Verdict::NotReady, "bad", "✕ not ready"),
];

/// The figure of one judgement; nothing where the stretches were not worked
/// out.
pub(in crate::report) fn figure(
    words: &Words<'_>,
    judgement: &Judgement,
    id: &str,
) -> Option<Markup> {
    let stretches = &judgement.inverses.as_ref()?.stretches;
    let end = stretches.last().map(|last| last.to).filter(|end| *end > Length::ZERO)?;
    let parts = joined(stretches);
    let told: Vec<_> = (0..parts.len()).map(|index| told(words, &parts, index)).collect();
    let drawing = Drawing {
        id: id.to_owned(),
        height: TOP + 3.0 * LANE + 50.0,
        title: "Ready at which freeboard".to_owned(),
        facts: format!("{}; {}", own_in_words(words), told.join("; ")),
        body: body(words, &parts, end),
    };
    Some(html! {
            figure.wide {
                (drawing.svg())
                figcaption {
                    (base::prose(&own_in_words(words))) "."
                    ul {
                        @for (index, part) in parts.iter().enumerate() {
                            li {
                                (base::prose(&words.stretch(part))) ": " (base::verdict(part.verdict, words.locale)) " "
                                (base::prose(&fails(words, &parts, index)))
                            }
                        }
                    }
                }
            }
    })
}

/// Neighbours of which the same is to tell are told as one.
fn joined(stretches: &[Stretch]) -> Vec<Stretch> {
    let mut parts: Vec<Stretch> = Vec::new();
    for stretch in stretches {
        match parts.last_mut() {
            Some(last) if last.verdict == stretch.verdict && last.fails == stretch.fails => {
                last.to = stretch.to;
            }
            _ => parts.push(stretch.clone()),
        }
    }
    parts
}

fn told(words: &Words<'_>, parts: &[Stretch], index: usize) -> String {
    let part = &parts[index];
    let text = format!("{}: {}", words.stretch(part), words.locale.verdict(part.verdict));
    if part.fails.is_empty() { text } else { format!("{text}, {}", fails(words, parts, index)) }
}

/// Which requirements are not met or cannot be told there: what fails below
/// already is not listed again.
fn fails(words: &Words<'_>, parts: &[Stretch], index: usize) -> String {
    let fails = &parts[index].fails;
    let below = index.checked_sub(1).map_or(&[][..], |index| &parts[index].fails);
    let all_of_them = !below.is_empty() && below.iter().all(|known| fails.contains(known));
    let fresh = fails.iter().filter(|index| !all_of_them || !below.contains(index));
    let titles = fresh.map(|index| words.title(*index)).collect::<Vec<_>>().join("; ");
    match (all_of_them, titles.is_empty()) {
        (false, _) => titles,
        (true, true) => words.locale.as_before().to_owned(),
        (true, false) => words.locale.as_before_and(&titles),
    }
}

/// The vessel's own freeboards, each with its ends.
fn own(words: &Words<'_>) -> Vec<(Length, Length)> {
    let freeboard = &words.vessel.freeboard;
    if freeboard.from != words.profile.freeboard_from {
        return Vec::new();
    }
    let readings = freeboard.stations.iter().flat_map(|station| &station.readings);
    readings.map(|reading: &FreeboardReading| (reading.lowest(), reading.highest())).collect()
}

fn own_in_words(words: &Words<'_>) -> String {
    let from = taken_from(words.profile.freeboard_from, words.locale);
    let own = own(words);
    let ends = own.iter().map(|(low, _)| *low).min().zip(own.iter().map(|(_, high)| *high).max());
    match ends {
        None => format!("The vessel's own freeboard, from {from}, is not known"),
        Some((low, high)) if low == high => {
            format!("The vessel's own freeboard: {} from {from}", words.freeboard(high))
        }
        Some((low, high)) => format!(
            "The vessel's own freeboards: {} to {} from {from}",
            words.freeboard(low),
            words.freeboard(high)
        ),
    }
}

fn body(words: &Words<'_>, parts: &[Stretch], end: Length) -> Markup {
    let at = |freeboard: Length| LEFT + drawn(freeboard) / drawn(end) * (RIGHT - LEFT);
    let bottom = TOP + 3.0 * LANE;
    let system = system(words);
    let short = |length: Length| figures::freeboard(length, system, words.locale.only(system));
    let own = own(words);
    let middle = own.iter().map(|(low, high)| (at(*low) + at(*high)) / 2.0);
    let middle = middle.reduce(|a, b| (a + b) / 2.0);
    html! {
        @for (index, (verdict, class, name)) in LANES.iter().enumerate() {
            @let y = TOP + super::places(index) * LANE;
            (line("lane", (LEFT, y + LANE), (RIGHT, y + LANE)))
            (label("", (4.0, y + 21.0), LEFT - 8.0, name))
            @for part in parts.iter().filter(|part| part.verdict == *verdict) {
                @let width = (at(part.to) - at(part.from)).max(2.0).min(RIGHT - at(part.from).min(RIGHT - 2.0));
                (area(&format!("lane-{class}"), (at(part.from).min(RIGHT - 2.0), y + 4.0), (width, LANE - 7.0)))
            }
        }
        @for (low, high) in &own {
            @if low != high { (area("own-range", (at(*low), TOP - 6.0), (at(*high) - at(*low), bottom - TOP + 12.0))) }
            (line("own", (at(*low), TOP - 8.0), (at(*low), bottom + 6.0)))
            @if low != high { (line("own", (at(*high), TOP - 8.0), (at(*high), bottom + 6.0))) }
        }
        @if let Some(middle) = middle {
            (label_at("strong", (middle, TOP - 14.0), &own_in_short(words, &own)))
        }
        (label("", (LEFT, bottom + 22.0), 20.0, "0"))
        (label_to("", (RIGHT, bottom + 22.0), 160.0, &short(end)))
        @if let Some(gives) = gives_out(parts) {
            (label_to("", (RIGHT, bottom + 41.0), RIGHT - 4.0, &format!("gives out above {}", figures::stretch_end(gives, system, words.locale.only(system)))))
        }
    }
}

fn own_in_short(words: &Words<'_>, own: &[(Length, Length)]) -> String {
    let system = system(words);
    let short = |length: Length| figures::freeboard(length, system, words.locale.only(system));
    let low = own.iter().map(|(low, _)| *low).min().unwrap_or(Length::ZERO);
    let high = own.iter().map(|(_, high)| *high).max().unwrap_or(Length::ZERO);
    if low == high {
        format!("own {}", short(high))
    } else {
        format!("own {} to {}", short(low), short(high))
    }
}

/// The last freeboard of the first ready stretch that has an end.
fn gives_out(parts: &[Stretch]) -> Option<Length> {
    let (last, others) = parts.split_last()?;
    let _ = last;
    others.iter().rev().find(|part| part.verdict == Verdict::Ready).map(|part| part.to)
}
