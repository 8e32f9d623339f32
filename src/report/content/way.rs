//! The shortest way to ready, step by step.

use super::profile::Told;
use super::{Block, Item, Lead, Role, Section, Tone};
use crate::model::check::Inverse;
use crate::model::finding::{Action, Step, Target, Verdict, WayToReady};

impl Told<'_> {
    pub(super) fn way(&self) -> Option<Block> {
        match &self.judgement.inverses.as_ref()?.way {
            WayToReady::Already => None,
            WayToReady::None => {
                let text = match self.judgement.leaves_open(Inverse::Way) {
                    true => self.words.locale.way_left_open(),
                    false => self.words.locale.way_none(),
                };
                Some(Section::block(Role::Part, text, Vec::new()))
            }
            WayToReady::Steps { steps, fewest } => Some(self.steps(steps, *fewest)),
        }
    }

    fn steps(&self, steps: &[Step], fewest: bool) -> Block {
        let say = self.words.locale;
        let heading = match fewest {
            true => say.way_fewest(steps.len()),
            false => say.way_not_fewest(steps.len()),
        };
        let items = steps.iter().map(|step| {
            // What is written down of the vessel serves every requirement.
            let wanted = (step.target != Target::Vessel)
                .then(|| Block::Paragraph(say.way_for(&self.words.step_for(step)).into()));
            Item::new(Lead::Bullet(Tone::Plain), self.step(step)).with(wanted.into_iter().collect())
        });
        let mut body = vec![Block::Steps(items.collect())];
        let measures = steps.iter().any(|step| step.action == Action::Measure);
        if self.judgement.verdict == Verdict::CannotTell || measures {
            body.push(Block::Paragraph(say.turns_out_well().into()));
        }
        Section::block(Role::Part, heading, body)
    }

    /// A step, in few words where a finding above says it in full.
    fn step(&self, step: &Step) -> String {
        let freeboard = self.judgement.freeboard_for(step.requirement, self.words.vessel);
        let full = self.words.step(step, freeboard);
        let remedy =
            self.judgement.told_by(step).and_then(|finding| self.words.remedy(finding, &[]));
        match remedy.and_then(|remedy| self.words.step_in_brief(step, freeboard, &remedy)) {
            Some(brief) if brief.len() < full.len() => brief,
            _ => full,
        }
    }
}
