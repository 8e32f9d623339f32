//! What a page and the short answer to a case say beside the choices: what to
//! get first, what to mind, and which case is meant.
//!
//! Imports `options`, `model` and `measure` only.

use super::small;
use crate::measure::Answer;
use crate::model::finding::{Because, Outcome};
use crate::model::options::{Answered, Choice, OwnHooks, Standing};
use crate::model::reason::{Reason, VesselFact};
use crate::model::technique::{Fact, FactWord, Practice, Situation};
use crate::report::Locale;
use crate::report::subject::OptionsShown as Shown;
use crate::report::words::figures;

/// What to do first where nothing is known to be open: the fewest steps over
/// the choices, among equals one that cuts the line, then the earliest; where
/// of some nobody can tell, over those. The choice by index, and the steps;
/// none where nothing opens any.
pub(crate) fn get_first<'a>(
    shown: &Shown<'a>,
    answered: &'a Answered,
    situation: &Situation,
) -> Option<(usize, Vec<String>)> {
    let ways = answered.choices.iter().map(|choice| shown.opens(choice)).enumerate();
    let open = |index: usize| answered.choices[index].answer == Answer::Unknown;
    let cuts = |index: usize| cuts_line(shown.practice, &situation.choices[index]);
    let ways = ways.filter(|(_, steps)| !steps.is_empty());
    ways.min_by_key(|(index, steps)| (!open(*index), steps.len(), !cuts(*index), *index))
}

/// Whether a choice ends in the line cut.
pub(crate) fn cuts_line(practice: &Practice, choice: &[usize]) -> bool {
    choice.last().is_some_and(|technique| practice.techniques[*technique].cuts_line)
}

/// What is open next, should the best way fail, with the tools that it uses;
/// none where the best way cuts the line, which is the last.
pub(crate) fn if_it_fails<'a>(
    shown: &Shown<'a>,
    answered: &'a Answered,
    situation: &Situation,
) -> Option<String> {
    let last = |index: usize| cuts_line(shown.practice, &situation.choices[index]);
    let rests = situation.choices.iter().any(|choice| cuts_line(shown.practice, choice));
    answered.best().filter(|best| rests && !last(*best))?;
    let Some(next) = answered.next() else {
        return Some(shown.locale.options_none_left().to_owned());
    };
    let title = small(&shown.choice(&situation.choices[next]));
    Some(shown.with_tools(title, &answered.choices[next]))
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
    for (answered, situation) in pairs(shown) {
        let best = answered.best().and_then(|best| situation.choices.get(best));
        for technique in best.into_iter().flatten() {
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

/// Every situation that the vessel's own hooks can make arise.
fn pairs<'a>(shown: &Shown<'a>) -> impl Iterator<Item = (&'a Answered, &'a Situation)> {
    let (outlook, practice) = (&shown.options.outlook, shown.practice);
    let main = outlook.situations.iter().map(|one| (one, &practice.situations[one.situation]));
    let along = outlook.along.iter().map(|one| (one, &practice.along[one.situation]));
    main.chain(along).filter(|(one, _)| one.hooks != OwnHooks::NoneAboard)
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
    let word = match (choice.is_short(), unknown) {
        (true, _) => locale.options_word_short(),
        (false, true) => locale.options_word_not_told(),
        (false, false) => locale.options_word_closed(),
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

/// What stands where an animal brings a hook that is not this vessel's, and
/// the choice hangs on nothing but that hook.
pub(crate) fn foreign_hook(
    locale: Locale,
    answered: &Answered,
    choice: &Choice,
) -> Option<&'static str> {
    let foreign = answered.hooks == OwnHooks::NoneAboard && choice.answer == Answer::Unknown;
    let of_hooks = |because: &Because| {
        let hooks = Reason::VesselFactUnknown { fact: VesselFact::Hooks };
        because.reason == hooks
    };
    let mut findings = choice.tools.iter().flat_map(|judgement| &judgement.findings);
    let hangs = findings
        .all(|finding| finding.outcome == Outcome::Met || finding.reasons.iter().any(of_hooks));
    (foreign && hangs).then(|| locale.options_foreign_hook())
}

/// That nothing opens a choice.
pub(crate) fn nothing_opens(shown: &Shown<'_>, choice: &Choice) -> &'static str {
    match choice.rails.iter().any(|rail| rail.answer == Answer::No) {
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
    let nothing = pairs(shown).any(|(answered, _)| answered.standing() == Standing::Nothing);
    shown.practice.even_so.as_ref().filter(|_| nothing).map(ToString::to_string)
}

/// The loud words where nothing is open, or nothing at every station.
pub(crate) fn no_way(shown: &Shown<'_>, situation: &Situation) -> &'static str {
    match at_stations(shown, situation).is_empty() {
        true => shown.locale.options_no_way(),
        false => shown.locale.options_not_at_every_rail(),
    }
}

/// What better way is open at some hauling stations by themselves:
/// `at the port roller: cut the line short from the rail (LC-1); bring it
/// there`. Empty where that is so at none, or there is only one.
pub(crate) fn at_stations(shown: &Shown<'_>, situation: &Situation) -> Vec<String> {
    let (options, practice) = (shown.options, shown.practice);
    let is_it = |of: &Situation| std::ptr::eq(of, situation);
    let along = practice.along.iter().any(is_it);
    let list = if along { &practice.along } else { &practice.situations };
    let Some(index) = list.iter().position(is_it) else { return Vec::new() };
    let told = options.better_at(index, along).into_iter().filter_map(|(name, best)| {
        let at = options.stations.iter().find(|at| at.name == name)?;
        let all = if along { &at.outlook.along } else { &at.outlook.situations };
        let way = small(&shown.choice(&situation.choices[best]));
        let way = shown.with_tools(way, all.get(index)?.choices.get(best)?);
        Some(shown.locale.options_at_station(&name, &way))
    });
    told.collect()
}
