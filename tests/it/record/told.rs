//! What a change is called: settled or mended, for the same reason or another,
//! and what was asked by a file.

use super::{AUGUST, JUNE, flat, place};
use crate::run;
use serde_json::{Value, json};
use std::path::Path;

fn text(name: &str) -> String {
    std::fs::read_to_string(place(&format!("fleet-then/{name}.yaml"))).unwrap()
}

/// A vessel on record as it was, then compared as it is.
fn compared(then: (&str, &[&str]), now: (&str, &[&str]), date: &str) -> Value {
    let folder = tempfile::tempdir().unwrap();
    let record = folder.path().join("record.json");
    let record = record.to_str().unwrap();
    let rules = super::rules("rules");
    let audit = |text: &str, flags: &[&str]| {
        let path = run::write(folder.path(), "vessel.yaml", text);
        let typed = ["audit", &path, "--requirements", &rules];
        run::kitmuster(&[&typed[..], flags].concat())
    };
    audit(then.0, &[then.1, &["--date", JUNE, "--record", record]].concat());
    let flags = ["--date", date, "--against", record, "--format", "json"];
    audit(now.0, &[now.1, &flags].concat()).json()["against"].clone()
}

fn finding<'v>(against: &'v Value, requirement: &str) -> &'v Value {
    let findings = against["vessels"][0]["findings"].as_array().unwrap();
    let found = findings.iter().find(|f| f["requirement"] == requirement);
    found.unwrap_or_else(|| panic!("{requirement}: {against}"))
}

#[test]
fn what_was_only_measured_is_settled_and_not_mended() {
    let now = text("anvil").replace("5 ft 10 in", "6 ft 2 in");
    let unmeasured = now.replace(", handle: 6 ft 2 in", "");
    let against = compared((&unmeasured, &[]), (&now, &[]), JUNE);
    let cutter = finding(&against, "long-cutter");
    assert_eq!((&cutter["then"], &cutter["now"]), (&json!("cannot-tell"), &json!("met")));
    assert_eq!((&cutter["settled"], &cutter["mended"]), (&json!(true), &json!(false)));
    assert_eq!(cutter["text"], "settled: it is met");
    let totals = &against["totals"];
    assert_eq!((&totals["settled"], &totals["mended"]), (&json!(1), &json!(0)));
    // What was too short and is longer was mended.
    let against = compared((&text("anvil"), &[]), (&now, &[]), JUNE);
    let totals = &against["totals"];
    assert_eq!((&totals["settled"], &totals["mended"]), (&json!(0), &json!(1)));
}

#[test]
fn what_is_open_for_another_reason_than_then_says_so() {
    let now = "handle: 6 ft 2 in, condition: broken";
    let broken = text("anvil").replace("handle: 5 ft 10 in", now);
    let against = compared((&text("anvil"), &[]), (&broken, &[]), JUNE);
    let cutter = finding(&against, "long-cutter");
    assert_eq!(cutter["fate"], "still-open", "{cutter}");
    assert_eq!(cutter["reason"], "not-serviceable");
    assert_eq!(cutter["reason_then"], "too-short-for-rail");
    let same = compared((&text("anvil"), &[]), (&text("anvil"), &[]), AUGUST);
    let cutter = finding(&same, "long-cutter");
    assert_eq!(cutter["reason"], "too-short-for-rail");
    assert_eq!(cutter["reason_then"], Value::Null);
}

#[test]
fn what_nobody_did_to_the_vessel_is_not_called_so() {
    let days = |from, until| ["--on", from, "--return", until];
    let june = days("2026-06-10", "2026-06-12");
    // Her permit is given back: the rule asks nothing of her.
    let given = text("anvil").replace("[pier-permit]", "[quay-permit]");
    let against = compared((&text("anvil"), &[]), (&given, &[]), JUNE);
    let cutter = finding(&against, "long-cutter");
    assert_eq!((&cutter["cause"], &cutter["mended"]), (&json!("vessel"), &json!(false)));
    // The pliers were inspected too long ago for the later of two trips.
    let gorse = text("gorse").replace("inspected: 2025-07-15", "inspected: 2025-06-15");
    let later = days("2026-06-20", "2026-06-22");
    let against = compared((&gorse, &june), (&gorse, &later), JUNE);
    assert_eq!(finding(&against, "pliers")["cause"], "calendar");
    // Other figures are believed.
    let stated = text("heath").replace("figures: measured", "figures: stated");
    let against = compared(
        (&stated, &june),
        (&stated, &[&june[..], &["--trust", "measured"]].concat()),
        JUNE,
    );
    assert_eq!(finding(&against, "long-cutter")["cause"], "asked");
}

#[test]
fn a_profile_that_is_named_as_a_file_is_what_was_asked() {
    let folder = tempfile::tempdir().unwrap();
    let own = "format: profile/1\nid: own\nrule: own\nedition: \"1\"\ntitle: Own\n\
               source: Own notice\nlanguage: en\nstanding: rule\n\
               in force: { from: 2020-01-01 }\nbinds: { permits: [pier-permit] }\n\
               requirements:\n  - { id: net, title: Net, clause: c, verified: read, \
               carry: 1 dip net }\n";
    let path = run::write(folder.path(), "own.yaml", own);
    let asked: &[&str] = &["--profile", &path];
    let anvil = text("anvil");
    let given = compared((&anvil, &[]), (&anvil, asked), JUNE);
    assert_eq!(finding(&given, "net")["cause"], "asked");
    assert_eq!(finding(&given, "long-cutter")["cause"], "asked");
    let left = compared((&anvil, asked), (&anvil, &[]), JUNE);
    assert_eq!(finding(&left, "net")["cause"], "asked");
    assert_eq!(finding(&left, "long-cutter")["cause"], "asked");
    assert!(Path::new(&path).exists());
}

#[test]
fn only_a_newcomer_of_its_kind_may_be_the_tool_that_is_gone() {
    let anvil = text("anvil");
    let short = "  - { mark: LC-1, kind: long-handled line cutter, handle: 5 ft 10 in }\n";
    assert!(anvil.contains(short));
    // A second one was listed then already.
    let second = |handle: &str| short.replace("LC-1", "LC-2").replace("5 ft 10 in", handle);
    let then = anvil.replace(short, &format!("{short}{}", second("5 ft")));
    let now = anvil.replace(short, &second("6 ft 4 in"));
    let against = compared((&then, &[]), (&now, &[]), JUNE);
    assert_eq!(finding(&against, "long-cutter")["mended"], true);
    // A tool of another kind does as well.
    let own = "format: profile/1\nid: own\nrule: own\nedition: \"1\"\ntitle: Own\n\
               source: Own notice\nlanguage: en\nstanding: rule\n\
               binds: { permits: [pier-permit] }\nfreeboard from: top of the rail\n\
               requirements:\n  - { id: net, title: Net, clause: c, verified: read, carry: 1, \
               one of: [{ kind: long-handled line cutter, with: { handle: at least 6 ft } }, \
               { kind: dip net }] }\n";
    let folder = tempfile::tempdir().unwrap();
    let path = run::write(folder.path(), "own.yaml", own);
    let asked: &[&str] = &["--profile", &path];
    for (tool, mended) in
        [("kind: dip net", true), ("kind: long-handled line cutter, handle: 7 ft", false)]
    {
        let now = anvil.replace(short, &format!("  - {{ mark: N-1, {tool} }}\n"));
        let against = compared((&anvil, asked), (&now, asked), JUNE);
        assert_eq!(finding(&against, "net")["mended"], mended, "{tool}");
    }
}

/// A cutter that is gone under its mark and back under another, without a word of
/// either: nothing is mended. One that was bought, or that an inspector saw, is
/// another.
#[test]
fn a_tool_under_another_mark_is_not_mended() {
    let old = "{ mark: LC-1, kind: long-handled line cutter, handle: 5 ft 10 in }";
    let fate = |cutter: &str, record: Option<&str>| {
        let folder = tempfile::tempdir().unwrap();
        let (then, now) = (folder.path().join("then"), folder.path().join("now"));
        for fleet in [&then, &now] {
            std::fs::create_dir(fleet).unwrap();
        }
        let text = std::fs::read_to_string(place("fleet-then/anvil.yaml")).unwrap();
        assert_eq!(text.matches(old).count(), 1);
        run::write(&then, "anvil.yaml", &text);
        run::write(
            &now,
            "anvil.yaml",
            &text.replace(old, cutter).replace("2026-05-20", "2026-07-20"),
        );
        let rules = super::rules("rules");
        let path = |path: &std::path::Path| path.to_str().unwrap().to_owned();
        let (then, now, kept) = (path(&then), path(&now), path(&folder.path().join("then.json")));
        let typed = ["audit", &then, "--requirements", &rules, "--date", JUNE, "--record", &kept];
        assert_eq!(run::kitmuster(&typed).status, 1);
        let mut typed = vec!["audit", &now, "--requirements", &rules, "--date", AUGUST];
        typed.extend(["--on", "2026-08-05", "--against", &kept]);
        let seen = record.map(|lines| {
            let head = "format: inspection/1\nvessel: Anvil Petrel\non: 2026-07-25\n";
            run::write(folder.path(), "seen.yaml", &format!("{head}{lines}"))
        });
        typed.extend(seen.iter().flat_map(|path| ["--inspection", path.as_str()]));
        let page = run::kitmuster(&typed).stdout;
        let json = run::kitmuster(&[&typed[..], &["--format", "json"]].concat()).json();
        let findings = json["against"]["vessels"][0]["findings"].as_array().unwrap();
        let cutter = findings.iter().find(|f| f["requirement"] == "line-cutter").unwrap();
        let told = flat(&page).contains("it may be the same");
        assert_eq!(told, cutter["mark_then"] == "LC-1", "{page}");
        assert_eq!(json["against"]["totals"]["mended"], u8::from(cutter["mended"] == true));
        (cutter["fate"].clone(), cutter["mended"] == true)
    };
    let closed = |mended: bool| (serde_json::json!("closed"), mended);
    let long = |mark: &str, more: &str| {
        format!("{{ mark: {mark}, kind: long-handled line cutter, handle: 6 ft 4 in{more} }}")
    };
    assert_eq!(fate(&long("LC-1", ""), None), closed(true));
    assert_eq!(fate(&long("LC-2", ""), None), closed(false));
    assert_eq!(fate(&long("LC-2", ", acquired: 2026-07-01"), None), closed(true));
    assert_eq!(fate(&long("LC-2", ""), Some("found: [{ mark: LC-2 }]")), closed(true));
    assert_eq!(fate(&long("LC-2", ""), Some("found: [{ mark: PL-1 }]")), closed(false));
    // By the day on which she was to leave it may have been aboard.
    assert_eq!(fate(&long("LC-2", ", acquired: 2026-06-10"), None), closed(false));
    // The old one is still there, or was looked for.
    let both = format!("{}\n  - {}", old, long("LC-2", ""));
    assert_eq!(fate(&both, None), closed(true));
    let sought = "found: [{ mark: LC-1, missing: yes }]";
    assert_eq!(fate(&long("LC-2", ""), Some(sought)), closed(true));
}
