//! Reasons: a stable code, the numbers, the text.
//!
//! Imports `model`, `measure` and words.

use super::form::{Day, Word, day, objects, sparse, word};
use super::parts::how_word;
use super::parts::{Place, Quantity, fact_code, ids};
use crate::measure::{self, Figure, Rounding, System};
use crate::model::finding::Because;
use crate::model::reason::{self, Has};
use crate::model::vocabulary::{AttributeId, KindId};
use crate::report::Locale;
use crate::report::places::Places;
use crate::report::words::{Words, figures};
use schemars::JsonSchema;
use serde::Serialize;

objects! {
    /// A reason. Which of the keys are there depends on the code.
    pub(super) Reason(reason: &reason::Reason, tool: Option<(String, Place)>, words: &Words<'_>) {
        let (tool, place) = tool.unzip();
        /// The stable code.
        code: Word<reason::Reason> = word(reason),
        /// The mark of the tool it speaks of.
        tool: Option<String> = tool,
        /// Where that tool is written.
        #[serde(skip_serializing_if = "Option::is_none")]
        place: Option<Place> = place,
        #[serde(flatten)]
        facts: Facts = Facts::of(reason, words),
        /// For people; its wording may change.
        text: String = words.reason(reason),
    }

    /// One of several readings that dispute a limit.
    DisputedReading(reading: &reason::DisputedReading, locale: Locale) {
        /// What it says.
        has: HasAboard = has(&reading.has, locale),
        /// By whom.
        by: Option<String> = reading.by.clone(),
        /// On which day.
        on: Option<Day> = reading.on.map(day),
        /// How it came about: `measured`, `stated` or `label`.
        how: &'static str = how_word(reading.how),
    }

    /// What is asked: `least`, `above`, `most` and `below` may stand together.
    Demand(demand: &reason::Demand, locale: Locale) {
        #[serde(flatten)]
        limits: Limits = Limits::of(demand, locale),
        /// For people; its wording may change.
        text: String = figures::demand(demand, locale),
    }
}

sparse! {
    // The facts of a reason.
    Facts {
        /// The kinds that would do.
        kinds: Vec<String>,
        /// The attributes concerned.
        attributes: Vec<String>,
        /// What is aboard.
        has: HasAboard,
        /// Readings on both sides of the limit; beside a figure that was measured,
        /// those that count for nothing against it.
        readings: Vec<DisputedReading>,
        /// What is asked.
        demand: Demand,
        /// By how much it misses.
        by: Quantity,
        /// The freeboard at which it was judged.
        freeboard: Quantity,
        /// How many there are.
        have: u32,
        /// How many are asked.
        need: u32,
        /// The types that are complete.
        complete: Vec<String>,
        /// The types that are not.
        incomplete: Vec<String>,
        /// The day of acquisition.
        acquired: Day,
        /// The day before which it had to be.
        before: Day,
        /// The day since which it is lapsed.
        since: Day,
        /// The day on which it lapses.
        day: Day,
        /// Whether it is the inspection that lapses.
        inspection: bool,
        /// The other requirement.
        requirement: String,
        /// All requirements that compete as equals, the finding's own too.
        requirements: Vec<String>,
        /// The mark of the part.
        part: String,
        /// The vessel that has it.
        lent_to: String,
        /// The role.
        role: String,
        /// The person.
        person: String,
        /// The piece of gear.
        piece: String,
        /// The fact of the vessel, like `freeboard` or `feature:wheelhouse`.
        fact: String,
        /// Why that piece is outside the rule.
        why: Box<Reason>,
    }
}

sparse! {
    // The sides of a demand.
    Limits {
        /// At least.
        least: Quantity,
        /// More than.
        above: Quantity,
        /// At most.
        most: Quantity,
        /// Less than.
        below: Quantity,
        /// One of these words.
        one_of: Vec<String>,
        /// Yes or no.
        is: bool,
    }
}

/// What is aboard: a quantity, yes or no, or a word.
#[derive(JsonSchema, Serialize)]
#[serde(untagged)]
#[schemars(rename = "Has")]
enum HasAboard {
    Quantity(Quantity),
    Feature(bool),
    Word(String),
}

impl Reason {
    /// The reason with the tool of the kit that it speaks of.
    pub(super) fn of(because: &Because, words: &Words<'_>, places: &Places<'_>) -> Self {
        let tool = because.tool.and_then(|index| words.vessel.kit.get(index));
        let tool = tool.map(|tool| (tool.mark.clone(), Place::new(&tool.place, places)));
        Self::new(&because.reason, tool, words)
    }
}

impl Facts {
    fn of(reason: &reason::Reason, words: &Words<'_>) -> Self {
        use reason::Reason as Why;
        let none = Self::default();
        match reason {
            Why::NothingAboard { kinds: all }
            | Why::NotListed { kinds: all }
            | Why::KindDisputed { kinds: all, .. } => Self { kinds: kinds(all, words), ..none },
            Why::TooFew { kind, have, need } => {
                let kinds = kinds(&[*kind], words);
                Self { kinds, have: Some(*have), need: Some(*need), ..none }
            }
            Why::TooFewTypes { have, need, complete, incomplete } => {
                let (complete, incomplete) = (Some(complete.clone()), Some(incomplete.clone()));
                Self { have: Some(*have), need: Some(*need), complete, incomplete, ..none }
            }
            Why::NoCertificate { role, have, need, lapsed } => {
                let (have, need, since) = (Some(*have), Some(*need), lapsed.map(day));
                Self { role: role.clone(), have, need, since, ..none }
            }
            Why::AcquiredTooLate { acquired, before } => {
                Self { acquired: Some(day(*acquired)), before: Some(day(*before)), ..none }
            }
            Why::AcquiredUnknown { before } => Self { before: Some(day(*before)), ..none },
            Why::NotAboard { lent_to } => Self { lent_to: lent_to.clone(), ..none },
            Why::InspectionLapsed { since } | Why::Expired { since } => {
                Self { since: Some(day(*since)), ..none }
            }
            Why::LapsesDuringTrip { on, inspection } => {
                Self { day: Some(day(*on)), inspection: Some(*inspection), ..none }
            }
            Why::NoEdition { day: first } => Self { day: Some(day(*first)), ..none },
            Why::Taken { requirement }
            | Why::FitsNothing { requirement }
            | Why::HangsOn { requirement } => {
                Self { requirement: ids(words, &[*requirement]).pop(), ..none }
            }
            Why::OneOfThese { requirements } => {
                Self { requirements: Some(ids(words, requirements)), ..none }
            }
            Why::PartTaken { part } => Self { part: Some(part.clone()), ..none },
            Why::GearOutside { piece, why } => {
                let why = Some(Box::new(Reason::new(why, None, words)));
                Self { piece: Some(piece.clone()), why, ..none }
            }
            Why::ExpiryDisputed { sure, last } => {
                Self { since: Some(day(sure.next())), day: Some(day(*last)), ..none }
            }
            Why::CertificateUndated { person }
            | Why::CertificateDisputed { person }
            | Why::PersonDisputed { person } => Self { person: Some(person.clone()), ..none },
            Why::BindingUnknown { fact } | Why::VesselFactUnknown { fact } => {
                Self { fact: Some(fact_code(fact, words.vocabulary)), ..none }
            }
            _ => Self::of_attribute(reason, words),
        }
    }

    /// The facts of a reason that speaks of an attribute.
    fn of_attribute(reason: &reason::Reason, words: &Words<'_>) -> Self {
        use reason::{Demand as Asked, Reason as Why};
        let locale = words.locale;
        let demand = |demand: &Asked| Some(Demand::new(demand, locale));
        let figure = |figure: &Figure| Some(has(&Has::Figure(figure.clone()), locale));
        let by = |by: measure::Quantity, lead: System| {
            Quantity::new(by, figures::quantity_difference(by, lead, locale))
        };
        let of =
            |all: &[AttributeId]| Self { attributes: attributes(all, words), ..Self::default() };
        match reason {
            Why::TooShortForRail { attribute, has, least, short, freeboard, overruled } => Self {
                readings: readings(overruled, locale),
                has: figure(has),
                demand: demand(&Asked::Least(least.clone())),
                by: Some(by(measure::Quantity::Length(*short), has.system)),
                freeboard: Some(Quantity::of_freeboard(*freeboard, words)),
                ..of(&[*attribute])
            },
            Why::OutOfSpecification {
                attribute,
                has: aboard,
                demand: asked,
                by: misses,
                overruled,
            } => Self {
                readings: readings(overruled, locale),
                has: Some(has(aboard, locale)),
                demand: demand(asked),
                by: misses.map(|misses| by(misses, system_of(aboard))),
                ..of(&[*attribute])
            },
            Why::NoAlternative { attributes } | Why::WordingDisputed { attributes } => {
                of(attributes)
            }
            Why::Unmeasured { attribute, has: aboard, demand: asked } => Self {
                has: aboard.as_ref().map(|aboard| has(aboard, locale)),
                demand: demand(asked),
                ..of(&[*attribute])
            },
            Why::Disputed { attribute, readings, demand: asked } => Self {
                readings: self::readings(readings, locale),
                demand: demand(asked),
                ..of(&[*attribute])
            },
            Why::Approximate { attribute, has, limit } => Self {
                has: figure(has),
                demand: demand(&Asked::About(limit.clone())),
                ..of(&[*attribute])
            },
            _ => Self::default(),
        }
    }
}

impl Limits {
    fn of(demand: &reason::Demand, locale: Locale) -> Self {
        use reason::Demand as Asked;
        let up = |figure| Some(Quantity::of_figure(figure, locale, Rounding::Up));
        let down = |figure| Some(Quantity::of_figure(figure, locale, Rounding::Down));
        let none = Self::default();
        match demand {
            Asked::Least(figure) => Self { least: up(figure), ..none },
            Asked::Above(figure) => Self { above: up(figure), ..none },
            Asked::Most(figure) => Self { most: down(figure), ..none },
            Asked::Below(figure) => Self { below: down(figure), ..none },
            Asked::Between(low, high) => Self { least: up(low), most: down(high), ..none },
            Asked::OneOf(words) => Self { one_of: Some(words.clone()), ..none },
            Asked::Is(yes) => Self { is: Some(*yes), ..none },
            Asked::About(_) | Asked::Open => none,
        }
    }
}

/// The readings; the key is left out where there are none.
fn readings(all: &[reason::DisputedReading], locale: Locale) -> Option<Vec<DisputedReading>> {
    let told = || all.iter().map(|reading| DisputedReading::new(reading, locale)).collect();
    (!all.is_empty()).then(told)
}

fn kinds(kinds: &[KindId], words: &Words<'_>) -> Option<Vec<String>> {
    Some(kinds.iter().map(|kind| words.vocabulary.kind(*kind).id.clone()).collect())
}

fn attributes(ids: &[AttributeId], words: &Words<'_>) -> Option<Vec<String>> {
    Some(ids.iter().map(|id| words.vocabulary.attribute(*id).id.clone()).collect())
}

fn has(has: &Has, locale: Locale) -> HasAboard {
    match has {
        Has::Figure(figure) => {
            HasAboard::Quantity(Quantity::of_figure(figure, locale, Rounding::Down))
        }
        Has::Feature(yes) => HasAboard::Feature(*yes),
        Has::Word(word) => HasAboard::Word(word.clone()),
    }
}

fn system_of(has: &Has) -> System {
    match has {
        Has::Figure(figure) => figure.system,
        _ => System::Metric,
    }
}
