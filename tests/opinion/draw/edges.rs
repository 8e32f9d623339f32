//! Figures at a limit and beside it: attributes that just keep the lines of a
//! specification, and one of them moved to an edge or left out.

use super::figures::INCH;
use super::{Draw, Written};
use serde_json::Value as Json;

impl Draw<'_> {
    /// The figure in a limit, at the freeboard and hooks that the kit is made
    /// for: the least whole figure that is no less, or the greatest that is no
    /// more.
    fn bound(&self, bound: &Json, up: bool) -> i64 {
        let parts = || bound["parts"].as_array().unwrap().iter().map(|part| self.bound(part, up));
        match bound["is"].as_str().unwrap() {
            "figure" => bound["figure"].as_i64().unwrap(),
            "share" => {
                let base = if bound["of"] == "hook" { self.wire } else { self.freeboard };
                (bound["percent"].as_i64().unwrap() * base + if up { 99 } else { 0 }) / 100
            }
            "greater" => parts().max().unwrap(),
            _ => parts().min().unwrap(),
        }
    }

    /// Whether a share in the limit comes to no whole figure, so that it
    /// matters which way it is rounded.
    fn uneven(&self, limit: &Json) -> bool {
        let bounds = ["bound", "low", "high"].iter().map(|key| &limit[key]);
        bounds.filter(|b| b.is_object()).any(|b| self.bound(b, true) != self.bound(b, false))
    }

    /// A figure that just keeps the limit; beside it now and then, where a
    /// share is no whole figure.
    fn kept(&mut self, limit: &Json) -> i64 {
        let end = *self.chance.one_of(&["low", "high"]);
        let figure = match limit["is"].as_str().unwrap() {
            "any" => INCH,
            "at least" => self.bound(&limit["bound"], true),
            "at most" => self.bound(&limit["bound"], false),
            "more than" => self.bound(&limit["bound"], false) + 1,
            "less than" => self.bound(&limit["bound"], true) - 1,
            "from to" => self.bound(&limit[end], end == "low"),
            _ => limit[end].as_i64().unwrap(),
        };
        if self.uneven(limit) {
            return figure + self.chance.one_of(&[0, 0, 0, 0, 0, 0, 0, -1, 1]);
        }
        figure
    }

    /// Attributes that keep all the lines, just.
    pub(super) fn good(&mut self, lines: &[Json], into: &mut Written) {
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
                    let figure = self.kept(&line["limit"]);
                    self.quantity(attribute, figure)
                }
            };
            into.insert(attribute.to_owned(), value);
        }
    }

    /// Every figure that stands in the limits on an attribute.
    pub(super) fn figures(&self, lines: &[Json], attribute: &str, into: &mut Vec<i64>) {
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
                            let parts = limit[key]["parts"].as_array().into_iter().flatten();
                            for bound in parts.chain([&limit[key]]) {
                                into.extend([self.bound(bound, true), self.bound(bound, false)]);
                            }
                        }
                        _ => {}
                    }
                }
            }
        }
    }

    /// Moves one attribute to an edge, or leaves it out.
    pub(super) fn spoil(&mut self, lines: &[Json], attributes: &mut Written) {
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
}
