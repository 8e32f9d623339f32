//! Leaves out items that another of the same supplier undercuts, so that a
//! large catalogue costs little more to search than a small one.

use super::outcome::Offer;
use super::plan::Case;
use super::scene::Small;
use super::wide::{self, Origin};
use std::collections::{BTreeMap, BTreeSet};

/// By vessel, branch and scene: the classes that a piece serves in, and with
/// how many tools.
type Standing = Vec<(usize, usize, usize, usize, u32)>;

/// The items that take part.
pub(super) fn kept(case: &Case<'_>, scenes: &[Vec<Vec<Small>>]) -> BTreeSet<Offer> {
    let mut goods: BTreeMap<Offer, Standing> = BTreeMap::new();
    let mut others: BTreeSet<Offer> = BTreeSet::new();
    let mut demand: BTreeMap<Offer, u32> = BTreeMap::new();
    for (vessel, needs) in case.needs.iter().enumerate() {
        for (of_branch, branch) in case.branches(vessel, needs).iter().enumerate() {
            for (tool, origin) in branch.wide.origins.iter().enumerate() {
                match origin {
                    Origin::Own(_) => {}
                    // On some kinds it depends what else is wanted.
                    Origin::Bought { offer, .. }
                        if branch.with.iter().any(|kind| branch.brings(tool, *kind)) =>
                    {
                        others.insert(*offer);
                    }
                    Origin::Changed(changed) => {
                        others.extend(changed.by.iter().map(|(offer, _)| *offer));
                    }
                    Origin::Bought { offer, .. } => drop(goods.entry(*offer).or_default()),
                }
            }
            for (of_scene, scene) in scenes[vessel][of_branch].iter().enumerate() {
                for (class, tools) in scene.classes.iter().enumerate() {
                    let wanted = scene.wanted(class);
                    for tool in tools {
                        let Origin::Bought { offer, count, .. } = &branch.wide.origins[*tool]
                        else {
                            continue;
                        };
                        let at = (vessel, of_branch, of_scene, class, *count);
                        goods.entry(*offer).or_default().push(at);
                        *demand.entry(*offer).or_default() += wanted;
                    }
                }
            }
        }
    }
    let mut kept: BTreeSet<Offer> = others;
    if case.pruned {
        kept.extend(best(case, &goods, &demand));
    } else {
        kept.extend(goods.into_keys());
    }
    kept.retain(|offer| !case.barred.contains(offer));
    kept
}

/// Of items with the same standing, those that no other undercuts.
fn best(
    case: &Case<'_>,
    goods: &BTreeMap<Offer, Standing>,
    demand: &BTreeMap<Offer, u32>,
) -> Vec<Offer> {
    let mut equal: BTreeMap<(usize, &Standing), Vec<Offer>> = BTreeMap::new();
    for (offer, standing) in goods {
        if !standing.is_empty() && !case.barred.contains(offer) {
            equal.entry((offer.catalogue, standing)).or_default().push(*offer);
        }
    }
    let undercuts = |one: Offer, other: Offer| {
        let (item, beside) = (wide::item(case.order, one), wide::item(case.order, other));
        let plenty =
            case.stock(one).is_none_or(|stock| stock >= demand.get(&one).copied().unwrap_or(0));
        let as_many = item.price.times(u64::from(beside.pack));
        item.pack == 1
            && item.least == 1
            && plenty
            && (as_many < beside.price || as_many == beside.price && one < other)
    };
    let open = equal.into_values().flat_map(|offers| {
        let beaten = |offer: &Offer| offers.iter().any(|o| o != offer && undercuts(*o, *offer));
        offers.iter().copied().filter(|offer| !beaten(offer)).collect::<Vec<_>>()
    });
    open.collect()
}
