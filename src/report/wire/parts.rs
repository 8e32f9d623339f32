//! What the formats of several commands have in common: the program, a trip,
//! a place, a quantity, an amount of money, a vessel, a tool, a notice, what a
//! kit is worth in outcomes.
//!
//! Imports the results of all commands, what lies below, and words.

use super::form::{Day, Word, day, objects, sparse, word};
use crate::fleet;
use crate::measure::{self, Currency, Figure, Length, Rounding};
use crate::model::catalogue::{self, Catalogue};
use crate::model::check;
use crate::model::finding::{Action, Asked, Serving};
use crate::model::options;
use crate::model::place;
use crate::model::profile::{FreeboardFrom, Profile};
use crate::model::reason::VesselFact;
use crate::model::technique;
use crate::model::vessel::{self, FreeboardReading, How};
use crate::report::Locale;

use crate::freeing as ways;
use crate::model::vocabulary::Vocabulary;
use crate::report::places::Places;
use crate::report::subject::OptionsShown;
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

    // The edition that judged; no description, being part of another object.
    pub(super) Edition(profile: &Profile) {
        /// The id of the edition.
        id: String = profile.id.clone(),
        /// The id of the rule.
        rule: String = profile.rule.clone(),
        /// The law's edition, in words.
        edition: String = profile.edition.clone(),
        /// The revision of the program's encoding.
        encoding: u32 = profile.encoding,
        /// False for a rule that is known, not encoded.
        encoded: bool = profile.encoded,
    }

    /// An amount, with every digit of its currency.
    pub(super) Money(amount: measure::Money, currency: Currency) {
        /// The amount.
        amount: String = amount.show(currency),
        /// The code of ISO 4217.
        currency: &'static str = currency.code(),
    }

    /// An item, by what is needed to order it.
    pub(super) Item(catalogue: &Catalogue, item: &catalogue::Item) {
        /// The supplier's name.
        supplier: String = catalogue.supplier.clone(),
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
        let (stations, other) = (freeboard.stations.iter(), freeboard.other.iter());
        /// From where it was taken.
        from: Word<FreeboardFrom> = word(&freeboard.from),
        /// One for each hauling station.
        stations: Vec<Station> = stations.map(|one| Station::new(one, locale)).collect(),
        /// Stations where it was taken from the other place, too.
        other: Vec<Station> = other.map(|one| Station::new(one, locale)).collect(),
    }

    /// A place on the rail where gear is hauled.
    Station(station: &vessel::Station, locale: Locale) {
        /// Its name; null where the vessel has one freeboard.
        name: Option<String> = station.name.clone(),
        /// What was taken there.
        readings: Vec<Range> = ranges(&station.readings, locale),
        /// What was only stated or read off a label, and counts for nothing against those.
        #[serde(skip_serializing_if = "Option::is_none")]
        overruled: Option<Vec<Range>> =
            Some(&station.overruled).filter(|all| !all.is_empty()).map(|all| ranges(all, locale)),
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

    /// Situations, counted.
    pub(super) Worth(worth: options::Worth) {
        /// The first choice is open.
        first: usize = worth.first,
        /// Only a later one is.
        fallback: usize = worth.fallback,
        /// None is known to be open, and of some nobody can tell.
        unclear: usize = worth.unclear,
        /// Every choice is closed.
        nothing: usize = worth.nothing,
        /// No hook of the type is aboard.
        left_out: usize = worth.left_out,
    }

    /// Counts, and the single tool that would lift most.
    pub(super) Freeing(shown: &OptionsShown<'_>) {
        let ways = shown.options;
        /// The id of the file of techniques.
        practice: String = shown.practice.id.clone(),
        /// The revision of that file.
        encoding: u32 = shown.practice.encoding,
        /// In how many situations what is open.
        worth: Worth = Worth::new(ways.outlook.worth()),
        /// The single tool that would lift most situations.
        lift: Option<Lift> = ways.lift.as_ref().map(|lift| Lift::new(shown, lift)),
    }

    /// The single tool that would lift most situations.
    pub(super) Lift(shown: &OptionsShown<'_>, lift: &ways::Lift) {
        let lifted = lift.lifted.iter();
        let price = lift.price.as_ref();
        /// For people; its wording may change.
        text: String = shown.lift().unwrap_or_default(),
        /// What is to be done.
        deed: Word<Action> = word(&lift.step.action),
        /// What it lifts.
        situations: Vec<Lifted> = lifted.map(|one| Lifted::new(shown.practice, one)).collect(),
        /// What it costs; null without a catalogue that has one.
        price: Option<Priced> = price.map(|priced| Priced::new(shown, priced)),
    }

    /// A situation that is lifted.
    Lifted(practice: &technique::Practice, lifted: &ways::Lifted) {
        /// Its id.
        id: String = situation(practice, lifted.situation, lifted.along).id.clone(),
        /// True for what goes along with the others.
        along: bool = lifted.along,
        /// The best open choice before, from 0; null where none was.
        from: Option<usize> = lifted.from,
        /// The best open choice then.
        to: usize = lifted.to,
    }

    /// The cheapest item that does as much.
    Priced(shown: &OptionsShown<'_>, priced: &ways::Priced) {
        let catalogue = &shown.catalogues[priced.catalogue];
        let item = &catalogue.items[priced.item];
        #[serde(flatten)]
        item: Item = Item::new(catalogue, item),
        /// The fewest sold.
        packs: u32 = priced.packs,
        /// How many pieces a pack holds.
        pack: u32 = item.pack,
        /// For these packs, without delivery and tax.
        price: Money = Money::new(priced.price, catalogue.currency),
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
        /// The words that are not known; the kinds that are disputed; the mark as
        /// it was read; the name of what was read differently.
        words: Vec<String>,
        /// The mark of the tool.
        tool: String,
        /// What an inspector wrote of it.
        remark: String,
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

fn ranges(readings: &[FreeboardReading], locale: Locale) -> Vec<Range> {
    readings.iter().map(|reading| Range::new(reading, locale)).collect()
}

/// The word of a file for how a figure came about.
pub(super) fn how_word(how: How) -> &'static str {
    match how {
        How::Label => "label",
        How::Stated => "stated",
        How::Measured => "measured",
    }
}

fn notice_facts(notice: &check::Notice, vocabulary: &Vocabulary) -> NoticeFacts {
    use check::Notice as Told;
    let none = NoticeFacts::default();
    let fact_of = |fact| Some(fact_code(fact, vocabulary));
    match notice {
        Told::NoRuleNamesVessel | Told::TooManyFacts | Told::NoReturn => none,
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
        | Told::SheetOutOfDate { on, .. }
        | Told::TripOver { back: on }
        | Told::ListOld { declared: on } => NoticeFacts { day: Some(day(*on)), ..none },
        Told::Remark { mark, on, remark } => {
            let (tool, remark) = (Some(mark.clone()), Some(remark.clone()));
            NoticeFacts { tool, remark, day: Some(day(*on)), ..none }
        }
        Told::MarkReadAs { mark, on, read } => {
            let (tool, words) = (Some(mark.clone()), Some(vec![read.clone()]));
            NoticeFacts { tool, words, day: Some(day(*on)), ..none }
        }
        Told::Unmarked { mark, on } | Told::UnlistedMark { mark, on } => {
            NoticeFacts { tool: Some(mark.clone()), day: Some(day(*on)), ..none }
        }
        Told::KindDisputed { mark, kinds, .. } => {
            NoticeFacts { tool: Some(mark.clone()), words: Some(kinds.clone()), ..none }
        }
        Told::ReadingsDiffer { mark, attribute, .. } => {
            let words = Some(vec![attribute.clone()]);
            NoticeFacts { tool: Some(mark.clone()), words, ..none }
        }
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

/// A situation by its index into its list.
pub(super) fn situation(
    practice: &technique::Practice,
    index: usize,
    along: bool,
) -> &technique::Situation {
    if along { &practice.along[index] } else { &practice.situations[index] }
}

/// The ids of requirements.
pub(super) fn ids(words: &Words<'_>, indices: &[usize]) -> Vec<String> {
    indices.iter().map(|index| words.id(*index)).collect()
}

/// The stable code of a fact of the vessel, with what it speaks of.
pub(super) fn fact_code(fact: &VesselFact, vocabulary: &Vocabulary) -> String {
    let code = match fact {
        VesselFact::Freeboard => "freeboard",
        VesselFact::FreeboardFrom => "freeboard-from",
        VesselFact::FreeboardDisputed => "freeboard-disputed",
        VesselFact::Permits => "permits",
        VesselFact::Gear => "gear",
        VesselFact::Areas => "areas",
        VesselFact::Hooks => "hooks",
        VesselFact::Lines => "lines",
        VesselFact::People => "people",
        VesselFact::Feature(id) => return format!("feature:{id}"),
        VesselFact::Aboard(kind) => return format!("aboard:{}", vocabulary.kind(*kind).id),
    };
    code.to_owned()
}
