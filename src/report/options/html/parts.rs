//! What boxes and cards of the wall card have in common: lines with their
//! sources, when to stop, and the foot of a page.
//!
//! Imports `model` and the words.

use crate::model::technique::{Cited, Line, Technique};
use crate::report::Locale;
use crate::report::options::Shown;
use crate::report::profiles::verified;
use crate::report::render::base::{prose, shown as safe};
use crate::report::words::pages::sentence;
use maud::{Markup, html};

/// When to stop with a technique.
pub(super) fn stop_when(technique: &Technique, locale: Locale) -> Markup {
    html! {
        b { (locale.options_card_stop_when()) " " }
        @for stop in &technique.stop { (prose(&sentence(&stop.to_string()))) " " }
    }
}

/// Lines of a technique, each with its source.
pub(super) fn lines(class: &str, lines: &[Line], locale: Locale) -> Markup {
    html! {
        @for line in lines {
            p class=(class) { (cited_line(line, locale)) }
        }
    }
}

/// A line with its source.
pub(super) fn cited_line(line: &Line, locale: Locale) -> Markup {
    html! {
        (prose(&line.says.to_string()))
        @if let Some(source) = &line.cited { " " span.small { "(" (prose(&cited(source, locale))) ")" } }
    }
}

/// A source and how it was verified.
pub(super) fn cited(cited: &Cited, locale: Locale) -> String {
    format!("{}; {}", cited.clause, verified(cited.verified, locale))
}

/// What stands at the foot of every page: whose it is, the cautions, and what
/// the card is not.
pub(super) fn foot(shown: &Shown<'_>, page: &str) -> Markup {
    let practice = shown.practice;
    html! {
        div.foot {
            div.mind {
                @if !practice.cautions.is_empty() {
                    p { b { (shown.locale.options_card_mind()) " " }
                        @for caution in &practice.cautions { (prose(&caution.to_string())) " " }
                    }
                }
                p.small {
                    b { (safe(&shown.options.vessel.name)) ", " (prose(page)) ". " }
                    (shown.locale.options_foot())
                }
            }
        }
    }
}
