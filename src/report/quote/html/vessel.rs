//! What each vessel gets of an order and what stays open on it, in HTML.
//!
//! Imports `quote` and `model`. Vessels that need nothing stand in one list.

use super::super::{Shown, finding};
use crate::model::finding::{Outcome, Verdict};
use crate::quote::{Bought, Unmet, VesselQuote};
use crate::report::render::base::{self, prose, shown as safe};
use crate::report::words::{self, quote as said};
use maud::{Markup, html};

/// All vessels: those with something to tell in their order, then the rest.
pub(super) fn all(shown: &Shown<'_>) -> Markup {
    let vessels = shown.quote.vessels.iter().enumerate();
    let (long, brief): (Vec<_>, Vec<_>) =
        vessels.partition(|(index, vessel)| said::is_long(shown, *index, vessel));
    html! {
        @for (index, vessel) in long { (one(shown, index, vessel)) }
        @if !brief.is_empty() {
            section.part {
                h2 { "Nothing needed (" (brief.len()) ")" }
                ul.ready-as-is {
                    @for (_, vessel) in &brief {
                        li { (base::verdict(Verdict::Ready, shown.locale)) " " (safe(&said::vessel(vessel))) }
                    }
                }
            }
        }
    }
}

fn one(shown: &Shown<'_>, index: usize, vessel: &VesselQuote) -> Markup {
    let after = &vessel.after;
    html! {
        section.part {
            div.head {
                h2 { (safe(&said::vessel(vessel))) " " (base::verdict(after.verdict, shown.locale)) }
                dl.facts {
                    div { dt { "Leaves" } dd { (prose(&said::leaves(vessel))) } }
                    @if let Some(before) = said::before(vessel, shown.locale) {
                        div { dt { "Verdict" } dd { (safe(&before)) } }
                    }
                    div { dt { "File" } dd { (safe(&vessel.file)) } }
                    div { dt { "Judged by" } dd { (ids(vessel)) } }
                }
            }
            @if let Some(note) = said::departure(shown, index, vessel) { (caution(&note)) }
            @for notice in &after.notices { (caution(&words::notice(notice, shown.locale))) }
            @if !vessel.lines.is_empty() { (goods(shown, vessel)) }
            @for judgement in after.judgements.iter().filter(|judged| !judged.profile.encoded) {
                div class="finding unknown" {
                    p {
                        (base::outcome(Outcome::CannotTell)) " " code { (safe(&judgement.profile.id)) }
                        ": " (said::NOT_ENCODED)
                    }
                }
            }
            @for unmet in &vessel.unmet { (open(shown, vessel, unmet)) }
        }
    }
}

/// The profiles by which it is judged.
fn ids(vessel: &VesselQuote) -> Markup {
    html! {
        @for (index, judgement) in vessel.after.judgements.iter().enumerate() {
            @if index > 0 { ", " }
            code { (safe(&judgement.profile.id)) }
        }
    }
}

fn caution(note: &str) -> Markup {
    html! { p.caution { b { "Note: " } (prose(note)) } }
}

/// What is bought for it.
fn goods(shown: &Shown<'_>, vessel: &VesselQuote) -> Markup {
    html! {
        table class="goods bought" {
            colgroup { col.number; col.what; col.for; col.when; col.share; }
            thead {
                tr {
                    th scope="col" { "Number" }
                    th scope="col" { "What" }
                    th scope="col" { "For (clause)" }
                    th scope="col" { "Delivery" }
                    th.figure scope="col" { "Before tax" }
                }
            }
            tbody { @for line in &vessel.lines { (bought(shown, vessel, line)) } }
        }
    }
}

fn bought(shown: &Shown<'_>, vessel: &VesselQuote, line: &Bought) -> Markup {
    let item = shown.item(line.offer);
    html! {
        tr {
            th scope="row" { (safe(&item.number)) }
            td {
                (prose(&item.description))
                p.soft { (prose(&said::pieces(shown, vessel, line))) }
            }
            td data-as="For" {
                ul { @for cured in &line.cures { li { (prose(&said::asked(&vessel.after, *cured))) } } }
            }
            td data-as="Delivery" { (prose(&said::arrival(shown, vessel, line))) }
            td.figure data-as="Before tax" { (shown.money(line.share)) }
        }
    }
}

/// What stays open, the nearest offer and what to do.
fn open(shown: &Shown<'_>, vessel: &VesselQuote, unmet: &Unmet) -> Markup {
    let outcome = finding(&vessel.after, unmet.finding).map(|finding| finding.outcome);
    let outcome = outcome.unwrap_or(Outcome::NotMet);
    let class = if outcome == Outcome::CannotTell { "finding unknown" } else { "finding not-met" };
    let told = said::open(shown, vessel, unmet);
    html! {
        div class=(class) {
            p {
                (base::outcome(outcome)) " stays open: "
                b { (prose(&said::asked(&vessel.after, unmet.finding))) }
            }
            ul {
                @for why in &told.why { li { (prose(why)) } }
                li { (prose(&told.offer)) }
            }
            @if let Some(remedy) = &told.remedy { p { b { "Do: " } (prose(remedy)) } }
        }
    }
}
