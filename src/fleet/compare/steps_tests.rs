//! Which edition governs which trip, what counts as a revised encoding, and
//! which ids are one requirement: on small libraries.

use super::families::Families;
use super::steps::{Trip, governed, revised};
use crate::load::Library;
use crate::measure::{Day, DaySpan};
use crate::model::profile::Profile;
use std::collections::BTreeSet;
use std::sync::Arc;

const VOCABULARY: &str = include_str!("../../../requirements/vocabulary.yaml");

fn edition(id: &str, rule: &str, days: &str, pliers: &str) -> (String, String) {
    let text = format!(
        "format: profile/1\nid: {id}\nrule: {rule}\nedition: \"{id}\"\ntitle: T\n\
         source: Notice 1\nin force: {{ {days} }}\nbinds: {{ permits: [p] }}\n\
         requirements:\n  - {{ id: {pliers}, title: P, clause: c, verified: read, \
         carry: 1 pliers }}\n"
    );
    (format!("{id}.yaml"), text)
}

fn library(editions: &[(String, String)]) -> Library {
    let texts: Vec<_> = editions.iter().map(|(name, text)| (&**name, &**text)).collect();
    Library::rebuilt(("vocabulary.yaml", VOCABULARY), &texts).unwrap()
}

fn three() -> Library {
    library(&[
        edition("a1", "a", "from: 2020-01-01, until: 2020-12-31", "x"),
        edition("a2", "a", "from: 2021-01-01, until: 2021-12-31", "x"),
        edition("b1", "b", "from: 2020-01-01", "x"),
    ])
}

fn trip(from: &str, until: &str) -> Trip {
    (Day::parse(from).unwrap(), Some(Day::parse(until).unwrap()))
}

fn ids(profiles: Option<Vec<Arc<Profile>>>) -> Option<Vec<(String, bool)>> {
    let told = |profile: &Arc<Profile>| (profile.id.clone(), profile.in_force == DaySpan::ALWAYS);
    profiles.map(|profiles| profiles.iter().map(told).collect())
}

#[test]
fn the_edition_of_the_new_trip_governs_the_old_one_and_no_other_does() {
    let library = three();
    let governed = |then, now| ids(governed(&library.profiles, then, now));
    let (old, new) = (trip("2020-05-01", "2020-05-03"), trip("2021-05-01", "2021-05-03"));
    let across = trip("2020-12-30", "2021-01-02");
    let named = |id: &str, always| (id.to_owned(), always);
    assert_eq!(governed(old, old), None);
    assert_eq!(governed(across, across), None, "both govern both");
    assert_eq!(governed(old, new), Some(vec![named("a2", true), named("b1", false)]));
    assert_eq!(governed(across, new), Some(vec![named("a2", true), named("b1", false)]));
    let both = vec![named("a1", true), named("a2", true), named("b1", false)];
    assert_eq!(governed(old, across), Some(both));
}

#[test]
fn where_no_edition_is_known_for_the_new_days_the_old_ones_stay() {
    let library = three();
    let (old, new) = (trip("2020-05-01", "2020-05-03"), trip("2023-05-01", "2023-05-03"));
    assert_eq!(ids(governed(&library.profiles, old, new)), None);
}

#[test]
fn a_single_edition_that_was_asked_for_governs_whatever_the_day() {
    let library = three();
    let asked = [Arc::clone(&library.profiles[1])];
    let (old, new) = (trip("2020-05-01", "2020-05-03"), trip("2021-05-01", "2021-05-03"));
    assert_eq!(ids(governed(&asked, old, new)), None);
}

#[test]
fn a_rule_is_revised_by_its_own_number_or_by_that_of_a_list() {
    let raised = |(name, text): (String, String), from: &str| {
        (name, text.replace(from, &format!("encoding: 2\n{from}")))
    };
    let (a, b) =
        (edition("a1", "a", "from: 2020-01-01", "x"), edition("b1", "b", "from: 2020-01-01", "x"));
    let old = library(&[a.clone(), b.clone()]);
    let new = library(&[raised(a.clone(), "title: T"), b.clone()]);
    assert_eq!(revised(&old, &old), BTreeSet::new());
    assert_eq!(revised(&old, &new), BTreeSet::from(["a".to_owned()]));
    let list = (
        "list.yaml".to_owned(),
        "format: profile/1\nid: list\nrule: list\ntitle: L\nsource: Notice 2\nbase: yes\n\
         requirements:\n  - { id: x, title: P, clause: c, verified: read, carry: 1 pliers }\n"
            .to_owned(),
    );
    let old = library(&[list.clone(), a.clone(), b.clone()]);
    let new = library(&[raised(list, "title: L"), a, b]);
    assert_eq!(revised(&old, &new), ["a", "b", "list"].map(str::to_owned).into());
}

#[test]
fn ids_that_formerly_ties_are_one_across_editions() {
    let renamed = |(name, text): (String, String)| {
        (name, text.replace("title: P,", "title: P, formerly: [x],"))
    };
    let library = library(&[
        edition("a1", "a", "from: 2020-01-01, until: 2020-12-31", "x"),
        renamed(edition("a2", "a", "from: 2021-01-01", "y")),
        edition("b1", "b", "from: 2020-01-01", "x"),
    ]);
    let families = Families::of(library.profiles.iter());
    assert_eq!(families.key("a", "x"), families.key("a", "y"));
    assert_ne!(families.key("b", "x"), families.key("b", "y"), "another rule's ids are its own");
    assert_ne!(families.key("a", "z"), families.key("a", "x"));
}
