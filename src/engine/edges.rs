//! The freeboards and days at which anything can change. Between two edges
//! every answer is the same.

use super::fit::spread;
use super::limit;
use super::scene::Scene;
use crate::measure::Percent;
use crate::measure::{Day, DaySpan, Length, Quantity};
use crate::model::profile::{Profile, Requirement};
use crate::model::rule::{Base, Bound, Condition, Limit, Need, Side, Spec, Test};
use crate::model::vessel::{Datum, Tool, Whereabouts};

/// The freeboards from which on something may differ, in order, each once.
pub(super) fn freeboards(scene: &Scene<'_>) -> Vec<Length> {
    let mut edges = vec![Length::ZERO];
    conditions(&scene.profile.binds.when, &mut edges);
    for requirement in &scene.profile.requirements {
        conditions(&requirement.when, &mut edges);
        for group in &requirement.unless {
            conditions(group, &mut edges);
        }
        for spec in specs(&requirement.need) {
            conditions(&spec.when, &mut edges);
            let gear = scene.vessel.hooks.iter().chain(&scene.vessel.lines).flatten();
            let kit = scene.vessel.kit.iter().chain(gear.map(|piece| &piece.tool));
            for tool in kit.filter(|tool| tool.kind == spec.kind) {
                tests(&spec.tests, tool, &mut edges);
            }
        }
        for deemed in &requirement.deemed {
            for tool in &scene.vessel.kit {
                tests(&deemed.tests, tool, &mut edges);
            }
        }
    }
    edges.sort_unstable();
    edges.dedup();
    edges
}

/// The freeboards from which on other requirements or alternatives hold,
/// whatever the kit.
pub(super) fn thresholds(profile: &Profile) -> Vec<Length> {
    let mut edges = Vec::new();
    conditions(&profile.binds.when, &mut edges);
    for requirement in &profile.requirements {
        conditions(&requirement.when, &mut edges);
        requirement.unless.iter().for_each(|group| conditions(group, &mut edges));
        specs(&requirement.need).iter().for_each(|spec| conditions(&spec.when, &mut edges));
    }
    edges.sort_unstable();
    edges.dedup();
    edges
}

/// Every spec of a need.
pub(super) fn specs(need: &Need) -> Vec<&Spec> {
    match need {
        Need::Tools { types, .. } => {
            types.iter().flat_map(|t| &t.members).flat_map(|m| &m.choices).collect()
        }
        Need::Gear { choices, .. } => choices.iter().collect(),
        Need::Certificates { .. } => Vec::new(),
    }
}

fn conditions(list: &[Condition], edges: &mut Vec<Length>) {
    for condition in list {
        match condition {
            Condition::Freeboard { side, threshold, .. } => edges.push(match side {
                Side::AtMost | Side::MoreThan => threshold.just_above(),
                Side::LessThan | Side::AtLeast => *threshold,
            }),
            Condition::AnyOf(groups) => groups.iter().for_each(|group| conditions(group, edges)),
            _ => {}
        }
    }
}

fn tests(list: &[Test], tool: &Tool, edges: &mut Vec<Length>) {
    for test in list {
        match test {
            Test::Limit { attribute, limit, .. } => {
                let shares = shares(limit);
                for reading in tool.readings(*attribute) {
                    let Datum::Figure(figure) = &reading.datum else {
                        continue;
                    };
                    let error = reading.error.as_ref().map_or(0, |e| e.quantity.steps());
                    for quantity in spread(figure.quantity, error) {
                        flips(quantity, &shares, edges);
                    }
                }
            }
            Test::AnyOf(groups) | Test::Readings(groups) => {
                groups.iter().for_each(|group| tests(group, tool, edges));
            }
            Test::Feature { .. } | Test::Choice { .. } | Test::AcquiredBefore(_) => {}
        }
    }
}

/// The percentages of freeboard in a limit.
fn shares(limit: &Limit) -> Vec<Percent> {
    fn collect(bound: &Bound, into: &mut Vec<Percent>) {
        match bound {
            Bound::Fixed { .. } => {}
            Bound::Share(percent, Base::Freeboard) => into.push(*percent),
            Bound::Share(..) => {}
            Bound::Greater(limbs) | Bound::Lesser(limbs) => {
                limbs.iter().for_each(|limb| collect(limb, into));
            }
        }
    }
    let mut found = Vec::new();
    limit::bounds(limit).into_iter().for_each(|bound| collect(bound, &mut found));
    found
}

/// A length compared with `p` of the freeboard changes sides at or just
/// above the greatest freeboard of which `p` is at most the length.
fn flips(quantity: Quantity, shares: &[Percent], edges: &mut Vec<Length>) {
    let Some(length) = quantity.length() else {
        return;
    };
    for base in shares.iter().filter_map(|percent| length.greatest_base(*percent)) {
        edges.push(base);
        edges.push(base.just_above());
    }
}

/// Whether the outcome of the requirement can depend on the freeboard.
pub(super) fn minds_freeboard(requirement: &Requirement) -> bool {
    fn in_tests(list: &[Test]) -> bool {
        list.iter().any(|test| match test {
            Test::Limit { limit, .. } => limit::reaches(limit),
            Test::AnyOf(groups) | Test::Readings(groups) => groups.iter().any(|g| in_tests(g)),
            Test::Feature { .. } | Test::Choice { .. } | Test::AcquiredBefore(_) => false,
        })
    }
    let mut found = Vec::new();
    conditions(&requirement.when, &mut found);
    requirement.unless.iter().for_each(|group| conditions(group, &mut found));
    let mut reach = requirement.deemed.iter().any(|deemed| in_tests(&deemed.tests));
    for spec in specs(&requirement.need) {
        conditions(&spec.when, &mut found);
        reach |= in_tests(&spec.tests);
    }
    reach || !found.is_empty()
}

/// The days from which on something may differ, after `start`, in order.
pub(super) fn days(scene: &Scene<'_>, profiles: &[&Profile], start: Day) -> Vec<Day> {
    let mut edges = Vec::new();
    for profile in profiles {
        span(profile.in_force, &mut edges);
        for requirement in &profile.requirements {
            span(requirement.span, &mut edges);
            for tool in &scene.vessel.kit {
                let lapse = requirement.inspection.zip(tool.inspected);
                edges.extend(lapse.map(|(interval, day)| day.through(interval).next()));
                edges.extend(tool.inspected);
                edges.extend(tool.conforms.iter().map(|statement| statement.on));
            }
            if let Need::Certificates { valid: Some(valid), .. } = &requirement.need {
                let people = scene.vessel.people.iter().flatten();
                let issued =
                    people.flat_map(|person| &person.certificates).filter_map(|c| c.issued);
                edges.extend(issued.map(|day| day.through(*valid).next()));
            }
        }
    }
    for tool in &scene.vessel.kit {
        edges.extend(tool.expires.map(Day::next));
        edges.extend(tool.acquired);
        if let Whereabouts::Lent { span: lent, .. } = &tool.whereabouts {
            span(*lent, &mut edges);
        }
    }
    for certificate in scene.vessel.people.iter().flatten().flat_map(|p| &p.certificates) {
        edges.extend(certificate.expires.map(Day::next));
        edges.extend(certificate.issued);
    }
    if profiles.iter().any(|profile| has_months(profile)) {
        // A season comes round within the year after any other change.
        let changes: Vec<Day> = edges.iter().copied().filter(|day| *day > start).collect();
        edges.extend(month_starts(start));
        edges.extend(changes.into_iter().flat_map(month_starts));
    }
    edges.retain(|day| *day > start);
    edges.sort_unstable();
    edges.dedup();
    edges
}

fn span(span: DaySpan, edges: &mut Vec<Day>) {
    edges.extend(span.from);
    edges.extend(span.until.map(Day::next));
}

fn has_months(profile: &Profile) -> bool {
    fn in_list(list: &[Condition]) -> bool {
        list.iter().any(|condition| match condition {
            Condition::Months(..) => true,
            Condition::AnyOf(groups) => groups.iter().any(|group| in_list(group)),
            _ => false,
        })
    }
    in_list(&profile.binds.when)
        || profile.requirements.iter().any(|requirement| {
            in_list(&requirement.when)
                || requirement.unless.iter().any(|group| in_list(group))
                || specs(&requirement.need).iter().any(|spec| in_list(&spec.when))
        })
}

/// The first days of the next thirteen months: what a season can change, it
/// changes once within a year.
fn month_starts(start: Day) -> Vec<Day> {
    let mut starts = Vec::new();
    let mut day = start;
    while starts.len() < 13 {
        let next = day.next();
        if next.month() != day.month() {
            starts.push(next);
        }
        day = next;
    }
    starts
}
