//! Lengths and other quantities as a person could write them, and the
//! freeboard in each of the ways in which it can be told.

use super::Draw;

const FOOT: i64 = 304_800_000;
pub(super) const INCH: i64 = 25_400_000;

impl Draw<'_> {
    pub(super) fn freeboards(&mut self) -> String {
        let four = 4 * FOOT;
        let pool = [
            four,
            four,
            four - 1,
            four + 1,
            four - INCH / 64,
            four + INCH / 64,
            3 * FOOT,
            4 * FOOT + 3 * INCH,
            5 * FOOT,
            5 * FOOT,
            6 * FOOT,
            6 * FOOT + 1,
            1_300_000_001,
            1_300_000_003,
            1_543_000_000,
            1_543_000_001,
            1_700_000_007,
            2 * FOOT,
        ];
        let (a, b) = (*self.chance.one_of(&pool), *self.chance.one_of(&pool));
        let (low, high) = (a.min(b), a.max(b));
        self.freeboard = a;
        let figure = self.length(a);
        match self.chance.below(40) {
            0 => String::new(),
            1 => format!("freeboard: {figure} from the working deck\n"),
            2..6 => {
                self.freeboard = high;
                format!("freeboard: {} to {}\n", self.length(low), self.length(high))
            }
            6 | 7 => {
                self.freeboard = high;
                let (low, high) = (self.length(low), self.length(high));
                format!(
                    "freeboard: {{ from: top of the rail, stations: [{{ name: port, freeboard: {low} }}, {{ name: starboard, freeboard: {high} }}] }}\n"
                )
            }
            8 | 9 => {
                let b = self.length(b);
                let how = ["", ", how: measured", ", how: label"];
                let (one, other) = (*self.chance.one_of(&how), *self.chance.one_of(&how));
                format!("freeboard: [{{ value: {figure}{one} }}, {{ value: {b}{other} }}]\n")
            }
            10 | 11 => {
                let error = *self.chance.one_of(&["1/8 in", "1 mm", "0.000001 mm", "6 in"]);
                format!("freeboard: {{ value: {figure}, error: {error} }}\n")
            }
            _ => format!("freeboard: {figure}\n"),
        }
    }

    /// A length, in one of the ways in which it can be written exactly.
    pub(super) fn length(&mut self, nanometres: i64) -> String {
        let n = nanometres.max(0);
        if n % 396_875 == 0 && self.chance.in_thousand(700) {
            let parts = n / 396_875;
            let (inches, mut over, mut under) = (parts / 64, parts % 64, 64);
            while over > 0 && over % 2 == 0 {
                (over, under) = (over / 2, under / 2);
            }
            let (feet, rest) =
                if self.chance.in_thousand(500) { (inches / 12, inches % 12) } else { (0, inches) };
            let mut words = Vec::new();
            if feet > 0 {
                words.push(format!("{feet} ft"));
            }
            match (rest, over) {
                (0, 0) if feet > 0 => {}
                (rest, 0) => words.push(format!("{rest} in")),
                (0, over) => words.push(format!("{over}/{under} in")),
                (rest, over) => words.push(format!("{rest} {over}/{under} in")),
            }
            return words.join(" ");
        }
        let (unit, size, places) = *self.chance.one_of(&[
            ("mm", 1_000_000, 6),
            ("cm", 10_000_000, 7),
            ("m", 1_000_000_000, 9),
        ]);
        let (whole, part) = (n / size, format!("{:0places$}", n % size));
        match part.trim_end_matches('0') {
            "" => format!("{whole} {unit}"),
            part => format!("{whole}.{part} {unit}"),
        }
    }

    pub(super) fn quantity(&mut self, attribute: &str, value: i64) -> String {
        match self.words.quantity(attribute) {
            "length" => self.length(value),
            "mass" if value % 453_592_370 == 0 => format!("{} lb", value / 453_592_370),
            "mass" => format!("{}.{:06} kg", value / 1_000_000_000, value % 1_000_000_000 / 1_000),
            "angle" => format!("{} degrees", value / 1_000),
            "hook size" => format!("{}/0", value.max(1)),
            "count" => format!("{}", value.max(0)),
            other => panic!("no quantity: {other}"),
        }
    }
}
