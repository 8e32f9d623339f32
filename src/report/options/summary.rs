//! What a kit is worth in outcomes, in a few lines beside a check.
//!
//! Imports `model` and the words. The whole of it is the page of `options`.

use super::Shown;
use crate::model::options::{OwnHooks, Standing};
use crate::report::html as base;
use crate::report::page::{Page, Tone};
use crate::report::words::options as words;
use crate::report::words::pages::{capital, sentence};
use maud::{Markup, html};

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

    /// The command that tells the rest.
    fn command(&self) -> String {
        format!("kitmuster options {}", self.options.vessel.place.file)
    }

    /// Puts the lines on a page for the terminal.
    pub(in crate::report) fn write_summary(&self, page: &mut Page) {
        page.gap();
        page.prose(0, Tone::Strong, self.locale.options_summary());
        for (tone, line) in self.lines() {
            page.prose(2, tone, &line);
        }
        let pointer = self.locale.options_summary_pointer();
        page.prose(2, Tone::Plain, &format!("`{}`, {pointer}", self.command()));
    }

    /// The lines as a part of a vessel's page.
    pub(in crate::report) fn summary(&self, id: &str, level: u8) -> Markup {
        let heading = html! { span id=(id) { (self.locale.options_summary()) } };
        html! {
            section {
                (base::heading(level, &heading))
                @for (tone, line) in self.lines() {
                    p {
                        @if tone == Tone::Plain { (base::prose(&line)) }
                        @else { b { (base::prose(&line)) } }
                    }
                }
                p {
                    code { (base::shown(&self.command())) } ", "
                    (self.locale.options_summary_pointer())
                }
            }
        }
    }
}
