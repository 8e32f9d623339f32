//! An inspection record as it is written.
//!
//! Texts only; what they mean is judged in `check_inspection`.

use super::loose::Loose;
use super::open::open_form;
use super::vessel::{FreeboardForm, ReadingForm};
use super::{LONGEST_NAME, LONGEST_REMARK, WrittenFile};
use schemars::JsonSchema;
use serde::Deserialize;
use validator::Validate;

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
    pub(crate) vessel: Option<String>,
    /// On which day.
    pub(crate) on: Option<String>,
    /// By whom.
    #[validate(length(max = LONGEST_NAME))]
    pub(crate) by: Option<String>,
    /// The digest of the sheet that it was keyed in from.
    #[validate(length(max = LONGEST_NAME))]
    pub(crate) sheet: Option<String>,
    /// How plain figures came about: `measured` (taken if missing),
    /// `stated` or `label`.
    pub(crate) figures: Option<String>,
    /// `listed things only` (taken if missing) or `whole kit`.
    pub(crate) covers: Option<String>,
    /// Kinds of which everything aboard is listed.
    #[serde(rename = "all seen")]
    pub(crate) all_seen: Option<Vec<String>>,
    /// Kinds of which there is no more than listed.
    #[serde(rename = "sought and not found")]
    pub(crate) sought: Option<Vec<String>>,
    /// Whether it renews the inspection of each tool found serviceable.
    #[serde(rename = "counts as inspection due")]
    pub(crate) renews: Option<String>,
    /// The freeboard, if it was taken.
    pub(crate) freeboard: Option<Loose<FreeboardForm>>,
    /// What was found.
    #[validate(nested)]
    pub(crate) found: Option<Vec<FoundForm>>,
}

open_form! {
    /// What was found of one tool; the open keys are attributes.
    FoundForm, open as attributes: Loose<ReadingForm>;
    /// The row of the sheet; a row with nothing else to it adds nothing.
    "row" => row: String,
    /// The tool's mark.
    #[validate(length(max = LONGEST_NAME))]
    "mark" => mark: String,
    /// The kind; needed for a tool that the vessel does not list.
    #[validate(length(max = LONGEST_NAME))]
    "kind" => kind: String,
    /// `serviceable`, `broken` or `unknown`.
    "condition" => condition: String,
    /// How many there were.
    "count" => count: String,
    /// The day printed as expiry.
    "expires" => expires: String,
    /// `yes` if it was looked for and not found.
    "missing" => missing: String,
    /// What was put right on the spot, in order.
    "mended" => mended: Vec<MendedForm>,
    /// Where it is stowed.
    #[validate(length(max = LONGEST_NAME))]
    "stowed" => stowed: String,
    /// A remark.
    #[validate(length(max = LONGEST_REMARK))]
    "remark" => remark: String,
}

open_form! {
    /// Something put right on the spot; the open keys are attributes read
    /// after it.
    MendedForm, open as attributes: Loose<ReadingForm>;
    /// What was done, a word of the vocabulary.
    "what" => what: String,
    /// On which day; the record's if missing.
    "on" => on: String,
}

impl WrittenFile for InspectionFile {
    const FORMAT: &'static str = "inspection/1";
    const CALLED: &'static str = "an inspection record";

    fn format(&self) -> Option<&str> {
        self.format.as_deref()
    }
}
