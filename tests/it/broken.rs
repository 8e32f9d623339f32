//! Files that are broken on purpose: each ends with exit code 2 and one
//! clear message, none with a panic or a library's own words.

use crate::run::{kitmuster_in, write};
use std::path::Path;

const GOOD: &str = "format: vessel/1
name: Test Kittiwake
freeboard: 3 ft
permits: [gulf-reef-fish-commercial]
features: { wheelhouse: yes }
kit:
  - mark: PL-1
    kind: pliers
    overall: 12 in
    condition: serviceable
  - mark: BC-1
    kind: bolt cutters
    overall: 18 in
    condition: serviceable
";

fn swap(from: &str, to: &str) -> Vec<u8> {
    assert!(GOOD.contains(from), "{from}");
    GOOD.replacen(from, to, 1).into_bytes()
}

/// A name for the snapshot and the bytes of the file.
fn broken() -> Vec<(&'static str, Vec<u8>)> {
    vec![
        ("empty", Vec::new()),
        ("only a comment", b"# nothing here\n".to_vec()),
        ("a bare number for a length", swap("12 in", "12")),
        ("a negative length", swap("12 in", "-12 in")),
        ("a thousands comma", swap("12 in", "1,830 m")),
        ("an unknown unit", swap("12 in", "12 yd")),
        ("nonsense for a length", swap("12 in", "about so long")),
        ("an overflowing length", swap("12 in", "99999999999999999999 m")),
        ("a misspelled key", swap("freeboard:", "freebord:")),
        ("a misspelled attribute", swap("    overall: 12 in", "    overal: 12 in")),
        ("an attribute of another kind", swap("    overall: 12 in", "    mesh: 12 in")),
        ("a misspelled kind", swap("kind: pliers", "kind: plyers")),
        ("a misspelled permit", swap("gulf-reef-fish-commercial", "gulf-reef-fish-comercial")),
        ("a mark used twice", swap("BC-1", "PL-1")),
        ("a key written twice", swap("freeboard: 3 ft\n", "freeboard: 3 ft\nfreeboard: 4 ft\n")),
        ("no name", swap("name: Test Kittiwake\n", "")),
        ("the wrong format line", swap("vessel/1", "vessel/9")),
        ("a profile where a vessel is expected", swap("vessel/1", "profile/1")),
        ("a tab for indentation", swap("    kind: pliers", "\tkind: pliers")),
        ("a bracket left open", swap("[gulf-reef-fish-commercial]", "[gulf-reef-fish-commercial")),
        ("a quote left open", swap("name: Test Kittiwake", "name: \"Test Kittiwake")),
        (
            "a list where a map is expected",
            swap("features: { wheelhouse: yes }", "features: [wheelhouse]"),
        ),
        (
            "a text where a list is expected",
            swap("permits: [gulf-reef-fish-commercial]", "permits: { a: b }"),
        ),
        (
            "a day that does not exist",
            swap("    overall: 12 in", "    expires: 2026-02-30\n    overall: 12 in"),
        ),
        ("a negative count", swap("    overall: 12 in", "    count: -2\n    overall: 12 in")),
        ("freeboard of nothing", swap("3 ft\n", "0 ft\n")),
        ("a range upside down", swap("3 ft\n", "4 ft to 3 ft\n")),
        ("control characters in a name", swap("Test Kittiwake", "\"Test\\e[31mKittiwake\"")),
        ("a right-to-left mark in a name", swap("Test Kittiwake", "Test \u{202e}Kittiwake")),
        ("a NUL byte", swap("Kittiwake", "Kitti\0wake")),
        ("not UTF-8", [GOOD.as_bytes(), b"# \xff\xfe\n"].concat()),
        (
            "UTF-16",
            GOOD.encode_utf16().fold(vec![0xff, 0xfe], |mut v, c| {
                v.extend(c.to_le_bytes());
                v
            }),
        ),
        ("two documents", [GOOD, "---\nname: another\n"].concat().into_bytes()),
        ("deep nesting", [GOOD.as_bytes(), b"port: ", "[".repeat(100_000).as_bytes()].concat()),
        ("an alias bomb", alias_bomb()),
        (
            "three problems at once",
            swap("    overall: 12 in", "    overal: 12\n    expires: soon")
                .into_iter()
                .chain(*b"gear: 7\n")
                .collect(),
        ),
    ]
}

fn alias_bomb() -> Vec<u8> {
    let mut text = String::from("format: vessel/1\na0: &a0 [x, x, x, x, x, x, x, x, x]\n");
    for level in 1..12 {
        let before = level - 1;
        let list = vec![format!("*a{before}"); 9].join(", ");
        text.push_str(&format!("a{level}: &a{level} [{list}]\n"));
    }
    text.into_bytes()
}

/// Words that only a library would say.
const FOREIGN: [&str; 12] = [
    "panicked",
    "serde",
    "saphyr",
    "norway",
    "libyaml",
    "invalid type",
    "missing field",
    "unknown field",
    "untagged",
    "visitor",
    "expected struct",
    "at line",
];

#[test]
fn every_broken_file_gives_its_message_and_exit_code_two() {
    let folder = tempfile::tempdir().unwrap();
    for (name, bytes) in broken() {
        std::fs::write(folder.path().join("vessel.yaml"), bytes).unwrap();
        let ran = kitmuster_in(folder.path(), &["check", "vessel.yaml", "--on", "2026-03-02"]);
        assert_eq!(ran.status, 2, "{name}: {}", ran.page());
        assert_eq!(ran.stdout, "", "{name}");
        assert!(!ran.stderr.contains('\u{1b}') && !ran.stderr.contains('\u{202e}'), "{name}");
        for word in FOREIGN {
            assert!(!ran.stderr.contains(word), "{name} says `{word}`: {}", ran.stderr);
        }
        insta::assert_snapshot!(name, ran.stderr);
    }
}

#[test]
fn the_file_that_they_are_broken_from_is_good() {
    let folder = tempfile::tempdir().unwrap();
    write(folder.path(), "vessel.yaml", GOOD);
    let ran = kitmuster_in(folder.path(), &["check", "vessel.yaml", "--on", "2026-03-02"]);
    assert_eq!(ran.status, 1, "{}", ran.page());
    assert_eq!(ran.stderr, "");
}

fn refused(folder: &Path, arguments: &[&str]) -> String {
    let ran = kitmuster_in(folder, arguments);
    assert_eq!((ran.status, ran.stdout.as_str()), (2, ""), "{}", ran.page());
    ran.stderr
}

#[test]
fn what_is_no_file_gives_one_clear_line() {
    let folder = tempfile::tempdir().unwrap();
    std::fs::create_dir(folder.path().join("a-folder")).unwrap();
    std::fs::write(folder.path().join("huge.yaml"), vec![b'#'; 3_000_000]).unwrap();
    insta::assert_snapshot!("missing file", refused(folder.path(), &["check", "nowhere.yaml"]));
    insta::assert_snapshot!("a folder", refused(folder.path(), &["check", "a-folder"]));
    insta::assert_snapshot!("a huge file", refused(folder.path(), &["check", "huge.yaml"]));
}

#[test]
fn an_unknown_profile_is_told_with_a_guess() {
    let folder = tempfile::tempdir().unwrap();
    write(folder.path(), "vessel.yaml", GOOD);
    let asked =
        ["check", "vessel.yaml", "--on", "2026-03-02", "--profile", "us-gulf-reef-fish-2018"];
    insta::assert_snapshot!("unknown profile", refused(folder.path(), &asked));
}
