//! The files that a check reads, so that no report is written over one.
//!
//! Looks names up in the file system; opens nothing.

use super::arguments::{AuditArguments, CheckArguments};
use super::library::{Named, named};
use super::stop::Stop;
use crate::report::desk;
use std::path::{Path, PathBuf};

/// Refuses a report's place that is one of the files that are read.
pub(super) fn spare(report: &Path, arguments: &CheckArguments) -> Result<(), Stop> {
    spare_all(report, || inputs(arguments))
}

/// The same for an audit and the file that this flag names: every file in its
/// folders, and what it is compared with.
pub(super) fn spare_audit(
    flag: &str,
    report: &Path,
    arguments: &AuditArguments,
) -> Result<(), Stop> {
    let paths = || arguments.paths.iter().chain(&arguments.inspection);
    spare_for(flag, report, || {
        let found = paths().flat_map(|path| crate::load::find_files(path)).flatten();
        let mut all: Vec<_> = found.map(|found| found.path).collect();
        all.extend(profiles(&arguments.profile, arguments.requirements.as_deref()));
        all.extend(arguments.catalogue.iter().cloned());
        all.extend(read_beside(arguments));
        all
    })
}

/// The record to compare with and the draft's file: what is read beside the
/// vessels, so that nothing is written over it.
fn read_beside(arguments: &AuditArguments) -> Vec<PathBuf> {
    let draft = arguments.draft.as_deref().map(named).and_then(|draft| match draft {
        Named::File(path) => Some(path.to_path_buf()),
        Named::Id(_) => None,
    });
    arguments.against.iter().cloned().chain(draft).collect()
}

/// Refuses a report's place that is one of the inputs, which are looked up
/// only where there is something at that place.
pub(super) fn spare_all(report: &Path, inputs: impl Fn() -> Vec<PathBuf>) -> Result<(), Stop> {
    spare_for("--output", report, inputs)
}

/// The same for the file that this flag names.
fn spare_for(flag: &str, report: &Path, inputs: impl Fn() -> Vec<PathBuf>) -> Result<(), Stop> {
    // What does not exist yet is no file that is read.
    let Ok(target) = report.canonicalize() else { return Ok(()) };
    let same = |input: &PathBuf| input.canonicalize().is_ok_and(|input| input == target);
    match inputs().into_iter().find(same) {
        Some(input) => Err(Stop::usage(
            desk::command_written_over(&input.display()),
            desk::command_file_of_its_own(&flag),
        )),
        None => Ok(()),
    }
}

/// Every file that the check may read.
pub(super) fn inputs(arguments: &CheckArguments) -> Vec<PathBuf> {
    let mut all = vec![arguments.vessel.clone()];
    all.extend(arguments.inspection.iter().cloned());
    all.extend(arguments.catalogue.iter().cloned());
    all.extend(profiles(&arguments.profile, arguments.requirements.as_deref()));
    all
}

/// The files among the profiles that were named, and those of a folder.
pub(super) fn profiles(typed: &[String], folder: Option<&Path>) -> Vec<PathBuf> {
    let files = typed.iter().filter_map(|typed| match named(typed) {
        Named::File(path) => Some(path.to_path_buf()),
        Named::Id(_) => None,
    });
    files.chain(folder.into_iter().flat_map(within)).collect()
}

/// What lies in the folder of requirements; nothing where it cannot be read,
/// which is told when the profiles are.
#[allow(clippy::disallowed_methods, reason = "names alone are read, no file is opened")]
fn within(folder: &Path) -> Vec<PathBuf> {
    let entries = std::fs::read_dir(folder).into_iter().flatten().flatten();
    entries.map(|entry| entry.path()).collect()
}

#[cfg(test)]
#[allow(clippy::disallowed_methods, reason = "the tests write the files that are spared")]
mod tests {
    use super::super::arguments::{Arguments, Command};
    use super::*;
    use clap::Parser;

    fn arguments(folder: &Path) -> CheckArguments {
        let path = |name: &str| folder.join(name).to_string_lossy().into_owned();
        let typed = ["kitmuster", "check"].map(str::to_owned).into_iter().chain([
            path("vessel.yaml"),
            "--inspection".into(),
            path("record.yaml"),
            "--profile".into(),
            path("rule.yaml"),
            "--requirements".into(),
            path("rules"),
        ]);
        match Arguments::try_parse_from(typed).unwrap().command {
            Command::Check(check) => check,
            other => panic!("`check` was typed, not {other:?}"),
        }
    }

    #[test]
    fn no_file_that_is_read_is_written_over_by_whatever_name() {
        let folder = tempfile::tempdir().unwrap();
        let at = |name: &str| folder.path().join(name);
        std::fs::create_dir(at("rules")).unwrap();
        let read = ["vessel.yaml", "record.yaml", "rule.yaml", "rules/own.yaml"];
        for name in read {
            std::fs::write(at(name), "x").unwrap();
        }
        std::fs::write(at("old-report.txt"), "x").unwrap();
        let arguments = arguments(folder.path());
        for name in read {
            assert!(spare(&at(name), &arguments).is_err(), "{name}");
            assert!(spare(&at("rules/..").join(name), &arguments).is_err(), "{name}");
        }
        assert!(spare(&at("old-report.txt"), &arguments).is_ok());
        assert!(spare(&at("new-report.txt"), &arguments).is_ok());
    }

    #[cfg(unix)]
    #[test]
    fn a_link_to_a_file_that_is_read_is_that_file() {
        let folder = tempfile::tempdir().unwrap();
        let at = |name: &str| folder.path().join(name);
        std::fs::write(at("vessel.yaml"), "x").unwrap();
        std::os::unix::fs::symlink(at("vessel.yaml"), at("report.txt")).unwrap();
        assert!(spare(&at("report.txt"), &arguments(folder.path())).is_err());
    }
}
