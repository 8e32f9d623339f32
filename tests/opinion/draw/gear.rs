//! The vessel's hooks.

use super::figures::INCH;
use super::{Draw, Written};
use serde_json::Value as Json;
use std::fmt::Write as _;

impl Draw<'_> {
    pub(super) fn hooks(&mut self) -> String {
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
}
