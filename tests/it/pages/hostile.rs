//! Names, marks and files that try to be more than text.

use super::{all, audit, text};
use crate::run::kitmuster;
use scraper::Html;

/// Every element that a page of ours may have.
const ELEMENTS: [&str; 44] = [
    "html",
    "head",
    "meta",
    "title",
    "style",
    "body",
    "header",
    "main",
    "section",
    "article",
    "footer",
    "h1",
    "h2",
    "h3",
    "h4",
    "p",
    "ul",
    "ol",
    "li",
    "dl",
    "dt",
    "dd",
    "div",
    "span",
    "b",
    "a",
    "br",
    "code",
    "table",
    "thead",
    "tbody",
    "tr",
    "th",
    "td",
    "colgroup",
    "col",
    "figure",
    "figcaption",
    "svg",
    "desc",
    "text",
    "line",
    "rect",
    "circle",
];

/// Attributes that could load, run or lead away.
const FORBIDDEN: [&str; 8] =
    ["src", "srcset", "style", "action", "formaction", "data", "xlink:href", "srcdoc"];

fn inert(page: &Html) {
    for element in all(page.root_element(), "*") {
        let value = element.value();
        assert!(ELEMENTS.contains(&value.name()), "<{}>", value.name());
        for (name, content) in value.attrs() {
            assert!(!name.starts_with("on"), "{name}={content}");
            assert!(!FORBIDDEN.contains(&name), "{name}={content}");
            if name == "href" {
                assert!(content.starts_with('#'), "{content}");
            }
        }
    }
}

#[test]
fn markup_in_names_marks_and_files_is_shown_and_does_nothing() {
    let page = audit("tests/browser/hostile");
    inert(&page);
    let shown = text(page.root_element());
    for part in [
        "<script>alert(1)</script>",
        "\"><img src=x onerror=alert(1)>",
        "</style></svg><svg onload=alert(1)>",
        "<i>&amp;-1",
        "'\"--><script>alert(2)</script>",
        "<img src=x onerror=alert(5)>",
        "Nobody <script>alert(6)</script>",
    ] {
        assert!(shown.contains(part), "{part}");
    }
    let ran = kitmuster(&["check", "tests/browser/hostile/markup.yaml", "--format", "html"]);
    inert(&Html::parse_document(&ran.stdout));
}

#[test]
fn nothing_on_a_page_turns_the_reading_direction_or_hides() {
    let ran = kitmuster(&["audit", "tests/browser/hostile", "--format", "html"]);
    assert!(ran.stdout.contains("Quay \\u{202e}"), "what turns is shown by its code");
    let hidden = |c: char| {
        (c.is_control() && c != '\n')
            || matches!(c, '\u{200b}'..='\u{200f}' | '\u{202a}'..='\u{202e}')
            || matches!(c, '\u{2060}'..='\u{2069}' | '\u{feff}' | '\u{61c}')
    };
    assert_eq!(ran.stdout.chars().find(|c| hidden(*c)), None);
}

#[test]
fn a_page_asks_for_nothing_and_forbids_everything_but_its_own_style() {
    for typed in [
        vec!["audit", "vessels", "--format", "html"],
        vec!["check", "vessels/marlow-tern.yaml", "--format", "html"],
    ] {
        let text = kitmuster(&typed).stdout;
        for part in ["<script", "http:", "https:", "url(", "@import", "<link", "<img", "<base"] {
            assert!(!text.contains(part), "{part}");
        }
        let page = Html::parse_document(&text);
        inert(&page);
        let policy = all(page.root_element(), "meta[http-equiv='Content-Security-Policy']");
        let policy = policy[0].value().attr("content").unwrap();
        assert_eq!(policy, "default-src 'none'; style-src 'unsafe-inline'");
    }
}
