//! What the evaluated points of a trip come to: which editions apply, where to
//! look, the verdict with its findings, and the inverses that need no change
//! of the vessel.

pub(crate) mod breakpoints;
pub(crate) mod clash;
pub(crate) mod editions;
pub(crate) mod evaluation;
pub(crate) mod findings;
pub(crate) mod good_up_to;
mod lasting;
pub(crate) mod ready_until;
pub(crate) mod verdict;
