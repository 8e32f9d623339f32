//! From a freeboard as written to the vessel's freeboard, by station.
//!
//! Imports `model` and `measure`; refuses what no boat has (zero, a range that
//! runs backwards), and leaves what is not known out.

use crate::load::check::reading::Unsaid;
use crate::load::check::value::{is_unknown, kept};
use crate::load::form::loose::{Loose, Single};
use crate::load::form::open::HOW;
use crate::load::form::profile::FREEBOARD_FROM;
use crate::load::form::vessel::{FreeboardForm, StationForm};
use crate::load::read::spot::{Spot, filled};
use crate::measure::{Figure, Length, QuantityKind};
use crate::model::profile::FreeboardFrom;
use crate::model::vessel::{Freeboard, FreeboardReading, Station};

/// What may follow a plain figure to say from where it was taken.
const SUFFIXES: [(&str, FreeboardFrom); 2] = [
    (" from the top of the rail", FreeboardFrom::Rail),
    (" from the working deck", FreeboardFrom::Deck),
];

/// The freeboard; none where nothing is written of it.
pub(crate) fn freeboard(
    written: Loose<FreeboardForm>,
    unsaid: &Unsaid,
    spot: &Spot<'_>,
) -> Freeboard {
    let mut reader = Reader { unsaid, from: None };
    let stations = match written {
        Loose::One(Single::Form(form)) => reader.top_form(*form, spot),
        other => Vec::from_iter(whole(reader.readings(other, spot))),
    };
    Freeboard { from: reader.from.unwrap_or(FreeboardFrom::Rail), stations }
}

/// The vessel as one station, if anything is known of it.
fn whole(readings: Vec<FreeboardReading>) -> Option<Station> {
    (!readings.is_empty()).then_some(Station { name: None, readings })
}

struct Reader<'a> {
    unsaid: &'a Unsaid,
    /// Where the freeboard was taken from, once somebody has said so.
    from: Option<FreeboardFrom>,
}

impl Reader<'_> {
    /// The longer form: stations, or one reading, with where it was taken.
    fn top_form(&mut self, mut form: FreeboardForm, spot: &Spot<'_>) -> Vec<Station> {
        if filled(&form.from).is_some() {
            let from = spot.word("from", &form.from, &FREEBOARD_FROM);
            self.take_from(from, &spot.key("from"));
        }
        form.from = None;
        let Some(stations) = form.stations.take() else {
            let reading = self.reading(Single::Form(Box::new(form)), spot);
            return Vec::from_iter(whole(Vec::from_iter(reading)));
        };
        if form.value.is_some() {
            spot.wrong_key("value", "`value` cannot stand beside `stations`")
                .mend("write the figure under one of the stations")
                .tell();
        }
        spot.each("stations", stations, |at, StationForm { name, freeboard }| {
            let readings =
                freeboard.map(|freeboard| self.readings(freeboard, &at.key("freeboard")));
            let readings = readings.unwrap_or_default();
            if readings.is_empty() {
                at.wrong("a station without its freeboard")
                    .mend("measure it, or take the station away if no gear is hauled there")
                    .tell();
            }
            Some(Station { name: kept(name), readings })
        })
    }

    fn take_from(&mut self, from: Option<FreeboardFrom>, spot: &Spot<'_>) {
        match (self.from, from) {
            (Some(known), Some(other)) if known != other => spot
                .wrong("freeboards from the rail and from the deck are mixed")
                .mend("give all of them from one place")
                .tell(),
            (None, from) => self.from = from,
            _ => {}
        }
    }

    fn readings(
        &mut self,
        written: Loose<FreeboardForm>,
        spot: &Spot<'_>,
    ) -> Vec<FreeboardReading> {
        spot.each_of(written, |at, one| self.reading(one, at))
    }

    fn reading(
        &mut self,
        written: Single<FreeboardForm>,
        spot: &Spot<'_>,
    ) -> Option<FreeboardReading> {
        let form = match written {
            Single::Plain(text) => {
                let (low, high) = self.range(&text, spot)?;
                let Unsaid { by, on, how, .. } = self.unsaid.clone();
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
        let strays = [("from", form.from.is_some()), ("stations", form.stations.is_some())];
        for (key, _) in strays.iter().filter(|(_, stray)| *stray) {
            spot.wrong_key(key, format!("`{key}` cannot stand here"))
                .mend("write it directly under `freeboard`")
                .tell();
        }
        let (by, on) = self.unsaid.taker(kept(form.by), spot.day("on", &form.on));
        let how = spot.word("how", &form.how, &HOW).unwrap_or(self.unsaid.how);
        let error = spot.figure("error", &form.error, QuantityKind::Length);
        let (low, high) = self.range(filled(&form.value)?, &spot.key("value"))?;
        let (load, place) = (kept(form.load), spot.place());
        Some(FreeboardReading { low, high, load, by, on, how, error, place })
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
        let length = |text: &str| spot.figure_of(text, QuantityKind::Length);
        let (low, high) = match text.split_once(" to ") {
            Some((low, high)) => (length(low)?, length(high)?),
            None => {
                let only = length(text)?;
                (only.clone(), only)
            }
        };
        if low.length() == Some(Length::ZERO) {
            return spot
                .wrong("a freeboard of zero")
                .of(text)
                .expected("the distance down to the water")
                .mend("measure it, or write `unknown`")
                .none();
        }
        if low.length() > high.length() {
            return spot
                .wrong("the range ends below its beginning")
                .of(text)
                .mend("write the lower freeboard first")
                .none();
        }
        Some((low, high))
    }
}
