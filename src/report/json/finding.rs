//! A finding in the JSON format.
//!
//! Imports `model`, and `load` for the positions of what it points at.

use super::OUTCOMES;
use super::quantity::QuantityJson;
use super::reason::ReasonJson;
use crate::model::finding::{Finding, Serving};
use crate::model::place::Place;
use crate::model::profile::Verified;
use crate::model::stable::stable_words;
use crate::report::audit::csv::{LEVELS, level};
use crate::report::places::Places;
use crate::report::words::Words;
use schemars::JsonSchema;
use serde::Serialize;

/// A finding.
#[derive(Debug, JsonSchema, Serialize)]
#[schemars(rename = "Finding")]
pub(super) struct FindingJson {
    /// The id of the requirement.
    requirement: String,
    /// What the rule calls it.
    title: String,
    /// Whether it counts towards the verdict.
    #[schemars(extend("enum" = LEVELS))]
    level: Option<&'static str>,
    /// The outcome.
    #[schemars(extend("enum" = OUTCOMES))]
    outcome: &'static str,
    /// The tools that serve it.
    tools: Vec<ToolJson>,
    /// Why it is not met, or what is missing.
    reasons: Vec<ReasonJson>,
    /// Where it is written.
    citation: Option<CitationJson>,
    /// A note for the reader.
    note: Option<String>,
    /// The freeboard at which it is worst.
    freeboard: Option<QuantityJson>,
    /// The day on which it is worst.
    #[schemars(extend("format" = "date"))]
    day: String,
    /// What to do about it, for people.
    remedy: Option<String>,
}

/// A tool that serves.
#[derive(Debug, JsonSchema, Serialize)]
#[schemars(rename = "ServingTool")]
pub(in crate::report) struct ToolJson {
    /// Its mark.
    mark: String,
    /// The kind, by its id.
    kind: Option<String>,
    /// How many of the lot serve.
    count: u32,
    /// The requirement whose tool is deemed to serve this one.
    through: Option<String>,
    /// Where it is written.
    place: PlaceJson,
}

/// Where something is written.
#[derive(Debug, Default, PartialEq, Eq, JsonSchema, Serialize)]
#[schemars(rename = "Place")]
pub(super) struct PlaceJson {
    /// The file, as it was given.
    file: String,
    /// The path of keys in the file.
    key: String,
    /// From one; null where the file was not read for it.
    line: Option<usize>,
    /// From one, in characters.
    column: Option<usize>,
}

/// Where a requirement is written.
#[derive(Debug, JsonSchema, Serialize)]
#[schemars(rename = "Citation")]
struct CitationJson {
    /// The publication.
    source: String,
    /// The clause.
    clause: String,
    /// The law's edition, in words.
    edition: String,
    /// How it was verified.
    #[schemars(extend("enum" = VERIFIED))]
    verified: &'static str,
}

impl FindingJson {
    /// The finding, with the places of the tools that it names.
    pub(super) fn new(finding: &Finding, words: &Words<'_>, places: &Places<'_>) -> Self {
        let requirement = words.profile.requirements.get(finding.requirement);
        let tool = |serving: &Serving| ToolJson::new(serving, words, places);
        Self {
            requirement: words.id(finding.requirement),
            title: words.title(finding.requirement),
            level: requirement.map(|requirement| level(requirement.level)),
            outcome: super::outcome(finding.outcome),
            tools: finding.serving.iter().map(tool).collect(),
            reasons: finding
                .reasons
                .iter()
                .map(|because| ReasonJson::new(because, words, places))
                .collect(),
            citation: requirement.map(|requirement| CitationJson {
                source: words.profile.source.clone(),
                clause: requirement.clause.clone(),
                edition: words.profile.edition.clone(),
                verified: verified(requirement.verified),
            }),
            note: requirement.and_then(|r| r.note.as_ref()).map(ToString::to_string),
            freeboard: finding.freeboard.map(|length| QuantityJson::of_freeboard(length, words)),
            day: finding.day.to_string(),
            remedy: words.remedy(finding, &[]),
        }
    }
}

impl ToolJson {
    /// The tool with its place, where its file was read.
    pub(in crate::report) fn new(
        serving: &Serving,
        words: &Words<'_>,
        places: &Places<'_>,
    ) -> Self {
        let tool = words.vessel.kit.get(serving.tool);
        Self {
            mark: words.mark(serving.tool).to_owned(),
            kind: tool.map(|tool| words.vocabulary.kind(tool.kind).id.clone()),
            count: serving.count,
            through: serving.through.map(|requirement| words.id(requirement)),
            place: tool.map(|tool| PlaceJson::new(&tool.place, places)).unwrap_or_default(),
        }
    }
}

impl PlaceJson {
    /// The place with its line and column, where its file was read.
    pub(super) fn new(place: &Place, places: &Places<'_>) -> Self {
        let position = places.locate(place);
        Self {
            file: place.file.to_string(),
            key: place.key.clone(),
            line: position.map(|position| position.line),
            column: position.map(|position| position.column),
        }
    }
}

stable_words! {
    fn verified(Verified) in VERIFIED {
            Verified::Read => "read",
            Verified::Excerpt => "excerpt",
            Verified::Inferred => "inferred",
            Verified::Memory => "memory",
            Verified::CommonPractice => "common-practice",
    }
}
