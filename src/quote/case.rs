//! What a program is to hold: which vessels, findings and items are looked at.

use super::cluster::Cluster;
use super::needs::{Branch, Needs};
use super::order::Order;
use super::outcome::{Cured, Offer};
use super::unmet;
use super::wide;
use crate::model::catalogue::Gives;
use crate::model::profile::Level;
use std::collections::{BTreeMap, BTreeSet};

/// What the program is to hold.
#[derive(Debug, Clone, Copy)]
pub(super) struct Case<'a> {
    /// What was asked.
    pub(super) order: &'a Order<'a>,
    /// What the vessels need.
    pub(super) needs: &'a [Needs],
    /// Findings that are not looked at, by vessel.
    pub(super) waived: &'a BTreeSet<(usize, Cured)>,
    /// Items that may not be bought.
    pub(super) barred: &'a BTreeSet<Offer>,
    /// The only vessel that is looked at, if not all are.
    pub(super) only: Option<usize>,
    /// Packs that are gone already.
    pub(super) taken: &'a BTreeMap<Offer, u32>,
    /// Whether findings may stay open.
    pub(super) soft: bool,
    /// Whether packs may be broken, and delivery and the tax's rounding cost
    /// nothing: what no vessel's share of any order can be below.
    pub(super) relaxed: bool,
    /// Tools aboard, by vessel and index, that are believed although a fact
    /// of them is missing.
    pub(super) believed: &'a BTreeSet<(usize, usize)>,
    /// Whether items that others undercut are left out. Free delivery is
    /// then reached by any sum, which may be too good to be true.
    pub(super) pruned: bool,
}

impl Case<'_> {
    /// The clusters of each branch of the vessel.
    pub(super) fn clusters(&self, vessel: usize) -> Vec<Vec<Cluster>> {
        let takes = |finding, level| self.takes(vessel, finding, level);
        let believed = |tool| self.believed.contains(&(vessel, tool));
        let branches = self.branches(vessel, &self.needs[vessel]);
        let whole = branches.len() > 1;
        branches
            .iter()
            .map(|branch| Cluster::all(branch, &branch.points(takes, believed), whole))
            .collect()
    }

    /// The findings of a cluster that are to be met, not only to lend.
    pub(super) fn asked(&self, cluster: &Cluster) -> BTreeSet<Cured> {
        let asked = |finding: &&Cured| {
            self.order.with_recommended || cluster.level(**finding) == Level::Required
        };
        cluster.findings.iter().filter(asked).copied().collect()
    }

    /// The branches of the vessel, if it is looked at.
    pub(super) fn branches<'n>(&self, vessel: usize, needs: &'n Needs) -> &'n [Branch] {
        if self.only.is_none_or(|only| only == vessel) { &needs.branches } else { &[] }
    }

    /// How many packs of the item there still are.
    pub(super) fn stock(&self, offer: Offer) -> Option<u32> {
        let stock = wide::item(self.order, offer).stock?;
        Some(stock.saturating_sub(self.taken.get(&offer).copied().unwrap_or(0)))
    }

    /// Goods that may be bought for no other reason than that delivery is
    /// free then, if that is cheaper.
    pub(super) fn fillers(&self) -> impl Iterator<Item = Offer> {
        let order = self.order;
        let last = order.vessels.iter().map(|one| one.departure).max();
        unmet::everything(order).into_iter().filter(move |offer| {
            let item = wide::item(order, *offer);
            let in_time =
                last.is_some_and(|last| unmet::hindrances(order.ordered, last, item).is_empty());
            let free = order.catalogues[offer.catalogue].delivery.free_from;
            let goods = matches!(item.gives, Gives::Tools(_));
            free.is_some() && goods && in_time && !self.barred.contains(offer)
        })
    }

    /// Whether the finding is to be met, or might be.
    fn takes(&self, vessel: usize, finding: Cured, level: Level) -> bool {
        (level == Level::Required || self.order.with_recommended)
            && !self.waived.contains(&(vessel, finding))
    }
}
