//! The requirements that a fleet misses most, and by how much.

use super::judge::{Judged, Row};
use crate::measure::{Length, Quantity, QuantityKind, System};
use crate::model::finding::{Finding, Outcome};
use crate::model::profile::{Level, Profile, Requirement};
use crate::model::reason::Reason;
use std::collections::BTreeMap;
use std::sync::Arc;

/// How often one requirement is missed.
#[derive(Debug, Clone)]
pub struct Missed {
    /// The edition that it belongs to.
    pub profile: Arc<Profile>,
    /// The requirement, by index.
    pub requirement: usize,
    /// On how many vessels it is not met.
    pub not_met: usize,
    /// On how many nobody can tell.
    pub cannot_tell: usize,
    /// On how many vessels a tool is too short for the rail.
    pub short_on: usize,
    /// The median of the shortfalls at the rail (of an even number the mean of
    /// the middle two, half a nanometre rounded up). `None` where it is not a
    /// length that falls short.
    pub median: Option<Length>,
    /// The worst shortfall at the rail.
    pub worst: Option<Worst>,
}

/// The worst shortfall, and where it is.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Worst {
    /// By how much the tool is too short.
    pub short: Length,
    /// On which vessel.
    pub vessel: String,
    /// The system in which that vessel's people measure.
    pub system: System,
}

impl Missed {
    /// The requirement itself.
    pub fn requirement(&self) -> Option<&Requirement> {
        self.profile.requirements.get(self.requirement)
    }
}

#[derive(Default)]
struct Heap {
    not_met: usize,
    cannot_tell: usize,
    shortfalls: Vec<Length>,
    worst: Option<Worst>,
}

/// The required findings that are not met or cannot be told, the most often
/// missed first; among equals in the order of the profiles.
pub fn most_missed(rows: &[Row]) -> Vec<Missed> {
    let mut heaps: BTreeMap<(String, usize), (Arc<Profile>, Heap)> = BTreeMap::new();
    for row in rows {
        let Row::Vessel(judged) = row else { continue };
        for judgement in &judged.check.judgements {
            for finding in &judgement.findings {
                let requirement = judgement.profile.requirements.get(finding.requirement);
                let required = requirement.is_some_and(|r| r.level == Level::Required);
                if !required || finding.outcome == Outcome::Met {
                    continue;
                }
                let key = (judgement.profile.id.clone(), finding.requirement);
                let heap = heaps
                    .entry(key)
                    .or_insert_with(|| (Arc::clone(&judgement.profile), Heap::default()));
                heap.1.add(judged, finding);
            }
        }
    }
    let mut missed: Vec<_> = heaps
        .into_iter()
        .map(|((_, requirement), (profile, heap))| heap.told(profile, requirement))
        .collect();
    missed.sort_by_key(|m| std::cmp::Reverse((m.not_met, m.cannot_tell)));
    missed
}

impl Heap {
    fn add(&mut self, judged: &Judged, finding: &Finding) {
        if finding.outcome == Outcome::CannotTell {
            self.cannot_tell += 1;
            return;
        }
        self.not_met += 1;
        let Some((short, system)) = shortfall(finding) else { return };
        self.shortfalls.push(short);
        if self.worst.as_ref().is_none_or(|worst| worst.short < short) {
            self.worst = Some(Worst { short, vessel: judged.check.vessel.name.clone(), system });
        }
    }

    fn told(mut self, profile: Arc<Profile>, requirement: usize) -> Missed {
        self.shortfalls.sort_unstable();
        Missed {
            profile,
            requirement,
            not_met: self.not_met,
            cannot_tell: self.cannot_tell,
            short_on: self.shortfalls.len(),
            median: median(&self.shortfalls),
            worst: self.worst,
        }
    }
}

/// The median of lengths in order.
fn median(sorted: &[Length]) -> Option<Length> {
    let upper = *sorted.get(sorted.len() / 2)?;
    if sorted.len() % 2 == 1 {
        return Some(upper);
    }
    let lower = *sorted.get(sorted.len() / 2 - 1)?;
    let steps = (lower.nanometres() + upper.nanometres() + 1) / 2;
    Quantity::from_steps(QuantityKind::Length, steps).length()
}

/// By how much the nearest tool is too short for the rail, where that is what
/// is told first of the finding: the figure that the vessel's own row has.
fn shortfall(finding: &Finding) -> Option<(Length, System)> {
    match &finding.reasons.first()?.reason {
        Reason::TooShortForRail { short, has, .. } => Some((*short, has.system)),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn of_an_even_number_the_median_is_the_mean_of_the_middle_two() {
        let library = crate::load::Library::shipped().unwrap();
        let median = |steps: &[i64]| {
            let length = |steps: &i64| Quantity::from_steps(QuantityKind::Length, *steps).length();
            let shortfalls = steps.iter().filter_map(length).collect();
            let heap = Heap { not_met: steps.len(), shortfalls, ..Heap::default() };
            heap.told(Arc::clone(&library.profiles[0]), 0).median.unwrap().nanometres()
        };
        assert_eq!(median(&[8, 1, 4, 2]), 3);
        assert_eq!(median(&[8, 1, 5, 2]), 4, "half a nanometre is rounded up");
    }
}
