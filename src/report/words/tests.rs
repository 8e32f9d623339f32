//! The words of single reasons, remedies and steps.

use super::Words;
use crate::measure::{Day, Units};
use crate::model::finding::{
    Because, Clash, Deed, GoodUpTo, Outcome, ReadyUntil, Step, Target, Verdict,
};
use crate::model::profile::Profile;
use crate::model::reason::{Demand, DisputedReading, Has, Reason, VesselFact};
use crate::model::vessel::Vessel;
use crate::model::vocabulary::{AttributeId, Vocabulary};
use crate::report::sample::{
    self, CUTTER, GUARD, HANDLE, OVERALL, PLACARD, PLIERS, STEEL, figure, length, reckoned,
};

struct Stage {
    vocabulary: Vocabulary,
    vessel: Vessel,
    profile: Profile,
}

impl Stage {
    fn new() -> Self {
        Self {
            vocabulary: sample::vocabulary(),
            vessel: sample::vessel(),
            profile: sample::profile(),
        }
    }

    fn words(&self, units: Units) -> Words<'_> {
        Words { vocabulary: &self.vocabulary, vessel: &self.vessel, profile: &self.profile, units }
    }

    fn reason(&self, reason: &Reason) -> String {
        self.words(Units::Both).reason(reason)
    }

    fn remedy(&self, outcome: Outcome, tool: Option<usize>, reasons: Vec<Reason>) -> String {
        let reasons = reasons.into_iter().map(|reason| Because { tool, reason }).collect();
        let finding = sample::finding(0, outcome, reasons);
        self.words(Units::Both).remedy(&finding, &[]).unwrap_or_default()
    }
}

fn day(text: &str) -> Day {
    sample::day(text)
}

fn unmeasured() -> Reason {
    let demand = Demand::Least(reckoned("6 ft 4 1/2 in"));
    Reason::Unmeasured { attribute: HANDLE, demand }
}

#[test]
fn a_short_handle_tells_by_how_much_and_at_which_freeboard() {
    let stage = Stage::new();
    assert_eq!(
        stage.reason(&sample::too_short()),
        "handle 6 ft 4 in (1.93 m) is 1/2 in (13 mm) too short for the rail; at a freeboard of \
         4 ft 3 in (1.295 m) it must be at least 6 ft 4 1/2 in (1.944 m)"
    );
    assert_eq!(
        stage.words(Units::Metric).reason(&sample::too_short()),
        "handle 1.93 m is 13 mm too short for the rail; at a freeboard of 1.295 m it must be at \
         least 1.944 m"
    );
}

#[test]
fn every_reason_has_words_of_its_own() {
    let stage = Stage::new();
    let texts: Vec<String> = every_reason().iter().map(|reason| stage.reason(reason)).collect();
    for (reason, text) in every_reason().iter().zip(&texts) {
        assert!(!text.is_empty() && !text.ends_with('.'), "{}: {text}", reason.code());
        assert!(text.is_ascii() && !text.contains("  "), "{}: {text}", reason.code());
    }
    let mut sorted = texts.clone();
    sorted.sort();
    sorted.dedup();
    assert_eq!(sorted.len(), texts.len(), "two reasons share their words");
}

#[test]
fn every_reason_leads_to_a_remedy() {
    let stage = Stage::new();
    for reason in every_reason() {
        let outcome = if reason.is_open() { Outcome::CannotTell } else { Outcome::NotMet };
        for tool in [None, Some(0)] {
            let text = stage.remedy(outcome, tool, vec![reason.clone()]);
            assert!(!text.is_empty(), "{} {tool:?}", reason.code());
        }
    }
    assert_eq!(
        stage.words(Units::Both).remedy(&sample::finding(0, Outcome::Met, vec![]), &[]),
        None
    );
}

/// One of each, so that none is forgotten: a new variant fails to compile in
/// `words::reasons` first.
fn every_reason() -> Vec<Reason> {
    let since = day("2026-03-05");
    let demand = Demand::Least(figure("6 ft"));
    let has = Has::Figure(figure("5 ft"));
    let reading = |text: &str| DisputedReading {
        has: Has::Figure(figure(text)),
        by: Some("A. Person".into()),
        on: Some(since),
    };
    let about = crate::model::rule::Limit::About {
        low: figure("12 in"),
        high: figure("12 in"),
        margin: figure("1 in"),
    };
    vec![
        Reason::NothingAboard { kinds: vec![CUTTER, PLIERS] },
        Reason::TooFew { kind: PLIERS, have: 1, need: 2 },
        Reason::TooFewTypes {
            have: 1,
            need: 2,
            complete: vec!["hank of rope".into()],
            incomplete: vec!["set of gags".into()],
        },
        sample::too_short(),
        Reason::OutOfSpecification { attribute: OVERALL, has, demand: demand.clone(), by: None },
        Reason::NoAlternative { attributes: vec![HANDLE, GUARD] },
        Reason::AcquiredTooLate { acquired: since, before: since },
        Reason::NotServiceable,
        Reason::NotAboard { lent_to: Some("Berberecho".into()) },
        Reason::NotAboard { lent_to: None },
        Reason::Missing,
        Reason::InspectionLapsed { since },
        Reason::Expired { since },
        Reason::LapsesDuringTrip { on: since, inspection: true },
        Reason::LapsesDuringTrip { on: since, inspection: false },
        Reason::Taken { requirement: 1 },
        Reason::PartTaken { part: "H-1".into() },
        Reason::FitsNothing { requirement: 0 },
        Reason::NoCertificate { role: Some("owner".into()), have: 0, need: 1, lapsed: Some(since) },
        Reason::NoCertificate { role: None, have: 1, need: 2, lapsed: None },
        Reason::GearOutside { piece: "big hooks".into(), why: Box::new(Reason::NotServiceable) },
        unmeasured(),
        Reason::Disputed {
            attribute: HANDLE,
            readings: vec![reading("5 ft"), reading("6 ft")],
            demand,
        },
        Reason::Approximate { attribute: OVERALL, has: figure("10 in"), limit: about.into() },
        Reason::WordingDisputed { attributes: vec![HANDLE] },
        Reason::StateUnknown,
        Reason::WhereaboutsUnknown,
        Reason::InspectionUndated,
        Reason::AcquiredUnknown { before: since },
        Reason::NotListed { kinds: vec![CUTTER] },
        Reason::SpareFitUnknown,
        Reason::CertificateUndated { person: "A. Person".into() },
        Reason::BindingUnknown { fact: VesselFact::Permits },
        Reason::VesselFactUnknown { fact: VesselFact::Freeboard },
        Reason::TooManyWays,
        Reason::NotEncoded,
        Reason::NoEdition { day: since },
    ]
}

#[test]
fn every_missing_fact_has_words_and_a_way_to_find_it_out() {
    let stage = Stage::new();
    let words = stage.words(Units::Both);
    let facts = [
        VesselFact::Freeboard,
        VesselFact::FreeboardFrom,
        VesselFact::FreeboardDisputed,
        VesselFact::Permits,
        VesselFact::Gear,
        VesselFact::Areas,
        VesselFact::Feature("wheelhouse".into()),
        VesselFact::Hooks,
        VesselFact::Lines,
        VesselFact::People,
        VesselFact::Aboard(PLIERS),
    ];
    let texts: Vec<_> = facts.iter().map(|fact| words.unknown(fact)).collect();
    let mut distinct = texts.clone();
    distinct.sort();
    distinct.dedup();
    assert_eq!(distinct.len(), facts.len());
    assert!(facts.iter().all(|fact| !words.find_out(fact).is_empty()));
    assert_eq!(texts[6], "nobody said whether the vessel has a wheelhouse");
}

#[test]
fn a_short_tool_is_lengthened_before_one_is_bought() {
    let stage = Stage::new();
    assert_eq!(
        stage.remedy(Outcome::NotMet, Some(0), vec![sample::too_short()]),
        "lengthen LC-1 or bring one with a handle of at least 6 ft 4 1/2 in (1.944 m)"
    );
    assert_eq!(
        stage.remedy(Outcome::NotMet, Some(0), vec![Reason::NotServiceable, sample::too_short()]),
        "repair LC-1 and lengthen LC-1, or bring one with a handle of at least 6 ft 4 1/2 in \
         (1.944 m)"
    );
}

#[test]
fn what_cannot_be_mended_is_replaced() {
    let stage = Stage::new();
    let reason = Reason::OutOfSpecification {
        attribute: OVERALL,
        has: Has::Figure(figure("10 in")),
        demand: Demand::Least(figure("11 in")),
        by: None,
    };
    assert_eq!(
        stage.remedy(Outcome::NotMet, Some(1), vec![reason]),
        "bring another pliers: overall length at least 11 in (280 mm)"
    );
}

#[test]
fn what_is_not_aboard_is_brought_with_the_figures_worked_out() {
    let stage = Stage::new();
    let kinds = vec![CUTTER];
    assert_eq!(
        stage.remedy(Outcome::NotMet, None, vec![Reason::NothingAboard { kinds }]),
        "bring a long-handled line cutter: handle at least 6 ft 4 1/2 in (1.944 m), protected \
         blade"
    );
}

#[test]
fn a_missing_figure_is_measured_and_its_limit_told() {
    let stage = Stage::new();
    assert_eq!(
        stage.remedy(Outcome::CannotTell, Some(0), vec![unmeasured()]),
        "measure the handle of LC-1 (from the grip end to where the head begins); it must be at \
         least 6 ft 4 1/2 in (1.944 m)"
    );
    let hidden = Reason::Unmeasured { attribute: STEEL, demand: Demand::Is(true) };
    assert_eq!(
        stage.remedy(Outcome::CannotTell, Some(0), vec![hidden]),
        "get a dated statement that LC-1 conforms to Part A, 1 (rustless steel)"
    );
}

#[test]
fn a_document_is_seen_to() {
    let stage = Stage::new();
    let reason = Reason::OutOfSpecification {
        attribute: GUARD,
        has: Has::Feature(false),
        demand: Demand::Is(true),
        by: None,
    };
    assert_eq!(stage.vessel.kit[2].kind, PLACARD);
    assert_eq!(
        stage.remedy(Outcome::NotMet, Some(2), vec![reason]),
        "see to HP-1: protected blade"
    );
}

#[test]
fn a_clash_names_the_needs_and_the_tools() {
    let mut stage = Stage::new();
    let clash = Clash { requirements: vec![0, 1], tools: vec![1] };
    assert_eq!(
        stage.words(Units::Both).clash(&clash),
        "Long-handled line clipper or cutter / Long-nose pliers: either can be met, not both; \
         there is only PL-1, and a tool counts once"
    );
    let clash = Clash { requirements: vec![0, 1], tools: vec![0, 1] };
    stage.vessel.kit[0].parts = vec!["POLE".into()];
    stage.vessel.kit[1].parts = vec!["POLE".into()];
    let text = stage.words(Units::Both).clash(&clash);
    assert!(text.ends_with("LC-1 and PL-1 share POLE, which serves one tool at a time"), "{text}");
}

#[test]
fn several_missing_figures_make_one_errand() {
    let stage = Stage::new();
    let feature = |attribute| Reason::Unmeasured { attribute, demand: Demand::Is(true) };
    let overall = Reason::Unmeasured { attribute: OVERALL, demand: Demand::Most(figure("9 ft")) };
    let text = stage.remedy(
        Outcome::CannotTell,
        Some(0),
        vec![unmeasured(), feature(GUARD), overall.clone(), feature(STEEL)],
    );
    assert!(text.contains("; look at LC-1 and write down: protected blade; get a dated"), "{text}");
    let three = vec![
        unmeasured(),
        overall,
        Reason::Unmeasured { attribute: AttributeId(4), demand: Demand::Open },
    ];
    assert_eq!(
        stage.remedy(Outcome::CannotTell, Some(0), three),
        "measure on LC-1: handle at least 6 ft 4 1/2 in (1.944 m), overall length at most 9 ft \
         (2.743 m), reach"
    );
}

#[test]
fn a_repair_is_enough_where_one_tool_is_wanting_and_not_where_two_are() {
    let stage = Stage::new();
    let because = |tool, reason| Because { tool, reason };
    let remedy = |have| {
        let finding = sample::finding(
            1,
            Outcome::NotMet,
            vec![
                because(None, Reason::TooFew { kind: PLIERS, have, need: 2 }),
                because(Some(1), Reason::NotServiceable),
            ],
        );
        stage.words(Units::Both).remedy(&finding, &[]).unwrap()
    };
    assert_eq!(remedy(1), "repair PL-1");
    assert_eq!(remedy(0), "bring 2 more: pliers");
}

#[test]
fn a_faulty_tool_is_replaced_only_if_it_is_asked_for() {
    let stage = Stage::new();
    let reasons = vec![
        Because { tool: None, reason: Reason::BindingUnknown { fact: VesselFact::Permits } },
        Because { tool: Some(1), reason: Reason::NotServiceable },
    ];
    let finding = sample::finding(1, Outcome::CannotTell, reasons);
    let words = stage.words(Units::Both);
    assert_eq!(
        words.remedy(&finding, &[]).unwrap(),
        "write down the permits that the vessel holds; if it is asked: repair PL-1"
    );
    assert_eq!(
        words.remedy(&finding, &[&VesselFact::Permits]).unwrap(),
        "if it is asked: repair PL-1"
    );
}

#[test]
fn what_is_unknown_is_not_called_not_ready() {
    let stage = Stage::new();
    let words = stage.words(Units::Both);
    let later = words.ready_until(ReadyUntil::None, Verdict::CannotTell);
    assert_eq!(later, "can't tell before the above is found out");
    assert_eq!(words.good_up_to(&GoodUpTo::None, Verdict::CannotTell), later);
    assert_eq!(words.ready_until(ReadyUntil::None, Verdict::NotReady), "not ready at departure");
}

#[test]
fn the_greatest_freeboard_rounds_down_and_names_what_gives_out() {
    let stage = Stage::new();
    let words = stage.words(Units::Both);
    let length = crate::measure::Length::from_nanometres(1_219_200_001).unwrap();
    let up_to = GoodUpTo::Freeboard { length, gives_out: vec![0] };
    assert_eq!(
        words.good_up_to(&up_to, Verdict::Ready),
        "a freeboard of 4 ft (1.219 m); above that, not met: Long-handled line clipper or cutter"
    );
    let below = GoodUpTo::OnlyBelow { length: length_of("4 ft"), gives_out: Vec::new() };
    assert!(words.good_up_to(&below, Verdict::NotReady).contains("less than this vessel has"));
}

fn length_of(text: &str) -> crate::measure::Length {
    length(text)
}

#[test]
fn a_step_tells_what_to_do_to_what() {
    let stage = Stage::new();
    let step = Step {
        deed: Deed::Lengthen,
        target: Target::Tool(0),
        requirement: 0,
        also: vec![1],
        slots: Vec::new(),
        reasons: vec![sample::too_short()],
    };
    let words = stage.words(Units::Customary);
    assert_eq!(words.step(&step, None), "lengthen LC-1 to a handle of at least 6 ft 4 1/2 in");
    assert_eq!(words.step_for(&step), "Long-handled line clipper or cutter and Long-nose pliers");
}
