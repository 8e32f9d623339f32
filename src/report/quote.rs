//! A quote in every format: a page for the terminal, JSON, CSV and HTML.
//!
//! Imports `quote`, `fleet` (records that were laid over no vessel) and what
//! lies below. Decides nothing: lines come chosen, added up and judged.

mod html;
mod table;
#[cfg(test)]
mod tests;

pub use super::subject::QuoteShown as Shown;
pub use html::html;
pub use table::table;

use super::content::Tone;
use super::problems;
use super::render::lines::Page;
use super::subject::finding;
use super::words::fleet;
use super::words::quote::odd_departure;

/// What is told beside the quote, whatever its format: files that could not
/// be read, records that belong to no vessel, days that make no sense.
/// Empty where there is nothing to tell.
pub fn aside(shown: &Shown<'_>, width: usize) -> String {
    let locale = shown.locale;
    let mut text = String::new();
    if !shown.refused.is_empty() {
        text.push_str(&problems::all(shown.refused, locale.quote_for_other_files(), width));
    }
    let mut page = Page::new(width);
    for left_out in shown.left_out {
        let told = format!("{}: {}", left_out.file, fleet::left_out(left_out, locale));
        page.hang(0, (locale.quote_record_not_laid(), Tone::Open), (&told, Tone::Plain));
    }
    for (index, vessel) in shown.quote.vessels.iter().enumerate() {
        if let Some(note) = odd_departure(shown, index, vessel) {
            let told = format!("{}: {note}", vessel.file);
            page.hang(0, (locale.quote_small_note(), Tone::Open), (&told, Tone::Plain));
        }
    }
    text.push_str(&page.finish());
    text
}
