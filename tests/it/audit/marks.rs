//! One tool that two vessels count on at once.

use super::{changed, document, folder, typed};
use serde_json::Value;

const TRIP: &str = "trip: { depart: 2026-12-02, return: 2026-12-09 }";

fn marks(first: String, second: String) -> Vec<String> {
    let folder = folder(&[("a.yaml", first), ("b.yaml", second)]);
    let fleet = document(&[typed(&folder)], &[]);
    let text = |mark: &Value| mark["mark"].as_str().unwrap().to_owned();
    fleet["same_marks"].as_array().unwrap().iter().map(text).collect()
}

fn tern(changes: &[(&str, &str)]) -> String {
    changed("marlow-tern.yaml", changes)
}

#[test]
fn the_same_mark_on_two_vessels_at_sea_together_is_told() {
    let all = marks(tern(&[]), tern(&[("Marlow Tern", "Other")]));
    assert!(all.contains(&"BC-1".to_owned()) && all.contains(&"LC-1".to_owned()), "{all:?}");
    // Of documents there are copies.
    assert!(!all.iter().any(|mark| mark.starts_with("DOC")), "{all:?}");
}

#[test]
fn trips_that_share_one_day_overlap_and_those_that_share_none_do_not() {
    let at = |trip: &str| marks(tern(&[]), tern(&[("Marlow Tern", "Other"), (TRIP, trip)]));
    assert!(!at("trip: { depart: 2026-12-09, return: 2026-12-20 }").is_empty());
    assert!(at("trip: { depart: 2026-12-10, return: 2026-12-20 }").is_empty());
}

#[test]
fn a_tool_lent_over_the_whole_trip_is_on_the_other_vessel_alone() {
    let lent = |until: &str| {
        let place = format!("where: {{ lent to: Other, from: 2026-11-20, until: {until} }}");
        let one = tern(&[(
            "    cuts-hook: 5/16 in\n",
            &format!("    cuts-hook: 5/16 in\n    {place}\n"),
        )]);
        marks(one, tern(&[("Marlow Tern", "Other")])).contains(&"BC-1".to_owned())
    };
    assert!(!lent("2026-12-09"));
    // It is said to be back while both are at sea.
    assert!(lent("2026-12-05"));
}

#[test]
fn a_tool_lent_until_the_other_is_back_is_on_one_vessel_at_a_time() {
    let lent = |until: &str| {
        let place = format!("where: {{ lent to: Other, from: 2026-12-01, until: {until} }}");
        let one = tern(&[(
            "    cuts-hook: 5/16 in\n",
            &format!("    cuts-hook: 5/16 in\n    {place}\n"),
        )]);
        let other = tern(&[
            ("Marlow Tern", "Other"),
            (TRIP, "trip: { depart: 2026-12-02, return: 2026-12-04 }"),
        ]);
        marks(one, other).contains(&"BC-1".to_owned())
    };
    assert!(!lent("2026-12-04"));
    assert!(lent("2026-12-03"));
}

#[test]
fn which_file_comes_first_makes_no_difference() {
    let overall = |new: &str, name: &str| {
        tern(&[("    overall: 18 in\n", new), ("name: Marlow Tern", name), ("PA-104", name)])
    };
    let unsaid = || overall("", "name: One");
    let short = || overall("    overall: 16 in\n", "name: Two");
    let long = || overall("    overall: 20 in\n", "name: Three");
    for files in [[unsaid(), short(), long()], [long(), unsaid(), short()]] {
        let [a, b, c] = files;
        let folder = folder(&[("a.yaml", a), ("b.yaml", b), ("c.yaml", c)]);
        let fleet = document(&[typed(&folder)], &[]);
        let marks = fleet["same_marks"].as_array().unwrap();
        assert!(marks.iter().all(|mark| mark["mark"] != "BC-1"), "{marks:?}");
    }
}

#[test]
fn tools_that_are_evidently_two_are_not_told() {
    let other = tern(&[("Marlow Tern", "Other"), ("overall: 18 in", "overall: 19 in")]);
    let all = marks(tern(&[]), other);
    assert!(!all.contains(&"BC-1".to_owned()) && all.contains(&"LC-1".to_owned()), "{all:?}");
    // What is written of one alone tells nothing.
    for (key, one, other) in [
        ("acquired", "2026-01-01", "2026-01-02"),
        ("inspected", "2026-01-01", "2026-01-02"),
        ("expires", "2029-01-01", "2029-01-02"),
        ("evidence", "a photo", "a receipt"),
        ("name", "big ones", "small ones"),
    ] {
        let with = |name: &str, value: &str| {
            let own = format!("    cuts-hook: 5/16 in\n    {key}: {value}\n");
            tern(&[("Marlow Tern", name), ("    cuts-hook: 5/16 in\n", &own)])
        };
        let is_told = |all: Vec<String>| all.contains(&"BC-1".to_owned());
        assert!(is_told(marks(tern(&[]), with("Other", other))), "{key}");
        assert!(!is_told(marks(with("Marlow Tern", one), with("Other", other))), "{key}");
    }
    let kind = ("    kind: bolt cutters\n", "    kind: monofilament line cutters\n");
    let all = marks(
        tern(&[("    cuts-hook: 5/16 in\n", "")]),
        tern(&[("Marlow Tern", "Other"), ("    cuts-hook: 5/16 in\n", ""), kind]),
    );
    assert!(!all.contains(&"BC-1".to_owned()), "{all:?}");
    let ashore = ("    cuts-hook: 5/16 in\n", "    cuts-hook: 5/16 in\n    where: ashore\n");
    let all = marks(tern(&[]), tern(&[("Marlow Tern", "Other"), ashore]));
    assert!(!all.contains(&"BC-1".to_owned()), "{all:?}");
    // The same length in other units is the same length.
    let metric = tern(&[("Marlow Tern", "Other"), ("overall: 18 in", "overall: 457.2 mm")]);
    assert!(marks(tern(&[]), metric).contains(&"BC-1".to_owned()));
}
