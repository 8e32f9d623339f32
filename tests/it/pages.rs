//! The pages of HTML, made by the real command and read as a browser reads
//! them. What only a browser can tell (type, overlap, paper) is looked at in
//! `tests/browser/`.

mod fleet;
mod hostile;
mod pictures;

use crate::run::kitmuster;
use scraper::{ElementRef, Html, Selector};
use serde_json::Value;

/// The day of every audit here.
const DAY: &str = "2026-11-25";

/// The audit of a folder as HTML.
fn audit(folder: &str) -> Html {
    let ran = kitmuster(&["audit", folder, "--date", DAY, "--format", "html"]);
    assert!(ran.stdout.starts_with("<!DOCTYPE html>"), "{}{}", ran.stdout, ran.stderr);
    let page = Html::parse_document(&ran.stdout);
    assert!(page.errors.is_empty(), "{:?}", page.errors);
    page
}

/// The same audit, vessel by vessel, each with its whole check as JSON.
fn checks(page: &Html) -> Vec<(ElementRef<'_>, Value)> {
    let article = |article: ElementRef<'_>| {
        let of = |dt: &str| {
            let facts = all(article, "dl.facts > div");
            let fact = facts.into_iter().find(|fact| text(one(*fact, "dt")) == dt);
            fact.map(|fact| text(one(fact, "dd")))
        };
        let file = of("File").unwrap();
        let mut typed = vec!["check".to_owned(), file, "--format".into(), "json".into()];
        // Which trips are over an audit tells of the fleet as a whole: asked
        // before the first of them, no check tells it.
        typed.extend(["--date".to_owned(), "2019-03-01".to_owned()]);
        if let Some(records) = of("Laid over it:") {
            for record in records.split(", ") {
                typed.extend(["--inspection".to_owned(), record.to_owned()]);
            }
        }
        kitmuster(&typed).json()
    };
    all(page.root_element(), "article.vessel").into_iter().map(|a| (a, article(a))).collect()
}

/// Everything that the selector finds below an element.
fn all<'a>(below: ElementRef<'a>, selector: &str) -> Vec<ElementRef<'a>> {
    below.select(&Selector::parse(selector).unwrap()).collect()
}

/// The only thing that the selector finds below an element.
fn one<'a>(below: ElementRef<'a>, selector: &str) -> ElementRef<'a> {
    let found = all(below, selector);
    assert_eq!(found.len(), 1, "`{selector}` in {}", below.html());
    found[0]
}

/// The text of an element on one line, ties between words loosened.
fn text(element: ElementRef<'_>) -> String {
    let text: String = element.text().collect();
    text.replace('\u{a0}', " ").split_whitespace().collect::<Vec<_>>().join(" ")
}

/// A list in JSON.
fn list(value: &Value) -> &[Value] {
    value.as_array().map_or(&[], Vec::as_slice)
}

/// A text in JSON.
fn said(value: &Value) -> &str {
    value.as_str().unwrap_or_else(|| panic!("no text: {value}"))
}

/// An outcome as a page says it, sign and word.
fn outcome(finding: &Value) -> &'static str {
    match said(&finding["outcome"]) {
        "met" => "✓ met",
        "not-met" => "✕ not met",
        "cannot-tell" => "? can't tell",
        other => panic!("{other}"),
    }
}
