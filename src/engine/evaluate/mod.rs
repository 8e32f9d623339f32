//! Does it satisfy, here, on that day: conditions, limits, fit and validity at
//! one evaluation point.

pub(crate) mod condition;
pub(crate) mod fit;
pub(crate) mod holders;
pub(crate) mod limit;
pub(crate) mod notes;
pub(crate) mod point;
pub(crate) mod requirement;
pub(crate) mod satisfy;
pub mod validity;
