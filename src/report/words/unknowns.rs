//! What settles a *can't tell*: what to measure, look up or ask.
//!
//! Imports `model` only.

use super::figures;
use super::{Case, Words};
use crate::model::finding::{Because, Finding};
use crate::model::reason::{Demand, Reason};
use crate::model::vocabulary::{AttributeId, fold};

/// How many figures are asked for with the way to measure each told.
const EXPLAINED: usize = 2;

impl Words<'_> {
    /// What to do about all the missing facts, in the imperative; what can
    /// be done in one go makes one phrase.
    pub(super) fn find_all_out(
        &self,
        tool: Option<usize>,
        reasons: &[&Reason],
        case: Case,
    ) -> Vec<String> {
        let mark = tool.map_or_else(|| self.locale.settle_unnamed(), |index| self.mark(index));
        let (mut measure, mut look, mut vouch) = (Vec::new(), Vec::new(), Vec::new());
        let mut texts: Vec<String> = Vec::new();
        for reason in reasons {
            match reason {
                Reason::Unmeasured { attribute, demand, .. } => {
                    let shown = self.vocabulary.attribute(*attribute).shown;
                    let list = match (shown, self.is_quantity(*attribute)) {
                        (false, _) => &mut vouch,
                        (true, true) => &mut measure,
                        (true, false) => &mut look,
                    };
                    list.push((*attribute, demand));
                }
                other => {
                    let text = self.settle(mark, other, case);
                    if !text.is_empty() && !texts.contains(&text) {
                        texts.push(text);
                    }
                }
            }
        }
        let mut all = self.measure(mark, &measure, case);
        if !look.is_empty() {
            all.push(self.locale.settle_look(&mark, &self.list(&look, case.explain)));
        }
        if !vouch.is_empty() {
            let clause = self.clause(case.requirement);
            all.push(self.locale.settle_statement(&mark, &clause, &self.list(&vouch, false)));
        }
        all.append(&mut texts);
        all
    }

    fn measure(&self, mark: &str, wanted: &[(AttributeId, &Demand)], case: Case) -> Vec<String> {
        if wanted.len() > EXPLAINED {
            return vec![self.locale.settle_measure_all(&mark, &self.list(wanted, case.explain))];
        }
        let one = |(attribute, demand): &(AttributeId, &Demand)| {
            let text = self.locale.settle_measure(&self.attribute(*attribute), &mark);
            self.explained(text, *attribute, demand, case)
        };
        wanted.iter().map(one).collect()
    }

    /// `handle at least 6 ft, protected blade`; with the keys to write where
    /// `keys` is asked.
    fn list(&self, wanted: &[(AttributeId, &Demand)], keys: bool) -> String {
        let one = |(attribute, demand): &(AttributeId, &Demand)| {
            let mut name = self.attribute(*attribute).to_owned();
            if let Some(key) = self.key(*attribute).filter(|_| keys) {
                name.push_str(&format!(" ({key})"));
            }
            match demand {
                Demand::Open | Demand::Is(true) => name,
                demand => self.locale.term(&name, &figures::demand(demand, self.locale)),
            }
        };
        wanted.iter().map(one).collect::<Vec<_>>().join(", ")
    }

    /// What to do about one missing fact that is no measurement.
    fn settle(&self, mark: &str, reason: &Reason, case: Case) -> String {
        let say = self.locale;
        match reason {
            Reason::Disputed { attribute, demand, .. } => {
                let text = say.settle_measure_again(&self.attribute(*attribute), &mark);
                self.explained(text, *attribute, demand, case)
            }
            Reason::Approximate { attribute, limit, .. } => say.settle_approximate(
                &self.attribute(*attribute),
                &mark,
                &figures::about(limit, say),
            ),
            Reason::WordingDisputed { .. } => say.settle_wording(&self.clause(case.requirement)),
            Reason::StateUnknown => say.settle_state(&mark),
            Reason::ExpiryDisputed { .. } => say.settle_expiry(&mark),
            Reason::KindDisputed { .. } => say.settle_kind(&mark),
            Reason::WhereaboutsUnknown => say.settle_whereabouts(&mark),
            Reason::InspectionUndated => say.settle_inspection(&mark),
            Reason::AcquiredUnknown { .. } => say.settle_acquired(&mark),
            Reason::NotListed { kinds } => say.settle_not_listed(&self.kinds(kinds)),
            Reason::SpareFitUnknown => say.settle_spare_fit(&mark),
            Reason::CertificateUndated { person } => say.settle_certificate(person),
            Reason::CertificateDisputed { person } => say.settle_certificate_again(person),
            Reason::PersonDisputed { person } => say.settle_person(person),
            Reason::GearOutside { piece, why } => self.settle_gear(piece, why, case),
            Reason::BindingUnknown { fact } | Reason::VesselFactUnknown { fact } => {
                self.find_out(fact)
            }
            Reason::HangsOn { requirement } => self.settle_other(*requirement, case),
            Reason::TooManyWays => say.settle_too_many_ways().to_owned(),
            Reason::TooManyFacts => say.settle_too_many_facts().to_owned(),
            Reason::NotEncoded => self.by_hand(),
            Reason::NoEdition { .. } => say.settle_no_edition(&self.profile.rule),
            _ => String::new(),
        }
    }

    /// What to do under a rule that is known, not encoded.
    pub(crate) fn by_hand(&self) -> String {
        self.locale.settle_by_hand(&self.profile.source)
    }

    /// What settles the finding on which one hangs: by its own reasons, and by
    /// those of what it hangs on in turn.
    fn settle_other(&self, requirement: usize, case: Case) -> String {
        let leads = |because: &Because| match because.reason {
            Reason::HangsOn { requirement } => Some(requirement),
            _ => None,
        };
        let (mut open, mut seen) = (vec![requirement], vec![case.requirement]);
        let mut texts: Vec<String> = Vec::new();
        while let Some(at) = open.pop() {
            if seen.contains(&at) {
                continue;
            }
            seen.push(at);
            let Some(finding) = self.findings.iter().find(|one| one.requirement == at) else {
                continue;
            };
            open.extend(finding.reasons.iter().filter_map(leads));
            let own = finding.reasons.iter().filter(|because| leads(because).is_none());
            let own = Finding { reasons: own.cloned().collect(), ..finding.clone() };
            texts.extend(self.remedy(&own, &[]));
        }
        match texts.is_empty() {
            true => self.locale.remedy_other_first(&self.title(requirement)),
            false => self.locale.settle_other(&self.title(requirement), &texts.join("; ")),
        }
    }

    fn settle_gear(&self, piece: &str, why: &Reason, case: Case) -> String {
        match why {
            Reason::Unmeasured { attribute, demand, .. } if self.is_quantity(*attribute) => {
                let text = self.locale.settle_measure(&self.attribute(*attribute), &piece);
                self.explained(text, *attribute, demand, case)
            }
            Reason::Unmeasured { attribute, demand, .. } => {
                let what = self.list(&[(*attribute, demand)], case.explain);
                self.locale.settle_piece(&piece, &what)
            }
            _ => self.locale.settle_any_piece(&piece),
        }
    }

    /// What to measure, with how the attribute is measured, under which key
    /// it is written, and what it must come to.
    fn explained(
        &self,
        mut text: String,
        attribute: AttributeId,
        demand: &Demand,
        case: Case,
    ) -> String {
        let how = self.vocabulary.attribute(attribute).measure.clone();
        let parts: Vec<_> = [how, self.key(attribute)].into_iter().flatten().collect();
        if case.explain && !parts.is_empty() {
            text += &format!(" ({})", parts.join("; "));
        }
        if *demand != Demand::Open {
            let asked = figures::demand(demand, self.locale);
            text += &format!("; {}", self.locale.it_must_be(&asked));
        }
        text
    }

    /// The key to write in the vessel's file, where the printed name does not
    /// show it.
    fn key(&self, attribute: AttributeId) -> Option<String> {
        let known = self.vocabulary.attribute(attribute);
        (fold(&known.name) != known.id).then(|| self.locale.settle_key(&known.id))
    }

    fn clause(&self, requirement: usize) -> String {
        self.requirement(requirement).map(|r| r.clause.clone()).unwrap_or_default()
    }
}
