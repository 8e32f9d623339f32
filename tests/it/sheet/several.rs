//! Papers of a vessel that several rules bind.

use super::{all, parsed, text_of};
use crate::run::{home, kitmuster, write};
use std::path::Path;

/// A longliner that two rules bind on one day, which ask nearly the same.
fn vessel(folder: &Path) -> String {
    let text = std::fs::read_to_string(home().join("vessels/winter-petrel.yaml")).unwrap();
    let text = text
        .replace("[atlantic-hms]", "[atlantic-hms, dolphin-wahoo-commercial]")
        .replace("areas: [gulf-of-mexico]", "areas: [atlantic]")
        .replace("  - mark: PL-1\n    kind: long-nose pliers\n    overall: 12 in\n", "");
    let at = text.find("    conforms: [{ to: \"635.21(c)(5)(i)(I)\"").unwrap();
    let end = at + text[at..].find('\n').unwrap() + 1;
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
    // The pliers are gone: one row to look for them, not one for each rule.
    let pliers: Vec<_> = rows.iter().filter(|row| row.contains("(I)")).collect();
    assert_eq!(pliers.len(), 1, "{pliers:?}");
    for profile in sources {
        let rule = profile["source"].as_str().unwrap();
        assert!(pliers[0].contains(rule), "{rule}: {pliers:?}");
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
    for rule in ["50 CFR part 635", "50 CFR part 622, by reference 50 CFR part 635"] {
        assert!(nets[0].contains(rule), "{nets:?}");
    }
}

#[test]
fn under_one_rule_the_clause_stands_alone() {
    let page = paper("vessels/marlow-tern.yaml", &[]);
    let rows: String = all(&page, ".thing").into_iter().map(text_of).collect();
    assert!(rows.contains("(Appendix F, A.1)") && !rows.contains("50 CFR"), "{rows}");
}
