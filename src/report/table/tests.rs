//! The page of hand-made checks.

use super::table;
use crate::measure::{DaySpan, Units};
use crate::model::check::{Check, Notice, Why};
use crate::model::finding::{Because, Clash, Outcome, ReadyUntil, Verdict, WayToReady};
use crate::model::profile::{Profile, Standing};
use crate::model::reason::{Reason, VesselFact};
use crate::report::Subject;
use crate::report::sample;
use std::sync::Arc;

fn page(check: &Check, width: usize) -> String {
    let vocabulary = sample::vocabulary();
    let subject = Subject { check, vocabulary: &vocabulary, sources: &[], units: Units::Both };
    anstream::adapter::strip_str(&table(&subject, width)).to_string()
}

fn position(page: &str, text: &str) -> usize {
    page.find(text).unwrap_or_else(|| panic!("`{text}` is not on the page:\n{page}"))
}

#[test]
fn the_verdict_comes_first_then_what_is_wrong_then_the_rest() {
    let text = page(&sample::not_ready(), 80);
    let order = [
        "NOT READY  Almeja (PA-007), Port Ansel",
        "trip 2026-03-02 to 2026-03-09",
        "freeboard 4 ft 3 in (1.295 m) from the top of the rail",
        "To put right (1)",
        "-  Long-handled line clipper or cutter",
        "do: lengthen LC-1",
        "In order (1)",
        "Recommended",
        "ready until",
        "good up to",
        "on memory",
        "no legal advice",
    ];
    let positions: Vec<_> = order.iter().map(|text_of| position(&text, text_of)).collect();
    assert!(text.starts_with("NOT READY"), "{text}");
    assert!(positions.is_sorted(), "{text}");
}

#[test]
fn no_line_is_wider_than_asked_and_no_word_is_lost() {
    let check = sample::not_ready();
    let words = |text: &str| -> Vec<String> {
        let mut words: Vec<_> = text.split_whitespace().map(str::to_owned).collect();
        words.sort();
        words
    };
    let wide = words(&page(&check, 120));
    for width in 40..=100 {
        let text = page(&check, width);
        let widest = text.lines().map(|line| line.chars().count()).max();
        assert!(widest <= Some(width), "{width}:\n{text}");
        assert_eq!(words(&text), wide, "{width}");
    }
}

#[test]
fn colour_says_nothing_that_words_do_not() {
    let check = sample::not_ready();
    let vocabulary = sample::vocabulary();
    let subject =
        Subject { check: &check, vocabulary: &vocabulary, sources: &[], units: Units::Both };
    let coloured = table(&subject, 80);
    assert!(coloured.contains('\u{1b}'));
    for line in page(&check, 80).lines().filter(|line| !line.is_empty()) {
        assert!(coloured.contains(line.split_whitespace().last().unwrap_or("")));
    }
}

#[test]
fn a_clash_leads_the_section() {
    let mut check = sample::not_ready();
    check.judgements[0].clashes = vec![Clash { requirements: vec![0, 1], tools: vec![1] }];
    let text = page(&check, 80);
    assert!(position(&text, "Too few tools to go round") < position(&text, "To put right"));
    assert!(position(&text, "there is only PL-1") < position(&text, "do: lengthen"));
}

#[test]
fn several_profiles_are_summed_up_before_their_sections() {
    let mut check = sample::not_ready();
    let ready =
        sample::judgement(Verdict::Ready, vec![sample::finding(1, Outcome::Met, Vec::new())]);
    check.judgements.insert(0, ready);
    let text = page(&check, 80);
    assert!(text.starts_with("NOT READY"), "{text}");
    let summary = "  READY      Example fishery (`example-2024`)\n  NOT READY  Example fishery";
    assert!(position(&text, summary) < position(&text, "In order"));
}

#[test]
fn a_stub_says_known_not_encoded() {
    let mut judgement = sample::judgement(Verdict::CannotTell, Vec::new());
    judgement.profile = Arc::new(Profile { encoded: false, ..sample::profile() });
    let text = page(&sample::check(vec![judgement], Vec::new()), 80);
    position(&text, "CAN'T TELL");
    position(&text, "known, not encoded");
    position(&text, "do: go through the kit by hand, with the text of Example code part 1");
}

#[test]
fn good_practice_is_no_rules_verdict() {
    let findings = vec![sample::finding(1, Outcome::Met, Vec::new())];
    let mut judgement = sample::judgement(Verdict::Ready, findings);
    judgement.why = Why::Fallback;
    let good = Profile { standing: Standing::GoodPractice, ..sample::profile() };
    judgement.profile = Arc::new(good);
    judgement.ready_until = ReadyUntil::NoEnd;
    judgement.way = WayToReady::Already;
    let text = page(&sample::check(vec![judgement], vec![Notice::NoRuleNamesVessel]), 80);
    assert!(position(&text, "note: no rule") < position(&text, "In order"));
    position(&text, "no rule's verdict");
    assert!(!text.contains("Shortest way"), "{text}");
}

#[test]
fn a_part_of_the_trip_is_told() {
    let mut check = sample::not_ready();
    let days =
        DaySpan { from: Some(sample::day("2026-03-02")), until: Some(sample::day("2026-03-04")) };
    check.judgements[0].days = days;
    position(&page(&check, 80), "judged for part of the trip: 2026-03-02 to 2026-03-04");
}

#[test]
fn tools_beyond_the_nearest_are_counted_not_hidden() {
    let mut check = sample::not_ready();
    let tools: Vec<_> =
        (0..5).map(|index| sample::tool(&format!("X-{index}"), sample::CUTTER, index)).collect();
    check.vessel.kit = tools;
    check.judgements[0].findings[0].reasons =
        (0..5).map(|tool| Because { tool: Some(tool), reason: Reason::NotServiceable }).collect();
    let text = page(&check, 80);
    position(&text, "X-2: does not work");
    position(&text, "2 more will not do either");
}

#[test]
fn names_from_files_cannot_steer_the_terminal() {
    let mut check = sample::not_ready();
    check.vessel.name = "A\u{1b}[2Jlmeja\u{202e}".into();
    check.vessel.kit[0].mark = "LC\u{7}\n1".into();
    let text = page(&check, 80);
    assert!(!text.contains(['\u{1b}', '\u{202e}', '\u{7}']), "{text:?}");
    position(&text, "A\\u{1b}[2Jlmeja\\u{202e}");
}

#[test]
fn a_missing_freeboard_is_told_once_with_all_that_it_leaves_open() {
    let mut check = sample::not_ready();
    let open =
        |fact: VesselFact| Because { tool: None, reason: Reason::VesselFactUnknown { fact } };
    let fits = Because { tool: Some(1), reason: Reason::FitsNothing { requirement: 0 } };
    let broken = Because { tool: Some(0), reason: Reason::StateUnknown };
    check.judgements[0].findings = vec![
        sample::finding(0, Outcome::CannotTell, vec![open(VesselFact::Freeboard), broken]),
        sample::finding(1, Outcome::CannotTell, vec![open(VesselFact::Freeboard), fits]),
    ];
    let text = page(&check, 80);
    assert_eq!(text.matches("the freeboard was not measured").count(), 1, "{text}");
    assert_eq!(text.matches("do: measure the freeboard").count(), 1, "{text}");
    position(&text, "open because of it: Long-handled line clipper or cutter; Long-nose pliers");
    position(&text, "LC-1: nobody said whether it works");
    assert!(!text.contains("?  Long-nose pliers"), "{text}");
}
