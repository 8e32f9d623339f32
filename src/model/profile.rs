//! A published rule set in one edition.

use super::place::Place;
use super::rule::{Condition, Need, Test};
use super::text::Text;
use super::vocabulary::KindId;
use crate::measure::{DaySpan, Interval};

/// Whether a finding counts towards the verdict.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Level {
    /// It does.
    Required,
    /// It is advice.
    Recommended,
}

/// How a clause or figure was verified.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Verified {
    /// Read in the full text.
    Read,
    /// Seen in the opening of an agency's or journal's page.
    Excerpt,
    /// Concluded from something read.
    Inferred,
    /// Recalled; the clause itself was not seen.
    Memory,
    /// Common practice in the trade, no published source.
    CommonPractice,
}

/// What a profile's word stands on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Standing {
    /// A published rule.
    Rule,
    /// Good practice of the trade: nobody is fined by it.
    GoodPractice,
}

/// From where to the water the freeboard is taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum FreeboardFrom {
    /// The top of the rail.
    Rail,
    /// The working deck.
    Deck,
}

impl FreeboardFrom {
    /// The other of the two.
    pub fn other(self) -> Self {
        match self {
            Self::Rail => Self::Deck,
            Self::Deck => Self::Rail,
        }
    }
}

/// Whom a profile binds. An empty list does not restrict; in a list one
/// match is enough; all the lists must match.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Binds {
    /// Permits held.
    pub permits: Vec<String>,
    /// Gear on board.
    pub gears: Vec<String>,
    /// Areas of the trip.
    pub areas: Vec<String>,
    /// Further conditions on the vessel, its freeboard included.
    pub when: Vec<Condition>,
}

impl Binds {
    /// Whether the profile binds nobody by itself.
    pub fn is_nobody(&self) -> bool {
        self.permits.is_empty()
            && self.gears.is_empty()
            && self.areas.is_empty()
            && self.when.is_empty()
    }
}

/// The tool that serves one requirement is deemed to serve another.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Deemed {
    /// The requirement (by index) whose tool it is.
    pub requirement: usize,
    /// What the tool must be like, beyond serving that requirement.
    pub tests: Vec<Test>,
}

/// One requirement.
#[derive(Debug, Clone)]
pub struct Requirement {
    /// Its id, unique in the profile.
    pub id: String,
    /// Ids that it had in earlier encodings.
    pub formerly: Vec<String>,
    /// What it is called.
    pub title: Text,
    /// Whether it counts towards the verdict.
    pub level: Level,
    /// The clause, like `Appendix F, A.1`.
    pub clause: String,
    /// How it was verified.
    pub verified: Verified,
    /// A note for the reader.
    pub note: Option<Text>,
    /// The days on which it holds.
    pub span: DaySpan,
    /// It binds where all of these hold …
    pub when: Vec<Condition>,
    /// … and none of these groups holds in full.
    pub unless: Vec<Vec<Condition>>,
    /// What it wants.
    pub need: Need,
    /// Whose tools are deemed to serve it.
    pub deemed: Vec<Deemed>,
    /// Requirements (by index) with which it may share a tool that fits both.
    pub shares: Vec<usize>,
    /// How often its tools must be inspected.
    pub inspection: Option<Interval>,
    /// Where it is written.
    pub place: Place,
}

/// A published rule set in one edition.
#[derive(Debug, Clone)]
pub struct Profile {
    /// The id of this edition, like `us-gulf-reef-fish-2019`.
    pub id: String,
    /// The rule whose edition it is, like `us-gulf-reef-fish`.
    pub rule: String,
    /// The law's edition, in words.
    pub edition: String,
    /// The revision of this encoding of it.
    pub encoding: u32,
    /// What it is called.
    pub title: Text,
    /// The publication that it encodes, like `50 CFR part 622`.
    pub source: String,
    /// The governing language, as a tag.
    pub language: String,
    /// What its word stands on.
    pub standing: Standing,
    /// The days on which this edition is in force.
    pub in_force: DaySpan,
    /// False for a stub: known, not encoded.
    pub encoded: bool,
    /// True for a list that others build on, which binds nobody.
    pub base: bool,
    /// Used where no rule names the vessel.
    pub fallback: bool,
    /// Whom it binds.
    pub binds: Binds,
    /// From where to the water it takes the freeboard.
    pub freeboard_from: FreeboardFrom,
    /// Whether two tools that share a part may both be counted.
    pub parts_shared: bool,
    /// Notes for the reader.
    pub notes: Vec<Text>,
    /// The requirements, in order.
    pub requirements: Vec<Requirement>,
    /// Where it is written.
    pub place: Place,
}

impl Profile {
    /// Shows each single condition in it: of whom it binds, and of every
    /// requirement.
    pub fn each_condition<'a>(&'a self, see: &mut dyn FnMut(&'a Condition)) {
        Condition::each(&self.binds.when, see);
        self.requirements.iter().for_each(|requirement| requirement.each_condition(see));
    }
}

impl Requirement {
    /// The kinds that can serve it, in order, each once.
    pub fn kinds(&self) -> Vec<KindId> {
        if let Need::Certificates { kind, .. } = &self.need {
            return vec![*kind];
        }
        let mut kinds = Vec::new();
        for spec in self.need.specs() {
            if !kinds.contains(&spec.kind) {
                kinds.push(spec.kind);
            }
        }
        kinds
    }

    /// Whether a thing of the kind can serve it.
    pub fn asks(&self, wanted: KindId) -> bool {
        match &self.need {
            Need::Certificates { kind, .. } => *kind == wanted,
            need => need.specs().any(|spec| spec.kind == wanted),
        }
    }

    /// The requirements, by index, whose tools may count for it or that it is a
    /// spare for.
    pub fn leans_on(&self) -> impl Iterator<Item = usize> {
        let spare_for = match self.need {
            Need::Tools { spare_for, .. } => spare_for,
            _ => None,
        };
        let deemed = self.deemed.iter().map(|deemed| deemed.requirement);
        deemed.chain(self.shares.iter().copied()).chain(spare_for)
    }

    /// Shows each single condition on which it hangs: its own, those of its
    /// exceptions and those of its alternatives.
    pub fn each_condition<'a>(&'a self, see: &mut dyn FnMut(&'a Condition)) {
        Condition::each(&self.when, see);
        self.unless.iter().for_each(|group| Condition::each(group, see));
        self.need.specs().for_each(|spec| Condition::each(&spec.when, see));
    }

    /// Whether its outcome can depend on the freeboard.
    pub fn hangs_on_freeboard(&self) -> bool {
        let mut hangs = false;
        self.each_condition(&mut |one| hangs |= matches!(one, Condition::Freeboard { .. }));
        let mut see = |test: &Test| {
            hangs |= matches!(test, Test::Limit { limit, .. } if limit.is_reach());
        };
        self.need.specs().for_each(|spec| Test::each(&spec.tests, &mut see));
        self.deemed.iter().for_each(|deemed| Test::each(&deemed.tests, &mut see));
        hangs
    }

    /// Whether it wants tools or documents.
    pub fn wants_tools(&self) -> bool {
        matches!(self.need, Need::Tools { .. })
    }
}
