//! The vessel's own hooks under 635.21 until 28 November 2024: kinds, sizes,
//! offsets, numbers, areas, gear and months. Lengths stand with the rows of
//! lengths.

use crate::outfit::vessel;

const ATLANTIC: &str = "us-atlantic-longline-2009";
const IN_2024: &str = "2024-03-04";

/// The outcome of a requirement for hooks like these on one trip.
fn hooks(requirement: &str, hook: &str, gear: &str, areas: &str, day: &str) -> String {
    let rest = "outer-diameter: 56 mm, gap: 25 mm, hook-length: 40 mm";
    let judged = vessel("5 ft")
        .set("hooks", &format!("[{{ name: hooks, {hook}, {rest} }}]"))
        .set("gear", &format!("[{gear}]"))
        .set("areas", &format!("[{areas}]"))
        .under(ATLANTIC, day);
    judged.outcome(requirement).to_owned()
}

const GOOD: &str = "type: circle, size: 18/0, offset: 0 degrees, wire: 3 mm, round-wire: yes";

/// 635.21(b)(4) (read): only corrodible hooks on board.
///
/// Pins: us-atlantic-longline-2009/corrodible-hooks: asked for; hook corrodible yes
#[test]
fn a_hook_that_does_not_corrode_is_outside_the_rule() {
    for (corrodes, expected) in [("yes", "met"), ("no", "not-met")] {
        let hook = format!("{GOOD}, corrodible: {corrodes}");
        let outcome = hooks("corrodible-hooks", &hook, "pelagic-longline", "atlantic", IN_2024);
        assert_eq!(outcome, expected, "{corrodes}");
    }
}

/// 635.21(c)(5)(iii)(C) (read): circle hooks, 16/0 or larger without offset, or
/// 18/0 or larger with at most 10 degrees; with green-stick gear up to 20 J
/// hooks, (C)(4) (read). Outside the Northeast Distant area, with a pelagic
/// longline.
///
/// Pins: us-atlantic-longline-2009/circle-hooks: asked for
/// Pins: us-atlantic-longline-2009/circle-hooks: hook type circle; hook type j
/// Pins: us-atlantic-longline-2009/circle-hooks: hook size 16/0; hook size 17/0; hook size 18/0
/// Pins: us-atlantic-longline-2009/circle-hooks: hook offset 0 degrees; hook offset 10 degrees
/// Pins: us-atlantic-longline-2009/circle-hooks: hook number 20; hook when gear green-stick
/// Pins: us-atlantic-longline-2009/circle-hooks: when gear pelagic-longline; when area other than northeast-distant
#[test]
fn circle_hooks_are_of_16_without_offset_or_of_18_with_10_degrees() {
    let pelagic = "pelagic-longline";
    let circle = |kind: &str, size: &str, offset: &str| {
        let hook = format!("type: {kind}, size: {size}, offset: {offset} degrees");
        hooks("circle-hooks", &hook, pelagic, "atlantic", IN_2024)
    };
    for (size, offset, expected) in [
        ("15/0", "0", "not-met"),
        ("16/0", "0", "met"),
        ("16/0", "1", "not-met"),
        ("17/0", "0", "met"),
        ("17/0", "1", "not-met"),
        ("18/0", "10", "met"),
        ("18/0", "11", "not-met"),
        ("19/0", "10", "met"),
        ("19/0", "11", "not-met"),
    ] {
        assert_eq!(circle("circle", size, offset), expected, "{size} {offset}");
        assert_eq!(circle("j", size, offset), "not-met", "a J hook of {size}");
    }
    let j_hooks = |number: &str, gear: &str| {
        hooks("circle-hooks", &format!("type: j, number: {number}"), gear, "atlantic", IN_2024)
    };
    assert_eq!(j_hooks("20", "pelagic-longline, green-stick"), "met");
    assert_eq!(j_hooks("21", "pelagic-longline, green-stick"), "not-met");
    assert_eq!(j_hooks("20", pelagic), "not-met");
    let where_bound = |gear: &str, areas: &str| hooks("circle-hooks", GOOD, gear, areas, IN_2024);
    assert_eq!(where_bound(pelagic, "northeast-distant"), "unbound");
    assert_eq!(where_bound(pelagic, "northeast-distant, atlantic"), "met");
    assert_eq!(where_bound("bottom-longline", "atlantic"), "unbound");
}

/// 635.21(c)(2)(iv), before 2020 (c)(2)(vii) (read): only 18/0 or larger, at
/// most 10 degrees, in the Northeast Distant area.
///
/// Pins: us-atlantic-longline-2009/northeast-distant-hooks: asked for; hook type circle
/// Pins: us-atlantic-longline-2009/northeast-distant-hooks: hook size 18/0; hook offset 10 degrees
/// Pins: us-atlantic-longline-2009/northeast-distant-hooks: when gear pelagic-longline; when area northeast-distant
#[test]
fn the_northeast_distant_area_wants_18_and_larger() {
    let with = |hook: &str, gear: &str, areas: &str| {
        hooks("northeast-distant-hooks", hook, gear, areas, IN_2024)
    };
    for (kind, size, offset, expected) in [
        ("circle", "17/0", "0", "not-met"),
        ("circle", "18/0", "0", "met"),
        ("circle", "18/0", "10", "met"),
        ("circle", "18/0", "11", "not-met"),
        ("circle", "20/0", "10", "met"),
        ("j", "18/0", "0", "not-met"),
    ] {
        let hook = format!("type: {kind}, size: {size}, offset: {offset} degrees");
        let outcome = with(&hook, "pelagic-longline", "northeast-distant");
        assert_eq!(outcome, expected, "{hook}");
    }
    assert_eq!(with(GOOD, "pelagic-longline", "atlantic"), "unbound");
    assert_eq!(with(GOOD, "bottom-longline", "northeast-distant"), "unbound");
}

/// 635.21(c)(5)(iii)(C)(3), before 2020 (iii)(B) (read): round corrodible wire
/// of at most 3.65 mm in the Gulf of Mexico; all year until the 2020 rule, in
/// January to June since. From which day of 2020 is not verified (inferred).
///
/// Pins: us-atlantic-longline-2009/gulf-hook-wire-all-year: asked for; until 2020-06-30
/// Pins: us-atlantic-longline-2009/gulf-hook-wire-all-year: when gear pelagic-longline; when area gulf-of-mexico
/// Pins: us-atlantic-longline-2009/gulf-hook-wire-all-year: hook round-wire yes; hook corrodible yes
/// Pins: us-atlantic-longline-2009/gulf-hook-wire-all-year: hook type j; hook when gear green-stick
/// Pins: us-atlantic-longline-2009/gulf-hook-wire-2020: asked for; from 2020-07-01; until 2020-12-31
/// Pins: us-atlantic-longline-2009/gulf-hook-wire-2020: when gear pelagic-longline; when area gulf-of-mexico
/// Pins: us-atlantic-longline-2009/gulf-hook-wire-2020: hook wire 3.65 mm; hook round-wire yes; hook corrodible yes
/// Pins: us-atlantic-longline-2009/gulf-hook-wire: asked for; from 2020-07-01; when months 1 to 6
/// Pins: us-atlantic-longline-2009/gulf-hook-wire: when gear pelagic-longline; when area gulf-of-mexico
/// Pins: us-atlantic-longline-2009/gulf-hook-wire: hook round-wire yes; hook corrodible yes
/// Pins: us-atlantic-longline-2009/gulf-hook-wire: hook type j; hook when gear green-stick
#[test]
fn the_wire_of_hooks_in_the_gulf_of_mexico_by_day_area_and_gear() {
    const ALL: [&str; 3] = ["gulf-hook-wire-all-year", "gulf-hook-wire-2020", "gulf-hook-wire"];
    let thin = format!("{GOOD}, corrodible: yes");
    let outcomes = |hook: &str, gear: &str, area: &str, day: &str| {
        ALL.map(|requirement| hooks(requirement, hook, gear, area, day))
    };
    let (gulf, pelagic, none) = ("gulf-of-mexico", "pelagic-longline", "unbound");
    // Which of the three binds on which day.
    for (day, expected) in [
        ("2019-12-31", ["met", none, none]),
        ("2020-06-30", ["met", none, none]),
        ("2020-07-01", [none, "met", none]),
        ("2020-12-31", [none, "met", none]),
        ("2021-01-01", [none, none, "met"]),
        ("2021-06-30", [none, none, "met"]),
        ("2021-07-01", [none, none, none]),
        ("2021-12-31", [none, none, none]),
        ("2022-01-01", [none, none, "met"]),
    ] {
        assert_eq!(outcomes(&thin, pelagic, gulf, day), expected, "{day}");
        assert_eq!(outcomes(&thin, pelagic, "atlantic", day), [none; 3], "{day}");
        assert_eq!(outcomes(&thin, "bottom-longline", gulf, day), [none; 3], "{day}");
    }
    // What fails, and what nobody can tell in the second half of 2020.
    let beyond = ["2019-10-07", "2020-10-05", "2021-03-01"];
    for (from, to) in [
        ("wire: 3 mm", "wire: 3.650001 mm"),
        ("round-wire: yes", "round-wire: no"),
        ("corrodible: yes", "corrodible: no"),
    ] {
        let hook = thin.replace(from, to);
        assert_ne!(hook, thin);
        for ((at, day), expected) in
            beyond.iter().enumerate().zip(["not-met", "cannot-tell", "not-met"])
        {
            assert_eq!(outcomes(&hook, pelagic, gulf, day)[at], expected, "{to} on {day}");
        }
    }
    let exact = thin.replace("wire: 3 mm", "wire: 3.65 mm");
    assert_eq!(outcomes(&exact, pelagic, gulf, "2020-10-05")[1], "met");
    // J hooks for green-stick gear: whether the limit reaches them is disputed.
    let j_hook = "type: j, number: 20, wire: 4 mm, round-wire: yes, corrodible: yes";
    for (at, day) in [(0, "2019-10-07"), (2, "2021-03-01")] {
        let green = outcomes(j_hook, "pelagic-longline, green-stick", gulf, day);
        assert_eq!(green[at], "cannot-tell", "{day}");
        assert_eq!(outcomes(j_hook, pelagic, gulf, day)[at], "not-met", "{day}");
        let circle = j_hook.replace("type: j, number: 20", "type: circle, size: 18/0");
        let green = outcomes(&circle, "pelagic-longline, green-stick", gulf, day);
        assert_eq!(green[at], "not-met", "{day}");
    }
}
