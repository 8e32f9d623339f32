//! The files as they are written: every scalar is text, every key may be
//! missing. What is required, and what a text means, is judged in the checks.
//!
//! Imports nothing of the model; must not judge anything beyond lengths.

pub(super) mod catalogue;
pub(super) mod group;
pub(super) mod inspection;
pub(super) mod loose;
pub(super) mod marks;
pub(super) mod open;
pub(super) mod profile;
pub(super) mod techniques;
pub(super) mod vessel;
pub(super) mod vocabulary;

use schemars::JsonSchema;
use serde::Deserialize;

/// The longest name, mark, id or phrase, in characters.
pub(crate) const LONGEST_NAME: u64 = 300;
/// The longest remark, note or description, in characters.
pub(crate) const LONGEST_REMARK: u64 = 4000;

/// The most lines that one group may have.
pub(crate) const MOST_LINES: usize = 1000;

/// The most entries that one list may have, where the check of the file tells
/// no lower number.
pub(crate) const MOST_LISTED: usize = 2000;

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
