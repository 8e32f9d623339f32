//! A check's result to a page for people and to JSON for programs.
//!
//! May import `load` (positions of what was written), `engine`, `model` and
//! `measure`. Decides nothing: what is printed was decided in the engine, and
//! no file is opened here. Nothing out of a file is printed before its
//! steering characters were made visible.

pub mod audit;
mod check_html;
mod draw;
pub(crate) mod html;
pub mod options;
mod page;
mod picture;
mod places;
mod problems;
mod profiles;
pub mod quote;
#[cfg(test)]
mod sample;
pub mod sheet;
mod subject;
mod table;
mod vocabulary;
pub mod wire;
mod words;

pub use check_html::check_html;
pub use places::Places;
pub use problems::{refusals, usage};
pub use profiles::profiles;
pub use subject::Subject;
pub use table::table;
pub use vocabulary::{kind, vocabulary};
