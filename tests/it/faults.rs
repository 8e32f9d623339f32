//! What goes wrong around a report: no room, no folder, no right, a link, a
//! reader who leaves, a process that is killed, two that write one file. In
//! each case the old report is whole or the new one is, what happened is told
//! in one message, and the exit code is that of the table in `src/cli/exit.rs`.
//!
//! What is decided here: a link to a file is followed and stays a link; one that
//! leads nowhere, a device and a file that may only be read are refused; record and
//! report of one audit take their names only once both are on the disk; a run that
//! is killed can leave `.kitmuster-…`, which no command reads or removes.

mod disk;
mod interrupted;
mod places;
mod streams;

use crate::run::home;
use std::path::Path;
use std::process::Command;

/// The day of every run.
const DAY: &str = "2026-03-02";

/// Every command that writes a file, without its `--output`.
fn writers() -> Vec<Vec<&'static str>> {
    let vessel = "vessels/marlow-tern.yaml";
    vec![
        vec!["check", vessel, "--on", DAY],
        vec!["check", vessel, "--on", DAY, "--format", "html"],
        vec!["options", vessel, "--on", DAY, "--format", "html"],
        vec!["sheet", vessel, "--on", DAY],
        vec!["sheet", vessel, "--on", DAY, "--record-form", "--force"],
        vec!["sheet", "--blank-vessel", "us-gulf-reef-fish-2019", "--force"],
        vec!["audit", vessel, "--date", DAY, "--format", "lines"],
        vec!["audit", vessel, "--date", DAY, "--format", "csv"],
        vec![
            "quote",
            vessel,
            "--ordered",
            DAY,
            "--catalogue",
            "suppliers/port-ansel-chandlery.yaml",
        ],
        vec!["schema", "vessel", "--force"],
    ]
}

/// The flag that names the file: every command's, and the audit's record.
fn outputs() -> Vec<Vec<&'static str>> {
    let with = |mut typed: Vec<&'static str>, flag| {
        typed.push(flag);
        typed
    };
    let mut all: Vec<_> = writers().into_iter().map(|typed| with(typed, "--output")).collect();
    all.push(vec!["audit", "vessels/marlow-tern.yaml", "--date", DAY, "--record"]);
    all
}

/// The program, from the package's folder with a scrubbed environment.
fn program(typed: &[&str]) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_kitmuster"));
    command.args(typed).current_dir(home()).env_clear().env("COLUMNS", "80");
    command
}

/// The program below a line of the shell, which ends in running it.
fn below(shell: &str, typed: &[&str]) -> Command {
    let mut command = Command::new("/bin/sh");
    command.args(["-c", &format!("{shell} exec \"$0\" \"$@\"")]);
    command.arg(env!("CARGO_BIN_EXE_kitmuster")).args(typed);
    command.current_dir(home()).env_clear().env("COLUMNS", "80");
    command
}

/// What a run said on standard error, with every gap as one blank.
fn complaint(output: &std::process::Output) -> String {
    let text = String::from_utf8(output.stderr.clone()).unwrap();
    text.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// The names in a folder.
fn names(folder: &Path) -> Vec<String> {
    let entries = std::fs::read_dir(folder).unwrap();
    let name = |entry: std::io::Result<std::fs::DirEntry>| {
        entry.unwrap().file_name().to_string_lossy().into_owned()
    };
    let mut names: Vec<_> = entries.map(name).collect();
    names.sort();
    names
}

/// A name that a report has until it is whole.
fn is_stray(name: &str) -> bool {
    name.starts_with(".kitmuster-") && !name.contains("yaml") && !name.contains("html")
}
