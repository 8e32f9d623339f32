//! The second opinion on a whole vessel: which rules judge it, on which days,
//! and the worst of it. What a tool, a condition or a certificate says is the
//! policy's word; `bench` asks it day by day and freeboard by freeboard, and
//! `scene` decides where nothing is open any more.

mod bench;
mod scene;

use crate::assign::{Answer, Assign};
use crate::figures::next;
use crate::kit::Vessel;
use crate::policy::Policy;
use crate::rules::{Rules, Words};
use bench::{Bench, facts};
use serde_json::{Value as Json, json};
use std::collections::{BTreeMap, BTreeSet, HashMap};
use std::rc::Rc;

pub(crate) use bench::question;
pub(crate) use scene::Scene;

/// What can be said of a requirement, from best to worst.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Outcome {
    NotApplicable,
    Met,
    CannotTell,
    NotMet,
}

/// The verdict, from best to worst.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Verdict {
    Ready,
    CannotTell,
    NotReady,
}

/// What best assignments say of one requirement: more than one outcome where
/// they differ.
pub(crate) type Said = BTreeSet<Outcome>;

/// One profile's opinion.
#[derive(Debug, Clone)]
pub(crate) struct Opinion {
    pub(crate) verdict: Verdict,
    pub(crate) said: Vec<Said>,
    /// Requirements that compete for tools where facts are missing: by either
    /// pass alone nobody can tell which of them goes short in between.
    pub(crate) competing: BTreeSet<usize>,
    /// Where all is one scene: the outcomes that some pair of best
    /// assignments gives together, part by part.
    pub(crate) together: Option<Rc<Scene>>,
}

/// The opinion on a vessel.
pub(crate) struct Whole {
    pub(crate) verdict: Verdict,
    /// By profile, for those that judge.
    pub(crate) profiles: BTreeMap<String, Opinion>,
}

/// Judges with the policy.
pub(crate) struct Judge<'a> {
    pub(crate) words: &'a Words,
    pub(crate) profiles: &'a [Rules],
    pub(crate) policy: Policy,
    pub(crate) assign: Assign,
}

fn answers(said: &Json) -> BTreeMap<String, Answer> {
    let object = said.as_object().unwrap();
    object
        .iter()
        .map(|(key, value)| (key.clone(), u8::try_from(value.as_u64().unwrap()).unwrap()))
        .collect()
}

fn worst(a: &Said, b: &Said) -> Said {
    a.iter().flat_map(|a| b.iter().map(move |b| *a.max(b))).collect()
}

/// What two readings of one freeboard agree on.
fn agreed(a: &Said, b: &Said) -> Said {
    use Outcome::{CannotTell, Met, NotApplicable};
    let agree = |a: Outcome, b: Outcome| match (a, b) {
        (a, b) if a == b => a,
        (NotApplicable, Met) | (Met, NotApplicable) => Met,
        _ => CannotTell,
    };
    a.iter().flat_map(|a| b.iter().map(move |b| agree(*a, *b))).collect()
}

fn is_open(open: &BTreeMap<String, Answer>, spec: &str) -> Answer {
    open.get(spec).copied().unwrap_or(2)
}

type Over = (Verdict, Vec<Said>);

fn over(
    scenes: Vec<Over>,
    verdict: fn(Verdict, Verdict) -> Verdict,
    said: fn(&Said, &Said) -> Said,
) -> Over {
    let both = |a: Over, b: Over| {
        (verdict(a.0, b.0), a.1.iter().zip(&b.1).map(|(a, b)| said(a, b)).collect())
    };
    scenes.into_iter().reduce(both).unwrap()
}

fn agreed_verdict(a: Verdict, b: Verdict) -> Verdict {
    if a == b { a } else { Verdict::CannotTell }
}

impl Judge<'_> {
    /// The opinion on the vessel for its planned trip.
    pub(crate) fn vessel(&mut self, vessel: &Vessel) -> Whole {
        let days = days(vessel.depart, vessel.back);
        let (mut judging, mut open, mut gap) = (Vec::new(), false, false);
        let profiles = self.profiles;
        let mut seen = BTreeSet::new();
        for first in profiles.iter().filter(|p| !p.base && !p.fallback) {
            if !seen.insert(&first.rule) {
                continue;
            }
            let editions: Vec<&Rules> =
                profiles.iter().filter(|p| !p.base && p.rule == first.rule).collect();
            let (mut concerned, mut unnamed) = (Vec::new(), false);
            let mut covered = BTreeSet::new();
            for edition in &editions {
                let within = self.in_force(edition, &days);
                covered.extend(within.iter().copied());
                match self.names(edition, vessel) {
                    0 => {}
                    1 if !self.pointed_to(edition, vessel) => unnamed = true,
                    _ => concerned.push((*edition, within)),
                }
            }
            if concerned.is_empty() {
                open |= unnamed;
                continue;
            }
            gap |= days.iter().any(|day| !covered.contains(day));
            judging.extend(concerned.into_iter().filter(|(_, within)| !within.is_empty()));
        }
        if judging.is_empty() && !gap {
            judging.extend(profiles.iter().filter(|p| p.fallback).map(|p| (p, days.clone())));
        }
        // By a word that nobody knows no rule is found, and the house decides
        // nothing where one may bind.
        let lists = [&vessel.permits, &vessel.gear, &vessel.areas];
        let unknown = lists.into_iter().flatten().flatten().any(|t| !self.words.tags.contains(t));
        let left_open = open || gap || unknown || judging.is_empty();
        let floor = if left_open { Verdict::CannotTell } else { Verdict::Ready };
        let mut whole = Whole { verdict: floor, profiles: BTreeMap::new() };
        for (rules, days) in judging {
            let opinion = self.profile(rules, vessel, &days);
            if !(unknown && rules.fallback) {
                whole.verdict = whole.verdict.max(opinion.verdict);
            }
            whole.profiles.insert(rules.id.clone(), opinion);
        }
        whole
    }

    /// Whether the rule names the vessel.
    fn names(&mut self, rules: &Rules, vessel: &Vessel) -> Answer {
        let said = self.policy.ask("names", &facts(rules, vessel, None, "names"));
        u8::try_from(said.as_u64().unwrap()).unwrap()
    }

    fn pointed_to(&mut self, rules: &Rules, vessel: &Vessel) -> bool {
        let facts = facts(rules, vessel, None, "names");
        self.policy.ask("pointed_to", &facts).as_bool().unwrap()
    }

    /// The days of the trip on which the edition is in force.
    fn in_force(&mut self, rules: &Rules, days: &[i64]) -> Vec<i64> {
        let mut holds = |day: &&i64| {
            let said = self.policy.ask("in_force", &json!({ "profile": rules.id, "day": day }));
            *said == json!(2)
        };
        days.iter().filter(|day| holds(day)).copied().collect()
    }

    fn profile(&mut self, rules: &Rules, vessel: &Vessel, days: &[i64]) -> Opinion {
        if !rules.encoded {
            return Opinion {
                verdict: Verdict::CannotTell,
                said: Vec::new(),
                competing: BTreeSet::new(),
                together: None,
            };
        }
        let governs = if rules.fallback { 2 } else { self.names(rules, vessel) };
        let mut bench = Bench {
            judge: self,
            rules,
            vessel,
            governs,
            days,
            scenes: HashMap::new(),
            fitted: HashMap::new(),
            dated: HashMap::new(),
        };
        let by_day = days.iter().map(|day| bench.on(*day)).collect();
        let (verdict, said) = over(by_day, Verdict::max, worst);
        let competing = bench.scenes.values().flat_map(|scene| scene.competing()).collect();
        let together =
            if bench.scenes.len() == 1 { bench.scenes.into_values().next() } else { None };
        Opinion { verdict, said, competing, together }
    }
}

fn days(depart: i64, back: i64) -> Vec<i64> {
    let mut days = vec![depart];
    while days[days.len() - 1] < back {
        days.push(next(days[days.len() - 1]));
    }
    days
}
