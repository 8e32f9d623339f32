//! Situations as every page of them orders them: by the first fact that
//! decides, where the animal is, and within that by the second.
//!
//! Imports `freeing`, `model` and the words.

use crate::freeing::Prospect;
use crate::report::subject::OptionsShown as Shown;
use crate::report::words::{figures, pages::capital};

/// Where the animal is, with the situations there.
pub(crate) struct Place<'a> {
    /// What it is called.
    pub(crate) title: String,
    /// Its situations.
    pub(crate) groups: Vec<Group<'a>>,
}

/// Situations that belong together.
pub(crate) struct Group<'a> {
    /// What they have in common; none where a place has only one group.
    pub(crate) title: Option<String>,
    /// Whether they go along with any of the others.
    pub(crate) along: bool,
    /// The answers to the second fact, by index.
    pub(crate) words: Vec<usize>,
    /// The situations.
    pub(crate) cases: Vec<Case<'a>>,
}

/// One situation.
pub(crate) struct Case<'a> {
    /// What the kit answers to it.
    pub(crate) of: Prospect<'a>,
    /// Its title without what its group has in common.
    pub(crate) title: String,
}

/// Situations by what they have in common.
type Sorted<'a, K> = Vec<(K, Vec<Prospect<'a>>)>;

/// The answers that a situation names to a fact.
fn key(of: &Prospect<'_>, fact: usize) -> Vec<usize> {
    of.situation.when.words(fact).unwrap_or_default().to_vec()
}

/// The places, in the order of the file.
pub(crate) fn places<'a>(shown: &Shown<'a>) -> Vec<Place<'a>> {
    let mut found: Sorted<'_, Vec<usize>> = Vec::new();
    for of in shown.prospects() {
        let own = key(&of, 0);
        match found.iter_mut().find(|(known, _)| *known == own) {
            Some((_, all)) => all.push(of),
            None => found.push((own, vec![of])),
        }
    }
    let place = |(words, all): (Vec<usize>, _)| Place {
        title: says(shown, 0, &words).unwrap_or_else(|| shown.practice.title.to_string()),
        groups: groups(shown, all),
    };
    found.into_iter().map(place).collect()
}

/// The groups of a place: by the second fact that decides, and what goes along
/// with any case in a group of its own.
fn groups<'a>(shown: &Shown<'a>, all: Vec<Prospect<'a>>) -> Vec<Group<'a>> {
    let mut found: Sorted<'_, (bool, Vec<usize>)> = Vec::new();
    for of in all {
        let own = (of.along, key(&of, 1));
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
                cases.push(of);
            }
            None => found.push((own, vec![of])),
        }
    }
    let alone = found.iter().filter(|((along, _), _)| !along).count() < 2;
    let group = |((along, words), cases): ((bool, Vec<usize>), Vec<Prospect<'a>>)| {
        let titles: Vec<String> = cases.iter().map(|of| of.situation.title.to_string()).collect();
        let common = common_end(&titles);
        let title = match (along, alone) {
            (true, _) => Some(shown.locale.options_with_any().to_owned()),
            (false, true) => None,
            (false, false) if common.is_empty() => says(shown, 1, &words),
            (false, false) => Some(capital(common.trim_start_matches(", "))),
        };
        let common = if title.is_some() { common } else { String::new() };
        let cut = |title: &String| title.strip_suffix(&common).unwrap_or(title).to_owned();
        let cases = cases.into_iter().zip(titles.iter().map(cut));
        let cases = cases.map(|(of, title)| Case { of, title }).collect();
        Group { title, along, words, cases }
    };
    found.into_iter().map(group).collect()
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
}
