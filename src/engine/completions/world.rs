//! A world: the vessel with some of its missing facts given, under rules of
//! which rival readings are chosen.

use super::fact::{Fact, Part, Thing, Value};
use crate::engine::evaluate::point::Point;
use crate::engine::evaluate::satisfy;
use crate::engine::judge::breakpoints::Subject;
use crate::measure::{Figure, Length, Quantity, Rounding, System};
use crate::model::place::Place;
use crate::model::profile::{FreeboardFrom, Profile};
use crate::model::reason::VesselFact;
use crate::model::rule::{Bound, Limit, Need, Test};
use crate::model::vessel::{
    Datum, FreeboardReading, GearPiece, How, Reading, State, Station, Tool, Vessel, Whereabouts,
};
use crate::model::vocabulary::{KindId, Vocabulary};
use std::collections::BTreeMap;
use std::sync::Arc;

/// A vessel with some of its missing facts given.
#[derive(Clone)]
pub(super) struct World<'v> {
    pub(super) vessel: Vessel,
    /// Profiles with a reading chosen, by id.
    laws: BTreeMap<String, Arc<Profile>>,
    /// How many facts were given.
    pub(super) given: u32,
    vocabulary: &'v Vocabulary,
}

impl<'v> World<'v> {
    /// The vessel of the part, as far as it is known.
    pub(super) fn of(part: &Part<'v>) -> Self {
        let vessel = part.point.vessel.clone();
        Self { vessel, laws: BTreeMap::new(), given: 0, vocabulary: part.point.vocabulary }
    }

    /// What the part judges here.
    pub(super) fn subject<'w>(&'w self, part: &Part<'w>) -> Subject<'w> {
        let profile = self.laws.get(&part.point.profile.id);
        let profile = profile.map_or(part.point.profile, |profile| &**profile);
        Subject::over(Point { vessel: &self.vessel, profile, ..part.point }, part.days)
    }

    /// Gives the fact that value.
    pub(super) fn give(&mut self, fact: &Fact, value: &Value, parts: &[Part<'_>]) {
        self.given += 1;
        let vessel = &mut self.vessel;
        match (fact, value) {
            (Fact::Feature(feature), Value::Is(has)) => {
                vessel.features.insert(feature.clone(), *has);
            }
            (Fact::Tags(list), Value::Tags(tags)) => {
                *match list {
                    VesselFact::Permits => &mut vessel.permits,
                    VesselFact::Gear => &mut vessel.gears,
                    _ => &mut vessel.areas,
                } = Some(tags.clone());
            }
            (Fact::Freeboard, Value::Length(length)) => {
                let readings = vec![FreeboardReading::exactly(*length)];
                vessel.freeboard.stations = vec![Station::of(readings)];
            }
            (Fact::Bulwark(station), Value::Length(height)) => {
                let from = vessel.freeboard.from;
                let known = vessel.freeboard.stations[*station].clone();
                vessel.freeboard.other.push(beside(known, from, *height));
            }
            (Fact::Station(station), Value::Reading(reading)) => {
                vessel.freeboard.stations[*station].readings = vec![(**reading).clone()];
            }
            (Fact::People, Value::People(people)) => vessel.people = Some(people.clone()),
            (Fact::Unlisted(kind), Value::Is(there)) => {
                list(vessel, *kind, *there, self.vocabulary)
            }
            (Fact::Attribute(thing, attribute), Value::Data(data)) => {
                let set = |tool: &mut Tool, datum: &Datum| {
                    tool.set(*attribute, vec![said(datum.clone())])
                };
                match thing {
                    Thing::Tool(index) => divide(vessel, *index, data, set),
                    _ => {
                        let tool = thing.of_mut(vessel);
                        tool.into_iter().zip(data).for_each(|(tool, (_, datum))| set(tool, datum));
                    }
                }
            }
            (Fact::Works(tool), Value::Units(working)) => {
                let rest = vessel.kit[*tool].count - working;
                let ways = [(*working, State::Serviceable), (rest, State::Broken)];
                divide(vessel, *tool, &ways, |tool, state| tool.state = *state);
            }
            (Fact::There(tool), Value::Units(there)) => {
                let rest = vessel.kit[*tool].count - there;
                let ways = [(*there, Whereabouts::Aboard), (rest, Whereabouts::Missing)];
                divide(vessel, *tool, &ways, |tool, place| tool.whereabouts = place.clone());
            }
            (Fact::Inspected(tool), Value::Day(day)) => vessel.kit[*tool].inspected = Some(*day),
            (Fact::Acquired(tool), Value::Day(day)) => vessel.kit[*tool].acquired = Some(*day),
            (Fact::Fits { spare, .. }, Value::Marks(marks)) => {
                vessel.kit[*spare].fits.clone_from(marks);
            }
            (Fact::Issued(name), Value::Day(day)) => {
                let people =
                    vessel.people.iter_mut().flatten().filter(|person| person.name == *name);
                let certificates = people.flat_map(|person| &mut person.certificates);
                certificates
                    .filter(|one| one.issued.is_none())
                    .for_each(|one| one.issued = Some(*day));
            }
            (Fact::Expires(tool), Value::Day(day)) => {
                vessel.kit[*tool].expires = Some(*day);
                vessel.kit[*tool].disputes.expiry = None;
            }
            (Fact::Kind(tool), Value::Choice(choice)) => {
                for (index, mate) in self.mates(*tool).into_iter().enumerate() {
                    let tool = &mut self.vessel.kit[mate];
                    tool.disputes.kinds.clear();
                    if index != *choice {
                        tool.whereabouts = Whereabouts::Missing;
                    }
                }
            }
            (Fact::Aboard(name), Value::Is(there)) => {
                let people = vessel.people.iter_mut();
                people.for_each(|people| people.retain(|one| one.name != *name || *there));
                let people = vessel.people.iter_mut().flatten().filter(|one| one.name == *name);
                people.for_each(|one| one.in_doubt = false);
            }
            (Fact::Certified(name), Value::Choice(choice)) => {
                let people = vessel.people.iter_mut().flatten().filter(|one| one.name == *name);
                for certificate in people.flat_map(|one| &mut one.certificates) {
                    let read = certificate.readings().nth(*choice);
                    if let Some((issued, expires)) = read {
                        (certificate.issued, certificate.expires) = (issued, expires);
                    }
                    certificate.rivals.clear();
                }
            }
            (Fact::Wording { part, .. } | Fact::Tolerance { part, .. }, value) => {
                self.read(parts[*part].point.profile, fact, value);
            }
            _ => {}
        }
    }

    /// The same world without anything that nobody listed.
    pub(super) fn without_unlisted(&self) -> Self {
        let mut world = self.clone();
        world.vessel.coverage.everything = true;
        world
    }

    /// The tools that one of disputed kind may be, itself among them.
    pub(super) fn mates(&self, tool: usize) -> Vec<usize> {
        let kit = &self.vessel.kit;
        let own = kit[tool].lot();
        let is_mate =
            |index: &usize| !kit[*index].disputes.kinds.is_empty() && kit[*index].lot() == own;
        (0..kit.len()).filter(is_mate).collect()
    }

    /// Chooses one reading of a requirement's words.
    fn read(&mut self, profile: &Profile, fact: &Fact, value: &Value) {
        let own = self.laws.entry(profile.id.clone()).or_insert_with(|| Arc::new(profile.clone()));
        let profile = Arc::make_mut(own);
        let (Fact::Wording { requirement, .. } | Fact::Tolerance { requirement, .. }) = fact else {
            return;
        };
        let requirement = &mut profile.requirements[*requirement];
        let mut change = |test: &mut Test| match (fact, value, &mut *test) {
            (Fact::Wording { attributes, .. }, Value::Choice(choice), Test::Readings(groups))
                if satisfy::attributes_of(groups) == *attributes =>
            {
                let chosen = groups.get(*choice).cloned();
                *test = Test::AnyOf(chosen.into_iter().collect());
            }
            (
                Fact::Tolerance { attribute, limit, .. },
                Value::Margin(margin),
                Test::Limit { attribute: of, limit: own, .. },
            ) if of == attribute && *own == **limit => *own = widened(limit, *margin),
            _ => {}
        };
        match &mut requirement.need {
            Need::Tools { types, .. } => {
                let members = types.iter_mut().flat_map(|one| &mut one.members);
                let choices = members.flat_map(|member| &mut member.choices);
                choices.for_each(|spec| change_each(&mut spec.tests, &mut change));
            }
            Need::Gear { choices, .. } => {
                choices.iter_mut().for_each(|spec| change_each(&mut spec.tests, &mut change));
            }
            Need::Certificates { .. } => {}
        }
        requirement.deemed.iter_mut().for_each(|one| change_each(&mut one.tests, &mut change));
    }
}

fn change_each(tests: &mut [Test], change: &mut dyn FnMut(&mut Test)) {
    for test in tests {
        change(test);
        if let Test::AnyOf(groups) | Test::Readings(groups) = test {
            groups.iter_mut().for_each(|group| change_each(group, change));
        }
    }
}

/// From the figures, each widened by the margin.
fn widened(limit: &Limit, margin: i64) -> Limit {
    let Limit::About { low, high, .. } = limit else { return limit.clone() };
    let bound = |figure: &Figure, by: i64| {
        let quantity = Quantity::from_steps(figure.quantity.kind(), figure.quantity.steps() + by);
        let figure = Figure::reckoned(quantity, figure.system, Rounding::Up);
        Bound::Fixed { figure, bracket: None }
    };
    Limit::Within(bound(low, -margin), bound(high, margin))
}

/// A lot divided into so many of each; the first keeps the tool's index.
fn divide<T>(vessel: &mut Vessel, index: usize, ways: &[(u32, T)], set: impl Fn(&mut Tool, &T)) {
    let mut ways = ways.iter().filter(|(count, _)| *count > 0);
    let whole = vessel.kit[index].clone();
    if let Some((count, first)) = ways.next() {
        vessel.kit[index].count = *count;
        set(&mut vessel.kit[index], first);
    }
    for (count, other) in ways {
        let mut tool = Tool { count: *count, ..whole.clone() };
        set(&mut tool, other);
        vessel.kit.push(tool);
    }
}

/// Nothing of the kind that nobody listed, or one more.
fn list(vessel: &mut Vessel, kind: KindId, there: bool, vocabulary: &Vocabulary) {
    let mut tool = Tool::bare("", kind, 1, Place::default());
    tool.state = State::Serviceable;
    let pieces = match vocabulary.kind(kind).id.as_str() {
        "hook" => &mut vessel.hooks,
        "fishing-line" => &mut vessel.lines,
        // There may be more of them.
        _ if there => return vessel.kit.push(tool),
        _ => {
            vessel.coverage.all_seen.insert(kind);
            return;
        }
    };
    vessel.coverage.all_seen.insert(kind);
    let pieces = pieces.get_or_insert_with(Vec::new);
    if there {
        pieces.push(GearPiece { name: String::new(), tool });
    }
}

/// The other freeboard of a station whose rail stands so far above its deck.
fn beside(known: Station, from: FreeboardFrom, height: Length) -> Station {
    let other = |length: Length| {
        exact(match from {
            FreeboardFrom::Deck => length.plus(height),
            FreeboardFrom::Rail => length.less(height),
        })
    };
    let shift = |reading: FreeboardReading| FreeboardReading {
        low: other(reading.lowest()),
        high: other(reading.highest()),
        ..reading
    };
    Station { readings: known.readings.into_iter().map(shift).collect(), ..known }
}

/// A length as a figure of its own.
pub(super) fn exact(length: Length) -> Figure {
    Figure::reckoned(Quantity::Length(length), System::Metric, Rounding::Up)
}

/// What a thing turns out to be.
pub(super) fn said(datum: Datum) -> Reading {
    Reading { datum, by: None, on: None, how: How::Measured, error: None }
}
