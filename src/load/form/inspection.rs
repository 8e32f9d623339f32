//! An inspection record as it is written.
//!
//! Texts only; what they mean is judged in `check::inspection`.

use crate::load::form::loose::{Loose, Texts};
use crate::load::form::open::{Attributed, HOW};
use crate::load::form::vessel::{
    CONDITIONS, COVERS, CertificateForm, FreeboardForm, LARGEST_LOT, MOST_TOOLS,
};
use crate::load::form::{LONGEST_NAME, any_of, flags, words};
use crate::load::read::fault::FileKind;
use crate::load::read::parse::WrittenFile;
use crate::load::read::tree::LONGEST_REMARK;
use schemars::JsonSchema;
use serde::Deserialize;
use validator::Validate;

/// The most rows that a sheet may have.
pub(crate) const MOST_ROWS: u32 = 9999;

/// A dated set of readings and remarks.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema, Validate)]
#[serde(deny_unknown_fields, default)]
#[schemars(title = "Inspection record")]
pub(crate) struct InspectionFile {
    /// `inspection/1`.
    #[validate(length(max = LONGEST_NAME))]
    pub(crate) format: Option<String>,
    /// The vessel's name.
    #[validate(length(max = LONGEST_NAME))]
    #[schemars(extend("x-needed" = true))]
    pub(crate) vessel: Option<String>,
    /// On which day.
    #[schemars(extend("x-needed" = true, "x-day" = true))]
    pub(crate) on: Option<String>,
    /// By whom.
    #[validate(length(max = LONGEST_NAME))]
    pub(crate) by: Option<String>,
    /// The digest of the sheet that it was keyed in from.
    #[validate(length(max = LONGEST_NAME))]
    pub(crate) sheet: Option<String>,
    /// How plain figures came about: `measured` (taken if missing),
    /// `stated` or `label`.
    #[schemars(extend("x-words" = words(&HOW)))]
    pub(crate) figures: Option<String>,
    /// `listed things only` (taken if missing) or `whole kit`.
    #[schemars(extend("x-words" = words(&COVERS)))]
    pub(crate) covers: Option<String>,
    /// Kinds of which everything aboard is listed.
    #[serde(rename = "all seen")]
    pub(crate) all_seen: Option<Texts>,
    /// Kinds of which there is no more than listed.
    #[serde(rename = "sought and not found")]
    pub(crate) sought: Option<Texts>,
    /// Whether it renews the inspection of each tool found serviceable.
    #[serde(rename = "counts as inspection due")]
    #[schemars(extend("x-words" = flags()))]
    pub(crate) renews: Option<String>,
    /// The freeboard, if it was taken.
    pub(crate) freeboard: Option<Loose<FreeboardForm>>,
    /// What was found.
    #[validate(nested)]
    #[schemars(extend("x-entries" = any_of(&["mark", "kind"]), "x-listed" = [0, MOST_TOOLS]))]
    pub(crate) found: Option<Vec<Attributed<FoundForm>>>,
    /// People that were asked for, and what their certificates say.
    #[validate(nested)]
    pub(crate) people: Option<Vec<PersonFoundForm>>,
}

/// What was found of one tool; the open keys are attributes.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema, Validate)]
#[schemars(rename = "Found")]
pub(crate) struct FoundForm {
    /// The row of the sheet; a row with nothing else to it adds nothing.
    #[schemars(extend("x-whole" = [1, MOST_ROWS]))]
    pub(crate) row: Option<String>,
    /// The tool's mark, as the vessel lists it; a tool that has none needs its
    /// kind.
    #[validate(length(max = LONGEST_NAME))]
    pub(crate) mark: Option<String>,
    /// What the mark on the tool reads, where it is not the one listed.
    #[serde(rename = "read as")]
    #[validate(length(max = LONGEST_NAME))]
    pub(crate) read_as: Option<String>,
    /// The kind; needed for a tool that the vessel does not list.
    #[validate(length(max = LONGEST_NAME))]
    pub(crate) kind: Option<String>,
    /// `serviceable`, `broken` or `unknown`.
    #[schemars(extend("x-words" = words(&CONDITIONS)))]
    pub(crate) condition: Option<String>,
    /// How many there were.
    #[schemars(extend("x-whole" = [0, LARGEST_LOT]))]
    pub(crate) count: Option<String>,
    /// The day printed as expiry.
    #[schemars(extend("x-day" = true))]
    pub(crate) expires: Option<String>,
    /// `yes` if it was looked for and not found.
    #[schemars(extend("x-words" = flags()))]
    pub(crate) missing: Option<String>,
    /// What was put right on the spot, in order.
    pub(crate) mended: Option<Vec<Attributed<MendedForm>>>,
    /// Where it is stowed.
    #[validate(length(max = LONGEST_NAME))]
    pub(crate) stowed: Option<String>,
    /// A remark.
    #[validate(length(max = LONGEST_REMARK))]
    pub(crate) remark: Option<String>,
}

/// Something put right on the spot; the open keys are attributes read
/// after it.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema, Validate)]
#[schemars(rename = "Mended")]
pub(crate) struct MendedForm {
    /// What was done, a word of the vocabulary.
    #[schemars(extend("x-needed" = true))]
    pub(crate) what: Option<String>,
    /// On which day; the record's if missing.
    #[schemars(extend("x-day" = true))]
    pub(crate) on: Option<String>,
}

/// A person that was asked for.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema, Validate)]
#[serde(deny_unknown_fields, default)]
#[schemars(rename = "PersonFound")]
pub(crate) struct PersonFoundForm {
    /// The name, as the vessel lists it.
    #[validate(length(max = LONGEST_NAME))]
    #[schemars(extend("x-needed" = true))]
    pub(crate) name: Option<String>,
    /// Whether the person was aboard.
    #[schemars(extend("x-words" = flags()))]
    pub(crate) aboard: Option<String>,
    /// The certificates that were seen.
    pub(crate) certificates: Option<Vec<CertificateForm>>,
}

impl WrittenFile for InspectionFile {
    const KIND: FileKind = FileKind::Inspection;

    fn format(&self) -> &Option<String> {
        &self.format
    }
}
