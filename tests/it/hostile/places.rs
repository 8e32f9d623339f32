//! What is no file, or a file in no place of its own: folders, pipes,
//! devices, links in circles, names with `..`, and a fleet of rubbish.

use super::limits::{Held, Tally, held};
use super::refuse_live;
use super::table::{DAY, GOOD};
use std::os::unix::fs::symlink;
use std::path::Path;

/// Every argument that takes a file, as `--help` of each command names it:
/// the command before it and what is typed after it.
const ARGUMENTS: [(&[&str], &[&str]); 17] = [
    (&["check"], &[]),
    (&["check", "good.yaml", "--profile"], &[]),
    (&["check", "good.yaml", "--inspection"], &[]),
    (&["check", "good.yaml", "--catalogue"], &[]),
    (&["options"], &[]),
    (&["options", "good.yaml", "--inspection"], &[]),
    (&["options", "good.yaml", "--catalogue"], &[]),
    (&["sheet"], &[]),
    (&["sheet", "good.yaml", "--inspection"], &[]),
    (&["sheet", "--blank-vessel"], &[]),
    (&["quote"], &["--catalogue", "shop.yaml"]),
    (&["quote", "good.yaml", "--catalogue"], &[]),
    (&["quote", "good.yaml", "--catalogue", "shop.yaml", "--inspection"], &[]),
    (&["verify"], &[]),
    (&["audit", "good.yaml", "--against"], &[]),
    (&["audit", "good.yaml", "--draft"], &[]),
    (&["audit"], &[]),
];

/// What is no file, and what is said of it: as a file, and as a profile that
/// could be an id as well.
const NO_FILES: [(&str, &[&str]); 10] = [
    ("pipe.yaml", &["pipe.yaml: this is a pipe, a device or the like"]),
    ("/dev/zero", DEVICE),
    ("/dev/random", DEVICE),
    ("/dev/null", DEVICE),
    ("/dev/full", DEVICE),
    ("circle.yaml", &["circle.yaml: this link leads back to itself", "mend: remove the link"]),
    ("to-pipe.yaml", &["to-pipe.yaml: this is a pipe, a device or the like"]),
    ("dangling.yaml", &["dangling.yaml: there is no such file"]),
    ("good.yaml/below.yaml", &["good.yaml/below.yaml: part of this path is no folder"]),
    ("folder.yaml", &["folder.yaml"]),
];
const DEVICE: &[&str] = &["this is a pipe, a device or the like|no profile `/dev/"];

fn place() -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    let at = |name: &str| folder.path().join(name);
    std::fs::write(at("good.yaml"), GOOD).unwrap();
    let shop = Path::new(env!("CARGO_MANIFEST_DIR")).join("suppliers/port-ansel-chandlery.yaml");
    std::fs::copy(shop, at("shop.yaml")).unwrap();
    std::fs::create_dir(at("folder.yaml")).unwrap();
    symlink("circle.yaml", at("circle.yaml")).unwrap();
    symlink("pipe.yaml", at("to-pipe.yaml")).unwrap();
    symlink("nowhere.yaml", at("dangling.yaml")).unwrap();
    let made = std::process::Command::new("mkfifo").arg(at("pipe.yaml")).status().unwrap();
    assert!(made.success());
    folder
}

/// Each argument meets every fourth of them, and each of them is met often.
#[test]
fn what_is_no_file_is_told_wherever_a_file_is_named() {
    let folder = place();
    let mut tally = Tally::default();
    for (index, (before, after)) in ARGUMENTS.iter().enumerate() {
        for (name, said) in NO_FILES.iter().skip(index % 4).step_by(4) {
            let typed = [before, &[*name][..], after].concat();
            let held = held(folder.path(), &typed);
            tally.add(name, &held);
            let is_told = |part: &str| part.split('|').any(|one| held.said().contains(one));
            let empty = *name == "folder.yaml" && typed.contains(&"--inspection");
            assert!(held.ran.status == 2 || empty, "{typed:?}: {}", held.said());
            assert!(empty || said.iter().all(|part| is_told(part)), "{typed:?}: {}", held.said());
            refuse_live(name, &held.ran).unwrap();
        }
    }
    tally.print("no files");
}

/// A folder is asked for there, so everything else is told.
#[test]
fn what_is_no_folder_of_rules_is_told() {
    let folder = place();
    for (name, said) in [
        ("pipe.yaml", "pipe.yaml: this is not a folder"),
        ("/dev/zero", "/dev/zero: this is not a folder"),
        ("good.yaml", "good.yaml: this is not a folder"),
        ("dangling.yaml", "dangling.yaml: there is no such folder"),
        ("circle.yaml", "circle.yaml: this folder cannot be read"),
        (".", "this is a pipe, a device or the like|there is no such file|this link leads"),
    ] {
        let held = held(folder.path(), &["profiles", "--requirements", name]);
        assert_eq!(held.ran.status, 2, "{name}: {}", held.said());
        assert!(said.split('|').any(|one| held.said().contains(one)), "{name}: {}", held.said());
        refuse_live(name, &held.ran).unwrap();
    }
}

fn audit(folder: &Path, format: &str) -> Held {
    let ran = held(folder, &["audit", "fleet", "--date", DAY, "--format", format]);
    refuse_live(format, &ran.ran).unwrap();
    ran
}

/// Rubbish of every kind beside two good vessels: those are judged, every
/// other file is told, and the exit code says that something was not read.
#[test]
fn one_bad_file_never_sinks_a_fleet() {
    let folder = tempfile::tempdir().unwrap();
    let fleet = folder.path().join("fleet");
    std::fs::create_dir_all(fleet.join("inspections")).unwrap();
    let put = |name: &str, bytes: &[u8]| std::fs::write(fleet.join(name), bytes).unwrap();
    put("a-good.yaml", GOOD.as_bytes());
    put("z-good.yaml", GOOD.replace("Kittiwake", "Razorbill").as_bytes());
    put(
        "b-alias.yaml",
        format!(
            "format: vessel/1\nname: &a {}\npermits: [{}]\nkit: []\n",
            "x".repeat(500_000),
            "*a,".repeat(150_000)
        )
        .as_bytes(),
    );
    put("c-deep.yaml", "[".repeat(100_000).as_bytes());
    put("d-nul.yaml", &[0; 1000]);
    put("e-empty.yaml", b"");
    put("f-latin.yaml", b"name: \xe9\n");
    put("inspections/rubbish.yaml", b"\xff\xfe\0\0");
    std::fs::create_dir(fleet.join("g-folder.yaml")).unwrap();
    symlink("..", fleet.join("h-up")).unwrap();
    symlink("i-circle.yaml", fleet.join("i-circle.yaml")).unwrap();
    symlink("/dev/zero", fleet.join("j-zero.yaml")).unwrap();
    for format in ["json", "table", "csv", "html", "lines"] {
        let ran = audit(folder.path(), format);
        assert_eq!(ran.ran.status, 2, "{}", ran.said());
        for name in
            ["Test Kittiwake", "Test Razorbill", "b-alias.yaml", "i-circle.yaml", "rubbish.yaml"]
        {
            assert!(ran.ran.stdout.contains(name), "{format}: {name}");
        }
        if format == "json" {
            let refused = ran.ran.json()["refused"].as_array().unwrap().len();
            assert_eq!(refused, 9, "{}", ran.said());
        }
    }
}

/// 10 000 empty files: each is a row of the report, and one vessel is judged.
/// It takes about a second of processor time as it is built for tests.
#[test]
fn a_fleet_of_ten_thousand_empty_files_is_told() {
    let folder = tempfile::tempdir().unwrap();
    let fleet = folder.path().join("fleet");
    std::fs::create_dir(&fleet).unwrap();
    for number in 0..10_000 {
        std::fs::File::create(fleet.join(format!("{number:05}.yaml"))).unwrap();
    }
    std::fs::write(fleet.join("good.yaml"), GOOD).unwrap();
    let ran = audit(folder.path(), "lines");
    assert_eq!(ran.ran.status, 2);
    assert_eq!(ran.ran.stdout.lines().count(), 10_001);
    let page = audit(folder.path(), "table");
    assert!(page.said().contains("10000 files could not be read"), "{:.900}", page.said());
    assert!(page.said().contains("Test Kittiwake"));
    let mut tally = Tally::default();
    tally.add("lines", &ran);
    tally.add("table", &page);
    tally.print("10 000 empty files");
}

/// Names out of files never name a file to write: `..` in a vessel's name, a
/// record's or a customer's leaves everything around as it was.
#[test]
fn a_name_with_dots_leads_nowhere() {
    let folder = place();
    let inner = folder.path().join("inner");
    std::fs::create_dir(&inner).unwrap();
    let vessel = GOOD.replace("Test Kittiwake", "../../escaped").replace("PL-1", "../escaped-too");
    std::fs::write(inner.join("vessel.yaml"), vessel).unwrap();
    std::fs::copy(folder.path().join("shop.yaml"), inner.join("shop.yaml")).unwrap();
    let names = || {
        let entries = std::fs::read_dir(folder.path()).unwrap();
        let mut names: Vec<_> = entries.map(|entry| entry.unwrap().file_name()).collect();
        names.sort();
        names
    };
    let before = names();
    for typed in [
        vec!["check", "vessel.yaml", "--on", DAY, "--output", "out.txt"],
        vec!["sheet", "vessel.yaml", "--record-form", "--output", "out.txt"],
        vec![
            "audit",
            ".",
            "--date",
            DAY,
            "--record",
            "r.json",
            "--auditor",
            "../../x",
            "--output",
            "out.txt",
        ],
        vec![
            "quote",
            "vessel.yaml",
            "--ordered",
            DAY,
            "--catalogue",
            "shop.yaml",
            "--for",
            "../x",
            "--output",
            "out.txt",
        ],
        vec!["options", "vessel.yaml", "--on", DAY, "--format", "html", "--output", "out.txt"],
    ] {
        let ran = held(&inner, &typed);
        refuse_live("dots", &ran.ran).unwrap();
        assert!(inner.join("out.txt").is_file(), "{typed:?}: {}", ran.said());
    }
    assert_eq!(names(), before);
    let mut inner: Vec<_> =
        std::fs::read_dir(&inner).unwrap().map(|e| e.unwrap().file_name()).collect();
    inner.sort();
    assert_eq!(inner, ["out.txt", "r.json", "shop.yaml", "vessel.yaml"]);
}
