//! A file of techniques: what is read answers every situation on a vessel.

use crate::{aboard, told};
use kitmuster::engine::Depth;
use kitmuster::freeing::Prepared;
use kitmuster::freeing::{self, Terms};
use kitmuster::load;
use kitmuster::model::check::Check;
use std::sync::{Arc, OnceLock};

const NAME: &str = "techniques.yaml";

fn check() -> &'static Check {
    static CHECK: OnceLock<Check> = OnceLock::new();
    let sample = || aboard::vessel().0.clone();
    CHECK.get_or_init(|| aboard::orders(&[], Depth::Findings).check(sample(), &[]))
}

pub fn run(text: &str) {
    let words = &aboard::library().vocabulary;
    let practice = match load::read_techniques(NAME, text, words) {
        Ok(practice) => Arc::new(practice),
        Err(refusal) => return told::refusal(&refusal, NAME, text),
    };
    let prepared = Prepared::new(&practice);
    let terms = Terms { vocabulary: words, prepared: &prepared, catalogues: &[] };
    let options = freeing::of_check(&terms, check());
    let tally = freeing::tally(std::slice::from_ref(&options));
    told::steers_nothing(&format!("{:?}", tally).replace(['\n', '\t'], " "));
}
