//! Places where a report cannot be, or is not what it seems: what is written
//! where, and that nothing else is touched.

use super::{complaint, names, outputs, program};
use std::os::unix::fs::{PermissionsExt, symlink};

/// A folder with an old report, links and a folder in it.
fn place() -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    let at = |name: &str| folder.path().join(name);
    std::fs::create_dir(at("inner")).unwrap();
    std::fs::write(at("report"), "old").unwrap();
    std::fs::write(at("kept"), "old").unwrap();
    std::fs::set_permissions(at("kept"), std::fs::Permissions::from_mode(0o444)).unwrap();
    symlink("inner", at("to-folder")).unwrap();
    symlink("nowhere", at("to-nowhere")).unwrap();
    symlink("/dev/null", at("to-device")).unwrap();
    symlink("circle", at("circle")).unwrap();
    let made = std::process::Command::new("mkfifo").arg(at("pipe")).status().unwrap();
    assert!(made.success());
    folder
}

/// Where nothing can be written, and why.
const NO_PLACES: [(&str, &str); 14] = [
    ("gone/report", "there is no folder `"),
    ("report/below", "is no folder"),
    ("inner", "it is a folder"),
    ("inner/", "it is a folder"),
    ("new/", "the name of a folder was given"),
    (".", "it is a folder"),
    ("to-folder", "it is a folder"),
    ("to-nowhere", "it is a link that leads nowhere"),
    ("circle", "it is a link that leads nowhere"),
    ("to-device", "it is no plain file"),
    ("pipe", "it is no plain file"),
    ("kept", "that file may only be read"),
    ("/dev/full", "it is no plain file"),
    ("/proc/report", "in the folder `/proc`|the folder `/proc`"),
];

/// Every place, and every command and flag.
#[test]
fn where_nothing_can_be_written_it_is_told_and_nothing_is_touched() {
    let folder = place();
    let before = names(folder.path());
    let commands = outputs();
    for (index, (place, why)) in NO_PLACES.iter().enumerate() {
        let path = folder.path().join(place);
        let command = &commands[index % commands.len()];
        let typed = [&command[..], &[path.to_str().unwrap()]].concat();
        let ran = program(&typed).output().unwrap();
        let said = complaint(&ran);
        assert_eq!(ran.status.code(), Some(2), "{typed:?}: {said}");
        assert!(said.contains("could not be written"), "{typed:?}: {said}");
        assert!(why.split('|').any(|one| said.contains(one)), "{place}: {said}");
        assert!(said.contains("nothing was written"), "{said}");
        assert!(ran.stdout.is_empty());
    }
    assert_eq!(names(folder.path()), before);
    assert_eq!(names(&folder.path().join("inner")), [""; 0]);
    assert_eq!(std::fs::read_to_string(folder.path().join("kept")).unwrap(), "old");
    assert!(folder.path().join("to-nowhere").is_symlink());
}

/// A link to a file stays a link, and the file that it leads to is replaced,
/// as with everything else that writes to a link; its rights stay.
#[test]
fn a_link_to_a_report_is_followed() {
    let folder = place();
    let at = |name: &str| folder.path().join(name);
    std::fs::write(at("inner/report"), "old").unwrap();
    std::fs::set_permissions(at("inner/report"), std::fs::Permissions::from_mode(0o600)).unwrap();
    symlink("inner/report", at("link")).unwrap();
    symlink("link", at("link-to-link")).unwrap();
    for before in outputs() {
        std::fs::write(at("inner/report"), "old").unwrap();
        let link = at("link-to-link");
        let typed = [&before[..], &[link.to_str().unwrap()]].concat();
        let ran = program(&typed).output().unwrap();
        assert!(ran.status.code() < Some(2), "{typed:?}: {}", complaint(&ran));
        assert_ne!(std::fs::read_to_string(at("inner/report")).unwrap(), "old");
        assert!(at("link").is_symlink() && at("link-to-link").is_symlink());
        let rights = at("inner/report").metadata().unwrap().permissions().mode();
        assert_eq!(rights & 0o777, 0o600);
        assert_eq!(names(&at("inner")), ["report"]);
    }
}

/// Root may write everywhere; who is not root is told that they may not.
#[test]
fn a_folder_that_may_only_be_read_is_told() {
    let folder = tempfile::tempdir().unwrap();
    let inner = folder.path().join("inner");
    std::fs::create_dir(&inner).unwrap();
    std::fs::set_permissions(&inner, std::fs::Permissions::from_mode(0o555)).unwrap();
    let may = std::fs::write(inner.join("probe"), "").is_ok();
    let report = inner.join("report");
    let typed = ["check", "vessels/marlow-tern.yaml", "--on", super::DAY, "--output"];
    let ran = program(&[&typed[..], &[report.to_str().unwrap()]].concat()).output().unwrap();
    if may {
        eprintln!(
            "whoever runs this may write to every folder; `/proc` stands for one in the table"
        );
        assert_eq!(ran.status.code(), Some(1));
    } else {
        assert_eq!(ran.status.code(), Some(2));
        assert!(complaint(&ran).contains("is not allowed"), "{}", complaint(&ran));
    }
    std::fs::set_permissions(&inner, std::fs::Permissions::from_mode(0o755)).unwrap();
}

/// The folder vanishes while the report is written into it.
#[test]
fn a_folder_that_is_taken_away_meanwhile_is_told() {
    let folder = tempfile::tempdir().unwrap();
    let (fleet, out) = (folder.path().join("fleet"), folder.path().join("out"));
    std::fs::create_dir(&fleet).unwrap();
    std::fs::create_dir(&out).unwrap();
    for number in 0..3000 {
        std::fs::File::create(fleet.join(format!("{number}.yaml"))).unwrap();
    }
    let report = out.join("report");
    let typed = ["audit", fleet.to_str().unwrap(), "--format", "lines", "--output"];
    let mut command = program(&[&typed[..], &[report.to_str().unwrap()]].concat());
    let mut child = command.stderr(std::process::Stdio::piped()).spawn().unwrap();
    while names(&out).is_empty() && child.try_wait().unwrap().is_none() {
        std::thread::sleep(std::time::Duration::from_millis(1));
    }
    while out.exists() {
        let _ = std::fs::remove_dir_all(&out);
    }
    let ran = child.wait_with_output().unwrap();
    assert_eq!(ran.status.code(), Some(2));
    let said = complaint(&ran);
    // It may just have come to its end before.
    assert!(said.is_empty() || said.contains("there is no folder"), "{said}");
    assert!(!out.exists());
}
