//! What is met by what the list says, and whether that was measured.
//!
//! Imports `model` and the words beside it. What measured figures alone meet
//! was judged by the engine in a check of its own.

use super::shared::{laid_over, of_rules, rule_of, take_in};
use super::skipper::List;
use crate::model::check::{Check, Judgement};
use crate::model::finding::{Finding, Outcome};
use crate::model::profile::Level;
use crate::report::render::base::shown;
use maud::{Markup, html};

/// One line: what is met, by which clause of which rules, by what.
#[derive(PartialEq, Eq)]
struct Line {
    title: String,
    clause: String,
    recommended: bool,
    stated: bool,
    by: String,
}

impl List<'_> {
    /// What is met, each once, with what meets it. No ticks: nobody looked.
    pub(super) fn met(&self, measured: &Check) -> Markup {
        let mut lines: Vec<(Line, Vec<String>)> = Vec::new();
        for (judgement, words) in self.encoded() {
            for finding in judgement.findings.iter().filter(|f| f.outcome == Outcome::Met) {
                let Some(requirement) = words.requirement(finding.requirement) else { continue };
                let line = Line {
                    title: requirement.title.to_string(),
                    clause: requirement.clause.clone(),
                    recommended: requirement.level == Level::Recommended,
                    stated: !met_as_measured(measured, judgement, finding),
                    by: words.all_that_serve(finding),
                };
                let rule = rule_of(self.subject.check, judgement);
                match lines.iter_mut().find(|(known, _)| *known == line) {
                    Some((_, rules)) => take_in(rules, rule),
                    None => lines.push((line, rule.into_iter().collect())),
                }
            }
        }
        let (locale, laid_over) = (self.subject.locale, laid_over(self.subject).is_some());
        let stated = lines.iter().any(|(line, _)| line.stated);
        html! {
            @if !lines.is_empty() {
                section {
                    h2 { (locale.sheet_met()) }
                    p {
                        @if laid_over { (locale.sheet_met_by_list_and_records()) }
                        @else { (locale.sheet_met_by_list()) }
                        @if stated { " " (locale.sheet_met_stated()) }
                    }
                    ul.met {
                        @for (line, rules) in &lines {
                            li {
                                (shown(&line.title)) " ("
                                (shown(&of_rules(rules, &line.clause, locale))) ")"
                                @if line.recommended { ", " (locale.sheet_recommended()) }
                                @if !line.by.is_empty() { ": " (shown(&locale.sheet_met_by(&line.by))) }
                                @if line.stated { " - " i { (locale.sheet_stated()) } }
                            }
                        }
                    }
                }
            }
        }
    }
}

/// Whether the finding is met by what was measured alone.
fn met_as_measured(measured: &Check, judgement: &Judgement, finding: &Finding) -> bool {
    let same = |other: &&Judgement| {
        other.profile.id == judgement.profile.id && other.days == judgement.days
    };
    let findings = measured.judgements.iter().find(same).map(|other| &other.findings);
    let found = findings.into_iter().flatten().find(|f| f.requirement == finding.requirement);
    found.is_some_and(|found| found.outcome == Outcome::Met)
}
