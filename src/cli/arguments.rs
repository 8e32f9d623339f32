//! What can be typed after `kitmuster`.
//!
//! Imports `measure` and `model` for the values; reads no file and no clock.

mod audit;
mod options;
mod quote;
mod shared;
mod sheet;
mod verify;

pub(super) use audit::{AuditArguments, FleetFormat};
pub(super) use options::OptionsArguments;
pub(super) use quote::{QuoteArguments, QuoteFormat};
pub(super) use shared::{Format, TrustArgument};
pub(super) use sheet::{ReaderArgument, SheetArguments};
pub(super) use verify::VerifyArguments;

use crate::measure::Day;
use clap::{Args, Parser, Subcommand};
use shared::{EXITS, FOOT, UnitsArgument, day};
use std::path::PathBuf;

/// Tells before a fishing vessel sails whether the sea turtle release kit
/// aboard can do its job on that vessel.
#[derive(Debug, Parser)]
#[command(name = "kitmuster", version, about, max_term_width = 80, after_help = FOOT)]
pub(super) struct Arguments {
    #[command(subcommand)]
    pub(super) command: Command,
}

#[derive(Debug, Subcommand)]
pub(super) enum Command {
    /// Check one vessel's kit for a trip
    Check(CheckArguments),
    /// Audit many vessels: a fleet, a port
    Audit(Box<AuditArguments>),
    /// Work out the cheapest order that makes vessels ready, out of suppliers'
    /// catalogues
    Quote(Box<QuoteArguments>),
    /// Tell which ways of freeing a hooked or tangled turtle the kit leaves
    /// open, situation by situation
    Options(Box<OptionsArguments>),
    /// Print paper for the deck, and the files to key it back in
    Sheet(SheetArguments),
    /// Judge an audit on record again, from its own inputs
    Verify(VerifyArguments),
    /// List the profiles: ids, editions, days in force, sources
    Profiles(ProfilesArguments),
    /// List the words that a vessel's file may use
    Words(WordsArguments),
    /// Print the JSON Schema of a file or of the JSON that is written
    Schema(SchemaArguments),
}

#[derive(Debug, Args)]
#[command(after_help = EXITS)]
pub(super) struct CheckArguments {
    /// The vessel's inventory
    #[arg(value_name = "VESSEL.yaml")]
    pub(super) vessel: PathBuf,

    /// Judge by this profile: the id of an edition or of a rule, or a file;
    /// may be given several times [default: every profile that binds the
    /// vessel]
    #[arg(long, value_name = "ID-OR-FILE")]
    pub(super) profile: Vec<String>,

    /// A folder of profiles of your own; a file there replaces a shipped
    /// profile of the same id
    #[arg(long, value_name = "FOLDER")]
    pub(super) requirements: Option<PathBuf>,

    /// The day of departure, like 2026-03-09 [default: that of the planned
    /// trip, else today]
    #[arg(long, value_name = "DATE", value_parser = day)]
    pub(super) on: Option<Day>,

    /// The day of return [default: that of the planned trip]
    #[arg(long = "return", value_name = "DATE", value_parser = day)]
    pub(super) back: Option<Day>,

    /// The day on which it is asked, to tell a planned trip that is over
    /// [default: today]
    #[arg(long, value_name = "DATE", value_parser = day)]
    pub(super) date: Option<Day>,

    /// An inspection record to lay over the inventory; may be given several
    /// times
    #[arg(long, value_name = "FILE")]
    pub(super) inspection: Vec<PathBuf>,

    /// A supplier's catalogue, to price the single tool that would open more
    /// ways of freeing a turtle; may be given several times, all of one
    /// currency
    #[arg(long, value_name = "FILE")]
    pub(super) catalogue: Vec<PathBuf>,

    /// Which figures to believe
    #[arg(long, value_enum, default_value_t = TrustArgument::All)]
    pub(super) trust: TrustArgument,

    /// Which units to print
    #[arg(long, value_enum, default_value_t = UnitsArgument::Both)]
    pub(super) units: UnitsArgument,

    /// How to print the result
    #[arg(long, value_enum, default_value_t = Format::Table)]
    pub(super) format: Format,

    /// Write the result to this file, whole or not at all
    #[arg(long, value_name = "FILE")]
    pub(super) output: Option<PathBuf>,
}

#[derive(Debug, Args)]
pub(super) struct ProfilesArguments {
    /// Only these: ids of editions or rules, with their requirements and notes
    #[arg(value_name = "ID")]
    pub(super) ids: Vec<String>,

    /// A folder of profiles of your own
    #[arg(long, value_name = "FOLDER")]
    pub(super) requirements: Option<PathBuf>,
}

#[derive(Debug, Args)]
pub(super) struct WordsArguments {
    /// Only this kind of tool, with each of its keys and how it is measured
    #[arg(value_name = "KIND")]
    pub(super) kind: Vec<String>,

    /// A folder of profiles of your own, with its vocabulary
    #[arg(long, value_name = "FOLDER")]
    pub(super) requirements: Option<PathBuf>,
}

#[derive(Debug, Args)]
pub(super) struct SchemaArguments {
    /// Of which format, like `vessel` or `check` [default: list them]
    #[arg(value_name = "NAME")]
    pub(super) name: Option<String>,

    /// Write it to this file, whole or not at all; not over a file that is
    /// there
    #[arg(long, value_name = "FILE")]
    pub(super) output: Option<PathBuf>,

    /// Write it over a file that is there
    #[arg(long)]
    pub(super) force: bool,
}

#[cfg(test)]
mod tests {
    use super::*;
    use clap::CommandFactory;

    #[test]
    fn the_arguments_hold_together() {
        Arguments::command().debug_assert();
    }

    #[test]
    fn a_day_in_another_form_is_refused() {
        for text in ["2026-3-9", "09/03/2026", "2026-02-30", "today"] {
            let typed = ["kitmuster", "check", "a.yaml", "--on", text];
            assert!(Arguments::try_parse_from(typed).is_err(), "{text}");
        }
    }

    #[test]
    fn profiles_and_inspections_may_be_given_several_times() {
        let typed = [
            "kitmuster",
            "check",
            "a.yaml",
            "--profile",
            "a",
            "--profile",
            "b",
            "--inspection",
            "c",
        ];
        let Command::Check(check) = Arguments::try_parse_from(typed).unwrap().command else {
            panic!("`check` was typed");
        };
        assert_eq!(check.profile, ["a", "b"]);
        assert_eq!(check.inspection, [PathBuf::from("c")]);
        assert_eq!(check.format, Format::Table);
    }
}
