//! A fleet's audit in every format: a page for the terminal, JSON as one
//! document or one line a vessel, CSV with one row a finding, and HTML.
//!
//! Imports `fleet` and below. Decides nothing: rows come ordered and counted.

mod beside_html;
pub mod compare;
mod compare_json;
pub mod csv;
mod draft;
mod freeing;
pub mod html;
pub mod json;
pub mod line;
pub mod record;
mod table;

pub use table::table;

use super::options::Shown;
use crate::fleet::compare::Comparison;
use crate::fleet::draft::Drafted;
use crate::fleet::{Audit, Judged};
use crate::freeing::Options;
use crate::measure::Units;
use crate::model::catalogue::Catalogue;
use crate::model::technique::Practice;
use crate::model::vocabulary::Vocabulary;

/// An audit with all that is needed to put it into words.
#[derive(Debug, Clone, Copy)]
pub struct Fleet<'a> {
    /// The audit.
    pub audit: &'a Audit,
    /// The words for kinds and attributes.
    pub vocabulary: &'a Vocabulary,
    /// Which units are shown.
    pub units: Units,
    /// What changed since an earlier audit, where one was given.
    pub against: Option<&'a Comparison>,
    /// What a draft would do, where one was given.
    pub draft: Option<&'a Drafted>,
    /// Which ways of freeing a turtle the kits leave open, where that was
    /// asked.
    pub freeing: Option<Freeing<'a>>,
}

/// Which ways of freeing a turtle the kits of a fleet leave open.
#[derive(Debug, Clone, Copy)]
pub struct Freeing<'a> {
    /// The techniques.
    pub practice: &'a Practice,
    /// One for each vessel of the audit's rows, in their order.
    pub options: &'a [Options],
    /// The catalogues that a tool was priced by.
    pub catalogues: &'a [Catalogue],
}

impl<'a> Fleet<'a> {
    /// What the kit of a vessel leaves open, by its index among those shown.
    pub(crate) fn freeing(&self, index: usize, judged: &'a Judged) -> Option<Shown<'a>> {
        let freeing = self.freeing?;
        Some(Shown {
            options: freeing.options.get(index)?,
            practice: freeing.practice,
            vocabulary: self.vocabulary,
            catalogues: freeing.catalogues,
            sources: &judged.sources,
            notices: &[],
            units: self.units,
        })
    }
}
