//! Every yes or no, and every word of a choice, that a shipped profile asks:
//! one tool that has it and the same tool without it, read from a file that is
//! written for it.
//!
//! The rows were written from the rules' texts, not from the profiles: 50 CFR
//! part 622 Appendix F as in force since the 2019 rules, and 50 CFR
//! 635.21(c)(5)(i) until 28 November 2024.

mod by_hand;
mod hooks;
mod papers;
pub(crate) mod rows;

use crate::kit::{self, Wanted};
use kitmuster::model::vessel::Datum;
use rows::{Row, Says};

impl Says {
    /// What an attribute may be, and whether it then does.
    fn probes(self) -> Vec<(Datum, bool)> {
        let word = |word: &&str| Datum::Word((*word).to_owned());
        match self {
            Says::Yes => vec![(Datum::Feature(true), true), (Datum::Feature(false), false)],
            Says::Words(good, bad) => {
                let good = good.iter().map(|one| (word(one), true));
                good.chain(bad.iter().map(|one| (word(one), false))).collect()
            }
        }
    }

    /// As the coverage of the rules names it.
    pub(crate) fn text(self) -> String {
        match self {
            Says::Yes => "yes".to_owned(),
            Says::Words(good, _) => good.join(" or "),
        }
    }
}

/// Runs every probe of the rows; gives what differs and how many were run.
fn differences(rows: &[Row]) -> (Vec<String>, usize) {
    let library = kit::library();
    let (mut wrong, mut runs) = (Vec::new(), 0);
    for row in rows {
        let profile = library.find(row.profile).unwrap();
        let wanted = Wanted { requirement: row.requirement, kind: row.kind };
        let vessel = kit::made_for(profile, &library.vocabulary, row.freeboard, wanted);
        for (datum, does) in row.says.probes() {
            let (words, tool) = (&library.vocabulary, (row.kind, 0));
            let vessel = kit::with_datum(&vessel, words, tool, row.attribute, datum.clone());
            let outcome =
                kit::outcome(&library, &vessel, row.freeboard, row.profile, row.requirement);
            runs += 1;
            let expected = if does { "met" } else { "not-met" };
            if outcome != expected {
                wrong.push(format!(
                    "{} {} {} {} {datum:?} is {outcome}, expected {expected}",
                    row.profile, row.clause, row.kind, row.attribute,
                ));
            }
        }
    }
    (wrong, runs)
}

/// The rows by the test that runs them.
pub(crate) fn tables() -> [(&'static str, Vec<Row>); 3] {
    [
        (
            "every_word_of_appendix_f_tells_the_tool_that_does_from_the_one_that_does_not",
            rows::appendix_f(),
        ),
        (
            "every_word_of_section_635_21_tells_the_tool_that_does_from_the_one_that_does_not",
            rows::section_635(),
        ),
        (
            "every_word_of_the_old_gulf_edition_tells_the_tool_that_does_from_the_one_that_does_not",
            rows::old_gulf(),
        ),
    ]
}

fn rows_of(test: &str) -> Vec<Row> {
    let table = tables().into_iter().find(|(name, _)| *name == test);
    table.unwrap_or_else(|| panic!("no rows for {test}")).1
}

#[test]
fn every_word_of_appendix_f_tells_the_tool_that_does_from_the_one_that_does_not() {
    let (wrong, runs) = differences(&rows_of(
        "every_word_of_appendix_f_tells_the_tool_that_does_from_the_one_that_does_not",
    ));
    assert!(runs > 100, "{runs}");
    assert!(wrong.is_empty(), "{}\n{} of {runs}", wrong.join("\n"), wrong.len());
}

#[test]
fn every_word_of_section_635_21_tells_the_tool_that_does_from_the_one_that_does_not() {
    let (wrong, runs) = differences(&rows_of(
        "every_word_of_section_635_21_tells_the_tool_that_does_from_the_one_that_does_not",
    ));
    assert!(runs > 100, "{runs}");
    assert!(wrong.is_empty(), "{}\n{} of {runs}", wrong.join("\n"), wrong.len());
}

#[test]
fn every_word_of_the_old_gulf_edition_tells_the_tool_that_does_from_the_one_that_does_not() {
    let (wrong, runs) = differences(&rows_of(
        "every_word_of_the_old_gulf_edition_tells_the_tool_that_does_from_the_one_that_does_not",
    ));
    assert!(runs > 30, "{runs}");
    assert!(wrong.is_empty(), "{}\n{} of {runs}", wrong.join("\n"), wrong.len());
}
