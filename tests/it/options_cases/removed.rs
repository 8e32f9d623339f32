//! What one tool is worth: with each kind taken away, exactly the situations
//! change that hang on it.

use super::{FULL, options_of, practice, spelled, vessel};
use kitmuster::freeing::Options;
use kitmuster::measure::Answer;
use kitmuster::model::options::{Answered, Standing};
use kitmuster::model::technique::Situation;
use kitmuster::model::vessel::Vessel;
use std::fmt::Write;

/// How a situation stands, in one line.
fn stands(answered: &Answered, situation: &Situation) -> String {
    let standing = match answered.standing() {
        Standing::First => "first choice",
        Standing::Fallback => "fallback",
        Standing::Unclear => "can't tell",
        Standing::Nothing => "NOTHING",
    };
    let best = answered.best().map(|best| spelled(practice(), &situation.choices[best]));
    format!("{} ({standing})", best.unwrap_or_else(|| "-".to_owned()))
}

/// A situation by its id: how it stands and what is open.
type Row = (String, String, Vec<String>);

fn rows(options: &Options) -> Vec<Row> {
    let practice = practice();
    let all = options.outlook.situations.iter().zip(&practice.situations);
    let along = options.outlook.along.iter().zip(&practice.along);
    all.chain(along).map(|(a, s)| (s.id.clone(), stands(a, s), open(a, s))).collect()
}

/// The choices of a situation that are open.
fn open(answered: &Answered, situation: &Situation) -> Vec<String> {
    let choices = answered.choices.iter().zip(&situation.choices);
    let open = choices.filter(|(choice, _)| choice.answer == Answer::Yes);
    open.map(|(_, techniques)| spelled(practice(), techniques)).collect()
}

/// What changes when the tools of these marks are taken away: how the
/// situation stands, or only what it could have fallen back on.
fn without(marks: &[&str]) -> String {
    let whole = vessel(FULL);
    let less = Vessel {
        kit: whole.kit.iter().filter(|t| !marks.contains(&t.mark.as_str())).cloned().collect(),
        ..whole.clone()
    };
    assert_eq!(less.kit.len() + marks.len(), whole.kit.len(), "{marks:?}");
    let (before, after) = (rows(&options_of(&whole)), rows(&options_of(&less)));
    let mut text = String::new();
    for ((id, was, open), (_, is, still)) in before.iter().zip(&after) {
        assert!(still.iter().all(|choice| open.contains(choice)), "{id} gained");
        let closed: Vec<_> = open.iter().filter(|choice| !still.contains(choice)).collect();
        if was != is {
            writeln!(text, "{id}: {was} -> {is}").unwrap();
        }
        for choice in closed {
            writeln!(text, "{id}: closed: {choice}").unwrap();
        }
    }
    text
}

#[test]
fn with_one_of_everything_each_situation_has_its_first_choice() {
    let options = options_of(&vessel(FULL));
    let worth = options.outlook.worth();
    assert_eq!((worth.first, worth.fallback, worth.unclear, worth.nothing), (25, 0, 0, 0));
    assert_eq!(worth.left_out, 0);
    assert!(options.lift.is_none());
}

macro_rules! taken_away {
    ($($name:ident: $marks:expr;)*) => {
        $(#[test]
        fn $name() {
            insta::assert_snapshot!(without(&$marks));
        })*
    };
}

taken_away! {
    without_a_dipnet: ["DN"];
    without_any_net: ["DN", "HN"];
    without_a_support: ["TI"];
    without_a_long_line_cutter: ["LC"];
    without_a_long_j_dehooker: ["LJ"];
    without_a_long_twist_dehooker: ["LT"];
    without_any_long_dehooker: ["LJ", "LT"];
    without_the_control_device: ["CT"];
    without_the_v_device: ["BH"];
    without_long_dehookers_and_the_control_device: ["LJ", "LT", "CT"];
    without_long_dehookers_and_the_v_device: ["LJ", "LT", "BH"];
    without_a_short_j_dehooker: ["SJ"];
    without_a_short_twist_dehooker: ["ST"];
    without_bolt_cutters: ["BC"];
    without_bolt_cutters_and_short_dehookers: ["BC", "SJ", "ST"];
    without_bolt_cutters_and_pliers: ["BC", "PL"];
    without_pliers: ["PL"];
    without_deck_line_cutters: ["MC"];
    without_any_line_cutter: ["LC", "MC"];
    without_a_gag: ["HR"];
}
