//! Kits of many tools, drawn at random, under every shipped profile and a made-up
//! one in which twelve requirements compete: what a check says of them hangs on no
//! order, and under the shipped ones no answer is left open.
//!
//! `cargo bench --bench worst` measures how long they take.

use crate::fleets::fleet;
use crate::kit;
use crate::whole::cases;
use kitmuster::engine::{self, Depth, Request};
use kitmuster::load::Library;
use kitmuster::measure::Day;
use kitmuster::model::check::Judgement;
use kitmuster::model::finding::{Outcome, WayToReady};
use kitmuster::model::profile::Profile;
use kitmuster::model::reason::Reason;
use kitmuster::model::vessel::{Trust, Vessel};
use kits::DAY;
use std::sync::Arc;

#[path = "../../benches/worst/kits.rs"]
mod kits;

fn judged(library: &Library, profile: &Arc<Profile>, vessel: &Vessel) -> Judgement {
    let day = Day::parse(DAY).unwrap();
    let mut check = engine::check(&Request {
        vocabulary: &library.vocabulary,
        profiles: &[],
        asked: std::slice::from_ref(profile),
        vessel,
        inspections: &[],
        departure: day,
        back: Some(day),
        trust: Trust::All,
        depth: Depth::Whole,
    });
    check.judgements.remove(0)
}

fn outcomes(judgement: &Judgement) -> Vec<(usize, Outcome)> {
    judgement.findings.iter().map(|finding| (finding.requirement, finding.outcome)).collect()
}

fn was_stopped(judgement: &Judgement) -> bool {
    let mut reasons = judgement.findings.iter().flat_map(|finding| &finding.reasons);
    reasons.any(|because| because.reason == Reason::TooManyWays)
}

/// The steps of a way of which fewer were proved impossible.
fn fewest(way: &WayToReady) -> Option<usize> {
    match way {
        WayToReady::Steps { steps, fewest: true } => Some(steps.len()),
        _ => None,
    }
}

#[test]
fn a_large_kit_is_judged_alike_in_every_order() {
    let library = kit::library();
    let (mut judged_whole, mut all) = (0, 0);
    for profile in kits::profiles(&library) {
        // Where all compete with all, a search takes long.
        let tools = if profile.id == "many-rivals" { 12 } else { 40 };
        for seed in 1..=cases(1, 3) {
            let vessel = kits::kit(&library.vocabulary, &profile, seed, tools);
            let judgement = judged(&library, &profile, &vessel);
            let mut turned = vessel.clone();
            turned.kit.reverse();
            let other = judged(&library, &profile, &turned);
            all += 1;
            if was_stopped(&judgement) || was_stopped(&other) {
                continue;
            }
            judged_whole += 1;
            assert_eq!(outcomes(&judgement), outcomes(&other), "{} seed {seed}", profile.id);
            if judgement.left_open.is_empty() && other.left_open.is_empty() {
                let (one, other) = (judgement.inverses.unwrap(), other.inverses.unwrap());
                assert_eq!(one.stretches, other.stretches, "{} seed {seed}", profile.id);
                if let (Some(one), Some(other)) = (fewest(&one.way), fewest(&other.way)) {
                    assert_eq!(one, other, "{} seed {seed}", profile.id);
                }
            }
        }
    }
    assert!(judged_whole * 10 >= all * 8, "{judged_whole} of {all} were gone through");
}
