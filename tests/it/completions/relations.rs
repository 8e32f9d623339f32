//! Cases that say the same in other words come out the same, and one that says
//! more of what is good comes out no worse: the order of requirements and tools,
//! the names of tools, a lot written as single tools, a range cut in two, a tool
//! more, a rule asked for twice.

use super::draw::{Draw, Drawn, FOOT, Known, Listed, Requirement};
use super::{judged_by, left_open, number};
use crate::kit;
use crate::whole::cases;
use kitmuster::engine::Depth;
use kitmuster::load::Library;
use kitmuster::measure::Length;
use kitmuster::model::check::Check;
use kitmuster::model::finding::{GoodUpTo, Outcome, ReadyUntil, Verdict, WayToReady};
use kitmuster::model::reason::Reason;
use kitmuster::model::vessel::{FreeboardReading, Station, Vessel};
use std::collections::{BTreeMap, BTreeSet};

/// What must be the same: of each requirement by its id the outcome, and with
/// which others it is tied.
#[derive(Debug, PartialEq)]
struct Told {
    verdict: Verdict,
    findings: BTreeMap<String, (Outcome, BTreeSet<String>)>,
    ready_until: ReadyUntil,
    good_up_to: Option<Length>,
    /// Where fewer were proved impossible.
    steps: Option<usize>,
    left_open: bool,
}

impl Told {
    fn of(check: &Check) -> Self {
        let judgement = &check.judgements[0];
        let id = |index: usize| judgement.profile.requirements[index].id.clone();
        let findings = judgement.findings.iter().map(|finding| {
            let tied = finding.reasons.iter().find_map(|because| match &because.reason {
                Reason::OneOfThese { requirements } => Some(requirements.clone()),
                _ => None,
            });
            let tied = tied.into_iter().flatten().map(id).collect();
            (id(finding.requirement), (finding.outcome, tied))
        });
        let inverses = judgement.inverses.as_ref().unwrap();
        let good_up_to = match &inverses.good_up_to {
            GoodUpTo::Freeboard { length, .. } | GoodUpTo::OnlyBelow { length, .. } => {
                Some(*length)
            }
            GoodUpTo::None | GoodUpTo::NoLimit => None,
        };
        Self {
            verdict: check.verdict,
            findings: findings.collect(),
            ready_until: judgement.ready_until,
            good_up_to,
            steps: match &inverses.way {
                WayToReady::Steps { steps, fewest: true } => Some(steps.len()),
                _ => None,
            },
            left_open: left_open(check),
        }
    }
}

/// A case with its check at full depth.
fn told(library: &Library, drawn: &Drawn) -> Told {
    told_of(library, drawn, &drawn.vessel.vessel(&library.vocabulary))
}

fn told_of(library: &Library, drawn: &Drawn, vessel: &Vessel) -> Told {
    let rule = library.draft_text("drawn.yaml", &drawn.profile(&[])).unwrap();
    Told::of(&judged_by(library, &[rule], vessel, Depth::Whole))
}

/// A lot that a way mends once for two, and three that clash two by two.
const FOUND: [u64; 2] = [642, 832];

/// Every case, each with a generator of its own.
fn each(mut relation: impl FnMut(&Library, &Drawn, &mut Draw, &dyn Fn() -> String)) {
    let library = kit::library();
    let first = number("KITMUSTER_SEED", 1);
    let cases = number("KITMUSTER_CASES", cases(60, 400));
    for seed in (first..first + cases).chain(FOUND) {
        let drawn = Drawn::of(seed);
        let shown = || format!("seed {seed}\n{}\n{:#?}", drawn.profile(&[]), drawn.vessel);
        relation(&library, &drawn, &mut Draw::new(seed + 7), &shown);
    }
}

#[test]
fn no_order_and_no_name_changes_anything() {
    each(|library, drawn, draw, shown| {
        let mut other = drawn.clone();
        draw.shuffle(&mut other.requirements);
        draw.shuffle(&mut other.vessel.kit);
        let mut vessel = other.vessel.vessel(&library.vocabulary);
        vessel.kit.iter_mut().for_each(|tool| tool.mark = format!("renamed {}", tool.mark));
        let (one, mut other) = (told(library, drawn), told_of(library, &other, &vessel));
        if one.steps.is_none() || other.steps.is_none() {
            other.steps = one.steps;
        }
        assert_eq!(one, other, "{}", shown());
    });
}

#[test]
fn a_lot_is_so_many_single_tools() {
    each(|library, drawn, _, shown| {
        let mut other = drawn.clone();
        // What nobody knows of a lot may differ from one to the next anyway.
        let single = |lot: &Listed| Listed { count: 1, ..lot.clone() };
        let split = |lot: &Listed| vec![single(lot); lot.count as usize];
        other.vessel.kit = drawn.vessel.kit.iter().flat_map(split).collect();
        let (one, other) = (told(library, drawn), told(library, &other));
        let same = |told: &Told| (told.verdict, told.findings.clone(), told.ready_until);
        assert_eq!(same(&one), same(&other), "{}", shown());
    });
}

#[test]
fn a_range_is_the_two_that_it_is_cut_into() {
    each(|library, drawn, draw, shown| {
        let Known::Is(low) = drawn.vessel.freeboard else { return };
        let at = |nanometres| Length::from_nanometres(nanometres).unwrap();
        let (cut, high) = (low + draw.below(4) as i64 * FOOT / 2, low + 3 * FOOT);
        let reading = |low, high| FreeboardReading {
            high: FreeboardReading::exactly(at(high)).high,
            ..FreeboardReading::exactly(at(low))
        };
        let with = |ranges: &[(i64, i64)]| {
            let mut vessel = drawn.vessel.vessel(&library.vocabulary);
            let station = |(low, high): &(i64, i64)| Station {
                name: Some(low.to_string()),
                ..Station::of(vec![reading(*low, *high)])
            };
            vessel.freeboard.stations = ranges.iter().map(station).collect();
            let told = told_of(library, drawn, &vessel);
            (told.verdict, told.findings, told.ready_until)
        };
        assert_eq!(with(&[(low, high)]), with(&[(low, cut), (cut + 1, high)]), "{}", shown());
    });
}

#[test]
fn a_tool_more_never_hurts() {
    each(|library, drawn, draw, shown| {
        // Of what is looked for aboard one more may make a rule ask for more.
        let kind = ["dip-net", "bolt-cutters"][draw.below(2)];
        let length = Known::Is((1 + draw.below(6) as i64) * FOOT);
        let more = Listed { kind, count: 1, length, works: Some(true), there: Some(true) };
        let mut other = drawn.clone();
        other.vessel.kit.push(more);
        let (before, after) = (told(library, drawn), told(library, &other));
        assert!(after.verdict <= before.verdict, "{:?}\n{}", after.verdict, shown());
    });
}

#[test]
fn a_rule_that_is_asked_for_twice_asks_no_more() {
    each(|library, drawn, _, shown| {
        let rule = library.draft_text("drawn.yaml", &drawn.profile(&[])).unwrap();
        let vessel = drawn.vessel.vessel(&library.vocabulary);
        let verdict = |asked: &[_]| judged_by(library, asked, &vessel, Depth::Findings).verdict;
        let once = verdict(std::slice::from_ref(&rule));
        assert_eq!(once, verdict(&[rule.clone(), rule]), "{}", shown());
    });
}

/// What leans on another requirement leans on it wherever that stands.
#[test]
fn what_is_drawn_leans_on_others() {
    let leans = |one: &Requirement| one.tail.contains("tool of");
    let drawn = (1..200).map(Drawn::of);
    assert!(drawn.filter(|case| case.requirements.iter().any(leans)).count() > 20);
}
