//! Which ways of freeing a turtle a kit leaves open: the page for the
//! terminal, the wall card, JSON, and the short answer to one case.
//!
//! Imports `options`, `load` (positions of what was written), `model` and
//! `measure`; decides nothing.

mod case;
mod html;
mod summary;
mod table;

pub use super::subject::OptionsShown as Shown;
pub use case::{beside_case, case};
pub use html::html;
pub use table::table;
