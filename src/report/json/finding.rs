//! A finding in the JSON format.
//!
//! Imports `model`, and `load` for the positions of what it points at.

use super::quantity::QuantityJson;
use super::reason::ReasonJson;
use crate::model::finding::{Finding, Serving};
use crate::model::place::Place;
use crate::model::profile::{Level, Verified};
use crate::report::places::Places;
use crate::report::words::Words;
use serde::Serialize;

/// A finding.
#[derive(Debug, Serialize)]
pub(super) struct FindingJson {
    requirement: String,
    title: String,
    level: Option<&'static str>,
    outcome: &'static str,
    tools: Vec<ToolJson>,
    reasons: Vec<ReasonJson>,
    citation: Option<CitationJson>,
    note: Option<String>,
    freeboard: Option<QuantityJson>,
    day: String,
    remedy: Option<String>,
}

/// A tool that serves.
#[derive(Debug, Serialize)]
pub(in crate::report) struct ToolJson {
    mark: String,
    kind: Option<String>,
    count: u32,
    through: Option<String>,
    place: PlaceJson,
}

/// Where something is written.
#[derive(Debug, Default, PartialEq, Eq, Serialize)]
pub(super) struct PlaceJson {
    file: String,
    key: String,
    line: Option<usize>,
    column: Option<usize>,
}

#[derive(Debug, Serialize)]
struct CitationJson {
    source: String,
    clause: String,
    edition: String,
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
            level: requirement.map(|requirement| match requirement.level {
                Level::Required => "required",
                Level::Recommended => "recommended",
            }),
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

fn verified(verified: Verified) -> &'static str {
    match verified {
        Verified::Read => "read",
        Verified::Excerpt => "excerpt",
        Verified::Inferred => "inferred",
        Verified::Memory => "memory",
        Verified::CommonPractice => "common-practice",
    }
}
