//! Draws vessels at the edges of a profile: kits that would just pass, with
//! figures moved to a limit and one step to either side of it, facts left
//! out, tools broken, lent or out of date, and trips over the days on which
//! something changes.

use crate::figures::{next, previous, written};
use crate::rules::{Rules, Words};
use crate::seeded::Chance;
use serde_json::Value as Json;
use std::collections::BTreeMap;
use std::fmt::Write as _;

const FOOT: i64 = 304_800_000;
const INCH: i64 = 25_400_000;

/// Days of departure: around every day on which a shipped rule changes, a
/// leap day, the ends of months and years.
const DAYS: [i64; 18] = [
    20_090_101, 20_160_227, 20_181_115, 20_190_529, 20_190_628, 20_190_702, 20_200_105, 20_200_301,
    20_200_628, 20_200_915, 20_201_229, 20_210_315, 20_210_629, 20_240_227, 20_241_126, 20_251_230,
    20_260_302, 20_260_830,
];

/// An attribute as it is written.
type Written = BTreeMap<String, String>;

/// Draws vessels for one profile.
pub(crate) struct Draw<'a> {
    words: &'a Words,
    rules: &'a Rules,
    chance: Chance,
    /// The freeboard that the kit is made for, and the wire of the hooks.
    freeboard: i64,
    wire: i64,
    depart: i64,
    back: i64,
    /// How many of a thousand tools are spoilt.
    spoilt: usize,
}

impl<'a> Draw<'a> {
    /// The vessel of a seed and a number.
    pub(crate) fn vessel(words: &'a Words, rules: &'a Rules, seed: u64, number: u64) -> String {
        let mut chance = Chance::new(seed, number);
        let spoilt = *chance.one_of(&[0, 15, 40, 40, 120, 350]);
        let mut draw =
            Self { words, rules, chance, freeboard: 0, wire: 0, depart: 0, back: 0, spoilt };
        draw.trip();
        draw.written()
    }

    fn trip(&mut self) {
        let within: Vec<i64> = DAYS
            .iter()
            .copied()
            .filter(|d| self.rules.from <= *d && *d <= self.rules.until)
            .collect();
        let days: &[i64] = if self.chance.in_thousand(80) { &DAYS } else { &within };
        self.depart = *self.chance.one_of(days);
        self.back = self.depart;
        for _ in 0..*self.chance.one_of(&[0, 0, 1, 2, 4]) {
            self.back = next(self.back);
        }
    }

    fn written(&mut self) -> String {
        let mut text = "format: vessel/1\nname: Drawn\n".to_owned();
        if self.chance.in_thousand(930) {
            text += "declared: { by: A. Person, on: 2009-01-01, condition: serviceable }\n";
        }
        text += &self.freeboards();
        let mut partial = false;
        if self.chance.in_thousand(60) {
            partial = true;
            text += "covers: listed things only\n";
        }
        let tags =
            |draw: &mut Self, key: &str, is: &str, others: &[&str]| draw.tags(key, is, others);
        let permits = tags(
            self,
            "permits",
            "permit",
            &["dolphin-wahoo-commercial", "gulf-reef-fish-commercial", "no-such-permit"],
        );
        let gear = tags(
            self,
            "gear",
            "gear",
            &["bandit-gear", "green-stick", "trap", "pelagic-longline", "no-such-gear"],
        );
        text += &permits;
        text += &gear;
        text += &self.areas();
        text += match self.chance.below(8) {
            0 => "",
            1..4 => "features: { wheelhouse: no }\n",
            _ => "features: { wheelhouse: yes }\n",
        };
        let _ = writeln!(
            text,
            "trip: {{ depart: {}, return: {} }}",
            written(self.depart),
            written(self.back)
        );
        text += &self.hooks();
        text += &self.people();
        if partial {
            let kinds: Vec<String> = self.rules.kinds.values().flatten().cloned().collect();
            for key in ["all seen", "sought and not found"] {
                let some: std::collections::BTreeSet<_> = (0..self.chance.below(20))
                    .map(|_| self.chance.one_of(&kinds).clone())
                    .collect();
                let some: Vec<_> = some
                    .into_iter()
                    .filter(|k| !["certificate", "gear"].contains(&self.words.class(k)))
                    .collect();
                let _ = writeln!(text, "{key}: [{}]", some.join(", "));
            }
        }
        text += &self.kit();
        text
    }

    fn tags(&mut self, key: &str, is: &str, others: &[&str]) -> String {
        let lines = self.rules.data["binds"].as_array().unwrap().iter();
        let wanted: Vec<String> = lines
            .flat_map(|line| line.as_array().unwrap())
            .filter(|c| c["is"] == is)
            .map(|c| c["tag"].as_str().unwrap().to_owned())
            .collect();
        let mut tags = Vec::new();
        match self.chance.below(40) {
            0 => return String::new(),
            1 => {}
            _ if wanted.is_empty() => {}
            2 => tags.push((*self.chance.one_of(others)).to_owned()),
            _ => tags.push(self.chance.one_of(&wanted).clone()),
        }
        let more = if self.rules.data["binds"] == Json::Array(Vec::new()) && is == "permit" {
            30
        } else {
            150
        };
        if self.chance.in_thousand(more) {
            tags.push((*self.chance.one_of(others)).to_owned());
        }
        if tags.contains(&"hook-and-line".to_owned()) && self.chance.in_thousand(700) {
            tags[0] =
                (*self.chance.one_of(&["bandit-gear", "bottom-longline", "handline"])).to_owned();
        }
        tags.sort();
        tags.dedup();
        format!("{key}: [{}]\n", tags.join(", "))
    }

    fn areas(&mut self) -> String {
        let words = ["gulf-of-mexico", "northeast-distant", "south-atlantic", "elsewhere"];
        match self.chance.below(12) {
            0 => String::new(),
            1 => "areas: []\n".to_owned(),
            2 => "areas: [gulf-of-mexico, northeast-distant]\n".to_owned(),
            _ => format!("areas: [{}]\n", self.chance.one_of(&words)),
        }
    }

    fn freeboards(&mut self) -> String {
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
            1_543_000_000,
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
                format!("freeboard: [{{ value: {figure} }}, {{ value: {} }}]\n", self.length(b))
            }
            10 | 11 => {
                let error = *self.chance.one_of(&["1/8 in", "1 mm", "0.000001 mm", "6 in"]);
                format!("freeboard: {{ value: {figure}, error: {error} }}\n")
            }
            _ => format!("freeboard: {figure}\n"),
        }
    }

    /// A length, in one of the ways in which it can be written exactly.
    fn length(&mut self, nanometres: i64) -> String {
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

    fn quantity(&mut self, attribute: &str, value: i64) -> String {
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

    /// The least that a figure in a limit can be, at the freeboard and hooks
    /// that the kit is made for.
    fn bound(&self, bound: &Json) -> i64 {
        let parts = || bound["parts"].as_array().unwrap().iter().map(|part| self.bound(part));
        match bound["is"].as_str().unwrap() {
            "figure" => bound["figure"].as_i64().unwrap(),
            "share" => {
                let base = if bound["of"] == "hook" { self.wire } else { self.freeboard };
                (bound["percent"].as_i64().unwrap() * base + 99) / 100
            }
            "greater" => parts().max().unwrap(),
            _ => parts().min().unwrap(),
        }
    }

    /// Attributes that keep all the lines, just.
    fn good(&mut self, lines: &[Json], into: &mut Written) {
        for line in lines {
            if let Some(groups) = line["groups"].as_array() {
                let group =
                    if line["is"] == "any of" { self.chance.below(groups.len()) } else { 0 };
                self.good(&groups[group].as_array().unwrap().clone(), into);
                continue;
            }
            let attribute = line["attribute"].as_str().unwrap();
            let value = match line["is"].as_str().unwrap() {
                "feature" => if line["wanted"] == true { "yes" } else { "no" }.to_owned(),
                "choice" => {
                    let word = self
                        .chance
                        .one_of(line["allowed"].as_array().unwrap())
                        .as_str()
                        .unwrap()
                        .to_owned();
                    format!("{word:?}")
                }
                _ => {
                    let limit = &line["limit"];
                    let end = *self.chance.one_of(&["low", "high"]);
                    let figure = match limit["is"].as_str().unwrap() {
                        "any" => INCH,
                        "at least" | "at most" => self.bound(&limit["bound"]),
                        "more than" => self.bound(&limit["bound"]) + 1,
                        "less than" => self.bound(&limit["bound"]) - 1,
                        "from to" => self.bound(&limit[end]),
                        _ => limit[end].as_i64().unwrap(),
                    };
                    self.quantity(attribute, figure)
                }
            };
            into.insert(attribute.to_owned(), value);
        }
    }

    /// Every figure that stands in the limits on an attribute.
    fn figures(&self, lines: &[Json], attribute: &str, into: &mut Vec<i64>) {
        for line in lines {
            for group in line["groups"].as_array().into_iter().flatten() {
                self.figures(group.as_array().unwrap(), attribute, into);
            }
            if line["attribute"] == attribute {
                let limit = &line["limit"];
                for key in ["bound", "low", "high"] {
                    match &limit[key] {
                        Json::Number(figure) => {
                            let margin = limit["margin"].as_i64().unwrap();
                            let figure = figure.as_i64().unwrap();
                            into.extend([figure, figure - margin, figure + margin]);
                        }
                        Json::Object(_) => {
                            into.push(self.bound(&limit[key]));
                            into.extend(
                                limit[key]["parts"]
                                    .as_array()
                                    .into_iter()
                                    .flatten()
                                    .map(|p| self.bound(p)),
                            );
                        }
                        _ => {}
                    }
                }
            }
        }
    }

    /// Moves one attribute to an edge, or leaves it out.
    fn spoil(&mut self, lines: &[Json], attributes: &mut Written) {
        let keys: Vec<String> = attributes.keys().cloned().collect();
        if keys.is_empty() {
            return;
        }
        let key = self.chance.one_of(&keys).clone();
        if self.chance.in_thousand(150) {
            attributes.remove(&key);
            return;
        }
        let value = match self.words.quantity(&key) {
            "feature" => {
                let other = if attributes[&key] == "yes" { "no" } else { "yes" };
                match self.chance.below(10) {
                    0 => "[{ value: yes }, { value: no }]".to_owned(),
                    _ => other.to_owned(),
                }
            }
            "choice" => format!("{:?}", self.chance.one_of(&self.words.choices[&key])),
            "name" => {
                (*self.chance.one_of(&["\"2008\"", "\"2019 edition\"", "\"2019\""])).to_owned()
            }
            quantity => {
                let mut figures = Vec::new();
                self.figures(lines, &key, &mut figures);
                if figures.is_empty() {
                    figures.push(if quantity == "length" { INCH } else { 1_000 });
                }
                let figure = *self.chance.one_of(&figures);
                let steps: &[i64] = match quantity {
                    "length" => &[0, 1, -1, 396_875, -396_875, INCH, -INCH, 1_000, -1_000],
                    "mass" => &[0, 1_000_000, -1_000_000, 1_000, -1_000],
                    "angle" => &[0, 1_000, -1_000],
                    _ => &[0, 1, -1, 2],
                };
                let near = |draw: &mut Self| {
                    let value = figure + *draw.chance.one_of(steps);
                    draw.quantity(&key, value.max(1))
                };
                let one = near(self);
                match self.chance.below(12) {
                    0 => format!("[{{ value: {one} }}, {{ value: {} }}]", near(self)),
                    1 | 2 if quantity == "length" => {
                        format!(
                            "{{ value: {one}, error: {} }}",
                            self.chance.one_of(&["1/64 in", "0.000001 mm", "1 in", "1 mm"])
                        )
                    }
                    _ => one,
                }
            }
        };
        attributes.insert(key, value);
    }

    /// A day just before, on or after one that matters, so many years back.
    fn near_day(&mut self, years: i64) -> i64 {
        let mut day = *self.chance.one_of(&[self.depart, self.back]) - years * 10_000;
        if day % 10_000 == 229 && years % 4 != 0 {
            day -= 1;
        }
        match self.chance.below(4) {
            0 => previous(day),
            1 => next(day),
            2 => next(next(day)),
            _ => day,
        }
    }

    /// What of a tool's place, condition and days is not as it should be.
    fn service(&mut self, clause: &str) -> String {
        let day = written(self.near_day(0));
        match self.chance.below(13) {
            0 => ", condition: broken".to_owned(),
            1 => ", condition: unknown".to_owned(),
            2 => ", where: ashore".to_owned(),
            3 => format!(", where: {}", self.chance.one_of(&["unknown", "lost", "aboard"])),
            4 => format!(", where: {{ lent to: Other, from: {day} }}"),
            5 => format!(", where: {{ lent to: Other, from: 2008-01-01, until: {day} }}"),
            6 | 7 => format!(", expires: {day}"),
            8 => format!(", acquired: {day}"),
            9 => format!(", inspected: {}", written(self.near_day(1))),
            10 => ", count: 2, broken: 1".to_owned(),
            11 => ", count: 2, broken: 2".to_owned(),
            _ => format!(", conforms: [{{ to: {clause:?}, on: {day} }}]"),
        }
    }

    fn kit(&mut self) -> String {
        let rules = self.rules;
        let specs: BTreeMap<&str, &'a Json> = rules.data["specs"]
            .as_array()
            .unwrap()
            .iter()
            .map(|spec| (spec["id"].as_str().unwrap(), spec))
            .collect();
        let mut wanted: Vec<(String, usize)> = Vec::new();
        for requirement in &self.rules.requirements {
            let Some(need) = &requirement.wanted else { continue };
            let lends = !need.deemed.is_empty() || !need.shared.is_empty();
            if lends && self.chance.in_thousand(400) {
                continue;
            }
            let mut types: Vec<usize> = (0..need.types.len()).collect();
            for _ in 0..need.least {
                let of_type = types.remove(self.chance.below(types.len()));
                for place in &need.types[of_type] {
                    wanted.push((self.chance.one_of(&place.specs).clone(), place.count));
                }
            }
            if self.chance.in_thousand(60) {
                let places: Vec<_> = need.types.iter().flatten().collect();
                let place = *self.chance.one_of(&places);
                wanted.push((self.chance.one_of(&place.specs).clone(), 1));
            }
        }
        let (mut tools, mut documents, mut marks) =
            (String::new(), String::new(), Vec::<String>::new());
        for (number, (spec, count)) in wanted.iter().enumerate() {
            if self.chance.in_thousand(self.spoilt / 4) {
                continue;
            }
            let kind = self.rules.kinds[spec][0].clone();
            let lines = specs[spec.as_str()]["lines"].as_array().unwrap();
            let mut attributes = Written::new();
            self.good(lines, &mut attributes);
            // What a kind is asked about elsewhere is told as well.
            if self.words.attributes[&kind].contains(&"end".to_owned())
                && !attributes.contains_key("end")
                && self.chance.in_thousand(700)
            {
                let end = self.chance.one_of(&["j", "twist", "pigtail"]);
                attributes.insert("end".to_owned(), format!("{end:?}"));
            }
            let spoilt = self.chance.in_thousand(self.spoilt);
            if spoilt || self.chance.in_thousand(self.spoilt / 2) {
                self.spoil(lines, &mut attributes);
            }
            let mut told = String::new();
            if self.words.class(&kind) == "document" {
                if !attributes.contains_key("state") && self.chance.in_thousand(600) {
                    attributes.insert(
                        "state".to_owned(),
                        (*self.chance.one_of(&["posted", "aboard", "copy", "lost"])).to_owned(),
                    );
                }
                if spoilt && self.chance.in_thousand(300) {
                    let _ = write!(told, ", expires: {}", written(self.near_day(0)));
                }
            } else {
                if self.rules.requirements.iter().any(|r| r.months.is_some())
                    && self.chance.in_thousand(980)
                {
                    let _ = write!(told, ", inspected: {}", written(previous(self.depart)));
                }
                let clauses = specs[spec.as_str()]["clauses"].as_array().unwrap();
                let clause = self.chance.one_of(clauses).as_str().unwrap().to_owned();
                let spoils = if self.chance.in_thousand(self.spoilt / 2) {
                    self.service(&clause)
                } else {
                    String::new()
                };
                if spoils.starts_with(", inspected") {
                    told.clear();
                }
                told += &spoils;
                if *count > 1 && !told.contains("count") {
                    let _ = write!(told, ", count: {count}");
                }
            }
            for (key, value) in &attributes {
                let _ = write!(told, ", {key}: {value}");
            }
            if self.words.class(&kind) == "document" {
                let _ = writeln!(documents, "  - {{ kind: {kind}{told} }}");
                continue;
            }
            if self.words.class(&kind) == "spare" {
                let cutter = marks.first().filter(|_| !self.chance.in_thousand(60));
                let other = (!marks.is_empty()).then(|| self.chance.one_of(&marks).clone());
                if let Some(mark) =
                    cutter.or(other.as_ref()).filter(|_| !self.chance.in_thousand(80))
                {
                    let _ = write!(told, ", fits: [{mark}]");
                }
            }
            marks.push(format!("T-{number}"));
            let _ = writeln!(tools, "  - {{ mark: T-{number}, kind: {kind}{told} }}");
        }
        let list = |key: &str, list: &str| {
            if list.is_empty() { format!("{key}: []\n") } else { format!("{key}:\n{list}") }
        };
        list("kit", &tools) + &list("documents", &documents)
    }

    fn hooks(&mut self) -> String {
        let specs = &self.rules.data["by_kind"]["hook"];
        let specs: Vec<Json> = specs.as_array().cloned().unwrap_or_default();
        self.wire = *self.chance.one_of(&[3_650_000, 5_000_000, INCH / 4, INCH / 4 + 1]);
        match self.chance.below(25) {
            0 => return String::new(),
            1 => return "hooks: []\n".to_owned(),
            _ => {}
        }
        let mut text = "hooks:\n".to_owned();
        let spoilt = self.chance.in_thousand(500);
        for number in 0..*self.chance.one_of(&[1, 1, 2, 3]) {
            let mut attributes = Written::new();
            let mut lines = Vec::new();
            for requirement in &self.rules.requirements {
                let of: Vec<&Json> =
                    specs.iter().filter(|s| s["requirement"] == requirement.id.as_str()).collect();
                if !of.is_empty() {
                    let own = self.chance.one_of(&of)["lines"].as_array().unwrap().clone();
                    self.good(&own, &mut attributes);
                    lines.extend(own);
                }
            }
            attributes.entry("type".to_owned()).or_insert("circle".to_owned());
            if !attributes.contains_key("wire") && self.chance.in_thousand(900) {
                let wire = self.length(self.wire);
                attributes.insert("wire".to_owned(), wire);
            }
            if spoilt && self.chance.in_thousand(500) {
                self.spoil(&lines, &mut attributes);
            }
            let told: String =
                attributes.iter().map(|(key, value)| format!(", {key}: {value}")).collect();
            let _ = writeln!(text, "  - {{ name: hooks {number}{told} }}");
        }
        text
    }

    fn people(&mut self) -> String {
        if self.chance.in_thousand(40) {
            return String::new();
        }
        let mut text = "people:\n".to_owned();
        let roles: &[&str] = self.chance.one_of::<&[&str]>(&[
            &["owner, operator"],
            &["owner", "operator"],
            &["owner, operator", "operator"],
            &["owner", "crew"],
        ]);
        let spoilt = self.chance.in_thousand(300);
        for (number, roles) in roles.iter().enumerate() {
            let mut issued = format!(", issued: {}", written(self.near_day(1)));
            let mut expires = String::new();
            if spoilt {
                let day = match self.chance.below(6) {
                    0 => None,
                    1 => Some(self.near_day(0)),
                    _ => Some(self.near_day(3)),
                };
                issued = day.map(|d| format!(", issued: {}", written(d))).unwrap_or_default();
                if self.chance.in_thousand(400) {
                    let ends = self.near_day(0).max(day.unwrap_or(0));
                    expires = format!(", expires: {}", written(ends));
                }
            }
            let certificate = format!("{{ kind: workshop certificate{issued}{expires} }}");
            let certificates =
                if spoilt && self.chance.in_thousand(150) { String::new() } else { certificate };
            let _ = writeln!(
                text,
                "  - {{ name: Person {number}, roles: [{roles}], certificates: [{certificates}] }}"
            );
        }
        text
    }
}
