//! A fleet's audit in every format: a page for the terminal, JSON as one
//! document or one line a vessel, CSV with one row a finding, and HTML.
//!
//! Imports `fleet` and below. Decides nothing: rows come ordered and counted.

mod beside_html;
pub mod compare;
mod compare_json;
pub mod csv;
mod draft;
pub mod html;
pub mod json;
pub mod line;
pub mod record;
mod table;

pub use table::table;

use crate::fleet::Audit;
use crate::fleet::compare::Comparison;
use crate::fleet::draft::Drafted;
use crate::measure::Units;
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
}
