//! How much a check may take. Work is counted and no time, so that every
//! machine gives the same answer: steps of assignments and fits of tools, and
//! the worlds in which facts that are missing were given.
//!
//! The verdict with its findings has one share; *ready until*, *good up to*,
//! the clashes and the shortest way have one each, so that none of them can
//! take from another. What a share did not do for is left open, and said so.

use std::cell::Cell;

/// A share of a check's work.
#[derive(Debug)]
pub(crate) struct Work {
    worlds: Cell<u32>,
    /// How many steps were taken, of how many.
    steps: Cell<u64>,
    most: u64,
    ran_out: Cell<bool>,
}

/// The worlds of one share. Three missing facts of seven values each are gone
/// through in full; where outcomes are seen early, or facts have two values, far
/// more are.
const MOST_WORLDS: u32 = 500;

/// The steps of one share.
const MOST_STEPS: u64 = 3_000_000;

/// The most steps of one assignment, so that one that is out of reach leaves
/// enough for those that are not; a kit below the cap on its size stays far
/// below it.
pub(crate) const STEPS_OF_SEARCH: u64 = 500_000;

impl Work {
    /// A whole share.
    pub(crate) fn share() -> Self {
        Self::of_steps(MOST_STEPS)
    }

    fn of_steps(most: u64) -> Self {
        let (worlds, steps) = (Cell::new(MOST_WORLDS), Cell::new(0));
        Self { worlds, steps, most, ran_out: Cell::new(false) }
    }

    /// Whether one more world may be judged, which is taken from what is left.
    pub(crate) fn take_world(&self) -> bool {
        let left = if self.left() == 0 { 0 } else { self.worlds.get() };
        self.worlds.set(left.saturating_sub(1));
        self.ran_out.set(self.ran_out.get() || left == 0);
        left > 0
    }

    /// Takes so many steps from what is left.
    pub(crate) fn take(&self, steps: u64) {
        self.steps.set(self.steps.get().saturating_add(steps));
        self.ran_out.set(self.ran_out.get() || self.left() == 0);
    }

    fn left(&self) -> u64 {
        self.most.saturating_sub(self.steps.get())
    }

    /// How many steps the next assignment may take.
    pub(crate) fn of_search(&self) -> u64 {
        self.left().min(STEPS_OF_SEARCH)
    }

    /// Notes that something was not gone through to its end.
    pub(crate) fn cut_short(&self) {
        self.ran_out.set(true);
    }

    /// Whether no step is left.
    pub(crate) fn is_spent(&self) -> bool {
        self.left() == 0
    }

    /// Whether it did not do for all that was asked.
    pub(crate) fn ran_out(&self) -> bool {
        self.ran_out.get()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::assign::assign;
    use crate::engine::assign::slots::{Candidate, Link, Problem, Slot, ToolDemand, Tools};

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
            assert!(low.steps.get() < 21_000, "seed {seed}: {} steps", low.steps.get());
            assert!(high.steps.get() < 101_000, "seed {seed}: {} steps", high.steps.get());
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

    #[test]
    fn where_no_work_is_left_no_world_is_judged() {
        let work = Work::of_steps(1);
        assert!(work.take_world() && !work.ran_out());
        work.take(1);
        assert!(work.ran_out() && !work.take_world());
    }
}
