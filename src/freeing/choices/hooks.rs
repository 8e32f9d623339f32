//! The vessel's own hooks as a situation speaks of them: by type.
//!
//! Imports `model` and `measure`.

use crate::measure::Answer;
use crate::model::options::OwnHooks;
use crate::model::rule::{Base, Test};
use crate::model::technique::{GivenBy, Practice, Situation};
use crate::model::vessel::{Datum, GearPiece, Vessel};
use crate::model::vocabulary::Vocabulary;

/// The types of hook that the situation speaks of; none where any will do.
pub(super) fn hook_types(practice: &Practice, situation: &Situation) -> Vec<String> {
    let mut types = Vec::new();
    for (fact, words) in &situation.when.0 {
        let of = &practice.facts[*fact].words;
        let typed: Vec<_> = words.iter().filter_map(|word| of[*word].hook_type.clone()).collect();
        // Beside a word without a type any hook may be meant.
        if typed.len() == words.len() {
            types.extend(typed);
        }
    }
    types
}

/// Whether a capability asks for anything that cuts the vessel's own hooks.
pub(super) fn cuts_hooks(practice: &Practice, capability: usize) -> bool {
    let GivenBy::Tools(requirement) = &practice.capabilities[capability].given_by else {
        return false;
    };
    let mut cuts = false;
    let mut see = |test: &Test| {
        let Test::Limit { limit, .. } = test else { return };
        cuts |= !limit.shares_of(Base::HeaviestHook).is_empty();
    };
    requirement.need.specs().for_each(|spec| Test::each(&spec.tests, &mut see));
    cuts
}

/// Lists of hooks that may stand for the vessel's own: those certainly of the
/// types, and with those that may be.
pub(super) type HookLists = (Option<Vec<GearPiece>>, Option<Vec<GearPiece>>);

/// Whether the vessel's own hooks can make a situation with these types
/// arise, and which of them are of the types.
pub(super) fn own_hooks(
    types: &[String],
    vocabulary: &Vocabulary,
    vessel: &Vessel,
) -> (OwnHooks, HookLists) {
    let Some(hooks) = &vessel.hooks else {
        let state = if types.is_empty() { OwnHooks::Arises } else { OwnHooks::NotSaid };
        return (state, (None, None));
    };
    if types.is_empty() {
        return (OwnHooks::Arises, (Some(hooks.clone()), None));
    }
    let (mut sure, mut maybe, mut doubtful) = (Vec::new(), Vec::new(), false);
    for piece in hooks {
        let is = is_of(piece, types, vocabulary);
        if is == Answer::Yes {
            sure.push(piece.clone());
        }
        if is != Answer::No {
            maybe.push(piece.clone());
            doubtful |= is == Answer::Unknown;
        }
    }
    let coverage = &vessel.coverage;
    let whole = vocabulary.find_kind("hook").is_some_and(|kind| coverage.is_whole(kind));
    let state = match (sure.is_empty(), doubtful || !whole) {
        (false, _) => OwnHooks::Arises,
        (true, true) => OwnHooks::NotSaid,
        (true, false) => return (OwnHooks::NoneAboard, (None, None)),
    };
    (state, (Some(sure), doubtful.then_some(maybe)))
}

/// Whether a piece of gear is a hook of one of the types.
fn is_of(piece: &GearPiece, types: &[String], vocabulary: &Vocabulary) -> Answer {
    let Some(attribute) = vocabulary.find_attribute("type") else { return Answer::Unknown };
    Answer::consensus(piece.tool.counted(attribute).map(|reading| match &reading.datum {
        Datum::Word(word) => {
            Answer::from(types.iter().any(|of_type| of_type.eq_ignore_ascii_case(word)))
        }
        _ => Answer::Unknown,
    }))
}
