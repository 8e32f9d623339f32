//! What settles a *can't tell*: what to measure, look up or ask.
//!
//! Imports `model` only.

use super::figures;
use super::{Case, Words};
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
        let mark = tool.map_or("it", |index| self.mark(index));
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
            all.push(format!("look at {mark} and write down: {}", self.list(&look, case.explain)));
        }
        if !vouch.is_empty() {
            all.push(format!(
                "get a dated statement that {mark} conforms to {} ({})",
                self.clause(case.requirement),
                self.list(&vouch, false)
            ));
        }
        all.append(&mut texts);
        all
    }

    fn measure(&self, mark: &str, wanted: &[(AttributeId, &Demand)], case: Case) -> Vec<String> {
        if wanted.is_empty() {
            return Vec::new();
        }
        if wanted.len() > EXPLAINED {
            return vec![format!("measure on {mark}: {}", self.list(wanted, case.explain))];
        }
        let one = |(attribute, demand): &(AttributeId, &Demand)| {
            format!(
                "measure the {} of {mark}{}{}",
                self.attribute(*attribute),
                self.how(*attribute, case),
                it_must(self, demand)
            )
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
                demand => format!("{name} {}", figures::demand(demand, self.locale)),
            }
        };
        wanted.iter().map(one).collect::<Vec<_>>().join(", ")
    }

    /// What to do about one missing fact that is no measurement.
    fn settle(&self, mark: &str, reason: &Reason, case: Case) -> String {
        match reason {
            Reason::Disputed { attribute, demand, .. } => format!(
                "measure the {} of {mark} again{}{}",
                self.attribute(*attribute),
                self.how(*attribute, case),
                it_must(self, demand)
            ),
            Reason::Approximate { attribute, limit, .. } => format!(
                "ask the authority whether the {} of {mark} will do, or bring one of {}",
                self.attribute(*attribute),
                figures::about(limit, self.locale)
            ),
            Reason::WordingDisputed { .. } => format!(
                "ask the authority how {} is to be read, or bring one that keeps every reading",
                self.clause(case.requirement)
            ),
            Reason::StateUnknown => format!("try out whether {mark} works, and write it down"),
            Reason::WhereaboutsUnknown => format!("find out where {mark} is"),
            Reason::InspectionUndated => {
                format!("look up when {mark} was last inspected, or have it inspected")
            }
            Reason::AcquiredUnknown { .. } => format!("look up when {mark} was acquired"),
            Reason::NotListed { kinds } => {
                format!("look aboard for: {}; write down what is there", self.kinds(kinds))
            }
            Reason::SpareFitUnknown => format!("write down which tool {mark} fits"),
            Reason::CertificateUndated { person } => {
                format!("look up the dates on the certificate of {person}")
            }
            Reason::GearOutside { piece, why } => self.settle_gear(piece, why, case),
            Reason::BindingUnknown { fact } | Reason::VesselFactUnknown { fact } => {
                self.find_out(fact)
            }
            Reason::TooManyWays => {
                "list equal tools as one lot with a count, and leave out what is not for turtles"
                    .to_owned()
            }
            Reason::NotEncoded => self.by_hand(),
            Reason::NoEdition { .. } => {
                format!("ask the authority for the text of `{}` in force", self.profile.rule)
            }
            _ => String::new(),
        }
    }

    /// What to do under a rule that is known, not encoded.
    pub(crate) fn by_hand(&self) -> String {
        format!("go through the kit by hand, with the text of {}", self.profile.source)
    }

    fn settle_gear(&self, piece: &str, why: &Reason, case: Case) -> String {
        match why {
            Reason::Unmeasured { attribute, demand, .. } if self.is_quantity(*attribute) => {
                format!(
                    "measure the {} of {piece}{}{}",
                    self.attribute(*attribute),
                    self.how(*attribute, case),
                    it_must(self, demand)
                )
            }
            Reason::Unmeasured { attribute, demand, .. } => {
                format!(
                    "write down of {piece}: {}",
                    self.list(&[(*attribute, demand)], case.explain)
                )
            }
            _ => format!("look at {piece} and write down what it is like"),
        }
    }

    /// How the attribute is measured, and under which key it is written.
    fn how(&self, attribute: AttributeId, case: Case) -> String {
        let how = self.vocabulary.attribute(attribute).measure.clone();
        let parts: Vec<_> = [how, self.key(attribute)].into_iter().flatten().collect();
        if parts.is_empty() || !case.explain {
            return String::new();
        }
        format!(" ({})", parts.join("; "))
    }

    /// The key to write in the vessel's file, where the printed name does not
    /// show it.
    fn key(&self, attribute: AttributeId) -> Option<String> {
        let known = self.vocabulary.attribute(attribute);
        (fold(&known.name) != known.id).then(|| format!("write it as `{}`", known.id))
    }

    fn clause(&self, requirement: usize) -> String {
        self.requirement(requirement).map(|r| r.clause.clone()).unwrap_or_default()
    }
}

fn it_must(words: &Words<'_>, demand: &Demand) -> String {
    match demand {
        Demand::Open => String::new(),
        demand => format!("; it must be {}", figures::demand(demand, words.locale)),
    }
}
