//! Files, folders and words on the command line whose names steer: nothing
//! of them reaches a stream alive, in any format, in any message.

use super::limits::{Tally, held};
use super::refuse_live;
use super::table::{DAY, GOOD};
use std::os::unix::ffi::OsStrExt;
use std::path::{Path, PathBuf};

/// Everything at once, as far as a file's name may hold it.
const NAME: &str = "a\u{1b}]0;t\u{7}\u{1b}[31m\u{202e}\u{200b}\u{7f}\u{8}\r\n\u{9b}\u{ad}<script>alert(1)\
    <b onclick=x>\"'&=cmd()`";

struct Named {
    folder: tempfile::TempDir,
    vessel: String,
    shop: String,
    rule: String,
    record: String,
    bad: String,
}

fn named() -> Named {
    let folder = tempfile::tempdir().unwrap();
    let inner = "dir\u{1b}[2J\u{202e}=1";
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    std::fs::create_dir_all(folder.path().join(inner).join("inspections")).unwrap();
    let put = |name: String, text: &str| {
        let path = Path::new(inner).join(name);
        std::fs::write(folder.path().join(&path), text).unwrap();
        path.to_str().unwrap().to_owned()
    };
    let read = |name: &str| std::fs::read_to_string(root.join(name)).unwrap();
    let vessel = put(format!("{NAME}.yaml"), GOOD);
    let shop = put(format!("shop{NAME}.yml.txt"), &read("suppliers/port-ansel-chandlery.yaml"));
    let rule = put(format!("rule{NAME}"), &read("requirements/us-gulf-reef-fish-2019.yaml"));
    let bad = put(format!("bad{NAME}.yaml"), "format: vessel/1\nname: [\n");
    let found = "format: inspection/1\nvessel: Test Kittiwake\non: 2026-03-01\nfound:\n  - { mark: PL-1, overall: 12 in }\n";
    let record = put(format!("inspections/{NAME}.yaml"), found);
    Named { folder, vessel, shop, rule, record, bad }
}

#[test]
fn a_file_whose_name_steers_is_read_and_shown_dead_in_every_format() {
    let Named { folder, vessel, shop, rule, record, bad } = named();
    let inner = PathBuf::from(&vessel).parent().unwrap().to_str().unwrap().to_owned();
    let (v, s, fleet) = (vessel.as_str(), shop.as_str(), inner.as_str());
    let mut runs: Vec<(Vec<&str>, i32)> = Vec::new();
    for format in ["table", "json", "html"] {
        runs.push((
            vec![
                "check",
                v,
                "--on",
                DAY,
                "--profile",
                &rule,
                "--inspection",
                &record,
                "--catalogue",
                s,
                "--format",
                format,
            ],
            1,
        ));
        runs.push((
            vec![
                "options",
                v,
                "--on",
                DAY,
                "--inspection",
                &record,
                "--catalogue",
                s,
                "--format",
                format,
            ],
            1,
        ));
    }
    for format in ["table", "json", "html", "csv", "lines"] {
        runs.push((vec!["audit", fleet, "--date", DAY, "--format", format], 2));
    }
    for format in ["table", "json", "html", "csv"] {
        runs.push((
            vec![
                "quote",
                v,
                &bad,
                "--catalogue",
                s,
                "--ordered",
                DAY,
                "--for",
                NAME,
                "--explain",
                "--format",
                format,
            ],
            2,
        ));
    }
    runs.push((vec!["audit", fleet, "--date", DAY, "--record", "r.json", "--auditor", NAME], 2));
    runs.push((vec!["verify", "r.json"], 0));
    for format in ["table", "json", "html", "csv"] {
        runs.push((
            vec![
                "audit",
                fleet,
                "--date",
                DAY,
                "--against",
                "r.json",
                "--draft",
                &rule,
                "--format",
                format,
            ],
            2,
        ));
    }
    runs.push((vec!["sheet", v, "--on", DAY], 0));
    runs.push((vec!["sheet", v, "--on", DAY, "--for", "skipper"], 0));
    runs.push((vec!["sheet", v, "--on", DAY, "--record-form"], 0));
    runs.push((vec!["sheet", "--blank-vessel", &rule], 0));
    let mut tally = Tally::default();
    for (typed, status) in runs {
        let ran = held(folder.path(), &typed);
        tally.add(typed[0], &ran);
        assert_eq!(ran.ran.status, status, "{typed:?}: {:.900}", ran.said());
        refuse_live(&format!("{typed:?}"), &ran.ran).unwrap();
    }
    tally.print("names of files");
}

#[test]
fn a_word_that_steers_is_repeated_dead_in_every_complaint() {
    let Named { folder, vessel, shop, bad, .. } = named();
    let (v, s) = (vessel.as_str(), shop.as_str());
    let missing = format!("missing{NAME}.yaml");
    let nowhere = format!("{NAME}/x");
    let flag = format!("--{NAME}");
    let runs: [&[&str]; 28] = [
        &[NAME],
        &["check", &flag],
        &["check", v, NAME],
        &["check", v, "--on", NAME],
        &["check", v, "--format", NAME],
        &["check", v, "--profile", NAME],
        &["check", v, "--requirements", NAME],
        &["check", v, "--output", &nowhere],
        &["check", v, "--output", v],
        &["check", &bad],
        &["check", &missing],
        &["audit", v, "--gear", NAME],
        &["audit", v, "--bound-by", NAME],
        &["audit", v, "--requirement", NAME],
        &["audit", v, "--threads", NAME],
        &["audit", v, "--draft", NAME],
        &["audit", v, "--against", &missing],
        &["audit", v, "--record", v],
        &["audit", v, "--record", "q", "--output", "q"],
        &["audit", &nowhere],
        &["options", v, "--case", NAME],
        &["quote", v, "--catalogue", s, "--catalogue", s],
        &["quote", v, "--catalogue", &bad],
        &["quote", v, "--catalogue", s, "--time-limit", NAME],
        &["sheet", v, "--for", NAME],
        &["verify", &bad],
        &["profiles", NAME],
        &["words", NAME],
    ];
    for typed in runs {
        let ran = held(folder.path(), typed);
        assert_eq!(ran.ran.status, 2, "{typed:?}: {:.900}", ran.said());
        refuse_live(&format!("{typed:?}"), &ran.ran).unwrap();
    }
}

fn words(words: &[&'static str]) -> Vec<&'static std::ffi::OsStr> {
    words.iter().map(|word| std::ffi::OsStr::new(*word)).collect()
}

/// A file's name need not be text at all.
#[test]
fn a_name_that_is_no_text_is_read_and_complained_of() {
    let folder = tempfile::tempdir().unwrap();
    let name = std::ffi::OsStr::from_bytes(b"a\xff\x9b.yaml");
    if std::fs::write(folder.path().join(name), GOOD).is_err() {
        // Some systems take names in UTF-8 alone.
        return;
    }
    let check = [words(&["check"]), vec![name], words(&["--on", DAY])].concat();
    let audit =
        [words(&["audit"]), vec![name], words(&["--date", DAY, "--format", "json"])].concat();
    let port = [words(&["audit", "x.yaml", "--port"]), vec![name]].concat();
    for (typed, status) in [(check, 1), (audit, 1), (port, 2)] {
        let ran = held(folder.path(), &typed);
        assert_eq!(ran.ran.status, status, "{}", ran.said());
        refuse_live("no text", &ran.ran).unwrap();
    }
}
