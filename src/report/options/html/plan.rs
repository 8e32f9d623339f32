//! Where everything stands on the wall card: the pages, their groups, the
//! place of each technique, and the labels of what is closed.
//!
//! Imports `model` and the words. It orders what was answered and answers
//! nothing itself.

use super::boxes;
use super::closed::{self, Closed};
use super::columns;
use crate::model::options::{Answered, Choice, OwnHooks, Standing};
use crate::model::technique::{Situation, Technique};
use crate::report::options::Shown;
use crate::report::words::{figures, options as said, pages::capital};

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

/// Situations that belong together.
pub(super) struct Group<'a> {
    /// What they have in common; none where a page has only one group.
    pub(super) title: Option<String>,
    /// Whether it goes along with any of the others.
    pub(super) along: bool,
    /// Which cases they are, and by which source; nothing for what goes along.
    pub(super) about: Vec<String>,
    pub(super) cases: Vec<Case<'a>>,
}

/// One situation and what was answered.
pub(super) struct Case<'a> {
    pub(super) situation: &'a Situation,
    pub(super) answered: &'a Answered,
    /// Its title without what its group has in common.
    pub(super) title: String,
}

/// Situations with what was answered, by what they have in common.
type Sorted<'a, K> = Vec<(K, Vec<(&'a Situation, &'a Answered)>)>;

/// The answers that a situation names to a fact.
fn key(situation: &Situation, fact: usize) -> Vec<usize> {
    situation.when.words(fact).unwrap_or_default().to_vec()
}

impl<'a> Plan<'a> {
    /// Orders what was answered.
    pub(super) fn new(shown: &'a Shown<'a>) -> Self {
        let mut plan = Self { shown, sheets: sheets(shown), places: vec![], closed: vec![] };
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
            for case in sheet.groups.iter().flat_map(|group| &group.cases) {
                let last = last(self.shown, case);
                for technique in case.way().into_iter().chain(last).flatten() {
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
        let high = |technique: &usize| (*technique, boxes::height(self, sheet, *technique));
        let high: Vec<(usize, usize)> = sheet.techniques.iter().map(high).collect();
        let [half, whole] = closed::heights(self, sheet);
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
        for case in self.sheets.iter().flat_map(|sheet| &sheet.groups).flat_map(|g| &g.cases) {
            for (_, choice) in case.better() {
                let closed = Closed::of(self.shown, choice);
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

    /// What cuts the line in a case, should the way that is shown fail.
    pub(super) fn last(&self, case: &Case<'a>) -> Option<&'a [usize]> {
        last(self.shown, case)
    }

    /// Whether the way that is shown leaves the line on the animal should it
    /// fail, since nothing that would cut it is open.
    pub(super) fn lacks_a_cut(&self, case: &Case<'a>) -> bool {
        let cuts = |choice: &Vec<usize>| said::cuts_line(self.shown.practice, choice);
        let best = case.way().is_some_and(|way| !said::cuts_line(self.shown.practice, way));
        best && case.situation.choices.iter().any(cuts) && self.last(case).is_none()
    }

    /// The label of what closes a choice.
    pub(super) fn label(&self, choice: &Choice) -> String {
        let closed = Closed::of(self.shown, choice);
        let at = self.closed.iter().position(|other| *other == closed);
        at.map(label).unwrap_or_default()
    }

    /// The letter of the page after the last.
    pub(super) fn next_letter(&self, after: usize) -> char {
        letter(self.sheets.len() + after)
    }
}

impl<'a> Case<'a> {
    /// The techniques of the best open choice, unless the case is left out.
    pub(super) fn way(&self) -> Option<&'a [usize]> {
        if self.left_out() {
            return None;
        }
        self.situation.choices.get(self.answered.best()?).map(Vec::as_slice)
    }

    /// Whether no such hook is aboard.
    pub(super) fn left_out(&self) -> bool {
        self.answered.hooks == OwnHooks::NoneAboard
    }

    /// How it stands.
    pub(super) fn standing(&self) -> Standing {
        self.answered.standing()
    }

    /// The best of the better choices of a fallback that is closed, and the
    /// best of which nobody can tell, each with its techniques; the page for
    /// the terminal has them all.
    pub(super) fn better(&self) -> Vec<(&'a [usize], &'a Choice)> {
        if self.left_out() || self.standing() != Standing::Fallback {
            return Vec::new();
        }
        let techniques = self.situation.choices.iter().map(Vec::as_slice);
        let mut first: Vec<(&'a [usize], &'a Choice)> = Vec::new();
        for (techniques, choice) in techniques.zip(self.answered.better()) {
            let alike = |known: &Choice| {
                (known.answer, known.is_short()) == (choice.answer, choice.is_short())
            };
            if !first.iter().any(|(_, known)| alike(known)) {
                first.push((techniques, choice));
            }
        }
        first
    }
}

/// The first open choice behind the best that cuts the line; none where the
/// best does.
fn last<'a>(shown: &Shown<'_>, case: &Case<'a>) -> Option<&'a [usize]> {
    let best = case.answered.best().filter(|_| !case.left_out())?;
    let cuts = |choice: &[usize]| said::cuts_line(shown.practice, choice);
    if cuts(case.situation.choices.get(best)?) {
        return None;
    }
    let later = case.situation.choices.iter().zip(&case.answered.choices).skip(best + 1);
    let open = later.filter(|(_, choice)| choice.is_open());
    open.map(|(techniques, _)| techniques.as_slice()).find(|techniques| cuts(techniques))
}

/// The pages: by the first fact that decides.
fn sheets<'a>(shown: &'a Shown<'a>) -> Vec<Sheet<'a>> {
    let practice = shown.practice;
    let outlook = &shown.options.outlook;
    let paired = |all: &'a [Situation], answered: &'a [Answered]| {
        answered.iter().filter_map(move |one| Some((all.get(one.situation)?, one)))
    };
    let mut found: Sorted<'_, Vec<usize>> = Vec::new();
    let situations = paired(&practice.situations, &outlook.situations);
    for (situation, answered) in situations.chain(paired(&practice.along, &outlook.along)) {
        let own = key(situation, 0);
        match found.iter_mut().find(|(known, _)| *known == own) {
            Some((_, all)) => all.push((situation, answered)),
            None => found.push((own, vec![(situation, answered)])),
        }
    }
    let sheet = |(index, (words, all)): (usize, (Vec<usize>, _))| Sheet {
        letter: letter(index),
        title: says(shown, 0, &words).unwrap_or_else(|| practice.title.to_string()),
        groups: groups(shown, all),
        techniques: Vec::new(),
        closed_among: true,
    };
    found.into_iter().enumerate().map(sheet).collect()
}

/// The groups of a page: by the second fact that decides, and what goes along
/// with any case in a group of its own.
fn groups<'a>(shown: &'a Shown<'a>, all: Vec<(&'a Situation, &'a Answered)>) -> Vec<Group<'a>> {
    let goes_along =
        |situation: &Situation| shown.practice.along.iter().any(|of| std::ptr::eq(of, situation));
    let mut found: Sorted<'_, (bool, Vec<usize>)> = Vec::new();
    for (situation, answered) in all {
        let own = (goes_along(situation), key(situation, 1));
        // What holds for some of a group's answers stands in that group.
        let within = |known: &(bool, Vec<usize>)| {
            let all = |some: &[usize], of: &[usize]| some.iter().all(|word| of.contains(word));
            known.0 == own.0
                && known.1.is_empty() == own.1.is_empty()
                && (all(&own.1, &known.1) || all(&known.1, &own.1))
        };
        match found.iter_mut().find(|(known, _)| within(known)) {
            Some((known, cases)) => {
                if own.1.len() > known.1.len() {
                    known.1 = own.1;
                }
                cases.push((situation, answered));
            }
            None => found.push((own, vec![(situation, answered)])),
        }
    }
    let alone = found.iter().filter(|((along, _), _)| !along).count() < 2;
    let group = |((along, words), cases): ((bool, Vec<usize>), Vec<_>)| {
        let titles: Vec<String> =
            cases.iter().map(|(s, _): &(&Situation, _)| s.title.to_string()).collect();
        let common = common_end(&titles);
        let title = match (along, alone) {
            (true, _) => Some(shown.locale.options_card_with_any().to_owned()),
            (false, true) => None,
            (false, false) if common.is_empty() => says(shown, 1, &words),
            (false, false) => Some(capital(common.trim_start_matches(", "))),
        };
        let common = if title.is_some() { common } else { String::new() };
        let cut = |title: &String| title.strip_suffix(&common).unwrap_or(title).to_owned();
        let cases = cases.into_iter().zip(titles.iter().map(cut));
        let cases = cases.map(|((situation, answered), title)| Case { situation, answered, title });
        let about = if along { Vec::new() } else { about(shown, &words) };
        Group { about, title, along, cases: cases.collect() }
    };
    found.into_iter().map(group).collect()
}

/// What the answers to the second fact say, with their sources.
fn about(shown: &Shown<'_>, words: &[usize]) -> Vec<String> {
    let Some(fact) = shown.practice.facts.get(1) else { return Vec::new() };
    let words = words.iter().filter_map(|word| fact.words.get(*word));
    let told = words.map(|word| match &word.cited {
        Some(cited) => super::cards::cited(cited),
        None => word.says.to_string(),
    });
    told.collect()
}

/// Answers in words.
fn says(shown: &Shown<'_>, fact: usize, words: &[usize]) -> Option<String> {
    let fact = shown.practice.facts.get(fact)?;
    let words = words.iter().filter_map(|word| fact.words.get(*word));
    let words: Vec<String> = words.map(|word| word.says.to_string()).collect();
    (!words.is_empty()).then(|| capital(&figures::any_of(&words, shown.locale)))
}

/// The end, from a comma on, that all of several titles have.
fn common_end(titles: &[String]) -> String {
    let Some((first, rest)) = titles.split_first().filter(|(_, rest)| !rest.is_empty()) else {
        return String::new();
    };
    let ends = first.match_indices(", ").map(|(at, _)| &first[at..]);
    let mut shared = ends.filter(|end| rest.iter().all(|other| other.ends_with(end)));
    shared.next().unwrap_or_default().to_owned()
}

/// The letter of a page.
fn letter(index: usize) -> char {
    u32::try_from(index).ok().and_then(|i| char::from_u32(u32::from('A') + i)).unwrap_or('?')
}

/// The label of something closed: a to z, then with a number.
pub(super) fn label(index: usize) -> String {
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
    fn titles_share_an_end_only_from_a_comma_on() {
        let titles = |all: &[&str]| all.iter().map(|t| (*t).to_owned()).collect::<Vec<_>>();
        assert_eq!(common_end(&titles(&["Tangled, stays", "Hooked, deep, stays"])), ", stays");
        assert_eq!(common_end(&titles(&["Tangled stays", "Hooked stays"])), "");
        assert_eq!(common_end(&titles(&["Tangled, stays"])), "");
        assert_eq!(common_end(&[]), "");
    }

    #[test]
    fn labels_and_letters_never_run_out() {
        assert_eq!([label(0), label(25), label(26)], ["a", "z", "a2"]);
        assert_eq!([letter(0), letter(3)], ['A', 'D']);
    }
}
