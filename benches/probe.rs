//! probe
use kitmuster::{engine, load};
use std::time::Instant;
fn main() {
    let lib = load::Library::shipped().unwrap();
    let mut files: Vec<_> = std::fs::read_dir("vessels")
        .unwrap()
        .flatten()
        .map(|e| e.path())
        .filter(|p| p.extension().is_some_and(|e| e == "yaml"))
        .collect();
    files.sort();
    for f in files {
        let text = std::fs::read_to_string(&f).unwrap();
        let n = 300;
        let t = Instant::now();
        for _ in 0..n {
            std::hint::black_box(load::read_vessel("a", &text, &lib.vocabulary).unwrap());
        }
        let parse = t.elapsed().as_secs_f64() / n as f64;
        let (v, _) = load::read_vessel("a", &text, &lib.vocabulary).unwrap();
        let dep = v.trip.departure.unwrap_or(kitmuster::measure::Day::parse("2026-12-01").unwrap());
        let req = engine::Request {
            vocabulary: &lib.vocabulary,
            profiles: &lib.profiles,
            asked: &[],
            vessel: &v,
            inspections: &[],
            departure: dep,
            back: v.trip.back,
            trust: Default::default(),
            depth: engine::Depth::Findings,
        };
        let m = 20;
        let t = Instant::now();
        for _ in 0..m {
            std::hint::black_box(engine::check(&req));
        }
        let chk = t.elapsed().as_secs_f64() / m as f64;
        println!(
            "{:40} lines {:4} load {:7.1} us  check {:8.1} us",
            f.display(),
            text.lines().count(),
            parse * 1e6,
            chk * 1e6
        );
    }
}
