//! A check's result to a page for people and to JSON for programs.
//!
//! May import `load` (positions of what was written), `engine`, `model` and
//! `measure`. Decides nothing: what is printed was decided in the engine, and
//! no file is opened here. Nothing out of a file is printed before its
//! steering characters were made visible.

pub mod audit;
mod check_html;
pub(crate) mod html;
pub mod json;
pub mod options;
mod page;
mod picture;
mod places;
mod problems;
mod profiles;
#[cfg(feature = "quote")]
pub mod quote;
#[cfg(test)]
mod sample;
pub mod schema;
pub mod sheet;
mod table;
mod vocabulary;
mod words;

pub use check_html::check_html;
pub use places::Places;
pub use problems::{refusals, usage};
pub use profiles::profiles;
pub use table::table;
pub use vocabulary::{kind, vocabulary};

use crate::load::Source;
use crate::measure::Units;
use crate::model::check::Check;
use crate::model::vocabulary::Vocabulary;

/// A check's result with all that is needed to put it into words.
#[derive(Debug, Clone, Copy)]
pub struct Subject<'a> {
    /// The result.
    pub check: &'a Check,
    /// The words for kinds and attributes.
    pub vocabulary: &'a Vocabulary,
    /// The files that were read, to find lines and columns in.
    pub sources: &'a [Source],
    /// Which units are shown.
    pub units: Units,
    /// Which ways of freeing a turtle the kit leaves open, where that was
    /// asked.
    pub freeing: Option<options::Shown<'a>>,
}
