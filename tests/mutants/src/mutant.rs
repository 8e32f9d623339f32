//! The changes that `cargo mutants --list --json` names.

use serde_json::Value;
use std::collections::BTreeMap;
use std::fs;
use std::hash::{DefaultHasher, Hash, Hasher};
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

/// Leaves in the list so many changes of each folder under `src/`, chosen by the
/// seed, and says of how many.
///
/// # Errors
/// Where it cannot be read or written, or is of another shape.
pub fn sample(path: &Path, seed: u64, of_each: usize) -> Result<(), String> {
    let failed = |e: &dyn std::fmt::Display| format!("{}: {e}", path.display());
    let text = fs::read_to_string(path).map_err(|e| failed(&e))?;
    let all: Vec<Value> = serde_json::from_str(&text).map_err(|e| failed(&e))?;
    let mut folders: BTreeMap<String, Vec<Value>> = BTreeMap::new();
    for one in all {
        let file = one["file"].as_str().ok_or_else(|| format!("not a change: {one}"))?;
        let folder = file.split('/').nth(1).unwrap_or_default().to_owned();
        folders.entry(folder).or_default().push(one);
    }
    let mut chosen = Vec::new();
    for (folder, mut changes) in folders {
        // Each is as likely as any other, whatever the order of the list.
        changes.sort_by_cached_key(|one| {
            let mut hasher = DefaultHasher::new();
            (seed, one["name"].as_str()).hash(&mut hasher);
            hasher.finish()
        });
        println!(
            "{folder}: {} of {} changes, seed {seed}",
            of_each.min(changes.len()),
            changes.len()
        );
        changes.truncate(of_each);
        chosen.extend(changes);
    }
    fs::write(path, Value::Array(chosen).to_string()).map_err(|e| failed(&e))
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
