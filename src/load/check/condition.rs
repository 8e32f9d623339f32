//! The lines under `when:`, `unless:` and `with:`: conditions on the vessel
//! and tests of a tool.

use crate::load::check::phrase::{bracketed_length, limit};
use crate::load::check::value::{filled, flag, kind, same_word};
use crate::load::form::group::{Group, GroupKeys, Line, When, With};
use crate::load::read::problem::{Problem, Problems, Told};
use crate::load::read::spot::Spot;
use crate::load::read::suggest::{did_you_mean, nearest, or_list, slip_of};
use crate::measure::Day;
use crate::model::rule::{Condition, Side, Test};
use crate::model::vocabulary::{AttributeId, AttributeShape, Class, KindId, Tag, Vocabulary, fold};
use std::collections::BTreeMap;

/// The words of a freeboard threshold: before the figure, or after it.
const SIDES: [(&str, &str, Side); 6] = [
    ("more than ", "", Side::MoreThan),
    ("less than ", "", Side::LessThan),
    ("at most ", "", Side::AtMost),
    ("at least ", "", Side::AtLeast),
    ("", " or less", Side::AtMost),
    ("", " or more", Side::AtLeast),
];

const MONTHS: [&str; 12] = [
    "january",
    "february",
    "march",
    "april",
    "may",
    "june",
    "july",
    "august",
    "september",
    "october",
    "november",
    "december",
];

/// Reads lines against a vocabulary.
pub(crate) struct LineReader<'a> {
    /// The words.
    pub(crate) vocabulary: &'a Vocabulary,
    /// Where problems go.
    pub(crate) problems: &'a mut Problems,
}

impl LineReader<'_> {
    /// All the conditions of a group; every one must hold.
    pub(crate) fn conditions(&mut self, group: &Group<When>, spot: &Spot<'_>) -> Vec<Condition> {
        let mut conditions = Vec::new();
        for (key, line) in &group.lines {
            let spot = spot.key(key);
            match line {
                Line::Empty => self.nothing_said(key, &spot),
                Line::Groups(groups) => {
                    let groups = self.groups(groups, &spot, |reader, group, spot| {
                        reader.conditions(group, spot)
                    });
                    conditions.push(Condition::AnyOf(groups));
                }
                Line::Text(text) => conditions.extend(self.condition(key, text, &spot)),
            }
        }
        conditions
    }

    fn condition(&mut self, key: &str, text: &str, spot: &Spot<'_>) -> Option<Condition> {
        let vocabulary = self.vocabulary;
        match key {
            "freeboard" => match threshold(text, spot) {
                Ok(condition) => Some(condition),
                Err(problem) => {
                    self.problems.add(*problem);
                    None
                }
            },
            "aboard" | "not aboard" => {
                let kind = kind(text, &Class::CARRIED, vocabulary, spot, self.problems)?;
                Some(Condition::Aboard { kind, wanted: key == "aboard" })
            }
            "gear" => tag(text, &vocabulary.gears, spot, self.problems).map(Condition::Gear),
            "area" => tag(text, &vocabulary.areas, spot, self.problems).map(Condition::Area),
            "area other than" => {
                tag(text, &vocabulary.areas, spot, self.problems).map(Condition::AreaOtherThan)
            }
            "permit" => tag(text, &vocabulary.permits, spot, self.problems).map(Condition::Permit),
            "months" => {
                let months = months(text);
                if months.is_none() {
                    self.problems.add(
                        Problem::new(spot.place(), "these are not months")
                            .offending(text)
                            .expected("two months of the year, like `January to June`"),
                    );
                }
                months.map(|(first, last)| Condition::Months(first, last))
            }
            feature => self.vessel_feature(feature, text, spot),
        }
    }

    fn vessel_feature(&mut self, key: &str, text: &str, spot: &Spot<'_>) -> Option<Condition> {
        let known = &self.vocabulary.vessel_features;
        if !known.contains_key(key) {
            let fixed = When::FIXED.iter().chain(When::NESTED).map(|(fixed, _)| *fixed);
            let names = known.keys().map(String::as_str).chain(fixed);
            self.problems.add_at_key(
                Problem::new(spot.place(), "no condition of this name is known")
                    .offending(key)
                    .mend_if(did_you_mean(nearest(key, names))),
            );
            return None;
        }
        let wanted = flag(text, spot, self.problems)?;
        Some(Condition::Feature { feature: key.to_owned(), wanted })
    }

    /// All the tests of a group. Every attribute must belong to one of the
    /// kinds.
    pub(crate) fn tests(
        &mut self,
        group: &Group<With>,
        kinds: &[KindId],
        spot: &Spot<'_>,
    ) -> Vec<Test> {
        let mut tests = Vec::new();
        for (key, line) in &group.lines {
            let spot = spot.key(key);
            match line {
                Line::Empty => self.nothing_said(key, &spot),
                Line::Groups(groups) => {
                    let groups = self.groups(groups, &spot, |reader, group, spot| {
                        reader.tests(group, kinds, spot)
                    });
                    tests.push(match key.as_str() {
                        "any of" => Test::AnyOf(groups),
                        _ => Test::Readings(groups),
                    });
                }
                Line::Text(text) if key == "acquired" => tests.extend(self.acquired(text, &spot)),
                Line::Text(text) => tests.extend(self.test(key, text, kinds, &spot)),
            }
        }
        tests
    }

    fn groups<K, T>(
        &mut self,
        groups: &[Group<K>],
        spot: &Spot<'_>,
        read: impl Fn(&mut Self, &Group<K>, &Spot<'_>) -> Vec<T>,
    ) -> Vec<Vec<T>> {
        if groups.is_empty() {
            self.problems.add(
                Problem::new(spot.place(), "an empty list of groups")
                    .expected("at least one group of lines"),
            );
        }
        let mut out = Vec::new();
        for (index, group) in groups.iter().enumerate() {
            let spot = spot.entry(index);
            if group.lines.is_empty() {
                self.problems.add(Problem::new(spot.place(), "an empty group always holds"));
            }
            out.push(read(self, group, &spot));
        }
        out
    }

    fn nothing_said(&mut self, key: &str, spot: &Spot<'_>) {
        self.problems.add_at_key(
            Problem::new(spot.place(), format!("nothing is said of `{key}`"))
                .mend("write what is asked after the colon, or take the line away"),
        );
    }

    fn acquired(&mut self, text: &str, spot: &Spot<'_>) -> Option<Test> {
        let day = text.trim().strip_prefix("before ").and_then(|day| Day::parse(day).ok());
        if day.is_none() {
            self.problems.add(
                Problem::new(spot.place(), "this is not a day of acquisition")
                    .offending(text)
                    .expected("`before` and a day, like `before 2019-06-01`"),
            );
        }
        day.map(Test::AcquiredBefore)
    }

    fn test(&mut self, key: &str, text: &str, kinds: &[KindId], spot: &Spot<'_>) -> Option<Test> {
        let attribute = self.attribute(key, kinds, spot)?;
        let text = text.trim();
        if text.is_empty() {
            self.nothing_said(key, spot);
            return None;
        }
        match &self.vocabulary.attribute(attribute).shape {
            AttributeShape::Quantity(kind) => match limit(text, *kind, spot) {
                Ok(limit) => Some(Test::Limit { attribute, limit, written: text.to_owned() }),
                Err(problem) => {
                    self.problems.add(*problem);
                    None
                }
            },
            AttributeShape::Feature => {
                let wanted = flag(text, spot, self.problems)?;
                Some(Test::Feature { attribute, wanted })
            }
            AttributeShape::Choice(words) => {
                let mut allowed = Vec::new();
                for word in split_or(text) {
                    if let Some(known) = words.iter().find(|known| same_word(known, &word)) {
                        allowed.push(known.clone());
                        continue;
                    }
                    let names: Vec<&str> = words.iter().map(String::as_str).collect();
                    self.problems.add(
                        Problem::new(spot.place(), format!("`{key}` knows no such word"))
                            .offending(&word)
                            .expected(or_list(&names))
                            .mend_if(did_you_mean(nearest(&word, names.iter().copied()))),
                    );
                }
                Some(Test::Choice { attribute, allowed })
            }
            AttributeShape::Name => Some(Test::Choice { attribute, allowed: split_or(text) }),
        }
    }

    /// The attribute of that key, which one of the kinds must have.
    fn attribute(&mut self, key: &str, kinds: &[KindId], spot: &Spot<'_>) -> Option<AttributeId> {
        let known = self.vocabulary.find_attribute(key);
        let kinds = kinds.iter().map(|kind| self.vocabulary.kind(*kind));
        if let Some(found) = known
            && kinds.clone().any(|kind| kind.attributes.contains(&found))
        {
            return Some(found);
        }
        let names: Vec<&str> = kinds.clone().map(|kind| kind.name.as_str()).collect();
        if names.is_empty() {
            return None;
        }
        let own = kinds.flat_map(|kind| kind.attributes.iter());
        let own = own.map(|id| self.vocabulary.attribute(*id).id.as_str());
        let fixed = With::FIXED.iter().chain(With::NESTED).map(|(fixed, _)| *fixed);
        let meant = nearest(key, own.chain(fixed));
        let what = match known {
            Some(_) => format!("{} has no such attribute in the vocabulary", or_list(&names)),
            None => "no attribute of this id is known".to_owned(),
        };
        self.problems.add_at_key(
            Problem::new(spot.place(), what).offending(key).mend_if(did_you_mean(meant)),
        );
        None
    }
}

/// Words joined by `or`, in lower case.
fn split_or(text: &str) -> Vec<String> {
    let words = text.split(" or ").flat_map(|part| part.split(", "));
    words.map(|word| word.trim().to_lowercase()).filter(|word| !word.is_empty()).collect()
}

/// A freeboard threshold, like `more than 4 ft (1.2 m)`.
fn threshold(text: &str, spot: &Spot<'_>) -> Told<Condition> {
    let text = text.trim();
    for (before, after, side) in SIDES {
        let inner = text.strip_prefix(before).and_then(|rest| rest.strip_suffix(after));
        let Some(inner) = inner else { continue };
        let figure = bracketed_length(inner, spot)?;
        let Some(threshold) = figure.length() else { continue };
        return Ok(Condition::Freeboard { side, threshold, written: figure.written });
    }
    Problem::new(spot.place(), "this is not a freeboard threshold")
        .offending(text)
        .expected("`more than`, `less than`, `at most` or `at least` and a length")
        .mend("write it like `more than 4 ft` or `4 ft or less`")
        .refused()
}

fn months(text: &str) -> Option<(u8, u8)> {
    let month = |name: &str| {
        let name = name.trim().to_lowercase();
        let found = MONTHS.iter().position(|month| *month == name || month[..3] == name)?;
        u8::try_from(found + 1).ok()
    };
    match text.split_once(" to ") {
        Some((first, last)) => month(first).zip(month(last)),
        None => month(text).map(|only| (only, only)),
    }
}

/// A tag for a permit, gear or an area. A tag that the vocabulary does not
/// have is taken as it is, unless it is so near to a known one that it must
/// be a slip: a slip would silently make a rule bind nobody.
pub(crate) fn tag(
    text: &str,
    known: &BTreeMap<String, Tag>,
    spot: &Spot<'_>,
    problems: &mut Problems,
) -> Option<String> {
    let Some(text) = filled(Some(text)) else {
        problems.add(Problem::new(spot.place(), "an empty tag"));
        return None;
    };
    if known.contains_key(text) {
        return Some(text.to_owned());
    }
    let by_name = fold(text);
    let same = |(id, tag): &(&String, &Tag)| **id == by_name || fold(&tag.name) == by_name;
    if let Some((id, _)) = known.iter().find(same) {
        return Some(id.clone());
    }
    if let Some(meant) = slip_of(text, known.keys().map(String::as_str)) {
        problems.add(
            Problem::new(spot.place(), "this tag is not known, and very near to one that is")
                .offending(text)
                .mend_if(did_you_mean(Some(meant))),
        );
        return None;
    }
    Some(text.to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::Length;
    use std::sync::Arc;

    /// 50 CFR 622.29(a)(1)(iii) and (iv): 4 ft (1.2 m) or less, more than
    /// 4 ft (1.2 m).
    #[test]
    fn both_sides_of_a_threshold_are_read() {
        let file: Arc<str> = "a.yaml".into();
        let top = Spot::top(&file);
        let four = Length::parse("4 ft").unwrap().0;
        let cases = [
            ("more than 4 ft (1.2 m)", Side::MoreThan),
            ("4 ft (1.2 m) or less", Side::AtMost),
            ("at most 4 ft", Side::AtMost),
            ("less than 4 ft", Side::LessThan),
            ("4 ft or more", Side::AtLeast),
            ("at least 4 ft", Side::AtLeast),
        ];
        for (text, wanted) in cases {
            let Condition::Freeboard { side, threshold, written } = threshold(text, &top).unwrap()
            else {
                panic!("{text}")
            };
            assert_eq!((side, threshold, written.as_str()), (wanted, four, "4 ft"), "{text}");
        }
        for text in ["4 ft", "over 4 ft", "4 or less", "", "more than 4 ft or less"] {
            assert!(threshold(text, &top).is_err(), "{text}");
        }
    }

    #[test]
    fn months_may_run_over_the_end_of_the_year() {
        assert_eq!(months("January to June"), Some((1, 6)));
        assert_eq!(months("Nov to feb"), Some((11, 2)));
        assert_eq!(months("May"), Some((5, 5)));
        assert_eq!(months("Juno"), None);
    }

    #[test]
    fn a_tag_near_a_known_one_is_a_slip_and_a_stranger_is_taken() {
        let file: Arc<str> = "a.yaml".into();
        let top = Spot::top(&file);
        let name = Tag { name: "bottom longline".into(), counts_as: Vec::new() };
        let known = BTreeMap::from([("bottom-longline".to_owned(), name)]);
        let mut problems = Problems::default();
        assert_eq!(tag("Bottom longline", &known, &top, &mut problems).unwrap(), "bottom-longline");
        assert_eq!(tag("gillnet", &known, &top, &mut problems).unwrap(), "gillnet");
        assert_eq!(problems.count(), 0);
        assert!(tag("botom-longline", &known, &top, &mut problems).is_none());
        assert_eq!(problems.count(), 1);
    }
}
