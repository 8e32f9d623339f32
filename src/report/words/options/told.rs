//! What a page and the short answer to a case say beside the choices: what to
//! get first, what to mind, and which case is meant.
//!
//! Imports `options`, `model` and `measure` only.

use super::small;
use crate::freeing::{Prospect, Way};
use crate::measure::Answer;
use crate::model::options::{Access, Choice};
use crate::model::technique::{Fact, FactWord, Practice};
use crate::report::Locale;
use crate::report::subject::OptionsShown as Shown;
use crate::report::words::figures;

/// What is open next, should the best way fail, with the tools that it uses;
/// none where that is no question.
pub(crate) fn if_it_fails<'a>(shown: &Shown<'a>, of: &Prospect<'a>) -> Option<String> {
    Some(match of.should_it_fail()? {
        Some(next) => in_brief(shown, &next),
        None => shown.locale.options_none_left().to_owned(),
    })
}

/// A way within a sentence, with the tools that it uses.
fn in_brief<'a>(shown: &Shown<'a>, way: &Way<'a>) -> String {
    shown.with_tools(small(&shown.choice(way.techniques)), way.choice)
}

/// What is never done behind a label that says `Never` already.
pub(crate) fn without_never(says: &str) -> String {
    let bare = says.strip_prefix("Never ").unwrap_or(says);
    bare.strip_suffix('.').unwrap_or(bare).to_owned()
}

/// The techniques' own cautions where they are the best that is open, each
/// once, with the techniques that they are about.
pub(crate) fn minded(shown: &Shown<'_>) -> Vec<(String, String)> {
    let mut techniques: Vec<usize> = Vec::new();
    for best in shown.arising().filter_map(|of| of.best()) {
        for technique in best.techniques {
            if !techniques.contains(technique) {
                techniques.push(*technique);
            }
        }
    }
    cautions_of(shown.practice, &techniques)
}

/// The cautions of these techniques, each once, with what they are about.
pub(crate) fn cautions_of(practice: &Practice, techniques: &[usize]) -> Vec<(String, String)> {
    let mut minded: Vec<(String, Vec<String>)> = Vec::new();
    for technique in techniques.iter().filter_map(|index| practice.techniques.get(*index)) {
        let title = small(&technique.title.to_string());
        for caution in &technique.cautions {
            let says = caution.says.to_string();
            match minded.iter_mut().find(|(known, _)| *known == says) {
                Some((_, titles)) => titles.push(title.clone()),
                None => minded.push((says, vec![title.clone()])),
            }
        }
    }
    minded.into_iter().map(|(says, titles)| (says, titles.join("; "))).collect()
}

/// Why a choice is closed or nobody can tell, in brief, and what opens it:
/// `closed: no dip net aboard; to open it, bring a dip net`. The steps are
/// left out where they are told already.
pub(crate) fn brief<'a>(shown: &Shown<'a>, choice: &'a Choice, steps_told: bool) -> String {
    let locale = shown.locale;
    let unknown = choice.answer == Answer::Unknown;
    if steps_told && !unknown {
        return locale.options_open_after_that().to_owned();
    }
    let word = match choice.access() {
        Access::Open | Access::Short => locale.options_word_short(),
        Access::Unknown => locale.options_word_not_told(),
        Access::Closed => locale.options_word_closed(),
    };
    let wanting = shown.wanting(choice);
    let why = wanting.iter().find(|wanting| wanting.open == unknown).or_else(|| wanting.first());
    let told = why.map_or(word.to_owned(), |wanting| format!("{word}: {}", wanting.why));
    if steps_told {
        return told;
    }
    let steps = shown.opens(choice);
    let opens = match steps.join("; ") {
        steps if steps.is_empty() => nothing_opens(shown, choice).to_owned(),
        steps if choice.is_short() => locale.options_in_harbour(&steps),
        steps if unknown => locale.options_to_find_out(&steps),
        steps => locale.options_to_open_it(&steps),
    };
    format!("{told}; {opens}")
}

/// That nothing opens a choice.
pub(crate) fn nothing_opens(shown: &Shown<'_>, choice: &Choice) -> &'static str {
    match choice.rail_too_high().is_some() {
        true => shown.locale.options_rail_too_high(),
        false => shown.locale.options_nothing_opens(),
    }
}

/// The words of a case in a row, those taken for granted marked as such.
pub(crate) fn case(shown: &Shown<'_>, said: &[Option<usize>]) -> String {
    let words = shown.practice.facts.iter().zip(said).filter_map(|(fact, said)| {
        let word = |index: usize| fact.words.get(index).map(|word| word.word.clone());
        match (said, fact.unsaid) {
            (Some(index), _) => word(*index),
            (None, Some(index)) => word(index).map(|word| shown.locale.options_taken_as(&word)),
            (None, None) => None,
        }
    });
    words.collect::<Vec<_>>().join(", ")
}

/// Under which condition one of two answers holds: `it can come aboard`.
pub(crate) fn condition(shown: &Shown<'_>, if_said: &[(usize, Vec<usize>)]) -> String {
    let facts = if_said.iter().filter_map(|(index, words)| {
        let fact = shown.practice.facts.get(*index)?;
        (words.len() < fact.words.len()).then(|| of_fact(shown.locale, fact, words))
    });
    figures::all_of(&facts.collect::<Vec<_>>(), shown.locale)
}

fn of_fact(locale: Locale, fact: &Fact, words: &[usize]) -> String {
    let stays = |word: &&FactWord| word.word != "boardable";
    let named = words.iter().filter_map(|index| fact.words.get(*index));
    if fact.id == "boarding" && named.clone().all(|word| stays(&word)) {
        return locale.options_it_stays().to_owned();
    }
    let texts: Vec<String> = named.map(|word| in_sentence(locale, &fact.id, word)).collect();
    figures::any_of(&texts, locale)
}

/// A word of a fact as a clause of its own.
fn in_sentence(locale: Locale, fact: &str, word: &FactWord) -> String {
    let says = word.says.to_string();
    match (fact, word.word.as_str()) {
        ("boarding", "boardable") => locale.options_it(&says),
        ("site", _) if let Some(how) = says.strip_prefix("hook ") => locale.options_hook_is(&how),
        ("where" | "site" | "state", _) => locale.options_it_is(&says),
        ("hook", _) => locale.options_it_is_a(&says),
        ("point", _) => match says.strip_prefix("point and barb ") {
            Some(they_are) => locale.options_point_and_barb(&they_are),
            None => says,
        },
        _ => format!("`{says}`"),
    }
}

/// What stands where some situation has no way at all, if anybody wrote it.
pub(crate) fn even_so(shown: &Shown<'_>) -> Option<String> {
    let nothing = shown.options.outlook.worth().nothing > 0;
    shown.practice.even_so.as_ref().filter(|_| nothing).map(ToString::to_string)
}

/// The loud words where nothing is open, or nothing at every station.
pub(crate) fn no_way(locale: Locale, of: &Prospect<'_>) -> &'static str {
    match of.at_stations().is_empty() {
        true => locale.options_no_way(),
        false => locale.options_not_at_every_rail(),
    }
}

/// What better way is open at some hauling stations by themselves:
/// `at the port roller: cut the line short from the rail (LC-1); bring it
/// there`. Empty where that is so at none, or there is only one.
pub(crate) fn at_stations<'a>(shown: &Shown<'a>, of: &Prospect<'a>) -> Vec<String> {
    let stations = of.at_stations().into_iter();
    let told = |(name, way): (&str, Way<'a>)| {
        shown.locale.options_at_station(&name, &in_brief(shown, &way))
    };
    stations.map(told).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::load::Library;

    #[test]
    fn every_shipped_word_of_a_case_reads_as_a_clause() {
        let practice = Library::shipped().unwrap().practice.unwrap();
        let told = practice.facts.iter().flat_map(|fact| {
            // What keeps it in the water is told as that it stays there.
            let own = |word: &&FactWord| fact.id != "boarding" || word.word == "boardable";
            let clause = |word| in_sentence(Locale::default(), &fact.id, word);
            fact.words.iter().filter(own).map(clause).collect::<Vec<_>>()
        });
        let told: Vec<_> = told.collect();
        assert!(told.iter().all(|clause| !clause.contains('`')), "{told:?}");
        for clause in [
            "it is on deck",
            "it can come aboard",
            "it is hooked outside",
            "the hook is swallowed",
            "it is a J hook",
            "point and barb are buried",
            "it is active",
        ] {
            assert!(told.iter().any(|one| one == clause), "{clause}: {told:?}");
        }
    }
}
