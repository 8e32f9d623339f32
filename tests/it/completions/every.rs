//! Every completion of a drawn vessel, and what holds over all of them.

use super::draw::{Asked, Drawn, FOOT, Known, Listed, Partial};
use kitmuster::model::check::Check;
use kitmuster::model::finding::{Outcome, Verdict};
use std::collections::BTreeSet;

/// A case with more completions is left out.
const MOST: usize = 3_000;

/// Every vessel that the drawn one may be; none where there are too many.
pub(super) fn completions(drawn: &Drawn) -> Option<Vec<Partial>> {
    let mut all = Vec::new();
    for freeboard in freeboards(drawn) {
        for wheelhouse in answers(drawn.vessel.wheelhouse) {
            for traps in answers(drawn.vessel.traps) {
                let mut kits: Vec<Vec<Listed>> = vec![Vec::new()];
                for listed in &drawn.vessel.kit {
                    let ways = ways(listed, &lengths(drawn, listed.length, freeboard));
                    if kits.len() * ways.len() > MOST {
                        return None;
                    }
                    let with =
                        |kit: &Vec<Listed>, way: &Vec<Listed>| [kit.clone(), way.clone()].concat();
                    kits = kits
                        .iter()
                        .flat_map(|kit| ways.iter().map(move |way| with(kit, way)))
                        .collect();
                }
                let freeboard = Known::Is(freeboard);
                let vessel = |kit| Partial {
                    freeboard,
                    wheelhouse: Some(wheelhouse),
                    traps: Some(traps),
                    kit,
                };
                all.extend(kits.into_iter().map(vessel));
                if all.len() > MOST {
                    return None;
                }
            }
        }
    }
    Some(all)
}

fn answers(known: Option<bool>) -> Vec<bool> {
    known.map_or(vec![true, false], |known| vec![known])
}

/// A figure, and those a nanometre beside it.
fn around(figures: impl IntoIterator<Item = i64>) -> BTreeSet<i64> {
    let around = figures.into_iter().flat_map(|one| [one - 1, one, one + 1]);
    around.filter(|one| *one > 0).collect()
}

/// The freeboards of which each answers differently: at the rules' threshold,
/// where a tool of known length comes to be too short, and far off.
fn freeboards(drawn: &Drawn) -> Vec<i64> {
    let mut turns = vec![3 * FOOT, 1, 30 * FOOT];
    for listed in &drawn.vessel.kit {
        let known = match listed.length {
            Known::Is(one) => vec![one],
            Known::Either(one, other) => vec![one, other],
            Known::Unknown | Known::Below(_) => Vec::new(),
        };
        // The greatest freeboard of which 150 % is no longer than the tool.
        turns.extend(known.into_iter().map(|length| length * 100 / 150));
    }
    let all = around(turns);
    match drawn.vessel.freeboard {
        Known::Is(one) => vec![one],
        Known::Either(one, other) => vec![one, other],
        Known::Unknown => all.into_iter().collect(),
        // The rail is never below the deck.
        Known::Below(deck) => {
            all.into_iter().filter(|rail| *rail >= deck).chain([deck, deck + 1]).collect()
        }
    }
}

/// The lengths that an unmeasured tool can have, each answer among them.
fn lengths(drawn: &Drawn, known: Known, freeboard: i64) -> Vec<i64> {
    match known {
        Known::Is(one) | Known::Below(one) => vec![one],
        Known::Either(one, other) => vec![one, other],
        Known::Unknown => {
            let turns = drawn.asked.iter().flat_map(|asked| match asked {
                Asked::Feet(feet) => vec![feet * FOOT],
                Asked::Share(percent) => vec![(freeboard * percent + 99) / 100],
                Asked::About(feet) => vec![feet * FOOT - FOOT / 2, feet * FOOT + FOOT / 2],
            });
            around(turns.chain([1, 3 * FOOT, 50 * FOOT])).into_iter().collect()
        }
    }
}

/// Every way in which the units of a lot can be, each unit a tool of its own;
/// two units that are the other way round are the same.
fn ways(lot: &Listed, lengths: &[i64]) -> Vec<Vec<Listed>> {
    let mut units = Vec::new();
    for length in lengths {
        for works in answers(lot.works) {
            for there in answers(lot.there) {
                units.push(Listed {
                    kind: lot.kind,
                    count: 1,
                    length: Known::Is(*length),
                    works: Some(works),
                    there: Some(there),
                });
            }
        }
    }
    match lot.count {
        1 => units.into_iter().map(|unit| vec![unit]).collect(),
        _ => {
            let pairs =
                (0..units.len()).flat_map(|one| (one..units.len()).map(move |other| (one, other)));
            pairs.map(|(one, other)| vec![units[one].clone(), units[other].clone()]).collect()
        }
    }
}

/// What was found over all completions.
#[derive(Default)]
pub(super) struct Over {
    verdicts: BTreeSet<Verdict>,
    outcomes: Vec<BTreeSet<Option<Outcome>>>,
}

impl Over {
    /// What one completion came to.
    pub(super) fn add(&mut self, check: &Check, requirements: usize) {
        assert_ne!(check.verdict, Verdict::CannotTell, "{check:#?}");
        self.verdicts.insert(check.verdict);
        self.outcomes.resize(requirements, BTreeSet::new());
        for (index, seen) in self.outcomes.iter_mut().enumerate() {
            seen.insert(check.judgements[0].finding(index).map(|finding| finding.outcome));
        }
    }

    /// Ready if every one is, not ready if none is.
    pub(super) fn verdict(&self) -> Verdict {
        match self.verdicts.iter().collect::<Vec<_>>()[..] {
            [only] => *only,
            _ => Verdict::CannotTell,
        }
    }

    /// The same of a requirement. One that is not asked everywhere is met if
    /// it is wherever it is asked.
    pub(super) fn outcome(&self, requirement: usize) -> Option<Outcome> {
        let seen = &self.outcomes[requirement];
        match (seen.contains(&Some(Outcome::Met)), seen.contains(&Some(Outcome::NotMet))) {
            (false, false) => None,
            (true, false) => Some(Outcome::Met),
            (false, true) if seen.len() == 1 => Some(Outcome::NotMet),
            _ => Some(Outcome::CannotTell),
        }
    }
}
