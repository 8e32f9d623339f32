//! From a text to a record that holds together, whoever wrote it.
//!
//! Imports the types of the record. What is wrong is told by the first thing found; a record is never mended.

use super::make::{digest, digest_of};
use super::torn::torn;
use super::{AuditRecord, InputFile, SCHEMA};
use crate::load::LARGEST_FILE;
use serde::Deserialize;

/// Why a text is no record that can be used.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum Broken {
    /// It is no JSON, or not of the format's shape.
    #[error("line {line}, column {column}: {what}")]
    Shape {
        /// The line.
        line: usize,
        /// The column.
        column: usize,
        /// What is wrong there.
        what: String,
    },
    /// It is of another format, or of a later version of it.
    #[error("its `schema` is `{found}`")]
    Schema {
        /// What it says of itself.
        found: String,
    },
    /// An input is not what it was.
    #[error("`{file}` was changed since: its digest is {found}, not {expected}")]
    Changed {
        /// The input.
        file: String,
        /// The digest on record.
        expected: String,
        /// The digest of the text.
        found: String,
    },
    /// Two parts of it contradict each other.
    #[error("{what}")]
    Torn {
        /// Which.
        what: String,
    },
}

/// The head alone, to tell another format from a slip.
#[derive(Deserialize)]
struct Head {
    schema: Option<String>,
}

/// Reads a record and looks whether it holds together: every input as it was,
/// and an input for everything that was found.
///
/// # Errors
/// Everything of the first kind that is wrong: its shape, its format, changed
/// inputs (each of them), parts that contradict each other.
pub fn read(text: &str) -> Result<AuditRecord, Vec<Broken>> {
    // An editor may have put a byte order mark before it.
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let record: AuditRecord =
        serde_json::from_str(text).map_err(|error| vec![shape(text, &error)])?;
    if record.schema != SCHEMA {
        return Err(vec![Broken::Schema { found: record.schema }]);
    }
    let changed: Vec<_> = inputs(&record).filter_map(changed).collect();
    if !changed.is_empty() {
        return Err(changed);
    }
    match torn(&record) {
        Some(what) => Err(vec![Broken::Torn { what }]),
        None => Ok(record),
    }
}

/// Whether a record is as it was when its digest was taken.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Whole {
    /// It is; this is the digest.
    Kept(String),
    /// Something in it was changed, or its digest.
    Changed {
        /// The digest on record.
        said: String,
        /// That of what it holds.
        found: String,
    },
    /// It has none: it was made before records had one.
    Unsaid,
}

/// Whether the text of a record is what its digest was taken of. Keys that a
/// later version added are covered too; blanks and the order of keys are not.
pub fn whole(text: &str) -> Whole {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    let mut record: serde_json::Value = serde_json::from_str(text).unwrap_or_default();
    let said = record.as_object_mut().and_then(|keys| keys.remove("sha256"));
    let Some(serde_json::Value::String(said)) = said else { return Whole::Unsaid };
    let found = digest_of(record);
    if said == found { Whole::Kept(said) } else { Whole::Changed { said, found } }
}

fn shape(text: &str, error: &serde_json::Error) -> Broken {
    if let Some(found) = schema(text).filter(|found| found != SCHEMA) {
        return Broken::Schema { found };
    }
    // The place is told beside the message, not in it.
    let whole = error.to_string();
    let what = whole.rsplit_once(" at line ").map_or(whole.as_str(), |(what, _)| what).to_owned();
    Broken::Shape { line: error.line(), column: error.column(), what }
}

/// What it says of itself. A short text is looked through; in a long one that
/// stands first, as in every record, and the rest is not read again.
fn schema(text: &str) -> Option<String> {
    if text.len() as u64 <= LARGEST_FILE {
        return serde_json::from_str::<Head>(text).ok().and_then(|head| head.schema);
    }
    let signs = ["{", "\"schema\"", ":"];
    let value = signs.iter().try_fold(text, |rest, sign| rest.trim_start().strip_prefix(sign));
    serde_json::Deserializer::from_str(value?).into_iter().next().and_then(Result::ok)
}

fn inputs(record: &AuditRecord) -> impl Iterator<Item = &InputFile> {
    let inputs = &record.inputs;
    let others = inputs.profiles.iter().chain(&inputs.vessels).chain(&inputs.inspections);
    std::iter::once(&inputs.vocabulary).chain(others)
}

fn changed(input: &InputFile) -> Option<Broken> {
    let found = digest(&input.text);
    let (file, expected) = (input.file.clone(), input.sha256.clone());
    (found != expected).then_some(Broken::Changed { file, expected, found })
}
