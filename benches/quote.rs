//! How long a quote takes, on invented vessels and catalogues, and whether
//! another program finds the same least total. Prints tables; asserts
//! nothing about time.
//!
//! `cargo bench --bench quote` measures 1 and 20 vessels with 60 and 600
//! items; `cargo bench --bench quote -- times 200x600 3` so many vessels by
//! so many items (several such words are several sizes), with three seeds
//! each. `cargo bench --bench quote -- peer 200` compares 200 small cases,
//! and some larger, with the program of its own in `benches/peer/cheapest.py`
//! (it needs Python 3; PyYAML and SciPy are installed below `target/`).
#![allow(clippy::disallowed_methods, clippy::print_stdout, clippy::unwrap_used)]

#[path = "quote/catalogues.rs"]
mod catalogues;
#[path = "fleet/mod.rs"]
mod fleet;
#[path = "quote/goods.rs"]
mod goods;
#[path = "quote/second.rs"]
mod second;
#[path = "quote/times.rs"]
mod times;
#[path = "quote/vessels.rs"]
mod vessels;

use std::path::PathBuf;

/// A folder of its own for what is written.
fn folder(name: &str) -> PathBuf {
    let folder = PathBuf::from(env!("CARGO_TARGET_TMPDIR")).join(name);
    let _ = std::fs::remove_dir_all(&folder);
    folder
}

fn main() {
    let words: Vec<String> = std::env::args().skip(1).filter(|w| !w.starts_with("--")).collect();
    let number = |at: usize| words.get(at).and_then(|word| word.parse().ok());
    match words.first().map(String::as_str) {
        Some("peer") => second::compare(number(1).unwrap_or(200), number(2).unwrap_or(1)),
        _ => {
            let size = |word: &String| {
                let (vessels, items) = word.split_once('x')?;
                Some((vessels.parse().ok()?, items.parse().ok()?))
            };
            let sizes: Vec<(usize, usize)> = words.iter().filter_map(size).collect();
            let usual = vec![(1, 60), (1, 600), (20, 60), (20, 600)];
            let seeds = words.iter().rev().find_map(|word| word.parse().ok()).unwrap_or(3);
            times::measure(if sizes.is_empty() { &usual } else { &sizes }, seeds);
        }
    }
}
