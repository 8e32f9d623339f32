//! The JSON of options, and that it says what the page says.

use super::{FULL, file, options, samples, without};
use serde_json::Value;

/// The JSON of one case.
fn case(vessel: &str, case: &str) -> String {
    options(vessel, &["--format", "json", "--case", case]).stdout
}

#[test]
fn the_json_of_a_pole_that_is_too_short() {
    insta::assert_snapshot!(case("vessels/marlow-tern.yaml", "alongside,rough,swallowed"));
}

#[test]
fn the_json_of_what_is_not_known_beside_what_does_not_work() {
    let said = "aboard,mouth,circle,buried,limp";
    insta::assert_snapshot!(case("vessels/vesper-noddy.yaml", said));
}

#[test]
fn the_json_of_one_case_with_a_price() {
    let flags = [
        "--format",
        "json",
        "--case",
        "alongside,boardable,mouth",
        "--catalogue",
        "suppliers/tarnholt-ship-stores.yaml",
    ];
    let ran = options("vessels/little-knot.yaml", &flags);
    insta::assert_snapshot!(ran.stdout);
}

#[test]
fn a_case_shows_only_the_situations_that_answer_it() {
    let flags = ["--format", "json", "--case", "aboard,deep,limp,buried"];
    let json = options(&file(FULL).path, &flags).json();
    let ids: Vec<_> = texts(&json["situations"], "id");
    assert_eq!(ids, ["deep-buried-aboard", "limp-aboard"]);
    assert_eq!(json["case"]["said"]["state"], "limp");
    assert_eq!(json["case"]["taken_for_granted"], serde_json::json!({}));
    assert_eq!(json["case"]["answers"][0]["along"][0], "limp-aboard");
    assert_eq!(json["situations"][1]["along"], true);
}

fn texts(list: &Value, key: &str) -> Vec<String> {
    let text = |one: &Value| one[key].as_str().unwrap().to_owned();
    list.as_array().unwrap().iter().map(text).collect()
}

#[test]
fn the_numbers_of_a_kit_are_those_of_its_situations() {
    for vessel in samples() {
        let json = options(&vessel, &["--on", "2026-12-02", "--format", "json"]).json();
        let situations = json["situations"].as_array().unwrap();
        let number = |standing: &str| {
            let is = |one: &&Value| one["standing"] == standing && one["hooks"] != "none-aboard";
            situations.iter().filter(is).count() as u64
        };
        let worth = &json["worth"];
        assert_eq!(worth["first"], number("first-choice"), "{vessel}");
        assert_eq!(worth["fallback"], number("fallback"), "{vessel}");
        assert_eq!(worth["unclear"], number("cannot-tell"), "{vessel}");
        assert_eq!(worth["nothing"], number("nothing"), "{vessel}");
        let left_out = situations.iter().filter(|one| one["hooks"] == "none-aboard").count();
        assert_eq!(worth["left_out"], left_out as u64, "{vessel}");
    }
}

#[test]
fn the_best_choice_is_the_first_open_one_and_only_closed_ones_want_something() {
    for vessel in samples() {
        let json = options(&vessel, &["--on", "2026-12-02", "--format", "json"]).json();
        for situation in json["situations"].as_array().unwrap() {
            let choices = situation["choices"].as_array().unwrap();
            let open = choices.iter().position(|choice| choice["answer"] == "open");
            let short = || choices.iter().position(|choice| choice["short"] == true);
            let first = open.or_else(short);
            assert_eq!(situation["best"].as_u64(), first.map(|index| index as u64));
            for choice in choices {
                let open = choice["answer"] == "open";
                assert!(!open || choice["short"] == false, "{choice}");
                assert_eq!(choice["wanting"].as_array().unwrap().is_empty(), open, "{choice}");
                assert_eq!(choice["way"]["state"] == "already", open, "{vessel}: {choice}");
            }
        }
    }
}

#[test]
fn a_rail_closes_with_a_capability_and_without_a_way() {
    let json = options(&file(FULL).path, &["--format", "json"]).json();
    let situations = json["situations"].as_array().unwrap();
    let by_hand = situations[1]["choices"].as_array().unwrap().last().unwrap();
    assert_eq!(by_hand["techniques"], serde_json::json!(["cut-free-by-hand"]));
    assert_eq!(by_hand["wanting"][0]["capability"], "low-rail");
    assert_eq!(by_hand["way"]["state"], "none");
    // Nobody measured it: the way begins with measuring.
    let open = FULL.replace("freeboard: 2 ft 10 in\n", "");
    let json = options(&file(&open).path, &["--format", "json"]).json();
    let by_hand = json["situations"][1]["choices"].as_array().unwrap().last().unwrap();
    assert_eq!(by_hand["answer"], "cannot-tell");
    assert_eq!(by_hand["way"]["steps"][0]["deed"], "measure");
}

#[test]
fn what_lifts_most_names_the_situations_and_how_far() {
    let json = options(&file(&without(&["DN-1"])).path, &["--format", "json"]).json();
    let lift = &json["lift"];
    assert_eq!(lift["deed"], "acquire");
    assert_eq!(lift["price"], Value::Null);
    let lifted = texts(&lift["situations"], "id");
    assert!(lifted.contains(&"inside-boardable".to_owned()), "{lift}");
    assert!(lift["situations"].as_array().unwrap().iter().all(|one| one["to"] == 0), "{lift}");
    let json = options(&file(FULL).path, &["--format", "json"]).json();
    assert_eq!(json["lift"], Value::Null);
}
