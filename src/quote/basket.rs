//! A basket: what is bought for each vessel, in how many packs, and what it
//! costs to the coin.

use super::order::Order;
use super::outcome::{Cost, Offer, OrderLine, SupplierOrder};
use super::wide::{self, Changed};
use crate::measure::{Day, Money};
use std::collections::BTreeMap;

/// What is bought.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub(super) struct Basket {
    /// Packs of each item.
    pub(super) packs: BTreeMap<Offer, u32>,
    /// For each vessel.
    pub(super) parts: Vec<Part>,
}

/// What is bought for one vessel.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub(super) struct Part {
    /// Pieces of the items that give tools.
    pub(super) goods: BTreeMap<Offer, u32>,
    /// Changes of tools aboard, and of how many of the lot.
    pub(super) changes: Vec<(Changed, u32)>,
}

impl Part {
    /// Pieces of every item.
    pub(super) fn pieces(&self) -> BTreeMap<Offer, u32> {
        let mut pieces = self.goods.clone();
        for (changed, times) in &self.changes {
            for (offer, count) in &changed.by {
                *pieces.entry(*offer).or_default() += count * times;
            }
        }
        pieces
    }
}

impl Basket {
    /// Pieces of every item that the vessels use together.
    pub(super) fn used(&self) -> BTreeMap<Offer, u32> {
        let mut used = BTreeMap::new();
        for part in &self.parts {
            for (offer, count) in part.pieces() {
                *used.entry(offer).or_default() += count;
            }
        }
        used
    }

    /// The packs that hold the pieces used, and as many as are sold at once.
    pub(super) fn needed(&self, order: &Order<'_>) -> BTreeMap<Offer, u32> {
        let packs = self.used().into_iter().map(|(offer, pieces)| {
            let item = wide::item(order, offer);
            (offer, pieces.div_ceil(item.pack).max(item.least))
        });
        packs.collect()
    }

    /// The orders of all suppliers of whom anything is bought.
    pub(super) fn orders(&self, order: &Order<'_>) -> Vec<SupplierOrder> {
        let used = self.used();
        (0..order.catalogues.len()).filter_map(|index| self.of(order, index, &used)).collect()
    }

    fn of(
        &self,
        order: &Order<'_>,
        catalogue: usize,
        used: &BTreeMap<Offer, u32>,
    ) -> Option<SupplierOrder> {
        let supplier = &order.catalogues[catalogue];
        let bought = self.packs.iter().filter(|(o, packs)| o.catalogue == catalogue && **packs > 0);
        let lines: Vec<OrderLine> = bought
            .map(|(offer, packs)| OrderLine {
                item: offer.item,
                packs: *packs,
                used: used.get(offer).copied().unwrap_or(0),
                sum: supplier.items[offer.item].price.times(u64::from(*packs)),
            })
            .collect();
        let items = || lines.iter().map(|line| &supplier.items[line.item]);
        let arrives: Day = items().map(|item| wide::arrival(order.ordered, item)).max()?;
        let holds = items().filter_map(|item| item.holds).min();
        let goods = lines.iter().map(|line| line.sum).sum();
        let cost = cost(order, catalogue, goods);
        Some(SupplierOrder { catalogue, lines, cost, holds, arrives })
    }
}

/// What goods of that sum cost from the supplier, all told.
fn cost(order: &Order<'_>, catalogue: usize, goods: Money) -> Cost {
    let supplier = &order.catalogues[catalogue];
    let delivery = supplier.delivery.charge_for(goods);
    let taxed = goods.plus(delivery);
    let tax = taxed.tax(supplier.tax, supplier.currency);
    Cost { goods, delivery, tax, total: taxed.plus(tax) }
}

/// All orders together.
pub(super) fn sum(orders: &[SupplierOrder]) -> Cost {
    orders.iter().fold(Cost::default(), |sum, order| Cost {
        goods: sum.goods.plus(order.cost.goods),
        delivery: sum.delivery.plus(order.cost.delivery),
        tax: sum.tax.plus(order.cost.tax),
        total: sum.total.plus(order.cost.total),
    })
}
