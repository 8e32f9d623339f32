//! What can be typed after `kitmuster options`.
//!
//! Imports `measure` for the values and the arguments beside it.

use super::shared::{FOOT, Format, TrustArgument, UnitsArgument, day};
use crate::measure::Day;
use clap::Args;
use std::path::PathBuf;

const EXITS: &str = "Exit codes: 0 the first choice is open in every situation that the vessel's \
    own hooks can make arise (with `--case`: in every situation shown), 1 only a fallback or \
    nothing somewhere, or can't tell, 2 bad input or usage.";

#[derive(Debug, Args)]
#[command(after_help = format!("{EXITS}\n\n{FOOT}"))]
pub(in crate::cli) struct OptionsArguments {
    /// The vessel's inventory
    #[arg(value_name = "VESSEL.yaml")]
    pub(in crate::cli) vessel: PathBuf,

    /// Answer this one case in short, like
    /// `alongside,outside,circle,buried`: words in any order, with commas
    /// between them
    #[arg(long, value_name = "WORDS")]
    pub(in crate::cli) case: Option<String>,

    /// The day of departure, like 2026-03-09 [default: that of the planned
    /// trip, else today]
    #[arg(long, value_name = "DATE", value_parser = day)]
    pub(in crate::cli) on: Option<Day>,

    /// The day of return [default: that of the planned trip]
    #[arg(long = "return", value_name = "DATE", value_parser = day)]
    pub(in crate::cli) back: Option<Day>,

    /// An inspection record to lay over the inventory; may be given several
    /// times
    #[arg(long, value_name = "FILE")]
    pub(in crate::cli) inspection: Vec<PathBuf>,

    /// Which figures to believe
    #[arg(long, value_enum, default_value_t = TrustArgument::All)]
    pub(in crate::cli) trust: TrustArgument,

    /// A folder of profiles of your own, with its techniques
    #[arg(long, value_name = "FOLDER")]
    pub(in crate::cli) requirements: Option<PathBuf>,

    /// A supplier's catalogue, to price the single tool that lifts most; may
    /// be given several times, all of one currency
    #[arg(long, value_name = "FILE")]
    pub(in crate::cli) catalogue: Vec<PathBuf>,

    /// Which units to print
    #[arg(long, value_enum, default_value_t = UnitsArgument::Both)]
    pub(in crate::cli) units: UnitsArgument,

    /// How to print the result; a page for a browser is a card for the wall
    /// with the steps of the best way that is open in each situation
    #[arg(long, value_enum, default_value_t = Format::Table)]
    pub(in crate::cli) format: Format,

    /// Write the result to this file, whole or not at all
    #[arg(long, value_name = "FILE")]
    pub(in crate::cli) output: Option<PathBuf>,
}
