//! Whether a vessel's rail is so low that the water is reached by hand.
//!
//! Imports `model` and `measure`.

use crate::measure::{Answer, Figure, Length};
use crate::model::options::Rail;
use crate::model::profile::FreeboardFrom;
use crate::model::technique::{GivenBy, Practice};
use crate::model::vessel::Vessel;

/// What the vessel's rail says of a capability that hangs on it.
pub(super) fn rail(practice: &Practice, capability: usize, vessel: &Vessel) -> Option<Rail> {
    let GivenBy::LowRail { at_most, .. } = &practice.capabilities[capability].given_by else {
        return None;
    };
    let freeboard = &vessel.freeboard;
    let mut highest: Option<Length> = None;
    let stations = freeboard.stations.iter().map(|station| {
        Answer::consensus(station.readings.iter().flat_map(|reading| {
            let error = reading.error.as_ref().and_then(Figure::length).unwrap_or(Length::ZERO);
            highest = highest.max(Some(reading.highest()));
            [reading.highest().less(error), reading.highest().plus(error)]
                .map(|top| Answer::from(top <= *at_most))
        }))
    });
    let answers: Vec<Answer> = stations.collect();
    let known = if answers.is_empty() { Answer::Unknown } else { Answer::all(answers) };
    let answer = match (freeboard.from, practice.freeboard_from) {
        (own, asked) if own == asked => known,
        // The rail stands above the deck: what is too high from the deck is
        // too high from the rail.
        (FreeboardFrom::Deck, FreeboardFrom::Rail) if known == Answer::No => Answer::No,
        // And what is low enough from the rail is so from the deck.
        (FreeboardFrom::Rail, FreeboardFrom::Deck) if known == Answer::Yes => Answer::Yes,
        _ => Answer::Unknown,
    };
    Some(Rail { capability, answer, freeboard: highest })
}
