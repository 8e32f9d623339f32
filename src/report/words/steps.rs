//! The steps of the shortest way to ready, and clashes.
//!
//! Imports `model` only.

use super::asked::article;
use super::figures;
use super::{Case, Words};
use crate::measure::Length;
use crate::model::check::Judgement;
use crate::model::finding::{Action, Clash, FilledSlot, Step, Target};
use crate::model::profile::Requirement;
use crate::model::reason::Reason;
use crate::model::rule::{Member, Need, Spec};

impl Words<'_> {
    /// One step, in the imperative.
    pub(crate) fn step(&self, step: &Step, freeboard: Option<Length>) -> String {
        let case = Case { requirement: step.requirement, freeboard, explain: false };
        let reasons: Vec<&Reason> = step.reasons.iter().collect();
        match (&step.target, step.action) {
            (Target::Tool(tool), deed) => self.step_on_tool(*tool, deed, &reasons, case),
            (Target::Type(_), deed) => self.step_on_type(deed, step, freeboard),
            (Target::Role(_) | Target::Gear(_), Action::Measure) | (Target::Vessel, _) => self
                .all(self.find_all_out(None, &reasons, case))
                .unwrap_or_else(|| self.locale.step_vessel().to_owned()),
            (Target::Role(role), _) => self.certify(role.as_deref(), &reasons),
            (Target::Gear(piece), _) => {
                let texts = reasons.iter().map(|reason| self.provide(reason, case));
                self.all(texts.collect()).unwrap_or_else(|| self.locale.step_piece(piece))
            }
        }
    }

    /// A step of a judgement's shortest way, at the freeboard that it is for.
    pub(crate) fn step_of(&self, judgement: &Judgement, step: &Step) -> String {
        self.step(step, judgement.freeboard_for(step.requirement, self.vessel))
    }

    /// The step in few words, where the remedy of the finding above tells its
    /// figures already.
    pub(crate) fn step_in_brief(
        &self,
        step: &Step,
        freeboard: Option<Length>,
        remedy: &str,
    ) -> Option<String> {
        let what = match &step.target {
            Target::Type(_) if step.action == Action::Acquire => {
                let full = self.things(step, |spec, requirement| {
                    self.spec_as_asked(spec, requirement, freeboard)
                })?;
                let things = self.things(step, |spec, _| self.kind(spec.kind).to_owned())?;
                (remedy.contains(&full) && things != full)
                    .then(|| self.locale.remedy_bring(&things))
            }
            Target::Tool(tool) => {
                self.done_to_tool(*tool, step).filter(|what| remedy.contains(what))
            }
            _ => None,
        }?;
        Some(self.or_another_type(self.locale.step_see_above(&what), step))
    }

    /// A single thing that is done to a tool, without its figures.
    fn done_to_tool(&self, tool: usize, step: &Step) -> Option<String> {
        let mark = self.lot(tool);
        match (step.action, step.reasons.as_slice()) {
            (
                Action::Lengthen,
                [Reason::TooShortForRail { .. } | Reason::OutOfSpecification { .. }],
            ) => Some(self.locale.remedy_lengthen(&mark)),
            (Action::Measure, [Reason::Unmeasured { attribute, .. }]) => {
                Some(self.locale.settle_measure(&self.attribute(*attribute), &mark))
            }
            (Action::Measure, [Reason::Disputed { attribute, .. }]) => {
                Some(self.locale.settle_measure_again(&self.attribute(*attribute), &mark))
            }
            _ => None,
        }
    }

    /// What the step is for.
    pub(crate) fn step_for(&self, step: &Step) -> String {
        let mut all = vec![step.requirement];
        all.extend(&step.also);
        self.titles(&all)
    }

    fn step_on_tool(&self, tool: usize, deed: Action, reasons: &[&Reason], case: Case) -> String {
        let (mark, say) = (self.lot(tool), self.locale);
        let mending = self.mending(tool, reasons);
        let mut texts = mending.deeds;
        if deed == Action::Document && !mending.terms.is_empty() {
            texts = vec![say.remedy_see_to(&mark, &mending.terms.join(", "))];
        } else if !mending.wishes.is_empty() {
            let lengthen = say.remedy_lengthen(&mark);
            if let Some(last) = texts.iter_mut().rfind(|text| **text == lengthen) {
                *last = say.remedy_lengthen_to(&mark, &figures::all_of(&mending.wishes, say));
            }
        }
        texts.extend(self.find_all_out(Some(tool), reasons, case));
        self.all(texts).unwrap_or_else(|| match deed {
            Action::Measure => say.step_measure(&mark),
            Action::Reinspect => say.step_inspect(&mark),
            Action::Repair => say.remedy_repair(&mark),
            Action::Lengthen => say.remedy_lengthen(&mark),
            Action::BringAboard => say.remedy_bring_aboard(&mark),
            Action::Document => say.step_carry_or_post(&mark),
            Action::Certify => say.step_certify_holder(&mark),
            Action::ChangeGear => say.step_change(&mark),
            Action::Acquire => say.step_replace(&mark),
        })
    }

    /// Something that is not on the list: to be looked for, or brought.
    fn step_on_type(&self, action: Action, step: &Step, freeboard: Option<Length>) -> String {
        let things = self
            .things(step, |spec, requirement| self.spec_as_asked(spec, requirement, freeboard))
            .unwrap_or_else(|| self.title(step.requirement));
        let things = self.counting_too(things, step, freeboard);
        match action {
            Action::Measure => self.locale.step_look_aboard(&things),
            Action::Document => self.locale.step_carry_or_post(&things),
            _ => self.or_another_type(self.locale.remedy_bring(&things), step),
        }
    }

    /// The things with what else they have to be so that they count for other
    /// requirements too.
    fn counting_too(&self, mut things: String, step: &Step, freeboard: Option<Length>) -> String {
        for also in &step.also {
            let deemed = self.requirement(*also).into_iter().flat_map(|other| &other.deemed);
            for deemed in deemed.filter(|deemed| deemed.requirement == step.requirement) {
                let terms = self.terms(&deemed.tests, freeboard).join(", ");
                if !terms.is_empty() {
                    things = self.locale.step_to_count_too(&things, &terms, &self.title(*also));
                }
            }
        }
        things
    }

    /// What fills the places of a step, each told by `tell`.
    fn things(&self, step: &Step, tell: impl Fn(&Spec, &Requirement) -> String) -> Option<String> {
        let requirement = self.requirement(step.requirement)?;
        let slots = step.slots.iter().filter_map(|slot| {
            let member = member(requirement, slot)?;
            let spec = member.choices.get(slot.choice)?;
            let asked = tell(spec, requirement);
            let asked = if slot.count > 1 {
                self.locale.step_number_of(&slot.count, &asked)
            } else {
                article(&asked, self.locale)
            };
            Some(match step.slots.len() {
                1 => self.or_others(asked, &self.other_kinds(member, spec)),
                _ => asked,
            })
        });
        let things = slots.collect::<Vec<_>>().join("; ");
        (!things.is_empty()).then_some(things)
    }

    /// Where a rule lists several types, the one that a step brings is not
    /// the only one that will do.
    fn or_another_type(&self, text: String, step: &Step) -> String {
        if step.action != Action::Acquire || self.types(step.requirement).len() < 2 {
            return text;
        }
        format!("{text}; {}", self.locale.step_or_other_type(&self.title(step.requirement)))
    }

    /// The other kinds that would do whatever else is so: an alternative with a
    /// condition may not be open to the vessel.
    fn other_kinds(&self, member: &Member, chosen: &Spec) -> Vec<String> {
        let mut kinds: Vec<String> = Vec::new();
        let open = |spec: &&Spec| spec.kind != chosen.kind && spec.when.is_empty();
        for spec in member.choices.iter().filter(open) {
            let name = article(self.kind(spec.kind), self.locale);
            if !kinds.contains(&name) {
                kinds.push(name);
            }
        }
        kinds
    }

    /// A clash: which needs compete for which tools.
    pub(crate) fn clash(&self, clash: &Clash) -> String {
        let titles: Vec<_> = clash.requirements.iter().map(|index| self.title(*index)).collect();
        let requirements = titles.join(" / ");
        let head = match titles.len() {
            2 => self.locale.clash_two(&requirements),
            all => self.locale.clash_many(&requirements, &all.saturating_sub(1), &all),
        };
        let marks: Vec<_> = clash.tools.iter().map(|tool| self.mark(*tool).to_owned()).collect();
        let tools = figures::all_of(&marks, self.locale);
        match (marks.len(), self.shared_part(clash)) {
            (0, _) => head,
            (_, Some(part)) => format!("{head}; {}", self.locale.clash_part(&tools, &part)),
            _ => format!("{head}; {}", self.locale.clash_tools(&tools)),
        }
    }

    /// A part that two of the tools are put together from.
    fn shared_part(&self, clash: &Clash) -> Option<&str> {
        let parts = |tool: &usize| self.tool(*tool).map_or(&[][..], |tool| tool.parts.as_slice());
        clash.tools.iter().enumerate().find_map(|(place, tool)| {
            let others = &clash.tools[place + 1..];
            let shared = |part: &&String| others.iter().any(|other| parts(other).contains(part));
            parts(tool).iter().find(shared).map(String::as_str)
        })
    }

    /// One person may fill several roles; the step then names no single one.
    fn certify(&self, role: Option<&str>, reasons: &[&Reason]) -> String {
        let named = reasons.iter().find_map(|reason| match reason {
            Reason::NoCertificate { role: Some(role), .. } => Some(role.as_str()),
            _ => None,
        });
        match role.or(named) {
            Some(role) => self.locale.step_certify_role(&role),
            None => self.locale.step_certify_one().to_owned(),
        }
    }

    /// All that there is to do, if it is anything.
    fn all(&self, mut texts: Vec<String>) -> Option<String> {
        texts.retain(|text| !text.is_empty());
        (!texts.is_empty()).then(|| figures::all_of(&texts, self.locale))
    }
}

fn member<'a>(requirement: &'a Requirement, slot: &FilledSlot) -> Option<&'a Member> {
    match &requirement.need {
        Need::Tools { types, .. } => types.get(slot.of_type)?.members.get(slot.member),
        _ => None,
    }
}
