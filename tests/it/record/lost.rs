//! An inspection record that was laid over then and is not laid over now puts
//! nothing right.

use super::{flat, value};
use crate::run::{self, Ran};
use serde_json::{Value, json};
use std::path::Path;

const RECORD: &str = "inspections/stillwater-heron-2026-11-27.yaml";

/// A vessel with the officer's record, in a folder of its own.
fn heron(folder: &Path) {
    std::fs::create_dir_all(folder.join("v/inspections")).unwrap();
    for name in ["stillwater-heron.yaml", RECORD] {
        std::fs::copy(Path::new("vessels").join(name), folder.join("v").join(name)).unwrap();
    }
}

/// Audits her on a day, with further flags.
fn audit(folder: &Path, date: &str, flags: &[&str]) -> Ran {
    let fleet = folder.join("v");
    let typed = ["audit", fleet.to_str().unwrap(), "--on", "2026-12-05", "--date", date];
    run::kitmuster(&[&typed[..], flags].concat())
}

fn at(folder: &Path, name: &str) -> String {
    folder.join(name).to_str().unwrap().to_owned()
}

/// What is said against the record.
fn against(folder: &Path, date: &str, record: &str) -> Value {
    audit(folder, date, &["--against", record, "--format", "json"]).json()["against"].clone()
}

/// What was closed through what.
fn closed(against: &Value) -> Vec<(String, String)> {
    let findings = against["vessels"][0]["findings"].as_array().unwrap();
    let closed = findings.iter().filter(|f| f["fate"] == "closed");
    let text = |value: &Value| value.as_str().unwrap_or("-").to_owned();
    closed.map(|f| (text(&f["requirement"]), text(&f["cause"]))).collect()
}

fn is_not_mended(against: &Value) {
    assert_eq!(against["totals"]["mended"], 0, "{}", against["totals"]);
    let closed = closed(against);
    assert!(!closed.is_empty(), "{against}");
    assert!(closed.iter().all(|(_, cause)| cause == "record"), "{closed:?}");
    assert_eq!(against["totals"]["record_gone"], closed.len());
    let lost = &against["vessels"][0]["records_gone"];
    assert!(lost[0]["file"].as_str().unwrap().ends_with(RECORD), "{lost}");
}

#[test]
fn what_the_officer_found_is_not_mended_by_losing_the_record() {
    let folder = tempfile::tempdir().unwrap();
    let folder = folder.path();
    heron(folder);
    let first = at(folder, "1.json");
    audit(folder, "2026-11-28", &["--record", &first]);
    let record = folder.join("v").join(RECORD);
    let text = std::fs::read_to_string(&record).unwrap();
    std::fs::remove_file(&record).unwrap();
    is_not_mended(&against(folder, "2026-11-29", &first));
    let page = audit(folder, "2026-11-29", &["--against", &first]).stdout;
    assert!(page.lines().all(|line| line.chars().count() <= 80));
    let section = page.split("\n\n").nth(1).unwrap();
    let own: Vec<_> = section.lines().skip_while(|l| !l.contains("Stillwater Heron")).collect();
    assert!(own[1].trim_start().starts_with("! the inspection record"), "{section}");
    assert!(flat(section).contains("laid over then, is not laid over now"), "{section}");
    assert!(section.contains("? not put right, only without the record"), "{section}");
    let html = audit(folder, "2026-11-29", &["--against", &first, "--format", "html"]).stdout;
    assert!(html.contains("is not laid over now"));
    // A record that is there and broken is no other thing.
    std::fs::write(&record, "format: inspection/1\nvessel: [\n").unwrap();
    is_not_mended(&against(folder, "2026-11-29", &first));
    // Nor is one that is there with other words of the same day.
    std::fs::write(&record, text.replace("missing: yes", "condition: serviceable")).unwrap();
    let other = against(folder, "2026-11-29", &first);
    assert_eq!(other["totals"]["mended"], 0, "{other}");
    assert_eq!(other["vessels"][0]["records_gone"][0]["changed"], true);
    // Untouched under another name it is the same record.
    std::fs::remove_file(&record).unwrap();
    std::fs::write(folder.join("v/inspections/other.yaml"), &text).unwrap();
    let same = against(folder, "2026-11-29", &first);
    assert_eq!(same["vessels"][0]["records_gone"], json!([]));
    assert_eq!(closed(&same), []);
}

#[test]
fn a_new_name_does_not_shake_off_what_was_found_under_the_old_one() {
    let folder = tempfile::tempdir().unwrap();
    let folder = folder.path();
    heron(folder);
    let first = at(folder, "1.json");
    audit(folder, "2026-11-28", &["--record", &first]);
    let file = folder.join("v/stillwater-heron.yaml");
    let text = std::fs::read_to_string(&file).unwrap();
    std::fs::write(&file, text.replace("Stillwater Heron", "Brook Egret")).unwrap();
    is_not_mended(&against(folder, "2026-11-29", &first));
}

#[test]
fn what_was_put_right_after_the_record_is_mended_though_the_record_is_gone() {
    let folder = tempfile::tempdir().unwrap();
    let folder = folder.path();
    heron(folder);
    let first = at(folder, "1.json");
    audit(folder, "2026-11-28", &["--record", &first]);
    std::fs::remove_file(folder.join("v").join(RECORD)).unwrap();
    let file = folder.join("v/stillwater-heron.yaml");
    let text = std::fs::read_to_string(&file).unwrap();
    let text = text.replace("on: 2026-11-10", "on: 2026-12-01");
    std::fs::write(&file, text).unwrap();
    let against = against(folder, "2026-12-02", &first);
    assert!(closed(&against).iter().any(|(_, cause)| cause == "vessel"), "{against}");
}

#[test]
fn when_the_record_comes_back_the_fault_is_as_old_as_it_was() {
    let folder = tempfile::tempdir().unwrap();
    let folder = folder.path();
    heron(folder);
    let [first, second, third, fourth] = ["1", "2", "3", "4"].map(|name| at(folder, name));
    audit(folder, "2026-11-28", &["--record", &first]);
    let (record, aside) = (folder.join("v").join(RECORD), folder.join("aside"));
    std::fs::rename(&record, &aside).unwrap();
    audit(folder, "2026-11-29", &["--against", &first, "--record", &second]);
    let page = audit(folder, "2026-11-30", &["--against", &second, "--record", &third]).stdout;
    let expected = "missing then already is still not laid over; it had found:";
    assert!(flat(&page).contains(expected), "{page}");
    assert_eq!(run::kitmuster(&["verify", &third]).status, 0);
    std::fs::rename(&aside, &record).unwrap();
    let flags = ["--against", &*third, "--record", &fourth];
    let page = flat(&audit(folder, "2026-12-01", &flags).stdout);
    assert!(page.contains("open again, first found open on 2026-11-28"), "{page}");
    let pliers = |path: &str| {
        let record = value(path);
        let findings = record["vessels"][0]["profiles"][0]["findings"].as_array().unwrap();
        let open = findings.iter().filter_map(|f| f["open_since"].as_str().map(str::to_owned));
        open.collect::<Vec<_>>()
    };
    assert_eq!(pliers(&fourth), pliers(&first));
}

#[test]
fn what_is_found_anew_while_the_record_is_missing_is_as_old_as_that() {
    let folder = tempfile::tempdir().unwrap();
    let folder = folder.path();
    heron(folder);
    let [first, second, third] = ["1", "2", "3"].map(|name| at(folder, name));
    audit(folder, "2026-11-28", &["--record", &first]);
    std::fs::remove_file(folder.join("v").join(RECORD)).unwrap();
    audit(folder, "2026-11-29", &["--against", &first, "--record", &second]);
    let file = folder.join("v/stillwater-heron.yaml");
    let text = std::fs::read_to_string(&file).unwrap();
    let broken = text.replace("overall: 11 1/2 in", "overall: 11 1/2 in\n    condition: broken");
    assert_ne!(text, broken);
    std::fs::write(&file, broken).unwrap();
    audit(folder, "2026-11-30", &["--against", &second, "--record", &third]);
    let against = against(folder, "2026-12-01", &third);
    let findings = against["vessels"][0]["findings"].as_array().unwrap();
    let pliers = findings.iter().find(|f| f["requirement"] == "pliers").unwrap();
    assert_eq!(
        (&pliers["fate"], &pliers["open_since"]),
        (&json!("still-open"), &json!("2026-11-30"))
    );
}

#[test]
fn of_the_records_of_today_only_other_words_of_the_lost_one_are_left_out() {
    let folder = tempfile::tempdir().unwrap();
    let folder = folder.path();
    heron(folder);
    let first = at(folder, "1.json");
    audit(folder, "2026-11-28", &["--record", &first]);
    let record = folder.join("v").join(RECORD);
    std::fs::remove_file(&record).unwrap();
    let laid = |path: &Path, on: &str, found: &str| {
        let head = format!("format: inspection/1\nvessel: Stillwater Heron\non: {on}\n");
        std::fs::write(path, format!("{head}figures: measured\nfound: [{found}]\n")).unwrap();
        against(folder, "2026-12-02", &first)
    };
    let cause = |against: &Value, requirement: &str| {
        let findings = against["vessels"][0]["findings"].as_array().unwrap();
        let found = findings.iter().find(|f| f["requirement"] == requirement);
        found.map(|f| (f["fate"].clone(), f["cause"].clone()))
    };
    let missing = "{ mark: BC-1, missing: yes }";
    // The lost one had seen the bolt cutters: in its place they are gone.
    let changed = laid(&record, "2026-11-27", missing);
    assert_eq!(cause(&changed, "bolt-cutters"), Some((json!("opened"), json!("record"))));
    // Somebody came on another day.
    let back = laid(&record, "2026-12-01", "{ mark: PL-1, condition: serviceable }");
    assert_eq!(cause(&back, "pliers"), Some((json!("closed"), json!("vessel"))));
    // Somebody else came on the same day.
    std::fs::remove_file(&record).unwrap();
    let other = laid(&folder.join("v/inspections/other.yaml"), "2026-11-27", missing);
    assert_eq!(cause(&other, "bolt-cutters"), Some((json!("opened"), json!("vessel"))));
}
