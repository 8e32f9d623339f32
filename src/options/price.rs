//! The cheapest item of a catalogue that lifts as much as the single step that
//! lifts most: something brought aboard, a piece that lengthens a tool, or
//! work on one.
//!
//! Whether it arrives in time is not asked, since no day of an order is known;
//! the quote asks it.

use super::Terms;
use super::better::{Lifted, lifted};
use crate::measure::{Day, Figure, Length, Money, Quantity, Rounding};
use crate::model::catalogue::{Catalogue, Gives, Item};
use crate::model::options::Outlook;
use crate::model::place::Place;
use crate::model::vessel::{Datum, Reading, State, Statement, Tool, Vessel, Whereabouts};
use crate::model::vocabulary::{AttributeId, KindId, Vocabulary};

/// The change of the vocabulary that an extension makes.
const LENGTHENED: &str = "lengthened";

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
                let longer = |one: &mut Tool| lengthen(one, *by, pieces, vocabulary);
                (packs, change(tool, &longer))
            })
            .collect(),
        Gives::Service { kinds, mends: true, .. } => tools_of(vessel, kinds)
            .map(|tool| (item.least, change(tool, &|one| one.state = State::Serviceable)))
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

/// The tool with so many pieces on it, every length that grows with them
/// reckoned from the one before.
fn lengthen(tool: &mut Tool, by: Length, pieces: u32, vocabulary: &Vocabulary) {
    let by = (0..pieces).fold(Length::ZERO, |sum, _| sum.plus(by));
    let grows = vocabulary.changes.get(LENGTHENED).and_then(|grows| grows.as_deref());
    let grows: Vec<AttributeId> = grows.into_iter().flatten().copied().collect();
    for attribute in grows {
        let longer: Vec<Reading> =
            tool.readings(attribute).iter().map(|reading| longer(reading, by)).collect();
        if !longer.is_empty() {
            tool.set(attribute, longer);
        }
    }
}

fn longer(reading: &Reading, by: Length) -> Reading {
    let mut reading = reading.clone();
    if let Datum::Figure(figure) = &reading.datum
        && let Some(length) = figure.length()
    {
        let length = Quantity::Length(length.plus(by));
        reading.datum = Datum::Figure(Figure::reckoned(length, figure.system, Rounding::Down));
    }
    reading
}

/// The vessel with the smallest order of the item aboard on the day.
fn with(vessel: &Vessel, catalogue: &Catalogue, item: &Item, day: Day) -> Vessel {
    let mut vessel = vessel.clone();
    let Gives::Tools(given) = &item.gives else { return vessel };
    for given in given {
        let conforms = given.conforms.iter().map(|to| Statement {
            to: to.clone(),
            on: day,
            by: Some(catalogue.supplier.clone()),
        });
        let mut tool: Tool = given.tool.clone();
        let pieces = item.least.saturating_mul(item.pack);
        tool.count = tool.count.saturating_mul(pieces);
        tool.conforms = conforms.collect();
        tool.inspected = given.inspected.then_some(day);
        tool.expires = given.lasts.map(|lasts| day.through(lasts));
        tool.place = Place::default();
        vessel.kit.push(tool);
    }
    vessel
}
