//! What several commands take: which figures are believed, which units and
//! in which form a result is printed, and how a day is typed.

use crate::measure::{Day, QuantityError, Units};
use crate::model::vessel::Trust;
use crate::report::{Locale, desk};
use clap::ValueEnum;

/// What ends the help of every command.
pub(super) const FOOT: &str = "Check the current rule and local conditions; local rules, permits and \
    trained practice come first. This tool is an aid, no legal advice.";

/// The exit codes of a command that judges kits, and the same end.
pub(super) const EXITS: &str = "Exit codes: 0 ready, 1 not ready or can't tell, 2 bad input or usage.\n\n\
    Check the current rule and local conditions; local rules, permits and trained practice \
    come first. This tool is an aid, no legal advice.";

/// Which figures are believed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(in crate::cli) enum TrustArgument {
    /// All of them
    All,
    /// Only what was measured; what was stated or read off a label counts as
    /// unmeasured
    Measured,
}

/// Which units are printed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(in crate::cli) enum UnitsArgument {
    /// Metres and millimetres
    Metric,
    /// Feet and inches
    Customary,
    /// As written, the other beside it
    Both,
}

/// How the result is printed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(in crate::cli) enum Format {
    /// A page for people
    Table,
    /// For programs
    Json,
    /// A page for a browser and for paper, in one file
    Html,
}

/// A day as it is typed.
pub(super) fn day(text: &str) -> Result<Day, String> {
    Day::parse(text).map_err(|error| match error {
        QuantityError::NoSuchDay => desk::command_no_such_day(&error),
        _ => error.to_string(),
    })
}

impl From<TrustArgument> for Trust {
    fn from(trust: TrustArgument) -> Self {
        match trust {
            TrustArgument::All => Self::All,
            TrustArgument::Measured => Self::Measured,
        }
    }
}

impl From<UnitsArgument> for Locale {
    fn from(units: UnitsArgument) -> Self {
        match units {
            UnitsArgument::Metric => Units::Metric,
            UnitsArgument::Customary => Units::Customary,
            UnitsArgument::Both => Units::Both,
        }
        .into()
    }
}
