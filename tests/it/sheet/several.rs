//! Papers of a vessel that several rules bind.

use super::{all, parsed, text_of};
use crate::run::{home, kitmuster, write};
use std::path::Path;

/// A longliner that two rules bind on one day, which ask nearly the same.
fn vessel(folder: &Path) -> String {
    let text = std::fs::read_to_string(home().join("vessels/winter-petrel.yaml")).unwrap();
    let text = text
        .replace("[atlantic-hms]", "[atlantic-hms, dolphin-wahoo-commercial]")
        .replace("areas: [gulf-of-mexico]", "areas: [atlantic]");
    let at = text.find("  - mark: WB-1").unwrap();
    let end = text.find("  - mark: CT-1").unwrap();
    write(folder, "v.yaml", &format!("{}{}", &text[..at], &text[end..]))
}

fn paper(path: &str, arguments: &[&str]) -> scraper::Html {
    let ran = kitmuster(&[&["sheet", path], arguments].concat());
    assert_eq!((ran.status, ran.stderr.as_str()), (0, ""), "{arguments:?}");
    parsed(&ran.stdout)
}

#[test]
fn what_two_rules_ask_of_the_same_thing_is_one_row_that_names_both() {
    let folder = tempfile::tempdir().unwrap();
    let path = vessel(folder.path());
    let check = kitmuster(&["check", &path, "--format", "json"]).json();
    let sources: Vec<_> = check["profiles"].as_array().unwrap().iter().collect();
    assert_eq!(sources.len(), 2, "{check}");
    let page = paper(&path, &[]);
    let rows: Vec<_> = all(&page, ".thing").into_iter().map(text_of).collect();
    // The mouth openers are gone: one row to look for them, not one for each
    // rule.
    let openers: Vec<_> = rows.iter().filter(|row| row.contains("(i)(L)")).collect();
    assert_eq!(openers.len(), 1, "{openers:?}");
    assert!(openers[0].contains("(rules 1 and 2: 635.21(c)(5)(i)(L))"), "{openers:?}");
    // What the numbers mean stands at the head, and by id on every page.
    let named: Vec<_> = all(&page, ".editions li").into_iter().map(text_of).collect();
    let running = text_of(all(&page, ".running")[0]);
    for (at, profile) in sources.iter().enumerate() {
        let (source, id) = (profile["source"].as_str().unwrap(), profile["id"].as_str().unwrap());
        let number = format!("rule {}: ", at + 1);
        assert!(named[at].starts_with(&number) && named[at].contains(source), "{named:?}");
        assert!(running.contains(&format!("{number}{id}")), "{running}");
    }
}

#[test]
fn what_is_met_under_two_rules_is_told_once() {
    let folder = tempfile::tempdir().unwrap();
    let path = vessel(folder.path());
    let page = paper(&path, &["--for", "skipper"]);
    let lines: Vec<_> = all(&page, ".met li").into_iter().map(text_of).collect();
    assert!(lines.len() > 10, "{lines:?}");
    let nets: Vec<_> = lines.iter().filter(|line| line.contains("DN-1")).collect();
    assert_eq!(nets.len(), 1, "{nets:?}");
    assert!(nets[0].contains("(rules 1 and 2: 635.21(c)(5)(i)(E))"), "{nets:?}");
    let text = text_of(all(&page, "main")[0]);
    assert_eq!(text.matches("good up to:").count(), 1, "{text}");
}

#[test]
fn a_step_for_two_rules_names_them_once_and_what_one_alone_asks_names_it() {
    let folder = tempfile::tempdir().unwrap();
    let path = vessel(folder.path());
    let page = paper(&path, &["--for", "skipper"]);
    let jobs: Vec<_> = all(&page, ".jobs li").into_iter().map(text_of).collect();
    for job in &jobs {
        assert_eq!(job.matches("(rules 1 and 2: 635.21(c)(5)(i)(L))").count(), 1, "{job}");
        assert!(!job.contains("(rule 1:"), "{job}");
    }
    assert!(!jobs.is_empty());
    let rows: Vec<_> = all(&paper(&path, &[]), ".thing").into_iter().map(text_of).collect();
    let row = rows.iter().find(|row| row.contains("LC-1 ")).unwrap();
    assert!(row.contains("model on the agency's list of approved equipment* (rule 1)"), "{row}");
    assert!(!row.contains("(rules 1 and 2)"), "{row}");
    let hooks = rows.iter().find(|row| row.contains("weak circle hooks")).unwrap();
    assert!(hooks.contains("exactly 16/0 (rule 1: 635.21(c)(5)(iii)(C)(2))"), "{hooks}");
    let hook = rows.iter().find(|row| row.contains("DE-1 ")).unwrap();
    assert!(!hook.contains("(rule 1: "), "{hook}");
}

#[test]
fn under_one_rule_the_clause_stands_alone() {
    let page = paper("vessels/marlow-tern.yaml", &[]);
    let rows: String = all(&page, ".thing").into_iter().map(text_of).collect();
    assert!(rows.contains("(Appendix F, A.1)") && !rows.contains("rule 1"), "{rows}");
}

#[test]
fn how_far_a_kit_is_good_is_told_rule_by_rule_where_the_rules_differ() {
    let folder = tempfile::tempdir().unwrap();
    let [full, half] = [("full", 100), ("half", 50)].map(|(id, percent)| {
        let rule = format!(
            "format: profile/1\nid: {id}\nrule: {id}\nedition: first\nencoding: 1\n\
             title: The {id} pole\nsource: invented\nlanguage: en\nstanding: rule\n\
             freeboard from: top of the rail\nrequirements:\n  - id: cutter\n    \
             title: Cutter\n    clause: \"1\"\n    verified: read\n    \
             carry: 1 long-handled line cutter\n    \
             with: {{ handle: at least {percent}% of freeboard }}\n"
        );
        write(folder.path(), &format!("{id}.yaml"), &rule)
    });
    let vessel = "format: vessel/1\nname: Pole Star\nfreeboard: 3 ft\npermits: []\ngear: []\n\
                  areas: []\ntrip: { depart: 2026-12-02, return: 2026-12-03 }\nkit:\n  \
                  - { mark: LC-1, kind: long-handled line cutter, handle: 4 ft, \
                  condition: serviceable }\n";
    let path = write(folder.path(), "v.yaml", vessel);
    let told = |profiles: &[&str]| {
        let profiles = profiles.iter().flat_map(|one| ["--profile", one]);
        let flags: Vec<_> = ["--for", "skipper"].into_iter().chain(profiles).collect();
        let lines = all(&paper(&path, &flags), "p").into_iter().map(text_of).collect::<Vec<_>>();
        lines.into_iter().filter(|line| line.contains("good up to:")).collect::<Vec<_>>()
    };
    let both = told(&[&full, &half]);
    assert_eq!(both.len(), 2, "{both:?}");
    assert!(both[0].starts_with("The full pole: ") && both[0].contains(" 4 ft"), "{both:?}");
    assert!(both[1].starts_with("The half pole: ") && both[1].contains(" 8 ft"), "{both:?}");
    let one = told(&[&full]);
    assert!(one.len() == 1 && !one[0].contains("The full pole: "), "{one:?}");
}
