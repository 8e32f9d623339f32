//! How fast a fleet is audited, on invented vessels, beside the time of
//! reading and parsing the same files and beside a straightforward checker in
//! Python. Prints tables; asserts nothing about time.
//!
//! `cargo bench --bench audit` audits 1,000 vessels; `cargo bench --bench
//! audit -- 1000 10000 100000` takes sizes of your own (100,000 vessels need
//! half a gigabyte below `target/` and a few minutes).
#![allow(clippy::disallowed_methods, clippy::print_stdout, clippy::unwrap_used)]

#[path = "audit/command.rs"]
mod command;
#[path = "fleet/mod.rs"]
mod fleet;
#[path = "audit/peer.rs"]
mod peer;

use kitmuster::engine::{self, Depth, Terms};
use kitmuster::fleet::{Files, Orders, Records, rows};
use kitmuster::load::{self, Library};
use kitmuster::measure::{Day, Units};
use kitmuster::model::vessel::{Trust, Vessel};
use kitmuster::report;
use rayon::prelude::*;
use std::hint::black_box;
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};

const SEED: u64 = 7;
/// How many of a thousand files are refused.
const BROKEN: u64 = 2;
/// As many as the command holds at a time.
const AT_ONCE: usize = 1024;
/// The day of the audit.
pub(crate) const DATE: &str = "2026-06-01";

/// What was measured of a fleet.
struct Row {
    size: usize,
    steps: Vec<(&'static str, Duration)>,
    peak_kib: Option<u64>,
}

fn main() {
    let sizes: Vec<usize> = std::env::args().filter_map(|word| word.parse().ok()).collect();
    let sizes = if sizes.is_empty() { vec![1000] } else { sizes };
    let library = Library::shipped().unwrap();
    println!("{} threads", rayon::current_num_threads());
    let mut all = Vec::new();
    for size in sizes {
        let folder = written(size);
        all.push(measured(size, &folder, &library));
        show(all.last().unwrap());
        peer::compare(&folder, size, all.last().unwrap());
    }
    per_vessel(&all);
}

/// The fleet's folder, written if it is not there yet.
fn written(size: usize) -> PathBuf {
    let folder =
        Path::new(env!("CARGO_TARGET_TMPDIR")).join(format!("fleet-{SEED}-{BROKEN}-{size}"));
    let done = folder.with_extension("done");
    if !done.exists() {
        let _ = std::fs::remove_dir_all(&folder);
        fleet::Fleet { seed: SEED, size, broken: BROKEN }.write(&folder);
        std::fs::write(&done, "").unwrap();
    }
    folder
}

/// The shortest of several runs, fewer of a large fleet.
fn timed(size: usize, mut run: impl FnMut()) -> Duration {
    let rounds = (20_000 / size).clamp(2, 5);
    let once = |_| {
        let start = Instant::now();
        run();
        start.elapsed()
    };
    (0..rounds).map(once).min().unwrap()
}

fn measured(size: usize, folder: &Path, library: &Library) -> Row {
    let files = Files::find(&[folder.to_path_buf()]).vessels;
    let paths: Vec<&PathBuf> = files.iter().map(|file| file.as_ref().unwrap()).collect();
    assert_eq!(paths.len(), size);
    let words = &library.vocabulary;
    let read = |path: &PathBuf| std::fs::read_to_string(path).unwrap();
    let mut steps = Vec::new();
    let mut step = |name, run: &mut dyn FnMut()| steps.push((name, timed(size, run)));
    step("reading", &mut || paths.par_iter().for_each(|path| drop(black_box(read(path)))));
    step("reading and parsing the YAML", &mut || {
        paths.par_iter().for_each(|path| {
            black_box(load::has_shape_of_vessel(&read(path)));
        });
    });
    step("loading: checked into the model", &mut || {
        paths.par_iter().for_each(|path| drop(black_box(load::load_vessel(path, words))));
    });
    let mut lines = Vec::new();
    step("the whole audit, in process", &mut || lines = audited(&files, library));
    let (command, peak_kib) = command::audit(folder, (20_000 / size).clamp(2, 5));
    assert!(command.lines == lines.concat(), "the command and the library differ");
    steps.push(("the whole audit, as the command", command.wall));
    steps.insert(3, ("the engine alone", judged(&paths, library)));
    Row { size, steps, peak_kib }
}

/// The time of the engine over vessels that are loaded already, a part of the
/// fleet at a time.
fn judged(paths: &[&PathBuf], library: &Library) -> Duration {
    let mut sum = Duration::ZERO;
    for part in paths.chunks(AT_ONCE) {
        let load = |path: &&PathBuf| load::load_vessel(path, &library.vocabulary).ok();
        let vessels: Vec<Vessel> = part.par_iter().filter_map(load).map(|(v, _)| v).collect();
        let start = Instant::now();
        vessels.into_par_iter().for_each(|vessel| drop(black_box(check(vessel, library))));
        sum += start.elapsed();
    }
    sum
}

fn check(vessel: Vessel, library: &Library) -> kitmuster::model::check::Check {
    let terms = Terms {
        vocabulary: &library.vocabulary,
        profiles: &library.profiles,
        asked: &[],
        departure: vessel.trip.departure.unwrap_or(Day::parse(DATE).unwrap()),
        back: vessel.trip.back,
        trust: Trust::All,
        depth: Depth::Findings,
    };
    engine::check_own(vessel, &[], &terms)
}

/// The lines of the audit.
fn audited(files: &[Result<PathBuf, load::Refusal>], library: &Library) -> Vec<String> {
    let orders = Orders {
        library,
        asked: &[],
        on: None,
        back: None,
        date: Day::parse(DATE).unwrap(),
        trust: Trust::All,
        depth: Depth::Findings,
    };
    let line =
        |row| report::wire::audit_line(&row, &library.vocabulary, Units::Both.into()).unwrap();
    files
        .chunks(AT_ONCE)
        .map(|part| rows(&orders, part, &Records::default(), line, || ()).concat())
        .collect()
}

fn milliseconds(duration: Duration) -> String {
    format!("{:.1}", duration.as_secs_f64() * 1000.0)
}

fn microseconds(row: &Row, duration: Duration) -> f64 {
    duration.as_secs_f64() * 1e6 / row.size as f64
}

fn show(row: &Row) {
    println!("\n{} vessels{:>33}{:>14}{:>12}", row.size, "ms", "us a vessel", "/ parsing");
    let parsing = row.steps[1].1.as_secs_f64();
    for (name, time) in &row.steps {
        println!(
            "  {name:<34}{:>10}{:>14.1}{:>12.2}",
            milliseconds(*time),
            microseconds(row, *time),
            time.as_secs_f64() / parsing
        );
    }
    if let Some(peak) = row.peak_kib {
        println!("  peak memory of the command: {:.1} MB", peak as f64 * 1024.0 / 1e6);
    }
}

/// The cost of a vessel by the size of the fleet, against the smallest.
fn per_vessel(all: &[Row]) {
    if all.len() < 2 {
        return;
    }
    println!("\ncost of a vessel, as the command");
    let of = |row: &Row| microseconds(row, row.steps.last().unwrap().1);
    for row in all {
        println!("  {:>8} vessels {:>8.1} us {:>6.2}", row.size, of(row), of(row) / of(&all[0]));
    }
}
