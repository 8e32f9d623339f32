//! What lapses soon, and what it does to what it serves, under a profile made
//! up for the purpose.

use super::{document, folder, typed};

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
";

/// Marks with what their lapses do, by day, of a kit on a trip.
fn after(trip: &str, kit: &[&str]) -> Vec<(String, String)> {
    let kit: String = kit.iter().map(|tool| format!("  - {{ {tool} }}\n")).collect();
    let vessel = format!(
        "format: vessel/1\nname: Alpha\nfreeboard: 4 ft\npermits: [gulf-reef-fish-commercial]\n\
         gear: [handline]\nareas: [gulf-of-mexico]\n\
         declared: {{ on: 2026-01-01, figures: measured, condition: serviceable }}\n\
         trip: {{ {trip} }}\nkit:\n{kit}"
    );
    let folder = folder(&[("v/a.yaml", vessel), ("rule.yaml", PROFILE.to_owned())]);
    let (path, rule) = (format!("{}/v", typed(&folder)), format!("{}/rule.yaml", typed(&folder)));
    let fleet = document(&[&path], &["--profile", &rule]);
    let text = |value: &serde_json::Value| value.as_str().unwrap().to_owned();
    let lapses = fleet["lapses"].as_array().unwrap().iter();
    lapses.map(|lapse| (text(&lapse["tool"]), text(&lapse["after"]))).collect()
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
}
