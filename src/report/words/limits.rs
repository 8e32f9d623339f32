//! Until when and up to which freeboard a kit stays ready, in words.
//!
//! Imports `engine::validity`, `model` and `measure`. Both answers were found by the engine;
//! here they are told, with what runs out first where the result shows it.

use super::Words;
use super::figures;
use crate::engine::validity::{End, Holding, Validity, validities};
use crate::measure::{Day, Length, Rounding};
use crate::model::check::{Inverse, Judgement};
use crate::model::finding::{Finding, GoodUpTo, Outcome, ReadyUntil, Verdict};
use crate::model::profile::Level;

impl Words<'_> {
    /// Until when the kit is ready.
    pub(crate) fn ready_until(&self, judgement: &Judgement) -> String {
        if judgement.leaves_open(Inverse::ReadyUntil) {
            return self.locale.limit_left_open().to_owned();
        }
        match judgement.ready_until {
            ReadyUntil::None if judgement.verdict == Verdict::CannotTell => {
                self.locale.limit_open().to_owned()
            }
            ReadyUntil::None => self.locale.until_none().to_owned(),
            ReadyUntil::Day(day) => match self.runs_out(judgement, day).as_slice() {
                [] => self.locale.until_day(&day),
                some => self.locale.until_day_then(&day, &some.join("; ")),
            },
            ReadyUntil::NoEnd => self.locale.until_no_end().to_owned(),
        }
    }

    /// What serves and is good through that day and no longer.
    fn runs_out(&self, judgement: &Judgement, day: Day) -> Vec<String> {
        let mut all: Vec<String> = Vec::new();
        for finding in judgement.findings.iter().filter(|f| f.outcome == Outcome::Met) {
            let title = self.title(finding.requirement);
            for text in self.ends_on(finding, day) {
                let text = format!("{text} ({title})");
                if !all.contains(&text) {
                    all.push(text);
                }
            }
        }
        all
    }

    fn ends_on(&self, finding: &Finding, day: Day) -> Vec<String> {
        let Some(requirement) = self.requirement(finding.requirement) else { return Vec::new() };
        if requirement.level != Level::Required {
            return Vec::new();
        }
        let all = validities(self.vocabulary, self.vessel, requirement, finding);
        let ending = all.iter().filter(|validity| validity.span.until == Some(day));
        let text = |validity: &Validity| match (validity.holding, validity.end) {
            (Holding::Certificate(person, _), _) => {
                let person = self.vessel.people.iter().flatten().nth(person)?;
                Some(self.locale.ends_certificate(&person.name))
            }
            (Holding::Tool(tool), Some(End::Inspection)) => {
                Some(self.locale.ends_inspection(&self.mark(tool)))
            }
            (Holding::Tool(tool), _) => Some(self.locale.ends_tool(&self.mark(tool))),
        };
        ending.filter_map(text).collect()
    }

    /// Up to which freeboard the kit is ready, where it was worked out.
    pub(crate) fn good_up_to(&self, judgement: &Judgement) -> Option<String> {
        judgement.inverses.as_ref().map(|inverses| self.up_to(judgement, &inverses.good_up_to))
    }

    fn up_to(&self, judgement: &Judgement, up_to: &GoodUpTo) -> String {
        let say = self.locale;
        let reaches = |length: Length| figures::length(length, self.system(), say, Rounding::Down);
        let titles = |indices: &[usize]| {
            indices.iter().map(|index| self.title(*index)).collect::<Vec<_>>().join("; ")
        };
        match up_to {
            _ if judgement.leaves_open(Inverse::GoodUpTo) => say.limit_left_open().to_owned(),
            GoodUpTo::None if judgement.verdict == Verdict::CannotTell => {
                say.limit_open().to_owned()
            }
            GoodUpTo::None if self.fails_at_any(judgement) => say.up_to_none_at_all().to_owned(),
            GoodUpTo::None => say.up_to_none().to_owned(),
            GoodUpTo::Freeboard { length, gives_out } => match gives_out.as_slice() {
                [] => say.up_to(&reaches(*length)),
                some => say.up_to_then(&reaches(*length), &titles(some)),
            },
            GoodUpTo::OnlyBelow { length, gives_out } => match gives_out.as_slice() {
                [] => say.up_to_below(&reaches(*length)),
                some => say.up_to_below_then(&reaches(*length), &titles(some)),
            },
            GoodUpTo::NoLimit => say.up_to_any().to_owned(),
        }
    }

    /// Whether something is not met that does not mind the freeboard.
    fn fails_at_any(&self, judgement: &Judgement) -> bool {
        judgement.findings.iter().any(|finding| {
            let required = |index| self.requirement(index).map(|r| r.level);
            finding.outcome == Outcome::NotMet
                && finding.freeboard.is_none()
                && required(finding.requirement) == Some(Level::Required)
        })
    }
}
