//! What a vessel's file can say of one dimension: several readings, how each
//! came about, the tape's error, changes that retire them.

use super::by;
use crate::outfit::{DAY, Judged, vessel};

/// The kit's cutter, at 4 ft 3 in of freeboard: 6 ft 4 1/2 in is asked.
fn cutter(rest: &str) -> Judged {
    let tool = format!("{{ mark: LC-1, kind: long-handled line cutter, {rest} }}");
    by("plain.yaml", &vessel("4 ft 3 in").with(&[tool]))
}

#[test]
fn readings_on_both_sides_of_a_limit_dispute_it() {
    let disputed = cutter(
        "handle: [{ value: 6 ft 8 in, how: label }, { value: 6 ft 3 in, by: A. Holder, on: 2026-01-05, how: measured }]",
    );
    assert_eq!(
        (disputed.outcome("cutter"), disputed.codes("cutter")),
        ("cannot-tell", vec!["disputed"])
    );
    let readings = disputed.finding("cutter")["reasons"][0]["readings"].as_array().unwrap();
    let shown: Vec<_> = readings.iter().map(|reading| &reading["has"]["nanometres"]).collect();
    assert_eq!(shown, [80 * 25_400_000_i64, 75 * 25_400_000]);
    assert_eq!(readings[1]["by"], "A. Holder");
    assert_eq!(
        cutter("handle: [{ value: 6 ft 8 in }, { value: 6 ft 4 1/2 in }]").outcome("cutter"),
        "met"
    );
    assert_eq!(
        cutter("handle: [{ value: 6 ft 4 in }, { value: 6 ft 1 in }]").outcome("cutter"),
        "not-met"
    );
}

#[test]
fn readings_of_a_feature_can_be_disputed_too() {
    let hoist = |readings: &str| {
        super::with(
            "features.yaml",
            &format!("{{ mark: T-1, kind: small hoist, frame-of-pvc: {readings} }}"),
            "must-not",
        )
    };
    assert_eq!(hoist("[{ value: no }, { value: yes }]"), "cannot-tell");
    assert_eq!(hoist("[{ value: no }, { value: no }]"), "met");
    assert_eq!(hoist("[{ value: yes }, { value: yes }]"), "not-met");
}

#[test]
fn no_tolerance_is_granted_that_the_rule_does_not_grant() {
    assert_eq!(cutter("handle: 6 ft 4 1/2 in").outcome("cutter"), "met");
    assert_eq!(cutter("handle: 6 ft 4 31/64 in").outcome("cutter"), "not-met");
}

#[test]
fn the_tapes_error_counts_on_both_sides() {
    let read = |value: &str| {
        cutter(&format!("handle: {{ value: {value}, error: 1/8 in }}")).outcome("cutter").to_owned()
    };
    assert_eq!(read("6 ft 4 5/8 in"), "met");
    assert_eq!(read("6 ft 4 1/2 in"), "cannot-tell");
    assert_eq!(read("6 ft 4 3/8 in"), "cannot-tell");
    assert_eq!(read("6 ft 4 1/4 in"), "not-met");
}

#[test]
fn with_trust_in_measurements_alone_a_label_is_no_figure() {
    let trusting = |handle: &str, trust: &str| {
        let tool = format!("{{ mark: LC-1, kind: long-handled line cutter, handle: {handle} }}");
        let arguments = ["--profile", &super::profile("plain.yaml"), "--on", DAY, "--trust", trust];
        vessel("4 ft 3 in").with(&[tool]).check(&arguments)
    };
    for how in ["label", "stated"] {
        let handle = format!("{{ value: 7 ft, how: {how} }}");
        assert_eq!(trusting(&handle, "all").outcome("cutter"), "met", "{how}");
        let doubted = trusting(&handle, "measured");
        assert_eq!(
            (doubted.outcome("cutter"), doubted.codes("cutter")),
            ("cannot-tell", vec!["unmeasured"]),
            "{how}"
        );
    }
    let both = "[{ value: 7 ft, how: measured }, { value: 6 ft, how: label }]";
    assert_eq!(trusting(both, "all").outcome("cutter"), "cannot-tell");
    assert_eq!(trusting(both, "measured").outcome("cutter"), "met");
}

#[test]
fn plain_figures_are_stated_unless_the_declaration_says_measured() {
    let declared = |figures: &str| {
        let tool = "{ mark: LC-1, kind: long-handled line cutter, handle: 7 ft }";
        let arguments =
            ["--profile", &super::profile("plain.yaml"), "--on", DAY, "--trust", "measured"];
        vessel("4 ft 3 in")
            .set(
                "declared",
                &format!("{{ by: A. Holder, on: 2026-01-05, condition: serviceable{figures} }}"),
            )
            .set("freeboard", "{ value: 4 ft 3 in, how: measured }")
            .with(&[tool])
            .check(&arguments)
            .outcome("cutter")
            .to_owned()
    };
    assert_eq!(declared(", figures: measured"), "met");
    assert_eq!(declared(", figures: label"), "cannot-tell");
    assert_eq!(declared(""), "cannot-tell");
}

#[test]
fn a_freeboard_that_was_only_stated_is_doubted_too() {
    let freeboard = |how: &str| {
        let tool = "{ mark: LC-1, kind: long-handled line cutter, handle: 7 ft }";
        let arguments =
            ["--profile", &super::profile("plain.yaml"), "--on", DAY, "--trust", "measured"];
        vessel(&format!("{{ value: 4 ft 3 in, how: {how} }}"))
            .with(&[tool])
            .check(&arguments)
            .outcome("cutter")
            .to_owned()
    };
    assert_eq!(freeboard("measured"), "met");
    assert_eq!(freeboard("stated"), "cannot-tell");
}

const OLD_AND_NEW: &str =
    "handle: [{ value: 6 ft, on: 2026-01-05 }, { value: 7 ft, on: 2026-02-01 }]";

#[test]
fn a_recorded_change_retires_the_readings_before_it() {
    assert_eq!(cutter(OLD_AND_NEW).codes("cutter"), ["disputed"]);
    for what in ["lengthened", "head replaced"] {
        let changed =
            cutter(&format!("{OLD_AND_NEW}, changes: [{{ what: {what}, on: 2026-01-10 }}]"));
        assert_eq!(changed.outcome("cutter"), "met", "{what}");
    }
    let repaired =
        cutter(&format!("{OLD_AND_NEW}, changes: [{{ what: repaired, on: 2026-01-10 }}]"));
    assert_eq!(repaired.codes("cutter"), ["disputed"]);
}

#[test]
fn after_a_change_somebody_has_to_measure_again() {
    let lengthened = "changes: [{ what: lengthened, on: 2026-02-10 }]";
    let stale = cutter(&format!("handle: {{ value: 7 ft, on: 2026-02-01 }}, {lengthened}"));
    assert_eq!(
        (stale.outcome("cutter"), stale.codes("cutter")),
        ("cannot-tell", vec!["unmeasured"])
    );
    let fresh = cutter(&format!("handle: {{ value: 7 ft, on: 2026-02-11 }}, {lengthened}"));
    assert_eq!(fresh.outcome("cutter"), "met");
}

#[test]
fn the_dimension_that_a_limit_names_is_the_one_that_counts() {
    let reach = cutter("reach: 9 ft, overall: 9 ft");
    assert_eq!(
        (reach.outcome("cutter"), reach.codes("cutter")),
        ("cannot-tell", vec!["unmeasured"])
    );
    assert_eq!(reach.finding("cutter")["reasons"][0]["attributes"], serde_json::json!(["handle"]));
    assert_eq!(cutter("handle: 7 ft, reach: 1 ft").outcome("cutter"), "met");
}

#[test]
fn metric_and_customary_figures_meet_the_same_limit() {
    assert_eq!(cutter("handle: 1943.1 mm").outcome("cutter"), "met");
    assert_eq!(cutter("handle: \"1,9431 m\"").outcome("cutter"), "met");
    assert_eq!(cutter("handle: 1.943 m").outcome("cutter"), "not-met");
}
