//! Clashes and the shortest way to ready, in the JSON format.
//!
//! Imports `model`.

use super::profile::ids;
use crate::model::check::Judgement;
use crate::model::finding::{Action, Clash, Target, WayToReady};
use crate::model::reason::Reason;
use crate::model::stable::stable_words;
use crate::report::words::Words;
use schemars::JsonSchema;
use serde::Serialize;

/// Requirements that cannot be met together.
#[derive(Debug, JsonSchema, Serialize)]
#[schemars(rename = "Clash")]
pub(super) struct ClashJson {
    /// Their ids.
    requirements: Vec<String>,
    /// The marks of the tools that they compete for.
    tools: Vec<String>,
    /// For people; its wording may change.
    text: String,
}

/// The fewest changes that make the kit ready, or open a choice.
#[derive(Debug, JsonSchema, Serialize)]
#[schemars(rename = "Way")]
pub(in crate::report) struct WayJson {
    /// Whether changes are needed, or none would do.
    #[schemars(extend("enum" = WAYS))]
    pub(in crate::report) state: &'static str,
    /// Whether nothing shorter does the same; false: the search was stopped.
    pub(in crate::report) fewest: Option<bool>,
    /// What to do.
    pub(in crate::report) steps: Vec<StepJson>,
}

/// One change.
#[derive(Debug, JsonSchema, Serialize)]
#[schemars(rename = "Step")]
pub(in crate::report) struct StepJson {
    /// What is to be done.
    #[schemars(extend("enum" = DEEDS))]
    pub(in crate::report) deed: &'static str,
    /// To what.
    pub(in crate::report) target: TargetJson,
    /// The requirement that it meets.
    pub(in crate::report) requirement: String,
    /// Others that it meets too.
    pub(in crate::report) also: Vec<String>,
    /// The codes of the reasons that it takes away.
    #[schemars(extend("enum" = Reason::CODES))]
    pub(in crate::report) reasons: Vec<&'static str>,
    /// For people; its wording may change.
    pub(in crate::report) text: String,
}

/// What a change is made to.
#[derive(Debug, JsonSchema, Serialize)]
#[serde(rename_all = "kebab-case")]
#[schemars(rename = "Target")]
pub(in crate::report) enum TargetJson {
    Tool(String),
    Type(TypeJson),
    Role(Option<String>),
    Gear(String),
    Vessel(String),
}

/// One of several different types.
#[derive(Debug, JsonSchema, Serialize)]
#[schemars(rename = "OfType")]
pub(in crate::report) struct TypeJson {
    /// Its place in the requirement, from 0.
    index: usize,
    /// Its name.
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
            WayToReady::Already => Self { state: way_state(way), fewest: None, steps: Vec::new() },
            WayToReady::None => Self { state: way_state(way), fewest: None, steps: Vec::new() },
            WayToReady::Steps { steps, fewest } => Self {
                state: way_state(way),
                fewest: Some(*fewest),
                steps: steps
                    .iter()
                    .map(|step| StepJson {
                        deed: deed(step.action),
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

stable_words! {
    /// The stable word for what is to be done.
    pub(in crate::report) fn deed(Action) in DEEDS {
            Action::Measure => "measure",
            Action::Reinspect => "reinspect",
            Action::Repair => "repair",
            Action::Lengthen => "lengthen",
            Action::BringAboard => "bring-aboard",
            Action::Document => "document",
            Action::Certify => "certify",
            Action::ChangeGear => "change-gear",
            Action::Acquire => "acquire",
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

stable_words! {
    fn way_state(&WayToReady) in WAYS {
        WayToReady::Already => "already",
        WayToReady::Steps { .. } => "steps",
        WayToReady::None => "none",
    }
}
