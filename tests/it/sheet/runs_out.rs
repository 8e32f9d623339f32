//! What the skipper's checklist tells of days that end at sea.

use super::{all, parsed, text_of};
use crate::run::{home, kitmuster, write};

/// The lines under the heading, with the whole text.
fn lapses(path: &str, trip: &[&str]) -> (Vec<String>, String) {
    let ran = kitmuster(&[&["sheet", path, "--for", "skipper"], trip].concat());
    assert_eq!((ran.status, ran.stderr.as_str()), (0, ""));
    let page = parsed(&ran.stdout);
    let lines = all(&page, ".lapses li").into_iter().map(text_of).collect();
    let text = text_of(all(&page, "main")[0]);
    (lines, text)
}

#[test]
fn every_tool_and_certificate_that_ends_before_the_return_is_named() {
    // The edition of 2009 judges through 2024-11-28, and both certificates
    // are good for as long as it judges, or nearly.
    let folder = tempfile::tempdir().unwrap();
    let text = std::fs::read_to_string(home().join("vessels/winter-petrel.yaml")).unwrap();
    let text = text
        .replace("issued: 2022-05-17, number", "issued: 2022-05-17, expires: 2024-11-30, number")
        .replace(
            "issued: 2021-03-08, expires: 2024-03-07",
            "issued: 2022-03-08, expires: 2024-11-24",
        )
        .replace("    overall: 12 in\n", "    overall: 12 in\n    expires: 2024-12-04\n")
        .replace("    overall: 17 in\n", "    overall: 17 in\n    expires: 2024-12-05\n");
    let path = write(folder.path(), "v.yaml", &text);
    let (lines, text) = lapses(&path, &["--on", "2024-11-20", "--return", "2024-12-05"]);
    for (who, day) in
        [("E. Kavanough-Stell", "2024-11-30"), ("H. Brimlow", "2024-11-24"), ("PL-1", "2024-12-04")]
    {
        let told = lines.iter().any(|line| line.contains(who) && line.contains(day));
        assert!(told, "{who}: {lines:?}");
    }
    assert!(!lines.iter().any(|line| line.contains("BC-1")), "{lines:?}");
    assert!(!text.contains("Nothing on the list runs out"), "{text}");
}

#[test]
fn a_certificate_whose_span_ends_at_sea_is_named_by_its_issue() {
    // 635.21(c)(5)(iii): a certificate is good for three years from its issue.
    let folder = tempfile::tempdir().unwrap();
    let text = std::fs::read_to_string(home().join("vessels/winter-petrel.yaml")).unwrap();
    let text = text.replace("issued: 2022-05-17", "issued: 2021-02-16");
    let path = write(folder.path(), "v.yaml", &text);
    let (lines, _) = lapses(&path, &[]);
    let told = lines.iter().any(|l| l.contains("E. Kavanough-Stell") && l.contains("2024-02-15"));
    assert!(told, "{lines:?}");
}

#[test]
fn a_kit_that_is_met_for_a_while_says_until_when_and_that_the_trip_goes_on() {
    let (lines, text) = lapses("vessels/night-whimbrel.yaml", &[]);
    assert!(text.contains("✕ not ready"), "{text}");
    let told =
        |line: &String| line.contains("met until 2026-12-09; the trip goes on to 2026-12-18");
    assert!(lines.iter().any(told), "{lines:?}");
    assert!(!text.contains("that day included"), "{text}");
}

#[test]
fn what_ended_before_the_trip_is_told_with_its_last_day() {
    let folder = tempfile::tempdir().unwrap();
    let text = std::fs::read_to_string(home().join("vessels/night-whimbrel.yaml")).unwrap();
    let text = text.replace("inspected: 2025-12-10", "inspected: 2025-11-10");
    let text = text.replacen("inspected: 2026-07-06", "expires: 2026-11-06", 1);
    let (lines, _) = lapses(&write(folder.path(), "v.yaml", &text), &[]);
    for told in [
        "its inspection ran out before the trip (good through 2026-11-09)",
        "it went out of date before the trip (good through 2026-11-06)",
    ] {
        assert!(lines.iter().any(|line| line.contains(told)), "{told}: {lines:?}");
    }
}
