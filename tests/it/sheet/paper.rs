//! The inspector's sheet.

use super::{all, parsed, reduced, text_of};
use crate::run::{home, kitmuster, write};

fn sheet(arguments: &[&str]) -> scraper::Html {
    let ran = kitmuster(&[&["sheet"], arguments].concat());
    assert_eq!((ran.status, ran.stderr.as_str()), (0, ""), "{arguments:?}");
    parsed(&ran.stdout)
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
    assert!(all.len() >= 10, "{all:?}");
    all
}

#[test]
fn an_inspectors_sheet_reads_so() {
    insta::assert_snapshot!(reduced(&sheet(&["vessels/marlow-tern.yaml"])));
}

#[test]
fn every_requirement_that_binds_is_on_the_sheet_with_its_clause() {
    let mut seen = 0;
    for vessel in vessels() {
        let check = kitmuster(&["check", &vessel, "--format", "json"]).json();
        let page = sheet(&[&vessel]);
        let text = all(&page, ".walk").into_iter().map(text_of).collect::<String>().to_lowercase();
        for profile in check["profiles"].as_array().unwrap() {
            for finding in profile["findings"].as_array().unwrap() {
                let clause = finding["citation"]["clause"].as_str().unwrap().to_lowercase();
                let title = finding["title"].as_str().unwrap().to_lowercase();
                assert!(text.contains(&clause), "{vessel}: {clause}");
                assert!(text.contains(&title), "{vessel}: {title}");
                seen += 1;
            }
        }
    }
    assert!(seen > 200, "{seen}");
}

#[test]
fn every_tool_of_the_list_has_one_row_and_the_rows_are_numbered_on() {
    for vessel in vessels() {
        let text = std::fs::read_to_string(&vessel).unwrap();
        let page = sheet(&[&vessel]);
        let numbers: Vec<_> = all(&page, ".number").into_iter().map(text_of).collect();
        let wanted: Vec<_> = (1..=numbers.len()).map(|n| n.to_string()).collect();
        assert_eq!(numbers, wanted, "{vessel}");
        let marks: Vec<_> = all(&page, ".mark").into_iter().map(text_of).collect();
        for line in text.lines() {
            let line = line.trim().trim_start_matches("- ");
            let Some(mark) = line.strip_prefix("mark: ") else { continue };
            assert_eq!(marks.iter().filter(|known| *known == mark).count(), 1, "{vessel}: {mark}");
        }
    }
}

#[test]
fn a_reach_rule_is_worked_out_for_the_rail() {
    // Appendix F, A.1: 150 % of freeboard, at least 6 ft. 4 ft 3 in is 51 in,
    // and 150 % of it 76.5 in.
    let page = sheet(&["vessels/marlow-tern.yaml"]);
    let row =
        all(&page, ".thing").into_iter().map(text_of).find(|text| text.contains("LC-1 ")).unwrap();
    assert!(row.contains("(Appendix F, A.1)"), "{row}");
    assert!(row.contains("handle (a) at least 6 ft 4 1/2 in (1.944 m)"), "{row}");
}

#[test]
fn over_a_range_a_least_is_worked_out_at_the_highest_and_says_so() {
    // Appendix F, A.1 at 4 ft 2 in: 150 % is 75 in. Below 4 ft it is not
    // asked, by 622.29(a)(1)(iii).
    let page = sheet(&["vessels/thistle-fulmar.yaml"]);
    let row =
        all(&page, ".thing").into_iter().map(text_of).find(|text| text.contains("LC-1 ")).unwrap();
    assert!(row.contains("at least 6 ft 3 in (1.905 m) (at 4 ft 2 in (1.27 m))"), "{row}");
    assert!(row.contains("asked at a freeboard of more than 4 ft"), "{row}");
}

#[test]
fn units_are_those_asked_for() {
    for (units, wanted, other) in [
        ("metric", "at least 1.944 m", "6 ft 4 1/2 in"),
        ("customary", "at least 6 ft 4 1/2 in", "1.944 m"),
    ] {
        let page = sheet(&["vessels/marlow-tern.yaml", "--units", units]);
        let text = text_of(all(&page, ".walk")[0]);
        assert!(text.contains(wanted) && !text.contains(other), "{units}");
    }
}

#[test]
fn without_a_freeboard_the_box_for_it_comes_first_and_the_rule_speaks_for_itself() {
    let folder = tempfile::tempdir().unwrap();
    let text = std::fs::read_to_string(home().join("vessels/marlow-tern.yaml")).unwrap();
    let text = text.replace("freeboard: 4 ft 3 in\n", "");
    let path = write(folder.path(), "unmeasured.yaml", &text);
    let page = sheet(&[&path]);
    let first = text_of(all(&page, ".facts .ask")[0]);
    assert!(first.contains("freeboard from the top of the rail"), "{first}");
    let text = text_of(all(&page, "main")[0]);
    assert!(text.contains("Measure the freeboard first"), "{text}");
    assert!(
        text.contains("at least the greater of 150 % of freeboard and 6 ft (1.829 m)"),
        "{text}"
    );
}

#[test]
fn the_rules_own_rounding_in_brackets_is_never_printed_as_a_limit() {
    // 6 ft is 1.8288 m: Appendix F, A.1 prints `6 ft (1.8 m)`, 28.8 mm less.
    let folder = tempfile::tempdir().unwrap();
    let text = std::fs::read_to_string(home().join("vessels/marlow-tern.yaml")).unwrap();
    let unknown = text.replace("freeboard: 4 ft 3 in\n", "");
    let deck = text.replace("freeboard: 4 ft 3 in\n", "freeboard: 2 ft from the working deck\n");
    assert!(unknown != text && deck != text);
    for text in [unknown, deck] {
        let path = write(folder.path(), "v.yaml", &text);
        for (units, wanted, other) in [
            ("both", "150 % of freeboard and 6 ft (1.829 m)", "1.8 m"),
            ("metric", "150 % of freeboard and 1.829 m", "6 ft"),
            ("customary", "150 % of freeboard and 6 ft", "1.829"),
        ] {
            let walk = text_of(all(&sheet(&[&path, "--units", units]), ".walk")[0]);
            assert!(walk.contains(wanted) && !walk.contains(other), "{units}: {walk}");
            let check = kitmuster(&["check", &path, "--units", units]).stdout;
            let check = check.split_whitespace().collect::<Vec<_>>().join(" ");
            assert!(!check.contains("(1.8 m)"), "{check}");
        }
    }
}

#[test]
fn a_freeboard_from_the_other_place_is_called_what_it_is() {
    let folder = tempfile::tempdir().unwrap();
    let text = std::fs::read_to_string(home().join("vessels/marlow-tern.yaml")).unwrap();
    let deck = text.replace("freeboard: 4 ft 3 in\n", "freeboard: 2 ft from the working deck\n");
    let path = write(folder.path(), "v.yaml", &deck);
    let facts: String = all(&sheet(&[&path]), ".facts").into_iter().map(text_of).collect();
    assert!(facts.contains("the list measured it from the working deck"), "{facts}");
}

#[test]
fn a_lot_has_a_box_for_how_many_even_where_one_is_left_that_works() {
    let folder = tempfile::tempdir().unwrap();
    let text = std::fs::read_to_string(home().join("vessels/far-kestrel.yaml")).unwrap();
    let broken = text.replace("    count: 2\n", "    count: 2\n    broken: 1\n");
    for text in [text, broken] {
        let path = write(folder.path(), "v.yaml", &text);
        let page = sheet(&[&path]);
        let rows: Vec<_> = all(&page, ".thing").into_iter().map(text_of).collect();
        let row = rows.iter().find(|row| row.contains("TI-1 ")).unwrap();
        assert!(row.contains("how many"), "{row}");
    }
}

#[test]
fn a_rule_that_is_not_encoded_is_told_on_the_paper() {
    let page = sheet(&["vessels/far-kestrel.yaml"]);
    let cautions: String = all(&page, ".caution").into_iter().map(text_of).collect();
    assert!(cautions.contains("what it asks is not in this program"), "{cautions}");
    assert!(cautions.contains("with the text of 50 CFR part 635"), "{cautions}");
}

#[test]
fn that_no_rule_names_the_vessel_is_told_on_the_paper() {
    let page = sheet(&["vessels/vesper-noddy.yaml"]);
    let cautions: String = all(&page, ".caution").into_iter().map(text_of).collect();
    assert!(cautions.contains("no rule that is known here names this vessel"), "{cautions}");
    let editions: String = all(&page, ".editions").into_iter().map(text_of).collect();
    assert!(editions.contains("good practice, no rule"), "{editions}");
}

#[test]
fn the_digest_stands_on_every_page_and_changes_with_the_file() {
    let digest = |path: &str| text_of(all(&sheet(&[path]), "thead .digest")[0]);
    let first = digest("vessels/marlow-tern.yaml");
    assert_eq!(first, digest("vessels/marlow-tern.yaml"));
    let folder = tempfile::tempdir().unwrap();
    let text = std::fs::read_to_string(home().join("vessels/marlow-tern.yaml")).unwrap();
    let path = write(folder.path(), "other.yaml", &format!("{text}# a word more\n"));
    let second = digest(&path);
    let halves = |digest: &str| {
        let (vessel, rules) = digest.split_once('-').unwrap();
        assert_eq!((vessel.len(), rules.len()), (5, 5), "{digest}");
        (vessel.to_owned(), rules.to_owned())
    };
    let ((one, rules), (other, same)) = (halves(&first), halves(&second));
    assert!(one != other && rules == same, "{first} {second}");
}

#[test]
fn hostile_names_are_escaped() {
    let folder = tempfile::tempdir().unwrap();
    let text = std::fs::read_to_string(home().join("vessels/marlow-tern.yaml")).unwrap();
    let text = text
        .replace("name: Marlow Tern", "name: \"<script>alert(1)</script>&amp;\"")
        .replace("stowed: aft deck", "stowed: \"<img src=x onerror=y>\"");
    let path = write(folder.path(), "hostile.yaml", &text);
    for reader in ["inspector", "skipper"] {
        let ran = kitmuster(&["sheet", &path, "--for", reader]);
        assert_eq!(ran.status, 0, "{}", ran.stderr);
        let page = parsed(&ran.stdout);
        assert!(all(&page, "script, img").is_empty());
        let text = text_of(all(&page, "main")[0]);
        assert!(text.contains("<script>alert(1)</script>&amp;"), "{text}");
        assert!(text.contains("<img src=x onerror=y>"), "{text}");
    }
}

#[test]
fn cautions_stand_at_the_foot_and_nothing_is_fetched() {
    for reader in ["inspector", "skipper"] {
        let ran = kitmuster(&["sheet", "vessels/marlow-tern.yaml", "--for", reader]);
        let page = parsed(&ran.stdout);
        let foot: String = all(&page, "footer").into_iter().map(text_of).collect();
        assert!(foot.contains("Take care: measure and mend gear in harbour"), "{foot}");
        assert!(foot.contains("Check the current rule and local conditions"), "{foot}");
        assert!(all(&page, "link, script, img, a[href]").is_empty());
        assert!(!ran.stdout.contains("http:") && !ran.stdout.contains("https:"), "{reader}");
    }
}

/// The rows of a group.
fn under(page: &scraper::Html, heading: &str) -> Vec<String> {
    let groups = all(page, "tbody").into_iter().filter(|group| text_of(*group).contains(heading));
    let selector = scraper::Selector::parse(".thing").unwrap();
    groups.flat_map(|group| group.select(&selector).map(text_of).collect::<Vec<_>>()).collect()
}

#[test]
fn that_nothing_is_asked_of_a_tool_stands_in_its_row() {
    let folder = tempfile::tempdir().unwrap();
    let text = std::fs::read_to_string(home().join("vessels/copper-dunlin.yaml")).unwrap();
    let cutter = "\nkit:\n  - { mark: LC-1, kind: long-handled line cutter }\n";
    let path = write(folder.path(), "v.yaml", &text.replace("\nkit:\n", cutter));
    for (vessel, told) in [
        (path.as_str(), "LC-1 long-handled line cutter: no rule here asks for it"),
        (
            "vessels/far-kestrel.yaml",
            "LC-1 long-handled line cutter: what is asked of it is not in this program",
        ),
    ] {
        let rows: Vec<_> = all(&sheet(&[vessel]), ".thing").into_iter().map(text_of).collect();
        assert!(rows.iter().any(|row| row.contains(told)), "{told}: {rows:?}");
    }
}

#[test]
fn hooks_have_a_row_of_their_own_where_they_are_listed_and_are_looked_for_where_not() {
    let folder = tempfile::tempdir().unwrap();
    let text = std::fs::read_to_string(home().join("vessels/winter-petrel.yaml")).unwrap();
    let rows = |text: &str| {
        let page = sheet(&[&write(folder.path(), "v.yaml", text)]);
        let look_for = under(&page, "not on the list, or not enough of it: look for");
        (under(&page, "hooks and lines aboard"), look_for)
    };
    // No rule asks anything of the lines. Hooks of 14/0 are too small.
    for text in [&text, &text.replace("size: 16/0, wire", "size: 14/0, wire")] {
        let (gear, look_for) = rows(text);
        assert_eq!((gear.len(), look_for.len()), (1, 0), "{gear:?} {look_for:?}");
        assert!(gear[0].contains("weak circle hooks hook, for: Only corrodible"), "{gear:?}");
        // Each alternative by its own clause.
        assert!(gear[0].contains("exactly 16/0 (635.21(c)(5)(iii)(C)(2))"), "{gear:?}");
    }
    let (before, rest) = text.split_once("hooks:\n").unwrap();
    let rest = rest.split_once('\n').unwrap().1;
    let (gear, look_for) = rows(&format!("{before}{rest}"));
    assert_eq!((gear.len(), look_for.len()), (0, 3), "{gear:?} {look_for:?}");
    assert!(look_for.iter().all(|row| row.contains("hook")), "{look_for:?}");
}
