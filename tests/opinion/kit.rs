//! Reads a vessel's inventory, as plain YAML, into what the policy is asked
//! of: whole figures, words and days.

use crate::figures::{day, figure};
use crate::rules::{NO_END, Words, list, pairs, plain_clause, text, texts};
use serde_json::{Map, Value as Json, json};
use serde_yaml::Value as Yaml;
use std::collections::BTreeSet;

/// More than anything aboard measures: a thousand kilometres, in nanometres.
pub(crate) const ENDLESS: i64 = 1_000_000_000_000_000;

/// A lot of equal tools, or a document.
#[derive(Debug, Clone)]
pub(crate) struct Tool {
    pub(crate) mark: String,
    pub(crate) kind: String,
    /// How many are not broken.
    pub(crate) whole: usize,
    /// Attributes and statements of conformity.
    pub(crate) told: Json,
    /// Condition, place and days.
    pub(crate) service: Json,
    /// For spares: the marks of the tools that they fit.
    pub(crate) fits: Vec<String>,
}

/// One reading of a freeboard.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Reading {
    pub(crate) low: i64,
    pub(crate) high: i64,
    pub(crate) error: i64,
}

/// A vessel, read.
pub(crate) struct Vessel {
    pub(crate) permits: Option<Vec<String>>,
    pub(crate) gear: Option<Vec<String>>,
    pub(crate) areas: Option<Vec<String>>,
    pub(crate) features: Json,
    pub(crate) rail: bool,
    /// Station by station, reading by reading.
    pub(crate) stations: Vec<Vec<Reading>>,
    pub(crate) depart: i64,
    pub(crate) back: i64,
    pub(crate) tools: Vec<Tool>,
    pub(crate) people: Json,
    pub(crate) hooks: Json,
    /// The wire of the heaviest hook, from the least to the most that it can be.
    pub(crate) hook_wire: (i64, i64),
    partial: bool,
    seen: BTreeSet<String>,
}

impl Vessel {
    /// Whether everything aboard of the kind is listed.
    pub(crate) fn all_listed(&self, kind: &str) -> bool {
        !self.partial || self.seen.contains(kind)
    }

    /// Read from the text of an inventory.
    pub(crate) fn read(written: &str, words: &Words) -> Self {
        let file: Yaml = serde_yaml::from_str(written).unwrap();
        let trip = &file["trip"];
        let tags = |key: &str| {
            let tags = trip.get(key).or_else(|| file.get(key))?;
            Some(words.with_wider(&texts(tags)))
        };
        let declared = file.get("declared").and_then(|d| d.get("condition")).map(text);
        let listed = file.get("declared").and_then(|d| d.get("on")).map_or(0, |on| day(&text(on)));
        let mut tools: Vec<_> = list(file.get("kit"))
            .iter()
            .map(|t| tool(t, declared.as_deref(), listed, words))
            .collect();
        tools.extend(
            list(file.get("documents"))
                .iter()
                .enumerate()
                .map(|(n, d)| document(n, d, listed, words)),
        );
        let (rail, stations) = freeboard(file.get("freeboard"));
        let hooks = file.get("hooks").map(|hooks| list(Some(hooks)));
        let seen = ["all seen", "sought and not found"]
            .iter()
            .flat_map(|key| file.get(*key).map(texts).unwrap_or_default())
            .map(|kind| words.kind(&kind))
            .collect();
        let partial = file.get("covers").map(text).as_deref() == Some("listed things only");
        let hooks: Option<Vec<Json>> = hooks
            .map(|list| list.iter().map(|hook| attributes(hook, "hook", listed, words)).collect());
        let all_hooks =
            !partial || BTreeSet::is_superset(&seen, &BTreeSet::from(["hook".to_owned()]));
        let depart = day(&text(&trip["depart"]));
        Self {
            permits: file.get("permits").map(|tags| words.with_wider(&texts(tags))),
            gear: tags("gear"),
            areas: tags("areas"),
            features: features(file.get("features")),
            rail,
            stations,
            depart,
            back: trip.get("return").map_or(depart, |back| day(&text(back))),
            tools,
            people: file.get("people").map_or(Json::Null, |people| {
                json!(list(Some(people)).iter().map(|p| person(p, words)).collect::<Vec<_>>())
            }),
            hook_wire: heaviest(hooks.as_deref(), all_hooks),
            hooks: hooks.map_or(Json::Null, |hooks| {
                json!(
                    hooks
                        .iter()
                        .map(|h| json!({ "paper": false, "attributes": h, "conforms": [] }))
                        .collect::<Vec<_>>()
                )
            }),
            partial,
            seen,
        }
    }
}

fn features(written: Option<&Yaml>) -> Json {
    let mut features = Map::new();
    for (key, value) in written.map(pairs).unwrap_or_default() {
        features.insert(key, json!(text(&value) == "yes"));
    }
    json!(features)
}

/// The heaviest wire among the hooks. Where one is not measured, or may not be
/// listed, the heaviest is at least what is known, and there is no most.
fn heaviest(hooks: Option<&[Json]>, all_listed: bool) -> (i64, i64) {
    let Some(hooks) = hooks else { return (0, ENDLESS) };
    let mut heaviest = (0, if all_listed { 0 } else { ENDLESS });
    for hook in hooks {
        let Some(readings) = hook["wire"].as_array() else {
            heaviest.1 = ENDLESS;
            continue;
        };
        let taped: Vec<_> = readings.iter().filter(|reading| reading["taped"] == 1).collect();
        let readings = if taped.is_empty() { readings.iter().collect() } else { taped };
        let at = |reading: &Json, sign: i64| {
            reading["value"].as_i64().unwrap() + sign * reading["error"].as_i64().unwrap()
        };
        let least = readings.iter().map(|r| at(r, -1)).min().unwrap_or(0);
        let most = readings.iter().map(|r| at(r, 1)).max().unwrap_or(ENDLESS);
        heaviest = (heaviest.0.max(least), heaviest.1.max(most));
    }
    heaviest
}

/// One reading or a list of them.
fn readings(written: &Yaml) -> Vec<Yaml> {
    match written {
        Yaml::Sequence(list) => list.clone(),
        one => vec![one.clone()],
    }
}

/// Whether somebody held a tape to it: plain figures in these lists are stated.
fn is_taped(reading: &Yaml) -> bool {
    reading.get("how").is_some_and(|how| text(how) == "measured")
}

/// `listed` is the day of the list, which is that of a reading that says none.
fn attributes(written: &Yaml, kind: &str, listed: i64, words: &Words) -> Json {
    let mut attributes = Map::new();
    for (key, value) in pairs(written) {
        if !words.attributes[kind].contains(&key) {
            continue;
        }
        let one = |reading: &Yaml| {
            let value = text(reading.get("value").unwrap_or(reading));
            let mut said = match words.quantity(&key) {
                "feature" => json!({ "yes": value == "yes" }),
                "choice" => json!({ "word": value.to_lowercase() }),
                "name" => json!({ "word": value }),
                _ => {
                    let error = reading.get("error").map_or(0, |error| figure(&text(error)));
                    json!({ "value": figure(&value), "error": error })
                }
            };
            said["taped"] = json!(i32::from(is_taped(reading)));
            said["on"] = json!(reading.get("on").map_or(listed, |on| day(&text(on))));
            said
        };
        let read: Vec<_> = readings(&value).iter().map(one).collect();
        attributes.insert(key, json!(read));
    }
    json!(attributes)
}

fn tool(written: &Yaml, declared: Option<&str>, listed: i64, words: &Words) -> Tool {
    let kind = words.kind(&text(&written["kind"]));
    let number = |key: &str, or: usize| written.get(key).map_or(or, |n| text(n).parse().unwrap());
    let conforms: Vec<_> = list(written.get("conforms"))
        .iter()
        .map(|c| json!({ "to": plain_clause(&text(&c["to"])), "on": day(&text(&c["on"])) }))
        .collect();
    let date = |key: &str, or: Json| written.get(key).map_or(or, |d| json!(day(&text(d))));
    let condition = written.get("condition").map(text).or(declared.map(str::to_owned));
    let place = match written.get("where") {
        None => json!({ "is": "aboard" }),
        Some(lent @ Yaml::Mapping(_)) => {
            let date = |key: &str, or: i64| lent.get(key).map_or(or, |d| day(&text(d)));
            json!({ "is": "lent", "from": date("from", 0), "until": date("until", NO_END) })
        }
        Some(word) => json!({ "is": text(word) }),
    };
    Tool {
        mark: text(&written["mark"]),
        told: json!({
            "paper": words.class(&kind) == "document",
            "attributes": attributes(written, &kind, listed, words),
            "conforms": conforms,
        }),
        service: json!({
            "condition": condition.unwrap_or("unknown".to_owned()),
            "where": place,
            "acquired": date("acquired", json!(0)),
            "expires": date("expires", json!(NO_END)),
            "inspected": date("inspected", Json::Null),
        }),
        kind,
        whole: number("count", 1) - number("broken", 0),
        fits: written.get("fits").map(texts).unwrap_or_default(),
    }
}

/// A document is good unless it is lost.
fn document(number: usize, written: &Yaml, listed: i64, words: &Words) -> Tool {
    let kind = words.kind(&text(&written["kind"]));
    let lost = written.get("state").map(text).as_deref() == Some("lost");
    let place = if lost { "lost" } else { "aboard" };
    Tool {
        mark: format!("document {number}"),
        told: json!({
            "paper": true,
            "attributes": attributes(written, &kind, listed, words),
            "conforms": [],
        }),
        kind,
        service: json!({
            "condition": "serviceable", "where": { "is": place }, "acquired": 0,
            "expires": written.get("expires").map_or(NO_END, |d| day(&text(d))), "inspected": Json::Null,
        }),
        whole: 1,
        fits: Vec::new(),
    }
}

fn person(written: &Yaml, words: &Words) -> Json {
    let certificates: Vec<_> = list(written.get("certificates"))
        .iter()
        .map(|c| {
            json!({
                "kind": words.kind(&text(&c["kind"])),
                "issued": c.get("issued").map(|d| day(&text(d))),
                "expires": c.get("expires").map_or(NO_END, |d| day(&text(d))),
            })
        })
        .collect();
    json!({ "roles": texts(&written["roles"]), "certificates": certificates })
}

/// Whether it is taken from the top of the rail, and the readings by station.
fn freeboard(written: Option<&Yaml>) -> (bool, Vec<Vec<Reading>>) {
    match written {
        None => (true, Vec::new()),
        Some(map @ Yaml::Mapping(_)) if map.get("stations").is_some() => {
            let rail = map.get("from").map(text).is_none_or(|from| from == "top of the rail");
            let stations = list(map.get("stations"));
            (rail, stations.iter().map(|s| station(&s["freeboard"])).collect())
        }
        Some(Yaml::String(words)) => {
            let (figures, rail) = match words.strip_suffix(" from the working deck") {
                Some(figures) => (figures, false),
                None => (words.as_str(), true),
            };
            (rail, vec![station(&Yaml::from(figures))])
        }
        Some(other) => (true, vec![station(other)]),
    }
}

fn station(written: &Yaml) -> Vec<Reading> {
    let one = |reading: &Yaml| {
        let value = text(reading.get("value").unwrap_or(reading));
        let (low, high) = value.split_once(" to ").unwrap_or((&value, &value));
        let error = reading.get("error").map_or(0, |error| figure(&text(error)));
        Reading { low: figure(low), high: figure(high), error }
    };
    // Against a tape no label and no word of mouth counts.
    let all = readings(written);
    let any_taped = all.iter().any(is_taped);
    all.iter().filter(|reading| !any_taped || is_taped(reading)).map(one).collect()
}
