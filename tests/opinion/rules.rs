//! Translates profiles and the vocabulary, read as plain YAML, into the data
//! that the policy decides by. It knows every phrase of the shipped profiles
//! and refuses any other, so that a new phrase cannot go by unjudged.

use crate::figures::{day, figure};
use serde_json::{Map, Value as Json, json};
use serde_yaml::Value as Yaml;
use std::collections::BTreeMap;
use std::path::Path;

/// The last day of an edition without an end.
pub(crate) const NO_END: i64 = 99_999_999;

/// A text, a number or a yes, as one text.
pub(crate) fn text(value: &Yaml) -> String {
    match value {
        Yaml::String(text) => text.clone(),
        Yaml::Number(number) => number.to_string(),
        Yaml::Bool(true) => "yes".to_owned(),
        Yaml::Bool(false) => "no".to_owned(),
        other => panic!("no text: {other:?}"),
    }
}

/// A single text or a list of them.
pub(crate) fn texts(value: &Yaml) -> Vec<String> {
    match value {
        Yaml::Sequence(list) => list.iter().map(text).collect(),
        one => vec![text(one)],
    }
}

/// A list, empty where nothing is written.
pub(crate) fn list(value: Option<&Yaml>) -> Vec<Yaml> {
    match value {
        Some(Yaml::Sequence(list)) => list.clone(),
        Some(other) => panic!("no list: {other:?}"),
        None => Vec::new(),
    }
}

/// Keys and values in the order written.
pub(crate) fn pairs(value: &Yaml) -> Vec<(String, Yaml)> {
    let map = value.as_mapping().unwrap_or_else(|| panic!("no keys: {value:?}"));
    map.iter().map(|(key, value)| (text(key), value.clone())).collect()
}

/// A file of the requirements' folder.
pub(crate) fn file(name: &str) -> Yaml {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("requirements");
    let text = std::fs::read_to_string(folder.join(name)).unwrap();
    serde_yaml::from_str(&text).unwrap()
}

/// The words of the trade.
pub(crate) struct Words {
    kinds: BTreeMap<String, String>,
    quantities: BTreeMap<String, String>,
    wider: BTreeMap<String, Vec<String>>,
    classes: BTreeMap<String, String>,
    /// The attributes of each kind.
    pub(crate) attributes: BTreeMap<String, Vec<String>>,
    /// The words of each attribute that is a choice.
    pub(crate) choices: BTreeMap<String, Vec<String>>,
    /// What the policy has to know of words.
    pub(crate) data: Json,
}

impl Words {
    /// Read from the vocabulary.
    pub(crate) fn read() -> Self {
        let file = file("vocabulary.yaml");
        let (mut kinds, mut classes, mut attributes) =
            (BTreeMap::new(), BTreeMap::new(), BTreeMap::new());
        for (id, kind) in pairs(&file["kinds"]) {
            kinds.insert(id.to_lowercase(), id.clone());
            kinds.insert(text(&kind["name"]).to_lowercase(), id.clone());
            for word in kind.get("also").map(texts).unwrap_or_default() {
                kinds.insert(word.to_lowercase(), id.clone());
            }
            classes.insert(id.clone(), text(&kind["class"]));
            attributes.insert(id, texts(&kind["attributes"]));
        }
        let (mut quantities, mut choices, mut hidden, mut may_be) =
            (BTreeMap::new(), BTreeMap::new(), Vec::new(), Map::new());
        for (id, attribute) in pairs(&file["attributes"]) {
            quantities.insert(id.clone(), text(&attribute["quantity"]));
            if let Some(words) = attribute.get("words") {
                choices.insert(id.clone(), texts(words));
            }
            if attribute.get("shown").map(text).as_deref() == Some("no") {
                hidden.push(id.clone());
            }
            for (word, open) in attribute.get("may be").map(pairs).unwrap_or_default() {
                let open: Vec<_> = texts(&open).iter().map(|w| w.to_lowercase()).collect();
                may_be.insert(word.to_lowercase(), json!(open));
            }
        }
        let mut wider = BTreeMap::new();
        for section in ["permits", "gear", "areas"] {
            for (id, tag) in pairs(&file[section]) {
                if let Some(ids) = tag.get("counts as") {
                    wider.insert(id, texts(ids));
                }
            }
        }
        let data = json!({ "hidden": hidden, "may_be": may_be });
        Self { kinds, quantities, wider, classes, attributes, choices, data }
    }

    /// The kind that an id, a name or a synonym means.
    pub(crate) fn kind(&self, word: &str) -> String {
        let known = self.kinds.get(&word.to_lowercase());
        known.unwrap_or_else(|| panic!("no kind: `{word}`")).clone()
    }

    /// `tool`, `spare`, `document`, `gear` or `certificate`.
    pub(crate) fn class(&self, kind: &str) -> &str {
        &self.classes[kind]
    }

    /// The quantity of an attribute.
    pub(crate) fn quantity(&self, attribute: &str) -> &str {
        let known = self.quantities.get(attribute);
        known.unwrap_or_else(|| panic!("no attribute: `{attribute}`"))
    }

    /// The tags with the wider ones that they count as.
    pub(crate) fn with_wider(&self, tags: &[String]) -> Vec<String> {
        let more = tags.iter().filter_map(|tag| self.wider.get(tag)).flatten();
        tags.iter().chain(more).cloned().collect()
    }
}

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
    ids.iter().map(|id| Translation::of(id, words)).collect()
}

/// The list of requirements with everything that it is built on.
fn built(profile: &Yaml) -> Vec<Yaml> {
    let mut requirements = match profile.get("built on") {
        Some(other) => built(&file(&format!("{}.yaml", text(other)))),
        None => Vec::new(),
    };
    let id_of = |requirement: &Yaml| text(&requirement["id"]);
    let at = |requirements: &[Yaml], id: &str| {
        let found = requirements.iter().position(|r| id_of(r) == id);
        found.unwrap_or_else(|| panic!("no requirement `{id}` to build on"))
    };
    for id in profile.get("drop").map(texts).unwrap_or_default() {
        let position = at(&requirements, &id);
        requirements.remove(position);
    }
    for change in list(profile.get("change")) {
        let position = at(&requirements, &id_of(&change));
        let requirement = requirements[position].as_mapping_mut().unwrap();
        for (key, value) in pairs(&change) {
            if key != "with" {
                requirement.insert(key.into(), value);
                continue;
            }
            let lines = requirement.get_mut("with").and_then(Yaml::as_mapping_mut).unwrap();
            for (line, phrase) in pairs(&value) {
                if phrase.as_str() == Some("dropped") {
                    lines.remove(line.as_str()).unwrap();
                } else {
                    lines.insert(line.into(), phrase);
                }
            }
        }
    }
    for own in list(profile.get("requirements")) {
        match own.get("after") {
            Some(other) => {
                let position = at(&requirements, &text(other));
                requirements.insert(position + 1, own);
            }
            None => requirements.push(own),
        }
    }
    requirements
}

/// A key of the profile, or of the one that it is built on.
fn taken_over(profile: &Yaml, key: &str) -> Option<Yaml> {
    profile.get(key).cloned().or_else(|| {
        let other = profile.get("built on")?;
        taken_over(&file(&format!("{}.yaml", text(other))), key)
    })
}

fn months(phrase: &str) -> i64 {
    figure(phrase.trim_start_matches("every "))
}

struct Translation<'a> {
    words: &'a Words,
    specs: Vec<Json>,
    kinds: BTreeMap<String, Vec<String>>,
}

impl Translation<'_> {
    fn of(id: &str, words: &Words) -> Rules {
        let profile = file(&format!("{id}.yaml"));
        let mut at = Translation { words, specs: Vec::new(), kinds: BTreeMap::new() };
        let source = taken_over(&profile, "source").map(|s| text(&s)).unwrap_or_default();
        let due = taken_over(&profile, "inspection due").map(|s| months(&text(&s)));
        let written = built(&profile);
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
            rail: text(&taken_over(&profile, "freeboard from").unwrap()) == "top of the rail",
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
            let line: Vec<_> =
                texts(&value).iter().map(|tag| json!({ "is": is, "tag": tag })).collect();
            lines.push(json!(line));
        }
        lines
    }

    fn requirement(
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

/// The clause with and without the publication before it, without spaces,
/// commas and case.
fn add_clause(clauses: &mut Vec<String>, written: &Yaml, source: &str) {
    if let Some(clause) = written.get("clause") {
        clauses.push(plain_clause(&text(clause)));
        clauses.push(plain_clause(&format!("{source} {}", text(clause))));
    }
}

/// A clause as two ways of writing it are compared.
pub(crate) fn plain_clause(clause: &str) -> String {
    clause.to_lowercase().chars().filter(|c| !c.is_whitespace() && *c != ',').collect()
}

fn limit(phrase: &str) -> Json {
    let after = |start: &str| phrase.strip_prefix(start);
    if phrase == "any" {
        return json!({ "is": "any" });
    }
    if let Some(rest) = after("about ") {
        let (figures, margin) = rest.split_once(", within ").unwrap();
        let (low, high) = figures.split_once(" to ").unwrap_or((figures, figures));
        return json!({ "is": "about", "low": figure(low), "high": figure(high), "margin": figure(margin) });
    }
    if let Some(rest) = after("from ") {
        let (low, high) = rest.split_once(" to ").unwrap();
        return json!({ "is": "from to", "low": bound(low), "high": bound(high) });
    }
    if let Some(rest) = after("exactly ") {
        return json!({ "is": "from to", "low": bound(rest), "high": bound(rest) });
    }
    for is in ["at least", "at most", "more than", "less than"] {
        if let Some(rest) = after(&format!("{is} ")) {
            return json!({ "is": is, "bound": bound(rest) });
        }
    }
    panic!("not translated, a limit: `{phrase}`")
}

fn bound(phrase: &str) -> Json {
    for (start, is) in [("the greater of ", "greater"), ("the lesser of ", "lesser")] {
        if let Some(rest) = phrase.strip_prefix(start) {
            let parts: Vec<_> = rest.split(" and ").map(bound).collect();
            return json!({ "is": is, "parts": parts });
        }
    }
    let bases = [
        ("freeboard", "freeboard"),
        ("the heaviest hook aboard", "hook"),
        ("the thickest line aboard", "line"),
        ("the thickest leader aboard", "leader"),
    ];
    let (percent, base) = match phrase.split_once("% of ") {
        Some((percent, base)) => (percent.parse::<i64>().unwrap(), base),
        None => (100, phrase),
    };
    match bases.iter().find(|(name, _)| *name == base) {
        Some((_, of)) => json!({ "is": "share", "percent": percent, "of": of }),
        None => json!({ "is": "figure", "figure": figure(phrase) }),
    }
}

const MONTHS: [&str; 12] = [
    "January",
    "February",
    "March",
    "April",
    "May",
    "June",
    "July",
    "August",
    "September",
    "October",
    "November",
    "December",
];

fn conditions(when: &Yaml) -> Vec<Json> {
    pairs(when).iter().map(|(key, value)| condition(key, &text(value))).collect()
}

fn condition(key: &str, phrase: &str) -> Json {
    match key {
        "gear" | "area" | "permit" | "area other than" => json!({ "is": key, "tag": phrase }),
        "months" => {
            let (first, last) = phrase.split_once(" to ").unwrap();
            let number = |name: &str| MONTHS.iter().position(|m| *m == name).unwrap() + 1;
            assert!(number(first) <= number(last), "not translated: months over the year's end");
            json!({ "is": "months", "first": number(first), "last": number(last) })
        }
        "freeboard" => {
            for side in ["more than", "less than"] {
                if let Some(rest) = phrase.strip_prefix(&format!("{side} ")) {
                    return json!({ "is": "freeboard", "side": side, "figure": figure(rest) });
                }
            }
            for side in ["or less", "or more"] {
                if let Some(rest) = phrase.strip_suffix(&format!(" {side}")) {
                    return json!({ "is": "freeboard", "side": side, "figure": figure(rest) });
                }
            }
            panic!("not translated, a freeboard: `{phrase}`")
        }
        "wheelhouse" => json!({ "is": "feature", "feature": key, "wanted": phrase == "yes" }),
        other => panic!("not translated, a condition: `{other}`"),
    }
}
