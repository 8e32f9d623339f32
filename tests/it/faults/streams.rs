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

/// `-` is standard input, and standard output too, which has other names.
#[cfg(unix)]
#[test]
fn a_hyphen_is_standard_input_and_standard_output() {
    let vessel = "vessels/marlow-tern.yaml";
    let from_file = program(&["check", vessel, "--on", DAY]).output().unwrap();
    let with = |input: &str, typed: &[&str]| {
        let file = std::fs::File::open(crate::run::home().join(input)).unwrap();
        program(typed).stdin(file).output().unwrap()
    };
    // The page names the file for the next command.
    let page = |ran: &std::process::Output| {
        let text = String::from_utf8(ran.stdout.clone()).unwrap();
        text.split("Ways of freeing").next().unwrap().to_owned()
    };
    let ran = with(vessel, &["check", "-", "--on", DAY]);
    assert_eq!(ran.status.code(), from_file.status.code(), "{}", complaint(&ran));
    assert_eq!(page(&ran), page(&from_file));
    for place in ["-", "/dev/stdout"] {
        let ran = with(vessel, &["check", "-", "--on", DAY, "--output", place]);
        assert_eq!(page(&ran), page(&from_file), "{place}: {}", complaint(&ran));
        let form = with(vessel, &["schema", "vessel", "--output", place]);
        assert_eq!(form.status.code(), Some(0), "{}", complaint(&form));
        assert!(form.stdout.starts_with(b"{"), "{place}");
    }
    let ran = with("suppliers/README.md", &["check", "-", "--on", DAY]);
    assert_eq!((ran.status.code(), ran.stdout.len()), (Some(2), 0));
    assert!(complaint(&ran).contains("-:"), "{}", complaint(&ran));
    assert!(!crate::run::home().join("-").exists());
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
