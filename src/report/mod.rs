//! A check's result to a page for people and to JSON for programs.
//!
//! May import `load` (positions of what was written), `engine`, `model` and
//! `measure`. Decides nothing: what is printed was decided in the engine, and
//! no file is opened here. Nothing out of a file is printed before its
//! steering characters were made visible.

pub mod audit;
mod check;
pub(crate) mod content;
pub mod json;
pub mod options;
mod picture;
mod places;
mod problems;
mod profiles;
pub mod quote;
pub(crate) mod render;
#[cfg(test)]
mod sample;
pub mod schema;
pub mod sheet;
mod vocabulary;
mod words;

pub use check::{check_html, table};
pub use places::Places;
pub use problems::{refusals, usage};
pub use profiles::profiles;
pub use vocabulary::{kind, vocabulary};
pub use words::locale::{Language, Locale};

use crate::load::Source;
use crate::model::check::{Check, Judgement};
use crate::model::vocabulary::Vocabulary;
use words::Words;

/// A check's result with all that is needed to put it into words.
#[derive(Debug, Clone, Copy)]
pub struct Subject<'a> {
    /// The result.
    pub check: &'a Check,
    /// The words for kinds and attributes.
    pub vocabulary: &'a Vocabulary,
    /// The files that were read, to find lines and columns in.
    pub sources: &'a [Source],
    /// The language and the units of the page.
    pub locale: Locale,
    /// Which ways of freeing a turtle the kit leaves open, where that was
    /// asked.
    pub freeing: Option<options::Shown<'a>>,
}

impl<'a> Subject<'a> {
    /// The words for one judgement of the check.
    pub(crate) fn words(&self, judgement: &'a Judgement) -> Words<'a> {
        Words {
            vocabulary: self.vocabulary,
            vessel: &self.check.vessel,
            profile: &judgement.profile,
            locale: self.locale,
        }
    }
}
