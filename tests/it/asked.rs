//! What is asked at all: whom an edition binds and on which days, which of its
//! requirements hang on 4 ft of freeboard, how many pieces, and which kinds
//! serve. The rows were written from the rules'
//! texts, not from the profiles.

pub(crate) mod rows;

use crate::kit::{self, DAY, Wanted};
use crate::outfit::{just_over, vessel};
use kitmuster::load::Library;
use rayon::prelude::*;
use rows::{Binding, Pieces};

/// The tests that the rows drive, by name.
pub(crate) const ONE_PIECE_LESS: &str = "one_piece_less_than_a_rule_asks_is_too_few";
pub(crate) const ABOVE_4_FT: &str = "a_requirement_above_4_ft_begins_a_nanometre_above_it";
pub(crate) const BINDS: &str = "an_edition_binds_whom_it_names_from_its_first_to_its_last_day";

/// What is wrong with one row: the kit made for it, and the same kit with any
/// one piece of the kind taken away.
fn wrong(library: &Library, profile: &str, row: &Pieces) -> Vec<String> {
    let case = format!("{profile} {} {}", row.requirement, row.kind);
    let wanted = Wanted { requirement: row.requirement, kind: row.kind };
    let found = library.find(profile).unwrap();
    let whole = kit::made_for(found, &library.vocabulary, row.freeboard, wanted);
    let kinds = whole.kit.iter().map(|tool| library.vocabulary.kind(tool.kind).id.as_str());
    let of_kind = kinds.enumerate().filter(|(_, id)| *id == row.kind).map(|(at, _)| at);
    let of_kind: Vec<usize> = of_kind.collect();
    let pieces: u32 = of_kind.iter().map(|at| whole.kit[*at].count).sum();
    let mut wrong = Vec::new();
    let complete = kit::outcome(library, &whole, row.freeboard, profile, row.requirement);
    if pieces != row.pieces || complete != "met" {
        wrong.push(format!("{case}: {pieces} pieces are {complete}"));
    }
    for at in of_kind {
        let mut fewer = whole.clone();
        if fewer.kit[at].count > 1 {
            fewer.kit[at].count -= 1;
        } else {
            fewer.kit.remove(at);
        }
        let outcome = kit::outcome(library, &fewer, row.freeboard, profile, row.requirement);
        if outcome != "not-met" {
            wrong.push(format!("{case}: without one of {pieces} it is {outcome}"));
        }
    }
    wrong
}

#[test]
fn one_piece_less_than_a_rule_asks_is_too_few() {
    let library = kit::library();
    let rows = rows::pieces();
    let of_row = |(profile, row): &(&str, Pieces)| wrong(&library, profile, row);
    let wrong: Vec<String> = rows.par_iter().flat_map(of_row).collect();
    assert_eq!(wrong, Vec::<String>::new());
}

#[test]
fn a_requirement_above_4_ft_begins_a_nanometre_above_it() {
    let mut wrong = Vec::new();
    for (profile, requirement, above) in rows::thresholds() {
        for (freeboard, high) in [("4 ft".to_owned(), false), (just_over("4 ft"), true)] {
            let bound = vessel(&freeboard).under(profile, DAY).outcome(requirement) != "unbound";
            if bound != (high == above) {
                wrong.push(format!("{profile} {requirement} at {freeboard}: bound is {bound}"));
            }
        }
    }
    assert_eq!(wrong, Vec::<String>::new());
}

impl Binding {
    /// Whether the edition judges a vessel with this permit and gear that day.
    fn judges(&self, permit: &str, gear: &str, day: &str) -> bool {
        let vessel =
            vessel("5 ft").set("permits", &format!("[{permit}]")).set("gear", &format!("[{gear}]"));
        vessel.check(&["--on", day]).profiles().contains(&self.profile)
    }
}

#[test]
fn an_edition_binds_whom_it_names_from_its_first_to_its_last_day() {
    let mut wrong = Vec::new();
    for row in rows::bindings() {
        for permit in row.permits {
            for gear in if row.gears.is_empty() { &["trap"] } else { row.gears } {
                for (day, expected) in row.days {
                    if row.judges(permit, gear, day) != *expected {
                        wrong.push(format!("{} {permit} {gear} on {day}", row.profile));
                    }
                }
                let inside = row.days.iter().find(|(_, within)| *within).unwrap().0;
                if row.judges("", gear, inside) {
                    wrong.push(format!("{} without a permit", row.profile));
                }
                if !row.gears.is_empty() && row.judges(permit, "trap", inside) {
                    wrong.push(format!("{} {permit} with other gear", row.profile));
                }
            }
        }
    }
    assert_eq!(wrong, Vec::<String>::new());
}
