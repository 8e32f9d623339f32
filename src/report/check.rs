//! One vessel's check as a page.

use super::Subject;
use super::content::check::document;
use super::render::{html, terminal};

/// The check as a page no wider than `width` columns, with colour codes.
pub fn table(subject: &Subject<'_>, width: usize) -> String {
    terminal::page(&document(subject), subject.locale, width)
}

/// The check as one self-contained document.
pub fn check_html(subject: &Subject<'_>) -> String {
    html::page(&document(subject), subject.locale)
}
