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
//! Nor is anything put right where a tool is gone without a word and another of its
//! kind has come, which nobody bought and no record names: it may be the same with
//! another mark on it.
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
mod renamed;
mod steps;
#[cfg(test)]
mod steps_tests;
mod told;

pub use apart::{Candidate, Gone, Newcomer, Unclear, WhyGone};
pub use follow::{Cause, Fate, Flip};
pub use laid::Lost;
pub use pairs::Shared;
pub use renamed::Renamed;
pub use told::{Compared, Comparison, Followed, Tally};

pub(super) use families::{Families, Key, Outcomes, Seen};

use super::record::AuditRecord;
use super::record::replay::Replay;
use super::select::Selection;
use super::{Judged, Orders, Row};
use pairs::Named;
use rayon::prelude::*;
use std::collections::BTreeSet;

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
