//! One result in every format, the same whatever the number of threads.

use super::{audit, changed, document, folder, typed};
use serde_json::Value;

const FORMATS: [&str; 5] = ["table", "json", "lines", "csv", "html"];

#[test]
fn one_thread_and_many_give_the_same_bytes() {
    // Enough files to keep several threads busy at once.
    let mut files = Vec::new();
    for number in 0..40 {
        let vessel = if number % 3 == 0 { "salt-pomelo.yaml" } else { "marlow-tern.yaml" };
        files.push((format!("{number:02}.yaml"), changed(vessel, &[])));
        if number % 7 == 0 {
            files.push((format!("{number:02}-broken.yaml"), "format: vessel/1\nname: [\n".into()));
        }
    }
    let files: Vec<(&str, String)> = files.iter().map(|(n, t)| (n.as_str(), t.clone())).collect();
    let folder = folder(&files);
    for format in FORMATS {
        let with = |threads: &str| {
            let ran = audit(&[typed(&folder)], &["--format", format, "--threads", threads]);
            assert_eq!(ran.status, 2, "{format}");
            ran.stdout
        };
        let one = with("1");
        assert!(!one.is_empty(), "{format}");
        assert!(one == with("2") && one == with("7"), "{format}");
    }
}

#[test]
fn a_file_gets_what_the_screen_gets() {
    let folder = tempfile::tempdir().unwrap();
    for format in FORMATS {
        let path = folder.path().join(format);
        let to_file = ["--format", format, "--output", path.to_str().unwrap()];
        assert_eq!(audit(&["vessels"], &to_file).status, 1);
        let screen = audit(&["vessels"], &["--format", format]).stdout;
        assert!(std::fs::read_to_string(&path).unwrap() == screen, "{format}");
    }
    assert_eq!(std::fs::read_dir(folder.path()).unwrap().count(), FORMATS.len());
}

/// What a format says: file, profile, requirement, outcome, tools.
type Said = Vec<[String; 5]>;

fn of_document(fleet: &Value) -> Said {
    let text = |value: &Value| value.as_str().unwrap().to_owned();
    let mut said = Vec::new();
    for vessel in fleet["vessels"].as_array().unwrap() {
        for profile in vessel["profiles"].as_array().unwrap() {
            for finding in profile["findings"].as_array().unwrap() {
                let tools: Vec<_> =
                    finding["tools"].as_array().unwrap().iter().map(|t| text(&t["mark"])).collect();
                said.push([
                    text(&vessel["vessel"]["file"]),
                    text(&profile["id"]),
                    text(&finding["requirement"]),
                    text(&finding["outcome"]),
                    tools.join(", "),
                ]);
            }
        }
    }
    said
}

#[test]
fn document_lines_and_csv_say_the_same() {
    let expected = of_document(&document(&["vessels"], &[]));
    assert!(expected.len() > 200);
    let mut of_lines = Said::new();
    for line in audit(&["vessels"], &["--format", "lines"]).stdout.lines() {
        let vessel: Value = serde_json::from_str(line).unwrap();
        assert_eq!(vessel["schema"], "kitmuster/audit-line/1");
        for profile in vessel["profiles"].as_array().unwrap() {
            for finding in profile["findings"].as_array().unwrap() {
                let text = |value: &Value| value.as_str().unwrap().to_owned();
                let tools: Vec<_> =
                    finding["tools"].as_array().into_iter().flatten().map(text).collect();
                of_lines.push([
                    text(&vessel["file"]),
                    text(&profile["id"]),
                    text(&finding["requirement"]),
                    text(&finding["outcome"]),
                    tools.join(", "),
                ]);
            }
        }
    }
    assert_eq!(of_lines, expected);
    let text = audit(&["vessels"], &["--format", "csv"]).stdout;
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    let head = reader.headers().unwrap().clone();
    let column = |name: &str| head.iter().position(|known| known == name).unwrap();
    let wanted = ["file", "profile", "requirement", "outcome", "tools"].map(column);
    let rows = reader.records().map(Result::unwrap);
    let rows = rows.filter(|row| !row[column("requirement")].is_empty());
    let of_csv: Said = rows.map(|row| wanted.map(|at| row[at].to_owned())).collect();
    assert_eq!(of_csv, expected);
}

#[test]
fn the_csv_calls_open_what_is_open() {
    let text = audit(&["vessels"], &["--format", "csv"]).stdout;
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    let head = reader.headers().unwrap().clone();
    let column = |name: &str| head.iter().position(|known| known == name).unwrap();
    let (verdict, until) = (column("profile verdict"), column("ready until"));
    let records = column("records laid over");
    let mut open = 0;
    for row in reader.records().map(Result::unwrap) {
        if row[verdict] == *"cannot-tell" {
            assert_eq!(&row[until], "can't tell");
            open += 1;
        }
        let heron = row[1] == *"Stillwater Heron";
        assert_eq!(row[records].contains("stillwater-heron-2026-11-27.yaml"), heron);
    }
    assert!(open > 10);
}

#[test]
fn hostile_names_stay_dead_in_every_format() {
    let name = r#"name: "=cmd()|' /C calc'!A0<script>alert(1)</script>\u202e\u001b[31m""#;
    let hostile = changed(
        "marlow-tern.yaml",
        &[
            ("name: Marlow Tern", name),
            ("port: Port Ansel", r#"port: "@SUM(1)""#),
            ("register: PA-104", r#"register: "-1+2""#),
        ],
    );
    let folder = folder(&[("a.yaml", hostile)]);
    for format in FORMATS {
        let text = audit(&[typed(&folder)], &["--format", format]).stdout;
        assert!(text.contains("alert(1)"), "{format}: {text}");
        assert!(!text.contains(['\u{1b}', '\u{202e}']), "{format}");
    }
    let csv = audit(&[typed(&folder)], &["--format", "csv"]).stdout;
    let mut reader = csv::Reader::from_reader(csv.as_bytes());
    for row in reader.records() {
        for cell in &row.unwrap() {
            assert!(!cell.starts_with(['=', '+', '-', '@', '\t', '\r']), "{cell}");
        }
    }
    let html = audit(&[typed(&folder)], &["--format", "html"]).stdout;
    assert!(!html.contains("<script"), "a name became markup");
}
