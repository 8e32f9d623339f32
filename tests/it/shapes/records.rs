//! Inspection records laid over a vessel's declaration.

use crate::outfit::{DAY, Judged, vessel};
use crate::run;

/// A vessel with a short cutter and good pliers, under a record.
fn under(record: &str) -> Judged {
    under_on(record, "plain.yaml", DAY)
}

fn under_on(record: &str, profile: &str, day: &str) -> Judged {
    let folder = tempfile::tempdir().unwrap();
    let head = "format: inspection/1\nvessel: Test Kittiwake\non: 2026-02-20\nby: C. Inspector\n";
    let record = run::write(folder.path(), "record.yaml", &format!("{head}{record}"));
    vessel("5 ft")
        .with(&["{ mark: LC-1, kind: long-handled line cutter, handle: 7 ft 5 in }"])
        .with(&["{ mark: PL-1, kind: pliers, overall: 11 in, inspected: 2025-01-10 }"])
        .check(&["--profile", &super::profile(profile), "--on", day, "--inspection", &record])
}

#[test]
fn what_an_inspector_measures_stands_beside_the_declaration() {
    let agreed = under("found: [{ mark: PL-1, overall: 11 1/4 in }]");
    assert_eq!(agreed.outcome("pliers"), "met");
    // Of two that were measured the later decides if it is the worse one.
    let worse = under("found: [{ mark: PL-1, overall: 10 in }]");
    assert_eq!(
        (worse.outcome("pliers"), worse.codes("pliers")),
        ("not-met", vec!["out-of-specification"])
    );
}

#[test]
fn what_was_mended_at_ten_stands_beside_what_was_found_at_nine() {
    let found = "found: [{ mark: LC-1, handle: 7 ft 4 in, condition: serviceable";
    assert_eq!(under(&format!("{found} }}]")).outcome("cutter"), "not-met");
    let mended =
        under(&format!("{found}, mended: [{{ what: lengthened, handle: 7 ft 6 in }}] }}]"));
    assert_eq!(mended.outcome("cutter"), "met");
    let too_little =
        under(&format!("{found}, mended: [{{ what: lengthened, handle: 7 ft 5 in }}] }}]"));
    assert_eq!(too_little.outcome("cutter"), "not-met");
}

#[test]
fn what_an_inspector_finds_broken_or_missing_does_not_serve() {
    let broken = under("found: [{ mark: PL-1, condition: broken }]");
    assert_eq!(
        (broken.outcome("pliers"), broken.codes("pliers")),
        ("not-met", vec!["not-serviceable"])
    );
    let missing = under("found: [{ mark: PL-1, missing: yes }]");
    assert_eq!((missing.outcome("pliers"), missing.codes("pliers")), ("not-met", vec!["missing"]));
    let repaired =
        under("found: [{ mark: PL-1, condition: broken, mended: [{ what: repaired }] }]");
    assert_eq!(repaired.outcome("pliers"), "met");
}

#[test]
fn what_an_inspector_sought_and_did_not_find_is_not_aboard() {
    assert_eq!(under("found: []").outcome("pliers"), "met");
    assert_eq!(under("sought and not found: [pliers]").outcome("pliers"), "not-met");
    let found = under(
        "sought and not found: [bolt cutters]\nfound: [{ mark: PL-1, condition: serviceable }]",
    );
    assert_eq!(found.outcome("pliers"), "met");
}

#[test]
fn where_an_inspector_saw_all_of_a_kind_the_unlisted_ones_are_not_aboard() {
    assert_eq!(under("all seen: [pliers]").outcome("pliers"), "not-met");
    assert_eq!(under("all seen: [bolt cutters]").outcome("pliers"), "met");
    let found = under("all seen: [pliers]\nfound: [{ mark: PL-1, condition: serviceable }]");
    assert_eq!(found.outcome("pliers"), "met");
}

#[test]
fn a_record_of_the_whole_kit_leaves_out_what_was_not_there() {
    let whole = under("covers: whole kit\nfound: [{ mark: LC-1, condition: serviceable }]");
    assert_eq!(whole.outcome("pliers"), "not-met");
    let partial =
        under("covers: listed things only\nfound: [{ mark: LC-1, condition: serviceable }]");
    assert_eq!(partial.outcome("pliers"), "met");
}

/// A head that was replaced is another head: what a supplier stated of the
/// old one is void from that day.
#[test]
fn a_new_head_found_aboard_voids_the_statements_before_it() {
    let judged = |stated: &str, what: &str| {
        let folder = tempfile::tempdir().unwrap();
        let record = format!(
            "format: inspection/1\nvessel: Test Kittiwake\non: 2026-02-20\nby: C. Inspector\n\
             found: [{{ mark: DE-1, condition: serviceable, \
             mended: [{{ what: {what}, shaft: 16 in, blunt-end: yes }}] }}]\n"
        );
        let record = run::write(folder.path(), "record.yaml", &record);
        let tool = format!(
            "{{ mark: DE-1, kind: short-handled dehooker for external hooks, \
             conforms: [{{ to: clause 7, on: {stated}, by: Port Ansel Chandlery }}] }}"
        );
        let profile = super::profile("features.yaml");
        let asked = ["--profile", &profile, "--on", DAY, "--inspection", &record];
        vessel("5 ft").with(&[tool]).check(&asked).outcome("statement").to_owned()
    };
    assert_eq!(judged("2026-02-21", "head replaced"), "met");
    assert_eq!(judged("2026-02-20", "head replaced"), "cannot-tell");
    assert_eq!(judged("2026-02-19", "head replaced"), "cannot-tell");
    assert_eq!(judged("2026-02-19", "repaired"), "met");
}

#[test]
fn a_record_of_the_whole_kit_says_nothing_of_what_came_after_its_day() {
    let kit = |on: &str, acquired: &str| {
        let folder = tempfile::tempdir().unwrap();
        let record = format!(
            "format: inspection/1\nvessel: Test Kittiwake\non: {on}\nby: C. Inspector\n\
             covers: whole kit\nfound: []\n"
        );
        let record = run::write(folder.path(), "record.yaml", &record);
        let pliers =
            format!("{{ mark: PL-1, kind: pliers, overall: 11 in, acquired: {acquired} }}");
        let profile = super::profile("plain.yaml");
        let asked = ["--profile", &profile, "--on", DAY, "--inspection", &record];
        vessel("5 ft").with(&[pliers]).check(&asked).outcome("pliers").to_owned()
    };
    assert_eq!(kit("2026-02-20", "2026-02-21"), "met");
    // What was aboard on that day was to be found on that day.
    assert_eq!(kit("2026-02-20", "2026-02-20"), "not-met");
    assert_eq!(kit("2026-02-20", "2026-02-19"), "not-met");
}

/// Judges three gags of a lot after a record of that lot.
fn gags_after(lot: &str, found: &str) -> String {
    let folder = tempfile::tempdir().unwrap();
    let record = format!(
        "format: inspection/1\nvessel: Test Kittiwake\non: 2026-02-20\nby: C. Inspector\n\
         found: [{{ mark: CM-1, {found} }}]\n"
    );
    let record = run::write(folder.path(), "record.yaml", &record);
    let profile = super::profile("plain.yaml");
    let asked = ["--profile", &profile, "--on", DAY, "--inspection", &record];
    let gags = format!("{{ mark: CM-1, kind: canine mouth gags, {lot} }}");
    vessel("5 ft").with(&[gags]).check(&asked).outcome("gags").to_owned()
}

#[test]
fn a_record_of_the_day_of_the_list_is_no_older_than_it() {
    let folder = tempfile::tempdir().unwrap();
    let outcome = |on: &str| {
        let text = format!(
            "format: inspection/1\nvessel: Test Kittiwake\non: {on}\nby: C. Inspector\n\
             found: [{{ mark: PL-1, condition: broken }}]\n"
        );
        let record = run::write(folder.path(), "record.yaml", &text);
        let profile = super::profile("plain.yaml");
        let asked = ["--profile", &profile, "--on", DAY, "--inspection", &record];
        let declared = "{ by: A. Holder, on: 2026-02-10, condition: serviceable }";
        let vessel = vessel("5 ft").set("declared", declared);
        vessel
            .with(&["{ mark: PL-1, kind: pliers, overall: 11 in }"])
            .check(&asked)
            .outcome("pliers")
            .to_owned()
    };
    assert_eq!(outcome("2026-02-09"), "met");
    assert_eq!(outcome("2026-02-10"), "not-met");
    assert_eq!(outcome("2026-02-11"), "not-met");
}

/// A count is of the lot, its broken rest included; how many of them work is
/// open only where some were broken.
#[test]
fn a_recount_leaves_the_condition_open_only_where_some_were_broken() {
    assert_eq!(gags_after("count: 5", "count: 3"), "met");
    assert_eq!(gags_after("count: 5", "count: 2"), "not-met");
    assert_eq!(gags_after("count: 5, broken: 1", "count: 3"), "cannot-tell");
    assert_eq!(gags_after("count: 5, broken: 1", "count: 3, condition: serviceable"), "met");
}

/// A list without a day is older than any record.
#[test]
fn a_record_against_a_list_without_a_day() {
    let folder = tempfile::tempdir().unwrap();
    let record = |name: &str, condition: &str| {
        let text = format!(
            "format: inspection/1\nvessel: Test Kittiwake\non: 2026-02-20\nby: C. Inspector\n\
             found: [{{ mark: PL-1, condition: {condition} }}]\n"
        );
        run::write(folder.path(), name, &text)
    };
    let (good, bad) = (record("good.yaml", "serviceable"), record("bad.yaml", "broken"));
    let profile = super::profile("plain.yaml");
    let outcome = |condition: &str, record: &str| {
        let asked = ["--profile", &profile, "--on", DAY, "--inspection", record];
        let pliers =
            format!("{{ mark: PL-1, kind: pliers, overall: 11 in, condition: {condition} }}");
        let vessel = vessel("5 ft").unsaid("declared").with(&[pliers]);
        vessel.check(&asked).outcome("pliers").to_owned()
    };
    assert_eq!(outcome("serviceable", &good), "met");
    assert_eq!(outcome("unknown", &good), "met");
    assert_eq!(outcome("broken", &good), "met");
    let mended = record("mended.yaml", "broken, mended: [{ what: repaired }]");
    for condition in ["serviceable", "unknown", "broken"] {
        assert_eq!(outcome(condition, &bad), "not-met", "{condition}");
        assert_eq!(outcome(condition, &mended), "met", "{condition}");
    }
}

#[test]
fn the_broken_rest_of_a_lot_goes_by_the_lots_mark() {
    let folder = tempfile::tempdir().unwrap();
    let record = "format: inspection/1\nvessel: Test Kittiwake\non: 2026-02-20\nby: C. Inspector\n\
                  covers: whole kit\nfound: [{ mark: CM-1, condition: serviceable }]\n";
    let record = run::write(folder.path(), "record.yaml", record);
    let profile = super::profile("plain.yaml");
    let asked = ["--profile", &profile, "--on", DAY, "--inspection", &record];
    let gags = "{ mark: CM-1, kind: canine mouth gags, count: 4, broken: 2 }";
    let codes = |asked: &[&str]| {
        let judged = vessel("5 ft").with(&[gags]).check(asked);
        judged.codes("gags").iter().map(|code| (*code).to_owned()).collect::<Vec<_>>()
    };
    assert_eq!(codes(&asked[..4]), ["too-few", "not-serviceable"]);
    assert_eq!(codes(&asked), ["too-few", "not-serviceable"]);
}

#[test]
fn an_inspector_may_find_a_tool_that_nobody_listed() {
    let other = "found: [{ mark: LC-9, kind: long-handled line cutter, handle: 8 ft, condition: serviceable }]";
    let judged = under(other);
    assert_eq!((judged.outcome("cutter"), judged.tools("cutter")), ("met", vec!["LC-9"]));
    assert_eq!(under(&other.replace("8 ft", "7 ft")).outcome("cutter"), "not-met");
}

#[test]
fn an_inspection_renews_the_date_only_if_it_counts_as_one() {
    let found = "found: [{ mark: PL-1, condition: serviceable }]";
    let renewing =
        under_on(&format!("counts as inspection due: yes\n{found}"), "inspections.yaml", DAY);
    assert_eq!(renewing.outcome("yearly"), "met");
    let looking = under_on(found, "inspections.yaml", DAY);
    assert_eq!(
        (looking.outcome("yearly"), looking.codes("yearly")),
        ("not-met", vec!["inspection-lapsed"])
    );
    let broken = "counts as inspection due: yes\nfound: [{ mark: PL-1, condition: broken }]";
    assert_eq!(under_on(broken, "inspections.yaml", DAY).outcome("yearly"), "not-met");
}

#[test]
fn a_freeboard_that_an_inspector_takes_disputes_the_declared_one() {
    // 7 ft 5 in is 150 % of 4 ft 11 1/3 in.
    assert_eq!(under("freeboard: 5 ft 1 in").outcome("cutter"), "not-met");
    let disputed = under("freeboard: 4 ft 6 in");
    assert_eq!(disputed.outcome("cutter"), "cannot-tell");
    assert_eq!(disputed.finding("cutter")["reasons"][0]["fact"], "freeboard-disputed");
}

#[test]
fn a_freeboard_taken_from_another_place_stands_beside_the_list() {
    let elsewhere = under("freeboard: 3 ft from the working deck");
    assert_eq!(elsewhere.outcome("cutter"), "not-met");
    let freeboard = &elsewhere.json["vessel"]["freeboard"];
    assert_eq!(
        (&freeboard["from"], freeboard["other"].as_array().unwrap().len()),
        (&"rail".into(), 1)
    );
}

/// What is left of the pliers under several records, oldest first.
fn under_each(records: &[(&str, &str)]) -> (String, Vec<String>) {
    let folder = tempfile::tempdir().unwrap();
    let paths: Vec<String> = records
        .iter()
        .enumerate()
        .map(|(index, (on, found))| {
            let text = format!(
                "format: inspection/1\nvessel: Test Kittiwake\non: {on}\nby: C. Inspector\n\
                 found: [{{ mark: PL-1, {found} }}]\n"
            );
            run::write(folder.path(), &format!("{index}.yaml"), &text)
        })
        .collect();
    let profile = super::profile("plain.yaml");
    let mut arguments = vec!["--profile", &profile, "--on", DAY];
    arguments.extend(paths.iter().flat_map(|path| ["--inspection", path.as_str()]));
    let judged = vessel("5 ft")
        .with(&["{ mark: PL-1, kind: pliers, overall: 11 in, inspected: 2025-01-10 }"])
        .check(&arguments);
    let codes = judged.codes("pliers").iter().map(|code| (*code).to_owned()).collect();
    (judged.outcome("pliers").to_owned(), codes)
}

#[test]
fn two_looks_of_one_day_that_differ_leave_the_condition_open() {
    let (good, bad) = ("condition: serviceable", "condition: broken");
    let open = ("cannot-tell".to_owned(), vec!["condition-unknown".to_owned()]);
    assert_eq!(under_each(&[("2026-02-20", good), ("2026-02-20", bad)]), open);
    assert_eq!(under_each(&[("2026-02-20", bad), ("2026-02-20", good)]), open);
    assert_eq!(under_each(&[("2026-02-20", good), ("2026-02-20", good)]).0, "met");
    let broken = ("not-met".to_owned(), vec!["not-serviceable".to_owned()]);
    assert_eq!(under_each(&[("2026-02-20", bad), ("2026-02-20", bad)]), broken);
    // A day later it is simply the newer look that counts.
    assert_eq!(under_each(&[("2026-02-20", good), ("2026-02-21", bad)]), broken);
    assert_eq!(under_each(&[("2026-02-20", bad), ("2026-02-21", good)]).0, "met");
}

#[test]
fn a_change_takes_away_what_was_read_up_to_its_day() {
    let judged = |reading: &str| {
        let pliers = format!(
            "{{ mark: PL-1, kind: pliers, overall: {{ value: 11 in, {reading}how: measured }}, \
             changes: [{{ what: lengthened, on: 2026-02-10 }}] }}"
        );
        let judged = super::kit("plain.yaml", &[pliers]);
        judged.outcome("pliers").to_owned()
    };
    assert_eq!(judged("on: 2026-02-11, "), "met");
    for before in ["on: 2026-02-10, ", "on: 2026-02-09, ", ""] {
        assert_eq!(judged(before), "cannot-tell", "{before}");
    }
}
