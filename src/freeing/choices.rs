//! Which choices of a file of techniques a kit leaves open.
//!
//! The capabilities of a choice are judged together, as the requirements of
//! one profile, so that fit, assignment and the three values are those of
//! every check. The profiles are built once and serve any number of vessels.
//!
//! A technique is judged by its own reach, not by the rule that binds; by condition
//! and label date, not by inspection. So a kit can be ready and leave a way closed,
//! and the other way round. A capability that several techniques of a choice name
//! is needed once; pliers that hold couplings in the mouth are not free for the
//! barb. Short cuts use the leader, tangles the thickest line: lines that do not
//! say which `part` they are may be leaders.

mod hooks;
mod rail;
mod short;

use crate::engine::{Depth, Terms, check_own, repaired};
use crate::measure::{Answer, Day, DaySpan};
use crate::model::check::Judgement;
use crate::model::finding::{Asked, Verdict};
use crate::model::options::{Answered, Choice, JudgedSet, Outlook, Rail};
use crate::model::profile::{Binds, Profile, Requirement, Standing};
use crate::model::rule::Condition;
use crate::model::technique::{GivenBy, Practice, Situation};
use crate::model::text::Text;
use crate::model::vessel::{GearPiece, Trust, Vessel};
use crate::model::vocabulary::{KindId, Vocabulary};
use hooks::{HookLists, cuts_hooks, hook_types, own_hooks};
use rail::rail;
use std::collections::BTreeMap;
use std::sync::Arc;

/// A file of techniques made ready for judging kits.
#[derive(Debug, Clone)]
pub struct Prepared {
    practice: Arc<Practice>,
    sets: Vec<Set>,
    /// The index of each set, by its capabilities and types of hook.
    known: BTreeMap<(Vec<usize>, Vec<String>), usize>,
    situations: Vec<Plan>,
    along: Vec<Plan>,
}

/// Capabilities that are needed together.
#[derive(Debug, Clone)]
struct Set {
    profile: Arc<Profile>,
    /// The same asked of tools that are short, if that asks less.
    short: Option<Arc<Profile>>,
    /// The kinds of tool on which its answer can hang.
    kinds: Vec<KindId>,
    /// Whether a hook must be cut.
    cuts_hooks: bool,
    /// The types of hook that must be cut; none where any will do.
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
        let (situations, along) = (Vec::new(), Vec::new());
        let (sets, known) = (Vec::new(), BTreeMap::new());
        let mut made = Self { practice: Arc::clone(practice), sets, known, situations, along };
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
        let cuts_hooks = capabilities.iter().any(|c| cuts_hooks(&self.practice, *c));
        let hook_types = if cuts_hooks { hook_types.to_vec() } else { Vec::new() };
        let key = (capabilities, hook_types);
        if let Some(known) = self.known.get(&key) {
            return *known;
        }
        let profile = Arc::new(profile(&self.practice, &key.0));
        let short = short::asked(&profile).map(Arc::new);
        let kinds = profile.requirements.iter().flat_map(kinds_of).collect();
        let hook_types = key.1.clone();
        self.known.insert(key, self.sets.len());
        self.sets.push(Set { profile, short, kinds, cuts_hooks, hook_types });
        self.sets.len() - 1
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

    /// The vessel with the steps of a judgement of that outlook carried out:
    /// its kit alone, since what was assumed of other facts is not so.
    pub fn performed(
        &self,
        vocabulary: &Vocabulary,
        vessel: &Vessel,
        outlook: &Outlook,
        judgement: &Arc<Judgement>,
        departure: Day,
    ) -> Vessel {
        let judged = outlook.judged.iter().position(|set| Arc::ptr_eq(&set.judgement, judgement));
        let hooks = match judged.map(|index| &self.sets[index]) {
            Some(set) if set.cuts_hooks => {
                let (known, doubtful) = set.hooks(vocabulary, vessel);
                doubtful.or(known)
            }
            _ => vessel.hooks.clone(),
        };
        // A set knows the hooks of its own types only.
        let own = Vessel { hooks, ..vessel.clone() };
        let kit = repaired(vocabulary, &own, judgement, departure).kit;
        Vessel { kit, ..vessel.clone() }
    }

    fn answered(
        &self,
        vocabulary: &Vocabulary,
        vessel: &Vessel,
        judged: Vec<JudgedSet>,
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
    fn answer(&self, judged: &[JudgedSet], rails: &[Option<Rail>]) -> Choice {
        let tools = self.set.map(|set| &judged[set]);
        let rails: Vec<Rail> = self.rails.iter().filter_map(|rail| rails[*rail].clone()).collect();
        let of_rails = Answer::all(rails.iter().map(|rail| rail.answer));
        let short = tools.and_then(|set| set.short.clone());
        Choice {
            answer: tools.map_or(of_rails, |set| of_rails.and(set.answer)),
            tools: tools.map(|set| Arc::clone(&set.judgement)),
            short: short.filter(|_| of_rails == Answer::Yes),
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
    ) -> JudgedSet {
        let asked = Asked { departure, back, trust: Trust::All };
        let (answer, judgement) = self.judge_by(&self.profile, vocabulary, vessel, asked, depth);
        let short = self.short.as_ref().filter(|_| answer != Answer::Yes).and_then(|short| {
            let (answer, judgement) =
                self.judge_by(short, vocabulary, vessel, asked, Depth::Findings);
            (answer == Answer::Yes).then_some(judgement)
        });
        JudgedSet { answer, judgement, short }
    }

    /// Judges the set by one of its profiles, with the hooks that it has to cut.
    fn judge_by(
        &self,
        profile: &Arc<Profile>,
        vocabulary: &Vocabulary,
        vessel: &Vessel,
        asked: Asked,
        depth: Depth,
    ) -> (Answer, Arc<Judgement>) {
        let with = |hooks: Option<Vec<GearPiece>>| {
            let vessel = Vessel { hooks, ..vessel.clone() };
            judge_with(profile, vocabulary, vessel, asked, depth)
        };
        if !self.cuts_hooks {
            return judge_with(profile, vocabulary, vessel.clone(), asked, depth);
        }
        let (known, doubtful) = self.hooks(vocabulary, vessel);
        let Some(doubtful) = doubtful else { return with(known) };
        // Hooks of a type that nobody wrote down may be of this one or not.
        let (less, more) = (with(known), with(Some(doubtful)));
        if less.0 == more.0 { more } else { (Answer::Unknown, with(None).1) }
    }

    /// The vessel's own hooks as this set has to cut them.
    fn hooks(&self, vocabulary: &Vocabulary, vessel: &Vessel) -> HookLists {
        match own_hooks(&self.hook_types, vocabulary, vessel).1 {
            // Of no hook at all there is no wire to be cut.
            (Some(none), None) if none.is_empty() => (None, None),
            lists => lists,
        }
    }
}

/// The engine's word on a vessel by one profile that is asked for.
fn judge_with(
    profile: &Arc<Profile>,
    vocabulary: &Vocabulary,
    vessel: Vessel,
    asked: Asked,
    depth: Depth,
) -> (Answer, Arc<Judgement>) {
    let profiles = std::slice::from_ref(profile);
    let terms = Terms {
        vocabulary,
        profiles,
        asked: profiles,
        departure: asked.departure,
        back: Some(asked.back),
        trust: asked.trust,
        depth,
    };
    // Of one profile that is asked for there is one judgement.
    let judgement = check_own(vessel, &[], &terms).judgements.swap_remove(0);
    let answer = match judgement.verdict {
        Verdict::Ready => Answer::Yes,
        Verdict::CannotTell => Answer::Unknown,
        Verdict::NotReady => Answer::No,
    };
    (answer, Arc::new(judgement))
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

/// The kinds of tool on which a requirement can hang: those that serve it and
/// those that decide which of its alternatives are open.
fn kinds_of(requirement: &Requirement) -> Vec<KindId> {
    let mut kinds = requirement.kinds();
    requirement.need.specs().for_each(|spec| {
        Condition::each(&spec.when, &mut |condition| kinds.extend(condition.kind_aboard()));
    });
    kinds
}
