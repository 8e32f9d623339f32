//! What the requirements that bind ask of one thing in hand: each figure,
//! feature and word once, with what is asked of it by which clause.
//!
//! Imports `model` and the words beside it. Whether the thing keeps it is
//! judged by the engine, never here.

use super::shared::{of_rules, take_in};
use crate::measure::{System, Units};
use crate::model::profile::Requirement;
use crate::model::rule::{Bound, Limit, Member, Need, Spec, Test, ToolType};
use crate::model::vocabulary::{AttributeId, AttributeShape, KindId, Vocabulary, fold};
use crate::report::Locale;
use crate::report::words::sheet::Ends;
use crate::report::words::{Words, figures};

/// Something that is asked of a thing.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Ask {
    /// Which dimension, feature or word.
    pub(super) attribute: AttributeId,
    /// What is asked, and by which clause.
    wants: Vec<(String, String)>,
    /// Whether it is another way, open where the one before it is not kept.
    pub(super) or: bool,
    /// The numbers of the rules that ask it; none on a paper of one rule.
    pub(super) rules: Vec<String>,
}

impl Ask {
    /// What is asked, in words. Clauses are named only where they differ in
    /// what they ask.
    pub(super) fn text(&self, locale: Locale) -> String {
        let mut by_clause: Vec<(&str, Vec<String>)> = Vec::new();
        for (clause, text) in &self.wants {
            match by_clause.iter_mut().find(|(known, _)| known == clause) {
                Some((_, texts)) if texts.contains(text) => {}
                Some((_, texts)) => texts.push(text.clone()),
                None => by_clause.push((clause, vec![text.clone()])),
            }
        }
        let told =
            by_clause.into_iter().map(|(clause, texts)| (clause, figures::any_of(&texts, locale)));
        let told: Vec<(&str, String)> = told.collect();
        match told.as_slice() {
            [] => String::new(),
            [(_, first), rest @ ..] if rest.iter().all(|(_, text)| text == first) => first.clone(),
            all => {
                let texts = all.iter().map(|(clause, text)| format!("{text} ({clause})"));
                texts.collect::<Vec<_>>().join("; ")
            }
        }
    }

    /// The words that will do, each once; one that only some of the clauses
    /// allow says which.
    pub(super) fn words(&self) -> Vec<String> {
        let mut clauses: Vec<&str> = Vec::new();
        let mut words: Vec<(&str, Vec<&str>)> = Vec::new();
        for (clause, word) in &self.wants {
            if !clauses.contains(&clause.as_str()) {
                clauses.push(clause);
            }
            match words.iter_mut().find(|(known, _)| known == word) {
                Some((_, by)) if by.contains(&clause.as_str()) => {}
                Some((_, by)) => by.push(clause),
                None => words.push((word, vec![clause])),
            }
        }
        let told = words.into_iter().map(|(word, by)| {
            if by.len() == clauses.len() {
                word.to_owned()
            } else {
                format!("{word} ({})", by.join(", "))
            }
        });
        told.collect()
    }

    /// Whether a feature is asked for, plainly: its name says it all.
    pub(super) fn is_plain(&self, locale: Locale) -> bool {
        self.wants.iter().any(|(_, text)| text == locale.sheet_yes())
    }
}

/// An ask as a file tells it: the name where the key does not say it, what
/// is asked, how it is written.
pub(super) fn for_a_file(ask: &Ask, vocabulary: &Vocabulary, locale: Locale) -> String {
    let attribute = vocabulary.attribute(ask.attribute);
    let text = match (&attribute.shape, ask.text(locale)) {
        (AttributeShape::Feature, text) if text == locale.sheet_no() => {
            locale.sheet_yes_or_no_no().to_owned()
        }
        (AttributeShape::Feature, _) => locale.sheet_yes_or_no().to_owned(),
        (_, text) => text,
    };
    let named = fold(&attribute.name) != attribute.id;
    let text = if named { format!("{}: {text}", attribute.name) } else { text };
    if ask.or { format!("{} {text}", locale.sheet_or()) } else { text }
}

/// The asks of one thing, in the order of the rules.
#[derive(Debug, Default)]
pub(super) struct Asks {
    /// Each attribute once.
    pub(super) list: Vec<Ask>,
    /// What no box can hold: days before which it had to be acquired,
    /// conditions under which it may serve.
    pub(super) notes: Vec<String>,
    /// The number of the rule whose requirements are added, where the paper is of several.
    pub(super) rule: Option<String>,
}

impl Asks {
    /// What an alternative asks.
    pub(super) fn add(&mut self, words: &Words<'_>, requirement: &Requirement, spec: Placed<'_>) {
        let ends = words.ends(requirement, Some(spec.spec));
        let locale = words.locale;
        let clause = self.of_rule(spec.clause(requirement), locale);
        let only = words.only_where(&spec.spec.when);
        // One alternative of several that is open to some vessels only: what
        // it asks beyond the others says so.
        let mut own = Self::default();
        own.tests(words, &spec.spec.tests, &clause, ends);
        for ask in own.list {
            for (clause, text) in ask.wants {
                let known = self.list.iter().find(|known| known.attribute == ask.attribute);
                let told = known.is_some_and(|known| known.wants.iter().any(|(_, t)| *t == text));
                let text = match &only {
                    Some(only) if !told => format!("{text} ({only})"),
                    _ => text,
                };
                self.want(ask.attribute, &clause, text, ask.or);
            }
        }
        own.notes.into_iter().for_each(|note| self.note(note));
        if let Some(only) = only.filter(|_| spec.spec.tests.is_empty()) {
            self.note(locale.sheet_serves(&only));
        }
    }

    /// What a thing must be like beyond serving one requirement, to count for
    /// another too; the clause of that one stands behind it.
    pub(super) fn counts_for(&mut self, words: &Words<'_>, tests: &[Test], clause: &str) {
        let ruled = self.of_rule(clause, words.locale);
        let mut own = Self::default();
        own.tests(words, tests, &ruled, None);
        for ask in own.list {
            let feature =
                words.vocabulary.attribute(ask.attribute).shape == AttributeShape::Feature;
            for (ruled, text) in ask.wants {
                let text = match feature {
                    true => text,
                    false => words.locale.sheet_for_clause(&text, &clause),
                };
                self.want(ask.attribute, &ruled, text, ask.or);
            }
        }
    }

    /// A clause with its rule.
    fn of_rule(&self, clause: &str, locale: Locale) -> String {
        of_rules(self.rule.as_slice(), clause, locale)
    }

    /// Whether another thing is asked the same.
    pub(super) fn same(&self, other: &Self) -> bool {
        let told = |asks: &Self| -> Vec<_> {
            asks.list
                .iter()
                .map(|ask| (ask.attribute, ask.text(Locale::default()), ask.or))
                .collect()
        };
        self.notes == other.notes && told(self) == told(other)
    }

    /// Takes in the rules of asks that are the same.
    pub(super) fn join(&mut self, same: &Self) {
        for (ask, other) in self.list.iter_mut().zip(&same.list) {
            ask.rules.extend(other.rules.iter().cloned());
        }
    }

    /// What tests ask, by a clause, at the ends of the freeboards.
    fn tests(&mut self, words: &Words<'_>, tests: &[Test], clause: &str, ends: Option<Ends>) {
        tests.iter().for_each(|test| self.test(words, test, clause, ends, false));
    }

    fn test(&mut self, words: &Words<'_>, test: &Test, clause: &str, ends: Option<Ends>, or: bool) {
        match test {
            Test::Limit { attribute, limit, .. } => {
                self.want(*attribute, clause, words.asked(limit, ends), or);
            }
            Test::Feature { attribute, wanted } => {
                let text = if *wanted { words.locale.sheet_yes() } else { words.locale.sheet_no() };
                self.want(*attribute, clause, text.to_owned(), or);
            }
            Test::Choice { attribute, allowed } => {
                for word in words.spelled(*attribute, allowed) {
                    self.want(*attribute, clause, word, or);
                }
            }
            Test::AcquiredBefore(day) => self.note(words.locale.sheet_serves_if_acquired(day)),
            Test::AnyOf(groups) => {
                for (index, group) in groups.iter().enumerate() {
                    let other = or || index > 0;
                    group.iter().for_each(|test| self.test(words, test, clause, ends, other));
                }
            }
            Test::Readings(groups) => {
                for test in groups.iter().flatten() {
                    let units = match exact_beside_least(test, groups) {
                        Some(system) if words.locale.units == Units::Both => system.alone(),
                        _ => words.locale.units,
                    };
                    let words = Words { locale: Locale { units, ..words.locale }, ..*words };
                    self.test(&words, test, clause, ends, or);
                }
            }
        }
    }

    fn want(&mut self, attribute: AttributeId, clause: &str, text: String, or: bool) {
        let want = (clause.to_owned(), text);
        let rule = self.rule.clone();
        match self.list.iter_mut().find(|ask| ask.attribute == attribute) {
            Some(ask) => {
                ask.wants.push(want);
                take_in(&mut ask.rules, rule);
            }
            None => {
                let rules = rule.into_iter().collect();
                self.list.push(Ask { attribute, wants: vec![want], or, rules });
            }
        }
    }

    fn note(&mut self, note: String) {
        if !self.notes.contains(&note) {
            self.notes.push(note);
        }
    }

    /// The asks as one text, for a thing that is yet to be found.
    pub(super) fn in_words(&self, vocabulary: &Vocabulary, locale: Locale) -> String {
        let texts = self.list.iter().map(|ask| {
            let attribute = vocabulary.attribute(ask.attribute);
            let (name, text) = (&attribute.name, ask.text(locale));
            let told = match attribute.shape {
                AttributeShape::Feature if ask.is_plain(locale) => name.clone(),
                AttributeShape::Feature => format!("{name}: {}", locale.sheet_must_be(&text)),
                _ => format!("{name} {text}"),
            };
            if ask.or { locale.sheet_or_else(&told) } else { told }
        });
        texts.chain(self.notes.iter().cloned()).collect::<Vec<_>>().join(", ")
    }
}

/// The system of a bare figure that is read as exact where another reading
/// takes it as the least: the exact one is told in the rule's unit alone.
fn exact_beside_least(test: &Test, readings: &[Vec<Test>]) -> Option<System> {
    let Test::Limit { attribute, limit: Limit::Within(low, high), .. } = test else { return None };
    let Bound::Fixed { figure, .. } = low else { return None };
    let is_least = |other: &Test| match other {
        Test::Limit { attribute: of, limit: Limit::AtLeast(least), .. } => {
            of == attribute && least == low
        }
        _ => false,
    };
    (low == high && readings.iter().flatten().any(is_least)).then_some(figure.system)
}

/// An alternative where it stands in its requirement.
#[derive(Debug, Clone, Copy)]
pub(super) struct Placed<'a> {
    /// The type that it is a member of; none for gear.
    pub(super) of_type: Option<&'a ToolType>,
    /// The member; none for gear.
    pub(super) member: Option<&'a Member>,
    /// The alternative itself.
    pub(super) spec: &'a Spec,
}

impl Placed<'_> {
    fn clause<'b>(&'b self, requirement: &'b Requirement) -> &'b str {
        let of_type = self.of_type.and_then(|of_type| of_type.clause.as_deref());
        self.spec.clause.as_deref().or(of_type).unwrap_or(&requirement.clause)
    }
}

/// Every alternative of a requirement with its place.
pub(super) fn placed(requirement: &Requirement) -> Vec<Placed<'_>> {
    match &requirement.need {
        Need::Tools { types, .. } => types
            .iter()
            .flat_map(|of_type| of_type.members.iter().map(move |member| (of_type, member)))
            .flat_map(|(of_type, member)| {
                member.choices.iter().map(move |spec| Placed {
                    of_type: Some(of_type),
                    member: Some(member),
                    spec,
                })
            })
            .collect(),
        Need::Gear { choices, .. } => {
            choices.iter().map(|spec| Placed { of_type: None, member: None, spec }).collect()
        }
        Need::Certificates { .. } => Vec::new(),
    }
}

/// The alternatives of a requirement that a thing of this kind may be.
pub(super) fn of_kind(requirement: &Requirement, kind: KindId) -> Vec<Placed<'_>> {
    placed(requirement).into_iter().filter(|placed| placed.spec.kind == kind).collect()
}
