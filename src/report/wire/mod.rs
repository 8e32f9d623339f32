//! JSON and CSV of every command, made from the facts: the formats that other
//! programs read, and their schemas.
//!
//! Each format is a set of types of its own, so that a change inside the
//! program never changes it by accident. Imports the words for the texts that
//! stand beside the facts; no page, and decides nothing.
//!
//! Within a version keys may be added, never renamed or dropped; readers let pass
//! what they do not know. Codes, ids and fixed words are stable, texts are for
//! people. A quantity has its exact count under the name of its unit, and a text
//! rounded to the safe side: compute with the count.

mod against;
mod audit;
mod check;
#[cfg(feature = "quote")]
mod entries;
mod form;
mod options;
mod parts;
#[cfg(feature = "quote")]
mod quote;
#[cfg(feature = "quote")]
mod quote_csv;
#[cfg(feature = "quote")]
mod quote_vessel;
mod reason;
mod rows;
pub mod schema;
#[cfg(test)]
mod tests;
mod text;

pub use audit::audit;
pub use check::check;
pub use options::options;
#[cfg(feature = "quote")]
pub use quote::quote;
#[cfg(feature = "quote")]
pub use quote_csv::quote_csv;
pub use rows::{audit_csv, audit_line, left_out_line};
pub use text::record;
