//! The result of checking one vessel against every profile that binds it.

use super::finding::{
    Asked, Clash, Finding, GoodUpTo, Outcome, ReadyUntil, Step, Stretch, Target, Verdict,
    WayToReady,
};
use super::profile::{Level, Profile, Standing};
use super::reason::{DisputedReading, Reason, VesselFact};
use super::stable::stable_words;
use super::vessel::Vessel;
use crate::measure::{Day, DaySpan, Length};
use std::sync::Arc;

/// Why a profile was used.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Why {
    /// It binds the vessel.
    Binds,
    /// Whether it binds is not known, for want of this fact.
    MayBind(VesselFact),
    /// Somebody asked for it.
    Asked,
    /// No rule names the vessel.
    Fallback,
}

impl Why {
    /// The stable codes of all reasons to use a profile.
    pub const CODES: &'static [&'static str] = WHY_CODES;

    /// Whether the profile was named, or taken for want of any other: whom it
    /// binds is then no question.
    pub fn is_asked(&self) -> bool {
        matches!(self, Self::Asked | Self::Fallback)
    }

    /// The stable code.
    pub fn code(&self) -> &'static str {
        why_code(self)
    }
}

/// What one profile says of one vessel.
#[derive(Debug, Clone)]
pub struct Judgement {
    /// The profile.
    pub profile: Arc<Profile>,
    /// Why it was used.
    pub why: Why,
    /// The days of the trip that it was judged for.
    pub days: DaySpan,
    /// The verdict under this profile.
    pub verdict: Verdict,
    /// A finding for each requirement that binds or may bind.
    pub findings: Vec<Finding>,
    /// The last day on which the kit is ready.
    pub ready_until: ReadyUntil,
    /// The further inverses, where they were asked for.
    pub inverses: Option<Inverses>,
    /// The inverses that would have taken more work than a check may: what is
    /// given of them is not all of the answer.
    pub left_open: Vec<Inverse>,
}

/// An answer that is worked backwards from a verdict.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Inverse {
    /// The last day on which the kit is ready.
    ReadyUntil,
    /// The greatest freeboard at which it is.
    GoodUpTo,
    /// Requirements that compete for too few tools.
    Clashes,
    /// The shortest way to ready.
    Way,
}

impl Judgement {
    /// The steps of the shortest way; none where there is none.
    pub fn steps(&self) -> &[Step] {
        self.inverses.as_ref().map_or(&[], |inverses| inverses.way.steps())
    }

    /// Whether the inverse was left open.
    pub fn leaves_open(&self, inverse: Inverse) -> bool {
        self.left_open.contains(&inverse)
    }

    /// What was found of a requirement.
    pub fn finding(&self, requirement: usize) -> Option<&Finding> {
        self.findings.iter().find(|finding| finding.requirement == requirement)
    }

    /// The tool, by index, by which it is told why a finding is not met: that
    /// which the shortest way sees to, if it sees to one, else the nearest.
    pub fn tool_told(&self, finding: &Finding) -> Option<usize> {
        let steps = self.steps().iter().filter(|step| step.is_for(finding.requirement));
        let mut tools = steps.filter_map(|step| match step.target {
            Target::Tool(tool) => Some(tool),
            _ => None,
        });
        let tells = |tool: &usize| finding.reasons.iter().any(|one| one.tool == Some(*tool));
        tools.find(tells).or_else(|| finding.reasons.first()?.tool)
    }

    /// The finding that a step puts right, if it is required and tells every
    /// reason of the step.
    pub fn told_by(&self, step: &Step) -> Option<&Finding> {
        let finding = self.finding(step.requirement)?;
        let requirement = self.profile.requirements.get(step.requirement)?;
        let tells =
            |reason: &Reason| finding.reasons.iter().any(|because| because.reason == *reason);
        let shown = finding.outcome != Outcome::Met && requirement.level == Level::Required;
        (shown && step.reasons.iter().all(tells)).then_some(finding)
    }

    /// The freeboard at which to work out what a requirement asks of a vessel:
    /// where its finding is worst, else the vessel's highest.
    pub fn freeboard_for(&self, requirement: usize, vessel: &Vessel) -> Option<Length> {
        let worst = self.finding(requirement).and_then(|finding| finding.freeboard);
        worst.or_else(|| vessel.freeboard.highest())
    }
}

/// The answers that are worked backwards from a verdict, beside *ready
/// until*: they cost more than the verdict itself.
#[derive(Debug, Clone)]
pub struct Inverses {
    /// The greatest freeboard at which the kit is ready.
    pub good_up_to: GoodUpTo,
    /// Every stretch of freeboards from zero to twice the vessel's own.
    pub stretches: Vec<Stretch>,
    /// Requirements that compete for too few tools.
    pub clashes: Vec<Clash>,
    /// The shortest way to ready.
    pub way: WayToReady,
}

/// Something to tell about the check as a whole.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Notice {
    /// No profile and no stub names this vessel: good practice was used.
    NoRuleNamesVessel,
    /// A profile was asked for that is not in force on these days.
    NotInForce {
        /// Its id.
        profile: String,
    },
    /// A profile was asked for that does not bind this vessel.
    DoesNotBind {
        /// Its id.
        profile: String,
    },
    /// A rule names the vessel, but no edition is known for the day.
    NoEdition {
        /// The rule.
        rule: String,
        /// The first such day.
        day: Day,
    },
    /// Words for permits, gear or areas that the vocabulary does not know.
    UnknownWords {
        /// Permits, gear or areas.
        what: VesselFact,
        /// The words, as written.
        words: Vec<String>,
    },
    /// A rule that may bind was not judged, for want of this fact.
    MayBind {
        /// The rule.
        rule: String,
        /// The fact that would settle it.
        fact: VesselFact,
    },
    /// An inspection record dated after departure was not laid over.
    RecordAfterDeparture {
        /// The record's day.
        on: Day,
    },
    /// A record was keyed in from a sheet that was printed from another state
    /// of the vessel's file, or from other rules.
    SheetOutOfDate {
        /// The record's day.
        on: Day,
        /// Whether the vessel's file is another.
        vessel: bool,
        /// Whether the rules are others.
        rules: bool,
    },
    /// So many facts are missing that not every way in which they can turn out
    /// was tried: a verdict of *can't tell* may in truth be settled.
    TooManyFacts,
    /// An inspector wrote a remark on a tool.
    Remark {
        /// The tool's mark.
        mark: String,
        /// The record's day.
        on: Day,
        /// What was written.
        remark: String,
    },
    /// The mark on a tool reads otherwise than it is listed.
    MarkReadAs {
        /// The mark as listed.
        mark: String,
        /// The record's day.
        on: Day,
        /// As it was read.
        read: String,
    },
    /// A tool without a mark was found.
    Unmarked {
        /// The name that it goes by.
        mark: String,
        /// The record's day.
        on: Day,
    },
    /// A record names a mark that nobody listed, and no kind.
    UnlistedMark {
        /// The mark.
        mark: String,
        /// The record's day.
        on: Day,
    },
    /// A tool is of one kind by its list and of another by a record, or its
    /// list names it by a word that may be several.
    KindDisputed {
        /// The tool's mark.
        mark: String,
        /// The names of the kinds.
        kinds: Vec<String>,
        /// Whether it is its own name that leaves that open.
        by_name: bool,
    },
    /// A label or a statement says otherwise than what was measured, which
    /// counts.
    ReadingsDiffer {
        /// The tool's mark.
        mark: String,
        /// The name of what was read.
        attribute: String,
        /// The readings that count.
        counted: Vec<DisputedReading>,
        /// Those that do not.
        overruled: Vec<DisputedReading>,
    },
    /// The trip has no day of return; it is judged as a trip of one day.
    NoReturn,
    /// The planned trip was over on the day on which it was asked: the verdict
    /// speaks of the past.
    TripOver {
        /// The day of return.
        back: Day,
    },
    /// The list was declared more than a year before departure.
    ListOld {
        /// The day on which it was declared.
        declared: Day,
    },
}

/// The result of checking one vessel.
#[derive(Debug, Clone)]
pub struct Check {
    /// The vessel as judged, inspections laid over.
    pub vessel: Vessel,
    /// What was asked.
    pub asked: Asked,
    /// The worst verdict of all.
    pub verdict: Verdict,
    /// One for each profile.
    pub judgements: Vec<Judgement>,
    /// What to tell about the check as a whole.
    pub notices: Vec<Notice>,
}

impl Check {
    /// What the verdict stands on: good practice where no rule had a word in
    /// it.
    pub fn standing(&self) -> Standing {
        let practice = |judgement: &Judgement| judgement.profile.standing == Standing::GoodPractice;
        match !self.judgements.is_empty() && self.judgements.iter().all(practice) {
            true => Standing::GoodPractice,
            false => Standing::Rule,
        }
    }
}

impl Notice {
    /// The stable code, part of the JSON format.
    pub fn code(&self) -> &'static str {
        code(self)
    }

    /// The stable codes of all notices.
    pub const CODES: &'static [&'static str] = CODES;

    /// Whether it leaves open which rules bind, so that nothing is ready.
    pub fn leaves_open(&self) -> bool {
        matches!(self, Self::NoEdition { .. } | Self::MayBind { .. } | Self::UnknownWords { .. })
    }
}

stable_words! {
    fn code(&Notice) in CODES {
            Notice::NoRuleNamesVessel => "no-rule-names-vessel",
            Notice::NotInForce { .. } => "not-in-force",
            Notice::DoesNotBind { .. } => "does-not-bind",
            Notice::NoEdition { .. } => "no-edition",
            Notice::UnknownWords { .. } => "unknown-words",
            Notice::MayBind { .. } => "may-bind",
            Notice::RecordAfterDeparture { .. } => "record-after-departure",
            Notice::SheetOutOfDate { .. } => "sheet-out-of-date",
            Notice::TooManyFacts => "too-many-facts",
            Notice::Remark { .. } => "remark",
            Notice::MarkReadAs { .. } => "mark-read-as",
            Notice::Unmarked { .. } => "unmarked",
            Notice::UnlistedMark { .. } => "unlisted-mark",
            Notice::KindDisputed { .. } => "kind-disputed",
            Notice::ReadingsDiffer { .. } => "readings-differ",
            Notice::NoReturn => "no-return",
            Notice::TripOver { .. } => "trip-over",
            Notice::ListOld { .. } => "list-old",
    }
}

stable_words! {
    fn why_code(&Why) in WHY_CODES {
        Why::Binds => "binds",
        Why::MayBind(_) => "may-bind",
        Why::Asked => "asked",
        Why::Fallback => "fallback",
    }
}
