//! Why a requirement is not met, or why nobody can tell: facts, no words.

use super::rule::Limit;
use super::stable::stable_words;
use super::vessel::{Datum, How, Reading};
use super::vocabulary::{AttributeId, KindId};
use crate::measure::{Day, Figure, Length, Quantity};
use std::sync::Arc;

/// A limit as it stands for this vessel, worked out at a freeboard.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Demand {
    /// At least this quantity.
    Least(Figure),
    /// More than this quantity.
    Above(Figure),
    /// At most this quantity.
    Most(Figure),
    /// Less than this quantity.
    Below(Figure),
    /// From the first to the second.
    Between(Figure, Figure),
    /// What the profile calls approximate.
    About(Arc<Limit>),
    /// One of these words.
    OneOf(Vec<String>),
    /// Yes or no.
    Is(bool),
    /// It depends on a fact of the vessel that is not known.
    Open,
}

/// What a tool has where a limit asks for something else.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Has {
    /// A quantity.
    Figure(Figure),
    /// Yes or no.
    Feature(bool),
    /// A word.
    Word(String),
}

/// A fact about the vessel that is missing.
#[derive(Debug, Clone, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum VesselFact {
    /// Its freeboard was not measured.
    Freeboard,
    /// Its freeboard was taken from the other place (rail or deck).
    FreeboardFrom,
    /// Its freeboard is disputed between readings.
    FreeboardDisputed,
    /// Its permits.
    Permits,
    /// Its gear.
    Gear,
    /// Its areas.
    Areas,
    /// A feature of the vessel.
    Feature(String),
    /// Its hooks, or the wire of one.
    Hooks,
    /// Its lines, or the diameter of one.
    Lines,
    /// Its people and their roles.
    People,
    /// Whether something of the kind is aboard and works.
    Aboard(KindId),
}

/// One reason. Its code is stable and part of the JSON format.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Reason {
    /// Nothing of the kind is aboard.
    NothingAboard {
        /// The kinds that would do.
        kinds: Vec<KindId>,
    },
    /// There are fewer than asked.
    TooFew {
        /// Of which kind.
        kind: KindId,
        /// How many serve.
        have: u32,
        /// How many are asked.
        need: u32,
    },
    /// There are fewer different types than asked.
    TooFewTypes {
        /// How many types are complete.
        have: u32,
        /// How many are asked.
        need: u32,
        /// The names of the complete ones.
        complete: Vec<String>,
        /// The names of those of which some members are aboard.
        incomplete: Vec<String>,
    },
    /// A long tool does not reach what the rail asks.
    TooShortForRail {
        /// Which dimension.
        attribute: AttributeId,
        /// What it has.
        has: Figure,
        /// The least that will do.
        least: Figure,
        /// By how much it falls short.
        short: Length,
        /// At which freeboard.
        freeboard: Length,
        /// What a label or a statement says otherwise, which counts for nothing
        /// against a measurement.
        overruled: Vec<DisputedReading>,
    },
    /// A dimension or a property is outside the limit.
    OutOfSpecification {
        /// Which attribute.
        attribute: AttributeId,
        /// What it has.
        has: Has,
        /// What is asked.
        demand: Demand,
        /// By how much, for quantities.
        by: Option<Quantity>,
        /// What a label or a statement says otherwise, which counts for nothing
        /// against a measurement.
        overruled: Vec<DisputedReading>,
    },
    /// None of several alternatives holds.
    NoAlternative {
        /// The attributes concerned.
        attributes: Vec<AttributeId>,
    },
    /// Acquired too late to be tolerated.
    AcquiredTooLate {
        /// When it was acquired.
        acquired: Day,
        /// The day before which it had to be.
        before: Day,
    },
    /// It does not work.
    NotServiceable,
    /// It is not aboard.
    NotAboard {
        /// The vessel that has it, if lent.
        lent_to: Option<String>,
    },
    /// It is not there: lost, or looked for and not found.
    Missing,
    /// Its inspection has lapsed: the first day without.
    InspectionLapsed {
        /// Since when.
        since: Day,
    },
    /// It has expired: the first day without.
    Expired {
        /// Since when.
        since: Day,
    },
    /// It lapses while the vessel is at sea: the first day without.
    LapsesDuringTrip {
        /// On which day.
        on: Day,
        /// True for an inspection, false for an expiry.
        inspection: bool,
    },
    /// It would serve, but serves another requirement (by index).
    Taken {
        /// Which one.
        requirement: usize,
    },
    /// It would serve, but is not enough for all of these requirements (by
    /// index), which stand alike.
    OneOfThese {
        /// All of them, that of the finding too.
        requirements: Vec<usize>,
    },
    /// Whatever the missing facts turn out to be, it is not met.
    InEveryCase,
    /// It shares a part with a tool that is used.
    PartTaken {
        /// The part's mark.
        part: String,
    },
    /// The spares fit no tool that serves the requirement they are for.
    FitsNothing {
        /// That requirement, by index.
        requirement: usize,
    },
    /// Nobody with the role holds a valid certificate.
    NoCertificate {
        /// The role, or none for a number of people.
        role: Option<String>,
        /// How many are certified.
        have: u32,
        /// How many are asked.
        need: u32,
        /// The day since which the latest one has lapsed, if there was one.
        lapsed: Option<Day>,
    },
    /// A piece of the vessel's own gear is outside the rule.
    GearOutside {
        /// What it is called.
        piece: String,
        /// Why.
        why: Box<Reason>,
    },
    /// Not measured, not said.
    Unmeasured {
        /// Which attribute.
        attribute: AttributeId,
        /// What was said of it, where that leaves the demand open
        /// (`stainless` may be 316L).
        has: Option<Has>,
        /// What it would have to be.
        demand: Demand,
    },
    /// Readings on both sides of the limit.
    Disputed {
        /// Which attribute.
        attribute: AttributeId,
        /// The readings, as written.
        readings: Vec<DisputedReading>,
        /// What is asked.
        demand: Demand,
    },
    /// Outside the margin of what the rule calls approximate.
    Approximate {
        /// Which attribute.
        attribute: AttributeId,
        /// What it has.
        has: Figure,
        /// The rule's figures and the profile's margin.
        limit: Arc<Limit>,
    },
    /// The rule's wording can be read in ways that differ here.
    WordingDisputed {
        /// The attributes concerned.
        attributes: Vec<AttributeId>,
    },
    /// Nobody said whether it works.
    StateUnknown,
    /// Nobody said where it is.
    WhereaboutsUnknown,
    /// Its expiry was read off in ways that differ.
    ExpiryDisputed {
        /// The last day on which it is good by every word.
        sure: Day,
        /// The last by any.
        last: Day,
    },
    /// Of which kind it is was said in ways that differ.
    KindDisputed {
        /// The kinds.
        kinds: Vec<KindId>,
        /// Whether it is its own name that leaves that open.
        by_name: bool,
    },
    /// What a certificate says was read in ways that differ.
    CertificateDisputed {
        /// Whose.
        person: String,
    },
    /// Whether a person is aboard was said in ways that differ.
    PersonDisputed {
        /// Who.
        person: String,
    },
    /// A required inspection has no date.
    InspectionUndated,
    /// Whether it was acquired in time is not known.
    AcquiredUnknown {
        /// The day before which it had to be.
        before: Day,
    },
    /// Only part of the kit is listed; one may be aboard.
    NotListed {
        /// The kinds that would do.
        kinds: Vec<KindId>,
    },
    /// The spares name no tool that they fit.
    SpareFitUnknown,
    /// A certificate has no date.
    CertificateUndated {
        /// Whose.
        person: String,
    },
    /// Whether the requirement binds here is not known.
    BindingUnknown {
        /// Which fact would settle it.
        fact: VesselFact,
    },
    /// A fact of the vessel that a limit needs is not known.
    VesselFactUnknown {
        /// Which one.
        fact: VesselFact,
    },
    /// It is met once another requirement (by index) is settled.
    HangsOn {
        /// That requirement.
        requirement: usize,
    },
    /// Too many ways to assign the kit; the search was stopped.
    TooManyWays,
    /// So many facts are missing that not every way in which they can turn out was
    /// tried: it may be settled already.
    TooManyFacts,
    /// The edition that binds is known, not encoded.
    NotEncoded,
    /// No edition is known for the day.
    NoEdition {
        /// The first such day.
        day: Day,
    },
}

/// One of several readings that differ.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct DisputedReading {
    /// What it says.
    pub has: Has,
    /// By whom.
    pub by: Option<String>,
    /// On which day.
    pub on: Option<Day>,
    /// How it came about.
    pub how: How,
}

impl Has {
    /// What a reading says.
    pub fn of(datum: &Datum) -> Self {
        match datum {
            Datum::Figure(figure) => Self::Figure(figure.clone()),
            Datum::Feature(has) => Self::Feature(*has),
            Datum::Word(word) => Self::Word(word.clone()),
        }
    }
}

impl DisputedReading {
    /// A reading as it is told.
    pub fn of(reading: &Reading) -> Self {
        let by = reading.by.as_deref().map(str::to_owned);
        Self { has: Has::of(&reading.datum), by, on: reading.on, how: reading.how }
    }
}

stable_words! {
    fn code(&Reason) in CODES {
    Reason::NothingAboard { .. } => "nothing-aboard",
    Reason::TooFew { .. } => "too-few",
    Reason::TooFewTypes { .. } => "too-few-types",
    Reason::TooShortForRail { .. } => "too-short-for-rail",
    Reason::OutOfSpecification { .. } => "out-of-specification",
    Reason::NoAlternative { .. } => "no-alternative-holds",
    Reason::AcquiredTooLate { .. } => "acquired-too-late",
    Reason::NotServiceable => "not-serviceable",
    Reason::NotAboard { .. } => "not-aboard",
    Reason::Missing => "missing",
    Reason::InspectionLapsed { .. } => "inspection-lapsed",
    Reason::Expired { .. } => "expired",
    Reason::LapsesDuringTrip { .. } => "lapses-during-trip",
    Reason::Taken { .. } => "serves-another-requirement",
    Reason::OneOfThese { .. } => "one-of-these",
    Reason::InEveryCase => "in-every-case",
    Reason::PartTaken { .. } => "part-in-use",
    Reason::FitsNothing { .. } => "fits-no-tool-in-use",
    Reason::NoCertificate { .. } => "no-valid-certificate",
    Reason::GearOutside { .. } => "gear-outside-rule",
    Reason::Unmeasured { .. } => "unmeasured",
    Reason::Disputed { .. } => "disputed",
    Reason::Approximate { .. } => "outside-approximate",
    Reason::WordingDisputed { .. } => "wording-disputed",
    Reason::StateUnknown => "condition-unknown",
    Reason::WhereaboutsUnknown => "whereabouts-unknown",
    Reason::ExpiryDisputed { .. } => "expiry-disputed",
    Reason::KindDisputed { .. } => "kind-disputed",
    Reason::CertificateDisputed { .. } => "certificate-disputed",
    Reason::PersonDisputed { .. } => "person-disputed",
    Reason::InspectionUndated => "inspection-undated",
    Reason::AcquiredUnknown { .. } => "acquired-unknown",
    Reason::NotListed { .. } => "not-listed",
    Reason::SpareFitUnknown => "spare-fit-unknown",
    Reason::CertificateUndated { .. } => "certificate-undated",
    Reason::BindingUnknown { .. } => "binding-unknown",
    Reason::VesselFactUnknown { .. } => "vessel-fact-unknown",
    Reason::HangsOn { .. } => "hangs-on",
    Reason::TooManyWays => "too-many-ways",
    Reason::TooManyFacts => "too-many-facts",
    Reason::NotEncoded => "not-encoded",
    Reason::NoEdition { .. } => "no-edition",
    }
}

impl Reason {
    /// The stable codes of all reasons.
    pub const CODES: &'static [&'static str] = CODES;

    /// The stable code.
    pub fn code(&self) -> &'static str {
        code(self)
    }

    /// Whether the reason is a missing fact rather than a fault.
    pub fn is_open(&self) -> bool {
        match self {
            Self::NothingAboard { .. }
            | Self::TooFew { .. }
            | Self::TooFewTypes { .. }
            | Self::TooShortForRail { .. }
            | Self::OutOfSpecification { .. }
            | Self::NoAlternative { .. }
            | Self::AcquiredTooLate { .. }
            | Self::NotServiceable
            | Self::NotAboard { .. }
            | Self::Missing
            | Self::InspectionLapsed { .. }
            | Self::Expired { .. }
            | Self::LapsesDuringTrip { .. }
            | Self::Taken { .. }
            | Self::OneOfThese { .. }
            | Self::InEveryCase
            | Self::PartTaken { .. }
            | Self::FitsNothing { .. }
            | Self::NoCertificate { .. } => false,
            Self::GearOutside { why, .. } => why.is_open(),
            Self::Unmeasured { .. }
            | Self::Disputed { .. }
            | Self::Approximate { .. }
            | Self::WordingDisputed { .. }
            | Self::StateUnknown
            | Self::WhereaboutsUnknown
            | Self::ExpiryDisputed { .. }
            | Self::KindDisputed { .. }
            | Self::CertificateDisputed { .. }
            | Self::PersonDisputed { .. }
            | Self::InspectionUndated
            | Self::AcquiredUnknown { .. }
            | Self::NotListed { .. }
            | Self::SpareFitUnknown
            | Self::CertificateUndated { .. }
            | Self::BindingUnknown { .. }
            | Self::VesselFactUnknown { .. }
            | Self::HangsOn { .. }
            | Self::TooManyWays
            | Self::TooManyFacts
            | Self::NotEncoded
            | Self::NoEdition { .. } => true,
        }
    }
}
