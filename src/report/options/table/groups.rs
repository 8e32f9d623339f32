//! Situations grouped by where the animal is, as a page tells them.
//!
//! Imports `model` and the words beside it. The groups know the facts `where`
//! and `boarding` by their ids; what fits none of them stands in a last group.

use super::super::Shown;
use crate::model::options::{Answered, OwnHooks};
use crate::model::technique::{Practice, Situation};
use crate::report::Locale;
use crate::report::words::locale::Fixed;

/// A situation with what the kit answers to it.
pub(super) struct One<'a> {
    pub(super) answered: &'a Answered,
    pub(super) situation: &'a Situation,
}

/// Situations that stand together.
pub(super) struct Group<'a> {
    pub(super) heading: &'static str,
    /// What the titles repeat of the heading.
    repeats: &'static str,
    pub(super) shown: Vec<One<'a>>,
    /// Those that are left out, since no such hook is aboard.
    pub(super) left_out: Vec<One<'a>>,
}

/// Where an animal can be.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Place {
    ComesAboard,
    Stays,
    OnDeck,
    Elsewhere,
    Along,
}

/// The groups in their order: the heading, and what titles repeat of it.
const ORDER: [(Place, Fixed, &str); 5] = [
    (Place::ComesAboard, Locale::options_in_water_comes_aboard, ", can come aboard"),
    (Place::Stays, Locale::options_in_water_stays, ", stays in the water"),
    (Place::OnDeck, Locale::options_on_deck, ", on deck"),
    (Place::Elsewhere, Locale::options_further, ""),
    (Place::Along, Locale::options_along, ""),
];

impl Group<'_> {
    /// The title of a situation without what the heading says already.
    pub(super) fn title(&self, situation: &Situation) -> String {
        let title = situation.title.to_string();
        title.strip_suffix(self.repeats).map(str::to_owned).unwrap_or(title)
    }
}

/// The groups that have something in them, in the order of a page.
pub(super) fn groups<'a>(shown: &Shown<'a>) -> Vec<Group<'a>> {
    let (outlook, practice) = (&shown.options.outlook, shown.practice);
    let main = outlook.situations.iter().map(|answered| {
        let situation = &practice.situations[answered.situation];
        (place(practice, situation), One { answered, situation })
    });
    let along = outlook.along.iter().map(|answered| {
        (Place::Along, One { answered, situation: &practice.along[answered.situation] })
    });
    let mut groups: Vec<(Place, Group<'a>)> = ORDER
        .iter()
        .map(|(place, heading, repeats)| {
            let (heading, ones, left_out) = (heading(shown.locale), Vec::new(), Vec::new());
            (*place, Group { heading, repeats, shown: ones, left_out })
        })
        .collect();
    for (place, one) in main.chain(along) {
        let Some((_, group)) = groups.iter_mut().find(|(of, _)| *of == place) else { continue };
        let absent = one.answered.hooks == OwnHooks::NoneAboard;
        if absent { group.left_out.push(one) } else { group.shown.push(one) }
    }
    let groups = groups.into_iter().map(|(_, group)| group);
    groups.filter(|group| !group.shown.is_empty() || !group.left_out.is_empty()).collect()
}

/// Where the animal is, by the facts that the situation names.
fn place(practice: &Practice, situation: &Situation) -> Place {
    let words = |id: &str| -> Option<Vec<&str>> {
        let fact = practice.facts.iter().position(|fact| fact.id == id)?;
        let words = situation.when.words(fact)?.iter();
        Some(words.map(|word| practice.facts[fact].words[*word].word.as_str()).collect())
    };
    match (words("where").as_deref(), words("boarding").as_deref()) {
        (Some(["aboard"]), _) => Place::OnDeck,
        (Some(["alongside"]), Some(["boardable"])) => Place::ComesAboard,
        (Some(["alongside"]), Some(words)) if !words.contains(&"boardable") => Place::Stays,
        _ => Place::Elsewhere,
    }
}
