//! The skipper's checklist.

use super::{all, parsed, reduced, text_of};
use crate::run::kitmuster;

fn checklist(vessel: &str) -> scraper::Html {
    let ran = kitmuster(&["sheet", vessel, "--for", "skipper"]);
    assert_eq!((ran.status, ran.stderr.as_str()), (0, ""), "{vessel}");
    parsed(&ran.stdout)
}

#[test]
fn a_skippers_checklist_reads_so() {
    insta::assert_snapshot!(reduced(&checklist("vessels/marlow-tern.yaml")));
}

#[test]
fn what_is_to_be_done_is_the_shortest_way_of_the_check() {
    let check = kitmuster(&["check", "vessels/salt-pomelo.yaml", "--format", "json"]).json();
    let page = checklist("vessels/salt-pomelo.yaml");
    let jobs: Vec<_> = all(&page, ".jobs li b").into_iter().map(text_of).collect();
    let mut steps = 0;
    for profile in check["profiles"].as_array().unwrap() {
        for step in profile["way_to_ready"]["steps"].as_array().into_iter().flatten() {
            let text = step["text"].as_str().unwrap();
            assert!(jobs.iter().any(|job| job == text), "{text}: {jobs:?}");
            steps += 1;
        }
    }
    assert!(steps > 0);
}

#[test]
fn what_runs_out_at_sea_is_told_with_its_day() {
    let page = checklist("vessels/night-whimbrel.yaml");
    let text = text_of(all(&page, "main")[0]);
    assert!(text.contains("its inspection runs out during the trip, on "), "{text}");
}

#[test]
fn on_a_ready_vessel_nothing_is_left_to_do_and_every_met_finding_is_proved() {
    let check = kitmuster(&["check", "vessels/brindle-skua.yaml", "--format", "json"]).json();
    assert_eq!(check["verdict"], "ready");
    let page = checklist("vessels/brindle-skua.yaml");
    let proved: Vec<_> = all(&page, ".proved li").into_iter().map(text_of).collect();
    let met = check["profiles"].as_array().unwrap().iter().flat_map(|profile| {
        let findings = profile["findings"].as_array().unwrap().iter();
        findings.filter(|finding| finding["outcome"] == "met")
    });
    let met: Vec<_> = met.collect();
    assert_eq!(proved.len(), met.len());
    for (line, finding) in proved.iter().zip(met) {
        assert!(line.starts_with("☑ proved: "), "{line}");
        assert!(line.contains(finding["title"].as_str().unwrap()), "{line}");
        assert!(line.contains(finding["citation"]["clause"].as_str().unwrap()), "{line}");
    }
    assert!(all(&page, ".jobs").is_empty());
    assert!(text_of(all(&page, "main")[0]).contains("is left to do"));
}
