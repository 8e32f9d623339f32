//! The short answer to one case: five lines.

use super::{FULL, file, options, without};

const LABELS: [&str; 5] = ["Case: ", "Do: ", "Better: ", "Never: ", "Care: "];

fn short(vessel: &str, case: &str) -> Vec<String> {
    let ran = options(vessel, &["--case", case]);
    assert_eq!(ran.stderr, "", "{case}");
    let lines: Vec<String> = ran.stdout.lines().map(str::to_owned).collect();
    assert_eq!(lines.len(), 5, "{}", ran.stdout);
    for (line, label) in lines.iter().zip(LABELS) {
        assert!(line.starts_with(label), "{line}");
    }
    lines
}

#[test]
fn a_case_is_answered_in_five_lines() {
    let ran = options("vessels/marlow-tern.yaml", &["--case", "alongside,outside,circle,buried"]);
    assert_eq!(ran.status, 1);
    insta::assert_snapshot!(ran.stdout);
    short("vessels/marlow-tern.yaml", "buried, circle, alongside, outside");
}

#[test]
fn every_case_that_says_enough_is_answered_in_five_lines() {
    let full = file(FULL);
    for place in ["aboard", "alongside,boardable", "alongside,rough", "alongside,large"] {
        for site in ["tangled", "outside", "mouth", "deep", "swallowed"] {
            for rest in ["j,buried", "circle,showing", "circle,buried,limp"] {
                short(&full.path, &format!("{place},{site},{rest}"));
            }
        }
    }
}

#[test]
fn what_is_left_unsaid_gives_two_answers_in_the_same_lines() {
    let full = file(FULL);
    let lines = short(&full.path, "alongside,tangled,limp");
    assert_eq!(
        lines[1],
        "Do: If it can come aboard: bring it aboard in the dipnet, then cut it free on deck \
         (DN-1, MC-1); with it, lay it down to recover (TI-1). If it stays in the water: cut it free \
         in the water (LC-1)."
    );
    // What is the same either way is told once.
    assert_eq!(lines[2], "Better: Nothing better.");
    let lines = short(&full.path, "aboard,outside,buried");
    assert!(!lines[0].contains("no such hook"), "{}", lines[0]);
    assert!(lines[1].starts_with("Do: If it is a J hook: back the hook out"), "{}", lines[1]);
    let lines = short(&full.path, "aboard,outside,circle");
    assert!(lines[1].contains("If point and barb are buried: push"), "{}", lines[1]);
}

#[test]
fn a_limp_animal_on_deck_is_laid_down_to_recover() {
    let full = file(FULL);
    let lines = short(&full.path, "aboard,swallowed,limp");
    assert!(lines[1].contains("; with it, lay it down to recover (TI-1)"), "{}", lines[1]);
    assert!(lines[3].contains("lay a limp turtle on its back"), "{}", lines[3]);
    let lines = short(&full.path, "aboard,swallowed");
    assert!(!lines[1].contains("recover"), "{}", lines[1]);
    assert!(!lines[3].contains("limp"), "{}", lines[3]);
}

#[test]
fn where_nothing_is_open_it_says_so_loudly_and_what_to_get_first() {
    let bare = file(&without(&["LC-1", "MC-1", "DE-1", "DI-1"]));
    let lines = short(&bare.path, "alongside,large,swallowed");
    assert!(lines[1].starts_with("Do: NO WAY AT ALL with this kit - FIRST bring "), "{}", lines[1]);
    assert!(lines[1].contains("long-handled line cutter"), "{}", lines[1]);
    assert_eq!(lines[2], "Better: Cut the line short from the rail - open after that.");
}

#[test]
fn the_better_choice_tells_why_it_is_closed_and_what_opens_it() {
    let no_net = file(&without(&["DN-1"]));
    let lines = short(&no_net.path, "alongside,boardable,outside,showing");
    assert_eq!(lines[1], "Do: Cut the line short from the rail (LC-1).");
    assert!(lines[2].starts_with("Better: Bring it aboard in the dipnet - closed: no dip net"));
    assert!(lines[2].contains("; to open it, bring a dip net"), "{}", lines[2]);
}

#[test]
fn an_animal_with_a_hook_from_elsewhere_is_told_apart() {
    let full = file(FULL);
    let lines = short(&full.path, "aboard,outside,j,buried");
    assert!(lines[0].contains("(no such hook aboard)"), "{}", lines[0]);
    assert!(lines[2].contains("the wire of this one is not known"), "{}", lines[2]);
    assert_eq!(
        lines[1],
        "Do: Back the hook out with the short J end (SE-1, TI-1); if it fails, leave the hook and \
         cut the line at the eye (MC-1)."
    );
}
