//! A quote as one self-contained page of HTML, for a browser and for paper:
//! the verdict on the order first, then what each vessel gets, what stays
//! open, the order as it goes to each supplier, and a line to accept it on.
//!
//! Imports `quote` and `model`, and the frame of every page. Decides nothing.

mod order;
mod vessel;

use super::Shown;
use crate::model::finding::Verdict;
use crate::quote::Quote;
use crate::report::render::base::{document, prose, shown as safe};
use crate::report::words::{self, fleet, quote as said};
use maud::{Markup, html};

/// The style of the pages of vessels, and what a quote has besides.
const STYLE: &str =
    concat!(include_str!("../render/style/document.css"), include_str!("quote.css"));

/// The quote as one document.
pub fn html(shown: &Shown<'_>) -> String {
    let title = match shown.customer {
        Some(customer) => format!("Quote for {customer}"),
        None => "Quote".to_owned(),
    };
    let body = html! {
        main.quote {
            (head(shown, &title))
            (not_read(shown))
            (vessel::all(shown))
            (order::all(shown))
            (measuring(shown))
            (accept(shown.quote))
            (compared(shown))
            (why(shown))
            footer {
                @for text in said::foot(shown) { p { (text) } }
            }
        }
    };
    document(&title, STYLE, &body)
}

fn head(shown: &Shown<'_>, title: &str) -> Markup {
    let quote = shown.quote;
    html! {
        header.rail {
            h1 { (safe(title)) }
            p.headline { (verdict(quote)) " " (prose(&said::headline(shown))) }
        }
        (facts(shown))
        @match said::not_proved(shown) {
            Some(text) => div class="caution loud" { p { b { (said::NOT_PROVED) } ": " (prose(&text)) } },
            None if quote.orders.is_empty() => {},
            None => p { (prose(&words::pages::sentence(&said::bound(shown)))) },
        }
    }
}

/// The verdict on the order: a sign and words, coloured besides.
fn verdict(quote: &Quote) -> Markup {
    let (class, sign) = match quote.verdict() {
        Verdict::Ready => ("good", "✓"),
        Verdict::CannotTell => ("open", "?"),
        Verdict::NotReady => ("bad", "✕"),
    };
    html! { span class={ "word " (class) } { (sign) " " (said::verdict(quote).to_lowercase()) } }
}

/// For whom, from whom, when and how much.
fn facts(shown: &Shown<'_>) -> Markup {
    let quote = shown.quote;
    let suppliers = quote.orders.iter().map(|order| &shown.catalogues[order.catalogue]);
    let suppliers: Vec<_> = suppliers.map(said::supplier).collect();
    let holds = quote.holds.map_or(said::NO_END.to_owned(), |day| day.to_string());
    html! {
        dl.facts {
            @if let Some(customer) = shown.customer { div { dt { "Customer" } dd { (safe(customer)) } } }
            @for supplier in &suppliers { div { dt { "Supplier" } dd { (safe(supplier)) } } }
            div { dt { "Order of" } dd { (prose(&quote.ordered.to_string())) } }
            @if !quote.orders.is_empty() {
                div { dt { "Prices hold until" } dd { (prose(&holds)) } }
                div { dt { "Total with tax" } dd { (shown.money(quote.cost.total)) } }
            }
            @if quote.with_recommended { div { dt { "Asked" } dd { (said::WITH_RECOMMENDED) } } }
        }
    }
}

/// What could not be read, and records of no vessel.
fn not_read(shown: &Shown<'_>) -> Markup {
    html! {
        @if !shown.refused.is_empty() {
            div class="caution loud" {
                p { b { "Not read (" (shown.refused.len()) ")" } "; the quote is for the other files." }
                ul {
                    @for refusal in shown.refused {
                        @for problem in refusal.to_string().lines() { li { (prose(problem)) } }
                    }
                }
            }
        }
        @for left_out in shown.left_out {
            p.caution {
                b { "Record not laid over: " } (safe(&left_out.file)) ": "
                (prose(&fleet::left_out(left_out, shown.locale)))
            }
        }
    }
}

/// What each supplier alone would cost, where one was to supply everything.
fn compared(shown: &Shown<'_>) -> Markup {
    html! {
        @if !shown.quote.suppliers.is_empty() {
            section.part {
                h2 { "Everything from one supplier" }
                table.goods {
                    thead { tr { th scope="col" { "Supplier" } th.figure scope="col" { "Total" } } }
                    tbody {
                        @for alone in &shown.quote.suppliers {
                            tr class=[alone.taken.then_some("taken")] {
                                td { (prose(&said::alone(shown, alone))) }
                                td.figure data-as="Total" { (shown.money(alone.cost.total)) }
                            }
                        }
                    }
                }
            }
        }
    }
}

fn measuring(shown: &Shown<'_>) -> Markup {
    html! {
        @if let Some(measuring) = &shown.quote.measuring {
            section class="part caution" {
                h2 { "Before you order" }
                p { (said::MEASURE) }
                ul { @for tool in said::to_measure(shown, measuring) { li { (prose(&tool)) } } }
                p { (prose(&said::measuring(shown, measuring))) }
            }
        }
    }
}

/// Why this basket, where that was asked.
fn why(shown: &Shown<'_>) -> Markup {
    html! {
        @if let Some(explained) = &shown.quote.explained {
            section.part {
                h2 { "Why this basket" }
                @if shown.quote.orders.is_empty() { p { (said::NO_BASKET) } }
                ul {
                    @for reasons in said::reasons(shown) {
                        li {
                            b { (prose(&reasons.item)) }
                            @for what in &reasons.what { p { (prose(what)) } }
                        }
                    }
                }
                @for text in said::otherwise(shown, explained) { p { (prose(&text)) } }
            }
        }
    }
}

/// Where the order is accepted in writing.
fn accept(quote: &Quote) -> Markup {
    html! {
        @if !quote.orders.is_empty() {
            section.accept {
                h2 { "Acceptance" }
                p { (said::ACCEPT) }
                div.lines { @for what in said::SIGNED { div { (what) } } }
            }
        }
    }
}
