//! The vessels that are in one audit alone, and those of which it cannot be
//! told which is which.
//!
//! Imports `model` and the pairs; prints nothing.

use super::laid::last;
use super::pairs::{self, Named, Shared};
use crate::fleet::Judged;
use crate::fleet::record::AuditRecord;
use crate::model::finding::Verdict;

/// A vessel of the earlier audit alone.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Gone {
    /// Its name.
    pub name: String,
    /// Its register number.
    pub register: Option<String>,
    /// Its file then.
    pub file: String,
    /// Its verdict then.
    pub verdict: Verdict,
    /// How many required findings were open then.
    pub open: usize,
    /// Why it is not compared.
    pub why: WhyGone,
}

/// Why a vessel is in the earlier audit alone.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum WhyGone {
    /// There is no file of it.
    NotThere,
    /// Its file is there and is refused.
    NotRead,
    /// A file of the same name in another folder is refused, and may be its.
    MayBe(String),
    /// It lies outside what this audit selects.
    Outside,
}

/// A vessel of the later audit alone.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Newcomer {
    /// Its name.
    pub name: String,
    /// Its register number.
    pub register: Option<String>,
    /// Its file.
    pub file: String,
    /// Its verdict.
    pub verdict: Verdict,
    /// Whether its file was there then and was refused.
    pub refused_then: bool,
    /// A file of the same name in another folder that was refused then, and
    /// may be its.
    pub may_be: Option<String>,
}

/// Vessels of which it cannot be told which is which.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Unclear {
    /// What several of them share.
    pub by: Shared,
    /// The candidates of the earlier audit.
    pub then: Vec<Candidate>,
    /// Those of the later one.
    pub now: Vec<Candidate>,
}

/// One of them.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Candidate {
    /// Its name.
    pub name: String,
    /// Its register number.
    pub register: Option<String>,
    /// Its file.
    pub file: String,
    /// Its verdict.
    pub verdict: Verdict,
}

pub(super) fn gone(
    record: &AuditRecord,
    old: usize,
    outside: &[Named<'_>],
    refused: &[&str],
) -> Gone {
    let vessel = &record.vessels[old];
    let named = Named::new(&vessel.name, vessel.register.as_deref(), &vessel.file);
    let alike = refused.iter().find(|file| last(file) == last(&vessel.file));
    let why = if refused.contains(&&*vessel.file) {
        WhyGone::NotRead
    } else if outside.iter().any(|other| other.may_be(&named)) {
        WhyGone::Outside
    } else if let Some(file) = alike {
        WhyGone::MayBe((*file).to_owned())
    } else {
        WhyGone::NotThere
    };
    let findings = vessel.profiles.iter().flat_map(|judgement| &judgement.findings);
    Gone {
        name: vessel.name.clone(),
        register: vessel.register.clone(),
        file: vessel.file.clone(),
        verdict: vessel.verdict,
        open: findings.filter(|finding| finding.open_since.is_some()).count(),
        why,
    }
}

pub(super) fn newcomer(record: &AuditRecord, judged: &Judged) -> Newcomer {
    let vessel = &judged.check.vessel;
    let refused = || record.refused.iter().map(|refused| &refused.file);
    let refused_then = refused().any(|file| **file == *judged.file);
    let alike = refused().find(|file| last(file) == last(&judged.file));
    Newcomer {
        name: vessel.name.clone(),
        register: vessel.register.clone(),
        file: judged.file.to_string(),
        verdict: judged.check.verdict,
        refused_then,
        may_be: alike.filter(|_| !refused_then).cloned(),
    }
}

pub(super) fn unclear(record: &AuditRecord, judged: &[&Judged], open: pairs::Open) -> Unclear {
    let then = open.old.into_iter().map(|old| {
        let vessel = &record.vessels[old];
        Candidate {
            name: vessel.name.clone(),
            register: vessel.register.clone(),
            file: vessel.file.clone(),
            verdict: vessel.verdict,
        }
    });
    let now = open.new.into_iter().map(|new| {
        let judged = judged[new];
        Candidate {
            name: judged.check.vessel.name.clone(),
            register: judged.check.vessel.register.clone(),
            file: judged.file.to_string(),
            verdict: judged.check.verdict,
        }
    });
    Unclear { by: open.by, then: then.collect(), now: now.collect() }
}
