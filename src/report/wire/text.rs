//! How JSON and CSV become text that harms no screen and no spreadsheet.
//!
//! Imports `model::text`.

use crate::fleet::record::AuditRecord;
use crate::model::text::{steers, visible};
use serde::Serialize;

/// An audit on record, ending in a line feed.
///
/// # Errors
/// None in practice: the types of the format all have a JSON form.
pub fn record(record: &AuditRecord) -> Result<String, serde_json::Error> {
    document(record)
}

/// A value as pretty-printed JSON, ending in a line feed.
pub(super) fn document(value: &impl Serialize) -> Result<String, serde_json::Error> {
    Ok(harmless(serde_json::to_string_pretty(value)? + "\n"))
}

/// A value as JSON on one line, ending in a line feed.
pub(super) fn line(value: &impl Serialize) -> Result<String, serde_json::Error> {
    Ok(harmless(serde_json::to_string(value)? + "\n"))
}

/// Characters that steer a terminal, written as JSON escapes: the same value
/// to a program, no harm to a screen. They occur within strings alone.
fn harmless(text: String) -> String {
    // Of the plain characters JSON itself escapes all that steer but one.
    if text.is_ascii() && !text.contains('\u{7f}') {
        return text;
    }
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        if steers(c) {
            out.push_str(&format!("\\u{:04x}", u32::from(c)));
        } else {
            out.push(c);
        }
    }
    out
}

/// A row of CSV in the making: every cell that is not set stays empty.
#[derive(Clone)]
pub(super) struct Row {
    head: &'static str,
    cells: Vec<String>,
}

impl Row {
    /// An empty row under that head.
    pub(super) fn new(head: &'static str) -> Self {
        Self { head, cells: head.split(',').map(|_| String::new()).collect() }
    }

    /// Sets a cell to what came out of a file or was worded here.
    pub(super) fn text(mut self, column: &str, text: &str) -> Self {
        if let Some(at) = self.head.split(',').position(|known| known == column) {
            self.cells[at] = cell(text);
        }
        self
    }
}

/// Rows under their head as CSV (RFC 4180), lines ending as the standard says.
pub(super) fn csv(head: &str, rows: impl IntoIterator<Item = Row>) -> Result<String, csv::Error> {
    let mut writer =
        csv::WriterBuilder::new().terminator(csv::Terminator::CRLF).from_writer(Vec::new());
    writer.write_record(head.split(','))?;
    for row in rows {
        writer.write_record(row.cells)?;
    }
    let bytes = writer.into_inner().map_err(|error| csv::Error::from(error.into_error()))?;
    Ok(String::from_utf8_lossy(&bytes).into_owned())
}

/// A cell that shows what it says and computes nothing: what a spreadsheet
/// would take for a formula begins with an apostrophe.
fn cell(text: &str) -> String {
    let shown = visible(text);
    let live = |c: char| matches!(c, '=' | '+' | '-' | '@' | '＝' | '＋' | '－' | '＠' | '|' | '%');
    if shown.trim_start().starts_with(live) { format!("'{shown}") } else { shown }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn no_cell_is_a_live_formula() {
        for text in ["=cmd()", "+1", "-1", "@x", " =1", "\u{ff1d}1"] {
            assert!(cell(text).starts_with('\''), "{text}");
        }
        assert_eq!(cell("\t=1"), "\\u{9}=1");
        assert_eq!(cell("LC-1"), "LC-1");
    }
}
