//! What is shipped, what a folder lays over it, and profiles built on others.
//!
//! Imports `read`, `form` and `check`; decides nothing about a single file.

pub(crate) mod folder;
pub(crate) mod manual;
mod merge;
pub(crate) mod shelf;
