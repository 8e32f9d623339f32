//! The steps from an old finding on a vessel to the new one, each judged by
//! the engine.
//!
//! Imports `load`, `model` and `measure`. Steps that cannot differ from the
//! one before are not judged again.

use super::families::{Families, Key, Outcomes};
use super::follow::{self, After, Cause};
use super::laid::{self, Lost};
use super::memory::{self, Since};
use super::renamed::Kits;
use super::told::{Compared, Followed};
use crate::fleet::record::replay::{Aboard, Replay, Rules};
use crate::fleet::record::{AuditRecord, InputFile};
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
    /// Today's profiles without those that were only named as files now.
    of_today: Vec<Arc<Profile>>,
    /// Whether today's rules are those on record, text by text.
    same_rules: bool,
    /// Whether the same is asked.
    same_asked: bool,
    /// The rules of which an encoding was revised.
    revised: BTreeSet<String>,
}

/// A trip: departure and return.
pub(super) type Trip = (Day, Option<Day>);

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
        // A file that is named is part of what is asked, not of the rules.
        let of_then = |id: &str| then.and_then(|then| then.find(id));
        let of_today = |id: &String| orders.library.find(id).or_else(|| of_then(id)).cloned();
        let is_new = |id: &str| then.is_some() && of_then(id).is_none();
        let named = |id: &str| orders.asked.iter().any(|p| p.id == id) && is_new(id);
        let known = orders.library.profiles.iter().filter(|profile| !named(&profile.id));
        let same_profiles = asked.profiles.iter().collect::<Vec<_>>() == ids;
        Self {
            replay,
            record,
            then,
            orders,
            families,
            asked_then: then.map(|then| replay.asked(then)).unwrap_or_default(),
            asked_of_today: asked.profiles.iter().filter_map(of_today).collect(),
            of_today: known.cloned().collect(),
            same_rules: same_rules(record, orders.library),
            same_asked: same_profiles && asked.trust == orders.trust,
            revised: then.map(|then| revised(then, orders.library)).unwrap_or_default(),
        }
    }

    /// One vessel of both audits.
    pub(super) fn compared(&self, old: usize, new: &Judged) -> Compared {
        let then = &self.record.vessels[old];
        let lost = laid::lost(self.replay.laid(old), new);
        let (steps, refused) = self.steps(old, new, &lost);
        let recorded = self.families.on_record(then);
        let check = &new.check;
        let findings = self.followed(old, &recorded, &steps, new);
        let told = findings.iter().any(|followed| followed.open.is_some());
        Compared {
            name: check.vessel.name.clone(),
            register: check.vessel.register.clone(),
            file: new.file.to_string(),
            verdict_then: then.verdict,
            verdict_now: check.verdict,
            findings,
            refused,
            lost: lost.into_iter().map(|(_, lost)| lost).collect(),
            vessel: told.then(|| Box::new(check.vessel.clone())),
            missing: memory::missing(then, new),
        }
    }

    /// The steps B to D, in order, and why the old file is refused by today's
    /// rules, if it is.
    fn steps(
        &self,
        old: usize,
        new: &Judged,
        lost: &[(&InputFile, Lost)],
    ) -> (Vec<Seen>, Option<Refusal>) {
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
        let now = Some(self.families.outcomes(&new.check));
        if lost.is_empty() {
            steps.push((Cause::Vessel, now));
        } else {
            steps.push((Cause::Vessel, self.with_lost(new, lost, trip_now)));
            steps.push((Cause::Record, now));
        }
        (steps, refused)
    }

    /// V: the new vessel with the records laid over that are gone.
    fn with_lost(&self, new: &Judged, lost: &[(&InputFile, Lost)], trip: Trip) -> Option<Outcomes> {
        let library = self.orders.library;
        let aboard = laid::with_lost(lost, new, &library.vocabulary).ok()?;
        let rules = Rules {
            vocabulary: &library.vocabulary,
            profiles: &library.profiles,
            asked: self.orders.asked,
            trust: self.orders.trust,
        };
        Some(self.families.outcomes(&aboard.judge(rules, trip)))
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
            known.then(|| today(&self.of_today, &self.asked_of_today, old_trust, then))
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
        let by_days = if then == now {
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
    fn followed(
        &self,
        old: usize,
        recorded: &Outcomes,
        steps: &[Seen],
        new: &Judged,
    ) -> Vec<Followed> {
        let seen = steps.iter().filter_map(|(_, seen)| seen.as_ref());
        let keys: BTreeSet<&Key> = recorded.keys().chain(seen.flat_map(Outcomes::keys)).collect();
        let then = &self.record.vessels[old];
        let open = memory::open(self.families, then);
        let back: Since = memory::back(self.families, then, new);
        let followed = keys.into_iter().filter_map(|key| self.follow(key, recorded, steps));
        let mut followed: Vec<Followed> = followed.collect();
        for one in &mut followed {
            one.since = one.dated(&open, &back, self.record.date);
            self.reasoned(one, old, new);
        }
        self.rename(&mut followed, old, new);
        followed.sort_by_key(|followed| followed.fate);
        followed
    }

    fn follow(&self, key: &Key, recorded: &Outcomes, steps: &[Seen]) -> Option<Followed> {
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
            since: None,
            open: None,
            reason_then: None,
            renamed: None,
            fate: path.fate,
            cause: path.cause,
            flips: path.flips,
            key: key.clone(),
        })
    }

    /// Whether what the vessel closed was closed by another mark alone.
    fn rename(&self, followed: &mut [Followed], old: usize, new: &Judged) {
        let mut closed = followed.iter_mut().filter(|one| one.is_mended()).peekable();
        let vocabulary = &self.orders.library.vocabulary;
        let Some(Ok(aboard)) = closed.peek().map(|_| self.replay.aboard(old, vocabulary)) else {
            return;
        };
        let then = &self.record.vessels[old];
        let kits = Kits { then, listed_then: &aboard.vessel, now: new, vocabulary };
        for one in closed {
            let is_of = |rule: &str, id: &str| self.families.key(rule, id) == one.key;
            one.renamed = one.stands.as_ref().and_then(|stands| kits.renamed(stands, &is_of));
        }
    }

    /// Why it is open now, and whether for another reason than then.
    fn reasoned(&self, followed: &mut Followed, old: usize, new: &Judged) {
        let open = matches!(followed.fate, follow::Fate::Opened | follow::Fate::StillOpen);
        let Some((profile, at)) = followed.stands.as_ref().filter(|_| open) else { return };
        let check = &new.check;
        let judgements = check.judgements.iter().filter(|j| j.profile.id == profile.id);
        let mut findings = judgements.flat_map(|judgement| &judgement.findings);
        let finding = findings.find(|f| f.requirement == *at && f.outcome != Outcome::Met);
        let Some(finding) = finding else { return };
        if followed.fate == follow::Fate::StillOpen
            && let Some(first) = finding.reasons.first()
        {
            let mark = first.tool.and_then(|tool| check.vessel.kit.get(tool));
            let now = (first.reason.code(), mark.map(|tool| &*tool.mark));
            let then = self.record.vessels[old].profiles.iter().flat_map(|judgement| {
                // Those that are met have no reasons.
                let findings = judgement.findings.iter();
                findings
                    .filter(|f| self.families.key(&judgement.rule, &f.requirement) == followed.key)
            });
            let mut then = then.flat_map(|finding| &finding.reasons).peekable();
            let before = then.peek().map(|reason| reason.code.clone());
            let same = then.any(|reason| (&*reason.code, reason.tool.as_deref()) == now);
            followed.reason_then = before.filter(|_| !same);
        }
        followed.open = Some(finding.clone());
    }

    /// What the step from the rules on record to today's shows of a rule.
    fn cause(&self, cause: Cause, rule: &str) -> Cause {
        let file = cause == Cause::Encoding && !self.revised.contains(rule);
        if file { Cause::RuleFile } else { cause }
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
pub(super) fn revised(then: &Library, now: &Library) -> BTreeSet<String> {
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
pub(super) fn governed(
    profiles: &[Arc<Profile>],
    then: Trip,
    now: Trip,
) -> Option<Vec<Arc<Profile>>> {
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
