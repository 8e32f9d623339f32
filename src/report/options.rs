//! Which ways of freeing a turtle a kit leaves open: the page for the
//! terminal, the wall card, JSON, and the short answer to one case.
//!
//! Imports `options`, `load` (positions of what was written), `model` and
//! `measure`; decides nothing.

mod case;
mod drawing;
mod html;
mod json;
mod summary;
mod table;

pub use case::{beside_case, case};
pub use html::html;
pub use json::json;
pub(in crate::report) use json::{FreeingJson, OptionsJson};
pub use table::table;

use super::words::Words;
use crate::freeing::Options;
use crate::load::Source;
use crate::measure::Units;
use crate::model::catalogue::Catalogue;
use crate::model::check::{Judgement, Notice};
use crate::model::technique::Practice;
use crate::model::vocabulary::Vocabulary;

/// What is shown.
#[derive(Debug, Clone, Copy)]
pub struct Shown<'a> {
    /// What the kit leaves open.
    pub options: &'a Options,
    /// The techniques.
    pub practice: &'a Practice,
    /// The trade's words.
    pub vocabulary: &'a Vocabulary,
    /// The catalogues that a tool was priced by.
    pub catalogues: &'a [Catalogue],
    /// The files that were read, to find lines and columns in: the vessel's
    /// and those of the records laid over it.
    pub sources: &'a [Source],
    /// What is to be told of the trip and of the records.
    pub notices: &'a [Notice],
    /// Which units are shown.
    pub units: Units,
}

impl<'a> Shown<'a> {
    /// The words about the tools of a choice.
    pub(crate) fn words(&self, judgement: &'a Judgement) -> Words<'a> {
        Words {
            vocabulary: self.vocabulary,
            vessel: &self.options.vessel,
            profile: &judgement.profile,
            units: self.units,
        }
    }
}
