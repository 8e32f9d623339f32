//! What is done one after the other may use a tool again; what differs is
//! needed beside it. Shown with a file of techniques made for it.

use super::vessel;
use kitmuster::engine::Depth;
use kitmuster::freeing::Prepared;
use kitmuster::load::Library;
use kitmuster::measure::{Answer, Day};
use kitmuster::model::finding::{Action, WayToReady};
use kitmuster::model::options::{Choice, Outlook};

const VOCABULARY: &str = include_str!("../../../requirements/vocabulary.yaml");
const CHAINS: &str = include_str!("chains.yaml");

/// What a vessel with this kit leaves open.
fn outlook(kit: &str) -> Outlook {
    let texts = [("vocabulary.yaml", VOCABULARY), ("techniques.yaml", CHAINS)];
    let library = Library::from_texts(&texts).unwrap_or_else(|refusal| panic!("{refusal:#?}"));
    let prepared = Prepared::new(library.practice.as_ref().unwrap());
    let head = "format: vessel/1\nname: Sedge Wren\nfreeboard: 2 ft\n";
    let vessel = vessel(&format!("{head}declared: {{ condition: serviceable }}\nkit: {kit}\n"));
    let day = Day::parse("2026-12-02").unwrap();
    prepared.outlook(&library.vocabulary, &vessel, (day, day), Depth::Way)
}

fn on_deck(kit: &str) -> [Answer; 4] {
    let outlook = outlook(kit);
    let answers: Vec<Answer> = outlook.situations[0].choices.iter().map(|c| c.answer).collect();
    answers.try_into().unwrap()
}

/// How many steps open a choice, each of which acquires something.
fn acquired(choice: &Choice) -> usize {
    match &choice.tools.as_ref().unwrap().inverses.as_ref().unwrap().way {
        WayToReady::Already => 0,
        WayToReady::Steps { steps, .. } => {
            assert!(steps.iter().all(|step| step.action == Action::Acquire), "{steps:?}");
            steps.len()
        }
        WayToReady::None => panic!("no way"),
    }
}

const ONE: &str = "[{ mark: PL, kind: long-nose pliers }]";
const TWO: &str = "[{ mark: PL, kind: long-nose pliers, count: 2 }]";

#[test]
fn a_chain_that_names_one_capability_twice_needs_one_tool() {
    use Answer::{No, Yes};
    // Grip and cut share their pliers; held beside, there must be two.
    assert_eq!(on_deck("[]"), [No, No, No, No]);
    assert_eq!(on_deck(ONE), [Yes, No, No, Yes]);
    assert_eq!(on_deck(TWO), [Yes, Yes, Yes, Yes]);
}

#[test]
fn the_way_to_such_a_chain_is_one_tool_too() {
    let steps = |kit: &str| -> Vec<usize> {
        outlook(kit).situations[0].choices.iter().map(acquired).collect()
    };
    assert_eq!(steps("[]"), [1, 2, 2, 1]);
    assert_eq!(steps(ONE), [0, 1, 1, 0]);
    assert_eq!(steps(TWO), [0, 0, 0, 0]);
}

#[test]
fn a_rail_that_is_needed_twice_is_told_once() {
    let chain = outlook("[]").situations[1].choices[0].clone();
    assert_eq!(chain.answer, Answer::Yes);
    assert_eq!(chain.rails.len(), 1);
    assert!(chain.tools.is_none());
}
