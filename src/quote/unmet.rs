//! What an order leaves open, with the offer that comes nearest and all that
//! keeps it from serving.

use super::needs;
use super::order::{OneVessel, Order};
use super::outcome::{Cured, Hindrance, Nearest, Offer, Unmet};
use super::wide::{self, Origin, Wide};
use crate::engine::{Depth, demand};
use crate::measure::Day;
use crate::model::catalogue::{Gives, Item};
use crate::model::reason::Reason;
use crate::model::vessel::Vessel;
use std::collections::BTreeSet;

/// Everything that is offered, to be had or not.
pub(super) fn everything(order: &Order<'_>) -> Vec<Offer> {
    let of = |catalogue: usize| {
        (0..order.catalogues[catalogue].items.len()).map(move |item| Offer { catalogue, item })
    };
    (0..order.catalogues.len()).flat_map(of).collect()
}

/// Why the item cannot be had for a departure on that day.
pub(super) fn hindrances(ordered: Day, departure: Day, item: &Item) -> Vec<Hindrance> {
    let mut all = Vec::new();
    if let Some(packs) = item.stock.filter(|stock| *stock < item.least.max(1)) {
        all.push(Hindrance::OutOfStock { packs });
    }
    let arrives = wide::arrival(ordered, item);
    if arrives > departure {
        let days = u32::try_from(arrives.days_since(departure)).unwrap_or(u32::MAX);
        all.push(Hindrance::Late { arrives, days });
    }
    if let Some(held) = item.holds.filter(|held| *held < ordered) {
        all.push(Hindrance::PriceLapsed { held });
    }
    all
}

/// Each open finding with the offer that comes nearest.
pub(super) fn unmet(
    order: &Order<'_>,
    one: &OneVessel,
    after: &Vessel,
    open: &BTreeSet<Cured>,
) -> Vec<Unmet> {
    if open.is_empty() {
        return Vec::new();
    }
    let terms = needs::terms(order, one, Depth::Findings);
    let wide = Wide::new(order, one, after, &everything(order), |_, _| true);
    let offered = wide.origins.iter().enumerate().filter_map(|(tool, origin)| match origin {
        Origin::Bought { offer, .. } => Some((tool, *offer)),
        Origin::Changed(changed) => match changed.by.as_slice() {
            // Work that leaves a tool as short as it was comes near nothing.
            [(offer, _)] if is_extension(order, *offer) => Some((tool, *offer)),
            _ => None,
        },
        Origin::Own(_) => None,
    });
    let offered: Vec<(usize, Offer)> = offered.collect();
    let tools: Vec<usize> = offered.iter().map(|(tool, _)| *tool).collect();
    let of = |finding: &Cured| {
        let (judgement, requirement) = (finding.judgement, finding.requirement);
        let found = demand::shortcomings(&terms, &wide.vessel, judgement, requirement, &tools);
        let nearest = offered.iter().zip(found).filter_map(|((_, offer), lacks)| {
            let item = wide::item(order, *offer);
            let mut hindrances = hindrances(order.ordered, one.departure, item);
            let lacks = lacks?;
            if lacks.is_empty() && hindrances.is_empty() {
                // It would do by itself, but there are too few of it; or it
                // is something else that stands in the way.
                let few = item.stock.map(|packs| Hindrance::OutOfStock { packs });
                hindrances.extend(few);
            }
            Some((item.price, Nearest { offer: *offer, lacks, hindrances }))
        });
        let rank = |near: &Nearest| {
            let short = near.lacks.iter().map(short_of).fold(0, i64::saturating_add);
            (near.lacks.len() + near.hindrances.len(), short)
        };
        let nearest = nearest.min_by_key(|(price, near)| (rank(near), *price));
        Unmet { finding: *finding, nearest: nearest.map(|(_, nearest)| nearest) }
    };
    open.iter().map(of).collect()
}

fn is_extension(order: &Order<'_>, offer: Offer) -> bool {
    matches!(wide::item(order, offer).gives, Gives::Extension { .. })
}

/// By how much a limit is failed, to tell a near miss from a far one.
fn short_of(reason: &Reason) -> i64 {
    match reason {
        Reason::TooShortForRail { short, .. } => short.nanometres(),
        Reason::OutOfSpecification { by: Some(by), .. } => by.steps(),
        _ => 0,
    }
}
