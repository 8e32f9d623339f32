//! Why this basket: what doing without its dearest item would cost, which
//! requirement costs most, and what measuring could save.

use super::order::Order;
use super::outcome::{Costliest, Cured, Dearest, Explained, Measuring, Offer, VesselQuote};
use super::search::{OfVessel, Search, Solved};
use super::wide::Origin;
use crate::measure::Money;
use crate::model::check::Check;
use crate::model::rule::Need;
use std::collections::{BTreeMap, BTreeSet};
use std::time::Instant;

/// What the questions are asked of.
#[derive(Debug, Clone, Copy)]
pub(super) struct Why<'a> {
    pub(super) order: &'a Order<'a>,
    pub(super) before: &'a [Check],
    pub(super) solved: &'a Solved,
    /// What the basket costs.
    pub(super) total: Money,
    /// When to stop.
    pub(super) deadline: Instant,
}

/// The most tools that are left out of the list one by one, to see whether
/// measuring them matters.
const MOST_TRIED: usize = 4;

impl Why<'_> {
    fn search<'s>(
        &'s self,
        barred: &'s BTreeSet<Offer>,
        believed: &'s BTreeSet<(usize, usize)>,
    ) -> Search<'s> {
        Search {
            order: self.order,
            needs: &self.solved.needs,
            barred,
            believed,
            deadline: self.deadline,
        }
    }

    /// What measuring the tools aboard of which a fact is missing could save.
    pub(super) fn measuring(&self) -> Option<Measuring> {
        let mut tools = self.open_tools();
        if tools.is_empty() || self.total == Money::ZERO {
            return None;
        }
        let total = |believed: &BTreeSet<(usize, usize)>| {
            let search = self.search(&self.solved.barred, believed);
            search.meeting(&self.solved.cheapest.open).map(|found| found.total)
        };
        let least = total(&tools).filter(|least| *least < self.total)?;
        if tools.len() <= MOST_TRIED {
            for tool in tools.clone() {
                let mut fewer = tools.clone();
                fewer.remove(&tool);
                if total(&fewer).is_some_and(|total| total <= least) {
                    tools = fewer;
                }
            }
        }
        let saves = self.total.less(least);
        Some(Measuring { tools: tools.into_iter().collect(), total: least, saves })
    }

    /// Tools aboard that might serve if a missing fact turned out well.
    fn open_tools(&self) -> BTreeSet<(usize, usize)> {
        let mut tools = BTreeSet::new();
        for (vessel, needs) in self.solved.needs.iter().enumerate() {
            for branch in &needs.branches {
                let points = branch.demands.iter().flat_map(|demands| &demands.points);
                let places = points
                    .flat_map(|point| point.by_requirement.iter().flatten())
                    .flat_map(|demand| demand.types.iter().flatten());
                for tool in places.flat_map(|place| &place.open) {
                    if let Origin::Own(own) = branch.wide.origins[*tool] {
                        tools.insert((vessel, own));
                    }
                }
            }
        }
        tools
    }

    /// Why this basket.
    pub(super) fn explained(&self, vessels: &[VesselQuote]) -> Explained {
        Explained { dearest: self.dearest(), costliest: self.costliest(vessels) }
    }

    fn dearest(&self) -> Option<Dearest> {
        let orders = self.solved.cheapest.basket.orders(self.order);
        let lines = orders.iter().flat_map(|order| {
            order.lines.iter().map(|line| {
                let offer = Offer { catalogue: order.catalogue, item: line.item };
                (line.sum, offer)
            })
        });
        let (price, offer) = lines.max_by_key(|(sum, offer)| (*sum, std::cmp::Reverse(*offer)))?;
        let mut barred = self.solved.barred.clone();
        barred.insert(offer);
        let found = self.search(&barred, &BTreeSet::new()).meeting(&self.solved.cheapest.open);
        // That none was found in time says nothing.
        let late = found.is_none() && Instant::now() >= self.deadline;
        let without = found.map(|found| found.total);
        (!late).then_some(Dearest { offer, price, without })
    }

    /// The requirement without which the order would be cheapest, whichever
    /// vessels it is asked of.
    fn costliest(&self, vessels: &[VesselQuote]) -> Option<Costliest> {
        let mut cured: BTreeMap<(String, String), BTreeSet<OfVessel>> = BTreeMap::new();
        for (vessel, quote) in vessels.iter().enumerate() {
            for finding in quote.lines.iter().flat_map(|line| &line.cures) {
                let profile = &self.before[vessel].judgements[finding.judgement].profile;
                let requirement = &profile.requirements[finding.requirement];
                let key = (profile.id.clone(), requirement.id.clone());
                cured.entry(key).or_default().insert((vessel, *finding));
            }
        }
        let mut costliest: Option<Costliest> = None;
        for ((profile, requirement), findings) in cured {
            let Some(at) = findings.first().copied() else { continue };
            let at: (usize, Cured) = at;
            let spares = findings.iter().flat_map(|finding| self.spares_for(*finding));
            let with_spares: BTreeSet<OfVessel> = findings.iter().copied().chain(spares).collect();
            let open = self.solved.cheapest.open.union(&with_spares).copied().collect();
            let search = self.search(&self.solved.barred, &EMPTY);
            let Some(found) = search.meeting(&open) else { continue };
            let costs = self.total.less(found.total);
            if costliest.as_ref().is_none_or(|so_far| costs > so_far.costs) {
                let without = found.total;
                costliest = Some(Costliest { profile, requirement, at, without, costs });
            }
        }
        costliest
    }
}

impl Why<'_> {
    /// The findings about spares for the tool of this one: whoever asks for
    /// no tool asks for no spares.
    fn spares_for(&self, (vessel, finding): OfVessel) -> Vec<OfVessel> {
        let profile = &self.before[vessel].judgements[finding.judgement].profile;
        let served = Some(finding.requirement);
        let spares = profile.requirements.iter().enumerate().filter(|(_, requirement)| {
            matches!(&requirement.need, Need::Tools { spare_for, .. } if *spare_for == served)
        });
        spares.map(|(requirement, _)| (vessel, Cured { requirement, ..finding })).collect()
    }
}

static EMPTY: BTreeSet<(usize, usize)> = BTreeSet::new();
