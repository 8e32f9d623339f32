//! The values that a missing fact can have, one for each answer that they can
//! make, the best first; and a world in which the fact has one of them.

use super::attribute::{self, MOST_UNITS};
use super::fact::{Fact, Part, Thing, Value, each_test};
use super::world::{World, exact};
use crate::engine::evaluate::point::Point;
use crate::engine::evaluate::satisfy;
use crate::engine::judge::breakpoints;
use crate::measure::{Day, Interval, Length, Percent};
use crate::model::place::Place;
use crate::model::profile::{FreeboardFrom, Requirement};
use crate::model::reason::VesselFact;
use crate::model::rule::{Base, Condition, Holders, Limit, Need, Test};
use crate::model::vessel::{Certificate, FreeboardReading, Person, Vessel};
use crate::model::vocabulary::AttributeId;
use std::collections::{BTreeMap, BTreeSet};

/// Of more tags than these not every set is tried.
const MOST_TAGS: usize = 4;

/// The values of the fact; none where it cannot be given here.
pub(super) fn values(fact: &Fact, world: &World<'_>, parts: &[Part<'_>]) -> Vec<Value> {
    let vessel = &world.vessel;
    let subjects = || parts.iter().map(|part| world.subject(part));
    match fact {
        Fact::Feature(_) => by_burden(fact, [Value::Is(true), Value::Is(false)], world, parts),
        Fact::Tags(list) => {
            let sets = tag_sets(list, world, parts).into_iter().map(Value::Tags);
            by_burden(fact, sets, world, parts)
        }
        Fact::Freeboard => {
            let all = subjects().flat_map(|subject| freeboards(&subject.point));
            all.filter(|length| *length > Length::ZERO)
                .chain([Length::ZERO.just_above()])
                .collect::<BTreeSet<_>>()
                .into_iter()
                .map(Value::Length)
                .collect()
        }
        Fact::Bulwark(station) => {
            bulwarks(*station, world, parts).into_iter().map(Value::Length).collect()
        }
        Fact::Station(station) => readings_of(*station, world, parts)
            .into_iter()
            .map(Box::new)
            .map(Value::Reading)
            .collect(),
        Fact::People => vec![Value::People(everybody(world, parts)), Value::People(Vec::new())],
        Fact::Unlisted(kind) if vessel.coverage.is_whole(*kind) => vec![Value::Is(true)],
        Fact::Unlisted(_) => by_burden(fact, [Value::Is(true), Value::Is(false)], world, parts),
        Fact::Attribute(thing, attribute) => attribute::values(*thing, *attribute, world, parts),
        Fact::Works(tool) | Fact::There(tool) => {
            let count = vessel.kit[*tool].count;
            let alike = count > MOST_UNITS;
            (0..=count)
                .rev()
                .filter(|n| !alike || *n == 0 || *n == count)
                .map(Value::Units)
                .collect()
        }
        Fact::Inspected(_) => {
            let intervals = subjects().flat_map(|s| {
                s.point.profile.requirements.iter().filter_map(|r| r.inspection).collect::<Vec<_>>()
            });
            days(intervals.collect(), world, parts).into_iter().map(Value::Day).collect()
        }
        Fact::Issued(_) => {
            let valid = |r: &Requirement| match &r.need {
                Need::Certificates { valid, .. } => *valid,
                _ => None,
            };
            let intervals = subjects().flat_map(|s| {
                s.point.profile.requirements.iter().filter_map(valid).collect::<Vec<_>>()
            });
            days(intervals.collect(), world, parts).into_iter().map(Value::Day).collect()
        }
        Fact::Expires(tool) => {
            let tool = &vessel.kit[*tool];
            tool.expires.into_iter().chain(tool.disputes.expiry).map(Value::Day).collect()
        }
        Fact::Kind(tool) => (0..world.mates(*tool).len()).map(Value::Choice).collect(),
        Fact::Aboard(_) => vec![Value::Is(true), Value::Is(false)],
        Fact::Certified(name) => {
            let people = vessel.people.iter().flatten().filter(|person| person.name == *name);
            let most =
                people.flat_map(|person| &person.certificates).map(|one| one.readings().count());
            (0..most.max().unwrap_or(0)).map(Value::Choice).collect()
        }
        Fact::Acquired(_) => acquired(world, parts).into_iter().map(Value::Day).collect(),
        Fact::Fits { spare, part, served } => {
            fits(*spare, &parts[*part].point.profile.requirements[*served], vessel)
        }
        Fact::Wording { part, requirement, attributes } => {
            let mut readings = 0;
            let subject = world.subject(&parts[*part]);
            each_test(&subject.point.profile.requirements[*requirement], &mut |test| match test {
                Test::Readings(groups) if satisfy::attributes_of(groups) == *attributes => {
                    readings = readings.max(groups.len());
                }
                _ => {}
            });
            (0..readings).map(Value::Choice).collect()
        }
        Fact::Tolerance { attribute, limit, .. } => {
            tolerances(*attribute, limit, world).into_iter().map(Value::Margin).collect()
        }
    }
}

/// Whether the values are all that the fact can have: of a large lot, of many
/// figures beyond an *approximately*, of many tags and of many tools that a spare
/// may fit only some are tried.
pub(super) fn are_all(
    fact: &Fact,
    values: &[Value],
    world: &World<'_>,
    parts: &[Part<'_>],
) -> bool {
    let sizes = || {
        values.iter().map(|value| match value {
            Value::Tags(set) | Value::Marks(set) => set.len(),
            _ => 0,
        })
    };
    let (most, least) = (sizes().max().unwrap_or(0), sizes().min().unwrap_or(0));
    match fact {
        Fact::Attribute(Thing::Tool(tool), attribute) => {
            let differ = |value: &Value| matches!(value, Value::Data(data) if data.len() > 1);
            let is_lot = world.vessel.kit[*tool].count > 1 && values.len() > 1;
            (!is_lot || values.iter().any(differ))
                && attribute::tells_strays(*attribute, world, parts)
        }
        Fact::Works(tool) | Fact::There(tool) => world.vessel.kit[*tool].count <= MOST_UNITS,
        Fact::Tags(_) => values.len() == 1 << (most - least).min(MOST_TAGS + 1),
        // A spare that fits none names itself.
        Fact::Fits { .. } => values.len() == 1 || values.len() == 1 << most.min(MOST_TAGS + 1),
        _ => true,
    }
}

/// Values by how much the rules then ask, the least first.
fn by_burden(
    fact: &Fact,
    values: impl IntoIterator<Item = Value>,
    world: &World<'_>,
    parts: &[Part<'_>],
) -> Vec<Value> {
    let burden = |value: &Value| {
        let mut world = world.clone();
        world.give(fact, value, parts);
        let asked = |part: &Part<'_>| {
            let subject = world.subject(part);
            let point = subject.points().first().copied().unwrap_or(subject.point);
            point.profile.requirements.iter().filter(|one| point.binds(one) == Ok(true)).count()
        };
        parts.iter().map(asked).sum::<usize>()
    };
    let mut values: Vec<_> = values.into_iter().collect();
    values.sort_by_cached_key(burden);
    values
}

/// The sets of tags that can be meant: those that rules speak of, beside those
/// that are written and known.
fn tag_sets(list: &VesselFact, world: &World<'_>, parts: &[Part<'_>]) -> Vec<Vec<String>> {
    let vocabulary = parts[0].point.vocabulary;
    let (written, known) = match list {
        VesselFact::Permits => (&world.vessel.permits, &vocabulary.permits),
        VesselFact::Gear => (&world.vessel.gears, &vocabulary.gears),
        _ => (&world.vessel.areas, &vocabulary.areas),
    };
    let mut told: BTreeSet<&str> = BTreeSet::new();
    for part in parts {
        let binds = &part.point.profile.binds;
        told.extend(match list {
            VesselFact::Permits => binds.permits.iter().map(String::as_str),
            VesselFact::Gear => binds.gears.iter().map(String::as_str),
            _ => binds.areas.iter().map(String::as_str),
        });
        part.point.profile.each_condition(&mut |condition| match (condition, list) {
            (Condition::Permit(tag), VesselFact::Permits)
            | (Condition::Gear(tag), VesselFact::Gear)
            | (Condition::Area(tag) | Condition::AreaOtherThan(tag), VesselFact::Areas) => {
                told.insert(tag);
            }
            _ => {}
        });
    }
    // A word that no rule speaks of, for what is none of them.
    let other = known.keys().map(String::as_str).find(|tag| !told.contains(tag));
    told.extend(other.filter(|_| *list == VesselFact::Areas));
    let sure: Vec<String> =
        written.iter().flatten().filter(|word| known.contains_key(*word)).cloned().collect();
    let open: Vec<&str> =
        told.into_iter().filter(|tag| !sure.iter().any(|word| word == tag)).collect();
    let set = |mask: u64| {
        let more = open.iter().enumerate().filter(|(i, _)| mask >> i & 1 == 1);
        sure.iter().cloned().chain(more.map(|(_, tag)| (*tag).to_owned())).collect()
    };
    match open.len() {
        few if few <= MOST_TAGS => (0..1 << few).map(set).collect(),
        many => [0, u64::MAX].into_iter().chain((0..many).map(|i| 1 << i)).map(set).collect(),
    }
}

/// The freeboards at which an answer turns: with the kit as far as it is known,
/// and where a share of it passes a figure that another limit of the attribute
/// names, since what nobody measured may lie between the two.
fn freeboards(point: &Point<'_>) -> Vec<Length> {
    let mut shares: BTreeMap<AttributeId, Vec<Percent>> = BTreeMap::new();
    let mut figures: Vec<(AttributeId, Length)> = Vec::new();
    for requirement in &point.profile.requirements {
        each_test(requirement, &mut |test| {
            let Test::Limit { attribute, limit, .. } = test else { return };
            shares.entry(*attribute).or_default().extend(limit.shares_of(Base::Freeboard));
            let lengths = limit.figures().filter_map(|figure| figure.quantity.length());
            figures.extend(lengths.map(|length| (*attribute, length)));
        });
    }
    let mut found = breakpoints::freeboards(point.profile, point.vessel);
    for (attribute, length) in figures {
        let bases = shares[&attribute].iter().filter_map(|percent| length.greatest_base(*percent));
        found.extend(bases.flat_map(|base| [base, base.just_above()]));
    }
    found
}

/// How far a rail may stand above its deck: nothing, and wherever one end of
/// the station's freeboards comes to a breakpoint.
fn bulwarks(station: usize, world: &World<'_>, parts: &[Part<'_>]) -> BTreeSet<Length> {
    let freeboard = &world.vessel.freeboard;
    let mut heights = BTreeSet::from([Length::ZERO]);
    let Some(station) = freeboard.stations.get(station) else { return heights };
    let ends = || station.readings.iter().flat_map(|reading| [reading.lowest(), reading.highest()]);
    let lowest = ends().min().unwrap_or(Length::ZERO);
    for part in parts {
        let subject = world.subject(part);
        for length in freeboards(&subject.point) {
            for end in ends() {
                let height = match freeboard.from {
                    FreeboardFrom::Deck => length.less(end),
                    FreeboardFrom::Rail => end.less(length),
                };
                heights.extend([height, height.just_above(), height.just_below()]);
            }
        }
    }
    // A deck lies above the water.
    let below = |height: &Length| match freeboard.from {
        FreeboardFrom::Deck => true,
        FreeboardFrom::Rail => *height < lowest,
    };
    heights.retain(|height| *height >= Length::ZERO && below(height));
    heights
}

/// What a disputed station can be: each range that its readings leave.
fn readings_of(station: usize, world: &World<'_>, parts: &[Part<'_>]) -> Vec<FreeboardReading> {
    let mut found: Vec<FreeboardReading> = Vec::new();
    let Some(listed) = world.vessel.freeboard.stations.get(station) else { return found };
    for part in parts {
        let subject = world.subject(part);
        let Ok(stations) = &subject.freeboards else { continue };
        for (low, high) in stations.get(station).into_iter().flatten() {
            let like = listed.readings[0].clone();
            let reading =
                FreeboardReading { low: exact(*low), high: exact(*high), error: None, ..like };
            if !found.contains(&reading) {
                found.push(reading);
            }
        }
    }
    found.sort_by_key(FreeboardReading::highest);
    found
}

/// Somebody for every role, and as many people as are asked, with every
/// certificate.
fn everybody(world: &World<'_>, parts: &[Part<'_>]) -> Vec<Person> {
    let departure = parts[0].point.departure;
    let mut people = Vec::new();
    for part in parts {
        for requirement in &world.subject(part).point.profile.requirements {
            let Need::Certificates { kind, holders, .. } = &requirement.need else { continue };
            let certificate = Certificate {
                kind: *kind,
                issued: Some(departure),
                expires: None,
                number: None,
                rivals: Vec::new(),
                place: Place::default(),
            };
            let person = |roles: Vec<String>| Person {
                name: String::new(),
                roles,
                in_doubt: false,
                certificates: vec![certificate.clone()],
                place: Place::default(),
            };
            match holders {
                Holders::EachRole(roles) => {
                    people.extend(roles.iter().map(|role| person(vec![role.clone()])))
                }
                Holders::People(count) => people.extend((0..*count).map(|_| person(Vec::new()))),
            }
        }
    }
    people
}

/// The days that matter for what lapses: the day of departure, one so long ago
/// that it has lapsed, and each from which it lapses on a later day.
fn days(intervals: Vec<Interval>, world: &World<'_>, parts: &[Part<'_>]) -> Vec<Day> {
    let departure = parts[0].point.departure;
    let mut found = BTreeSet::from([departure]);
    for interval in intervals {
        let subjects = parts.iter().map(|part| world.subject(part));
        let judged: BTreeSet<Day> = subjects.flat_map(|subject| subject.days).collect();
        for day in judged {
            // The latest day from which it has lapsed by then.
            let mut since = departure;
            while since.through(interval) >= day && day.days_since(since) < MOST_DAYS {
                since = since.previous();
            }
            found.insert(since);
        }
    }
    found.into_iter().rev().collect()
}

/// No interval of a rule is longer.
const MOST_DAYS: i64 = 4000;

/// A tool that is aboard was acquired by the day of departure.
fn acquired(world: &World<'_>, parts: &[Part<'_>]) -> Vec<Day> {
    let departure = parts[0].point.departure;
    let mut days = BTreeSet::from([departure]);
    for part in parts {
        for requirement in &world.subject(part).point.profile.requirements {
            each_test(requirement, &mut |test| {
                if let Test::AcquiredBefore(day) = test {
                    days.extend([day.previous().min(departure), (*day).min(departure)]);
                }
            });
        }
    }
    days.into_iter().collect()
}

/// Every set of the tools that may serve; itself alone stands for none.
fn fits(spare: usize, served: &Requirement, vessel: &Vessel) -> Vec<Value> {
    let own = &vessel.kit[spare].mark;
    let kinds = served.kinds();
    let marks: Vec<&String> = vessel
        .kit
        .iter()
        .filter(|tool| kinds.contains(&tool.kind))
        .map(|tool| &tool.mark)
        .collect();
    let set = |mask: u64| {
        let named = marks.iter().enumerate().filter(|(i, _)| mask >> i & 1 == 1);
        let mut named: Vec<String> = named.map(|(_, mark)| (*mark).clone()).collect();
        if named.is_empty() {
            named.push(own.clone());
        }
        Value::Marks(named)
    };
    match marks.len() {
        few if few <= MOST_TAGS => (0..1 << few).rev().map(set).collect(),
        many => {
            std::iter::once(u64::MAX).chain((0..many).map(|i| 1 << i)).chain([0]).map(set).collect()
        }
    }
}

/// How far *approximately* can go: as far as the profile's margin, or to each
/// figure beyond it.
fn tolerances(of: AttributeId, limit: &Limit, world: &World) -> Vec<i64> {
    let Limit::About { margin, .. } = limit else { return Vec::new() };
    let mut margins = BTreeSet::from([margin.quantity.steps()]);
    let readings = world.vessel.kit.iter().flat_map(|tool| tool.readings(of));
    margins.extend(readings.filter_map(|reading| attribute::beyond(limit, &reading.datum)));
    margins.into_iter().filter(|one| *one >= margin.quantity.steps()).rev().collect()
}
