//! The skipper's checklist.

use super::{all, parsed, reduced, text_of};
use crate::run::{home, kitmuster, write};

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
fn on_a_ready_vessel_nothing_is_left_to_do_and_every_met_finding_is_told() {
    let check = kitmuster(&["check", "vessels/brindle-skua.yaml", "--format", "json"]).json();
    assert_eq!(check["verdict"], "ready");
    let page = checklist("vessels/brindle-skua.yaml");
    let lines: Vec<_> = all(&page, ".met li").into_iter().map(text_of).collect();
    let met = check["profiles"].as_array().unwrap().iter().flat_map(|profile| {
        let findings = profile["findings"].as_array().unwrap().iter();
        findings.filter(|finding| finding["outcome"] == "met")
    });
    let met: Vec<_> = met.collect();
    assert_eq!(lines.len(), met.len());
    for (line, finding) in lines.iter().zip(met) {
        assert!(line.contains(finding["title"].as_str().unwrap()), "{line}");
        assert!(line.contains(finding["citation"]["clause"].as_str().unwrap()), "{line}");
    }
    assert!(all(&page, ".jobs").is_empty());
    let text = text_of(all(&page, "main")[0]);
    assert!(text.contains("Nothing that the rules above ask for is left to do"), "{text}");
    assert!(text.contains("Met, by what the list says"), "{text}");
    assert!(!text.contains('☑') && !text.to_lowercase().contains("proved"), "{text}");
}

#[test]
fn what_nobody_measured_is_called_stated() {
    // What is met only as long as more than measured figures is believed.
    let mut told = 0;
    for vessel in ["vessels/brindle-skua.yaml", "vessels/stillwater-heron.yaml"] {
        let text = std::fs::read_to_string(home().join(vessel)).unwrap();
        let folder = tempfile::tempdir().unwrap();
        let stated = write(
            folder.path(),
            "v.yaml",
            &text
                .replace("figures: measured", "figures: stated")
                .replace("how: measured", "how: label"),
        );
        for path in [vessel, stated.as_str()] {
            let json = ["check", path, "--format", "json"];
            let all_of = kitmuster(&json).json();
            let less = kitmuster(&[&json[..], &["--trust", "measured"]].concat()).json();
            let page = checklist(path);
            let lines: Vec<_> = all(&page, ".met li").into_iter().map(text_of).collect();
            let findings = |check: &serde_json::Value| {
                check["profiles"][0]["findings"].as_array().unwrap().clone()
            };
            let less = findings(&less);
            for finding in findings(&all_of).iter().filter(|f| f["outcome"] == "met") {
                let same = |f: &&serde_json::Value| f["requirement"] == finding["requirement"];
                let less = less.iter().find(same).unwrap();
                let title = finding["title"].as_str().unwrap();
                let line = lines.iter().find(|line| line.contains(title)).unwrap();
                let stated = less["outcome"] != "met";
                assert_eq!(line.contains("stated, not measured"), stated, "{path}: {line}");
                told += usize::from(stated);
            }
        }
    }
    assert!(told > 5, "{told}");
}

#[test]
fn a_step_on_the_vessel_itself_is_for_no_single_requirement() {
    let folder = tempfile::tempdir().unwrap();
    let text = std::fs::read_to_string(home().join("vessels/marlow-tern.yaml")).unwrap();
    let path = write(folder.path(), "v.yaml", &text.replace("freeboard: 4 ft 3 in\n", ""));
    let page = checklist(&path);
    let jobs: Vec<_> = all(&page, ".jobs li").into_iter().map(text_of).collect();
    let job = jobs.iter().find(|job| job.contains("freeboard from the top of the rail")).unwrap();
    assert!(!job.contains("for Long-handled"), "{job}");
    assert!(!job.contains(" - for "), "{job}");
    let others = checklist("vessels/salt-pomelo.yaml");
    let jobs: Vec<_> = all(&others, ".jobs li").into_iter().map(text_of).collect();
    assert!(jobs.iter().any(|job| job.contains(" - for ")), "{jobs:?}");
}

#[test]
fn the_freeboard_it_was_judged_at_and_how_far_it_is_good_stand_on_the_list() {
    let text = text_of(all(&checklist("vessels/stillwater-heron.yaml"), "main")[0]);
    assert!(text.contains("freeboard 4 ft 6 in (1.372 m) from the top of the rail"), "{text}");
    let check = kitmuster(&["check", "vessels/stillwater-heron.yaml"]).stdout;
    assert!(check.contains("good up to"), "{check}");
    assert!(text.contains("good up to: a freeboard of "), "{text}");
}

#[test]
fn a_part_that_serves_one_tool_at_a_time_is_told_above_the_steps() {
    let text = text_of(all(&checklist("vessels/long-meridian.yaml"), "main")[0]);
    let clash = text.find("share POLE-A, which serves one tool at a time").expect(&text);
    assert!(clash < text.find("Do before leaving").unwrap(), "{text}");
}

#[test]
fn what_is_recommended_and_not_met_stands_under_its_own_heading_with_a_box() {
    let mut seen = 0;
    for vessel in ["vessels/night-whimbrel.yaml", "vessels/vesper-noddy.yaml"] {
        let check = kitmuster(&["check", vessel, "--format", "json"]).json();
        let page = checklist(vessel);
        let lines: Vec<_> = all(&page, ".recommended li").into_iter().map(text_of).collect();
        for finding in check["profiles"][0]["findings"].as_array().unwrap() {
            let title = finding["title"].as_str().unwrap();
            let wanted = finding["level"] == "recommended" && finding["outcome"] != "met";
            assert_eq!(lines.iter().any(|line| line.contains(title)), wanted, "{title}: {lines:?}");
            seen += usize::from(wanted);
        }
        assert_eq!(all(&page, ".recommended .square").len(), lines.len());
    }
    assert_eq!(seen, 7);
}

#[test]
fn a_lot_has_a_box_for_how_many_on_the_list_too() {
    let page = checklist("vessels/winter-petrel.yaml");
    let lines: Vec<_> = all(&page, ".byeye .eyed").into_iter().map(text_of).collect();
    for line in &lines {
        assert_eq!(line.contains("how many"), line.contains("TI-1"), "{line}");
    }
    assert!(lines.iter().any(|line| line.contains("TI-1")), "{lines:?}");
}
