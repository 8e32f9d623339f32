//! Draws vessels at the edges of a profile: kits that would just pass, with
//! figures moved to a limit and one step to either side of it, facts left
//! out, tools broken, lent or out of date, and trips over the days on which
//! something changes. Here: the whole inventory, its trip and its tags.

mod edges;
mod figures;
mod gear;
mod kit;
mod people;

use crate::figures::{next, written};
use crate::rules::{Rules, Words};
use crate::seeded::Chance;
use serde_json::Value as Json;
use std::collections::BTreeMap;
use std::fmt::Write as _;

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
    wheelhouse: Option<bool>,
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
        let mut draw = Self {
            words,
            rules,
            chance,
            freeboard: 0,
            wire: 0,
            wheelhouse: None,
            depart: 0,
            back: 0,
            spoilt,
        };
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
        self.wheelhouse = match self.chance.below(8) {
            0 => None,
            1..4 => Some(false),
            _ => Some(true),
        };
        text += match self.wheelhouse {
            None => "",
            Some(false) => "features: { wheelhouse: no }\n",
            Some(true) => "features: { wheelhouse: yes }\n",
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
}
