//! The empty inspection record, and the record once it is filled in.

use crate::run::{home, kitmuster, write};

fn record(arguments: &[&str]) -> String {
    let ran = kitmuster(&[&["sheet", "--record-form"], arguments].concat());
    assert_eq!((ran.status, ran.stderr.as_str()), (0, ""), "{arguments:?}");
    ran.stdout
}

/// The record with the day of the walk filled in, and nothing else.
fn dated(arguments: &[&str]) -> String {
    dated_on("2026-12-01", arguments)
}

fn dated_on(day: &str, arguments: &[&str]) -> String {
    record(arguments).replace("\non:", &format!("\non: {day}"))
}

fn check(arguments: &[&str]) -> serde_json::Value {
    kitmuster(&[&["check", "--format", "json"], arguments].concat()).json()
}

/// Every sample vessel.
fn vessels() -> Vec<String> {
    let mut all: Vec<_> = std::fs::read_dir(home().join("vessels"))
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.extension().is_some_and(|e| e == "yaml"))
        .map(|path| path.to_string_lossy().into_owned())
        .collect();
    all.sort();
    all
}

/// Fills in an empty key of the row of a mark.
fn fill(text: &str, mark: &str, key: &str, value: &str) -> String {
    let row = text.find(&format!("    mark: {mark}\n")).unwrap_or_else(|| panic!("{mark}"));
    let end = text[row..].find("  - row:").map_or(text.len(), |at| row + at);
    let at = text[row..end].find(&format!("\n    {key}:")).unwrap_or_else(|| panic!("{key}")) + row;
    let colon = at + 1 + text[at + 1..].find(':').unwrap() + 1;
    format!("{} {value}{}", &text[..colon], &text[colon..])
}

#[test]
fn an_empty_record_reads_so() {
    insta::assert_snapshot!(record(&["vessels/marlow-tern.yaml"]));
}

#[test]
fn a_record_of_which_only_the_day_is_filled_in_adds_nothing() {
    let folder = tempfile::tempdir().unwrap();
    for vessel in vessels() {
        // Before every sample's trip: a later record is not laid over.
        let text = dated_on("2019-01-15", &[&vessel]);
        let path = write(folder.path(), "record.yaml", &text);
        let alone = check(&[&vessel]);
        let laid = check(&[&vessel, "--inspection", &path]);
        assert_eq!(alone, laid, "{vessel}");
    }
}

#[test]
fn an_untouched_record_is_refused_since_its_day_decides_which_word_is_the_later() {
    let folder = tempfile::tempdir().unwrap();
    for vessel in vessels() {
        let path = write(folder.path(), "record.yaml", &record(&[&vessel]));
        let ran = kitmuster(&["check", &vessel, "--inspection", &path]);
        assert_eq!((ran.status, ran.stdout.as_str()), (2, ""), "{vessel}");
        assert!(ran.stderr.contains("write the day of the walk"), "{}", ran.stderr);
        assert!(
            ran.stderr.contains("1 problem") || !ran.stderr.contains("problems"),
            "{}",
            ran.stderr
        );
    }
}

#[test]
fn the_record_has_the_digest_and_the_row_numbers_of_the_paper() {
    let text = record(&["vessels/marlow-tern.yaml"]);
    let paper = super::parsed(&kitmuster(&["sheet", "vessels/marlow-tern.yaml"]).stdout);
    let digest = super::text_of(super::all(&paper, "thead .digest")[0]);
    assert!(text.contains(&format!("\nsheet: {digest}\n")), "{digest}: {text}");
    let numbers = super::all(&paper, ".number").into_iter().map(super::text_of);
    let marks = super::all(&paper, ".mark").into_iter().map(super::text_of);
    for (number, mark) in numbers.zip(marks) {
        let entry = format!("  - row: {number}\n    mark: {mark}\n");
        assert!(text.contains(&entry), "{entry}: {text}");
    }
}

#[test]
fn a_record_that_was_filled_in_is_laid_over_the_vessel() {
    let folder = tempfile::tempdir().unwrap();
    let empty = dated(&["vessels/marlow-tern.yaml"]);
    let text = fill(&empty, "PL-1", "condition", "broken");
    let text = fill(&text, "DE-1", "handle", "6 ft 1 in");
    let text = text.replace("\nby:", "\nby: A. Inspector");
    let path = write(folder.path(), "filled.yaml", &text);
    let laid = check(&["vessels/marlow-tern.yaml", "--inspection", &path]);
    let findings = laid["profiles"][0]["findings"].as_array().unwrap();
    let pliers = findings.iter().find(|f| f["requirement"] == "pliers").unwrap();
    assert_eq!(pliers["outcome"], "not-met");
    assert_eq!(pliers["reasons"][0]["code"], "not-serviceable");
    assert_eq!(laid["notices"].as_array().unwrap().len(), 0, "{}", laid["notices"]);
}

#[test]
fn every_key_of_an_empty_record_can_be_filled_in() {
    // Each sample is filled in with a plausible value for every key, which
    // must load; what it then says is the check's matter.
    let folder = tempfile::tempdir().unwrap();
    let mut filled = 0;
    for vessel in vessels() {
        let text = dated(&[&vessel]);
        let mut out = String::new();
        for line in text.lines() {
            let (bare, comment) = line.split_once("  #").unwrap_or((line, ""));
            let value = match bare.strip_prefix("    ").and_then(|key| key.strip_suffix(':')) {
                None | Some("missing") => None,
                Some("condition") => Some("serviceable"),
                Some("count") => Some("2"),
                Some("expires") => Some("2027-05-31"),
                Some("remark") => Some("seen"),
                Some("carries") => Some("110 lb"),
                Some("schedule") => Some("40"),
                Some("edition") => Some("\"2019\""),
                Some("material") => Some("316L"),
                Some("form") => Some("paper"),
                Some("kept") => Some("wheelhouse"),
                Some("state") => Some("posted"),
                Some("end") => Some("j"),
                Some("padding") => Some("vinyl tubing"),
                Some("rope-make") => Some("soft braided"),
                Some("line-lay") => Some("hard"),
                Some("line-material") => Some("nylon"),
                Some("pole-material") => Some("conduit"),
                Some(_) if comment.contains("yes or no") => Some("yes"),
                Some(_) if out.lines().last().is_some_and(|l| l.contains("yes or no")) => {
                    Some("yes")
                }
                Some(_) => Some("7 in"),
            };
            filled += usize::from(value.is_some());
            out.push_str(&match value {
                Some(value) => format!("{bare} {value}\n"),
                None => format!("{line}\n"),
            });
        }
        let path = write(folder.path(), "filled.yaml", &out);
        let ran = kitmuster(&["check", &vessel, "--inspection", &path]);
        assert_ne!(ran.status, 2, "{vessel}: {}\n{out}", ran.stderr);
    }
    assert!(filled > 500, "{filled}");
}

#[test]
fn a_record_of_a_sheet_from_another_state_of_the_file_is_told() {
    let folder = tempfile::tempdir().unwrap();
    let path = write(folder.path(), "record.yaml", &dated(&["vessels/marlow-tern.yaml"]));
    let text = std::fs::read_to_string(home().join("vessels/marlow-tern.yaml")).unwrap();
    let later = write(folder.path(), "later.yaml", &text.replace("6 ft 4 in", "6 ft 5 in"));
    let notices = |arguments: &[&str]| {
        let json = check(&[&["--inspection", &path], arguments].concat());
        json["notices"].as_array().unwrap().clone()
    };
    let told = notices(&[&later]);
    assert_eq!(told[0]["code"], "sheet-out-of-date", "{told:?}");
    assert!(told[0]["text"].as_str().unwrap().contains("another state of the vessel's file"));
    let other = notices(&["vessels/marlow-tern.yaml", "--profile", "good-practice-longline"]);
    let told = other.iter().find(|notice| notice["code"] == "sheet-out-of-date").unwrap();
    assert!(told["text"].as_str().unwrap().contains("other rules"), "{told}");
    assert!(notices(&["vessels/marlow-tern.yaml"]).is_empty());
}

#[test]
fn an_empty_row_in_a_record_of_the_whole_kit_is_refused() {
    let folder = tempfile::tempdir().unwrap();
    let text = dated(&["vessels/marlow-tern.yaml"]);
    let text = text.replace("covers: listed things only", "covers: whole kit");
    let path = write(folder.path(), "record.yaml", &text);
    let ran = kitmuster(&["check", "vessels/marlow-tern.yaml", "--inspection", &path]);
    assert_eq!(ran.status, 2);
    assert!(ran.stderr.contains("this row was left empty"), "{}", ran.stderr);
}

#[test]
fn names_that_yaml_would_read_otherwise_keep_their_value() {
    let folder = tempfile::tempdir().unwrap();
    let text = "format: vessel/1\nname: \"a: \\\"b\\\" #1 \\\\\"\npermits: []\ngear: []\nareas: []\n\
        kit:\n  - { mark: \"x: - 1\", kind: pliers, stowed: \"# here: {\" }\n  \
        - { mark: \"no\", kind: tire }\n";
    let vessel = write(folder.path(), "v.yaml", text);
    // It has no planned trip, so that it is checked for today.
    let out = dated_on("2026-01-15", &[&vessel]);
    let filled =
        fill(&fill(&out, "\"no\"", "condition", "broken"), "\"x: - 1\"", "condition", "broken");
    let path = write(folder.path(), "r.yaml", &filled);
    let ran = kitmuster(&["check", &vessel, "--inspection", &path]);
    assert_ne!(ran.status, 2, "{}", ran.stderr);
    for told in ["no: does not work", "x: - 1: does not work"] {
        assert!(ran.stdout.contains(told), "{told}: {}", ran.stdout);
    }
}
