//! Reasons in the JSON format: a stable code, the numbers, the text.
//!
//! Imports `model` and `measure`.

use super::finding::PlaceJson;
use super::quantity::QuantityJson;
use crate::measure::{Day, Figure, Quantity, Rounding, System};
use crate::model::finding::Because;
use crate::model::reason::{Demand, DisputedReading, Has, Reason, VesselFact};
use crate::model::vocabulary::{AttributeId, KindId, Vocabulary};
use crate::report::places::Places;
use crate::report::words::{Words, figures};
use schemars::JsonSchema;
use serde::Serialize;

/// A reason. Which of the keys are there depends on the code.
#[derive(Debug, Default, JsonSchema, Serialize)]
#[schemars(rename = "Reason")]
pub(in crate::report) struct ReasonJson {
    /// The stable code.
    #[schemars(extend("enum" = Reason::CODES))]
    code: &'static str,
    /// The mark of the tool it speaks of.
    tool: Option<String>,
    /// Where that tool is written.
    #[serde(skip_serializing_if = "Option::is_none")]
    place: Option<PlaceJson>,
    #[serde(flatten)]
    facts: Facts,
    /// For people; its wording may change.
    text: String,
}

/// The facts of a reason.
#[derive(Debug, Default, JsonSchema, Serialize)]
#[schemars(rename = "Facts")]
struct Facts {
    /// The kinds that would do.
    #[serde(skip_serializing_if = "Option::is_none")]
    kinds: Option<Vec<String>>,
    /// The attributes concerned.
    #[serde(skip_serializing_if = "Option::is_none")]
    attributes: Option<Vec<String>>,
    /// What is aboard.
    #[serde(skip_serializing_if = "Option::is_none")]
    has: Option<HasJson>,
    /// Readings on both sides of the limit.
    #[serde(skip_serializing_if = "Option::is_none")]
    readings: Option<Vec<ReadingJson>>,
    /// What is asked.
    #[serde(skip_serializing_if = "Option::is_none")]
    demand: Option<DemandJson>,
    /// By how much it misses.
    #[serde(skip_serializing_if = "Option::is_none")]
    by: Option<QuantityJson>,
    /// The freeboard at which it was judged.
    #[serde(skip_serializing_if = "Option::is_none")]
    freeboard: Option<QuantityJson>,
    /// How many there are.
    #[serde(skip_serializing_if = "Option::is_none")]
    have: Option<u32>,
    /// How many are asked.
    #[serde(skip_serializing_if = "Option::is_none")]
    need: Option<u32>,
    /// The types that are complete.
    #[serde(skip_serializing_if = "Option::is_none")]
    complete: Option<Vec<String>>,
    /// The types that are not.
    #[serde(skip_serializing_if = "Option::is_none")]
    incomplete: Option<Vec<String>>,
    /// The day of acquisition.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schemars(extend("format" = "date"))]
    acquired: Option<String>,
    /// The day before which it had to be.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schemars(extend("format" = "date"))]
    before: Option<String>,
    /// The day since which it is lapsed.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schemars(extend("format" = "date"))]
    since: Option<String>,
    /// The day on which it lapses.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schemars(extend("format" = "date"))]
    day: Option<String>,
    /// Whether it is the inspection that lapses.
    #[serde(skip_serializing_if = "Option::is_none")]
    inspection: Option<bool>,
    /// The other requirement.
    #[serde(skip_serializing_if = "Option::is_none")]
    requirement: Option<String>,
    /// The mark of the part.
    #[serde(skip_serializing_if = "Option::is_none")]
    part: Option<String>,
    /// The vessel that has it.
    #[serde(skip_serializing_if = "Option::is_none")]
    lent_to: Option<String>,
    /// The role.
    #[serde(skip_serializing_if = "Option::is_none")]
    role: Option<String>,
    /// The person.
    #[serde(skip_serializing_if = "Option::is_none")]
    person: Option<String>,
    /// The piece of gear.
    #[serde(skip_serializing_if = "Option::is_none")]
    piece: Option<String>,
    /// The fact of the vessel, like `freeboard` or `feature:wheelhouse`.
    #[serde(skip_serializing_if = "Option::is_none")]
    fact: Option<String>,
    /// Why that piece is outside the rule.
    #[serde(skip_serializing_if = "Option::is_none")]
    why: Option<Box<ReasonJson>>,
}

/// What is aboard: a quantity, yes or no, or a word.
#[derive(Debug, JsonSchema, Serialize)]
#[serde(untagged)]
#[schemars(rename = "Has")]
enum HasJson {
    Quantity(QuantityJson),
    Feature(bool),
    Word(String),
}

/// One of several readings that dispute a limit.
#[derive(Debug, JsonSchema, Serialize)]
#[schemars(rename = "DisputedReading")]
struct ReadingJson {
    /// What it says.
    has: HasJson,
    /// By whom.
    by: Option<String>,
    /// On which day.
    #[schemars(extend("format" = "date"))]
    on: Option<String>,
}

/// What is asked: `least`, `above`, `most` and `below` may stand together.
#[derive(Debug, Default, JsonSchema, Serialize)]
#[schemars(rename = "Demand")]
struct DemandJson {
    /// At least.
    #[serde(skip_serializing_if = "Option::is_none")]
    least: Option<QuantityJson>,
    /// More than.
    #[serde(skip_serializing_if = "Option::is_none")]
    above: Option<QuantityJson>,
    /// At most.
    #[serde(skip_serializing_if = "Option::is_none")]
    most: Option<QuantityJson>,
    /// Less than.
    #[serde(skip_serializing_if = "Option::is_none")]
    below: Option<QuantityJson>,
    /// One of these words.
    #[serde(skip_serializing_if = "Option::is_none")]
    one_of: Option<Vec<String>>,
    /// Yes or no.
    #[serde(skip_serializing_if = "Option::is_none")]
    is: Option<bool>,
    /// For people; its wording may change.
    text: String,
}

impl ReasonJson {
    /// The reason with its numbers.
    pub(in crate::report) fn new(
        because: &Because,
        words: &Words<'_>,
        places: &Places<'_>,
    ) -> Self {
        let tool = because.tool.and_then(|index| words.vessel.kit.get(index));
        Self {
            tool: tool.map(|tool| tool.mark.clone()),
            place: tool.map(|tool| PlaceJson::new(&tool.place, places)),
            ..Self::bare(&because.reason, words)
        }
    }

    /// A reason that speaks of no tool of the kit.
    pub(in crate::report) fn bare(reason: &Reason, words: &Words<'_>) -> Self {
        Self {
            code: reason.code(),
            facts: Writer { words }.facts(reason),
            text: words.reason(reason),
            ..Self::default()
        }
    }
}

struct Writer<'a> {
    words: &'a Words<'a>,
}

impl Writer<'_> {
    fn facts(&self, reason: &Reason) -> Facts {
        match reason {
            Reason::NothingAboard { .. }
            | Reason::TooFew { .. }
            | Reason::TooFewTypes { .. }
            | Reason::NotListed { .. }
            | Reason::NoCertificate { .. } => self.facts_of_number(reason),
            Reason::TooShortForRail { .. }
            | Reason::OutOfSpecification { .. }
            | Reason::NoAlternative { .. }
            | Reason::Unmeasured { .. }
            | Reason::Disputed { .. }
            | Reason::Approximate { .. }
            | Reason::WordingDisputed { .. } => self.facts_of_attribute(reason),
            _ => self.other_facts(reason),
        }
    }

    fn facts_of_number(&self, reason: &Reason) -> Facts {
        match reason {
            Reason::NothingAboard { kinds } | Reason::NotListed { kinds } => {
                Facts { kinds: self.kinds(kinds), ..Facts::default() }
            }
            Reason::TooFew { kind, have, need } => Facts {
                kinds: self.kinds(&[*kind]),
                have: Some(*have),
                need: Some(*need),
                ..Facts::default()
            },
            Reason::TooFewTypes { have, need, complete, incomplete } => Facts {
                have: Some(*have),
                need: Some(*need),
                complete: Some(complete.clone()),
                incomplete: Some(incomplete.clone()),
                ..Facts::default()
            },
            Reason::NoCertificate { role, have, need, lapsed } => Facts {
                role: role.clone(),
                have: Some(*have),
                need: Some(*need),
                since: lapsed.map(|day| day.to_string()),
                ..Facts::default()
            },
            _ => Facts::default(),
        }
    }

    fn facts_of_attribute(&self, reason: &Reason) -> Facts {
        match reason {
            Reason::TooShortForRail { attribute, has, least, short, freeboard } => Facts {
                attributes: self.attributes(&[*attribute]),
                has: Some(self.has(&Has::Figure(has.clone()))),
                demand: Some(self.demand(&Demand::Least(least.clone()))),
                by: Some(self.by(Quantity::Length(*short), has.system)),
                freeboard: Some(QuantityJson::of_freeboard(*freeboard, self.words)),
                ..Facts::default()
            },
            Reason::OutOfSpecification { attribute, has, demand, by } => Facts {
                attributes: self.attributes(&[*attribute]),
                has: Some(self.has(has)),
                demand: Some(self.demand(demand)),
                by: by.map(|by| self.by(by, system_of(has))),
                ..Facts::default()
            },
            Reason::NoAlternative { attributes } | Reason::WordingDisputed { attributes } => {
                Facts { attributes: self.attributes(attributes), ..Facts::default() }
            }
            Reason::Unmeasured { attribute, has, demand } => Facts {
                attributes: self.attributes(&[*attribute]),
                has: has.as_ref().map(|has| self.has(has)),
                demand: Some(self.demand(demand)),
                ..Facts::default()
            },
            Reason::Disputed { attribute, readings, demand } => Facts {
                attributes: self.attributes(&[*attribute]),
                readings: Some(readings.iter().map(|reading| self.reading(reading)).collect()),
                demand: Some(self.demand(demand)),
                ..Facts::default()
            },
            Reason::Approximate { attribute, has, limit } => Facts {
                attributes: self.attributes(&[*attribute]),
                has: Some(self.has(&Has::Figure(has.clone()))),
                demand: Some(self.demand(&Demand::About(limit.clone()))),
                ..Facts::default()
            },
            _ => Facts::default(),
        }
    }

    fn other_facts(&self, reason: &Reason) -> Facts {
        let day = |day: &Day| Some(day.to_string());
        let none = Facts::default();
        match reason {
            Reason::AcquiredTooLate { acquired, before } => {
                Facts { acquired: day(acquired), before: day(before), ..none }
            }
            Reason::AcquiredUnknown { before } => Facts { before: day(before), ..none },
            Reason::NotAboard { lent_to } => Facts { lent_to: lent_to.clone(), ..none },
            Reason::InspectionLapsed { since } | Reason::Expired { since } => {
                Facts { since: day(since), ..none }
            }
            Reason::LapsesDuringTrip { on, inspection } => {
                Facts { day: day(on), inspection: Some(*inspection), ..none }
            }
            Reason::Taken { requirement }
            | Reason::FitsNothing { requirement }
            | Reason::HangsOn { requirement } => {
                Facts { requirement: Some(self.words.id(*requirement)), ..none }
            }
            Reason::PartTaken { part } => Facts { part: Some(part.clone()), ..none },
            Reason::GearOutside { piece, why } => Facts {
                piece: Some(piece.clone()),
                why: Some(Box::new(ReasonJson::bare(why, self.words))),
                ..none
            },
            Reason::CertificateUndated { person } => Facts { person: Some(person.clone()), ..none },
            Reason::BindingUnknown { fact } | Reason::VesselFactUnknown { fact } => {
                Facts { fact: Some(fact_code(fact, self.words.vocabulary)), ..none }
            }
            Reason::NoEdition { day: first } => Facts { day: day(first), ..none },
            _ => none,
        }
    }

    fn kinds(&self, kinds: &[KindId]) -> Option<Vec<String>> {
        Some(kinds.iter().map(|kind| self.words.vocabulary.kind(*kind).id.clone()).collect())
    }

    fn attributes(&self, ids: &[AttributeId]) -> Option<Vec<String>> {
        let id = |id: &AttributeId| self.words.vocabulary.attribute(*id).id.clone();
        Some(ids.iter().map(id).collect())
    }

    fn figure(&self, figure: &Figure, rounding: Rounding) -> QuantityJson {
        QuantityJson::of_figure(figure, self.words.locale, rounding)
    }

    fn has(&self, has: &Has) -> HasJson {
        match has {
            Has::Figure(figure) => HasJson::Quantity(self.figure(figure, Rounding::Down)),
            Has::Feature(yes) => HasJson::Feature(*yes),
            Has::Word(word) => HasJson::Word(word.clone()),
        }
    }

    fn by(&self, by: Quantity, lead: System) -> QuantityJson {
        QuantityJson::new(by, figures::quantity_difference(by, lead, self.words.locale))
    }

    fn reading(&self, reading: &DisputedReading) -> ReadingJson {
        ReadingJson {
            has: self.has(&reading.has),
            by: reading.by.clone(),
            on: reading.on.map(|day| day.to_string()),
        }
    }

    fn demand(&self, demand: &Demand) -> DemandJson {
        let text = figures::demand(demand, self.words.locale);
        let empty = DemandJson { text, ..DemandJson::default() };
        let up = |figure| Some(self.figure(figure, Rounding::Up));
        let down = |figure| Some(self.figure(figure, Rounding::Down));
        match demand {
            Demand::Least(figure) => DemandJson { least: up(figure), ..empty },
            Demand::Above(figure) => DemandJson { above: up(figure), ..empty },
            Demand::Most(figure) => DemandJson { most: down(figure), ..empty },
            Demand::Below(figure) => DemandJson { below: down(figure), ..empty },
            Demand::Between(low, high) => DemandJson { least: up(low), most: down(high), ..empty },
            Demand::OneOf(words) => DemandJson { one_of: Some(words.clone()), ..empty },
            Demand::Is(yes) => DemandJson { is: Some(*yes), ..empty },
            Demand::About(_) | Demand::Open => empty,
        }
    }
}

fn system_of(has: &Has) -> System {
    match has {
        Has::Figure(figure) => figure.system,
        _ => System::Metric,
    }
}

/// The stable code of a fact of the vessel, with what it speaks of.
pub(super) fn fact_code(fact: &VesselFact, vocabulary: &Vocabulary) -> String {
    match fact {
        VesselFact::Freeboard => "freeboard".to_owned(),
        VesselFact::FreeboardFrom => "freeboard-from".to_owned(),
        VesselFact::FreeboardDisputed => "freeboard-disputed".to_owned(),
        VesselFact::Permits => "permits".to_owned(),
        VesselFact::Gear => "gear".to_owned(),
        VesselFact::Areas => "areas".to_owned(),
        VesselFact::Feature(id) => format!("feature:{id}"),
        VesselFact::Hooks => "hooks".to_owned(),
        VesselFact::Lines => "lines".to_owned(),
        VesselFact::People => "people".to_owned(),
        VesselFact::Aboard(kind) => format!("aboard:{}", vocabulary.kind(*kind).id),
    }
}
