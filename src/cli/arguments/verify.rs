//! The arguments of `verify`: the record.

use super::shared::FOOT;
use clap::Args;
use std::path::PathBuf;

const EXITS: &str = "Exit codes: 0 the same findings, 1 other findings, 2 a record that cannot be \
    read, that was changed, or bad usage.";

#[derive(Debug, Args)]
#[command(after_help = format!("{EXITS}\n\n{FOOT}"))]
pub(in crate::cli) struct VerifyArguments {
    /// An audit that `kitmuster audit --record` kept
    #[arg(value_name = "RECORD")]
    pub(in crate::cli) record: PathBuf,
}
