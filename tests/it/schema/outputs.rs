//! Whatever a command prints as JSON fits its schema, key by key.

use super::{assert_fits, misfits, validator};
use crate::run::{Ran, kitmuster};
use serde_json::{Value, json};

/// The shipped vessels, and fixtures that are rich in reasons.
fn vessels() -> Vec<String> {
    let folder = std::fs::read_dir(crate::run::home().join("vessels")).unwrap();
    let paths = folder.map(|entry| entry.unwrap().path());
    let mut paths: Vec<_> = paths.filter(|path| path.is_file()).collect();
    paths.sort();
    let shown = paths.into_iter().map(|path| path.display().to_string());
    shown.filter(|path| path.ends_with(".yaml")).collect()
}

fn ran(typed: &[&str]) -> Ran {
    let ran = kitmuster(typed);
    assert!(ran.status < 3 && !ran.stdout.is_empty(), "{typed:?}\n{}", ran.stderr);
    ran
}

/// Every code that stands in a document.
fn codes(value: &Value, found: &mut std::collections::BTreeSet<String>) {
    match value {
        Value::Object(keys) => {
            found.extend(keys.get("code").and_then(Value::as_str).map(str::to_owned));
            keys.values().for_each(|value| codes(value, found));
        }
        Value::Array(values) => values.iter().for_each(|value| codes(value, found)),
        _ => {}
    }
}

#[test]
fn checks_fit() {
    let check = validator("check");
    let mut found = std::collections::BTreeSet::new();
    let mut judge = |typed: &[&str]| {
        let printed = ran(typed).json();
        assert_fits(&check, &printed, &format!("{typed:?}"));
        codes(&printed, &mut found);
    };
    for vessel in vessels() {
        judge(&["check", &vessel, "--format", "json"]);
    }
    let tern = "vessels/marlow-tern.yaml";
    judge(&["check", tern, "--format", "json", "--trust", "measured"]);
    judge(&["check", tern, "--format", "json", "--profile", "good-practice-longline"]);
    judge(&[
        "check",
        tern,
        "--format",
        "json",
        "--catalogue",
        "suppliers/port-ansel-chandlery.yaml",
    ]);
    let record = "vessels/inspections/stillwater-heron-2026-11-27.yaml";
    let heron = "vessels/stillwater-heron.yaml";
    judge(&["check", heron, "--inspection", record, "--format", "json", "--units", "metric"]);
    for folder in ["certificates", "hooks", "lent-tool", "parts", "rivals", "spares", "tape-error"]
    {
        let folder = format!("tests/it/verdicts/{folder}");
        let is_there = |name: &&str| crate::run::home().join(&folder).join(name).exists();
        let rules = ["P.yaml", "req"].into_iter().find(is_there).unwrap();
        let flag = if rules == "req" { "--requirements" } else { "--profile" };
        let names = ["V.yaml", "V2.yaml", "V3.yaml"];
        for vessel in names.iter().filter(|name| is_there(name)) {
            let (vessel, rules) = (format!("{folder}/{vessel}"), format!("{folder}/{rules}"));
            judge(&["check", &vessel, flag, &rules, "--format", "json"]);
        }
    }
    assert!(found.len() >= 15, "{found:?}");
}

#[test]
fn audits_fit() {
    let (audit, line, record) = (validator("audit"), validator("audit-line"), validator("record"));
    let folder = tempfile::tempdir().unwrap();
    let kept = folder.path().join("then.json").display().to_string();
    let rules = &*crate::run::requirements("record/rules");
    let then = ["audit", "tests/it/record/fleet-then", "--requirements", rules];
    let flags = ["--date", "2026-06-01", "--record", &kept, "--auditor", "A", "--format", "json"];
    let printed = ran(&[&then[..], &flags[..]].concat());
    assert_fits(&audit, &printed.json(), "an audit that is kept");
    let text = std::fs::read_to_string(&kept).unwrap();
    assert_fits(&record, &serde_json::from_str(&text).unwrap(), "a record");
    let again = folder.path().join("now.json").display().to_string();
    let fleet = "tests/it/record/fleet-now";
    let now = ["audit", fleet, "--requirements", rules, "--date", "2026-08-01"];
    let flags = ["--against", &kept, "--record", &again, "--format", "json"];
    let printed = ran(&[&now[..], &flags[..]].concat()).json();
    assert!(printed.get("against").is_some());
    assert_fits(&audit, &printed, "an audit against a record");
    let text = std::fs::read_to_string(&again).unwrap();
    assert_fits(&record, &serde_json::from_str(&text).unwrap(), "the record of one");
    let flags = ["--draft", "tests/it/record/pier-2028.yaml", "--format", "json"];
    let printed = ran(&[&now[..], &flags[..]].concat()).json();
    assert!(printed.get("draft").is_some());
    assert_fits(&audit, &printed, "an audit with a draft");
    let shipped = ["audit", "vessels", "--outcomes", "--format", "json"];
    assert_fits(&audit, &ran(&shipped).json(), "the shipped fleet");
    let hostile = ["audit", "tests/browser/hostile", "--format", "json"];
    assert_fits(&audit, &ran(&hostile).json(), "a hostile fleet");
    for fleet in ["vessels", "tests/browser/hostile", fleet] {
        for row in ran(&["audit", fleet, "--format", "lines"]).stdout.lines() {
            assert_fits(&line, &serde_json::from_str(row).unwrap(), row);
        }
    }
}

#[test]
fn options_fit() {
    let options = validator("options");
    for vessel in vessels() {
        let typed = ["options", &vessel, "--format", "json"];
        assert_fits(&options, &ran(&typed).json(), &vessel);
    }
    let tern = ["options", "vessels/marlow-tern.yaml", "--format", "json"];
    let case = ["--case", "alongside,outside,circle,buried"];
    let printed = ran(&[&tern[..], &case[..]].concat()).json();
    assert!(printed.get("case").is_some());
    assert_fits(&options, &printed, "one case");
    let priced = ["--catalogue", "suppliers/port-ansel-chandlery.yaml"];
    assert_fits(&options, &ran(&[&tern[..], &priced[..]].concat()).json(), "with prices");
}

#[test]
fn quotes_fit_and_their_entries_are_those_of_a_vessel() {
    let (quote, vessel) = (validator("quote"), validator("vessel"));
    let suppliers: Vec<_> = std::fs::read_dir(crate::run::home().join("suppliers"))
        .unwrap()
        .map(|entry| entry.unwrap().path().display().to_string())
        .filter(|path| path.ends_with(".yaml"))
        .collect();
    let given: Vec<_> = suppliers.iter().flat_map(|path| ["--catalogue", path]).collect();
    let mut entries = 0;
    for flags in [&["--explain"][..], &["--one-supplier", "--with-recommended"][..]] {
        let typed = [&["quote", "vessels", "--format", "json"][..], &given[..], flags].concat();
        let printed = ran(&typed).json();
        assert_fits(&quote, &printed, &format!("{typed:?}"));
        let lines = printed["vessels"].as_array().unwrap().iter();
        for entry in lines.flat_map(|vessel| vessel["lines"].as_array().unwrap()) {
            for entry in entry["entries"].as_array().unwrap() {
                let tool = entry.get("entry").unwrap_or(entry);
                let file = json!({ "format": "vessel/1", "name": "A", "kit": [tool] });
                assert_fits(&vessel, &file, "an entry");
                entries += 1;
            }
        }
    }
    assert!(entries > 10, "{entries}");
}

#[test]
fn a_key_that_is_not_described_does_not_fit() {
    let check = validator("check");
    let mut printed = ran(&["check", "vessels/marlow-tern.yaml", "--format", "json"]).json();
    assert_fits(&check, &printed, "as printed");
    for path in ["", "/vessel", "/profiles/0", "/profiles/0/findings/0", "/trip"] {
        let whole = printed.clone();
        let group = printed.pointer_mut(path).unwrap().as_object_mut().unwrap();
        group.insert("undeclared".to_owned(), json!(1));
        assert_eq!(misfits(&check, &printed).len(), 1, "{path}");
        printed = whole;
    }
    // A key that is left out where it says nothing is never null.
    printed["profiles"][0]["findings"][0]["reasons"][0]["lent_to"] = Value::Null;
    assert_eq!(misfits(&check, &printed).len(), 1);
}

#[test]
fn words_and_days_are_told_where_they_stand() {
    for name in ["check", "audit", "options", "quote"] {
        let schema = super::schema(name);
        for (of, definition) in schema["$defs"].as_object().unwrap() {
            assert_ne!(definition["type"], "string", "{name}: {of}: {definition}");
        }
    }
}
