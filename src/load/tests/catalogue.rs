//! Tests of the path from a catalogue's file to the model, on a small text of
//! their own. What is refused is tested in `catalogue_refusal`.

use crate::load::library::Library;
use crate::load::read_catalogue;
use crate::measure::{Day, Interval, QuantityKind};
use crate::model::catalogue::{Catalogue, Fits, Given, Gives};
use crate::model::vessel::{Datum, How, State, Whereabouts};
use crate::model::vocabulary::Vocabulary;

/// The words of a vessel's tests, with more that can be lengthened.
pub(crate) fn words() -> Vocabulary {
    let text = crate::load::tests::vessel::WORDS;
    let text = text.replace("  hook: {", "  dip-net: { attributes: [handle] }\n  hook: {");
    Library::from_texts(&[("vocabulary.yaml", text.as_str())]).unwrap().vocabulary.as_ref().clone()
}

pub(crate) const CATALOGUE: &str = "\
format: catalogue/1
supplier: Tarnholt Ship Stores
port: Port Ansel
currency: USD
tax: 7.25%
delivery: { charge: 45.00, free from: 1500.00 }
prices hold until: 2027-01-31
lead: 3 days
terms: thirty days
items:
  - number: TS-110
    description: line cutter on a pole
    tool: { kind: line clipper, handle: 8 ft, protected-blade: yes, conforms: [\"Rule, A.1\"], inspected: yes }
    price: 184.50
    pack: 4
    least order: 2
    stock: 12
    lead: 10 days
    price holds until: 2026-12-10
  - number: TS-119
    description: blades
    tool: { kind: replacement blades, lasts: 24 months, fits: [ts-900, dip net] }
    price: 184.10
  - number: TS-900
    description: set
    tools:
      - { kind: pliers, overall: 11 in, name: small pliers }
      - { kind: line clipper, count: 2 }
    price: 90
  - number: TS-300
    description: extension
    lengthens: { kinds: [long-line-cutter, dip net, line clipper], by: 2 ft, per tool: 2 }
    price: 40
  - number: TS-700
    description: inspection
    service: { kinds: [pliers], does: [inspection] }
    price: 15
  - number: TS-701
    description: repair
    service: { kinds: [pliers], does: [repair, Sharpening] }
    price: 25
  - number: TS-800
    description: placard
    tool: { kind: careful-release document, edition: 2.10 }
    price: 0.05
";

pub(crate) fn read(text: &str) -> Catalogue {
    read_catalogue("c.yaml", text, &words()).unwrap_or_else(|refusal| panic!("{refusal}")).0
}

/// The sample with a part swapped.
pub(crate) fn swapped(from: &str, to: &str) -> String {
    assert!(CATALOGUE.contains(from), "{from}");
    CATALOGUE.replacen(from, to, 1)
}

fn given(catalogue: &Catalogue, item: usize) -> &[Given] {
    match &catalogue.items[item].gives {
        Gives::Tools(given) => given,
        other => panic!("{other:?}"),
    }
}

#[test]
fn a_catalogue_is_read_whole() {
    let catalogue = read(CATALOGUE);
    let shown = |money: crate::measure::Money| money.show(catalogue.currency);
    assert_eq!(catalogue.supplier, "Tarnholt Ship Stores");
    assert_eq!(
        (catalogue.port.as_deref(), catalogue.terms.as_deref()),
        (Some("Port Ansel"), Some("thirty days"))
    );
    assert_eq!(catalogue.tax.to_string(), "7.25%");
    assert_eq!(shown(catalogue.delivery.charge), "45.00");
    assert_eq!(catalogue.delivery.free_from.map(shown).as_deref(), Some("1500.00"));
    let first = &catalogue.items[0];
    assert_eq!((first.pack, first.least, first.stock, first.lead), (4, 2, Some(12), 10));
    assert_eq!(first.holds, Day::parse("2026-12-10").ok());
    assert_eq!(first.place.key, "items[0]");
    let second = &catalogue.items[1];
    assert_eq!((second.pack, second.least, second.stock, second.lead), (1, 1, None, 3));
    assert_eq!(second.holds, Day::parse("2027-01-31").ok());
}

#[test]
fn amounts_keep_the_digits_that_are_written() {
    let catalogue = read(CATALOGUE);
    let prices: Vec<String> =
        catalogue.items.iter().map(|item| item.price.show(catalogue.currency)).collect();
    assert_eq!(prices, ["184.50", "184.10", "90.00", "40.00", "15.00", "25.00", "0.05"]);
    let quoted = read(&swapped("price: 184.10", "price: \"184,10\""));
    assert_eq!(quoted.items[1].price, catalogue.items[1].price);
    // Above 2^53, or with a last digit that no binary fraction keeps.
    let fine = read(&swapped("price: 184.10", "price: 9007199.29"));
    assert_eq!(fine.items[1].price.show(fine.currency), "9007199.29");
    let flat = read(&swapped("delivery: { charge: 45.00, free from: 1500.00 }", "delivery: 12.10"));
    assert_eq!(flat.delivery.charge.show(flat.currency), "12.10");
    assert_eq!(flat.delivery.free_from, None);
}

#[test]
fn a_tool_comes_as_it_is_labelled() {
    let catalogue = read(CATALOGUE);
    let given = &given(&catalogue, 0)[0];
    let words = words();
    assert_eq!(words.kind(given.tool.kind).id, "long-line-cutter");
    assert_eq!((given.tool.mark.as_str(), given.tool.count), ("TS-110", 1));
    assert_eq!(given.tool.state, State::Serviceable);
    assert_eq!(given.tool.whereabouts, Whereabouts::Aboard);
    assert_eq!(given.tool.place.key, "items[0].tool");
    assert_eq!(given.conforms, ["Rule, A.1"]);
    assert!(given.inspected && given.tool.inspected.is_none() && given.tool.conforms.is_empty());
    let reading = &given.tool.readings(words.find_attribute("handle").unwrap())[0];
    assert_eq!(reading.how, How::Label);
    assert_eq!((reading.by.as_deref(), reading.on), (Some("Tarnholt Ship Stores"), None));
    let Datum::Figure(handle) = &reading.datum else { panic!("{reading:?}") };
    assert_eq!(
        handle.length(),
        crate::measure::Figure::parse("8 ft", QuantityKind::Length).unwrap().length()
    );
}

#[test]
fn tools_of_a_set_have_letters_and_spares_fit_items_and_kinds() {
    let catalogue = read(CATALOGUE);
    let set: Vec<_> = given(&catalogue, 2)
        .iter()
        .map(|given| (given.tool.mark.as_str(), given.tool.count, given.tool.place.key.as_str()))
        .collect();
    assert_eq!(set, [("TS-900a", 1, "items[2].tools[0]"), ("TS-900b", 2, "items[2].tools[1]")]);
    assert_eq!(given(&catalogue, 2)[0].tool.name.as_deref(), Some("small pliers"));
    let blades = &given(&catalogue, 1)[0];
    let net = words().find_kind("dip net").unwrap();
    assert_eq!(blades.fits, [Fits::Item("TS-900".into()), Fits::Kind(net)]);
    assert_eq!(blades.lasts, Some(Interval::Months(24)));
    let edition = words().find_attribute("edition").unwrap();
    let said = &given(&catalogue, 6)[0].tool.readings(edition)[0].datum;
    assert_eq!(*said, Datum::Word("2.10".into()));
}

#[test]
fn extensions_and_services_are_read() {
    let catalogue = read(CATALOGUE);
    let words = words();
    let ids = |kinds: &[crate::model::vocabulary::KindId]| -> Vec<String> {
        kinds.iter().map(|kind| words.kind(*kind).id.clone()).collect()
    };
    let Gives::Extension { kinds, by, per_tool } = &catalogue.items[3].gives else { panic!() };
    assert_eq!(ids(kinds), ["long-line-cutter", "dip-net"]);
    assert_eq!((by.show_metric_exact().as_str(), *per_tool), ("0.6096 m", 2));
    let does = |item: usize| match &catalogue.items[item].gives {
        Gives::Service { mends, inspects, .. } => (*mends, *inspects),
        other => panic!("{other:?}"),
    };
    assert_eq!((does(4), does(5)), ((false, true), (true, false)));
}

mod properties {
    use super::*;
    use crate::load::form::catalogue::CatalogueFile;
    use crate::load::read::parse::is_read_alike;
    use crate::load::tests::hostile::{assert_reasons, damaged};
    use proptest::prelude::*;

    proptest! {
        #![proptest_config(ProptestConfig {
            cases: 256,
            failure_persistence: None,
            ..ProptestConfig::default()
        })]

        /// A catalogue with any piece overwritten by anything is read or
        /// refused with a reason; what is read at once is read alike part by
        /// part.
        #[test]
        fn a_damaged_catalogue_is_read_or_refused_with_a_reason(
            at in 0..CATALOGUE.len(),
            length in 0usize..12,
            damage in "[ \\n\\t:\\[\\]{}\"'&*!|>%@#$,.a-z0-9~-]{0,6}",
        ) {
            match read_catalogue("c.yaml", &damaged(CATALOGUE, at, length, &damage), &words()) {
                Ok((_, source)) => prop_assert!(is_read_alike::<CatalogueFile>(&source)),
                Err(refusal) => {
                    prop_assert!(!refusal.problems.is_empty());
                    assert_reasons(&refusal.problems, "a supplier");
                }
            }
        }
    }
}
