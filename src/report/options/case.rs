//! The short answer to one case, for a radio or a wet hand: five lines.
//!
//! Imports `options`, `model` and the page and words beside it; decides
//! nothing.

use super::Shown;
use crate::freeing::{CaseAnswer, Question};
use crate::measure::Answer;
use crate::model::options::{Answered, Standing};
use crate::model::technique::{Never, Situation};
use crate::report::page::{Page, Tone};
use crate::report::table;
use crate::report::words::options as said;
use crate::report::words::pages::sentence;

/// That the best that is open is the first choice.
const NOTHING_BETTER: &str = "nothing better";

/// The case in five lines, each with a label; a line that is wider than the
/// page goes on below, set in.
pub fn case(
    shown: &Shown<'_>,
    question: &Question,
    answers: &[CaseAnswer],
    width: usize,
) -> String {
    let told = |tell: fn(&Shown<'_>, &CaseAnswer) -> String| {
        let texts: Vec<String> = answers.iter().map(|answer| tell(shown, answer)).collect();
        // What is the same either way is told once.
        let same = texts.iter().all(|text| Some(text) == texts.first());
        let most = if same { 1 } else { texts.len() };
        let texts = texts.iter().take(most).zip(answers).filter_map(|(text, answer)| {
            let condition = said::condition(shown.practice, &answer.if_said);
            if same || condition.is_empty() {
                return Some(sentence(text));
            }
            let told = sentence(&format!("If {condition}: {}", said::small(text)));
            (text != NOTHING_BETTER).then_some(told)
        });
        texts.collect::<Vec<String>>().join(" ")
    };
    let mut page = Page::new(width);
    let mut line = |label: &str, tone, text: &str| page.hang(0, (label, tone), (text, Tone::Plain));
    line("Case:", Tone::Strong, &of_whom(shown, question, answers));
    line("Do:", Tone::Strong, &told(to_do));
    line("Better:", Tone::Strong, &told(better));
    line("Never:", Tone::Bad, &nevers(shown, question, answers));
    line("Care:", Tone::Strong, &care(shown, answers));
    page.finish()
}

/// What is told beside the five lines: of records that were not laid over the
/// vessel, or not in full. Empty where there is nothing to tell.
pub fn beside_case(shown: &Shown<'_>, width: usize) -> String {
    let mut page = Page::new(width);
    table::notices(&mut page, shown.notices);
    page.finish()
}

/// The case as understood, and the vessel.
fn of_whom(shown: &Shown<'_>, question: &Question, answers: &[CaseAnswer]) -> String {
    let case = said::case(shown.practice, &question.said);
    let mut hooks = answers
        .iter()
        .map(|answer| shown.hooks(&shown.options.outlook.situations[answer.situation]));
    let first = hooks.next().flatten().filter(|first| hooks.all(|other| other == Some(*first)));
    let hooks = first.map(|text| format!(" ({text})")).unwrap_or_default();
    sentence(&format!("{case}{hooks} - {}", shown.options.vessel.name))
}

/// The best way that is open, with what goes along with it.
fn to_do(shown: &Shown<'_>, answer: &CaseAnswer) -> String {
    let (outlook, practice) = (&shown.options.outlook, shown.practice);
    let main = &outlook.situations[answer.situation];
    let situation = &practice.situations[answer.situation];
    let mut text = match main.best() {
        Some(_) => best(shown, main, situation),
        None => even_so(shown, main, situation),
    };
    for index in &answer.along {
        let along = best(shown, &outlook.along[*index], &practice.along[*index]);
        text.push_str(&format!("; with it, {}", said::small(&along)));
    }
    text
}

fn best<'a>(shown: &Shown<'a>, answered: &'a Answered, situation: &Situation) -> String {
    let Some(index) = answered.best() else { return no_way(shown, answered, situation) };
    let text = said::choice(shown.practice, &situation.choices[index]);
    let text = match shown.uses(&answered.choices[index]).as_str() {
        "" => text,
        uses => format!("{text} ({uses})"),
    };
    match said::if_it_fails(shown, answered, situation) {
        Some(next) => format!("{text}; if it fails, {next}"),
        None => text,
    }
}

/// What is done even so where nothing is known to be open: what can be done
/// with the hands, then what may serve, and only then what is to be got or
/// measured, which is for the harbour.
fn even_so<'a>(shown: &Shown<'a>, answered: &'a Answered, situation: &Situation) -> String {
    let even_so = shown.practice.even_so.as_ref().map(ToString::to_string);
    let may = answered.choices.iter().position(|choice| choice.answer == Answer::Unknown);
    let may = may.map(|index| {
        let title = said::small(&said::choice(shown.practice, &situation.choices[index]));
        format!("Try to {title}, whatever was not measured.")
    });
    let known = no_way(shown, answered, situation);
    // At another station there is a way.
    if !said::at_stations(shown, situation).is_empty() {
        return known;
    }
    even_so.into_iter().chain(may).chain([known]).collect::<Vec<_>>().join(" ")
}

/// That nothing is open, or that nobody can tell, and what to do first.
fn no_way<'a>(shown: &Shown<'a>, answered: &'a Answered, situation: &Situation) -> String {
    let unclear = answered.standing() == Standing::Unclear;
    let loud = if unclear { said::CANNOT_TELL } else { said::no_way(shown, situation) };
    let at = said::at_stations(shown, situation);
    if !at.is_empty() {
        return format!("{loud} - {}", at.join("; "));
    }
    match said::get_first(shown, answered, situation) {
        Some((_, steps)) => format!("{loud} - in harbour, {}", steps.join("; ")),
        None => format!("{loud} - {}", said::NOTHING_OPENS_ANY),
    }
}

/// The better choice that is closed: that to which the first steps lead where
/// nothing is open, else the first that something opens.
fn better(shown: &Shown<'_>, answer: &CaseAnswer) -> String {
    let answered = &shown.options.outlook.situations[answer.situation];
    let situation = &shown.practice.situations[answer.situation];
    let better = answered.better();
    let first = match answered.best() {
        None => said::get_first(shown, answered, situation).map(|(index, _)| index),
        Some(_) => None,
    };
    let opens = || better.iter().position(|choice| !shown.opens(choice).is_empty());
    let Some(index) = first.or_else(opens).or((!better.is_empty()).then_some(0)) else {
        return NOTHING_BETTER.to_owned();
    };
    let title = said::choice(shown.practice, &situation.choices[index]);
    if first.is_some() && !said::at_stations(shown, situation).is_empty() {
        let steps = shown.opens(&better[index]).join("; ");
        return format!("{title}, at every rail - first {steps}");
    }
    let foreign = said::foreign_hook(answered, &better[index]).map(str::to_owned);
    let brief = foreign.unwrap_or_else(|| said::brief(shown, &better[index], first.is_some()));
    format!("{title} - {brief}")
}

/// What is never done in this case; what is never done at all only where there
/// is nothing else.
fn nevers(shown: &Shown<'_>, question: &Question, answers: &[CaseAnswer]) -> String {
    let practice = shown.practice;
    let fits = |never: &&Never| {
        let agrees = never.when.0.iter().all(|(fact, words)| {
            let said = question.said.get(*fact).copied().flatten();
            let taken = said.or(practice.facts.get(*fact).and_then(|fact| fact.unsaid));
            taken.is_none_or(|word| words.contains(&word))
        });
        let of_one =
            |answer: &CaseAnswer| never.when.meets(&practice.situations[answer.situation].when);
        agrees && answers.iter().any(of_one)
    };
    let mut nevers: Vec<&Never> = practice.nevers.iter().filter(fits).collect();
    // What is never done in any case stands on the card.
    if nevers.iter().any(|never| !never.when.0.is_empty()) {
        nevers.retain(|never| !never.when.0.is_empty());
    }
    let texts = nevers.iter().map(|never| said::without_never(&never.says.to_string()));
    format!("{}.", texts.collect::<Vec<_>>().join("; "))
}

/// What to mind with what is done, then what always stands.
fn care(shown: &Shown<'_>, answers: &[CaseAnswer]) -> String {
    let practice = shown.practice;
    let best = answers.iter().filter_map(|answer| {
        let best = shown.options.outlook.situations[answer.situation].best()?;
        practice.situations[answer.situation].choices.get(best)
    });
    let mut techniques: Vec<usize> = best.flatten().copied().collect();
    techniques.sort_unstable();
    techniques.dedup();
    let own = said::cautions_of(practice, &techniques).into_iter().map(|(says, _)| says);
    let always: Vec<String> = match &practice.cautions_in_short {
        Some(short) => vec![short.to_string()],
        None => practice.cautions.iter().map(ToString::to_string).collect(),
    };
    own.chain(always).map(|text| sentence(&text)).collect::<Vec<_>>().join(" ")
}
