//! A fleet under the draft of an edition, beside the edition in force.

use super::{AUGUST, audit, flat, place};
use crate::run;
use serde_json::{Value, json};

fn draft(file: &str, flags: &[&str]) -> Value {
    let path = place(file);
    let flags = [&["--draft", &*path, "--format", "json"], flags].concat();
    audit("fleet-now", "rules", AUGUST, &flags).json()["draft"].clone()
}

#[test]
fn who_falls_and_who_stays_is_told_with_what_changes() {
    let draft = draft("pier-2028.yaml", &[]);
    assert_eq!(draft["profile"], "pier-2028");
    assert_eq!(draft["in_force"], json!({"from": "2028-01-01", "until": null}));
    assert_eq!(draft["beside"], json!(["pier-2026"]));
    let totals = json!({
        "falls": 1, "rises": 0, "cannot_tell": 0, "released": 0, "stays_otherwise": 3,
        "unaffected": 0, "not_bound": 3
    });
    assert_eq!(draft["totals"], totals);
    let vessels = draft["vessels"].as_array().unwrap();
    let of = |name: &str| vessels.iter().find(|v| v["name"] == name).unwrap();
    // 6 ft 1 in was enough for 6 ft, and is not for 6 ft 3 in.
    let heath = of("Heath Skua");
    assert_eq!(heath["fate"], "falls");
    assert_eq!(heath["changes"][0]["requirement"], "line-cutter");
    assert_eq!(heath["changes"][0]["in_force"], "met");
    assert_eq!(heath["changes"][0]["under_draft"], "not-met");
    assert_eq!(heath["changes"][0]["reason"], "too-short-for-rail");
    // An officer measured 6 ft 3 7/8 in: the record counts under the draft too.
    assert_eq!(of("Anvil Petrel")["fate"], "stays");
    // Her pliers are broken, which the draft no longer asks about.
    let briar = of("Briar Tern");
    assert_eq!(briar["fate"], "stays");
    assert_eq!(briar["changes"][0]["under_draft"], Value::Null);
}

#[test]
fn the_edition_in_force_as_a_draft_changes_nothing() {
    let flags = ["--draft", "pier-2026", "--format", "json"];
    let draft = audit("fleet-now", "rules", AUGUST, &flags).json()["draft"].clone();
    assert_eq!(draft["totals"]["unaffected"], 4);
    assert_eq!(draft["totals"]["not_bound"], 3);
    for vessel in draft["vessels"].as_array().unwrap() {
        assert_eq!(vessel["changes"], json!([]));
        assert_eq!(vessel["verdict_in_force"], vessel["verdict_under_draft"]);
    }
}

#[test]
fn the_old_edition_of_the_gulf_rule_beside_the_new_one() {
    let typed = ["audit", "vessels", "--date", "2026-11-25", "--format", "json", "--draft"];
    let typed = [&typed[..], &["us-gulf-reef-fish-before-2019"]].concat();
    let document = run::kitmuster(&typed).json();
    let draft = &document["draft"];
    let vessels = draft["vessels"].as_array().unwrap();
    let count = |fate: &str| vessels.iter().filter(|v| v["fate"] == fate).count();
    assert_eq!(draft["totals"]["falls"], count("falls"));
    assert_eq!(
        vessels.len() + usize::try_from(draft["totals"]["not_bound"].as_u64().unwrap()).unwrap(),
        18
    );
    // What the draft finds is what a check by that edition finds.
    for vessel in vessels {
        let file = vessel["file"].as_str().unwrap();
        let asked = ["check", file, "--profile", "us-gulf-reef-fish-before-2019"];
        let mut typed = asked.to_vec();
        if file.contains("stillwater-heron") {
            typed.extend(["--inspection", "vessels/inspections/stillwater-heron-2026-11-27.yaml"]);
        }
        typed.extend(["--format", "json", "--on"]);
        let audited = document["vessels"].as_array().unwrap();
        let trip = audited.iter().find(|v| v["vessel"]["file"] == file).unwrap()["trip"].clone();
        typed.extend([trip["departure"].as_str().unwrap(), "--return"]);
        typed.push(trip["return"].as_str().unwrap());
        let check = run::kitmuster(&typed).json();
        assert_eq!(vessel["verdict_under_draft"], check["verdict"], "{file}");
    }
}

#[test]
fn a_draft_binds_by_its_own_words_or_by_the_edition_in_force() {
    let folder = tempfile::tempdir().unwrap();
    let text = std::fs::read_to_string(place("pier-2028.yaml")).unwrap();
    let bound = |permits: &str| {
        let text = text.replace("[pier-permit, quay-permit]", permits);
        let path = run::write(folder.path(), "draft.yaml", &text);
        let flags = ["--draft", &*path, "--format", "json"];
        audit("fleet-now", "rules", AUGUST, &flags).json()["draft"].clone()
    };
    let wider = bound("[pier-permit, mole-permit]");
    assert_eq!(wider["totals"]["not_bound"], 0);
    let vessels = wider["vessels"].as_array().unwrap();
    let drift = vessels.iter().find(|v| v["name"] == "Drift Plover").unwrap();
    assert_eq!(drift["verdict_in_force"], Value::Null);
    assert_eq!((&drift["bound"], &drift["fate"]), (&json!("yes"), &json!("falls")));
    let elsewhere = bound("[quay-permit]");
    assert_eq!(elsewhere["totals"]["not_bound"], 3);
    // Whom the draft binds no longer is released, ready or not before.
    assert_eq!(
        (&elsewhere["totals"]["released"], &elsewhere["totals"]["falls"]),
        (&json!(4), &json!(0))
    );
    for vessel in elsewhere["vessels"].as_array().unwrap() {
        assert_eq!((&vessel["bound"], &vessel["fate"]), (&json!("no"), &json!("released")));
        assert_eq!(
            (&vessel["verdict_under_draft"], &vessel["changes"]),
            (&Value::Null, &json!([]))
        );
    }
}

#[test]
fn a_draft_for_vessels_that_no_rule_names_falls_on_no_other() {
    let typed = ["audit", "vessels", "--date", "2026-11-25", "--format", "json", "--draft"];
    let typed = [&typed[..], &["good-practice-longline"]].concat();
    let draft = run::kitmuster(&typed).json()["draft"].clone();
    let totals = json!({
        "falls": 0, "rises": 0, "cannot_tell": 0, "released": 0, "stays_otherwise": 0,
        "unaffected": 3, "not_bound": 15
    });
    assert_eq!(draft["totals"], totals);
}

#[test]
fn a_draft_beside_what_was_asked_for_is_refused() {
    let draft = place("pier-2028.yaml");
    let flags = ["--draft", &*draft, "--profile", "mole-2020"];
    let ran = audit("fleet-now", "rules", AUGUST, &flags);
    assert_eq!((ran.status, ran.stdout.as_str()), (2, ""));
    assert!(flat(&ran.stderr).contains("`--profile` leaves that out"), "{}", ran.stderr);
}

#[test]
fn who_rises_is_told_by_what_and_not_the_old_fault() {
    let folder = tempfile::tempdir().unwrap();
    let text = std::fs::read_to_string(place("pier-2028.yaml")).unwrap();
    let text = text.replace("the greater of 150% of freeboard and 6 ft 3 in", "5 ft");
    let path = run::write(folder.path(), "draft.yaml", &text);
    let typed = ["--draft", &*path, "--format", "json"];
    let document = audit("fleet-then", "rules", AUGUST, &typed).json();
    let vessels = document["draft"]["vessels"].as_array().unwrap();
    let anvil = vessels.iter().find(|v| v["name"] == "Anvil Petrel").unwrap();
    assert_eq!(anvil["fate"], "rises");
    let changes = anvil["changes"].as_array().unwrap();
    let cutter = changes.iter().find(|c| c["requirement"] == "line-cutter").unwrap();
    assert_eq!((&cutter["reason"], &cutter["met_by"]), (&Value::Null, &json!(["LC-1"])));
    assert!(cutter["text"].as_str().unwrap().ends_with("not met → met by LC-1"), "{cutter}");
}

#[test]
fn a_vessel_of_which_the_permits_are_not_written_cannot_be_told() {
    let folder = tempfile::tempdir().unwrap();
    let text = std::fs::read_to_string(place("fleet-now/heath.yaml")).unwrap();
    let path = run::write(folder.path(), "a.yaml", &text.replace("permits: [pier-permit]\n", ""));
    let (rules, draft) = (super::rules("rules"), place("pier-2028.yaml"));
    let typed = ["audit", &path, "--requirements", &rules, "--date", AUGUST, "--draft", &draft];
    let document = run::kitmuster(&[&typed[..], &["--format", "json"]].concat()).json();
    let vessel = &document["draft"]["vessels"][0];
    assert_eq!(vessel["fate"], "cannot-tell");
    assert_eq!(vessel["bound"], "not-known");
}

#[test]
fn days_of_no_edition_leave_open_what_the_others_do_not_settle() {
    // The first edition begins with 2020, and so does the other rule.
    let under = |from: &str| {
        let draft = place("pier-2028.yaml");
        let days = ["--on", from, "--return", "2020-01-02", "--draft", &draft, "--format", "json"];
        audit("fleet-then", "rules", AUGUST, &days).json()["draft"].clone()
    };
    let of = |draft: &Value, name: &str| {
        let vessels = draft["vessels"].as_array().unwrap();
        vessels.iter().find(|v| v["name"] == name).unwrap().clone()
    };
    let before = under("2019-12-30");
    // Her cutter is too short by the edition of the last days.
    assert_eq!(of(&before, "Anvil Petrel")["verdict_in_force"], "not-ready");
    let heath = of(&before, "Heath Skua");
    assert_eq!(heath["verdict_in_force"], "cannot-tell");
    let changes = heath["changes"].as_array().unwrap();
    assert!(changes.iter().all(|change| change["requirement"] != ""), "{changes:?}");
    // Whom the other rule alone binds the draft does not concern.
    assert_eq!(before["totals"]["not_bound"], under("2020-01-01")["totals"]["not_bound"]);
}

#[test]
fn a_draft_may_lie_in_the_days_of_another_edition_and_nothing_else_may() {
    let draft = place("pier-2028.yaml");
    // In ordinary use two editions on one day stay refused.
    let ran = audit("fleet-now", "rules", AUGUST, &["--profile", &draft]);
    assert_eq!(ran.status, 2);
    assert!(flat(&ran.stderr).contains("in force on some of these days too"), "{}", ran.stderr);
    // Everything else that is wrong with a draft is told as ever.
    let folder = tempfile::tempdir().unwrap();
    let text = std::fs::read_to_string(&draft).unwrap().replace("drop: [pliers]", "drop: [plierz]");
    let path = run::write(folder.path(), "draft.yaml", &text);
    let ran = audit("fleet-now", "rules", AUGUST, &["--draft", &path]);
    assert_eq!((ran.status, ran.stdout.as_str()), (2, ""));
    assert!(ran.stderr.contains("plierz"), "{}", ran.stderr);
}

#[test]
fn what_is_no_single_edition_is_refused_as_a_draft() {
    for (typed, expected) in [
        ("pier", "`pier` is a rule of several editions: `pier-2025`, `pier-2026`"),
        ("peir-2026", "did you mean `pier-2026`?"),
        ("us-622-appendix-f", "a list that others build on"),
        ("us-atlantic-longline-2024", "not encoded"),
        ("nowhere.yaml", "there is no such file"),
    ] {
        let ran = audit("fleet-now", "rules", AUGUST, &["--draft", typed]);
        assert_eq!((ran.status, ran.stdout.as_str()), (2, ""), "{typed}");
        assert!(flat(&ran.stderr).contains(expected), "{}", ran.stderr);
    }
}

#[test]
fn the_exit_code_is_that_of_the_audit_and_no_record_holds_the_draft() {
    let folder = tempfile::tempdir().unwrap();
    let keep = |name: &str, flags: &[&str]| {
        let path = folder.path().join(name);
        let flags = [flags, &["--record", path.to_str().unwrap()]].concat();
        (audit("fleet-now", "rules", AUGUST, &flags).status, std::fs::read(path).unwrap())
    };
    let draft = place("pier-2028.yaml");
    assert!(keep("a", &[]) == keep("b", &["--draft", &draft]));
}

#[test]
fn the_section_of_the_page() {
    let draft = place("pier-2028.yaml");
    let ran = audit("fleet-now", "rules", AUGUST, &["--draft", &draft]);
    assert!(ran.stdout.lines().all(|line| line.chars().count() <= 80));
    insta::assert_snapshot!(ran.stdout.split("\n\n").nth(1).unwrap());
}

#[test]
fn the_key_of_the_document() {
    insta::assert_snapshot!(serde_json::to_string_pretty(&draft("pier-2028.yaml", &[])).unwrap());
}
