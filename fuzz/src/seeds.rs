//! Seeds and words that are made: from the shipped files, the samples and the
//! test profiles, which are not stored a second time.

use crate::aboard;
use kitmuster::engine::Depth;
use kitmuster::fleet::record::{Entry, Making};
use kitmuster::fleet::{Records, Selection};
use kitmuster::load::{self, FileKind};
use serde_json::{Value, json};
use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

/// The folders from which each target takes the YAML files as they are.
const FROM: [(&str, &[&str]); 6] = [
    ("vessel", &["vessels", "tests/browser/hostile", "tests/browser/card"]),
    ("inspection", &["vessels/inspections"]),
    ("catalogue", &["suppliers", "tests/browser"]),
    ("profile", &["requirements", "tests/it/shapes", "tests/it/record/rules"]),
    ("vocabulary", &["requirements"]),
    ("techniques", &["requirements"]),
];

/// Files of a folder of requirements that are no profiles, and for which
/// target they are.
const NO_PROFILES: [&str; 2] = ["vocabulary", "techniques"];

/// Writes everything into a folder: `TARGET/…` and `keys.dict`.
pub fn write(folder: &Path) {
    let home = Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
    for (target, places) in FROM {
        let into = folder.join(target);
        fs::create_dir_all(&into).expect("a folder for seeds");
        for path in places.iter().flat_map(|place| yaml_files(&home.join(place))) {
            let stem = path.file_stem().unwrap_or_default().to_string_lossy().into_owned();
            let is_profile = !NO_PROFILES.contains(&stem.as_str());
            let fits = match target {
                "profile" => is_profile,
                "vocabulary" | "techniques" => stem == target,
                _ => true,
            };
            if fits {
                fs::copy(&path, into.join(&stem)).expect("a seed");
            }
        }
    }
    records(&folder.join("record"), &home);
    fs::write(folder.join("keys.dict"), words()).expect("the words");
}

fn yaml_files(folder: &Path) -> Vec<PathBuf> {
    let entries = fs::read_dir(folder).into_iter().flatten().flatten();
    let paths = entries.map(|entry| entry.path());
    paths.filter(|path| path.extension().is_some_and(|ext| ext == "yaml")).collect()
}

/// A record of each sample vessel alone, the shipped files named and not
/// written out.
fn records(folder: &Path, home: &Path) {
    fs::create_dir_all(folder).expect("a folder for seeds");
    let library = aboard::library();
    let orders = aboard::orders(&[], Depth::Findings);
    let selection = Selection::default();
    let making = Making { orders: &orders, selection: &selection, auditor: Some("A. Person") };
    for path in yaml_files(&home.join("vessels")) {
        let Ok((vessel, source)) = load::load_vessel(&path, &library.vocabulary) else { continue };
        let judged = orders.judged(vessel, source, &Records::default());
        let record = making.record(vec![Entry::new(&judged, orders.date)], &[]);
        let mut record = serde_json::to_value(record).expect("a record has a JSON form");
        let used: BTreeSet<String> =
            judged.check.judgements.iter().map(|j| j.profile.place.file.to_string()).collect();
        let inputs = &mut record["inputs"];
        named(&mut inputs["vocabulary"]);
        if let Some(profiles) = inputs["profiles"].as_array_mut() {
            // The lists that others are built on stay with those that judged.
            profiles.retain(|one| {
                let file = one["file"].as_str().unwrap_or_default();
                used.contains(file) || file.contains("appendix") || file.contains("2009")
            });
            profiles.iter_mut().for_each(named);
        }
        let stem = path.file_stem().unwrap_or_default();
        fs::write(folder.join(stem), record.to_string()).expect("a seed");
    }
}

fn named(input: &mut Value) {
    let file = input["file"].as_str().unwrap_or_default();
    let name = file.rsplit('/').next().unwrap_or_default();
    input["text"] = json!(format!("@{name}"));
    input["sha256"] = json!("");
}

/// The keys of every kind of file and the vocabulary's words, as a dictionary.
fn words() -> String {
    let mut keys = BTreeSet::new();
    for kind in [
        FileKind::Vessel,
        FileKind::Inspection,
        FileKind::Profile,
        FileKind::Vocabulary,
        FileKind::Catalogue,
        FileKind::Techniques,
    ] {
        properties(&load::schema(kind), &mut keys);
    }
    let vocabulary = &aboard::library().vocabulary;
    keys.extend(vocabulary.attributes.iter().map(|one| one.id.clone()));
    let mut words: BTreeSet<String> = keys.iter().map(|key| format!("{key}: ")).collect();
    words.extend(vocabulary.kinds.iter().map(|kind| kind.id.clone()));
    words.extend(aboard::library().profiles.iter().map(|profile| profile.id.clone()));
    let plain =
        |word: &String| word.bytes().all(|b| (b' '..=b'~').contains(&b) && b != b'"' && b != b'\\');
    words.iter().filter(|word| plain(word)).map(|word| format!("\"{word}\"\n")).collect()
}

fn properties(schema: &Value, keys: &mut BTreeSet<String>) {
    match schema {
        Value::Object(map) => {
            if let Some(own) = map.get("properties").and_then(Value::as_object) {
                keys.extend(own.keys().cloned());
            }
            map.values().for_each(|below| properties(below, keys));
        }
        Value::Array(list) => list.iter().for_each(|below| properties(below, keys)),
        _ => {}
    }
}
