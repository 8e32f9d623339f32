//! The other kinds of file: inspection records, catalogues, profiles,
//! vocabularies, techniques. What is the same for all of them (bombs,
//! encodings, syntax) is tried once for each; then what is its own.

use super::limits::held;
use super::refuse_live;
use super::table::{Case, DAY, GOOD, Kind, hold, read, refused};
use std::path::Path;

const INSPECTION: &str = "format: inspection/1
vessel: Test Kittiwake
on: 2026-03-01
found:
  - { mark: PL-1, overall: 12 in }
";

const CATALOGUE: &str = "format: catalogue/1
supplier: Test Loft
currency: USD
tax: 0%
delivery: 0
lead: 1 day
items:
  - number: PL-1
    description: pliers
    tool: { kind: pliers, overall: 12 in }
    price: 20.00
";

const PROFILE: &str = "format: profile/1
id: test-rule-2026
rule: test-rule
edition: \"2026\"
encoding: 1
title: A test's rule
source: a test
language: en
standing: rule
in force: { from: 2026-01-01 }
freeboard from: top of the rail
binds: { permits: [gulf-reef-fish-commercial] }
requirements:
  - id: pliers
    title: Pliers
    clause: 1
    verified: read
    carry: 1
    one of:
      - { kind: pliers, with: { overall: at least 11 in } }
";

/// A shipped file, to be changed.
fn shipped(name: &str) -> String {
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("requirements").join(name);
    std::fs::read_to_string(path).unwrap()
}

fn swap(text: &str, from: &str, to: &str) -> String {
    assert!(text.contains(from), "{from}");
    text.replacen(from, to, 1)
}

/// What is hostile in any kind of file, put after a good one.
fn same_for_all(good: &str) -> Vec<Case> {
    let list = vec!["*z"; 500].join(",");
    let long = "x".repeat(400_000);
    vec![
        refused("NUL bytes", vec![0; 5000], &["a NUL character: this is no text file"]),
        refused(
            "Latin-1",
            [good.as_bytes(), b"# \xe9\n"].concat(),
            &["this file is not text in UTF-8", "mend: save it again"],
        ),
        refused(
            "100 000 brackets",
            format!("{good}zz: {}\n", "[".repeat(100_000)),
            &["brackets are nested too deep"],
        ),
        refused(
            "aliases of a long text",
            format!("{good}zz: &z {long}\nzy: [{list}]\n"),
            &["the aliases here stand for more than 4096 KiB of text"],
        ),
        refused(
            "too large",
            format!("{good}#{}", long.repeat(3)),
            &["this file is too large", "expected at most 1024 KiB"],
        ),
        refused(
            "a colour in a key",
            format!("{good}\"z\\e[31m\": 1\n"),
            &["a character that steers the screen", "\\u{1b}[31m"],
        ),
        refused(
            "the last key twice",
            format!("{good}format: x\n"),
            &["this key is written twice (first in line", "mend: take one of the two away"],
        ),
        refused(
            "a tag",
            swap(good, "format: ", "format: !x "),
            &["a YAML tag (`!…`) is not read here"],
        ),
    ]
}

fn inspections() -> Vec<Case> {
    let mut cases = same_for_all(INSPECTION);
    let tool = |line: &str| swap(INSPECTION, "{ mark: PL-1, overall: 12 in }", line);
    cases.extend([
        read("a record without fault", INSPECTION, 1, &["NOT READY"]),
        refused(
            "a vessel where a record is expected",
            GOOD,
            &[
                "inspection.yaml:1:9: this is a vessel's inventory: `vessel/1`",
                "expected an inspection record",
            ],
        ),
        refused(
            "a record of another vessel",
            swap(INSPECTION, "Kittiwake", "<script>alert(1)</script>"),
            &[
                "this inspection record is of another vessel",
                "`Test <script>alert(1)</script>`",
                "expected `Test Kittiwake`",
            ],
        ),
        refused(
            "a day of no calendar",
            swap(INSPECTION, "2026-03-01", "2026-02-30"),
            &["inspection.yaml:3:5: no such day in the calendar: `2026-02-30`"],
        ),
        refused(
            "201 tools",
            tool(&"{ mark: A }\n  - ".repeat(200)).replace("  - \n", "  - { mark: A }\n"),
            &["201 tools are too many", "expected at most 200 in a record"],
        ),
        refused(
            "a path as evidence",
            format!("{INSPECTION}evidence: ../../../etc/passwd\n"),
            &["inspection.yaml:6:1: no such key is known here: `evidence`"],
        ),
        read(
            "a path as an inspector",
            format!("{INSPECTION}by: ../../../etc/passwd\n"),
            1,
            &["NOT READY"],
        ),
        read(
            "a path as a sheet",
            format!("{INSPECTION}sheet: ../../../etc/passwd\n"),
            1,
            &["NOT READY"],
        ),
    ]);
    cases
}

fn catalogues() -> Vec<Case> {
    let mut cases = same_for_all(CATALOGUE);
    let price = |text: &str| swap(CATALOGUE, "20.00", text);
    const PRICE: &[&str] = &["shop.yaml:11:12:"];
    cases.extend([
        read(
            "a catalogue without fault",
            CATALOGUE,
            1,
            &["NOTHING ORDERED", "nothing on offer is of a kind that would do"],
        ),
        refused("a price of no number", price("NaN"), PRICE),
        refused("a price without end", price("inf"), PRICE),
        refused("a price below nothing", price("-20.00"), PRICE),
        refused("a price of 1e400", price("1e400"), PRICE),
        refused("a price of thirty digits", price("999999999999999999999999999999"), PRICE),
        refused("a price in another numeral system", price("0x10"), PRICE),
        refused("a price that is a formula", price("=1+1"), PRICE),
        refused(
            "a tax of a million percent",
            swap(CATALOGUE, "0%", "1000000%"),
            &["shop.yaml:4:6:"],
        ),
        refused(
            "a currency that is none",
            swap(CATALOGUE, "USD", "XXQ"),
            &["shop.yaml:3:11:", "`XXQ`"],
        ),
        refused(
            "a number twice",
            format!("{CATALOGUE}{}", CATALOGUE.split("items:\n").nth(1).unwrap()),
            &["shop.yaml:12:13:", "`PL-1`"],
        ),
        refused(
            "2001 items",
            items(2001),
            &["shop.yaml:7:1: 2001 items are too many", "expected at most 2000 in a catalogue"],
        ),
    ]);
    cases
}

/// A catalogue of so many items.
fn items(count: usize) -> String {
    let (head, item) = CATALOGUE.split_at(CATALOGUE.find("  - number").unwrap());
    let all = (0..count).map(|n| item.replacen("PL-1", &format!("PL-{n}"), 1));
    format!("{head}{}", all.collect::<String>())
}

fn profiles() -> Vec<Case> {
    let mut cases = same_for_all(PROFILE);
    let nested = "{ any of: [".repeat(90);
    cases.extend([
        read("a profile without fault", PROFILE, 0, &["READY"]),
        refused(
            "a path as an id",
            swap(PROFILE, "test-rule-2026", "../../etc/passwd"),
            &[
                "rules/rule.yaml:2:1: this is not an id: `../../etc/passwd`",
                "expected lower-case letters, digits and hyphens",
            ],
        ),
        refused(
            "a circle of profiles",
            swap(PROFILE, "in force", "built on: test-rule-2026\nin force"),
            &["rules/rule.yaml:10:11:", "in a circle"],
        ),
        refused(
            "a profile built on a path",
            swap(PROFILE, "in force", "built on: ../../etc/passwd\nin force"),
            &["rules/rule.yaml:10:11:", "`../../etc/passwd`"],
        ),
        refused(
            "2^32 tools asked",
            swap(PROFILE, "carry: 1", "carry: 4294967296"),
            &["rules/rule.yaml:18:12:", "`4294967296`"],
        ),
        refused(
            "501 tools asked",
            swap(PROFILE, "carry: 1", "carry: 501"),
            &["rules/rule.yaml:18:12:", "`501`"],
        ),
        refused(
            "conditions without end",
            swap(
                PROFILE,
                "    carry: 1",
                &format!("    when: {nested}{}\n    carry: 1", "] }".repeat(90)),
            ),
            &["nested deeper than 64 levels"],
        ),
        refused(
            "a threshold that is none",
            swap(PROFILE, "at least 11 in", "at least 1e400 in"),
            &["rules/rule.yaml:20:42:"],
        ),
    ]);
    cases
}

fn vocabularies() -> Vec<Case> {
    let shipped = shipped("vocabulary.yaml");
    let mut cases = same_for_all(&shipped);
    cases.extend([
        read("the shipped vocabulary", shipped.clone(), 0, &["pliers"]),
        refused(
            "a vocabulary of nothing, which the shipped rules need",
            "format: vocabulary/1\n",
            &["no kind of this name is known: `dip net`", "expected a kind of the vocabulary"],
        ),
        refused(
            "a vessel as a vocabulary",
            GOOD,
            &[
                "rules/vocabulary.yaml:1:9: this is a vessel's inventory: `vessel/1`",
                "expected a vocabulary",
            ],
        ),
    ]);
    cases
}

fn techniques() -> Vec<Case> {
    let shipped = shipped("techniques.yaml");
    let mut cases = same_for_all(&shipped);
    cases.extend([
        read("the shipped techniques", shipped, 1, &["Test Kittiwake"]),
        refused("techniques of nothing", "format: techniques/1\n", &["rules/techniques.yaml:"]),
    ]);
    cases
}

#[test]
fn hostile_inspection_records_are_refused() {
    hold("inspection records", Kind::Inspection, inspections());
}

#[test]
fn hostile_catalogues_are_refused() {
    hold("catalogues", Kind::Catalogue, catalogues());
}

#[test]
fn a_catalogue_as_large_as_may_be_is_quoted_from() {
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(folder.path().join("good.yaml"), GOOD).unwrap();
    std::fs::write(folder.path().join("shop.yaml"), items(2000)).unwrap();
    let typed = ["quote", "good.yaml", "--ordered", DAY, "--catalogue", "shop.yaml"];
    let ran = held(folder.path(), &typed);
    assert_eq!(ran.ran.status, 1, "{}", ran.said());
    assert!(ran.said().contains("nothing on offer is of a kind that would do"), "{}", ran.said());
}

#[test]
fn hostile_profiles_are_refused() {
    hold("profiles", Kind::Profile, profiles());
}

#[test]
fn hostile_vocabularies_are_refused() {
    hold("vocabularies", Kind::Vocabulary, vocabularies());
}

#[test]
fn hostile_techniques_are_refused() {
    hold("techniques", Kind::Techniques, techniques());
}

#[test]
fn a_folder_of_rules_has_a_cap_too() {
    let folder = tempfile::tempdir().unwrap();
    let rules = folder.path().join("rules");
    std::fs::create_dir(&rules).unwrap();
    for number in 0..501 {
        std::fs::write(rules.join(format!("{number}.yaml")), "x").unwrap();
    }
    std::fs::write(folder.path().join("good.yaml"), GOOD).unwrap();
    let ran = held(folder.path(), &["check", "good.yaml", "--on", DAY, "--requirements", "rules"]);
    assert_eq!(ran.ran.status, 2);
    assert!(ran.said().contains("rules: more than 500 profiles in one folder"), "{}", ran.said());
    refuse_live("501 profiles", &ran.ran).unwrap();
}
