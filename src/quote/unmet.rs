//! What an order leaves open, with the offer that comes nearest and all that
//! keeps it from serving.

use super::needs;
use super::order::{OneVessel, Order};
use super::outcome::{Cured, Hindrance, Nearest, Offer, Unmet};
use super::wide::{self, Origin, Wide};
use crate::engine::{Depth, wants};
use crate::measure::Day;
use crate::model::catalogue::Item;
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
            [(offer, _)] => Some((tool, *offer)),
            _ => None,
        },
        Origin::Own(_) => None,
    });
    let offered: Vec<(usize, Offer)> = offered.collect();
    let tools: Vec<usize> = offered.iter().map(|(tool, _)| *tool).collect();
    let of = |finding: &Cured| {
        let (judgement, requirement) = (finding.judgement, finding.requirement);
        let found = wants::shortcomings(&terms, &wide.vessel, judgement, requirement, &tools);
        let nearest = offered.iter().zip(found).filter_map(|((_, offer), lacks)| {
            let item = wide::item(order, *offer);
            let mut hindrances = hindrances(order.ordered, one.departure, item);
            let lacks = lacks?;
            if lacks.is_empty() && hindrances.is_empty() {
                // It would do, but there are too few of it.
                let packs = item.stock?;
                hindrances.push(Hindrance::OutOfStock { packs });
            }
            Some((item.price, Nearest { offer: *offer, lacks, hindrances }))
        });
        let count = |near: &Nearest| near.lacks.len() + near.hindrances.len();
        let nearest = nearest.min_by_key(|(price, near)| (count(near), *price));
        Unmet { finding: *finding, nearest: nearest.map(|(_, nearest)| nearest) }
    };
    open.iter().map(of).collect()
}
