//! A quote as a page, and what is told beside it whatever its format.

#[cfg(test)]
mod tests;

pub use super::subject::QuoteShown as Shown;

use super::content::Tone;
use super::content::quote::document;
use super::problems;
use super::render::lines::Page;
use super::render::{self, terminal};
use super::words::fleet;
use super::words::quote::odd_departure;

/// The quote as a page no wider than `width` columns, with colour codes.
pub fn table(shown: &Shown<'_>, width: usize) -> String {
    let first = |refusal: &_| problems::first(refusal).into_iter().collect();
    terminal::page(&document(shown, first), shown.locale, width)
}

/// The quote as one self-contained document.
pub fn html(shown: &Shown<'_>) -> String {
    render::html::page(&document(shown, problems::each), shown.locale)
}

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
            page.hang(0, (locale.quote_note(), Tone::Open), (&told, Tone::Plain));
        }
    }
    text.push_str(&page.finish());
    text
}
