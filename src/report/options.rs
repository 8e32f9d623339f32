//! Which ways of freeing a turtle a kit leaves open: a page for the terminal,
//! the short answer to one case, and the wall card.

mod html;

pub use super::subject::OptionsShown as Shown;
pub use html::html;

use super::content::{self, Document};
use super::render::terminal;
use crate::freeing::{CaseAnswer, Question};

/// What is open as a page no wider than `width` columns, with colour codes.
pub fn table(shown: &Shown<'_>, width: usize) -> String {
    page(&content::options::document(shown), shown, width)
}

/// The short answer to one case: five lines, each with a label; a line that is
/// wider than the page goes on below, set in.
pub fn case(
    shown: &Shown<'_>,
    question: &Question,
    answers: &[CaseAnswer],
    width: usize,
) -> String {
    page(&content::case::document(shown, question, answers), shown, width)
}

/// What is told beside a case: of records that were not laid over the vessel,
/// or not in full. Empty where there is nothing to tell.
pub fn beside_case(shown: &Shown<'_>, width: usize) -> String {
    page(&content::case::beside(shown), shown, width)
}

fn page(document: &Document, shown: &Shown<'_>, width: usize) -> String {
    terminal::page(document, shown.locale, width)
}
