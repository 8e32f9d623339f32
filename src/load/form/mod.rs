//! The files as they are written: every scalar is text, every key may be
//! missing. What is required, and what a text means, is judged in the checks.
//!
//! Imports nothing of the model; must not judge anything beyond lengths.

pub(crate) mod catalogue;
pub(crate) mod inspection;
pub(crate) mod loose;
pub(crate) mod marks;
pub(crate) mod open;
pub(crate) mod profile;
pub(crate) mod schema;
pub(crate) mod techniques;
pub(crate) mod tighten;
pub(crate) mod vessel;
pub(crate) mod vocabulary;

use schemars::JsonSchema;
use serde::Deserialize;

/// The longest name, mark, id or phrase, in characters.
pub(crate) const LONGEST_NAME: u64 = 300;
/// The first and the last day of a span.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
#[schemars(rename = "Span")]
pub(crate) struct SpanForm {
    /// The first day, like `2026-03-02`.
    #[schemars(extend("x-day" = true))]
    pub(crate) from: Option<String>,
    /// The last day.
    #[schemars(extend("x-day" = true))]
    pub(crate) until: Option<String>,
}
