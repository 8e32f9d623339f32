//! Translates profiles and the vocabulary, read as plain YAML, into the data
//! that the policy decides by. It knows every phrase of the shipped profiles
//! and refuses any other, so that a new phrase cannot go by unjudged. Here:
//! what comes of it, profile by profile.

mod built;
mod phrases;
mod requirement;
mod words;
mod yaml;

use crate::figures::day;
use built::{built, taken_over};
use phrases::months;
use requirement::Translation;
use serde_json::{Value as Json, json};
use serde_yaml::Value as Yaml;
use std::collections::BTreeMap;
use std::path::Path;

pub(crate) use phrases::plain_clause;
pub(crate) use words::Words;
use yaml::file;

pub(crate) use yaml::{list, pairs, text, texts};

/// The last day of an edition without an end.
pub(crate) const NO_END: i64 = 99_999_999;

/// One place of a type: so many tools, each fit for one of the specs.
#[derive(Debug, Clone)]
pub(crate) struct Place {
    pub(crate) count: usize,
    pub(crate) specs: Vec<String>,
}

/// What a requirement wants of tools.
#[derive(Debug, Clone, Default)]
pub(crate) struct Wanted {
    pub(crate) least: usize,
    pub(crate) types: Vec<Vec<Place>>,
    pub(crate) spare_for: Option<String>,
    /// The requirement whose tool is deemed to serve, and the spec that it
    /// must keep besides.
    pub(crate) deemed: Vec<(String, Option<String>)>,
    pub(crate) shared: Vec<String>,
}

/// One requirement as the assignment needs it.
#[derive(Debug, Clone)]
pub(crate) struct Requirement {
    pub(crate) id: String,
    pub(crate) required: bool,
    pub(crate) months: Option<i64>,
    /// Nothing for certificates and gear, which need no tool.
    pub(crate) wanted: Option<Wanted>,
}

/// One profile, translated.
pub(crate) struct Rules {
    pub(crate) id: String,
    pub(crate) rule: String,
    pub(crate) encoded: bool,
    pub(crate) base: bool,
    pub(crate) fallback: bool,
    pub(crate) made_up: bool,
    pub(crate) rail: bool,
    pub(crate) from: i64,
    pub(crate) until: i64,
    pub(crate) requirements: Vec<Requirement>,
    /// Kinds of each spec.
    pub(crate) kinds: BTreeMap<String, Vec<String>>,
    /// The facts of a vessel that can matter to each question.
    pub(crate) matters: BTreeMap<&'static str, Vec<&'static str>>,
    /// What the limits on tools of a kind hang on: the freeboard, the hooks.
    pub(crate) bases: BTreeMap<String, Vec<&'static str>>,
    /// What the policy decides by.
    pub(crate) data: Json,
}

/// The facts that these conditions look at.
fn mattering(conditions: &Json) -> Vec<&'static str> {
    const FACTS: [(&str, &str); 7] = [
        ("\"is\":\"permit\"", "permits"),
        ("\"is\":\"gear\"", "gear"),
        ("\"is\":\"area", "areas"),
        ("\"is\":\"feature\",\"feature\"", "features"),
        ("\"is\":\"freeboard\"", "bases"),
        ("\"is\":\"months\"", "day"),
        ("\"always\":false", "day"),
    ];
    let text = conditions.to_string();
    FACTS.iter().filter(|(sign, _)| text.contains(sign)).map(|(_, fact)| *fact).collect()
}

/// A profile that is made up for a test, and no shipped one.
pub(crate) fn made_up(id: &str, written: &str, words: &Words) -> Rules {
    let rules = Translation::of(id, &serde_yaml::from_str(written).unwrap(), words);
    Rules { made_up: true, ..rules }
}

/// Every shipped profile, in the order of the files' names.
pub(crate) fn all(words: &Words) -> Vec<Rules> {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("requirements");
    let mut ids: Vec<String> = std::fs::read_dir(folder)
        .unwrap()
        .filter_map(|entry| {
            entry
                .unwrap()
                .file_name()
                .into_string()
                .unwrap()
                .strip_suffix(".yaml")
                .map(str::to_owned)
        })
        .filter(|id| id != "vocabulary" && id != "techniques")
        .collect();
    ids.sort();
    ids.iter().map(|id| Translation::of(id, &file(&format!("{id}.yaml")), words)).collect()
}

impl Translation<'_> {
    fn of(id: &str, profile: &Yaml, words: &Words) -> Rules {
        let mut at = Translation { words, specs: Vec::new(), kinds: BTreeMap::new() };
        let source = taken_over(profile, "source").map(|s| text(&s)).unwrap_or_default();
        let due = taken_over(profile, "inspection due").map(|s| months(&text(&s)));
        let written = built(profile);
        let (mut requirements, mut data) = (Vec::new(), Vec::new());
        for requirement in &written {
            let (one, its_data) = at.requirement(requirement, &source, due);
            requirements.push(one);
            data.push(its_data);
        }
        // What is deemed to serve is looked for among the tools of the other.
        for requirement in &requirements {
            for (other, spec) in requirement.wanted.iter().flat_map(|w| &w.deemed) {
                if let Some(spec) = spec {
                    let lender = requirements.iter().find(|r| r.id == *other).unwrap();
                    let places = lender.wanted.iter().flat_map(|w| w.types.iter().flatten());
                    let kinds = places.flat_map(|p| &p.specs).flat_map(|s| at.kinds[s].clone());
                    let kinds = kinds.collect();
                    at.kinds.insert(spec.clone(), kinds);
                }
            }
        }
        let mut by_kind: BTreeMap<String, Vec<Json>> = BTreeMap::new();
        for spec in &at.specs {
            for kind in &at.kinds[spec["id"].as_str().unwrap()] {
                by_kind.entry(kind.clone()).or_default().push(spec.clone());
            }
        }
        let mut intervals: Vec<i64> = requirements.iter().filter_map(|r| r.months).collect();
        intervals.sort_unstable();
        intervals.dedup();
        let not_always: Vec<&Json> =
            at.specs.iter().filter(|spec| spec["when"] != json!([])).collect();
        let yes = |key: &str| profile.get(key).map(text).as_deref() == Some("yes");
        let in_force =
            |key: &str| profile.get("in force").and_then(|f| f.get(key)).map(|d| day(&text(d)));
        let (from, until) = (in_force("from").unwrap_or(0), in_force("until").unwrap_or(NO_END));
        let fallback = yes("fallback");
        let data = json!({
            "binds": at.binds(profile.get("binds")), "from": from, "until": until,
            "fallback": fallback, "intervals": intervals,
            "requirements": data, "specs": at.specs, "not_always_open": not_always, "by_kind": &by_kind,
        });
        let mut own = mattering(&json!(at.specs));
        own.push("day");
        let matters = BTreeMap::from([
            ("names", mattering(&data["binds"])),
            ("binds", mattering(&data["requirements"])),
            ("open", mattering(&data["not_always_open"])),
            ("own", own),
        ]);
        let of = |specs: &[Json]| {
            let text = json!(specs).to_string();
            let bases = ["freeboard", "hook"].into_iter();
            bases.filter(|base| text.contains(&format!("\"of\":\"{base}\""))).collect()
        };
        let bases = by_kind.iter().map(|(kind, specs)| (kind.clone(), of(specs))).collect();
        Rules {
            bases,
            matters,
            id: id.to_owned(),
            rule: text(&profile["rule"]),
            encoded: profile.get("encoded").map(text).as_deref() != Some("no"),
            base: yes("base"),
            fallback,
            made_up: false,
            rail: text(&taken_over(profile, "freeboard from").unwrap()) == "top of the rail",
            from,
            until,
            requirements,
            kinds: at.kinds,
            data,
        }
    }

    fn binds(&self, binds: Option<&Yaml>) -> Vec<Json> {
        let mut lines = Vec::new();
        for (key, value) in binds.map(pairs).unwrap_or_default() {
            let is = match key.as_str() {
                "permits" => "permit",
                "gear" => "gear",
                "areas" => "area",
                other => panic!("not translated, under `binds`: `{other}`"),
            };
            let line: Vec<_> = texts(&value)
                .iter()
                .map(|tag| json!({ "is": is, "tag": tag, "finds": true }))
                .collect();
            lines.push(json!(line));
        }
        lines
    }
}
