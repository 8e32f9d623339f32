//! The steps of the shortest way to ready, and clashes.
//!
//! Imports `model` only.

use super::asked::article;
use super::figures;
use super::{Case, Words};
use crate::measure::Length;
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
            (Target::Tool(tool), action) => self.step_on_tool(*tool, action, &reasons, case),
            (Target::Type(_), action) => self.step_on_type(action, step, freeboard),
            (Target::Role(_) | Target::Gear(_), Action::Measure) | (Target::Vessel, _) => {
                join(self.find_all_out(None, &reasons, case))
                    .unwrap_or_else(|| "complete what is written down of the vessel".to_owned())
            }
            (Target::Role(role), _) => certify(role.as_deref(), &reasons),
            (Target::Gear(piece), _) => {
                let texts = reasons.iter().map(|reason| self.provide(reason, case));
                join(texts.collect()).unwrap_or_else(|| format!("see to {piece}"))
            }
        }
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
                (remedy.contains(&full) && things != full).then(|| format!("bring {things}"))
            }
            Target::Tool(tool) => {
                self.done_to_tool(*tool, step).filter(|what| remedy.contains(what))
            }
            _ => None,
        }?;
        Some(format!("{what} (see above){}", self.or_another_type(step)))
    }

    /// A single thing that is done to a tool, without its figures.
    fn done_to_tool(&self, tool: usize, step: &Step) -> Option<String> {
        let mark = self.lot(tool);
        match (step.action, step.reasons.as_slice()) {
            (
                Action::Lengthen,
                [Reason::TooShortForRail { .. } | Reason::OutOfSpecification { .. }],
            ) => Some(format!("lengthen {mark}")),
            (Action::Measure, [Reason::Unmeasured { attribute, .. }]) => {
                Some(format!("measure the {} of {mark}", self.attribute(*attribute)))
            }
            (Action::Measure, [Reason::Disputed { attribute, .. }]) => {
                Some(format!("measure the {} of {mark} again", self.attribute(*attribute)))
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

    fn step_on_tool(&self, tool: usize, action: Action, reasons: &[&Reason], case: Case) -> String {
        let mark = self.lot(tool);
        let mending = self.mending(tool, reasons);
        let mut texts = mending.deeds;
        if action == Action::Document && !mending.terms.is_empty() {
            texts = vec![format!("see to {mark}: {}", mending.terms.join(", "))];
        } else if let (false, Some(last)) = (mending.wishes.is_empty(), texts.last_mut()) {
            last.push_str(&format!(" to {}", figures::all_of(&mending.wishes)));
        }
        texts.extend(self.find_all_out(Some(tool), reasons, case));
        join(texts).unwrap_or_else(|| match action {
            Action::Measure => format!("measure {mark}"),
            Action::Reinspect => format!("have {mark} inspected"),
            Action::Repair => format!("repair {mark}"),
            Action::Lengthen => format!("lengthen {mark}"),
            Action::BringAboard => format!("bring {mark} aboard"),
            Action::Document => format!("carry or post {mark}"),
            Action::Certify => format!("have the holder of {mark} certified"),
            Action::ChangeGear => format!("change {mark}"),
            Action::Acquire => format!("replace {mark}"),
        })
    }

    /// Something that is not on the list: to be looked for, or brought.
    fn step_on_type(&self, action: Action, step: &Step, freeboard: Option<Length>) -> String {
        let things = self
            .things(step, |spec, requirement| self.spec_as_asked(spec, requirement, freeboard))
            .unwrap_or_else(|| self.title(step.requirement));
        let things = format!("{things}{}", self.asked_elsewhere(step, freeboard));
        match action {
            Action::Measure => format!("look aboard for {things}, and write it down"),
            Action::Document => format!("carry or post {things}"),
            _ => format!("bring {things}{}", self.or_another_type(step)),
        }
    }

    /// What else it has to be so that it counts for other requirements too.
    fn asked_elsewhere(&self, step: &Step, freeboard: Option<Length>) -> String {
        let mut asked = String::new();
        for also in &step.also {
            let deemed = self.requirement(*also).into_iter().flat_map(|other| &other.deemed);
            for deemed in deemed.filter(|deemed| deemed.requirement == step.requirement) {
                let terms = self.terms(&deemed.tests, freeboard).join(", ");
                if !terms.is_empty() {
                    asked += &format!(" - {terms}, to count for `{}` too", self.title(*also));
                }
            }
        }
        asked
    }

    /// What fills the places of a step, each told by `tell`.
    fn things(&self, step: &Step, tell: impl Fn(&Spec, &Requirement) -> String) -> Option<String> {
        let requirement = self.requirement(step.requirement)?;
        let slots = step.slots.iter().filter_map(|slot| {
            let member = member(requirement, slot)?;
            let spec = member.choices.get(slot.choice)?;
            let asked = tell(spec, requirement);
            let asked = if slot.count > 1 {
                format!("{} of: {asked}", slot.count)
            } else {
                article(&asked)
            };
            let others = self.other_kinds(member, spec);
            Some(match (others.is_empty(), step.slots.len()) {
                (false, 1) => format!("{asked} - or {others}"),
                _ => asked,
            })
        });
        let things = slots.collect::<Vec<_>>().join("; ");
        (!things.is_empty()).then_some(things)
    }

    /// Where a rule lists several types, the one that a step brings is not
    /// the only one that will do.
    fn or_another_type(&self, step: &Step) -> String {
        if step.action != Action::Acquire || self.types(step.requirement).len() < 2 {
            return String::new();
        }
        format!("; or any other type of `{}` that is not there yet", self.title(step.requirement))
    }

    /// The other kinds that would do whatever else is so: an alternative with a
    /// condition may not be open to the vessel.
    fn other_kinds(&self, member: &Member, chosen: &Spec) -> String {
        let mut kinds: Vec<String> = Vec::new();
        let open = |spec: &&Spec| spec.kind != chosen.kind && spec.when.is_empty();
        for spec in member.choices.iter().filter(open) {
            let name = article(self.kind(spec.kind));
            if !kinds.contains(&name) {
                kinds.push(name);
            }
        }
        figures::any_of(&kinds)
    }

    /// A clash: which needs compete for which tools.
    pub(crate) fn clash(&self, clash: &Clash) -> String {
        let titles: Vec<_> = clash.requirements.iter().map(|index| self.title(*index)).collect();
        let head = match titles.len() {
            2 => format!("{}: either can be met, not both", titles.join(" / ")),
            all => format!(
                "{}: any {} of the {all} can be met, not all",
                titles.join(" / "),
                all.saturating_sub(1)
            ),
        };
        let marks: Vec<_> = clash.tools.iter().map(|tool| self.mark(*tool).to_owned()).collect();
        let tools = figures::all_of(&marks);
        match (marks.len(), self.shared_part(clash)) {
            (0, _) => head,
            (_, Some(part)) => {
                format!("{head}; {tools} share {part}, which serves one tool at a time")
            }
            _ => format!("{head}; there is only {tools}, and a tool counts once"),
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
}

fn member<'a>(requirement: &'a Requirement, slot: &FilledSlot) -> Option<&'a Member> {
    match &requirement.need {
        Need::Tools { types, .. } => types.get(slot.of_type)?.members.get(slot.member),
        _ => None,
    }
}

/// One person may fill several roles; the step then names no single one.
fn certify(role: Option<&str>, reasons: &[&Reason]) -> String {
    let named = reasons.iter().find_map(|reason| match reason {
        Reason::NoCertificate { role: Some(role), .. } => Some(role.as_str()),
        _ => None,
    });
    match role.or(named) {
        Some(role) => format!("have the {role} certified, or sail with one who is"),
        None => "have one more person certified".to_owned(),
    }
}

fn join(texts: Vec<String>) -> Option<String> {
    let texts: Vec<_> = texts.into_iter().filter(|text| !text.is_empty()).collect();
    (!texts.is_empty()).then(|| figures::all_of(&texts))
}
