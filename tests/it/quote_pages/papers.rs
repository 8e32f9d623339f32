//! The page of HTML: the same verdict, lines, clauses and amounts as the
//! JSON, in one file that asks for nothing.

use super::*;
use scraper::{ElementRef, Html, Selector};
use serde_json::Value;

fn all<'a>(below: ElementRef<'a>, selector: &str) -> Vec<ElementRef<'a>> {
    below.select(&Selector::parse(selector).unwrap()).collect()
}

fn text(element: ElementRef<'_>) -> String {
    flat(&element.text().collect::<String>().replace('\u{a0}', " "))
}

/// Two vessels of which one is not ready even so, and two suppliers.
fn files() -> [(&'static str, String); 4] {
    let heron =
        [("name: Marlow Tern", "name: Test Heron <i>"), ("register: PA-104", "register: PA-105")];
    let tether = changed(
        &shop(&[EXTENSION]),
        &[("Quay Locker\nport: Port Ansel", "Outer <Islands> Stores"), ("tax: 5%", "tax: 7%")],
    );
    [
        ("heron.yaml", tern(&[&WITHOUT_PLIERS[..], &heron].concat())),
        ("tern.yaml", tern(&[("mark: BC-1", "mark: BC-1\n    condition: broken")])),
        ("shop-a.yaml", shop(&[PLIERS_IN_FOURS])),
        ("shop-b.yaml", tether),
    ]
}

fn in_format(format: &str) -> Ran {
    let files = files();
    let files: Vec<_> = files.iter().map(|(name, text)| (*name, text.as_str())).collect();
    quote(&files, &["--explain", "--for", "A <u>", "--format", format])
}

fn said(value: &Value) -> String {
    value.as_str().unwrap_or_else(|| panic!("no text: {value}")).to_owned()
}

fn list(value: &Value) -> &[Value] {
    value.as_array().map_or(&[], Vec::as_slice)
}

fn amount(value: &Value) -> String {
    format!("{} {}", said(&value["amount"]), said(&value["currency"]))
}

#[test]
fn every_line_clause_and_amount_of_the_json_stands_on_the_page() {
    let json = in_format("json").json();
    let ran = in_format("html");
    let page = Html::parse_document(&ran.stdout);
    let root = page.root_element();
    let headline = text(all(root, ".rail .headline")[0]);
    assert!(
        headline.starts_with("✕ not ready after this order 1 of 2 vessels ready; "),
        "{headline}"
    );
    assert!(headline.contains(&amount(&json["cost"]["total"])), "{headline}");

    let rows = all(root, ".amounts tbody tr");
    let lines: Vec<&Value> = list(&json["orders"]).iter().flat_map(|o| list(&o["lines"])).collect();
    assert_eq!(rows.len(), lines.len());
    assert_eq!(lines.len(), 2);
    for (row, line) in rows.iter().zip(lines) {
        let row = text(*row);
        for wanted in [
            said(&line["number"]),
            said(&line["description"]),
            amount(&line["unit_price"]),
            amount(&line["sum"]),
        ] {
            assert!(row.contains(&wanted), "{wanted}: {row}");
        }
    }
    let sums = all(root, ".amounts tfoot");
    assert_eq!(sums.len(), list(&json["orders"]).len() + 1);
    for (sum, order) in sums.iter().zip(list(&json["orders"])) {
        let cells: Vec<_> = all(*sum, "td").into_iter().map(text).collect();
        let wanted = ["goods", "delivery", "tax", "total"].map(|key| amount(&order[key]));
        assert_eq!(cells, wanted);
    }

    let bought: Vec<_> = all(root, ".part > .plain > li").into_iter().map(text).collect();
    let lines = list(&json["vessels"]).iter().flat_map(|vessel| list(&vessel["lines"]));
    let mut seen = 0;
    for (row, line) in bought.iter().zip(lines) {
        for cured in list(&line["cures"]) {
            let wanted = format!("{} ({})", said(&cured["title"]), said(&cured["clause"]));
            assert!(row.contains(&wanted), "{wanted}: {row}");
            seen += 1;
        }
        assert!(row.contains(&said(&line["arrives"])), "{row}");
    }
    assert!(seen >= 3);
    let open: Vec<_> = all(root, ".finding").into_iter().map(text).collect();
    assert_eq!(open.len(), 1, "{open:?}");
    assert!(open[0].contains("not met open: Bolt cutters (Appendix F, A.10)"), "{open:?}");
    assert!(open[0].contains("nothing on offer is of a kind that would do"), "{open:?}");
}

#[test]
fn nothing_from_a_file_is_markup_and_nothing_is_asked_for() {
    let ran = in_format("html");
    let page = Html::parse_document(&ran.stdout);
    let root = page.root_element();
    for selector in
        ["i", "u", "islands", "script", "img", "link", "iframe", "[src]", "[href]", "[onclick]"]
    {
        assert!(all(root, selector).is_empty(), "{selector}");
    }
    let whole = text(root);
    for name in ["Test Heron <i>", "Outer <Islands> Stores", "Quote for A <u>"] {
        assert!(whole.contains(name), "{name}");
    }
    assert!(!ran.stdout.contains("url("));
}

#[test]
fn a_page_with_an_order_has_a_line_to_accept_it_and_one_without_has_none() {
    let with = in_format("html");
    let none = one(&tern(&READY), &[PLIERS], &["--format", "html"]);
    assert_eq!(none.status, 0);
    let accept =
        |ran: &Ran| all(Html::parse_document(&ran.stdout).root_element(), ".signature").len();
    assert_eq!((accept(&with), accept(&none)), (1, 0));
    let delivered = "Check the goods when they are delivered";
    for (ran, ordered) in [(&with, true), (&none, false)] {
        let text = flat(&ran.stdout);
        assert!(text.contains("an aid, no legal advice."), "{text}");
        assert_eq!(text.contains(delivered), ordered, "{text}");
    }
}
