//! Does it satisfy, here, on that day: conditions, limits, fit and validity at
//! one evaluation point.

pub(crate) mod condition;
mod conformity;
pub(crate) mod fit;
pub(crate) mod holders;
pub(crate) mod limit;
pub(crate) mod notes;
pub(crate) mod point;
pub(crate) mod readings;
pub(crate) mod requirement;
pub mod validity;
