//! A fleet's audit in every format: a page for the terminal, JSON as one
//! document or one line a vessel, CSV with one row a finding, and HTML.
//!
//! Imports `fleet` and below. Decides nothing: rows come ordered and counted.

mod compare_json;
pub mod csv;
pub(in crate::report) mod draft;
pub(in crate::report) mod freeing;
pub mod json;
pub mod line;
pub mod record;

pub use super::content::compare::{draft_in_one_line, in_one_line};

use super::content::audit::{Extent, document};
use super::options::Shown;
use super::render::{self, terminal};
use crate::fleet::compare::Comparison;
use crate::fleet::draft::Drafted;
use crate::fleet::{Audit, Judged};
use crate::model::catalogue::Catalogue;
use crate::model::technique::Practice;
use crate::model::vocabulary::Vocabulary;
use crate::options::Options;
use crate::report::Locale;

/// Up to so many vessels each has a page of its own.
pub const EACH_ITS_PAGE: usize = 300;

/// The audit as a page no wider than `width` columns, with colour codes.
pub fn table(of: &Fleet<'_>, width: usize) -> String {
    let extent = Extent { most: 12, most_vessels: 60, accounts: None };
    terminal::page(&document(of, extent), of.locale, width)
}

/// The audit as one self-contained document.
pub fn html(of: &Fleet<'_>) -> String {
    let most = EACH_ITS_PAGE;
    let extent = Extent { most, most_vessels: most, accounts: Some(most) };
    render::html::page(&document(of, extent), of.locale)
}

/// An audit with all that is needed to put it into words.
#[derive(Debug, Clone, Copy)]
pub struct Fleet<'a> {
    /// The audit.
    pub audit: &'a Audit,
    /// The words for kinds and attributes.
    pub vocabulary: &'a Vocabulary,
    /// The language and the units of the page.
    pub locale: Locale,
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
            locale: self.locale,
        })
    }
}
