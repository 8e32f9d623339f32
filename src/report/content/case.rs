//! The short answer to one case, for a radio or a wet hand: five lines.
//!
//! Decides nothing.

use super::{Document, Item, Tone, check};
use crate::freeing::{CaseAnswer, Prospect, Question};
use crate::measure::Answer;
use crate::model::options::Standing;
use crate::report::subject::OptionsShown as Shown;
use crate::report::words::options as said;
use crate::report::words::pages::sentence;

/// A situation that answers the case, with what goes along with it.
struct Told<'a> {
    main: Prospect<'a>,
    along: Vec<Prospect<'a>>,
    /// Under which condition it is the answer; empty where that is sure.
    condition: String,
}

/// The case in five lines, each with a label.
pub(crate) fn document(shown: &Shown<'_>, question: &Question, answers: &[CaseAnswer]) -> Document {
    let locale = shown.locale;
    let told: Vec<_> = answers.iter().filter_map(|answer| Told::new(shown, answer)).collect();
    let nevers = question.nevers(shown.practice, answers).into_iter();
    let nevers: Vec<_> = nevers.map(|never| said::without_never(&never.says.to_string())).collect();
    let lines = [
        (locale.options_case(), Tone::Strong, of_whom(shown, question, &told)),
        (locale.sheet_do(), Tone::Strong, either_way(shown, &told, to_do)),
        (locale.options_case_better(), Tone::Strong, either_way(shown, &told, better)),
        (locale.options_case_never(), Tone::Bad, format!("{}.", nevers.join("; "))),
        (locale.options_case_care(), Tone::Strong, care(shown, &told)),
    ];
    let blocks = lines.map(|(label, tone, text)| Item::labelled(label, tone, text)).into();
    Document { title: shown.options.vessel.name.clone(), blocks }
}

/// What is told beside the five lines: of records that were not laid over the
/// vessel, or not in full.
pub(crate) fn beside(shown: &Shown<'_>) -> Document {
    let blocks = check::notices(shown.notices, shown.locale);
    Document { title: shown.options.vessel.name.clone(), blocks }
}

impl<'a> Told<'a> {
    fn new(shown: &Shown<'a>, answer: &CaseAnswer) -> Option<Self> {
        let of = |index, along| shown.options.prospect(shown.practice, index, along);
        let along = answer.along.iter().filter_map(|index| of(*index, true)).collect();
        let condition = said::condition(shown, &answer.if_said);
        Some(Self { main: of(answer.situation, false)?, along, condition })
    }
}

/// What is told of each answer; what is the same either way is told once.
fn either_way<'a>(
    shown: &Shown<'a>,
    all: &[Told<'a>],
    tell: impl Fn(&Shown<'a>, &Told<'a>) -> String,
) -> String {
    let locale = shown.locale;
    let texts: Vec<String> = all.iter().map(|told| tell(shown, told)).collect();
    let same = texts.iter().all(|text| Some(text) == texts.first());
    let most = if same { 1 } else { texts.len() };
    let texts = texts.iter().take(most).zip(all).filter_map(|(text, told)| {
        if same || told.condition.is_empty() {
            return Some(sentence(text));
        }
        let told = sentence(&locale.options_if(&told.condition, &said::small(text)));
        (text != locale.options_nothing_better()).then_some(told)
    });
    texts.collect::<Vec<String>>().join(" ")
}

/// The case as understood, and the vessel.
fn of_whom(shown: &Shown<'_>, question: &Question, all: &[Told<'_>]) -> String {
    let case = said::case(shown, &question.said);
    let mut hooks = all.iter().map(|told| shown.hooks(told.main.answered));
    let first = hooks.next().flatten().filter(|first| hooks.all(|other| other == Some(*first)));
    let case = match first {
        Some(hooks) => shown.locale.options_case_hooks(&case, &hooks),
        None => case,
    };
    sentence(&format!("{case} - {}", shown.options.vessel.name))
}

/// The best way that is open, with what goes along with it.
fn to_do<'a>(shown: &Shown<'a>, told: &Told<'a>) -> String {
    let mut text = match told.main.best() {
        Some(_) => best(shown, &told.main),
        None => even_so(shown, &told.main),
    };
    for along in &told.along {
        let along = best(shown, along);
        text = shown.locale.options_with_it(&text, &said::small(&along));
    }
    text
}

fn best<'a>(shown: &Shown<'a>, of: &Prospect<'a>) -> String {
    let Some(best) = of.best() else { return no_way(shown, of) };
    let way = shown.with_tools(shown.choice(best.techniques), best.choice);
    match said::if_it_fails(shown, of) {
        Some(next) => shown.locale.options_or_if_it_fails(&way, &next),
        None => way,
    }
}

/// What is done even so where nothing is known to be open: what can be done
/// with the hands, then what may serve, and only then what is to be got or
/// measured, which is for the harbour.
fn even_so<'a>(shown: &Shown<'a>, of: &Prospect<'a>) -> String {
    let known = no_way(shown, of);
    // At another station there is a way.
    if !of.at_stations().is_empty() {
        return known;
    }
    let even_so = shown.practice.even_so.as_ref().map(ToString::to_string);
    let may = of
        .ways()
        .find(|way| way.choice.answer == Answer::Unknown)
        .map(|way| shown.locale.options_try_even_so(&said::small(&shown.choice(way.techniques))));
    even_so.into_iter().chain(may).chain([known]).collect::<Vec<_>>().join(" ")
}

/// That nothing is open, or that nobody can tell, and what to do first.
fn no_way<'a>(shown: &Shown<'a>, of: &Prospect<'a>) -> String {
    let locale = shown.locale;
    let loud = match of.answered.standing() {
        Standing::Unclear => locale.options_cannot_tell(),
        _ => said::no_way(locale, of),
    };
    let rest = match said::at_stations(shown, of).join("; ") {
        at if !at.is_empty() => at,
        _ => match of.first_to_open() {
            Some(way) => locale.options_in_harbour(&shown.opens(way.choice).join("; ")),
            None => locale.options_nothing_opens_any().to_owned(),
        },
    };
    format!("{loud} - {rest}")
}

/// The better choice that is closed: that to which the first steps lead where
/// nothing is open, else the first that something opens.
fn better<'a>(shown: &Shown<'a>, told: &Told<'a>) -> String {
    let (of, locale) = (&told.main, shown.locale);
    let Some(better) = of.better_to_open() else {
        return locale.options_nothing_better().to_owned();
    };
    let way = shown.choice(better.techniques);
    // Where nothing is open, what opens it was told as what to do.
    let steps = shown.opens(better.choice);
    let steps_told = of.best().is_none() && !steps.is_empty();
    if steps_told && !of.at_stations().is_empty() {
        return locale.options_at_every_rail(&way, &steps.join("; "));
    }
    let brief = match of.hangs_on_foreign_hook(better.choice) {
        true => locale.options_foreign_hook().to_owned(),
        false => said::brief(shown, better.choice, steps_told),
    };
    format!("{way} - {brief}")
}

/// What to mind with what is done, then what always stands.
fn care(shown: &Shown<'_>, all: &[Told<'_>]) -> String {
    let practice = shown.practice;
    let best = all.iter().filter_map(|told| told.main.best());
    let mut techniques: Vec<usize> = best.flat_map(|best| best.techniques).copied().collect();
    techniques.sort_unstable();
    techniques.dedup();
    let own = said::cautions_of(practice, &techniques).into_iter().map(|(says, _)| says);
    let always: Vec<String> = match &practice.cautions_in_short {
        Some(short) => vec![short.to_string()],
        None => practice.cautions.iter().map(ToString::to_string).collect(),
    };
    own.chain(always).map(|text| sentence(&text)).collect::<Vec<_>>().join(" ")
}
