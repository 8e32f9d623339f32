//! Standard output that takes nothing, or nothing more.

use super::{DAY, below, complaint, program, writers};
use std::io::Read as _;
use std::process::Stdio;

/// Every command that prints.
fn printers() -> Vec<Vec<&'static str>> {
    let mut all = writers();
    all.extend([
        vec!["profiles"],
        vec!["words"],
        vec!["audit", "vessels", "--date", DAY],
        vec!["--help"],
        vec!["audit", "--help"],
        vec!["--version"],
    ]);
    all
}

#[test]
fn a_stream_that_takes_nothing_is_told_once_by_its_exit_code_too() {
    if !std::path::Path::new("/dev/full").exists() {
        return;
    }
    for typed in printers() {
        let full = std::fs::File::options().write(true).open("/dev/full").unwrap();
        let ran = program(&typed).stdout(full).stderr(Stdio::piped()).output().unwrap();
        let said = complaint(&ran);
        assert_eq!(ran.status.code(), Some(2), "{typed:?}: {said}");
        assert!(said.contains("the result could not be printed: there is no room left"), "{said}");
        assert!(!said.contains("os error") && !said.contains("panicked"), "{said}");
        assert_eq!(said.matches("printed").count(), 1, "{said}");
    }
}

/// The reader leaves at once, or after the first sign: that is no fault of anybody.
#[test]
fn a_reader_who_leaves_early_changes_nothing() {
    for (index, typed) in printers().iter().enumerate() {
        let whole = program(typed).output().unwrap();
        let mut child =
            program(typed).stdout(Stdio::piped()).stderr(Stdio::piped()).spawn().unwrap();
        let mut pipe = child.stdout.take().unwrap();
        let mut bytes = vec![0; index % 2];
        pipe.read_exact(&mut bytes).unwrap();
        drop(pipe);
        let ran = child.wait_with_output().unwrap();
        assert_eq!(ran.status.code(), whole.status.code(), "{typed:?}: {}", complaint(&ran));
        assert_eq!(complaint(&ran), complaint(&whole), "{typed:?}");
    }
}

/// Standard streams that were closed before the program began.
#[test]
fn streams_that_are_closed_change_nothing() {
    let check = ["check", "vessels/marlow-tern.yaml", "--on", DAY];
    for shell in ["exec >&-;", "exec 2>&-;", "exec <&-;", "exec >&- 2>&- <&-;"] {
        let ran = below(shell, &check).output().unwrap();
        assert_eq!(ran.status.code(), Some(1), "{shell}: {}", complaint(&ran));
        assert_eq!(complaint(&ran), "", "{shell}");
    }
}
