//! One situation with what a kit answers to it: the best way, what is left
//! should it fail, and what is got first where nothing is open.
//!
//! Imports `model` and `measure`.

use super::Options;
use crate::measure::Answer;
use crate::model::options::{Answered, Choice, Outlook, Standing};
use crate::model::technique::{Practice, Situation};

/// A situation of the file of techniques and what the kit answers to it.
#[derive(Debug, Clone, Copy)]
pub struct Prospect<'a> {
    options: &'a Options,
    practice: &'a Practice,
    /// The situation.
    pub situation: &'a Situation,
    /// What the kit answers.
    pub answered: &'a Answered,
    /// Whether it goes along with others.
    pub along: bool,
}

/// One choice of a situation.
#[derive(Debug, Clone, Copy)]
pub struct Way<'a> {
    /// Its place among the choices.
    pub index: usize,
    /// Its techniques (by index), carried out one after the other.
    pub techniques: &'a [usize],
    /// What was said of it.
    pub choice: &'a Choice,
}

impl Options {
    /// Every situation, those that go along with others behind these.
    pub fn prospects<'a>(
        &'a self,
        practice: &'a Practice,
    ) -> impl Iterator<Item = Prospect<'a>> + Clone {
        let of = move |along, situations: &'a [Situation], answered: &'a [Answered]| {
            let paired =
                answered.iter().filter_map(move |one| Some((situations.get(one.situation)?, one)));
            paired.map(move |(situation, answered)| Prospect {
                options: self,
                practice,
                situation,
                answered,
                along,
            })
        };
        let main = of(false, &practice.situations, &self.outlook.situations);
        main.chain(of(true, &practice.along, &self.outlook.along))
    }

    /// A situation by its index, or one of those that go along.
    pub fn prospect<'a>(
        &'a self,
        practice: &'a Practice,
        situation: usize,
        along: bool,
    ) -> Option<Prospect<'a>> {
        let is_it = |one: &Prospect<'_>| (one.answered.situation, one.along) == (situation, along);
        self.prospects(practice).find(is_it)
    }
}

impl<'a> Prospect<'a> {
    /// A choice by its place.
    pub fn way(&self, index: usize) -> Option<Way<'a>> {
        let techniques = self.situation.choices.get(index)?;
        Some(Way { index, techniques, choice: self.answered.choices.get(index)? })
    }

    /// Every choice, the best first.
    pub fn ways(&self) -> impl Iterator<Item = Way<'a>> {
        let own = *self;
        (0..self.answered.choices.len()).filter_map(move |index| own.way(index))
    }

    /// The best choice that is open.
    pub fn best(&self) -> Option<Way<'a>> {
        self.way(self.answered.best()?)
    }

    /// The choices that would be better than the best open one: see
    /// [`Answered::better`].
    pub fn better(&self) -> impl Iterator<Item = Way<'a>> {
        self.ways().take(self.answered.better().len())
    }

    /// Of a fallback that counts the first better choice that is closed, the first that is
    /// short and the first of which nobody can tell.
    pub fn first_better(&self) -> Vec<Way<'a>> {
        let mut first: Vec<Way<'a>> = Vec::new();
        if self.answered.is_left_out() || self.answered.standing() != Standing::Fallback {
            return first;
        }
        for way in self.better() {
            if !first.iter().any(|known| known.choice.access() == way.choice.access()) {
                first.push(way);
            }
        }
        first
    }

    /// What to open first where nothing is known to be open: the fewest steps
    /// over the choices, among equals one that cuts the line, then the
    /// earliest; where of some nobody can tell, over those. None where nothing
    /// opens any.
    pub fn first_to_open(&self) -> Option<Way<'a>> {
        let ways = self.ways().map(|way| (way.choice.steps().len(), way));
        let first = ways.filter(|(steps, _)| *steps > 0).min_by_key(|(steps, way)| {
            (way.choice.answer != Answer::Unknown, *steps, !self.cuts_line(way.techniques))
        });
        first.map(|(_, way)| way)
    }

    /// The better choice to speak of: where nothing is open that to open first,
    /// else the first that something opens, else the first.
    pub fn better_to_open(&self) -> Option<Way<'a>> {
        let first = || self.first_to_open().filter(|_| self.answered.best().is_none());
        let opens = || self.better().find(|way| !way.choice.steps().is_empty());
        first().or_else(opens).or_else(|| self.better().next())
    }

    /// What is open next, should the best way fail, if anything is. Nothing at
    /// all where there is no such question: nothing is open, the best way cuts
    /// the line, which is the last, or no way would cut it.
    pub fn should_it_fail(&self) -> Option<Option<Way<'a>>> {
        let best = self.best()?;
        let asked = !self.cuts_line(best.techniques) && self.can_be_cut();
        asked.then(|| self.way(self.answered.next()?))
    }

    /// The first open choice behind the best that cuts the line; none where the
    /// best does.
    pub fn cut_behind(&self) -> Option<Way<'a>> {
        let best = self.best().filter(|best| !self.cuts_line(best.techniques))?;
        let mut later = self.ways().skip(best.index + 1);
        later.find(|way| way.choice.is_open() && self.cuts_line(way.techniques))
    }

    /// Whether the best way leaves the line on the animal should it fail, since
    /// nothing that would cut it is open.
    pub fn lacks_a_cut(&self) -> bool {
        self.should_it_fail().is_some() && self.cut_behind().is_none()
    }

    /// Whether a choice that nobody can tell of hangs on nothing but a hook
    /// that the animal brings and this vessel does not carry.
    pub fn hangs_on_foreign_hook(&self, choice: &Choice) -> bool {
        let unknown = choice.answer == Answer::Unknown;
        self.answered.is_left_out() && unknown && choice.hangs_on_hooks()
    }

    /// The hauling stations, by name, at which something better is open than at
    /// all of them, each with its best way.
    pub fn at_stations(&self) -> Vec<(&'a str, Way<'a>)> {
        let everywhere = self.answered.rank();
        let better = self.options.stations.iter().filter_map(|at| {
            let there = Self { answered: self.of(&at.outlook)?, ..*self };
            let is_better = everywhere.is_none_or(|known| there.answered.rank() < Some(known));
            Some((at.name.as_str(), there.best()?)).filter(|_| is_better)
        });
        better.collect()
    }

    /// The same situation in another outlook.
    fn of(&self, outlook: &'a Outlook) -> Option<&'a Answered> {
        let all = if self.along { &outlook.along } else { &outlook.situations };
        all.get(self.answered.situation)
    }

    /// Whether a choice ends in the line cut.
    fn cuts_line(&self, techniques: &[usize]) -> bool {
        techniques.last().is_some_and(|technique| self.practice.techniques[*technique].cuts_line)
    }

    /// Whether some choice would cut the line, open or not.
    fn can_be_cut(&self) -> bool {
        self.situation.choices.iter().any(|choice| self.cuts_line(choice))
    }
}
