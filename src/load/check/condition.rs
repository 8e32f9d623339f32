//! The lines under `when:`, `unless:` and `with:`: conditions on the vessel
//! and tests of a tool.

use crate::load::check::phrase::{bracketed_length, limit};
use crate::load::form::open::{Group, GroupKeys, Line, When, With};
use crate::load::read::fault::Fault;
use crate::load::read::problem::{Told, nearest, slip_of};
use crate::load::read::spot::{Spot, said};
use crate::measure::Day;
use crate::model::rule::{Condition, Side, Test};
use crate::model::vocabulary::{AttributeId, AttributeShape, Class, KindId, Tags, Vocabulary};

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

/// All the conditions of a group; every one must hold.
pub(crate) fn conditions(
    group: &Group<When>,
    words: &Vocabulary,
    spot: &Spot<'_>,
) -> Vec<Condition> {
    lines(group, spot, |key, line, at| match line {
        Line::Empty => nothing_said(key, spot),
        Line::Groups(groups) => {
            let read = |at: &Spot<'_>, group| conditions(group, words, at);
            Some(Condition::AnyOf(each_group(key, groups, spot, read)))
        }
        Line::Text(text) => condition(key, text, words, at),
    })
}

/// All the tests of a group. Every attribute must belong to one of the
/// kinds.
pub(crate) fn tests(
    group: &Group<With>,
    kinds: &[KindId],
    words: &Vocabulary,
    spot: &Spot<'_>,
) -> Vec<Test> {
    lines(group, spot, |key, line, at| match line {
        Line::Empty => nothing_said(key, spot),
        Line::Groups(groups) => {
            let read = |at: &Spot<'_>, group| tests(group, kinds, words, at);
            let groups = each_group(key, groups, spot, read);
            Some(if key == "any of" { Test::AnyOf(groups) } else { Test::Readings(groups) })
        }
        Line::Text(text) if key == "acquired" => acquired(text, at),
        Line::Text(text) => {
            let attribute = attribute(key, kinds, words, spot)?;
            match said(text) {
                Some(text) => test(attribute, kinds, text, words, at),
                None => nothing_said(key, spot),
            }
        }
    })
}

/// What is made of the lines of a group, each at its spot.
fn lines<K, T>(
    group: &Group<K>,
    spot: &Spot<'_>,
    mut read: impl FnMut(&str, &Line<K>, &Spot<'_>) -> Option<T>,
) -> Vec<T> {
    group.lines.iter().filter_map(|(key, line)| read(key, line, &spot.key(key))).collect()
}

fn each_group<'g, K, T>(
    key: &str,
    groups: &'g [Group<K>],
    spot: &Spot<'_>,
    read: impl Fn(&Spot<'_>, &'g Group<K>) -> Vec<T>,
) -> Vec<Vec<T>> {
    if groups.is_empty() {
        spot.key(key).wrong(Fault::NoGroups).tell();
    }
    spot.each(key, groups, |at, group| {
        if group.lines.is_empty() {
            at.wrong(Fault::EmptyGroup).tell();
        }
        Some(read(at, group))
    })
}

fn nothing_said<T>(key: &str, spot: &Spot<'_>) -> Option<T> {
    spot.wrong_key(key, Fault::NothingSaidOf(key.to_owned())).none()
}

fn condition(key: &str, text: &str, words: &Vocabulary, spot: &Spot<'_>) -> Option<Condition> {
    match key {
        "freeboard" => spot.take(threshold(text, spot)),
        "aboard" | "not aboard" => {
            let kind = spot.kind_of(text, &Class::CARRIED, words)?;
            Some(Condition::Aboard { kind, wanted: key == "aboard" })
        }
        "gear" => tag(text, &words.gears, spot).map(Condition::Gear),
        "area" => tag(text, &words.areas, spot).map(Condition::Area),
        "area other than" => tag(text, &words.areas, spot).map(Condition::AreaOtherThan),
        "permit" => tag(text, &words.permits, spot).map(Condition::Permit),
        "months" => match months(text) {
            Some((first, last)) => Some(Condition::Months(first, last)),
            None => spot.wrong(Fault::NoMonths).of(text).none(),
        },
        other => {
            if let Some(feature) = words.vessel_features.find(other) {
                let wanted = spot.flag_of(text)?;
                return Some(Condition::Feature { feature: feature.to_owned(), wanted });
            }
            let fixed = When::FIXED.iter().chain(When::NESTED).map(|(fixed, _)| *fixed);
            let names = words.vessel_features.keys().map(String::as_str).chain(fixed);
            spot.wrong(Fault::UnknownCondition).at_key().unlike(other, names).none()
        }
    }
}

fn acquired(text: &str, spot: &Spot<'_>) -> Option<Test> {
    let day = text.trim().strip_prefix("before ").and_then(|day| Day::parse(day).ok());
    let found = day.map(Test::AcquiredBefore);
    found.or_else(|| spot.wrong(Fault::NoAcquisitionDay).of(text).none())
}

fn test(
    attribute: AttributeId,
    kinds: &[KindId],
    text: &str,
    words: &Vocabulary,
    spot: &Spot<'_>,
) -> Option<Test> {
    let known = words.attribute(attribute);
    match &known.shape {
        AttributeShape::Quantity(kind) => {
            let limit =
                spot.take(limit(text, *kind, words.unit(kinds.first().copied(), attribute), spot))?;
            Some(Test::Limit { attribute, limit, written: text.to_owned() })
        }
        AttributeShape::Feature => Some(Test::Feature { attribute, wanted: spot.flag_of(text)? }),
        AttributeShape::Choice(choices) => {
            let find = |word: String| {
                known.word(&word).cloned().or_else(|| {
                    spot.wrong(Fault::UnknownChoice(known.id.clone()))
                        .none_of(&word, choices.iter().map(String::as_str))
                        .none()
                })
            };
            let allowed = split_or(text).into_iter().filter_map(find).collect();
            Some(Test::Choice { attribute, allowed })
        }
        AttributeShape::Name => Some(Test::Choice { attribute, allowed: split_or(text) }),
    }
}

/// The attribute of that key, which one of the kinds must have.
fn attribute(
    key: &str,
    kinds: &[KindId],
    words: &Vocabulary,
    spot: &Spot<'_>,
) -> Option<AttributeId> {
    let known = words.find_attribute(key);
    let kinds = kinds.iter().map(|kind| words.kind(*kind));
    if let Some(found) = known
        && kinds.clone().any(|kind| kind.attributes.contains(&found))
    {
        return Some(found);
    }
    let names: Vec<String> = kinds.clone().map(|kind| kind.name.clone()).collect();
    if names.is_empty() {
        return None;
    }
    let own = kinds.flat_map(|kind| kind.attributes.iter());
    let own = own.map(|id| words.attribute(*id).id.as_str());
    let fixed = With::FIXED.iter().chain(With::NESTED).map(|(fixed, _)| *fixed);
    let meant = nearest(key, own.chain(fixed));
    let fault = match known {
        Some(_) => Fault::NoAttributeOfKinds(names),
        None => Fault::UnknownAttribute,
    };
    spot.wrong_key(key, fault).of(key).meant(meant).none()
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
    spot.wrong(Fault::NoThreshold).of(text).refused()
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
pub(crate) fn tag(text: &str, known: &Tags, spot: &Spot<'_>) -> Option<String> {
    let Some(text) = said(text) else { return spot.wrong(Fault::EmptyTag).none() };
    if let Some(id) = known.find(text) {
        return Some(id.to_owned());
    }
    match slip_of(text, known.keys().map(String::as_str)) {
        Some(meant) => spot.wrong(Fault::TagSlip).of(text).meant(Some(meant)).none(),
        None => Some(text.to_owned()),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::load::read::problem::Problems;
    use crate::measure::Length;
    use crate::model::vocabulary::Tag;
    use std::sync::Arc;

    /// 50 CFR 622.29(a)(1)(iii) and (iv): 4 ft (1.2 m) or less, more than
    /// 4 ft (1.2 m).
    #[test]
    fn both_sides_of_a_threshold_are_read() {
        let (file, problems): (Arc<str>, _) = ("a.yaml".into(), Problems::default());
        let top = Spot::top(&file, &problems);
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
        let (file, problems): (Arc<str>, _) = ("a.yaml".into(), Problems::default());
        let top = Spot::top(&file, &problems);
        let name = Tag { name: "bottom longline".into(), ..Tag::default() };
        let known = Tags([("bottom-longline".to_owned(), name)].into());
        assert_eq!(tag("Bottom longline", &known, &top).unwrap(), "bottom-longline");
        assert_eq!(tag("gillnet", &known, &top).unwrap(), "gillnet");
        assert_eq!(problems.count(), 0);
        assert!(tag("botom-longline", &known, &top).is_none());
        assert_eq!(problems.count(), 1);
    }
}
