//! The time of a quote in process, and whether the basket is proved.

use crate::catalogues::{self, ORDERED};
use crate::vessels::{self, Which};
use kitmuster::load::{self, Library};
use kitmuster::measure::{Currency, Day, Money};
use kitmuster::model::finding::Verdict;
use kitmuster::quote::{Bound, OneVessel, Order, Quote, quote};
use std::time::{Duration, Instant};

/// As long as the command searches unless told otherwise.
const PATIENCE: Duration = Duration::from_secs(60);

/// One quote.
struct Row {
    seed: u64,
    took: Duration,
    quote: Quote,
}

/// Measures so many seeds of each size, vessels by items.
pub(crate) fn measure(sizes: &[(usize, usize)], seeds: u64) {
    let library = Library::shipped().unwrap();
    println!("vessels items seed        ms  ms/vessel   ready  open        total  proved");
    for (count, items) in sizes {
        let rows: Vec<Row> =
            (1..=seeds).map(|seed| measured(seed, *count, *items, &library)).collect();
        let times: Vec<f64> = rows.iter().map(|row| milliseconds(row.took)).collect();
        let worst = times.iter().copied().fold(0.0, f64::max);
        let proved = rows.iter().filter(|row| row.quote.bound == Bound::Cheapest).count();
        println!(
            "{count:>7} {items:>5}  all {worst:>9.1} {:>10.1}  at worst; {proved} of {} proved",
            worst / *count as f64,
            rows.len(),
        );
    }
}

fn measured(seed: u64, count: usize, items: usize, library: &Library) -> Row {
    let folder = crate::folder(&format!("quote-{seed}-{count}x{items}"));
    let words = &library.vocabulary;
    let paths = catalogues::write(&folder.join("suppliers"), seed, items);
    let load = |path: &std::path::PathBuf| load::load_catalogue(path, words).unwrap().0;
    let catalogues: Vec<_> = paths.iter().map(load).collect();
    let paths = vessels::write(&folder.join("vessels"), seed, Which::GulfAndHouse, count);
    let load = |path: &std::path::PathBuf| {
        let (vessel, source) = load::load_vessel(path, words).unwrap();
        let (departure, back) = (vessel.trip.departure.unwrap(), vessel.trip.back);
        OneVessel { file: source.file, vessel, inspections: Vec::new(), departure, back }
    };
    let vessels: Vec<OneVessel> = paths.iter().map(load).collect();
    let order = Order {
        vocabulary: words,
        profiles: &library.profiles,
        asked: &[],
        catalogues: &catalogues,
        vessels: &vessels,
        ordered: Day::parse(ORDERED).unwrap(),
        with_recommended: false,
        one_supplier: false,
        explain: false,
        patience: PATIENCE,
    };
    let start = Instant::now();
    let quote = quote(&order).unwrap();
    let row = Row { seed, took: start.elapsed(), quote };
    show(&row, count, items);
    row
}

fn milliseconds(time: Duration) -> f64 {
    time.as_secs_f64() * 1000.0
}

fn show(row: &Row, count: usize, items: usize) {
    let quote = &row.quote;
    let ready = quote.vessels.iter().filter(|v| v.after.verdict == Verdict::Ready).count();
    let open: usize = quote.vessels.iter().map(|vessel| vessel.unmet.len()).sum();
    let time = milliseconds(row.took);
    println!(
        "{count:>7} {items:>5} {:>4} {time:>9.1} {:>10.1} {ready:>7} {open:>5} {:>12}  {}",
        row.seed,
        time / count as f64,
        amount(quote.cost.total, quote.currency),
        proof(quote),
    );
}

fn amount(money: Money, currency: Currency) -> String {
    crate::catalogues::money(i64::try_from(money.coins(currency)).unwrap())
}

/// That it is proved, or how much cheaper it might be.
fn proof(quote: &Quote) -> String {
    match quote.bound {
        Bound::Cheapest => "yes".to_owned(),
        Bound::AtLeast(least) => {
            let (least, total) =
                (least.coins(quote.currency) as f64, quote.cost.total.coins(quote.currency) as f64);
            format!("no, within {:.2} %", 100.0 * (total - least) / total.max(1.0))
        }
    }
}
