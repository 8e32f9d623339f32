//! Phrases that limit a quantity: `bounds.yaml`, `own-gear.yaml`, and a limit
//! on the result in `trailing-line/`.

use super::{by, outcomes, profile};
use crate::outfit::{DAY, just_over, just_under, vessel};
use crate::run;

const BOUNDS: &str = "bounds.yaml";

/// Asserts the outcome of a requirement for figures at freeboards.
fn turns(requirement: &str, kind: &str, key: &str, cases: &[(&str, &str, &str)]) {
    for (freeboard, figure, expected) in cases {
        let tool = format!("{{ mark: T-1, kind: {kind}, {key}: {figure} }}");
        let judged = by(BOUNDS, &vessel(freeboard).with(&[tool]));
        assert_eq!(
            judged.outcome(requirement),
            *expected,
            "{requirement} at {freeboard}: {figure}"
        );
    }
}

/// By how many nanometres a figure misses at 5 ft.
fn missed_by(requirement: &str, kind: &str, key: &str, figure: &str) -> Option<i64> {
    let tool = format!("{{ mark: T-1, kind: {kind}, {key}: {figure} }}");
    let judged = by(BOUNDS, &vessel("5 ft").with(&[tool]));
    judged.finding(requirement)["reasons"][0]["by"]["nanometres"].as_i64()
}

#[test]
fn by_how_much_a_figure_misses_is_told_to_the_nanometre() {
    let foot = Some(304_800_000);
    let cutter = "long-handled line cutter";
    assert_eq!(missed_by("lesser", cutter, "handle", "5 ft"), foot);
    assert_eq!(missed_by("nested", "dip net", "handle", "6 ft 6 in"), foot);
    let net = "collapsible hoop net";
    assert_eq!(missed_by("span", net, "rope-length", "4 ft"), foot);
    assert_eq!(missed_by("span", net, "rope-length", "11 ft"), foot);
    assert_eq!(missed_by("span", net, "rope-length", &just_over("10 ft")), Some(1));
    assert_eq!(missed_by("span", net, "rope-length", "7 ft"), None);
}

#[test]
fn the_lesser_of_two_bounds_governs() {
    turns(
        "lesser",
        "long-handled line cutter",
        "handle",
        &[
            ("3 ft", "4 ft 6 in", "met"),
            ("3 ft", &just_under("4 ft 6 in"), "not-met"),
            ("5 ft", "6 ft", "met"),
            ("5 ft", &just_under("6 ft"), "not-met"),
        ],
    );
}

#[test]
fn a_bound_inside_a_bound_is_worked_out_from_within() {
    turns(
        "nested",
        "dip net",
        "handle",
        &[
            ("3 ft", "6 ft", "met"),
            ("3 ft", &just_under("6 ft"), "not-met"),
            ("5 ft", "7 ft 6 in", "met"),
            ("5 ft", &just_under("7 ft 6 in"), "not-met"),
            ("8 ft", "10 ft", "met"),
            ("8 ft", &just_under("10 ft"), "not-met"),
        ],
    );
}

#[test]
fn a_greatest_length_is_worst_at_the_lowest_freeboard() {
    turns(
        "most",
        "control tether on a pole",
        "pole",
        &[
            ("4 ft", "8 ft", "met"),
            ("4 ft", &just_over("8 ft"), "not-met"),
            ("3 ft to 4 ft", "6 ft", "met"),
            ("3 ft to 4 ft", &just_over("6 ft"), "not-met"),
        ],
    );
    let tool = "{ mark: T-1, kind: control tether on a pole, pole: 9 ft }";
    let judged = by(BOUNDS, &vessel("3 ft to 5 ft").with(&[tool]));
    let worst = &judged.finding("most")["freeboard"]["nanometres"];
    assert_eq!(worst, 914_400_000, "{worst}");
}

#[test]
fn a_range_may_move_with_the_freeboard() {
    turns(
        "span",
        "collapsible hoop net",
        "rope-length",
        &[
            ("5 ft", "5 ft", "met"),
            ("5 ft", &just_under("5 ft"), "not-met"),
            ("5 ft", "10 ft", "met"),
            ("5 ft", &just_over("10 ft"), "not-met"),
            ("3 ft", "10 ft", "not-met"),
        ],
    );
}

#[test]
fn more_than_and_less_than_leave_the_figure_itself_out() {
    turns(
        "above",
        "pliers",
        "overall",
        &[("5 ft", "6 in", "not-met"), ("5 ft", &just_over("6 in"), "met")],
    );
    turns(
        "below",
        "bolt cutters",
        "overall",
        &[("5 ft", "20 in", "not-met"), ("5 ft", &just_under("20 in"), "met")],
    );
}

#[test]
fn what_is_asked_may_lie_between_what_the_tape_can_mean() {
    let coupling = |size: &str| {
        let size = format!("{{ value: {size}, error: 1 mm }}");
        let tool = "{ mark: T-1, kind: PVC splice coupling, schedule: 40, nominal-size: ";
        by(BOUNDS, &vessel("5 ft").with(&[format!("{tool}{size} }}")])).outcome("exact").to_owned()
    };
    assert_eq!(coupling("25.4 mm"), "cannot-tell");
    // Neither what it shows nor either end of the error is an inch.
    assert_eq!(coupling("25.3 mm"), "cannot-tell");
    assert_eq!(coupling("26.4 mm"), "cannot-tell");
    assert_eq!(coupling("26.400001 mm"), "not-met");
    assert_eq!(coupling("24.399999 mm"), "not-met");
}

#[test]
fn exactly_and_a_count_are_compared_as_such() {
    let coupling = |size: &str, schedule: &str| {
        format!(
            "{{ mark: T-1, kind: PVC splice coupling, nominal-size: {size}, schedule: {schedule} }}"
        )
    };
    outcomes(
        BOUNDS,
        "exact",
        &[
            (&coupling("1 in", "40"), "met"),
            (&coupling("25.4 mm", "80"), "met"),
            (&coupling(&just_over("1 in"), "40"), "not-met"),
            (&coupling("2.5 cm", "40"), "not-met"),
            (&coupling("1 in", "39"), "not-met"),
        ],
    );
}

#[test]
fn any_length_asks_that_there_is_one() {
    outcomes(
        BOUNDS,
        "any",
        &[
            ("{ mark: T-1, kind: boat hook, handle: 1 in }", "met"),
            ("{ mark: T-1, kind: boat hook }", "cannot-tell"),
        ],
    );
}

#[test]
fn a_mass_is_compared_across_units() {
    let hoist = |carries: &str| format!("{{ mark: T-1, kind: small hoist, carries: {carries} }}");
    outcomes(
        BOUNDS,
        "load",
        &[
            (&hoist("100 lb"), "met"),
            (&hoist("45.4 kg"), "met"),
            (&hoist("45.3 kg"), "not-met"),
            (&hoist("99 lb"), "not-met"),
        ],
    );
}

#[test]
fn about_is_met_within_its_margin_and_never_not_met() {
    turns(
        "about",
        "monofilament line cutters",
        "overall",
        &[
            ("5 ft", "7 in", "met"),
            ("5 ft", "8 in", "met"),
            ("5 ft", &just_under("7 in"), "cannot-tell"),
            ("5 ft", &just_over("8 in"), "cannot-tell"),
            ("5 ft", "1 in", "cannot-tell"),
        ],
    );
    turns(
        "about-range",
        "short-handled dehooker for external hooks",
        "shaft",
        &[
            ("5 ft", "15 in", "met"),
            ("5 ft", "25 in", "met"),
            ("5 ft", &just_under("15 in"), "cannot-tell"),
            ("5 ft", &just_over("25 in"), "cannot-tell"),
        ],
    );
}

const OWN: &str = "own-gear.yaml";
const CUTTERS: &str = "{ mark: T-1, kind: bolt cutters, cuts-hook: 6 mm }";

#[test]
fn bolt_cutters_are_held_against_the_heaviest_hook_aboard() {
    let hooks = |list: &str| by(OWN, &vessel("5 ft").set("hooks", list).with(&[CUTTERS]));
    let heavy =
        |wire: &str| format!("[{{ name: light, wire: 2 mm }}, {{ name: heavy, wire: {wire} }}]");
    assert_eq!(hooks(&heavy("5 mm")).outcome("cuts-hook"), "met");
    assert_eq!(hooks(&heavy("5.000001 mm")).outcome("cuts-hook"), "not-met");
    let unmeasured = hooks("[{ name: light, wire: 2 mm }, { name: heavy }]");
    assert_eq!(unmeasured.outcome("cuts-hook"), "cannot-tell");
    let unsaid = by(OWN, &vessel("5 ft").unsaid("hooks").with(&[CUTTERS]));
    assert_eq!(unsaid.outcome("cuts-hook"), "cannot-tell");
    assert_eq!(unsaid.finding("cuts-hook")["reasons"][0]["fact"], "hooks");
}

#[test]
fn a_line_cutter_is_held_against_the_thickest_line_aboard() {
    let tool = "{ mark: T-1, kind: long-handled line cutter, cuts-monofilament: 2.1 mm }";
    let lines = |list: &str| {
        by(OWN, &vessel("5 ft").set("lines", list).with(&[tool])).outcome("cuts-line").to_owned()
    };
    assert_eq!(lines("[{ name: leader, diameter: 2.1 mm }]"), "met");
    assert_eq!(
        lines("[{ name: leader, diameter: 2 mm }, { name: mainline, diameter: 2.2 mm }]"),
        "not-met"
    );
    assert_eq!(lines("[{ name: leader }]"), "cannot-tell");
}

/// The heaviest hook is at least as heavy as the one that is known, whatever
/// the others are.
#[test]
fn a_known_hook_too_heavy_for_the_cutters_settles_it_though_another_is_not_measured() {
    let hooks = |list: &str| by(OWN, &vessel("5 ft").set("hooks", list).with(&[CUTTERS]));
    let known = |wire: &str| format!("[{{ name: known, wire: {wire} }}, {{ name: other }}]");
    let too_heavy = hooks(&known("5.000001 mm"));
    assert_eq!(too_heavy.outcome("cuts-hook"), "not-met");
    let reason = &too_heavy.finding("cuts-hook")["reasons"][0];
    assert_eq!(reason["code"], "out-of-specification", "{reason}");
    assert!(reason.to_string().contains("6000002"), "{reason}");
    assert_eq!(hooks(&known("5 mm")).outcome("cuts-hook"), "cannot-tell");
    assert_eq!(hooks("[{ name: a }, { name: b }]").outcome("cuts-hook"), "cannot-tell");
    let disputed = "[{ name: known, wire: [{ value: 5 mm }, { value: 7 mm }] }, { name: other }]";
    assert_eq!(hooks(disputed).outcome("cuts-hook"), "cannot-tell");
}

#[test]
fn a_known_line_too_thick_for_the_cutter_settles_it_though_another_is_not_measured() {
    let tool = "{ mark: T-1, kind: long-handled line cutter, cuts-monofilament: 2.1 mm }";
    let lines = |diameter: &str| {
        let list = format!("[{{ name: leader, diameter: {diameter} }}, {{ name: mainline }}]");
        by(OWN, &vessel("5 ft").set("lines", &list).with(&[tool])).outcome("cuts-line").to_owned()
    };
    assert_eq!(lines("2.100001 mm"), "not-met");
    assert_eq!(lines("2.1 mm"), "cannot-tell");
}

/// What a figure misses a limit by is told to the nanometre, and the limit is
/// told by the bound that counts.
#[test]
fn by_how_much_a_limit_without_its_end_is_missed() {
    let reason = |requirement: &str, tool: &str| {
        let judged = super::kit("bounds.yaml", &[tool]);
        judged.finding(requirement)["reasons"][0].clone()
    };
    let below = reason("below", "{ mark: T-1, kind: bolt cutters, overall: 20 in }");
    assert_eq!(below["by"]["nanometres"], 1, "{below}");
    let below = reason("below", "{ mark: T-1, kind: bolt cutters, overall: 21 in }");
    assert_eq!(below["by"]["nanometres"], 25_400_001, "{below}");
    let above = reason("above", "{ mark: T-1, kind: pliers, overall: 6 in }");
    assert_eq!(above["by"]["nanometres"], 1, "{above}");
    let above = reason("above", "{ mark: T-1, kind: pliers, overall: 2 in }");
    assert_eq!(above["by"]["nanometres"], 4 * 25_400_000 + 1, "{above}");
    let most = reason("most", "{ mark: T-1, kind: control tether on a pole, pole: 13 ft }");
    assert_eq!(most["by"]["nanometres"], 3 * 304_800_000, "{most}");
    let handle = "{ mark: T-1, kind: long-handled line cutter, handle: 1 ft }";
    for (freeboard, least) in [("5 ft", 72_i64), ("4 ft", 72), ("3 ft", 54)] {
        let judged = by("bounds.yaml", &vessel(freeboard).with(&[handle]));
        let reason = &judged.finding("lesser")["reasons"][0];
        let demanded = &reason["demand"]["least"]["nanometres"];
        assert_eq!(*demanded, least * 25_400_000, "{freeboard}: {reason}");
    }
}

/// What the way to ready would bring meets every kind of limit.
#[test]
fn what_is_brought_for_a_limit_keeps_it() {
    let mut library = crate::kit::library();
    let path = super::profile("bounds.yaml");
    let profile = library.add_file(std::path::Path::new(&path)).unwrap();
    for requirement in &profile.requirements {
        let kind = &library.vocabulary.kind(requirement.kinds()[0]).id;
        let wanted = crate::kit::Wanted { requirement: &requirement.id, kind };
        let vessel = crate::kit::made_for(&profile, &library.vocabulary, "5 ft", wanted);
        let outcome = crate::kit::outcome(&library, &vessel, "5 ft", &profile.id, &requirement.id);
        assert_eq!(outcome, "met", "{}", requirement.id);
    }
}

/// A leader that is one for certain settles it; a line that may be a leader,
/// or is not one, does not.
#[test]
fn a_known_leader_too_thick_for_the_cutter_settles_it_though_another_is_not_measured() {
    let tool = "{ mark: T-1, kind: monofilament line cutters, cuts-monofilament: 2.1 mm }";
    let judged = |lines: &str| {
        let list = format!("[{lines}, {{ name: other, part: leader }}]");
        by(OWN, &vessel("5 ft").set("lines", &list).with(&[tool]))
    };
    let outcome = |lines: &str| judged(lines).outcome("cuts-leader").to_owned();
    assert_eq!(outcome("{ name: known, part: leader, diameter: 2.1 mm }"), "cannot-tell");
    assert_eq!(outcome("{ name: known, diameter: 2.100001 mm }"), "cannot-tell");
    assert_eq!(outcome("{ name: known, part: mainline, diameter: 3 mm }"), "cannot-tell");
    let thick = judged("{ name: known, part: leader, diameter: 2.100001 mm }");
    assert_eq!(thick.outcome("cuts-leader"), "not-met");
    let reason = &thick.finding("cuts-leader")["reasons"][0];
    assert_eq!(reason["demand"]["least"]["nanometres"], 2_100_001, "{reason}");
}

#[test]
fn every_hook_aboard_must_fit_one_of_the_alternatives() {
    let judged = |hooks: &str, gear: &str| {
        let vessel =
            vessel("5 ft").set("hooks", &format!("[{hooks}]")).set("gear", &format!("[{gear}]"));
        by(OWN, &vessel).outcome("hooks").to_owned()
    };
    let circle = "{ name: circles, type: circle, size: 16/0, offset: 10 degrees }";
    let j = "{ name: js, type: j, number: 20 }";
    let cases = [
        (circle, "pelagic-longline", "met"),
        ("{ name: c, type: circle, size: 18/0, offset: 0 degrees }", "pelagic-longline", "met"),
        ("{ name: c, type: circle, size: 15/0, offset: 0 degrees }", "pelagic-longline", "not-met"),
        (
            "{ name: c, type: circle, size: 16/0, offset: 10.1 degrees }",
            "pelagic-longline",
            "not-met",
        ),
        ("{ name: c, type: circle, offset: 0 degrees }", "pelagic-longline", "cannot-tell"),
        (j, "pelagic-longline", "not-met"),
        (j, "green-stick", "met"),
        ("{ name: js, type: j, number: 21 }", "green-stick", "not-met"),
    ];
    for (hooks, gear, expected) in cases {
        assert_eq!(judged(hooks, gear), expected, "{hooks} with {gear}");
    }
    assert_eq!(judged(&format!("{circle}, {j}"), "pelagic-longline"), "not-met");
    let unknown = by(OWN, &vessel("5 ft").unsaid("gear").set("hooks", &format!("[{j}]")));
    assert_eq!(unknown.outcome("hooks"), "cannot-tell");
}

#[test]
fn every_line_aboard_must_be_thin_enough() {
    let lines =
        |list: &str| by(OWN, &vessel("5 ft").set("lines", list)).outcome("lines").to_owned();
    assert_eq!(lines("[{ name: a, diameter: 3 mm }]"), "met");
    assert_eq!(lines("[{ name: a, diameter: 2 mm }, { name: b, diameter: 3.1 mm }]"), "not-met");
    assert_eq!(by(OWN, &vessel("5 ft").unsaid("lines")).outcome("lines"), "cannot-tell");
}

/// The shipped vocabulary with one more attribute of the line cutter.
fn vocabulary_of_trailing_line() -> String {
    let shipped =
        std::fs::read_to_string(run::home().join("requirements/vocabulary.yaml")).unwrap();
    let own = "\nattributes:\n  leaves-line: { name: line that it leaves, quantity: length, measure: from the hook to the cut }\n";
    let with_attribute = shipped.replacen("\nattributes:\n", own, 1);
    let cutter = "class: tool\n    attributes: [handle, reach, overall, cuts-monofilament,";
    let text = with_attribute.replacen(cutter, &format!("{cutter} leaves-line,"), 1);
    assert_eq!(text.matches("leaves-line").count(), 2);
    text
}

#[test]
fn a_limit_on_the_result_needs_only_a_word_in_the_vocabulary() {
    let folder = tempfile::tempdir().unwrap();
    run::write(folder.path(), "vocabulary.yaml", &vocabulary_of_trailing_line());
    let own = std::fs::read_to_string(profile("trailing-line/profile.yaml")).unwrap();
    run::write(folder.path(), "trailing-line.yaml", &own);
    let folder = folder.path().to_string_lossy().to_string();
    let leaving = |line: &str| {
        let tool = format!("{{ mark: T-1, kind: long-handled line cutter{line} }}");
        let arguments = ["--requirements", &folder, "--profile", "test-trailing-line", "--on", DAY];
        vessel("5 ft").with(&[tool]).check(&arguments).outcome("cutter").to_owned()
    };
    assert_eq!(leaving(", leaves-line: 1 ft"), "met");
    assert_eq!(leaving(&format!(", leaves-line: {}", just_over("1 ft"))), "not-met");
    assert_eq!(leaving(""), "cannot-tell");
}
