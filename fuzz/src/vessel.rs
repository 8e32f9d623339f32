//! A vessel's inventory: what is read stands where it is said to stand, and is
//! judged and printed.

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
    told::stands(&source, "name", &vessel.name);
    for tool in vessel.kit.iter().filter(|tool| tool.place.key.starts_with("kit[")) {
        told::stands(&source, &format!("{}.mark", tool.place.key), &tool.mark);
    }
    if vessel.kit.len() > aboard::MOST_TOOLS {
        return;
    }
    // The inverses try many changes; a small kit shows their slips as well.
    let depth = if vessel.kit.len() <= 3 { Depth::Whole } else { Depth::Findings };
    let check = aboard::orders(&[], depth).check(vessel, &[]);
    aboard::print(&check, &[source], words);
}
