//! A record judged again from its own inputs, and what then differs.
//!
//! Imports `load`, `model` and `measure`. Compares facts alone: no text for
//! people takes part.

use super::make;
use super::replay::{Replay, Rules};
use super::{AuditRecord, FindingOnRecord, JudgementOnRecord, UntilOnRecord, VesselOnRecord};
use crate::engine::Depth;
use crate::fleet::Orders;
use crate::load::{Library, Refusal};
use crate::model::finding::Verdict;
use crate::model::profile::Profile;
use rayon::prelude::*;
use std::collections::BTreeMap;
use std::sync::Arc;

/// What came of judging a record again.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Again {
    /// How many vessels were judged.
    pub vessels: usize,
    /// Everything that differs, in the order of the record.
    pub differences: Vec<Difference>,
}

/// One thing that differs.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Difference {
    /// The vessel's name as it is on record.
    pub vessel: String,
    /// Its file.
    pub file: String,
    /// What.
    pub what: Differs,
}

/// What differs on a vessel, on record and now.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Differs {
    /// Its file, or a record laid over it, is refused now.
    Refused(Refusal),
    /// Its name, register, port or the days of its trip.
    Vessel,
    /// What was told of the check as a whole, as codes.
    Notices(Vec<String>, Vec<String>),
    /// Its verdict.
    Verdict(Verdict, Verdict),
    /// A profile judges it on one side alone; true for the record's.
    Profile(String, bool),
    /// What a profile is said to be: edition, encoding, why it was used.
    Edition(String),
    /// The verdict under a profile.
    VerdictUnder(String, Verdict, Verdict),
    /// Until when it is ready under a profile.
    Until(String, UntilOnRecord, UntilOnRecord),
    /// What was found of a requirement of a profile; none where it does not
    /// bind.
    Finding(String, Option<FindingOnRecord>, Option<FindingOnRecord>),
}

/// Judges a record again from its own inputs.
///
/// # Errors
/// The profiles on record are refused, or it asks for one that it lacks.
pub fn again(record: &AuditRecord) -> Result<Again, Refused> {
    let replay = Replay::new(record);
    let library = replay.library().map_err(Refused::Library)?;
    let asked = replay.asked(&library);
    if let Some(id) = record.asked.profiles.iter().find(|id| library.find(id).is_none()) {
        return Err(Refused::Asked(id.clone()));
    }
    let orders = Orders {
        library: &library,
        asked: &asked,
        on: record.asked.on,
        back: record.asked.back,
        date: record.date,
        trust: record.asked.trust,
        depth: Depth::Findings,
    };
    let differences: Vec<Vec<Difference>> = (0..record.vessels.len())
        .into_par_iter()
        .map(|index| {
            let then = &record.vessels[index];
            let told =
                |what| Difference { vessel: then.name.clone(), file: then.file.clone(), what };
            let found = match judged(&orders, &replay, index, then) {
                Ok(now) => differs(then, &now),
                Err(refusal) => vec![Differs::Refused(refusal)],
            };
            found.into_iter().map(told).collect()
        })
        .collect();
    let differences = differences.into_iter().flatten().collect();
    Ok(Again { vessels: record.vessels.len(), differences })
}

/// Why a record cannot be judged again at all.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Refused {
    /// This program refuses the profiles on record.
    Library(Refusal),
    /// It asks for a profile that is not in it.
    Asked(String),
}

fn judged(
    orders: &Orders<'_>,
    replay: &Replay<'_>,
    index: usize,
    then: &VesselOnRecord,
) -> Result<VesselOnRecord, Refusal> {
    let aboard = replay.aboard(index, &orders.library.vocabulary)?;
    let rules = Rules {
        vocabulary: &orders.library.vocabulary,
        profiles: &orders.library.profiles,
        asked: orders.asked,
        trust: orders.trust,
    };
    let check = aboard.judge(rules, orders.trip(&aboard.vessel.trip));
    Ok(make::vessel(&check, &then.file, then.inspections.clone(), orders.date))
}

/// Everything that differs between two findings of one vessel.
fn differs(then: &VesselOnRecord, now: &VesselOnRecord) -> Vec<Differs> {
    let mut differs = Vec::new();
    let named = |v: &VesselOnRecord| {
        (v.name.clone(), v.register.clone(), v.port.clone(), v.departure, v.back)
    };
    if named(then) != named(now) {
        differs.push(Differs::Vessel);
    }
    if then.notices != now.notices {
        let codes = |v: &VesselOnRecord| v.notices.iter().map(|n| n.code.clone()).collect();
        differs.push(Differs::Notices(codes(then), codes(now)));
    }
    if then.verdict != now.verdict {
        differs.push(Differs::Verdict(then.verdict, now.verdict));
    }
    let of = |v: &VesselOnRecord, id: &str| v.profiles.iter().find(|j| j.id == id).cloned();
    for old in &then.profiles {
        match of(now, &old.id) {
            Some(new) => differs.extend(under(old, &new)),
            None => differs.push(Differs::Profile(old.id.clone(), true)),
        }
    }
    let more = now.profiles.iter().filter(|new| of(then, &new.id).is_none());
    differs.extend(more.map(|new| Differs::Profile(new.id.clone(), false)));
    differs
}

fn under(then: &JudgementOnRecord, now: &JudgementOnRecord) -> Vec<Differs> {
    let mut differs = Vec::new();
    let id = || then.id.clone();
    let said = |j: &JudgementOnRecord| {
        (j.rule.clone(), j.edition.clone(), j.encoding, j.encoded, j.why.clone())
    };
    if said(then) != said(now) {
        differs.push(Differs::Edition(id()));
    }
    if then.verdict != now.verdict {
        differs.push(Differs::VerdictUnder(id(), then.verdict, now.verdict));
    }
    if then.ready_until != now.ready_until {
        differs.push(Differs::Until(id(), then.ready_until, now.ready_until));
    }
    let of = |j: &JudgementOnRecord, id: &str| {
        j.findings.iter().find(|finding| finding.requirement == id).cloned()
    };
    for old in &then.findings {
        let new = of(now, &old.requirement);
        if new.as_ref().is_none_or(|new| !same(old, new)) {
            differs.push(Differs::Finding(id(), Some(old.clone()), new));
        }
    }
    let more = now.findings.iter().filter(|new| of(then, &new.requirement).is_none());
    differs.extend(more.map(|new| Differs::Finding(id(), None, Some(new.clone()))));
    differs
}

/// Since when a finding is open may come from an older record; whether it is
/// open may not.
fn same(then: &FindingOnRecord, now: &FindingOnRecord) -> bool {
    let since = then.open_since;
    since.is_some() == now.open_since.is_some()
        && FindingOnRecord { open_since: since, ..now.clone() } == *then
}

/// An edition on record, or a list that others are built on, that is not what
/// another library holds now.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Newer {
    /// Its id.
    pub id: String,
    /// The law's edition and the revision of its encoding on record.
    pub then: (String, u32),
    /// Those of the other library; none where it has no such profile.
    pub now: Option<(String, u32)>,
}

/// The editions that were used, and the lists that they may be built on,
/// whose text this library holds otherwise.
pub fn newer(record: &AuditRecord, library: &Library) -> Vec<Newer> {
    let Ok(then) = Replay::new(record).library() else { return Vec::new() };
    let used = |profile: &Profile| {
        profile.base || record.editions.iter().any(|edition| edition.id == profile.id)
    };
    let text = |library: &Library, profile: &Arc<Profile>| {
        library.source(&profile.place.file).map(|source| Arc::clone(&source.text))
    };
    let mut differing = BTreeMap::new();
    for old in then.profiles.iter().filter(|profile| used(profile)) {
        let new = library.find(&old.id);
        if new.is_none_or(|new| text(library, new) != text(&then, old)) {
            let said = |profile: &Arc<Profile>| (profile.edition.clone(), profile.encoding);
            let newer = Newer { id: old.id.clone(), then: said(old), now: new.map(said) };
            differing.insert(old.id.clone(), newer);
        }
    }
    differing.into_values().collect()
}
