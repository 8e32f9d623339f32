//! Until when and up to which freeboard a kit stays ready, in words.
//!
//! Imports `engine::validity`, `model` and `measure`. Both answers were found by the engine;
//! here they are told, with what runs out first where the result shows it.

use super::Words;
use super::figures;
use crate::engine::validity::{End, Holding, Validity, validities};
use crate::measure::{Day, Length, Rounding};
use crate::model::check::Judgement;
use crate::model::finding::{Finding, GoodUpTo, Outcome, ReadyUntil, Verdict};
use crate::model::profile::Level;

/// What nobody can say before the missing facts are there.
const LATER: &str = "can't tell before the above is found out";

impl Words<'_> {
    /// Until when the kit is ready.
    pub(crate) fn ready_until(&self, judgement: &Judgement) -> String {
        match judgement.ready_until {
            ReadyUntil::None if judgement.verdict == Verdict::CannotTell => LATER.to_owned(),
            ReadyUntil::None => "not ready at departure".to_owned(),
            ReadyUntil::Day(day) => match self.runs_out(judgement, day).as_slice() {
                [] => format!("{day}, that day included"),
                some => format!("{day}, that day included; then {}", some.join("; ")),
            },
            ReadyUntil::NoEnd => "no end: nothing aboard runs out".to_owned(),
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
                Some(format!("the certificate of {} runs out", person.name))
            }
            (Holding::Tool(tool), Some(End::Inspection)) => {
                Some(format!("the inspection of {} runs out", self.mark(tool)))
            }
            (Holding::Tool(tool), _) => Some(format!("{} goes out of date", self.mark(tool))),
        };
        ending.filter_map(text).collect()
    }

    /// Up to which freeboard the kit is ready, where it was worked out.
    pub(crate) fn good_up_to(&self, judgement: &Judgement) -> Option<String> {
        judgement.inverses.as_ref().map(|inverses| self.up_to(judgement, &inverses.good_up_to))
    }

    fn up_to(&self, judgement: &Judgement, up_to: &GoodUpTo) -> String {
        let reaches =
            |length: Length| figures::length(length, self.system(), self.units, Rounding::Down);
        let gives = |gives_out: &[usize]| match gives_out {
            [] => String::new(),
            some => {
                let titles: Vec<_> = some.iter().map(|index| self.title(*index)).collect();
                format!("; above that, not met: {}", titles.join("; "))
            }
        };
        match up_to {
            GoodUpTo::None if judgement.verdict == Verdict::CannotTell => LATER.to_owned(),
            GoodUpTo::None if self.fails_at_any(judgement) => {
                "not ready at any freeboard, for the reasons above".to_owned()
            }
            GoodUpTo::None => "not ready at any freeboard".to_owned(),
            GoodUpTo::Freeboard { length, gives_out } => {
                format!("a freeboard of {}{}", reaches(*length), gives(gives_out))
            }
            GoodUpTo::OnlyBelow { length, gives_out } => format!(
                "a freeboard of {} only, which is less than this vessel has{}",
                reaches(*length),
                gives(gives_out)
            ),
            GoodUpTo::NoLimit => "any freeboard".to_owned(),
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
