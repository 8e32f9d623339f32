//! The words of single reasons, remedies and steps.

use super::Words;
use crate::measure::{Day, Units};
use crate::model::check::Judgement;
use crate::model::finding::{
    Action, Because, Clash, FilledSlot, Finding, GoodUpTo, Outcome, ReadyUntil, Step, Target,
    Verdict,
};
use crate::model::profile::Profile;
use crate::model::reason::{Demand, Has, Reason, VesselFact};
use crate::model::rule::Need;
use crate::model::vessel::{GearPiece, Person, Split, State, Tool, Vessel};
use crate::model::vocabulary::{AttributeId, Vocabulary};
use crate::report::Locale;
use crate::report::sample::{
    self, CUTTER, GUARD, HANDLE, OVERALL, PLACARD, PLIERS, STEEL, every_reason, figure, length,
    reckoned,
};

mod limits;
mod remedies;
mod steps;

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

    fn words(&self, locale: Locale) -> Words<'_> {
        Words {
            vocabulary: &self.vocabulary,
            vessel: &self.vessel,
            profile: &self.profile,
            findings: &[],
            locale,
        }
    }

    fn reason(&self, reason: &Reason) -> String {
        self.words(Locale::from(Units::Both)).reason(reason)
    }

    fn remedy(&self, outcome: Outcome, tool: Option<usize>, reasons: Vec<Reason>) -> String {
        let reasons = reasons.into_iter().map(|reason| Because { tool, reason }).collect();
        let finding = sample::finding(0, outcome, reasons);
        self.words(Locale::from(Units::Both)).remedy(&finding, &[]).unwrap_or_default()
    }
}

fn day(text: &str) -> Day {
    sample::day(text)
}

fn unmeasured() -> Reason {
    let demand = Demand::Least(reckoned("6 ft 4 1/2 in"));
    Reason::Unmeasured { attribute: HANDLE, has: None, demand }
}

#[test]
fn a_short_handle_tells_by_how_much_and_at_which_freeboard() {
    let stage = Stage::new();
    assert_eq!(
        stage.reason(&sample::too_short()),
        "handle 6 ft 4 in (1.93 m) is 1/2 in (12.7 mm) too short for the rail; at a freeboard of \
         4 ft 3 in (1.295 m) it must be at least 6 ft 4 1/2 in (1.944 m)"
    );
    assert_eq!(
        stage.words(Locale::from(Units::Metric)).reason(&sample::too_short()),
        "handle 1.93 m is 12.7 mm too short for the rail; at a freeboard of 1.295 m it must be at \
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
        stage
            .words(Locale::from(Units::Both))
            .remedy(&sample::finding(0, Outcome::Met, vec![]), &[]),
        None
    );
}

#[test]
fn every_missing_fact_has_words_and_a_way_to_find_it_out() {
    let stage = Stage::new();
    let words = stage.words(Locale::from(Units::Both));
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
fn a_list_that_is_written_lacks_a_name_and_not_itself() {
    let mut stage = Stage::new();
    let facts = [VesselFact::Permits, VesselFact::Gear, VesselFact::Areas];
    let told = |stage: &Stage| {
        let words = stage.words(Locale::from(Units::Both));
        facts.each_ref().map(|fact| format!("{}: {}", words.unknown(fact), words.find_out(fact)))
    };
    for text in told(&stage) {
        assert!(text.starts_with("nobody said ") && !text.contains("kitmuster words"), "{text}");
    }
    let written = || Some(vec!["crab".to_owned()]);
    (stage.vessel.permits, stage.vessel.gears, stage.vessel.areas) =
        (written(), written(), written());
    for text in told(&stage) {
        assert!(text.contains(" is not known here: "), "{text}");
        assert!(text.contains("kitmuster words"), "{text}");
    }
}

#[test]
fn too_few_says_how_many_count() {
    let stage = Stage::new();
    let few = |have| stage.reason(&Reason::TooFew { kind: PLIERS, have, need: 3 });
    assert_eq!(few(2), "pliers: only 2 of the 3 asked count");
    assert_eq!(few(1), "pliers: only 1 of the 3 asked counts");
    assert_eq!(few(0), "pliers: none counts of the 3 asked");
}

#[test]
fn of_a_lot_with_broken_ones_the_lot_is_named() {
    let mut stage = Stage::new();
    stage.vessel.kit[0] =
        Tool { state: State::Broken, ..sample::tool("PL-1", PLIERS, 1).part(Split::Broken, 1) };
    stage.vessel.kit[1].count = 2;
    let words = stage.words(Locale::from(Units::Both));
    let because = Because { tool: Some(0), reason: Reason::NotServiceable };
    assert_eq!(
        format!("{}: {}", words.lot(0), words.reason_of(&because)),
        "PL-1: 1 of 3 does not work"
    );
    let sound = Because { tool: Some(1), reason: Reason::NotServiceable };
    assert_eq!(words.reason_of(&sound), "does not work");
}

/// A requirement of two types: one tool, and a set of two.
fn with_two_types(stage: &mut Stage) {
    let Need::Tools { least, types, .. } = &mut stage.profile.requirements[0].need else {
        panic!("the cutter is a tool");
    };
    *least = 2;
    types[0].name = Some("long cutter".into());
    let mut set = types[0].clone();
    set.name = Some("pair of pliers".into());
    set.members[0].count = 2;
    set.members[0].choices[0].kind = PLIERS;
    types.push(set);
}
