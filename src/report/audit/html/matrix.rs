//! The fleet at a glance: vessel by requirement, one table for each edition.
//!
//! Imports `fleet`, `model` and the words. A cell is a sign and a word;
//! colour only repeats them.

use super::Page;
use crate::model::check::Judgement;
use crate::model::finding::Outcome;
use crate::model::profile::{Level, Profile};
use crate::report::html::{self as base, shown};
use maud::{Markup, html};

/// The most requirements beside each other: more would not fit a sheet of
/// paper.
const ACROSS: usize = 18;

/// The tables.
pub(super) fn matrix(page: &Page<'_>) -> Markup {
    html! {
        section id="fleet" {
            h2 { "Vessel by requirement" }
            @for profile in &page.profiles {
                (edition(page, profile))
            }
            @if page.profiles.is_empty() { p { "No profile judged a vessel." } }
        }
    }
}

fn edition(page: &Page<'_>, profile: &Profile) -> Markup {
    html! {
        section class="edition" {
            h3 { (shown(&profile.title.to_string())) }
            p.soft {
                (shown(&profile.source)) ", edition " (shown(&profile.edition)) "; "
                code { (shown(&profile.id)) }
            }
            @if profile.encoded {
                @for (number, part) in parts(profile).iter().enumerate() {
                    (table(page, profile, part, number))
                }
            } @else {
                p { (base::outcome(Outcome::CannotTell)) " " (page.locale.stub()) }
                ul { @for (index, _) in page.judged_by(profile) { li { (name(page, index)) } } }
            }
        }
    }
}

/// The requirements in parts of about equal width.
fn parts(profile: &Profile) -> Vec<Vec<usize>> {
    let all: Vec<usize> = (0..profile.requirements.len()).collect();
    let parts = all.len().div_ceil(ACROSS).max(1);
    all.chunks(all.len().div_ceil(parts).max(1)).map(<[usize]>::to_vec).collect()
}

fn table(page: &Page<'_>, profile: &Profile, part: &[usize], number: usize) -> Markup {
    let name_of_it = format!("Vessel by requirement, {}, part {}", profile.id, number + 1);
    html! {
        div.scroll tabindex="0" role="region" aria-label=(shown(&name_of_it)) {
            table.matrix {
                thead {
                    tr {
                        th scope="col" { "Vessel" }
                        @for index in part { (column(profile, *index)) }
                    }
                }
                tbody {
                    @for (index, judgement) in page.judged_by(profile) {
                        tr {
                            th scope="row" { (name(page, index)) }
                            @for requirement in part { (cell(judgement, *requirement)) }
                        }
                    }
                }
            }
        }
        @if page.judged_by(profile).any(|(_, judgement)| part.iter().any(|r| of(judgement, *r).is_none())) {
            p.soft { "– " (page.locale.not_asked()) "." }
        }
    }
}

fn column(profile: &Profile, index: usize) -> Markup {
    html! {
        th scope="col" {
            @if let Some(requirement) = profile.requirements.get(index) {
                span {
                    (shown(&requirement.title.to_string()))
                    @if requirement.level == Level::Recommended { " (advice)" }
                }
            }
        }
    }
}

/// The vessel's name, leading to its page if it has one.
fn name(page: &Page<'_>, index: usize) -> Markup {
    let judged = page.judged[index];
    let name = shown(&judged.check.vessel.name);
    html! {
        @if page.has_own(judged) { a href={ "#" (Page::id(index)) } { (name) } } @else { (name) }
    }
}

fn of(judgement: &Judgement, requirement: usize) -> Option<Outcome> {
    let finding = judgement.findings.iter().find(|f| f.requirement == requirement);
    finding.map(|finding| finding.outcome)
}

fn cell(judgement: &Judgement, requirement: usize) -> Markup {
    match of(judgement, requirement) {
        None => html! { td.none { b { "–" } " not asked" } },
        Some(Outcome::Met) => html! { td.good { b { "✓" } " met" } },
        Some(Outcome::CannotTell) => html! { td.open { b { "?" } " can't tell" } },
        Some(Outcome::NotMet) => html! { td.bad { b { "✕" } " not met" } },
    }
}
