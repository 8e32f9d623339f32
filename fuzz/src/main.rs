//! Coverage-guided attempts to break what reads files and figures: one
//! program, whose target is named by `KITMUSTER_TARGET`, so that all of them
//! are built and linked once. `fuzz/run.sh` runs it.
//!
//! A target gives any text to one reader and asserts what must be true of
//! whatever comes back. With `KITMUSTER_SEEDS` the program writes seeds and
//! words that are made, not stored, into that folder, and ends.
//!
//! | target | what must be true |
//! | --- | --- |
//! | all | no panic, no overflow, at most 2 s of processor time and 1 GiB |
//! | every file | each problem has words, a place inside the text, one line, no full stop; nothing steers the terminal; the page keeps to 80 columns; never the bare "this cannot be read as …" |
//! | vessel, inspection | laid over a sample vessel: up to 12 tools are judged, the page and the JSON hold |
//! | profile | what joins the library is a draft too; a draft judges a vessel and prints |
//! | vocabulary | every kind and attribute is found by its id; the pages print |
//! | techniques | every situation is answered for a vessel |
//! | record | as it is, and with its digests put right: writes back equal, is judged again, or is compared with an audit of today |
//! | length, figures | what is read prints and reads again to the same step, never off to the wrong side |
//! | swollen | one piece repeated to 128 KiB, for each reader: what is not linear is too slow |
//!
//! What is found becomes a test in `tests/it/fuzz_found.rs`, on its smallest text,
//! before it is mended.
#![no_main]

mod aboard;
mod catalogue;
mod figures;
mod inspection;
mod length;
mod profile;
mod record;
mod seeds;
mod swollen;
mod techniques;
mod told;
mod vessel;
mod vocabulary;

use libfuzzer_sys::fuzz_target;
use std::sync::OnceLock;
use std::time::{Duration, Instant};

/// How long any text may take, of the processor's time: what else the machine
/// does is no finding. This build is several times slower than what is shipped.
const LONGEST: Duration = Duration::from_secs(2);

/// A target: what is done with one text.
type Target = fn(&str);

/// Every target by its name.
const TARGETS: [(&str, Target); 10] = [
    ("vessel", vessel::run),
    ("inspection", inspection::run),
    ("catalogue", catalogue::run),
    ("profile", profile::run),
    ("vocabulary", vocabulary::run),
    ("techniques", techniques::run),
    ("record", record::run),
    ("length", length::run),
    ("figures", figures::run),
    ("swollen", swollen::run),
];

fn target() -> Target {
    static TARGET: OnceLock<Target> = OnceLock::new();
    *TARGET.get_or_init(|| {
        let name = std::env::var("KITMUSTER_TARGET").unwrap_or_default();
        let found = TARGETS.iter().find(|(known, _)| *known == name);
        let known = TARGETS.map(|(known, _)| known).join(", ");
        found.unwrap_or_else(|| panic!("KITMUSTER_TARGET is `{name}`; it is one of {known}")).1
    })
}

/// How long this thread has had the processor, where the system tells.
fn on_processor() -> Option<Duration> {
    let told = std::fs::read_to_string("/proc/thread-self/schedstat").ok()?;
    told.split_whitespace().next()?.parse().ok().map(Duration::from_nanos)
}

fuzz_target!(
    init: {
        if let Some(folder) = std::env::var_os("KITMUSTER_SEEDS") {
            seeds::write(folder.as_ref());
            std::process::exit(0);
        }
    },
    |data: &[u8]| {
        // What is no UTF-8 is refused before any reader sees it.
        if let Ok(text) = std::str::from_utf8(data) {
            let (start, began) = (on_processor(), Instant::now());
            target()(text);
            let took = match (start, on_processor()) {
                (Some(start), Some(end)) => end.saturating_sub(start),
                _ => began.elapsed(),
            };
            assert!(took < LONGEST, "{took:?} for {} bytes", text.len());
        }
    }
);
