//! A small vessel, profile and vocabulary for the tests of this floor. The
//! figures are invented, save that the reach rule has the shape of 50 CFR
//! part 622 Appendix F, A.1 (150 % of freeboard, at least 6 ft).

use crate::measure::{
    Day, DaySpan, Figure, Length, LengthUnit, Quantity, QuantityKind, Rounding, System,
};
use crate::model::check::{Check, Inverses, Judgement, Notice, Why};
use crate::model::finding::{
    Asked, Because, Finding, GoodUpTo, Outcome, ReadyUntil, Serving, Verdict, WayToReady,
};
use crate::model::place::Place;
use crate::model::profile::{
    Binds, FreeboardFrom, Level, Profile, Requirement, Standing, Verified,
};
use crate::model::reason::{Demand, DisputedReading, Has, Reason, VesselFact};
use crate::model::rule::{Base, Bound, Limit, Member, Need, Spec, Test, ToolType};
use crate::model::text::Text;
use crate::model::vessel::{
    Coverage, Freeboard, FreeboardReading, How, PlannedTrip, State, Station, Tool, Trust, Vessel,
};
use crate::model::vocabulary::{
    Attribute, AttributeId, AttributeShape, Class, Kind, KindId, Tag, Tags, Vocabulary,
};
use std::collections::BTreeMap;
use std::sync::Arc;

/// The handle: a length that can be lengthened.
pub(super) const HANDLE: AttributeId = AttributeId(0);
/// A feature that an eye can show.
pub(super) const GUARD: AttributeId = AttributeId(1);
/// A feature that nobody can show on deck.
pub(super) const STEEL: AttributeId = AttributeId(2);
/// An overall length, which nobody can change.
pub(super) const OVERALL: AttributeId = AttributeId(3);
/// A cutter on a long handle.
pub(super) const CUTTER: KindId = KindId(0);
/// Pliers.
pub(super) const PLIERS: KindId = KindId(1);
/// A document.
pub(super) const PLACARD: KindId = KindId(2);

pub(super) fn day(text: &str) -> Day {
    Day::parse(text).unwrap()
}

pub(super) fn figure(text: &str) -> Figure {
    Figure::parse(text, QuantityKind::Length).unwrap()
}

pub(super) fn length(text: &str) -> Length {
    figure(text).length().unwrap()
}

pub(super) fn reckoned(text: &str) -> Figure {
    Figure::reckoned(Quantity::Length(length(text)), System::Customary, Rounding::Up)
}

fn attribute(id: &str, name: &str, shape: AttributeShape) -> Attribute {
    Attribute {
        id: id.into(),
        name: name.into(),
        measure: None,
        shown: id != "steel",
        may_be: BTreeMap::new(),
        also: BTreeMap::new(),
        lengthens: id == "handle",
        unit: LengthUnit::Feet,
        shape,
    }
}

fn kind(id: &str, name: &str, class: Class) -> Kind {
    let attributes = vec![HANDLE, GUARD, STEEL, OVERALL];
    Kind { id: id.into(), name: name.into(), also: Vec::new(), class, attributes, unit: None }
}

pub(super) fn vocabulary() -> Vocabulary {
    let length = || AttributeShape::Quantity(QuantityKind::Length);
    let mut handle = attribute("handle", "handle", length());
    handle.measure = Some("from the grip end to where the head begins".into());
    Vocabulary {
        attributes: vec![
            handle,
            attribute("guard", "protected blade", AttributeShape::Feature),
            attribute("steel", "rustless steel", AttributeShape::Feature),
            attribute("overall", "overall length", length()),
            attribute("reach", "reach", length()),
        ],
        kinds: vec![
            kind("long-line-cutter", "long-handled line cutter", Class::Tool),
            kind("pliers", "pliers", Class::Tool),
            kind("placard", "handling placard", Class::Document),
        ],
        vessel_features: Tags(BTreeMap::from([(
            "wheelhouse".into(),
            Tag { name: "a wheelhouse".into(), ..Tag::default() },
        )])),
        ..Vocabulary::default()
    }
}

pub(super) fn tool(mark: &str, kind: KindId, index: usize) -> Tool {
    let place = Place::new(&"vessel.yaml".into(), format!("kit[{index}]"));
    Tool { state: State::Serviceable, ..Tool::bare(mark, kind, 1, place) }
}

pub(super) fn vessel() -> Vessel {
    let reading = FreeboardReading {
        low: figure("4 ft 3 in"),
        high: figure("4 ft 3 in"),
        load: None,
        by: None,
        on: None,
        how: How::Measured,
        error: None,
        place: Place::default(),
    };
    Vessel {
        name: "Almeja".into(),
        register: Some("PA-007".into()),
        port: Some("Port Ansel".into()),
        declared: None,
        freeboard: Freeboard {
            from: FreeboardFrom::Rail,
            stations: vec![Station::of(vec![reading])],
            other: Vec::new(),
        },
        permits: None,
        gears: None,
        areas: None,
        features: BTreeMap::new(),
        kit: vec![tool("LC-1", CUTTER, 0), tool("PL-1", PLIERS, 1), tool("HP-1", PLACARD, 2)],
        hooks: None,
        lines: None,
        people: None,
        trip: PlannedTrip::default(),
        coverage: Coverage { everything: true, ..Coverage::default() },
        place: Place::new(&"vessel.yaml".into(), ""),
    }
}

fn requirement(id: &str, title: &str, kind: KindId, tests: Vec<Test>) -> Requirement {
    let spec = Spec { kind, clause: None, when: Vec::new(), tests };
    let member = Member { count: 1, choices: vec![spec] };
    let types = vec![ToolType { name: None, clause: None, members: vec![member] }];
    Requirement {
        id: id.into(),
        formerly: Vec::new(),
        title: Text::plain(title),
        level: Level::Required,
        clause: "Part A, 1".into(),
        verified: Verified::Read,
        note: None,
        span: DaySpan::ALWAYS,
        when: Vec::new(),
        unless: Vec::new(),
        need: Need::Tools { least: 1, types, spare_for: None },
        deemed: Vec::new(),
        shares: Vec::new(),
        inspection: None,
        place: Place::default(),
    }
}

pub(super) fn profile() -> Profile {
    let six_feet = Bound::Fixed { figure: figure("6 ft"), bracket: None };
    let percent = crate::measure::Percent::parse("150%").unwrap();
    let reach = Bound::Greater(vec![Bound::Share(percent, Base::Freeboard), six_feet]);
    let handle = Test::Limit {
        attribute: HANDLE,
        limit: Limit::AtLeast(reach),
        written: "at least the greater of 150% of freeboard and 6 ft".into(),
    };
    let guard = Test::Feature { attribute: GUARD, wanted: true };
    let mut pliers = requirement("pliers", "Long-nose pliers", PLIERS, Vec::new());
    pliers.verified = Verified::Memory;
    let mut second = requirement("spare-pliers", "Second pliers", PLIERS, Vec::new());
    second.level = Level::Recommended;
    Profile {
        id: "example-2024".into(),
        rule: "example".into(),
        edition: "2024".into(),
        encoding: 1,
        title: Text::plain("Example fishery"),
        source: "Example code part 1".into(),
        language: "en".into(),
        standing: Standing::Rule,
        in_force: DaySpan::ALWAYS,
        encoded: true,
        base: false,
        fallback: false,
        binds: Binds::default(),
        freeboard_from: FreeboardFrom::Rail,
        parts_shared: false,
        notes: Vec::new(),
        requirements: vec![
            requirement(
                "line-cutter",
                "Long-handled line clipper or cutter",
                CUTTER,
                vec![handle, guard],
            ),
            pliers,
            second,
        ],
        place: Place::default(),
    }
}

/// A long cutter that is half an inch short for the rail.
pub(super) fn too_short() -> Reason {
    Reason::TooShortForRail {
        attribute: HANDLE,
        has: figure("6 ft 4 in"),
        least: reckoned("6 ft 4 1/2 in"),
        short: length("1/2 in"),
        freeboard: length("4 ft 3 in"),
        overruled: Vec::new(),
    }
}

/// One of each, so that none is forgotten: a new variant fails to compile in
/// `words::reasons` first.
pub(super) fn every_reason() -> Vec<Reason> {
    let since = day("2026-03-05");
    let demand = Demand::Least(figure("6 ft"));
    let has = Has::Figure(figure("5 ft"));
    let reading = |text: &str| DisputedReading {
        has: Has::Figure(figure(text)),
        by: Some("A. Person".into()),
        on: Some(since),
        how: How::Label,
    };
    let about =
        Limit::About { low: figure("12 in"), high: figure("12 in"), margin: figure("1 in") };
    vec![
        Reason::NothingAboard { kinds: vec![CUTTER, PLIERS] },
        Reason::TooFew { kind: PLIERS, have: 1, need: 2 },
        Reason::TooFewTypes {
            have: 1,
            need: 2,
            complete: vec!["hank of rope".into()],
            incomplete: vec!["set of gags".into()],
        },
        too_short(),
        Reason::OutOfSpecification {
            attribute: OVERALL,
            has,
            demand: demand.clone(),
            by: Some(Quantity::Length(length("1 ft"))),
            overruled: vec![reading("6 ft 2 in")],
        },
        Reason::NoAlternative { attributes: vec![HANDLE, GUARD] },
        Reason::AcquiredTooLate { acquired: since.next(), before: since },
        Reason::NotServiceable,
        Reason::NotAboard { lent_to: Some("Berberecho".into()) },
        Reason::NotAboard { lent_to: None },
        Reason::Missing,
        Reason::InspectionLapsed { since },
        Reason::Expired { since },
        Reason::LapsesDuringTrip { on: since, inspection: true },
        Reason::LapsesDuringTrip { on: since, inspection: false },
        Reason::Taken { requirement: 1 },
        Reason::OneOfThese { requirements: vec![0, 1] },
        Reason::InEveryCase,
        Reason::PartTaken { part: "H-1".into() },
        Reason::FitsNothing { requirement: 0 },
        Reason::NoCertificate { role: Some("owner".into()), have: 0, need: 1, lapsed: Some(since) },
        Reason::NoCertificate { role: None, have: 1, need: 2, lapsed: None },
        Reason::GearOutside { piece: "big hooks".into(), why: Box::new(Reason::NotServiceable) },
        Reason::Unmeasured {
            attribute: HANDLE,
            has: None,
            demand: Demand::Least(reckoned("6 ft 4 1/2 in")),
        },
        Reason::Disputed {
            attribute: HANDLE,
            readings: vec![reading("5 ft"), reading("6 ft")],
            demand,
        },
        Reason::Approximate { attribute: OVERALL, has: figure("10 in"), limit: about.into() },
        Reason::WordingDisputed { attributes: vec![HANDLE] },
        Reason::StateUnknown,
        Reason::WhereaboutsUnknown,
        Reason::ExpiryDisputed { sure: since, last: since.next().next() },
        Reason::KindDisputed { kinds: vec![CUTTER, PLIERS], by_name: false },
        Reason::KindDisputed { kinds: vec![CUTTER, PLIERS], by_name: true },
        Reason::CertificateDisputed { person: "A. Person".into() },
        Reason::PersonDisputed { person: "A. Person".into() },
        Reason::InspectionUndated,
        Reason::AcquiredUnknown { before: since },
        Reason::NotListed { kinds: vec![CUTTER] },
        Reason::SpareFitUnknown,
        Reason::CertificateUndated { person: "A. Person".into() },
        Reason::BindingUnknown { fact: VesselFact::Permits },
        Reason::VesselFactUnknown { fact: VesselFact::Freeboard },
        Reason::HangsOn { requirement: 1 },
        Reason::TooManyWays,
        Reason::TooManyFacts,
        Reason::NotEncoded,
        Reason::NoEdition { day: since },
    ]
}

pub(super) fn finding(requirement: usize, outcome: Outcome, reasons: Vec<Because>) -> Finding {
    let serving = match outcome {
        Outcome::Met => vec![Serving { tool: requirement, count: 1, through: None }],
        _ => Vec::new(),
    };
    Finding {
        requirement,
        outcome,
        serving,
        certified: Vec::new(),
        reasons,
        freeboard: Some(length("4 ft 3 in")),
        day: day("2026-03-02"),
    }
}

/// What there is to say of a kit that is ready nowhere and by no means.
pub(super) fn inverses() -> Inverses {
    Inverses {
        good_up_to: GoodUpTo::None,
        stretches: Vec::new(),
        clashes: Vec::new(),
        way: WayToReady::None,
    }
}

/// The inverses of a judgement, to be changed.
pub(super) fn inverses_of(judgement: &mut Judgement) -> &mut Inverses {
    judgement.inverses.get_or_insert_with(inverses)
}

pub(super) fn judgement(verdict: Verdict, findings: Vec<Finding>) -> Judgement {
    Judgement {
        profile: Arc::new(profile()),
        why: Why::Binds,
        days: DaySpan { from: Some(day("2026-03-02")), until: Some(day("2026-03-09")) },
        verdict,
        findings,
        ready_until: ReadyUntil::None,
        inverses: Some(inverses()),
        left_open: Vec::new(),
    }
}

pub(super) fn check(judgements: Vec<Judgement>, notices: Vec<Notice>) -> Check {
    Check {
        vessel: vessel(),
        asked: Asked { departure: day("2026-03-02"), back: day("2026-03-09"), trust: Trust::All },
        verdict: judgements.iter().map(|j| j.verdict).max().unwrap_or(Verdict::CannotTell),
        judgements,
        notices,
    }
}

/// Not ready: the cutter too short, the pliers met, second pliers wanting.
pub(super) fn not_ready() -> Check {
    let because = Because { tool: Some(0), reason: too_short() };
    let nothing = Because { tool: None, reason: Reason::NothingAboard { kinds: vec![PLIERS] } };
    let findings = vec![
        finding(0, Outcome::NotMet, vec![because]),
        finding(1, Outcome::Met, Vec::new()),
        finding(2, Outcome::NotMet, vec![nothing]),
    ];
    check(vec![judgement(Verdict::NotReady, findings)], Vec::new())
}
