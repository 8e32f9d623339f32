//! Every format of a hand-made quote: a lengthened cutter, gags out of a pack
//! that is not used up, a finding that stays open, hostile names.

use super::{Shown, aside, html, table};
use crate::engine::{Depth, Terms, check_own};
use crate::load::{Library, load_vessel, read_catalogue};
use crate::measure::{Currency, Day, Figure, Money, QuantityKind, Units};
use crate::model::catalogue::{Catalogue, Gives};
use crate::model::check::Check;
use crate::model::reason::{Has, Reason};
use crate::model::vessel::{Change, Datum, State, Trust, Vessel};
use crate::quote::{
    Alone, Bought, Bound, Cost, Costliest, Cured, Dearest, Explained, Hindrance, Measuring,
    Nearest, Offer, OrderLine, Quote, SupplierOrder, Unmet, VesselQuote,
};
use crate::report::Locale;
use crate::report::wire::{quote as json, quote_csv as csv};
use serde_json::Value;
use std::path::Path;

const CATALOGUE: &str = r#"
format: catalogue/1
supplier: Ansel Gear Loft
port: Port Ansel
currency: USD
tax: 7.25%
delivery: { charge: 25 }
lead: 3 days
items:
  - number: "+EX"
    description: "@handle extension, 2 ft"
    lengthens: { kinds: [long-handled line cutter], by: 2 ft }
    price: 31.50
  - number: PL-3
    description: needle-nose pliers, in threes
    tool: { kind: needle-nose pliers, overall: 12 in }
    price: 20
    pack: 3
"#;

struct Made {
    library: Library,
    catalogues: Vec<Catalogue>,
    quote: Quote,
}

fn day(text: &str) -> Day {
    Day::parse(text).unwrap()
}

fn money(text: &str) -> Money {
    Money::parse(text, Currency::find("USD").unwrap()).unwrap()
}

fn checked(library: &Library, vessel: Vessel) -> Check {
    let terms = Terms {
        vocabulary: &library.vocabulary,
        profiles: &library.profiles,
        asked: &[],
        departure: day("2026-12-02"),
        back: Some(day("2026-12-09")),
        trust: Trust::All,
        depth: Depth::Findings,
    };
    check_own(vessel, &[], &terms)
}

/// The kit with the cutter lengthened and two pairs of pliers more.
fn supplied(library: &Library, vessel: &Vessel, catalogue: &Catalogue) -> Vessel {
    let mut vessel = vessel.clone();
    let handle = library.vocabulary.find_attribute("handle").unwrap();
    let cutter = &mut vessel.kit[0];
    let mut reading = cutter.readings(handle)[0].clone();
    reading.datum = Datum::Figure(Figure::parse("8 ft 4 in", QuantityKind::Length).unwrap());
    reading.on = Some(day("2026-11-29"));
    cutter.set(handle, vec![reading]);
    cutter.changes.push(Change { what: "lengthened".to_owned(), on: day("2026-11-29") });
    let Gives::Tools(given) = &catalogue.items[1].gives else { panic!("pliers are tools") };
    let mut pliers = given[0].tool.clone();
    pliers.count = 2;
    pliers.acquired = Some(day("2026-11-29"));
    vessel.kit.push(pliers);
    vessel
}

fn bought(item: usize, pieces: u32, on: Option<usize>, tool: usize, requirement: usize) -> Bought {
    Bought {
        offer: Offer { catalogue: 0, item },
        pieces,
        on,
        tools: vec![tool],
        cures: vec![Cured { judgement: 0, requirement }],
        share: money(if item == 0 { "31.50" } else { "13.33" }),
        arrives: day("2026-11-29"),
    }
}

/// A finding that the order leaves open, with an offer that falls short.
fn unmet(requirement: usize, library: &Library) -> Unmet {
    let attribute = library.vocabulary.find_attribute("handle").unwrap();
    let figure = |text| Figure::parse(text, QuantityKind::Length).unwrap();
    let least = figure("6 ft 4 1/2 in");
    let lacks = vec![Reason::OutOfSpecification {
        attribute,
        has: Has::Figure(figure("6 ft")),
        demand: crate::model::reason::Demand::Least(least),
        by: None,
        overruled: Vec::new(),
    }];
    let hindrances = vec![
        Hindrance::OutOfStock { packs: 0 },
        Hindrance::Late { arrives: day("2026-12-05"), days: 3 },
        Hindrance::PriceLapsed { held: day("2026-11-01") },
    ];
    let offer = Offer { catalogue: 0, item: 1 };
    Unmet {
        finding: Cured { judgement: 0, requirement },
        nearest: Some(Nearest { offer, lacks, hindrances }),
    }
}

fn made() -> Made {
    let library = Library::shipped().unwrap();
    let (mut catalogue, _) = read_catalogue("a.yaml", CATALOGUE, &library.vocabulary).unwrap();
    // The loader refuses what steers; the formats do not rely on it.
    catalogue.supplier = "=cmd()<b>Loft\u{202e}\u{1b}[31m".to_owned();
    let path = Path::new(env!("CARGO_MANIFEST_DIR")).join("vessels/marlow-tern.yaml");
    let (mut vessel, _) = load_vessel(&path, &library.vocabulary).unwrap();
    vessel.name = "-Tern<i>".to_owned();
    let cutters = vessel.kit.iter_mut().find(|tool| tool.mark == "BC-1").unwrap();
    cutters.state = State::Broken;
    let before = checked(&library, vessel.clone());
    let after = checked(&library, supplied(&library, &vessel, &catalogue));
    let last = after.vessel.kit.len() - 1;
    let requirements = &after.judgements[0].profile.requirements;
    let open = requirements.iter().position(|asked| asked.id == "bolt-cutters").unwrap();
    let goods = money("51.50");
    let cost = Cost { goods, delivery: money("25"), tax: money("5.55"), total: money("82.05") };
    let lines = vec![
        OrderLine { item: 0, packs: 1, used: 1, sum: money("31.50") },
        OrderLine { item: 1, packs: 1, used: 2, sum: money("20") },
    ];
    let order =
        SupplierOrder { catalogue: 0, lines, cost, holds: None, arrives: day("2026-11-29") };
    let quote = Quote {
        ordered: day("2026-11-26"),
        currency: Currency::find("USD").unwrap(),
        with_recommended: true,
        vessels: vec![VesselQuote {
            file: "=tern.yaml".into(),
            before,
            after,
            lines: vec![bought(0, 1, Some(0), 0, 0), bought(1, 2, None, last, 9)],
            unmet: vec![unmet(open, &library)],
        }],
        orders: vec![order],
        cost,
        bound: Bound::AtLeast(money("80")),
        holds: Some(day("2026-12-31")),
        suppliers: vec![Alone { catalogue: 0, ready: 1, open: 1, cost, taken: true }],
        measuring: Some(Measuring {
            tools: vec![(0, 0)],
            total: money("50"),
            saves: money("32.05"),
        }),
        explained: Some(Explained {
            dearest: Some(Dearest {
                offer: Offer { catalogue: 0, item: 0 },
                price: money("31.50"),
                without: None,
            }),
            costliest: Some(Costliest {
                profile: "us-gulf-reef-fish-2019".to_owned(),
                requirement: "long-line-cutter".to_owned(),
                at: (0, Cured { judgement: 0, requirement: 0 }),
                without: money("48.25"),
                costs: money("33.80"),
            }),
        }),
    };
    Made { library, catalogues: vec![catalogue], quote }
}

impl Made {
    fn shown(&self) -> Shown<'_> {
        Shown {
            quote: &self.quote,
            catalogues: &self.catalogues,
            vocabulary: &self.library.vocabulary,
            locale: Locale::from(Units::Both),
            customer: Some("@Sea<u>Co"),
            one_supplier: true,
            undated: &[0],
            refused: &[],
            left_out: &[],
        }
    }
}

fn document(made: &Made) -> Value {
    serde_json::from_str(&json(&made.shown()).unwrap()).unwrap()
}

fn keys(value: &Value) -> Vec<&str> {
    value.as_object().unwrap().keys().map(String::as_str).collect()
}

#[test]
fn the_keys_of_the_document_stand_in_their_order() {
    let value = document(&made());
    assert_eq!(
        keys(&value),
        [
            "schema",
            "program",
            "customer",
            "ordered",
            "currency",
            "with_recommended",
            "one_supplier",
            "verdict",
            "totals",
            "cost",
            "bound",
            "holds",
            "catalogues",
            "orders",
            "vessels",
            "compared",
            "measuring",
            "explained",
            "refused",
            "records_left_out",
        ]
    );
    assert_eq!(
        keys(&value["vessels"][0]),
        [
            "file",
            "name",
            "vessel",
            "trip",
            "verdict_before",
            "verdict_after",
            "profiles",
            "notices",
            "lines",
            "open",
        ]
    );
    assert_eq!(
        keys(&value["vessels"][0]["lines"][0]),
        [
            "supplier",
            "number",
            "description",
            "gives",
            "pieces",
            "on",
            "marks",
            "cures",
            "arrives",
            "departure",
            "share",
            "entries",
        ]
    );
    assert_eq!(
        keys(&value["orders"][0]),
        ["supplier", "lines", "goods", "delivery", "tax", "total", "tax_rate", "holds", "arrives",]
    );
}

#[test]
fn a_line_says_what_to_write_into_the_inventory() {
    let value = document(&made());
    let lines = &value["vessels"][0]["lines"];
    assert_eq!(lines[0]["on"], "LC-1");
    let longer = &lines[0]["entries"][0];
    assert_eq!((&longer["of"], &longer["pieces"]), (&"LC-1".into(), &1.into()));
    assert_eq!(longer["entry"]["handle"]["value"], "8 ft 4 in");
    assert_eq!(longer["entry"]["changes"][0]["what"], "lengthened");
    let new = &lines[1]["entries"][0];
    assert_eq!((&new["mark"], &new["count"]), (&"PL-3".into(), &2.into()));
    assert_eq!(new["acquired"], "2026-11-29");
    assert_eq!(new["overall"]["value"], "12 in");
}

#[test]
fn what_stays_open_has_its_reasons_and_the_nearest_offer() {
    let value = document(&made());
    assert_eq!(value["verdict"], "not-ready");
    let open = &value["vessels"][0]["open"][0];
    assert_eq!(
        (&open["requirement"], &open["outcome"]),
        (&"bolt-cutters".into(), &"not-met".into())
    );
    assert_eq!(open["reasons"][0]["code"], "not-serviceable");
    let nearest = &open["nearest"];
    assert_eq!(nearest["lacks"][0]["code"], "out-of-specification");
    assert_eq!(nearest["lacks"][0]["demand"]["least"]["nanometres"], 1_943_100_000_i64);
    let codes: Vec<_> =
        nearest["hindrances"].as_array().unwrap().iter().map(|one| &one["code"]).collect();
    assert_eq!(codes, ["out-of-stock", "late", "price-lapsed"]);
}

#[test]
fn the_sums_of_the_csv_add_up_to_the_total_and_no_cell_is_live() {
    let text = csv(&made().shown()).unwrap();
    let mut reader = csv_reader(&text);
    let head = reader.headers().unwrap().clone();
    let at = |name: &str| head.iter().position(|known| known == name).unwrap();
    let rows: Vec<_> = reader.records().map(Result::unwrap).collect();
    let coins = |text: &str| text.replace('.', "").parse::<u64>().unwrap_or(0);
    let sum: u64 = rows.iter().map(|row| coins(&row[at("sum")])).sum();
    assert_eq!(sum, 8205);
    let kinds: Vec<_> = rows.iter().map(|row| row[0].to_owned()).collect();
    assert_eq!(
        kinds,
        [
            "item",
            "for",
            "item",
            "for",
            "delivery",
            "tax",
            "supplier total",
            "order total",
            "vessel",
            "open"
        ]
    );
    let pliers = &rows[2];
    assert_eq!((&pliers[at("pieces")], &pliers[at("left over")]), ("2", "1"));
    for row in &rows {
        for cell in row {
            assert!(!cell.starts_with(['=', '+', '-', '@', '\t', '\r']), "{cell}");
        }
    }
}

fn csv_reader(text: &str) -> ::csv::Reader<&[u8]> {
    ::csv::Reader::from_reader(text.as_bytes())
}

#[test]
fn hostile_names_stay_dead_in_every_format() {
    let made = made();
    let shown = made.shown();
    let page = table(&shown, 80);
    let plain = anstream::adapter::strip_str(&page).to_string();
    let texts = [plain, json(&shown).unwrap(), csv(&shown).unwrap(), html(&shown)];
    for text in &texts {
        assert!(text.contains("cmd()"), "{text}");
        assert!(!text.contains(['\u{1b}', '\u{202e}']), "{text}");
    }
    assert!(!texts[3].contains("<b>Loft") && !texts[3].contains("<i>"), "{}", texts[3]);
    assert!(!texts[3].contains("<u>Co"), "{}", texts[3]);
}

#[test]
fn no_line_of_the_page_is_wider_than_asked() {
    let made = made();
    for width in [40, 60, 80] {
        let page = table(&made.shown(), width) + &aside(&made.shown(), width);
        let plain = anstream::adapter::strip_str(&page).to_string();
        for line in plain.lines() {
            assert!(line.chars().count() <= width, "{line}");
        }
    }
}

#[test]
fn a_vessel_without_a_planned_day_is_told() {
    let made = made();
    let told = aside(&made.shown(), 80);
    assert!(told.contains("no day of departure is planned"), "{told}");
    let quiet = Shown { undated: &[], ..made.shown() };
    assert_eq!(aside(&quiet, 80), "");
}

#[test]
fn a_basket_that_is_not_proved_the_cheapest_is_told_loudly() {
    let mut made = made();
    let told = |made: &Made| {
        let page = anstream::adapter::strip_str(&table(&made.shown(), 80)).to_string();
        let page = page.split_whitespace().collect::<Vec<_>>().join(" ");
        let paper = html(&made.shown()).replace('\u{a0}', " ");
        assert_eq!(page.contains("NOT PROVED THE CHEAPEST"), paper.contains("NOT PROVED"));
        page
    };
    // 82.05 less 80.00.
    let page = told(&made);
    assert!(page.contains("A cheaper basket may exist, by 2.05 USD at most: none below 80.00 USD"));
    assert!(page.contains("Nor is it proved that no more requirements can be met"), "{page}");
    made.quote.vessels[0].unmet.clear();
    assert!(!told(&made).contains("Nor is it proved"));
    for bound in [Bound::Cheapest, Bound::AtLeast(money("82.05"))] {
        made.quote.bound = bound;
        assert!(!told(&made).contains("NOT PROVED"));
    }
}

#[test]
fn what_doing_without_the_dearest_line_costs_is_told() {
    let mut made = made();
    for (without, told) in [
        (None, "Nothing else on offer makes up for it"),
        (Some("82.05"), "Without it other goods would do the same for as much"),
        (Some("90"), "Without it the order would come to 90.00 USD, 7.95 USD more"),
    ] {
        let explained = made.quote.explained.as_mut().unwrap();
        explained.dearest.as_mut().unwrap().without = without.map(money);
        let text = aside(&made.shown(), 200);
        let page = table(&made.shown(), 200);
        assert!(text.contains(told) || page.contains(told), "{told}: {text}{page}");
    }
}
