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
    steps: Cell<u64>,
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
        Self {
            worlds: Cell::new(MOST_WORLDS),
            steps: Cell::new(MOST_STEPS),
            ran_out: Cell::new(false),
        }
    }

    /// Whether one more world may be judged, which is taken from what is left.
    pub(crate) fn take_world(&self) -> bool {
        let left = if self.steps.get() == 0 { 0 } else { self.worlds.get() };
        self.worlds.set(left.saturating_sub(1));
        self.ran_out.set(self.ran_out.get() || left == 0);
        left > 0
    }

    /// Takes so many steps from what is left.
    pub(crate) fn take(&self, steps: u64) {
        let left = self.steps.get().saturating_sub(steps);
        self.steps.set(left);
        self.ran_out.set(self.ran_out.get() || left == 0);
    }

    /// How many steps the next assignment may take.
    pub(crate) fn of_search(&self) -> u64 {
        self.steps.get().min(STEPS_OF_SEARCH)
    }

    /// Notes that something was not gone through to its end.
    pub(crate) fn cut_short(&self) {
        self.ran_out.set(true);
    }

    /// Whether it did not do for all that was asked.
    pub(crate) fn ran_out(&self) -> bool {
        self.ran_out.get()
    }
}
