//! How low the rail is: at several stations, with a tape error, disputed,
//! taken from the deck, over a range; and what is open at one station alone.

use super::{FULL, answer, answered, options_of, practice, request, vessel};
use kitmuster::freeing::Prepared;
use kitmuster::freeing::{self, Options, Request, Terms};
use kitmuster::load::Library;
use kitmuster::measure::Answer::{self, No, Unknown, Yes};
use kitmuster::model::check::Judgement;
use kitmuster::model::finding::WayToReady;
use kitmuster::model::options::{Choice, Opening, Standing};
use kitmuster::model::vessel::Trust;
use std::sync::Arc;

/// The full vessel with another freeboard, as it is written in the file.
fn at(freeboard: &str) -> Options {
    options_of(&vessel(&with(freeboard)))
}

fn with(freeboard: &str) -> String {
    assert!(FULL.contains("freeboard: 2 ft\n"));
    FULL.replacen("freeboard: 2 ft\n", &format!("freeboard: {freeboard}\n"), 1)
}

/// Whether a turtle can be brought over the rail by hand. The low rail is
/// 2 ft, the house's own figure (common practice, no source).
fn by_hand(freeboard: &str) -> Answer {
    of_rail(&at(freeboard))
}

fn of_rail(options: &Options) -> Answer {
    answer(options, "inside-boardable", "by-hand")
}

/// Two stations with these freeboards.
fn two(starboard: &str, port: &str) -> String {
    format!(
        "{{ stations: [{{ name: starboard, freeboard: {starboard} }}, \
         {{ name: port, freeboard: {port} }}] }}"
    )
}

#[test]
fn every_station_must_be_low() {
    assert_eq!(by_hand(&two("1 ft", "2 ft")), Yes);
    assert_eq!(by_hand(&two("1 ft", "2 ft 1 in")), No);
    assert_eq!(by_hand(&two("3 ft", "1 ft")), No);
}

/// A stated freeboard is not known where only measured ones are believed.
#[test]
fn a_station_that_nobody_measured_leaves_it_open_unless_another_is_too_high() {
    let measured_only = |freeboard: &str| {
        let vessel = vessel(&with(freeboard));
        of_rail(&freeing::options(&Request { trust: Trust::Measured, ..request(&vessel) }))
    };
    let stated = "{ value: 1 ft, how: stated }";
    assert_eq!(by_hand(&two(stated, "1 ft")), Yes);
    assert_eq!(measured_only(&two(stated, "1 ft")), Unknown);
    assert_eq!(measured_only(&two("1 ft", stated)), Unknown);
    assert_eq!(measured_only(&two(stated, "3 ft")), No);
    assert_eq!(measured_only(&two("3 ft", stated)), No);
    assert_eq!(measured_only(&two(stated, stated)), Unknown);
}

#[test]
fn within_the_tape_error_of_the_figure_nobody_can_tell() {
    let off_by_an_inch = |value: &str| by_hand(&format!("{{ value: {value}, error: 1 in }}"));
    // The truth lies within an inch on both sides, its ends included: up to
    // 2 ft it is low, from 2 ft and a hair on it is not.
    assert_eq!(off_by_an_inch("1 ft 11 in"), Yes);
    assert_eq!(off_by_an_inch("584.200001 mm"), Unknown);
    assert_eq!(off_by_an_inch("2 ft"), Unknown);
    assert_eq!(off_by_an_inch("2 ft 1 in"), Unknown);
    assert_eq!(off_by_an_inch("635.000001 mm"), No);
}

#[test]
fn readings_on_both_sides_of_the_figure_dispute_it() {
    assert_eq!(by_hand("[{ value: 1 ft }, { value: 2 ft }]"), Yes);
    assert_eq!(by_hand("[{ value: 1 ft }, { value: 3 ft }]"), Unknown);
    assert_eq!(by_hand("[{ value: 3 ft }, { value: 2 ft 1 in }]"), No);
    // One tape that cannot tell leaves it open beside one that can.
    assert_eq!(by_hand("[{ value: 1 ft }, { value: 2 ft, error: 1 in }]"), Unknown);
    // What is disputed at one station is settled by another that is high.
    assert_eq!(by_hand(&two("[{ value: 1 ft }, { value: 3 ft }]", "1 ft")), Unknown);
    assert_eq!(by_hand(&two("[{ value: 1 ft }, { value: 3 ft }]", "3 ft")), No);
}

/// The rail stands above the deck, nobody knows by how much.
#[test]
fn a_deck_that_is_too_high_has_a_rail_that_is_too_high() {
    assert_eq!(by_hand("3 ft from the working deck"), No);
    assert_eq!(by_hand("609.600001 mm from the working deck"), No);
    assert_eq!(by_hand("2 ft from the working deck"), Unknown);
    assert_eq!(by_hand("1 in from the working deck"), Unknown);
}

/// Measuring opens nothing that needs tools which cannot be had.
#[test]
fn a_rail_is_measured_first_only_where_the_tools_can_be_had() {
    let options = at("2 ft from the working deck");
    let choices = options.outlook.all().flat_map(|answered| &answered.choices);
    let mut seen = 0;
    for choice in choices.filter(|choice| choice.rails.iter().any(|rail| rail.answer == Unknown)) {
        assert!(matches!(choice.steps()[..], [Opening::Measure(_), ..]), "{choice:?}");
        let Some(tools) = &choice.tools else { continue };
        let mut tools = Judgement::clone(tools);
        tools.inverses.as_mut().unwrap().way = WayToReady::None;
        let closed = Choice { tools: Some(Arc::new(tools)), ..choice.clone() };
        assert!(closed.steps().is_empty(), "{:?}", closed.steps());
        seen += 1;
    }
    assert!(seen > 0, "no such choice needs a tool");
}

/// What is low enough from the rail is so from the deck, and no more is known.
#[test]
fn where_the_techniques_reckon_from_the_deck_a_low_rail_has_a_low_deck() {
    let (from_rail, from_deck) =
        ("freeboard from: top of the rail", "freeboard from: working deck");
    assert!(TECHNIQUES.contains(from_rail));
    let techniques = TECHNIQUES.replacen(from_rail, from_deck, 1);
    let texts = [("vocabulary.yaml", VOCABULARY), ("techniques.yaml", techniques.as_str())];
    let library = Library::from_texts(&texts).unwrap_or_else(|refusal| panic!("{refusal:#?}"));
    let prepared = Prepared::new(library.practice.as_ref().unwrap());
    let by_hand = |freeboard: &str| {
        let vessel = vessel(&with(freeboard));
        let request = request(&vessel);
        let terms = Terms { prepared: &prepared, ..request.terms };
        of_rail(&freeing::options(&Request { terms, ..request }))
    };
    assert_eq!(by_hand("2 ft"), Yes);
    assert_eq!(by_hand("3 ft"), Unknown);
    assert_eq!(by_hand("2 ft from the working deck"), Yes);
    assert_eq!(by_hand("3 ft from the working deck"), No);
}

const VOCABULARY: &str = include_str!("../../../requirements/vocabulary.yaml");
const TECHNIQUES: &str = include_str!("../../../requirements/techniques.yaml");

#[test]
fn over_a_range_the_highest_counts() {
    assert_eq!(by_hand("1 ft to 2 ft"), Yes);
    assert_eq!(by_hand("1 ft to 609.600001 mm"), No);
    assert_eq!(by_hand("{ value: 1 ft to 1 ft 11 in, error: 1 in }"), Yes);
    assert_eq!(by_hand("{ value: 1 ft to 2 ft, error: 1 in }"), Unknown);
}

#[test]
fn a_cutter_in_the_hand_needs_the_low_rail_and_itself() {
    let by_hand = |freeboard: &str, cutter: &str| {
        let text = with(freeboard).replace("MC, kind", &format!("MC, condition: {cutter}, kind"));
        answer(&options_of(&vessel(&text)), "inside-stays", "cut-short-by-hand")
    };
    let (low, open, high) = ("2 ft", "2 ft from the working deck", "3 ft");
    assert_eq!(by_hand(low, "serviceable"), Yes);
    assert_eq!(by_hand(low, "unknown"), Unknown);
    assert_eq!(by_hand(open, "serviceable"), Unknown);
    assert_eq!(by_hand(open, "broken"), No);
    assert_eq!(by_hand(high, "unknown"), No);
}

/// The index of a situation.
fn situation(id: &str) -> usize {
    practice().situations.iter().position(|s| s.id == id).unwrap()
}

/// The stations at which something better is open than at all of them.
fn better_at(options: &Options, situation: usize, along: bool) -> Vec<(&str, usize)> {
    let of = options.prospect(practice(), situation, along).unwrap();
    of.at_stations().into_iter().map(|(station, way)| (station, way.index)).collect()
}

/// The tools are 6 ft long: enough for a rail of 4 ft, 150 % of freeboard and
/// at least 6 ft (50 CFR part 622 Appendix F, A.1, read), not for one of 9 ft.
#[test]
fn what_is_open_at_one_station_only_is_told_with_its_name() {
    let options = at(&two("4 ft", "9 ft"));
    let (inside, _) = answered(&options, "inside-stays");
    assert_eq!(inside.standing(), Standing::Nothing);
    assert_eq!(better_at(&options, situation("inside-stays"), false), [("starboard", 0)]);
    assert_eq!(better_at(&options, situation("outside-buried-j-stays"), false), [("starboard", 0)]);
    // On deck the rail does not matter, nor for what goes along with it.
    assert!(better_at(&options, situation("outside-showing-j-aboard"), false).is_empty());
    assert!((0..practice().along.len()).all(|along| better_at(&options, along, true).is_empty()));
}

#[test]
fn a_fallback_everywhere_is_no_reason_to_hide_the_first_choice_at_one_station() {
    // Without a net, hands bring it aboard where the rail is low enough.
    let text = with(&two("4 ft", "2 ft"));
    let netless: Vec<&str> =
        text.lines().filter(|l| !l.contains("mark: DN") && !l.contains("mark: HN")).collect();
    let options = options_of(&vessel(&netless.join("\n")));
    let choices = &practice().situations[situation("inside-boardable")].choices;
    let index = |id: &str| choices.iter().position(|c| super::spelled(practice(), c) == id);
    let (inside, _) = answered(&options, "inside-boardable");
    assert_eq!(inside.best(), index("cut-short"));
    let by_hand = index("by-hand").unwrap();
    assert_eq!(better_at(&options, situation("inside-boardable"), false), [("port", by_hand)]);
}

#[test]
fn at_stations_that_are_alike_nothing_is_better() {
    for freeboard in ["9 ft".to_owned(), two("9 ft", "9 ft"), two("1 ft", "2 ft")] {
        let options = at(&freeboard);
        let all = 0..practice().situations.len();
        assert!(all.into_iter().all(|one| better_at(&options, one, false).is_empty()));
    }
}

#[test]
fn a_station_without_a_name_is_told_by_its_number() {
    let options = at("{ stations: [{ freeboard: 9 ft }, { freeboard: 4 ft }] }");
    assert_eq!(better_at(&options, situation("inside-stays"), false), [("station 2", 0)]);
}
