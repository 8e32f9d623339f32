//! A fleet under the draft of an edition, beside the edition in force.
//!
//! Imports `engine`, `model` and `measure`; prints nothing. Only the rule that
//! the draft belongs to is looked at: a vessel that another rule holds back
//! may still rise under this one. A vessel is judged by what binds it, not by
//! what else an audit was asked for.
//!
//! A draft judges what it binds. Whom the edition in force binds and the draft does
//! not is released; a draft that says of nobody that it binds them is tried on
//! those bound by the edition in force; a draft that is a fallback, on those alone
//! that no rule names. Beside `--profile` there is no edition in force to judge by,
//! so the pair is refused.

use super::compare::{Families, Key, Outcomes};
use super::{Judged, Orders, Row, Selection};
use crate::engine::{self, Depth, Request};
use crate::load::Library;
use crate::measure::DaySpan;
use crate::model::check::{Check, Judgement, Notice, Why};
use crate::model::finding::{Finding, Outcome, Verdict};
use crate::model::profile::Profile;
use crate::model::vessel::Vessel;
use rayon::prelude::*;
use std::collections::BTreeSet;
use std::sync::Arc;

/// What a draft would do to a fleet.
#[derive(Debug, Clone)]
pub struct Drafted {
    /// The draft.
    pub profile: Arc<Profile>,
    /// The editions of its rule that judged a vessel, by id.
    pub in_force: Vec<String>,
    /// The vessels that it concerns, in the order of the rows.
    pub vessels: Vec<UnderDraft>,
    /// How many vessels it does not bind, nor does the edition in force.
    pub not_bound: usize,
}

/// One vessel under the draft.
#[derive(Debug, Clone)]
pub struct UnderDraft {
    /// Its file.
    pub file: String,
    /// What the engine judged: the vessel with its records laid over.
    pub vessel: Vessel,
    /// The verdict under the edition in force; none where it does not bind.
    pub then: Option<Verdict>,
    /// The verdict under the draft; none where it does not bind.
    pub now: Option<Verdict>,
    /// Whether the draft itself binds it.
    pub bound: Bound,
    /// What becomes of it.
    pub fate: DraftFate,
    /// The findings that change, what is worse first.
    pub changes: Vec<Change>,
}

/// Whether a draft binds a vessel.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Bound {
    /// By its own words.
    Yes,
    /// For want of a fact it is not known.
    NotKnown,
    /// The draft does not say whom it binds; the edition in force binds it.
    InForceAlone,
    /// By the edition in force, not by the draft.
    No,
}

/// What becomes of a vessel under the draft.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum DraftFate {
    /// It is not ready under the draft, and was not *not ready* before.
    Falls,
    /// It is ready under the draft, and was not before.
    Rises,
    /// Nobody can tell under the draft.
    CannotTell,
    /// The edition in force binds it, the draft does not.
    Released,
    /// It is as ready, or as little ready, as before.
    Stays,
}

/// A finding that changes; the outcome is none where it is not asked.
#[derive(Debug, Clone)]
pub struct Change {
    /// The requirement's id, in the draft where it has it.
    pub requirement: String,
    /// The profile and the place in it.
    pub stands: Option<(Arc<Profile>, usize)>,
    /// The outcome under the edition in force.
    pub then: Option<Outcome>,
    /// The outcome under the draft.
    pub now: Option<Outcome>,
    /// The finding that is open: under the draft, else the old one, with the
    /// profile whose requirement it speaks of. None where it is met now.
    pub open: Option<(Arc<Profile>, Finding)>,
    /// The marks of the tools that it is met by under the draft.
    pub met_by: Vec<String>,
}

/// How many vessels come out how.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct DraftTally {
    /// They fall.
    pub falls: usize,
    /// They rise.
    pub rises: usize,
    /// Nobody can tell.
    pub cannot_tell: usize,
    /// The draft binds them no longer.
    pub released: usize,
    /// They stay, and a finding changes.
    pub stays_otherwise: usize,
    /// They stay, and no finding changes.
    pub unaffected: usize,
    /// Neither binds them.
    pub not_bound: usize,
}

/// Judges the vessels that the audit is about under a draft.
pub fn under_draft(
    draft: &Arc<Profile>,
    orders: &Orders<'_>,
    selection: &Selection,
    rows: &[Row],
) -> Drafted {
    let known: &Library = orders.library;
    let families = Families::of(known.profiles.iter().chain([draft]));
    let always = always(draft);
    let profiles = beside_others(&always, known);
    let desk = Desk { draft, always, profiles, orders, families: &families };
    let judged: Vec<&Judged> = rows
        .iter()
        .filter_map(|row| match row {
            Row::Vessel(judged) if selection.concerns(&judged.check) => Some(&**judged),
            _ => None,
        })
        .collect();
    let of: Vec<Option<UnderDraft>> = judged.par_iter().map(|judged| desk.under(judged)).collect();
    let in_force: BTreeSet<String> = judged
        .iter()
        .flat_map(|judged| desk.in_force(&judged.check))
        .map(|judgement| judgement.profile.id.clone())
        .collect();
    let vessels: Vec<_> = of.into_iter().flatten().collect();
    Drafted {
        profile: Arc::clone(draft),
        in_force: in_force.into_iter().collect(),
        not_bound: judged.len() - vessels.len(),
        vessels,
    }
}

/// The draft as if it were in force on every day.
fn always(draft: &Profile) -> Arc<Profile> {
    Arc::new(Profile { in_force: DaySpan::ALWAYS, ..draft.clone() })
}

/// What decides whether a draft binds: itself alone, unless it is used only
/// where no rule names the vessel.
fn beside_others(draft: &Arc<Profile>, library: &Library) -> Vec<Arc<Profile>> {
    let mut profiles = vec![Arc::clone(draft)];
    if draft.fallback {
        let rules = library.profiles.iter();
        profiles.extend(rules.filter(|p| !p.fallback && p.rule != draft.rule).cloned());
    }
    profiles
}

struct Desk<'a> {
    draft: &'a Arc<Profile>,
    always: Arc<Profile>,
    profiles: Vec<Arc<Profile>>,
    orders: &'a Orders<'a>,
    families: &'a Families,
}

impl Desk<'_> {
    /// What the editions in force said; the draft may be one of them.
    fn in_force<'c>(&self, check: &'c Check) -> impl Iterator<Item = &'c Judgement> {
        let rule = self.draft.rule.clone();
        check.judgements.iter().filter(move |judgement| judgement.profile.rule == rule)
    }

    fn under(&self, judged: &Judged) -> Option<UnderDraft> {
        let check = &judged.check;
        let by_itself = self.judge(check, true);
        let told = |check: &Check| {
            check.notices.iter().any(|notice| {
                matches!(notice, Notice::MayBind { rule, .. } | Notice::NoEdition { rule, .. }
                    if *rule == self.draft.rule)
            })
        };
        let then = self.in_force(check).map(|judgement| judgement.verdict).max();
        let then = if told(check) { then.max(Some(Verdict::CannotTell)) } else { then };
        let (draft, bound) = match self.of_draft(&by_itself) {
            Some(judgement) if matches!(judgement.why, Why::MayBind(_)) => {
                (Some(by_itself), Bound::NotKnown)
            }
            Some(_) => (Some(by_itself), Bound::Yes),
            None if told(&by_itself) => (None, Bound::NotKnown),
            None => {
                then?;
                if self.draft.binds.is_nobody() && !self.draft.fallback {
                    (Some(self.judge(check, false)), Bound::InForceAlone)
                } else {
                    (None, Bound::No)
                }
            }
        };
        let now = draft.as_ref().and_then(|check| self.of_draft(check));
        let unknown = (bound != Bound::No).then_some(Verdict::CannotTell);
        let now = now.map(|judgement| judgement.verdict).or(unknown);
        let changes = draft.as_ref().map(|draft| self.changes(check, draft)).unwrap_or_default();
        let fate = fate(then, now);
        let vessel = check.vessel.clone();
        Some(UnderDraft { file: judged.file.to_string(), vessel, then, now, bound, fate, changes })
    }

    /// What the draft said, if it judged.
    fn of_draft<'c>(&self, check: &'c Check) -> Option<&'c Judgement> {
        check.judgements.iter().find(|judgement| judgement.profile.id == self.draft.id)
    }

    /// Judges a vessel, its records laid over already, by the draft: as far as
    /// it binds, or all the same.
    fn judge(&self, check: &Check, if_it_binds: bool) -> Check {
        let draft = [Arc::clone(&self.always)];
        engine::check(&Request {
            vocabulary: &self.orders.library.vocabulary,
            profiles: &self.profiles,
            asked: if if_it_binds { &[] } else { &draft },
            vessel: &check.vessel,
            inspections: &[],
            departure: check.asked.departure,
            back: Some(check.asked.back),
            trust: self.orders.trust,
            depth: Depth::Findings,
        })
    }

    /// The findings of the rule that change.
    fn changes(&self, then: &Check, now: &Check) -> Vec<Change> {
        let of_rule = |check: &Check| -> Outcomes {
            let mut all = self.families.outcomes(check);
            all.retain(|(rule, requirement), _| *rule == self.draft.rule && requirement.is_some());
            all
        };
        let (old, new) = (of_rule(then), of_rule(now));
        let keys: BTreeSet<&Key> = old.keys().chain(new.keys()).collect();
        let changed = keys.into_iter().filter_map(|key| {
            let (before, after) = (old.get(key), new.get(key));
            let outcome = |seen: Option<&super::compare::Seen>| seen.map(|seen| seen.outcome);
            if outcome(before) == outcome(after) {
                return None;
            }
            let found = |check: &Check, seen: Option<&super::compare::Seen>| {
                let (profile, at) = seen?.stands.clone()?;
                let judgements = check.judgements.iter().filter(|j| j.profile.id == profile.id);
                let mut findings = judgements.flat_map(|judgement| &judgement.findings);
                let finding = findings.find(|finding| finding.requirement == at)?.clone();
                Some((profile, finding))
            };
            let told = after.or(before)?;
            let is_open = |(_, finding): &(Arc<Profile>, Finding)| finding.outcome != Outcome::Met;
            let met = outcome(after) == Some(Outcome::Met);
            let old = || found(then, before).filter(|_| !met);
            let open = found(now, after).filter(is_open).or_else(old).filter(is_open);
            let met_by = found(now, after).filter(|_| met).map(|(_, finding)| {
                let tools = finding.serving.iter().filter_map(|s| now.vessel.kit.get(s.tool));
                tools.map(|tool| tool.mark.clone()).collect()
            });
            Some(Change {
                requirement: told.id.clone().unwrap_or_default(),
                stands: told.stands.clone(),
                then: outcome(before),
                now: outcome(after),
                open,
                met_by: met_by.unwrap_or_default(),
            })
        });
        let mut changed: Vec<_> = changed.collect();
        changed.sort_by_key(|change| !change.is_worse());
        changed
    }
}

impl Change {
    /// Whether something is to be put right under the draft that was better
    /// before.
    pub fn is_worse(&self) -> bool {
        self.now > Some(Outcome::Met) && self.now > self.then
    }
}

/// What becomes of a vessel: not being bound asks nothing of it.
fn fate(then: Option<Verdict>, now: Option<Verdict>) -> DraftFate {
    let then = then.unwrap_or(Verdict::Ready);
    match now {
        None => DraftFate::Released,
        Some(Verdict::NotReady) if then != Verdict::NotReady => DraftFate::Falls,
        Some(Verdict::Ready) if then != Verdict::Ready => DraftFate::Rises,
        Some(Verdict::CannotTell) => DraftFate::CannotTell,
        Some(_) => DraftFate::Stays,
    }
}

impl Drafted {
    /// How many vessels come out how.
    pub fn tally(&self) -> DraftTally {
        let mut tally = DraftTally { not_bound: self.not_bound, ..DraftTally::default() };
        for vessel in &self.vessels {
            *match vessel.fate {
                DraftFate::Falls => &mut tally.falls,
                DraftFate::Rises => &mut tally.rises,
                DraftFate::CannotTell => &mut tally.cannot_tell,
                DraftFate::Released => &mut tally.released,
                DraftFate::Stays if vessel.changes.is_empty() => &mut tally.unaffected,
                DraftFate::Stays => &mut tally.stays_otherwise,
            } += 1;
        }
        tally
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    use Verdict::{CannotTell, NotReady, Ready};

    #[test]
    fn a_vessel_that_was_not_bound_can_only_fall_or_stay() {
        assert_eq!(fate(None, Some(Ready)), DraftFate::Stays);
        assert_eq!(fate(None, Some(NotReady)), DraftFate::Falls);
        assert_eq!(fate(None, Some(CannotTell)), DraftFate::CannotTell);
    }

    #[test]
    fn who_could_not_be_told_falls_or_rises_where_the_draft_can_tell() {
        assert_eq!(fate(Some(CannotTell), Some(NotReady)), DraftFate::Falls);
        assert_eq!(fate(Some(CannotTell), Some(Ready)), DraftFate::Rises);
        assert_eq!(fate(Some(NotReady), Some(CannotTell)), DraftFate::CannotTell);
        assert_eq!(fate(Some(NotReady), Some(NotReady)), DraftFate::Stays);
    }

    #[test]
    fn worse_is_what_is_open_and_was_less_so() {
        use Outcome::{CannotTell, Met, NotMet};
        let is_worse = |then, now| {
            let requirement = String::new();
            let (stands, open, met_by) = (None, None, Vec::new());
            Change { requirement, stands, then, now, open, met_by }.is_worse()
        };
        assert!(is_worse(None, Some(CannotTell)) && is_worse(Some(CannotTell), Some(NotMet)));
        assert!(!is_worse(None, Some(Met)), "it is asked and there");
        assert!(!is_worse(Some(NotMet), Some(CannotTell)));
        assert!(!is_worse(Some(NotMet), None));
    }

    #[test]
    fn who_is_bound_no_longer_neither_falls_nor_rises() {
        for then in [Ready, CannotTell, NotReady] {
            assert_eq!(fate(Some(then), None), DraftFate::Released);
        }
    }
}
