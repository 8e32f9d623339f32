//! What is asked above the listed freeboard, on the inspector's sheet.

use super::{all, parsed, text_of};
use crate::run::{home, kitmuster, write};

const ABOVE: &str = "asked if the freeboard is more than 4 ft (1.219 m)";

/// The rows under the heading.
fn above(path: &str, arguments: &[&str]) -> Vec<String> {
    let ran = kitmuster(&[&["sheet", path], arguments].concat());
    assert_eq!((ran.status, ran.stderr.as_str()), (0, ""));
    let page = parsed(&ran.stdout);
    let groups = all(&page, "tbody").into_iter().filter(|group| text_of(*group).contains(ABOVE));
    let selector = scraper::Selector::parse(".thing").unwrap();
    groups.flat_map(|group| group.select(&selector).map(text_of).collect::<Vec<_>>()).collect()
}

#[test]
fn below_the_threshold_there_are_rows_for_what_is_asked_above_it() {
    // 622.29(a)(1)(iii) and (iv): at 4 ft or less the short list, above it
    // also A.1 to A.4 of Appendix F, in five requirements. Copper Dunlin has
    // 3 ft 9 in.
    let rows = above("vessels/copper-dunlin.yaml", &[]);
    assert_eq!(rows.len(), 5, "{rows:?}");
    for clause in ["A.1", "A.2", "A.3", "A.4"] {
        let row = rows.iter().find(|row| row.contains(&format!("Appendix F, {clause}")));
        assert!(row.is_some(), "{clause}: {rows:?}");
    }
    assert!(rows[0].contains("150 % of freeboard and 6 ft (1.829 m)"), "{rows:?}");
    let check = kitmuster(&["check", "vessels/copper-dunlin.yaml", "--format", "json"]).json();
    for finding in check["profiles"][0]["findings"].as_array().unwrap() {
        let title = finding["title"].as_str().unwrap();
        assert!(!rows.iter().any(|row| row.contains(title)), "{title}: {rows:?}");
    }
    let metric = kitmuster(&["sheet", "vessels/copper-dunlin.yaml", "--units", "metric"]).stdout;
    assert!(metric.contains("asked if the freeboard is more than 1.219 m"), "{metric}");
}

#[test]
fn the_rows_are_those_of_the_record_form() {
    let form = kitmuster(&["sheet", "vessels/copper-dunlin.yaml", "--record-form"]).stdout;
    let plain = form.split_whitespace().filter(|w| *w != "#").collect::<Vec<_>>().join(" ");
    assert!(plain.contains(ABOVE), "{form}");
    assert!(plain.contains("Appendix F, A.1"), "{form}");
}

#[test]
fn only_a_threshold_within_a_foot_above_the_highest_freeboard_counts() {
    let folder = tempfile::tempdir().unwrap();
    let text = std::fs::read_to_string(home().join("vessels/copper-dunlin.yaml")).unwrap();
    let at = |freeboard: &str| {
        let text = text.replace("freeboard: 3 ft 9 in", &format!("freeboard: {freeboard}"));
        above(&write(folder.path(), "v.yaml", &text), &[]).len()
    };
    assert_eq!(at("2 ft 11 7/8 in"), 0);
    let rows = at("3 ft");
    assert!(rows > 4, "{rows}");
    assert_eq!(at("2 ft to 3 ft"), rows);
    assert_eq!(at("4 ft"), rows);
    assert_eq!(at("4 ft 1 in"), 0);
    // Where the range goes over the threshold, the requirements may bind.
    assert_eq!(at("3 ft 9 in to 4 ft 1 in"), 0);
}

#[test]
fn a_row_above_names_what_is_on_the_list_for_it() {
    let folder = tempfile::tempdir().unwrap();
    let text = std::fs::read_to_string(home().join("vessels/copper-dunlin.yaml")).unwrap();
    let cutters = "\nkit:\n  - { mark: LC-1, kind: long-handled line cutter }\n  \
                   - { mark: LC-2, kind: long-handled line cutter }\n";
    let path = write(folder.path(), "v.yaml", &text.replace("\nkit:\n", cutters));
    for row in above(&path, &[]) {
        let cutter = row.contains("Long-handled line clipper or cutter (");
        assert_eq!(row.contains("on the list: LC-1, LC-2"), cutter, "{row}");
        assert_eq!(row.contains("on the list:"), cutter, "{row}");
    }
}
