//! What a kit is worth in outcomes, as a part of the JSON of a check.

use super::super::Shown;
use super::WorthJson;
use super::lift::LiftJson;
use schemars::JsonSchema;
use serde::Serialize;

/// Counts, and the single tool that would lift most.
#[derive(Debug, JsonSchema, Serialize)]
#[schemars(rename = "Freeing")]
pub(in crate::report) struct FreeingJson {
    /// The id of the file of techniques.
    practice: String,
    /// The revision of that file.
    encoding: u32,
    /// In how many situations what is open.
    worth: WorthJson,
    /// The single tool that would lift most situations.
    lift: Option<LiftJson>,
}

impl FreeingJson {
    pub(in crate::report) fn new(shown: &Shown<'_>) -> Self {
        Self {
            practice: shown.practice.id.clone(),
            encoding: shown.practice.encoding,
            worth: WorthJson::new(shown.options.outlook.worth()),
            lift: shown.options.lift.as_ref().map(|lift| LiftJson::new(shown, lift)),
        }
    }
}
