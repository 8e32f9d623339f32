//! Vessels written by hand, and what the real command says of them.
//!
//! A tool is one line of YAML; `but`, `plus` and `without` change one figure
//! of it. Every gear list is in `gear`.

pub(crate) mod gear;

use crate::run::{self, Ran};
use serde_json::Value;

/// The day on which hand-written vessels are checked unless a test says.
pub(crate) const DAY: &str = "2026-03-02";

/// The hooks that a bare vessel carries, good under every shipped profile.
pub(crate) const HOOKS: &str = "[{ name: circle hooks, type: circle, size: 18/0, offset: 0 degrees, wire: 3 mm, \
                         round-wire: yes, outer-diameter: 56 mm, gap: 28 mm, corrodible: yes }]";

/// A vessel in the making.
#[derive(Debug, Clone)]
pub(crate) struct Outfit {
    keys: Vec<(String, String)>,
    kit: Vec<String>,
    documents: Vec<String>,
}

/// A bare vessel of that freeboard, with everything known of it but no tool.
pub(crate) fn vessel(freeboard: &str) -> Outfit {
    Outfit { keys: Vec::new(), kit: Vec::new(), documents: Vec::new() }
        .set("format", "vessel/1")
        .set("name", "Test Kittiwake")
        .set(
            "declared",
            "{ by: A. Holder, on: 2018-12-03, figures: measured, condition: serviceable }",
        )
        .set("freeboard", freeboard)
        .set("permits", "[]")
        .set("gear", "[pelagic-longline]")
        .set("areas", "[]")
        .set("features", "{ wheelhouse: yes }")
        .set("hooks", HOOKS)
        .set("lines", "[{ name: mainline, diameter: 2 mm }]")
        .set("people", "[]")
}

impl Outfit {
    /// The vessel with that line in place of what it said of the key.
    pub(crate) fn set(mut self, key: &str, value: &str) -> Self {
        self.keys.retain(|(known, _)| known != key);
        self.keys.push((key.to_owned(), value.to_owned()));
        self
    }

    /// The vessel without any word on the key.
    pub(crate) fn unsaid(mut self, key: &str) -> Self {
        let before = self.keys.len();
        self.keys.retain(|(known, _)| known != key);
        assert!(self.keys.len() < before, "nothing was said of {key}");
        self
    }

    /// The vessel with these tools too.
    pub(crate) fn with<S: AsRef<str>>(mut self, kit: &[S]) -> Self {
        self.kit.extend(kit.iter().map(|tool| tool.as_ref().to_owned()));
        self
    }

    /// The vessel with these documents too.
    pub(crate) fn carrying<S: AsRef<str>>(mut self, documents: &[S]) -> Self {
        self.documents.extend(documents.iter().map(|one| one.as_ref().to_owned()));
        self
    }

    /// The vessel with the tool of that mark replaced.
    pub(crate) fn instead(mut self, mark: &str, tool: &str) -> Self {
        let at = self.position(mark);
        self.kit[at] = tool.to_owned();
        self
    }

    /// The vessel without the tool of that mark.
    pub(crate) fn lacking(mut self, mark: &str) -> Self {
        let at = self.position(mark);
        self.kit.remove(at);
        self
    }

    fn position(&self, mark: &str) -> usize {
        let marked = format!("{{ mark: {mark},");
        self.kit
            .iter()
            .position(|tool| tool.starts_with(&marked))
            .unwrap_or_else(|| panic!("no tool {mark} in the kit"))
    }

    /// The vessel as a file.
    pub(crate) fn yaml(&self) -> String {
        let mut text = String::new();
        for (key, value) in &self.keys {
            text.push_str(&format!("{key}: {value}\n"));
        }
        for (key, list) in [("kit", &self.kit), ("documents", &self.documents)] {
            text.push_str(&format!("{key}:{}\n", if list.is_empty() { " []" } else { "" }));
            for one in list {
                text.push_str(&format!("  - {one}\n"));
            }
        }
        text
    }

    /// Checks the vessel with these arguments.
    pub(crate) fn check(&self, arguments: &[&str]) -> Judged {
        let folder = tempfile::tempdir().unwrap();
        let path = run::write(folder.path(), "vessel.yaml", &self.yaml());
        let mut all = vec!["check", &path, "--format", "json"];
        all.extend(arguments);
        let ran = run::kitmuster(&all);
        assert!(ran.status == 0 || ran.status == 1, "{}\n{}", self.yaml(), ran.page());
        let json = ran.json();
        Judged { ran, json }
    }

    /// Checks the vessel against one profile on one day.
    pub(crate) fn under(&self, profile: &str, day: &str) -> Judged {
        self.check(&["--profile", profile, "--on", day])
    }
}

/// What the command said.
pub(crate) struct Judged {
    pub(crate) ran: Ran,
    pub(crate) json: Value,
}

impl Judged {
    /// What it said of the only profile.
    pub(crate) fn only(&self) -> &Value {
        let profiles = self.json["profiles"].as_array().unwrap();
        assert_eq!(profiles.len(), 1, "{}", self.ran.page());
        &profiles[0]
    }

    /// The ids of the profiles that judged the vessel.
    pub(crate) fn profiles(&self) -> Vec<&str> {
        texts(&self.json["profiles"], "id")
    }

    /// The codes of the notices, but for the age of the list, which is told of
    /// every vessel that is written here.
    pub(crate) fn notices(&self) -> Vec<&str> {
        let mut codes = texts(&self.json["notices"], "code");
        codes.retain(|code| *code != "list-old");
        codes
    }

    /// The ids of the requirements that have a finding.
    pub(crate) fn requirements(&self) -> Vec<&str> {
        texts(&self.only()["findings"], "requirement")
    }

    /// The finding of a requirement; null if it has none.
    pub(crate) fn finding(&self, requirement: &str) -> &Value {
        let findings = self.only()["findings"].as_array().unwrap();
        findings.iter().find(|f| f["requirement"] == requirement).unwrap_or(&Value::Null)
    }

    /// `met`, `not-met` or `cannot-tell`; `unbound` without a finding.
    pub(crate) fn outcome(&self, requirement: &str) -> &str {
        self.finding(requirement)["outcome"].as_str().unwrap_or("unbound")
    }

    /// The codes of the reasons of a finding.
    pub(crate) fn codes(&self, requirement: &str) -> Vec<&str> {
        texts(&self.finding(requirement)["reasons"], "code")
    }

    /// The marks of the tools that serve a requirement.
    pub(crate) fn tools(&self, requirement: &str) -> Vec<&str> {
        texts(&self.finding(requirement)["tools"], "mark")
    }

    /// The requirements whose tools serve this one.
    pub(crate) fn through(&self, requirement: &str) -> Vec<&str> {
        let tools = self.finding(requirement)["tools"].as_array();
        tools.into_iter().flatten().filter_map(|tool| tool["through"].as_str()).collect()
    }

    /// The verdict over all profiles.
    pub(crate) fn verdict(&self) -> &str {
        self.json["verdict"].as_str().unwrap()
    }
}

fn texts<'a>(list: &'a Value, key: &str) -> Vec<&'a str> {
    list.as_array().into_iter().flatten().filter_map(|one| one[key].as_str()).collect()
}

/// The outcome of one requirement with just these tools aboard.
pub(crate) fn outcome<S: AsRef<str>>(
    profile: &str,
    day: &str,
    freeboard: &str,
    kit: &[S],
    requirement: &str,
) -> String {
    vessel(freeboard).with(kit).under(profile, day).outcome(requirement).to_owned()
}

/// Where the value of a key stands in a tool's line.
fn value_of(tool: &str, key: &str) -> Option<(usize, usize)> {
    let start = tool.find(&format!(" {key}: "))? + key.len() + 3;
    let (mut depth, mut end) = (0, tool.len());
    for (at, c) in tool[start..].char_indices() {
        match c {
            '{' | '[' => depth += 1,
            ',' if depth == 0 => end = start + at,
            '}' | ']' if depth == 0 => end = start + at - 1,
            '}' | ']' => depth -= 1,
            _ => continue,
        }
        if end < tool.len() {
            break;
        }
    }
    Some((start, end))
}

/// The tool with another value of a key that it has.
pub(crate) fn but(tool: &str, key: &str, value: &str) -> String {
    let (start, end) = value_of(tool, key).unwrap_or_else(|| panic!("no {key} in {tool}"));
    format!("{}{value}{}", &tool[..start], &tool[end..])
}

/// The tool with a further key.
pub(crate) fn plus(tool: &str, key: &str, value: &str) -> String {
    assert!(value_of(tool, key).is_none(), "{key} stands in {tool}");
    format!("{}, {key}: {value} }}", tool.strip_suffix(" }").unwrap())
}

/// The tool without any word on a key.
pub(crate) fn without(tool: &str, key: &str) -> String {
    let (start, end) = value_of(tool, key).unwrap_or_else(|| panic!("no {key} in {tool}"));
    let before = tool[..start].rfind(", ").unwrap();
    format!("{}{}", &tool[..before], &tool[end..])
}

/// One nanometre less than a length, as a length in a file.
pub(crate) fn just_under(length: &str) -> String {
    off_by(length, -1)
}

/// One nanometre more than a length, as a length in a file.
pub(crate) fn just_over(length: &str) -> String {
    off_by(length, 1)
}

fn off_by(length: &str, nanometres: i64) -> String {
    let exact = kitmuster::measure::Length::parse(length).unwrap().0.nanometres() + nanometres;
    format!("{}.{:06} mm", exact / 1_000_000, exact % 1_000_000)
}

#[test]
fn a_tool_line_is_changed_one_key_at_a_time() {
    let tool = "{ mark: A-1, kind: pliers, fits: [X-1, X-2], overall: 11 in }";
    assert_eq!(but(tool, "fits", "[Y]"), "{ mark: A-1, kind: pliers, fits: [Y], overall: 11 in }");
    assert_eq!(without(tool, "overall"), "{ mark: A-1, kind: pliers, fits: [X-1, X-2] }");
    assert_eq!(without(tool, "fits"), "{ mark: A-1, kind: pliers, overall: 11 in }");
    assert_eq!(plus("{ mark: A-1 }", "kind", "tire"), "{ mark: A-1, kind: tire }");
    assert_eq!(just_under("1 mm"), "0.999999 mm");
    assert_eq!(just_over("6 ft"), "1828.800001 mm");
}
