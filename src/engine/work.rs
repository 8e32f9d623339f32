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
const MOST_STEPS: u64 = 1_000_000;

/// The most steps of one assignment, so that one that is out of reach leaves
/// enough for those that are not; a kit below the cap on its size stays far
/// below it.
pub(crate) const STEPS_OF_SEARCH: u64 = 500_000;

impl Work {
    /// A whole share.
    pub(crate) fn share() -> Self {
        Self::of_steps(MOST_STEPS)
    }

    /// So many steps.
    pub(crate) fn of_steps(most: u64) -> Self {
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

    #[cfg(test)]
    pub(crate) fn taken(&self) -> u64 {
        self.steps.get()
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

    #[test]
    fn where_no_work_is_left_no_world_is_judged() {
        let work = Work::of_steps(1);
        assert!(work.take_world() && !work.ran_out());
        work.take(1);
        assert!(work.ran_out() && !work.take_world());
    }
}
