//! A fleet's audit in every format: a page for the terminal, JSON as one
//! document or one line a vessel, CSV with one row a finding, and HTML.
//!
//! Imports `fleet` and below. Decides nothing: rows come ordered and counted.

pub mod record;

pub use super::content::compare::{draft_in_one_line, in_one_line};

pub use super::subject::{Fleet, Freeing};

use super::content::audit::{Extent, document};
use super::render::{self, terminal};

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
