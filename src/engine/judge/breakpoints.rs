//! Where to look: the breakpoints, freeboards and days at which anything can
//! change, and the evaluation points that a vessel has to stand. Between two
//! breakpoints every answer is the same.

use crate::engine::evaluate::point::{Missing, Point};
use crate::engine::evaluate::satisfy::spread;
use crate::measure::{Day, DaySpan, Interval, Length, Percent, Quantity};
use crate::model::profile::{Profile, Requirement};
use crate::model::rule::{Base, Condition, Need, Side, Test};
use crate::model::vessel::{Certificate, Datum, Tool, Vessel, Whereabouts};

/// One vessel under one edition, and where it has to be judged.
#[derive(Clone)]
pub(crate) struct Subject<'a> {
    /// The vessel on the first of the days; every evaluation sets freeboard
    /// and day anew.
    pub(crate) point: Point<'a>,
    /// The days to look at.
    pub(crate) days: Vec<Day>,
    /// The freeboards of the vessel, station by station, reading by reading;
    /// or the fact that is missing.
    pub(crate) freeboards: Result<Vec<Vec<Range>>, Missing>,
    /// The breakpoints of its freeboards, where any of them is a range: at a
    /// single freeboard nothing lies between.
    pub(crate) between: Vec<Length>,
}

/// Freeboards from a low one to a high one.
pub(crate) type Range = (Length, Length);

impl<'a> Subject<'a> {
    /// The vessel of the point, to be judged from the first of the days to the
    /// last: on the first, and at every breakpoint after it.
    pub(crate) fn over(point: Point<'a>, span: DaySpan) -> Self {
        let first = span.from.unwrap_or(point.departure);
        let days = days_of(point.vessel, point.profile, first, span.until.unwrap_or(first));
        Self::new(Point { day: first, ..point }, days)
    }

    /// The vessel of the point, to be judged on those days.
    pub(crate) fn new(point: Point<'a>, days: Vec<Day>) -> Self {
        let freeboards = measured(point.profile, point.vessel);
        let ranges = || freeboards.iter().flatten().flatten();
        let between = match ranges().any(|(low, high)| low < high) {
            true => self::freeboards(point.profile, point.vessel),
            false => Vec::new(),
        };
        Self { point, days, freeboards, between }
    }

    /// Every point that the vessel has to stand: both ends of each stretch of
    /// its freeboards over which the same requirements bind, on each of the
    /// days.
    pub(crate) fn points(&self) -> Vec<Point<'a>> {
        let Ok(ranges) = &self.freeboards else { return Vec::new() };
        // A least length is worst at the top of a stretch over which the same
        // requirements bind, a greatest length at the bottom.
        let thresholds = thresholds(self.point.profile);
        let mut freeboards: Vec<Length> = Vec::new();
        for (low, high) in ranges.iter().flatten() {
            freeboards.extend([*low, *high]);
            for length in thresholds.iter().filter(|length| *length > low && *length <= high) {
                freeboards.extend([length.just_below(), *length]);
            }
        }
        let freeboards = in_order(freeboards);
        let at = |day| {
            freeboards.iter().map(move |length| Point { freeboard: Ok(*length), day, ..self.point })
        };
        self.days.iter().flat_map(|day| at(*day)).collect()
    }
}

/// The freeboards of the vessel as the profile takes them.
fn measured(profile: &Profile, vessel: &Vessel) -> Result<Vec<Vec<Range>>, Missing> {
    let stations =
        vessel.freeboard.taken_from(profile.freeboard_from).ok_or(Missing::OtherPlace)?;
    if stations.is_empty() || stations.iter().any(|station| station.readings.is_empty()) {
        return Err(Missing::NotMeasured);
    }
    let ranges = stations.iter().map(|station| {
        let mut ranges = Vec::new();
        for reading in &station.readings {
            let (low, high) = (reading.lowest(), reading.highest());
            ranges.push((low, high));
            if let Some(error) = reading.error.as_ref().and_then(|error| error.length()) {
                ranges.extend(within((low, high), error, profile, vessel));
            }
        }
        // Two readings that say the same dispute nothing.
        in_order(ranges)
    });
    Ok(ranges.collect())
}

/// What a reading may mean within the tape's error: rivals that may differ, at
/// both ends of the error and at every breakpoint between.
fn within((low, high): Range, error: Length, profile: &Profile, vessel: &Vessel) -> Vec<Range> {
    let (least, most) = (low.less(error), high.plus(error));
    let mut rivals = vec![(least, high.less(error).max(least)), (low.plus(error), most)];
    if low == high {
        let inside = freeboards(profile, vessel).into_iter();
        let inside = inside.filter(|length| (least..=most).contains(length));
        rivals.extend(inside.map(|length| (length, length)));
    }
    rivals
}

/// The freeboards from which on something may differ with this very kit, in
/// order, each once.
pub(crate) fn freeboards(profile: &Profile, vessel: &Vessel) -> Vec<Length> {
    let mut found = vec![Length::ZERO];
    found.extend(thresholds(profile));
    let gear = || vessel.hooks.iter().chain(&vessel.lines).flatten().map(|piece| &piece.tool);
    for requirement in &profile.requirements {
        for spec in requirement.need.specs() {
            let kit = vessel.kit.iter().chain(gear());
            for tool in kit.filter(|tool| tool.kind == spec.kind) {
                reaches(&spec.tests, tool, &mut found);
            }
        }
        for deemed in &requirement.deemed {
            vessel.kit.iter().for_each(|tool| reaches(&deemed.tests, tool, &mut found));
        }
    }
    in_order(found)
}

/// The freeboards from which on other requirements or alternatives hold,
/// whatever the kit.
pub(crate) fn thresholds(profile: &Profile) -> Vec<Length> {
    let mut found = Vec::new();
    profile.each_condition(&mut |condition| {
        if let Condition::Freeboard { side, threshold, .. } = condition {
            found.push(match side {
                Side::AtMost | Side::MoreThan => threshold.just_above(),
                Side::LessThan | Side::AtLeast => *threshold,
            });
        }
    });
    in_order(found)
}

fn in_order<T: Ord>(mut found: Vec<T>) -> Vec<T> {
    found.sort_unstable();
    found.dedup();
    found
}

/// Where the readings of the tool change sides of the limits that grow with
/// the freeboard.
fn reaches(tests: &[Test], tool: &Tool, found: &mut Vec<Length>) {
    Test::each(tests, &mut |test| {
        let Test::Limit { attribute, limit, .. } = test else { return };
        let shares = limit.shares_of(Base::Freeboard);
        for reading in tool.readings(*attribute) {
            let Datum::Figure(figure) = &reading.datum else { continue };
            let error = reading.error.as_ref().map_or(0, |e| e.quantity.steps());
            for quantity in spread(figure.quantity, error) {
                flips(quantity, &shares, found);
            }
        }
    });
}

/// A length compared with `p` of the freeboard changes sides at or just
/// above the greatest freeboard of which `p` is at most the length.
fn flips(quantity: Quantity, shares: &[Percent], found: &mut Vec<Length>) {
    let Some(length) = quantity.length() else { return };
    for base in shares.iter().filter_map(|percent| length.greatest_base(*percent)) {
        found.extend([base, base.just_above()]);
    }
}

/// The days to look at: the first, and every breakpoint up to the last.
pub(crate) fn days_of(vessel: &Vessel, profile: &Profile, first: Day, last: Day) -> Vec<Day> {
    let later = days(vessel, &[profile], first).into_iter().filter(|day| *day <= last);
    std::iter::once(first).chain(later).collect()
}

/// The days from which on something may differ, after `start`, in order.
pub(crate) fn days(vessel: &Vessel, profiles: &[&Profile], start: Day) -> Vec<Day> {
    let mut later = Later { start, days: Vec::new() };
    for profile in profiles {
        later.span(profile.in_force);
        profile.requirements.iter().for_each(|requirement| later.span(requirement.span));
    }
    let requirements = || profiles.iter().flat_map(|profile| &profile.requirements);
    if requirements().next().is_some() {
        of_tools(vessel, &distinct(requirements().filter_map(|r| r.inspection)), &mut later);
    }
    of_certificates(vessel, &distinct(requirements().filter_map(validity)), &mut later);
    for tool in &vessel.kit {
        later.add(tool.expires.map(Day::next));
        later.add(tool.disputes.expiry.map(Day::next));
        later.add(tool.acquired);
        if let Whereabouts::Lent { span: lent, .. } = &tool.whereabouts {
            later.span(*lent);
        }
    }
    if profiles.iter().any(|profile| has_months(profile)) {
        // A season comes round within the year after any other change.
        let changes = later.days.clone();
        later.days.extend(month_starts(start));
        later.days.extend(changes.into_iter().flat_map(month_starts));
    }
    in_order(later.days)
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
fn of_tools(vessel: &Vessel, intervals: &[Interval], later: &mut Later) {
    for tool in &vessel.kit {
        later.add(tool.inspected);
        for interval in intervals {
            later.add(tool.inspected.map(|day| day.through(*interval).next()));
        }
        tool.conforms.iter().for_each(|statement| later.add(Some(statement.on)));
    }
}

/// What certificates change.
fn of_certificates(vessel: &Vessel, valid: &[Interval], later: &mut Later) {
    let certificates = vessel.people.iter().flatten().flat_map(|person| &person.certificates);
    for (issued, expires) in certificates.flat_map(Certificate::readings) {
        later.add(expires.map(Day::next));
        later.add(issued);
        for valid in valid {
            later.add(issued.map(|day| day.through(*valid).next()));
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

fn has_months(profile: &Profile) -> bool {
    let mut has = false;
    profile.each_condition(&mut |condition| has |= matches!(condition, Condition::Months(..)));
    has
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
