//! What lapses soon, and what it does to what it serves, under a profile made
//! up for the purpose.

use super::{document, folder, typed};
use serde_json::{Value, json};

const PROFILE: &str = "\
format: profile/1
id: made-up
rule: made-up-rule
edition: one
encoding: 1
title: Made up for the purpose
source: no publication
language: en
standing: rule
binds: { permits: [gulf-reef-fish-commercial] }
freeboard from: top of the rail
requirements:
  - { id: pliers, title: Pliers, clause: 1, verified: read, carry: 1 needle-nose pliers, when: { months: January to June } }
  - { id: bolts, title: Two bolt cutters, clause: 2, verified: read, carry: 2 bolt cutters }
  - { id: nets, title: Net, clause: 3, verified: read, carry: 1 dip net, until: 2026-12-10 }
  - { id: lines, title: Line cutters, level: recommended, clause: 4, verified: read, carry: 1 monofilament line cutters }
  - { id: advised, title: Support, level: recommended, clause: 5, verified: read, carry: 1 tire }
  - { id: support, title: Support, clause: 6, verified: read, carry: 1 tire, may share the tool of: [advised] }
  - { id: looked-at, title: Support, clause: 7, verified: read, carry: 1 tire, may share the tool of: [advised, support], inspection due: every 12 months }
  - { id: also, title: Support, level: recommended, clause: 8, verified: read, carry: 1 tire, may share the tool of: [advised, support, looked-at] }
  - { id: shop, title: Workshop, clause: 9, verified: read, certificate: workshop certificate, held by: [owner, operator], valid: 3 years }
";

/// The lapses of a kit and of people on a trip, by day.
fn lapses(trip: &str, kit: &[&str], people: &str) -> Vec<Value> {
    let kit: String = kit.iter().map(|tool| format!("  - {{ {tool} }}\n")).collect();
    let vessel = format!(
        "format: vessel/1\nname: Alpha\nfreeboard: 4 ft\npermits: [gulf-reef-fish-commercial]\n\
         gear: [handline]\nareas: [gulf-of-mexico]\n\
         declared: {{ on: 2026-01-01, figures: measured, condition: serviceable }}\n\
         trip: {{ {trip} }}\npeople: [{people}]\nkit:\n{kit}"
    );
    let folder = folder(&[("v/a.yaml", vessel), ("rule.yaml", PROFILE.to_owned())]);
    let (path, rule) = (format!("{}/v", typed(&folder)), format!("{}/rule.yaml", typed(&folder)));
    document(&[&path], &["--profile", &rule])["lapses"].as_array().unwrap().clone()
}

/// Marks with what their lapses do.
fn after(trip: &str, kit: &[&str]) -> Vec<(String, String)> {
    let text = |value: &Value| value.as_str().unwrap().to_owned();
    lapses(trip, kit, "")
        .iter()
        .map(|lapse| (text(&lapse["tool"]), text(&lapse["after"])))
        .collect()
}

const SOON: &str = "depart: 2026-12-02, return: 2026-12-05";

fn pairs(expected: &[(&str, &str)]) -> Vec<(String, String)> {
    expected.iter().map(|(a, b)| ((*a).to_owned(), (*b).to_owned())).collect()
}

#[test]
fn each_of_three_where_two_are_asked_does_another_thing() {
    let kit = [
        "mark: BC-1, kind: bolt cutters, expires: 2026-12-15",
        "mark: BC-2, kind: bolt cutters, expires: 2026-12-16",
        "mark: BC-3, kind: bolt cutters, expires: 2026-12-17",
    ];
    let expected = pairs(&[("BC-1", "served"), ("BC-2", "decides"), ("BC-3", "open")]);
    assert_eq!(after(SOON, &kit), expected);
    // Those in reserve are told as well, whatever day the trip was judged on.
    assert_eq!(after("depart: 2026-12-02, return: 2026-12-30", &kit), expected);
}

#[test]
fn what_is_recommended_is_not_said_to_be_served() {
    let kit = ["mark: MC-1, kind: monofilament line cutters, expires: 2026-12-17"];
    assert_eq!(after(SOON, &kit), pairs(&[("MC-1", "advice")]));
}

#[test]
fn what_is_asked_no_longer_decides_nothing() {
    let kit = ["mark: DN-1, kind: dip net, expires: 2026-12-10"];
    assert_eq!(after(SOON, &kit), pairs(&[("DN-1", "not-asked")]));
}

#[test]
fn out_of_its_season_it_may_still_be_what_the_trip_lacks() {
    let kit = ["mark: PL-1, kind: needle-nose pliers, expires: 2026-12-20"];
    let next = "depart: 2027-01-05, return: 2027-01-09";
    assert_eq!(after(next, &kit), pairs(&[("PL-1", "decides")]));
    assert_eq!(after(SOON, &kit), pairs(&[]));
    // In no season on either day, and within the trip.
    let across = "depart: 2026-12-15, return: 2027-01-05";
    assert_eq!(after(across, &kit), pairs(&[("PL-1", "decides")]));
    // She was at sea in the season, with good ones.
    let over = "depart: 2026-06-02, return: 2026-06-05";
    assert_eq!(after(over, &kit), pairs(&[("PL-1", "not-asked")]));
    // In the season it would decide too, though another may do.
    let other = "mark: PL-2, kind: needle-nose pliers, condition: unknown";
    assert_eq!(after(next, &[kit[0], other]), pairs(&[("PL-1", "decides")]));
    // The season begins on the day after.
    let kit = ["mark: PL-1, kind: needle-nose pliers, expires: 2026-12-31"];
    assert_eq!(after(across, &kit), pairs(&[("PL-1", "decides")]));
}

#[test]
fn what_is_not_aboard_does_not_lapse() {
    for place in ["ashore", "lost", "aboard"] {
        let tool = format!("mark: BC-1, kind: bolt cutters, expires: 2026-12-15, where: {place}");
        assert_eq!(after(SOON, &[&tool]).len(), usize::from(place == "aboard"), "{place}");
    }
}

#[test]
fn each_end_of_each_tool_is_told_once_with_all_that_it_serves_and_the_worst_of_it() {
    let two = [
        "mark: BC-1, kind: bolt cutters, expires: 2026-12-15",
        "mark: BC-2, kind: bolt cutters, expires: 2026-12-15",
    ];
    assert_eq!(after(SOON, &two), pairs(&[("BC-1", "decides"), ("BC-2", "decides")]));
    let tire = ["mark: TI-1, kind: tire, inspected: 2026-01-05, expires: 2027-01-20"];
    // One person in both roles has one certificate.
    let person = "{ name: A. Person, roles: [owner, operator], \
                  certificates: [{ kind: workshop certificate, issued: 2024-01-10 }] }";
    let told = lapses(SOON, &tire, person).into_iter().map(|lapse| {
        let serves = lapse["serves"].as_array().unwrap().iter();
        let serves: Vec<_> = serves.map(|one| one["requirement"].clone()).collect();
        json!([lapse["through"], lapse["end"], lapse["after"], serves])
    });
    let expected = [
        json!(["2027-01-04", "inspection", "decides", ["looked-at"]]),
        json!(["2027-01-09", "expiry", "decides", ["shop"]]),
        json!(["2027-01-20", "expiry", "decides", ["advised", "support", "also"]]),
    ];
    assert_eq!(told.collect::<Vec<_>>(), expected);
}
