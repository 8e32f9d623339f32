//! The facts that a trip wants and that nobody knows, read off what its
//! evaluation points leave open.

use crate::engine::evaluate::point::Point;
use crate::engine::evaluate::requirement::View;
use crate::engine::evaluate::satisfy::{self, Clauses};
use crate::engine::evaluate::{holders, limit};
use crate::engine::judge::evaluation::Evaluation;
use crate::engine::judge::verdict::Trip;
use crate::measure::{Answer, Day, DaySpan, Length};
use crate::model::finding::Outcome;
use crate::model::profile::{Level, Requirement};
use crate::model::reason::{Reason, VesselFact};
use crate::model::rule::{Limit, Need, Test};
use crate::model::vessel::{
    Datum, FreeboardReading, GearPiece, Person, State, Tool, Vessel, Whereabouts,
};
use crate::model::vocabulary::{AttributeId, KindId, Vocabulary};
use std::sync::Arc;

/// One vessel under one edition over those days.
#[derive(Clone, Copy)]
pub(crate) struct Part<'a> {
    /// The vessel before its freeboard and the day are looked at.
    pub(crate) point: Point<'a>,
    pub(crate) days: DaySpan,
}

/// What is asked of a world: all editions together, one edition, or one of its
/// requirements.
pub(super) type Item = (Option<usize>, Option<usize>);

/// A thing of the vessel, by index into its list.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Thing {
    Tool(usize),
    Hook(usize),
    Line(usize),
}

impl Thing {
    pub(super) fn of(self, vessel: &Vessel) -> Option<&Tool> {
        match self {
            Self::Tool(index) => vessel.kit.get(index),
            Self::Hook(index) => Some(&vessel.hooks.as_ref()?.get(index)?.tool),
            Self::Line(index) => Some(&vessel.lines.as_ref()?.get(index)?.tool),
        }
    }

    pub(super) fn of_mut(self, vessel: &mut Vessel) -> Option<&mut Tool> {
        match self {
            Self::Tool(index) => vessel.kit.get_mut(index),
            Self::Hook(index) => Some(&mut vessel.hooks.as_mut()?.get_mut(index)?.tool),
            Self::Line(index) => Some(&mut vessel.lines.as_mut()?.get_mut(index)?.tool),
        }
    }
}

/// One fact that nobody knows.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Fact {
    /// Whether the vessel has a feature.
    Feature(String),
    /// Which permits, gear or areas there are.
    Tags(VesselFact),
    /// The freeboard, where nobody measured.
    Freeboard,
    /// How far the rail of a station stands above its deck.
    Bulwark(usize),
    /// Which reading of a station's freeboard is right.
    Station(usize),
    /// Who is aboard.
    People,
    /// Whether something of the kind is aboard that nobody listed.
    Unlisted(KindId),
    /// What is true of an attribute of a thing.
    Attribute(Thing, AttributeId),
    /// How many of a tool work.
    Works(usize),
    /// How many of a tool are aboard.
    There(usize),
    /// When a tool was last inspected.
    Inspected(usize),
    /// When a tool was acquired.
    Acquired(usize),
    /// Which tools a spare fits, of those that serve a requirement of a part.
    Fits { spare: usize, part: usize, served: usize },
    /// When the certificates of a person were issued.
    Issued(String),
    /// Which of the words on a tool's expiry is right.
    Expires(usize),
    /// Of which of its disputed kinds a tool is.
    Kind(usize),
    /// Whether a person is aboard.
    Aboard(String),
    /// Which of the words on a person's certificates is right.
    Certified(String),
    /// Which of the rival readings of a clause is right.
    Wording { part: usize, requirement: usize, attributes: Vec<AttributeId> },
    /// How far a clause's *approximately* goes.
    Tolerance { part: usize, requirement: usize, attribute: AttributeId, limit: Arc<Limit> },
}

/// What a fact turns out to be.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Value {
    /// Yes or no.
    Is(bool),
    /// These permits, gear or areas.
    Tags(Vec<String>),
    /// A freeboard, or the height of a bulwark.
    Length(Length),
    /// This reading of a station.
    Reading(Box<FreeboardReading>),
    /// So many of a lot have each of these.
    Data(Vec<(u32, Datum)>),
    /// So many of a lot.
    Units(u32),
    /// A day.
    Day(Day),
    /// These marks.
    Marks(Vec<String>),
    /// These people.
    People(Vec<Person>),
    /// Of several readings or kinds, that one.
    Choice(usize),
    /// A margin, in steps of the quantity.
    Margin(i64),
}

impl Fact {
    /// What decides for many is given first.
    pub(super) fn rank(&self) -> u8 {
        match self {
            Self::Feature(_)
            | Self::Tags(_)
            | Self::Freeboard
            | Self::Bulwark(_)
            | Self::Station(_)
            | Self::Unlisted(_)
            | Self::People => 0,
            Self::Wording { .. } | Self::Tolerance { .. } => 1,
            Self::Attribute(Thing::Hook(_) | Thing::Line(_), _) => 2,
            Self::Attribute(Thing::Tool(_), _)
            | Self::Works(_)
            | Self::There(_)
            | Self::Inspected(_)
            | Self::Acquired(_)
            | Self::Fits { .. }
            | Self::Expires(_)
            | Self::Kind(_)
            | Self::Aboard(_)
            | Self::Certified(_)
            | Self::Issued(_) => 3,
        }
    }
}

/// The facts of several items, each once.
pub(super) fn of_items(trips: &[&Trip<'_>], items: &[Item]) -> Vec<Fact> {
    let mut facts = Facts::default();
    for fact in items.iter().flat_map(|item| of_item(trips, *item)) {
        facts.add(fact);
    }
    facts.0.sort_by_key(Fact::rank);
    facts.0
}

/// The facts that an item hangs on, each once: those of the requirement itself,
/// or where it wants none those of all that want the same tools. A verdict hangs
/// on every required one that is open.
pub(super) fn of_item(trips: &[&Trip<'_>], (part, requirement): Item) -> Vec<Fact> {
    let parts = || trips.iter().enumerate().filter(|(index, _)| part.is_none_or(|p| p == *index));
    let mut facts = Facts::default();
    for (index, trip) in parts() {
        facts.of_trip(index, trip, |at, one| match requirement {
            Some(requirement) => requirement == one && at.outcomes[one].is_some(),
            None => {
                at.views[one].requirement.level == Level::Required
                    && at.outcomes[one] == Some(Outcome::CannotTell)
            }
        });
    }
    if facts.0.is_empty() {
        for (index, trip) in parts() {
            facts.of_trip(index, trip, |at, one| {
                let mut groups = at.rivals.iter().filter(|group| group.contains(&one));
                requirement.is_none_or(|of| groups.any(|group| group.contains(&of)))
            });
        }
    }
    facts.0.sort_by_key(Fact::rank);
    facts.0
}

#[derive(Default)]
struct Facts(Vec<Fact>);

impl Facts {
    fn add(&mut self, fact: Fact) {
        if !self.0.contains(&fact) {
            self.0.push(fact);
        }
    }

    /// The facts of the requirements that are meant.
    fn of_trip(
        &mut self,
        part: usize,
        trip: &Trip<'_>,
        meant: impl Fn(&Evaluation<'_>, usize) -> bool,
    ) {
        if let Some(at) = trip.evaluations.first() {
            let freeboard = &at.point.vessel.freeboard;
            for (index, station) in freeboard.stations.iter().enumerate() {
                let error = station.readings.iter().any(|reading| reading.error.is_some());
                if freeboard.from == at.point.profile.freeboard_from
                    && (station.readings.len() > 1 || error)
                {
                    self.add(Fact::Station(index));
                }
            }
        }
        for at in &trip.evaluations {
            for (index, view) in at.views.iter().enumerate() {
                if view.binds != Ok(false) && meant(at, index) {
                    self.of_view(part, index, view, at);
                }
            }
        }
    }

    fn of_view(&mut self, part: usize, index: usize, view: &View<'_>, at: &Evaluation<'_>) {
        let point = &at.point;
        if let Err(fact) = &view.binds {
            self.of_vessel(fact, point);
        }
        for reason in holders::reasons(view.requirement, point).into_iter().flatten() {
            self.of_reason((part, index), None, &reason, point);
        }
        for fitted in view.all_fits().iter().filter(|fitted| fitted.answer == Answer::Unknown) {
            for reason in view.reasons(fitted, point) {
                self.of_reason((part, index), Some(Thing::Tool(fitted.tool)), &reason, point);
            }
        }
        view.requirement.need.specs().for_each(|spec| self.of_limits(&spec.tests, point));
        self.of_deemed(part, index, view.requirement, point);
        if let Need::Tools { spare_for: Some(served), .. } = view.requirement.need {
            for fitted in view.all_fits().iter().filter(|fitted| fitted.answer != Answer::No) {
                if point.vessel.kit[fitted.tool].fits.is_empty() {
                    self.add(Fact::Fits { spare: fitted.tool, part, served });
                }
            }
        }
    }

    /// What any limit of an attribute is a share of: another requirement may come
    /// to want the same tool by it.
    fn of_attribute(&mut self, attribute: AttributeId, point: &Point<'_>) {
        for requirement in &point.profile.requirements {
            each_test(requirement, &mut |test| match test {
                Test::Limit { attribute: of, limit, .. } if *of == attribute => {
                    let missing = limit::missing_fact(limit, point);
                    missing.into_iter().for_each(|fact| self.of_vessel(&fact, point));
                }
                _ => {}
            });
        }
    }

    /// What the limits are shares of: until it is given nobody can say which
    /// figures matter.
    fn of_limits(&mut self, tests: &[Test], point: &Point<'_>) {
        Test::each(tests, &mut |test| {
            if let Test::Limit { limit, .. } = test
                && let Some(fact) = limit::missing_fact(limit, point)
            {
                self.of_vessel(&fact, point);
            }
        });
    }

    /// What is not known of the tools that are deemed to serve.
    fn of_deemed(
        &mut self,
        part: usize,
        index: usize,
        requirement: &Requirement,
        point: &Point<'_>,
    ) {
        for deemed in &requirement.deemed {
            self.of_limits(&deemed.tests, point);
            let kinds = point.profile.requirements[deemed.requirement].kinds();
            for (tool, listed) in point.vessel.kit.iter().enumerate() {
                if !kinds.contains(&listed.kind) {
                    continue;
                }
                let mut reasons: Vec<Reason> = Vec::new();
                satisfy::run(&deemed.tests, listed, Clauses::NONE, point, &mut reasons);
                for reason in &reasons {
                    self.of_reason((part, index), Some(Thing::Tool(tool)), reason, point);
                }
            }
        }
    }

    fn of_reason(
        &mut self,
        (part, requirement): (usize, usize),
        thing: Option<Thing>,
        reason: &Reason,
        point: &Point<'_>,
    ) {
        let tool = match thing {
            Some(Thing::Tool(tool)) => Some(tool),
            _ => None,
        };
        match reason {
            Reason::Unmeasured { attribute, .. } | Reason::Disputed { attribute, .. } => {
                self.of_attribute(*attribute, point);
                thing.into_iter().for_each(|thing| self.add(Fact::Attribute(thing, *attribute)));
            }
            Reason::StateUnknown => {
                let unknown = |tool: &usize| point.vessel.kit[*tool].state == State::Unknown;
                self.of_tool_and_parts(tool, point, unknown, Fact::Works);
            }
            Reason::WhereaboutsUnknown => {
                let unknown =
                    |tool: &usize| point.vessel.kit[*tool].whereabouts == Whereabouts::Unknown;
                self.of_tool_and_parts(tool, point, unknown, Fact::There);
            }
            Reason::InspectionUndated => {
                tool.into_iter().for_each(|tool| self.add(Fact::Inspected(tool)))
            }
            Reason::AcquiredUnknown { .. } => {
                tool.into_iter().for_each(|tool| self.add(Fact::Acquired(tool)))
            }
            Reason::ExpiryDisputed { .. } => {
                let disputed = |tool: &usize| point.vessel.kit[*tool].disputes.expiry.is_some();
                self.of_tool_and_parts(tool, point, disputed, Fact::Expires);
            }
            Reason::KindDisputed { .. } => {
                let disputed = |tool: &usize| !point.vessel.kit[*tool].disputes.kinds.is_empty();
                self.of_tool_and_parts(tool, point, disputed, Fact::Kind);
            }
            Reason::PersonDisputed { person } => self.add(Fact::Aboard(person.clone())),
            Reason::CertificateDisputed { person } => self.add(Fact::Certified(person.clone())),
            Reason::CertificateUndated { person } => self.add(Fact::Issued(person.clone())),
            Reason::GearOutside { piece, why } => {
                let thing = piece_named(point.vessel, piece);
                self.of_reason((part, requirement), thing, why, point);
            }
            Reason::BindingUnknown { fact } | Reason::VesselFactUnknown { fact } => {
                self.of_vessel(fact, point)
            }
            Reason::WordingDisputed { attributes } => {
                self.add(Fact::Wording { part, requirement, attributes: attributes.clone() });
            }
            Reason::Approximate { attribute, limit, .. } => {
                let (attribute, limit) = (*attribute, Arc::clone(limit));
                self.add(Fact::Tolerance { part, requirement, attribute, limit });
            }
            // What nobody listed is free on either pass, and what the search
            // could not finish is no fact.
            Reason::NotListed { .. }
            | Reason::SpareFitUnknown
            | Reason::HangsOn { .. }
            | Reason::TooManyWays
            | Reason::TooManyFacts
            | Reason::NotEncoded
            | Reason::NoEdition { .. } => {}
            // Faults.
            _ => debug_assert!(!reason.is_open(), "{reason:?}"),
        }
    }

    /// A tool, or the parts that it is put together from.
    fn of_tool_and_parts(
        &mut self,
        tool: Option<usize>,
        point: &Point<'_>,
        unknown: impl Fn(&usize) -> bool,
        fact: impl Fn(usize) -> Fact,
    ) {
        let Some(tool) = tool else { return };
        let kit = &point.vessel.kit;
        let part = |index: &usize| kit[tool].parts.contains(&kit[*index].mark);
        let concerned = (0..kit.len()).filter(|index| *index == tool || part(index));
        concerned.filter(unknown).for_each(|index| self.add(fact(index)));
    }

    fn of_vessel(&mut self, fact: &VesselFact, point: &Point<'_>) {
        let vessel = point.vessel;
        match fact {
            VesselFact::Freeboard => self.add(Fact::Freeboard),
            VesselFact::FreeboardFrom => {
                let freeboard = &vessel.freeboard;
                let beside =
                    |name: &Option<String>| freeboard.other.iter().any(|other| other.name == *name);
                for (index, station) in freeboard.stations.iter().enumerate() {
                    if !beside(&station.name) {
                        self.add(Fact::Bulwark(index));
                    }
                }
            }
            VesselFact::FreeboardDisputed => {}
            VesselFact::Permits | VesselFact::Gear | VesselFact::Areas => {
                self.add(Fact::Tags(fact.clone()))
            }
            VesselFact::Feature(feature) => self.add(Fact::Feature(feature.clone())),
            VesselFact::Hooks => {
                self.of_pieces("hook", Thing::Hook, &vessel.hooks, "wire", point.vocabulary, vessel)
            }
            VesselFact::Lines => self.of_pieces(
                "fishing-line",
                Thing::Line,
                &vessel.lines,
                "diameter",
                point.vocabulary,
                vessel,
            ),
            VesselFact::People => self.add(Fact::People),
            VesselFact::Aboard(kind) => self.of_kind(*kind, vessel),
        }
    }

    /// Hooks or lines whose thickness matters.
    fn of_pieces(
        &mut self,
        kind: &str,
        thing: impl Fn(usize) -> Thing,
        pieces: &Option<Vec<GearPiece>>,
        key: &str,
        vocabulary: &Vocabulary,
        vessel: &Vessel,
    ) {
        let attributes = [
            vocabulary.find_attribute(key),
            vocabulary.find_attribute("part").filter(|_| key == "diameter"),
        ];
        for (index, piece) in pieces.iter().flatten().enumerate() {
            for attribute in attributes.into_iter().flatten() {
                if piece.tool.readings(attribute).len() != 1 {
                    self.add(Fact::Attribute(thing(index), attribute));
                }
            }
        }
        let Some(kind) = vocabulary.find_kind(kind) else { return };
        // Where none is listed hooks hang on some line all the same.
        if pieces.as_ref().is_none_or(Vec::is_empty) || !vessel.coverage.is_whole(kind) {
            self.add(Fact::Unlisted(kind));
        }
    }

    /// Whether something of a kind is aboard and works.
    fn of_kind(&mut self, kind: KindId, vessel: &Vessel) {
        for (index, tool) in vessel.kit.iter().enumerate().filter(|(_, tool)| tool.kind == kind) {
            if tool.state == State::Unknown {
                self.add(Fact::Works(index));
            }
            if tool.whereabouts == Whereabouts::Unknown {
                self.add(Fact::There(index));
            }
            if tool.disputes.expiry.is_some() {
                self.add(Fact::Expires(index));
            }
            if !tool.disputes.kinds.is_empty() {
                self.add(Fact::Kind(index));
            }
        }
        if !vessel.coverage.is_whole(kind) {
            self.add(Fact::Unlisted(kind));
        }
    }
}

fn piece_named(vessel: &Vessel, name: &str) -> Option<Thing> {
    let at =
        |list: &Option<Vec<GearPiece>>| list.iter().flatten().position(|piece| piece.name == name);
    at(&vessel.hooks).map(Thing::Hook).or_else(|| at(&vessel.lines).map(Thing::Line))
}

/// Shows each test of a requirement, groups themselves too.
pub(super) fn each_test<'a>(requirement: &'a Requirement, see: &mut dyn FnMut(&'a Test)) {
    let specs = requirement.need.specs().map(|spec| &spec.tests);
    for tests in specs.chain(requirement.deemed.iter().map(|deemed| &deemed.tests)) {
        in_order(tests, see);
    }
}

fn in_order<'a>(tests: &'a [Test], see: &mut dyn FnMut(&'a Test)) {
    for test in tests {
        see(test);
        if let Test::AnyOf(groups) | Test::Readings(groups) = test {
            groups.iter().for_each(|group| in_order(group, see));
        }
    }
}
