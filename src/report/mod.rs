//! A check's result to a page for people and to JSON for programs.
//!
//! May import `load` (positions of what was written), `engine`, `model` and
//! `measure`. Decides nothing: what is printed was decided in the engine, and
//! no file is opened here. Nothing out of a file is printed before its
//! steering characters were made visible.

pub mod audit;
mod check;
pub(crate) mod content;
mod draw;
#[cfg(test)]
mod made_up;
pub mod options;
mod picture;
mod places;
mod problems;
mod profiles;
#[cfg(feature = "quote")]
pub mod quote;
pub(crate) mod render;
#[cfg(test)]
mod sample;
pub mod sheet;
mod subject;
mod vocabulary;
pub mod wire;
mod words;

pub use check::{check_html, table};
pub use places::Places;
pub use problems::{refusals, slips, usage};
pub use profiles::profiles;
pub use subject::Subject;
pub use vocabulary::{kind, vocabulary};
#[cfg(feature = "cli")]
pub(crate) use words::locale::desk;
pub use words::locale::{Language, Locale};
pub use words::problems::Wording;
