//! A fleet in one run: what is counted, shown and left out, in every format,
//! the same whatever the number of threads.

mod counted;
mod files;
mod formats;
mod lapses;
mod marks;
mod outcomes;
mod shown;

use crate::run::{self, Ran};
use serde_json::Value;

/// The day on which the tests audit.
const DATE: &str = "2026-11-25";

/// Audits these paths with these flags on the day of the tests.
fn audit(paths: &[&str], flags: &[&str]) -> Ran {
    let mut typed = vec!["audit", "--date", DATE];
    typed.extend(paths);
    typed.extend(flags);
    run::kitmuster(&typed)
}

/// The page without its line breaks, to look for a sentence in.
fn flat(ran: &Ran) -> String {
    ran.stdout.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The audit as one JSON document.
fn document(paths: &[&str], flags: &[&str]) -> Value {
    let ran = audit(paths, &[&["--format", "json"], flags].concat());
    serde_json::from_str(&ran.stdout).unwrap_or_else(|error| panic!("{error}: {}", ran.stderr))
}

/// A shipped vessel's text with parts of it replaced, each of which must be
/// there.
fn changed(vessel: &str, changes: &[(&str, &str)]) -> String {
    let path = run::home().join("vessels").join(vessel);
    let mut text = std::fs::read_to_string(path).unwrap();
    for (old, new) in changes {
        assert!(text.contains(old), "`{old}` is not in {vessel}");
        text = text.replace(old, new);
    }
    text
}

/// A folder with these files.
fn folder(files: &[(&str, String)]) -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    for (name, text) in files {
        let path = folder.path().join(name);
        std::fs::create_dir_all(path.parent().unwrap()).unwrap();
        std::fs::write(path, text).unwrap();
    }
    folder
}

/// The path of a folder as it is typed.
fn typed(folder: &tempfile::TempDir) -> &str {
    folder.path().to_str().unwrap()
}

/// The names of the vessels in a document, in order.
fn names(document: &Value) -> Vec<String> {
    let vessels = document["vessels"].as_array().unwrap();
    vessels.iter().map(|v| v["vessel"]["name"].as_str().unwrap().to_owned()).collect()
}
