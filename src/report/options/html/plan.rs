//! Where everything stands on the wall card: the pages, the place of each
//! technique, and the labels of what is closed.
//!
//! Imports `model` and the words. It orders what was answered and answers
//! nothing itself.

use super::columns;
use crate::model::options::Choice;
use crate::model::technique::{Line, Technique};
use crate::report::Locale;
use crate::report::content::situations::{Case, Group, Place, places};
use crate::report::options::Shown;
use crate::report::words::options::{self as said, Wanting};

/// The whole card, ordered.
pub(super) struct Plan<'a> {
    pub(super) shown: &'a Shown<'a>,
    pub(super) sheets: Vec<Sheet<'a>>,
    /// The place of each technique, like `A3`; none where it is not shown.
    places: Vec<Option<String>>,
    /// What is closed, each once, in the order of its labels.
    pub(super) closed: Vec<Closed>,
}

/// One page of situations.
pub(super) struct Sheet<'a> {
    pub(super) letter: char,
    pub(super) title: String,
    pub(super) groups: Vec<Group<'a>>,
    /// The techniques that are shown on it, by index, in the order of their
    /// boxes.
    pub(super) techniques: Vec<usize>,
    /// Whether what closes better choices stands among the boxes.
    pub(super) closed_among: bool,
}

impl<'a> Sheet<'a> {
    fn new(index: usize, place: Place<'a>) -> Self {
        let Place { title, groups } = place;
        Self { letter: letter(index), title, groups, techniques: Vec::new(), closed_among: true }
    }

    fn cases(&self) -> impl Iterator<Item = &Case<'a>> {
        self.groups.iter().flat_map(|group| &group.cases)
    }
}

/// Why a choice is closed and what opens it; the same for several choices
/// that lack the same.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Closed {
    pub(super) wanting: Vec<Wanting>,
    /// What opens it, step by step.
    pub(super) opens: Vec<String>,
    /// What is said where no step opens it.
    pub(super) never: &'static str,
}

impl Closed {
    /// That of a choice which is not open.
    fn of<'a>(shown: &Shown<'a>, choice: &'a Choice) -> Self {
        Self {
            wanting: shown.wanting(choice),
            opens: shown.opens(choice),
            never: said::nothing_opens(shown, choice),
        }
    }

    /// About what it says, to guess its height.
    fn text(&self, locale: Locale) -> String {
        let whys = self.wanting.iter().map(|lack| format!("{}: {}; ", lack.what, lack.why));
        let opens = match self.opens.is_empty() {
            true => self.never.to_owned(),
            false => format!("{} {}", locale.options_card_opens_it(), said::steps(&self.opens)),
        };
        whys.collect::<String>() + &opens
    }
}

impl<'a> Plan<'a> {
    /// Orders what was answered.
    pub(super) fn new(shown: &'a Shown<'a>) -> Self {
        let sheets = places(shown).into_iter().enumerate();
        let sheets = sheets.map(|(index, place)| Sheet::new(index, place)).collect();
        let mut plan = Self { shown, sheets, places: vec![], closed: vec![] };
        plan.label_closed();
        plan.put_techniques();
        plan
    }

    /// A technique stands on the last page that leads to it, or on the card
    /// that shows it.
    fn put_techniques(&mut self) {
        let techniques = &self.shown.practice.techniques;
        let mut pages: Vec<Option<usize>> = vec![None; techniques.len()];
        for (page, sheet) in self.sheets.iter().enumerate() {
            let counted = sheet.cases().filter(|case| !case.of.answered.is_left_out());
            for way in counted.flat_map(|case| [case.of.best(), case.of.cut_behind()]).flatten() {
                for technique in way.techniques {
                    pages[*technique] = Some(page);
                }
            }
        }
        self.places = vec![None; techniques.len()];
        for (technique, page) in pages.into_iter().enumerate() {
            let Some(page) = page else { continue };
            match self.card_of(technique) {
                Some(card) => self.places[technique] = Some(self.next_letter(card).to_string()),
                None => self.sheets[page].techniques.push(technique),
            }
        }
        for page in 0..self.sheets.len() {
            self.order_boxes(page);
        }
    }

    /// Puts the boxes of a page in order and gives each its place.
    fn order_boxes(&mut self, page: usize) {
        let sheet = &self.sheets[page];
        let high = |technique: &usize| (*technique, self.height(sheet, *technique));
        let high: Vec<(usize, usize)> = sheet.techniques.iter().map(high).collect();
        let closed = self.closed_on(sheet).into_iter();
        let closed: Vec<_> = closed.map(|(_, closed)| closed.text(self.shown.locale)).collect();
        let [half, whole] = [false, true].map(|whole| columns::height_of_rows(&closed, whole));
        let (among, below) = (columns::order(&high, half), columns::order(&high, 0));
        let closed_among = among.1 <= below.1 + whole;
        let order = if closed_among { among.0 } else { below.0 };
        let sheet = &mut self.sheets[page];
        for (index, technique) in order.iter().enumerate() {
            self.places[*technique] = Some(format!("{}{}", sheet.letter, index + 1));
        }
        sheet.techniques = order;
        sheet.closed_among = closed_among;
    }

    /// The card that shows a technique, by its drawing.
    pub(super) fn card_of(&self, technique: usize) -> Option<usize> {
        let drawing = self.shown.practice.techniques.get(technique)?.drawing.as_deref()?;
        let mut cards = self.shown.practice.cards.iter();
        cards.position(|card| card.drawing.as_deref() == Some(drawing))
    }

    /// The techniques that a card shows and this kit leads to.
    pub(super) fn on_card(&self, card: usize) -> impl Iterator<Item = &'a Technique> {
        let all = self.shown.practice.techniques.iter().enumerate();
        let here = all.filter(move |(index, _)| {
            self.place(*index).is_some() && self.card_of(*index) == Some(card)
        });
        here.map(|(_, technique)| technique)
    }

    /// Gives each thing that closes a better choice its label.
    fn label_closed(&mut self) {
        let mut all: Vec<Closed> = Vec::new();
        for case in self.sheets.iter().flat_map(Sheet::cases) {
            for way in case.of.first_better() {
                let closed = Closed::of(self.shown, way.choice);
                if !all.contains(&closed) {
                    all.push(closed);
                }
            }
        }
        self.closed = all;
    }

    /// The place of a technique on the card.
    pub(super) fn place(&self, technique: usize) -> Option<&str> {
        self.places.get(technique)?.as_deref()
    }

    /// The label of what closes a choice.
    pub(super) fn label(&self, choice: &'a Choice) -> String {
        let closed = Closed::of(self.shown, choice);
        let at = self.closed.iter().position(|other| *other == closed);
        at.map(label).unwrap_or_default()
    }

    /// What closes better choices on a page, by label.
    pub(super) fn closed_on(&self, sheet: &Sheet<'a>) -> Vec<(String, &Closed)> {
        let better = sheet.cases().flat_map(|case| case.of.first_better());
        let here: Vec<String> = better.map(|way| self.label(way.choice)).collect();
        let rows = self.closed.iter().enumerate().map(|(index, closed)| (label(index), closed));
        rows.filter(|(label, _)| here.contains(label)).collect()
    }

    /// The cautions that more than one technique of a page has, with these.
    pub(super) fn shared_cautions(&self, sheet: &Sheet<'_>) -> Vec<(&'a Line, Vec<usize>)> {
        let practice = self.shown.practice;
        let mut found: Vec<(&Line, Vec<usize>)> = Vec::new();
        for index in &sheet.techniques {
            for line in practice.techniques.get(*index).into_iter().flat_map(|own| &own.cautions) {
                match found.iter_mut().find(|(known, _)| *known == line) {
                    Some((_, techniques)) => techniques.push(*index),
                    None => found.push((line, vec![*index])),
                }
            }
        }
        found.retain(|(_, techniques)| techniques.len() > 1);
        found
    }

    /// The technique of a page whose box shows the same drawing, if one comes
    /// before this in the practice: on paper a page has each drawing once.
    pub(super) fn drawn_before(&self, sheet: &Sheet<'_>, index: usize) -> Option<usize> {
        let of = |index: usize| self.shown.practice.techniques.get(index)?.drawing.as_deref();
        let own = of(index)?;
        let same = sheet.techniques.iter().filter(|other| of(**other) == Some(own));
        same.min().copied().filter(|first| *first != index)
    }

    /// About how high a box is on paper.
    fn height(&self, sheet: &Sheet<'_>, index: usize) -> usize {
        let Some(technique) = self.shown.practice.techniques.get(index) else { return 0 };
        let shared = self.shared_cautions(sheet);
        let alone = |line: &&Line| shared.iter().all(|(other, _)| other != line);
        let cautions: Vec<&Line> = technique.cautions.iter().filter(alone).collect();
        let drawn = technique.drawing.is_some() && self.drawn_before(sheet, index).is_none();
        columns::height(technique, &cautions, drawn, self.shown.locale)
    }

    /// The letter of the page after the last.
    pub(super) fn next_letter(&self, after: usize) -> char {
        letter(self.sheets.len() + after)
    }
}

/// The letter of a page.
fn letter(index: usize) -> char {
    u32::try_from(index).ok().and_then(|i| char::from_u32(u32::from('A') + i)).unwrap_or('?')
}

/// The label of something closed: a to z, then with a number.
fn label(index: usize) -> String {
    let letter = char::from(b'a' + u8::try_from(index % 26).unwrap_or(0));
    match index / 26 {
        0 => letter.to_string(),
        round => format!("{letter}{}", round + 1),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn labels_and_letters_never_run_out() {
        assert_eq!([label(0), label(25), label(26)], ["a", "z", "a2"]);
        assert_eq!([letter(0), letter(3)], ['A', 'D']);
    }
}
