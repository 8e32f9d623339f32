//! The tools and documents: what each requirement wants, just good enough,
//! some of it spoilt, broken, lent, out of date or missing.

use super::{Draw, Written};
use crate::figures::{next, previous, written};
use serde_json::Value as Json;
use std::collections::BTreeMap;
use std::fmt::Write as _;

impl<'a> Draw<'a> {
    /// A day just before, on or after one that matters, so many years back.
    pub(super) fn near_day(&mut self, years: i64) -> i64 {
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
    pub(super) fn service(&mut self, clause: &str) -> String {
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

    pub(super) fn kit(&mut self) -> String {
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
}
