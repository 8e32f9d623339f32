//! Which choices of a file of techniques a kit leaves open.
//!
//! The capabilities of a choice are judged together, as the requirements of
//! one profile, so that fit, assignment and the three values are those of
//! every check. The profiles are built once and serve any number of vessels.

use super::select::Course;
use super::{Depth, Terms, edges, judge, limit};
use crate::measure::{Answer, Day, DaySpan, Figure, Length};
use crate::model::check::{Judgement, Why};
use crate::model::finding::{Asked, Verdict};
use crate::model::options::{Answered, Choice, Outlook, OwnHooks, Rail};
use crate::model::profile::{Binds, Profile, Requirement, Standing};
use crate::model::rule::{Base, Bound, Test};
use crate::model::technique::{GivenBy, Practice, Situation};
use crate::model::text::Text;
use crate::model::vessel::{Datum, GearPiece, Trust, Vessel};
use crate::model::vocabulary::{KindId, Vocabulary};
use std::sync::Arc;

/// A file of techniques made ready for judging kits.
#[derive(Debug, Clone)]
pub struct Prepared {
    practice: Arc<Practice>,
    sets: Vec<Set>,
    situations: Vec<Plan>,
    along: Vec<Plan>,
}

/// Capabilities that are needed together.
#[derive(Debug, Clone)]
struct Set {
    capabilities: Vec<usize>,
    profile: Arc<Profile>,
    /// The kinds of tool that can serve any of them.
    kinds: Vec<KindId>,
    /// The types of hook that must be cut; none where no hook is.
    hook_types: Vec<String>,
}

/// A situation with its choices looked up.
#[derive(Debug, Clone)]
struct Plan {
    hook_types: Vec<String>,
    choices: Vec<Needs>,
}

/// What one choice needs: a set of tools, rails (by index of the capability).
#[derive(Debug, Clone)]
struct Needs {
    set: Option<usize>,
    rails: Vec<usize>,
}

impl Prepared {
    /// Makes the techniques ready.
    pub fn new(practice: &Arc<Practice>) -> Self {
        let mut made = Self {
            practice: Arc::clone(practice),
            sets: vec![],
            situations: vec![],
            along: vec![],
        };
        made.situations = practice.situations.iter().map(|of| made.plan(of)).collect();
        made.along = practice.along.iter().map(|of| made.plan(of)).collect();
        made
    }

    /// The techniques.
    pub fn practice(&self) -> &Arc<Practice> {
        &self.practice
    }

    fn plan(&mut self, situation: &Situation) -> Plan {
        let practice = Arc::clone(&self.practice);
        let hook_types = hook_types(&practice, situation);
        let choices = situation.choices.iter().map(|choice| {
            let mut needed: Vec<usize> =
                choice.iter().flat_map(|t| &practice.techniques[*t].needs).copied().collect();
            needed.sort_unstable();
            let is_rail =
                |c: &usize| matches!(practice.capabilities[*c].given_by, GivenBy::LowRail { .. });
            let (mut rails, mut tools): (Vec<_>, Vec<_>) = needed.into_iter().partition(is_rail);
            rails.dedup();
            // Done one after the other, techniques need a thing once.
            tools.dedup();
            let set = (!tools.is_empty()).then(|| self.set(tools, &hook_types));
            Needs { set, rails }
        });
        Plan { choices: choices.collect(), hook_types }
    }

    /// The set of these capabilities, known or new.
    fn set(&mut self, capabilities: Vec<usize>, hook_types: &[String]) -> usize {
        let profile = profile(&self.practice, &capabilities);
        let hook_types = if cuts_hooks(&profile) { hook_types.to_vec() } else { Vec::new() };
        let is_it = |set: &Set| set.capabilities == capabilities && set.hook_types == hook_types;
        self.sets.iter().position(is_it).unwrap_or_else(|| {
            let kinds = profile.requirements.iter().flat_map(Requirement::kinds).collect();
            let profile = Arc::new(profile);
            self.sets.push(Set { capabilities, profile, kinds, hook_types });
            self.sets.len() - 1
        })
    }

    /// What the vessel, as judged, leaves open from one day through another.
    /// With the depth of ways every closed choice has its shortest way too.
    pub fn outlook(
        &self,
        vocabulary: &Vocabulary,
        vessel: &Vessel,
        days: (Day, Day),
        depth: Depth,
    ) -> Outlook {
        let judged = self.sets.iter().map(|set| set.judge(vocabulary, vessel, days, depth));
        self.answered(vocabulary, vessel, judged.collect())
    }

    /// The same for a vessel of which only tools of these kinds are others
    /// than in `before`: what no such tool can serve stays as it was.
    pub fn outlook_after(
        &self,
        vocabulary: &Vocabulary,
        vessel: &Vessel,
        days: (Day, Day),
        (before, kinds): (&Outlook, &[KindId]),
    ) -> Outlook {
        let sets = self.sets.iter().zip(&before.judged);
        let judged = sets.map(|(set, known)| {
            if set.kinds.iter().any(|kind| kinds.contains(kind)) {
                set.judge(vocabulary, vessel, days, Depth::Findings)
            } else {
                known.clone()
            }
        });
        self.answered(vocabulary, vessel, judged.collect())
    }

    fn answered(
        &self,
        vocabulary: &Vocabulary,
        vessel: &Vessel,
        judged: Vec<(Answer, Arc<Judgement>)>,
    ) -> Outlook {
        let rails: Vec<Option<Rail>> = (0..self.practice.capabilities.len())
            .map(|capability| rail(&self.practice, capability, vessel))
            .collect();
        let answered = |(situation, plan): (usize, &Plan)| Answered {
            situation,
            hooks: own_hooks(&plan.hook_types, vocabulary, vessel).0,
            choices: plan.choices.iter().map(|needs| needs.answer(&judged, &rails)).collect(),
        };
        Outlook {
            situations: self.situations.iter().enumerate().map(answered).collect(),
            along: self.along.iter().enumerate().map(answered).collect(),
            judged,
        }
    }
}

impl Needs {
    fn answer(&self, judged: &[(Answer, Arc<Judgement>)], rails: &[Option<Rail>]) -> Choice {
        let tools = self.set.map(|set| &judged[set]);
        let rails: Vec<Rail> = self.rails.iter().filter_map(|rail| rails[*rail].clone()).collect();
        let of_rails = rails.iter().map(|rail| rail.answer);
        Choice {
            answer: Answer::all(of_rails.chain(tools.map(|(answer, _)| *answer))),
            tools: tools.map(|(_, judgement)| Arc::clone(judgement)),
            rails,
        }
    }
}

impl Set {
    fn judge(
        &self,
        vocabulary: &Vocabulary,
        vessel: &Vessel,
        (departure, back): (Day, Day),
        depth: Depth,
    ) -> (Answer, Arc<Judgement>) {
        let asked = Asked { departure, back, trust: Trust::All };
        if self.hook_types.is_empty() {
            return self.judge_with(vocabulary, vessel, asked, depth);
        }
        let (known, doubtful) = own_hooks(&self.hook_types, vocabulary, vessel).1;
        let with = |hooks: Option<Vec<GearPiece>>| {
            let vessel = Vessel { hooks, ..vessel.clone() };
            self.judge_with(vocabulary, &vessel, asked, depth)
        };
        let Some(doubtful) = doubtful else { return with(known) };
        // Hooks of a type that nobody wrote down may be of this one or not.
        let (less, more) = (with(known), with(Some(doubtful)));
        if less.0 == more.0 { more } else { (Answer::Unknown, more.1) }
    }

    fn judge_with(
        &self,
        vocabulary: &Vocabulary,
        vessel: &Vessel,
        asked: Asked,
        depth: Depth,
    ) -> (Answer, Arc<Judgement>) {
        let profiles = std::slice::from_ref(&self.profile);
        let terms = Terms {
            vocabulary,
            profiles,
            asked: profiles,
            departure: asked.departure,
            back: Some(asked.back),
            trust: asked.trust,
            depth,
        };
        let course = Course {
            profile: Arc::clone(&self.profile),
            why: Why::Asked,
            days: DaySpan { from: Some(asked.departure), until: Some(asked.back) },
            always: true,
            editions: Vec::new(),
        };
        let judgement = judge::judge(&terms, vessel, &course, asked);
        let answer = match judgement.verdict {
            Verdict::Ready => Answer::Yes,
            Verdict::CannotTell => Answer::Unknown,
            Verdict::NotReady => Answer::No,
        };
        (answer, Arc::new(judgement))
    }
}

/// The capabilities as a profile: their requirements, in the order of the
/// file. It binds nobody and is always asked for.
fn profile(practice: &Practice, capabilities: &[usize]) -> Profile {
    let requirements =
        capabilities.iter().filter_map(|index| match &practice.capabilities[*index].given_by {
            GivenBy::Tools(requirement) => Some((**requirement).clone()),
            GivenBy::LowRail { .. } => None,
        });
    Profile {
        id: practice.id.clone(),
        rule: practice.id.clone(),
        edition: String::new(),
        encoding: practice.encoding,
        title: practice.title.clone(),
        source: practice.source.clone(),
        language: practice.language.clone(),
        standing: Standing::GoodPractice,
        in_force: DaySpan::ALWAYS,
        encoded: true,
        base: false,
        fallback: true,
        binds: Binds::default(),
        freeboard_from: practice.freeboard_from,
        parts_shared: false,
        notes: Vec::<Text>::new(),
        requirements: requirements.collect(),
        place: practice.place.clone(),
    }
}

/// The types of hook that the situation speaks of; none where any will do.
fn hook_types(practice: &Practice, situation: &Situation) -> Vec<String> {
    let mut types = Vec::new();
    for (fact, words) in &situation.when.0 {
        let of = &practice.facts[*fact].words;
        types.extend(words.iter().filter_map(|word| of[*word].hook_type.clone()));
    }
    types
}

/// Whether the profile asks for anything that cuts the vessel's own hooks.
fn cuts_hooks(profile: &Profile) -> bool {
    fn of_hooks(bound: &Bound) -> bool {
        match bound {
            Bound::Fixed { .. } => false,
            Bound::Share(_, base) => *base == Base::HeaviestHook,
            Bound::Greater(limbs) | Bound::Lesser(limbs) => limbs.iter().any(of_hooks),
        }
    }
    fn in_test(test: &Test) -> bool {
        match test {
            Test::Limit { limit, .. } => limit::bounds(limit).any(of_hooks),
            Test::AnyOf(groups) | Test::Readings(groups) => groups.iter().flatten().any(in_test),
            Test::Feature { .. } | Test::Choice { .. } | Test::AcquiredBefore(_) => false,
        }
    }
    let tests = profile.requirements.iter().flat_map(|one| edges::specs(&one.need));
    tests.flat_map(|spec| &spec.tests).any(in_test)
}

/// Lists of hooks that may stand for the vessel's own: those certainly of the
/// types, and with those that may be.
type HookLists = (Option<Vec<GearPiece>>, Option<Vec<GearPiece>>);

/// Whether the vessel's own hooks can make a situation with these types
/// arise, and which of them are of the types.
fn own_hooks(types: &[String], vocabulary: &Vocabulary, vessel: &Vessel) -> (OwnHooks, HookLists) {
    let Some(hooks) = &vessel.hooks else {
        let state = if types.is_empty() { OwnHooks::Arises } else { OwnHooks::NotSaid };
        return (state, (None, None));
    };
    if types.is_empty() {
        return (OwnHooks::Arises, (Some(hooks.clone()), None));
    }
    let (mut sure, mut maybe, mut doubtful) = (Vec::new(), Vec::new(), false);
    for piece in hooks {
        let is = is_of(piece, types, vocabulary);
        if is == Answer::Yes {
            sure.push(piece.clone());
        }
        if is != Answer::No {
            maybe.push(piece.clone());
            doubtful |= is == Answer::Unknown;
        }
    }
    let coverage = &vessel.coverage;
    let whole = coverage.everything
        || vocabulary.find_kind("hook").is_some_and(|kind| coverage.is_whole(kind));
    let state = match (sure.is_empty(), doubtful || !whole) {
        (false, _) => OwnHooks::Arises,
        (true, true) => OwnHooks::NotSaid,
        (true, false) => return (OwnHooks::NoneAboard, (None, None)),
    };
    (state, (Some(sure), doubtful.then_some(maybe)))
}

/// Whether a piece of gear is a hook of one of the types.
fn is_of(piece: &GearPiece, types: &[String], vocabulary: &Vocabulary) -> Answer {
    let Some(attribute) = vocabulary.find_attribute("type") else { return Answer::Unknown };
    let readings = piece.tool.readings(attribute).iter();
    Answer::consensus(readings.map(|reading| match &reading.datum {
        Datum::Word(word) => {
            Answer::from(types.iter().any(|of_type| of_type.eq_ignore_ascii_case(word)))
        }
        _ => Answer::Unknown,
    }))
}

/// What the vessel's rail says of a capability that hangs on it.
fn rail(practice: &Practice, capability: usize, vessel: &Vessel) -> Option<Rail> {
    let GivenBy::LowRail { at_most, .. } = &practice.capabilities[capability].given_by else {
        return None;
    };
    let freeboard = &vessel.freeboard;
    let stations = &freeboard.stations;
    let unknown = freeboard.from != practice.freeboard_from
        || stations.is_empty()
        || stations.iter().any(|station| station.readings.is_empty());
    if unknown {
        return Some(Rail { capability, answer: Answer::Unknown, freeboard: None });
    }
    let mut highest = Length::ZERO;
    let low = stations.iter().map(|station| {
        Answer::consensus(station.readings.iter().flat_map(|reading| {
            let error = reading.error.as_ref().and_then(Figure::length).unwrap_or(Length::ZERO);
            highest = highest.max(reading.highest());
            [reading.highest().less(error), reading.highest().plus(error)]
                .map(|top| Answer::from(top <= *at_most))
        }))
    });
    let answer = Answer::all(low.collect::<Vec<_>>());
    Some(Rail { capability, answer, freeboard: Some(highest) })
}
