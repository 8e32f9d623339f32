//! The freeboards and days at which anything can change. Between two edges
//! every answer is the same.

use super::limit;
use super::readings::spread;
use super::scene::Scene;
use crate::measure::{Day, DaySpan, Interval, Length, Percent, Quantity};
use crate::model::profile::{Profile, Requirement};
use crate::model::rule::{Base, Bound, Condition, Limit, Need, Side, Spec, Test, ToolType};
use crate::model::vessel::{Datum, Tool, Vessel, Whereabouts};
use crate::model::vocabulary::KindId;

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
        specs(&requirement.need).for_each(|spec| conditions(&spec.when, &mut edges));
    }
    edges.sort_unstable();
    edges.dedup();
    edges
}

/// Every spec of a need.
pub(super) fn specs(need: &Need) -> impl Iterator<Item = &Spec> {
    let (types, gear): (&[ToolType], &[Spec]) = match need {
        Need::Tools { types, .. } => (types, &[]),
        Need::Gear { choices, .. } => (&[], choices),
        Need::Certificates { .. } => (&[], &[]),
    };
    types.iter().flat_map(|t| &t.members).flat_map(|m| &m.choices).chain(gear)
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
    limit::bounds(limit).for_each(|bound| collect(bound, &mut found));
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
pub(super) fn days(vessel: &Vessel, profiles: &[&Profile], start: Day) -> Vec<Day> {
    let mut edges = Later { start, days: Vec::new() };
    for profile in profiles {
        edges.span(profile.in_force);
        profile.requirements.iter().for_each(|requirement| edges.span(requirement.span));
    }
    let requirements = || profiles.iter().flat_map(|profile| &profile.requirements);
    if requirements().next().is_some() {
        of_tools(vessel, &distinct(requirements().filter_map(|r| r.inspection)), &mut edges);
    }
    of_certificates(vessel, &distinct(requirements().filter_map(validity)), &mut edges);
    for tool in &vessel.kit {
        edges.add(tool.expires.map(Day::next));
        edges.add(tool.acquired);
        if let Whereabouts::Lent { span: lent, .. } = &tool.whereabouts {
            edges.span(*lent);
        }
    }
    if profiles.iter().any(|profile| has_months(profile)) {
        // A season comes round within the year after any other change.
        let changes = edges.days.clone();
        edges.days.extend(month_starts(start));
        edges.days.extend(changes.into_iter().flat_map(month_starts));
    }
    let mut days = edges.days;
    days.sort_unstable();
    days.dedup();
    days
}

/// Days after a first one.
struct Later {
    start: Day,
    days: Vec<Day>,
}

impl Later {
    fn add(&mut self, day: Option<Day>) {
        self.days.extend(day.filter(|day| *day > self.start));
    }

    fn span(&mut self, span: DaySpan) {
        self.add(span.from);
        self.add(span.until.map(Day::next));
    }
}

/// What inspections and statements change.
fn of_tools(vessel: &Vessel, intervals: &[Interval], edges: &mut Later) {
    for tool in &vessel.kit {
        edges.add(tool.inspected);
        for interval in intervals {
            edges.add(tool.inspected.map(|day| day.through(*interval).next()));
        }
        tool.conforms.iter().for_each(|statement| edges.add(Some(statement.on)));
    }
}

/// What certificates change.
fn of_certificates(vessel: &Vessel, valid: &[Interval], edges: &mut Later) {
    for certificate in vessel.people.iter().flatten().flat_map(|p| &p.certificates) {
        edges.add(certificate.expires.map(Day::next));
        edges.add(certificate.issued);
        for valid in valid {
            edges.add(certificate.issued.map(|day| day.through(*valid).next()));
        }
    }
}

/// How long a requirement's certificates stay valid, if it sets a span.
fn validity(requirement: &Requirement) -> Option<Interval> {
    match &requirement.need {
        Need::Certificates { valid, .. } => *valid,
        _ => None,
    }
}

fn distinct(intervals: impl Iterator<Item = Interval>) -> Vec<Interval> {
    let mut distinct = Vec::new();
    for interval in intervals {
        if !distinct.contains(&interval) {
            distinct.push(interval);
        }
    }
    distinct
}

/// The kinds of tool on whose being aboard a condition depends.
pub(super) fn kinds_named(list: &[Condition], kinds: &mut Vec<KindId>) {
    for condition in list {
        match condition {
            Condition::Aboard { kind, .. } => kinds.push(*kind),
            Condition::AnyOf(groups) => groups.iter().for_each(|group| kinds_named(group, kinds)),
            _ => {}
        }
    }
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
                || specs(&requirement.need).any(|spec| in_list(&spec.when))
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
