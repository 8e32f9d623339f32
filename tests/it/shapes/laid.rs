//! Several records over one vessel: what was looked for in vain, records of
//! one day in every order, and records that say no more than they saw.

use super::made;
use crate::outfit::{DAY, Judged, Outfit, vessel};
use crate::run;

/// A record of that day.
pub(super) fn record(on: &str, lines: &str) -> String {
    format!("format: inspection/1\nvessel: Test Kittiwake\non: {on}\nby: C. Inspector\n{lines}\n")
}

/// The vessel under a profile, with these records laid over it in files that
/// are named in this order.
pub(super) fn laid(vessel: &Outfit, profile: &str, records: &[&String]) -> Judged {
    let folder = tempfile::tempdir().unwrap();
    let paths: Vec<String> = (records.iter().enumerate())
        .map(|(at, text)| run::write(folder.path(), &format!("{at}.yaml"), text))
        .collect();
    let mut arguments = vec!["--profile", profile, "--on", DAY];
    arguments.extend(paths.iter().flat_map(|path| ["--inspection", path.as_str()]));
    vessel.check(&arguments)
}

const PAPER: &str = "id: paper, title: P, carry: 1 careful-release document";

/// A paper that is lost is not aboard, wherever that is written.
#[test]
fn a_lost_paper_is_not_aboard() {
    let rule = made(&[PAPER]);
    let document = "kind: careful-release document";
    let outcome = |vessel: &Outfit| rule.judges(vessel).outcome("paper").to_owned();
    for (state, expected) in [
        ("lost", "not-met"),
        ("aboard", "met"),
        ("{ value: lost, on: 2026-02-01 }", "not-met"),
        ("[{ value: posted, on: 2026-01-10 }, { value: lost, on: 2026-02-01 }]", "not-met"),
        ("[{ value: lost, on: 2026-01-10 }, { value: posted, on: 2026-02-01 }]", "met"),
        ("[{ value: lost, on: 2026-02-01 }, { value: posted, on: 2026-02-01 }]", "cannot-tell"),
    ] {
        let written = format!("{{ mark: D-1, {document}, state: {state} }}");
        assert_eq!(outcome(&vessel("5 ft").with(&[&written])), expected, "kit: {state}");
        assert_eq!(outcome(&vessel("5 ft").carrying(&[&written])), expected, "documents: {state}");
    }
    let listed = vessel("5 ft").carrying(&[format!("{{ mark: D-1, {document}, state: aboard }}")]);
    let after = |found: &str| {
        let record = record("2026-02-20", &format!("found: [{{ mark: D-1, {found} }}]"));
        laid(&listed, &rule.path, &[&record]).outcome("paper").to_owned()
    };
    assert_eq!(after("state: posted"), "met");
    assert_eq!(after("state: lost"), "not-met");
    assert_eq!(after(&format!("{document}, state: LOST")), "not-met");
    assert_eq!(after("missing: yes"), "not-met");
    assert_eq!(after("count: 0"), "not-met");
}

/// The same where a paper excuses, and where a tool is put together from a
/// part.
#[test]
fn what_is_lost_excuses_nothing_and_is_part_of_nothing() {
    let excused = made(&[
        "id: excused, title: E, carry: 1 pliers, unless: { aboard: exemption letter }",
        "id: plain, title: P, carry: 1 tire",
    ]);
    let letter = "{ mark: EX-1, kind: exemption letter, state: aboard }";
    let with_letter = vessel("5 ft").carrying(&[letter]).with(&["{ mark: TI-1, kind: tire }"]);
    let jointed = made(&["id: cutter, title: C, carry: 1 long-handled line cutter"]);
    let with_part = vessel("5 ft").with(&[
        "{ mark: LC-1, kind: long-handled line cutter, parts: [BH-1] }",
        "{ mark: BH-1, kind: boat hook }",
    ]);
    for gone in ["missing: yes", "count: 0"] {
        let of = |mark: &str| record("2026-02-20", &format!("found: [{{ mark: {mark}, {gone} }}]"));
        assert_eq!(laid(&with_letter, &excused.path, &[]).verdict(), "ready");
        let judged = laid(&with_letter, &excused.path, &[&of("EX-1")]);
        assert_eq!((judged.outcome("excused"), judged.verdict()), ("not-met", "not-ready"));
        assert_eq!(laid(&with_part, &jointed.path, &[]).verdict(), "ready");
        assert_eq!(laid(&with_part, &jointed.path, &[&of("BH-1")]).outcome("cutter"), "not-met");
    }
    let lost = record("2026-02-20", "found: [{ mark: EX-1, state: lost }]");
    assert_eq!(laid(&with_letter, &excused.path, &[&lost]).outcome("excused"), "not-met");
}

/// A record that names the broken rest of a lot that nobody listed, and then
/// the lot with a number.
#[test]
fn a_rest_that_a_recount_takes_away_leaves_the_other_tools_as_they_were() {
    let rule =
        made(&["id: pliers, title: P, carry: 2 pliers", "id: tire, title: T, carry: 1 tire"]);
    let found = record(
        "2026-02-20",
        "found:\n  - { mark: P (broken), kind: pliers, condition: broken }\n  \
         - { mark: P, kind: pliers, count: 2, condition: serviceable }",
    );
    let unlisted =
        laid(&vessel("5 ft").with(&["{ mark: TI-1, kind: tire }"]), &rule.path, &[&found]);
    assert_eq!(unlisted.verdict(), "ready");
    let listed = "{ mark: P, kind: pliers, count: 3, broken: 1 }";
    let tire = "{ mark: TI-1, kind: tire, condition: broken }";
    for kit in [[listed, tire], [tire, listed]] {
        let judged = laid(&vessel("5 ft").with(&kit), &rule.path, &[&found]);
        assert_eq!((judged.outcome("pliers"), judged.outcome("tire")), ("met", "not-met"));
    }
}

/// A record cannot name hooks and lines, so that one of the whole kit makes
/// no list of them complete.
#[test]
fn a_record_of_the_whole_kit_says_nothing_of_hooks_and_lines() {
    let rule = made(&[
        "id: hooks, title: H, every: hook, with: { type: circle }",
        "id: pliers, title: P, carry: 1 pliers",
        "id: cutters, title: C, carry: 1 line cutters, \
         with: { cuts-monofilament: at least the thickest line aboard }",
    ]);
    let partial = vessel("5 ft").set("covers", "listed things only").with(&[
        "{ mark: PL-1, kind: pliers }",
        "{ mark: MC-1, kind: line cutters, cuts-monofilament: 3 mm }",
    ]);
    let seen =
        "found: [{ mark: PL-1, condition: serviceable }, { mark: MC-1, condition: serviceable }]";
    let whole = record("2026-02-20", &format!("covers: whole kit\n{seen}"));
    for records in [&[][..], &[&whole][..]] {
        let judged = laid(&partial, &rule.path, records);
        let outcomes = ["hooks", "cutters"].map(|id| judged.outcome(id).to_owned());
        assert_eq!(outcomes, ["cannot-tell", "cannot-tell"]);
        assert_eq!((judged.outcome("pliers"), judged.verdict()), ("met", "cannot-tell"));
    }
    // Of what it can name it speaks as before.
    let without = record("2026-02-20", "covers: whole kit\nfound: []");
    assert_eq!(laid(&partial, &rule.path, &[&without]).outcome("pliers"), "not-met");
    let nothing = partial.lacking("PL-1");
    assert_eq!(laid(&nothing, &rule.path, &[]).outcome("pliers"), "cannot-tell");
    assert_eq!(laid(&nothing, &rule.path, &[&without]).outcome("pliers"), "not-met");
}

/// Every order of these.
fn orders<T: Clone>(all: &[T]) -> Vec<Vec<T>> {
    let Some((first, rest)) = all.split_first() else { return vec![Vec::new()] };
    let mut found = Vec::new();
    for order in orders(rest) {
        for at in 0..=order.len() {
            let mut with = order.clone();
            with.insert(at, first.clone());
            found.push(with);
        }
    }
    found
}

/// Records of one day answer alike whatever their files are called: where
/// they differ, nobody can tell.
#[test]
fn records_of_one_day_answer_by_no_file_name() {
    let rule = made(&["id: pliers, title: P, carry: 2 pliers, with: { overall: at least 10 in }"]);
    let lot = vessel("5 ft").with(&["{ mark: PL-1, kind: pliers, count: 2, overall: 11 in }"]);
    let found = |found: &str| format!("found: [{{ mark: PL-1, {found} }}]");
    let seen = found("condition: serviceable");
    let lengthened = found("overall: 9 in, mended: [{ what: lengthened, overall: 11 in }]");
    let whole = "covers: whole kit\nfound: []".to_owned();
    let cases: [(&[&String], &str); 15] = [
        (&[&seen, &seen], "met"),
        (&[&seen, &whole], "cannot-tell"),
        (&[&seen, &found("missing: yes")], "cannot-tell"),
        (&[&whole, &found("missing: yes")], "not-met"),
        (&[&found("count: 1"), &found("count: 3")], "cannot-tell"),
        (&[&found("count: 2"), &found("count: 3")], "met"),
        (&[&found("count: 0"), &found("count: 1")], "not-met"),
        (&[&found("count: 0"), &found("count: 2")], "cannot-tell"),
        (&[&found("expires: 2026-01-31"), &found("expires: 2027-01-31")], "cannot-tell"),
        (&[&found("expires: 2026-01-30"), &found("expires: 2026-01-31")], "not-met"),
        (&[&found("condition: broken"), &seen, &seen], "cannot-tell"),
        (&[&lengthened, &found("overall: 9 1/2 in")], "met"),
        (&[&found("overall: 9 in"), &found("overall: 9 1/2 in"), &seen], "not-met"),
        (&[&found("overall: 9 in"), &found("overall: 10 1/2 in"), &seen], "cannot-tell"),
        (&[&lengthened, &found("mended: [{ what: lengthened, overall: 9 in }]")], "cannot-tell"),
    ];
    for (lines, expected) in cases {
        let records: Vec<String> = lines.iter().map(|lines| record("2026-02-20", lines)).collect();
        for order in orders(&records.iter().collect::<Vec<_>>()) {
            let judged = laid(&lot, &rule.path, &order);
            assert_eq!(judged.outcome("pliers"), expected, "{lines:?}\n{}", judged.ran.page());
        }
    }
}

/// A dispute of one day ends with a later day's record.
#[test]
fn a_later_record_settles_what_one_day_disputed() {
    let rule = made(&["id: pliers, title: P, carry: 2 pliers"]);
    let lot = vessel("5 ft").with(&["{ mark: PL-1, kind: pliers, count: 2 }"]);
    let found = |on: &str, found: &str| record(on, &format!("found: [{{ mark: PL-1, {found} }}]"));
    let disputed =
        [found("2026-02-20", "count: 1"), found("2026-02-20", "count: 2, condition: serviceable")];
    let outcome = |found: Option<&String>| {
        let records: Vec<_> = disputed.iter().chain(found).collect();
        laid(&lot, &rule.path, &records).outcome("pliers").to_owned()
    };
    assert_eq!(outcome(None), "cannot-tell");
    assert_eq!(outcome(Some(&found("2026-02-21", "count: 2"))), "met");
    assert_eq!(outcome(Some(&found("2026-02-21", "count: 1"))), "not-met");
    assert_eq!(outcome(Some(&record("2026-02-21", "covers: whole kit\nfound: []"))), "not-met");
}
