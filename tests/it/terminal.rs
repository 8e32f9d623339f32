//! The page for a glance at 80 columns.

use crate::run::home;
use std::process::Command;

fn page(vessel: &str, settings: &[(&str, &str)]) -> String {
    let output = Command::new(env!("CARGO_BIN_EXE_kitmuster"))
        .args(["check", vessel])
        .current_dir(home())
        .env_clear()
        .envs(settings.iter().copied())
        .output()
        .unwrap();
    String::from_utf8(output.stdout).unwrap()
}

fn vessels() -> Vec<String> {
    let mut names: Vec<_> = std::fs::read_dir(home().join("vessels"))
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.extension().is_some_and(|e| e == "yaml"))
        .map(|path| format!("vessels/{}", path.file_name().unwrap().to_string_lossy()))
        .collect();
    names.sort();
    assert!(names.len() >= 12);
    names
}

/// The text without its colours.
fn plain(text: &str) -> String {
    let mut out = String::new();
    let mut rest = text;
    while let Some(at) = rest.find("\u{1b}[") {
        out.push_str(&rest[..at]);
        let end = rest[at..].find('m').unwrap();
        rest = &rest[at + end + 1..];
    }
    out + rest
}

#[test]
fn no_line_is_wider_than_eighty_columns() {
    for vessel in vessels() {
        for line in page(&vessel, &[]).lines() {
            assert!(line.chars().count() <= 80, "{vessel}: {line}");
        }
    }
}

#[test]
fn the_verdict_comes_first() {
    for vessel in vessels() {
        let page = page(&vessel, &[]);
        let first = page.lines().next().unwrap();
        assert!(
            ["READY", "NOT READY", "CAN'T TELL"].iter().any(|word| first.starts_with(word)),
            "{first}"
        );
    }
}

#[test]
fn without_colour_it_says_the_same() {
    for vessel in vessels() {
        let coloured = page(&vessel, &[("CLICOLOR_FORCE", "1")]);
        assert!(coloured.contains("\u{1b}["), "{vessel} has no colour to lose");
        assert_eq!(plain(&coloured), page(&vessel, &[("NO_COLOR", "1")]));
    }
}

#[test]
fn every_page_ends_with_the_cautions() {
    for vessel in vessels() {
        let page = page(&vessel, &[]);
        let foot: String = page
            .lines()
            .rev()
            .take(6)
            .collect::<Vec<_>>()
            .into_iter()
            .rev()
            .collect::<Vec<_>>()
            .join(" ");
        assert!(foot.contains("Check the current rule and local conditions"), "{vessel}: {foot}");
        assert!(foot.contains("no legal advice"), "{vessel}: {foot}");
    }
}
