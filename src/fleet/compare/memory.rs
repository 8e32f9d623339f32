//! Since when something is open, from record to record.
//!
//! Imports `model` and `measure`. What is open and has a finding keeps the day
//! there; what has none goes into the list of its own, so that neither a time
//! in which nobody could tell of a rule nor a record that is not laid over
//! makes an old fault a young one.

use super::families::{Families, Key};
use super::follow::{Cause, Fate};
use super::told::{Compared, Comparison, Followed};
use crate::fleet::Judged;
use crate::fleet::record::{Entry, InputFile, SinceOnRecord, VesselOnRecord};
use crate::measure::Day;
use crate::model::finding::Outcome;
use std::collections::{BTreeMap, BTreeSet};

/// Since when each key is open.
pub(super) type Since = BTreeMap<Key, Day>;

/// Since when each key of a record is open: the earliest of its key.
pub(super) fn open(families: &Families, vessel: &VesselOnRecord) -> Since {
    let mut since = Since::new();
    for judgement in &vessel.profiles {
        for finding in judgement.findings.iter().filter(|f| f.outcome != Outcome::Met) {
            if let Some(day) = finding.open_since {
                put(&mut since, families.key(&judgement.rule, &finding.requirement), day);
            }
        }
    }
    for kept in vessel.since.iter().filter(|kept| kept.without.is_empty()) {
        put(&mut since, key(families, kept), kept.open_since);
    }
    since
}

/// What is laid over again and was found open before it went missing.
pub(super) fn back(families: &Families, vessel: &VesselOnRecord, now: &Judged) -> Since {
    let mut since = Since::new();
    for kept in missed(vessel, now, true) {
        put(&mut since, key(families, kept), kept.open_since);
    }
    since
}

/// What was found by records that were missing then and still are.
pub(super) fn missing(vessel: &VesselOnRecord, now: &Judged) -> Vec<SinceOnRecord> {
    missed(vessel, now, false).into_iter().cloned().collect()
}

/// What was found by records that were missing then, as far as one of them is
/// laid over now, or none is.
fn missed<'v>(vessel: &'v VesselOnRecord, now: &Judged, again: bool) -> Vec<&'v SinceOnRecord> {
    let kept: Vec<_> = vessel.since.iter().filter(|kept| !kept.without.is_empty()).collect();
    if kept.is_empty() {
        return kept;
    }
    let laid: Vec<String> =
        now.sources.iter().skip(1).map(|source| InputFile::new(source).sha256).collect();
    let is_back = |kept: &&SinceOnRecord| kept.without.iter().any(|digest| laid.contains(digest));
    kept.into_iter().filter(|kept| is_back(kept) == again).collect()
}

fn key(families: &Families, kept: &SinceOnRecord) -> Key {
    match &kept.requirement {
        Some(id) => families.key(&kept.rule, id),
        None => (kept.rule.clone(), None),
    }
}

fn put(since: &mut Since, key: Key, day: Day) {
    let known = since.entry(key).or_insert(day);
    *known = day.min(*known);
}

impl Comparison {
    /// Lets what is still open go on record with the day on which it was
    /// first found open.
    pub fn carry_over(&self, entries: &mut [Entry]) {
        let known: BTreeMap<&str, &Compared> =
            self.vessels.iter().map(|compared| (&*compared.file, compared)).collect();
        for entry in entries {
            if let Some(compared) = known.get(&*entry.vessel.file) {
                self.carry(compared, entry);
            }
        }
    }

    fn carry(&self, compared: &Compared, entry: &mut Entry) {
        let vessel = &mut entry.vessel;
        let mut dated = BTreeSet::new();
        for judgement in &mut vessel.profiles {
            for finding in &mut judgement.findings {
                let Some(day) = &mut finding.open_since else { continue };
                let key = self.families.key(&judgement.rule, &finding.requirement);
                let followed = compared.findings.iter().find(|f| f.key == key);
                *day = followed.and_then(|followed| followed.since).unwrap_or(*day);
                dated.insert(key);
            }
        }
        let without: Vec<String> = compared.lost.iter().map(|lost| lost.sha256.clone()).collect();
        for followed in &compared.findings {
            let own = |day, without: &[String]| SinceOnRecord {
                rule: followed.rule.clone(),
                requirement: followed.key.1.clone(),
                open_since: day,
                without: without.to_vec(),
            };
            match (followed.fate, followed.since) {
                (Fate::StillOpen, Some(day)) if !dated.contains(&followed.key) => {
                    vessel.since.push(own(day, &[]));
                }
                // Dated is only what was closed through a record that is gone.
                (Fate::Closed, Some(day)) => vessel.since.push(own(day, &without)),
                _ => {}
            }
        }
        vessel.since.extend(compared.missing.iter().cloned());
    }
}

impl Followed {
    /// Since when it is open, or was until an inspection record went missing.
    pub(super) fn dated(&self, open: &Since, back: &Since, then: Day) -> Option<Day> {
        match self.fate {
            Fate::StillOpen => Some(open.get(&self.key).copied().unwrap_or(then)),
            Fate::Closed if self.cause == Some(Cause::Record) => {
                Some(open.get(&self.key).copied().unwrap_or(then))
            }
            Fate::Opened => back.get(&self.key).copied(),
            Fate::Closed | Fate::Passing => None,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn of_several_days_of_one_key_the_earliest_stands() {
        let (june, august) =
            ["2026-06-01", "2026-08-01"].map(|day| Day::parse(day).unwrap()).into();
        let key: Key = ("a rule".to_owned(), None);
        for days in [[june, august], [august, june]] {
            let mut since = Since::new();
            days.into_iter().for_each(|day| put(&mut since, key.clone(), day));
            assert_eq!(since[&key], june);
        }
    }
}
