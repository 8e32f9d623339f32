//! The arguments of `quote`: for which vessels, out of which catalogues, and
//! how the answer is written.

use super::shared::{FOOT, UnitsArgument, day};
use crate::measure::Day;
use crate::report::desk;
use clap::{Args, ValueEnum};
use std::path::PathBuf;

/// The longest search, in seconds: a day.
const LONGEST_SEARCH: u64 = 86_400;

const EXITS: &str = "Exit codes: 0 every vessel is ready after the order (or is already), 1 not \
    ready or can't tell even so, 2 bad input or usage.";

#[derive(Debug, Args)]
#[command(after_help = format!("{EXITS}\n\n{FOOT}"))]
pub(in crate::cli) struct QuoteArguments {
    /// Vessels' inventories, and folders of them (with the folders within);
    /// what lies in a folder called `inspections` is an inspection record
    #[arg(value_name = "PATH", required = true)]
    pub(in crate::cli) paths: Vec<PathBuf>,

    /// A supplier's catalogue; may be given several times, once a supplier
    #[arg(long, value_name = "FILE", required = true)]
    pub(in crate::cli) catalogue: Vec<PathBuf>,

    /// The day of the order, like 2026-03-02 [default: today]
    #[arg(long, value_name = "DATE", value_parser = day)]
    pub(in crate::cli) ordered: Option<Day>,

    /// The day of departure of every vessel, by which everything has to be
    /// there [default: that of its planned trip, else the day of the order]
    #[arg(long, value_name = "DATE", value_parser = day)]
    pub(in crate::cli) on: Option<Day>,

    /// The day of return of every vessel, with `--on` [default: that of its
    /// planned trip]
    #[arg(long = "return", value_name = "DATE", value_parser = day, requires = "on")]
    pub(in crate::cli) back: Option<Day>,

    /// Judge by this profile: the id of an edition or of a rule, or a file;
    /// may be given several times [default: every profile that binds a
    /// vessel]
    #[arg(long, value_name = "ID-OR-FILE")]
    pub(in crate::cli) profile: Vec<String>,

    /// A folder of profiles of your own; a file there replaces a shipped
    /// profile of the same id
    #[arg(long, value_name = "FOLDER")]
    pub(in crate::cli) requirements: Option<PathBuf>,

    /// An inspection record, or a folder of them, beside those found; may be
    /// given several times
    #[arg(long, value_name = "PATH")]
    pub(in crate::cli) inspection: Vec<PathBuf>,

    /// Meet what is recommended too, not only what is required
    #[arg(long, help_heading = "The basket")]
    pub(in crate::cli) with_recommended: bool,

    /// Order everything from one supplier, the best of those given
    #[arg(long, help_heading = "The basket")]
    pub(in crate::cli) one_supplier: bool,

    /// Tell why this basket: what doing without its dearest line would cost,
    /// and which requirement costs most
    #[arg(long, help_heading = "The basket")]
    pub(in crate::cli) explain: bool,

    /// How long to search for the cheapest basket, at most; where the search
    /// is stopped, the quote says how far from the cheapest it can be
    #[arg(long, value_name = "SECONDS", default_value_t = 60, help_heading = "The basket",
        value_parser = clap::value_parser!(u64).range(1..=LONGEST_SEARCH))]
    pub(in crate::cli) time_limit: u64,

    /// For whom the quote is, as it is to stand on the page
    #[arg(long = "for", value_name = "NAME", value_parser = name)]
    pub(in crate::cli) customer: Option<String>,

    /// Which units to print
    #[arg(long, value_enum, default_value_t = UnitsArgument::Both)]
    pub(in crate::cli) units: UnitsArgument,

    /// How to print the result
    #[arg(long, value_enum, default_value_t = QuoteFormat::Table)]
    pub(in crate::cli) format: QuoteFormat,

    /// Write the result to this file, whole or not at all
    #[arg(long, value_name = "FILE")]
    pub(in crate::cli) output: Option<PathBuf>,
}

/// How a quote is printed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(in crate::cli) enum QuoteFormat {
    /// A page for people
    Table,
    /// For programs, with what is to be written into each inventory
    Json,
    /// For a spreadsheet: the sums of a column add up to the total
    Csv,
    /// A page for a browser and for paper, in one file
    Html,
}

/// The longest name of a customer, in characters.
const LONGEST_NAME: usize = 200;

/// A name that says something.
fn name(text: &str) -> Result<String, String> {
    let name = text.trim();
    match name.chars().count() {
        0 => Err(desk::command_name_wanting().to_owned()),
        length if length > LONGEST_NAME => Err(desk::command_name_too_long(&LONGEST_NAME)),
        _ => Ok(name.to_owned()),
    }
}
