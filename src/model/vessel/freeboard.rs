//! The freeboard, at each hauling station, as it was read.

use super::reading::How;
use crate::measure::{Day, Figure, Length, Quantity, Rounding, System};
use crate::model::place::Place;
use crate::model::profile::FreeboardFrom;
use std::sync::Arc;

/// One reading of a freeboard, a figure or a range.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FreeboardReading {
    /// The lowest.
    pub low: Figure,
    /// The highest; the same as the lowest for a single figure.
    pub high: Figure,
    /// Under which load, in words.
    pub load: Option<String>,
    /// By whom.
    pub by: Option<Arc<str>>,
    /// On which day.
    pub on: Option<Day>,
    /// How.
    pub how: How,
    /// The tape's error, if stated.
    pub error: Option<Figure>,
    /// Where it is written.
    pub place: Place,
}

impl Freeboard {
    /// What was taken from that place.
    pub fn at(&self, from: FreeboardFrom) -> &[Station] {
        if from == self.from { &self.stations } else { &self.other }
    }

    /// The same, to be changed.
    pub fn at_mut(&mut self, from: FreeboardFrom) -> &mut Vec<Station> {
        if from == self.from { &mut self.stations } else { &mut self.other }
    }

    /// The stations as taken from that place; none where one of them was
    /// not.
    pub fn taken_from(&self, from: FreeboardFrom) -> Option<Vec<&Station>> {
        let (own, other) = (self.at(from), self.at(from.other()));
        let has = |station: &Station| own.iter().any(|one| one.name == station.name);
        other.iter().all(has).then(|| own.iter().collect())
    }

    fn readings(&self) -> impl Iterator<Item = &FreeboardReading> {
        self.stations.iter().flat_map(|station| &station.readings)
    }

    /// The highest of all stations and readings; none where nobody measured.
    pub fn highest(&self) -> Option<Length> {
        self.readings().map(FreeboardReading::highest).max()
    }

    /// The lowest of all stations and readings; none where nobody measured.
    pub fn lowest(&self) -> Option<Length> {
        self.readings().map(FreeboardReading::lowest).min()
    }

    /// Whether it is more than one length, so that a finding has to say at
    /// which it is worst.
    pub fn is_several(&self) -> bool {
        let mut ends = self.readings().flat_map(|reading| [reading.lowest(), reading.highest()]);
        ends.next().is_some_and(|first| ends.any(|other| other != first))
    }
}

impl FreeboardReading {
    /// It is that, and nothing else is known of it.
    pub fn exactly(length: Length) -> Self {
        let figure = Figure::reckoned(Quantity::Length(length), System::Metric, Rounding::Up);
        Self {
            low: figure.clone(),
            high: figure,
            load: None,
            by: None,
            on: None,
            how: How::Measured,
            error: None,
            place: Place::default(),
        }
    }

    /// Whether another says the same, wherever it is written.
    pub fn says_the_same(&self, other: &Self) -> bool {
        Self { place: other.place.clone(), ..self.clone() } == *other
    }

    /// The highest freeboard as a length.
    pub fn highest(&self) -> Length {
        self.high.length().unwrap_or(Length::ZERO)
    }

    /// The lowest freeboard as a length.
    pub fn lowest(&self) -> Length {
        self.low.length().unwrap_or(Length::ZERO)
    }
}

/// A place on the rail where gear is hauled.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Station {
    /// Its name.
    pub name: Option<String>,
    /// Its freeboard; several readings may dispute it.
    pub readings: Vec<FreeboardReading>,
    /// What was stated or read off a label where somebody measured too: shown,
    /// and counting for nothing.
    pub overruled: Vec<FreeboardReading>,
}

impl Station {
    /// The only station, with these readings.
    pub fn of(readings: Vec<FreeboardReading>) -> Self {
        Self { name: None, readings, overruled: Vec::new() }
    }
}

/// The vessel's freeboard, at each hauling station.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Freeboard {
    /// From where to the water it was taken.
    pub from: FreeboardFrom,
    /// The stations; none where nobody measured.
    pub stations: Vec<Station>,
    /// Stations where it was taken from the other place too.
    pub other: Vec<Station>,
}
