//! The steps from an old finding on a vessel to the new one, each judged by
//! the engine.
//!
//! Imports `load`, `model` and `measure`. Steps that cannot differ from the
//! one before are not judged again.

use super::follow::{self, After, Cause};
use super::{Compared, Families, Followed, Key, Outcomes};
use crate::fleet::record::AuditRecord;
use crate::fleet::record::replay::{Aboard, Replay, Rules};
use crate::fleet::{Judged, Orders};
use crate::load::{Library, Refusal};
use crate::measure::{Day, DaySpan};
use crate::model::finding::Outcome;
use crate::model::profile::Profile;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

/// What all vessels share on the way.
pub(super) struct Walk<'a> {
    replay: &'a Replay<'a>,
    record: &'a AuditRecord,
    /// The rules on record, if they can still be read.
    then: Option<&'a Library>,
    orders: &'a Orders<'a>,
    families: &'a Families,
    /// What was asked for then, in the rules on record and in today's.
    asked_then: Vec<Arc<Profile>>,
    asked_of_today: Vec<Arc<Profile>>,
    /// Whether today's rules are those on record, text by text.
    same_rules: bool,
    /// Whether the same is asked.
    same_asked: bool,
    /// The rules of which an encoding was revised.
    revised: BTreeSet<String>,
}

/// A trip: departure and return.
type Trip = (Day, Option<Day>);

/// What a step shows, and what was seen after it.
type Seen = (Cause, Option<Outcomes>);

impl<'a> Walk<'a> {
    pub(super) fn new(
        replay: &'a Replay<'a>,
        record: &'a AuditRecord,
        then: Option<&'a Library>,
        orders: &'a Orders<'a>,
        families: &'a Families,
    ) -> Self {
        let ids: Vec<_> = orders.asked.iter().map(|profile| &profile.id).collect();
        let asked = &record.asked;
        let same_profiles = asked.profiles.iter().collect::<Vec<_>>() == ids;
        Self {
            replay,
            record,
            then,
            orders,
            families,
            asked_then: then.map(|then| replay.asked(then)).unwrap_or_default(),
            asked_of_today: replay.asked(orders.library),
            same_rules: same_rules(record, orders.library),
            same_asked: same_profiles && asked.trust == orders.trust,
            revised: then.map(|then| revised(then, orders.library)).unwrap_or_default(),
        }
    }

    /// One vessel of both audits.
    pub(super) fn compared(&self, old: usize, new: &Judged) -> Compared {
        let then = &self.record.vessels[old];
        let (steps, refused) = self.steps(old, new);
        let recorded = self.families.on_record(then);
        let check = &new.check;
        Compared {
            name: check.vessel.name.clone(),
            register: check.vessel.register.clone(),
            file: new.file.to_string(),
            verdict_then: then.verdict,
            verdict_now: check.verdict,
            findings: self.followed(old, &recorded, &steps),
            refused,
        }
    }

    /// The steps B to D, in order, and why the old file is refused by today's
    /// rules, if it is.
    fn steps(&self, old: usize, new: &Judged) -> (Vec<Seen>, Option<Refusal>) {
        let vessel = &self.record.vessels[old];
        let trip_then = (vessel.departure, Some(vessel.back));
        let trip_now = (new.check.asked.departure, Some(new.check.asked.back));
        let by_program = self.by_program(old, trip_then);
        let mut steps = vec![(Cause::Program, by_program.clone())];
        let mut refused = None;
        match self.replay.aboard(old, &self.orders.library.vocabulary) {
            Ok(aboard) => steps.extend(self.by_rules(&aboard, by_program, trip_then, trip_now)),
            Err(refusal) => {
                steps.push((Cause::Encoding, None));
                refused = Some(refusal);
            }
        }
        steps.push((Cause::Vessel, Some(self.families.outcomes(&new.check))));
        (steps, refused)
    }

    /// B: everything as on record, this program.
    fn by_program(&self, old: usize, trip: Trip) -> Option<Outcomes> {
        let then = self.then?;
        let aboard = self.replay.aboard(old, &then.vocabulary).ok()?;
        let rules = Rules {
            vocabulary: &then.vocabulary,
            profiles: &then.profiles,
            asked: &self.asked_then,
            trust: self.record.asked.trust,
        };
        Some(self.families.outcomes(&aboard.judge(rules, trip)))
    }

    /// C, Q, E and T: the old vessel by today's rules.
    fn by_rules(
        &self,
        aboard: &Aboard,
        by_program: Option<Outcomes>,
        then: Trip,
        now: Trip,
    ) -> Vec<Seen> {
        let library = self.orders.library;
        let today = |profiles, asked, trust, trip| {
            let rules = Rules { vocabulary: &library.vocabulary, profiles, asked, trust };
            self.families.outcomes(&aboard.judge(rules, trip))
        };
        let (asked, trust) = (self.orders.asked, self.orders.trust);
        // A profile that was asked for and is known no more judges nobody;
        // everything that binds would then be no answer.
        let known = self.asked_of_today.len() == self.record.asked.profiles.len();
        let old_trust = self.record.asked.trust;
        let by_encoding = if self.same_rules && by_program.is_some() {
            by_program
        } else {
            known.then(|| today(&library.profiles, &self.asked_of_today, old_trust, then))
        };
        let by_asking = match &by_encoding {
            Some(seen) if self.same_asked => seen.clone(),
            _ => today(&library.profiles, asked, trust, then),
        };
        let (profiles, named) =
            (governed(&library.profiles, then, now), governed(asked, then, now));
        let other = profiles.is_some() || named.is_some();
        let by_edition = if other {
            let profiles = profiles.as_deref().unwrap_or(&library.profiles);
            today(profiles, named.as_deref().unwrap_or(asked), trust, then)
        } else {
            by_asking.clone()
        };
        let by_days = if !other && then == now {
            by_edition.clone()
        } else {
            today(&library.profiles, asked, trust, now)
        };
        vec![
            (Cause::Encoding, by_encoding),
            (Cause::Asked, Some(by_asking)),
            (Cause::Edition, Some(by_edition)),
            (Cause::Calendar, Some(by_days)),
        ]
    }

    /// Every key that was open at any step, followed.
    fn followed(&self, old: usize, recorded: &Outcomes, steps: &[Seen]) -> Vec<Followed> {
        let seen = steps.iter().filter_map(|(_, seen)| seen.as_ref());
        let keys: BTreeSet<&Key> = recorded.keys().chain(seen.flat_map(Outcomes::keys)).collect();
        let since = self.since(old);
        let mut followed: Vec<_> =
            keys.into_iter().filter_map(|key| self.follow(key, recorded, steps, &since)).collect();
        followed.sort_by_key(|followed| followed.fate);
        followed
    }

    fn follow(
        &self,
        key: &Key,
        recorded: &Outcomes,
        steps: &[Seen],
        since: &BTreeMap<Key, Day>,
    ) -> Option<Followed> {
        let states: Vec<follow::Step> = steps
            .iter()
            .map(|(cause, seen)| (self.cause(*cause, &key.0), after(seen.as_ref(), key)))
            .collect();
        let then = recorded.get(key).map(|seen| seen.outcome);
        let path = follow::follow(then, &states)?;
        // The latest step that knows it says what it is called.
        let latest = steps.iter().rev().find_map(|(_, seen)| seen.as_ref()?.get(key));
        let latest = latest.or_else(|| recorded.get(key));
        Some(Followed {
            rule: key.0.clone(),
            requirement: latest.and_then(|seen| seen.id.clone()),
            stands: latest.and_then(|seen| seen.stands.clone()),
            then: path.then,
            now: path.now,
            since: (path.fate == follow::Fate::StillOpen)
                .then(|| since.get(key).copied().unwrap_or(self.record.date)),
            fate: path.fate,
            cause: path.cause,
            flips: path.flips,
            key: key.clone(),
        })
    }

    /// What the step from the rules on record to today's shows of a rule.
    fn cause(&self, cause: Cause, rule: &str) -> Cause {
        let file = cause == Cause::Encoding && !self.revised.contains(rule);
        if file { Cause::RuleFile } else { cause }
    }

    /// Since when each finding on record is open: the earliest of its key.
    fn since(&self, old: usize) -> BTreeMap<Key, Day> {
        let mut since: BTreeMap<Key, Day> = BTreeMap::new();
        for judgement in &self.record.vessels[old].profiles {
            for finding in judgement.findings.iter().filter(|f| f.outcome != Outcome::Met) {
                let key = self.families.key(&judgement.rule, &finding.requirement);
                if let Some(day) = finding.open_since {
                    let known = since.entry(key).or_insert(day);
                    *known = day.min(*known);
                }
            }
        }
        since
    }
}

/// What is so of a key after a step.
fn after(seen: Option<&Outcomes>, key: &Key) -> After {
    let Some(outcomes) = seen else { return After::Hole };
    match outcomes.get(key) {
        Some(seen) => After::Is(Some(seen.outcome)),
        None if outcomes.contains_key(&(key.0.clone(), None)) => After::Unsaid,
        None => After::Is(None),
    }
}

/// Whether a library is the one on record, text by text in any order.
fn same_rules(record: &AuditRecord, library: &Library) -> bool {
    let inputs = &record.inputs;
    let then: BTreeSet<&str> = inputs.profiles.iter().map(|input| &*input.text).collect();
    let now: BTreeSet<&str> = library.texts().map(|source| &*source.text).collect();
    inputs.vocabulary.text == *library.words().text && then == now
}

/// The rules of which an edition, or a list that others are built on, is of
/// another revision than on record. Which rule is built on which list is not
/// looked up: a revised list counts for all.
fn revised(then: &Library, now: &Library) -> BTreeSet<String> {
    let is_revised =
        |old: &&Arc<Profile>| now.find(&old.id).is_some_and(|new| new.encoding != old.encoding);
    let revised: Vec<_> = then.profiles.iter().filter(is_revised).collect();
    let of = if revised.iter().any(|profile| profile.base) {
        then.profiles.iter().collect()
    } else {
        revised
    };
    of.into_iter().map(|profile| profile.rule.clone()).collect()
}

/// The profiles as if what governs the new trip had governed the old one:
/// editions that govern none of its days are left out, the others hold on all
/// days. None where that changes nothing.
fn governed(profiles: &[Arc<Profile>], then: Trip, now: Trip) -> Option<Vec<Arc<Profile>>> {
    let span = |trip: Trip| DaySpan { from: Some(trip.0), until: trip.1.or(Some(trip.0)) };
    let (then, now) = (span(then), span(now));
    let is_edition = |profile: &Profile| !profile.base && !profile.fallback;
    let mut editions: BTreeMap<&str, Vec<&Arc<Profile>>> = BTreeMap::new();
    for profile in profiles.iter().filter(|profile| is_edition(profile)) {
        editions.entry(&profile.rule).or_default().push(profile);
    }
    // A single edition that was asked for governs whatever the day.
    let other = |editions: &Vec<&Arc<Profile>>| {
        let met = |days| editions.iter().map(|e| e.in_force.meets(days)).collect::<Vec<_>>();
        let (old, new) = (met(then), met(now));
        editions.len() > 1 && old != new && new.contains(&true)
    };
    let changed: BTreeSet<&str> =
        editions.iter().filter(|(_, e)| other(e)).map(|(rule, _)| *rule).collect();
    if changed.is_empty() {
        return None;
    }
    let kept = profiles.iter().filter_map(|profile| {
        if !is_edition(profile) || !changed.contains(profile.rule.as_str()) {
            return Some(Arc::clone(profile));
        }
        let always = || Profile { in_force: DaySpan::ALWAYS, ..(**profile).clone() };
        profile.in_force.meets(now).then(|| Arc::new(always()))
    });
    Some(kept.collect())
}

#[cfg(test)]
mod tests {
    use super::*;

    const VOCABULARY: &str = include_str!("../../../requirements/vocabulary.yaml");

    fn edition(id: &str, rule: &str, days: &str, pliers: &str) -> (String, String) {
        let text = format!(
            "format: profile/1\nid: {id}\nrule: {rule}\nedition: \"{id}\"\ntitle: T\n\
             source: Notice 1\nin force: {{ {days} }}\nbinds: {{ permits: [p] }}\n\
             requirements:\n  - {{ id: {pliers}, title: P, clause: c, verified: read, \
             carry: 1 pliers }}\n"
        );
        (format!("{id}.yaml"), text)
    }

    fn library(editions: &[(String, String)]) -> Library {
        let texts: Vec<_> = editions.iter().map(|(name, text)| (&**name, &**text)).collect();
        Library::rebuilt(("vocabulary.yaml", VOCABULARY), &texts).unwrap()
    }

    fn three() -> Library {
        library(&[
            edition("a1", "a", "from: 2020-01-01, until: 2020-12-31", "x"),
            edition("a2", "a", "from: 2021-01-01, until: 2021-12-31", "x"),
            edition("b1", "b", "from: 2020-01-01", "x"),
        ])
    }

    fn trip(from: &str, until: &str) -> Trip {
        (Day::parse(from).unwrap(), Some(Day::parse(until).unwrap()))
    }

    fn ids(profiles: Option<Vec<Arc<Profile>>>) -> Option<Vec<(String, bool)>> {
        let told =
            |profile: &Arc<Profile>| (profile.id.clone(), profile.in_force == DaySpan::ALWAYS);
        profiles.map(|profiles| profiles.iter().map(told).collect())
    }

    #[test]
    fn the_edition_of_the_new_trip_governs_the_old_one_and_no_other_does() {
        let library = three();
        let governed = |then, now| ids(governed(&library.profiles, then, now));
        let (old, new) = (trip("2020-05-01", "2020-05-03"), trip("2021-05-01", "2021-05-03"));
        let across = trip("2020-12-30", "2021-01-02");
        let named = |id: &str, always| (id.to_owned(), always);
        assert_eq!(governed(old, old), None);
        assert_eq!(governed(across, across), None, "both govern both");
        assert_eq!(governed(old, new), Some(vec![named("a2", true), named("b1", false)]));
        assert_eq!(governed(across, new), Some(vec![named("a2", true), named("b1", false)]));
        let both = vec![named("a1", true), named("a2", true), named("b1", false)];
        assert_eq!(governed(old, across), Some(both));
    }

    #[test]
    fn where_no_edition_is_known_for_the_new_days_the_old_ones_stay() {
        let library = three();
        let (old, new) = (trip("2020-05-01", "2020-05-03"), trip("2023-05-01", "2023-05-03"));
        assert_eq!(ids(governed(&library.profiles, old, new)), None);
    }

    #[test]
    fn a_single_edition_that_was_asked_for_governs_whatever_the_day() {
        let library = three();
        let asked = [Arc::clone(&library.profiles[1])];
        let (old, new) = (trip("2020-05-01", "2020-05-03"), trip("2021-05-01", "2021-05-03"));
        assert_eq!(ids(governed(&asked, old, new)), None);
    }

    #[test]
    fn a_rule_is_revised_by_its_own_number_or_by_that_of_a_list() {
        let raised = |(name, text): (String, String), from: &str| {
            (name, text.replace(from, &format!("encoding: 2\n{from}")))
        };
        let (a, b) = (
            edition("a1", "a", "from: 2020-01-01", "x"),
            edition("b1", "b", "from: 2020-01-01", "x"),
        );
        let old = library(&[a.clone(), b.clone()]);
        let new = library(&[raised(a.clone(), "title: T"), b.clone()]);
        assert_eq!(revised(&old, &old), BTreeSet::new());
        assert_eq!(revised(&old, &new), BTreeSet::from(["a".to_owned()]));
        let list = (
            "list.yaml".to_owned(),
            "format: profile/1\nid: list\nrule: list\ntitle: L\nsource: Notice 2\nbase: yes\n\
             requirements:\n  - { id: x, title: P, clause: c, verified: read, carry: 1 pliers }\n"
                .to_owned(),
        );
        let old = library(&[list.clone(), a.clone(), b.clone()]);
        let new = library(&[raised(list, "title: L"), a, b]);
        assert_eq!(revised(&old, &new), ["a", "b", "list"].map(str::to_owned).into());
    }

    #[test]
    fn ids_that_formerly_ties_are_one_across_editions() {
        let renamed = |(name, text): (String, String)| {
            (name, text.replace("title: P,", "title: P, formerly: [x],"))
        };
        let library = library(&[
            edition("a1", "a", "from: 2020-01-01, until: 2020-12-31", "x"),
            renamed(edition("a2", "a", "from: 2021-01-01", "y")),
            edition("b1", "b", "from: 2020-01-01", "x"),
        ]);
        let families = Families::of(library.profiles.iter());
        assert_eq!(families.key("a", "x"), families.key("a", "y"));
        assert_ne!(
            families.key("b", "x"),
            families.key("b", "y"),
            "another rule's ids are its own"
        );
        assert_ne!(families.key("a", "z"), families.key("a", "x"));
    }
}
