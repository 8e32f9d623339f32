//! Files that cannot be read are rows of their own and stop nothing.

use super::{audit, changed, document, folder, names, typed};
use std::path::Path;

/// A fleet of two good vessels among everything that can lie in a folder.
fn littered() -> tempfile::TempDir {
    let folder = folder(&[
        ("a-tern.yaml", changed("marlow-tern.yaml", &[])),
        ("b-garbage.yaml", "\u{1b}[31m{{{: [\n\t- %\n".to_owned()),
        ("c-huge.yaml", String::new()),
        (
            "d-record.yaml",
            "format: inspection/1\nvessel: X\non: 2026-01-01\nfound: []\n".to_owned(),
        ),
        ("e-notes.txt", "not a vessel".to_owned()),
        ("z-plover.yaml", changed("rusty-plover.yaml", &[])),
    ]);
    let huge = std::fs::File::create(folder.path().join("c-huge.yaml")).unwrap();
    huge.set_len(50 * 1024 * 1024).unwrap();
    links(folder.path());
    folder
}

#[cfg(unix)]
fn links(folder: &Path) {
    use std::os::unix::fs::symlink;
    symlink(folder, folder.join("f-loop")).unwrap();
    symlink(folder.join("nowhere"), folder.join("g-dangling.yaml")).unwrap();
    let made = std::process::Command::new("mkfifo").arg(folder.join("h-pipe.yaml")).status();
    assert!(made.unwrap().success());
}

#[cfg(not(unix))]
fn links(_folder: &Path) {}

#[cfg(unix)]
#[test]
fn everything_that_can_be_read_is_audited_and_the_rest_is_told() {
    let folder = littered();
    let fleet = document(&[typed(&folder)], &[]);
    assert_eq!(names(&fleet), ["Marlow Tern", "Rusty Plover"]);
    let refused: Vec<(String, String)> = fleet["refused"]
        .as_array()
        .unwrap()
        .iter()
        .map(|r| {
            let name = Path::new(r["file"].as_str().unwrap()).file_name().unwrap();
            let what = r["problems"][0]["what"].as_str().unwrap();
            (name.to_string_lossy().into_owned(), what.to_owned())
        })
        .collect();
    let what = |file: &str| {
        let found = refused.iter().find(|(name, _)| name == file);
        found.unwrap_or_else(|| panic!("{file}: {refused:?}")).1.clone()
    };
    assert_eq!(what("c-huge.yaml"), "this file is too large");
    assert_eq!(what("f-loop"), "this link leads back into a folder that it lies in");
    assert_eq!(what("g-dangling.yaml"), "there is nothing here");
    assert_eq!(what("h-pipe.yaml"), "this is a pipe, a device or the like");
    assert!(what("d-record.yaml").contains("inspection"), "{}", what("d-record.yaml"));
    assert_eq!(refused.len(), 6);
    let ran = audit(&[typed(&folder)], &[]);
    assert_eq!(ran.status, 2);
    assert!(
        ran.stdout.contains("6 files could not be read; the rest is complete"),
        "{}",
        ran.stdout
    );
    assert!(ran.stderr.is_empty(), "{}", ran.stderr);
}

#[cfg(unix)]
#[test]
fn a_file_that_may_not_be_read_is_told() {
    use std::os::unix::fs::PermissionsExt;
    let folder = folder(&[
        ("a.yaml", changed("marlow-tern.yaml", &[])),
        ("b.yaml", changed("rusty-plover.yaml", &[])),
    ]);
    let path = folder.path().join("a.yaml");
    std::fs::set_permissions(&path, std::fs::Permissions::from_mode(0o000)).unwrap();
    // Whoever may read everything reads this too.
    let readable = std::fs::read(&path).is_ok();
    let fleet = document(&[typed(&folder)], &[]);
    assert_eq!(fleet["totals"]["refused"], u64::from(!readable));
    assert_eq!(names(&fleet).last().unwrap(), "Rusty Plover");
}

#[test]
fn a_file_named_twice_is_one_vessel() {
    let once = document(&["vessels"], &[]);
    let twice = document(&["vessels", "vessels/marlow-tern.yaml", "./vessels/../vessels"], &[]);
    assert_eq!(once["totals"], twice["totals"]);
}

#[test]
fn where_there_is_no_vessel_it_is_bad_usage() {
    let empty = folder(&[("notes.txt", "x".to_owned())]);
    let ran = audit(&[typed(&empty)], &[]);
    assert_eq!(ran.status, 2);
    assert!(ran.stderr.contains("no vessel's inventory in"), "{}", ran.stderr);
    let ran = audit(&["nowhere.yaml"], &[]);
    assert_eq!(ran.status, 2);
    assert!(ran.stdout.contains("there is no such file"), "{}", ran.stdout);
}

#[test]
fn no_report_is_written_over_a_vessel() {
    let folder = folder(&[("a.yaml", changed("marlow-tern.yaml", &[]))]);
    let path = folder.path().join("a.yaml");
    for format in ["table", "lines"] {
        let flags = ["--format", format, "--output", path.to_str().unwrap()];
        let ran = audit(&[typed(&folder)], &flags);
        assert_eq!(ran.status, 2);
        assert!(ran.stderr.contains("would be written over"), "{}", ran.stderr);
    }
    assert_eq!(std::fs::read_to_string(path).unwrap(), changed("marlow-tern.yaml", &[]));
}
