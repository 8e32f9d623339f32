//! What is followed from one audit to the next: rules, and requirements that
//! were renamed, split or merged, under one key; and what a check says of
//! each key.
//!
//! Imports `model`.

use crate::fleet::record::VesselOnRecord;
use crate::model::check::{Check, Notice};
use crate::model::finding::Outcome;
use crate::model::profile::{Level, Profile};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

/// A rule, and the requirement that is followed; none for the rule as a
/// whole.
pub(in crate::fleet) type Key = (String, Option<String>);

/// The outcome of every required finding, and of every rule that could not be
/// judged.
pub(in crate::fleet) type Outcomes = BTreeMap<Key, Seen>;

/// What was seen of one key.
#[derive(Debug, Clone)]
pub(in crate::fleet) struct Seen {
    /// The worst outcome.
    pub(in crate::fleet) outcome: Outcome,
    /// The id of the requirement that has it.
    pub(in crate::fleet) id: Option<String>,
    /// The profile that it stands in, where it is at hand.
    pub(in crate::fleet) stands: Option<(Arc<Profile>, usize)>,
}

/// The ids of each rule that `formerly` ties to one another.
#[derive(Debug, Clone, Default)]
pub(in crate::fleet) struct Families {
    /// The first of its family, by rule and id, for ids that have relatives.
    first: BTreeMap<(String, String), String>,
}

impl Families {
    /// The families of these profiles, old and new.
    pub(in crate::fleet) fn of<'p>(profiles: impl Iterator<Item = &'p Arc<Profile>>) -> Self {
        let mut rules: BTreeMap<&str, Vec<BTreeSet<&str>>> = BTreeMap::new();
        for profile in profiles {
            for requirement in profile.requirements.iter().filter(|r| !r.formerly.is_empty()) {
                let ids = requirement.formerly.iter().chain([&requirement.id]);
                join(rules.entry(&profile.rule).or_default(), ids.map(String::as_str).collect());
            }
        }
        let mut first = BTreeMap::new();
        for (rule, families) in rules {
            for family in families {
                let Some(head) = family.first() else { continue };
                for id in &family {
                    first.insert((rule.to_owned(), (*id).to_owned()), (*head).to_owned());
                }
            }
        }
        Self { first }
    }

    /// The key of a requirement.
    pub(in crate::fleet) fn key(&self, rule: &str, id: &str) -> Key {
        let known = self.first.get(&(rule.to_owned(), id.to_owned()));
        (rule.to_owned(), Some(known.cloned().unwrap_or_else(|| id.to_owned())))
    }

    /// What a check says.
    pub(in crate::fleet) fn outcomes(&self, check: &Check) -> Outcomes {
        let mut outcomes = Outcomes::new();
        for judgement in &check.judgements {
            let profile = &judgement.profile;
            if !profile.encoded {
                add(&mut outcomes, (profile.rule.clone(), None), whole());
            }
            for finding in &judgement.findings {
                let Some(requirement) = profile.requirements.get(finding.requirement) else {
                    continue;
                };
                if requirement.level == Level::Required {
                    let seen = Seen {
                        outcome: finding.outcome,
                        id: Some(requirement.id.clone()),
                        stands: Some((Arc::clone(profile), finding.requirement)),
                    };
                    add(&mut outcomes, self.key(&profile.rule, &requirement.id), seen);
                }
            }
        }
        for notice in &check.notices {
            if let Notice::NoEdition { rule, .. } | Notice::MayBind { rule, .. } = notice {
                add(&mut outcomes, (rule.clone(), None), whole());
            }
        }
        outcomes
    }

    /// What a record says.
    pub(in crate::fleet) fn on_record(&self, vessel: &VesselOnRecord) -> Outcomes {
        let mut outcomes = Outcomes::new();
        for judgement in &vessel.profiles {
            if !judgement.encoded {
                add(&mut outcomes, (judgement.rule.clone(), None), whole());
            }
            for finding in judgement.findings.iter().filter(|f| f.level == Level::Required) {
                let id = Some(finding.requirement.clone());
                let seen = Seen { outcome: finding.outcome, id, stands: None };
                add(&mut outcomes, self.key(&judgement.rule, &finding.requirement), seen);
            }
        }
        let gap = |code: &str| code == "no-edition" || code == "may-bind";
        for notice in vessel.notices.iter().filter(|notice| gap(&notice.code)) {
            if let Some(rule) = &notice.rule {
                add(&mut outcomes, (rule.clone(), None), whole());
            }
        }
        // What was open before the rule was judged as a whole still is.
        for since in vessel.since.iter().filter(|since| since.without.is_empty()) {
            let Some(id) = &since.requirement else { continue };
            let seen = Seen { id: Some(id.clone()), ..whole() };
            outcomes.entry(self.key(&since.rule, id)).or_insert(seen);
        }
        outcomes
    }
}

/// A rule of which nobody can tell as a whole.
fn whole() -> Seen {
    Seen { outcome: Outcome::CannotTell, id: None, stands: None }
}

/// Of several under one key the worst stands; among equals the first.
fn add(outcomes: &mut Outcomes, key: Key, seen: Seen) {
    match outcomes.get_mut(&key) {
        Some(known) if known.outcome >= seen.outcome => {}
        Some(known) => *known = seen,
        None => drop(outcomes.insert(key, seen)),
    }
}

/// Adds a set to sets that have nothing in common, joining those that it has
/// something in common with.
fn join<'s>(families: &mut Vec<BTreeSet<&'s str>>, mut ids: BTreeSet<&'s str>) {
    families.retain(|family| {
        let apart = family.is_disjoint(&ids);
        if !apart {
            ids.extend(family.iter().copied());
        }
        apart
    });
    families.push(ids);
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_was_renamed_split_and_merged_is_one_family() {
        let mut families = Vec::new();
        for ids in [["a", "b"], ["c", "d"], ["d", "e"], ["b", "x"]] {
            join(&mut families, ids.into());
        }
        families.sort();
        assert_eq!(families, [BTreeSet::from(["a", "b", "x"]), BTreeSet::from(["c", "d", "e"])]);
        join(&mut families, ["a", "e"].into());
        assert_eq!(families, [BTreeSet::from(["a", "b", "c", "d", "e", "x"])]);
    }

    #[test]
    fn of_a_rule_that_nobody_can_tell_of_the_record_keeps_what_was_open() {
        let vessel = serde_json::json!({
            "file": "v.yaml", "inspections": [], "name": "V", "register": null, "port": null,
            "departure": "2026-06-01", "return": "2026-06-02", "verdict": "cannot-tell",
            "notices": [
                {"code": "may-bind", "rule": "a"},
                {"code": "no-edition", "rule": "b", "day": "2026-06-01"},
                {"code": "does-not-bind", "profile": "c"},
            ],
            "profiles": [],
            "since": [
                {"rule": "a", "open_since": "2026-05-01"},
                {"rule": "a", "requirement": "x", "open_since": "2026-05-01"},
                {"rule": "b", "requirement": "y", "open_since": "2026-05-01", "without": ["0"]},
            ],
        });
        let outcomes = Families::default().on_record(&serde_json::from_value(vessel).unwrap());
        let told = outcomes.iter().map(|((rule, id), seen)| {
            (rule.as_str(), id.as_deref(), seen.id.as_deref(), seen.outcome)
        });
        let open = Outcome::CannotTell;
        let wanted =
            [("a", None, None, open), ("a", Some("x"), Some("x"), open), ("b", None, None, open)];
        assert_eq!(told.collect::<Vec<_>>(), wanted);
    }

    #[test]
    fn of_several_the_worst_stands() {
        let key = ("r".to_owned(), Some("a".to_owned()));
        let seen = |outcome, id: &str| Seen { outcome, id: Some(id.to_owned()), stands: None };
        let mut outcomes = Outcomes::new();
        add(&mut outcomes, key.clone(), seen(Outcome::CannotTell, "1"));
        add(&mut outcomes, key.clone(), seen(Outcome::NotMet, "2"));
        add(&mut outcomes, key.clone(), seen(Outcome::NotMet, "3"));
        add(&mut outcomes, key.clone(), seen(Outcome::Met, "4"));
        let seen = &outcomes[&key];
        assert_eq!((seen.outcome, seen.id.as_deref()), (Outcome::NotMet, Some("2")));
    }
}
