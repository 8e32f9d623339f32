//! What a check says of one requirement.

use super::reason::Reason;
use super::vessel::Trust;
use crate::measure::{Day, Length};

/// The outcome of one requirement.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Outcome {
    /// It is met.
    Met,
    /// A fact that decides is missing.
    CannotTell,
    /// It is not met.
    NotMet,
}

/// The verdict on a vessel, from best to worst.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Verdict {
    /// Every required finding is met.
    Ready,
    /// A fact that decides is missing.
    CannotTell,
    /// A required finding cannot be met.
    NotReady,
}

/// A tool (by index into the kit) that serves, and how.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Serving {
    /// The tool, by index.
    pub tool: usize,
    /// How many of the lot.
    pub count: u32,
    /// The requirement (by index) whose tool it is, where it is deemed or
    /// shared.
    pub through: Option<usize>,
}

/// A reason and the tool that it speaks of, if it speaks of one.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Because {
    /// The tool, by index into the kit.
    pub tool: Option<usize>,
    /// The reason.
    pub reason: Reason,
}

/// What a check says of one requirement.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Finding {
    /// The requirement, by index into the profile.
    pub requirement: usize,
    /// The outcome.
    pub outcome: Outcome,
    /// The tools that serve it, where it is met.
    pub serving: Vec<Serving>,
    /// The people, by index, whose certificates serve it from the day on which
    /// it is worst to the last one judged, where it wants certificates and is
    /// met.
    pub certified: Vec<usize>,
    /// Why it is not met, or what is missing, nearest tool first.
    pub reasons: Vec<Because>,
    /// The freeboard at which it is worst, where the freeboard matters.
    pub freeboard: Option<Length>,
    /// The day on which it is worst.
    pub day: Day,
}

/// Until when a kit stays ready.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum ReadyUntil {
    /// Not ready at departure.
    None,
    /// Through this day.
    Day(Day),
    /// Nothing ever lapses.
    NoEnd,
}

impl ReadyUntil {
    /// The last day, if it is one.
    pub fn day(self) -> Option<Day> {
        match self {
            Self::Day(day) => Some(day),
            Self::None | Self::NoEnd => None,
        }
    }
}

/// Up to which freeboard a kit stays ready.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum GoodUpTo {
    /// At no freeboard.
    None,
    /// Up to this freeboard, in one stretch from the vessel's own.
    Freeboard {
        /// The end of the stretch.
        length: Length,
        /// The requirements that fail one nanometre above.
        gives_out: Vec<usize>,
    },
    /// The vessel's own is beyond it; this is the greatest below.
    OnlyBelow {
        /// The greatest ready freeboard below the vessel's own.
        length: Length,
        /// The requirements that fail one nanometre above.
        gives_out: Vec<usize>,
    },
    /// At every freeboard from the vessel's own upward.
    NoLimit,
}

/// A stretch of freeboards over which the answer is the same.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Stretch {
    /// The first freeboard.
    pub from: Length,
    /// The last.
    pub to: Length,
    /// The verdict there.
    pub verdict: Verdict,
    /// The required findings that are not met there.
    pub fails: Vec<usize>,
}

/// Requirements that compete for too few tools.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Clash {
    /// The requirements, by index; each proper subset can be met.
    pub requirements: Vec<usize>,
    /// The tools, by index, that would serve any of them.
    pub tools: Vec<usize>,
}

/// What to do, in the order of preference.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Action {
    /// Measure or look, assuming that it turns out well.
    Measure,
    /// Have it inspected.
    Reinspect,
    /// Repair it.
    Repair,
    /// Lengthen it.
    Lengthen,
    /// Bring it back aboard.
    BringAboard,
    /// Post or carry the document.
    Document,
    /// Have a person certified.
    Certify,
    /// Change the fishing gear.
    ChangeGear,
    /// Acquire it.
    Acquire,
}

/// What a step acts on.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Target {
    /// A tool of the kit, by index.
    Tool(usize),
    /// A type of tool that is to be acquired or looked for, by its index
    /// among the requirement's types.
    Type(usize),
    /// A person, by role.
    Role(Option<String>),
    /// A piece of gear, by name.
    Gear(String),
    /// The vessel itself (its freeboard, its permits, its gear list).
    Vessel,
}

/// A place in a requirement that a step fills.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct FilledSlot {
    /// The type, by index.
    pub of_type: usize,
    /// The member of the type, by index.
    pub member: usize,
    /// The alternative of the member, by index.
    pub choice: usize,
    /// How many tools.
    pub count: u32,
}

/// One step of the shortest way to ready.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Step {
    /// What to do.
    pub action: Action,
    /// On what.
    pub target: Target,
    /// For which requirement, by index.
    pub requirement: usize,
    /// Further requirements, by index, that the same tool then serves.
    pub also: Vec<usize>,
    /// The places that it fills; none for what is no tool.
    pub slots: Vec<FilledSlot>,
    /// Everything that the step has to put right.
    pub reasons: Vec<Reason>,
}

/// The shortest way to ready.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum WayToReady {
    /// It is ready already.
    Already,
    /// These steps make it ready.
    Steps {
        /// The steps.
        steps: Vec<Step>,
        /// Whether fewer were proved impossible.
        fewest: bool,
    },
    /// No change of the vessel makes it ready (the rule is not encoded, or
    /// its own demands contradict each other).
    None,
}

impl Step {
    /// Whether it puts that requirement right, alone or with others.
    pub fn is_for(&self, requirement: usize) -> bool {
        self.requirement == requirement || self.also.contains(&requirement)
    }
}

impl WayToReady {
    /// Its steps; none where it is ready, or no change makes it so.
    pub fn steps(&self) -> &[Step] {
        match self {
            Self::Steps { steps, .. } => steps,
            Self::Already | Self::None => &[],
        }
    }
}

/// What a check was asked.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Asked {
    /// The day of departure.
    pub departure: Day,
    /// The day of return.
    pub back: Day,
    /// Which figures are believed.
    pub trust: Trust,
}
