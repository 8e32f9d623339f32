//! How a turtle is freed: what decides, what each technique needs, and in
//! which order they are chosen. Plain checked data, read from a file of
//! techniques.

use super::place::Place;
use super::profile::{FreeboardFrom, Requirement, Verified};
use super::text::Text;
use crate::measure::{Figure, Length};

/// A house of techniques: everything that a file of techniques says.
#[derive(Debug, Clone)]
pub struct Practice {
    /// Its id.
    pub id: String,
    /// The revision of the file.
    pub encoding: u32,
    /// What it is called.
    pub title: Text,
    /// What it stands on, in words.
    pub source: String,
    /// The governing language, as a tag.
    pub language: String,
    /// From where to the water it takes the freeboard.
    pub freeboard_from: FreeboardFrom,
    /// Cautions that stand wherever a technique is shown.
    pub cautions: Vec<Text>,
    /// The same in a line, for a short answer; none where nobody wrote one.
    pub cautions_in_short: Option<Text>,
    /// What stands where nothing is open at all; none where nobody wrote it.
    pub even_so: Option<Text>,
    /// Notes for the reader.
    pub notes: Vec<Text>,
    /// What decides, in the order in which it is asked.
    pub facts: Vec<Fact>,
    /// What may happen to an animal or a hook, for techniques and
    /// prohibitions to name.
    pub acts: Vec<Act>,
    /// What a technique can need.
    pub capabilities: Vec<Capability>,
    /// The techniques.
    pub techniques: Vec<Technique>,
    /// Situations, each with its choices from the best to the last. Exactly
    /// one answers any case: the one that goes before the others that fit.
    pub situations: Vec<Situation>,
    /// What goes along with whatever situation fits: the care of a limp
    /// animal. Any number may fit a case.
    pub along: Vec<Situation>,
    /// What is never done.
    pub nevers: Vec<Never>,
    /// Cards of their own: recovery, release.
    pub cards: Vec<Card>,
    /// Where it is written.
    pub place: Place,
}

/// One fact that decides.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Fact {
    /// Its id.
    pub id: String,
    /// What is asked.
    pub asks: Text,
    /// The answers.
    pub words: Vec<FactWord>,
    /// The answer (by index) that is taken where a case does not say.
    pub unsaid: Option<usize>,
}

/// One answer to a fact.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FactWord {
    /// The word that a case is put in, unique over all facts.
    pub word: String,
    /// Other words for it.
    pub also: Vec<String>,
    /// How it is said in a sentence: `on deck`, `hooked outside`.
    pub says: Text,
    /// Where this came from, if it has a published source.
    pub cited: Option<Cited>,
    /// The type of the vessel's own hooks that it speaks of, in lower case.
    pub hook_type: Option<String>,
    /// Whether it holds only in a case that says so, not where a case leaves
    /// the fact open.
    pub only_if_said: bool,
}

/// A citation and how it was verified.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Cited {
    /// The source and clause, like `50 CFR part 622 Appendix F, B.1`.
    pub clause: String,
    /// How it was verified.
    pub verified: Verified,
}

/// Something that may happen to an animal or a hook.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Act {
    /// Its id.
    pub id: String,
    /// In words: `pulls the hook back`.
    pub says: Text,
}

/// What a technique can need.
#[derive(Debug, Clone)]
pub struct Capability {
    /// Its id, unique in the file.
    pub id: String,
    /// What it is able to do: `reaches the water with a line cutter`.
    pub title: Text,
    /// Where it comes from.
    pub cited: Cited,
    /// A note for the reader.
    pub note: Option<Text>,
    /// What gives it.
    pub given_by: GivenBy,
}

/// What gives a capability.
#[derive(Debug, Clone)]
pub enum GivenBy {
    /// Tools of the kit, asked for as a profile asks.
    Tools(Box<Requirement>),
    /// A rail so low that the water is reached by hand: every freeboard at
    /// most this.
    LowRail {
        /// The greatest freeboard.
        at_most: Length,
        /// The figure as written.
        figure: Figure,
    },
}

/// One line of a technique or a card.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Line {
    /// What to do.
    pub says: Text,
    /// Where it comes from, if not from where the whole does.
    pub cited: Option<Cited>,
}

/// Answers to some of the facts: of each fact named, one of these words.
/// Both are indices. A fact that is not named may have any answer.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Pattern(pub Vec<(usize, Vec<usize>)>);

/// A case: one answer (by index) to each fact.
pub type Case = Vec<usize>;

impl Pattern {
    /// Whether it fits the case.
    pub fn fits(&self, case: &[usize]) -> bool {
        self.0.iter().all(|(fact, words)| case.get(*fact).is_some_and(|word| words.contains(word)))
    }

    /// Whether some case fits both.
    pub fn meets(&self, other: &Self) -> bool {
        self.0.iter().all(|(fact, words)| {
            let theirs = other.0.iter().find(|(of, _)| of == fact);
            theirs.is_none_or(|(_, theirs)| words.iter().any(|word| theirs.contains(word)))
        })
    }

    /// The words of a fact that it names; none where it names no such fact.
    pub fn words(&self, fact: usize) -> Option<&[usize]> {
        self.0.iter().find(|(of, _)| *of == fact).map(|(_, words)| words.as_slice())
    }
}

/// One technique.
#[derive(Debug, Clone)]
pub struct Technique {
    /// Its id.
    pub id: String,
    /// What it is called.
    pub title: Text,
    /// The steps, each a short imperative line.
    pub steps: Vec<Line>,
    /// The capabilities (by index) that it needs, each with a tool of its own.
    pub needs: Vec<usize>,
    /// The acts (by index) that it consists of.
    pub acts: Vec<usize>,
    /// Where it is never used: no case that one of these fits.
    pub never_with: Vec<Pattern>,
    /// When to stop.
    pub stop: Vec<Text>,
    /// Cautions of its own.
    pub cautions: Vec<Line>,
    /// Whether it ends in the line cut as near the hook as possible, or the
    /// animal cut free.
    pub cuts_line: bool,
    /// The name of a drawing that shows it.
    pub drawing: Option<String>,
    /// Where it comes from.
    pub cited: Cited,
    /// Where it is written.
    pub place: Place,
}

/// One situation and its choices.
#[derive(Debug, Clone)]
pub struct Situation {
    /// Its id.
    pub id: String,
    /// In words: `on deck, hooked outside, point showing`.
    pub title: Text,
    /// Which cases it is.
    pub when: Pattern,
    /// The choices, from the best to the last: each one or more techniques
    /// (by index), carried out one after the other.
    pub choices: Vec<Vec<usize>>,
    /// Other situations (by index) that fit some of the same cases and give
    /// way to this one.
    pub goes_before: Vec<usize>,
    /// What was decided where two rows of practice overlap, and why.
    pub reading: Option<Text>,
    /// Where it is written.
    pub place: Place,
}

/// Something that is never done.
#[derive(Debug, Clone)]
pub struct Never {
    /// In words: `lift it by the line`.
    pub says: Text,
    /// In which cases.
    pub when: Pattern,
    /// The acts (by index) that it forbids there.
    pub acts: Vec<usize>,
    /// Where it comes from.
    pub cited: Cited,
    /// Where it is written.
    pub place: Place,
}

/// A card of its own.
#[derive(Debug, Clone)]
pub struct Card {
    /// Its id.
    pub id: String,
    /// What it is called.
    pub title: Text,
    /// The steps.
    pub steps: Vec<Line>,
    /// What is never done with it.
    pub nevers: Vec<Line>,
    /// Cautions of its own.
    pub cautions: Vec<Line>,
    /// The name of a drawing that shows it.
    pub drawing: Option<String>,
    /// Where it comes from.
    pub cited: Cited,
}

impl Practice {
    /// Every case: each answer to each fact with each answer to the others.
    pub fn cases(&self) -> Vec<Case> {
        self.facts.iter().fold(vec![Vec::new()], |cases, fact| {
            let with = |case: &Case, word| case.iter().copied().chain([word]).collect();
            let all =
                cases.iter().flat_map(|case| (0..fact.words.len()).map(move |w| with(case, w)));
            all.collect()
        })
    }

    /// The situation (by index) that answers the case: of those that fit, the
    /// one that goes before all the others.
    pub fn situation_of(&self, case: &[usize]) -> Option<usize> {
        let fit: Vec<usize> =
            (0..self.situations.len()).filter(|s| self.situations[*s].when.fits(case)).collect();
        let leads = |one: &usize| {
            let own = &self.situations[*one];
            fit.iter().all(|other| other == one || own.goes_before.contains(other))
        };
        fit.iter().copied().find(leads)
    }

    /// What is never done in cases that the situation answers, in the order
    /// of the file.
    pub fn nevers_of<'a>(&'a self, situation: &'a Situation) -> impl Iterator<Item = &'a Never> {
        self.nevers.iter().filter(|never| never.when.meets(&situation.when))
    }
}
