//! From the forms, as files are written, to the model: one file for each
//! subject. Every check goes on after a problem, so that all are told at once.
//!
//! Imports `read` and `form`; knows no folder and no shipped file.

pub(crate) mod catalogue;
mod claims;
mod condition;
mod goods;
pub(crate) mod inspection;
mod lines;
mod need;
mod phrase;
mod practice;
pub(crate) mod profile;
mod reading;
pub(crate) mod requirement;
mod situations;
pub(crate) mod slips;
pub(crate) mod techniques;
mod tool;
mod value;
pub(crate) mod vessel;
pub(crate) mod vocabulary;
