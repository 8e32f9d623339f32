//! Invented catalogues of any size: the same seed always gives the same.
//!
//! Packs, least orders, scarce stock, late deliveries, prices that lapsed,
//! pieces that lengthen a tool, work on a tool, sets, spares, delivery with
//! and without a free sum, tax.

use super::goods::{SETS, SORTS, Set, Sort};
use crate::fleet::draw::Draw;
use std::fmt::Write;
use std::path::{Path, PathBuf};

/// The day of every order.
pub(crate) const ORDERED: &str = "2026-03-25";

const SUPPLIERS: [&str; 3] = ["Dunmarrow Chandlery", "Saltern Cove Supply", "Verrick Gear Loft"];
const TAXES: [&str; 6] = ["0%", "6%", "7.25%", "8.875%", "19%", "6.625%"];
const POLES: &str = "[long-handled line cutter, long-handled dehooker for internal hooks, \
    long-handled dehooker for external hooks, dip net, boat hook]";
const WORKED_ON: &str = "[long-handled line cutter, long-handled dehooker for internal hooks, \
    dip net, bolt cutters, needle-nose pliers, monofilament line cutters, tire]";

/// What a stream of goods is drawn from.
struct Shelf {
    draw: Draw,
    /// Numbers of the line cutters so far, for the blades to fit.
    cutters: Vec<String>,
}

/// Writes the catalogues into the folder: about so many items, shared among
/// two or three suppliers.
pub(crate) fn write(folder: &Path, seed: u64, items: usize) -> Vec<PathBuf> {
    std::fs::create_dir_all(folder).unwrap();
    let mut draw = Draw::of(seed, 1_000_003);
    let suppliers = usize::try_from(draw.between(2, 3)).unwrap();
    let one = |at: usize| {
        let count = items / suppliers + usize::from(at < items % suppliers);
        let path = folder.join(format!("supplier-{}.yaml", at + 1));
        std::fs::write(&path, catalogue(seed, at, count)).unwrap();
        path
    };
    (0..suppliers).map(one).collect()
}

fn catalogue(seed: u64, at: usize, count: usize) -> String {
    let mut draw = Draw::of(seed, 2_000_003 + at as u64);
    let mut text = format!(
        "# An invented supplier.\nformat: catalogue/1\nsupplier: {}\ncurrency: USD\n\
         tax: {}\n{}lead: {} days\n\nitems:\n",
        SUPPLIERS[at],
        draw.one(&TAXES),
        delivery(&mut draw),
        draw.between(0, 7),
    );
    let mut shelf = Shelf { draw, cutters: Vec::new() };
    // Every sort has its turn, from a place of the supplier's own.
    let first = usize::try_from(shelf.draw.below(SORTS.len() as u64)).unwrap();
    for number in 0..count {
        shelf.item(number, &SORTS[(first + number) % SORTS.len()], &mut text);
    }
    text
}

fn delivery(draw: &mut Draw) -> String {
    let charge = draw.between(5, 60) * 100 + draw.between(0, 1) * 50;
    match draw.below(10) {
        0..2 => "delivery: 0\n".to_owned(),
        2..4 => format!("delivery: {}\n", money(charge)),
        _ => format!(
            "delivery: {{ charge: {}, free from: {} }}\n",
            money(charge),
            money(draw.between(4, 40) * 2_500)
        ),
    }
}

pub(crate) fn money(cents: i64) -> String {
    format!("{}.{:02}", cents / 100, cents % 100)
}

/// A figure of those that a line may have, and how long it is in half feet
/// if it is a pole or a rope.
fn figure(values: &str, draw: &mut Draw) -> (String, i64) {
    let half_feet = |halves: i64| match halves % 2 {
        0 => format!("{} ft", halves / 2),
        _ => format!("{} ft 6 in", halves / 2),
    };
    if matches!(values, "reach" | "rope") {
        let halves = draw.between(10, 21);
        return (half_feet(halves), halves);
    }
    let (bad, good): (Vec<&str>, Vec<&str>) =
        values.split('|').partition(|value| value.starts_with('!'));
    let list = if !bad.is_empty() && draw.percent(8) { &bad } else { &good };
    (draw.one(list).trim_start_matches('!').to_owned(), 0)
}

impl Shelf {
    fn item(&mut self, number: usize, sort: &Sort, text: &mut String) {
        match self.draw.below(100) {
            0..5 => self.lengthens(number, text),
            5..8 => self.service(number, text),
            8..13 => {
                let at = usize::try_from(self.draw.below(SETS.len() as u64)).unwrap();
                self.set(number, &SETS[at], text);
            }
            _ => self.tool(number, sort, text),
        }
    }

    fn tool(&mut self, number: usize, sort: &Sort, text: &mut String) {
        let name = format!("{}-{number}", sort.letters);
        let _ = write!(text, "  - number: {name}\n    description: {}\n    tool:\n", sort.kind);
        let longer = self.lines("      ", sort.kind, sort.lines, text);
        match sort.letters {
            "LC" => self.cutters.push(name),
            "BL" => {
                let fits = match self.cutters.last() {
                    Some(cutter) if self.draw.percent(50) => cutter.clone(),
                    _ => "long-handled line cutter".to_owned(),
                };
                let _ = writeln!(text, "      fits: [{fits}]");
            }
            "HP" | "CD" => {}
            _ => {
                if self.draw.percent(70) {
                    text.push_str("      inspected: yes\n");
                }
                if self.draw.percent(6) {
                    let months = self.draw.between(1, 9);
                    let _ = writeln!(text, "      lasts: {months} months");
                }
            }
        }
        if let Some(clause) = sort.clause
            && self.draw.percent(50)
        {
            let _ = writeln!(text, "      conforms: [\"{clause}\"]");
        }
        self.terms(sort.about + sort.about * longer / 20, text);
    }

    /// The lines of a tool; gives how long it is.
    fn lines(
        &mut self,
        before: &str,
        kind: &str,
        lines: &[(&str, &str)],
        text: &mut String,
    ) -> i64 {
        let mut long = 0;
        let _ = writeln!(text, "{before}kind: {kind}");
        for (key, values) in lines {
            let (value, halves) = figure(values, &mut self.draw);
            let _ = writeln!(text, "{before}{key}: {value}");
            long = long.max(halves);
        }
        long
    }

    fn set(&mut self, number: usize, (name, about, tools): &Set, text: &mut String) {
        let _ = write!(text, "  - number: SET-{number}\n    description: {name}\n    tools:\n");
        for (kind, lines) in *tools {
            let mut one = String::new();
            self.lines("        ", kind, lines, &mut one);
            one.push_str("        inspected: yes\n");
            one.replace_range(6..7, "-");
            text.push_str(&one);
        }
        self.terms(*about, text);
    }

    fn lengthens(&mut self, number: usize, text: &mut String) {
        let by = self.draw.one(&["6 in", "1 ft", "1 ft 6 in", "2 ft", "3 ft"]);
        let most = self.draw.between(1, 3);
        let _ = write!(
            text,
            "  - number: EX-{number}\n    description: pole extension, {by}\n    lengthens:\n      \
             kinds: {POLES}\n      by: {by}\n      per tool: {most}\n"
        );
        self.terms(2_000 + by.len() as i64 * 300, text);
    }

    fn service(&mut self, number: usize, text: &mut String) {
        let does = self.draw.one(&["inspection", "repair", "repair, inspection"]);
        let _ = write!(
            text,
            "  - number: SV-{number}\n    description: {does}\n    service:\n      kinds: \
             {WORKED_ON}\n      does: [{does}]\n"
        );
        self.terms(2_400, text);
    }

    /// Price, packs, stock and time.
    fn terms(&mut self, about: i64, text: &mut String) {
        let draw = &mut self.draw;
        let pack = match draw.below(20) {
            0..13 => 1,
            13..16 => 2,
            16..19 => 4,
            _ => 10,
        };
        // A pack is cheaper by the piece.
        let off = if pack == 1 { 0 } else { draw.between(2, 25) };
        let price = about * pack * draw.between(65, 140) * (100 - off) / 10_000;
        let _ = writeln!(text, "    price: {}", money(price.max(1)));
        if pack > 1 {
            let _ = writeln!(text, "    pack: {pack}");
        }
        if draw.percent(10) {
            let _ = writeln!(text, "    least order: {}", draw.between(2, 4));
        }
        if draw.percent(40) {
            let _ = writeln!(text, "    stock: {}", draw.between(0, 6));
        }
        if draw.percent(15) {
            let _ = writeln!(text, "    lead: {} days", draw.between(0, 90));
        }
        if draw.percent(8) {
            let day = draw.one(&["2026-03-24", "2026-03-25", "2026-12-31"]);
            let _ = writeln!(text, "    price holds until: {day}");
        }
    }
}
