//! One finding on a vessel's page: what is asked and by which clause, what
//! serves, why not, and what to do.
//!
//! Imports `model` and the words.

use crate::model::finding::{Because, Finding, Outcome};
use crate::model::reason::{Reason, VesselFact};
use crate::report::html::{self as base, shown};
use crate::report::profiles::verified;
use crate::report::table::shared;
use crate::report::words::Words;
use maud::{Markup, html};

/// How many tools that will not do are told apart for one finding.
const TOOLS_TOLD: usize = 3;

/// The id of a finding on its page.
fn id(section: &str, finding: &Finding) -> String {
    format!("{section}-f{}", finding.requirement)
}

/// A finding that is not met or not known. What was `told` already of the
/// vessel's missing facts is not told again.
pub(super) fn trouble(
    words: &Words<'_>,
    finding: &Finding,
    told: &[&VesselFact],
    section: &str,
) -> Markup {
    let class =
        if finding.outcome == Outcome::NotMet { "finding not-met" } else { "finding unknown" };
    let (reasons, more) = reasons(words, finding, told);
    let at = finding.freeboard.filter(|_| tells_freeboard(words, finding));
    html! {
        div class=(class) id=(id(section, finding)) {
            p.what {
                (base::outcome(finding.outcome)) " "
                b { (shown(&words.title(finding.requirement))) }
                " " (citation(words, finding.requirement))
            }
            @if !reasons.is_empty() || more > 0 || at.is_some() {
                ul {
                    @for reason in &reasons { li { (base::prose(reason)) } }
                    @if more > 0 {
                        li { (more) " more will not do either; the JSON of the check lists them" }
                    }
                    @if let Some(at) = at { li { "at a freeboard of " (base::prose(&words.freeboard(at))) } }
                }
            }
            @if let Some(remedy) = words.remedy(finding, told) {
                p.do { b { "Do: " } (base::prose(&remedy)) }
            }
        }
    }
}

/// The clause and how it was verified.
fn citation(words: &Words<'_>, requirement: usize) -> Markup {
    html! {
        @if let Some(requirement) = words.requirement(requirement) {
            span.soft { (shown(&requirement.clause)) "; " (verified(requirement.verified)) }
        }
    }
}

/// Of a vessel with several freeboards a finding says at which it is worst,
/// if it hangs on the freeboard and no reason says so already.
fn tells_freeboard(words: &Words<'_>, finding: &Finding) -> bool {
    let said = |because: &Because| matches!(because.reason, Reason::TooShortForRail { .. });
    words.has_several_freeboards()
        && words.hangs_on_freeboard(finding.requirement)
        && !finding.reasons.iter().any(said)
}

/// The reasons, one line for each tool, and how many tools were left out.
fn reasons(words: &Words<'_>, finding: &Finding, told: &[&VesselFact]) -> (Vec<String>, usize) {
    let mut groups: Vec<(Option<usize>, Vec<String>)> = Vec::new();
    for because in shared::news(finding, told) {
        let text = words.reason_of(because);
        let same = |tool: Option<usize>| tool.is_some() && tool == because.tool;
        match groups.iter_mut().find(|(tool, _)| same(*tool)) {
            Some((_, texts)) => texts.push(text),
            None => groups.push((because.tool, vec![text])),
        }
    }
    let tools = groups.iter().filter(|(tool, _)| tool.is_some()).count();
    let mut left = TOOLS_TOLD;
    groups.retain(|(tool, _)| {
        let shown = tool.is_none() || left > 0;
        left = left.saturating_sub(usize::from(tool.is_some()));
        shown
    });
    let line = |(tool, texts): (Option<usize>, Vec<String>)| match tool {
        Some(tool) => format!("{}: {}", words.lot(tool), texts.join("; ")),
        None => texts.join("; "),
    };
    (groups.into_iter().map(line).collect(), tools.saturating_sub(TOOLS_TOLD))
}

/// Findings that are met, with what serves.
pub(super) fn met(words: &Words<'_>, findings: &[&Finding], section: &str) -> Markup {
    html! {
        table.met {
            colgroup { col class="what"; col class="by"; col class="clause"; }
            thead { tr { th scope="col" { "Met" } th scope="col" { "By" } th scope="col" { "Clause" } } }
            tbody {
                @for finding in findings {
                    tr id=(id(section, finding)) {
                        th scope="row" {
                            (base::outcome(Outcome::Met)) " "
                            (shown(&words.title(finding.requirement)))
                        }
                        td { (shown(&words.all_that_serve(finding))) }
                        td { (citation(words, finding.requirement)) }
                    }
                }
            }
        }
    }
}
