//! The command line: arguments, which command calls what, exit codes.
//!
//! The top floor: it may import everything below. The clock is read here and
//! nowhere else, and reports are written here, whole or not at all.

mod arguments;
mod audit;
mod check;
pub mod exit;
mod files;
mod inputs;
mod library;
mod options;
mod output;
mod profiles;
mod quote;
mod sheet;
mod trip;
mod verify;
mod words;

use arguments::{Arguments, Command};
use clap::Parser;
use exit::Exit;
use output::Terminal;
use std::ffi::OsString;
use std::process::ExitCode;

/// Why a command gave no result.
#[derive(Debug)]
enum Stop {
    /// Files were refused.
    Refused(Vec<crate::load::Refusal>),
    /// The program was called in a way that makes no sense.
    Usage {
        /// What is wrong.
        what: String,
        /// How to mend it.
        mend: String,
    },
}

impl Stop {
    fn usage(what: impl Into<String>, mend: impl Into<String>) -> Self {
        Self::Usage { what: what.into(), mend: mend.into() }
    }
}

/// Runs the program with these arguments, the first being its own name.
pub fn run(typed: impl IntoIterator<Item = OsString>) -> ExitCode {
    let exit = match Arguments::try_parse_from(typed) {
        Ok(arguments) => obey(&arguments, &Terminal::of_this_process()),
        Err(message) => {
            // Help and version come as errors too; a broken pipe while they
            // are printed is nobody's fault.
            let _ = message.print();
            if message.use_stderr() { Exit::Refused } else { Exit::Ready }
        }
    };
    exit.into()
}

fn obey(arguments: &Arguments, terminal: &Terminal) -> Exit {
    let result = match &arguments.command {
        Command::Check(check) => check::run(check, terminal),
        Command::Audit(audit) => audit::run(audit, terminal),
        Command::Quote(quote) => quote::run(quote, terminal),
        Command::Options(options) => options::run(options, terminal),
        Command::Sheet(sheet) => sheet::run(sheet),
        Command::Verify(verify) => verify::run(verify, terminal),
        Command::Profiles(profiles) => profiles::run(profiles, terminal),
        Command::Words(words) => words::run(words, terminal),
    };
    match result {
        Ok(exit) => exit,
        Err(Stop::Refused(refusals)) => {
            output::complain(&crate::report::refusals(&refusals, terminal.width_of_errors));
            Exit::Refused
        }
        Err(Stop::Usage { what, mend }) => {
            output::complain(&crate::report::usage(&what, &mend, terminal.width_of_errors));
            Exit::Refused
        }
    }
}
