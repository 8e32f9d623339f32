//! How long the worst check takes: kits of 200 tools drawn at random, under
//! every shipped profile and a made-up one in which twelve requirements compete
//! for the same tools. Prints a table; asserts nothing.
//!
//! `cargo bench --bench worst` draws 1,000 kits for each profile;
//! `KITMUSTER_CASES`, `KITMUSTER_TOOLS`, `KITMUSTER_SEED` and
//! `KITMUSTER_PROFILE` (a part of its id) draw others.
#![allow(clippy::disallowed_methods, clippy::print_stdout, clippy::unwrap_used)]

#[path = "fleet/mod.rs"]
mod fleet;
#[path = "worst/kits.rs"]
mod kits;

use kitmuster::engine::{self, Depth, Request};
use kitmuster::load::Library;
use kitmuster::measure::Day;
use kitmuster::model::profile::Profile;
use kitmuster::model::vessel::{Trust, Vessel};
use std::hint::black_box;
use std::sync::Arc;
use std::time::{Duration, Instant};

fn number(name: &str, usual: u64) -> u64 {
    std::env::var(name).ok().and_then(|text| text.parse().ok()).unwrap_or(usual)
}

fn main() {
    let library = Library::shipped().unwrap();
    let tools = usize::try_from(number("KITMUSTER_TOOLS", 200)).unwrap();
    let (first, cases) = (number("KITMUSTER_SEED", 1), number("KITMUSTER_CASES", 1_000));
    let wanted = std::env::var("KITMUSTER_PROFILE").unwrap_or_default();
    println!("{cases} kits of {tools} tools for each profile, in ms");
    println!("{:<42}{:>10}{:>10}{:>10}  seed", "", "median", "99 %", "worst");
    for profile in kits::profiles(&library).iter().filter(|one| one.id.contains(&wanted)) {
        let time = |seed| {
            let vessel = kits::kit(&library.vocabulary, profile, seed, tools);
            (timed(&library, profile, &vessel), seed)
        };
        let mut times: Vec<(Duration, u64)> = (first..first + cases).map(time).collect();
        times.sort_unstable();
        let at = |share: usize| times[(times.len() - 1) * share / 100].0.as_secs_f64() * 1e3;
        let worst = times.last().unwrap().1;
        println!("{:<42}{:>10.1}{:>10.1}{:>10.1}  {worst}", profile.id, at(50), at(99), at(100));
    }
}

fn timed(library: &Library, profile: &Arc<Profile>, vessel: &Vessel) -> Duration {
    let day = |text| Some(Day::parse(text).unwrap());
    let start = Instant::now();
    black_box(engine::check(&Request {
        vocabulary: &library.vocabulary,
        profiles: &[],
        asked: std::slice::from_ref(profile),
        vessel,
        inspections: &[],
        departure: day(kits::DAY).unwrap(),
        back: day("2026-03-12"),
        trust: Trust::All,
        depth: Depth::Whole,
    }));
    start.elapsed()
}
