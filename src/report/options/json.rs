//! What a kit leaves open as one JSON document: the format
//! `kitmuster/options/1`.
//!
//! The types are the format's own. Documented in DEVELOPERS.md. Imports
//! `load` for the positions of the tools, `options`, `model` and `measure`.

mod choice;
mod freeing;
mod lift;

use super::Shown;
use crate::model::options::{Answered, OwnHooks, Standing, Worth};
use crate::model::technique::{Pattern, Practice, Situation};
use crate::options::{CaseAnswer, Question};
use crate::report::json::{NoticeJson, ProgramJson, TripJson, VesselJson, harmless, trust};
use crate::report::places::Places;
use choice::ChoiceJson;
pub(in crate::report) use freeing::FreeingJson;
use lift::LiftJson;
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

#[derive(Debug, Serialize)]
struct OptionsJson {
    schema: &'static str,
    program: ProgramJson,
    vessel: VesselJson,
    trip: TripJson,
    trust: &'static str,
    notices: Vec<NoticeJson>,
    practice: PracticeJson,
    worth: WorthJson,
    #[serde(skip_serializing_if = "Option::is_none")]
    case: Option<CaseJson>,
    situations: Vec<SituationJson>,
    lift: Option<LiftJson>,
}

#[derive(Debug, Serialize)]
struct PracticeJson {
    id: String,
    encoding: u32,
    title: String,
    source: String,
}

#[derive(Debug, Serialize)]
struct WorthJson {
    first: usize,
    fallback: usize,
    unclear: usize,
    nothing: usize,
    left_out: usize,
}

#[derive(Debug, Serialize)]
struct CaseJson {
    said: BTreeMap<String, String>,
    taken_for_granted: BTreeMap<String, String>,
    answers: Vec<AnswerJson>,
}

#[derive(Debug, Serialize)]
struct AnswerJson {
    situation: String,
    along: Vec<String>,
    if_said: Facts,
}

#[derive(Debug, Serialize)]
struct SituationJson {
    id: String,
    title: String,
    facts: Facts,
    along: bool,
    hooks: &'static str,
    standing: &'static str,
    best: Option<usize>,
    better_at: Vec<StationJson>,
    choices: Vec<ChoiceJson>,
    nevers: Vec<String>,
}

/// A hauling station at which something better is open than at all of them.
#[derive(Debug, Serialize)]
struct StationJson {
    station: String,
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

fn hooks(hooks: OwnHooks) -> &'static str {
    match hooks {
        OwnHooks::Arises => "arises",
        OwnHooks::NoneAboard => "none-aboard",
        OwnHooks::NotSaid => "not-said",
    }
}

fn standing(standing: Standing) -> &'static str {
    match standing {
        Standing::First => "first-choice",
        Standing::Fallback => "fallback",
        Standing::Unclear => "cannot-tell",
        Standing::Nothing => "nothing",
    }
}
