//! What is shipped fits the schema of its kind; what an editor should mark
//! does not.

use super::{assert_fits, misfits, validator};
use crate::run::home;
use serde_json::Value;
use std::collections::BTreeMap;

/// Every shipped file, by its path, with the name of its schema.
pub(super) fn shipped() -> Vec<(String, String, String)> {
    let mut found = Vec::new();
    for folder in ["vessels", "vessels/inspections", "suppliers", "requirements"] {
        let mut paths: Vec<_> = std::fs::read_dir(home().join(folder))
            .unwrap()
            .map(|entry| entry.unwrap().path())
            .filter(|path| path.extension().is_some_and(|extension| extension == "yaml"))
            .collect();
        paths.sort();
        for path in paths {
            let text = std::fs::read_to_string(&path).unwrap();
            let format = text.lines().find_map(|line| line.strip_prefix("format: ")).unwrap();
            let name = format.split('/').next().unwrap().to_owned();
            found.push((path.display().to_string(), name, text));
        }
    }
    found
}

/// A text as an editor sees it.
pub(super) fn seen(yaml: &str) -> Value {
    serde_yaml::from_str(yaml).unwrap()
}

#[test]
fn every_shipped_file_fits_the_schema_of_its_kind() {
    let mut validators = BTreeMap::new();
    let shipped = shipped();
    for (path, name, text) in &shipped {
        let validator = validators.entry(name).or_insert_with(|| validator(name));
        assert_fits(validator, &seen(text), path);
    }
    assert!(validators.len() == 6 && shipped.len() >= 30, "{}", shipped.len());
}

#[test]
fn an_editor_marks_what_the_loader_would_refuse() {
    let cases = [
        ("vessel", "format: vessel/1\nname: A\n", "/allOf/0/anyOf"),
        ("vessel", "format: vessel/1\nkit: []\n", "name"),
        ("vessel", "name: A\nkit: []\n", "format"),
        ("vessel", "format: vessel/2\nname: A\nkit: []\n", "format"),
        ("vessel", "format: vessel/1\nname: A\nkit: []\nfreebord: 4 ft\n", "freebord"),
        ("vessel", "format: vessel/1\nname: A\nkit: [{ kind: pliers }]\n", "mark"),
        ("vessel", "format: vessel/1\nname: A\nkit: []\ntrip: { depart: 3 May }\n", "depart"),
        ("vessel", "format: vessel/1\nname: A\nkit: []\ncovers: some\n", "covers"),
        ("inspection", "format: inspection/1\nvessel: A\n", "on"),
        ("profile", "format: profile/1\nid: a\ntitle: A\nrequirements: [{ id: b }]\n", "title"),
    ];
    for (name, text, what) in cases {
        let misfits = misfits(&validator(name), &seen(text)).join("\n");
        assert!(misfits.contains(what), "{text}{misfits}");
    }
}

#[test]
fn part_of_a_kit_needs_no_list_of_tools() {
    let text = "format: vessel/1\nname: A\ncovers: listed things only\n";
    assert_fits(&validator("vessel"), &seen(text), text);
}
