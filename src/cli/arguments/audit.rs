//! The arguments of `audit`: what is looked at, what is shown, and where it
//! is kept.

use super::shared::{EXITS, TrustArgument, UnitsArgument, day};
use crate::fleet::Order;
use crate::measure::Day;
use crate::model::finding::Verdict;
use clap::{Args, ValueEnum};
use std::path::PathBuf;

#[derive(Debug, Args)]
#[command(after_help = EXITS)]
pub(in crate::cli) struct AuditArguments {
    /// Vessels' inventories, and folders of them (with the folders within);
    /// what lies in a folder called `inspections` is an inspection record
    #[arg(value_name = "PATH", required = true)]
    pub(in crate::cli) paths: Vec<PathBuf>,

    /// Judge by this profile: the id of an edition or of a rule, or a file;
    /// may be given several times [default: every profile that binds a
    /// vessel]
    #[arg(long, value_name = "ID-OR-FILE")]
    pub(in crate::cli) profile: Vec<String>,

    /// A folder of profiles of your own; a file there replaces a shipped
    /// profile of the same id
    #[arg(long, value_name = "FOLDER")]
    pub(in crate::cli) requirements: Option<PathBuf>,

    /// The day of the audit, from which 30, 60 and 90 days are counted
    /// [default: today]
    #[arg(long, value_name = "DATE", value_parser = day)]
    pub(in crate::cli) date: Option<Day>,

    /// The day of departure of every vessel [default: that of its planned
    /// trip, else the day of the audit]
    #[arg(long, value_name = "DATE", value_parser = day)]
    pub(in crate::cli) on: Option<Day>,

    /// The day of return of every vessel, with `--on` [default: that of its
    /// planned trip]
    #[arg(long = "return", value_name = "DATE", value_parser = day, requires = "on")]
    pub(in crate::cli) back: Option<Day>,

    /// An inspection record, or a folder of them, beside those found; may be
    /// given several times
    #[arg(long, value_name = "PATH")]
    pub(in crate::cli) inspection: Vec<PathBuf>,

    /// Which figures to believe
    #[arg(long, value_enum, default_value_t = TrustArgument::All)]
    pub(in crate::cli) trust: TrustArgument,

    /// Tell too which ways of freeing a turtle each kit leaves open: situations
    /// counted by what is open, and the single tool that would change most
    #[arg(long)]
    pub(in crate::cli) outcomes: bool,

    /// A supplier's catalogue, to price that tool; may be given several times,
    /// all of one currency
    #[arg(long, value_name = "FILE", requires = "outcomes")]
    pub(in crate::cli) catalogue: Vec<PathBuf>,

    /// Keep the audit on record in this file, with everything that it was
    /// made from, whole or not at all; `kitmuster verify` repeats it
    #[arg(long, value_name = "FILE", help_heading = "On record")]
    pub(in crate::cli) record: Option<PathBuf>,

    /// Who audits, as it is to stand in the record
    #[arg(long, value_name = "NAME", requires = "record", help_heading = "On record")]
    pub(in crate::cli) auditor: Option<String>,

    /// Compare with an earlier audit on record: what was mended, what is
    /// still open, what is new, and what changed without the vessel
    #[arg(long, value_name = "RECORD", help_heading = "On record")]
    pub(in crate::cli) against: Option<PathBuf>,

    /// Judge the fleet under the draft of an edition too, beside the edition
    /// in force: its id, or a file; in force or not
    #[arg(long, value_name = "ID-OR-FILE", help_heading = "On record")]
    pub(in crate::cli) draft: Option<String>,

    /// Only vessels with this gear on board
    #[arg(long, value_name = "GEAR", help_heading = "Which vessels")]
    pub(in crate::cli) gear: Vec<String>,

    /// Only vessels of this port
    #[arg(long, value_name = "PORT", help_heading = "Which vessels")]
    pub(in crate::cli) port: Vec<String>,

    /// Only vessels that this profile judges: the id of an edition or a rule
    #[arg(long, value_name = "ID", help_heading = "Which vessels")]
    pub(in crate::cli) bound_by: Vec<String>,

    /// Show only vessels with this verdict; the others are counted
    #[arg(long, value_enum, value_name = "VERDICT", help_heading = "Which vessels")]
    pub(in crate::cli) verdict: Vec<VerdictArgument>,

    /// Show only vessels in which this requirement is not met or nobody can
    /// tell; the others are counted
    #[arg(long, value_name = "ID", help_heading = "Which vessels")]
    pub(in crate::cli) requirement: Vec<String>,

    /// In which order to show the vessels
    #[arg(long, value_enum, default_value_t = OrderArgument::Input, help_heading = "Which vessels")]
    pub(in crate::cli) order: OrderArgument,

    /// Which units to print
    #[arg(long, value_enum, default_value_t = UnitsArgument::Both)]
    pub(in crate::cli) units: UnitsArgument,

    /// How to print the result
    #[arg(long, value_enum, default_value_t = FleetFormat::Table)]
    pub(in crate::cli) format: FleetFormat,

    /// Write the result to this file, whole or not at all
    #[arg(long, value_name = "FILE")]
    pub(in crate::cli) output: Option<PathBuf>,

    /// How many vessels to judge at once [default: as many as there are
    /// cores]; the result is the same
    #[arg(long, value_name = "NUMBER", value_parser = clap::value_parser!(u16).range(1..=256))]
    pub(in crate::cli) threads: Option<u16>,
}

/// A verdict.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(in crate::cli) enum VerdictArgument {
    /// Every required finding is met
    Ready,
    /// A required finding cannot be met
    NotReady,
    /// A fact that decides is missing
    CannotTell,
}

/// In which order vessels are shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(in crate::cli) enum OrderArgument {
    /// As given, folders by file name
    Input,
    /// The worst verdict first
    Verdict,
    /// By name
    Name,
    /// By port, then by name
    Port,
    /// The first to lapse first
    ReadyUntil,
}

/// How a fleet's result is printed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, ValueEnum)]
pub(in crate::cli) enum FleetFormat {
    /// A page for people
    Table,
    /// For programs: one document
    Json,
    /// For programs: one vessel a line of JSON, for large fleets
    Lines,
    /// For a spreadsheet: one finding a row
    Csv,
    /// For screen, phone and paper: overview, matrix and a page a vessel
    Html,
}

impl From<VerdictArgument> for Verdict {
    fn from(verdict: VerdictArgument) -> Self {
        match verdict {
            VerdictArgument::Ready => Self::Ready,
            VerdictArgument::NotReady => Self::NotReady,
            VerdictArgument::CannotTell => Self::CannotTell,
        }
    }
}

impl From<OrderArgument> for Order {
    fn from(order: OrderArgument) -> Self {
        match order {
            OrderArgument::Input => Self::Input,
            OrderArgument::Verdict => Self::Verdict,
            OrderArgument::Name => Self::Name,
            OrderArgument::Port => Self::Port,
            OrderArgument::ReadyUntil => Self::ReadyUntil,
        }
    }
}
