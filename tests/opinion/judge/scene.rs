//! One scene, in which each tool serves or does not: the outcome of every
//! requirement by the best assignments, strict and generous.

use super::{Outcome, Said, Verdict};
use crate::assign::{Answer, Asked, Assign, Lot, Part, Pass};
use crate::rules::Requirement;
use std::collections::{BTreeMap, BTreeSet};

/// The opinion in one scene.
#[derive(Debug)]
pub(crate) struct Scene {
    pub(super) verdict: Verdict,
    pub(super) said: Vec<Said>,
    pub(super) binds: Vec<Answer>,
    pub(super) strict: Vec<Part>,
    pub(super) generous: Vec<Part>,
    /// Whether anything is open that assignments hang on.
    pub(super) open: bool,
    /// Positions of the requirements that want tools.
    pub(super) wanting: Vec<usize>,
}
pub(super) fn decide(
    requirements: &[Requirement],
    binds: &BTreeMap<String, Answer>,
    own: &BTreeMap<String, Answer>,
    lots: &[Lot],
    assign: Assign,
) -> Scene {
    // Spares are asked where what they are for is.
    let spare_for = |r: &Requirement| r.wanted.as_ref().and_then(|w| w.spare_for.clone());
    let served = |r: &Requirement| spare_for(r).map_or(2, |id| binds[&id]);
    let binds: Vec<Answer> = requirements.iter().map(|r| binds[&r.id].min(served(r))).collect();
    let wanting: Vec<usize> =
        (0..requirements.len()).filter(|r| requirements[*r].wanted.is_some()).collect();
    let asked: Vec<Asked<'_>> = wanting
        .iter()
        .map(|r| {
            let Requirement { id, required, wanted, .. } = &requirements[*r];
            Asked { wanted: wanted.as_ref().unwrap(), binds: binds[*r], required: *required, id }
        })
        .collect();
    let strict = assign(&asked, lots, Pass::Strict);
    // Where nothing is open, both sides are the same.
    let open = is_open(&asked, lots);
    let generous = if open { assign(&asked, lots, Pass::Generous) } else { strict.clone() };
    let mut scene =
        Scene { verdict: Verdict::Ready, said: Vec::new(), binds, strict, generous, open, wanting };
    for (r, requirement) in requirements.iter().enumerate() {
        let bind = scene.binds[r];
        let (sure, possible) = match own.get(&requirement.id) {
            Some(answer) => (BTreeSet::from([*answer == 2]), BTreeSet::from([*answer > 0])),
            None => (scene.met(&scene.strict, r), scene.met(&scene.generous, r)),
        };
        let pairs = sure.iter().flat_map(|s| possible.iter().map(move |p| (*s, *p)));
        scene.said.push(if bind == 0 {
            [Outcome::NotApplicable].into()
        } else {
            let mut said: Said = pairs.map(|(s, p)| outcome(bind, s, p)).collect();
            // What is met if it is asked may never be asked.
            if bind == 1 && said.contains(&Outcome::Met) {
                said.insert(Outcome::NotApplicable);
            }
            said
        });
        if let (Some(answer), true, true) =
            (own.get(&requirement.id), requirement.required, bind > 0)
        {
            scene.verdict = scene.verdict.max(match answer {
                2 => Verdict::Ready,
                0 if bind == 2 => Verdict::NotReady,
                _ => Verdict::CannotTell,
            });
        }
    }
    // Every best assignment meets as many required ones, so that any of them
    // tells whether all are met.
    for (parts, needed, verdict) in
        [(&scene.strict, 1, Verdict::CannotTell), (&scene.generous, 2, Verdict::NotReady)]
    {
        let unmet = |part: &Part| {
            let met = part.best.first().copied().unwrap_or(0);
            part.requirements.iter().any(|r| {
                let requirement = scene.wanting[*r];
                requirements[requirement].required
                    && scene.binds[requirement] >= needed
                    && met >> r & 1 == 0
            })
        };
        if parts.iter().any(unmet) {
            scene.verdict = scene.verdict.max(verdict);
        }
    }
    scene
}

/// Whether anybody cannot tell something that assignments hang on: a spare
/// that names no tool may fit or not.
fn is_open(asked: &[Asked<'_>], lots: &[Lot]) -> bool {
    let spares = asked.iter().filter(|one| one.wanted.spare_for.is_some());
    let places: Vec<_> = spares.flat_map(|one| one.wanted.types.iter().flatten()).collect();
    let is_spare = |spec: &String| places.iter().any(|place| place.specs.contains(spec));
    let open = |lot: &Lot| {
        let mut answers = lot.fits.iter();
        answers.any(|(spec, a)| *a == 1 || *a == 2 && lot.names.is_empty() && is_spare(spec))
    };
    asked.iter().any(|one| one.binds == 1) || lots.iter().any(open)
}

fn outcome(binds: Answer, sure: bool, possible: bool) -> Outcome {
    match (binds, sure, possible) {
        (0, ..) => Outcome::NotApplicable,
        (1, true, _) | (2, true, true) => Outcome::Met,
        (2, false, false) => Outcome::NotMet,
        _ => Outcome::CannotTell,
    }
}

impl Scene {
    /// Requirements that compete for tools while something is open.
    pub(super) fn competing(&self) -> Vec<usize> {
        let rivals = self.generous.iter().filter(|part| self.open && part.requirements.len() > 1);
        rivals.flat_map(|part| &part.requirements).map(|r| self.wanting[*r]).collect()
    }

    fn met(&self, parts: &[Part], requirement: usize) -> BTreeSet<bool> {
        let Some(r) = self.wanting.iter().position(|w| *w == requirement) else {
            return BTreeSet::new();
        };
        let of = parts.iter().filter(|part| part.requirements.contains(&r));
        let met: BTreeSet<bool> =
            of.flat_map(|part| part.best.iter().map(move |met| met >> r & 1 == 1)).collect();
        if met.is_empty() { BTreeSet::from([false]) } else { met }
    }

    /// Whether one strict and one generous best assignment give together what is
    /// met of these outcomes, and nothing better than the rest: what is not met
    /// may be so for being tied, and what is open may be settled.
    pub(crate) fn allows(&self, outcomes: &[Outcome]) -> bool {
        let fits = |strict: &[u64], generous: &[u64]| {
            self.wanting.iter().enumerate().all(|(r, requirement)| {
                let met = |masks: &[u64]| masks.iter().any(|m| m >> r & 1 == 1);
                let ours = outcome(self.binds[*requirement], met(strict), met(generous));
                match outcomes[*requirement] {
                    Outcome::Met => ours == Outcome::Met || ours == Outcome::CannotTell,
                    Outcome::NotApplicable => ours != Outcome::NotMet,
                    Outcome::CannotTell | Outcome::NotMet => true,
                }
            })
        };
        // Part by part, the strict choices that no outcome contradicts; few.
        let choices = |parts: &[Part]| -> Vec<Vec<u64>> {
            let mut all: Vec<Vec<u64>> = vec![Vec::new()];
            for part in parts {
                all = all
                    .iter()
                    .flat_map(|chosen| {
                        part.best.iter().map(|one| {
                            let mut more = chosen.clone();
                            more.push(*one);
                            more
                        })
                    })
                    .collect();
            }
            all
        };
        let (strict, generous) = (choices(&self.strict), choices(&self.generous));
        strict.iter().any(|s| generous.iter().any(|g| fits(s, g)))
    }
}
