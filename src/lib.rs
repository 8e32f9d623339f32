//! Tells before a fishing vessel sails whether the sea turtle release kit
//! aboard can do its job on that vessel, and why.
#[cfg(feature = "cli")]
pub mod cli;
pub mod engine;
pub mod fleet;
pub mod freeing;
pub mod load;
pub mod measure;
pub mod model;
#[cfg(feature = "quote")]
pub mod quote;
pub mod report;
