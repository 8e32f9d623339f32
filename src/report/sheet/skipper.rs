//! The skipper's checklist: what to do before leaving, what lapses at sea,
//! what to look at by eye, and what the list proves already.
//!
//! Imports `model` and the words beside it. What is to be done was found by
//! the engine.

use super::digest::Digest;
use super::inspector::foot;
use super::rows::{self, Thing};
use super::{STYLE, editions, notices, stubs};
use crate::model::check::{Check, Judgement};
use crate::model::finding::{Deed, Outcome, ReadyUntil, WayToReady};
use crate::model::profile::Level;
use crate::model::reason::Reason;
use crate::model::vessel::Tool;
use crate::report::Subject;
use crate::report::html::{document, shown, verdict};
use crate::report::words::{Words, sheet as said};
use maud::{Markup, html};

/// The checklist as one document of HTML.
pub(super) fn page(subject: &Subject<'_>, digest: &Digest) -> String {
    let check = subject.check;
    let vessel = &check.vessel;
    let list = List { subject };
    let body = html! {
        main.sheet.large {
            h1.rail { "Before you sail: " (shown(&vessel.name)) " " (verdict(check.verdict)) }
            p {
                (shown(&said::vessel_line(vessel).join(", "))) "; trip " (check.asked.departure)
                " to " (check.asked.back) "; sheet " b.digest { (digest) }
            }
            (editions(check))
            (notices(&check.notices))
            (stubs(subject))
            (section("Do before leaving", &list.deeds(), said::NOTHING_TO_DO))
            @if list.measures() { p { (said::TURNS_OUT_WELL) } }
            (section("Runs out on this trip", &list.lapses(), said::NOTHING_LAPSES))
            (list.by_eye())
            (list.proved())
            (foot())
        }
    };
    document(&format!("Before you sail, {}", vessel.name), STYLE, &body)
}

/// Things to do, each with a box; or that there are none.
fn section(heading: &str, jobs: &[(String, String)], none: &str) -> Markup {
    html! {
        section {
            h2 { (heading) }
            @if jobs.is_empty() { p { (none) } } @else {
                ul.jobs {
                    @for (job, why) in jobs {
                        li {
                            span.square {}
                            span { b { (shown(job)) } @if !why.is_empty() { " - " (shown(why)) } }
                        }
                    }
                }
            }
        }
    }
}

struct List<'a> {
    subject: &'a Subject<'a>,
}

impl<'a> List<'a> {
    fn check(&self) -> &'a Check {
        self.subject.check
    }

    fn encoded(&self) -> impl Iterator<Item = (&'a Judgement, Words<'a>)> {
        let check = self.check();
        check.judgements.iter().filter(|judgement| judgement.profile.encoded).map(|judgement| {
            let words = Words {
                vocabulary: self.subject.vocabulary,
                vessel: &check.vessel,
                profile: &judgement.profile,
                units: self.subject.units,
            };
            (judgement, words)
        })
    }

    /// The steps of the shortest way under each profile, each once.
    fn deeds(&self) -> Vec<(String, String)> {
        let mut jobs: Vec<(String, String)> = Vec::new();
        for (judgement, words) in self.encoded() {
            let steps = match judgement.inverses.as_ref().map(|inverses| &inverses.way) {
                Some(WayToReady::Steps { steps, .. }) => steps.as_slice(),
                Some(WayToReady::None) => {
                    jobs.push((said::NO_WAY.to_owned(), judgement.profile.title.to_string()));
                    continue;
                }
                Some(WayToReady::Already) | None => continue,
            };
            for step in steps {
                let job = words.step(step, words.freeboard_for(judgement, step.requirement));
                let clauses = std::iter::once(&step.requirement).chain(&step.also);
                let clauses: Vec<_> = clauses
                    .filter_map(|index| words.requirement(*index))
                    .map(|requirement| format!("{} ({})", requirement.title, requirement.clause))
                    .collect();
                let why = format!("for {}", clauses.join("; "));
                match jobs.iter_mut().find(|(known, _)| *known == job) {
                    Some((_, known)) if !known.contains(&why) => {
                        known.push_str(&format!("; {why}"));
                    }
                    Some(_) => {}
                    None => jobs.push((job, why)),
                }
            }
        }
        jobs
    }

    /// Whether a step is to measure or to look something up.
    fn measures(&self) -> bool {
        let ways = self.encoded().filter_map(|(judgement, _)| judgement.inverses.as_ref());
        ways.map(|inverses| &inverses.way).any(|way| match way {
            WayToReady::Steps { steps, .. } => steps.iter().any(|step| step.deed == Deed::Measure),
            WayToReady::Already | WayToReady::None => false,
        })
    }

    /// What lapses between departure and return.
    fn lapses(&self) -> Vec<(String, String)> {
        let mut jobs: Vec<(String, String)> = Vec::new();
        for (judgement, words) in self.encoded() {
            for finding in &judgement.findings {
                for because in &finding.reasons {
                    if !matches!(because.reason, Reason::LapsesDuringTrip { .. }) {
                        continue;
                    }
                    let mark = because.tool.map_or("", |tool| words.lot(tool));
                    let job = (
                        format!("{mark}: {}", words.reason(&because.reason)),
                        format!("for {}", words.title(finding.requirement)),
                    );
                    if !jobs.contains(&job) {
                        jobs.push(job);
                    }
                }
            }
            if let ReadyUntil::Day(day) = judgement.ready_until
                && day < self.check().asked.back
            {
                jobs.push((format!("ready until {}", words.ready_until(judgement)), String::new()));
            }
        }
        jobs
    }

    /// Every tool that a rule asks for, where it is stowed.
    fn by_eye(&self) -> Markup {
        let groups = rows::groups(self.subject);
        let tools = |group: &rows::Group<'a>| -> Vec<&'a Tool> {
            let asked = group.rows.iter().filter(|row| !row.serves.is_empty());
            asked
                .filter_map(|row| match row.thing {
                    Thing::Tool(tool) => Some(tool),
                    _ => None,
                })
                .collect()
        };
        html! {
            section {
                h2 { "Look at by eye" }
                p { (said::BY_EYE) }
                @for group in &groups {
                    @let tools = tools(group);
                    @if !tools.is_empty() {
                        div.byeye {
                            i { (shown(&group.place)) ":" }
                            @for tool in tools {
                                span.yesno {
                                    span.square {} b { (shown(&tool.mark)) } " "
                                    (shown(&self.subject.vocabulary.kind(tool.kind).name))
                                }
                            }
                        }
                    }
                }
            }
        }
    }

    /// What the list proves, ticked, with what proves it.
    fn proved(&self) -> Markup {
        html! {
            section {
                h2 { "Proved by the list" }
                @for (judgement, words) in self.encoded() {
                    @let last = judgement.days.until.unwrap_or(self.check().asked.back);
                    ul.proved {
                        @for finding in judgement.findings.iter().filter(|f| f.outcome == Outcome::Met) {
                            @if let Some(requirement) = words.requirement(finding.requirement) {
                                li {
                                    "☑ " b { "proved" } ": " (shown(&requirement.title.to_string()))
                                    " (" (shown(&requirement.clause)) ")"
                                    @if requirement.level == Level::Recommended { ", recommended" }
                                    @let by = words.all_that_serve(finding, last);
                                    @if !by.is_empty() { ": by " (shown(&by)) }
                                }
                            }
                        }
                    }
                }
            }
        }
    }
}
