//! Which ways of freeing a turtle a kit leaves open: what the engine says of
//! each choice of each situation.
//!
//! Counts, no score: first choice, fallback, can't tell and nothing stand apart;
//! nothing adds a gag to a cutter. A situation that no hook aboard can cause is
//! left out of the counts, not of the answers: a turtle may bring a hook.

use super::check::Judgement;
use super::finding::{Finding, Outcome, Step, WayToReady};
use super::reason::{Reason, VesselFact};
use crate::measure::{Answer, Length};
use std::sync::Arc;

/// Whether the vessel's own hooks can make a situation arise.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum OwnHooks {
    /// They can, or the situation has nothing to do with a type of hook.
    Arises,
    /// No hook of the type is aboard: the animal would bring it from
    /// elsewhere, and nothing is known of its wire.
    NoneAboard,
    /// Which types of hook are aboard is not known.
    NotSaid,
}

/// What a low rail says.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Rail {
    /// The capability, by index.
    pub capability: usize,
    /// Whether every freeboard is low enough.
    pub answer: Answer,
    /// The freeboard that decides: the highest known.
    pub freeboard: Option<Length>,
}

/// What is said of one choice: one or more techniques in a row.
#[derive(Debug, Clone)]
pub struct Choice {
    /// Whether it is open: *yes*, *no*, or nobody can tell.
    pub answer: Answer,
    /// The engine's word on the tools that it needs, judged together; none
    /// where it needs none. The profile in it lists the capabilities as its
    /// requirements.
    pub tools: Option<Arc<Judgement>>,
    /// Where that is not *yes* and the tools serve all the same, their word:
    /// they reach the water, being longer than the freeboard, short of the
    /// published length, or cut the leaders and not every line.
    pub short: Option<Arc<Judgement>>,
    /// What it says of rails that must be low.
    pub rails: Vec<Rail>,
}

impl Choice {
    /// Whether it is open, with tools of the published length or short of it.
    pub fn is_open(&self) -> bool {
        self.answer == Answer::Yes || self.is_short()
    }

    /// Whether it is open only with tools that are short.
    pub fn is_short(&self) -> bool {
        self.answer != Answer::Yes && self.short.is_some()
    }

    /// Whether it can be taken.
    pub fn access(&self) -> Access {
        match self.answer {
            Answer::Yes => Access::Open,
            _ if self.is_short() => Access::Short,
            Answer::Unknown => Access::Unknown,
            Answer::No => Access::Closed,
        }
    }

    /// The engine's word on the tools that an open choice uses.
    pub fn used(&self) -> Option<&Arc<Judgement>> {
        if self.is_short() { self.short.as_ref() } else { self.tools.as_ref() }
    }

    /// The rail that is too high for it, which nothing lowers.
    pub fn rail_too_high(&self) -> Option<&Rail> {
        self.rails.iter().find(|rail| rail.answer == Answer::No)
    }

    /// Whether all that is open about its tools is which hooks are aboard.
    pub fn hangs_on_hooks(&self) -> bool {
        let mut findings = self.tools.iter().flat_map(|judgement| &judgement.findings);
        let hooks = Reason::VesselFactUnknown { fact: VesselFact::Hooks };
        findings.all(|finding| {
            finding.outcome == Outcome::Met || finding.reasons.iter().any(|one| one.reason == hooks)
        })
    }

    /// Whether some tool of it is too short for the rail.
    pub fn is_too_short(&self) -> bool {
        let findings = self.tools.iter().flat_map(|judgement| &judgement.findings);
        let mut reasons = findings.flat_map(|finding| &finding.reasons);
        reasons.any(|because| matches!(because.reason, Reason::TooShortForRail { .. }))
    }

    /// What it wants and does not have, or not for certain: rails, then tools.
    pub fn lacks(&self) -> impl Iterator<Item = Lack<'_>> {
        let rails = self.rails.iter().filter(|rail| rail.answer != Answer::Yes);
        let findings = self.tools.iter().flat_map(|judgement| &judgement.findings);
        let tools = findings.filter(|finding| finding.outcome != Outcome::Met);
        rails.map(Lack::Rail).chain(tools.map(Lack::Tool))
    }

    /// What opens it, in this order; nothing where a rail is too high or no
    /// tool does. A rail that nobody measured is measured first.
    pub fn steps(&self) -> Vec<Opening<'_>> {
        let way = self.way();
        if self.rail_too_high().is_some() || way == Some(&WayToReady::None) {
            return Vec::new();
        }
        let unknown = self.rails.iter().find(|rail| rail.answer == Answer::Unknown);
        let steps = way.map_or(&[][..], WayToReady::steps).iter();
        unknown.map(Opening::Measure).into_iter().chain(steps.map(Opening::Step)).collect()
    }

    /// What it lacks, thing by thing where each has its own steps, else all its
    /// tools together with all steps.
    pub fn gaps(&self) -> Vec<Gap<'_>> {
        let (rails, tools): (Vec<_>, Vec<_>) =
            self.lacks().partition(|lack| matches!(lack, Lack::Rail(_)));
        let steps = self.way().map_or(&[][..], WayToReady::steps);
        let serves = |step: &Step, lack: &Lack<'_>| match lack {
            Lack::Rail(_) => false,
            Lack::Tool(finding) => step.is_for(finding.requirement),
        };
        let apart = !steps.is_empty()
            && tools.iter().all(|lack| steps.iter().any(|step| serves(step, lack)))
            && steps.iter().all(|step| tools.iter().any(|lack| serves(step, lack)));
        let gap = |lacks: Vec<_>, steps: Vec<_>| Gap { lacks, steps };
        let mut gaps: Vec<_> = rails
            .into_iter()
            .map(|lack| match lack {
                Lack::Rail(rail) if rail.answer == Answer::Unknown => {
                    gap(vec![lack], vec![Opening::Measure(rail)])
                }
                _ => gap(vec![lack], Vec::new()),
            })
            .collect();
        if apart {
            gaps.extend(tools.into_iter().map(|lack| {
                let own = steps.iter().filter(|step| serves(step, &lack));
                gap(vec![lack], own.map(Opening::Step).collect())
            }));
        } else if !tools.is_empty() {
            gaps.push(gap(tools, steps.iter().map(Opening::Step).collect()));
        }
        gaps
    }

    /// The engine's shortest way to its tools.
    fn way(&self) -> Option<&WayToReady> {
        Some(&self.tools.as_ref()?.inverses.as_ref()?.way)
    }
}

/// Whether a choice can be taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Access {
    /// It is open.
    Open,
    /// It is open, with tools that are short of the published length or cut
    /// the leaders and not every line.
    Short,
    /// It is closed.
    Closed,
    /// Nobody can tell.
    Unknown,
}

/// Something that a choice wants and does not have, or not for certain.
#[derive(Debug, Clone, Copy)]
pub enum Lack<'a> {
    /// A low rail.
    Rail(&'a Rail),
    /// A capability that tools give, as the engine found it.
    Tool(&'a Finding),
}

/// A step that opens a choice.
#[derive(Debug, Clone, Copy)]
pub enum Opening<'a> {
    /// The rail is measured.
    Measure(&'a Rail),
    /// A step of the engine's shortest way.
    Step(&'a Step),
}

/// Something that a choice lacks, or several things that only go together.
#[derive(Debug, Clone)]
pub struct Gap<'a> {
    /// What is lacking.
    pub lacks: Vec<Lack<'a>>,
    /// What closes the gap; nothing where no step does.
    pub steps: Vec<Opening<'a>>,
}

impl Lack<'_> {
    /// Whether nobody can tell.
    pub fn is_open(&self) -> bool {
        match self {
            Self::Rail(rail) => rail.answer == Answer::Unknown,
            Self::Tool(finding) => finding.outcome == Outcome::CannotTell,
        }
    }
}

/// The engine's word on a set of capabilities that is needed together.
#[derive(Debug, Clone)]
pub struct JudgedSet {
    /// Whether the kit has them.
    pub answer: Answer,
    /// Why.
    pub judgement: Arc<Judgement>,
    /// Where the answer is not *yes*: how tools serve that are short.
    pub short: Option<Arc<Judgement>>,
}

/// One situation as this kit answers it.
#[derive(Debug, Clone)]
pub struct Answered {
    /// The situation, by index into its list.
    pub situation: usize,
    /// Whether the vessel's own hooks can make it arise.
    pub hooks: OwnHooks,
    /// The choices, in the order of preference.
    pub choices: Vec<Choice>,
}

/// How a situation stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Standing {
    /// The first choice is open.
    First,
    /// A later choice is open; of better ones, some may be open too where
    /// nobody can tell.
    Fallback,
    /// No choice is known to be open, and of some nobody can tell.
    Unclear,
    /// Every choice is closed.
    Nothing,
}

impl Answered {
    /// Whether the vessel's own hooks cannot make it arise, so that it is left
    /// out.
    pub fn is_left_out(&self) -> bool {
        self.hooks == OwnHooks::NoneAboard
    }

    /// The best choice that is open, by index; one that is so only with tools
    /// that are short where there is no other.
    pub fn best(&self) -> Option<usize> {
        self.open_from(0)
    }

    /// The choices before the best open one (all, where none is open), and
    /// that one where its tools are short.
    pub fn better(&self) -> &[Choice] {
        let end = self.best().map(|best| best + usize::from(self.choices[best].is_short()));
        &self.choices[..end.unwrap_or(self.choices.len())]
    }

    /// The next choice that is open, should the best one fail, by index.
    pub fn next(&self) -> Option<usize> {
        self.open_from(self.best()? + 1)
    }

    fn open_from(&self, first: usize) -> Option<usize> {
        let later = || self.choices.iter().enumerate().skip(first);
        let sure = later().find(|(_, choice)| choice.answer == Answer::Yes);
        sure.or_else(|| later().find(|(_, choice)| choice.is_open())).map(|(index, _)| index)
    }

    /// How good the best open choice is, for comparing: less is better.
    pub fn rank(&self) -> Option<(bool, usize)> {
        let best = self.best()?;
        Some((self.choices[best].is_short(), best))
    }

    /// How it stands.
    pub fn standing(&self) -> Standing {
        match self.best() {
            Some(0) if !self.choices[0].is_short() => Standing::First,
            Some(_) => Standing::Fallback,
            None if self.better().iter().any(|c| c.answer == Answer::Unknown) => Standing::Unclear,
            None => Standing::Nothing,
        }
    }
}

/// What a kit leaves open, situation by situation.
#[derive(Debug, Clone)]
pub struct Outlook {
    /// The situations, in the order of the file.
    pub situations: Vec<Answered>,
    /// What goes along with them.
    pub along: Vec<Answered>,
    /// The engine's word on each set of capabilities that is needed together,
    /// in the engine's own order; to judge again what a change can reach.
    pub judged: Vec<JudgedSet>,
}

/// What a kit is worth in outcomes: situations counted by how they stand,
/// those left out that the vessel's own hooks cannot make arise.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Worth {
    /// First choice open.
    pub first: usize,
    /// Only a fallback open.
    pub fallback: usize,
    /// Nobody can tell whether anything is open.
    pub unclear: usize,
    /// Nothing open.
    pub nothing: usize,
    /// Left out: no such hook is aboard.
    pub left_out: usize,
}

impl Worth {
    /// How many situations count.
    pub fn counted(&self) -> usize {
        self.first + self.fallback + self.unclear + self.nothing
    }

    /// Whether the first choice is open in each of them.
    pub fn is_best(&self) -> bool {
        self.first == self.counted()
    }
}

impl Outlook {
    /// Every situation, those that go along included.
    pub fn all(&self) -> impl Iterator<Item = &Answered> {
        self.situations.iter().chain(&self.along)
    }

    /// Whether it is not known for some situation which hooks are aboard.
    pub fn hooks_not_said(&self) -> bool {
        self.all().any(|answered| answered.hooks == OwnHooks::NotSaid)
    }

    /// The situations counted by how they stand.
    pub fn worth(&self) -> Worth {
        let mut worth = Worth::default();
        for answered in self.all() {
            let count = match (answered.hooks, answered.standing()) {
                (OwnHooks::NoneAboard, _) => &mut worth.left_out,
                (_, Standing::First) => &mut worth.first,
                (_, Standing::Fallback) => &mut worth.fallback,
                (_, Standing::Unclear) => &mut worth.unclear,
                (_, Standing::Nothing) => &mut worth.nothing,
            };
            *count += 1;
        }
        worth
    }
}
