//! Disks without room: a limit on the size of files stands for one that is
//! full, and where the machine allows it a tiny disk that really is.

use super::{below, complaint, names, outputs};
use std::process::Command;

#[test]
fn a_disk_without_room_leaves_the_old_report_and_no_trace() {
    for before in outputs() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("report");
        std::fs::write(&path, "old").unwrap();
        let typed = [&before[..], &[path.to_str().unwrap()]].concat();
        let ran = below("trap '' XFSZ; ulimit -f 0;", &typed).output().unwrap();
        let said = complaint(&ran);
        assert_eq!(ran.status.code(), Some(2), "{typed:?}: {said}");
        assert!(
            said.contains("could not be written: a file may not become that large here"),
            "{said}"
        );
        assert!(said.contains("nothing was written"), "{said}");
        assert!(!said.contains("os error") && !said.contains("panicked"), "{said}");
        assert_eq!(std::fs::read_to_string(&path).unwrap(), "old", "{typed:?}");
        assert_eq!(names(folder.path()), ["report"], "{typed:?}");
    }
}

/// Some blocks fit, the rest does not.
#[test]
fn a_disk_that_fills_in_the_middle_leaves_the_old_report_and_no_trace() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("report");
    std::fs::write(&path, "old").unwrap();
    for (format, blocks) in [("html", 1), ("html", 20), ("lines", 1), ("json", 9)] {
        let path = path.to_str().unwrap();
        let typed =
            ["audit", "vessels", "--date", super::DAY, "--format", format, "--output", path];
        let shell = format!("trap '' XFSZ; ulimit -f {blocks};");
        let ran = below(&shell, &typed).output().unwrap();
        assert_eq!(ran.status.code(), Some(2), "{}", complaint(&ran));
        assert!(complaint(&ran).contains("may not become that large"), "{}", complaint(&ran));
        assert_eq!(std::fs::read_to_string(path).unwrap(), "old");
        assert_eq!(names(folder.path()), ["report"]);
    }
}

/// Record and report of one audit take their names together: what cannot be
/// written keeps the other from being there alone.
#[test]
fn a_record_is_not_kept_where_its_report_cannot_be_written() {
    let folder = tempfile::tempdir().unwrap();
    let at = |name: &str| folder.path().join(name).to_str().unwrap().to_owned();
    std::fs::write(at("record.json"), "old").unwrap();
    let audit = ["audit", "vessels/marlow-tern.yaml", "--date", super::DAY];
    for (record, report) in [("record.json", "gone/report"), ("gone/record.json", "report")] {
        let (record, report) = (at(record), at(report));
        let typed = [&audit[..], &["--record", &record, "--output", &report]].concat();
        let ran = below("", &typed).output().unwrap();
        assert_eq!(ran.status.code(), Some(2));
        assert!(complaint(&ran).contains("nothing was written"), "{}", complaint(&ran));
        assert_eq!(names(folder.path()), ["record.json"]);
        assert_eq!(std::fs::read_to_string(at("record.json")).unwrap(), "old");
    }
}

/// A disk of 16 KiB, in a space of its own that needs no rights; left out
/// where the machine does not allow that.
#[test]
fn a_disk_that_is_really_full_is_told_as_such() {
    let folder = tempfile::tempdir().unwrap();
    let script = "mount -t tmpfs -o size=16k none \"$1\" || exit 77
        echo old > \"$1/report\"
        \"$0\" audit vessels --date 2026-03-02 --format html --output \"$1/report\"
        code=$?
        cat \"$1/report\"; ls -A \"$1\"; exit $code";
    let ran = Command::new("unshare")
        .args(["-Urm", "/bin/sh", "-c", script, env!("CARGO_BIN_EXE_kitmuster")])
        .arg(folder.path())
        .current_dir(crate::run::home())
        .output();
    match ran {
        Ok(ran) if ran.status.code() == Some(2) => {
            assert!(complaint(&ran).contains("there is no room left"), "{}", complaint(&ran));
            assert_eq!(String::from_utf8(ran.stdout).unwrap(), "old\nreport\n");
        }
        Ok(ran) => {
            let refused = complaint(&ran).contains("unshare") || ran.status.code() == Some(77);
            assert!(refused, "{:?}: {}", ran.status, complaint(&ran));
            eprintln!("no disk of its own here: {}", complaint(&ran));
        }
        Err(error) => eprintln!("no disk of its own here: {error}"),
    }
}
