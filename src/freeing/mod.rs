//! Which ways of freeing a turtle a kit leaves open: every situation with its
//! choices, one case out of them, and the single tool that would lift most.
//!
//! Imports `engine`, `model` and `measure`. What is open is the engine's word;
//! here it is asked again with one thing changed at a time.

mod better;
mod case;
mod choices;
mod lift;
mod price;
mod prospect;
mod terms;

pub use better::Lifted;
pub use case::{CaseAnswer, CaseError, Question};
pub use choices::Prepared;
pub use lift::Lift;
pub use price::Priced;
pub use prospect::{Prospect, Way};
pub use terms::Terms;

use crate::engine::{self, Depth};
use crate::measure::Day;
use crate::model::check::Check;
use crate::model::finding::Asked;
use crate::model::inspection::Inspection;
use crate::model::options::{Answered, Outlook, Standing};
use crate::model::vessel::{Freeboard, Station, Trust, Vessel};

/// What is asked of one vessel.
#[derive(Debug, Clone, Copy)]
pub struct Request<'a> {
    /// By what it is judged.
    pub terms: Terms<'a>,
    /// The vessel as declared.
    pub vessel: &'a Vessel,
    /// Inspection records to lay over it, in any order.
    pub inspections: &'a [Inspection],
    /// The day of departure.
    pub departure: Day,
    /// The day of return; a trip of one day if it is not known.
    pub back: Option<Day>,
    /// Which figures are believed.
    pub trust: Trust,
}

/// What a kit leaves open on one vessel.
#[derive(Debug, Clone)]
pub struct Options {
    /// The vessel as judged, inspections laid over.
    pub vessel: Vessel,
    /// The days, and which figures were believed.
    pub asked: Asked,
    /// Every situation, choice by choice, with the shortest way to each
    /// closed choice.
    pub outlook: Outlook,
    /// The single tool that would lift most situations, if one lifts any.
    pub lift: Option<Lift>,
    /// Where gear is hauled at several stations, what is open at each by
    /// itself.
    pub stations: Vec<AtStation>,
}

/// What is open where the animal is brought to one hauling station.
#[derive(Debug, Clone)]
pub struct AtStation {
    /// What the station is called, or its number.
    pub name: String,
    /// Every situation there.
    pub outlook: Outlook,
}

/// Judges every choice of every situation for the vessel on its trip.
pub fn options(request: &Request<'_>) -> Options {
    let Request { terms, departure, back, trust, .. } = *request;
    let vessel = engine::judged_vessel(
        request.vessel.clone(),
        request.inspections,
        terms.vocabulary,
        (departure, trust),
    );
    let asked = Asked { departure, back: back.unwrap_or(departure).max(departure), trust };
    judge(&terms, vessel, asked)
}

/// The same for a vessel that was checked: as the check judged it, on the
/// trip of the check.
pub fn of_check(terms: &Terms<'_>, check: &Check) -> Options {
    judge(terms, check.vessel.clone(), check.asked)
}

fn judge(terms: &Terms<'_>, vessel: Vessel, asked: Asked) -> Options {
    let days = (asked.departure, asked.back);
    let outlook = terms.prepared.outlook(terms.vocabulary, &vessel, days, Depth::Way);
    Options {
        lift: lift::lift(terms, &vessel, days, &outlook),
        stations: stations(terms, &vessel, days),
        vessel,
        asked,
        outlook,
    }
}

/// What is open at each hauling station by itself; empty where there is one.
fn stations(terms: &Terms<'_>, vessel: &Vessel, days: (Day, Day)) -> Vec<AtStation> {
    let all = &vessel.freeboard.stations;
    if all.len() < 2 {
        return Vec::new();
    }
    let at = |(index, station): (usize, &Station)| {
        let freeboard = Freeboard { stations: vec![station.clone()], ..vessel.freeboard.clone() };
        let there = Vessel { freeboard, ..vessel.clone() };
        AtStation {
            name: station.name.clone().unwrap_or_else(|| format!("station {}", index + 1)),
            outlook: terms.prepared.outlook(terms.vocabulary, &there, days, Depth::Findings),
        }
    };
    all.iter().enumerate().map(at).collect()
}

/// Vessels counted by the situation that stands worst on each, those left out
/// that its own hooks cannot make arise.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Tally {
    /// The first choice is open in every situation.
    pub first: usize,
    /// Only a fallback in some situation.
    pub fallback: usize,
    /// In some situation nobody can tell whether anything is open.
    pub unclear: usize,
    /// In some situation nothing is open.
    pub nothing: usize,
}

/// Counts vessels by their worst situation.
pub fn tally(fleet: &[Options]) -> Tally {
    let mut tally = Tally::default();
    for options in fleet {
        let arising = options.outlook.all().filter(|one| !one.is_left_out());
        match arising.map(Answered::standing).max() {
            Some(Standing::First) | None => tally.first += 1,
            Some(Standing::Fallback) => tally.fallback += 1,
            Some(Standing::Unclear) => tally.unclear += 1,
            Some(Standing::Nothing) => tally.nothing += 1,
        }
    }
    tally
}
