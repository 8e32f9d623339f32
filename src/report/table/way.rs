//! The end of a section: until when, up to which freeboard, and the shortest
//! way to ready.
//!
//! Imports `model` and the page and words beside it.

use super::section::{INDENT, Section};
use crate::model::finding::{Action, Finding, Outcome, Step, Target, Verdict, WayToReady};
use crate::model::profile::Level;
use crate::model::reason::Reason;
use crate::report::page::{Page, Tone};

impl Section<'_> {
    pub(super) fn limits(&self, page: &mut Page) {
        page.gap();
        let row = |label: &str, text: String| (Tone::Strong, vec![label.to_owned(), text]);
        let mut rows = vec![row("ready until", self.words.ready_until(self.judgement))];
        rows.extend(self.words.good_up_to(self.judgement).map(|text| row("good up to", text)));
        page.columns(INDENT, &[12, usize::MAX], &rows);
    }

    pub(super) fn way(&self, page: &mut Page) {
        match self.judgement.inverses.as_ref().map(|inverses| &inverses.way) {
            None | Some(WayToReady::Already) => {}
            Some(WayToReady::None) => {
                page.gap();
                let text = "No set of changes was found that makes it ready.";
                page.prose(INDENT, Tone::Strong, text);
            }
            Some(WayToReady::Steps { steps, fewest }) => self.steps(page, steps, *fewest),
        }
    }

    fn steps(&self, page: &mut Page, steps: &[Step], fewest: bool) {
        page.gap();
        let count = steps.len();
        let noun = if count == 1 { "step" } else { "steps" };
        let sure = if fewest { "" } else { "; there may be a shorter way" };
        let heading = format!("Shortest way to ready ({count} {noun}{sure})");
        page.prose(INDENT, Tone::Strong, &heading);
        for (number, step) in steps.iter().enumerate() {
            let label = format!("{:>2}.", number + 1);
            page.hang(INDENT, (&label, Tone::Plain), (&self.step(step), Tone::Strong));
            // What is written down of the vessel serves every requirement.
            if step.target != Target::Vessel {
                let wanted = format!("for: {}", self.words.step_for(step));
                page.prose(INDENT + 4, Tone::Plain, &wanted);
            }
        }
        let measures = steps.iter().any(|step| step.action == Action::Measure);
        if self.judgement.verdict == Verdict::CannotTell || measures {
            let text = "What is to be measured or looked up is taken to turn out well.";
            page.prose(INDENT, Tone::Plain, text);
        }
    }

    /// A step, in few words where a finding above says it in full.
    fn step(&self, step: &Step) -> String {
        let freeboard = self.words.freeboard_for(self.judgement, step.requirement);
        let full = self.words.step(step, freeboard);
        let remedy = self.told_above(step).and_then(|finding| self.words.remedy(finding, &[]));
        match remedy.and_then(|remedy| self.words.step_in_brief(step, freeboard, &remedy)) {
            Some(brief) if brief.len() < full.len() => brief,
            _ => full,
        }
    }

    /// The finding above that the step puts right, if it tells every reason
    /// of the step.
    fn told_above(&self, step: &Step) -> Option<&Finding> {
        let finding = self.judgement.findings.iter().find(|f| f.requirement == step.requirement)?;
        let requirement = self.judgement.profile.requirements.get(step.requirement)?;
        let tells =
            |reason: &Reason| finding.reasons.iter().any(|because| because.reason == *reason);
        let shown = finding.outcome != Outcome::Met && requirement.level == Level::Required;
        (shown && step.reasons.iter().all(tells)).then_some(finding)
    }
}
