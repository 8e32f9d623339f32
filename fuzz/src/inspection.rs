//! An inspection record: read in two ways alike, then laid over a vessel,
//! which is judged on the day of the record and printed.

use crate::{aboard, told};
use kitmuster::engine::Depth;
use kitmuster::load;

const NAME: &str = "inspection.yaml";

pub fn run(text: &str) {
    let words = &aboard::library().vocabulary;
    let (inspection, source) = match load::read_inspection(NAME, text, words) {
        Ok(read) => read,
        Err(refusal) => return told::refusal(&refusal, NAME, text),
    };
    let slow = load::read_inspection(NAME, &told::slowly(text), words);
    told::alike(&inspection, slow.map(|(i, _)| i));
    let (vessel, own) = aboard::vessel().clone();
    let mut orders = aboard::orders(&[], Depth::Findings);
    orders.on = Some(inspection.on);
    let check = orders.check(vessel, &[inspection]);
    aboard::print(&check, &[own, source], words);
}
