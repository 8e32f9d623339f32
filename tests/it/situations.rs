//! Each situation that the sample vessels show, as the skipper's page and as
//! JSON.

use crate::run::kitmuster;

/// The name of the situation and what is asked.
const SITUATIONS: [(&str, &[&str]); 19] = [
    ("ready, short list on a low rail", &["vessels/brindle-skua.yaml"]),
    ("ready, metric, one long dehooker counts twice", &["vessels/ochre-gannet.yaml"]),
    ("line cutter half an inch too short", &["vessels/marlow-tern.yaml"]),
    ("freeboard range crosses four feet", &["vessels/thistle-fulmar.yaml"]),
    ("a greedy choice would go wrong", &["vessels/grey-sandling.yaml"]),
    ("inspection lapses during the trip", &["vessels/night-whimbrel.yaml"]),
    ("dip net handle not measured", &["vessels/hollow-lantern.yaml"]),
    ("bolt cutters broken", &["vessels/salt-pomelo.yaml"]),
    ("one of three gags broken", &["vessels/vesper-noddy.yaml"]),
    ("one type of mouth gag, twice", &["vessels/copper-dunlin.yaml"]),
    ("one handle with two heads", &["vessels/long-meridian.yaml"]),
    ("too short by the tape, not by the label", &["vessels/ida-quarrel.yaml"]),
    ("declared ready", &["vessels/stillwater-heron.yaml"]),
    (
        "partial inspection laid over the declaration",
        &[
            "vessels/stillwater-heron.yaml",
            "--inspection",
            "vessels/inspections/stillwater-heron-2026-11-27.yaml",
        ],
    ),
    ("bound by rules that are not encoded", &["vessels/far-kestrel.yaml"]),
    ("longliner of 2024 with hooks and certificates", &["vessels/winter-petrel.yaml"]),
    ("good practice in a far-off fishery", &["vessels/amber-shearwater.yaml"]),
    ("skiff with a hoist and a spare life ring", &["vessels/little-knot.yaml"]),
    ("old Gulf edition", &["vessels/rusty-plover.yaml"]),
];

/// Before any of the planned trips is over.
const DATE: &str = "2026-11-25";

#[test]
fn every_situation_has_its_page() {
    for (name, arguments) in SITUATIONS {
        let ran = kitmuster(&[&["check", "--date", DATE], arguments].concat());
        insta::assert_snapshot!(format!("page, {name}"), ran.page());
    }
}

#[test]
fn every_situation_has_its_json() {
    for (name, arguments) in SITUATIONS {
        let ran = kitmuster(&[&["check", "--date", DATE, "--format", "json"], arguments].concat());
        let json = ran.json();
        assert_eq!(json["schema"], "kitmuster/check/1");
        // The program's version is no part of what is shown here.
        let version = format!("\"version\": \"{}\"", env!("CARGO_PKG_VERSION"));
        assert!(ran.stdout.contains(&version), "{name}");
        insta::assert_snapshot!(
            format!("json, {name}"),
            ran.page().replace(&version, "\"version\": \"(this)\"")
        );
    }
}

#[test]
fn page_and_json_give_the_same_status_and_verdict() {
    for (name, arguments) in SITUATIONS {
        let page = kitmuster(&[&["check", "--date", DATE], arguments].concat());
        let json = kitmuster(&[&["check", "--date", DATE, "--format", "json"], arguments].concat());
        assert_eq!(page.status, json.status, "{name}");
        let (word, status) = match json.json()["verdict"].as_str().unwrap() {
            "ready" => ("READY", 0),
            "not-ready" => ("NOT READY", 1),
            "cannot-tell" => ("CAN'T TELL", 1),
            other => panic!("{other}"),
        };
        assert!(page.stdout.starts_with(word), "{name}");
        assert_eq!(page.status, status, "{name}");
    }
}

#[test]
fn the_readme_example_is_too_short_by_half_an_inch_and_names_its_clause() {
    let ran =
        kitmuster(&["check", "vessels/marlow-tern.yaml", "--profile", "us-gulf-reef-fish-2019"]);
    assert_eq!(ran.status, 1);
    assert!(ran.stdout.contains("1/2 in (12.7 mm) too short for the rail"), "{}", ran.stdout);
    assert!(ran.stdout.contains("Appendix F, A.1"), "{}", ran.stdout);
}

#[test]
fn the_readme_example_with_half_an_inch_more_is_ready() {
    let folder = tempfile::tempdir().unwrap();
    let text =
        std::fs::read_to_string(crate::run::home().join("vessels/marlow-tern.yaml")).unwrap();
    assert!(text.contains("handle: 6 ft 4 in\n"));
    let text = text.replace("handle: 6 ft 4 in\n", "handle: 6 ft 4 1/2 in\n");
    let path = crate::run::write(folder.path(), "longer.yaml", &text);
    let ran =
        kitmuster(&["check", &path, "--profile", "us-gulf-reef-fish-2019", "--format", "json"]);
    let json = ran.json();
    let findings = json["profiles"][0]["findings"].as_array().unwrap();
    let cutter = findings.iter().find(|f| f["requirement"] == "long-line-cutter").unwrap();
    assert_eq!(cutter["outcome"], "met");
    assert_eq!((json["verdict"].as_str().unwrap(), ran.status), ("ready", 0));
}
