//! The command line: arguments, which command calls what, exit codes.
//!
//! The top floor: it may import everything below. The clock is read here and
//! nowhere else, and reports are written here, whole or not at all. What a
//! command complains of are messages of the desk (`command-…`); its help stands
//! beside the arguments, where clap and the README take it from.

mod arguments;
mod audit;
mod check;
pub mod exit;
mod files;
mod inputs;
mod library;
mod options;
mod output;
mod passing;
mod profiles;
mod quote;
mod schema;
mod sheet;
mod stop;
mod trip;
mod verify;
mod words;

use crate::model::text::{steers, visible};
use arguments::{Arguments, Command};
use clap::Parser;
use exit::Exit;
use output::Terminal;
use std::ffi::OsString;
use std::process::ExitCode;
use stop::Stop;

/// Runs the program with these arguments, the first being its own name.
pub fn run(typed: impl IntoIterator<Item = OsString>) -> ExitCode {
    let typed: Vec<OsString> = typed.into_iter().collect();
    let terminal = Terminal::of_this_process();
    let exit = match Arguments::try_parse_from(&typed) {
        Ok(arguments) => obey(&arguments, &terminal),
        Err(message) if message.use_stderr() => {
            complain_of(&message, &typed);
            Exit::Refused
        }
        // Help and version come as errors too.
        Err(message) => match output::print(&message.render().ansi().to_string()) {
            Ok(()) => Exit::Ready,
            Err(stop) => tell(stop, &terminal),
        },
    };
    exit.into()
}

/// Says what was typed wrongly. What was typed is repeated there as it is, and
/// may be a file's name that steers the screen.
fn complain_of(message: &clap::Error, typed: &[OsString]) {
    if !typed.iter().any(|one| one.to_string_lossy().chars().any(steers)) {
        let _ = message.print();
        return;
    }
    let plain = message.render().to_string();
    let lines: Vec<_> = plain.split('\n').map(visible).collect();
    output::complain(&lines.join("\n"));
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
        Command::Schema(schema) => schema::run(schema),
    };
    result.unwrap_or_else(|stop| tell(stop, terminal))
}

/// Says why there is no result.
fn tell(stop: Stop, terminal: &Terminal) -> Exit {
    let width = terminal.width_of_errors;
    output::complain(&match stop {
        Stop::Refused(refusals) => crate::report::refusals(&refusals, width),
        Stop::Usage { what, mend } => crate::report::usage(&what, &mend, width),
    });
    Exit::Refused
}
