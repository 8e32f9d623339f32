//! Readings: of the attributes of a tool, and of the freeboard by station.
//!
//! Imports `model` and `measure`; what is not known is no reading, and what no
//! boat has (a freeboard of zero, a range that runs backwards) is refused.

use crate::load::check::value::{is_unknown, kept};
use crate::load::form::loose::{Loose, Single};
use crate::load::form::open::{HOW, ReadingForm, WrittenAttributes};
use crate::load::form::profile::FREEBOARD_FROM;
use crate::load::form::vessel::{FreeboardForm, StationForm};
use crate::load::read::fault::Fault;
use crate::load::read::problem::nearest;
use crate::load::read::spot::{Spot, filled};
use crate::load::read::tree::LONGEST_REMARK;
use crate::measure::{Day, Figure, Length, LengthUnit, QuantityKind};
use crate::model::profile::FreeboardFrom;
use crate::model::vessel::{Datum, Freeboard, FreeboardReading, How, Reading, Station};
use crate::model::vocabulary::{Attribute, AttributeId, AttributeShape, Kind, KindId, Vocabulary};
use std::sync::Arc;

/// Attributes as they are used.
pub(crate) type Attributes = Vec<(AttributeId, Vec<Reading>)>;

/// What a plain figure leaves unsaid.
#[derive(Debug, Clone)]
pub(crate) struct Unsaid {
    /// Who took it.
    pub(crate) by: Option<Arc<str>>,
    /// On which day.
    pub(crate) on: Option<Day>,
    /// How.
    pub(crate) how: How,
    /// Whether the day is also that of a reading by somebody else, as it is
    /// in an inspection record.
    pub(crate) same_day: bool,
}

impl Unsaid {
    /// The taker and the day of a reading that may name its own. A reading
    /// by somebody else does not take over the day of the declaration.
    pub(crate) fn taker(
        &self,
        by: Option<String>,
        on: Option<Day>,
    ) -> (Option<Arc<str>>, Option<Day>) {
        match (by.map(Arc::from), on) {
            (Some(by), None) => {
                let shared = self.same_day || self.by.as_ref() == Some(&by);
                (Some(by), self.on.filter(|_| shared))
            }
            (None, Some(on)) => (self.by.clone(), Some(on)),
            (None, None) => (self.by.clone(), self.on),
            said => said,
        }
    }
}

/// The most attributes of a kind that are told where none of them is meant.
const MOST_TOLD: usize = 12;

/// Reads attributes against a vocabulary.
pub(crate) struct AttributeReader<'a> {
    /// The words.
    pub(crate) words: &'a Vocabulary,
    /// What plain figures leave unsaid.
    pub(crate) unsaid: &'a Unsaid,
    /// Keys that may stand beside the attributes and that a slip may mean.
    pub(crate) keys: &'a [&'a str],
}

impl AttributeReader<'_> {
    /// The attributes of a tool of one of these kinds. Where none is known, any
    /// attribute of the vocabulary is taken.
    pub(crate) fn attributes(
        &self,
        written: WrittenAttributes,
        of: &[KindId],
        spot: &Spot<'_>,
    ) -> Attributes {
        let kinds: Vec<&Kind> = of.iter().map(|kind| self.words.kind(*kind)).collect();
        let mut attributes = Attributes::with_capacity(written.len());
        let mut seen: Vec<AttributeId> = Vec::with_capacity(written.len());
        for (key, value) in written {
            let Some(id) = self.find(&key, &kinds, spot) else { continue };
            if seen.contains(&id) {
                spot.wrong_key(&key, Fault::AttributeTwice).of(&key).tell();
                continue;
            }
            seen.push(id);
            let (Some(value), attribute) = (value, self.words.attribute(id)) else { continue };
            let unit = self.words.unit(of.first().copied(), id);
            let read = |at: &Spot<'_>, one| self.reading(one, attribute, unit, at);
            let readings = spot.key(&key).each_of(value, read);
            if !readings.is_empty() {
                attributes.push((id, readings));
            }
        }
        attributes
    }

    fn find(&self, key: &str, kinds: &[&Kind], spot: &Spot<'_>) -> Option<AttributeId> {
        let name = |id: &AttributeId| self.words.attribute(*id).id.as_str();
        let own = || kinds.iter().flat_map(|kind| &kind.attributes);
        if let Some(id) = own().find(|id| name(id) == key) {
            return Some(*id);
        }
        let known = self.words.find_attribute(key);
        let belongs = |id: &AttributeId| kinds.is_empty() || own().any(|known| known == id);
        if let Some(id) = known.filter(belongs) {
            return Some(id);
        }
        let own: Vec<&str> = match kinds {
            [] => self.words.attributes.iter().map(|one| one.id.as_str()).collect(),
            _ => own().map(name).collect(),
        };
        let meant = nearest(key, own.iter().copied().chain(self.keys.iter().copied()));
        let is_told = meant.is_none() && !kinds.is_empty() && own.len() <= MOST_TOLD;
        let told = own.iter().filter(|_| is_told).map(|id| (*id).to_owned()).collect();
        let fault = match (known, kinds.first()) {
            (Some(_), Some(kind)) => {
                Fault::NoAttributeOfKind { kind: kind.name.clone(), own: told }
            }
            _ => Fault::UnknownKeyOrAttribute(told),
        };
        spot.wrong_key(key, fault).of(key).meant(meant).none()
    }

    fn reading(
        &self,
        written: Single<ReadingForm>,
        attribute: &Attribute,
        unit: LengthUnit,
        spot: &Spot<'_>,
    ) -> Option<Reading> {
        let form = match written {
            Single::Plain(text) => {
                let datum = datum(text, attribute, unit, spot)?;
                let (by, on) = (self.unsaid.by.clone(), self.unsaid.on);
                return Some(Reading { datum, by, on, how: self.unsaid.how, error: None });
            }
            Single::Form(form) => *form,
        };
        let (by, on) = self.unsaid.taker(kept(form.by), spot.day("on", &form.on));
        let how = spot.word("how", &form.how, &HOW).unwrap_or(self.unsaid.how);
        let error = spot.read("error", &form.error, |at, text| match attribute.shape {
            AttributeShape::Quantity(kind) => at.figure_in(text.to_owned(), kind, unit),
            _ => at.wrong(Fault::NoTapeError).of(text).none(),
        });
        let datum = datum(kept(form.value)?, attribute, unit, &spot.key("value"))?;
        Some(Reading { datum, by, on, how, error })
    }
}

/// What a text says of an attribute; none where it is not known.
fn datum(text: String, attribute: &Attribute, unit: LengthUnit, spot: &Spot<'_>) -> Option<Datum> {
    if is_unknown(&text) {
        return None;
    }
    match &attribute.shape {
        AttributeShape::Quantity(kind) => spot.figure_in(text, *kind, unit).map(Datum::Figure),
        AttributeShape::Feature => spot.flag_of(&text).map(Datum::Feature),
        AttributeShape::Choice(words) => {
            attribute.word(&text).map(|known| Datum::Word(known.clone())).or_else(|| {
                spot.wrong(Fault::UnknownChoice(attribute.id.clone()))
                    .none_of(&text, words.iter().map(String::as_str))
                    .none()
            })
        }
        AttributeShape::Name if text.chars().count() as u64 > LONGEST_REMARK => {
            spot.wrong(Fault::TextTooLong(LONGEST_REMARK)).of(&text).none()
        }
        AttributeShape::Name => Some(Datum::Word(text.trim().to_lowercase())),
    }
}

/// Takes away the readings that a change has made worthless: those dated on
/// its day or before, and those without a date.
pub(crate) fn retire(
    attributes: &mut Attributes,
    retired: Option<&[AttributeId]>,
    changed_on: Day,
) {
    let is_retired = |id: AttributeId| retired.is_none_or(|retired| retired.contains(&id));
    for (_, readings) in attributes.iter_mut().filter(|(id, _)| is_retired(*id)) {
        readings.retain(|reading| reading.on.is_some_and(|on| on > changed_on));
    }
    attributes.retain(|(_, readings)| !readings.is_empty());
}

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
    let mut reader = Reader { unsaid, said: Vec::new() };
    let (from, stations) = match written {
        Loose::One(Single::Form(form)) => reader.top_form(*form, spot),
        other => (None, Vec::from_iter(whole(reader.readings(other, spot)))),
    };
    reader.placed(from, stations, spot)
}

/// The vessel as one station, if anything is known of it.
fn whole(readings: Vec<Taken>) -> Option<TakenAt> {
    (!readings.is_empty()).then_some((None, readings))
}

/// A reading, and from where it says that it was taken.
type Taken = (Option<FreeboardFrom>, FreeboardReading);
/// A station's name, if it has one, and its readings.
type TakenAt = (Option<String>, Vec<Taken>);

struct Reader<'a> {
    unsaid: &'a Unsaid,
    /// The places that readings name, in order.
    said: Vec<FreeboardFrom>,
}

impl Reader<'_> {
    /// The longer form: stations, or one reading, with where it was taken.
    fn top_form(
        &mut self,
        mut form: FreeboardForm,
        spot: &Spot<'_>,
    ) -> (Option<FreeboardFrom>, Vec<TakenAt>) {
        let from = filled(&form.from).and_then(|_| spot.word("from", &form.from, &FREEBOARD_FROM));
        form.from = None;
        let Some(stations) = form.stations.take() else {
            let reading = self.reading(Single::Form(Box::new(form)), spot);
            return (from, Vec::from_iter(whole(Vec::from_iter(reading))));
        };
        if form.value.is_some() {
            spot.wrong_key("value", Fault::ValueBesideStations).tell();
        }
        let stations = spot.each("stations", stations, |at, StationForm { name, freeboard }| {
            let readings =
                freeboard.map(|freeboard| self.readings(freeboard, &at.key("freeboard")));
            let readings = readings.unwrap_or_default();
            if readings.is_empty() {
                at.wrong(Fault::EmptyStation).tell();
            }
            Some((kept(name), readings))
        });
        (from, stations)
    }

    /// The stations by the place from which each reading was taken: the one
    /// that it names, else that of the whole, else the only one that any names,
    /// else the rail.
    fn placed(
        &self,
        from: Option<FreeboardFrom>,
        stations: Vec<TakenAt>,
        spot: &Spot<'_>,
    ) -> Freeboard {
        let both = self.said.iter().any(|one| *one != self.said[0]);
        let usual = from.or(self.said.first().copied()).unwrap_or(FreeboardFrom::Rail);
        if both
            && from.is_none()
            && stations.iter().flat_map(|(_, r)| r).any(|(at, _)| at.is_none())
        {
            spot.wrong(Fault::MixedFreeboards).tell();
        }
        let taken = |wanted: bool| {
            let of = |(name, readings): &TakenAt| {
                let of_place = |(at, _): &&Taken| (at.unwrap_or(usual) == usual) == wanted;
                let readings: Vec<_> =
                    readings.iter().filter(of_place).map(|(_, reading)| reading.clone()).collect();
                (!readings.is_empty())
                    .then(|| Station { name: name.clone(), ..Station::of(readings) })
            };
            stations.iter().filter_map(of).collect()
        };
        Freeboard { from: usual, stations: taken(true), other: taken(false) }
    }

    fn readings(&mut self, written: Loose<FreeboardForm>, spot: &Spot<'_>) -> Vec<Taken> {
        spot.each_of(written, |at, one| self.reading(one, at))
    }

    fn reading(&mut self, written: Single<FreeboardForm>, spot: &Spot<'_>) -> Option<Taken> {
        let form = match written {
            Single::Plain(text) => {
                let (from, (low, high)) = self.range(&text, spot)?;
                let Unsaid { by, on, how, .. } = self.unsaid.clone();
                let (load, error, place) = (None, None, spot.place());
                return Some((
                    from,
                    FreeboardReading { low, high, load, by, on, how, error, place },
                ));
            }
            Single::Form(form) => *form,
        };
        let strays = [("from", form.from.is_some()), ("stations", form.stations.is_some())];
        for (key, _) in strays.iter().filter(|(_, stray)| *stray) {
            spot.wrong_key(key, Fault::OfWholeFreeboard(key)).tell();
        }
        let (by, on) = self.unsaid.taker(kept(form.by), spot.day("on", &form.on));
        let how = spot.word("how", &form.how, &HOW).unwrap_or(self.unsaid.how);
        let error = spot.figure("error", &form.error, QuantityKind::Length);
        let (from, (low, high)) = self.range(filled(&form.value)?, &spot.key("value"))?;
        let (load, place) = (kept(form.load), spot.place());
        Some((from, FreeboardReading { low, high, load, by, on, how, error, place }))
    }

    /// A figure or a range, and from where it says that it was taken; none
    /// where it is not known.
    fn range(
        &mut self,
        text: &str,
        spot: &Spot<'_>,
    ) -> Option<(Option<FreeboardFrom>, (Figure, Figure))> {
        if is_unknown(text) {
            return None;
        }
        let (mut text, mut said) = (text.trim(), None);
        for (suffix, from) in SUFFIXES {
            if let Some(rest) = text.strip_suffix(suffix) {
                (text, said) = (rest, Some(from));
            }
        }
        self.said.extend(said);
        let (low, high) = spot.range_of(text)?;
        if low.length() == Some(Length::ZERO) {
            return spot.wrong(Fault::FreeboardZero).of(text).none();
        }
        if low.length() > high.length() {
            return spot.wrong(Fault::FreeboardReversed).of(text).none();
        }
        Some((said, (low, high)))
    }
}
