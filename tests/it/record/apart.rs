//! Which vessel is which, and what is said of those that are not compared.

use super::{AUGUST, JUNE, flat, june, place, value};
use crate::run;
use serde_json::{Value, json};
use std::path::Path;

/// The text of a vessel in June.
fn text(name: &str) -> String {
    std::fs::read_to_string(place(&format!("fleet-then/{name}.yaml"))).unwrap()
}

/// Audits a folder against a record, as JSON.
fn against(fleet: &Path, record: &str, flags: &[&str]) -> Value {
    let rules = super::rules("rules");
    let typed = ["audit", fleet.to_str().unwrap(), "--requirements", &rules, "--date", JUNE];
    let flags = [flags, &["--against", record, "--format", "json"]].concat();
    run::kitmuster(&[&typed[..], &flags].concat()).json()["against"].clone()
}

fn fleet(folder: &Path, name: &str, vessels: &[(&str, &str)]) -> std::path::PathBuf {
    let fleet = folder.join(name);
    std::fs::create_dir(&fleet).unwrap();
    for (name, text) in vessels {
        run::write(&fleet, name, text);
    }
    fleet
}

#[test]
fn a_broken_file_in_a_folder_that_was_copied_may_be_the_vessels() {
    let folder = tempfile::tempdir().unwrap();
    let record = june(folder.path());
    let fleet = fleet(folder.path(), "copy", &[("anvil.yaml", "format: vessel/1\nname: [\n")]);
    std::fs::write(fleet.join("ember.yaml"), text("ember")).unwrap();
    let told = against(&fleet, &record, &[]);
    let gone = told["gone"].as_array().unwrap();
    let anvil = gone.iter().find(|g| g["name"] == "Anvil Petrel").unwrap();
    assert_eq!(anvil["why"], "not-read");
    assert!(anvil["may_be"].as_str().unwrap().ends_with("anvil.yaml"), "{anvil}");
    let rules = super::rules("rules");
    let typed = ["audit", fleet.to_str().unwrap(), "--requirements", &rules, "--date", JUNE];
    let page = flat(&run::kitmuster(&[&typed[..], &["--against", &record]].concat()).stdout);
    assert!(page.contains("which could not be read"), "{page}");
    // The other way round.
    let second = folder.path().join("second.json");
    let second = second.to_str().unwrap();
    run::kitmuster(&[&typed[..], &["--record", second]].concat());
    let whole = std::path::PathBuf::from(place("fleet-then"));
    let told = against(&whole, second, &[]);
    let new = told["newcomers"].as_array().unwrap();
    let anvil = new.iter().find(|n| n["name"] == "Anvil Petrel").unwrap();
    assert_eq!(anvil["refused_then"], false);
    assert!(anvil["may_be"].as_str().unwrap().ends_with("copy/anvil.yaml"), "{anvil}");
    let page = super::audit("fleet-then", "rules", JUNE, &["--against", second]).stdout;
    assert!(flat(&page).contains("copy/anvil.yaml`, which could not be read then"), "{page}");
    // Refused then where it stands itself.
    std::fs::write(fleet.join("anvil.yaml"), text("anvil")).unwrap();
    let page = flat(&run::kitmuster(&[&typed[..], &["--against", second]].concat()).stdout);
    assert!(page.contains("; its file was refused then"), "{page}");
    let told = against(&fleet, second, &[]);
    let anvil = &told["newcomers"][0];
    assert_eq!((&anvil["refused_then"], &anvil["may_be"]), (&json!(true), &Value::Null));
}

#[test]
fn two_of_one_name_are_known_by_their_files_in_a_folder_that_was_copied() {
    let folder = tempfile::tempdir().unwrap();
    let one = text("briar");
    let two = one.replace("5 ft 9 in", "7 ft");
    let both = [("one.yaml", &*one), ("two.yaml", &*two)];
    let then = fleet(folder.path(), "then", &both);
    let record = folder.path().join("then.json");
    let record = record.to_str().unwrap();
    let rules = super::rules("rules");
    let typed = ["audit", then.to_str().unwrap(), "--requirements", &rules, "--date", JUNE];
    run::kitmuster(&[&typed[..], &["--record", record]].concat());
    let told = against(&fleet(folder.path(), "now", &both), record, &[]);
    assert_eq!((&told["totals"]["compared"], &told["unclear"]), (&json!(2), &json!([])));
}

#[test]
fn a_register_in_two_files_is_told_as_that() {
    let folder = tempfile::tempdir().unwrap();
    let record = june(folder.path());
    let anvil = text("anvil");
    let fleet = fleet(
        folder.path(),
        "now",
        &[
            ("x.yaml", &anvil.replace("Anvil Petrel", "Marsh Stint")),
            ("y.yaml", &anvil.replace("Anvil Petrel", "Moor Stint")),
            ("z.yaml", &anvil.replace("A-1", "A-77")),
        ],
    );
    let told = against(&fleet, &record, &[]);
    let unclear = &told["unclear"][0];
    assert_eq!(unclear["why"], "register");
    assert_eq!(unclear["then"][0]["name"], "Anvil Petrel");
    let now: Vec<_> = unclear["now"].as_array().unwrap().iter().map(|c| &c["name"]).collect();
    assert_eq!(now, ["Marsh Stint", "Moor Stint"]);
    let why = unclear["text"].as_str().unwrap();
    assert!(why.contains("register A-1 stood in 1 file then and stands in 2 files now"), "{why}");
    let new = told["newcomers"].as_array().unwrap();
    assert_eq!((new.len(), &new[0]["register"]), (1, &json!("A-77")));
}

#[test]
fn who_is_gone_with_open_findings_is_no_clean_fleet() {
    let folder = tempfile::tempdir().unwrap();
    let record = june(folder.path());
    let fleet = fleet(folder.path(), "now", &[("heath.yaml", &text("heath"))]);
    let rules = super::rules("rules");
    let typed = ["audit", fleet.to_str().unwrap(), "--requirements", &rules, "--date", JUNE];
    let page = flat(&run::kitmuster(&[&typed[..], &["--against", &record]].concat()).stdout);
    let open = value(&record)["vessels"].as_array().unwrap().clone();
    let open = open.iter().filter(|v| v["name"] != "Heath Skua");
    let open = open.flat_map(|v| v["profiles"].as_array().unwrap().clone());
    let open = open.flat_map(|p| p["findings"].as_array().unwrap().clone());
    let open = open.filter(|f| f.get("open_since").is_some()).count();
    assert!(open > 0 && !page.contains("no finding was open"), "{page}");
    assert!(
        page.contains(&format!("{open} findings open then on vessels that are gone")),
        "{page}"
    );
}

#[test]
fn the_same_selection_in_other_words_is_the_same() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("record.json");
    let path = path.to_str().unwrap();
    let then = place("fleet-then");
    let rules = super::rules("rules");
    let typed = ["audit", &then, "--requirements", &rules, "--date", JUNE, "--record", path];
    let ports = ["--port", "Port Ansel", "--port", "Port Brisk"];
    run::kitmuster(&[&typed[..], &ports].concat());
    let other = ["--port", " PORT brisk", "--port", "port ansel "];
    let told = against(Path::new(&then), path, &other);
    assert_eq!(told["other_selection"], false);
    let told = against(Path::new(&then), path, &["--port", "port ansel"]);
    assert_eq!(told["other_selection"], true);
}

#[test]
fn whom_a_rule_binds_that_nobody_can_judge_is_not_gone() {
    let folder = tempfile::tempdir().unwrap();
    let record = folder.path().join("record.json");
    let record = record.to_str().unwrap();
    let rules = super::rules("rules");
    let then = fleet(folder.path(), "then", &[("anvil.yaml", &text("anvil"))]);
    let bound = ["--bound-by", "pier"];
    let typed = ["audit", then.to_str().unwrap(), "--requirements", &rules, "--date", JUNE];
    run::kitmuster(&[&typed[..], &bound, &["--record", record]].concat());
    // No edition is known for the days of the new trip.
    let old = ["--on", "2019-05-01", "--return", "2019-05-03"];
    let told = against(&then, record, &[&bound[..], &old].concat());
    assert_eq!((&told["gone"], &told["totals"]["compared"]), (&json!([]), &json!(1)));
    // Her permits are not stated any more.
    let text = text("anvil").replace("permits: [pier-permit]\n", "");
    let now = fleet(folder.path(), "now", &[("anvil.yaml", &text)]);
    let told = against(&now, record, &bound);
    assert_eq!((&told["gone"], &told["totals"]["compared"]), (&json!([]), &json!(1)));
    assert_eq!(told["totals"]["mended"], 0);
}

#[test]
fn reasons_do_not_hang_on_what_is_shown() {
    let folder = tempfile::tempdir().unwrap();
    let record = june(folder.path());
    let (fleet, rules) = (place("fleet-now"), super::rules("rules-mended"));
    let typed = ["audit", &fleet, "--requirements", &rules, "--date", AUGUST, "--against", &record];
    let section = |flags: &[&str]| {
        let page = run::kitmuster(&[&typed[..], flags].concat()).stdout;
        page.split("\n\n").find(|part| part.starts_with("Compared")).unwrap().to_owned()
    };
    assert_eq!(section(&["--verdict", "ready"]), section(&[]));
}
