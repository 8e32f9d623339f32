//! The JSON of hand-made checks.

use super::check as json;
use crate::measure::Units;
use crate::model::check::{Check, Notice};
use crate::model::finding::{Because, Outcome};
use crate::model::reason::Reason;
use crate::report::Locale;
use crate::report::sample;
use crate::report::subject::Subject;
use serde_json::Value;

fn text(check: &Check) -> String {
    let vocabulary = sample::vocabulary();
    let subject = Subject {
        check,
        vocabulary: &vocabulary,
        sources: &[],
        locale: Locale::from(Units::Both),
        freeing: None,
    };
    json(&subject).unwrap()
}

fn value(check: &Check) -> Value {
    serde_json::from_str(&text(check)).unwrap()
}

fn keys(value: &Value) -> Vec<&str> {
    value.as_object().unwrap().keys().map(String::as_str).collect()
}

#[test]
fn the_keys_stand_in_the_documented_order() {
    let value = value(&sample::not_ready());
    assert_eq!(
        keys(&value),
        [
            "schema", "program", "vessel", "trip", "trust", "verdict", "standing", "notices",
            "profiles"
        ]
    );
    assert_eq!(
        keys(&value["profiles"][0]),
        [
            "id",
            "rule",
            "edition",
            "encoding",
            "encoded",
            "title",
            "source",
            "standing",
            "why",
            "days",
            "verdict",
            "ready_until",
            "good_up_to",
            "stretches",
            "findings",
            "clashes",
            "way_to_ready",
            "left_open",
        ]
    );
    assert_eq!(
        keys(&value["profiles"][0]["findings"][0]),
        [
            "requirement",
            "title",
            "level",
            "outcome",
            "tools",
            "reasons",
            "citation",
            "note",
            "freeboard",
            "day",
            "remedy",
        ]
    );
    assert_eq!(value["schema"], "kitmuster/check/1");
    assert_eq!(value["verdict"], "not-ready");
}

#[test]
fn a_reason_carries_its_code_its_numbers_and_its_text() {
    let value = value(&sample::not_ready());
    let reason = &value["profiles"][0]["findings"][0]["reasons"][0];
    assert_eq!(reason["code"], "too-short-for-rail");
    assert_eq!(reason["tool"], "LC-1");
    assert_eq!(reason["place"]["key"], "kit[0]");
    assert_eq!(reason["attributes"][0], "handle");
    assert_eq!(reason["has"]["nanometres"], 1_930_400_000);
    assert_eq!(reason["demand"]["least"]["nanometres"], 1_943_100_000);
    assert_eq!(reason["demand"]["least"]["text"], "6 ft 4 1/2 in (1.944 m)");
    assert_eq!(reason["by"]["nanometres"], 12_700_000);
    assert_eq!(reason["freeboard"]["nanometres"], 1_295_400_000);
    assert!(reason["text"].as_str().unwrap().contains("too short for the rail"));
}

#[test]
fn a_finding_that_is_met_names_its_tools_and_no_remedy() {
    let value = value(&sample::not_ready());
    let finding = &value["profiles"][0]["findings"][1];
    assert_eq!(finding["outcome"], "met");
    assert_eq!(finding["tools"][0]["mark"], "PL-1");
    assert_eq!(finding["tools"][0]["place"]["file"], "vessel.yaml");
    assert_eq!(finding["citation"]["verified"], "memory");
    assert_eq!(finding["remedy"], Value::Null);
}

#[test]
fn what_steers_a_terminal_is_escaped_and_keeps_its_value() {
    let mut check = sample::not_ready();
    check.vessel.name = "A\u{1b}[2J\u{9b}\u{202e}\u{7f}".into();
    let text = text(&check);
    assert!(!text.contains(['\u{1b}', '\u{9b}', '\u{202e}', '\u{7f}']), "{text}");
    assert_eq!(value(&check)["vessel"]["name"], check.vessel.name);
    assert!(text.ends_with("}\n"));
}

#[test]
fn notices_say_what_they_speak_of() {
    let mut check = sample::not_ready();
    check.notices =
        vec![Notice::NoEdition { rule: "example".into(), day: sample::day("2026-03-02") }];
    let value = value(&check);
    assert_eq!(value["notices"][0]["code"], "no-edition");
    assert_eq!(value["notices"][0]["rule"], "example");
    assert_eq!(value["notices"][0]["day"], "2026-03-02");
    let remedy = value["notices"][0]["remedy"].as_str().unwrap();
    assert!(remedy.contains("port office"), "{remedy}");
}

#[test]
fn a_finding_that_hangs_on_another_names_it() {
    let mut check = sample::not_ready();
    check.judgements[0].findings[0].reasons =
        vec![Because { tool: None, reason: Reason::HangsOn { requirement: 1 } }];
    let value = value(&check);
    let reason = &value["profiles"][0]["findings"][0]["reasons"][0];
    assert_eq!(reason["code"], "hangs-on");
    assert_eq!(reason["requirement"], "pliers");
    assert_eq!(reason["text"], "met once `Long-nose pliers` is settled");
    let unknown = Because { tool: Some(1), reason: Reason::StateUnknown };
    check.judgements[0].findings[0].outcome = Outcome::CannotTell;
    check.judgements[0].findings[1] = sample::finding(1, Outcome::CannotTell, vec![unknown]);
    let value = self::value(&check);
    let settles = &value["profiles"][0]["findings"][0]["remedy"];
    assert_eq!(
        settles,
        "first, for `Long-nose pliers`: try out whether PL-1 works, and write it down"
    );
}

#[test]
fn a_freeboard_as_it_was_measured_rounds_to_the_nearest_millimetre() {
    let mut check = sample::not_ready();
    check.vessel.freeboard.stations[0].readings[0].high = sample::figure("4 ft 6 in");
    let value = value(&check);
    let high = &value["vessel"]["freeboard"]["stations"][0]["readings"][0]["high"];
    assert_eq!(high["text"], "4 ft 6 in (1.372 m)");
}
