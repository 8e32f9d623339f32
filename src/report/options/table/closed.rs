//! What is closed, why, and what opens it: each told once, under a number to
//! which the situations lead.
//!
//! Imports `model`, `measure` and the page and words beside it.

use super::super::Shown;
use crate::measure::Answer;
use crate::model::finding::{Step, WayToReady};
use crate::model::options::Choice;
use crate::report::Locale;
use crate::report::content::Tone;
use crate::report::render::lines::Page;
use crate::report::words::options::{self as said, Wanting};

/// How far what stands under a number is set in.
const LABEL: usize = 5;

/// The list in the making.
#[derive(Debug, Default)]
pub(super) struct Closed {
    entries: Vec<Entry>,
    /// What a high rail closes: the choices, and the situations by number.
    by_rail: Vec<String>,
    of_rail: Vec<usize>,
    rail: Option<Wanting>,
    situation: usize,
}

/// Something that is wanting, or several things that only go together.
#[derive(Debug, Clone, PartialEq, Eq)]
struct Thing {
    wanting: Vec<Wanting>,
    opens: Opens,
}

/// What opens it.
#[derive(Debug, Clone, PartialEq, Eq)]
enum Opens {
    Steps(Vec<String>),
    Nothing(&'static str),
}

#[derive(Debug)]
struct Entry {
    thing: Thing,
    /// The situations that lead here, by their number on the page.
    situations: Vec<usize>,
}

impl Closed {
    /// Notes what a choice wants; gives the numbers under which it stands,
    /// none where a high rail closes it.
    pub(super) fn note<'a>(
        &mut self,
        shown: &Shown<'a>,
        choice: &'a Choice,
        title: &str,
    ) -> Option<String> {
        if choice.rails.iter().any(|rail| rail.answer == Answer::No) {
            self.note_rail(shown, choice, title);
            return None;
        }
        let mut numbers: Vec<usize> = Vec::new();
        for thing in things(shown, choice) {
            let known = self.entries.iter().position(|entry| entry.thing == thing);
            let index = known.unwrap_or_else(|| {
                self.entries.push(Entry { thing, situations: Vec::new() });
                self.entries.len() - 1
            });
            let situations = &mut self.entries[index].situations;
            if situations.last() != Some(&self.situation) {
                situations.push(self.situation);
            }
            numbers.push(index + 1);
        }
        numbers.sort_unstable();
        let texts: Vec<String> = numbers.iter().map(ToString::to_string).collect();
        Some(texts.join(" and "))
    }

    fn note_rail<'a>(&mut self, shown: &Shown<'a>, choice: &'a Choice, title: &str) {
        if self.rail.is_none() {
            let mut wanting = shown.wanting(choice).into_iter();
            self.rail = wanting.find(|wanting| wanting.requirement.is_none() && !wanting.open);
        }
        if !self.by_rail.iter().any(|known| known == title) {
            self.by_rail.push(title.to_owned());
        }
        if self.of_rail.last() != Some(&self.situation) {
            self.of_rail.push(self.situation);
        }
    }

    /// Says that what is noted from now on is of another situation.
    pub(super) fn next_situation(&mut self) {
        self.situation += 1;
    }

    /// Writes the list.
    pub(super) fn write(&self, page: &mut Page, locale: Locale) {
        if self.entries.is_empty() && self.rail.is_none() {
            return;
        }
        page.gap();
        page.prose(0, Tone::Strong, locale.options_what_is_closed());
        for (index, entry) in self.entries.iter().enumerate() {
            let label = format!("{:>4}", format!("({})", index + 1));
            entry.write(page, locale, &label);
        }
        let Some(rail) = &self.rail else { return };
        page.hang(0, ("   -", Tone::Plain), (&rail.what, Tone::Strong));
        page.hang(LABEL, (locale.options_why(), Tone::Plain), (&rail.why, Tone::Plain));
        let closed = self.by_rail.join("; ");
        page.hang(LABEL, (locale.options_closed(), Tone::Plain), (&closed, Tone::Plain));
        page.prose(LABEL, Tone::Plain, locale.options_rail_too_high());
        page.prose(LABEL, Tone::Plain, &locale.options_wanting_in(self.of_rail.len()));
    }
}

impl Entry {
    fn write(&self, page: &mut Page, locale: Locale, label: &str) {
        for (place, wanting) in self.thing.wanting.iter().enumerate() {
            if place == 0 {
                page.hang(0, (label, Tone::Plain), (&wanting.what, Tone::Strong));
            } else {
                page.prose(LABEL, Tone::Strong, &locale.options_and(&wanting.what));
            }
            let why = if wanting.open { locale.options_not_told() } else { locale.options_why() };
            page.hang(LABEL, (why, Tone::Plain), (&wanting.why, Tone::Plain));
        }
        match &self.thing.opens {
            Opens::Steps(steps) => {
                page.hang(
                    LABEL,
                    (locale.sheet_small_do(), Tone::Strong),
                    (&said::steps(steps), Tone::Strong),
                );
            }
            Opens::Nothing(text) => page.prose(LABEL, Tone::Plain, text),
        }
        page.prose(LABEL, Tone::Plain, &locale.options_wanting_in(self.situations.len()));
    }
}

/// What a choice wants, thing by thing where each has its own steps, else all
/// of it together with all steps.
fn things<'a>(shown: &Shown<'a>, choice: &'a Choice) -> Vec<Thing> {
    let wanting = shown.wanting(choice);
    let (rails, tools): (Vec<_>, Vec<_>) =
        wanting.into_iter().partition(|wanting| wanting.requirement.is_none());
    let mut things: Vec<Thing> = rails
        .into_iter()
        .map(|rail| {
            let opens = Opens::Steps(vec![shown.locale.options_measure_rail().to_owned()]);
            Thing { wanting: vec![rail.bare()], opens }
        })
        .collect();
    if tools.is_empty() {
        return things;
    }
    let Some(judgement) = &choice.tools else { return things };
    let steps: &[Step] = match judgement.inverses.as_ref().map(|inverses| &inverses.way) {
        Some(WayToReady::Steps { steps, .. }) => steps,
        _ => &[],
    };
    let words = shown.words(judgement);
    let text = |step: &Step| words.step(step, words.freeboard_for(judgement, step.requirement));
    let serves = |step: &Step, wanting: &Wanting| {
        let of = |requirement| requirement == step.requirement || step.also.contains(&requirement);
        wanting.requirement.is_some_and(of)
    };
    let apart = !steps.is_empty()
        && tools.iter().all(|wanting| steps.iter().any(|step| serves(step, wanting)))
        && steps.iter().all(|step| tools.iter().any(|wanting| serves(step, wanting)));
    if apart {
        things.extend(tools.into_iter().map(|wanting| {
            let own = steps.iter().filter(|step| serves(step, &wanting)).map(text).collect();
            Thing { wanting: vec![wanting.bare()], opens: Opens::Steps(own) }
        }));
    } else {
        let opens = match steps {
            [] => Opens::Nothing(shown.locale.options_nothing_opens()),
            steps => Opens::Steps(steps.iter().map(text).collect()),
        };
        things.push(Thing { wanting: tools.into_iter().map(Wanting::bare).collect(), opens });
    }
    things
}
