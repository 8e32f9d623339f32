//! What the pictures of a vessel's page show and what is told beside them:
//! the reach at the rail, the freeboard, the time.
//!
//! Imports `model`, `measure`, `engine::validity`, the drawings and the words
//! beside it. Decides nothing.

pub(super) mod freeboard;
pub(super) mod reach;
pub(super) mod time;

use crate::measure::{System, Units};
use crate::report::words::Words;

/// The one system that labels inside a drawing use.
fn system(words: &Words<'_>) -> System {
    match words.locale.units {
        Units::Metric => System::Metric,
        Units::Customary => System::Customary,
        Units::Both => words.system(),
    }
}
