//! What a kit is worth in outcomes, as a part of the JSON of a check.

use super::super::Shown;
use super::WorthJson;
use super::lift::LiftJson;
use serde::Serialize;

/// Counts, and the single tool that would lift most.
#[derive(Debug, Serialize)]
pub(in crate::report) struct FreeingJson {
    practice: String,
    encoding: u32,
    worth: WorthJson,
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
