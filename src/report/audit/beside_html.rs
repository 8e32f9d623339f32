//! What stands in the page of HTML beside the audit itself: what changed since
//! an earlier audit, and what a draft would do.
//!
//! Imports `fleet` and below, and the lines of the terminal page, so that both
//! say the same. Decides nothing.

use super::Fleet;
use super::compare::{Line, is_told, lines};
use super::draft::beside;
use crate::fleet::compare::{Compared, Comparison, Fate};
use crate::fleet::draft::{DraftFate, Drafted, UnderDraft};
use crate::report::html::{self as base, prose};
use crate::report::words::compare;
use maud::{Markup, html};

/// The most vessels that a section lists; the JSON has them all.
const MOST_LISTED: usize = 300;

/// That a list goes on, and where it is whole.
fn more(all: usize) -> Markup {
    html! {
        @if let Some(more) = all.checked_sub(MOST_LISTED).filter(|more| *more > 0) {
            p { "And " (more) " more; the JSON of the audit has them all." }
        }
    }
}

/// Both sections, as far as they were asked for; else nothing.
pub(super) fn sections(of: &Fleet<'_>) -> Markup {
    html! {
        @if let Some(comparison) = of.against { (against(of, comparison)) }
        @if let Some(drafted) = of.draft { (draft(of, drafted)) }
    }
}

/// What changed since an earlier audit.
pub(super) fn against(of: &Fleet<'_>, comparison: &Comparison) -> Markup {
    let by = comparison.auditor.as_ref().map(|name| format!(" by {name}")).unwrap_or_default();
    let listed: Vec<_> = comparison.vessels.iter().filter(|vessel| is_told(vessel)).collect();
    html! {
        h2 id="against" {
            (prose(&format!("Compared with the audit of {}{by}", comparison.then)))
        }
        p { (prose(&compare::tally(&comparison.tally()))) }
        p { (prose(&compare::vessels(comparison))) "." }
        @for reservation in compare::reservations(comparison) { p { (prose(&reservation)) } }
        @for vessel in listed.iter().take(MOST_LISTED) { (compared(of, vessel)) }
        (more(listed.len()))
        (alone(comparison))
    }
}

fn compared(of: &Fleet<'_>, vessel: &Compared) -> Markup {
    let then = (vessel.verdict_then != vessel.verdict_now).then_some(vessel.verdict_then);
    html! {
        h3 {
            (prose(&vessel.name)) ": "
            @if let Some(then) = then { (base::verdict(then)) " → " }
            (base::verdict(vessel.verdict_now))
            @if then.is_none() { ", as before" }
        }
        @for told in compare::records_gone(vessel) {
            p { span class="word bad" { "✕ " (prose(&told)) } }
        }
        @if let Some(refusal) = &vessel.refused {
            @let why = refusal.problems.first().map(ToString::to_string).unwrap_or_default();
            p { (prose(&format!("Its old file is refused by today's rules: {why}"))) }
        }
        ul.plain { @for line in lines(of, vessel) { (told(&line)) } }
    }
}

fn told(line: &Line) -> Markup {
    let (class, sign) = match line.fate {
        Fate::Opened => ("bad", "✕"),
        Fate::StillOpen => ("open", "–"),
        Fate::Closed if line.unproved => ("open", "?"),
        Fate::Closed | Fate::Passing => ("good", "✓"),
    };
    html! {
        li {
            span class={ "word " (class) } { (sign) } " " (prose(&line.text))
            @if let Some(way) = &line.way { br; span.soft { (prose(&format!("on the way: {way}"))) } }
        }
    }
}

fn alone(comparison: &Comparison) -> Markup {
    html! {
        @if !comparison.gone.is_empty() {
            h3 { "Gone" }
            ul {
                @for gone in &comparison.gone {
                    @let told = format!("{}: {}; then ", gone.name, compare::gone(&gone.why));
                    li { (prose(&told)) (base::verdict(gone.verdict)) }
                }
            }
        }
        @if !comparison.newcomers.is_empty() {
            h3 { "New" }
            ul {
                @for new in &comparison.newcomers {
                    li {
                        (prose(&new.name)) ": " (base::verdict(new.verdict))
                        (prose(&compare::refused_then(new)))
                    }
                }
            }
        }
        @if !comparison.unclear.is_empty() {
            h3 { "Not compared: which is which cannot be told" }
            ul { @for one in &comparison.unclear { li { (prose(&compare::unclear(one))) } } }
        }
    }
}

/// What a draft would do.
pub(super) fn draft(of: &Fleet<'_>, drafted: &Drafted) -> Markup {
    let told = drafted.vessels.iter();
    let mut told: Vec<_> = told.filter(|v| !v.changes.is_empty() || v.then != v.now).collect();
    told.sort_by_key(|vessel| vessel.fate);
    html! {
        h2 id="draft" { (prose(&format!("Under the draft {}", drafted.profile.id))) }
        p { (prose(&beside(drafted))) }
        p { (prose(&compare::draft_tally(&drafted.tally()))) "." }
        @for vessel in told.iter().take(MOST_LISTED) { (under(of, vessel)) }
        (more(told.len()))
    }
}

fn under(of: &Fleet<'_>, vessel: &UnderDraft) -> Markup {
    let (class, sign) = match vessel.fate {
        DraftFate::Falls => ("bad", "✕"),
        DraftFate::Rises => ("good", "✓"),
        DraftFate::CannotTell => ("open", "?"),
        DraftFate::Released => ("soft", "○"),
        DraftFate::Stays => ("soft", "="),
    };
    html! {
        h3 {
            (prose(&vessel.vessel.name)) ": "
            span class={ "word " (class) } {
                (sign) " " (compare::draft_fate(vessel.fate).to_lowercase())
            }
            ", " (compare::verdict(vessel.then)) " → " (compare::verdict(vessel.now))
        }
        @if let Some(bound) = compare::bound(vessel.bound) { p { (bound) } }
        ul { @for one in &vessel.changes { li { (prose(&compare::draft_change(of, vessel, one))) } } }
    }
}
