//! Every combination of facts has exactly one ranked list, the one that good
//! practice has, ending in the line cut; none advises what is never done.
//!
//! What is expected is written down here a second time, from the table of
//! good practice (common practice, no published source) and the clauses that
//! stand beside each rule below, not from the data.

use super::{practice, shipped, spelled};
use kitmuster::model::technique::{Case, GivenBy};
use kitmuster::model::vocabulary::Class;
use std::collections::BTreeSet;

/// A case in its words.
fn words(case: &Case) -> Vec<&'static str> {
    let facts = &practice().facts;
    case.iter().enumerate().map(|(fact, word)| facts[fact].words[*word].word.as_str()).collect()
}

/// The ranked list of good practice for a case.
fn expected(words: &[&str]) -> Vec<String> {
    let is = |word: &str| words.contains(&word);
    let list = |choices: &[&str]| choices.iter().map(|c| (*c).to_owned()).collect::<Vec<_>>();
    if is("aboard") {
        return on_deck(&is);
    }
    let boards = is("boardable");
    // Can come aboard: dipnet, another net, by hand over a low rail.
    let aboard: &[&str] = if boards { &["dipnet", "other-net", "by-hand"] } else { &[] };
    if is("tangled") {
        // Cut free in the water, or aboard; a limp one aboard first.
        let on_deck = ["cut-free-on-deck", "cut-free-on-deck-long"];
        let chain = |way: &&str| on_deck.map(|then| format!("{way}, then {then}"));
        let then: Vec<String> = aboard.iter().flat_map(chain).collect();
        let water = list(&["cut-free"]);
        let mut all = if is("limp") { [then, water].concat() } else { [water, then].concat() };
        all.push("cut-free-by-hand".to_owned());
        return all;
    }
    let mut all = list(aboard);
    // Hooked outside: the dehooker of the style for that hook, never one that
    // draws a showing barb back; the devices of 635.21(c)(5)(i)(D) and (M).
    // In a sea too rough to board it nothing is tried from the rail.
    if is("outside") && is("buried") && !is("rough") {
        all.extend(list(match is("circle") {
            true => &["turn-alongside"],
            false => &["pull-alongside", "twist-alongside"],
        }));
        all.push("inverted-v".to_owned());
    }
    all.extend(list(&["cut-short", "cut-short-by-hand"]));
    all
}

fn on_deck(is: &dyn Fn(&str) -> bool) -> Vec<String> {
    let list = |choices: &[&str]| choices.iter().map(|c| (*c).to_owned()).collect::<Vec<_>>();
    if is("tangled") {
        return list(&["cut-free-on-deck", "cut-free-on-deck-long"]);
    }
    let hooked: &[&str] = match (is("showing"), is("circle")) {
        (true, _) => &["cut-hook", "draw-through", "flatten-barb"],
        (false, false) => &["push-through", "pull-on-deck", "twist-on-deck"],
        (false, true) => &["push-through", "turn-and-pull"],
    };
    let gagged = || hooked.iter().map(|way| format!("gag, then {way}")).collect::<Vec<_>>();
    let mut all = match () {
        () if is("outside") => list(hooked),
        () if is("mouth") => gagged(),
        // In sight it is like one in the mouth; out of sight nothing is tried
        // (part 622 Appendix F, B.1).
        () if is("deep") && is("showing") => gagged(),
        () => Vec::new(),
    };
    all.extend(list(&["cut-line-on-deck", "cut-line-on-deck-long"]));
    all
}

#[test]
fn every_case_has_exactly_one_ranked_list_and_it_is_that_of_good_practice() {
    let practice = practice();
    let cases = practice.cases();
    let product: usize = practice.facts.iter().map(|fact| fact.words.len()).product();
    assert_eq!((cases.len(), product), (320, 320));
    let distinct: BTreeSet<&Case> = cases.iter().collect();
    assert_eq!(distinct.len(), 320);
    let mut answering = BTreeSet::new();
    for case in &cases {
        let words = words(case);
        let fit: Vec<usize> = (0..practice.situations.len())
            .filter(|s| practice.situations[*s].when.fits(case))
            .collect();
        // Of those that fit, exactly one gives way to none of the others.
        let leads = |one: &&usize| {
            let beaten = |o: &usize| practice.situations[*o].goes_before.contains(one);
            !fit.iter().any(beaten)
        };
        let leading: Vec<&usize> = fit.iter().filter(leads).collect();
        assert_eq!(leading.len(), 1, "{words:?}");
        let situation = practice.situation_of(case).unwrap();
        assert_eq!(*leading[0], situation, "{words:?}");
        answering.insert(situation);
        let choices = &practice.situations[situation].choices;
        let ids: Vec<String> = choices.iter().map(|c| spelled(practice, c)).collect();
        assert_eq!(ids, expected(&words), "{words:?}");
        let last = choices.last().and_then(|choice| choice.last()).unwrap();
        assert!(practice.techniques[*last].cuts_line, "{words:?}");
    }
    assert_eq!(answering.len(), practice.situations.len(), "a situation that answers no case");
}

/// What each technique does, as its steps say, read by hand.
const PULLS_OR_PUSHES: [&str; 10] = [
    "pull-alongside",
    "turn-alongside",
    "draw-through",
    "twist-alongside",
    "inverted-v",
    "cut-hook",
    "push-through",
    "pull-on-deck",
    "twist-on-deck",
    "turn-and-pull",
];
const BACK_OUT_WITH_BARB: [&str; 7] = [
    "pull-alongside",
    "turn-alongside",
    "twist-alongside",
    "inverted-v",
    "pull-on-deck",
    "twist-on-deck",
    "turn-and-pull",
];

#[test]
fn no_case_is_given_what_is_never_done() {
    let practice = practice();
    let mut looked = 0;
    for case in practice.cases() {
        let words = words(&case);
        let is = |word: &str| words.contains(&word);
        let situation = practice.situation_of(&case).unwrap();
        for technique in practice.situations[situation].choices.iter().flatten() {
            let technique = &practice.techniques[*technique];
            let id = technique.id.as_str();
            looked += 1;
            // A swallowed hook is left, and so is one in the mouth of a
            // turtle in the water, and one deep and out of sight.
            let left = is("swallowed")
                || (is("alongside") && (is("mouth") || is("deep")))
                || (is("deep") && is("buried"));
            assert!(!left || !PULLS_OR_PUSHES.contains(&id), "{id} at {words:?}");
            let shows = is("showing") && !is("tangled");
            assert!(!shows || !BACK_OUT_WITH_BARB.contains(&id), "{id} at {words:?}");
            assert!(!is("circle") || !id.starts_with("twist"), "{id} at {words:?}");
            // No attempt in seas that endanger the crew.
            let rough = is("alongside") && is("rough");
            assert!(!rough || !PULLS_OR_PUSHES.contains(&id), "{id} at {words:?}");
            assert!(is("aboard") || !id.contains("deck") || is("tangled"), "{id} at {words:?}");
            for never in practice.nevers.iter().filter(|never| never.when.fits(&case)) {
                let shared = never.acts.iter().any(|act| technique.acts.contains(act));
                assert!(!shared, "{id} at {words:?}: {}", never.says);
            }
            let barred = technique.never_with.iter().any(|pattern| pattern.fits(&case));
            assert!(!barred, "{id} at {words:?}");
        }
    }
    assert!(looked > 1000, "{looked}");
}

/// Acts that nothing may ever do.
#[test]
fn nothing_lifts_by_the_line_turns_a_point_inward_or_lays_on_the_back() {
    let practice = practice();
    let never_at_all = [
        "lifts-by-line",
        "hangs-by-flippers",
        "leaves-line-trailing",
        "point-to-middle",
        "lays-on-back",
        "returns-limp",
        "drops-from-height",
        "draws-showing-barb-back",
    ];
    for act in never_at_all {
        let index = practice.acts.iter().position(|known| known.id == act).unwrap();
        assert!(practice.techniques.iter().all(|t| !t.acts.contains(&index)), "{act}");
        assert!(practice.nevers.iter().any(|never| never.acts.contains(&index)), "{act}");
    }
    let acts = |id: &str| -> Vec<&str> {
        let technique = practice.techniques.iter().find(|t| t.id == id).unwrap();
        technique.acts.iter().map(|act| practice.acts[*act].id.as_str()).collect()
    };
    assert_eq!(acts("gag"), ["point-to-side"]);
    assert_eq!(acts("recover"), ["lays-belly-down"]);
}

#[test]
fn a_limp_animal_that_is_or_comes_aboard_is_laid_down_to_recover_whatever_else_is_done() {
    let practice = practice();
    for case in practice.cases() {
        let words = words(&case);
        let along: Vec<&str> = practice
            .along
            .iter()
            .filter(|situation| situation.when.fits(&case))
            .map(|situation| situation.id.as_str())
            .collect();
        let is = |word: &str| words.contains(&word);
        let expected = match (is("limp"), is("aboard"), is("boardable")) {
            (true, true, _) => vec!["limp-aboard"],
            (true, false, true) => vec!["limp-boardable"],
            _ => vec![],
        };
        assert_eq!(along, expected, "{words:?}");
    }
}

#[test]
fn every_kind_of_tool_that_a_shipped_profile_requires_serves_a_technique() {
    let practice = practice();
    let used: BTreeSet<usize> = practice.techniques.iter().flat_map(|t| t.needs.clone()).collect();
    let mut serving = BTreeSet::new();
    for capability in used {
        if let GivenBy::Tools(requirement) = &practice.capabilities[capability].given_by {
            serving.extend(requirement.kinds());
        }
    }
    let vocabulary = &shipped().library.vocabulary;
    let mut required = 0;
    for profile in &shipped().library.profiles {
        for requirement in &profile.requirements {
            for kind in requirement.kinds() {
                if vocabulary.kind(kind).class == Class::Tool {
                    required += 1;
                    let id = &vocabulary.kind(kind).id;
                    assert!(serving.contains(&kind), "{id} of {}", profile.id);
                }
            }
        }
    }
    assert!(required > 100, "{required}");
    for id in ["inverted-v-device", "control-tether", "control-poles"] {
        assert!(serving.contains(&vocabulary.find_kind(id).unwrap()), "{id}");
    }
}
