//! The short answer to one case, for a radio or a wet hand: five lines.
//!
//! Imports `options`, `model` and the page and words beside it; decides
//! nothing.

use super::Shown;
use crate::freeing::{CaseAnswer, Question};
use crate::measure::Answer;
use crate::model::options::{Answered, Standing};
use crate::model::technique::{Never, Situation};
use crate::report::content::Tone;
use crate::report::content::check::notices;
use crate::report::render::lines::Page;
use crate::report::render::terminal;
use crate::report::words::options as said;
use crate::report::words::pages::sentence;

/// The case in five lines, each with a label; a line that is wider than the
/// page goes on below, set in.
pub fn case(
    shown: &Shown<'_>,
    question: &Question,
    answers: &[CaseAnswer],
    width: usize,
) -> String {
    let locale = shown.locale;
    let told = |tell: fn(&Shown<'_>, &CaseAnswer) -> String| {
        let texts: Vec<String> = answers.iter().map(|answer| tell(shown, answer)).collect();
        // What is the same either way is told once.
        let same = texts.iter().all(|text| Some(text) == texts.first());
        let most = if same { 1 } else { texts.len() };
        let texts = texts.iter().take(most).zip(answers).filter_map(|(text, answer)| {
            let condition = said::condition(shown, &answer.if_said);
            if same || condition.is_empty() {
                return Some(sentence(text));
            }
            let told = sentence(&locale.options_if(&condition, &said::small(text)));
            (text != locale.options_nothing_better()).then_some(told)
        });
        texts.collect::<Vec<String>>().join(" ")
    };
    let mut page = Page::new(width);
    let mut line = |label: &str, tone, text: &str| page.hang(0, (label, tone), (text, Tone::Plain));
    line(locale.options_case(), Tone::Strong, &of_whom(shown, question, answers));
    line(locale.sheet_do(), Tone::Strong, &told(to_do));
    line(locale.options_case_better(), Tone::Strong, &told(better));
    line(locale.options_case_never(), Tone::Bad, &nevers(shown, question, answers));
    line(locale.options_case_care(), Tone::Strong, &care(shown, answers));
    page.finish()
}

/// What is told beside the five lines: of records that were not laid over the
/// vessel, or not in full. Empty where there is nothing to tell.
pub fn beside_case(shown: &Shown<'_>, width: usize) -> String {
    let mut page = Page::new(width);
    terminal::write(&mut page, &notices(shown.notices, shown.locale), shown.locale);
    page.finish()
}

/// The case as understood, and the vessel.
fn of_whom(shown: &Shown<'_>, question: &Question, answers: &[CaseAnswer]) -> String {
    let case = said::case(shown, &question.said);
    let mut hooks = answers
        .iter()
        .map(|answer| shown.hooks(&shown.options.outlook.situations[answer.situation]));
    let first = hooks.next().flatten().filter(|first| hooks.all(|other| other == Some(*first)));
    let case = match first {
        Some(hooks) => shown.locale.options_case_hooks(&case, &hooks),
        None => case,
    };
    sentence(&format!("{case} - {}", shown.options.vessel.name))
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
        text = shown.locale.options_with_it(&text, &said::small(&along));
    }
    text
}

fn best<'a>(shown: &Shown<'a>, answered: &'a Answered, situation: &Situation) -> String {
    let Some(index) = answered.best() else { return no_way(shown, answered, situation) };
    let way = shown.choice(&situation.choices[index]);
    let way = shown.with_tools(way, &answered.choices[index]);
    match said::if_it_fails(shown, answered, situation) {
        Some(next) => shown.locale.options_or_if_it_fails(&way, &next),
        None => way,
    }
}

/// What is done even so where nothing is known to be open: what can be done
/// with the hands, then what may serve, and only then what is to be got or
/// measured, which is for the harbour.
fn even_so<'a>(shown: &Shown<'a>, answered: &'a Answered, situation: &Situation) -> String {
    let even_so = shown.practice.even_so.as_ref().map(ToString::to_string);
    let may = answered.choices.iter().position(|choice| choice.answer == Answer::Unknown);
    let may = may.map(|index| {
        let way = said::small(&shown.choice(&situation.choices[index]));
        shown.locale.options_try_even_so(&way)
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
    let locale = shown.locale;
    let loud = match answered.standing() {
        Standing::Unclear => locale.options_cannot_tell(),
        _ => said::no_way(shown, situation),
    };
    let first = || said::get_first(shown, answered, situation);
    let rest = match said::at_stations(shown, situation).join("; ") {
        at if !at.is_empty() => at,
        _ => match first() {
            Some((_, steps)) => locale.options_in_harbour(&steps.join("; ")),
            None => locale.options_nothing_opens_any().to_owned(),
        },
    };
    format!("{loud} - {rest}")
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
        return shown.locale.options_nothing_better().to_owned();
    };
    let way = shown.choice(&situation.choices[index]);
    if first.is_some() && !said::at_stations(shown, situation).is_empty() {
        let steps = shown.opens(&better[index]).join("; ");
        return shown.locale.options_at_every_rail(&way, &steps);
    }
    let foreign = said::foreign_hook(shown.locale, answered, &better[index]).map(str::to_owned);
    let brief = foreign.unwrap_or_else(|| said::brief(shown, &better[index], first.is_some()));
    format!("{way} - {brief}")
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
