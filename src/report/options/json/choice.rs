//! One choice of a situation in the JSON of options: its tools, what it
//! wants, and what opens it.
//!
//! Imports `model` and `measure`.

use super::super::Shown;
use crate::measure::Answer;
use crate::model::finding::{Action, Finding, Outcome};
use crate::model::options::{Choice, Rail};
use crate::model::stable::stable_words;
use crate::report::json::{
    OUTCOMES, ReasonJson, StepJson, TargetJson, ToolJson, WayJson, deed, outcome,
};
use crate::report::places::Places;
use crate::report::words::options as said;
use schemars::JsonSchema;
use serde::Serialize;

/// One choice of a situation.
#[derive(Debug, JsonSchema, Serialize)]
#[schemars(rename = "Choice")]
pub(super) struct ChoiceJson {
    /// Ids, carried out in this order.
    techniques: Vec<String>,
    /// For people; its wording may change.
    title: String,
    /// Whether it is open.
    #[schemars(extend("enum" = ANSWERS))]
    answer: &'static str,
    /// Whether it is open even so: with tools that reach the water and are
    /// short of the published length, or cut the leaders and not every line.
    short: bool,
    /// The tools that it uses, where it is open or short.
    tools: Vec<ToolJson>,
    /// What it wants, where it is not.
    wanting: Vec<WantingJson>,
    /// What opens it.
    way: WayJson,
}

/// A capability that is wanting, or of which nobody can tell.
#[derive(Debug, JsonSchema, Serialize)]
#[schemars(rename = "Wanting")]
struct WantingJson {
    /// The id of the capability.
    capability: String,
    /// For people; its wording may change.
    title: String,
    /// The outcome.
    #[schemars(extend("enum" = OUTCOMES))]
    outcome: &'static str,
    /// Why it is not met, or what is missing.
    reasons: Vec<ReasonJson>,
    /// For people; its wording may change.
    text: String,
}

impl ChoiceJson {
    pub(super) fn new<'a>(
        shown: &Shown<'a>,
        places: &Places<'_>,
        choice: &'a Choice,
        techniques: &[usize],
    ) -> Self {
        let practice = shown.practice;
        let open = choice.answer == Answer::Yes;
        Self {
            techniques: techniques.iter().map(|t| practice.techniques[*t].id.clone()).collect(),
            title: said::choice(practice, techniques),
            answer: answer(choice.answer),
            short: choice.is_short(),
            tools: if choice.is_open() { tools(shown, places, choice) } else { Vec::new() },
            wanting: if open { Vec::new() } else { wanting(shown, places, choice) },
            way: way(shown, choice),
        }
    }
}

/// The tools that the choice uses.
fn tools<'a>(shown: &Shown<'a>, places: &Places<'_>, choice: &'a Choice) -> Vec<ToolJson> {
    let Some(judgement) = choice.used() else { return Vec::new() };
    let words = shown.words(judgement);
    let serving = judgement.findings.iter().flat_map(|finding| &finding.serving);
    serving.map(|serving| ToolJson::new(serving, &words, places)).collect()
}

/// What it wants, in the order in which the page tells it.
fn wanting<'a>(shown: &Shown<'a>, places: &Places<'_>, choice: &'a Choice) -> Vec<WantingJson> {
    let findings = choice.tools.iter().flat_map(|judgement| &judgement.findings);
    let findings = findings.filter(|finding| finding.outcome != Outcome::Met);
    let mut findings = findings.collect::<Vec<&Finding>>().into_iter();
    let rails = choice.rails.iter().filter(|rail| rail.answer != Answer::Yes);
    let mut rails = rails.collect::<Vec<&Rail>>().into_iter();
    let told = shown.wanting(choice).into_iter().map(|wanting| {
        let (capability, reasons) = match (wanting.requirement, &choice.tools) {
            (Some(index), Some(judgement)) => {
                let words = shown.words(judgement);
                let reasons = findings.next().into_iter().flat_map(|finding| &finding.reasons);
                let reasons = reasons.map(|because| ReasonJson::new(because, &words, places));
                (words.id(index), reasons.collect())
            }
            _ => (id_of(shown, rails.next()), Vec::new()),
        };
        WantingJson {
            capability,
            title: wanting.what,
            outcome: outcome(if wanting.open { Outcome::CannotTell } else { Outcome::NotMet }),
            reasons,
            text: wanting.why,
        }
    });
    told.collect()
}

fn id_of(shown: &Shown<'_>, rail: Option<&Rail>) -> String {
    rail.map(|rail| shown.practice.capabilities[rail.capability].id.clone()).unwrap_or_default()
}

/// What opens it. A rail that is too high nothing lowers; one that nobody
/// measured is measured first.
fn way<'a>(shown: &Shown<'a>, choice: &'a Choice) -> WayJson {
    let rail_says = |answer| choice.rails.iter().find(|rail| rail.answer == answer);
    if rail_says(Answer::No).is_some() {
        return WayJson { state: "none", fewest: None, steps: Vec::new() };
    }
    let of_tools = choice.tools.as_ref().and_then(|judgement| {
        let way = &judgement.inverses.as_ref()?.way;
        Some(WayJson::new(judgement, way, &shown.words(judgement)))
    });
    let mut way = of_tools.unwrap_or(WayJson { state: "already", fewest: None, steps: Vec::new() });
    let measured = rail_says(Answer::Unknown).filter(|_| way.state != "none");
    if let Some(rail) = measured {
        way.state = "steps";
        way.fewest = way.fewest.or(Some(true));
        let step = StepJson {
            deed: deed(Action::Measure),
            target: TargetJson::Vessel(shown.options.vessel.name.clone()),
            requirement: id_of(shown, Some(rail)),
            also: Vec::new(),
            reasons: vec!["vessel-fact-unknown"],
            text: said::MEASURE_RAIL.to_owned(),
        };
        way.steps.insert(0, step);
    }
    way
}

stable_words! {
    fn answer(Answer) in ANSWERS {
        Answer::Yes => "open",
        Answer::No => "closed",
        Answer::Unknown => "cannot-tell",
    }
}
