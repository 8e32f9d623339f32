//! The page of hand-made checks.

use crate::measure::{DaySpan, Units};
use crate::model::check::{Check, Notice, Why};
use crate::model::finding::{
    Action, Because, Clash, Outcome, ReadyUntil, Step, Target, Verdict, WayToReady,
};
use crate::model::profile::{Profile, Standing};
use crate::model::reason::{Reason, VesselFact};
use crate::model::vessel::PlannedTrip;
use crate::report::Locale;
use crate::report::Subject;
use crate::report::sample;
use crate::report::table;
use std::sync::Arc;

fn page(check: &Check, width: usize) -> String {
    let vocabulary = sample::vocabulary();
    let subject = Subject {
        check,
        vocabulary: &vocabulary,
        sources: &[],
        locale: Locale::from(Units::Both),
        freeing: None,
    };
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
    let wide = words(&page(&check, 100));
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
    let subject = Subject {
        check: &check,
        vocabulary: &vocabulary,
        sources: &[],
        locale: Locale::from(Units::Both),
        freeing: None,
    };
    let coloured = table(&subject, 80);
    assert!(coloured.contains('\u{1b}'));
    for line in page(&check, 80).lines().filter(|line| !line.is_empty()) {
        assert!(coloured.contains(line.split_whitespace().last().unwrap_or("")));
    }
}

#[test]
fn a_clash_leads_the_section() {
    let mut check = sample::not_ready();
    sample::inverses_of(&mut check.judgements[0]).clashes =
        vec![Clash { requirements: vec![0, 1], tools: vec![1] }];
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
    sample::inverses_of(&mut judgement).way = WayToReady::Already;
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

#[test]
fn what_only_follows_from_another_finding_stands_below_it_without_a_remedy() {
    let mut check = sample::not_ready();
    let fits = Because { tool: Some(1), reason: Reason::FitsNothing { requirement: 0 } };
    check.judgements[0].findings[1] = sample::finding(1, Outcome::NotMet, vec![fits]);
    let text = page(&check, 80);
    position(&text, "To put right (1)");
    assert!(position(&text, "do: lengthen LC-1") < position(&text, "follows: Long-nose pliers"));
    assert!(!text.contains("see to `"), "{text}");
}

#[test]
fn a_verdict_by_good_practice_alone_says_so_in_its_first_line() {
    let mut check = sample::not_ready();
    let good = Profile { standing: Standing::GoodPractice, ..sample::profile() };
    check.judgements[0].profile = Arc::new(good);
    let first = "NOT READY  by good practice only, no rule was checked\n           Almeja (PA-007)";
    assert!(page(&check, 80).starts_with(first), "{}", page(&check, 80));
    check.judgements.push(sample::judgement(Verdict::Ready, Vec::new()));
    assert!(page(&check, 80).starts_with("NOT READY  Almeja (PA-007)"));
}

#[test]
fn the_trip_says_what_is_planned_and_that_the_return_is_wanting() {
    let mut check = sample::not_ready();
    assert!(!page(&check, 80).contains("planned"));
    check.vessel.trip.departure = Some(check.asked.departure);
    check.vessel.trip.back = Some(check.asked.back);
    position(&page(&check, 80), "trip 2026-03-02 to 2026-03-09 (as planned in its file)");
    check.asked.back = check.asked.departure;
    check.notices = vec![Notice::NoReturn];
    let text = page(&check, 80);
    position(&text, "(as planned in its file)\n           note: no day of return is known");
    assert_eq!(text.matches("no day of return").count(), 1, "{text}");
}

#[test]
fn a_gap_between_editions_is_told_at_the_top_with_what_to_do() {
    let gap = Notice::NoEdition { rule: "example".into(), day: sample::day("2026-03-02") };
    let text = page(&sample::check(Vec::new(), vec![gap]), 80);
    assert!(text.starts_with("CAN'T TELL  Almeja"), "{text}");
    assert!(position(&text, "no edition of it is known") < position(&text, "do: ask the port"));
}

#[test]
fn a_record_that_was_left_out_is_not_said_to_be_laid_over() {
    use crate::load::Source;
    let mut check = sample::not_ready();
    let vocabulary = sample::vocabulary();
    let sources = [Source { file: "record.yaml".into(), text: "".into() }];
    let write = |check: &Check| {
        let subject = Subject {
            check,
            vocabulary: &vocabulary,
            sources: &sources,
            locale: Locale::from(Units::Both),
            freeing: None,
        };
        anstream::adapter::strip_str(&table(&subject, 80)).to_string()
    };
    position(&write(&check), "laid over it: record.yaml");
    check.notices = vec![Notice::RecordAfterDeparture { on: sample::day("2026-04-01") }];
    let text = write(&check);
    position(&text, "inspection record: record.yaml");
    assert!(!text.contains("laid over it:"), "{text}");
}

#[test]
fn what_is_written_down_of_the_vessel_is_for_no_single_requirement() {
    let mut check = sample::not_ready();
    let reasons = vec![Reason::VesselFactUnknown { fact: VesselFact::Permits }];
    let step = |target| Step {
        action: Action::Measure,
        target,
        requirement: 0,
        also: Vec::new(),
        slots: Vec::new(),
        reasons: reasons.clone(),
    };
    let way = |target| WayToReady::Steps { steps: vec![step(target)], fewest: true };
    sample::inverses_of(&mut check.judgements[0]).way = way(Target::Vessel);
    assert!(!page(&check, 80).contains("for: "), "{}", page(&check, 80));
    sample::inverses_of(&mut check.judgements[0]).way = way(Target::Tool(0));
    position(&page(&check, 80), "for: Long-handled");
}

#[test]
fn a_list_that_others_build_on_is_called_one() {
    let mut check = sample::not_ready();
    check.judgements[0].profile = Arc::new(Profile { base: true, ..sample::profile() });
    position(&page(&check, 80), "`example-2024` is a list that others build on");
}

#[test]
fn a_figure_told_in_full_above_is_not_told_again_in_the_shortest_way() {
    let mut check = sample::not_ready();
    let step = Step {
        action: Action::Lengthen,
        target: Target::Tool(0),
        requirement: 0,
        also: Vec::new(),
        slots: Vec::new(),
        reasons: vec![sample::too_short()],
    };
    sample::inverses_of(&mut check.judgements[0]).way =
        WayToReady::Steps { steps: vec![step], fewest: true };
    position(&page(&check, 80), "1. lengthen LC-1 (see above)");
}

#[test]
fn a_wide_page_has_room_for_the_clause_of_what_is_met() {
    let check = sample::not_ready();
    for (width, clauses) in [(109, 2), (110, 3)] {
        let text = page(&check, width);
        assert_eq!(text.matches("Part A, 1").count(), clauses, "{width}: {text}");
    }
}

#[test]
fn a_trip_is_as_planned_only_if_both_its_days_are() {
    let mut check = sample::not_ready();
    for (departure, back, planned) in [
        ("2026-03-02", "2026-03-09", true),
        ("2026-03-01", "2026-03-09", false),
        ("2026-03-02", "2026-03-10", false),
    ] {
        let (departure, back) = (Some(sample::day(departure)), Some(sample::day(back)));
        check.vessel.trip = PlannedTrip { departure, back };
        assert_eq!(page(&check, 80).contains("as planned in its file"), planned);
    }
}

#[test]
fn of_many_tools_that_will_not_do_three_are_named() {
    let mut check = sample::not_ready();
    for (tools, more) in [(3, None), (5, Some("2 more will not do either"))] {
        check.vessel.kit =
            (0..tools).map(|at| sample::tool(&format!("LC-{at}"), sample::CUTTER, at)).collect();
        let broken = |at| Because { tool: Some(at), reason: Reason::NotServiceable };
        check.judgements[0].findings =
            vec![sample::finding(0, Outcome::NotMet, (0..tools).map(broken).collect())];
        let text = page(&check, 80);
        assert_eq!(text.matches(": does not work").count(), 3, "{text}");
        assert_eq!(text.contains("will not do either"), more.is_some(), "{text}");
        assert!(text.contains(more.unwrap_or_default()), "{text}");
    }
}

#[test]
fn of_several_freeboards_a_finding_names_its_own_if_it_hangs_on_one() {
    let mut check = sample::not_ready();
    check.vessel.freeboard.stations[0].readings[0].low = sample::figure("4 ft");
    let broken = || vec![Because { tool: Some(0), reason: Reason::NotServiceable }];
    for (requirement, told) in [(0, true), (1, false)] {
        check.judgements[0].findings =
            vec![sample::finding(requirement, Outcome::NotMet, broken())];
        let text = page(&check, 80);
        assert_eq!(text.contains("at a freeboard of 4 ft 3 in"), told, "{text}");
    }
}
