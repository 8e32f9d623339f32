//! What every page of HTML has in common: one self-contained file without
//! network or script, its colours and type, and text made harmless.
//!
//! Imports `model` and the words beside it. Pages themselves live in the
//! modules below; everything that is shown goes through maud, which escapes
//! it, and through `shown`, which makes steering characters visible.

use crate::model::finding::{Outcome, Verdict};
use crate::model::text::visible;
use crate::report::words;
use maud::{DOCTYPE, Markup, PreEscaped, html};

const BASE: &str = include_str!("html/base.css");

/// A whole document. `style` is the page's own, after that of the house.
pub(super) fn document(title: &str, style: &str, body: &Markup) -> String {
    let page = html! {
        (DOCTYPE)
        html lang="en" {
            head {
                meta charset="utf-8";
                meta name="viewport" content="width=device-width, initial-scale=1";
                meta http-equiv="Content-Security-Policy" content="default-src 'none'; style-src 'unsafe-inline'";
                meta name="color-scheme" content="light dark";
                title { (shown(title)) }
                style { (PreEscaped(BASE)) (PreEscaped(style)) }
            }
            body { (body) }
        }
    };
    let mut text = page.into_string();
    text.push('\n');
    text
}

/// Text for a page: steering characters made visible. Escaping is maud's.
pub(super) fn shown(text: &str) -> String {
    visible(text)
}

/// A verdict as a sign and a word, coloured besides.
pub(super) fn verdict(verdict: Verdict) -> Markup {
    let (class, sign) = match verdict {
        Verdict::Ready => ("good", "✓"),
        Verdict::CannotTell => ("open", "?"),
        Verdict::NotReady => ("bad", "✕"),
    };
    html! { span class={ "word " (class) } { (sign) " " (words::verdict(verdict).to_lowercase()) } }
}

/// An outcome as a sign and a word, coloured besides.
pub(super) fn outcome(outcome: Outcome) -> Markup {
    let (class, sign, word) = match outcome {
        Outcome::Met => ("good", "✓", "met"),
        Outcome::CannotTell => ("open", "?", "can't tell"),
        Outcome::NotMet => ("bad", "✕", "not met"),
    };
    html! { span class={ "word " (class) } { (sign) " " (word) } }
}
