//! What the targets have at hand: the shipped library, read once, and an
//! invented vessel that is judged by whatever was read.

use kitmuster::engine::Depth;
use kitmuster::fleet::Orders;
use kitmuster::load::{self, Library, Source};
use kitmuster::measure::Day;
use kitmuster::model::check::Check;
use kitmuster::model::profile::Profile;
use kitmuster::model::vessel::{Trust, Vessel};
use kitmuster::model::vocabulary::Vocabulary;
use kitmuster::report::{self, Locale, Subject};
use std::sync::{Arc, OnceLock};

use crate::told;

/// The most tools that a vessel may have to be judged here, so that a run
/// stays quick; how long a full kit takes is measured in `benches/`.
pub const MOST_TOOLS: usize = 12;

const SAMPLE: &str = include_str!("../../vessels/stillwater-heron.yaml");

/// The shipped library.
pub fn library() -> &'static Library {
    static LIBRARY: OnceLock<Library> = OnceLock::new();
    LIBRARY.get_or_init(|| Library::shipped().expect("the shipped library is sound"))
}

/// A vessel with a kit.
pub fn vessel() -> &'static (Vessel, Source) {
    static VESSEL: OnceLock<(Vessel, Source)> = OnceLock::new();
    VESSEL.get_or_init(|| {
        load::read_vessel("sample.yaml", SAMPLE, &library().vocabulary).expect("a sound sample")
    })
}

/// The day on which everything is judged that says no other.
pub fn day() -> Day {
    Day::parse("2026-11-25").expect("a day")
}

/// An audit of that day by the shipped library.
pub fn orders(asked: &[Arc<Profile>], depth: Depth) -> Orders<'_> {
    Orders {
        library: library(),
        asked,
        on: None,
        back: None,
        date: day(),
        trust: Trust::All,
        depth,
    }
}

/// A check in print: it fits the terminal and steers nothing, and its JSON is
/// JSON.
pub fn print(check: &Check, sources: &[Source], vocabulary: &Vocabulary) {
    let subject = Subject { check, vocabulary, sources, locale: Locale::default(), freeing: None };
    told::page(&report::table(&subject, told::WIDTH));
    let json = report::wire::check(&subject).expect("a check has a JSON form");
    told::steers_nothing(&json);
    serde_json::from_str::<serde_json::Value>(&json).expect("JSON");
}
