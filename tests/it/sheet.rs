//! Paper for the deck and the way back from paper to data, through the
//! command.

mod above;
mod blank;
mod by_hand;
mod laid_over;
mod paper;
mod record;
mod runs_out;
mod several;
mod skipper;
mod usage;

use scraper::{ElementRef, Html, Selector};

/// The page as it is parsed.
fn parsed(text: &str) -> Html {
    let page = Html::parse_document(text);
    assert!(page.errors.is_empty(), "{:?}", page.errors);
    page
}

fn all<'a>(page: &'a Html, selector: &str) -> Vec<ElementRef<'a>> {
    page.select(&Selector::parse(selector).unwrap()).collect()
}

/// The text of an element, its blanks made single.
fn text_of(element: ElementRef<'_>) -> String {
    element.text().collect::<String>().split_whitespace().collect::<Vec<_>>().join(" ")
}

/// A page reduced to its text: each box is `[    ]`, each square `[ ]`, each
/// block a line.
fn reduced(page: &Html) -> String {
    let mut out = String::new();
    let body = all(page, "body")[0];
    reduce(body, &mut out);
    let lines = out.lines().map(|line| line.split_whitespace().collect::<Vec<_>>().join(" "));
    lines.filter(|line| !line.is_empty()).collect::<Vec<_>>().join("\n")
}

fn reduce(element: ElementRef<'_>, out: &mut String) {
    const BLOCKS: [&str; 14] = [
        "div", "p", "li", "h1", "h2", "tr", "section", "footer", "main", "ul", "table", "th", "td",
        "tbody",
    ];
    let block = BLOCKS.contains(&element.value().name());
    if block {
        out.push('\n');
    }
    match element.value().attr("class") {
        Some("box") => out.push_str(" [    ] "),
        Some("square") => out.push_str(" [ ] "),
        _ => {}
    }
    for child in element.children() {
        if let Some(inner) = ElementRef::wrap(child) {
            reduce(inner, out);
        } else if let Some(text) = child.value().as_text() {
            out.push_str(text);
        }
    }
    if block {
        out.push('\n');
    }
}
