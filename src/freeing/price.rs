//! The cheapest item of a catalogue that lifts as much as the single step that
//! lifts most: something brought aboard, a piece that lengthens a tool, or
//! work on one.
//!
//! Whether it arrives in time is not asked, since no day of an order is known;
//! the quote asks it.

use super::better::{Lifted, lifted};
use super::terms::Terms;
use crate::engine::supply;
use crate::measure::{Day, Money};
use crate::model::catalogue::{Catalogue, Gives, Item};
use crate::model::options::Outlook;
use crate::model::vessel::{Tool, Vessel, Whereabouts};
use crate::model::vocabulary::{KindId, Vocabulary};

/// Something in a catalogue that lifts as much.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Priced {
    /// The catalogue, by index.
    pub catalogue: usize,
    /// The item, by index.
    pub item: usize,
    /// How many packs of it; at least the fewest that are sold.
    pub packs: u32,
    /// What they cost, without delivery and tax.
    pub price: Money,
}

/// An offer and the vessel with it aboard.
struct Offer {
    priced: Priced,
    vessel: Vessel,
}

/// The cheapest offer that lifts at least the same situations as far.
pub(super) fn price(
    terms: &Terms<'_>,
    vessel: &Vessel,
    days: (Day, Day),
    outlook: &Outlook,
    wanted: &[Lifted],
) -> Option<Priced> {
    let mut offers: Vec<Offer> = Vec::new();
    for (catalogue, of) in terms.catalogues.iter().enumerate() {
        for (item, sold) in of.items.iter().enumerate() {
            for (packs, vessel) in aboard(terms.vocabulary, vessel, of, sold, days.0) {
                let price = sold.price.times(u64::from(packs));
                let priced = Priced { catalogue, item, packs, price };
                offers.push(Offer { priced, vessel });
            }
        }
    }
    offers.sort_by_key(|Offer { priced, .. }| (priced.price, priced.catalogue, priced.item));
    let does = |offer: &Offer| {
        let lifted = lifted(terms, (vessel, &offer.vessel), days, outlook);
        wanted.iter().all(|want| {
            lifted
                .iter()
                .any(|l| (l.along, l.situation) == (want.along, want.situation) && l.to <= want.to)
        })
    };
    offers.into_iter().find(does).map(|offer| offer.priced)
}

/// The packs of the item that are bought, with the vessel as it is then; one
/// for each tool that a piece or work could be for.
fn aboard(
    vocabulary: &Vocabulary,
    vessel: &Vessel,
    catalogue: &Catalogue,
    item: &Item,
    day: Day,
) -> Vec<(u32, Vessel)> {
    let sold = |packs: &u32| item.stock.is_none_or(|stock| *packs <= stock);
    let change = |tool: usize, change: &dyn Fn(&mut Tool)| {
        let mut vessel = vessel.clone();
        change(&mut vessel.kit[tool]);
        vessel
    };
    let all = match &item.gives {
        Gives::Tools(_) => vec![(item.least, with(vessel, catalogue, item, day))],
        Gives::Extension { kinds, by, per_tool } => tools_of(vessel, kinds)
            .flat_map(|tool| (1..=*per_tool).map(move |pieces| (tool, pieces)))
            .map(|(tool, pieces)| {
                let all = pieces.saturating_mul(vessel.kit[tool].count);
                let packs = all.div_ceil(item.pack.max(1)).max(item.least);
                let on = |one: &mut Tool| supply::lengthen(one, (*by, pieces), day, vocabulary);
                (packs, change(tool, &on))
            })
            .collect(),
        Gives::Service { kinds, mends: true, .. } => tools_of(vessel, kinds)
            .map(|tool| (item.least, change(tool, &|one| supply::mend(one, day, vocabulary))))
            .collect(),
        Gives::Service { .. } => Vec::new(),
    };
    all.into_iter().filter(|(packs, _)| sold(packs)).collect()
}

/// The tools of these kinds that are aboard, by index.
fn tools_of<'v>(vessel: &'v Vessel, kinds: &'v [KindId]) -> impl Iterator<Item = usize> + 'v {
    let kit = vessel.kit.iter().enumerate();
    let fit = kit
        .filter(|(_, tool)| tool.whereabouts == Whereabouts::Aboard && kinds.contains(&tool.kind));
    fit.map(|(index, _)| index)
}

/// The vessel with the smallest order of the item aboard on the day.
fn with(vessel: &Vessel, catalogue: &Catalogue, item: &Item, day: Day) -> Vessel {
    let mut vessel = vessel.clone();
    let Gives::Tools(given) = &item.gives else { return vessel };
    for given in given {
        let mut tool = supply::delivered(given, &catalogue.supplier, day, day);
        tool.count = tool.count.saturating_mul(item.least.saturating_mul(item.pack));
        vessel.kit.push(tool);
    }
    vessel
}
