//! A supplier's quote: what is read and refused, how it ends, and that every
//! format says the same.

mod aboard;
mod files;
mod formats;

use crate::run::{self, Ran};
use serde_json::Value;
use std::path::Path;

/// The day of the order in the tests.
const ORDERED: &str = "2026-11-25";

/// A small catalogue: what makes a line cutter longer, and a few tools.
const LOFT: &str = "format: catalogue/1
supplier: Ansel Gear Loft
port: Port Ansel
currency: USD
tax: 7.25%
delivery: { charge: 25, free from: 500 }
lead: 3 days
items:
  - number: EX-2
    description: handle extension, 2 ft
    lengthens: { kinds: [long-handled line cutter], by: 2 ft }
    price: 31.50
  - number: LC-8
    description: long-handled line cutter, 8 ft
    tool:
      kind: long-handled line cutter
      handle: 8 ft
      protected-blade: yes
      cuts-monofilament: 2.1 mm
      blades-replaceable: yes
      conforms: [\"Appendix F, A.1\"]
    price: 118
  - number: BL-8
    description: set of replacement blades for LC-8
    tool: { kind: set of replacement blades, fits: [LC-8] }
    price: 12
  - number: BC-18
    description: bolt cutters, 18 in
    tool:
      kind: bolt cutters
      overall: 18 in
      blade-length: 4 1/4 in
      blade-width: 2 1/4 in
      cuts-hook: 5/16 in
    price: 64.20
";

/// Quotes for these paths with these flags on the day of the tests.
fn quote(paths: &[&str], catalogues: &[&str], flags: &[&str]) -> Ran {
    let mut typed = vec!["quote", "--ordered", ORDERED];
    typed.extend(paths);
    for catalogue in catalogues {
        typed.extend(["--catalogue", catalogue]);
    }
    typed.extend(flags);
    run::kitmuster(&typed)
}

/// The quote as JSON.
fn document(paths: &[&str], catalogues: &[&str], flags: &[&str]) -> Value {
    quote(paths, catalogues, &[&["--format", "json"], flags].concat()).json()
}

/// A folder with these files; the first is its path as it is typed.
fn folder(files: &[(&str, &str)]) -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    for (name, text) in files {
        let path = folder.path().join(name);
        std::fs::create_dir_all(path.parent().unwrap()).unwrap();
        std::fs::write(path, text).unwrap();
    }
    folder
}

/// A file of a folder as it is typed.
fn at(folder: &tempfile::TempDir, name: &str) -> String {
    folder.path().join(name).to_string_lossy().into_owned()
}

/// A shipped vessel's text.
fn shipped(vessel: &str) -> String {
    std::fs::read_to_string(run::home().join("vessels").join(vessel)).unwrap()
}

/// What was told on standard error, without its line breaks.
fn flat(text: &str) -> String {
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// Whether nothing lies in a folder but what was put there.
fn holds(folder: &Path, count: usize) -> bool {
    std::fs::read_dir(folder).unwrap().count() == count
}
