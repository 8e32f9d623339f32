//! The short answer to one case, for a radio or a wet hand: five lines.
//!
//! Imports `options`, `model` and the page and words beside it; decides
//! nothing.

use super::Shown;
use crate::model::options::{Answered, Standing};
use crate::model::technique::{Never, Situation};
use crate::options::{CaseAnswer, Question};
use crate::report::page::{Page, Tone};
use crate::report::words::options as said;
use crate::report::words::pages::{capital, sentence};

/// The case in five lines, each with a label; a line that is wider than the
/// page goes on below, set in.
pub fn case(
    shown: &Shown<'_>,
    question: &Question,
    answers: &[CaseAnswer],
    width: usize,
) -> String {
    let two = answers.len() > 1;
    let told = |tell: fn(&Shown<'_>, &CaseAnswer) -> String| {
        let texts = answers.iter().map(|answer| {
            let text = tell(shown, answer);
            let condition = said::condition(shown.practice, &answer.if_said);
            if two && !condition.is_empty() {
                format!("If {condition}: {}", said::small(&text))
            } else {
                capital(&text)
            }
        });
        let texts: Vec<String> = texts.map(|text| sentence(&text)).collect();
        texts.join(" ")
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

/// The case as understood, and the vessel.
fn of_whom(shown: &Shown<'_>, question: &Question, answers: &[CaseAnswer]) -> String {
    let case = said::case(shown.practice, &question.said);
    let mut hooks = answers
        .iter()
        .filter_map(|answer| shown.hooks(&shown.options.outlook.situations[answer.situation]));
    let hooks = hooks.next().map(|text| format!(" ({text})")).unwrap_or_default();
    sentence(&format!("{case}{hooks} - {}", shown.options.vessel.name))
}

/// The best way that is open, with what goes along with it.
fn to_do(shown: &Shown<'_>, answer: &CaseAnswer) -> String {
    let (outlook, practice) = (&shown.options.outlook, shown.practice);
    let main = &outlook.situations[answer.situation];
    let mut text = best(shown, main, &practice.situations[answer.situation]);
    for index in &answer.along {
        let along = best(shown, &outlook.along[*index], &practice.along[*index]);
        text.push_str(&format!("; then {}", said::small(&along)));
    }
    text
}

fn best<'a>(shown: &Shown<'a>, answered: &'a Answered, situation: &Situation) -> String {
    let Some(index) = answered.best() else { return no_way(shown, answered) };
    let text = said::choice(shown.practice, &situation.choices[index]);
    match shown.uses(&answered.choices[index]).as_str() {
        "" => text,
        uses => format!("{text} ({uses})"),
    }
}

/// That nothing is open, or that nobody can tell, and what to do first.
fn no_way<'a>(shown: &Shown<'a>, answered: &'a Answered) -> String {
    let unclear = answered.standing() == Standing::Unclear;
    let loud = if unclear { said::CANNOT_TELL } else { said::NO_WAY };
    match said::get_first(shown, answered) {
        Some((_, steps)) => format!("{loud} - FIRST {}", steps.join("; ")),
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
        None => said::get_first(shown, answered).map(|(index, _)| index),
        Some(_) => None,
    };
    let opens = || better.iter().position(|choice| !shown.opens(choice).is_empty());
    let Some(index) = first.or_else(opens).or((!better.is_empty()).then_some(0)) else {
        return "nothing better".to_owned();
    };
    let title = said::choice(shown.practice, &situation.choices[index]);
    let foreign = said::foreign_hook(answered, &better[index]).map(str::to_owned);
    let brief = foreign.unwrap_or_else(|| said::brief(shown, &better[index], first.is_some()));
    format!("{title} - {brief}")
}

/// What is never done in this case; what is never done at all stands last.
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
    nevers.sort_by_key(|never| never.when.0.is_empty());
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
    let always = practice.cautions.iter().map(ToString::to_string);
    own.chain(always).map(|text| sentence(&text)).collect::<Vec<_>>().join(" ")
}
