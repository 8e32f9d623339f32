//! One case as it was typed, and what is wrong with it.
//!
//! Imports `options` and `model`; reads nothing.

use crate::cli::stop::Stop;
use crate::freeing::{CaseAnswer, CaseError, Question};
use crate::model::technique::{Fact, Practice};
use crate::model::vocabulary::fold;
use crate::report::desk;

/// A case that was asked, with what answers it.
pub(super) type Asked = (Question, Vec<CaseAnswer>);

/// The case with the situations that answer it.
pub(super) fn case(text: &str, practice: &Practice) -> Result<Asked, Stop> {
    let question = Question::parse(text, practice).map_err(|error| refuse(&error, practice))?;
    let answers = question.answers(practice).map_err(|error| refuse(&error, practice))?;
    if answers.is_empty() {
        return Err(Stop::usage(desk::command_case_unanswered(), desk::command_case_add()));
    }
    Ok((question, answers))
}

/// What is wrong, and what can be said instead.
fn refuse(error: &CaseError, practice: &Practice) -> Stop {
    match error {
        CaseError::Unknown { word } => {
            let what = match near(word, practice) {
                Some(near) => desk::command_case_meant(error, &near),
                None => error.to_string(),
            };
            let facts = practice.facts.iter().map(words).collect::<Vec<_>>();
            Stop::usage(what, desk::command_case_words(&facts.join("; ")))
        }
        CaseError::Twice { first, .. } => {
            let is = |fact: &&Fact| fact.words.iter().any(|word| word.word == *first);
            let fact = practice.facts.iter().find(is).map(words).unwrap_or_default();
            Stop::usage(error.to_string(), desk::command_case_say_one(&fact))
        }
        CaseError::TooLittle { facts, .. } => {
            let facts = facts.iter().filter_map(|fact| practice.facts.get(*fact)).map(words);
            Stop::usage(
                desk::command_case_too_little(error),
                desk::command_case_say_more(&facts.collect::<Vec<_>>().join("; ")),
            )
        }
    }
}

/// A fact with the words for its answers.
fn words(fact: &Fact) -> String {
    let words = fact.words.iter().map(|word| word.word.as_str()).collect::<Vec<_>>();
    format!("{} {}", fact.asks, words.join(", "))
}

/// The word that was misspelled by a few strokes, or of which a part was
/// typed.
fn near<'a>(typed: &str, practice: &'a Practice) -> Option<&'a str> {
    let typed = fold(typed);
    let most = (typed.chars().count() / 3).clamp(1, 3);
    let words = practice.facts.iter().flat_map(|fact| &fact.words);
    let distance = |known: &str| strsim::osa_distance(&typed, &fold(known));
    let slips = words.clone().map(|word| {
        let all = std::iter::once(&word.word).chain(&word.also);
        (all.map(|known| distance(known)).min().unwrap_or(usize::MAX), word.word.as_str())
    });
    let slip = slips.filter(|(by, _)| *by <= most).min_by_key(|(by, _)| *by);
    let part = || words.clone().find(|word| typed.len() >= 3 && fold(&word.word).contains(&typed));
    slip.map(|(_, word)| word).or_else(|| part().map(|word| word.word.as_str()))
}
