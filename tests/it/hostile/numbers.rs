//! Figures, counts and days that are none, or that are at the end of what
//! can be reckoned.

use super::limits::held;
use super::refuse_live;
use super::table::{Case, DAY, GOOD, Kind, hold, read, refused, with};

const LENGTH: &str = "expected a length with its unit, like `6 ft 4 1/2 in` or `1.83 m`";

fn lengths() -> Vec<Case> {
    const NONE: &[&str] = &["vessel.yaml:9:14:", LENGTH];
    const NO_UNIT: &[&str] = &["vessel.yaml:9:14:", "unit", LENGTH];
    const GREAT: &[&str] = &["vessel.yaml:9:14:"];
    let overall = |text: &str| with("12 in", text);
    vec![
        refused("1e400 in", overall("1e400 in"), NONE),
        refused("1e3 in", overall("1e3 in"), NONE),
        refused("0x10", overall("0x10"), NO_UNIT),
        refused("0x10 in", overall("0x10 in"), NONE),
        refused("NaN", overall("NaN"), NONE),
        refused(".nan in", overall(".nan in"), NONE),
        refused("inf in", overall("inf in"), NONE),
        refused("1_000 in", overall("1_000 in"), NONE),
        refused("an Arabic digit", overall("٣ in"), NONE),
        refused("a wide digit", overall("３ in"), NONE),
        refused("a minus of Unicode", overall("−5 in"), GREAT),
        refused("a minus", overall("-5 in"), GREAT),
        refused("a division by nothing", overall("1/0 in"), NONE),
        refused("nothing by nothing", overall("0/0 in"), NONE),
        refused("999999999999 ft", overall("999999999999 ft"), GREAT),
        refused("the last nanometre and one more", overall("9223372036854775808 nm"), NONE),
        refused("9223372036854775807 m", overall("9223372036854775807 m"), GREAT),
        refused("a fraction of large numbers", overall("1/99999999999999999999 in"), NONE),
        read("a decimal comma", overall("1,5 m"), 1, &["NOT READY"]),
        refused(
            "a comma that could set thousands",
            overall("1,500 m"),
            &["vessel.yaml:9:14:", "a comma before three digits"],
        ),
        read(
            "a blank of no break, for what is not known",
            overall("\"\u{a0}\""),
            1,
            &["NOT READY"],
        ),
        read("a half by its sign", overall("12 ½ in"), 1, &["NOT READY"]),
        read("a half", overall("12 1/2 in"), 1, &["NOT READY"]),
        refused("no freeboard", with("3 ft\n", "0 ft\n"), &["vessel.yaml:3:12:", "`0 ft`"]),
        refused(
            "a negative freeboard",
            with("3 ft\n", "-3 ft\n"),
            &["vessel.yaml:3:12:", "`-3 ft`"],
        ),
        refused(
            "a freeboard of 10 000 m",
            with("3 ft\n", "10001 m\n"),
            &["vessel.yaml:3:12:", "`10001 m`"],
        ),
    ]
}

fn counts() -> Vec<Case> {
    const COUNT: &[&str] = &["vessel.yaml:9:12:", "expected a whole number from 1 to 1000"];
    let count = |text: &str| with("    overall", &format!("    count: {text}\n    overall"));
    vec![
        refused("none", count("0"), COUNT),
        refused("fewer than none", count("-1"), COUNT),
        refused("a minus of Unicode", count("−1"), COUNT),
        refused("2^32", count("4294967296"), COUNT),
        refused("2^32 and one", count("4294967297"), COUNT),
        refused("2^64", count("18446744073709551616"), COUNT),
        refused("forty digits", count(&"9".repeat(40)), COUNT),
        refused("a half", count("0.5"), COUNT),
        refused("1e2", count("1e2"), COUNT),
        refused("0x10", count("0x10"), COUNT),
        refused("0o17", count("0o17"), COUNT),
        refused("1_0", count("1_0"), COUNT),
        refused("+2", count("+2"), COUNT),
        refused("an Arabic digit", count("٣"), COUNT),
        refused("a thousand and one", count("1001"), COUNT),
        read("a thousand", count("1000"), 1, &["NOT READY"]),
    ]
}

fn days() -> Vec<Case> {
    const DAY_WANTED: &[&str] = &["vessel.yaml:9:14:", "like `2026-03-09`"];
    let expires = |text: &str| with("    overall", &format!("    expires: {text}\n    overall"));
    vec![
        refused("30 February", expires("2026-02-30"), DAY_WANTED),
        refused("29 February of a common year", expires("2025-02-29"), DAY_WANTED),
        read("29 February of a leap year", expires("2028-02-29"), 1, &["NOT READY"]),
        refused("29 February 1900", expires("1900-02-29"), DAY_WANTED),
        refused("the year 0000", expires("0000-01-01"), DAY_WANTED),
        refused("the year 10000", expires("10000-01-01"), DAY_WANTED),
        refused(
            "31 December 9999",
            expires("9999-12-31"),
            &[
                "vessel.yaml:9:14: no such day in the calendar: `9999-12-31`",
                "expected a day of the years 1900 to 2999",
            ],
        ),
        refused("the first day of 3000", expires("3000-01-01"), DAY_WANTED),
        read("the last day that is reckoned with", expires("2999-12-31"), 1, &["NOT READY"]),
        refused("month 13", expires("2026-13-01"), DAY_WANTED),
        refused("month 0", expires("2026-00-01"), DAY_WANTED),
        refused("an hour with it", expires("2026-03-02T10:00:00Z"), DAY_WANTED),
        refused("another order", expires("02/03/2026"), DAY_WANTED),
        refused("a day before the common era", expires("-0001-01-01"), DAY_WANTED),
        refused("Arabic digits", expires("٢٠٢٦-03-02"), DAY_WANTED),
        refused("a day of today", expires("today"), DAY_WANTED),
    ]
}

#[test]
fn lengths_that_are_none_are_refused() {
    hold("lengths", Kind::Vessel, lengths());
}

#[test]
fn counts_that_are_none_are_refused() {
    hold("counts", Kind::Vessel, counts());
}

#[test]
fn days_that_are_none_are_refused() {
    hold("days", Kind::Vessel, days());
}

/// The same on the command line, and trips to the end of the calendar.
#[test]
fn days_and_numbers_that_are_typed_are_held_to_the_same() {
    let folder = tempfile::tempdir().unwrap();
    let here = folder.path();
    std::fs::write(here.join("good.yaml"), GOOD).unwrap();
    let shop = std::path::Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("suppliers/port-ansel-chandlery.yaml");
    std::fs::copy(shop, here.join("shop.yaml")).unwrap();
    let quote = ["quote", "good.yaml", "--catalogue", "shop.yaml", "--ordered"];
    let cases: [(&[&str], i32, &str); 14] = [
        (&["check", "good.yaml", "--on", "2026-02-30"], 2, "2026-02-30"),
        (&["check", "good.yaml", "--on", "0000-01-01"], 2, "0000-01-01"),
        (&["check", "good.yaml", "--on", "10000-01-01"], 2, "10000-01-01"),
        (&["check", "good.yaml", "--on", "٢٠٢٦-03-02"], 2, "not readable as a day"),
        (
            &["check", "good.yaml", "--on", DAY, "--return", "9999-12-31"],
            2,
            "expected a day of the years 1900 to 2999",
        ),
        (&["check", "good.yaml", "--on", DAY, "--return", "2999-12-31"], 1, "NOT READY"),
        (
            &[
                "check",
                "good.yaml",
                "--on",
                "2999-12-31",
                "--return",
                "2999-12-31",
                "--format",
                "html",
            ],
            1,
            "2999",
        ),
        (&["check", "good.yaml", "--on", "1900-01-01"], 1, "1900-01-01"),
        (&["check", "good.yaml", "--on", DAY, "--return", "2026-03-01"], 2, "2026-03-01"),
        (&["audit", "good.yaml", "--date", "2999-12-31"], 1, "AUDIT"),
        (&["audit", "good.yaml", "--threads", "0"], 2, "1..=256"),
        (&["audit", "good.yaml", "--threads", "65537"], 2, "1..=256"),
        (&[&quote[..], &["2999-12-31"]].concat(), 1, "2999-12-31"),
        (&[&quote[..], &[DAY, "--time-limit", "18446744073709551616"]].concat(), 2, "--time-limit"),
    ];
    for (typed, status, said) in cases {
        let held = held(here, typed);
        assert_eq!(held.ran.status, status, "{typed:?}: {}", held.said());
        assert!(held.said().contains(said), "{typed:?}: {}", held.said());
        refuse_live("typed", &held.ran).unwrap();
    }
}
