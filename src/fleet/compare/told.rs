//! What came of comparing two audits: vessels, findings, and how many came
//! out how.

use super::apart::{Gone, Newcomer, Unclear};
use super::families::{Families, Key};
use super::follow::{Cause, Fate, Flip};
use super::laid::Lost;
use super::renamed::Renamed;
use crate::fleet::record::{Program, SinceOnRecord};
use crate::load::Refusal;
use crate::measure::Day;
use crate::model::finding::{Finding, Outcome, Verdict};
use crate::model::profile::Profile;
use crate::model::vessel::Vessel;
use std::sync::Arc;

/// What came of comparing an audit with an earlier one.
#[derive(Debug, Clone)]
pub struct Comparison {
    /// The day of the earlier audit.
    pub then: Day,
    /// Who audited then.
    pub auditor: Option<String>,
    /// The program that made the record.
    pub program: Program,
    /// Vessels of both, in the order of the later audit.
    pub vessels: Vec<Compared>,
    /// Vessels of the earlier audit alone.
    pub gone: Vec<Gone>,
    /// Vessels of the later audit alone.
    pub newcomers: Vec<Newcomer>,
    /// Vessels of which it cannot be told which is which.
    pub unclear: Vec<Unclear>,
    /// Whether vessels were selected otherwise then.
    pub other_selection: bool,
    /// Why the rules on record could not be read again, if so: then what
    /// changed through the program cannot be told from what changed through
    /// the rules.
    pub rules_refused: Option<Refusal>,
    pub(super) families: Families,
}

/// One vessel in both audits.
#[derive(Debug, Clone)]
pub struct Compared {
    /// Its name now.
    pub name: String,
    /// Its register number now.
    pub register: Option<String>,
    /// Its file now.
    pub file: String,
    /// Its verdict then.
    pub verdict_then: Verdict,
    /// Its verdict now.
    pub verdict_now: Verdict,
    /// The findings that were open then or are open now, or were in between.
    pub findings: Vec<Followed>,
    /// Why its old file could not be judged by today's rules, if so.
    pub refused: Option<Refusal>,
    /// The inspection records laid over it then that are not laid over now.
    pub lost: Vec<Lost>,
    /// What the engine judged now, where something is open of which it is to
    /// be told why.
    pub vessel: Option<Box<Vessel>>,
    /// What was found by records that were missing then already, and still
    /// are.
    pub missing: Vec<SinceOnRecord>,
}

/// One requirement of a rule on one vessel, followed.
#[derive(Debug, Clone)]
pub struct Followed {
    /// The rule.
    pub rule: String,
    /// The requirement's id now, else then; none for the rule as a whole.
    pub requirement: Option<String>,
    /// Where the requirement stands: a profile, and its place in it.
    pub stands: Option<(Arc<Profile>, usize)>,
    /// The outcome then; none where it was not asked.
    pub then: Option<Outcome>,
    /// The outcome now.
    pub now: Option<Outcome>,
    /// What became of it.
    pub fate: Fate,
    /// What decided that; none for what is still open.
    pub cause: Option<Cause>,
    /// Since which audit it is open, where it is still open, or open again
    /// with a record that was missing.
    pub since: Option<Day>,
    /// The finding, where it is open now.
    pub open: Option<Finding>,
    /// The code of the first reason then, where it is still open and its first
    /// reason now is none of those then.
    pub reason_then: Option<String>,
    /// The marks of a tool that is gone and of one that came without a word on
    /// either, where the vessel closed it so.
    pub renamed: Option<Renamed>,
    /// Every change on the way.
    pub flips: Vec<Flip>,
    pub(super) key: Key,
}

/// How many findings came out how.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Tally {
    /// Mended on the vessel.
    pub mended: usize,
    /// Nobody could tell, and it was found to be met.
    pub settled: usize,
    /// No longer open only because an inspection record is gone.
    pub record_gone: usize,
    /// Open then and now.
    pub still_open: usize,
    /// Newly open through the vessel.
    pub new: usize,
    /// Newly open through the calendar.
    pub lapsed: usize,
    /// Newly open through anything else but the vessel.
    pub opened_otherwise: usize,
    /// No longer open, through anything else but a mend on the vessel.
    pub closed_otherwise: usize,
    /// Opened and closed again between the two audits.
    pub passing: usize,
}

impl Comparison {
    /// How many findings came out how, over the vessels of both audits.
    pub fn tally(&self) -> Tally {
        let mut tally = Tally::default();
        for followed in self.vessels.iter().flat_map(|vessel| &vessel.findings) {
            let through = |cause| followed.cause == Some(cause);
            *match followed.fate {
                Fate::StillOpen => &mut tally.still_open,
                Fate::Passing => &mut tally.passing,
                Fate::Closed if followed.is_mended() => &mut tally.mended,
                Fate::Closed if followed.is_settled() => &mut tally.settled,
                Fate::Closed if through(Cause::Record) => &mut tally.record_gone,
                Fate::Closed => &mut tally.closed_otherwise,
                Fate::Opened if through(Cause::Vessel) => &mut tally.new,
                Fate::Opened if through(Cause::Calendar) => &mut tally.lapsed,
                Fate::Opened => &mut tally.opened_otherwise,
            } += 1;
        }
        tally
    }
}

impl Followed {
    /// Whether the vessel put it right: it is met now, and was not before the
    /// vessel changed.
    pub fn is_mended(&self) -> bool {
        self.renamed.is_none() && self.met_by_vessel() == Some(Outcome::NotMet)
    }

    /// Whether only somebody looked: nobody could tell before the vessel's
    /// statements changed, and it is met now.
    pub fn is_settled(&self) -> bool {
        self.met_by_vessel() == Some(Outcome::CannotTell)
    }

    /// What it was before the vessel closed it.
    fn met_by_vessel(&self) -> Option<Outcome> {
        let met = self.fate == Fate::Closed && self.now == Some(Outcome::Met);
        let turn = self.flips.iter().rfind(|flip| flip.turns());
        turn.filter(|flip| met && flip.cause == Cause::Vessel)?.from
    }
}
