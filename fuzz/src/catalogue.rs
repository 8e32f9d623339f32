//! A supplier's catalogue: what is read stands where it is said to stand; its
//! amounts can be printed and reckoned with.

use crate::aboard;
use crate::told;
use kitmuster::load;

const NAME: &str = "catalogue.yaml";

pub fn run(text: &str) {
    let words = &aboard::library().vocabulary;
    let (catalogue, source) = match load::read_catalogue(NAME, text, words) {
        Ok(read) => read,
        Err(refusal) => return told::refusal(&refusal, NAME, text),
    };
    told::stands(&source, "supplier", &catalogue.supplier);
    for item in &catalogue.items {
        told::stands(&source, &format!("{}.number", item.place.key), &item.number);
    }
    assert!(catalogue.items.len() <= load::MOST_ITEMS);
    let charge = catalogue.delivery.charge;
    let tax = charge.tax(catalogue.tax, catalogue.currency);
    told::steers_nothing(&charge.plus(tax).show(catalogue.currency));
}
