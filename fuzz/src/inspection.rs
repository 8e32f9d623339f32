//! An inspection record: what is read stands where it is said to stand, and is
//! laid over a vessel, which is judged on the day of the record and printed.

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
    told::stands(&source, "vessel", &inspection.vessel);
    for found in &inspection.found {
        if let Some(mark) = &found.mark {
            told::stands(&source, &format!("{}.mark", found.place.key), mark);
        }
    }
    let (vessel, own) = aboard::vessel().clone();
    let mut orders = aboard::orders(&[], Depth::Findings);
    orders.on = Some(inspection.on);
    let check = orders.check(vessel, &[inspection]);
    aboard::print(&check, &[own, source], words);
}
