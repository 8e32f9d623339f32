//! Names, marks, ports and remarks that are markup or formulas: text in every
//! page, and a dead cell in every CSV.

use super::limits::{Tally, held};
use super::refuse_live;
use super::table::{DAY, GOOD};
use std::path::Path;

/// What a browser, or a spreadsheet, would obey.
const LIVE: [&str; 16] = [
    "<script>alert(1)</script>",
    "</style><style>*{display:none}</style>",
    "</title></head><body onload=alert(1)>",
    "\" onmouseover=\"alert(1)",
    "' onfocus=alert(1) autofocus '",
    "<img src=x onerror=alert(1)>",
    "<svg><foreignObject><iframe src=javascript:alert(1)>",
    "javascript:alert(1)",
    "<a href=javascript:alert(1)>x</a>",
    "--><script>alert(1)</script><!--",
    "]]><script>alert(1)</script>",
    "&lt;script&gt;alert(1)&#60;/script&#62;",
    "=cmd|' /C calc'!A0",
    "+1+1",
    "-1+1",
    "@SUM(A1)",
];

fn with<'a>(typed: &[&'a str], last: &'a str) -> Vec<&'a str> {
    [typed, &[last]].concat()
}

/// A text for a double-quoted scalar.
fn quoted(text: &str) -> String {
    format!("\"{}\"", text.replace('\\', "\\\\").replace('"', "\\\""))
}

fn files(folder: &Path, live: &str) {
    let text = quoted(live);
    let vessel = GOOD
        .replace("name: Test Kittiwake", &format!("name: {text}\nregister: {text}\nport: {text}"))
        .replace("mark: PL-1", &format!("mark: {text}\n    stowed: {text}\n    remark: {text}"))
        .replace("3 ft", &format!("\n  stations:\n    - {{ name: {text}, freeboard: 3 ft }}"));
    std::fs::write(folder.join("vessel.yaml"), vessel).unwrap();
    let record = format!(
        "format: inspection/1\nvessel: {text}\non: 2026-03-01\nby: {text}\nfound:\n  - {{ mark: {text}, overall: 12 in, remark: {text} }}\n"
    );
    std::fs::write(folder.join("record.yaml"), record).unwrap();
    let number = if live.chars().count() <= 40 { &text } else { "N-1" };
    let shop = format!(
        "format: catalogue/1\nsupplier: {text}\nport: {text}\ncurrency: USD\ntax: 0%\ndelivery: 0\nlead: 1 day\nterms: {text}\nitems:\n  - number: {number}\n    description: {text}\n    tool: {{ kind: dip net, handle: 6 ft, hoop-inside: 31 in, bag-depth: 38 in, mesh: 2 in, carries: 100 lb }}\n    price: 20.00\n"
    );
    std::fs::write(folder.join("shop.yaml"), shop).unwrap();
}

#[test]
fn markup_and_formulas_are_text_in_every_page_and_every_cell() {
    let folder = tempfile::tempdir().unwrap();
    let here = folder.path();
    let (mut tally, mut wrong) = (Tally::default(), Vec::new());
    for (index, live) in LIVE.iter().enumerate() {
        files(here, live);
        let customer = format!("--for={live}");
        let quote = [
            "quote",
            "vessel.yaml",
            "--ordered",
            DAY,
            "--catalogue",
            "shop.yaml",
            &customer,
            "--format",
        ];
        let audit =
            ["audit", "vessel.yaml", "--date", DAY, "--inspection", "record.yaml", "--format"];

        let page: [Vec<&str>; 6] = [
            vec![
                "check",
                "vessel.yaml",
                "--on",
                DAY,
                "--inspection",
                "record.yaml",
                "--catalogue",
                "shop.yaml",
                "--format",
                "html",
            ],
            vec!["sheet", "vessel.yaml", "--on", DAY, "--inspection", "record.yaml"],
            vec![
                "options",
                "vessel.yaml",
                "--on",
                DAY,
                "--catalogue",
                "shop.yaml",
                "--format",
                "html",
            ],
            vec!["sheet", "vessel.yaml", "--on", DAY, "--for", "skipper"],
            with(&audit, "html"),
            with(&quote, "html"),
        ];
        // Formulas are tried in both CSVs, markup in two of the pages.
        let formula = index >= 12;
        let pages = page.iter().cycle().skip(index * 2).take(if formula { 1 } else { 2 }).cloned();
        let csv = [with(&quote, "csv"), with(&audit, "csv")].into_iter().take(if formula {
            2
        } else {
            0
        });
        for typed in pages.chain(csv) {
            let ran = held(here, &typed);
            tally.add(live, &ran);
            wrong.extend(refuse_live(&format!("{typed:?}"), &ran.ran).err());
            if !(0..=1).contains(&ran.ran.status) {
                wrong.push(format!("{typed:?}: {} {:.400}", ran.ran.status, ran.said()));
            }
            if !shows(&ran.ran.stdout, live) {
                wrong.push(format!("{typed:?}: `{live}` is not shown"));
            }
        }
    }
    tally.print("markup");
    assert!(wrong.is_empty(), "\n{}", wrong.join("\n\n"));
}

/// Whether a page or a CSV shows a text as it was written.
fn shows(stdout: &str, text: &str) -> bool {
    if !stdout.starts_with("<!DOCTYPE html>") {
        return stdout.replace("\"\"", "\"").contains(&format!("'{text}"));
    }
    let page = scraper::Html::parse_document(stdout);
    page.root_element().text().collect::<String>().contains(text)
}

/// Cells that begin with what a spreadsheet throws away before it reckons.
#[test]
fn blanks_before_a_formula_do_not_bring_it_to_life() {
    let folder = tempfile::tempdir().unwrap();
    for live in ["\u{a0}=1+1", " =1+1", "'=1+1", "\u{ff1d}1+1", "\"=1+1\"", ";=1+1", "\u{3000}@x"] {
        files(folder.path(), live);
        let ran = held(folder.path(), &["audit", "vessel.yaml", "--date", DAY, "--format", "csv"]);
        assert_eq!(ran.ran.status, 1, "{live}: {}", ran.said());
        refuse_live(live, &ran.ran).unwrap();
    }
}
