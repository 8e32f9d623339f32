//! One requirement after the other: what it wants of tools, place by place,
//! and the lines of every specification.

use super::phrases::{add_clause, conditions, limit, months};
use super::yaml::{list, pairs, text, texts};
use super::{NO_END, Place, Requirement, Wanted, Words};
use crate::figures::{day, figure};
use serde_json::{Value as Json, json};
use serde_yaml::Value as Yaml;
use std::collections::BTreeMap;

pub(super) struct Translation<'a> {
    pub(super) words: &'a Words,
    pub(super) specs: Vec<Json>,
    pub(super) kinds: BTreeMap<String, Vec<String>>,
}

impl Translation<'_> {
    pub(super) fn requirement(
        &mut self,
        written: &Yaml,
        source: &str,
        due: Option<i64>,
    ) -> (Requirement, Json) {
        const KNOWN: [&str; 25] = [
            "id",
            "title",
            "level",
            "clause",
            "verified",
            "note",
            "formerly",
            "from",
            "until",
            "when",
            "unless",
            "inspection due",
            "carry",
            "with",
            "one of",
            "types",
            "spare for",
            "certificate",
            "held by",
            "valid",
            "every",
            "met by the tool of",
            "may share the tool of",
            "after",
            "kind",
        ];
        for (key, _) in pairs(written) {
            assert!(KNOWN.contains(&key.as_str()), "not translated, in a requirement: `{key}`");
        }
        let id = text(&written["id"]);
        let months = written.get("inspection due").map(|d| months(&text(d))).or(due);
        let date = |key: &str| written.get(key).map(|d| day(&text(d)));
        let unless = match written.get("unless") {
            Some(Yaml::Sequence(groups)) => groups.iter().map(conditions).collect(),
            Some(group) => vec![conditions(group)],
            None => Vec::new(),
        };
        let mut data = json!({
            "id": id, "always": written.get("from").is_none() && written.get("until").is_none(),
            "from": date("from").unwrap_or(0), "until": date("until").unwrap_or(NO_END),
            "when": written.get("when").map(conditions).unwrap_or_default(), "unless": unless,
        });
        let mut clauses = Vec::new();
        add_clause(&mut clauses, written, source);
        let own = |at: &mut Self, suffix: &str, spec: &Yaml, kind: &str| {
            at.spec(&format!("{id}{suffix}"), &id, spec, kind, &clauses, source)
        };
        let mut wanted = None;
        if let Some(kind) = written.get("certificate") {
            data["certificate"] = json!(self.words.kind(&text(kind)));
            let Some(Yaml::Sequence(roles)) = written.get("held by") else {
                panic!("not translated: certificates held by a number of people")
            };
            data["roles"] = json!(roles.iter().map(text).collect::<Vec<_>>());
            data["months"] = json!(figure(&text(&written["valid"])));
        } else if let Some(kind) = written.get("every") {
            let kind = self.words.kind(&text(kind));
            assert_eq!(kind, "hook", "not translated: `every: {kind}`");
            data["all_of_kind"] = json!(kind);
            match written.get("one of") {
                Some(choices) => {
                    for (number, choice) in list(Some(choices)).iter().enumerate() {
                        own(self, &format!("/{number}"), choice, &kind);
                    }
                }
                None => {
                    let mut plain = written.clone();
                    plain.as_mapping_mut().unwrap().remove("when");
                    own(self, "", &plain, &kind);
                }
            }
        } else {
            wanted = Some(self.wanted(written, &id, &clauses, source));
        }
        let level = written.get("level").map_or("required".to_owned(), text);
        let required = level == "required";
        (Requirement { id, required, months, wanted }, data)
    }

    fn wanted(&mut self, written: &Yaml, id: &str, clauses: &[String], source: &str) -> Wanted {
        let carry = text(&written["carry"]);
        let (count, what) = carry.split_once(' ').unwrap_or((&carry, ""));
        let mut wanted = Wanted { least: 1, ..Wanted::default() };
        if let Some(types) = written.get("types") {
            assert_eq!(what, "different types");
            wanted.least = count.parse().unwrap();
            for (number, of_type) in list(Some(types)).iter().enumerate() {
                let mut clauses = clauses.to_vec();
                add_clause(&mut clauses, of_type, source);
                let name = format!("{id}/{number}");
                let members = match of_type.get("set of") {
                    Some(set) => list(Some(set)),
                    None => vec![of_type.clone()],
                };
                let places = members.iter().enumerate();
                let places = places
                    .map(|(m, member)| {
                        self.place(member, id, &format!("{name}/{m}"), &clauses, source)
                    })
                    .collect();
                wanted.types.push(places);
            }
        } else {
            let mut plain = written.clone();
            plain.as_mapping_mut().unwrap().remove("when");
            wanted.types.push(vec![self.place(&plain, id, id, clauses, source)]);
        }
        wanted.spare_for = written.get("spare for").map(text);
        for (number, other) in
            written.get("met by the tool of").map(loose).unwrap_or_default().iter().enumerate()
        {
            if let Yaml::Mapping(_) = other {
                let name = format!("{id}/deemed {number}");
                let mut lines = other.clone();
                lines.as_mapping_mut().unwrap().remove("requirement");
                let data = self.spec_data(&name, id, &lines, &[], source);
                self.specs.push(data);
                wanted.deemed.push((text(&other["requirement"]), Some(name)));
            } else {
                wanted.deemed.push((text(other), None));
            }
        }
        wanted.shared = written.get("may share the tool of").map(texts).unwrap_or_default();
        wanted
    }

    fn place(
        &mut self,
        written: &Yaml,
        id: &str,
        name: &str,
        clauses: &[String],
        source: &str,
    ) -> Place {
        let carry = text(&written["carry"]);
        let (count, what) = carry.split_once(' ').unwrap_or((&carry, ""));
        let count = count.parse().unwrap();
        let specs = match written.get("one of") {
            Some(choices) => list(Some(choices))
                .iter()
                .enumerate()
                .map(|(number, choice)| {
                    let kind = text(&choice["kind"]);
                    self.spec(
                        &format!("{name}/choice {number}"),
                        id,
                        choice,
                        &kind,
                        clauses,
                        source,
                    )
                })
                .collect(),
            None => vec![self.spec(name, id, written, what, clauses, source)],
        };
        Place { count, specs }
    }

    fn spec(
        &mut self,
        name: &str,
        id: &str,
        written: &Yaml,
        kind: &str,
        clauses: &[String],
        source: &str,
    ) -> String {
        let data = self.spec_data(name, id, written, clauses, source);
        self.specs.push(data);
        self.kinds.insert(name.to_owned(), vec![self.words.kind(kind)]);
        name.to_owned()
    }

    fn spec_data(
        &self,
        name: &str,
        id: &str,
        written: &Yaml,
        clauses: &[String],
        source: &str,
    ) -> Json {
        let mut clauses = clauses.to_vec();
        add_clause(&mut clauses, written, source);
        let lines = written.get("with").map(|with| self.lines(with)).unwrap_or_default();
        let when = written.get("when").map(conditions).unwrap_or_default();
        json!({ "id": name, "requirement": id, "clauses": clauses, "when": when, "lines": lines })
    }

    fn lines(&self, with: &Yaml) -> Vec<Json> {
        pairs(with).iter().map(|(key, value)| self.line(key, value)).collect()
    }

    fn line(&self, key: &str, value: &Yaml) -> Json {
        if key == "any of" || key == "read as" {
            let groups: Vec<_> = list(Some(value)).iter().map(|group| self.lines(group)).collect();
            let written = serde_yaml::to_string(value).unwrap();
            return json!({ "is": key, "groups": groups, "written": format!("{key}: {written}") });
        }
        let phrase = text(value);
        let written = format!("{key}: {phrase}");
        match self.words.quantity(key) {
            "feature" => {
                json!({ "attribute": key, "is": "feature", "wanted": phrase == "yes", "written": written })
            }
            "choice" => {
                let allowed: Vec<_> = phrase.split(" or ").map(str::to_lowercase).collect();
                json!({ "attribute": key, "is": "choice", "allowed": allowed, "written": written })
            }
            // One word out of one: a name is compared as it is written.
            "name" => {
                json!({ "attribute": key, "is": "choice", "allowed": [phrase], "written": written })
            }
            _ => {
                json!({ "attribute": key, "is": "limit", "limit": limit(&phrase), "written": written })
            }
        }
    }
}

/// A single thing or a list of things.
fn loose(value: &Yaml) -> Vec<Yaml> {
    match value {
        Yaml::Sequence(list) => list.clone(),
        one => vec![one.clone()],
    }
}
