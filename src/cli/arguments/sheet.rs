//! What can be typed after `kitmuster sheet`.
//!
//! Imports `measure` for the values and the arguments beside it.

use super::shared::{FOOT, UnitsArgument, day};
use crate::measure::Day;
use clap::{Args, ValueEnum};
use std::path::PathBuf;

#[derive(Debug, Args)]
#[command(after_help = FOOT)]
pub(in crate::cli) struct SheetArguments {
    /// The vessel's inventory
    #[arg(value_name = "VESSEL.yaml")]
    pub(in crate::cli) vessel: Option<PathBuf>,

    /// For whom: a form to walk the deck with, or a list of what is to be
    /// done before leaving [default: inspector]
    #[arg(long = "for", value_enum, value_name = "READER")]
    pub(in crate::cli) reader: Option<ReaderArgument>,

    /// Write the sheet's rows as an inspection record to fill in, not as paper
    #[arg(long)]
    pub(in crate::cli) record_form: bool,

    /// Lay this inspection record over the vessel, as in `check`; may be
    /// given several times
    #[arg(long, value_name = "FILE")]
    pub(in crate::cli) inspection: Vec<PathBuf>,

    /// Write an inventory to fill in for this profile, an id or a file,
    /// instead of a paper for a vessel
    #[arg(long, value_name = "ID-OR-FILE")]
    pub(in crate::cli) blank_vessel: Option<String>,

    /// Go by this profile, as in `check`; may be given several times
    #[arg(long, value_name = "ID-OR-FILE")]
    pub(in crate::cli) profile: Vec<String>,

    /// A folder of profiles of your own, as in `check`
    #[arg(long, value_name = "FOLDER")]
    pub(in crate::cli) requirements: Option<PathBuf>,

    /// The day of departure [default: that of the planned trip, else today]
    #[arg(long, value_name = "DATE", value_parser = day)]
    pub(in crate::cli) on: Option<Day>,

    /// The day of return [default: that of the planned trip]
    #[arg(long = "return", value_name = "DATE", value_parser = day)]
    pub(in crate::cli) back: Option<Day>,

    /// Which units to print
    #[arg(long, value_enum, default_value_t = UnitsArgument::Both)]
    pub(in crate::cli) units: UnitsArgument,

    /// Write it to this file, whole or not at all; a form to fill in takes the
    /// place of no file
    #[arg(long, value_name = "FILE")]
    pub(in crate::cli) output: Option<PathBuf>,

    /// Write a form to fill in over a file that is there
    #[arg(long)]
    pub(in crate::cli) force: bool,
}

/// For whom a paper is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(in crate::cli) enum ReaderArgument {
    /// A form to walk the deck with
    Inspector,
    /// What to do before leaving, what runs out, what is met by the list
    Skipper,
}
