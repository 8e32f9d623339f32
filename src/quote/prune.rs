//! Leaves out, vessel by vessel, items that another of the same supplier
//! undercuts, so that a large catalogue costs little more to search than a
//! small one.

use super::case::Case;
use super::cluster::Cluster;
use super::outcome::Offer;
use super::wide::{self, Changed, Origin};
use crate::measure::Money;
use crate::model::catalogue::Gives;
use std::collections::{BTreeMap, BTreeSet};

/// The items that take part for each vessel, and how many tools of each item
/// could be of use to all vessels together.
pub(super) fn kept(
    case: &Case<'_>,
    clusters: &[Vec<Vec<Cluster>>],
) -> (Vec<BTreeSet<Offer>>, BTreeMap<Offer, u32>) {
    let demand = demand(clusters);
    let of = |vessel: usize| {
        let mut kept: BTreeSet<Offer> = BTreeSet::new();
        for branch in case.branches(vessel, &case.needs[vessel]) {
            for origin in &branch.wide.origins {
                match origin {
                    Origin::Own(_) => {}
                    Origin::Changed(changed) => kept.extend(changed.by.iter().map(|(o, _)| *o)),
                    Origin::Bought { offer, .. } => drop(kept.insert(*offer)),
                }
            }
        }
        kept.retain(|offer| !case.barred.contains(offer));
        // On what comes aboard it may depend what else is wanted.
        if let ([clusters], true) = (clusters[vessel].as_slice(), case.pruned) {
            let beaten = beaten(case, clusters, &kept, &demand);
            kept.retain(|offer| !beaten.contains(offer));
        }
        kept
    };
    ((0..case.needs.len()).map(of).collect(), demand)
}

fn demand(clusters: &[Vec<Vec<Cluster>>]) -> BTreeMap<Offer, u32> {
    let mut demand: BTreeMap<Offer, u32> = BTreeMap::new();
    for cluster in clusters.iter().flatten().flatten() {
        let mut most: BTreeMap<Offer, u32> = BTreeMap::new();
        for point in &cluster.smalls {
            let mut here: BTreeMap<Offer, u32> = BTreeMap::new();
            for (class, tools) in point.classes.iter().enumerate() {
                let wanted = point.wanted(class);
                for tool in tools {
                    match &cluster.origins[*tool] {
                        Origin::Own(_) => {}
                        Origin::Bought { offer, .. } => {
                            *here.entry(*offer).or_default() += wanted;
                        }
                        Origin::Changed(changed) => {
                            for (offer, count) in &changed.by {
                                *here.entry(*offer).or_default() += wanted * count;
                            }
                        }
                    }
                }
            }
            for (offer, wanted) in here {
                let most = most.entry(offer).or_default();
                *most = wanted.max(*most);
            }
        }
        most.into_iter().for_each(|(offer, wanted)| *demand.entry(offer).or_default() += wanted);
    }
    demand
}

/// Somewhere that a tool can serve, or what else speaks of it there: cluster,
/// point, requirement, and the place in it.
type Spot = [usize; 6];

/// Where the tool of an item can serve on one vessel, in order.
#[derive(Debug, Default)]
struct Standing {
    spots: Vec<Spot>,
    count: u32,
    /// Whether it is more than one tool, or spares that fit certain tools.
    special: bool,
}

/// Items that serve nowhere, or wherever they serve another of the supplier
/// does too, of which there is plenty for no more money.
fn beaten(
    case: &Case<'_>,
    clusters: &[Cluster],
    kept: &BTreeSet<Offer>,
    demand: &BTreeMap<Offer, u32>,
) -> BTreeSet<Offer> {
    let standings = standings(clusters);
    let mut at: BTreeMap<Spot, Vec<Offer>> = BTreeMap::new();
    for (offer, standing) in &standings {
        if kept.contains(offer) && !standing.special && is_plenty(case, *offer, demand) {
            standing.spots.iter().for_each(|spot| at.entry(*spot).or_default().push(*offer));
        }
    }
    let is_beaten = |offer: &&Offer| {
        let Some(standing) = standings.get(offer) else {
            return matches!(wide::item(case.order, **offer).gives, Gives::Tools(_));
        };
        let Some(first) = standing.spots.first().filter(|_| !standing.special) else {
            return false;
        };
        let others = at.get(first).into_iter().flatten();
        others.filter(|other| *other != *offer).any(|other| {
            standings[other].count >= standing.count
                && undercuts(case, *other, **offer, &standings)
                && holds_all(&standings[other].spots, &standing.spots)
        })
    };
    kept.iter().filter(is_beaten).copied().collect()
}

/// Whether there is as much of it as anybody could want, sold singly.
fn is_plenty(case: &Case<'_>, offer: Offer, demand: &BTreeMap<Offer, u32>) -> bool {
    let wanted = demand.get(&offer).copied().unwrap_or(0);
    is_single(case, offer) && case.stock(offer).is_none_or(|stock| stock >= wanted)
}

/// Whether an item is sold singly: what is left of a pack, or of a least
/// order, costs nothing, so that no price by the piece is its price.
fn is_single(case: &Case<'_>, offer: Offer) -> bool {
    let item = wide::item(case.order, offer);
    item.pack == 1 && item.least == 1
}

/// Whether the one costs less than the other, which is sold singly; of equals
/// the one that serves in more places, then the first.
fn undercuts(
    case: &Case<'_>,
    one: Offer,
    other: Offer,
    standings: &BTreeMap<Offer, Standing>,
) -> bool {
    let price = |offer: Offer| wide::item(case.order, offer).price;
    let rank = |offer: Offer| {
        let standing = &standings[&offer];
        (std::cmp::Reverse((standing.spots.len(), standing.count)), offer)
    };
    one.catalogue == other.catalogue
        && is_single(case, other)
        && (price(one), rank(one)) < (price(other), rank(other))
}

/// Whether one sorted list holds all of another.
fn holds_all(wide: &[Spot], narrow: &[Spot]) -> bool {
    let mut rest = wide.iter();
    narrow.iter().all(|spot| rest.by_ref().any(|other| other == spot))
}

fn standings(clusters: &[Cluster]) -> BTreeMap<Offer, Standing> {
    let mut standings: BTreeMap<Offer, Standing> = BTreeMap::new();
    for (number, cluster) in clusters.iter().enumerate() {
        each_spot(number, cluster, |tool, spot| {
            if let Some(Origin::Bought { offer, part, count }) = cluster.origins.get(tool) {
                let standing = standings.entry(*offer).or_default();
                standing.special |= *part > 0 || spot.is_none();
                standing.count = *count;
                standing.spots.extend(spot);
            }
        });
    }
    standings.values_mut().for_each(|standing| standing.spots.sort_unstable());
    standings
}

/// Calls `note` with every tool and spot of the cluster; without a spot for
/// spares that fit certain tools.
fn each_spot(number: usize, cluster: &Cluster, mut note: impl FnMut(usize, Option<Spot>)) {
    for (at, point) in cluster.points.iter().enumerate() {
        for (finding, demand) in point.findings() {
            let here = [number, at, finding.requirement];
            let spot = |sort, a, b| Some([here[0], here[1], here[2], sort, a, b]);
            for (of_type, places) in demand.types.iter().enumerate() {
                for (of_place, place) in places.iter().enumerate() {
                    place.tools.iter().for_each(|t| note(*t, spot(0, of_type, of_place)));
                }
            }
            for (from, lent) in demand.lent.iter().enumerate() {
                lent.tools.iter().flatten().for_each(|t| note(*t, spot(1, from, 0)));
            }
            for (spare, fits) in demand.spares.iter().flat_map(|spares| &spares.fits) {
                fits.iter().flatten().for_each(|t| note(*t, spot(2, *spare, 0)));
                if fits.is_some() {
                    note(*spare, None);
                }
            }
        }
    }
}

/// The changes of tools aboard that let them serve where they do not, with
/// items that take part, and that no other change undercuts.
pub(super) fn changes(
    case: &Case<'_>,
    clusters: &[Cluster],
    kept: &BTreeSet<Offer>,
    demand: &BTreeMap<Offer, u32>,
) -> Vec<Changed> {
    let mut changes = Vec::new();
    for (number, cluster) in clusters.iter().enumerate() {
        let mut spots: Vec<Vec<Spot>> = vec![Vec::new(); cluster.origins.len()];
        each_spot(number, cluster, |tool, spot| spots[tool].extend(spot));
        spots.iter_mut().for_each(|spots| spots.sort_unstable());
        let mut of_tool: BTreeMap<usize, Vec<(&Changed, &[Spot])>> = BTreeMap::new();
        for (tool, origin) in cluster.origins.iter().enumerate() {
            let Origin::Changed(changed) = origin else { continue };
            let own = cluster.origins.iter().position(|o| *o == Origin::Own(changed.tool));
            let before = own.map_or(&[][..], |own| &spots[own]);
            let may = changed.by.iter().all(|(offer, _)| kept.contains(offer));
            if may && !spots[tool].is_empty() && !holds_all(before, &spots[tool]) {
                of_tool.entry(changed.tool).or_default().push((changed, &spots[tool]));
            }
        }
        for all in of_tool.values() {
            let beaten = |at: usize| {
                (0..all.len()).any(|other| {
                    other != at
                        && holds_all(all[other].1, all[at].1)
                        && costs_less(case, (other, all[other].0), (at, all[at].0), demand)
                })
            };
            let best = (0..all.len()).filter(|at| !beaten(*at)).map(|at| all[at].0.clone());
            changes.extend(best);
        }
    }
    changes
}

/// Whether one change of a tool costs less than another that the same
/// supplier makes, of equals the first.
fn costs_less(
    case: &Case<'_>,
    (at, one): (usize, &Changed),
    (place, other): (usize, &Changed),
    demand: &BTreeMap<Offer, u32>,
) -> bool {
    let supplier = one.by.first().map(|(offer, _)| offer.catalogue);
    let same = |(offer, _): &(Offer, u32)| Some(offer.catalogue) == supplier;
    let plenty = |(offer, _): &(Offer, u32)| is_plenty(case, *offer, demand);
    let single = |(offer, _): &(Offer, u32)| is_single(case, *offer);
    let alike = one.by.iter().chain(&other.by).all(same);
    if !alike || !one.by.iter().all(plenty) || !other.by.iter().all(single) {
        return false;
    }
    let price = |changed: &Changed| {
        let prices = changed
            .by
            .iter()
            .map(|(offer, count)| wide::item(case.order, *offer).price.times(u64::from(*count)));
        prices.sum::<Money>()
    };
    (price(one), at) < (price(other), place)
}
