//! The vessel with its part of a basket aboard, and what the engine says of
//! it then.

use super::basket::Part;
use super::needs;
use super::order::{OneVessel, Order};
use super::outcome::{Bought, Cured, Offer};
use super::wide::{self, Changed};
use crate::engine::{Depth, check_own};
use crate::measure::{Currency, Money};
use crate::model::catalogue::{Fits, Gives};
use crate::model::check::Check;
use crate::model::finding::Outcome;
use crate::model::profile::Level;
use crate::model::vessel::{Tool, Vessel};
use std::collections::BTreeSet;

/// A vessel after delivery, and the tools that came of each purchase.
#[derive(Debug, Clone)]
pub(super) struct Delivered {
    pub(super) vessel: Vessel,
    /// For each change, the tool that it made.
    pub(super) changed: Vec<usize>,
    /// For each item of goods, the tools that it gave.
    pub(super) given: Vec<(Offer, Vec<usize>)>,
}

/// Carries out the part on the vessel.
pub(super) fn deliver(order: &Order<'_>, own: &Vessel, part: &Part) -> Delivered {
    let mut vessel = own.clone();
    vessel.kit.clear();
    let mut changed = vec![0; part.changes.len()];
    let mut marks: BTreeSet<String> = own.kit.iter().map(|tool| tool.mark.clone()).collect();
    let mut renamed: Vec<(String, String)> = Vec::new();
    for (index, tool) in own.kit.iter().enumerate() {
        let changes = part.changes.iter().enumerate().filter(|(_, (c, _))| c.tool == index);
        let of_this: Vec<_> = changes.collect();
        let gone: u32 = of_this.iter().map(|(_, (_, times))| *times).sum();
        let mut left = tool.count.saturating_sub(gone);
        if left > 0 {
            vessel.kit.push(Tool { count: left, ..tool.clone() });
        }
        for (at, (change, times)) in of_this {
            let mut new = wide::change(order, own, change);
            new.count = *times;
            // Whoever is the first of the lot keeps its mark.
            new.mark = if left == 0 { tool.mark.clone() } else { free_mark(&tool.mark, &marks) };
            if left > 0 {
                marks.insert(new.mark.clone());
                renamed.push((tool.mark.clone(), new.mark.clone()));
            }
            left += times;
            changed[at] = vessel.kit.len();
            vessel.kit.push(new);
        }
    }
    // Spares that fit the lot fit those of it that were changed.
    for tool in &mut vessel.kit {
        let more = renamed.iter().filter(|(old, _)| tool.fits.contains(old));
        let more: Vec<String> = more.map(|(_, new)| new.clone()).collect();
        tool.fits.extend(more);
    }
    let given = goods(order, part, &mut vessel, &mut marks);
    Delivered { vessel, changed, given }
}

fn goods(
    order: &Order<'_>,
    part: &Part,
    vessel: &mut Vessel,
    marks: &mut BTreeSet<String>,
) -> Vec<(Offer, Vec<usize>)> {
    let mut all = Vec::new();
    let mut spares: Vec<(usize, Offer, Vec<Fits>)> = Vec::new();
    for (offer, pieces) in &part.goods {
        let item = wide::item(order, *offer);
        let Gives::Tools(given) = &item.gives else { continue };
        let mut tools = Vec::new();
        for given in given {
            let mut tool = wide::bought(order, *offer, given, wide::arrival(order.ordered, item));
            tool.count = given.tool.count * pieces;
            if !marks.insert(tool.mark.clone()) {
                tool.mark = free_mark(&tool.mark, marks);
                marks.insert(tool.mark.clone());
            }
            spares.push((vessel.kit.len(), *offer, given.fits.clone()));
            tools.push(vessel.kit.len());
            vessel.kit.push(tool);
        }
        all.push((*offer, tools));
    }
    let item_of =
        |tool: usize| all.iter().find(|(_, tools)| tools.contains(&tool)).map(|(o, _)| *o);
    for (spare, offer, fits) in spares {
        let fitting = (0..vessel.kit.len()).filter(|tool| {
            *tool != spare
                && fits.iter().any(|fits| match fits {
                    Fits::Kind(kind) => vessel.kit[*tool].kind == *kind,
                    Fits::Item(number) => item_of(*tool).is_some_and(|of| {
                        of.catalogue == offer.catalogue && wide::item(order, of).number == *number
                    }),
                })
        });
        let fitting: Vec<String> = fitting.map(|tool| vessel.kit[tool].mark.clone()).collect();
        vessel.kit[spare].fits = fitting;
    }
    all
}

/// A mark like the given one that nothing bears yet.
fn free_mark(mark: &str, taken: &BTreeSet<String>) -> String {
    let mut number = 2_u32;
    loop {
        let free = format!("{mark}/{number}");
        if !taken.contains(&free) {
            return free;
        }
        number += 1;
    }
}

/// What the engine says of the vessel with its part aboard.
pub(super) fn check_after(
    order: &Order<'_>,
    one: &OneVessel,
    own: &Vessel,
    part: &Part,
    depth: Depth,
) -> Check {
    let vessel = deliver(order, own, part).vessel;
    check_own(vessel, &[], &needs::terms(order, one, depth))
}

/// The findings of a check that are not met, of those that are to be.
pub(super) fn open(check: &Check, with_recommended: bool) -> BTreeSet<Cured> {
    let mut all = BTreeSet::new();
    for (index, judgement) in check.judgements.iter().enumerate() {
        for finding in judgement.findings.iter().filter(|f| f.outcome != Outcome::Met) {
            let level = judgement.profile.requirements[finding.requirement].level;
            if level == Level::Required || with_recommended {
                all.insert(Cured { judgement: index, requirement: finding.requirement });
            }
        }
    }
    all
}

/// The part without what serves nothing: as few pieces of everything as
/// leave the same findings open.
pub(super) fn trimmed(order: &Order<'_>, one: &OneVessel, own: &Vessel, part: &Part) -> Part {
    let judged = |part: &Part| {
        let check = check_after(order, one, own, part, Depth::Findings);
        (check.verdict, open(&check, order.with_recommended))
    };
    let wanted = judged(part);
    let mut part = part.clone();
    let offers: Vec<Offer> = part.goods.keys().copied().collect();
    for offer in offers {
        while let Some(count) = part.goods.get(&offer).copied() {
            let mut less = part.clone();
            match count {
                1 => drop(less.goods.remove(&offer)),
                _ => drop(less.goods.insert(offer, count - 1)),
            }
            if judged(&less) != wanted {
                break;
            }
            part = less;
        }
    }
    let mut at = 0;
    while at < part.changes.len() {
        let mut less = part.clone();
        match less.changes[at].1 {
            1 => drop(less.changes.remove(at)),
            _ => less.changes[at].1 -= 1,
        }
        if judged(&less) == wanted {
            part = less;
        } else {
            at += 1;
        }
    }
    part
}

/// The lines of a vessel's part, each with what it cures.
pub(super) fn lines(
    order: &Order<'_>,
    one: &OneVessel,
    own: &Vessel,
    part: &Part,
    after: &Check,
) -> Vec<Bought> {
    let delivered = deliver(order, own, part);
    let with = open(after, order.with_recommended);
    let cures = |less: &Part| {
        let without = check_after(order, one, own, less, Depth::Findings);
        let more = open(&without, order.with_recommended);
        more.difference(&with).copied().collect()
    };
    let line = |offer: Offer, pieces, on, tools, less: &Part| {
        let item = wide::item(order, offer);
        let currency = order.catalogues[offer.catalogue].currency;
        Bought {
            offer,
            pieces,
            on,
            tools,
            cures: cures(less),
            share: share(item.price, item.pack, pieces, currency),
            arrives: wide::arrival(order.ordered, item),
        }
    };
    let mut lines = Vec::new();
    for (offer, tools) in delivered.given {
        let mut less = part.clone();
        let pieces = less.goods.remove(&offer).unwrap_or(0);
        lines.push(line(offer, pieces, None, tools, &less));
    }
    for (at, (changed, times)) in part.changes.iter().enumerate() {
        for (which, (offer, count)) in changed.by.iter().enumerate() {
            let mut less = part.clone();
            let mut by = changed.by.clone();
            by.remove(which);
            match by.is_empty() {
                true => drop(less.changes.remove(at)),
                false => less.changes[at].0 = Changed { tool: changed.tool, by },
            }
            let tools = vec![delivered.changed[at]];
            lines.push(line(*offer, count * times, Some(changed.tool), tools, &less));
        }
    }
    lines.sort_by_key(|line| line.offer);
    lines
}

/// The pieces' share of the price of their packs, to the nearest coin.
fn share(price: Money, pack: u32, pieces: u32, currency: Currency) -> Money {
    let all = price.times(u64::from(pieces)).coins(currency);
    let pack = u64::from(pack.max(1));
    Money::of_coins((2 * all + pack) / (2 * pack), currency)
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;

    #[test]
    fn of_everything_as_much_is_left_as_serves() {
        let sample = Sample::new(
            &["carry: 1 dip net, with: { handle: at least 6 ft }", "carry: 2 tire"],
            &["{ mark: B-1, kind: gaff, handle: 5 ft, count: 2, condition: serviceable }, \
               { mark: N-1, kind: dip net, handle: 5 ft, count: 3, condition: serviceable }"],
            "0",
            &[
                "lengthens: { kinds: [gaff, dip net], by: 1 ft }, price: 10",
                "tool: { kind: tire }, price: 10",
                "tool: { kind: hoist }, price: 10",
            ],
        );
        let offer = |item| Offer { catalogue: 0, item };
        let longer = |tool| Changed { tool, by: vec![(offer(0), 1)] };
        let part = Part {
            goods: [(offer(1), 4), (offer(2), 2)].into(),
            changes: vec![(longer(0), 2), (longer(1), 3)],
        };
        let one = &sample.vessels[0];
        let left = trimmed(&sample.order(), one, &one.vessel, &part);
        let serves = Part { goods: [(offer(1), 2)].into(), changes: vec![(longer(1), 1)] };
        assert_eq!(left, serves);
    }
}
