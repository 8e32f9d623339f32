//! The files as they are written: every scalar is text, every key may be
//! missing. What is required, and what a text means, is judged in the checks.
//!
//! Imports nothing of the model; must not judge anything beyond lengths.

pub(crate) mod catalogue;
pub(crate) mod group;
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

/// A kind of file, as its `format` line names it.
pub(crate) trait WrittenFile:
    for<'de> Deserialize<'de> + JsonSchema + validator::Validate
{
    /// The format that is read, like `vessel/1`.
    const FORMAT: &'static str;
    /// What such a file is called in a sentence.
    const CALLED: &'static str;
    /// The `format` line as written.
    fn format(&self) -> Option<&str>;
}
