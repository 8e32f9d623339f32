//! What a record says of a tool, a lot or a person, property by property: what
//! is disputed is disputed alone, and nothing that was found is dropped.

use super::laid::{laid, record};
use super::made;
use crate::outfit::{Judged, Outfit, vessel};

const DAY: &str = "2026-02-20";

fn found(lines: &str) -> String {
    record(DAY, &format!("found: [{lines}]"))
}

fn pliers(rest: &str) -> Outfit {
    vessel("5 ft").with(&[format!("{{ mark: PL-1, kind: pliers{rest} }}")])
}

/// Of two expiries it is good up to the lesser for certain, and up to the later
/// perhaps.
#[test]
fn of_two_expiries_the_lesser_is_certain_and_the_later_is_not() {
    let rule = made(&["id: pliers, title: P, carry: 1 pliers"]);
    let read = |day: &str| found(&format!("{{ mark: PL-1, expires: {day} }}"));
    let judged =
        |first: &str, second: &str| laid(&pliers(""), &rule.path, &[&read(first), &read(second)]);
    for (first, second, outcome) in [
        ("2026-03-02", "2026-05-01", "met"),
        ("2026-03-01", "2026-03-02", "cannot-tell"),
        ("2026-02-25", "2026-03-01", "not-met"),
    ] {
        for judged in [judged(first, second), judged(second, first)] {
            assert_eq!(judged.outcome("pliers"), outcome, "{first} or {second}");
        }
    }
    let open = judged("2026-03-01", "2026-03-02");
    assert_eq!(open.codes("pliers"), ["expiry-disputed"]);
    assert_eq!(judged("2026-03-05", "2026-05-01").only()["ready_until"]["day"], "2026-03-05");
    // The tool is otherwise as it was: what is broken is broken.
    let broken = found("{ mark: PL-1, condition: broken, expires: 2026-05-01 }");
    let both = [&broken, &read("2026-03-05")];
    assert_eq!(laid(&pliers(""), &rule.path, &both).codes("pliers"), ["not-serviceable"]);
}

/// Three are there by one count and one by another: one is certain.
#[test]
fn of_two_counts_the_lesser_is_certain() {
    let counts = [found("{ mark: PL-1, count: 1 }"), found("{ mark: PL-1, count: 3 }")];
    for (need, outcome) in [(1, "met"), (2, "cannot-tell"), (3, "cannot-tell"), (4, "not-met")] {
        let rule = made(&[format!("id: pliers, title: P, carry: {need} pliers")]);
        for records in [[&counts[0], &counts[1]], [&counts[1], &counts[0]]] {
            let judged = laid(&pliers(", count: 2"), &rule.path, &records);
            assert_eq!(judged.outcome("pliers"), outcome, "{need}");
        }
    }
}

/// A tool that only an older record names and a later list of the whole kit
/// leaves out is not aboard; nor does a list that is partial rule it out.
#[test]
fn a_later_list_of_everything_rules_out_what_an_older_record_saw() {
    let rule = made(&["id: pliers, title: P, carry: 1 pliers"]);
    let saw = found("{ mark: PL-9, kind: pliers, condition: serviceable }");
    let outcome = |on: &str, covers: &str| {
        let declared = format!("{{ by: A. Holder, condition: serviceable{on} }}");
        let vessel = vessel("5 ft").set("declared", &declared).set("covers", covers);
        laid(&vessel, &rule.path, &[&saw]).outcome("pliers").to_owned()
    };
    assert_eq!(outcome(", on: 2026-02-21", "whole kit"), "not-met");
    assert_eq!(outcome(", on: 2026-02-21", "listed things only"), "met");
    for on in [", on: 2026-02-20", ", on: 2026-02-19", ""] {
        assert_eq!(outcome(on, "whole kit"), "met", "{on}");
    }
}

/// What the list says, said again on its day, and what nobody said.
#[test]
fn a_record_that_repeats_the_list_changes_nothing() {
    let rule = made(&["id: pliers, title: P, carry: 3 pliers, with: { overall: at least 10 in }"]);
    let lot = pliers(", count: 4, broken: 1, overall: 11 in, expires: 2026-05-01").set(
        "declared",
        "{ by: A. Holder, on: 2026-02-20, figures: measured, condition: serviceable }",
    );
    let again =
        found("{ mark: PL-1, kind: pliers, count: 4, overall: 11 in, expires: 2026-05-01 }");
    let plain = laid(&lot, &rule.path, &[]);
    let repeated = laid(&lot, &rule.path, &[&again]);
    assert_eq!(plain.outcome("pliers"), "met");
    assert_eq!((repeated.outcome("pliers"), repeated.verdict()), ("met", "ready"));
    assert_eq!(plain.only()["ready_until"], repeated.only()["ready_until"]);
    assert_eq!(plain.json["notices"], repeated.json["notices"]);
}

/// A list that is younger than the record and says nothing of the condition
/// leaves the record's word standing.
#[test]
fn what_the_list_does_not_say_an_older_record_may() {
    let rule = made(&["id: pliers, title: P, carry: 1 pliers"]);
    let bare = pliers("").set("declared", "{ by: A. Holder, on: 2026-02-25 }");
    assert_eq!(laid(&bare, &rule.path, &[]).outcome("pliers"), "cannot-tell");
    for (state, outcome) in [("serviceable", "met"), ("broken", "not-met")] {
        let looked = found(&format!("{{ mark: PL-1, condition: {state} }}"));
        assert_eq!(laid(&bare, &rule.path, &[&looked]).outcome("pliers"), outcome);
    }
}

/// A kind that differs from the list is disputed: what hangs on it is open.
#[test]
fn a_kind_that_differs_from_the_list_is_disputed() {
    let rule = made(&[
        "id: pliers, title: P, carry: 1 pliers",
        "id: cutters, title: C, carry: 1 bolt cutters",
        "id: tire, title: T, carry: 1 tire, when: { aboard: pliers }",
    ]);
    let other = found("{ mark: PL-1, kind: bolt cutters, condition: serviceable }");
    let judged = laid(&pliers(""), &rule.path, &[&other]);
    for requirement in ["pliers", "cutters"] {
        let codes = judged.codes(requirement);
        assert_eq!((judged.outcome(requirement), codes), ("cannot-tell", vec!["kind-disputed"]));
    }
    assert_eq!(judged.outcome("tire"), "cannot-tell");
    assert!(judged.notices().contains(&"kind-disputed"));
    let same = found("{ mark: PL-1, kind: pliers }");
    assert_eq!(laid(&pliers(""), &rule.path, &[&same]).outcome("pliers"), "met");
    // A later list has the last word.
    let later = pliers("").set("declared", "{ on: 2026-02-25, condition: serviceable }");
    assert_eq!(laid(&later, &rule.path, &[&other]).outcome("pliers"), "met");
}

/// A tool without a mark is one more, and the same tool is not counted twice
/// because two people walked the deck.
#[test]
fn a_tool_without_a_mark_is_one_more() {
    let rule = made(&["id: pliers, title: P, carry: 2 pliers"]);
    let outcome = |records: &[&String]| {
        let judged = laid(&pliers(""), &rule.path, records);
        (judged.outcome("pliers").to_owned(), judged.tools("pliers").join(" "))
    };
    let met = |marks: &str| ("met".to_owned(), marks.to_owned());
    let extra = found("{ row: 7, kind: pliers, condition: serviceable }");
    assert_eq!(outcome(&[]).0, "not-met");
    assert_eq!(outcome(&[&extra]).0, "met");
    assert_eq!(outcome(&[&extra, &extra]), outcome(&[&extra]));
    assert_eq!(outcome(&[&extra]), met("PL-1 long-nose or needle-nose pliers #7"));
    let three = made(&["id: pliers, title: P, carry: 3 pliers"]);
    let both = found(
        "{ row: 7, kind: pliers, condition: serviceable }, { row: 9, kind: pliers, condition: serviceable }",
    );
    assert_eq!(laid(&pliers(""), &three.path, &[&both]).outcome("pliers"), "met");
    let later = record("2026-02-22", "found: [{ row: 3, kind: pliers, condition: serviceable }]");
    for records in [[&extra, &later], [&later, &extra]] {
        assert_eq!(laid(&pliers(""), &three.path, &records).outcome("pliers"), "cannot-tell");
    }
    let told = laid(&pliers(""), &rule.path, &[&extra]);
    assert!(told.notices().contains(&"unmarked"), "{}", told.ran.page());
}

/// Two entries without a mark that say the very same are refused, as are those
/// that name no kind.
#[test]
fn what_has_no_mark_needs_its_kind_and_says_something_of_its_own() {
    let rule = made(&["id: pliers, title: P, carry: 2 pliers"]);
    let refused = |lines: &str| {
        let folder = tempfile::tempdir().unwrap();
        let path = crate::run::write(folder.path(), "v.yaml", &pliers("").yaml());
        let record = crate::run::write(folder.path(), "r.yaml", &found(lines));
        let ran = crate::run::kitmuster(&[
            "check",
            &path,
            "--profile",
            &rule.path,
            "--inspection",
            &record,
        ]);
        assert_eq!(ran.status, 2, "{}", ran.page());
        ran.stderr
    };
    assert!(refused("{ condition: serviceable }").contains("`mark` is missing"));
    assert!(refused("{ kind: pliers, missing: yes }").contains("`mark` is missing"));
    assert!(refused("{ kind: pliers }, { kind: pliers }").contains("written twice"));
}

/// What an inspector wrote reaches the page.
#[test]
fn what_an_inspector_wrote_is_told() {
    let rule = made(&["id: pliers, title: P, carry: 1 pliers"]);
    let wrote = found(
        "{ mark: PL-1, read as: PL-7, remark: grip loose, overall: 11 in }, { mark: XX-1, condition: serviceable }",
    );
    let stated = pliers(", overall: 12 in")
        .set("declared", "{ by: A. Holder, on: 2026-01-05, condition: serviceable }");
    let judged = laid(&stated, &rule.path, &[&wrote, &wrote]);
    let told = |code: &str| {
        let notices = judged.json["notices"].as_array().unwrap();
        let of_code: Vec<_> = notices.iter().filter(|notice| notice["code"] == code).collect();
        assert_eq!(of_code.len(), 1, "{code}\n{}", judged.ran.page());
        of_code[0]["text"].as_str().unwrap().to_owned()
    };
    assert!(told("mark-read-as").contains("PL-7"));
    assert!(told("remark").contains("grip loose"));
    assert!(told("unlisted-mark").contains("XX-1"));
    let differ = told("readings-differ");
    assert!(differ.contains("11 in") && differ.contains("12 in"), "{differ}");
}

/// Who was not aboard does not count, and what a certificate says is what was
/// read last.
#[test]
fn people_and_their_certificates_are_looked_at_too() {
    let rule = made(&["id: workshop, title: W, certificate: workshop certificate, \
                      held by: [owner], valid: 3 years"]);
    let held = "{ kind: workshop certificate, issued: 2025-01-10 }";
    let people = format!("[{{ name: A. Holder, roles: [owner], certificates: [{held}] }}]");
    let crewed = vessel("5 ft").set("people", &people);
    let outcome = |records: &[&str]| -> Judged {
        let records: Vec<String> = (records.iter())
            .map(|person| record(DAY, &format!("people: [{{ name: a. holder, {person} }}]")))
            .collect();
        laid(&crewed, &rule.path, &records.iter().collect::<Vec<_>>())
    };
    let lapsed = "certificates: [{ kind: workshop certificate, issued: 2022-01-10 }]";
    let good = "certificates: [{ kind: workshop certificate, issued: 2025-02-10 }]";
    for (records, expected) in [
        (&[][..], "met"),
        (&["aboard: yes"], "met"),
        (&["aboard: no"], "not-met"),
        (&["aboard: yes", "aboard: no"], "cannot-tell"),
        (&[lapsed], "not-met"),
        (&[good], "met"),
        (&[good, good], "met"),
        (&[good, lapsed], "cannot-tell"),
    ] {
        assert_eq!(outcome(records).outcome("workshop"), expected, "{records:?}");
    }
    assert_eq!(outcome(&["aboard: no", "aboard: yes"]).codes("workshop"), ["person-disputed"]);
    assert_eq!(outcome(&[lapsed, good]).codes("workshop"), ["certificate-disputed"]);
}

/// What makes a broken tool work retires every word on its condition up to that
/// day, whoever gave it.
#[test]
fn a_repair_retires_what_was_said_up_to_its_day() {
    let rule = made(&["id: pliers, title: P, carry: 1 pliers"]);
    let broken = found("{ mark: PL-1, condition: broken }");
    let repaired = found("{ mark: PL-1, mended: [{ what: repaired }] }");
    let later = record("2026-02-21", "found: [{ mark: PL-1, condition: broken }]");
    let outcome =
        |records: &[&String]| laid(&pliers(""), &rule.path, records).outcome("pliers").to_owned();
    assert_eq!(outcome(&[&broken, &repaired]), "met");
    assert_eq!(outcome(&[&repaired, &broken]), "met");
    assert_eq!(outcome(&[&repaired, &later]), "not-met");
    let noted = pliers(", changes: [{ what: repaired, on: 2026-02-20 }]");
    assert_eq!(laid(&noted, &rule.path, &[&broken]).outcome("pliers"), "met");
    assert_eq!(laid(&noted, &rule.path, &[&later]).outcome("pliers"), "not-met");
}
