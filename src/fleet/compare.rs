//! Two audits of a fleet: what was mended, what is still open, what is new,
//! and which of it the vessel did not do. Imports `load`, `engine`, `model`
//! and `measure`; prints nothing.
//!
//! **How a change is attributed.** Seven things lie between two findings on one
//! vessel: the program, the encoding of the rules, what was asked, the edition
//! in force, the days of the trip, the vessel itself, and which inspection
//! records are laid over it. Comparing the ends alone
//! cannot tell them apart, so the old inputs are judged again with one thing
//! changed at a time, and each change of an outcome belongs to the step at
//! which it happens:
//!
//! | step | vessel's files | rules | asked | edition | days | so the step shows |
//! | --- | --- | --- | --- | --- | --- | --- |
//! | A | old | recorded | old | old | old | (read off the record) |
//! | B | old | recorded | old | old | old | the program |
//! | C | old | today's | old | old | old | an encoding, or the rules' files |
//! | Q | old | today's | new | old | old | what was asked |
//! | E | old | today's | new | new | old | the edition |
//! | T | old | today's | new | new | new | the calendar |
//! | V | new, old records too | today's | new | new | new | the vessel |
//! | D | new | today's | new | new | new | a record that is gone |
//!
//! The order matters where two things change the same outcome. It goes from
//! what nobody on the vessel can help to what they can: a finding that the
//! rule opened stays the rule's, though the vessel would have opened it too.
//! Were the vessel changed first, a longer handle bought for a new edition
//! would look like one that nobody had asked for. For the same reason the
//! edition goes before the days: the edition that governs the new trip is
//! judged as if it had governed the old one, so that what lapses is not taken
//! for what is newly asked. Where no edition is known for the new days, the
//! old ones stay until T.
//!
//! An inspection record that was laid over then and is not now, whether lost,
//! broken, left out or not given, puts nothing right: what it found is so until
//! somebody looks again. So the new vessel is judged with it laid over as well,
//! and what changes without it is laid to that.
//!
//! What is dated counts from its day on. A statement made after the old trip is
//! nothing yet at E and something at T, so that a finding may be opened by the
//! edition and closed by the calendar.
//!
//! An outcome may change more than once: closed by a correction, opened again
//! by the vessel. All changes are told; the last one between open (not met,
//! can't tell) and not open (met, or not asked) decides what the finding is
//! called. What was open and is open is *still open*, whatever lay between.
//! A step that cannot be worked out (the old text is refused today) is left
//! out, and a change across the hole is told without a cause.
//!
//! What is followed is a rule and a requirement: all editions of a rule
//! together, and all ids that `formerly` ties to one another together, the
//! worst outcome of them. A requirement that exists in one edition alone is
//! *not asked* under the others. A rule that is known but not encoded, or of
//! which no edition is known, is followed as a whole, as *can't tell*; what was
//! open under it is then not put right, only nobody can tell any more.

mod apart;
mod families;
mod follow;
mod laid;
mod memory;
mod pairs;
mod steps;
#[cfg(test)]
mod steps_tests;

pub use apart::{Candidate, Gone, Newcomer, Unclear, WhyGone};
pub use follow::{Cause, Fate, Flip};
pub use laid::Lost;
pub use pairs::Shared;

pub(super) use families::{Families, Key, Outcomes, Seen};

use super::record::replay::Replay;
use super::record::{AuditRecord, Program, SinceOnRecord};
use super::select::Selection;
use super::{Judged, Orders, Row};
use crate::load::Refusal;
use crate::measure::Day;
use crate::model::finding::{Finding, Outcome, Verdict};
use crate::model::profile::Profile;
use crate::model::vessel::Vessel;
use pairs::Named;
use rayon::prelude::*;
use std::collections::BTreeSet;
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
    families: Families,
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
    /// Every change on the way.
    pub flips: Vec<Flip>,
    key: Key,
}

/// Compares the rows of an audit with an audit on record.
pub fn compare(
    record: &AuditRecord,
    orders: &Orders<'_>,
    selection: &Selection,
    rows: &[Row],
) -> Comparison {
    let replay = Replay::new(record);
    let then = replay.library();
    let rules_refused = then.as_ref().err().cloned();
    let then = then.ok();
    let today = &orders.library.profiles;
    let families = Families::of(today.iter().chain(then.iter().flat_map(|old| &old.profiles)));
    let (judged, outside) = concerned(selection, rows);
    let pairs = pairs::pairs(&named_then(record), &named_now(&judged));
    let walk = steps::Walk::new(&replay, record, then.as_ref(), orders, &families);
    let vessels = pairs.both.par_iter().map(|(old, new)| walk.compared(*old, judged[*new]));
    let vessels = vessels.collect();
    let outside = named_now(&outside);
    let refused = rows.iter().filter_map(|row| match row {
        Row::Refused(refusal) => Some(&*refusal.file),
        Row::Vessel(_) => None,
    });
    let refused: Vec<&str> = refused.collect();
    let gone = pairs.old.iter().map(|old| apart::gone(record, *old, &outside, &refused)).collect();
    let newcomers = pairs.new.iter().map(|new| apart::newcomer(record, judged[*new])).collect();
    let unclear = pairs.unclear.into_iter();
    let unclear = unclear.map(|open| apart::unclear(record, &judged, open)).collect();
    Comparison {
        then: record.date,
        auditor: record.auditor.clone(),
        program: record.program.clone(),
        vessels,
        gone,
        newcomers,
        unclear,
        other_selection: other_selection(record, selection),
        rules_refused,
        families,
    }
}

/// Whether other vessels were selected then. The order and the capitals of
/// what was typed select nothing else.
fn other_selection(record: &AuditRecord, selection: &Selection) -> bool {
    let plain = |list: &[String]| -> BTreeSet<String> {
        list.iter().map(|word| word.trim().to_lowercase()).collect()
    };
    let asked = &record.asked;
    let then = [&asked.gear, &asked.port, &asked.bound_by];
    let now = [&selection.gears, &selection.ports, &selection.bound_by];
    then.into_iter().zip(now).any(|(then, now)| plain(then) != plain(now))
}

/// The vessels that the audit is about, and those that it is not.
fn concerned<'r>(selection: &Selection, rows: &'r [Row]) -> (Vec<&'r Judged>, Vec<&'r Judged>) {
    let judged = rows.iter().filter_map(|row| match row {
        Row::Vessel(judged) => Some(&**judged),
        Row::Refused(_) => None,
    });
    judged.partition(|judged| selection.concerns(&judged.check))
}

fn named_then(record: &AuditRecord) -> Vec<Named<'_>> {
    let vessels = record.vessels.iter();
    vessels.map(|v| Named::new(&v.name, v.register.as_deref(), &v.file)).collect()
}

fn named_now<'r>(judged: &[&'r Judged]) -> Vec<Named<'r>> {
    let named = |judged: &&'r Judged| {
        let vessel = &judged.check.vessel;
        Named::new(&vessel.name, vessel.register.as_deref(), &judged.file)
    };
    judged.iter().map(named).collect()
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
        self.met_by_vessel() == Some(Outcome::NotMet)
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
