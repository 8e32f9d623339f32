//! The changes that `cargo mutants --list --json` names.

use serde_json::Value;
use std::fs;
use std::path::Path;

/// One change of the sources.
#[derive(Clone, Debug)]
pub struct Mutant {
    /// Its place in the list; by it the change is switched on.
    pub number: u32,
    /// What is changed to what, and where, in words.
    pub name: String,
    /// The file, from the top of the package.
    pub file: String,
    /// The kind of change: `BinaryOperator`, `FnValue`, …
    pub genre: String,
    /// What stands in place of the text that is taken out.
    pub replacement: String,
    /// Line and column where the text begins, both from 1.
    pub at: (usize, usize),
}

/// Reads the list.
///
/// # Errors
/// Where it cannot be read, or is of another shape.
pub fn list(path: &Path) -> Result<Vec<Mutant>, String> {
    let text = fs::read_to_string(path).map_err(|e| format!("{}: {e}", path.display()))?;
    let all: Vec<Value> = serde_json::from_str(&text).map_err(|e| e.to_string())?;
    all.iter()
        .zip(0..)
        .map(|(one, number)| read(one, number).ok_or_else(|| format!("not a change: {one}")))
        .collect()
}

fn read(one: &Value, number: u32) -> Option<Mutant> {
    let text = |key: &str| one[key].as_str().map(str::to_owned);
    let start = |key: &str| one["span"]["start"][key].as_u64()?.try_into().ok();
    Some(Mutant {
        number,
        name: text("name")?,
        file: text("file")?,
        genre: text("genre")?,
        replacement: text("replacement")?,
        at: (start("line")?, start("column")?),
    })
}
