//! The files as they are written: every scalar is text, every key may be
//! missing. What is required, and what a text means, is judged in the checks.
//!
//! Imports nothing of the model; must not judge anything beyond lengths.

pub(crate) mod catalogue;
pub(crate) mod inspection;
pub(crate) mod loose;
pub(crate) mod open;
pub(crate) mod profile;
pub(crate) mod schema;
pub(crate) mod techniques;
pub(crate) mod vessel;
pub(crate) mod vocabulary;

use schemars::JsonSchema;
use serde::Deserialize;
use serde_json::{Value, json};

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

// Marks of the as-written types: what the checks ask beyond the shape, said
// beside each field for the schema that editors get.
//
// The loader's own look at a file's shape does not read them: there each key
// may be missing and each scalar is text, so that all is told at once.
//
// | mark | the checks refuse |
// | --- | --- |
// | `x-needed` | a file without the key, or with nothing after it |
// | `x-words` | any other word |
// | `x-day` | what is no day |
// | `x-whole` | what is no whole number from the first to the second |
// | `x-droppable` | (takes `dropped` as well, in a change) |
// | `x-id` | what is no id |
// | `x-ids` | a group with a key that is no id |
// | `x-filled` | a group with a line that has nothing after it |
// | `x-listed` | fewer entries than the first, or more than the second |
// | `x-entries` | entries of the list that do not fit this too |
// | `x-also` | a group that does not fit this too |

/// Yes or no, as YAML of either age reads it.
pub(crate) fn flags() -> Value {
    json!(["yes", "no", true, false, "true", "false"])
}

/// The words of a table.
pub(crate) fn words<T>(table: &[(&'static str, T)]) -> Vec<&'static str> {
    table.iter().map(|(word, _)| *word).collect()
}

/// These keys, with something after them.
pub(crate) fn needs(keys: &[&str]) -> Value {
    let something = |key: &&str| ((*key).to_owned(), json!({ "not": { "type": "null" } }));
    let filled: serde_json::Map<_, _> = keys.iter().map(something).collect();
    json!({ "required": keys, "properties": filled })
}

/// At least one of these keys.
pub(crate) fn any_of(keys: &[&str]) -> Value {
    let ways: Vec<_> = keys.iter().map(|key| needs(&[key])).collect();
    json!({ "anyOf": ways })
}

/// Exactly one of these keys.
pub(crate) fn just_one(keys: &[&str]) -> Value {
    let ways: Vec<_> = keys.iter().map(|key| needs(&[key])).collect();
    json!({ "oneOf": ways })
}

/// What a requirement has that is no change of another.
pub(crate) fn asked() -> Value {
    let mut asked = needs(&["title", "verified"]);
    let carried = json!({ "anyOf": [needs(&["carry"]), needs(&["spare for"])] });
    asked["oneOf"] = json!([carried, needs(&["certificate"]), needs(&["every"])]);
    asked
}

/// How long anything takes to come: once for all items, or for each.
pub(crate) fn lead_somewhere() -> Value {
    let each = json!({ "properties": { "items": { "items": needs(&["lead"]) } } });
    json!({ "anyOf": [needs(&["lead"]), each] })
}

/// Tools, unless only some of them are listed.
pub(crate) fn kit_unless_partial() -> Value {
    let partial = json!({
        "required": ["covers"],
        "properties": { "covers": { "not": { "enum": ["whole kit", null] } } },
    });
    json!({ "anyOf": [needs(&["kit"]), partial] })
}
