//! A vessel's inventory as it is written.
//!
//! Texts only; what they mean is judged in `check::vessel` and `check::tool`.

use crate::load::form::loose::{Loose, Single, Texts};
use crate::load::form::open::{Attributed, HOW, Open};
use crate::load::form::profile::FREEBOARD_FROM;
use crate::load::form::{LONGEST_NAME, kit_unless_partial, needs, words};
use crate::load::read::fault::FileKind;
use crate::load::read::parse::WrittenFile;
use crate::load::read::tree::LONGEST_REMARK;
use crate::model::vessel::{State, Whereabouts};
use schemars::JsonSchema;
use serde::Deserialize;
use validator::Validate;

/// The most equal tools that one line of a list may stand for.
pub(crate) const LARGEST_LOT: u32 = 1000;

/// The condition of a tool, in words.
pub(crate) const CONDITIONS: [(&str, State); 3] =
    [("serviceable", State::Serviceable), ("broken", State::Broken), ("unknown", State::Unknown)];

/// Makes the whereabouts of its word.
pub(crate) type Build = fn() -> Whereabouts;

pub(crate) const WHEREABOUTS: [(&str, Build); 4] = [
    ("aboard", || Whereabouts::Aboard),
    ("ashore", || Whereabouts::Ashore),
    ("lost", || Whereabouts::Missing),
    ("unknown", || Whereabouts::Unknown),
];

/// The most pieces of one kind of hook or line.
pub(crate) const MOST_PIECES: u32 = 1_000_000;

/// The most tools, lots and documents that a vessel may list.
pub const MOST_TOOLS: usize = 200;

pub(crate) const COVERS: [(&str, bool); 2] = [("whole kit", true), ("listed things only", false)];

/// A vessel's inventory.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema, Validate)]
#[serde(deny_unknown_fields, default)]
#[schemars(title = "Vessel")]
#[schemars(extend("x-also" = kit_unless_partial()))]
pub(crate) struct VesselFile {
    /// `vessel/1`.
    #[validate(length(max = LONGEST_NAME))]
    pub(crate) format: Option<String>,
    /// The vessel's name.
    #[validate(length(max = LONGEST_NAME))]
    #[schemars(extend("x-needed" = true))]
    pub(crate) name: Option<String>,
    /// Its register number.
    #[validate(length(max = LONGEST_NAME))]
    pub(crate) register: Option<String>,
    /// Its port.
    #[validate(length(max = LONGEST_NAME))]
    pub(crate) port: Option<String>,
    /// Who wrote this list, and what plain entries mean.
    #[validate(nested)]
    pub(crate) declared: Option<DeclaredForm>,
    /// `whole kit` (taken if missing) or `listed things only`.
    #[schemars(extend("x-words" = words(&COVERS)))]
    pub(crate) covers: Option<String>,
    /// In a partial list: kinds of which everything aboard is listed.
    #[serde(rename = "all seen")]
    pub(crate) all_seen: Option<Texts>,
    /// In a partial list: kinds of which there is no more than listed.
    #[serde(rename = "sought and not found")]
    pub(crate) sought: Option<Texts>,
    /// The freeboard, like `4 ft 3 in`.
    pub(crate) freeboard: Option<Loose<FreeboardForm>>,
    /// Permits held.
    pub(crate) permits: Option<Texts>,
    /// Fishing gear on board.
    pub(crate) gear: Option<Texts>,
    /// Areas where it fishes.
    pub(crate) areas: Option<Texts>,
    /// Features of the vessel, each yes or no.
    pub(crate) features: Option<Open<String>>,
    /// The planned trip.
    pub(crate) trip: Option<TripForm>,
    /// The tools aboard.
    #[validate(nested)]
    #[schemars(extend("x-entries" = needs(&["mark"]), "x-listed" = [0, MOST_TOOLS]))]
    pub(crate) kit: Option<Vec<Attributed<ToolForm>>>,
    /// Documents and placards.
    #[validate(nested)]
    #[schemars(extend("x-listed" = [0, MOST_TOOLS]))]
    pub(crate) documents: Option<Vec<Attributed<ToolForm>>>,
    /// Hooks aboard.
    #[validate(nested)]
    pub(crate) hooks: Option<Vec<Attributed<GearForm>>>,
    /// Fishing lines aboard.
    #[validate(nested)]
    pub(crate) lines: Option<Vec<Attributed<GearForm>>>,
    /// People and their certificates.
    #[validate(nested)]
    pub(crate) people: Option<Vec<PersonForm>>,
}

/// Who declared something, and how.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema, Validate)]
#[serde(deny_unknown_fields, default)]
#[schemars(rename = "Declared")]
pub(crate) struct DeclaredForm {
    /// By whom.
    #[validate(length(max = LONGEST_NAME))]
    pub(crate) by: Option<String>,
    /// On which day.
    #[schemars(extend("x-day" = true))]
    pub(crate) on: Option<String>,
    /// How plain figures came about: `measured`, `stated` or `label`.
    #[schemars(extend("x-words" = words(&HOW)))]
    pub(crate) figures: Option<String>,
    /// The condition of tools that do not say: `serviceable`, `broken` or
    /// `unknown`.
    #[schemars(extend("x-words" = words(&CONDITIONS)))]
    pub(crate) condition: Option<String>,
}

/// The longer form of a freeboard, or one reading of it.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
#[schemars(rename = "Freeboard")]
pub(crate) struct FreeboardForm {
    /// `top of the rail` or `working deck`.
    #[schemars(extend("x-words" = words(&FREEBOARD_FROM)))]
    pub(crate) from: Option<String>,
    /// Hauling stations.
    pub(crate) stations: Option<Vec<StationForm>>,
    /// A figure or a range.
    pub(crate) value: Option<String>,
    /// Under which load.
    pub(crate) load: Option<String>,
    /// By whom it was taken.
    pub(crate) by: Option<String>,
    /// On which day.
    #[schemars(extend("x-day" = true))]
    pub(crate) on: Option<String>,
    /// `measured`, `stated` or `label`.
    #[schemars(extend("x-words" = words(&HOW)))]
    pub(crate) how: Option<String>,
    /// The tape's error.
    pub(crate) error: Option<String>,
}

/// A place on the rail where gear is hauled.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
#[schemars(rename = "Station")]
pub(crate) struct StationForm {
    /// Its name.
    pub(crate) name: Option<String>,
    /// Its freeboard.
    #[schemars(extend("x-needed" = true))]
    pub(crate) freeboard: Option<Loose<FreeboardForm>>,
}

/// The planned trip.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
#[schemars(rename = "Trip")]
pub(crate) struct TripForm {
    /// The day of departure.
    #[schemars(extend("x-day" = true))]
    pub(crate) depart: Option<String>,
    /// The day of return.
    #[serde(rename = "return")]
    #[schemars(extend("x-day" = true))]
    pub(crate) back: Option<String>,
    /// Areas of this trip, instead of the vessel's.
    pub(crate) areas: Option<Texts>,
    /// Gear on this trip, instead of the vessel's.
    pub(crate) gear: Option<Texts>,
}

/// A tool, a lot of equal tools, or a document; the open keys are
/// attributes of its kind.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema, Validate)]
#[schemars(rename = "Tool")]
pub(crate) struct ToolForm {
    /// A stable mark, unique on the vessel.
    #[validate(length(max = LONGEST_NAME))]
    pub(crate) mark: Option<String>,
    /// The kind, by id, name or synonym of the vocabulary.
    #[validate(length(max = LONGEST_NAME))]
    #[schemars(extend("x-needed" = true))]
    pub(crate) kind: Option<String>,
    /// A name in words.
    #[validate(length(max = LONGEST_NAME))]
    pub(crate) name: Option<String>,
    /// How many equal ones there are.
    #[schemars(extend("x-whole" = [1, LARGEST_LOT]))]
    pub(crate) count: Option<String>,
    /// How many of them are broken.
    #[schemars(extend("x-whole" = [0, LARGEST_LOT]))]
    pub(crate) broken: Option<String>,
    /// `serviceable`, `broken` or `unknown`.
    #[schemars(extend("x-words" = words(&CONDITIONS)))]
    pub(crate) condition: Option<String>,
    /// `aboard`, `ashore`, `lost`, `unknown`, or to whom it is lent.
    #[schemars(extend("x-words" = words(&WHEREABOUTS)))]
    #[serde(rename = "where")]
    pub(crate) location: Option<Single<WhereForm>>,
    /// Where it is stowed.
    #[validate(length(max = LONGEST_NAME))]
    pub(crate) stowed: Option<String>,
    /// The day of acquisition.
    #[schemars(extend("x-day" = true))]
    pub(crate) acquired: Option<String>,
    /// The day of the last inspection.
    #[schemars(extend("x-day" = true))]
    pub(crate) inspected: Option<String>,
    /// The last day on which it is good, by its own label.
    #[schemars(extend("x-day" = true))]
    pub(crate) expires: Option<String>,
    /// Statements of conformity.
    pub(crate) conforms: Option<Vec<StatementForm>>,
    /// Marks of its parts.
    pub(crate) parts: Option<Texts>,
    /// Marks of the tools that the spares fit.
    pub(crate) fits: Option<Texts>,
    /// Changes made to it.
    pub(crate) changes: Option<Vec<ChangeForm>>,
    /// A file with evidence, and its digest.
    #[validate(length(max = LONGEST_NAME))]
    pub(crate) evidence: Option<String>,
    /// A remark.
    #[validate(length(max = LONGEST_REMARK))]
    pub(crate) remark: Option<String>,
}

/// A kind of hook or line aboard; the open keys are its attributes.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema, Validate)]
#[schemars(rename = "Gear")]
pub(crate) struct GearForm {
    /// What it is called.
    #[validate(length(max = LONGEST_NAME))]
    pub(crate) name: Option<String>,
    /// How many make a lot; a rule's own count is the attribute `number`.
    #[schemars(extend("x-whole" = [1, MOST_PIECES]))]
    pub(crate) count: Option<String>,
}

/// To whom a tool is lent, and when.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
#[schemars(rename = "Where")]
pub(crate) struct WhereForm {
    /// The vessel that has it.
    #[serde(rename = "lent to")]
    #[schemars(extend("x-needed" = true))]
    pub(crate) lent_to: Option<String>,
    /// The first day.
    #[schemars(extend("x-day" = true))]
    pub(crate) from: Option<String>,
    /// The last day.
    #[schemars(extend("x-day" = true))]
    pub(crate) until: Option<String>,
}

/// A dated statement that a tool conforms to a clause.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
#[schemars(rename = "Statement")]
pub(crate) struct StatementForm {
    /// The clause.
    #[schemars(extend("x-needed" = true))]
    pub(crate) to: Option<String>,
    /// On which day.
    #[schemars(extend("x-needed" = true, "x-day" = true))]
    pub(crate) on: Option<String>,
    /// By whom.
    pub(crate) by: Option<String>,
}

/// A change made to a tool.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
#[schemars(rename = "Change")]
pub(crate) struct ChangeForm {
    /// What was done, a word of the vocabulary.
    #[schemars(extend("x-needed" = true))]
    pub(crate) what: Option<String>,
    /// On which day.
    #[schemars(extend("x-needed" = true, "x-day" = true))]
    pub(crate) on: Option<String>,
}

/// A person on this vessel.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema, Validate)]
#[serde(deny_unknown_fields, default)]
#[schemars(rename = "Person")]
pub(crate) struct PersonForm {
    /// The name.
    #[validate(length(max = LONGEST_NAME))]
    #[schemars(extend("x-needed" = true))]
    pub(crate) name: Option<String>,
    /// Roles, like `owner`, `operator`, `crew`.
    pub(crate) roles: Option<Texts>,
    /// Certificates held.
    pub(crate) certificates: Option<Vec<CertificateForm>>,
}

/// A certificate held by a person.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
#[schemars(rename = "Certificate")]
pub(crate) struct CertificateForm {
    /// Of which kind.
    #[schemars(extend("x-needed" = true))]
    pub(crate) kind: Option<String>,
    /// The day of issue.
    #[schemars(extend("x-day" = true))]
    pub(crate) issued: Option<String>,
    /// The last valid day.
    #[schemars(extend("x-day" = true))]
    pub(crate) expires: Option<String>,
    /// The register number.
    pub(crate) number: Option<String>,
}

impl WrittenFile for VesselFile {
    const KIND: FileKind = FileKind::Vessel;

    fn format(&self) -> &Option<String> {
        &self.format
    }
}
