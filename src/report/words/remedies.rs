//! What puts a finding right: one line in the imperative.
//!
//! Imports `model` only. The line speaks of the nearest tool first, since
//! mending what is aboard beats buying; texts that make somebody handle gear
//! stay short.

use super::asked::article;
use super::figures;
use super::{Case, Words};
use crate::model::finding::{Because, Finding, Outcome};
use crate::model::reason::{Demand, Reason, VesselFact};
use crate::model::rule::ToolType;
use crate::model::vocabulary::{AttributeId, Class, KindId};

/// What can be done about one tool.
#[derive(Debug, Default)]
pub(super) struct Mending {
    /// Things to do to the tool itself.
    pub(super) deeds: Vec<String>,
    /// What lengthening has to come to.
    pub(super) wishes: Vec<String>,
    /// What a new one would have to be like.
    pub(super) terms: Vec<String>,
    /// Whether nothing but a new one will do.
    pub(super) replace: bool,
    /// Whether the tool is good and only needed elsewhere.
    pub(super) taken: bool,
}

impl Words<'_> {
    /// What puts the finding right; nothing for one that is met, or where
    /// all there is to do is to find out facts that were `told` already.
    pub(crate) fn remedy(&self, finding: &Finding, told: &[&VesselFact]) -> Option<String> {
        let case =
            Case { requirement: finding.requirement, freeboard: finding.freeboard, explain: true };
        let text = match finding.outcome {
            Outcome::Met => String::new(),
            Outcome::CannotTell => self.settle_finding(finding, told, case),
            Outcome::NotMet => self.mend_finding(finding, case),
        };
        (!text.is_empty()).then_some(text)
    }

    /// What settles the finding on the nearest tool that has no fault. If
    /// every tool has one, only whether one is asked can be open.
    fn settle_finding(&self, finding: &Finding, told: &[&VesselFact], case: Case) -> String {
        let news = |because: &&Because| fact_of(because).is_none_or(|fact| !told.contains(&fact));
        let reasons: Vec<_> = finding.reasons.iter().filter(news).collect();
        let mut texts = self.find_all_out(None, &of(&reasons, None), case);
        // Spares that fit nothing are open with the tool that they fit.
        let sound =
            |reason: &&Reason| reason.is_open() || matches!(reason, Reason::FitsNothing { .. });
        let faultless = |tool: &usize| of(&reasons, Some(*tool)).iter().all(sound);
        let nearest = reasons.iter().filter_map(|because| because.tool).find(faultless);
        let of_nearest = nearest.map_or_else(Vec::new, |tool| {
            self.find_all_out(Some(tool), &of(&reasons, Some(tool)), case)
        });
        if !of_nearest.is_empty() {
            let new: Vec<_> = of_nearest.into_iter().filter(|t| !texts.contains(t)).collect();
            texts.extend(new);
        } else if reasons.iter().any(|because| !because.reason.is_open()) {
            let asked = |because: &Because| matches!(because.reason, Reason::BindingUnknown { .. });
            let mend = self.mend_finding(finding, case);
            texts.push(match finding.reasons.iter().any(asked) {
                true => self.locale.settle_if_asked(&mend),
                false => mend,
            });
        }
        texts.join("; ")
    }

    /// Mending the nearest tool, if that is enough; else what has to be
    /// brought.
    fn mend_finding(&self, finding: &Finding, case: Case) -> String {
        let faults: Vec<_> = finding.reasons.iter().filter(|b| !b.reason.is_open()).collect();
        let whole = of(&faults, None);
        let wanting = whole.iter().map(|reason| wanting(reason)).max().unwrap_or(1);
        let types = whole.iter().find(|reason| matches!(reason, Reason::TooFewTypes { .. }));
        if let Some(tool) = faults.iter().find_map(|because| because.tool) {
            let reasons = of(&faults, Some(tool));
            let mendable = !self.mending(tool, &reasons).replace;
            if wanting <= 1 && (mendable || types.is_none()) {
                return self.mend(tool, &reasons, case);
            }
        }
        if let Some(types) = types {
            return self.provide(types, case);
        }
        let texts: Vec<_> = whole.iter().map(|reason| self.provide(reason, case)).collect();
        texts.join("; ")
    }

    /// What to do about a tool that does not serve.
    fn mend(&self, tool: usize, reasons: &[&Reason], case: Case) -> String {
        let mending = self.mending(tool, reasons);
        let Some(kind) = self.tool(tool).map(|tool| tool.kind) else {
            return String::new();
        };
        if self.is_document(kind) && !mending.terms.is_empty() {
            return self.locale.remedy_see_to(&self.mark(tool), &mending.terms.join(", "));
        }
        if mending.replace {
            return self.another(kind, &mending, case);
        }
        let deeds = figures::all_of(&mending.deeds, self.locale);
        let wishes = figures::all_of(&mending.wishes, self.locale);
        match (mending.wishes.is_empty(), mending.deeds.len() > 1) {
            (true, _) => deeds,
            (false, false) => self.locale.remedy_or_bring(&deeds, &wishes),
            (false, true) => self.locale.remedy_all_or_bring(&deeds, &wishes),
        }
    }

    fn another(&self, kind: KindId, mending: &Mending, case: Case) -> String {
        let what = match mending.terms.as_slice() {
            [] => self.kind_in_case(kind, case),
            terms => self.locale.asked_terms(&self.kind(kind), &terms.join(", ")),
        };
        match (self.is_document(kind), mending.taken) {
            (false, false) => self.locale.remedy_bring_another(&what),
            (false, true) => self.locale.remedy_bring_one_more(&what),
            (true, false) => self.locale.remedy_carry_another(&what),
            (true, true) => self.locale.remedy_carry_one_more(&what),
        }
    }

    /// The kind with what the requirement asks of it.
    fn kind_in_case(&self, kind: KindId, case: Case) -> String {
        self.requirement(case.requirement).map_or_else(
            || self.kind(kind).to_owned(),
            |requirement| self.kind_as_asked(kind, requirement, case.freeboard),
        )
    }

    /// Documents are carried, tools are brought.
    fn is_document(&self, kind: KindId) -> bool {
        self.vocabulary.kind(kind).class == Class::Document
    }

    /// What can be done about each of the tool's faults.
    pub(super) fn mending(&self, tool: usize, reasons: &[&Reason]) -> Mending {
        let mark = self.lot(tool);
        let (mut mending, say) = (Mending::default(), self.locale);
        for reason in reasons {
            match reason {
                Reason::TooShortForRail { attribute, least, .. } => {
                    self.lengthen(mark, *attribute, &Demand::Least(least.clone()), &mut mending);
                }
                Reason::OutOfSpecification { attribute, demand, .. } => match demand {
                    Demand::Least(_) | Demand::Above(_) => {
                        self.lengthen(mark, *attribute, demand, &mut mending);
                    }
                    demand => {
                        mending.terms.push(self.term(*attribute, demand));
                        mending.replace = true;
                    }
                },
                Reason::NotServiceable => mending.deeds.push(say.remedy_repair(&mark)),
                Reason::NotAboard { lent_to: Some(vessel) } => {
                    mending.deeds.push(say.remedy_fetch(&mark, vessel));
                }
                Reason::NotAboard { lent_to: None } => {
                    mending.deeds.push(say.remedy_bring_aboard(&mark));
                }
                Reason::Missing => mending.deeds.push(say.remedy_find_or_replace(&mark)),
                Reason::InspectionLapsed { .. }
                | Reason::LapsesDuringTrip { inspection: true, .. } => {
                    mending.deeds.push(say.remedy_inspect(&mark));
                }
                Reason::PartTaken { part } => {
                    mending.deeds.push(say.remedy_second_part(part, &mark));
                }
                Reason::FitsNothing { requirement } => {
                    mending.deeds.push(say.remedy_other_first(&self.title(*requirement)));
                }
                Reason::Taken { .. } | Reason::OneOfThese { .. } => {
                    mending.taken = true;
                    mending.replace = true;
                }
                Reason::NothingAboard { .. }
                | Reason::TooFew { .. }
                | Reason::TooFewTypes { .. }
                | Reason::NoAlternative { .. }
                | Reason::AcquiredTooLate { .. }
                | Reason::Expired { .. }
                | Reason::LapsesDuringTrip { .. }
                | Reason::NoCertificate { .. }
                | Reason::GearOutside { .. }
                | Reason::InEveryCase
                | Reason::Unmeasured { .. }
                | Reason::Disputed { .. }
                | Reason::Approximate { .. }
                | Reason::WordingDisputed { .. }
                | Reason::StateUnknown
                | Reason::WhereaboutsUnknown
                | Reason::InspectionUndated
                | Reason::AcquiredUnknown { .. }
                | Reason::NotListed { .. }
                | Reason::SpareFitUnknown
                | Reason::CertificateUndated { .. }
                | Reason::ExpiryDisputed { .. }
                | Reason::KindDisputed { .. }
                | Reason::CertificateDisputed { .. }
                | Reason::PersonDisputed { .. }
                | Reason::BindingUnknown { .. }
                | Reason::VesselFactUnknown { .. }
                | Reason::HangsOn { .. }
                | Reason::TooManyWays
                | Reason::TooManyFacts
                | Reason::NotEncoded
                | Reason::NoEdition { .. } => mending.replace |= !reason.is_open(),
            }
        }
        mending
    }

    fn lengthen(&self, mark: &str, attribute: AttributeId, demand: &Demand, mending: &mut Mending) {
        if self.vocabulary.attribute(attribute).lengthens {
            mending.deeds.push(self.locale.remedy_lengthen(&mark));
            mending.wishes.push(self.wish(attribute, demand));
        } else {
            mending.replace = true;
        }
        mending.terms.push(self.term(attribute, demand));
    }

    /// What to do about a want that no tool aboard can fill.
    pub(super) fn provide(&self, reason: &Reason, case: Case) -> String {
        match reason {
            Reason::NothingAboard { kinds } => self.bring(kinds, case),
            Reason::TooFew { kind, .. } => {
                self.locale.remedy_bring_more(&wanting(reason), &self.kind(*kind))
            }
            Reason::TooFewTypes { complete, incomplete, .. } => {
                self.complete_types(wanting(reason), complete, incomplete, case)
            }
            Reason::NoCertificate { role: Some(role), .. } => self.locale.remedy_certify_role(role),
            Reason::NoCertificate { role: None, .. } => {
                self.locale.remedy_certify_more(&wanting(reason))
            }
            Reason::GearOutside { piece, why } => match why.as_ref() {
                Reason::OutOfSpecification { attribute, demand, .. } => {
                    self.locale.remedy_land_or_change(piece, &self.term(*attribute, demand))
                }
                _ => self.locale.remedy_land(piece),
            },
            other => self.reason(other),
        }
    }

    /// A type that was begun is completed only if it is a set: of one tool
    /// there is nothing to complete.
    fn complete_types(
        &self,
        wanting: u32,
        complete: &[String],
        begun: &[String],
        case: Case,
    ) -> String {
        let types = self.types(case.requirement);
        let is_set = |name: &String| {
            begun.contains(name) && types.iter().any(|t| t.name.as_ref() == Some(name) && many(t))
        };
        let names = self.type_names(case.requirement);
        let names: Vec<_> = names.into_iter().filter(|name| !complete.contains(name)).collect();
        let (sets, others): (Vec<_>, Vec<_>) = names.into_iter().partition(is_set);
        let bring = match others.as_slice() {
            [only] if wanting == 1 => self.locale.remedy_bring(&self.type_as_asked(only, case)),
            others => self.locale.remedy_bring_of(&wanting, &others.join(", ")),
        };
        let open = figures::any_of(&sets, self.locale);
        match (sets.is_empty(), others.is_empty()) {
            (false, false) => self.locale.remedy_complete_or(&open, &bring),
            (false, true) => self.locale.remedy_complete(&open),
            (true, _) => bring,
        }
    }

    /// A type of one tool with what the rule asks of it; a set by its name.
    fn type_as_asked(&self, name: &str, case: Case) -> String {
        let types = self.types(case.requirement);
        let of_type = types.iter().find(|t| t.name.as_deref() == Some(name));
        let spec = of_type.filter(|t| !many(t)).and_then(|t| t.members.first()?.choices.first());
        match (spec, self.requirement(case.requirement)) {
            (Some(spec), Some(requirement)) => {
                article(&self.spec_as_asked(spec, requirement, case.freeboard), self.locale)
            }
            _ => article(name, self.locale),
        }
    }

    fn bring(&self, kinds: &[KindId], case: Case) -> String {
        let Some((first, others)) = kinds.split_first() else {
            return self.locale.remedy_bring_clause().to_owned();
        };
        let asked = article(&self.kind_in_case(*first, case), self.locale);
        let others = others.iter().map(|kind| article(self.kind(*kind), self.locale));
        let others: Vec<_> = others.collect();
        let what = self.or_others(asked, &others);
        match self.is_document(*first) {
            true => self.locale.remedy_carry(&what),
            false => self.locale.remedy_bring(&what),
        }
    }

    /// What is asked first, and what would do instead, if there is anything.
    pub(super) fn or_others(&self, asked: String, others: &[String]) -> String {
        match others {
            [] => asked,
            others => self.locale.remedy_or_others(&asked, &figures::any_of(others, self.locale)),
        }
    }
}

/// The reasons that speak of one tool, or of none.
fn of<'a>(reasons: &[&'a Because], tool: Option<usize>) -> Vec<&'a Reason> {
    reasons.iter().filter(|because| because.tool == tool).map(|because| &because.reason).collect()
}

/// Whether the type is a set of several tools.
fn many(of_type: &ToolType) -> bool {
    of_type.members.iter().map(|member| member.count).sum::<u32>() > 1
}

/// How many tools, types or people are wanting.
fn wanting(reason: &Reason) -> u32 {
    match reason {
        Reason::TooFew { have, need, .. }
        | Reason::TooFewTypes { have, need, .. }
        | Reason::NoCertificate { have, need, .. } => need.saturating_sub(*have),
        _ => 1,
    }
}

/// The fact of the vessel that a reason lacks.
pub(crate) fn fact_of(because: &Because) -> Option<&VesselFact> {
    match &because.reason {
        Reason::BindingUnknown { fact } | Reason::VesselFactUnknown { fact } => Some(fact),
        _ => None,
    }
}
