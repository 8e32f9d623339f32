//! The invented fleets on which the audit is measured, and the two ways to
//! check one of their vessels.

use kitmuster::engine::{self, Depth, Request, Terms};
use kitmuster::load::{self, Library};
use kitmuster::measure::Day;
use kitmuster::model::check::Check;
use kitmuster::model::finding::Verdict;
use kitmuster::model::vessel::{Trust, Vessel};
use std::collections::BTreeMap;

#[path = "../../benches/fleet/mod.rs"]
pub(crate) mod fleet;

const SEED: u64 = 11;

fn vessels(library: &Library, count: u64) -> Vec<Vessel> {
    let read = |number| {
        let (name, text) = fleet::written(SEED, number, 0);
        let read = load::read_vessel(&name, &text, &library.vocabulary);
        read.unwrap_or_else(|refusal| panic!("{refusal}")).0
    };
    (1..=count).map(read).collect()
}

fn terms<'a>(library: &'a Library, vessel: &Vessel, depth: Depth) -> Terms<'a> {
    Terms {
        vocabulary: &library.vocabulary,
        profiles: &library.profiles,
        asked: &[],
        departure: vessel.trip.departure.unwrap_or(Day::parse("2026-06-01").unwrap()),
        back: vessel.trip.back,
        trust: Trust::All,
        depth,
    }
}

fn check_own(library: &Library, vessel: &Vessel, depth: Depth) -> Check {
    engine::check_own(vessel.clone(), &[], &terms(library, vessel, depth))
}

#[test]
fn a_fleet_is_the_same_every_time_and_its_broken_files_are_refused() {
    let library = Library::shipped().unwrap();
    for number in 1..=30 {
        assert_eq!(fleet::written(SEED, number, 0), fleet::written(SEED, number, 0));
        let (name, broken) = fleet::written(SEED, number, 1000);
        assert!(load::read_vessel(&name, &broken, &library.vocabulary).is_err(), "{broken}");
    }
    assert_ne!(fleet::written(SEED, 1, 0), fleet::written(SEED, 2, 0));
}

#[test]
fn a_fleet_is_mostly_ready_and_has_vessels_of_every_verdict_and_rule() {
    let library = Library::shipped().unwrap();
    let (mut verdicts, mut profiles) = (BTreeMap::new(), BTreeMap::new());
    for vessel in vessels(&library, 300) {
        let check = check_own(&library, &vessel, Depth::Findings);
        *verdicts.entry(check.verdict).or_insert(0) += 1;
        for judgement in &check.judgements {
            *profiles.entry(judgement.profile.id.clone()).or_insert(0) += 1;
        }
    }
    let ready = verdicts[&Verdict::Ready];
    assert!(ready > verdicts[&Verdict::NotReady] && ready > verdicts[&Verdict::CannotTell]);
    for id in [
        "us-gulf-reef-fish-2019",
        "us-south-atlantic-snapper-grouper-2019",
        "us-atlantic-longline-2009",
        "us-atlantic-longline-2024",
        "good-practice-longline",
    ] {
        assert!(profiles.contains_key(id), "{id} in {profiles:?}");
    }
}

#[test]
fn a_check_says_the_same_in_whatever_way_it_is_asked_for() {
    let library = Library::shipped().unwrap();
    for vessel in vessels(&library, 60) {
        let own = check_own(&library, &vessel, Depth::Whole);
        let terms = terms(&library, &vessel, Depth::Whole);
        let asked = engine::check(&Request {
            vocabulary: terms.vocabulary,
            profiles: terms.profiles,
            asked: terms.asked,
            vessel: &vessel,
            inspections: &[],
            departure: terms.departure,
            back: terms.back,
            trust: terms.trust,
            depth: terms.depth,
        });
        assert_eq!(format!("{own:?}"), format!("{asked:?}"));
        let findings = check_own(&library, &vessel, Depth::Findings);
        for (whole, lean) in own.judgements.iter().zip(&findings.judgements) {
            assert_eq!(whole.findings, lean.findings, "{}", vessel.name);
            assert_eq!((whole.verdict, whole.ready_until), (lean.verdict, lean.ready_until));
        }
    }
}
