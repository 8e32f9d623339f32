//! One quote in every format.

use super::{LOFT, at, document, folder, quote, shipped};
use crate::run;
use serde_json::Value;

/// A second supplier: dearer, but with what the first one lacks.
const STORES: &str = "format: catalogue/1
supplier: Quay Stores
currency: USD
tax: 0%
delivery: 7.50
lead: 1 day
prices hold until: 2026-12-31
items:
  - number: P-3
    description: bolt cutters, 18 in, in pairs
    tool:
      kind: bolt cutters
      overall: 18 in
      blade-length: 4 1/4 in
      blade-width: 2 1/4 in
      cuts-hook: 5/16 in
    price: 90
    pack: 2
";

/// Two vessels that lack something each, in one folder with both catalogues.
fn fleet() -> tempfile::TempDir {
    let broken = shipped("marlow-tern.yaml")
        .replace("Marlow Tern", "Marlow Gull")
        .replace("PA-104", "PA-105")
        .replace("    kind: bolt cutters\n", "    kind: bolt cutters\n    condition: broken\n");
    folder(&[
        ("loft.yaml", LOFT),
        ("stores.yaml", STORES),
        ("fleet/a.yaml", &shipped("marlow-tern.yaml")),
        ("fleet/b.yaml", &broken),
    ])
}

fn both(files: &tempfile::TempDir, flags: &[&str]) -> run::Ran {
    let catalogues = [at(files, "loft.yaml"), at(files, "stores.yaml")];
    quote(&[&at(files, "fleet")], &[&catalogues[0], &catalogues[1]], flags)
}

/// A text without the folder of the test.
fn bare(files: &tempfile::TempDir, text: &str) -> String {
    text.replace(&*files.path().to_string_lossy(), "FOLDER")
}

#[test]
fn the_document_of_a_small_fleet() {
    let files = fleet();
    let ran = both(&files, &["--format", "json", "--explain", "--for", "Tern & Sons"]);
    assert_eq!(ran.status, 0, "{}", ran.stderr);
    insta::assert_snapshot!("quote, json of a small fleet", bare(&files, &ran.stdout));
}

#[test]
fn the_rows_of_a_small_fleet() {
    let files = fleet();
    let ran = both(&files, &["--format", "csv"]);
    assert_eq!(ran.status, 0, "{}", ran.stderr);
    let text = bare(&files, &ran.stdout).replace("\r\n", "\n");
    insta::assert_snapshot!("quote, csv of a small fleet", text);
}

fn coins(text: &str) -> u64 {
    text.replace('.', "").parse().unwrap_or_else(|_| panic!("no amount: `{text}`"))
}

fn amount(value: &Value) -> u64 {
    assert_eq!(value["currency"], "USD");
    coins(value["amount"].as_str().unwrap())
}

#[test]
fn the_amounts_add_up_everywhere() {
    let files = fleet();
    let value = both(&files, &["--format", "json"]).json();
    let mut all = 0;
    for order in value["orders"].as_array().unwrap() {
        let lines = order["lines"].as_array().unwrap();
        let goods: u64 = lines.iter().map(|line| amount(&line["sum"])).sum();
        assert_eq!(goods, amount(&order["goods"]));
        for line in lines {
            let packs = line["packs"].as_u64().unwrap();
            assert_eq!(amount(&line["sum"]), packs * amount(&line["unit_price"]));
            let pieces = line["used"].as_u64().unwrap() + line["left_over"].as_u64().unwrap();
            assert_eq!(pieces, packs * line["pack"].as_u64().unwrap());
        }
        let total = goods + amount(&order["delivery"]) + amount(&order["tax"]);
        assert_eq!(total, amount(&order["total"]));
        all += total;
    }
    assert!(all > 0);
    assert_eq!(all, amount(&value["cost"]["total"]));
    let text = both(&files, &["--format", "csv"]).stdout;
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    let head = reader.headers().unwrap().clone();
    let at = |name: &str| head.iter().position(|known| known == name).unwrap();
    let rows: Vec<_> = reader.records().map(Result::unwrap).collect();
    let sums = rows.iter().filter(|row| !row[at("sum")].is_empty());
    assert_eq!(sums.map(|row| coins(&row[at("sum")])).sum::<u64>(), all);
    let whole = rows.iter().find(|row| row[0] == *"order total").unwrap();
    assert_eq!(coins(&whole[at("total")]), all);
}

#[test]
fn the_csv_has_a_row_for_each_line_and_vessel() {
    let files = fleet();
    let value = both(&files, &["--format", "json"]).json();
    let mut expected = Vec::new();
    for vessel in value["vessels"].as_array().unwrap() {
        for line in vessel["lines"].as_array().unwrap() {
            let text = |key: &str| line[key].as_str().unwrap().to_owned();
            let pieces = line["pieces"].to_string();
            let name = vessel["name"].as_str().unwrap().to_owned();
            expected.push([name, text("supplier"), text("number"), pieces, text("arrives")]);
        }
    }
    assert!(expected.len() > 1);
    let text = both(&files, &["--format", "csv"]).stdout;
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    let head = reader.headers().unwrap().clone();
    let at = |name: &str| head.iter().position(|known| known == name).unwrap();
    let columns = ["vessel", "supplier", "number", "pieces", "arrives"].map(at);
    let rows = reader.records().map(Result::unwrap).filter(|row| row[0] == *"for");
    let mut said: Vec<_> = rows.map(|row| columns.map(|c| row[c].to_owned())).collect();
    said.sort();
    expected.sort();
    assert_eq!(said, expected);
}

#[test]
fn hostile_names_stay_dead_in_every_format() {
    let hostile = LOFT
        .replace("handle extension, 2 ft", "\"=cmd()|' /C calc'!A0<script>alert(1)</script>\"")
        .replace("number: EX-2", "number: \"@EX\"")
        .replace("Ansel Gear Loft", "\"+Loft<b>\"");
    let vessel = shipped("marlow-tern.yaml").replace("name: Marlow Tern", "name: \"-Tern<i>\"");
    let files = folder(&[("loft.yaml", &hostile), ("a.yaml", &vessel)]);
    let (vessel, loft) = (at(&files, "a.yaml"), at(&files, "loft.yaml"));
    for format in ["table", "json", "csv", "html"] {
        let flags = ["--format", format, "--for", "=1+1\u{1b}[31m\u{202e}<u>"];
        let text = quote(&[&vessel], &[&loft], &flags).stdout;
        assert!(text.contains("alert(1)"), "{format}: {text}");
        assert!(!text.contains(['\u{1b}', '\u{202e}']), "{format}");
        if format == "html" {
            for markup in ["<script", "Loft<b>", "<i>", "<u>"] {
                assert!(!text.contains(markup), "{markup} became markup");
            }
        }
        if format == "csv" {
            for row in csv::Reader::from_reader(text.as_bytes()).records() {
                for cell in &row.unwrap() {
                    assert!(!cell.starts_with(['=', '+', '-', '@', '\t', '\r']), "{cell}");
                }
            }
        }
    }
}

#[test]
fn units_and_the_customer_are_as_asked() {
    let files = folder(&[("loft.yaml", LOFT)]);
    let short = ["--units", "metric", "--on", "2026-11-26", "--for", " Tern & Sons "];
    let value = document(&["vessels/marlow-tern.yaml"], &[&at(&files, "loft.yaml")], &short);
    assert_eq!(value["customer"], "Tern & Sons");
    let open = &value["vessels"][0]["open"][0];
    assert_eq!(open["requirement"], "long-line-cutter");
    let text = open["reasons"][0]["text"].as_str().unwrap();
    assert!(text.contains(" m") && !text.contains(" ft"), "{text}");
    let codes = open["nearest"]["hindrances"].as_array().unwrap();
    assert_eq!(codes[0]["code"], "late");
    assert_eq!(codes[0]["arrives"], "2026-11-28");
    assert_eq!(codes[0]["days"], 2);
}

#[test]
fn one_supplier_is_taken_and_every_one_is_compared() {
    let files = fleet();
    let value = both(&files, &["--format", "json", "--one-supplier"]).json();
    assert_eq!(value["one_supplier"], true);
    let compared = value["compared"].as_array().unwrap();
    let told: Vec<_> = compared
        .iter()
        .map(|one| (one["supplier"].as_str().unwrap(), one["taken"].as_bool().unwrap()))
        .collect();
    assert_eq!(told, [("Ansel Gear Loft", true), ("Quay Stores", false)]);
    assert_eq!(compared[0]["ready"], 2);
    assert_eq!(compared[0]["cost"], value["cost"]);
    // Nothing at the stores lengthens a line cutter.
    assert_eq!((&compared[1]["ready"], &compared[1]["open"]), (&0.into(), &4.into()));
    let orders = value["orders"].as_array().unwrap();
    assert_eq!((orders.len(), &orders[0]["supplier"]), (1, &"Ansel Gear Loft".into()));
}

#[test]
fn a_pack_that_is_not_used_up_is_paid_whole_and_the_rest_is_told() {
    let files = fleet();
    let (gull, stores) = (at(&files, "fleet/b.yaml"), at(&files, "stores.yaml"));
    let ran = quote(&[&gull], &[&stores], &["--format", "json"]);
    let value = ran.json();
    // The line cutter is too short even so.
    assert_eq!((ran.status, &value["verdict"]), (1, &"not-ready".into()));
    let line = &value["orders"][0]["lines"][0];
    assert_eq!([&line["packs"], &line["pack"], &line["used"], &line["left_over"]], [1, 2, 1, 1]);
    assert_eq!((amount(&line["sum"]), amount(&value["cost"]["total"])), (9000, 9750));
    let bought = &value["vessels"][0]["lines"][0];
    assert_eq!((amount(&bought["share"]), &bought["pieces"]), (4500, &1.into()));
    assert_eq!(value["holds"], "2026-12-31");
    let text = quote(&[&gull], &[&stores], &["--format", "csv"]).stdout;
    let mut reader = csv::Reader::from_reader(text.as_bytes());
    let head = reader.headers().unwrap().clone();
    let at = |name: &str| head.iter().position(|known| known == name).unwrap();
    let rows: Vec<_> = reader.records().map(Result::unwrap).collect();
    let item = rows.iter().find(|row| row[0] == *"item").unwrap();
    assert_eq!(
        [&item[at("pieces")], &item[at("left over")], &item[at("sum")]],
        ["1", "1", "90.00"]
    );
    for kind in ["item", "supplier total", "order total"] {
        let row = rows.iter().find(|row| row[0] == *kind).unwrap();
        assert_eq!(&row[at("price holds until")], "2026-12-31", "{kind}");
    }
    let open: Vec<_> = rows.iter().filter(|row| row[0] == *"open").collect();
    assert_eq!(&open[0][at("open requirement")], "Long-handled line clipper or cutter");
    assert!(open[0][at("reasons")].contains("too short"), "{open:?}");
}

#[test]
fn a_rule_that_is_not_encoded_is_told_where_no_finding_says_it() {
    let files = folder(&[("loft.yaml", LOFT)]);
    let loft = at(&files, "loft.yaml");
    let value = document(&["vessels/far-kestrel.yaml"], &[&loft], &[]);
    assert_eq!(value["verdict"], "cannot-tell");
    let profiles = value["vessels"][0]["profiles"].as_array().unwrap();
    assert!(profiles.iter().any(|profile| profile["encoded"] == false), "{value:#}");
    let text = quote(&["vessels/far-kestrel.yaml"], &[&loft], &["--format", "csv"]).stdout;
    assert!(text.contains("is known, not encoded"), "{text}");
}
