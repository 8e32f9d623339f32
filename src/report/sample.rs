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
use crate::model::reason::Reason;
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
