//! Audits on record that somebody has tampered with or made up. Far larger
//! than any other file, they are read whole; one that does not begin like a
//! record is not read to its end.

use super::limits::{held, held_to};
use super::refuse_live;
use super::table::{Case, DAY, GOOD, Kind, hold, read, refused};
use std::io::Write as _;

/// A record of the good vessel.
fn record() -> String {
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(folder.path().join("good.yaml"), GOOD).unwrap();
    let ran = held(folder.path(), &["audit", "good.yaml", "--date", DAY, "--record", "r.json"]);
    assert_eq!(ran.ran.status, 1, "{}", ran.said());
    std::fs::read_to_string(folder.path().join("r.json")).unwrap()
}

const NONE: &[&str] = &[
    "`record.json` is no record that can be used",
    "take the record as `kitmuster audit --record` wrote it",
];

fn cases() -> Vec<Case> {
    let good = record();
    let swap = |from: &str, to: &str| {
        assert!(good.contains(from), "{from}");
        good.replacen(from, to, 1)
    };
    let deep = "[".repeat(100_000);
    vec![
        read("a record without fault", good.clone(), 0, &["THE SAME"]),
        refused("an empty record", "", NONE),
        refused("a record cut in the middle", good[..good.len() / 2].to_owned(), NONE),
        refused("100 000 brackets", deep.clone(), NONE),
        refused("100 000 brackets within", swap("{", &format!("{{\"x\": {deep},")), NONE),
        refused(
            "no JSON",
            "x".repeat(3_000_000),
            &["record.json: this does not begin like JSON", "expected `{` as the first character"],
        ),
        refused(
            "a list",
            format!("[{}1]", "1,".repeat(3_000_000)),
            &["record.json: this does not begin like JSON"],
        ),
        refused(
            "blanks without end",
            " ".repeat(3_000_000),
            &["record.json: this does not begin like JSON"],
        ),
        refused(
            "another format",
            swap("kitmuster/record/1", "kitmuster/record/2"),
            &["its schema is `kitmuster/record/2`"],
        ),
        refused(
            "another format of 3 MB",
            format!("{{\"schema\": \"kitmuster/record/2\", \"x\": \"{}\"}}", "x".repeat(3_000_000)),
            &["its schema is `kitmuster/record/2`"],
        ),
        refused(
            "a steering format",
            swap("kitmuster/record/1", "\\u001b[31m\\u202e"),
            &["its schema is `\\u{1b}[31m\\u{202e}`"],
        ),
        refused(
            "a vessel that was changed",
            swap("overall: 12 in", "overall: 99 in"),
            &["the input `good.yaml` was changed: its digest is"],
        ),
        refused(
            "a file whose name steers",
            good.replace("good.yaml", "a\\u001b[2J\\u202e.yaml").replacen(
                "overall: 12 in",
                "overall: 13 in",
                1,
            ),
            &["a\\u{1b}[2J\\u{202e}.yaml"],
        ),
        refused("a day of no calendar", swap(DAY, "2026-02-30"), NONE),
        refused("a number without end", swap("\"encoding\": 1", "\"encoding\": 1e400"), NONE),
        refused("a key twice", swap("{", "{\"schema\": \"kitmuster/record/1\","), NONE),
        refused("half a character", swap("Test Kittiwake", "\\ud800"), NONE),
        read(
            "a name that was forged",
            swap("\"name\": \"Test Kittiwake\"", "\"name\": \"<script>\\u001b[31m\\u202e\""),
            1,
            &["DIFFERENT"],
        ),
    ]
}

#[test]
fn hostile_records_are_refused() {
    hold("records on audit", Kind::Record, cases());
}

/// 200 MB that begin like nothing, in a sparse file: refused by the beginning.
#[test]
fn a_record_of_200_mb_that_is_none_is_not_read() {
    let folder = tempfile::tempdir().unwrap();
    for begin in ["", "x", "  [1", "format: vessel/1\n"] {
        let path = folder.path().join("record.json");
        std::fs::write(&path, begin).unwrap();
        std::fs::File::options().write(true).open(&path).unwrap().set_len(200_000_000).unwrap();
        let held = held(folder.path(), &["verify", "record.json"]);
        assert_eq!(held.ran.status, 2);
        assert!(held.said().contains("this does not begin like JSON"), "{}", held.said());
        assert!(held.peak < 60_000, "{} KiB", held.peak);
        refuse_live("200 MB", &held.ran).unwrap();
    }
}

/// What a record takes beyond its own length: the bound that stands at
/// `LARGEST_RECORD`, tried with what takes most (lists of empty texts).
#[test]
fn a_record_takes_no_more_than_ten_times_its_length() {
    let folder = tempfile::tempdir().unwrap();
    let length = 12_000_000;
    let mut file = std::fs::File::create(folder.path().join("record.json")).unwrap();
    write!(file, "{{\"schema\":\"kitmuster/record/1\",\"asked\":{{\"profiles\":[").unwrap();
    file.write_all("\"\",".repeat(length / 3).as_bytes()).unwrap();
    file.write_all(b"\"\"]}}").unwrap();
    let most = u32::try_from(length * 10 / 1024 + 30_000).unwrap();
    let held = held_to(folder.path(), &["verify", "record.json"], most);
    assert_eq!(held.ran.status, 2, "{}", held.said());
    assert!(held.said().contains("is no record that can be used"), "{}", held.said());
}
