//! Every length rule of every shipped profile one nanometre under, at and
//! one over, and at the nearest 1/16 in and millimetre, in a file that is
//! written for it.
//!
//! The figures below were written from the rules' texts, not from the
//! profiles: 50 CFR part 622 Appendix F as in force since the 2019 rules,
//! and 50 CFR 635.21(c)(5)(i) until 28 November 2024. Where a text rounds a
//! customary figure in a metric bracket, the customary figure governs.

mod rows;

use crate::kit::{self, Wanted, exact};
use kitmuster::measure::{Figure, Length, Quantity, QuantityKind, Rounding, System};
use kitmuster::model::rule::{Limit, Need, Test};
use kitmuster::model::vessel::Datum;
use kitmuster::model::vocabulary::{AttributeId, AttributeShape};

/// What a rule asks of one figure, and what the finding is beyond it.
#[derive(Clone, Copy)]
pub(crate) enum Rule {
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
    /// At most, or at most half of it: between them the wording can be read
    /// two ways.
    MostOrHalf(&'static str, &'static str),
    /// At least; below it another capability, which is not known, may do.
    OpenBelow(&'static str),
    /// About, from low to high widened by a margin of the profile's own:
    /// beyond it nobody can tell.
    About(&'static str, &'static str, &'static str),
}
use Rule::{About, Exactly, Least, LeastOrExactly, Most, MostOrHalf, OpenBelow, Range};

#[derive(Clone, Copy)]
pub(crate) struct Row {
    pub(crate) profile: &'static str,
    clause: &'static str,
    pub(crate) requirement: &'static str,
    pub(crate) kind: &'static str,
    pub(crate) attribute: &'static str,
    /// At which freeboard.
    pub(crate) freeboard: &'static str,
    pub(crate) rule: Rule,
    /// The size by which one member of a set is told from the others.
    member: usize,
}

const GULF: &str = "us-gulf-reef-fish-2019";
const OLD_GULF: &str = "us-gulf-reef-fish-before-2019";
const SOUTH: &str = "us-south-atlantic-snapper-grouper-2019";
const APPENDIX_F: &str = "us-622-appendix-f";
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
            MostOrHalf(most, _) if has > nanometres(most) => "not-met",
            MostOrHalf(_, half) => met(has <= nanometres(half), "cannot-tell"),
            OpenBelow(least) => met(has >= nanometres(least), "cannot-tell"),
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
            Least(figure)
            | Most(figure)
            | Exactly(figure)
            | OpenBelow(figure)
            | LeastOrExactly(figure) => {
                vec![nanometres(figure)]
            }
            Range(low, high) | MostOrHalf(high, low) => vec![nanometres(low), nanometres(high)],
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
    let (mut wrong, mut runs) = (Vec::new(), 0);
    for row in rows {
        let profile = library.find(row.profile).unwrap();
        let wanted = Wanted { requirement: row.requirement, kind: row.kind };
        let vessel = kit::made_for(profile, &library.vocabulary, row.freeboard, wanted);
        for probe in row.rule.probes() {
            let quantity = Quantity::Length(Length::from_nanometres(probe).unwrap());
            let figure = Figure::reckoned(quantity, System::Metric, Rounding::Up);
            let (words, tool) = (&library.vocabulary, (row.kind, row.member));
            let datum = Datum::Figure(figure);
            let vessel = kit::with_datum(&vessel, words, tool, row.attribute, datum);
            let outcome =
                kit::outcome(&library, &vessel, row.freeboard, row.profile, row.requirement);
            runs += 1;
            let expected = row.rule.outcome(probe);
            if outcome != expected {
                wrong.push(format!(
                    "{} {} {} {} at freeboard {}: {} is {outcome}, expected {expected}",
                    row.profile,
                    row.clause,
                    row.kind,
                    row.attribute,
                    row.freeboard,
                    exact(probe),
                ));
            }
        }
    }
    (wrong, runs)
}

/// The rows by the test that runs them.
pub(crate) fn tables() -> [(&'static str, Vec<Row>); 4] {
    let finer =
        [rows::finer_appendix_f_rows(), rows::finer_section_635_rows(), rows::old_gulf_rows()];
    [
        ("every_reach_rule_turns_at_its_own_nanometre", rows::reach_rows()),
        ("every_figure_of_appendix_f_turns_at_its_own_nanometre", rows::appendix_f_rows()),
        ("every_figure_of_section_635_21_turns_at_its_own_nanometre", rows::section_635_rows()),
        ("the_finer_figures_turn_at_their_own_nanometre", finer.concat()),
    ]
}

fn rows_of(test: &str) -> Vec<Row> {
    let table = tables().into_iter().find(|(name, _)| *name == test);
    table.unwrap_or_else(|| panic!("no rows for {test}")).1
}

#[test]
fn every_reach_rule_turns_at_its_own_nanometre() {
    let (wrong, runs) = differences(&rows_of("every_reach_rule_turns_at_its_own_nanometre"));
    assert!(runs > 500, "{runs}");
    assert!(wrong.is_empty(), "{}\n{} of {runs}", wrong.join("\n"), wrong.len());
}

#[test]
fn every_figure_of_appendix_f_turns_at_its_own_nanometre() {
    let (wrong, runs) =
        differences(&rows_of("every_figure_of_appendix_f_turns_at_its_own_nanometre"));
    assert!(runs > 250, "{runs}");
    assert!(wrong.is_empty(), "{}\n{} of {runs}", wrong.join("\n"), wrong.len());
}

#[test]
fn every_figure_of_section_635_21_turns_at_its_own_nanometre() {
    let (wrong, runs) =
        differences(&rows_of("every_figure_of_section_635_21_turns_at_its_own_nanometre"));
    assert!(runs > 120, "{runs}");
    assert!(wrong.is_empty(), "{}\n{} of {runs}", wrong.join("\n"), wrong.len());
}

#[test]
fn the_finer_figures_turn_at_their_own_nanometre() {
    let (wrong, runs) = differences(&rows_of("the_finer_figures_turn_at_their_own_nanometre"));
    assert!(runs > 600, "{runs}");
    assert!(wrong.is_empty(), "{}\n{} of {runs}", wrong.join("\n"), wrong.len());
}

/// The profiles whose rows speak for one that shares their text.
fn family(profile: &str) -> &'static [&'static str] {
    match profile {
        GULF | SOUTH => &[GULF, SOUTH],
        ATLANTIC | DOLPHIN => &[ATLANTIC, DOLPHIN],
        OLD_GULF => &[OLD_GULF, ATLANTIC],
        HOUSE => &[HOUSE],
        other => panic!("no rows for {other}"),
    }
}

fn lengths(tests: &[Test], into: &mut Vec<AttributeId>) {
    for test in tests {
        match test {
            Test::Limit { attribute, limit, .. } if *limit != Limit::Any => into.push(*attribute),
            Test::AnyOf(groups) | Test::Readings(groups) => {
                groups.iter().for_each(|group| lengths(group, into));
            }
            _ => {}
        }
    }
}

#[test]
fn no_length_rule_of_a_tool_is_without_its_row() {
    let library = kit::library();
    let vocabulary = &library.vocabulary;
    let rows: Vec<Row> = tables().into_iter().flat_map(|(_, rows)| rows).collect();
    let mut without = Vec::new();
    for profile in library.profiles.iter().filter(|p| p.encoded && !p.base) {
        for requirement in &profile.requirements {
            let Need::Tools { types, .. } = &requirement.need else { continue };
            for spec in types.iter().flat_map(|t| &t.members).flat_map(|m| &m.choices) {
                let mut attributes = Vec::new();
                lengths(&spec.tests, &mut attributes);
                for attribute in attributes.into_iter().map(|id| vocabulary.attribute(id)) {
                    let kind = &vocabulary.kind(spec.kind).id;
                    let of_it = |row: &Row| {
                        family(&profile.id).contains(&row.profile)
                            && row.requirement == requirement.id
                            && row.kind == kind
                            && row.attribute == attribute.id
                    };
                    let length = AttributeShape::Quantity(QuantityKind::Length);
                    if attribute.shape == length && !rows.iter().any(of_it) {
                        without.push(format!(
                            "{} {} {kind} {}",
                            profile.id, requirement.id, attribute.id
                        ));
                    }
                }
            }
        }
    }
    without.dedup();
    assert_eq!(without, Vec::<String>::new());
}

/// One figure of the vessel's own hooks.
pub(crate) struct HookRow {
    /// Size and the rest of the hook.
    hook: String,
    pub(crate) attribute: &'static str,
    pub(crate) rule: Rule,
    pub(crate) requirement: &'static str,
    area: &'static str,
    /// Gear beside the pelagic longline.
    gear: &'static str,
    day: &'static str,
}

/// 50 CFR 635.21(c)(5)(iii)(C) (read) until 28 November 2024: the vessel's own
/// hooks.
#[rustfmt::skip]
pub(crate) fn hook_rows() -> Vec<HookRow> {
    let circle = |size: &str| {
        format!("type: circle, size: {size}, offset: 0 degrees, round-wire: yes, corrodible: yes")
    };
    let j_hook = "type: j, number: 20, corrodible: yes, round-wire: yes".to_owned();
    let (gulf, atlantic) = ("gulf-of-mexico", "atlantic");
    [
        (circle("18/0"), "outer-diameter", Least("2.16 in"), "circle-hooks", atlantic, "", "2024-03-04"),
        (circle("18/0"), "gap", Most("1.13 in"), "circle-hooks", atlantic, "", "2024-03-04"),
        (circle("16/0"), "outer-diameter", Least("1.74 in"), "circle-hooks", atlantic, "", "2024-03-04"),
        (circle("16/0"), "gap", Most("1.01 in"), "circle-hooks", atlantic, "", "2024-03-04"),
        (j_hook, "hook-length", Least("1.5 in"), "circle-hooks", atlantic, ", green-stick", "2024-03-04"),
        (circle("18/0"), "wire", Most("3.65 mm"), "gulf-hook-wire", gulf, "", "2024-03-04"),
        (circle("18/0"), "wire", Most("3.65 mm"), "gulf-hook-wire-all-year", gulf, "", "2019-10-07"),
    ]
    .into_iter()
    .map(|(hook, attribute, rule, requirement, area, gear, day)| HookRow {
        hook, attribute, rule, requirement, area, gear, day,
    })
    .collect()
}

#[test]
fn every_figure_of_the_hooks_turns_at_its_own_nanometre() {
    let good = [("outer-diameter", "56 mm"), ("gap", "25 mm"), ("wire", "3 mm")];
    let mut wrong = Vec::new();
    for row in hook_rows() {
        let HookRow { hook, attribute, rule, requirement, area, gear, day } = row;
        for probe in rule.probes() {
            let rest = good.iter().filter(|(id, _)| *id != attribute);
            let rest: String = rest.map(|(id, value)| format!(", {id}: {value}")).collect();
            let hooks = format!("[{{ name: hooks, {hook}{rest}, {attribute}: {} }}]", exact(probe));
            let judged = crate::outfit::vessel("5 ft")
                .set("hooks", &hooks)
                .set("gear", &format!("[pelagic-longline{gear}]"))
                .set("areas", &format!("[{area}]"))
                .under(ATLANTIC, day);
            if judged.outcome(requirement) != rule.outcome(probe) {
                wrong.push(format!(
                    "{requirement} {attribute} {}: {}",
                    exact(probe),
                    judged.outcome(requirement)
                ));
            }
        }
    }
    assert_eq!(wrong, Vec::<String>::new());
}
