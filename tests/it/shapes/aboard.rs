//! What counts as aboard: partial lists, lots, who has a tool, its state and
//! its days.

use super::by;
use crate::outfit::{DAY, Judged, Outfit, vessel};

const PLIERS: &str = "{ mark: PL-1, kind: pliers, overall: 11 in }";

fn plain(vessel: &Outfit) -> Judged {
    by("plain.yaml", vessel)
}

/// The finding on pliers with these further words on the pair.
fn pliers(rest: &str) -> Judged {
    plain(&vessel("5 ft").with(&[format!("{{ mark: PL-1, kind: pliers, overall: 11 in{rest} }}")]))
}

#[test]
fn what_a_partial_list_does_not_name_may_be_aboard() {
    let whole = plain(&vessel("5 ft"));
    assert_eq!(
        (whole.outcome("pliers"), whole.codes("pliers")),
        ("not-met", vec!["nothing-aboard"])
    );
    let listed_only = vessel("5 ft").set("covers", "listed things only");
    let partial = plain(&listed_only);
    assert_eq!(
        (partial.outcome("pliers"), partial.codes("pliers")),
        ("cannot-tell", vec!["not-listed"])
    );
    assert_eq!(plain(&listed_only.clone().with(&[PLIERS])).outcome("pliers"), "met");
}

#[test]
fn what_was_sought_and_not_found_is_not_aboard() {
    let listed_only = vessel("5 ft").set("covers", "listed things only");
    for key in ["sought and not found", "all seen"] {
        let judged = plain(&listed_only.clone().set(key, "[needle-nose pliers]"));
        assert_eq!(judged.outcome("pliers"), "not-met", "{key}");
        assert_eq!(judged.outcome("gags"), "cannot-tell", "{key}");
    }
}

#[test]
fn a_listed_short_tool_alone_leaves_a_partial_list_open() {
    let short = ["{ mark: PL-1, kind: pliers, overall: 6 in }"];
    assert_eq!(plain(&vessel("5 ft").with(&short)).outcome("pliers"), "not-met");
    let partial = vessel("5 ft").set("covers", "listed things only").with(&short);
    assert_eq!(plain(&partial).outcome("pliers"), "cannot-tell");
    assert_eq!(plain(&partial.set("all seen", "[pliers]")).outcome("pliers"), "not-met");
}

#[test]
fn a_lot_may_have_broken_ones_in_it() {
    let gags = |count: &str, broken: &str| {
        let lot =
            format!("{{ mark: CG, kind: canine mouth gag, count: {count}, broken: {broken} }}");
        plain(&vessel("5 ft").with(&[lot]))
    };
    assert_eq!(gags("3", "0").outcome("gags"), "met");
    let one_broken = gags("3", "1");
    assert_eq!(one_broken.outcome("gags"), "not-met");
    assert_eq!(one_broken.codes("gags"), ["too-few", "not-serviceable"]);
    assert_eq!(gags("4", "1").outcome("gags"), "met");
    assert_eq!(gags("3", "3").outcome("gags"), "not-met");
}

#[test]
fn only_what_is_aboard_counts() {
    for (place, outcome, code) in [
        ("ashore", "not-met", "not-aboard"),
        ("lost", "not-met", "missing"),
        ("unknown", "cannot-tell", "whereabouts-unknown"),
    ] {
        let judged = pliers(&format!(", where: {place}"));
        assert_eq!(
            (judged.outcome("pliers"), judged.codes("pliers")),
            (outcome, vec![code]),
            "{place}"
        );
    }
    assert_eq!(pliers(", where: aboard").outcome("pliers"), "met");
}

#[test]
fn a_lent_tool_is_away_on_the_days_of_the_loan() {
    let lent = |from: &str, until: &str| {
        pliers(&format!(", where: {{ lent to: Salt Heron, from: {from}, until: {until} }}"))
    };
    let away = lent("2026-02-20", "2026-03-02");
    assert_eq!((away.outcome("pliers"), away.codes("pliers")), ("not-met", vec!["not-aboard"]));
    assert_eq!(away.finding("pliers")["reasons"][0]["lent_to"], "Salt Heron");
    assert_eq!(lent("2026-02-20", "2026-03-01").outcome("pliers"), "met");
    assert_eq!(lent("2026-03-03", "2026-03-09").outcome("pliers"), "met");
}

#[test]
fn a_loan_that_begins_during_the_trip_spoils_it() {
    let tool = "{ mark: PL-1, kind: pliers, overall: 11 in, where: { lent to: Salt Heron, from: 2026-03-05 } }";
    let until = |back: &str| {
        let arguments = ["--profile", &super::profile("plain.yaml"), "--on", DAY, "--return", back];
        vessel("5 ft").with(&[tool]).check(&arguments).outcome("pliers").to_owned()
    };
    assert_eq!(until("2026-03-04"), "met");
    assert_eq!(until("2026-03-05"), "not-met");
}

#[test]
fn the_condition_is_said_or_unknown() {
    assert_eq!(pliers(", condition: broken").codes("pliers"), ["not-serviceable"]);
    assert_eq!(pliers(", condition: unknown").outcome("pliers"), "cannot-tell");
    let undeclared =
        vessel("5 ft").set("declared", "{ by: A. Holder, on: 2026-01-05 }").with(&[PLIERS]);
    let judged = plain(&undeclared);
    assert_eq!(
        (judged.outcome("pliers"), judged.codes("pliers")),
        ("cannot-tell", vec!["condition-unknown"])
    );
}

#[test]
fn a_thing_valid_until_a_day_is_valid_on_it() {
    assert_eq!(pliers(", expires: 2026-03-02").outcome("pliers"), "met");
    let lapsed = pliers(", expires: 2026-03-01");
    assert_eq!((lapsed.outcome("pliers"), lapsed.codes("pliers")), ("not-met", vec!["expired"]));
    assert_eq!(lapsed.finding("pliers")["reasons"][0]["since"], "2026-03-02");
}

#[test]
fn what_expires_at_sea_says_on_which_day() {
    let tool = "{ mark: PL-1, kind: pliers, overall: 11 in, expires: 2026-03-04 }";
    let until = |back: &str| {
        vessel("5 ft").with(&[tool]).check(&[
            "--profile",
            &super::profile("plain.yaml"),
            "--on",
            DAY,
            "--return",
            back,
        ])
    };
    assert_eq!(until("2026-03-04").outcome("pliers"), "met");
    let late = until("2026-03-05");
    assert_eq!(
        (late.outcome("pliers"), late.codes("pliers")),
        ("not-met", vec!["lapses-during-trip"])
    );
    assert_eq!(late.finding("pliers")["reasons"][0]["day"], "2026-03-05");
}

#[test]
fn a_tool_is_not_aboard_before_it_was_acquired() {
    assert_eq!(pliers(", acquired: 2026-03-02").outcome("pliers"), "met");
    assert_eq!(pliers(", acquired: 2026-03-03").outcome("pliers"), "not-met");
}

#[test]
fn ready_until_is_the_last_day_with_everything_met() {
    let kit = [
        "{ mark: LC-1, kind: long-handled line cutter, handle: 6 ft, expires: 2026-05-31 }",
        "{ mark: BL-1, kind: set of replacement blades, fits: [LC-1], expires: 2026-04-30 }",
    ];
    let judged = by("spares.yaml", &vessel("5 ft").with(&kit));
    assert_eq!(
        judged.only()["ready_until"],
        serde_json::json!({ "state": "day", "day": "2026-04-30" })
    );
    let endless = kit.map(|tool| crate::outfit::without(tool, "expires"));
    let judged = by("spares.yaml", &vessel("5 ft").with(&endless));
    assert_eq!(judged.only()["ready_until"]["state"], "no-end");
    assert_eq!(by("spares.yaml", &vessel("5 ft")).only()["ready_until"]["state"], "none");
}
