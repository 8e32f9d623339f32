//! From a freeboard as written to the vessel's freeboard, by station.
//!
//! Imports `model` and `measure`; refuses what no boat has (zero, a range that
//! runs backwards), and leaves what is not known out.

use crate::load::check::reading::Unsaid;
use crate::load::check::value::{choice, day, figure, filled, is_unknown, kept};
use crate::load::form::loose::{Loose, Single};
use crate::load::form::profile::FREEBOARD_FROM;
use crate::load::form::vessel::HOW;
use crate::load::form::vessel::{FreeboardForm, StationForm};
use crate::load::read::problem::{Problem, Problems};
use crate::load::read::spot::Spot;
use crate::measure::{Figure, Length, QuantityKind};
use crate::model::profile::FreeboardFrom;
use crate::model::vessel::{Freeboard, FreeboardReading, Station};

/// What may follow a plain figure to say from where it was taken.
const SUFFIXES: [(&str, FreeboardFrom); 2] = [
    (" from the top of the rail", FreeboardFrom::Rail),
    (" from the working deck", FreeboardFrom::Deck),
];

/// Reads a freeboard.
pub(crate) struct FreeboardReader<'a> {
    /// What plain figures leave unsaid.
    pub(crate) unsaid: &'a Unsaid,
    /// Where problems go.
    pub(crate) problems: &'a mut Problems,
    /// Where the freeboard was taken from, once somebody has said so.
    from: Option<FreeboardFrom>,
}

impl<'a> FreeboardReader<'a> {
    /// A reader that knows nothing yet of where the freeboard is taken.
    pub(crate) fn new(unsaid: &'a Unsaid, problems: &'a mut Problems) -> Self {
        Self { unsaid, problems, from: None }
    }

    /// The freeboard; none where nothing is written of it.
    pub(crate) fn freeboard(mut self, written: Loose<FreeboardForm>, spot: &Spot<'_>) -> Freeboard {
        let stations = match written {
            Loose::One(Single::Form(form)) => self.top_form(*form, spot),
            other => {
                let readings = self.readings(other, spot);
                (!readings.is_empty())
                    .then_some(Station { name: None, readings })
                    .into_iter()
                    .collect()
            }
        };
        Freeboard { from: self.from.unwrap_or(FreeboardFrom::Rail), stations }
    }

    /// The longer form: stations, or one reading, with where it was taken.
    fn top_form(&mut self, mut form: FreeboardForm, spot: &Spot<'_>) -> Vec<Station> {
        if let Some(text) = filled(form.from.as_deref()) {
            let from = choice(text, &FREEBOARD_FROM, &spot.key("from"), self.problems);
            self.take_from(from, spot);
        }
        form.from = None;
        let Some(stations) = form.stations.take() else {
            let readings: Vec<_> =
                self.reading(Single::Form(Box::new(form)), spot).into_iter().collect();
            let station = Station { name: None, readings };
            return if station.readings.is_empty() { Vec::new() } else { vec![station] };
        };
        if form.value.is_some() {
            self.problems.add_at_key(
                Problem::new(spot.key("value").place(), "`value` cannot stand beside `stations`")
                    .mend("write the figure under one of the stations"),
            );
        }
        let list = spot.key("stations");
        let mut read = Vec::new();
        for (index, StationForm { name, freeboard }) in stations.into_iter().enumerate() {
            let here = list.entry(index);
            let readings = freeboard
                .map(|freeboard| self.readings(freeboard, &here.key("freeboard")))
                .unwrap_or_default();
            if readings.is_empty() {
                self.problems.add(
                    Problem::new(here.place(), "a station without its freeboard")
                        .mend("measure it, or take the station away if no gear is hauled there"),
                );
            }
            read.push(Station { name: kept(name), readings });
        }
        read
    }

    fn take_from(&mut self, from: Option<FreeboardFrom>, spot: &Spot<'_>) {
        match (self.from, from) {
            (Some(known), Some(other)) if known != other => self.problems.add(
                Problem::new(spot.place(), "freeboards from the rail and from the deck are mixed")
                    .mend("give all of them from one place"),
            ),
            (None, from) => self.from = from,
            _ => {}
        }
    }

    fn readings(
        &mut self,
        written: Loose<FreeboardForm>,
        spot: &Spot<'_>,
    ) -> Vec<FreeboardReading> {
        match written {
            Loose::One(one) => self.reading(one, spot).into_iter().collect(),
            Loose::Many(many) => many
                .into_iter()
                .enumerate()
                .filter_map(|(index, one)| self.reading(one, &spot.entry(index)))
                .collect(),
        }
    }

    fn reading(
        &mut self,
        written: Single<FreeboardForm>,
        spot: &Spot<'_>,
    ) -> Option<FreeboardReading> {
        let form = match written {
            Single::Plain(text) => {
                let (low, high) = self.range(&text, spot)?;
                let (by, on) = (self.unsaid.by.clone(), self.unsaid.on);
                let how = self.unsaid.how;
                let place = spot.place();
                return Some(FreeboardReading {
                    low,
                    high,
                    load: None,
                    by,
                    on,
                    how,
                    error: None,
                    place,
                });
            }
            Single::Form(form) => *form,
        };
        for (key, stray) in [("from", form.from.is_some()), ("stations", form.stations.is_some())] {
            if stray {
                self.problems.add_at_key(
                    Problem::new(spot.key(key).place(), format!("`{key}` cannot stand here"))
                        .mend("write it directly under `freeboard`"),
                );
            }
        }
        let on = day(form.on.as_deref(), &spot.key("on"), self.problems);
        let (by, on) = self.unsaid.taker(kept(form.by), on);
        let how = filled(form.how.as_deref())
            .and_then(|text| choice(text, &HOW, &spot.key("how"), self.problems))
            .unwrap_or(self.unsaid.how);
        let error = filled(form.error.as_deref())
            .and_then(|text| figure(text, QuantityKind::Length, &spot.key("error"), self.problems));
        let (low, high) = self.range(filled(form.value.as_deref())?, &spot.key("value"))?;
        let place = spot.place();
        Some(FreeboardReading { low, high, load: kept(form.load), by, on, how, error, place })
    }

    /// A figure or a range; none where it is not known.
    fn range(&mut self, text: &str, spot: &Spot<'_>) -> Option<(Figure, Figure)> {
        if is_unknown(text) {
            return None;
        }
        let mut text = text.trim();
        for (suffix, from) in SUFFIXES {
            if let Some(rest) = text.strip_suffix(suffix) {
                text = rest;
                self.take_from(Some(from), spot);
            }
        }
        let (low, high) = match text.split_once(" to ") {
            Some((low, high)) => (
                figure(low, QuantityKind::Length, spot, self.problems)?,
                figure(high, QuantityKind::Length, spot, self.problems)?,
            ),
            None => {
                let only = figure(text, QuantityKind::Length, spot, self.problems)?;
                (only.clone(), only)
            }
        };
        if low.length() == Some(Length::ZERO) {
            self.problems.add(
                Problem::new(spot.place(), "a freeboard of zero")
                    .offending(text)
                    .expected("the distance down to the water")
                    .mend("measure it, or write `unknown`"),
            );
            return None;
        }
        if low.length() > high.length() {
            self.problems.add(
                Problem::new(spot.place(), "the range ends below its beginning")
                    .offending(text)
                    .mend("write the lower freeboard first"),
            );
            return None;
        }
        Some((low, high))
    }
}
