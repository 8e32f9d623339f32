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
    let by_hand = "Do: Stay inside the rail and cut the line as short as you can reach; never let \
                   the turtle go with line trailing. NO WAY AT ALL with this kit - in harbour, bring ";
    assert!(lines[1].starts_with(by_hand), "{}", lines[1]);
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

/// How a swallowed hook in the water stands, with the best choice, by the
/// length of the only tool that cuts the line from the rail.
fn cut_with(handle: &str, cuts: &str) -> (String, bool, String) {
    let vessel = without(&["DN-1", "LC-1", "DE-1", "DI-1"]).replace("2 ft 10 in", "5 ft");
    let cutter = format!(
        "kit:\n  - {{ mark: LC-1, kind: long-handled line cutter, handle: {handle}, \
         cuts-monofilament: {cuts} }}"
    );
    let vessel = file(&vessel.replace("kit:", &cutter));
    let asked = ["--format", "json", "--case", "alongside,large,swallowed"];
    let json = options(&vessel.path, &asked).json();
    let situation = &json["situations"][0];
    let choice = &situation["choices"][0];
    let page = short(&vessel.path, "alongside,large,swallowed").remove(1);
    (situation["standing"].as_str().unwrap().to_owned(), choice["short"] == true, page)
}

/// Two lengths decide: the freeboard itself, which a tool has to be longer
/// than to touch the water (5 ft), and the published 150 % of it (7 ft 6 in;
/// 50 CFR part 622 Appendix F, A.1, read).
#[test]
fn a_tool_that_reaches_the_water_is_never_no_way() {
    for (handle, standing, short, says) in [
        ("4 ft", "nothing", false, "NO WAY AT ALL"),
        ("5 ft", "nothing", false, "NO WAY AT ALL"),
        ("1524.000001 mm", "fallback", true, "(LC-1, short of the published length)"),
        ("6 ft", "fallback", true, "(LC-1, short of the published length)"),
        ("2285.999999 mm", "fallback", true, "(LC-1, short of the published length)"),
        ("7 ft 6 in", "first-choice", false, "Do: Cut the line short from the rail (LC-1)."),
    ] {
        let (stands, is_short, page) = cut_with(handle, "3.5 mm");
        assert_eq!((stands.as_str(), is_short), (standing, short), "{handle}");
        assert!(page.contains(says), "{handle}: {page}");
    }
}

/// Whoever stands at the rail is never told to measure first.
#[test]
fn no_answer_to_an_emergency_begins_with_measuring() {
    let (stands, _, page) = cut_with("unknown", "3.5 mm");
    assert_eq!(stands, "cannot-tell");
    let begins = "Do: Stay inside the rail and cut the line as short as you can reach; never let \
                  the turtle go with line trailing. Try to cut the line short from the rail, \
                  whatever was not measured.";
    assert!(page.starts_with(begins), "{page}");
    let unmeasured = FULL.replace("2 ft 10 in", "unknown").replace("7 ft", "unknown");
    let unmeasured = file(&unmeasured);
    for kit in [unmeasured.path.as_str(), "vessels/night-whimbrel.yaml"] {
        for place in ["aboard", "alongside,boardable", "alongside,rough", "alongside,large"] {
            for site in ["tangled", "outside", "mouth", "deep", "swallowed"] {
                let case = format!("{place},{site},circle,buried");
                let told = short(kit, &case).remove(1).to_lowercase();
                let told = told.trim_start_matches("do: ");
                for verb in ["measure", "write", "find", "look", "no way", "can't tell", "get"] {
                    assert!(!told.starts_with(verb), "{kit} {case}: {told}");
                }
            }
        }
    }
}
