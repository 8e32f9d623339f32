//! What every page of HTML has in common: one self-contained file without
//! network or script, its colours and type, and text made harmless.
//!
//! Imports `model` and the words beside it. Pages themselves live in the
//! modules below; everything that is shown goes through maud, which escapes
//! it, and through `shown`, which makes steering characters visible.

use super::lines::tie_figures;
use crate::model::finding::Verdict;
use crate::model::text::visible;
use crate::report::Locale;
use maud::{DOCTYPE, Markup, PreEscaped, html};

const BASE: &str = include_str!("style/base.css");

/// A whole document. `style` is the page's own, after that of the house.
pub(crate) fn document(title: &str, style: &str, body: &Markup) -> String {
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
pub(crate) fn shown(text: &str) -> String {
    visible(text)
}

/// Running text for a page: steering characters made visible, no figure parted
/// from its unit and no day divided at the end of a line.
pub(crate) fn prose(text: &str) -> Markup {
    let tied = tie_figures(&shown(text));
    let mut parts: Vec<(bool, &str)> = Vec::new();
    let (mut begun, mut at) = (0, 0);
    while let Some(slice) = tied.get(at..) {
        let Some(next) = slice.chars().next() else { break };
        if is_day(slice) && !tied[..at].ends_with(|c: char| c.is_alphanumeric() || c == '-') {
            parts.push((false, &tied[begun..at]));
            parts.push((true, &slice[..DAY]));
            at += DAY;
            begun = at;
        } else {
            at += next.len_utf8();
        }
    }
    parts.push((false, &tied[begun..]));
    html! {
        @for (day, part) in parts {
            @if day { span.day { (part) } } @else { (part) }
        }
    }
}

/// How many bytes a day has, like 2026-03-09.
const DAY: usize = 10;

/// Whether the text begins with a day.
fn is_day(text: &str) -> bool {
    let bytes = text.as_bytes();
    bytes.len() >= DAY
        && bytes[..DAY].iter().enumerate().all(|(index, byte)| match index {
            4 | 7 => *byte == b'-',
            _ => byte.is_ascii_digit(),
        })
        && !bytes.get(DAY).is_some_and(|byte| byte.is_ascii_alphanumeric() || *byte == b'-')
}

/// A heading of that level: a part may stand deeper on one page than on
/// another.
pub(crate) fn heading(level: u8, content: &Markup) -> Markup {
    match level {
        0 | 1 => html! { h1 { (content) } },
        2 => html! { h2 { (content) } },
        3 => html! { h3 { (content) } },
        4 => html! { h4 { (content) } },
        _ => html! { h5 { (content) } },
    }
}

/// A verdict as a sign and a word, coloured besides.
pub(crate) fn verdict(verdict: Verdict, locale: Locale) -> Markup {
    judged(verdict, locale.verdict(verdict))
}

/// A verdict as a sign and words of its own.
pub(crate) fn judged(verdict: Verdict, words: &str) -> Markup {
    let (class, sign) = match verdict {
        Verdict::Ready => ("good", "✓"),
        Verdict::CannotTell => ("open", "?"),
        Verdict::NotReady => ("bad", "✕"),
    };
    html! { span class={ "word " (class) } { (sign) " " (words) } }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_day_is_kept_on_one_line_and_a_figure_with_its_unit() {
        let text = prose("good through 2026-12-09, at least 6 ft 4 1/2 in").into_string();
        assert_eq!(
            text,
            "good through <span class=\"day\">2026-12-09</span>, at least \
             6\u{a0}ft\u{a0}4\u{a0}1/2\u{a0}in"
        );
        assert_eq!(prose("W-2026-12-09").into_string(), "W-2026-12-09");
        assert_eq!(prose("2026-12-091 é").into_string(), "2026-12-091 é");
    }

    #[test]
    fn markup_and_steering_characters_are_shown_and_do_nothing() {
        let text = prose("<b>\u{202e}&").into_string();
        assert_eq!(text, "&lt;b&gt;\\u{202e}&amp;");
    }
}
