//! A vocabulary: what is read can be printed, and every kind and attribute is
//! found by its id.

use crate::told;
use kitmuster::load;
use kitmuster::report::{self, Locale};

const NAME: &str = "vocabulary.yaml";

pub fn run(text: &str) {
    let words = match load::read_vocabulary(NAME, text) {
        Ok(words) => words,
        Err(refusal) => return told::refusal(&refusal, NAME, text),
    };
    told::page(&report::vocabulary(&words, Locale::default(), told::WIDTH));
    for kind in &words.kinds {
        let found = words.find_kind(&kind.id).expect("a kind is found by its id");
        assert_eq!(words.kind(found).id, kind.id);
        told::page(&report::kind(&words, found, Locale::default(), told::WIDTH));
    }
    for attribute in &words.attributes {
        let found = words.find_attribute(&attribute.id).expect("found by its id");
        assert_eq!(words.attribute(found).id, attribute.id);
    }
}
