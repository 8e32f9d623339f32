//! Plain checked data: vocabulary, profile, vessel, finding.
//!
//! Imports `measure` only. Nothing here reads files or decides anything; what
//! is written in YAML is mirrored in `load/`, what goes out as JSON in
//! `report/`.

pub mod catalogue;
pub mod check;
pub mod finding;
pub mod inspection;
pub mod options;
pub mod place;
pub mod profile;
pub mod reason;
pub mod rule;
pub(crate) mod stable;
pub mod technique;
pub mod text;
pub mod vessel;
pub mod vocabulary;
