//! Files, names and numbers that mean no good, each with what must come of it
//! written beside it: a refusal that says where, what and how to mend it, or
//! the right result. All of them go through the real program, which is held
//! to two seconds of processor time and 200 MB of memory (`limits`), whose
//! every stream must be dead (`dead`), and which never panics.
//!
//! Beside this: `broken.rs` has one message of each kind as a snapshot,
//! `src/load/tests/hostile.rs` damages files at random, `pages/hostile.rs` and
//! `tests/browser/hostile` look at the pages of a fleet.

mod bombs;
mod characters;
mod dead;
mod kinds;
pub(crate) mod limits;
mod markup;
mod names;
mod numbers;
mod places;
mod records;
mod table;
mod yaml;

pub(crate) use dead::refuse_live;
