//! What a technique asks of a tool at the least: that it reaches the water at
//! all, and cuts what a hook hangs on. The published length has room beyond
//! that; a tool without it is short, and still a tool.
//!
//! Imports `model` and `measure`.

use crate::measure::Percent;
use crate::model::profile::Profile;
use crate::model::rule::{Base, Bound, Limit, Need, Test};

/// The profile asked of tools that are short; none where it asks the same.
pub(super) fn asked(profile: &Profile) -> Option<Profile> {
    let mut short = profile.clone();
    let mut asks_less = false;
    for requirement in &mut short.requirements {
        let Need::Tools { types, .. } = &mut requirement.need else { continue };
        let members = types.iter_mut().flat_map(|of_type| &mut of_type.members);
        for spec in members.flat_map(|member| &mut member.choices) {
            spec.tests.iter_mut().for_each(|test| asks_less |= lessen(test));
        }
    }
    asks_less.then_some(short)
}

/// Asks less by a test, if it can be less; tells whether it could.
fn lessen(test: &mut Test) -> bool {
    match test {
        Test::Limit { limit, .. } => match less(limit) {
            Some(least) => {
                *limit = least;
                true
            }
            None => false,
        },
        Test::AnyOf(groups) | Test::Readings(groups) => {
            let tests = groups.iter_mut().flatten();
            tests.fold(false, |less, test| lessen(test) | less)
        }
        Test::Feature { .. } | Test::Choice { .. } | Test::AcquiredBefore(_) => false,
    }
}

/// A reach longer than the freeboard itself; the leader for every line.
fn less(asked: &Limit) -> Option<Limit> {
    if !matches!(asked, Limit::AtLeast(_)) {
        return None;
    }
    if asked.is_reach() {
        return Some(Limit::MoreThan(Bound::Share(Percent::ONE_HUNDRED, Base::Freeboard)));
    }
    let leader = || Limit::AtLeast(Bound::Share(Percent::ONE_HUNDRED, Base::ThickestLeader));
    (!asked.shares_of(Base::ThickestLine).is_empty()).then(leader)
}
