//! The single tool that would lift most situations: each single step that
//! opens a closed choice is carried out on a copy of the vessel, and everything
//! is judged again.

use super::better::{Lifted, lifted};
use super::price::{self, Priced};
use super::terms::Terms;
use crate::measure::{Answer, Day};
use crate::model::check::Judgement;
use crate::model::finding::{Action, Step, Target};
use crate::model::options::Outlook;
use crate::model::reason::Reason;
use crate::model::vessel::Vessel;
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

impl Lift {
    /// How many situations it lifts to their first choice.
    pub fn to_first(&self) -> usize {
        to_first(&self.lifted)
    }
}

fn to_first(lifted: &[Lifted]) -> usize {
    lifted.iter().filter(|lifted| lifted.to == 0).count()
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
        let first = to_first(&lifted);
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

/// The one step that opens a closed choice, if one does. Measuring is none: it
/// changes nothing aboard; nor is a step that counts on a measurement beside
/// what it mends.
fn single(judgement: &Judgement) -> Option<&Step> {
    match judgement.steps() {
        [step] if step.action != Action::Measure && !counts_on_luck(step) => Some(step),
        _ => None,
    }
}

/// Whether a step on a tool would have a fact turn out well that nobody knows.
fn counts_on_luck(step: &Step) -> bool {
    matches!(step.target, Target::Tool(_)) && step.reasons.iter().any(Reason::is_open)
}
