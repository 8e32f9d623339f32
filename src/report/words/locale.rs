//! In which language and units a page is written, with every message of that
//! language as a function.
//!
//! The functions are made when the crate is built, out of the files in
//! `messages/`: those for the crew, complete in each language, are methods of
//! [`Locale`]; those for the desk, English only, are functions of [`desk`].

use crate::measure::{System, Units};
use crate::model::finding::{Outcome, Verdict};
use intl_pluralrules::{PluralCategory, PluralRuleType, PluralRules};
use std::fmt::{Display, Write};
use unic_langid::LanguageIdentifier;

/// A language in which pages are written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Language {
    /// English.
    #[default]
    English,
    /// No language: what is left in plain letters on a page was written
    /// outside the files of messages.
    #[cfg(test)]
    MadeUp,
}

/// The language of what is read at a desk: English, unless a test looks for
/// what was written outside the files of messages.
#[cfg(not(test))]
const fn of_desk() -> Language {
    Language::English
}

#[cfg(test)]
thread_local! {
    /// What a test has the desk read in its thread.
    pub(crate) static OF_DESK: std::cell::Cell<Language> = const { std::cell::Cell::new(Language::English) };
}

#[cfg(test)]
fn of_desk() -> Language {
    OF_DESK.get()
}

/// How a page is written.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Locale {
    /// The language of what we say; texts out of files stay as they are.
    pub language: Language,
    /// Which units are shown.
    pub units: Units,
}

impl From<Units> for Locale {
    fn from(units: Units) -> Self {
        Self { units, ..Self::default() }
    }
}

impl Locale {
    /// A verdict in a sentence.
    pub(crate) fn verdict(self, verdict: Verdict) -> &'static str {
        match verdict {
            Verdict::Ready => self.verdict_ready(),
            Verdict::CannotTell => self.verdict_cannot_tell(),
            Verdict::NotReady => self.verdict_not_ready(),
        }
    }

    /// A verdict that is read from afar.
    pub(crate) fn verdict_aloud(self, verdict: Verdict) -> &'static str {
        match verdict {
            Verdict::Ready => self.verdict_ready_aloud(),
            Verdict::CannotTell => self.verdict_cannot_tell_aloud(),
            Verdict::NotReady => self.verdict_not_ready_aloud(),
        }
    }

    /// What a finding came to.
    pub(crate) fn outcome(self, outcome: Outcome) -> &'static str {
        match outcome {
            Outcome::Met => self.outcome_met(),
            Outcome::CannotTell => self.outcome_cannot_tell(),
            Outcome::NotMet => self.outcome_not_met(),
        }
    }

    /// The same with the units of one system alone.
    pub(crate) fn only(self, system: System) -> Self {
        Self { units: system.alone(), ..self }
    }
}

/// A message without arguments.
pub(crate) type Fixed = fn(Locale) -> &'static str;

/// A number of things, which chooses between singular and plural.
pub(crate) trait Count {
    /// The number.
    fn count(self) -> u64;
}

impl Count for usize {
    fn count(self) -> u64 {
        u64::try_from(self).unwrap_or(u64::MAX)
    }
}

impl Count for u32 {
    fn count(self) -> u64 {
        self.into()
    }
}

impl Count for u64 {
    fn count(self) -> u64 {
        self
    }
}

/// The class of a number in a language that is shipped, so that its rules are
/// known.
fn plural(language: &str, number: u64) -> PluralCategory {
    let rules = language
        .parse::<LanguageIdentifier>()
        .ok()
        .and_then(|language| PluralRules::create(language, PluralRuleType::CARDINAL).ok());
    let class = rules.and_then(|rules| rules.select(number).ok());
    class.unwrap_or(PluralCategory::OTHER)
}

/// Puts a text or an argument behind what is there. Writing to a string does
/// not fail.
fn put(out: &mut String, argument: &dyn Display) {
    let _ = write!(out, "{argument}");
}

include!(concat!(env!("OUT_DIR"), "/messages.rs"));
