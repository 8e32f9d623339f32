//! What the formats of several commands have in common: the program, a trip,
//! a place, a quantity, an amount of money, a vessel, a tool, a notice, a file
//! that was refused.
//!
//! Imports `model`, `measure`, `load` for positions and problems, and words.

use super::form::{Day, Word, day, objects, sparse, word};
use super::reason::fact_code;
use crate::fleet;
use crate::load;
use crate::measure::{self, Currency, Figure, Length, Rounding};
use crate::model::check;
use crate::model::finding::{Asked, Serving};
use crate::model::place;
use crate::model::profile::FreeboardFrom;
use crate::model::vessel::{self, FreeboardReading};
use crate::model::vocabulary::Vocabulary;
use crate::quote::Offer;
use crate::report::Locale;
use crate::report::places::Places;
use crate::report::subject::QuoteShown;
use crate::report::words::{self, Words, figures};

objects! {
    /// The program that wrote it.
    pub(super) Program() {
        /// The name.
        name: &'static str = env!("CARGO_PKG_NAME"),
        /// Its version.
        version: &'static str = env!("CARGO_PKG_VERSION"),
    }

    /// The days of a trip.
    pub(super) Trip(asked: &Asked) {
        /// The day of departure.
        departure: Day = day(asked.departure),
        /// The day of return.
        r#return: Day = day(asked.back),
    }

    /// An amount, with every digit of its currency.
    pub(super) Money(amount: measure::Money, currency: Currency) {
        /// The amount.
        amount: String = amount.show(currency),
        /// The code of ISO 4217.
        currency: &'static str = currency.code(),
    }

    /// An item, by what is needed to order it.
    pub(super) Item(shown: &QuoteShown<'_>, offer: Offer) {
        let item = shown.item(offer);
        /// The supplier's name.
        supplier: String = shown.catalogue(offer).supplier.clone(),
        /// The number under which it is ordered.
        number: String = item.number.clone(),
        /// What it is, in words.
        description: String = item.description.clone(),
    }

    /// Where something is written.
    pub(super) Place(place: &place::Place, places: &Places<'_>) {
        let position = places.locate(place);
        /// The file, as it was given.
        file: String = place.file.to_string(),
        /// The path of keys in the file.
        key: String = place.key.clone(),
        /// From one; null where the file was not read for it.
        line: Option<usize> = position.map(|position| position.line),
        /// From one, in characters.
        column: Option<usize> = position.map(|position| position.column),
    }

    /// A tool that serves.
    pub(super) ServingTool(serving: &Serving, words: &Words<'_>, places: &Places<'_>) {
        let tool = words.vessel.kit.get(serving.tool);
        /// Its mark.
        mark: String = words.mark(serving.tool).to_owned(),
        /// The kind, by its id.
        kind: Option<String> = tool.map(|tool| words.vocabulary.kind(tool.kind).id.clone()),
        /// How many of the lot serve.
        count: u32 = serving.count,
        /// The requirement whose tool is deemed to serve this one.
        through: Option<String> = serving.through.map(|requirement| words.id(requirement)),
        /// Where it is written.
        place: Place = Place::new(&tool.map(|tool| tool.place.clone()).unwrap_or_default(), places),
    }

    /// The vessel as it was judged.
    pub(super) Vessel(vessel: &vessel::Vessel, locale: Locale) {
        /// The vessel's name.
        name: String = vessel.name.clone(),
        /// The register number.
        register: Option<String> = vessel.register.clone(),
        /// The port.
        port: Option<String> = vessel.port.clone(),
        /// The file, as it was given.
        file: String = vessel.place.file.to_string(),
        /// Its freeboard.
        freeboard: Freeboard = Freeboard::new(&vessel.freeboard, locale),
    }

    /// From the rail or the deck down to the water.
    Freeboard(freeboard: &vessel::Freeboard, locale: Locale) {
        /// From where it was taken.
        from: Word<FreeboardFrom> = word(&freeboard.from),
        /// One for each hauling station.
        stations: Vec<Station> = freeboard.stations.iter().map(|s| Station::new(s, locale)).collect(),
    }

    /// A place on the rail where gear is hauled.
    Station(station: &vessel::Station, locale: Locale) {
        /// Its name; null where the vessel has one freeboard.
        name: Option<String> = station.name.clone(),
        /// What was taken there.
        readings: Vec<Range> = station.readings.iter().map(|r| Range::new(r, locale)).collect(),
    }

    /// One reading of a freeboard.
    Range(reading: &FreeboardReading, locale: Locale) {
        /// The lowest.
        low: Quantity = Quantity::as_measured(&reading.low, locale),
        /// The highest.
        high: Quantity = Quantity::as_measured(&reading.high, locale),
    }

    /// Something that is told of the check as a whole.
    pub(super) Notice(notice: &check::Notice, vocabulary: &Vocabulary, locale: Locale) {
        /// The stable code.
        code: Word<check::Notice> = word(notice),
        #[serde(flatten)]
        facts: NoticeFacts = notice_facts(notice, vocabulary),
        /// For people; its wording may change.
        text: String = words::notice(notice, locale),
        /// What to do about it, for people.
        #[serde(skip_serializing_if = "Option::is_none")]
        remedy: Option<String> = words::notice_remedy(notice, locale),
    }

    /// A record that was laid over no vessel.
    pub(super) RecordLeftOut(left_out: &fleet::LeftOut, locale: Locale) {
        /// The file, as it was given.
        file: String = left_out.file.to_string(),
        /// The vessel that it names.
        vessel: String = left_out.vessel.clone(),
        /// How many vessels have that name.
        vessels_called_so: usize = left_out.called_so,
        /// A vessel with nearly that name.
        near: Option<String> = left_out.near.clone(),
        /// For people; its wording may change.
        text: String = words::fleet::left_out(left_out, locale),
    }

    /// A file that was refused.
    pub(super) Refused(refusal: &load::Refusal) {
        /// The file, as it was given.
        file: String = refusal.file.clone(),
        /// What is wrong with it.
        problems: Vec<Problem> = refusal.problems.iter().map(Problem::new).collect(),
    }

    /// One thing that is wrong in a file.
    Problem(problem: &load::Problem) {
        /// The file, as it was given.
        file: String = problem.place.file.to_string(),
        /// The path of keys in the file.
        key: String = problem.place.key.clone(),
        /// From one.
        line: Option<usize> = problem.position.map(|position| position.line),
        /// From one, in characters.
        column: Option<usize> = problem.position.map(|position| position.column),
        /// The text that offends.
        offending: Option<String> = problem.offending.clone(),
        /// What is wrong, for people.
        what: String = problem.wording().what,
        /// What was expected instead.
        expected: Option<String> = problem.wording().expected,
        /// How to mend it.
        mend: Option<String> = problem.wording().mend,
    }

    /// A quantity: one of the exact counts, and its print.
    pub(super) Quantity(quantity: measure::Quantity, text: String) {
        #[serde(flatten)]
        steps: Steps = steps(quantity),
        /// For people; its wording may change.
        text: String = text,
    }
}

sparse! {
    // What a notice speaks of.
    NoticeFacts {
        /// The id of the profile.
        profile: String,
        /// The id of the rule.
        rule: String,
        /// The day it speaks of.
        day: Day,
        /// The fact of the vessel.
        fact: String,
        /// The words that are not known.
        words: Vec<String>,
    }
}

sparse! {
    // The exact count of a quantity, under the name of its unit.
    Steps {
        /// A length.
        nanometres: i64,
        /// A mass.
        micrograms: i64,
        /// An angle.
        millidegrees: i64,
        /// `1/0` is 1, size `1` is 0.
        hook_size_rank: i64,
        /// A number.
        count: i64,
    }
}

fn notice_facts(notice: &check::Notice, vocabulary: &Vocabulary) -> NoticeFacts {
    use check::Notice as Told;
    let none = NoticeFacts::default();
    let fact_of = |fact| Some(fact_code(fact, vocabulary));
    match notice {
        Told::NoRuleNamesVessel | Told::NoReturn => none,
        Told::NotInForce { profile } | Told::DoesNotBind { profile } => {
            NoticeFacts { profile: Some(profile.clone()), ..none }
        }
        Told::NoEdition { rule, day: first } => {
            NoticeFacts { rule: Some(rule.clone()), day: Some(day(*first)), ..none }
        }
        Told::UnknownWords { what, words } => {
            NoticeFacts { fact: fact_of(what), words: Some(words.clone()), ..none }
        }
        Told::MayBind { rule, fact } => {
            NoticeFacts { rule: Some(rule.clone()), fact: fact_of(fact), ..none }
        }
        Told::RecordAfterDeparture { on }
        | Told::FreeboardOtherPlace { on }
        | Told::SheetOutOfDate { on, .. } => NoticeFacts { day: Some(day(*on)), ..none },
    }
}

fn steps(quantity: measure::Quantity) -> Steps {
    let steps = Some(quantity.steps());
    let none = Steps::default();
    match quantity {
        measure::Quantity::Length(_) => Steps { nanometres: steps, ..none },
        measure::Quantity::Mass(_) => Steps { micrograms: steps, ..none },
        measure::Quantity::Angle(_) => Steps { millidegrees: steps, ..none },
        measure::Quantity::HookSize(_) => Steps { hook_size_rank: steps, ..none },
        measure::Quantity::Count(_) => Steps { count: steps, ..none },
    }
}

impl Quantity {
    /// A figure, as its author wrote it with the other system beside it.
    pub(super) fn of_figure(figure: &Figure, locale: Locale, rounding: Rounding) -> Self {
        Self::new(figure.quantity, figure.show(locale.units, rounding))
    }

    /// A figure that is no limit, the other system to the nearest step.
    fn as_measured(figure: &Figure, locale: Locale) -> Self {
        Self::new(figure.quantity, figure.show_nearest(locale.units))
    }

    /// A length that nobody wrote, rounded down in its text.
    pub(super) fn of_length(length: Length, words: &Words<'_>) -> Self {
        let text = figures::length(length, words.system(), words.locale, Rounding::Down);
        Self::new(measure::Quantity::Length(length), text)
    }

    /// A freeboard at which something was judged.
    pub(super) fn of_freeboard(length: Length, words: &Words<'_>) -> Self {
        Self::new(measure::Quantity::Length(length), words.freeboard(length))
    }

    /// The end of a stretch of freeboards, never printed beyond it.
    pub(super) fn of_stretch_end(length: Length, words: &Words<'_>) -> Self {
        let text = figures::stretch_end(length, words.system(), words.locale);
        Self::new(measure::Quantity::Length(length), text)
    }
}

/// An amount in the currency of a quote.
pub(super) fn money(shown: &QuoteShown<'_>, amount: measure::Money) -> Money {
    Money::new(amount, shown.quote.currency)
}

/// The ids of requirements.
pub(super) fn ids(words: &Words<'_>, indices: &[usize]) -> Vec<String> {
    indices.iter().map(|index| words.id(*index)).collect()
}
