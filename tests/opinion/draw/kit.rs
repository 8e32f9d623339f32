//! The tools and documents: what each requirement wants, just good enough,
//! some of it spoilt, broken, lent, out of date or missing.

use super::{Draw, Written};
use crate::figures::{next, previous, written};
use serde_json::Value as Json;
use std::fmt::Write as _;

impl Draw<'_> {
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

    /// Whether the requirement may be asked for, for all that is drawn of the
    /// vessel's features.
    fn may_bind(&self, number: usize) -> bool {
        let conditions = self.rules.data["requirements"][number]["when"].as_array().unwrap();
        let features = conditions.iter().filter(|c| c["is"] == "feature");
        let differs = |c: &Json| self.wheelhouse.is_some_and(|has| c["wanted"] != has);
        !features.into_iter().any(differs)
    }

    /// Specifications that are to be met, and by how many tools.
    fn wanted(&mut self) -> Vec<(String, usize)> {
        let rules = self.rules;
        let mut wanted: Vec<(String, usize)> = Vec::new();
        for (number, requirement) in rules.requirements.iter().enumerate() {
            let Some(need) = &requirement.wanted else { continue };
            let lends = !need.deemed.is_empty() || !need.shared.is_empty();
            if lends && self.chance.in_thousand(400) || !self.may_bind(number) {
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
        if rules.made_up { self.few(wanted) } else { wanted }
    }

    /// At most seven lots in any order, spares last; often some are missing,
    /// now and then all of one kind.
    fn few(&mut self, mut wanted: Vec<(String, usize)>) -> Vec<(String, usize)> {
        let most = *self.chance.one_of(&[7, 7, 7, 6, 5]);
        if self.chance.in_thousand(60) && !wanted.is_empty() {
            let none = &self.rules.kinds[&self.chance.one_of(&wanted).0];
            wanted.retain(|(spec, _)| self.rules.kinds[spec] != *none);
        }
        let mut few = Vec::new();
        while !wanted.is_empty() && few.len() < most {
            few.push(wanted.remove(self.chance.below(wanted.len())));
        }
        few.sort_by_key(|(spec, _)| self.words.class(&self.rules.kinds[spec][0]) == "spare");
        few
    }

    /// Where requirements compete, a tool made for one often has the figure
    /// that another asks for, and says all that any of them asks about.
    fn rival(&mut self, kind: &str, attributes: &mut Written) {
        let rules = self.rules;
        let specs = rules.data["by_kind"][kind].as_array().unwrap();
        for attribute in &self.words.attributes[kind] {
            let mut figures = Vec::new();
            for spec in specs {
                self.figures(spec["lines"].as_array().unwrap(), attribute, &mut figures);
            }
            let told = attributes.contains_key(attribute);
            if !figures.is_empty() && self.chance.in_thousand(if told { 350 } else { 950 }) {
                let figure = *self.chance.one_of(&figures);
                let figure = self.quantity(attribute, figure);
                attributes.insert(attribute.clone(), figure);
            }
        }
    }

    /// What is told of a tool besides its attributes.
    fn told(&mut self, spec: &Json, count: usize) -> String {
        let mut told = String::new();
        if self.rules.requirements.iter().any(|r| r.months.is_some())
            && self.chance.in_thousand(980)
        {
            let _ = write!(told, ", inspected: {}", written(previous(self.depart)));
        }
        let clauses = spec["clauses"].as_array().unwrap();
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
        if count > 1 && !told.contains("count") {
            let _ = write!(told, ", count: {count}");
        }
        told
    }

    /// What is told of a document besides its attributes.
    fn told_of_document(&mut self, attributes: &mut Written, spoilt: bool) -> String {
        if !attributes.contains_key("state") && self.chance.in_thousand(600) {
            let state = *self.chance.one_of(&["posted", "aboard", "copy", "lost"]);
            attributes.insert("state".to_owned(), state.to_owned());
        }
        if spoilt && self.chance.in_thousand(300) {
            return format!(", expires: {}", written(self.near_day(0)));
        }
        String::new()
    }

    /// Attributes that just keep the specification, one of them spoilt now
    /// and then; and whether the tool is one that is spoilt.
    fn made(&mut self, spec: &Json, kind: &str) -> (Written, bool) {
        let lines = spec["lines"].as_array().unwrap();
        let mut attributes = Written::new();
        self.good(lines, &mut attributes);
        // What a kind is asked about elsewhere is told as well.
        if self.words.attributes[kind].contains(&"end".to_owned())
            && !attributes.contains_key("end")
            && self.chance.in_thousand(700)
        {
            let end = self.chance.one_of(&["j", "twist", "pigtail"]);
            attributes.insert("end".to_owned(), format!("{end:?}"));
        }
        if self.rules.made_up {
            self.rival(kind, &mut attributes);
        }
        let before = attributes.clone();
        let spoilt = self.chance.in_thousand(self.spoilt);
        if spoilt || self.chance.in_thousand(self.spoilt / 2) {
            self.spoil(lines, &mut attributes);
            self.read_twice(&before, &mut attributes);
        }
        (attributes, spoilt)
    }

    /// Now and then what is spoilt was read otherwise too: on another day, off a
    /// label or with a tape.
    fn read_twice(&mut self, before: &Written, attributes: &mut Written) {
        for (key, spoilt) in attributes.iter_mut().filter(|(key, _)| *key != "state") {
            let Some(good) = before.get(key).filter(|good| *good != spoilt) else { continue };
            if [good, spoilt].iter().any(|text| text.starts_with(['[', '{']))
                || !self.chance.in_thousand(500)
            {
                continue;
            }
            let mut reading = |value: &str| {
                let how = self.chance.one_of(&["measured", "measured", "label", "stated"]);
                let on = self.chance.one_of(&["", ", on: 2008-05-01", ", on: 2008-06-01"]);
                format!("{{ value: {value}, how: {how}{on} }}")
            };
            *spoilt = format!("[{}, {}]", reading(good), reading(spoilt));
        }
    }

    /// The mark of the tool that a spare fits: mostly the one that it is for.
    fn fitting(&mut self, spec: &Json, marks: &[(String, String)]) -> Option<String> {
        let asks = self.rules.requirements.iter().find(|r| spec["requirement"] == r.id.as_str());
        let item = asks.and_then(|r| r.wanted.as_ref()?.spare_for.as_ref());
        let items = self.rules.requirements.iter().filter(|r| Some(&r.id) == item);
        let places = items.filter_map(|r| r.wanted.as_ref()).flat_map(|w| w.types.iter().flatten());
        let kinds: Vec<&String> =
            places.flat_map(|p| &p.specs).flat_map(|s| &self.rules.kinds[s]).collect();
        let of_kind = marks.iter().filter(|(_, kind)| kinds.contains(&kind));
        let meant: Vec<&String> = of_kind.map(|(mark, _)| mark).collect();
        if marks.is_empty() || self.chance.in_thousand(80) {
            return None;
        }
        if meant.is_empty() || self.chance.in_thousand(60) {
            return Some(self.chance.one_of(marks).0.clone());
        }
        Some((*self.chance.one_of(&meant)).clone())
    }

    /// The kit and the documents.
    pub(super) fn kit(&mut self) -> String {
        let rules = self.rules;
        let specs = rules.data["specs"].as_array().unwrap();
        let (mut tools, mut documents, mut marks) = (String::new(), String::new(), Vec::new());
        for (number, (id, count)) in self.wanted().iter().enumerate() {
            if self.chance.in_thousand(self.spoilt / 4) {
                continue;
            }
            let spec = specs.iter().find(|spec| spec["id"] == id.as_str()).unwrap();
            let kind = rules.kinds[id][0].clone();
            let (mut attributes, spoilt) = self.made(spec, &kind);
            let class = self.words.class(&kind);
            let mut told = if class == "document" {
                self.told_of_document(&mut attributes, spoilt)
            } else {
                self.told(spec, *count)
            };
            for (key, value) in &attributes {
                let _ = write!(told, ", {key}: {value}");
            }
            if class == "document" {
                let _ = writeln!(documents, "  - {{ kind: {kind}{told} }}");
                continue;
            }
            if class == "spare"
                && let Some(mark) = self.fitting(spec, &marks)
            {
                let _ = write!(told, ", fits: [{mark}]");
            }
            let _ = writeln!(tools, "  - {{ mark: T-{number}, kind: {kind}{told} }}");
            marks.push((format!("T-{number}"), kind));
        }
        let list = |key: &str, list: &str| {
            if list.is_empty() { format!("{key}: []\n") } else { format!("{key}:\n{list}") }
        };
        list("kit", &tools) + &list("documents", &documents)
    }
}
