//! Facts of the vessel that leave several findings open: told once, not
//! again with every finding.
//!
//! Imports `model` and the words beside it.

use crate::model::finding::{Because, Finding};
use crate::model::reason::{Reason, VesselFact};
use crate::report::words::fact_of;

/// A missing fact and the findings that it leaves open.
pub(super) struct Shared<'a> {
    pub(super) fact: &'a VesselFact,
    /// The requirements, by index.
    pub(super) requirements: Vec<usize>,
}

/// The facts that more than one of the findings lack.
pub(super) fn shared<'a>(findings: &[&'a Finding]) -> Vec<Shared<'a>> {
    let mut all: Vec<Shared<'a>> = Vec::new();
    for finding in findings {
        for fact in finding.reasons.iter().filter_map(fact_of) {
            match all.iter_mut().find(|shared| shared.fact == fact) {
                Some(shared) if shared.requirements.contains(&finding.requirement) => {}
                Some(shared) => shared.requirements.push(finding.requirement),
                None => all.push(Shared { fact, requirements: vec![finding.requirement] }),
            }
        }
    }
    all.retain(|shared| shared.requirements.len() > 1);
    all
}

/// The reasons of a finding that the shared facts do not tell already; none
/// if they tell it all.
pub(super) fn news<'a>(finding: &'a Finding, told: &[&VesselFact]) -> Vec<&'a Because> {
    let is_told = |because: &&Because| fact_of(because).is_some_and(|fact| told.contains(&fact));
    let (told, news): (Vec<_>, Vec<_>) = finding.reasons.iter().partition(is_told);
    // Spares that fit nothing follow from a tool that is open itself.
    let follows = |because: &&Because| matches!(because.reason, Reason::FitsNothing { .. });
    if !told.is_empty() && news.iter().all(follows) { Vec::new() } else { news }
}
