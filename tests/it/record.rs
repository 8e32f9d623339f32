//! An audit on record: kept, verified, compared with a later one, and a draft
//! beside it.
//!
//! `record/` holds a small fleet in June and in August 2026 under two invented
//! rules: one with two editions, the second from July on; one whose encoding
//! holds a slip that the other folder of rules mends. Each vessel's file says
//! in its first line what happens to her.

mod against;
mod apart;
mod chain;
mod draft;
mod kept;
mod lost;
mod told;
mod verified;

use crate::run::{self, Ran};
use serde_json::Value;
use std::path::{Path, PathBuf};

/// The day of the first audit, and that of the second.
const JUNE: &str = "2026-06-01";
const AUGUST: &str = "2026-08-01";

/// A file or folder of the demonstration.
fn place(name: &str) -> String {
    format!("tests/it/record/{name}")
}

/// A folder of its rules.
fn rules(name: &str) -> String {
    run::requirements(&format!("record/{name}"))
}

/// Audits one of the two fleets, by one of the two folders of rules.
fn audit(fleet: &str, rules: &str, date: &str, flags: &[&str]) -> Ran {
    let (fleet, rules) = (place(fleet), self::rules(rules));
    let mut typed = vec!["audit", &fleet, "--requirements", &rules, "--date", date];
    typed.extend(flags);
    run::kitmuster(&typed)
}

/// The audit of June as a record in this folder.
fn june(folder: &Path) -> String {
    let path = folder.join("june.json");
    let path = path.to_str().unwrap().to_owned();
    let ran = audit("fleet-then", "rules", JUNE, &["--auditor", "O. Ferrant", "--record", &path]);
    assert_eq!(ran.status, 1, "{}", ran.stderr);
    path
}

/// A record as it stands in its file.
fn value(path: &str) -> Value {
    serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap()
}

/// Writes a record that was changed.
fn changed(folder: &Path, record: &Value) -> PathBuf {
    let path = folder.join("changed.json");
    std::fs::write(&path, serde_json::to_string_pretty(record).unwrap()).unwrap();
    path
}

/// The page without its line breaks, to look for a sentence in.
fn flat(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The SHA-256 digest of a text.
fn digest(text: &str) -> String {
    use sha2::Digest as _;
    sha2::Sha256::digest(text.as_bytes()).iter().map(|byte| format!("{byte:02x}")).collect()
}
