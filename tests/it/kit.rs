//! Kits made to measure: a vessel with exactly the tools that a requirement
//! asks, written as a file, with single figures changed.

use crate::run;
use kitmuster::engine;
use kitmuster::load::{self, Library};
use kitmuster::measure::{Day, Quantity};
use kitmuster::model::check::{Inverses, Judgement};
use kitmuster::model::finding::{Action, FilledSlot, GoodUpTo, Outcome, Step, Target, WayToReady};
use kitmuster::model::profile::Profile;
use kitmuster::model::rule::Need;
use kitmuster::model::vessel::{Datum, Tool, Vessel};
use kitmuster::model::vocabulary::{Class, Vocabulary};
use std::fmt::Write as _;
use std::sync::Arc;

/// The day on which made-to-measure kits are checked.
pub(crate) const DAY: &str = "2026-03-02";

pub(crate) fn library() -> Library {
    Library::shipped().unwrap_or_else(|refusal| panic!("{refusal:#?}"))
}

/// The sample vessels, in the order of their files.
pub(crate) fn vessels(library: &Library) -> Vec<Vessel> {
    let mut paths: Vec<_> = std::fs::read_dir(run::home().join("vessels"))
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.extension().is_some_and(|e| e == "yaml"))
        .collect();
    paths.sort();
    let read = |path| load::load_vessel(path, &library.vocabulary).unwrap().0;
    paths.iter().map(|path: &std::path::PathBuf| read(path)).collect()
}

/// A bare vessel with everything known of it but no tool.
pub(crate) fn bare(freeboard: &str) -> String {
    format!(
        "format: vessel/1
name: Test Kittiwake
freeboard: {freeboard}
permits: []
gear: [pelagic-longline]
areas: []
features: {{ wheelhouse: yes }}
hooks:
  - {{ name: circle hooks, type: circle, size: 18/0, offset: 0 degrees, wire: 3 mm, round-wire: yes, outer-diameter: 56 mm, gap: 28 mm, corrodible: yes }}
lines:
  - {{ name: mainline, diameter: 2 mm }}
people:
  - name: A. Holder
    roles: [owner, operator]
    certificates: [{{ kind: workshop certificate, issued: 2026-01-02 }}]
"
    )
}

/// Which alternative of which type of a requirement is wanted.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Wanted<'a> {
    pub(crate) requirement: &'a str,
    /// The id of the kind that is to serve.
    pub(crate) kind: &'a str,
}

/// The vessel at that freeboard with just the tools that serve the
/// requirement, the named kind among them.
pub(crate) fn made_for(
    profile: &Arc<Profile>,
    vocabulary: &Vocabulary,
    freeboard: &str,
    wanted: Wanted<'_>,
) -> Vessel {
    let (vessel, _) =
        load::read_vessel("bare.yaml", &format!("{}kit: []\n", bare(freeboard)), vocabulary)
            .unwrap_or_else(|refusal| panic!("{refusal:#?}"));
    let day = Day::parse(DAY).unwrap();
    let mut judgement = judged(profile, vocabulary, &vessel);
    let steps = steps_for(profile, vocabulary, wanted);
    assert!(!steps.is_empty(), "{wanted:?} names nothing in {}", profile.id);
    judgement.inverses = Some(Inverses {
        good_up_to: GoodUpTo::None,
        stretches: Vec::new(),
        clashes: Vec::new(),
        way: WayToReady::Steps { steps, fewest: false },
    });
    engine::repaired(vocabulary, &vessel, &judgement, day)
}

/// What the engine says of a vessel by one profile, without the inverses.
fn judged(profile: &Arc<Profile>, vocabulary: &Vocabulary, vessel: &Vessel) -> Judgement {
    let day = Day::parse(DAY).unwrap();
    let mut check = engine::check(&engine::Request {
        vocabulary,
        profiles: &[],
        asked: std::slice::from_ref(profile),
        vessel,
        inspections: &[],
        departure: day,
        back: Some(day),
        trust: kitmuster::model::vessel::Trust::All,
        depth: engine::Depth::Findings,
    });
    check.judgements.remove(0)
}

/// The vessel with one figure or word changed: of the tool of that kind (its
/// `member`, where there are several), in a reading that it already has.
pub(crate) fn with_datum(
    vessel: &Vessel,
    vocabulary: &Vocabulary,
    (kind, member): (&str, usize),
    attribute: &str,
    datum: Datum,
) -> Vessel {
    let mut vessel = vessel.clone();
    let attribute = vocabulary.find_attribute(attribute).unwrap();
    let of_kind = |tool: &&mut Tool| vocabulary.kind(tool.kind).id == kind;
    let tool = vessel.kit.iter_mut().filter(of_kind).nth(member).unwrap();
    let reading = tool.readings(attribute).first().cloned();
    let mut reading = reading.unwrap_or_else(|| panic!("{kind} has no reading to change"));
    reading.datum = datum;
    tool.set(attribute, vec![reading]);
    vessel
}

/// The outcome of a requirement for a vessel that is written out and read
/// again: `met`, `not-met`, `cannot-tell`, or `unbound` without a finding.
pub(crate) fn outcome(
    library: &Library,
    vessel: &Vessel,
    freeboard: &str,
    profile: &str,
    requirement: &str,
) -> &'static str {
    let text = to_yaml(vessel, freeboard, &library.vocabulary);
    let (vessel, _) = load::read_vessel("vessel.yaml", &text, &library.vocabulary)
        .unwrap_or_else(|refusal| panic!("{refusal:#?}\n{text}"));
    let judgement = judged(library.find(profile).unwrap(), &library.vocabulary, &vessel);
    let index = judgement.profile.requirements.iter().position(|r| r.id == requirement).unwrap();
    match judgement.findings.iter().find(|finding| finding.requirement == index) {
        None => "unbound",
        Some(finding) => match finding.outcome {
            Outcome::Met => "met",
            Outcome::NotMet => "not-met",
            Outcome::CannotTell => "cannot-tell",
        },
    }
}

fn steps_for(profile: &Profile, vocabulary: &Vocabulary, wanted: Wanted<'_>) -> Vec<Step> {
    let index = profile.requirements.iter().position(|r| r.id == wanted.requirement);
    let index =
        index.unwrap_or_else(|| panic!("no requirement {} in {}", wanted.requirement, profile.id));
    let Need::Tools { least, types, spare_for } = &profile.requirements[index].need else {
        panic!("{} wants no tools", wanted.requirement);
    };
    assert!(spare_for.is_none());
    let has_kind = |of_type: usize| {
        types[of_type]
            .members
            .iter()
            .flat_map(|m| &m.choices)
            .any(|spec| vocabulary.kind(spec.kind).id == wanted.kind)
    };
    let main = (0..types.len()).find(|t| has_kind(*t));
    let others = (0..types.len()).filter(|t| Some(*t) != main);
    let others = others.take(usize::try_from(*least).unwrap() - 1);
    main.into_iter()
        .chain(others)
        .map(|of_type| {
            let slots = types[of_type].members.iter().enumerate().map(|(member, m)| {
                let choice =
                    m.choices.iter().position(|s| vocabulary.kind(s.kind).id == wanted.kind);
                FilledSlot { of_type, member, choice: choice.unwrap_or(0), count: m.count }
            });
            Step {
                action: Action::Acquire,
                target: Target::Type(of_type),
                requirement: index,
                also: Vec::new(),
                slots: slots.collect(),
                reasons: Vec::new(),
            }
        })
        .collect()
}

/// The vessel as a file.
pub(crate) fn to_yaml(vessel: &Vessel, freeboard: &str, vocabulary: &Vocabulary) -> String {
    let mut text = bare(freeboard);
    let (documents, tools): (Vec<_>, Vec<_>) =
        vessel.kit.iter().partition(|t| vocabulary.kind(t.kind).class == Class::Document);
    for (key, list) in [("kit", tools), ("documents", documents)] {
        writeln!(text, "{key}:{}", if list.is_empty() { " []" } else { "" }).unwrap();
        for tool in list {
            tool_yaml(tool, vocabulary, &mut text);
        }
    }
    text
}

fn tool_yaml(tool: &Tool, vocabulary: &Vocabulary, text: &mut String) {
    let document = vocabulary.kind(tool.kind).class == Class::Document;
    writeln!(text, "  - mark: {}\n    kind: {}", tool.mark, vocabulary.kind(tool.kind).id).unwrap();
    if !document {
        writeln!(text, "    condition: serviceable\n    count: {}", tool.count).unwrap();
    }
    if let Some(day) = tool.inspected {
        writeln!(text, "    inspected: {day}").unwrap();
    }
    if !tool.fits.is_empty() {
        writeln!(text, "    fits: [{}]", tool.fits.join(", ")).unwrap();
    }
    for (attribute, readings) in &tool.attributes {
        let id = &vocabulary.attribute(*attribute).id;
        writeln!(text, "    {id}: {}", datum(&readings[0].datum)).unwrap();
    }
}

fn datum(datum: &Datum) -> String {
    match datum {
        Datum::Figure(figure) => match figure.quantity {
            Quantity::Length(length) => exact(length.nanometres()),
            other => match other {
                Quantity::Mass(mass) => format!("{} g", decimal(mass.micrograms())),
                _ => figure.written.clone(),
            },
        },
        Datum::Feature(has) => if *has { "yes" } else { "no" }.to_owned(),
        Datum::Word(word) => format!("\"{word}\""),
    }
}

/// A count of nanometres as millimetres to the last digit.
pub(crate) fn exact(nanometres: i64) -> String {
    format!("{} mm", decimal(nanometres))
}

fn decimal(millionths: i64) -> String {
    format!("{}.{:06}", millionths / 1_000_000, millionths % 1_000_000)
}
