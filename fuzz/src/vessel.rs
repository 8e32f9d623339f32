//! A vessel's inventory: read in two ways alike, then judged and printed.

use crate::{aboard, told};
use kitmuster::engine::Depth;
use kitmuster::load;

const NAME: &str = "vessel.yaml";

pub fn run(text: &str) {
    let words = &aboard::library().vocabulary;
    let (vessel, source) = match load::read_vessel(NAME, text, words) {
        Ok(read) => read,
        Err(refusal) => return told::refusal(&refusal, NAME, text),
    };
    told::alike(&vessel, load::read_vessel(NAME, &told::slowly(text), words).map(|(v, _)| v));
    if vessel.kit.len() > aboard::MOST_TOOLS {
        return;
    }
    // The inverses try many changes; a small kit shows their slips as well.
    let depth = if vessel.kit.len() <= 3 { Depth::Whole } else { Depth::Findings };
    let check = aboard::orders(&[], depth).check(vessel, &[]);
    aboard::print(&check, &[source], words);
}
