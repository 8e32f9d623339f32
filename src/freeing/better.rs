//! What stands better once something aboard is changed.
//!
//! Imports `engine`, `model` and `measure`.

use super::terms::Terms;
use crate::measure::Day;
use crate::model::options::{Answered, Outlook, OwnHooks};
use crate::model::vessel::Vessel;
use crate::model::vocabulary::KindId;

/// A situation that stands better.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Lifted {
    /// The situation, by index into its list.
    pub situation: usize,
    /// Whether it is one of those that go along with others.
    pub along: bool,
    /// The best choice open before, by index; none where none was.
    pub from: Option<usize>,
    /// The best choice open then, by index.
    pub to: usize,
}

/// What stands better with the vessel changed.
pub(super) fn lifted(
    terms: &Terms<'_>,
    (vessel, changed): (&Vessel, &Vessel),
    days: (Day, Day),
    before: &Outlook,
) -> Vec<Lifted> {
    let kinds = kinds_changed(vessel, changed);
    let again = (before, kinds.as_slice());
    let after = terms.prepared.outlook_after(terms.vocabulary, changed, days, again);
    let pairs = |along: bool, before: &[Answered], after: &[Answered]| {
        let one = |(situation, (was, is)): (usize, (&Answered, &Answered))| {
            let (from, to) = (was.best(), is.best()?);
            let counts = was.hooks != OwnHooks::NoneAboard;
            let better = was.rank().is_none_or(|rank| is.rank() < Some(rank));
            (counts && better).then_some(Lifted { situation, along, from, to })
        };
        before.iter().zip(after).enumerate().filter_map(one).collect::<Vec<_>>()
    };
    let mut all = pairs(false, &before.situations, &after.situations);
    all.extend(pairs(true, &before.along, &after.along));
    all
}

/// The kinds of tool of which the two kits do not hold the same.
fn kinds_changed(vessel: &Vessel, changed: &Vessel) -> Vec<KindId> {
    let longer = vessel.kit.len().max(changed.kit.len());
    let mut kinds: Vec<KindId> = Vec::new();
    for index in 0..longer {
        let (was, is) = (vessel.kit.get(index), changed.kit.get(index));
        if was != is {
            kinds.extend(was.into_iter().chain(is).map(|tool| tool.kind));
        }
    }
    kinds
}
