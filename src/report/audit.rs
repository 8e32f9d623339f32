//! A fleet's audit in every format: a page for the terminal, JSON as one
//! document or one line a vessel, CSV with one row a finding, and HTML.
//!
//! Imports `fleet` and below. Decides nothing: rows come ordered and counted.

mod beside_html;
pub mod compare;
mod draft;
mod freeing;
pub mod html;
pub mod record;
mod table;

pub use super::subject::{Fleet, Freeing};
pub use table::table;
