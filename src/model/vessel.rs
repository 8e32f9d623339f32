//! A vessel, its kit, its people and an inspection record laid over it.

mod freeboard;
mod reading;

pub use freeboard::{Freeboard, FreeboardReading, Station};
pub use reading::{Datum, How, Reading, Trust};

use super::place::Place;
use super::vocabulary::{AttributeId, KindId};
use crate::measure::{Answer, Day, DaySpan};
use std::collections::{BTreeMap, BTreeSet};

/// Whether a tool works.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum State {
    /// It does.
    Serviceable,
    /// It does not.
    Broken,
    /// Nobody said.
    Unknown,
}

/// Who has a tool.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Whereabouts {
    /// It is on the vessel.
    Aboard,
    /// It is ashore.
    Ashore,
    /// It is lent to another vessel over these days, aboard on others.
    Lent {
        /// To whom.
        to: String,
        /// Over which days.
        span: DaySpan,
    },
    /// It was looked for and not found, or is lost.
    Missing,
    /// Nobody said.
    Unknown,
}

/// A dated statement that a tool conforms to a clause.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Statement {
    /// The clause, as written.
    pub to: String,
    /// On which day.
    pub on: Day,
    /// By whom.
    pub by: Option<String>,
}

/// A change made to a tool, which retires earlier readings.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Change {
    /// What was done, a word of the vocabulary.
    pub what: String,
    /// On which day.
    pub on: Day,
}

/// A tool, a lot of equal tools, or a document.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Tool {
    /// Its stable mark.
    pub mark: String,
    /// A name in words, if the vessel gives one.
    pub name: Option<String>,
    /// Of which kind.
    pub kind: KindId,
    /// How many equal ones there are.
    pub count: u32,
    /// What is known of it, each attribute once, in the order written.
    pub attributes: Readings,
    /// Whether it works.
    pub state: State,
    /// Who has it.
    pub whereabouts: Whereabouts,
    /// Where it is stowed.
    pub stowed: Option<String>,
    /// When it was acquired.
    pub acquired: Option<Day>,
    /// When it was last inspected.
    pub inspected: Option<Day>,
    /// The last day on which it is good, by its own label.
    pub expires: Option<Day>,
    /// What is said of it in ways that differ, so that nobody can tell.
    pub disputes: Disputes,
    /// Statements of conformity.
    pub conforms: Vec<Statement>,
    /// Marks of parts that it is put together from.
    pub parts: Vec<String>,
    /// Marks of the tools that it fits, for spares.
    pub fits: Vec<String>,
    /// Changes made to it.
    pub changes: Vec<Change>,
    /// Evidence kept elsewhere: a file and its digest, as written.
    pub evidence: Option<String>,
    /// A remark.
    pub remark: Option<String>,
    /// Of which lot it is a part that is listed by itself.
    pub part_of: Option<PartOfLot>,
    /// Where it is written.
    pub place: Place,
}

/// What statements of equal weight say differently of a tool.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Disputes {
    /// The kinds that it is by one word or another; none where all agree.
    pub kinds: Vec<KindId>,
    /// Whether nobody differs, but the list names it by a word that may be any
    /// of these kinds.
    pub by_name: bool,
    /// The last day on which it is good by every word on its expiry, where
    /// they differ; `expires` is the last by any.
    pub expiry: Option<Day>,
}

impl Disputes {
    /// What the list's own word for a tool leaves open: nothing of a single kind.
    pub fn of_name(kinds: Vec<KindId>) -> Self {
        match kinds.len() {
            0 | 1 => Self::default(),
            _ => Self { kinds, by_name: true, expiry: None },
        }
    }
}

/// A part of a lot that is listed as a tool of its own, because it is not like
/// the rest.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PartOfLot {
    /// The mark of the lot.
    pub lot: String,
    /// What sets it apart.
    pub split: Split,
}

/// What sets a part of a lot apart.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Split {
    /// It is broken.
    Broken,
    /// It was there by one count of a day and not by another.
    CountDisputed,
    /// It is the whole lot, by another word on its kind.
    KindDisputed,
}

impl Tool {
    /// So many of this lot as a tool of their own, with a mark that says what
    /// sets them apart.
    pub fn part(&self, split: Split, count: u32) -> Self {
        let apart = match split {
            Split::Broken => "broken",
            Split::CountDisputed => "count disputed",
            Split::KindDisputed => "kind disputed",
        };
        let lot = self.mark.clone();
        let mark = format!("{lot} ({apart})");
        Self { mark, count, part_of: Some(PartOfLot { lot, split }), ..self.clone() }
    }

    /// The kinds of which it may be any.
    pub fn kinds(&self) -> &[KindId] {
        match self.disputes.kinds.as_slice() {
            [] => std::slice::from_ref(&self.kind),
            several => several,
        }
    }

    /// The mark of the lot that it is a part of, else its own.
    #[must_use]
    pub fn lot(&self) -> &str {
        self.part_of.as_ref().map_or(&self.mark, |part| &part.lot)
    }

    /// The mark of the lot of which it is the broken part.
    pub fn broken_part_of(&self) -> Option<&str> {
        let part = self.part_of.as_ref().filter(|part| part.split == Split::Broken)?;
        Some(&part.lot)
    }

    /// A tool that is aboard, of which nothing else is known.
    pub fn bare(mark: impl Into<String>, kind: KindId, count: u32, place: Place) -> Self {
        Self {
            mark: mark.into(),
            name: None,
            kind,
            count,
            attributes: Vec::new(),
            state: State::Unknown,
            whereabouts: Whereabouts::Aboard,
            stowed: None,
            acquired: None,
            inspected: None,
            expires: None,
            disputes: Disputes::default(),
            conforms: Vec::new(),
            parts: Vec::new(),
            fits: Vec::new(),
            changes: Vec::new(),
            evidence: None,
            remark: None,
            part_of: None,
            place,
        }
    }

    /// The readings of an attribute; none where nothing is known.
    pub fn readings(&self, attribute: AttributeId) -> &[Reading] {
        self.attributes
            .iter()
            .find(|(id, _)| *id == attribute)
            .map_or(&[], |(_, readings)| readings.as_slice())
    }

    /// The readings of an attribute that count: where any was measured, those
    /// alone, whatever a label says and whichever is the older.
    pub fn counted(&self, attribute: AttributeId) -> impl Iterator<Item = &Reading> + Clone {
        Reading::counted(self.readings(attribute))
    }

    /// Whether it is in date on that day; unknown where its expiry is disputed.
    pub fn in_date(&self, day: Day) -> Answer {
        match (self.expires, self.disputes.expiry) {
            (Some(last), _) if day > last => Answer::No,
            (_, Some(sure)) if day > sure => Answer::Unknown,
            _ => Answer::Yes,
        }
    }

    /// Replaces what is known of an attribute.
    pub fn set(&mut self, attribute: AttributeId, readings: Vec<Reading>) {
        self.attributes.retain(|(id, _)| *id != attribute);
        self.attributes.push((attribute, readings));
    }
}

/// A piece of fishing gear: a kind of hook or line that is aboard.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct GearPiece {
    /// What it is called.
    pub name: String,
    /// What is known of it, with the machinery of tools.
    pub tool: Tool,
}

/// A certificate held by a person.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Certificate {
    /// Of which kind.
    pub kind: KindId,
    /// The day of issue.
    pub issued: Option<Day>,
    /// The last valid day, by its own print.
    pub expires: Option<Day>,
    /// The register number.
    pub number: Option<String>,
    /// The days of issue and the last valid days that others, of equal weight,
    /// read off the same certificate.
    pub rivals: Vec<(Option<Day>, Option<Day>)>,
    /// Where it is written.
    pub place: Place,
}

impl Certificate {
    /// The day of issue and the last valid day, by every word on them.
    pub fn readings(&self) -> impl Iterator<Item = (Option<Day>, Option<Day>)> {
        std::iter::once((self.issued, self.expires)).chain(self.rivals.iter().copied())
    }
}

/// A person with roles on this vessel.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Person {
    /// The name.
    pub name: String,
    /// Roles, like `owner`, `operator`, `crew`.
    pub roles: Vec<String>,
    /// Certificates held.
    pub certificates: Vec<Certificate>,
    /// Whether one word has the person aboard and another, of equal weight,
    /// has not.
    pub in_doubt: bool,
    /// Where it is written.
    pub place: Place,
}

/// What a file speaks for: the whole kit, or only what it lists.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Coverage {
    /// Whether the whole kit is listed.
    pub everything: bool,
    /// Kinds of which all that are aboard are listed, even so.
    pub all_seen: BTreeSet<KindId>,
}

impl Coverage {
    /// Whether a tool of the kind that is not listed can be ruled out.
    pub fn is_whole(&self, kind: KindId) -> bool {
        self.everything || self.all_seen.contains(&kind)
    }
}

/// The days, areas and gear of a trip, as a vessel's file states them.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct PlannedTrip {
    /// The day of departure.
    pub departure: Option<Day>,
    /// The day of return.
    pub back: Option<Day>,
}

/// A vessel.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Vessel {
    /// Its name.
    pub name: String,
    /// Its register number, if given.
    pub register: Option<String>,
    /// Its port.
    pub port: Option<String>,
    /// The day on which its list was declared, if given.
    pub declared: Option<Day>,
    /// Its freeboard.
    pub freeboard: Freeboard,
    /// Permits held; `None` where nobody said.
    pub permits: Option<Vec<String>>,
    /// Gear on board; `None` where nobody said.
    pub gears: Option<Vec<String>>,
    /// Areas of the trip; `None` where nobody said.
    pub areas: Option<Vec<String>>,
    /// Features of the vessel; absent where nobody said.
    pub features: BTreeMap<String, bool>,
    /// Tools and documents, in the order written.
    pub kit: Vec<Tool>,
    /// Hooks aboard; `None` where nobody said.
    pub hooks: Option<Vec<GearPiece>>,
    /// Fishing lines aboard; `None` where nobody said.
    pub lines: Option<Vec<GearPiece>>,
    /// People; `None` where nobody said.
    pub people: Option<Vec<Person>>,
    /// The planned trip.
    pub trip: PlannedTrip,
    /// What the file speaks for.
    pub coverage: Coverage,
    /// Where it is written.
    pub place: Place,
}

/// Readings by attribute, each attribute once.
pub type Readings = Vec<(AttributeId, Vec<Reading>)>;
