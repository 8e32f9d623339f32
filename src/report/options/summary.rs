//! What a kit is worth in outcomes, in a few lines beside a check.
//!
//! Imports `model` and the words. The whole of it is the page of `options`.

use super::Shown;
use crate::model::options::{OwnHooks, Standing};
use crate::report::content::{Block, Inline, Line, Role, Section, Tone};
use crate::report::words::options as words;
use crate::report::words::pages::{capital, sentence};

impl Shown<'_> {
    /// The counts; the situations that have no way at all; the single tool
    /// that would change most, with its price.
    fn lines(&self) -> Vec<(Tone, String)> {
        let worth = self.options.outlook.worth();
        let mut lines = vec![(Tone::Plain, sentence(&capital(&words::worth(&worth, self.locale))))];
        let without = self.without_a_way();
        if !without.is_empty() {
            lines.push((Tone::Bad, self.locale.options_summary_no_way(&without.join("; "))));
        }
        if let (Some(step), Some(lifts)) = (self.lift(), self.lifts()) {
            lines.push((Tone::Strong, self.locale.options_summary_most(&step, &lifts)));
        }
        if let Some(price) = self.price() {
            lines.push((Tone::Plain, sentence(&capital(&price))));
        }
        lines
    }

    /// The situations of which nothing is open, by their titles.
    fn without_a_way(&self) -> Vec<String> {
        let outlook = &self.options.outlook;
        let main = outlook.situations.iter().map(|a| (a, &self.practice.situations));
        let along = outlook.along.iter().map(|a| (a, &self.practice.along));
        let without = main.chain(along).filter(|(answered, _)| {
            answered.hooks != OwnHooks::NoneAboard && answered.standing() == Standing::Nothing
        });
        without.map(|(answered, of)| self.placed(&of[answered.situation])).collect()
    }

    /// The lines as a part of a vessel's account.
    pub(in crate::report) fn summary(&self) -> Block {
        let lines = self.lines().into_iter();
        let mut body: Vec<_> =
            lines.map(|(tone, line)| Block::Paragraph(Line::from(line).toned(tone))).collect();
        let file = &self.options.vessel.place.file;
        let pointer = Line::from(Inline::Code(format!("kitmuster options {file}")))
            .and(format!(", {}", self.locale.options_summary_pointer()));
        body.push(Block::Paragraph(pointer));
        Section::block(Role::Part, self.locale.options_summary(), body)
    }
}
