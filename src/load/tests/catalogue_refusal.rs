//! Tests of what is refused of a catalogue: each message, with its line and
//! column.

use crate::load::read::problem::Refusal;
use crate::load::tests::catalogue::{CATALOGUE, read, swapped, words};
use crate::load::{MOST_ITEMS, read_catalogue};

fn refused(text: &str) -> Refusal {
    match read_catalogue("c.yaml", text, &words()) {
        Ok(_) => panic!("it is read: {text:.200}"),
        Err(refusal) => refusal,
    }
}

/// The only problem of the sample with a part swapped, as it is told.
#[track_caller]
fn told(from: &str, to: &str) -> String {
    let refusal = refused(&swapped(from, to));
    assert_eq!(refusal.problems.len(), 1, "{refusal}");
    refusal.to_string()
}

/// Line and column of what stands after the colon of this piece of a text.
fn place_of_value(text: &str, piece: &str) -> String {
    let at = text.find(piece).unwrap() + piece.find(": ").unwrap() + 2;
    let before = &text[..at];
    let start = before.rfind('\n').unwrap() + 1;
    format!("{}:{}", before.matches('\n').count() + 1, at - start + 1)
}

#[test]
fn what_is_missing_is_told_with_the_line_to_write() {
    for (line, what) in [
        ("supplier: Tarnholt Ship Stores\n", "supplier: `supplier` is missing; write"),
        ("currency: USD\n", "currency: `currency` is missing; write the code"),
        ("tax: 7.25%\n", "tax: `tax` is missing; write `tax: 0%` if none is charged"),
        ("delivery: { charge: 45.00, free from: 1500.00 }\n", "write `delivery: 0` if nothing"),
        ("    price: 184.50\n", "items[0].price: `price` is missing"),
        ("    description: set\n", "items[2].description: `description` is missing"),
        ("number: TS-300\n    ", "items[3].number: `number` is missing"),
        ("kind: pliers, ", "items[2].tools[0].kind: `kind` is missing"),
        (", fits: [ts-900, dip net]", "items[1].tool.fits: `fits` is missing"),
        (", by: 2 ft", "items[3].lengthens.by: `by` is missing"),
        ("kinds: [pliers], ", "items[4].service.kinds: `kinds` is missing"),
        (", does: [inspection]", "items[4].service.does: `does` is missing"),
        ("charge: 45.00, ", "delivery.charge: `charge` is missing"),
    ] {
        let message = told(line, "");
        assert!(message.contains(what), "{message}");
    }
    let no_lead = refused(&swapped("lead: 3 days\n", ""));
    assert_eq!(no_lead.problems.len(), 6, "{no_lead}");
    assert!(no_lead.to_string().contains("items[1].lead: `lead` is missing; write how long"));
    let empty = format!("{}items: []\n", &CATALOGUE[..CATALOGUE.find("items:").unwrap()]);
    assert!(refused(&empty).to_string().contains(":10:1: items: `items` is missing"));
}

#[test]
fn wrong_amounts_are_told_with_line_and_column() {
    for (price, what) in [
        (
            "$184",
            "this is not an amount of money; expected an amount in USD, like `184.50`; write the number alone; the currency stands once, after `currency`",
        ),
        ("184 USD", "write the number alone"),
        ("1e3", "this is not an amount of money"),
        ("-5", "an amount below zero"),
        ("0", "a price of nothing"),
        ("0.00", "a price of nothing"),
        ("0.005", "finer than the smallest coin"),
        ("1,200", "write it without a mark between thousands, like `1200.00`"),
        ("99999999999", "more than is reckoned with here"),
    ] {
        let message = told("price: 184.50", &format!("price: {price}"));
        let start = format!("c.yaml:14:12: items[0].price: `{price}`: ");
        assert!(message.starts_with(&start) && message.contains(what), "{message}");
    }
    // An unknown currency is told once, and amounts that are none beside it.
    let text = swapped("currency: USD", "currency: US").replacen("184.10", "nothing", 1);
    let lines: Vec<String> = refused(&text).problems.iter().map(ToString::to_string).collect();
    assert_eq!(
        lines,
        [
            "c.yaml:4:11: currency: `US`: no currency with a coin has this code; expected a code of three letters by ISO 4217; write it like `USD`",
            "c.yaml:23:12: items[1].price: `nothing`: this is not an amount of money; expected an amount, like `184.50`; write the number alone; the currency stands once, after `currency`",
        ]
    );
    assert!(told("currency: USD", "currency: XAU").contains("no currency with a coin"));
}

#[test]
fn tax_lead_counts_and_days_have_their_bounds() {
    for (from, to, key, what) in [
        ("tax: 7.25%", "tax: 100%", "tax", "more than any tax is"),
        (
            "tax: 7.25%",
            "tax: 7.25",
            "tax",
            "this is not a percentage; expected a percentage from `0%` to below `100%`, like `7.25%`; write `7.25%`",
        ),
        ("tax: 7.25%", "tax: -1%", "tax", "below zero"),
        ("lead: 10 days", "lead: -1 days", "items[0].lead", "this is not a number of days"),
        (
            "lead: 10 days",
            "lead: 731 days",
            "items[0].lead",
            "out of range; expected calendar days from 0 to 730",
        ),
        ("lead: 10 days", "lead: 105 weeks", "items[0].lead", "out of range"),
        ("lead: 10 days", "lead: 10", "items[0].lead", "write `10 days`"),
        ("lead: 3 days", "lead: soon", "lead", "this is not a number of days"),
        ("pack: 4", "pack: 0", "items[0].pack", "a whole number from 1 to 10000"),
        ("pack: 4", "pack: 10001", "items[0].pack", "out of range"),
        ("least order: 2", "least order: 0", "items[0].least order", "out of range"),
        ("stock: 12", "stock: some", "items[0].stock", "this is not a whole number"),
        ("count: 2", "count: 0", "items[2].tools[1].count", "from 1 to 1000"),
        ("per tool: 2", "per tool: 0", "items[3].lengthens.per tool", "from 1 to 10"),
        ("by: 2 ft", "by: 0 ft", "items[3].lengthens.by", "a length of nothing"),
        ("by: 2 ft", "by: 2", "items[3].lengthens.by", "a figure without its unit"),
        ("until: 2026-12-10", "until: 2026-02-30", "items[0].price holds until", "no such day"),
        ("until: 2027-01-31", "until: soon", "prices hold until", "this is not a day"),
        ("lasts: 24 months", "lasts: a while", "items[1].tool.lasts", "this is not an interval"),
        ("inspected: yes", "inspected: perhaps", "items[0].tool.inspected", "neither yes nor no"),
    ] {
        let message = told(from, to);
        let at = place_of_value(&swapped(from, to), to);
        assert!(message.starts_with(&format!("c.yaml:{at}: {key}: ")), "{message}");
        assert!(message.contains(what), "{message}");
    }
    for (from, to) in [
        ("lead: 10 days", "lead: 0 days"),
        ("lead: 10 days", "lead: 730 days"),
        ("lead: 10 days", "lead: 2 weeks"),
        ("tax: 7.25%", "tax: 0%"),
        ("stock: 12", "stock: 0"),
        ("stock: 12", "stock: 1"),
        ("currency: USD", "currency: eur"),
    ] {
        read(&swapped(from, to));
    }
}

#[test]
fn words_that_nobody_knows_find_their_neighbour() {
    for (from, to, what) in [
        (
            "kind: pliers",
            "kind: plyers",
            "no kind of this name is known; expected a kind of the vocabulary, by id, name or synonym; did you mean `pliers`?",
        ),
        ("overall: 11 in", "overal: 11 in", "did you mean `overall`?"),
        ("overall: 11 in", "handle: 11 in", "`pliers` has no such attribute"),
        (
            "ts-900",
            "TS-909",
            "neither an item of this catalogue nor a kind of tool; expected the number of an item, or a kind by id, name or synonym; did you mean `TS-900`?",
        ),
        ("fits: [ts-900, dip net]", "fits: [ts-900, dip nett]", "did you mean `dip net`?"),
        ("ts-900", "TS-700", "this item gives no tool that spares could fit"),
        (
            "fits: [ts-900, dip net]",
            "fits: [workshop-certificate]",
            "this is a certificate; expected a tool",
        ),
        ("does: [inspection]", "does: [inspektion]", "did you mean `inspection`?"),
        (
            "kinds: [pliers], does: [inspection]",
            "kinds: [workshop-certificate], does: [inspection]",
            "this is a certificate",
        ),
        ("    pack: 4", "    packs: 4", "did you mean `pack`?"),
        ("    lengthens:", "    lenghtens:", "did you mean `lengthens`?"),
        ("    tools:", "    tols:", "no such key is known here"),
    ] {
        let message = told(from, to);
        assert!(message.contains(what), "{message}");
    }
}

#[test]
fn certificates_hooks_and_lines_are_not_sold() {
    for (kind, what) in [
        ("workshop certificate", "a certificate is earned, not sold"),
        ("hook", "fishing gear is not sold here"),
        ("fishing line", "fishing gear is not sold here"),
    ] {
        let message = told(
            "{ kind: careful-release document, edition: 2.10 }",
            &format!("{{ kind: {kind} }}"),
        );
        assert!(message.contains(what), "{message}");
        assert!(message.ends_with("expected a tool, a set of spares or a document"), "{message}");
    }
}

#[test]
fn numbers_stand_once_whatever_their_capitals() {
    let twice = told("number: TS-701", "number: ts-110");
    assert!(
        twice.starts_with(
            "c.yaml:38:13: items[5].number: `ts-110`: another item has this number too"
        ),
        "{twice}"
    );
    let marked = told("number: TS-701", "number: TS-900B");
    assert!(marked.contains("a tool of the set items[2] is marked so"), "{marked}");
    assert!(
        told("number: TS-701", &format!("number: {}", "9".repeat(41)))
            .contains("at most 40 characters")
    );
}

#[test]
fn an_item_gives_exactly_one_thing() {
    let none = told("    service: { kinds: [pliers], does: [inspection] }\n", "");
    assert!(none.starts_with("c.yaml:34:5: items[4]: nothing says what this item gives; expected one of `tool`, `tools`, `lengthens` and `service`"), "{none}");
    let two = told(
        "    service: { kinds: [pliers], does: [inspection] }",
        "    tool: { kind: pliers }\n    service: { kinds: [pliers], does: [inspection] }",
    );
    assert!(two.contains("items[4].service: `service`: an item gives one thing only"), "{two}");
    let torn =
        told("    service: { kinds: [pliers], does: [inspection] }", "    service: inspection");
    assert!(torn.contains("plain text stands here"), "{torn}");
    let start = CATALOGUE.find("    tools:").unwrap();
    let set = &CATALOGUE[start..start + CATALOGUE[start..].find("    price").unwrap()];
    let empty = refused(&swapped(set, "    tools: []\n"));
    assert!(empty.to_string().contains("items[2].tools: a set without tools"), "{empty}");
}

#[test]
fn what_cannot_be_lengthened_or_does_nothing_is_refused() {
    let short =
        told("kinds: [long-line-cutter, dip net, line clipper]", "kinds: [dip net, pliers]");
    assert!(short.starts_with("c.yaml:32:35: items[3].lengthens.kinds[1]: `pliers`: a tool of this kind cannot be lengthened"), "{short}");
    assert!(told("does: [inspection]", "does: []").contains("`does` is missing"));
    assert!(
        told("kinds: [pliers], does: [inspection]", "kinds: [], does: [inspection]")
            .contains("`kinds` is missing")
    );
}

#[test]
fn keys_of_a_vessels_tool_are_told_what_takes_their_place() {
    for (key, mend) in [
        ("mark: A-1", "its mark is the item's number"),
        ("condition: broken", "what is sold is serviceable"),
        ("expires: 2027-01-01", "like `lasts: 24 months`"),
        ("acquired: 2026-01-01", "acquired with the delivery"),
    ] {
        let message = told("{ kind: pliers,", &format!("{{ {key}, kind: pliers,"));
        assert!(
            message.contains("what is sold has no such key") && message.contains(mend),
            "{message}"
        );
    }
    let spare = told("overall: 11 in,", "overall: 11 in, fits: [dip net],");
    assert!(spare.contains("only spares fit another tool"), "{spare}");
}

#[test]
fn too_many_items_and_too_large_sets_are_refused() {
    let head = &CATALOGUE[..CATALOGUE.find("items:").unwrap()];
    let catalogue = |count: usize| {
        let mut text = format!("{head}items:\n");
        for at in 0..count {
            text.push_str(&format!(
                "  - {{ number: N{at}, description: d, tool: {{ kind: pliers }}, price: 1 }}\n"
            ));
        }
        text
    };
    assert_eq!(read(&catalogue(MOST_ITEMS)).items.len(), MOST_ITEMS);
    let told = refused(&catalogue(MOST_ITEMS + 1)).to_string();
    assert!(
        told.contains("2001 items are too many; expected at most 2000 in a catalogue"),
        "{told}"
    );
    let tools = "{ kind: pliers }, ".repeat(27);
    let large =
        format!("{head}items:\n  - {{ number: N, description: d, tools: [{tools}], price: 1 }}\n");
    assert!(
        refused(&large)
            .to_string()
            .contains("27 tools in a set are too many; expected from 1 to 26")
    );
}

#[test]
fn other_files_and_steering_characters_are_refused() {
    let vessel = refused(crate::load::tests::vessel::VESSEL).to_string();
    assert!(
        vessel.contains("this is a vessel's inventory; expected a supplier's catalogue"),
        "{vessel}"
    );
    let steered = told("description: set", "description: \"a\\e[31m\"");
    assert!(steered.contains("steers the screen") && !steered.contains('\u{1b}'), "{steered}");
}

/// Everything at once that a careless hand can do to a catalogue.
const BROKEN: &str = "\
format: catalogue/1
supplier: 
prot: Port Ansel
currency: dollars
tax: 7
delivery: free
prices hold until: next month
lead: quick
items:
  - number: TS-1
    description: line cutter
    tool: { kind: line cliper, handle: 8, fits: [TS-2] }
    price: $184.50
    pack: 0
  - number: ts-1
    tool: { kind: pliers, overall: 11, mark: P-1, handel: 2 ft, conforms: A.1 }
    tools: [{ kind: hook }]
    price: 0
    least order: 20000
    stock: plenty
    lead: -3 days
  - description: blades
    tool: { kind: replacement blades, count: 0, lasts: long, fits: [TS-11] }
    price holds until: 2026-13-01
  - number: TS-3
    description: extension
    lengthens: { kinds: [pliers, rope], by: 2, per tool: many }
    price: 12,500
  - number: TS-4
    description: work
    service: { kinds: [], does: [wash] }
    price: 1
    price: 2
";

#[test]
fn a_thoroughly_broken_catalogue_tells_everything_at_once() {
    insta::assert_snapshot!(refused(BROKEN).to_string());
}
