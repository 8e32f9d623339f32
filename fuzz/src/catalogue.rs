//! A supplier's catalogue: read in two ways alike; its amounts can be printed
//! and reckoned with.

use crate::aboard;
use crate::told;
use kitmuster::load;

const NAME: &str = "catalogue.yaml";

pub fn run(text: &str) {
    let words = &aboard::library().vocabulary;
    let (catalogue, _) = match load::read_catalogue(NAME, text, words) {
        Ok(read) => read,
        Err(refusal) => return told::refusal(&refusal, NAME, text),
    };
    let slow = load::read_catalogue(NAME, &told::slowly(text), words);
    told::alike(&catalogue, slow.map(|(c, _)| c));
    assert!(catalogue.items.len() <= load::MOST_ITEMS);
    let charge = catalogue.delivery.charge;
    let tax = charge.tax(catalogue.tax, catalogue.currency);
    told::steers_nothing(&charge.plus(tax).show(catalogue.currency));
}
