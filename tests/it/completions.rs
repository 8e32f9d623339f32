//! What the engine says of a vessel of which facts are missing, against every
//! way in which they can turn out: small vessels drawn at random, each missing
//! fact given every value that can matter, one vessel after another judged.

mod draw;
mod every;
mod relations;

use crate::kit;
use crate::whole::cases;
use draw::Drawn;
use every::Over;
use kitmuster::engine::{self, Depth, Request};
use kitmuster::load::Library;
use kitmuster::measure::Day;
use kitmuster::model::check::{Check, Notice};
use kitmuster::model::finding::{Finding, Outcome, Verdict};
use kitmuster::model::profile::Profile;
use kitmuster::model::reason::Reason;
use kitmuster::model::vessel::{Trust, Vessel};
use std::collections::BTreeMap;
use std::sync::Arc;

/// A number from the environment, to try many more by hand.
fn number(name: &str, usual: u64) -> u64 {
    std::env::var(name).ok().and_then(|text| text.parse().ok()).unwrap_or(usual)
}

#[test]
fn every_finding_is_what_all_completions_agree_on() {
    let library = kit::library();
    let first = number("KITMUSTER_SEED", 1);
    let cases = number("KITMUSTER_CASES", cases(150, 1_500));
    let mut tally = Tally::default();
    for seed in (first..first + cases).chain(FOUND) {
        agree(&library, seed, &mut tally);
    }
    eprintln!("{tally:?}");
    // Most are small enough to be gone through, and every answer comes up.
    assert!(tally.compared * 10 > cases * 6, "{tally:?}");
    assert!(tally.left_open * 50 < tally.compared, "{tally:?}");
    assert!(tally.verdicts.iter().all(|n| n * 20 > tally.compared), "{tally:?}");
}

/// What is known of rivals beside a fact that is missing elsewhere, one that leans
/// on another of which everything is known, equals for which a net of unknown
/// length may be larger than need be, one that has a tool of its own but may take
/// another's for the sake of a third, pliers that a margin of *about* lets in
/// before or after others, and figures that a rival measures by the freeboard.
const FOUND: [u64; 8] =
    [1_566, 2_807, 22_336, 1_023_816, 1_057_256, 1_067_665, 3_023_149, 3_061_613];

/// With so few completions nothing is left open.
const FEW: usize = 30;

/// How many cases were compared, and what came out.
#[derive(Debug, Default)]
struct Tally {
    compared: u64,
    completions: u64,
    /// Those of which the engine says that it did not go through all.
    left_open: u64,
    /// Ready, can't tell, not ready.
    verdicts: [u64; 3],
}

fn agree(library: &Library, seed: u64, tally: &mut Tally) {
    let drawn = Drawn::of(seed);
    let Some(completions) = every::completions(&drawn) else { return };
    let rule = |text: &str| library.draft_text("drawn.yaml", text).unwrap();
    let profile = rule(&drawn.profile(&[]));
    let mut rules: BTreeMap<String, Arc<Profile>> = BTreeMap::new();
    let mut over = Over::default();
    for one in &completions {
        let vessel = one.vessel(&library.vocabulary);
        for law in drawn.laws(one) {
            let text = drawn.profile(&law);
            let read = rules.entry(text).or_insert_with_key(|text| rule(text));
            over.add(&judged(library, read, &vessel), profile.requirements.len());
        }
    }
    let check = judged(library, &profile, &drawn.vessel.vessel(&library.vocabulary));
    let left_open = left_open(&check);
    tally.compared += 1;
    tally.completions += completions.len() as u64;
    tally.left_open += u64::from(left_open);
    tally.verdicts[match over.verdict() {
        Verdict::Ready => 0,
        Verdict::CannotTell => 1,
        Verdict::NotReady => 2,
    }] += 1;
    let shown = || {
        format!(
            "seed {seed}, {} completions\n{}\n{:#?}",
            completions.len(),
            drawn.profile(&[]),
            drawn.vessel
        )
    };
    assert!(!left_open || completions.len() > FEW, "left open\n{}", shown());
    let same = |found: Option<Outcome>, wanted: Option<Outcome>| {
        found == wanted || left_open && found == Some(Outcome::CannotTell)
    };
    for index in 0..profile.requirements.len() {
        let found = check.judgements[0].finding(index).map(|finding| finding.outcome);
        let wanted = over.outcome(index);
        let id = &profile.requirements[index].id;
        assert!(same(found, wanted), "{id}: {found:?}, over all {wanted:?}\n{}", shown());
    }
    let wanted = over.verdict();
    assert!(
        check.verdict == wanted || left_open && check.verdict == Verdict::CannotTell,
        "{:?}, over all {wanted:?}\n{}",
        check.verdict,
        shown()
    );
    let unsaid = |one: &&Finding| one.outcome != Outcome::Met && one.reasons.is_empty();
    if let Some(finding) = check.judgements[0].findings.iter().find(unsaid) {
        panic!("no reason: {finding:#?}\n{}", shown());
    }
}

/// Whether the check says that it did not go through everything.
fn left_open(check: &Check) -> bool {
    let findings = check.judgements.iter().flat_map(|judgement| &judgement.findings);
    let mut reasons = findings.flat_map(|finding| &finding.reasons);
    check.notices.contains(&Notice::TooManyFacts)
        || reasons.any(|because| because.reason == Reason::TooManyFacts)
}

fn judged(library: &Library, profile: &Arc<Profile>, vessel: &Vessel) -> Check {
    judged_by(library, std::slice::from_ref(profile), vessel, Depth::Findings)
}

fn judged_by(library: &Library, asked: &[Arc<Profile>], vessel: &Vessel, depth: Depth) -> Check {
    let day = Day::parse(kit::DAY).unwrap();
    engine::check(&Request {
        vocabulary: &library.vocabulary,
        profiles: &[],
        asked,
        vessel,
        inspections: &[],
        departure: day,
        back: Some(day),
        trust: Trust::All,
        depth,
    })
}
