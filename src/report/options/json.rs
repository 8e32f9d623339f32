//! What a kit leaves open as one JSON document: the format
//! `kitmuster/options/1`.
//!
//! The types are the format's own. Documented in DEVELOPERS.md. Imports
//! `load` for the positions of the tools, `options`, `model` and `measure`.

mod choice;
mod freeing;
mod lift;

use super::Shown;
use crate::freeing::{CaseAnswer, Question};
use crate::model::options::{Answered, OwnHooks, Standing, Worth};
use crate::model::stable::stable_words;
use crate::model::technique::{Pattern, Practice, Situation};
use crate::report::json::{NoticeJson, ProgramJson, TRUSTS, TripJson, VesselJson, harmless, trust};
use crate::report::places::Places;
use choice::ChoiceJson;
pub(in crate::report) use freeing::FreeingJson;
use lift::LiftJson;
use schemars::JsonSchema;
use serde::Serialize;
use std::collections::BTreeMap;

/// The name and version of the format.
const SCHEMA: &str = "kitmuster/options/1";

/// Words by the id of the fact that they answer.
type Facts = BTreeMap<String, Vec<String>>;

/// What is open as pretty-printed JSON, ending in a line feed; of a case only
/// the situations that answer it.
///
/// # Errors
/// None in practice: the types of the format all have a JSON form.
pub fn json(
    shown: &Shown<'_>,
    case: Option<(&Question, &[CaseAnswer])>,
) -> Result<String, serde_json::Error> {
    let places = Places::new(shown.sources);
    let mut text = serde_json::to_string_pretty(&OptionsJson::new(shown, &places, case))?;
    text.push('\n');
    Ok(harmless(text))
}

/// Which ways of freeing a turtle a kit leaves open.
#[derive(Debug, JsonSchema, Serialize)]
#[schemars(rename = "Options")]
pub(in crate::report) struct OptionsJson {
    /// The name and version of the format.
    #[schemars(extend("const" = SCHEMA))]
    schema: &'static str,
    /// The program that wrote it.
    program: ProgramJson,
    /// The vessel.
    vessel: VesselJson,
    /// The trip that was judged.
    trip: TripJson,
    /// Which figures were believed.
    #[schemars(extend("enum" = TRUSTS))]
    trust: &'static str,
    /// What is told of the trip and of inspection records.
    notices: Vec<NoticeJson>,
    /// The file of techniques.
    practice: PracticeJson,
    /// In how many situations what is open.
    worth: WorthJson,
    /// What was asked, with `--case`.
    #[serde(skip_serializing_if = "Option::is_none")]
    case: Option<CaseJson>,
    /// Every situation, or those that answer the case.
    situations: Vec<SituationJson>,
    /// The single tool that would lift most situations.
    lift: Option<LiftJson>,
}

/// The file of techniques.
#[derive(Debug, JsonSchema, Serialize)]
#[schemars(rename = "Practice")]
struct PracticeJson {
    /// Its id.
    id: String,
    /// The revision of the file.
    encoding: u32,
    /// What it is called.
    title: String,
    /// What it stands on.
    source: String,
}

/// Situations, counted.
#[derive(Debug, JsonSchema, Serialize)]
#[schemars(rename = "Worth")]
struct WorthJson {
    /// The first choice is open.
    first: usize,
    /// Only a later one is.
    fallback: usize,
    /// None is known to be open, and of some nobody can tell.
    unclear: usize,
    /// Every choice is closed.
    nothing: usize,
    /// No hook of the type is aboard.
    left_out: usize,
}

/// One case, as it was asked.
#[derive(Debug, JsonSchema, Serialize)]
#[schemars(rename = "Case")]
struct CaseJson {
    /// The word said, by the id of its fact.
    said: BTreeMap<String, String>,
    /// Likewise, what was not said and is taken so.
    taken_for_granted: BTreeMap<String, String>,
    /// What it can be.
    answers: Vec<AnswerJson>,
}

/// A situation that answers the case.
#[derive(Debug, JsonSchema, Serialize)]
#[schemars(rename = "CaseAnswer")]
struct AnswerJson {
    /// Its id.
    situation: String,
    /// Ids of what goes along.
    along: Vec<String>,
    /// By fact, the words for which this is the answer.
    if_said: Facts,
}

/// A situation and its choices.
#[derive(Debug, JsonSchema, Serialize)]
#[schemars(rename = "Situation")]
struct SituationJson {
    /// Its id.
    id: String,
    /// What it is, for people.
    title: String,
    /// By the id of each fact that it names, the words that fit.
    facts: Facts,
    /// True for what goes along with the others.
    along: bool,
    /// Whether the vessel's own hooks can make it arise.
    #[schemars(extend("enum" = HOOKS))]
    hooks: &'static str,
    /// What is open.
    #[schemars(extend("enum" = STANDINGS))]
    standing: &'static str,
    /// The best open choice, by its place from 0.
    best: Option<usize>,
    /// Hauling stations at which a better one is open.
    better_at: Vec<StationJson>,
    /// From the best to the last.
    choices: Vec<ChoiceJson>,
    /// What is never done there, for people.
    nevers: Vec<String>,
}

/// A hauling station at which something better is open than at all of them.
#[derive(Debug, JsonSchema, Serialize)]
#[schemars(rename = "BetterAt")]
struct StationJson {
    /// Its name.
    station: String,
    /// The best open choice there, by its place from 0.
    best: usize,
}

impl OptionsJson {
    fn new(
        shown: &Shown<'_>,
        places: &Places<'_>,
        case: Option<(&Question, &[CaseAnswer])>,
    ) -> Self {
        let (options, practice) = (shown.options, shown.practice);
        let answers = case.map(|(_, answers)| answers);
        let main = options.outlook.situations.iter().filter(|one| {
            answers.is_none_or(|all| all.iter().any(|answer| answer.situation == one.situation))
        });
        let along = options.outlook.along.iter().filter(|one| {
            answers.is_none_or(|all| all.iter().any(|a| a.along.contains(&one.situation)))
        });
        let main = main.map(|one| SituationJson::new(shown, places, one, false));
        let along = along.map(|one| SituationJson::new(shown, places, one, true));
        let notices = shown.notices.iter();
        Self {
            schema: SCHEMA,
            program: ProgramJson::this(),
            vessel: VesselJson::of(&options.vessel, shown.units),
            trip: TripJson::new(options.asked.departure, options.asked.back),
            trust: trust(options.asked.trust),
            notices: notices.map(|notice| NoticeJson::new(notice, shown.vocabulary)).collect(),
            practice: PracticeJson {
                id: practice.id.clone(),
                encoding: practice.encoding,
                title: practice.title.to_string(),
                source: practice.source.clone(),
            },
            worth: WorthJson::new(options.outlook.worth()),
            case: case.map(|(question, answers)| CaseJson::new(practice, question, answers)),
            situations: main.chain(along).collect(),
            lift: options.lift.as_ref().map(|lift| LiftJson::new(shown, lift)),
        }
    }
}

impl WorthJson {
    fn new(worth: Worth) -> Self {
        let Worth { first, fallback, unclear, nothing, left_out } = worth;
        Self { first, fallback, unclear, nothing, left_out }
    }
}

impl CaseJson {
    fn new(practice: &Practice, question: &Question, answers: &[CaseAnswer]) -> Self {
        let facts = practice.facts.iter().zip(&question.said);
        let word = |fact: &crate::model::technique::Fact, index: Option<usize>| {
            Some((fact.id.clone(), fact.words.get(index?)?.word.clone()))
        };
        let unsaid = facts.clone().filter(|(_, said)| said.is_none());
        Self {
            said: facts.filter_map(|(fact, said)| word(fact, *said)).collect(),
            taken_for_granted: unsaid.filter_map(|(fact, _)| word(fact, fact.unsaid)).collect(),
            answers: answers.iter().map(|answer| AnswerJson::new(practice, answer)).collect(),
        }
    }
}

impl AnswerJson {
    fn new(practice: &Practice, answer: &CaseAnswer) -> Self {
        Self {
            situation: practice.situations[answer.situation].id.clone(),
            along: answer.along.iter().map(|index| practice.along[*index].id.clone()).collect(),
            if_said: facts(practice, &answer.if_said),
        }
    }
}

impl SituationJson {
    fn new(shown: &Shown<'_>, places: &Places<'_>, answered: &Answered, along: bool) -> Self {
        let practice = shown.practice;
        let situation: &Situation = situation(practice, answered.situation, along);
        let choices = answered.choices.iter().zip(&situation.choices);
        let Pattern(when) = &situation.when;
        Self {
            id: situation.id.clone(),
            title: situation.title.to_string(),
            facts: facts(practice, when),
            along,
            hooks: hooks(answered.hooks),
            standing: standing(answered.standing()),
            best: answered.best(),
            better_at: shown
                .options
                .better_at(answered.situation, along)
                .into_iter()
                .map(|(station, best)| StationJson { station: station.to_owned(), best })
                .collect(),
            choices: choices
                .map(|(choice, of)| ChoiceJson::new(shown, places, choice, of))
                .collect(),
            nevers: practice.nevers_of(situation).map(|never| never.says.to_string()).collect(),
        }
    }
}

/// A situation by its index into its list.
fn situation(practice: &Practice, index: usize, along: bool) -> &Situation {
    if along { &practice.along[index] } else { &practice.situations[index] }
}

fn facts(practice: &Practice, named: &[(usize, Vec<usize>)]) -> Facts {
    let words = |fact: usize, words: &[usize]| {
        words.iter().map(|word| practice.facts[fact].words[*word].word.clone()).collect()
    };
    named.iter().map(|(fact, all)| (practice.facts[*fact].id.clone(), words(*fact, all))).collect()
}

stable_words! {
    fn hooks(OwnHooks) in HOOKS {
            OwnHooks::Arises => "arises",
            OwnHooks::NoneAboard => "none-aboard",
            OwnHooks::NotSaid => "not-said",
    }
}

stable_words! {
    fn standing(Standing) in STANDINGS {
            Standing::First => "first-choice",
            Standing::Fallback => "fallback",
            Standing::Unclear => "cannot-tell",
            Standing::Nothing => "nothing",
    }
}
