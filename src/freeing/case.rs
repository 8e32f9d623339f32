//! One case, as it is typed: words for some of the facts, and the situations
//! that answer it.

use crate::model::technique::{Case, Never, Practice};
use crate::model::vocabulary::fold;

/// A case as it was asked: for each fact the word (by index) that was said.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Question {
    /// The words said, by fact; none where a fact was not named.
    pub said: Vec<Option<usize>>,
}

/// Why a case cannot be answered.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum CaseError {
    /// A word that no fact knows.
    #[error("`{word}` is no word of a case")]
    Unknown {
        /// The word as typed.
        word: String,
    },
    /// Two words for one fact.
    #[error("`{first}` and `{second}` cannot both be true")]
    Twice {
        /// The one.
        first: String,
        /// The other.
        second: String,
    },
    /// Too little was said: more than two situations fit.
    #[error("this case could be {situations} situations")]
    TooLittle {
        /// How many situations fit.
        situations: usize,
        /// Facts (by index) that would tell them apart.
        facts: Vec<usize>,
    },
}

/// One situation that answers the case.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CaseAnswer {
    /// The situation, by index.
    pub situation: usize,
    /// What goes along with it, by index into that list.
    pub along: Vec<usize>,
    /// Facts that were not said and are not taken for granted, with the words
    /// (by index) for which this situation is the answer: what tells this
    /// answer from the other one.
    pub if_said: Vec<(usize, Vec<usize>)>,
}

/// The most situations that one answer may give.
const MOST_ANSWERS: usize = 2;

impl Question {
    /// Reads a case like `alongside,outside,circle,buried`, in any order.
    ///
    /// # Errors
    /// A word that no fact knows, or two words for one fact.
    pub fn parse(text: &str, practice: &Practice) -> Result<Self, CaseError> {
        let mut said: Vec<Option<usize>> = vec![None; practice.facts.len()];
        for word in text.split(',').map(str::trim).filter(|word| !word.is_empty()) {
            let Some((fact, index)) = find(word, practice) else {
                return Err(CaseError::Unknown { word: word.to_owned() });
            };
            if let Some(before) = said[fact].filter(|before| *before != index) {
                let words = &practice.facts[fact].words;
                let (first, second) = (words[before].word.clone(), words[index].word.clone());
                return Err(CaseError::Twice { first, second });
            }
            said[fact] = Some(index);
        }
        Ok(Self { said })
    }

    /// The situations that answer it; facts that were not said are taken as
    /// the file of techniques takes them, else either way.
    ///
    /// # Errors
    /// More than two situations fit: too little was said.
    pub fn answers(&self, practice: &Practice) -> Result<Vec<CaseAnswer>, CaseError> {
        let said = |fact: usize| self.said[fact].or(practice.facts[fact].unsaid);
        let left_open = |fact: usize, word: usize| !practice.facts[fact].words[word].only_if_said;
        let fits = |case: &Case| {
            (0..case.len()).all(|f| said(f).map_or(left_open(f, case[f]), |word| word == case[f]))
        };
        let mut groups: Vec<(usize, Vec<Case>)> = Vec::new();
        for case in practice.cases().into_iter().filter(fits) {
            let Some(situation) = practice.situation_of(&case) else { continue };
            match groups.iter_mut().find(|(of, _)| *of == situation) {
                Some((_, cases)) => cases.push(case),
                None => groups.push((situation, vec![case])),
            }
        }
        let open: Vec<usize> = (0..practice.facts.len()).filter(|f| said(*f).is_none()).collect();
        let words = |cases: &[Case], fact: usize| {
            let mut words: Vec<usize> = cases.iter().map(|case| case[fact]).collect();
            words.sort_unstable();
            words.dedup();
            words
        };
        let tells = |fact: &usize| {
            let of = &practice.facts[*fact].words;
            let whole = of.iter().filter(|word| !word.only_if_said).count();
            groups.iter().any(|(_, cases)| words(cases, *fact).len() < whole)
        };
        let telling: Vec<usize> = open.into_iter().filter(tells).collect();
        if groups.len() > MOST_ANSWERS {
            return Err(CaseError::TooLittle { situations: groups.len(), facts: telling });
        }
        let answer = |(situation, cases): (usize, Vec<Case>)| CaseAnswer {
            situation,
            along: along(practice, &cases),
            if_said: telling.iter().map(|fact| (*fact, words(&cases, *fact))).collect(),
        };
        Ok(groups.clone().into_iter().map(answer).collect())
    }

    /// What is never done in the case as it was said and answered; what is
    /// never done in any case only where there is nothing else.
    pub fn nevers<'a>(&self, practice: &'a Practice, answers: &[CaseAnswer]) -> Vec<&'a Never> {
        let fits = |never: &&Never| {
            let agrees = never.when.0.iter().all(|(fact, words)| {
                let said = self.said.get(*fact).copied().flatten();
                let taken = said.or(practice.facts.get(*fact).and_then(|fact| fact.unsaid));
                taken.is_none_or(|word| words.contains(&word))
            });
            let of_one =
                |answer: &CaseAnswer| never.when.meets(&practice.situations[answer.situation].when);
            agrees && answers.iter().any(of_one)
        };
        let mut nevers: Vec<&Never> = practice.nevers.iter().filter(fits).collect();
        if nevers.iter().any(|never| !never.when.0.is_empty()) {
            nevers.retain(|never| !never.when.0.is_empty());
        }
        nevers
    }
}

/// What goes along with every one of the cases.
fn along(practice: &Practice, cases: &[Case]) -> Vec<usize> {
    let fits = |index: &usize| cases.iter().all(|case| practice.along[*index].when.fits(case));
    (0..practice.along.len()).filter(fits).collect()
}

/// The fact and the word (both by index) that a text names.
fn find(text: &str, practice: &Practice) -> Option<(usize, usize)> {
    let text = fold(text);
    practice.facts.iter().enumerate().find_map(|(fact, of)| {
        let is = |word: &String| fold(word) == text;
        let word = of.words.iter().position(|w| is(&w.word) || w.also.iter().any(is));
        word.map(|word| (fact, word))
    })
}
