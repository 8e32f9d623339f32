//! What a quote says to write into the inventories: once it is written there,
//! `check` finds the vessel as the quote said.

use super::{LOFT, at, document, folder, shipped};
use crate::run;
use serde_json::Value;

/// The inventory of a vessel with the entries of every line written into it:
/// new tools appended, tools that were worked on in the place of the old.
fn supplied(text: &str, vessel: &Value) -> String {
    let mut file: Value = serde_yaml::from_str(text).unwrap();
    let kit = file["kit"].as_array_mut().unwrap();
    for line in vessel["lines"].as_array().unwrap() {
        for entry in line["entries"].as_array().unwrap() {
            match entry.get("of") {
                None => kit.push(entry.clone()),
                Some(of) => replace(kit, of, entry),
            }
        }
    }
    // JSON is YAML.
    serde_json::to_string_pretty(&file).unwrap()
}

fn replace(kit: &mut Vec<Value>, of: &Value, entry: &Value) {
    let index = kit.iter().position(|tool| tool["mark"] == *of).unwrap();
    let count = kit[index].get("count").and_then(Value::as_u64).unwrap_or(1);
    let pieces = entry["pieces"].as_u64().unwrap();
    if entry.get("broken").is_some() {
        let broken = kit[index]["broken"].as_u64().unwrap();
        kit[index]["broken"] = (broken - pieces).into();
    }
    if pieces == count {
        kit[index] = entry["entry"].clone();
    } else {
        kit[index]["count"] = (count - pieces).into();
        kit.push(entry["entry"].clone());
    }
}

/// Quotes for the text of a vessel, writes the entries into it and checks it.
fn after(text: &str, catalogue: &str) -> (Value, Value) {
    let files = folder(&[("a.yaml", text), ("loft.yaml", catalogue)]);
    let value = document(&[&at(&files, "a.yaml")], &[&at(&files, "loft.yaml")], &[]);
    let path = at(&files, "supplied.yaml");
    std::fs::write(&path, supplied(text, &value["vessels"][0])).unwrap();
    let check = run::kitmuster(&["check", &path, "--format", "json"]).json();
    (value, check)
}

#[test]
fn a_lengthened_cutter_written_as_told_makes_the_vessel_ready() {
    let (value, check) = after(&shipped("marlow-tern.yaml"), LOFT);
    let line = &value["vessels"][0]["lines"][0];
    assert_eq!((&line["number"], &line["on"]), (&"EX-2".into(), &"LC-1".into()));
    assert_eq!(line["entries"][0]["of"], "LC-1");
    assert_eq!(line["entries"][0]["entry"]["handle"]["value"], "8 ft 4 in");
    assert_eq!(value["verdict"], "ready");
    assert_eq!(check["verdict"], "ready");
}

#[test]
fn a_new_tool_written_as_told_makes_the_vessel_ready() {
    let without = LOFT.replace("[long-handled line cutter], by", "[dip net], by");
    let (value, check) = after(&shipped("marlow-tern.yaml"), &without);
    let lines = &value["vessels"][0]["lines"];
    let numbers = [&lines[0]["number"], &lines[1]["number"]];
    assert_eq!(numbers, ["LC-8", "BL-8"]);
    assert_eq!(lines[0]["on"], Value::Null);
    assert_eq!(lines[0]["entries"][0]["acquired"], "2026-11-28");
    assert_eq!(lines[1]["entries"][0]["fits"][0], "LC-8");
    assert_eq!(value["verdict"], "ready");
    assert_eq!(check["verdict"], "ready");
}

#[test]
fn some_of_a_lot_are_split_from_it_and_their_spares_follow() {
    let lot = shipped("marlow-tern.yaml").replace(
        "  - mark: LC-1\n    kind: long-handled line cutter\n",
        "  - mark: LC-1\n    kind: long-handled line cutter\n    count: 2\n",
    );
    let (value, check) = after(&lot, LOFT);
    let entries = value["vessels"][0]["lines"][0]["entries"].as_array().unwrap();
    assert_eq!((&entries[0]["of"], &entries[0]["pieces"]), (&"LC-1".into(), &1.into()));
    assert_ne!(entries[0]["entry"]["mark"], "LC-1");
    assert_eq!(value["verdict"], "ready");
    assert_eq!(check["verdict"], "ready", "{value:#}");
}

#[test]
fn a_record_from_before_the_change_does_not_dispute_it() {
    let record = "format: inspection/1\nvessel: Marlow Tern\non: 2026-11-24\n\
                  found: [{ mark: LC-1, handle: 6 ft 4 in, condition: serviceable }]\n";
    let text = shipped("marlow-tern.yaml");
    let files = folder(&[("a.yaml", &text), ("loft.yaml", LOFT), ("r.yaml", record)]);
    let record = at(&files, "r.yaml");
    let flags = ["--inspection", &record];
    let value = document(&[&at(&files, "a.yaml")], &[&at(&files, "loft.yaml")], &flags);
    assert_eq!(value["verdict"], "ready");
    let path = at(&files, "supplied.yaml");
    std::fs::write(&path, supplied(&text, &value["vessels"][0])).unwrap();
    let check = run::kitmuster(&["check", &path, "--inspection", &record, "--format", "json"]);
    assert_eq!(check.json()["verdict"], "ready", "{}", check.stdout);
}

/// The vessels that ship, with their files, and the records of each.
fn fleet() -> Vec<(String, Vec<String>)> {
    let all = document(&["vessels"], &SUPPLIERS, &["--time-limit", "20"]);
    let vessels = all["vessels"].as_array().unwrap().clone();
    let records = std::fs::read_dir(run::home().join("vessels/inspections")).unwrap();
    let records: Vec<_> = records.map(|entry| entry.unwrap().path()).collect();
    let of = |vessel: &Value| {
        let line = format!("vessel: {}", vessel["name"].as_str().unwrap());
        let own = records.iter().filter(|r| std::fs::read_to_string(r).unwrap().contains(&line));
        own.map(|record| record.to_string_lossy().into_owned()).collect()
    };
    vessels.iter().map(|v| (v["file"].as_str().unwrap().to_owned(), of(v))).collect()
}

const SUPPLIERS: [&str; 2] =
    ["suppliers/port-ansel-chandlery.yaml", "suppliers/tarnholt-ship-stores.yaml"];

#[test]
fn every_shipped_vessel_is_found_as_its_quote_said() {
    let mut bought = 0;
    for (file, records) in fleet() {
        let records: Vec<&str> =
            records.iter().flat_map(|record| ["--inspection", record]).collect();
        let value = document(&[&file], &SUPPLIERS, &records);
        let vessel = &value["vessels"][0];
        let folder = folder(&[]);
        let path = at(&folder, "supplied.yaml");
        let text = std::fs::read_to_string(run::home().join(&file)).unwrap();
        std::fs::write(&path, supplied(&text, vessel)).unwrap();
        let typed = [&["check", &path, "--format", "json"], records.as_slice()].concat();
        let check = run::kitmuster(&typed).json();
        assert_eq!(check["verdict"], vessel["verdict_after"], "{file}: {vessel:#}");
        bought += vessel["lines"].as_array().unwrap().len();
    }
    assert!(bought > 8, "{bought}");
}
