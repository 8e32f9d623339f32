//! What a kit leaves open as one JSON document: the format
//! `kitmuster/options/1`.
//!
//! Imports `options`, what lies below, and words.

use super::check::{Way, notices, reasons};
use super::form::{Word, objects, word};
use super::parts::{Lift, Notice, Program, ServingTool, Trip, Vessel, Worth};
use super::reason::Reason;
use super::text::document;
use crate::freeing::{self, Question};
use crate::measure::Answer;
use crate::model::finding::{Outcome, WayToReady};
use crate::model::options::{self as model, Lack, Opening, OwnHooks, Rail, Standing};
use crate::model::technique::{self, Pattern};
use crate::model::vessel::Trust;
use crate::report::places::Places;
use crate::report::subject::OptionsShown;
use crate::report::words::options as said;
use std::collections::BTreeMap;

/// The name and version of the format.
const SCHEMA: &str = "kitmuster/options/1";

/// Words by the id of the fact that they answer.
type Facts = BTreeMap<String, Vec<String>>;

/// The word said, by the id of its fact.
type Said = BTreeMap<String, String>;

/// A case that was asked, and what it can be.
type Asked<'a> = Option<(&'a Question, &'a [freeing::CaseAnswer])>;

/// What is open as pretty-printed JSON, ending in a line feed; of a case only
/// the situations that answer it.
///
/// # Errors
/// None in practice: the types of the format all have a JSON form.
pub fn options(
    shown: &OptionsShown<'_>,
    case: Option<(&Question, &[freeing::CaseAnswer])>,
) -> Result<String, serde_json::Error> {
    document(&Options::new(shown, case))
}

objects! {
    /// Which ways of freeing a turtle a kit leaves open.
    pub(super) Options(shown: &OptionsShown<'_>, case: Asked<'_>) {
        let (options, practice) = (shown.options, shown.practice);
        let asked = |(question, answers)| Case::new(practice, question, answers);
        /// The name and version of the format.
        #[schemars(extend("const" = SCHEMA))]
        schema: &'static str = SCHEMA,
        /// The program that wrote it.
        program: Program = Program::new(),
        /// The vessel.
        vessel: Vessel = Vessel::new(&options.vessel, shown.locale),
        /// The trip that was judged.
        trip: Trip = Trip::new(&options.asked),
        /// Which figures were believed.
        trust: Word<Trust> = word(&options.asked.trust),
        /// What is told of the trip and of inspection records.
        notices: Vec<Notice> = notices(shown.notices, shown.vocabulary, shown.locale),
        /// The file of techniques.
        practice: Practice = Practice::new(practice),
        /// In how many situations what is open.
        worth: Worth = Worth::new(options.outlook.worth()),
        /// What was asked, with `--case`.
        #[serde(skip_serializing_if = "Option::is_none")]
        case: Option<Case> = case.map(asked),
        /// Every situation, or those that answer the case.
        situations: Vec<Situation> = situations(shown, case.map(|(_, answers)| answers)),
        /// The single tool that would lift most situations.
        lift: Option<Lift> = options.lift.as_ref().map(|lift| Lift::new(shown, lift)),
    }

    /// The file of techniques.
    Practice(practice: &technique::Practice) {
        /// Its id.
        id: String = practice.id.clone(),
        /// The revision of the file.
        encoding: u32 = practice.encoding,
        /// What it is called.
        title: String = practice.title.to_string(),
        /// What it stands on.
        source: String = practice.source.clone(),
    }

    /// One case, as it was asked.
    Case(practice: &technique::Practice, question: &Question, answers: &[freeing::CaseAnswer]) {
        let facts = practice.facts.iter().zip(&question.said);
        let unsaid = facts.clone().filter(|(_, said)| said.is_none()).map(|(fact, _)| fact);
        let answer = |answer| CaseAnswer::new(practice, answer);
        /// The word said, by the id of its fact.
        said: Said = facts.filter_map(|(fact, said)| spoken(fact, *said)).collect(),
        /// Likewise, what was not said and is taken so.
        taken_for_granted: Said = unsaid.filter_map(|fact| spoken(fact, fact.unsaid)).collect(),
        /// What it can be.
        answers: Vec<CaseAnswer> = answers.iter().map(answer).collect(),
    }

    /// A situation that answers the case.
    CaseAnswer(practice: &technique::Practice, answer: &freeing::CaseAnswer) {
        let along = answer.along.iter();
        /// Its id.
        situation: String = practice.situations[answer.situation].id.clone(),
        /// Ids of what goes along.
        along: Vec<String> = along.map(|index| practice.along[*index].id.clone()).collect(),
        /// By fact, the words for which this is the answer.
        if_said: Facts = facts(practice, &answer.if_said),
    }

    /// A situation and its choices.
    Situation(shown: &OptionsShown<'_>, places: &Places<'_>, of: &freeing::Prospect<'_>) {
        let practice = shown.practice;
        let (situation, answered) = (of.situation, of.answered);
        let better = of.at_stations().into_iter();
        let nevers = practice.nevers_of(situation);
        let choice = |way: freeing::Way<'_>| Choice::new(shown, places, way.choice, way.techniques);
        let Pattern(when) = &situation.when;
        /// Its id.
        id: String = situation.id.clone(),
        /// What it is, for people.
        title: String = situation.title.to_string(),
        /// By the id of each fact that it names, the words that fit.
        facts: Facts = facts(practice, when),
        /// True for what goes along with the others.
        along: bool = of.along,
        /// Whether the vessel's own hooks can make it arise.
        hooks: Word<OwnHooks> = word(&answered.hooks),
        /// What is open.
        standing: Word<Standing> = word(&answered.standing()),
        /// The best open choice, by its place from 0.
        best: Option<usize> = answered.best(),
        /// Hauling stations at which a better one is open.
        better_at: Vec<BetterAt> = better.map(|(at, best)| BetterAt::new(at, best.index)).collect(),
        /// From the best to the last.
        choices: Vec<Choice> = of.ways().map(choice).collect(),
        /// What is never done there, for people.
        nevers: Vec<String> = nevers.map(|never| never.says.to_string()).collect(),
    }

    /// A hauling station at which something better is open than at all of them.
    BetterAt(station: &str, best: usize) {
        /// Its name.
        station: String = station.to_owned(),
        /// The best open choice there, by its place from 0.
        best: usize = best,
    }

    /// One choice of a situation.
    Choice(
        shown: &OptionsShown<'_>,
        places: &Places<'_>,
        choice: &model::Choice,
        techniques: &[usize]
    ) {
        let practice = shown.practice;
        let ids = techniques.iter().map(|technique| practice.techniques[*technique].id.clone());
        /// Ids, carried out in this order.
        techniques: Vec<String> = ids.collect(),
        /// For people; its wording may change.
        title: String = shown.choice(techniques),
        /// Whether it is open.
        answer: Word<Answer> = word(&choice.answer),
        /// Whether it is open even so: with tools that reach the water and are
        /// short of the published length, or cut the leaders and not every line.
        short: bool = choice.is_short(),
        /// The tools that it uses, where it is open or short.
        tools: Vec<ServingTool> = tools(shown, places, choice),
        /// What it wants, where it is not.
        wanting: Vec<Wanting> = wanting(shown, places, choice),
        /// What opens it.
        way: Way = way(shown, choice),
    }

    /// A capability that is wanting, or of which nobody can tell.
    Wanting(wanting: said::Wanting, capability: String, reasons: Vec<Reason>) {
        let outcome = if wanting.open { Outcome::CannotTell } else { Outcome::NotMet };
        /// The id of the capability.
        capability: String = capability,
        /// For people; its wording may change.
        title: String = wanting.what,
        /// The outcome.
        outcome: Word<Outcome> = word(&outcome),
        /// Why it is not met, or what is missing.
        reasons: Vec<Reason> = reasons,
        /// For people; its wording may change.
        text: String = wanting.why,
    }
}

/// Every situation, those that go along behind the others; of a case those
/// that answer it.
fn situations(shown: &OptionsShown<'_>, answers: Option<&[freeing::CaseAnswer]>) -> Vec<Situation> {
    let places = Places::new(shown.sources);
    let asked = |of: &freeing::Prospect<'_>| {
        answers.is_none_or(|all| {
            all.iter().any(|answer| match of.along {
                true => answer.along.contains(&of.answered.situation),
                false => answer.situation == of.answered.situation,
            })
        })
    };
    shown.prospects().filter(asked).map(|of| Situation::new(shown, &places, &of)).collect()
}

fn facts(practice: &technique::Practice, named: &[(usize, Vec<usize>)]) -> Facts {
    let words = |fact: usize, words: &[usize]| {
        words.iter().map(|word| practice.facts[fact].words[*word].word.clone()).collect()
    };
    named.iter().map(|(fact, all)| (practice.facts[*fact].id.clone(), words(*fact, all))).collect()
}

/// A word under the id of its fact.
fn spoken(fact: &technique::Fact, word: Option<usize>) -> Option<(String, String)> {
    Some((fact.id.clone(), fact.words.get(word?)?.word.clone()))
}

/// The tools that an open choice uses.
fn tools(
    shown: &OptionsShown<'_>,
    places: &Places<'_>,
    choice: &model::Choice,
) -> Vec<ServingTool> {
    let Some(judgement) = choice.used().filter(|_| choice.is_open()) else { return Vec::new() };
    let words = shown.words(judgement);
    let serving = judgement.findings.iter().flat_map(|finding| &finding.serving);
    serving.map(|serving| ServingTool::new(serving, &words, places)).collect()
}

/// What a choice that is not open wants, in the order in which the page tells
/// it: rails, then tools.
fn wanting(shown: &OptionsShown<'_>, places: &Places<'_>, choice: &model::Choice) -> Vec<Wanting> {
    if choice.answer == Answer::Yes {
        return Vec::new();
    }
    let told = choice.lacks().map(|lack| {
        let (capability, reasons) = match (lack, &choice.tools) {
            (Lack::Tool(finding), Some(judgement)) => {
                let words = shown.words(judgement);
                (words.id(finding.requirement), reasons(Some(finding), &words, places))
            }
            (Lack::Rail(rail), _) => (id_of(shown, rail), Vec::new()),
            (Lack::Tool(_), None) => Default::default(),
        };
        Wanting::new(shown.lack(choice, lack), capability, reasons)
    });
    told.collect()
}

fn id_of(shown: &OptionsShown<'_>, rail: &Rail) -> String {
    shown.practice.capabilities[rail.capability].id.clone()
}

/// What opens it. A rail that is too high nothing lowers; one that nobody
/// measured is measured first.
fn way(shown: &OptionsShown<'_>, choice: &model::Choice) -> Way {
    let none = |way: &WayToReady| Way::new(word(way), None, Vec::new());
    if choice.rail_too_high().is_some() {
        return none(&WayToReady::None);
    }
    let of_tools = choice.tools.as_ref().and_then(|judgement| {
        Some(Way::of(judgement, &judgement.inverses.as_ref()?.way, &shown.words(judgement)))
    });
    let way = of_tools.unwrap_or(none(&WayToReady::Already));
    match choice.steps().first() {
        Some(Opening::Measure(rail)) => {
            let vessel = &shown.options.vessel.name;
            way.once_measured(vessel, id_of(shown, rail), shown.locale.options_measure_rail())
        }
        _ => way,
    }
}
