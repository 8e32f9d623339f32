//! Features, alternatives, rival readings, old gear, statements, and variety:
//! `features.yaml`, `alternatives.yaml`, `variety.yaml`.

use super::{by, kit, outcomes};
use crate::outfit::gear::appendix_f as f;
use crate::outfit::{but, plus, vessel, without};

const FEATURES: &str = "features.yaml";

#[test]
fn a_feature_may_be_one_that_must_not_be_there() {
    outcomes(
        FEATURES,
        "must-not",
        &[
            ("{ mark: T-1, kind: small hoist, frame-of-pvc: no }", "met"),
            ("{ mark: T-1, kind: small hoist, frame-of-pvc: yes }", "not-met"),
            ("{ mark: T-1, kind: small hoist }", "cannot-tell"),
            ("{ mark: T-1, kind: small hoist, frame-of-pvc: unknown }", "cannot-tell"),
        ],
    );
}

#[test]
fn a_choice_is_one_of_the_words() {
    outcomes(
        FEATURES,
        "choice",
        &[
            ("{ mark: T-1, kind: dog chew bone, material: nylon }", "met"),
            ("{ mark: T-1, kind: dog chew bone, material: Thermoplastic }", "met"),
            ("{ mark: T-1, kind: dog chew bone, material: wood }", "not-met"),
            ("{ mark: T-1, kind: dog chew bone }", "cannot-tell"),
        ],
    );
}

#[test]
fn a_document_is_asked_for_in_an_edition() {
    for (edition, expected) in [
        ("edition: \"2019\"", "met"),
        ("edition: \"2008\"", "not-met"),
        ("form: paper", "cannot-tell"),
    ] {
        let document = format!("{{ kind: careful-release document, {edition} }}");
        let judged = by(FEATURES, &vessel("5 ft").carrying(&[document]));
        assert_eq!(judged.outcome("name"), expected, "{edition}");
    }
}

#[test]
fn alternatives_inside_an_alternative_hold_group_by_group() {
    outcomes(
        FEATURES,
        "nested",
        &[
            ("{ mark: T-1, kind: boat hook, end: j, material: 316L }", "met"),
            ("{ mark: T-1, kind: boat hook, end: j, material: 304L }", "met"),
            ("{ mark: T-1, kind: boat hook, end: j, material: aluminium }", "not-met"),
            ("{ mark: T-1, kind: boat hook, end: boat hook, material: aluminium }", "met"),
            ("{ mark: T-1, kind: boat hook, end: boat hook }", "met"),
            ("{ mark: T-1, kind: boat hook, end: gaff, material: 316L }", "not-met"),
            ("{ mark: T-1, kind: boat hook, end: j }", "cannot-tell"),
            ("{ mark: T-1, kind: boat hook, material: 316L }", "cannot-tell"),
        ],
    );
}

/// Of several groups none of which holds it is said that no alternative fits;
/// of one group alone, what is wrong with the tool.
#[test]
fn what_is_told_of_alternatives_none_of_which_holds() {
    let several = kit(FEATURES, &["{ mark: T-1, kind: boat hook, end: gaff, material: 316L }"]);
    assert_eq!(several.codes("nested"), ["no-alternative-holds"]);
    let steel = kit(FEATURES, &["{ mark: T-1, kind: boat hook, end: j, material: aluminium }"]);
    assert_eq!(steel.codes("nested"), ["no-alternative-holds"]);
    let one = kit(FEATURES, &["{ mark: T-1, kind: tire, no-steel-belts: no }"]);
    assert_eq!(one.codes("one-group"), ["out-of-specification"]);
}

#[test]
fn rival_readings_that_differ_on_a_vessel_leave_it_open() {
    outcomes(
        FEATURES,
        "rival",
        &[
            ("{ mark: T-1, kind: dip net, mesh: 1 1/2 in }", "met"),
            ("{ mark: T-1, kind: dip net, mesh: 2 in }", "cannot-tell"),
            ("{ mark: T-1, kind: dip net, mesh: 3 1/16 in }", "not-met"),
            ("{ mark: T-1, kind: dip net }", "cannot-tell"),
        ],
    );
    let judged = kit(FEATURES, &["{ mark: T-1, kind: dip net, mesh: 2 in }"]);
    assert_eq!(judged.codes("rival"), ["wording-disputed"]);
}

#[test]
fn old_gear_is_tolerated_if_it_was_acquired_before_the_day() {
    outcomes(
        FEATURES,
        "old-gear",
        &[
            ("{ mark: T-1, kind: pliers, overall: 8 in, acquired: 2019-05-31 }", "met"),
            ("{ mark: T-1, kind: pliers, overall: 8 in, acquired: 2019-06-01 }", "not-met"),
            ("{ mark: T-1, kind: pliers, overall: 8 in }", "cannot-tell"),
            ("{ mark: T-1, kind: pliers, overall: 11 in, acquired: 2025-06-01 }", "met"),
        ],
    );
}

#[test]
fn a_statement_of_conformity_settles_what_no_tape_can_show_and_no_length() {
    let whole = "{ mark: T-1, kind: short-handled dehooker for external hooks, shaft: 16 in, material: 316L, blunt-end: yes }";
    let to =
        |clause: &str| format!("[{{ to: {clause}, on: 2026-01-05, by: Port Ansel Chandlery }}]");
    let unsaid = without(whole, "material");
    let stated = plus(&unsaid, "conforms", &to("clause 7"));
    outcomes(
        FEATURES,
        "statement",
        &[
            (whole, "met"),
            (&unsaid, "cannot-tell"),
            (&stated, "met"),
            (&plus(&unsaid, "conforms", &to("clause 8")), "cannot-tell"),
            (&plus(&unsaid, "conforms", &to("\"Clause, 7\"")), "met"),
            (&plus(&unsaid, "conforms", &to("CLAUSE7")), "met"),
            (&plus(&unsaid, "conforms", &to("clause-7")), "cannot-tell"),
            (&plus(&unsaid, "conforms", &to("7")), "cannot-tell"),
            (&without(&stated, "shaft"), "cannot-tell"),
            (&without(&stated, "blunt-end"), "cannot-tell"),
            (&but(&stated, "shaft", "15 in"), "not-met"),
            (&plus(&stated, "material", "carbon steel"), "not-met"),
        ],
    );
}

const ALTERNATIVES: &str = "alternatives.yaml";

#[test]
fn one_of_several_alternatives_has_limits_of_its_own() {
    outcomes(
        ALTERNATIVES,
        "support",
        &[
            ("{ mark: T-1, kind: tire, no-steel-belts: yes }", "met"),
            ("{ mark: T-1, kind: tire, no-steel-belts: no }", "not-met"),
            ("{ mark: T-1, kind: boat cushion, sized-for-turtles: yes }", "met"),
            ("{ mark: T-1, kind: boat cushion, sized-for-turtles: no }", "not-met"),
            ("{ mark: T-1, kind: coil of rope }", "met"),
            ("{ mark: T-1, kind: pliers }", "not-met"),
        ],
    );
}

#[test]
fn an_alternative_may_be_open_only_on_some_vessels() {
    let case = "{ kind: careful-release document, kept: waterproof case }";
    let on = |features: &str| {
        by(ALTERNATIVES, &vessel("5 ft").set("features", features).carrying(&[case]))
    };
    assert_eq!(on("{ wheelhouse: no }").outcome("document"), "met");
    assert_eq!(on("{ wheelhouse: yes }").outcome("document"), "not-met");
    assert_eq!(on("{}").outcome("document"), "cannot-tell");
    let inside = "{ kind: careful-release document, kept: wheelhouse }";
    assert_eq!(by(ALTERNATIVES, &vessel("5 ft").carrying(&[inside])).outcome("document"), "met");
}

#[test]
fn a_number_of_one_kind_may_come_from_several_lines() {
    let gag = |mark: &str, count: &str| {
        format!("{{ mark: {mark}, kind: canine mouth gag, count: {count} }}")
    };
    assert_eq!(kit(ALTERNATIVES, &[gag("A", "3")]).outcome("three-gags"), "met");
    assert_eq!(kit(ALTERNATIVES, &[gag("A", "1"), gag("B", "2")]).outcome("three-gags"), "met");
    let two = kit(ALTERNATIVES, &[gag("A", "2")]);
    assert_eq!((two.outcome("three-gags"), two.codes("three-gags")), ("not-met", vec!["too-few"]));
}

#[test]
fn what_is_to_be_brought_is_counted() {
    let text = |gags: &str| {
        let judged =
            kit(ALTERNATIVES, &[format!("{{ mark: A, kind: canine mouth gags, count: {gags} }}")]);
        let steps = judged.only()["way_to_ready"]["steps"].as_array().unwrap().clone();
        let step = steps.iter().find(|step| step["requirement"] == "three-gags").cloned();
        step.map_or(String::new(), |step| step["text"].as_str().unwrap().to_owned())
    };
    assert_eq!(text("3"), "");
    assert_eq!(text("2"), "bring a canine mouth gag");
    assert_eq!(text("1"), "bring 2 of: canine mouth gag");
}

#[test]
fn a_number_may_be_made_up_of_several_alternatives() {
    let dip = "{ mark: DN-1, kind: dip net, hoop-inside: 31 in }";
    let hoop = "{ mark: HN-1, kind: collapsible hoop net }";
    assert_eq!(kit(ALTERNATIVES, &[dip, hoop]).outcome("two-nets"), "met");
    assert_eq!(kit(ALTERNATIVES, &[hoop]).outcome("two-nets"), "not-met");
    assert_eq!(
        kit(ALTERNATIVES, &[&but(dip, "hoop-inside", "30 in"), hoop]).outcome("two-nets"),
        "not-met"
    );
}

const VARIETY: &str = "variety.yaml";

fn bone(mark: &str, length: &str) -> String {
    format!("{{ mark: {mark}, kind: dog chew bone, length: {length} }}")
}

#[test]
fn variety_counts_types_and_not_tools() {
    let brush = "{ mark: BR-1, kind: wooden-handled brush without bristles }";
    let couplings = "{ mark: PC, kind: PVC splice coupling, count: 4 }";
    let outcome = |tools: &[&str]| kit(VARIETY, tools).outcome("gags").to_owned();
    assert_eq!(outcome(&[f::BLOCK, couplings]), "met");
    assert_eq!(outcome(&[f::BLOCK, brush]), "not-met");
    assert_eq!(outcome(&[couplings, &but(&but(couplings, "mark", "PD"), "count", "8")]), "not-met");
    assert_eq!(outcome(&[f::BLOCK, &but(couplings, "count", "3")]), "not-met");
    assert_eq!(outcome(&[f::BLOCK, &bone("A", "7 in"), &bone("B", "4 in")]), "met");
    assert_eq!(outcome(&[f::BLOCK, &bone("A", "7 in")]), "not-met");
}

#[test]
fn a_set_is_matched_member_by_member_and_not_in_file_order() {
    // A bone of 5 3/4 in can be the large or the small one.
    for (one, two) in
        [("5 3/4 in", "7 in"), ("7 in", "5 3/4 in"), ("5 3/4 in", "4 in"), ("4 in", "5 3/4 in")]
    {
        let judged = kit(VARIETY, &[f::BLOCK, &bone("A", one), &bone("B", two)]);
        assert_eq!(judged.outcome("gags"), "met", "{one}, {two}");
    }
    for (one, two) in [("4 in", "5 in"), ("7 in", "7 1/2 in")] {
        let judged = kit(VARIETY, &[f::BLOCK, &bone("A", one), &bone("B", two)]);
        assert_eq!(judged.outcome("gags"), "not-met", "{one}, {two}");
    }
}

#[test]
fn a_tool_that_serves_elsewhere_makes_no_type() {
    let wide = but(f::BLOCK, "width", "2 in");
    let couplings = "{ mark: PC, kind: PVC splice coupling, count: 4 }";
    let one = kit(VARIETY, &[&wide, couplings]);
    assert_eq!(one.verdict(), "not-ready");
    let clash = &one.only()["clashes"][0]["requirements"];
    assert_eq!(*clash, serde_json::json!(["gags", "spare-block"]));
    let narrow = but(f::BLOCK, "mark", "WB-2");
    assert_eq!(kit(VARIETY, &[&wide, &narrow, couplings]).verdict(), "ready");
}
