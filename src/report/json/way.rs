//! Clashes and the shortest way to ready, in the JSON format.
//!
//! Imports `model`.

use super::profile::ids;
use crate::model::check::Judgement;
use crate::model::finding::{Clash, Deed, Target, WayToReady};
use crate::report::words::Words;
use serde::Serialize;

#[derive(Debug, Serialize)]
pub(super) struct ClashJson {
    requirements: Vec<String>,
    tools: Vec<String>,
    text: String,
}

#[derive(Debug, Serialize)]
pub(in crate::report) struct WayJson {
    pub(in crate::report) state: &'static str,
    pub(in crate::report) fewest: Option<bool>,
    pub(in crate::report) steps: Vec<StepJson>,
}

#[derive(Debug, Serialize)]
pub(in crate::report) struct StepJson {
    pub(in crate::report) deed: &'static str,
    pub(in crate::report) target: TargetJson,
    pub(in crate::report) requirement: String,
    pub(in crate::report) also: Vec<String>,
    pub(in crate::report) reasons: Vec<&'static str>,
    pub(in crate::report) text: String,
}

#[derive(Debug, Serialize)]
#[serde(rename_all = "kebab-case")]
pub(in crate::report) enum TargetJson {
    Tool(String),
    Type(TypeJson),
    Role(Option<String>),
    Gear(String),
    Vessel(String),
}

#[derive(Debug, Serialize)]
pub(in crate::report) struct TypeJson {
    index: usize,
    name: Option<String>,
}

impl ClashJson {
    pub(super) fn new(clash: &Clash, words: &Words<'_>) -> Self {
        Self {
            requirements: ids(words, &clash.requirements),
            tools: clash.tools.iter().map(|tool| words.mark(*tool).to_owned()).collect(),
            text: words.clash(clash),
        }
    }
}

impl WayJson {
    /// The shortest way to ready.
    pub(in crate::report) fn new(
        judgement: &Judgement,
        way: &WayToReady,
        words: &Words<'_>,
    ) -> Self {
        match way {
            WayToReady::Already => Self { state: "already", fewest: None, steps: Vec::new() },
            WayToReady::None => Self { state: "none", fewest: None, steps: Vec::new() },
            WayToReady::Steps { steps, fewest } => Self {
                state: "steps",
                fewest: Some(*fewest),
                steps: steps
                    .iter()
                    .map(|step| StepJson {
                        deed: deed(step.deed),
                        target: target(&step.target, step.requirement, words),
                        requirement: words.id(step.requirement),
                        also: ids(words, &step.also),
                        reasons: step.reasons.iter().map(|reason| reason.code()).collect(),
                        text: words.step(step, words.freeboard_for(judgement, step.requirement)),
                    })
                    .collect(),
            },
        }
    }
}

/// The stable word for what is to be done.
pub(in crate::report) fn deed(deed: Deed) -> &'static str {
    match deed {
        Deed::Measure => "measure",
        Deed::Reinspect => "reinspect",
        Deed::Repair => "repair",
        Deed::Lengthen => "lengthen",
        Deed::BringAboard => "bring-aboard",
        Deed::Document => "document",
        Deed::Certify => "certify",
        Deed::ChangeGear => "change-gear",
        Deed::Acquire => "acquire",
    }
}

fn target(target: &Target, requirement: usize, words: &Words<'_>) -> TargetJson {
    match target {
        Target::Tool(tool) => TargetJson::Tool(words.mark(*tool).to_owned()),
        Target::Type(index) => {
            TargetJson::Type(TypeJson { index: *index, name: words.type_name(requirement, *index) })
        }
        Target::Role(role) => TargetJson::Role(role.clone()),
        Target::Gear(piece) => TargetJson::Gear(piece.clone()),
        Target::Vessel => TargetJson::Vessel(words.vessel.name.clone()),
    }
}
