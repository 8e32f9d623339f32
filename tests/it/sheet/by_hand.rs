//! The skipper's checklist where a rule that binds is not in the program.

use super::{all, parsed, text_of};
use crate::run::kitmuster;

fn checklist(arguments: &[&str]) -> scraper::Html {
    let ran = kitmuster(&[&["sheet", "--for", "skipper"], arguments].concat());
    assert_eq!((ran.status, ran.stderr.as_str()), (0, ""), "{arguments:?}");
    parsed(&ran.stdout)
}

const NOTHING: &str = "is left to do";

#[test]
fn where_no_rule_is_encoded_the_whole_kit_is_gone_through_by_hand() {
    let vessel = "vessels/far-kestrel.yaml";
    let page = checklist(&[vessel]);
    let text = text_of(all(&page, "main")[0]);
    assert!(text.contains("can't tell") && !text.contains(NOTHING), "{text}");
    let jobs: Vec<_> = all(&page, ".jobs li").into_iter().map(text_of).collect();
    for source in ["50 CFR part 635", "50 CFR part 622, by reference 50 CFR part 635"] {
        let job = format!("go through the kit by hand, with the text of {source}");
        assert!(jobs.iter().any(|told| told.starts_with(&job)), "{job}: {jobs:?}");
    }
    let check = kitmuster(&["check", vessel, "--format", "json"]).json();
    for profile in check["profiles"].as_array().unwrap() {
        let title = profile["title"].as_str().unwrap();
        assert!(jobs.iter().any(|told| told.ends_with(&format!("- {title}"))), "{title}: {jobs:?}");
    }
    assert_eq!(all(&page, ".jobs .square").len(), jobs.len());
    let eyed: Vec<_> = all(&page, ".eyed b").into_iter().map(text_of).collect();
    let file = std::fs::read_to_string(crate::run::home().join(vessel)).unwrap();
    let marks = file.lines().filter_map(|line| line.trim().strip_prefix("- mark: "));
    let mut seen = 0;
    for mark in marks {
        assert_eq!(eyed.iter().filter(|known| *known == mark).count(), 1, "{mark}: {eyed:?}");
        seen += 1;
    }
    assert_eq!(seen, 15);
}

#[test]
fn a_trip_that_ends_under_an_edition_that_is_not_encoded_has_the_box_too() {
    // 89 FR 88656 took effect on 2024-11-29; the edition is known, not encoded.
    let arguments = ["vessels/winter-petrel.yaml", "--on", "2024-11-20", "--return", "2024-12-05"];
    let page = checklist(&arguments);
    let jobs: Vec<_> = all(&page, ".jobs li").into_iter().map(text_of).collect();
    let job = "go through the kit by hand, with the text of 50 CFR part 635";
    let job = jobs.iter().find(|told| told.starts_with(job)).unwrap_or_else(|| panic!("{jobs:?}"));
    assert!(job.contains("; for part of the trip: 2024-11-29"), "{job}");
    assert!(!text_of(all(&page, "main")[0]).contains(NOTHING));
}

#[test]
fn that_nothing_is_left_to_do_is_said_of_a_ready_vessel_only() {
    let (mut said, mut unsaid) = (0, 0);
    for entry in std::fs::read_dir(crate::run::home().join("vessels")).unwrap() {
        let path = entry.unwrap().path();
        if path.extension().is_none_or(|e| e != "yaml") {
            continue;
        }
        let vessel = path.to_string_lossy().into_owned();
        let check = kitmuster(&["check", &vessel, "--format", "json"]).json();
        let told = text_of(all(&checklist(&[&vessel]), "main")[0]).contains(NOTHING);
        assert_eq!(told, check["verdict"] == "ready", "{vessel}");
        *(if told { &mut said } else { &mut unsaid }) += 1;
    }
    assert!(said > 4 && unsaid > 4, "{said} {unsaid}");
}
