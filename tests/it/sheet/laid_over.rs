//! Papers with an inspection record laid over the vessel.

use super::{all, parsed, text_of};
use crate::run::kitmuster;

const VESSEL: &str = "vessels/stillwater-heron.yaml";
const RECORD: &str = "vessels/inspections/stillwater-heron-2026-11-27.yaml";

fn paper(arguments: &[&str]) -> scraper::Html {
    let ran = kitmuster(&[&["sheet", VESSEL], arguments].concat());
    assert_eq!((ran.status, ran.stderr.as_str()), (0, ""), "{arguments:?}");
    parsed(&ran.stdout)
}

#[test]
fn a_record_that_is_laid_over_is_told_and_changes_what_is_to_be_done() {
    let alone = text_of(all(&paper(&["--for", "skipper"]), "main")[0]);
    assert!(alone.contains("✓ ready"), "{alone}");
    assert!(!alone.contains("laid over"), "{alone}");
    let page = paper(&["--for", "skipper", "--inspection", RECORD]);
    let text = text_of(all(&page, "main")[0]);
    let check = ["check", VESSEL, "--inspection", RECORD, "--format", "json"];
    let check = kitmuster(&check).json();
    assert_eq!(check["verdict"], "not-ready");
    assert!(text.contains("✕ not ready"), "{text}");
    assert!(text.contains(&format!("laid over the list: {RECORD}")), "{text}");
    let jobs: Vec<_> = all(&page, ".jobs li b").into_iter().map(text_of).collect();
    let steps = check["profiles"][0]["way_to_ready"]["steps"].as_array().unwrap();
    assert!(!steps.is_empty());
    for step in steps {
        let step = step["text"].as_str().unwrap();
        assert!(jobs.iter().any(|job| job == step), "{step}: {jobs:?}");
    }
    // The hook in the tool chest is empty: nothing to look at there.
    let eyed: Vec<_> = all(&page, ".eyed b").into_iter().map(text_of).collect();
    assert!(!eyed.contains(&"PL-1".to_owned()), "{eyed:?}");
    let met: String = all(&page, ".met li").into_iter().map(text_of).collect();
    assert!(!met.contains("PL-1"), "{met}");
}

#[test]
fn the_inspectors_sheet_tells_the_record_and_what_it_found_missing() {
    let page = paper(&["--inspection", RECORD]);
    let text = text_of(all(&page, "main")[0]);
    assert!(text.contains(&format!("laid over the list: {RECORD}")), "{text}");
    let rows: Vec<_> = all(&page, ".thing").into_iter().map(text_of).collect();
    let row = rows.iter().find(|row| row.contains("PL-1 ")).unwrap();
    assert!(row.contains("listed as lost"), "{row}");
}

#[test]
fn a_record_form_can_be_written_with_an_earlier_record_laid_over() {
    let ran = kitmuster(&["sheet", VESSEL, "--record-form", "--inspection", RECORD]);
    assert_eq!((ran.status, ran.stderr.as_str()), (0, ""));
    assert!(ran.stdout.contains("laid over the list:"), "{}", ran.stdout);
}

#[test]
fn a_record_of_another_vessel_is_refused() {
    let ran = kitmuster(&["sheet", "vessels/marlow-tern.yaml", "--inspection", RECORD]);
    assert_eq!((ran.status, ran.stdout.as_str()), (2, ""));
    assert!(ran.stderr.contains("is of another vessel"), "{}", ran.stderr);
}
