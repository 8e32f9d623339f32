//! Every length rule of every shipped profile one nanometre under, at and
//! one over, and at the nearest 1/16 in and millimetre, through the real
//! command.
//!
//! The figures below were written from the rules' texts, not from the
//! profiles: 50 CFR part 622 Appendix F as in force since the 2019 rules,
//! and 50 CFR 635.21(c)(5)(i) until 28 November 2024. Where a text rounds a
//! customary figure in a metric bracket, the customary figure governs.

use crate::kit::{self, DAY, Wanted, exact};
use crate::run;
use kitmuster::measure::Length;
use kitmuster::measure::{Figure, Quantity, Rounding, System};
use kitmuster::model::vessel::{Datum, Reading};

/// What a rule asks of one figure, and what the finding is beyond it.
enum Rule {
    /// At least.
    Least(&'static str),
    /// At most.
    Most(&'static str),
    /// From, to.
    Range(&'static str, &'static str),
    /// Nothing but this; beyond it not met.
    Exactly(&'static str),
    /// At least, or exactly: above it the wording can be read two ways.
    LeastOrExactly(&'static str),
    /// About, from low to high widened by a margin of the profile's own:
    /// beyond it nobody can tell.
    About(&'static str, &'static str, &'static str),
}
use Rule::{About, Exactly, Least, LeastOrExactly, Most, Range};

struct Row {
    profile: &'static str,
    clause: &'static str,
    requirement: &'static str,
    kind: &'static str,
    attribute: &'static str,
    /// At which freeboard.
    freeboard: &'static str,
    rule: Rule,
    /// The size by which one member of a set is told from the others.
    member: usize,
}

const GULF: &str = "us-gulf-reef-fish-2019";
const OLD_GULF: &str = "us-gulf-reef-fish-before-2019";
const SOUTH: &str = "us-south-atlantic-snapper-grouper-2019";
const ATLANTIC: &str = "us-atlantic-longline-2009";
const DOLPHIN: &str = "us-dolphin-wahoo-longline-2009";
const HOUSE: &str = "good-practice-longline";

const fn row(
    profile: &'static str,
    clause: &'static str,
    requirement: &'static str,
    kind: &'static str,
    attribute: &'static str,
    freeboard: &'static str,
    rule: Rule,
) -> Row {
    Row { profile, clause, requirement, kind, attribute, freeboard, rule, member: 0 }
}

const fn member(number: usize, mut row: Row) -> Row {
    row.member = number;
    row
}

/// The reach rules, at freeboards where each limb binds, with the figures of
/// the worked cases (150 % of freeboard or 6 ft; freeboard or 6 ft).
fn reach_rows() -> Vec<Row> {
    let mut rows = Vec::new();
    for profile in [GULF, SOUTH] {
        for (freeboard, full, single) in [
            ("4 ft 0 1/16 in", "6 ft 0 3/32 in", "6 ft"),
            ("4 ft 1 in", "6 ft 1 1/2 in", "6 ft"),
            ("4 ft 3 in", "6 ft 4 1/2 in", "6 ft"),
            ("5 ft", "7 ft 6 in", "6 ft"),
            ("6 ft 1 in", "9 ft 1 1/2 in", "6 ft 1 in"),
            ("1.22 m", "1.83 m", "1.8288 m"),
            ("2 m", "3 m", "2 m"),
        ] {
            rows.push(row(
                profile,
                "F A.1",
                "long-line-cutter",
                "long-line-cutter",
                "handle",
                freeboard,
                Least(full),
            ));
            rows.push(row(
                profile,
                "F A.2",
                "long-dehooker-internal",
                "long-dehooker-internal",
                "handle",
                freeboard,
                Least(full),
            ));
            rows.push(row(
                profile,
                "F A.3",
                "long-dehooker-external",
                "long-dehooker-external",
                "handle",
                freeboard,
                Least(single),
            ));
            rows.push(row(
                profile,
                "F A.4",
                "inverted-v-device",
                "inverted-v-device",
                "handle",
                freeboard,
                Least(single),
            ));
        }
        for (freeboard, full) in
            [("3 ft", "6 ft"), ("4 ft", "6 ft"), ("1.21 m", "1.8288 m"), ("5 ft", "7 ft 6 in")]
        {
            rows.push(row(profile, "F A.5(a)", "net", "dip-net", "handle", freeboard, Least(full)));
            rows.push(row(
                profile,
                "F A.5(b)",
                "net",
                "hoop-net",
                "rope-length",
                freeboard,
                Least(full),
            ));
            rows.push(row(
                profile,
                "F A.5(c)",
                "net",
                "hoist",
                "rope-length",
                freeboard,
                Least(full),
            ));
        }
    }
    for profile in [ATLANTIC, DOLPHIN] {
        // 635.21 has no threshold of freeboard.
        for (freeboard, full, single) in [
            ("3 ft", "6 ft", "6 ft"),
            ("4 ft", "6 ft", "6 ft"),
            ("4 ft 1 in", "6 ft 1 1/2 in", "6 ft"),
            ("6 ft 1 in", "9 ft 1 1/2 in", "6 ft 1 in"),
        ] {
            rows.push(row(
                profile,
                "(A)",
                "long-line-cutter",
                "long-line-cutter",
                "handle",
                freeboard,
                Least(full),
            ));
            rows.push(row(
                profile,
                "(B)",
                "long-dehooker-internal",
                "long-dehooker-internal",
                "handle",
                freeboard,
                Least(full),
            ));
            rows.push(row(
                profile,
                "(C)",
                "long-dehooker-external",
                "long-dehooker-external",
                "handle",
                freeboard,
                Least(single),
            ));
            rows.push(row(
                profile,
                "(D)",
                "inverted-v-device",
                "inverted-v-device",
                "handle",
                freeboard,
                Least(single),
            ));
            rows.push(row(profile, "(E)", "net", "dip-net", "handle", freeboard, Least(full)));
            rows.push(row(
                profile,
                "(M)(1)",
                "control-device",
                "control-tether",
                "pole",
                freeboard,
                Least(full),
            ));
            rows.push(row(
                profile,
                "(M)(2)",
                "control-device",
                "control-poles",
                "pole",
                freeboard,
                Least(full),
            ));
        }
    }
    // The old Gulf edition: long tools above 4 ft only, the net's handle too.
    rows.push(row(
        OLD_GULF,
        "(A)",
        "long-line-cutter",
        "long-line-cutter",
        "handle",
        "5 ft",
        Least("7 ft 6 in"),
    ));
    rows.push(row(
        OLD_GULF,
        "(D)",
        "inverted-v-device",
        "inverted-v-device",
        "handle",
        "6 ft 1 in",
        Least("6 ft 1 in"),
    ));
    // The house borrows A.1 for every long tool; common practice.
    for freeboard in [("3 ft", "6 ft"), ("5 ft", "7 ft 6 in")] {
        for (requirement, kind, attribute) in [
            ("net", "dip-net", "handle"),
            ("net", "hoop-net", "rope-length"),
            ("net", "hoist", "rope-length"),
            ("long-line-cutter", "long-line-cutter", "handle"),
            ("long-dehooker", "long-dehooker-external", "handle"),
            ("long-dehooker", "long-dehooker-internal", "handle"),
            ("inverted-v-device", "inverted-v-device", "handle"),
            ("control-device", "control-tether", "pole"),
        ] {
            rows.push(row(
                HOUSE,
                "A.1 borrowed",
                requirement,
                kind,
                attribute,
                freeboard.0,
                Least(freeboard.1),
            ));
        }
    }
    rows
}

/// The fixed figures of Appendix F.
fn appendix_f_rows() -> Vec<Row> {
    let mut rows = Vec::new();
    for (clause, requirement, kind, attribute, rule) in [
        (
            "F A.2",
            "long-dehooker-internal",
            "long-dehooker-internal",
            "rod",
            Range("3/16 in", "5/16 in"),
        ),
        (
            "F A.2",
            "long-dehooker-internal",
            "long-dehooker-internal",
            "end-diameter",
            Most("1 7/8 in"),
        ),
        (
            "F A.3",
            "long-dehooker-external",
            "long-dehooker-external",
            "rod",
            Range("3/16 in", "5/16 in"),
        ),
        (
            "F A.3",
            "long-dehooker-external",
            "long-dehooker-external",
            "end-diameter",
            Most("1 7/8 in"),
        ),
        ("F A.5(a)", "net", "dip-net", "hoop-inside", Least("31 in")),
        ("F A.5(a)", "net", "dip-net", "bag-depth", Least("38 in")),
        ("F A.5(a)", "net", "dip-net", "mesh", Most("3 in")),
        ("F A.5(b)", "net", "hoop-net", "hoop-inside", Least("31 in")),
        ("F A.5(b)", "net", "hoop-net", "bag-depth", Least("38 in")),
        ("F A.5(b)", "net", "hoop-net", "mesh", Most("3 in")),
        ("F A.5(c)", "net", "hoist", "hoop-inside", Least("31 in")),
        ("F A.5(c)", "net", "hoist", "mesh", Most("3 in")),
        (
            "F A.7",
            "short-dehooker-internal",
            "short-dehooker-internal",
            "shaft",
            Range("16 in", "24 in"),
        ),
        (
            "F A.7",
            "short-dehooker-internal",
            "short-dehooker-internal",
            "rod",
            Range("3/16 in", "5/16 in"),
        ),
        (
            "F A.7",
            "short-dehooker-internal",
            "short-dehooker-internal",
            "end-diameter",
            Most("1 7/8 in"),
        ),
        (
            "F A.7",
            "short-dehooker-internal",
            "short-dehooker-internal",
            "bite-block-inside",
            Range("3/4 in", "1 in"),
        ),
        (
            "F A.7",
            "short-dehooker-internal",
            "short-dehooker-internal",
            "bite-block-length",
            Range("4 in", "6 in"),
        ),
        (
            "F A.7",
            "short-dehooker-internal",
            "short-dehooker-internal",
            "bite-block-slide",
            Least("5 in"),
        ),
        (
            "F A.7",
            "short-dehooker-internal",
            "short-dehooker-internal",
            "t-handle",
            About("4 in", "6 in", "1/2 in"),
        ),
        (
            "F A.8(a)",
            "short-dehooker-external",
            "short-dehooker-external",
            "shaft",
            Range("16 in", "24 in"),
        ),
        (
            "F A.8(a)",
            "short-dehooker-external",
            "short-dehooker-external",
            "rod",
            Range("3/16 in", "5/16 in"),
        ),
        ("F A.8(b)", "short-dehooker-external", "squeeze-dehooker", "overall", Least("11 in")),
        ("F A.9", "pliers", "pliers", "overall", Least("11 in")),
        ("F A.10", "bolt-cutters", "bolt-cutters", "overall", Least("14 in")),
        ("F A.10", "bolt-cutters", "bolt-cutters", "blade-length", Least("4 in")),
        ("F A.10", "bolt-cutters", "bolt-cutters", "blade-width", Least("2 1/4 in")),
        ("F A.10", "bolt-cutters", "bolt-cutters", "cuts-hook", Least("1/4 in")),
        ("F A.11", "line-cutters", "line-cutters", "overall", Least("6 in")),
        ("F A.11", "line-cutters", "line-cutters", "blade-length", Least("1 in")),
        ("F A.11", "line-cutters", "line-cutters", "blade-width", Least("5/8 in")),
        ("F A.12(a)", "mouth-gags", "hardwood-block", "length", Least("10 in")),
        ("F A.12(a)", "mouth-gags", "hardwood-block", "width", Least("3/4 in")),
        ("F A.12(a)", "mouth-gags", "hardwood-block", "thickness", Least("3/4 in")),
        ("F A.12(b)", "mouth-gags", "canine-gag", "nominal-size", Exactly("5 in")),
        ("F A.12(c)", "mouth-gags", "chew-bone", "length", Range("5 1/2 in", "8 in")),
        ("F A.12(d)", "mouth-gags", "covered-rope-loop", "loop-rope", LeastOrExactly("3 ft")),
        ("F A.12(e)", "mouth-gags", "rope-hank", "hank-thickness", Range("2 in", "4 in")),
        ("F A.12(e)", "mouth-gags", "rope-hank", "rope-diameter", Least("3/16 in")),
        ("F A.12(f)", "mouth-gags", "pvc-coupling", "nominal-size", Exactly("1 in")),
        ("F A.12(g)", "mouth-gags", "oral-speculum", "length", LeastOrExactly("9 in")),
    ] {
        rows.push(row(GULF, clause, requirement, kind, attribute, "5 ft", rule));
    }
    rows.push(member(
        1,
        row(
            GULF,
            "F A.12(c)",
            "mouth-gags",
            "chew-bone",
            "length",
            "5 ft",
            Range("3 1/2 in", "4 1/2 in"),
        ),
    ));
    rows.push(member(
        3,
        row(
            GULF,
            "F A.12(f)",
            "mouth-gags",
            "pvc-coupling",
            "nominal-size",
            "5 ft",
            Exactly("2 in"),
        ),
    ));
    rows
}

/// The fixed figures of 635.21(c)(5)(i), until 28 November 2024.
fn section_635_rows() -> Vec<Row> {
    let mut rows = Vec::new();
    for (clause, requirement, kind, attribute, rule) in [
        (
            "(B)",
            "long-dehooker-internal",
            "long-dehooker-internal",
            "end-diameter",
            Most("1 7/8 in"),
        ),
        (
            "(B)",
            "long-dehooker-internal",
            "long-dehooker-internal",
            "rod",
            LeastOrExactly("5/16 in"),
        ),
        (
            "(C)",
            "long-dehooker-external",
            "long-dehooker-external",
            "rod",
            LeastOrExactly("5/16 in"),
        ),
        ("(E)", "net", "dip-net", "hoop-inside", Least("31 in")),
        ("(E)", "net", "dip-net", "bag-depth", Least("38 in")),
        (
            "(G)",
            "short-dehooker-internal",
            "short-dehooker-internal",
            "end-diameter",
            Most("1 5/16 in"),
        ),
        (
            "(G)",
            "short-dehooker-internal",
            "short-dehooker-internal",
            "rod",
            LeastOrExactly("1/4 in"),
        ),
        (
            "(G)",
            "short-dehooker-internal",
            "short-dehooker-internal",
            "handle",
            About("16 in", "24 in", "1 in"),
        ),
        (
            "(H)",
            "short-dehooker-external",
            "short-dehooker-external",
            "handle",
            About("16 in", "24 in", "1 in"),
        ),
        ("(I)", "pliers", "pliers", "overall", About("12 in", "12 in", "1/2 in")),
        ("(J)", "bolt-cutters", "bolt-cutters", "overall", About("17 in", "17 in", "1 in")),
        ("(J)", "bolt-cutters", "bolt-cutters", "cuts-hook", Least("1/4 in")),
        ("(K)", "line-cutters", "line-cutters", "overall", About("7 1/2 in", "7 1/2 in", "1/2 in")),
        ("(K)", "line-cutters", "line-cutters", "blade-length", LeastOrExactly("1 3/4 in")),
        ("(K)", "line-cutters", "line-cutters", "blade-width", LeastOrExactly("5/8 in")),
        ("(L)(2)", "mouth-gags", "canine-gag", "nominal-size", Exactly("5 in")),
        ("(L)(3)", "mouth-gags", "chew-bone", "length", Range("5 1/2 in", "8 in")),
        ("(L)(5)", "mouth-gags", "rope-hank", "hank-thickness", About("2 in", "4 in", "1/4 in")),
        (
            "(M)(1)",
            "control-device",
            "control-tether",
            "line-length",
            About("15 ft", "20 ft", "1 ft"),
        ),
        ("(M)(2)", "control-device", "control-poles", "line-diameter", Range("1/2 in", "5/8 in")),
    ] {
        rows.push(row(ATLANTIC, clause, requirement, kind, attribute, "5 ft", rule));
    }
    rows
}

fn nanometres(text: &str) -> i64 {
    Length::parse(text).unwrap().0.nanometres()
}

const SIXTEENTH: i64 = 25_400_000 / 16;
const MILLIMETRE: i64 = 1_000_000;

impl Rule {
    /// What the finding must be for a figure of so many nanometres.
    fn outcome(&self, has: i64) -> &'static str {
        let met = |holds: bool, beyond| if holds { "met" } else { beyond };
        match self {
            Least(least) => met(has >= nanometres(least), "not-met"),
            Most(most) => met(has <= nanometres(most), "not-met"),
            Range(low, high) => met((nanometres(low)..=nanometres(high)).contains(&has), "not-met"),
            Exactly(figure) => met(has == nanometres(figure), "not-met"),
            LeastOrExactly(figure) if has > nanometres(figure) => "cannot-tell",
            LeastOrExactly(figure) => met(has == nanometres(figure), "not-met"),
            About(low, high, margin) => {
                let margin = nanometres(margin);
                let near = nanometres(low) - margin..=nanometres(high) + margin;
                met(near.contains(&has), "cannot-tell")
            }
        }
    }

    /// One nanometre under, at and over each bound, and the marks of both
    /// tapes next to it on either side.
    fn probes(&self) -> Vec<i64> {
        let bounds: Vec<i64> = match self {
            Least(figure) | Most(figure) | Exactly(figure) | LeastOrExactly(figure) => {
                vec![nanometres(figure)]
            }
            Range(low, high) => vec![nanometres(low), nanometres(high)],
            About(low, high, margin) => {
                vec![nanometres(low) - nanometres(margin), nanometres(high) + nanometres(margin)]
            }
        };
        let mut probes = Vec::new();
        for bound in bounds {
            probes.extend([bound - 1, bound, bound + 1]);
            for step in [SIXTEENTH, MILLIMETRE] {
                probes.extend([(bound - 1) / step * step, (bound / step + 1) * step]);
            }
        }
        probes.sort_unstable();
        probes.dedup();
        probes
    }
}

/// Runs every probe of the rows; gives what differs and how many were run.
fn differences(rows: &[Row]) -> (Vec<String>, usize) {
    let library = kit::library();
    let folder = tempfile::tempdir().unwrap();
    let (mut wrong, mut runs) = (Vec::new(), 0);
    for row in rows {
        let profile = library.find(row.profile).unwrap();
        let wanted = Wanted { requirement: row.requirement, kind: row.kind };
        let vessel = kit::made_for(profile, &library.vocabulary, row.freeboard, wanted);
        let attribute = library.vocabulary.find_attribute(row.attribute).unwrap();
        for probe in row.rule.probes() {
            let mut vessel = vessel.clone();
            let tool =
                vessel.kit.iter_mut().filter(|t| library.vocabulary.kind(t.kind).id == row.kind);
            let tool = tool.into_iter().nth(row.member).unwrap();
            let quantity = Quantity::Length(Length::from_nanometres(probe).unwrap());
            let mut reading: Reading = tool
                .readings(attribute)
                .first()
                .cloned()
                .unwrap_or_else(|| panic!("{} {}", row.requirement, row.attribute));
            reading.datum = Datum::Figure(Figure::reckoned(quantity, System::Metric, Rounding::Up));
            tool.set(attribute, vec![reading]);
            let text = kit::to_yaml(&vessel, row.freeboard, &library.vocabulary);
            let path = run::write(folder.path(), "vessel.yaml", &text);
            let ran = run::kitmuster(&[
                "check",
                &path,
                "--profile",
                row.profile,
                "--on",
                DAY,
                "--format",
                "json",
            ]);
            runs += 1;
            let json = ran.json();
            let findings = json["profiles"][0]["findings"].as_array().unwrap();
            let finding = findings.iter().find(|f| f["requirement"] == row.requirement).unwrap();
            let expected = row.rule.outcome(probe);
            if finding["outcome"] != expected {
                wrong.push(format!(
                    "{} {} {} {} at freeboard {}: {} is {}, expected {expected}: {}",
                    row.profile,
                    row.clause,
                    row.kind,
                    row.attribute,
                    row.freeboard,
                    exact(probe),
                    finding["outcome"],
                    finding["reasons"]
                ));
            }
        }
    }
    (wrong, runs)
}

#[test]
fn every_reach_rule_turns_at_its_own_nanometre() {
    let (wrong, runs) = differences(&reach_rows());
    assert!(runs > 500, "{runs}");
    assert!(wrong.is_empty(), "{}\n{} of {runs}", wrong.join("\n"), wrong.len());
}

#[test]
fn every_figure_of_appendix_f_turns_at_its_own_nanometre() {
    let (wrong, runs) = differences(&appendix_f_rows());
    assert!(runs > 250, "{runs}");
    assert!(wrong.is_empty(), "{}\n{} of {runs}", wrong.join("\n"), wrong.len());
}

#[test]
fn every_figure_of_section_635_21_turns_at_its_own_nanometre() {
    let (wrong, runs) = differences(&section_635_rows());
    assert!(runs > 120, "{runs}");
    assert!(wrong.is_empty(), "{}\n{} of {runs}", wrong.join("\n"), wrong.len());
}
