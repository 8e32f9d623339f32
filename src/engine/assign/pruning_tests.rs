//! What is left out of a large kit: exactly what cannot matter, so that the
//! assignment is as good without it.

use super::super::bound::Payers;
use super::super::slots::{Candidate, Link, ToolDemand};
use super::super::{assign, assign_from};
use super::*;
use crate::engine::work::Work;
use proptest::prelude::*;

fn candidate(tool: usize, price: u128) -> Candidate {
    Candidate { tool, price, once: None }
}

fn demand(count: u32, candidates: Vec<Candidate>) -> ToolDemand {
    let types = vec![vec![Slot { count, candidates }]];
    ToolDemand { worth: Worth::Required, least: 1, types, ..ToolDemand::default() }
}

fn problem(demands: Vec<ToolDemand>, tools: usize) -> Problem {
    let parts = vec![Vec::new(); tools];
    Problem { demands, capacity: vec![1; tools], parts, listed: tools, ..Problem::default() }
}

/// The tools that are kept.
fn kept(problem: &Problem) -> Vec<usize> {
    let left = capacities(problem, &problem.capacity);
    (0..left.len()).filter(|tool| left[*tool] > 0).collect()
}

/// A kit of equal tools for one place.
fn equal(tools: usize, count: u32) -> Problem {
    problem(vec![demand(count, (0..tools).map(|tool| candidate(tool, 0)).collect())], tools)
}

#[test]
fn of_equal_tools_the_first_are_kept_as_many_as_are_asked_and_one() {
    assert_eq!(kept(&equal(16, 1)), [0, 1]);
    assert_eq!(kept(&equal(40, 3)), [0, 1, 2, 3]);
    assert_eq!(kept(&equal(15, 1)).len(), 15, "too few to be worth it");
    // One more than are asked is never left out, so that nothing is searched.
    assert_eq!(kept(&equal(16, 15)).len(), 16);
    assert_eq!(kept(&equal(17, 15)).len(), 16);
    assert_eq!(kept(&equal(18, 15)).len(), 16);
}

#[test]
fn of_several_places_all_that_they_ask_together_are_kept() {
    let all = || (0..20).map(|tool| candidate(tool, 0)).collect();
    assert_eq!(kept(&problem(vec![demand(1, all()), demand(2, all())], 20)), [0, 1, 2, 3]);
    let left_out = ToolDemand { worth: Worth::LeftOut, ..demand(2, all()) };
    assert_eq!(kept(&problem(vec![demand(1, all()), left_out], 20)), [0, 1]);
}

#[test]
fn a_cheaper_tool_goes_before_a_dearer_one_wherever_it_stands() {
    let dear_first = (0..20).map(|tool| candidate(tool, u128::from(tool < 10))).collect();
    assert_eq!(kept(&problem(vec![demand(1, dear_first)], 20)), [10, 11]);
    let cheap_first = (0..20).map(|tool| candidate(tool, u128::from(tool >= 10))).collect();
    assert_eq!(kept(&problem(vec![demand(1, cheap_first)], 20)), [0, 1]);
    // Dearer in one place and cheaper in another: neither stands in.
    let price = |tool: usize, even: u128| if tool.is_multiple_of(2) { even } else { 1 - even };
    let crossed = [0, 1]
        .map(|even| demand(1, (0..20).map(|tool| candidate(tool, price(tool, even))).collect()));
    assert_eq!(kept(&problem(crossed.to_vec(), 20)), [0, 1, 2, 3, 4, 5]);
}

#[test]
fn what_is_aboard_no_more_goes_before_nothing() {
    let mut kit = equal(20, 1);
    kit.capacity[0] = 0;
    assert_eq!(kept(&kit), [1, 2]);
}

#[test]
fn a_tool_of_parts_is_kept_and_stands_in_for_none() {
    let mut kit = equal(20, 1);
    kit.parts_there = vec![1];
    kit.parts[0] = vec![0];
    kit.parts[19] = vec![0];
    assert_eq!(kept(&kit), [0, 1, 2, 19]);
}

/// A price that is paid once is a tool's own or another tool's too; one that
/// may be shared is no price of one tool.
#[test]
fn a_price_that_others_pay_too_leaves_a_tool_in() {
    let once = |group: &dyn Fn(usize) -> usize, price: u128| {
        let candidates = (0..20)
            .map(|tool| Candidate { tool, price: 0, once: Some((group(tool), price)) })
            .collect();
        Problem { groups: 20, ..problem(vec![demand(1, candidates)], 20) }
    };
    assert_eq!(kept(&once(&|tool| tool, 5)), [0, 1]);
    assert_eq!(kept(&once(&|_| 7, 5)).len(), 20, "paid once for all of them");
    // Whoever takes tool 20 has paid for tool 5 already.
    let mut paid = once(&|tool| tool, 5);
    let other = Candidate { tool: 20, price: 0, once: Some((5, 5)) };
    paid.demands.push(demand(1, vec![other]));
    (paid.capacity, paid.parts) = (vec![1; 21], vec![Vec::new(); 21]);
    assert_eq!(kept(&paid), [0, 1, 5, 20]);
    let mut lots = once(&|tool| tool, 5);
    lots.capacity = vec![2; 20];
    assert_eq!(kept(&lots).len(), 20, "paid once for both of a lot");
    let mut free = once(&|tool| tool, 0);
    free.capacity = vec![2; 20];
    assert_eq!(kept(&free), [0, 1]);
}

#[test]
fn what_a_link_or_a_spare_names_is_a_class_of_its_own() {
    let all = || (0..20).map(|tool| candidate(tool, 0)).collect::<Vec<_>>();
    let mut deemed = demand(1, Vec::new());
    deemed.links = vec![Link { from: 0, tools: Tools::These(vec![18, 19]) }];
    assert_eq!(kept(&problem(vec![demand(1, all()), deemed], 20)), [0, 1, 18, 19]);
    let mut blades = demand(1, vec![candidate(20, 0), candidate(21, 0)]);
    blades.fits = Some((0, vec![(20, Some(vec![17])), (21, None)]));
    assert_eq!(kept(&problem(vec![demand(1, all()), blades], 22)), [0, 1, 17, 20, 21]);
}

/// A tool as it is drawn: its kind, its price, how many, whether it shares a
/// part, and what it pays once.
type Drawn = (usize, u8, u32, bool, u8);

/// A demand: whether it is required, how many it wants, and of which kinds.
type Wanted = (bool, u32, u8);

fn drawn() -> impl Strategy<Value = (Vec<Drawn>, Vec<Wanted>, u8, u8)> {
    let tool = (0_usize..3, 0_u8..2, 1_u32..3, prop::bool::weighted(0.15), 0_u8..4);
    let demand = (any::<bool>(), 1_u32..3, 1_u8..8);
    (prop::collection::vec(tool, 4..12), prop::collection::vec(demand, 1..4), 0_u8..4, 0_u8..4)
}

fn posed(tools: &[Drawn], demands: &[Wanted], link: u8, spare: u8) -> Problem {
    let demand = |(required, count, kinds): &Wanted| {
        let of_kind = |(_, tool): &(usize, &Drawn)| kinds & (1 << tool.0) != 0;
        let fitting = tools.iter().enumerate().filter(of_kind);
        let candidates = fitting.map(|(index, (_, price, _, _, once))| {
            let group = if *once == 3 { 0 } else { index };
            let once = (*once > 1).then_some((group, 3));
            Candidate { tool: index, price: u128::from(*price), once }
        });
        let worth = if *required { Worth::Required } else { Worth::Recommended };
        ToolDemand { worth, ..demand(*count, candidates.collect()) }
    };
    let mut demands: Vec<ToolDemand> = demands.iter().map(demand).collect();
    if link > 0 && demands.len() > 1 {
        let few = (0..tools.len()).filter(|tool| tool % 3 == 0).collect();
        let tools = if link == 1 { Tools::Fitting } else { Tools::These(few) };
        demands[1].links.push(Link { from: 0, tools });
    }
    if spare > 0 && demands.len() > 2 {
        let fits = (0..tools.len()).map(|tool| (tool, Some(vec![tool, (tool + 1) % tools.len()])));
        demands[2].fits = Some((0, fits.collect()));
    }
    let mut problem = problem(demands, tools.len());
    problem.capacity = tools.iter().map(|tool| tool.2).collect();
    problem.parts = tools.iter().map(|tool| if tool.3 { vec![0] } else { Vec::new() }).collect();
    (problem.parts_there, problem.groups) = (vec![1], tools.len());
    problem
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::with_cases(1500) })]

    #[test]
    fn the_assignment_is_as_good_without_what_is_left_out(
        (tools, demands, link, spare) in drawn()
    ) {
        let problem = posed(&tools, &demands, link, spare);
        let whole = assign(&problem, &Work::share());
        let left = without_idle(&problem, &problem.capacity);
        prop_assert_eq!(assign_from(&problem, &left, &Work::share()).score, whole.score, "{:?}", left);
    }

    #[test]
    fn nothing_is_met_for_less_than_its_bound((tools, demands, link, spare) in drawn()) {
        let problem = posed(&tools, &demands, link, spare);
        let whole = assign(&problem, &Work::share());
        let payers = Payers::of(&problem);
        let met = problem.demands.iter().zip(&whole.uses).filter(|(_, uses)| uses.is_some());
        let least: u128 = met.map(|(demand, _)| payers.least(demand, &problem.capacity)).sum();
        prop_assert!(least <= whole.score.price, "{} of {}", least, whole.score.price);
    }
}
