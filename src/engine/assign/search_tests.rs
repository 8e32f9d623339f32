//! Which states the search takes for one and the same, when it remembers
//! them at all, and when it stops.

use super::super::slots::Link;
use super::*;
use crate::engine::work::STEPS_OF_SEARCH as MOST_STEPS;

fn slot(count: u32, tools: std::ops::Range<usize>) -> Slot {
    let candidates = tools.map(|tool| Candidate { tool, price: 0, once: None }).collect();
    Slot { count, candidates }
}

fn problem(slots: &[Slot], tools: usize) -> Problem {
    let demand = |slot: &Slot| ToolDemand {
        worth: Worth::Required,
        least: 1,
        types: vec![vec![slot.clone()]],
        ..ToolDemand::default()
    };
    let parts = vec![Vec::new(); tools];
    let demands = slots.iter().map(demand).collect();
    Problem { demands, capacity: vec![1; tools], parts, listed: tools, ..Problem::default() }
}

fn small(slots: &[Slot]) -> bool {
    is_small(&problem(slots, 8), &(0..slots.len()).collect::<Vec<_>>())
}

#[test]
fn three_demands_with_six_tools_are_gone_through_and_no_more() {
    let two = || slot(1, 0..2);
    assert!(small(&[two(), two(), two()]));
    assert!(!small(&[two(), two(), slot(1, 0..3)]));
    assert!(!small(&[two(), two(), slot(1, 0..1), slot(1, 0..1)]));
    assert!(small(&[slot(1, 0..6)]));
    assert!(!small(&[slot(1, 0..7)]));
    assert!(!small(&[slot(2, 0..2)]));
    assert!(!small(&[two(), slot(2, 0..2)]));
}

/// The key of a state in which the first demand uses these tools, the second
/// leaning on it.
fn key(uses: &[(usize, Option<usize>)]) -> Vec<u32> {
    let mut problem = problem(&[slot(2, 0..4), slot(1, 0..4)], 4);
    problem.demands[1].links = vec![Link { from: 0, tools: Tools::Fitting }];
    let work = Work::share();
    let mut search = Search::new(&problem, &problem.capacity, problem.capacity.clone(), &work);
    let used = |(tool, through): &(usize, Option<usize>)| Use {
        tool: *tool,
        of_type: 0,
        slot: 0,
        through: *through,
    };
    search.uses[0] = uses.iter().map(used).collect();
    search.matters = (0..3).map(|depth| matters(&problem, &[0, 1], depth)).collect();
    search.write_key(1);
    search.key.clone()
}

#[test]
fn states_in_which_another_tool_serves_are_told_apart() {
    let mut all = Vec::new();
    for tool in 0..4 {
        for through in [None, Some(2)] {
            all.push(key(&[(tool, through)]));
        }
    }
    all.push(key(&[]));
    all.push(key(&[(0, None), (1, None)]));
    let count = all.len();
    all.sort();
    all.dedup();
    assert_eq!(all.len(), count);
    // Through which demand it counts is no matter to those that lean on it.
    assert_eq!(key(&[(1, Some(2))]), key(&[(1, Some(3))]));
}

#[test]
fn a_search_stops_at_its_last_step_and_says_so() {
    let problem = problem(&[slot(1, 0..2), slot(1, 0..2)], 2);
    let solved = |steps: u64| {
        let work = Work::share();
        let mut search = Search::new(&problem, &problem.capacity, problem.capacity.clone(), &work);
        search.steps = steps;
        let mut assignment = Assignment { uses: vec![None; 2], ..Assignment::default() };
        search.solve(&[0, 1], &mut assignment);
        (assignment.stopped, assignment.score.required)
    };
    assert_eq!(solved(0), (false, 2));
    assert!(solved(MOST_STEPS - 1).0);
    assert!(solved(MOST_STEPS).0);
    let work = Work::share();
    let mut search = Search::new(&problem, &problem.capacity, problem.capacity.clone(), &work);
    assert!(!search.stopped());
    assert_eq!(search.steps, 1);
    search.steps = MOST_STEPS - 1;
    assert!(search.stopped());
}

/// What was stopped for one group stays so, whatever the next one says.
#[test]
fn once_stopped_a_assignment_stays_stopped() {
    let problem = problem(&[slot(1, 0..2), slot(1, 0..2)], 2);
    let work = Work::share();
    let mut search = Search::new(&problem, &problem.capacity, problem.capacity.clone(), &work);
    let mut assignment = Assignment { uses: vec![None; 2], stopped: true, ..Assignment::default() };
    search.solve(&[0, 1], &mut assignment);
    assert!(assignment.stopped);
}
