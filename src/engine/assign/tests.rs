//! The assignment against brute force on small random kits.

use super::slots::*;
use super::*;
use proptest::prelude::*;

fn slot(count: u32, tools: &[usize]) -> Slot {
    let candidates = tools.iter().map(|t| Candidate { tool: *t, price: 0, once: None }).collect();
    Slot { count, candidates }
}

fn demand(types: Vec<Vec<Slot>>, least: usize) -> ToolDemand {
    ToolDemand { worth: Worth::Required, least, types, ..ToolDemand::default() }
}

fn problem(demands: Vec<ToolDemand>, capacity: Vec<u32>) -> Problem {
    let parts = vec![Vec::new(); capacity.len()];
    let listed = capacity.len();
    Problem { demands, capacity, parts, listed, ..Problem::default() }
}

fn met(assignment: &Assignment) -> Vec<bool> {
    assignment.uses.iter().map(Option::is_some).collect()
}

#[test]
fn a_greedy_choice_does_not_cost_a_requirement() {
    // The first demand takes either tool, the second only tool 0.
    let problem = problem(
        vec![demand(vec![vec![slot(1, &[0, 1])]], 1), demand(vec![vec![slot(1, &[0])]], 1)],
        vec![1, 1],
    );
    assert_eq!(met(&assign(&problem, &Work::share())), [true, true]);
}

/// The cheapest are taken, and named in the order of the kit.
#[test]
fn what_fills_a_slot_is_named_in_the_order_of_the_kit() {
    let mut wanted = slot(2, &[0, 1, 2]);
    for (candidate, price) in wanted.candidates.iter_mut().zip([5, 9, 1]) {
        candidate.price = price;
    }
    let assignment =
        assign(&problem(vec![demand(vec![vec![wanted]], 1)], vec![1; 3]), &Work::share());
    let uses = assignment.uses[0].as_ref().unwrap();
    assert_eq!(uses.iter().map(|used| used.tool).collect::<Vec<_>>(), [0, 2]);
    assert_eq!(assignment.score.price, 6);
}

#[test]
fn a_deemed_tool_counts_twice_but_goes_no_further() {
    let mut internal = demand(vec![vec![slot(1, &[0])]], 1);
    internal.links = Vec::new();
    let mut external = demand(vec![vec![slot(1, &[])]], 1);
    external.links = vec![Link { from: 0, tools: Tools::These(vec![0]) }];
    let mut inverted = demand(vec![vec![slot(1, &[])]], 1);
    inverted.links = vec![Link { from: 1, tools: Tools::These(vec![0]) }];
    let problem = problem(vec![internal, external, inverted], vec![1]);
    assert_eq!(met(&assign(&problem, &Work::share())), [true, true, false]);
}

#[test]
fn a_shared_tool_must_fit_both() {
    let first = demand(vec![vec![slot(1, &[0, 1])]], 1);
    let mut second = demand(vec![vec![slot(1, &[1])]], 1);
    second.links = vec![Link { from: 0, tools: Tools::Fitting }];
    let kit = problem(vec![first, second], vec![1, 0]);
    assert_eq!(met(&assign(&kit, &Work::share())), [true, false]);
    let kit = Problem { capacity: vec![0, 1], ..kit };
    assert_eq!(met(&assign(&kit, &Work::share())), [true, true]);
}

#[test]
fn two_tools_that_share_a_part_do_not_both_serve() {
    let mut kit = problem(
        vec![demand(vec![vec![slot(1, &[0])]], 1), demand(vec![vec![slot(1, &[1])]], 1)],
        vec![1, 1],
    );
    kit.parts = vec![vec![0], vec![0]];
    kit.parts_there = vec![1];
    assert_eq!(assign(&kit, &Work::share()).score.required, 1);
    kit.parts = vec![vec![], vec![]];
    assert_eq!(assign(&kit, &Work::share()).score.required, 2);
}

#[test]
fn a_type_counts_once_however_many_sets_there_are() {
    let types = vec![vec![slot(1, &[0])], vec![slot(1, &[1])]];
    let kit = problem(vec![demand(types, 2)], vec![2, 0]);
    assert_eq!(met(&assign(&kit, &Work::share())), [false]);
    let kit = Problem { capacity: vec![1, 1], ..kit };
    assert_eq!(met(&assign(&kit, &Work::share())), [true]);
}

#[test]
fn spares_count_only_for_the_tool_in_use() {
    let cutter = demand(vec![vec![slot(1, &[0, 1])]], 1);
    let mut blades = demand(vec![vec![slot(1, &[2])]], 1);
    blades.fits = Some((0, vec![(2, Some(vec![1]))]));
    let kit = problem(vec![cutter, blades], vec![1, 1, 1]);
    let assignment = assign(&kit, &Work::share());
    assert_eq!(met(&assignment), [true, true]);
    assert_eq!(assignment.uses[0].as_ref().unwrap()[0].tool, 1);
    let kit = Problem { capacity: vec![1, 0, 1], ..kit };
    assert_eq!(met(&assign(&kit, &Work::share())), [true, false]);
}

#[test]
fn a_large_kit_of_different_tools_is_solved_without_being_stopped() {
    let all: Vec<usize> = (0..500).collect();
    let demands = (0..13_usize)
        .map(|s| {
            let mut wide = slot(1, &all);
            for candidate in &mut wide.candidates {
                candidate.price = u128::try_from((candidate.tool * 7) % 500 + s).unwrap();
            }
            demand(vec![vec![wide]], 1)
        })
        .collect();
    let assignment = assign(&problem(demands, vec![1; 500]), &Work::share());
    assert_eq!(assignment.score.required, 13);
    assert!(!assignment.stopped);
}

/// A small random case: for each demand its level, count and candidates.
#[derive(Debug, Clone)]
struct Small {
    demands: Vec<(bool, u32, Vec<bool>)>,
    capacity: Vec<u32>,
    handles: Vec<u8>,
}

fn small() -> impl Strategy<Value = Small> {
    (1_usize..5).prop_flat_map(|tools| {
        let demand = (any::<bool>(), 1_u32..3, prop::collection::vec(any::<bool>(), tools));
        (
            prop::collection::vec(demand, 1..5),
            prop::collection::vec(1_u32..3, tools),
            prop::collection::vec(0_u8..4, tools),
        )
            .prop_map(|(demands, capacity, handles)| Small { demands, capacity, handles })
    })
}

fn posed(case: &Small) -> Problem {
    let demands = case
        .demands
        .iter()
        .map(|(required, count, fits)| {
            let candidates = (0..fits.len())
                .filter(|t| fits[*t])
                .map(|t| Candidate { tool: t, price: u128::from(case.handles[t]), once: None })
                .collect();
            ToolDemand {
                worth: if *required { Worth::Required } else { Worth::Recommended },
                least: 1,
                types: vec![vec![Slot { count: *count, candidates }]],
                ..ToolDemand::default()
            }
        })
        .collect();
    problem(demands, case.capacity.clone())
}

/// Tries, for each demand, not meeting it and every multiset of tools.
fn brute(case: &Small, demand: usize, left: &mut Vec<u32>, score: Score, best: &mut Score) {
    let Some((required, count, fits)) = case.demands.get(demand) else {
        if score.beats(*best) {
            *best = score;
        }
        return;
    };
    brute(case, demand + 1, left, score, best);
    let mut chosen = vec![0; fits.len()];
    every_choice(case, demand, *count, 0, &mut chosen, left, &mut |left, price| {
        let next = Score {
            required: score.required + u32::from(*required),
            recommended: score.recommended + u32::from(!*required),
            price: score.price + price,
        };
        brute(case, demand + 1, left, next, best);
    });
}

fn every_choice(
    case: &Small,
    demand: usize,
    missing: u32,
    tool: usize,
    chosen: &mut Vec<u32>,
    left: &mut Vec<u32>,
    then: &mut dyn FnMut(&mut Vec<u32>, u128),
) {
    let fits = &case.demands[demand].2;
    if tool == fits.len() {
        if missing == 0 {
            let price = chosen
                .iter()
                .zip(&case.handles)
                .map(|(n, h)| u128::from(*n) * u128::from(*h))
                .sum();
            then(left, price);
        }
        return;
    }
    for n in 0..=missing.min(if fits[tool] { left[tool] } else { 0 }) {
        left[tool] -= n;
        chosen[tool] = n;
        every_choice(case, demand, missing - n, tool + 1, chosen, left, then);
        chosen[tool] = 0;
        left[tool] += n;
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(600))]

    #[test]
    fn the_assignment_is_as_good_as_brute_force(case in small()) {
        let assignment = assign(&posed(&case), &Work::share());
        let mut best = Score::default();
        brute(&case, 0, &mut case.capacity.clone(), Score::default(), &mut best);
        prop_assert_eq!(assignment.score, best);
        prop_assert!(!assignment.stopped);
    }
}
