//! What is closed on this vessel and what opens it, each once, with a label
//! that the lines of the situations refer to.
//!
//! Imports `model` and the words.

use super::plan::{Closed, Plan, Sheet};
use crate::report::Locale;
use crate::report::render::base::prose;
use crate::report::words::options as said;
use crate::report::words::pages::sentence;
use maud::{Markup, html};

/// What closes better choices on a page; nothing where nothing does.
pub(super) fn table(plan: &Plan<'_>, sheet: &Sheet<'_>) -> Markup {
    let (rows, locale) = (plan.closed_on(sheet), plan.shown.locale);
    html! {
        @if !rows.is_empty() {
            section class="box closed" {
                h3 { (locale.options_card_closed()) }
                ul.rows-of {
                    @for (label, closed) in rows {
                        li { span.label { (label) } div { (row(closed, locale)) } }
                    }
                }
            }
        }
    }
}

fn row(closed: &Closed, locale: Locale) -> Markup {
    html! {
        @for (index, wanting) in closed.wanting.iter().enumerate() {
            @if index > 0 { "; " }
            b { (prose(&wanting.what)) } ": "
            @if wanting.open { (prose(&locale.options_card_not_told(&wanting.why))) }
            @else { (prose(&wanting.why)) }
        }
        ". "
        @if closed.opens.is_empty() {
            (prose(&sentence(closed.never)))
        } @else {
            span.opens { b { (locale.options_card_opens_it()) " " } (prose(&sentence(&said::steps(&closed.opens)))) }
        }
    }
}
