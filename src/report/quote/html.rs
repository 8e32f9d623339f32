//! A quote as one self-contained page of HTML, for a browser and for paper:
//! the verdict on the order first, then what each vessel gets, what stays
//! open, the order as it goes to each supplier, and a line to accept it on.
//!
//! Imports `quote` and `model`, and the frame of every page. Decides nothing.

mod order;
mod vessel;

use super::Shown;
use crate::model::finding::Verdict;
use crate::report::render::base::{document, prose, shown as safe};
use crate::report::words::{self, fleet, quote as said};
use maud::{Markup, html};

/// The style of the pages of vessels, and what a quote has besides.
const STYLE: &str =
    concat!(include_str!("../render/style/document.css"), include_str!("quote.css"));

/// The quote as one document.
pub fn html(shown: &Shown<'_>) -> String {
    let title = match shown.customer {
        Some(customer) => shown.locale.quote_title_for(&customer),
        None => shown.locale.quote_title().to_owned(),
    };
    let body = html! {
        main.quote {
            (head(shown, &title))
            (not_read(shown))
            (vessel::all(shown))
            (order::all(shown))
            (measuring(shown))
            (accept(shown))
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
    html! {
        header.rail {
            h1 { (safe(title)) }
            p.headline { (verdict(shown)) " " (prose(&said::headline(shown))) }
        }
        (facts(shown))
        @match said::not_proved(shown) {
            Some(text) => div class="caution loud" { p { b { (shown.locale.quote_not_proved()) } ": " (prose(&text)) } },
            None if shown.quote.orders.is_empty() => {},
            None => p { (prose(&words::pages::sentence(&said::bound(shown)))) },
        }
    }
}

/// The verdict on the order: a sign and words, coloured besides.
fn verdict(shown: &Shown<'_>) -> Markup {
    let (class, sign) = match shown.quote.verdict() {
        Verdict::Ready => ("good", "✓"),
        Verdict::CannotTell => ("open", "?"),
        Verdict::NotReady => ("bad", "✕"),
    };
    html! { span class={ "word " (class) } { (sign) " " (said::verdict(shown).to_lowercase()) } }
}

/// For whom, from whom, when and how much.
fn facts(shown: &Shown<'_>) -> Markup {
    let (quote, locale) = (shown.quote, shown.locale);
    let suppliers = quote.orders.iter().map(|order| &shown.catalogues[order.catalogue]);
    let suppliers: Vec<_> = suppliers.map(said::supplier).collect();
    let holds = quote.holds.map_or(locale.quote_no_last_day().to_owned(), |day| day.to_string());
    html! {
        dl.facts {
            @if let Some(customer) = shown.customer {
                (fact(locale.quote_head_customer(), &html! { (safe(customer)) }))
            }
            @for supplier in &suppliers {
                (fact(locale.quote_head_supplier(), &html! { (safe(supplier)) }))
            }
            (fact(locale.quote_head_order_of(), &prose(&quote.ordered.to_string())))
            @if !quote.orders.is_empty() {
                (fact(locale.quote_head_holds(), &prose(&holds)))
                (fact(
                    locale.quote_head_total_with_tax(),
                    &html! { (shown.money(quote.cost.total)) },
                ))
            }
            @if quote.with_recommended {
                (fact(locale.quote_head_asked(), &html! { (locale.quote_with_recommended()) }))
            }
        }
    }
}

/// A fact under its name.
fn fact(name: &str, what: &Markup) -> Markup {
    html! { div { dt { (name) } dd { (what) } } }
}

/// What could not be read, and records of no vessel.
fn not_read(shown: &Shown<'_>) -> Markup {
    html! {
        @if !shown.refused.is_empty() {
            div class="caution loud" {
                p {
                    b { (shown.locale.quote_not_read(&shown.refused.len())) } "; "
                    (shown.locale.quote_for_other_files()) "."
                }
                ul {
                    @for refusal in shown.refused {
                        @for problem in refusal.to_string().lines() { li { (prose(problem)) } }
                    }
                }
            }
        }
        @for left_out in shown.left_out {
            p.caution {
                b { (words::pages::capital(shown.locale.quote_record_not_laid())) " " } (safe(&left_out.file)) ": "
                (prose(&fleet::left_out(left_out, shown.locale)))
            }
        }
    }
}

/// What each supplier alone would cost, where one was to supply everything.
fn compared(shown: &Shown<'_>) -> Markup {
    let total = shown.locale.quote_head_total();
    html! {
        @if !shown.quote.suppliers.is_empty() {
            section.part {
                h2 { (shown.locale.quote_one_supplier()) }
                table.goods {
                    thead {
                        tr {
                            th scope="col" { (shown.locale.quote_head_supplier()) }
                            th.figure scope="col" { (total) }
                        }
                    }
                    tbody {
                        @for alone in &shown.quote.suppliers {
                            tr class=[alone.taken.then_some("taken")] {
                                td { (prose(&said::alone(shown, alone))) }
                                td.figure data-as=(total) { (shown.money(alone.cost.total)) }
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
                h2 { (shown.locale.quote_before_you_order()) }
                p { (shown.locale.quote_measure_first()) }
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
                h2 { (shown.locale.quote_why()) }
                @if shown.quote.orders.is_empty() { p { (shown.locale.quote_no_basket()) } }
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
fn accept(shown: &Shown<'_>) -> Markup {
    let locale = shown.locale;
    html! {
        @if !shown.quote.orders.is_empty() {
            section.accept {
                h2 { (locale.quote_acceptance()) }
                p { (locale.quote_accept()) }
                div.lines {
                    div { (locale.quote_place_and_day()) }
                    div { (locale.quote_for_the_customer()) }
                    div { (locale.quote_for_the_supplier()) }
                }
            }
        }
    }
}
