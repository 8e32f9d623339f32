//! What was read off a thing, how, and which readings count.

use crate::measure::{Day, Figure};
use std::sync::Arc;

/// How a figure came about.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum How {
    /// Read off a label.
    Label,
    /// Stated by somebody.
    Stated,
    /// Measured on the thing.
    Measured,
}

/// Which figures are believed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Hash)]
pub enum Trust {
    /// All of them.
    #[default]
    All,
    /// Only what was measured; the rest counts as unmeasured.
    Measured,
}

/// What a reading says.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Datum {
    /// A quantity.
    Figure(Figure),
    /// Yes or no.
    Feature(bool),
    /// A word out of a list, or a name, in lower case.
    Word(String),
}

/// One reading of one attribute.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Reading {
    /// What it says.
    pub datum: Datum,
    /// By whom.
    pub by: Option<Arc<str>>,
    /// On which day.
    pub on: Option<Day>,
    /// How.
    pub how: How,
    /// The tape's error, if stated: the truth lies within it on both sides.
    pub error: Option<Figure>,
}

impl Reading {
    /// Of several readings of one thing those that count.
    pub fn counted(readings: &[Self]) -> impl Iterator<Item = &Self> + Clone {
        let any = readings.iter().any(|reading| reading.how == How::Measured);
        readings.iter().filter(move |reading| !any || reading.how == How::Measured)
    }
}
