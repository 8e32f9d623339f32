//! The file of techniques as it is shipped: every case there is, and what
//! each kind of tool opens.

mod chains;
mod lifts;
mod rails;
mod reach;
mod removed;
mod walk;

use kitmuster::freeing::Prepared;
use kitmuster::freeing::{self, Options, Request, Terms};
use kitmuster::load::{self, Library};
use kitmuster::measure::{Answer, Day};
use kitmuster::model::options::Answered;
use kitmuster::model::technique::Practice;
use kitmuster::model::vessel::{Trust, Vessel};
use std::sync::{Arc, OnceLock};

/// The shipped library and its techniques, made ready.
struct Shipped {
    library: Library,
    prepared: Prepared,
}

fn shipped() -> &'static Shipped {
    static SHIPPED: OnceLock<Shipped> = OnceLock::new();
    SHIPPED.get_or_init(|| {
        let library = crate::kit::library();
        let prepared = Prepared::new(library.practice.as_ref().unwrap());
        Shipped { library, prepared }
    })
}

fn practice() -> &'static Arc<Practice> {
    shipped().prepared.practice()
}

/// A vessel out of the text of its file.
fn vessel(text: &str) -> Vessel {
    load::read_vessel("vessel.yaml", text, &shipped().library.vocabulary).unwrap().0
}

/// A trip of a week, and nothing but the vessel's own file.
fn request(vessel: &Vessel) -> Request<'_> {
    Request {
        terms: Terms {
            vocabulary: &shipped().library.vocabulary,
            prepared: &shipped().prepared,
            catalogues: &[],
        },
        vessel,
        inspections: &[],
        departure: Day::parse("2026-12-02").unwrap(),
        back: Some(Day::parse("2026-12-09").unwrap()),
        trust: Trust::All,
    }
}

/// What the vessel's kit leaves open on a trip of a week.
fn options_of(vessel: &Vessel) -> Options {
    freeing::options(&request(vessel))
}

/// The ids of a choice's techniques: `gag, then cut-hook`.
fn spelled(practice: &Practice, choice: &[usize]) -> String {
    let ids = choice.iter().map(|t| practice.techniques[*t].id.as_str());
    ids.collect::<Vec<_>>().join(", then ")
}

/// The answer to a choice of a situation.
fn answer(options: &Options, situation: &str, choice: &str) -> Answer {
    let (answered, index) = answered(options, situation);
    let choices = &practice().situations[index].choices;
    let at = choices.iter().position(|c| spelled(practice(), c) == choice).unwrap();
    answered.choices[at].answer
}

fn answered<'a>(options: &'a Options, situation: &str) -> (&'a Answered, usize) {
    let index = practice().situations.iter().position(|s| s.id == situation).unwrap();
    (&options.outlook.situations[index], index)
}

/// A vessel that has one of everything, J and circle hooks, and a rail so low
/// that everything reaches.
const FULL: &str = include_str!("options_cases/full.yaml");
