//! Many vessels at once: the audit of a fleet, what it adds up to, and the
//! inspection records that belong to it.
//!
//! Imports `load`, `engine`, `model` and `measure`. Decides what is counted
//! and in which order; prints nothing, and the day is an argument.

pub mod compare;
mod doubts;
pub mod draft;
mod judge;
mod lapses;
mod marks;
mod missed;
pub mod record;
mod records;
mod run;
mod select;
mod summary;

pub use doubts::{Doubt, notices};
pub use judge::{Judged, Orders, Row};
pub use lapses::{After, HORIZONS, Lapse, What, lapses};
pub use marks::{SameMark, same_marks};
pub use missed::{Missed, Worst, most_missed};
pub use records::{LeftOut, Record, Records, bare};
pub use run::{Files, rows, settle};
pub use select::{Order, Selection};
pub use summary::{Audit, Counts};
