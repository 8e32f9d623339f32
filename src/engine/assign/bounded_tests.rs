//! An assignment over a kit for which many requirements compete stays under the
//! bound that it is given.

use super::slots::{Candidate, Link, Problem, Slot, ToolDemand, Tools};
use super::*;

/// Numbers that look like chance.
struct Draw(u64);

impl Draw {
    fn below(&mut self, below: u64) -> u64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1);
        (self.0 >> 33) % below
    }
}

/// Two to twelve demands for several out of 40 tools, some of which may be shared.
fn contested(seed: u64) -> Problem {
    let mut draw = Draw(seed);
    let tools = 40;
    let mut problem = Problem {
        capacity: (0..tools).map(|_| 1 + u32::from(draw.below(8) == 0)).collect(),
        listed: tools,
        parts: vec![Vec::new(); tools],
        ..Problem::default()
    };
    for index in 0..2 + usize::try_from(seed % 11).unwrap() {
        let mut candidates = Vec::new();
        for tool in 0..tools {
            if draw.below(3) == 0 {
                let price = u128::from(draw.below(40));
                candidates.push(Candidate { tool, price, once: None });
            }
        }
        let count = u32::try_from(1 + draw.below(4)).unwrap();
        let links = match draw.below(4) {
            0 if index > 0 => vec![Link { from: index - 1, tools: Tools::Fitting }],
            _ => Vec::new(),
        };
        let types = vec![vec![Slot { count, candidates }]];
        problem.demands.push(ToolDemand { least: 1, types, links, ..ToolDemand::default() });
    }
    problem
}

#[test]
fn an_assignment_stays_under_its_bound_and_says_the_same_with_a_higher_one() {
    let (mut ended, mut stopped) = (0, 0);
    for seed in 0..44 {
        let problem = contested(seed);
        let (low, high) = (Work::of_steps(20_000), Work::of_steps(100_000));
        let (one, other) = (assign(&problem, &low), assign(&problem, &high));
        assert!(low.taken() < 21_000, "seed {seed}: {} steps", low.taken());
        assert!(high.taken() < 101_000, "seed {seed}: {} steps", high.taken());
        assert_eq!((one.stopped, other.stopped), (low.ran_out(), high.ran_out()));
        match one.stopped {
            true => stopped += 1,
            false => {
                ended += 1;
                assert_eq!((one.uses, one.score), (other.uses, other.score), "seed {seed}");
            }
        }
    }
    assert!(ended > 0 && stopped > 0, "{ended} ended, {stopped} were stopped");
}
