//! The single tool that would lift most situations: each single step that
//! opens a closed choice is carried out on a copy of the vessel, and everything
//! is judged again.

use super::Terms;
use super::price::{self, Priced};
use crate::measure::{Answer, Day};
use crate::model::check::Judgement;
use crate::model::finding::{Deed, Step, WayToReady};
use crate::model::options::{Answered, Outlook, OwnHooks};
use crate::model::vessel::Vessel;
use crate::model::vocabulary::KindId;
use std::sync::Arc;

/// The single tool that would lift most situations.
#[derive(Debug, Clone)]
pub struct Lift {
    /// The engine's word on the tools of one of the choices that it opens.
    pub judgement: Arc<Judgement>,
    /// The one step that opens it: acquire a tool, or lengthen, mend or bring
    /// back one that there is.
    pub step: Step,
    /// The situations that stand better for it.
    pub lifted: Vec<Lifted>,
    /// The item that does as much and costs least, where catalogues were given
    /// and something in them does.
    pub price: Option<Priced>,
}

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

/// Finds it: most situations lifted, then most of them to their first choice,
/// then the first in the order of the file.
pub(super) fn lift(
    terms: &Terms<'_>,
    vessel: &Vessel,
    days: (Day, Day),
    outlook: &Outlook,
) -> Option<Lift> {
    let mut tried: Vec<&Arc<Judgement>> = Vec::new();
    let mut best: Option<(usize, usize, Lift)> = None;
    for choice in outlook.all().flat_map(|answered| &answered.choices) {
        let Some(judgement) = &choice.tools else { continue };
        let lowered = choice.rails.iter().all(|rail| rail.answer == Answer::Yes);
        if !lowered || tried.iter().any(|known| Arc::ptr_eq(known, judgement)) {
            continue;
        }
        tried.push(judgement);
        let Some(step) = single(judgement) else { continue };
        let changed =
            terms.prepared.performed(terms.vocabulary, vessel, outlook, judgement, days.0);
        let lifted = lifted(terms, (vessel, &changed), days, outlook);
        let first = lifted.iter().filter(|l| l.to == 0).count();
        if lifted.is_empty() || best.as_ref().is_some_and(|b| (b.0, b.1) >= (lifted.len(), first)) {
            continue;
        }
        let (judgement, step) = (Arc::clone(judgement), step.clone());
        best = Some((lifted.len(), first, Lift { judgement, step, lifted, price: None }));
    }
    let mut lift = best?.2;
    lift.price = price::price(terms, vessel, days, outlook, &lift.lifted);
    Some(lift)
}

/// The one step that opens a closed choice, if one does. Measuring is none:
/// it changes nothing aboard.
fn single(judgement: &Judgement) -> Option<&Step> {
    match judgement.inverses.as_ref().map(|inverses| &inverses.way)? {
        WayToReady::Steps { steps, .. } => match steps.as_slice() {
            [step] if step.deed != Deed::Measure => Some(step),
            _ => None,
        },
        _ => None,
    }
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
            (counts && from.is_none_or(|from| to < from)).then_some(Lifted {
                situation,
                along,
                from,
                to,
            })
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
