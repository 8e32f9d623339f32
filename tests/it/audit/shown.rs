//! Which vessels are counted and shown, in which order, and the exit code.

use super::{audit, changed, document, folder, names, typed};
use crate::run;

#[test]
fn gear_port_and_profile_choose_what_is_counted() {
    let pomelo = changed("salt-pomelo.yaml", &[("port: Port Ansel", "port: Quay of Dunmarrow")]);
    let folder = folder(&[
        ("a.yaml", changed("marlow-tern.yaml", &[])),
        ("b.yaml", pomelo),
        ("c.yaml", changed("brindle-skua.yaml", &[])),
    ]);
    let path = [typed(&folder)];
    let port = document(&path, &["--port", " QUAY of dunmarrow "]);
    assert_eq!(names(&port), ["Salt Pomelo"]);
    assert_eq!(
        (&port["totals"]["vessels"], &port["totals"]["outside_selection"]),
        (&1.into(), &2.into())
    );
    let rule = document(&path, &["--bound-by", "us-gulf-reef-fish"]);
    assert_eq!(names(&rule), ["Marlow Tern", "Brindle Skua"]);
    let edition = document(&path, &["--bound-by", "us-gulf-reef-fish-2019"]);
    assert_eq!(names(&edition), names(&rule));
    let gear = document(&path, &["--gear", "bottom-longline"]);
    let has = |text: &str| text.contains("gear: [bottom-longline]");
    let expected = ["marlow-tern.yaml", "salt-pomelo.yaml", "brindle-skua.yaml"]
        .iter()
        .filter(|file| has(&changed(file, &[])))
        .count();
    assert_eq!(names(&gear).len(), expected);
    // The verdict of those counted decides: the skua alone is ready.
    assert_eq!(audit(&path, &["--bound-by", "us-gulf-reef-fish"]).status, 1);
    let skua = format!("{}/c.yaml", typed(&folder));
    assert_eq!(audit(&[&skua], &[]).status, 0);
}

#[test]
fn a_vessel_that_a_rule_may_bind_is_concerned_by_it() {
    // June 2019 has no edition of the Gulf rule; without permits nobody can
    // tell whether it binds.
    let gannet = |changes: &[(&str, &str)]| changed("brindle-skua.yaml", changes);
    let trip = "trip: { depart: 2026-12-05, return: 2026-12-05 }";
    let folder = folder(&[
        ("a.yaml", gannet(&[])),
        ("b.yaml", gannet(&[(trip, "trip: { depart: 2019-06-04, return: 2019-06-10 }")])),
        ("c.yaml", gannet(&[("permits: [gulf-reef-fish-charter-headboat]\n", "")])),
    ]);
    for id in ["us-gulf-reef-fish", "us-gulf-reef-fish-2019"] {
        let ran = audit(&[typed(&folder)], &["--bound-by", id]);
        assert!(
            ran.stdout.contains("3 vessels: 1 ready, 0 not ready, 2 can't tell"),
            "{}",
            ran.stdout
        );
        assert_eq!(ran.status, 1);
    }
}

#[test]
fn verdict_and_requirement_choose_what_is_shown_and_all_is_counted() {
    let ready = document(&["vessels"], &["--verdict", "ready"]);
    assert_eq!(ready["totals"]["vessels"], 18);
    assert_eq!(names(&ready).len() as u64, ready["totals"]["ready"].as_u64().unwrap());
    assert_eq!(audit(&["vessels"], &["--verdict", "ready"]).status, 1);
    let lacking = document(&["vessels"], &["--requirement", "inverted-v-device"]);
    assert_eq!(names(&lacking), ["Long Meridian", "Thistle Fulmar"]);
    let both = document(&["vessels"], &["--verdict", "not-ready", "--verdict", "cannot-tell"]);
    assert_eq!(names(&both).len() + names(&ready).len(), 18);
}

#[test]
fn a_slip_in_what_is_chosen_is_refused() {
    for (flags, said) in [
        (["--requirement", "long-line-cuter"], "no profile has a requirement `long-line-cuter`"),
        (["--bound-by", "us-gulf-reef-fsh"], "did you mean `us-gulf-reef-fish"),
        (["--profile", "us-gulf-reef-fsh"], "did you mean `us-gulf-reef-fish"),
    ] {
        let ran = audit(&["vessels"], &flags);
        assert_eq!(ran.status, 2);
        assert!(ran.stderr.contains(said), "{}", ran.stderr);
    }
    let ran = audit(&["vessels"], &["--gear", "bottom-longlne"]);
    assert_eq!(ran.status, 2);
    assert!(ran.stderr.contains("no gear is called `bottom-longlne` here"), "{}", ran.stderr);
    let ran = audit(&["vessels"], &["--on", "2026-12-10", "--return", "2026-12-01"]);
    assert_eq!(ran.status, 2);
    assert!(ran.stderr.contains("lies before the departure"), "{}", ran.stderr);
    let ran = audit(&["vessels"], &["--return", "2026-12-09"]);
    assert_eq!(ran.status, 2, "a return needs a departure");
}

#[test]
fn vessels_are_shown_in_the_order_asked_for() {
    let by = |order: &str| names(&document(&["vessels"], &["--order", order]));
    let mut sorted = by("name");
    sorted.sort();
    assert_eq!(by("name"), sorted);
    assert_eq!(by("input"), by("name"), "the sample files are named after the vessels");
    let port = |port: &'static str| [("port: Port Ansel", port)];
    let folder = folder(&[
        ("a.yaml", changed("winter-petrel.yaml", &[])),
        ("b.yaml", changed("amber-shearwater.yaml", &port("port: Quay of Dunmarrow"))),
        ("c.yaml", changed("rusty-plover.yaml", &[])),
        ("d.yaml", changed("brindle-skua.yaml", &port("# of no port"))),
    ]);
    let in_folder = |order: &str| names(&document(&[typed(&folder)], &["--order", order]));
    let by_name = ["Amber Shearwater", "Brindle Skua", "Rusty Plover", "Winter Petrel"];
    assert_eq!(in_folder("name"), by_name);
    let by_port = ["Rusty Plover", "Winter Petrel", "Amber Shearwater", "Brindle Skua"];
    assert_eq!(in_folder("port"), by_port);
    let fleet = document(&["vessels"], &["--order", "verdict"]);
    let verdicts: Vec<_> = fleet["vessels"]
        .as_array()
        .unwrap()
        .iter()
        .map(|v| v["verdict"].as_str().unwrap())
        .collect();
    let rank =
        |verdict: &&str| ["not-ready", "cannot-tell", "ready"].iter().position(|v| v == verdict);
    assert!(verdicts.is_sorted_by_key(rank), "{verdicts:?}");
    let until = by("ready-until");
    let at = |name: &str| until.iter().position(|known| known == name).unwrap();
    // Not ready at all, then by the day, then what has no end.
    assert!(at("Marlow Tern") < at("Rusty Plover"), "{until:?}");
    assert!(at("Rusty Plover") < at("Winter Petrel"), "{until:?}");
    assert!(at("Winter Petrel") < at("Amber Shearwater"), "{until:?}");
    assert!(at("Amber Shearwater") < at("Brindle Skua"), "{until:?}");
}

#[test]
fn a_file_that_is_refused_is_the_worst_verdict_and_comes_last_else() {
    let folder = folder(&[
        ("a.yaml", changed("marlow-tern.yaml", &[])),
        ("b.yaml", "format: vessel/1\nname: [".to_owned()),
        ("c.yaml", changed("brindle-skua.yaml", &[])),
    ]);
    for (order, files) in [
        ("input", ["a.yaml", "b.yaml", "c.yaml"]),
        ("verdict", ["b.yaml", "a.yaml", "c.yaml"]),
        ("name", ["c.yaml", "a.yaml", "b.yaml"]),
        ("ready-until", ["a.yaml", "c.yaml", "b.yaml"]),
    ] {
        let csv = audit(&[typed(&folder)], &["--format", "csv", "--order", order]).stdout;
        let file =
            |row: &str| row.split(',').next().unwrap().rsplit('/').next().unwrap().to_owned();
        let mut shown: Vec<_> = csv.lines().skip(1).map(file).collect();
        shown.dedup();
        assert_eq!(shown, files, "{order}");
    }
}

#[test]
fn who_cannot_be_told_to_be_ready_comes_before_what_lapses() {
    // Of her first days no edition is known; by that of the last she is ready.
    let path = run::home().join("tests/it/record/fleet-then/heath.yaml");
    let text = std::fs::read_to_string(path).unwrap();
    let trip = "trip: { depart: 2026-06-10, return: 2026-06-12 }";
    let other = text.replace(trip, "trip: { depart: 2019-12-30, return: 2020-01-02 }");
    assert_ne!(text, other);
    let folder = folder(&[("a.yaml", text), ("b.yaml", other.replace("Heath Skua", "Other"))]);
    let flags = ["--requirements", &run::requirements("record/rules"), "--order", "ready-until"];
    let fleet = document(&[typed(&folder)], &flags);
    assert_eq!(names(&fleet), ["Other", "Heath Skua"]);
    assert_eq!(fleet["vessels"][0]["verdict"], "cannot-tell");
    assert_ne!(fleet["vessels"][0]["profiles"][0]["ready_until"]["state"], "none");
}

#[test]
fn one_departure_may_be_set_for_all() {
    let fleet = document(&["vessels"], &["--on", "2026-12-24", "--return", "2026-12-26"]);
    for vessel in fleet["vessels"].as_array().unwrap() {
        assert_eq!(vessel["trip"]["departure"], "2026-12-24");
        assert_eq!(vessel["trip"]["return"], "2026-12-26");
    }
}

#[test]
fn every_line_fits_eighty_columns() {
    let page = audit(&["vessels"], &[]).stdout;
    for line in page.lines() {
        assert!(line.chars().count() <= 80, "{line}");
    }
}
