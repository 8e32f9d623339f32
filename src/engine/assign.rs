//! Assignment: which tool serves which requirement, the best one found. The
//! search itself is in `search.rs`.

use super::search::Search;
use super::seats::{Pose, Solution};

/// Finds the best assignment: most required seats, then most recommended,
/// then the lowest price, then the first in order.
pub(super) fn assign(pose: &Pose) -> Solution {
    let (best, stopped) = Search::new(pose).run();
    let nothing = || Solution { uses: vec![None; pose.seats.len()], ..Solution::default() };
    Solution { stopped, ..best.unwrap_or_else(nothing) }
}

#[cfg(test)]
#[path = "assign_tests.rs"]
mod tests;

#[cfg(test)]
#[path = "assign_brute.rs"]
mod brute;
