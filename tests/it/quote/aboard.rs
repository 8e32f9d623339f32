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
    let longer = &entries[0]["entry"]["mark"];
    assert_ne!(longer, "LC-1");
    // The blades that fitted the lot fit the longer one too.
    assert_eq!((&entries[1]["of"], entries.len()), (&"BL-1".into(), 2));
    assert_eq!(entries[1]["entry"]["fits"], serde_json::json!(["LC-1", longer]));
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

/// The records of a vessel that ships, as they are typed.
fn records_of(vessel: &Value) -> Vec<String> {
    let line = format!("vessel: {}\n", vessel["name"].as_str().unwrap());
    let records = std::fs::read_dir(run::home().join("vessels/inspections")).unwrap();
    let records = records.map(|entry| entry.unwrap().path());
    let own = records.filter(|record| std::fs::read_to_string(record).unwrap().contains(&line));
    own.flat_map(|r| ["--inspection".to_owned(), r.to_string_lossy().into_owned()]).collect()
}

/// A quote out of the catalogues that ship, ordered once the records are in.
fn of_suppliers(typed: &[String]) -> Value {
    let mut all = vec!["quote", "--ordered", "2026-11-28", "--format", "json"];
    SUPPLIERS.iter().for_each(|supplier| all.extend(["--catalogue", supplier]));
    all.extend(typed.iter().map(String::as_str));
    run::kitmuster(&all).json()
}

const SUPPLIERS: [&str; 2] =
    ["suppliers/port-ansel-chandlery.yaml", "suppliers/tarnholt-ship-stores.yaml"];

#[test]
fn every_shipped_vessel_is_found_as_its_quote_said() {
    let fleet = of_suppliers(&["vessels".to_owned()]);
    let mut bought = 0;
    for vessel in fleet["vessels"].as_array().unwrap() {
        let file = vessel["file"].as_str().unwrap();
        let records = records_of(vessel);
        let alone = of_suppliers(&[&[file.to_owned()], records.as_slice()].concat());
        let text = std::fs::read_to_string(run::home().join(file)).unwrap();
        let folder = folder(&[]);
        let path = at(&folder, "supplied.yaml");
        // As a part of the fleet's order and alone, it may be another basket.
        for quoted in [vessel, &alone["vessels"][0]] {
            std::fs::write(&path, supplied(&text, quoted)).unwrap();
            let mut typed = vec!["check", &path, "--format", "json"];
            typed.extend(records.iter().map(String::as_str));
            let check = run::kitmuster(&typed).json();
            assert_eq!(check["verdict"], quoted["verdict_after"], "{file}: {quoted:#}");
            bought += quoted["lines"].as_array().unwrap().len();
        }
    }
    assert!(bought > 16, "{bought}");
}

/// A catalogue of this one item.
fn only(item: &str) -> String {
    let head = LOFT.split("items:").next().unwrap();
    format!("{head}items:\n  - number: W-1\n    description: W-1\n    price: 9\n    {item}\n")
}

#[test]
fn the_broken_ones_of_a_lot_are_mended_and_told_by_the_mark_of_the_lot() {
    let catalogue = only("service: { kinds: [canine mouth gag], does: [repair] }");
    let (value, check) = after(&shipped("vesper-noddy.yaml"), &catalogue);
    let line = &value["vessels"][0]["lines"][0];
    let entry = &line["entries"][0];
    assert_eq!((&entry["pieces"], &entry["broken"]), (&1.into(), &true.into()), "{value:#}");
    assert!(!entry["of"].as_str().unwrap().contains("(broken)"), "{entry}");
    assert_eq!(entry["entry"]["condition"], "serviceable");
    assert_eq!(value["verdict"], "ready");
    assert_eq!(check["verdict"], "ready");
}

#[test]
fn a_tool_that_two_lines_work_on_is_written_once() {
    let text = shipped("night-whimbrel.yaml").replace(
        "    handle: 2.40 m\n    inspected: 2026-07-06\n\n  - mark: DE-1",
        "    handle: 1.90 m\n    inspected: 2025-07-06\n\n  - mark: DE-1",
    );
    let text = text.replace("inspected: 2025-12-10", "inspected: 2026-07-06");
    let catalogue = only("service: { kinds: [long-handled line cutter], does: [inspection] }")
        + "  - number: W-2\n    description: W-2\n    price: 9\n    \
           lengthens: { kinds: [long-handled line cutter], by: 1 ft 1/8 in }\n";
    let (value, check) = after(&text, &catalogue);
    let lines = value["vessels"][0]["lines"].as_array().unwrap();
    assert_eq!(lines.len(), 2, "{value:#}");
    assert_eq!(lines[0]["entries"].as_array().unwrap().len(), 1);
    assert_eq!(lines[1]["entries"].as_array().unwrap().len(), 0);
    // 1.90 m and 1 ft 1/8 in come to no whole millimetre.
    assert_eq!(lines[0]["entries"][0]["entry"]["handle"]["value"], "2.207975 m");
    assert_eq!(lines[0]["entries"][0]["entry"]["inspected"], "2026-11-28");
    assert_eq!(value["verdict"], "ready");
    assert_eq!(check["verdict"], "ready");
}
