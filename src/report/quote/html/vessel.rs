//! What each vessel gets of an order and what stays open on it, in HTML.
//!
//! Imports `quote` and `model`. Vessels that need nothing stand in one list.

use super::super::{Shown, finding};
use super::fact;
use crate::model::finding::{Outcome, Verdict};
use crate::quote::{Bought, Unmet, VesselQuote};
use crate::report::Locale;
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
                h2 { (shown.locale.quote_none_needed(&brief.len())) }
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
    let (after, locale) = (&vessel.after, shown.locale);
    html! {
        section.part {
            div.head {
                h2 { (safe(&said::vessel(vessel))) " " (base::verdict(after.verdict, shown.locale)) }
                dl.facts {
                    (fact(locale.quote_head_leaves(), &prose(&said::leaves(vessel, locale))))
                    @if let Some(before) = said::before(vessel, locale) {
                        (fact(locale.quote_head_verdict(), &html! { (safe(&before)) }))
                    }
                    (fact(locale.quote_head_file(), &html! { (safe(&vessel.file)) }))
                    (fact(locale.quote_head_judged_by(), &ids(vessel)))
                }
            }
            @if let Some(note) = said::departure(shown, index, vessel) { (caution(&note, locale)) }
            @for notice in &after.notices { (caution(&words::notice(notice, locale), locale)) }
            @if !vessel.lines.is_empty() { (goods(shown, vessel)) }
            @for judgement in after.judgements.iter().filter(|judged| !judged.profile.encoded) {
                div class="finding unknown" {
                    p {
                        (base::outcome(Outcome::CannotTell)) " " code { (safe(&judgement.profile.id)) }
                        ": " (locale.quote_not_encoded())
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

fn caution(note: &str, locale: Locale) -> Markup {
    html! { p.caution { b { (locale.sheet_note()) " " } (prose(note)) } }
}

/// What is bought for it.
fn goods(shown: &Shown<'_>, vessel: &VesselQuote) -> Markup {
    let locale = shown.locale;
    html! {
        table class="goods bought" {
            colgroup { col.number; col.what; col.for; col.when; col.share; }
            thead {
                tr {
                    th scope="col" { (locale.quote_head_number()) }
                    th scope="col" { (locale.quote_head_what()) }
                    th scope="col" { (locale.quote_head_for_clause()) }
                    th scope="col" { (locale.quote_head_delivery()) }
                    th.figure scope="col" { (locale.quote_head_before_tax()) }
                }
            }
            tbody { @for line in &vessel.lines { (bought(shown, vessel, line)) } }
        }
    }
}

fn bought(shown: &Shown<'_>, vessel: &VesselQuote, line: &Bought) -> Markup {
    let (item, locale) = (shown.item(line.offer), shown.locale);
    html! {
        tr {
            th scope="row" { (safe(&item.number)) }
            td {
                (prose(&item.description))
                p.soft { (prose(&said::pieces(shown, vessel, line))) }
            }
            td data-as=(locale.quote_head_for()) {
                ul {
                    @for cured in &line.cures {
                        li { (prose(&said::asked(&vessel.after, *cured, locale))) }
                    }
                }
            }
            td data-as=(locale.quote_head_delivery()) { (prose(&said::arrival(shown, vessel, line))) }
            td.figure data-as=(locale.quote_head_before_tax()) { (shown.money(line.share)) }
        }
    }
}

/// What stays open, the nearest offer and what to do.
fn open(shown: &Shown<'_>, vessel: &VesselQuote, unmet: &Unmet) -> Markup {
    let outcome = finding(&vessel.after, unmet.finding).map(|finding| finding.outcome);
    let outcome = outcome.unwrap_or(Outcome::NotMet);
    let class = if outcome == Outcome::CannotTell { "finding unknown" } else { "finding not-met" };
    let (told, locale) = (said::open(shown, vessel, unmet), shown.locale);
    html! {
        div class=(class) {
            p {
                (base::outcome(outcome)) " " (locale.quote_stays_open()) " "
                b { (prose(&said::asked(&vessel.after, unmet.finding, locale))) }
            }
            ul {
                @for why in &told.why { li { (prose(why)) } }
                li { (prose(&told.offer)) }
            }
            @if let Some(remedy) = &told.remedy { p { b { (locale.sheet_do()) " " } (prose(remedy)) } }
        }
    }
}
