//! What the freeboard line shows and tells: where the kit is ready, where it
//! gives out and which requirements fail there.
//!
//! Imports `model`, `measure`, the drawing and the words. The stretches come
//! from the engine.

use super::system;
use crate::measure::Length;
use crate::model::check::Judgement;
use crate::model::finding::{Stretch, Verdict};
use crate::model::vessel::FreeboardReading;
use crate::report::draw::freeboard::{Line, picture};
use crate::report::render::base;
use crate::report::words::{Words, figures, taken_from};
use maud::{Markup, html};

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
    let (system, own) = (system(words), own(words));
    let short = |length: Length| figures::freeboard(length, system, words.locale.only(system));
    let gives_out = gives_out(&parts).map(|last| {
        let last = figures::stretch_end(last, system, words.locale.only(system));
        words.locale.drawing_gives_out(&last)
    });
    let line = Line {
        parts: &parts,
        end: (end, short(end)),
        own: (&own, own_in_short(words, short)),
        gives_out,
        locale: words.locale,
    };
    let facts = format!("{}; {}", own_in_words(words), told.join("; "));
    let drawing = picture(id, (words.locale.picture_stretches(), &facts), &line);
    Some(html! {
            figure.wide {
                (drawing)
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
    match own_ends(words) {
        None => words.locale.picture_own_unknown(&from),
        Some((low, high)) if low == high => words.locale.picture_own(&words.freeboard(high), &from),
        Some((low, high)) => {
            words.locale.picture_own_between(&words.freeboard(low), &words.freeboard(high), &from)
        }
    }
}

/// The lowest and the highest of them.
fn own_ends(words: &Words<'_>) -> Option<(Length, Length)> {
    let freeboard = &words.vessel.freeboard;
    let known = freeboard.from == words.profile.freeboard_from;
    freeboard.lowest().zip(freeboard.highest()).filter(|_| known)
}

fn own_in_short(words: &Words<'_>, short: impl Fn(Length) -> String) -> String {
    let locale = words.locale;
    let (low, high) = own_ends(words).unwrap_or((Length::ZERO, Length::ZERO));
    if low == high {
        locale.drawing_own(&short(high))
    } else {
        locale.drawing_own_between(&short(low), &short(high))
    }
}

/// The last freeboard of the first ready stretch that has an end.
fn gives_out(parts: &[Stretch]) -> Option<Length> {
    let (_, others) = parts.split_last()?;
    others.iter().rev().find(|part| part.verdict == Verdict::Ready).map(|part| part.to)
}
