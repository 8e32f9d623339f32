//! Since when something is open, through a time in which nobody can tell of
//! its rule, and for the rule as a whole.

use super::{flat, place, value};
use crate::run;
use std::path::Path;

/// Rules of which the edition of August is known and not encoded.
fn rules(folder: &Path) -> String {
    let rules = folder.join("rules");
    std::fs::create_dir(&rules).unwrap();
    run::with_words(&rules);
    let first = std::fs::read_to_string(place("rules/pier-2025.yaml")).unwrap();
    std::fs::write(rules.join("pier-2025.yaml"), &first).unwrap();
    let stub = "format: profile/1\nid: pier-2026\nrule: pier\nedition: second\n\
                title: Pier rule\nsource: Pier notice 12\nlanguage: en\nstanding: rule\n\
                encoded: no\n\
                in force: { from: 2026-07-01, until: 2026-08-31 }\n\
                binds: { permits: [pier-permit] }\n";
    std::fs::write(rules.join("pier-2026.yaml"), stub).unwrap();
    let third = first.replace("pier-2025", "pier-2027").replace("edition: first", "edition: third");
    let third = third.replace("{ from: 2020-01-01, until: 2026-06-30 }", "{ from: 2026-09-01 }");
    std::fs::write(rules.join("pier-2027.yaml"), third).unwrap();
    rules.to_str().unwrap().to_owned()
}

#[test]
fn neither_the_whole_rule_nor_what_it_hides_grows_younger() {
    let folder = tempfile::tempdir().unwrap();
    let folder = folder.path();
    let rules = rules(folder);
    let mut last: Option<String> = None;
    let mut audit = |on: &str, keep: &str| {
        let path = folder.join(keep).to_str().unwrap().to_owned();
        let fleet = place("fleet-then/briar.yaml");
        let typed = ["audit", &fleet, "--requirements", &rules, "--date", on, "--on", on];
        let mut typed = [&typed[..], &["--return", on, "--record", &path]].concat();
        let before = last.clone();
        if let Some(before) = &before {
            typed.extend(["--against", before]);
        }
        let ran = run::kitmuster(&typed);
        assert_eq!(ran.status, 1, "{}", ran.stderr);
        assert_eq!(run::kitmuster(&["verify", &path]).status, 0);
        last = Some(path.clone());
        (flat(&ran.stdout), value(&path))
    };
    audit("2026-06-10", "1");
    audit("2026-07-10", "2");
    let (page, record) = audit("2026-07-20", "3");
    assert!(page.contains("still open since 2026-07-10: `pier` as a whole"), "{page}");
    assert_eq!(record["vessels"][0]["since"].as_array().unwrap().len(), 2, "{record}");
    let (page, _) = audit("2026-08-10", "4");
    assert!(page.contains("still open since 2026-07-10: `pier` as a whole"), "{page}");
    assert!(page.contains("still open since 2026-06-10: `long-cutter`"), "{page}");
    let (page, record) = audit("2026-09-10", "5");
    assert!(page.contains("still open since 2026-06-10: Long line cutter"), "{page}");
    let finding = &record["vessels"][0]["profiles"][0]["findings"][0];
    assert_eq!(finding["open_since"], "2026-06-10", "{finding}");
}
