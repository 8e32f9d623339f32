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
        "handle: [{ value: 6 ft 8 in, how: label }, { value: 6 ft 3 in, by: A. Holder, on: 2026-01-05, how: stated }]",
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

/// What was measured decides against a label, whichever is the older; both are
/// shown, whoever is right.
#[test]
fn what_was_measured_decides_against_a_label() {
    let told = |judged: &Judged| judged.json["notices"][0]["text"].as_str().unwrap().to_owned();
    for (on, labelled) in [("2026-01-05", "2026-02-05"), ("2026-02-05", "2026-01-05")] {
        let both = |measured: &str, label: &str| {
            cutter(&format!(
                "handle: [{{ value: {label}, how: label, on: {labelled} }}, \
                 {{ value: {measured}, on: {on}, how: measured }}]"
            ))
        };
        let short = both("6 ft 3 in", "6 ft 8 in");
        assert_eq!(
            (short.outcome("cutter"), short.codes("cutter")),
            ("not-met", vec!["too-short-for-rail"])
        );
        let reason = &short.finding("cutter")["reasons"][0];
        assert_eq!(reason["has"]["nanometres"], 75 * 25_400_000_i64);
        assert_eq!(reason["readings"][0]["has"]["nanometres"], 80 * 25_400_000_i64);
        assert_eq!(reason["readings"][0]["how"], "label");
        assert!(reason["text"].as_str().unwrap().contains("6 ft 8 in"), "{reason}");
        let long = both("6 ft 8 in", "6 ft 3 in");
        assert_eq!((long.outcome("cutter"), long.notices()[0]), ("met", "readings-differ"));
        assert!(told(&long).contains("6 ft 3 in") && told(&long).contains("6 ft 8 in"));
    }
}

/// A pole does not grow: of two days the later decides if it is the worse.
#[test]
fn a_later_measurement_decides_only_if_it_is_the_worse() {
    let measured = |first: &str, second: &str| {
        cutter(&format!(
            "handle: [{{ value: {first}, on: 2026-01-05 }}, {{ value: {second}, on: 2026-02-01 }}]"
        ))
    };
    assert_eq!(measured("7 ft", "6 ft").codes("cutter"), ["too-short-for-rail"]);
    assert_eq!(measured("6 ft", "7 ft").codes("cutter"), ["disputed"]);
    assert_eq!(measured("7 ft", "6 ft 5 in").outcome("cutter"), "met");
    // Without a day it is older than any that has one.
    let undated = "handle: [{ value: 6 ft, by: B. Mate }, { value: 7 ft, on: 2026-02-01 }]";
    assert_eq!(cutter(undated).codes("cutter"), ["disputed"]);
    let undated = "handle: [{ value: 7 ft, by: B. Mate }, { value: 6 ft, on: 2026-02-01 }]";
    assert_eq!(cutter(undated).outcome("cutter"), "not-met");
    // Of one day neither is the later.
    let one_day = "handle: [{ value: 7 ft, on: 2026-02-01 }, { value: 6 ft, on: 2026-02-01 }]";
    assert_eq!(cutter(one_day).codes("cutter"), ["disputed"]);
}

/// A freeboard that was measured decides against one that was stated; two that
/// were measured stay rivals, since it changes with the load.
#[test]
fn a_measured_freeboard_decides_against_a_stated_one() {
    let at = |second: &str| {
        let freeboard =
            format!("[{{ value: 4 ft 3 in, on: 2026-01-05, how: measured }}, {second}]");
        let tool = "{ mark: LC-1, kind: long-handled line cutter, handle: 6 ft 5 in }";
        by("plain.yaml", &vessel(&freeboard).with(&[tool]))
    };
    let stated = at("{ value: 5 ft, how: stated, on: 2026-02-01 }");
    assert_eq!(stated.outcome("cutter"), "met");
    assert!(stated.ran.stdout.contains("5 ft"));
    assert_eq!(
        at("{ value: 5 ft, how: measured, on: 2026-02-01 }").outcome("cutter"),
        "cannot-tell"
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
    assert_eq!(trusting(both, "all").outcome("cutter"), "met");
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
