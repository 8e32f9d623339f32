//! What is closed, why, and what opens it: each told once, under a number to
//! which the situations lead.

use super::{Block, Item, Lead, Line, Role, Section, Tone};
use crate::model::options::{Choice, Lack};
use crate::report::Locale;
use crate::report::subject::OptionsShown as Shown;
use crate::report::words::figures::all_of;
use crate::report::words::options::{self as said, Wanting};
use std::collections::BTreeSet;

/// The list in the making.
#[derive(Debug, Default)]
pub(super) struct Closed {
    entries: Vec<Entry>,
    rail: Option<Rail>,
    situation: usize,
}

/// Something that is wanting, or several things that only go together.
#[derive(Debug)]
struct Entry {
    wanting: Vec<Wanting>,
    /// What opens it; nothing where no step does.
    steps: Vec<String>,
    /// The situations that lead here, by their number on the page.
    situations: BTreeSet<usize>,
}

/// What a high rail closes.
#[derive(Debug)]
struct Rail {
    wanting: Wanting,
    closes: Vec<String>,
    situations: BTreeSet<usize>,
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
        if let Some(rail) = choice.rail_too_high() {
            let wanting = || shown.lack(choice, Lack::Rail(rail));
            self.note_rail(wanting, title);
            return None;
        }
        let mut numbers: Vec<usize> = Vec::new();
        for gap in choice.gaps() {
            let wanting = gap.lacks.iter().map(|lack| shown.lack(choice, *lack)).collect();
            let steps = gap.steps.iter().filter_map(|step| shown.opening(choice, *step)).collect();
            numbers.push(self.number(wanting, steps));
        }
        numbers.sort_unstable();
        let texts: Vec<String> = numbers.iter().map(ToString::to_string).collect();
        Some(all_of(&texts, shown.locale))
    }

    /// The number under which something wanting stands.
    fn number(&mut self, wanting: Vec<Wanting>, steps: Vec<String>) -> usize {
        let is_it = |entry: &Entry| entry.wanting == wanting && entry.steps == steps;
        let known = self.entries.iter().position(is_it);
        let index = known.unwrap_or(self.entries.len());
        if known.is_none() {
            self.entries.push(Entry { wanting, steps, situations: BTreeSet::new() });
        }
        self.entries[index].situations.insert(self.situation);
        index + 1
    }

    fn note_rail(&mut self, wanting: impl FnOnce() -> Wanting, title: &str) {
        let rail = self.rail.get_or_insert_with(|| Rail {
            wanting: wanting(),
            closes: Vec::new(),
            situations: BTreeSet::new(),
        });
        if !rail.closes.iter().any(|known| known == title) {
            rail.closes.push(title.to_owned());
        }
        rail.situations.insert(self.situation);
    }

    /// Says that what is noted from now on is of another situation.
    pub(super) fn next_situation(&mut self) {
        self.situation += 1;
    }

    /// The list; none where nothing is closed.
    pub(super) fn section(&self, locale: Locale) -> Option<Block> {
        if self.entries.is_empty() && self.rail.is_none() {
            return None;
        }
        let mut body = vec![Block::Paragraph(Line::strong(locale.options_what_is_closed()))];
        let entries = self.entries.iter().enumerate();
        body.extend(entries.map(|(index, entry)| entry.item(index + 1, locale)));
        body.extend(self.rail.as_ref().map(|rail| rail.item(locale)));
        let section = Section { role: Role::Part, id: None, verdict: None, heading: None, body };
        Some(Block::Section(section))
    }
}

impl Entry {
    fn item(&self, number: usize, locale: Locale) -> Block {
        let mut below = Vec::new();
        for (place, wanting) in self.wanting.iter().enumerate() {
            if place > 0 {
                let and = locale.options_and(&wanting.what);
                below.push(Block::Paragraph(Line::strong(and)));
            }
            let why = if wanting.open { locale.options_not_told() } else { locale.options_why() };
            below.push(Item::labelled(why, Tone::Plain, wanting.why.as_str()));
        }
        below.push(match self.steps.as_slice() {
            [] => Block::Paragraph(locale.options_nothing_opens().into()),
            steps => Item::new(Lead::Do, said::steps(steps)).into(),
        });
        below.push(wanting_in(&self.situations, locale));
        let what = self.wanting.first().map(|first| first.what.as_str()).unwrap_or_default();
        numbered(&format!("({number})"), what, below)
    }
}

impl Rail {
    fn item(&self, locale: Locale) -> Block {
        let below = vec![
            Item::labelled(locale.options_why(), Tone::Plain, self.wanting.why.as_str()),
            Item::labelled(locale.options_closed(), Tone::Plain, self.closes.join("; ")),
            Block::Paragraph(locale.options_rail_too_high().into()),
            wanting_in(&self.situations, locale),
        ];
        numbered("-", &self.wanting.what, below)
    }
}

/// Something closed behind its number, all of them set in alike.
fn numbered(number: &str, what: &str, below: Vec<Block>) -> Block {
    let lead = Lead::Word(format!("{number:>4}"), Tone::Plain);
    Item::new(lead, Line::strong(what)).with(below).into()
}

fn wanting_in(situations: &BTreeSet<usize>, locale: Locale) -> Block {
    Block::Paragraph(locale.options_wanting_in(situations.len()).into())
}
