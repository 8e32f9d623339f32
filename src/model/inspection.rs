//! An inspection record: a dated set of findings that is laid over a vessel's
//! list.

use super::place::Place;
use super::vessel::{Certificate, Change, Coverage, Freeboard, Readings, State};
use super::vocabulary::KindId;
use crate::measure::Day;

/// What an inspection found of one tool.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Found {
    /// The row of the sheet that it was keyed in from.
    pub row: Option<u32>,
    /// The tool's mark, matched against the vessel's list; none for a tool
    /// that has none.
    pub mark: Option<String>,
    /// What the mark on the tool reads, where it is not the one listed.
    pub read_as: Option<String>,
    /// The kind; needed only for a tool that the vessel does not list.
    pub kind: Option<KindId>,
    /// The readings taken, by attribute.
    pub attributes: Readings,
    /// The state, if it was looked at.
    pub state: Option<State>,
    /// How many there were, if counted.
    pub count: Option<u32>,
    /// The day printed as expiry, if read.
    pub expires: Option<Day>,
    /// Whether it was looked for and not found.
    pub missing: bool,
    /// What was mended on the spot, in order, with the readings after it.
    pub mended: Vec<(Change, Readings)>,
    /// Where it is stowed, if noted.
    pub stowed: Option<String>,
    /// A remark.
    pub remark: Option<String>,
    /// Where it is written.
    pub place: Place,
}

impl Found {
    /// What it says, wherever it stands and in whatever order its readings are
    /// written.
    pub fn said(&self) -> Self {
        let mut said = Self { place: Place::default(), ..self.clone() };
        let changed = said.mended.iter_mut().map(|(_, readings)| readings);
        changed.chain([&mut said.attributes]).for_each(|all| all.sort_by_key(|(id, _)| *id));
        said
    }
}

/// What an inspection found of one person.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PersonFound {
    /// The name, matched against the vessel's list.
    pub name: String,
    /// Whether the person was aboard, if it was looked at.
    pub aboard: Option<bool>,
    /// The certificates that were seen, with what they say.
    pub certificates: Vec<Certificate>,
    /// Where it is written.
    pub place: Place,
}

/// A dated set of readings and remarks, laid over a vessel's declaration.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Inspection {
    /// The vessel's name, as written.
    pub vessel: String,
    /// On which day.
    pub on: Day,
    /// By whom.
    pub by: Option<String>,
    /// The digest of the sheet that it was keyed in from, as written.
    pub sheet: Option<String>,
    /// Whether an inspection of this kind counts as the tools' inspection.
    pub renews: bool,
    /// What the record speaks for.
    pub coverage: Coverage,
    /// The findings, in order.
    pub found: Vec<Found>,
    /// The people that were asked for.
    pub people: Vec<PersonFound>,
    /// The freeboard, if it was taken.
    pub freeboard: Option<Freeboard>,
    /// Where it is written.
    pub place: Place,
}
