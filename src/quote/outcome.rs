//! What a quote says: plain data for every way of printing it.

use crate::measure::{Currency, Day, Money};
use crate::model::catalogue::Item;
use crate::model::check::Check;
use crate::model::finding::Verdict;
use crate::model::reason::Reason;
use std::sync::Arc;

/// An item of a catalogue, by the index of each.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Offer {
    /// The catalogue.
    pub catalogue: usize,
    /// The item in it.
    pub item: usize,
}

/// A quote for one order day, one or several vessels and catalogues.
#[derive(Debug, Clone)]
pub struct Quote {
    /// The day of the order.
    pub ordered: Day,
    /// The currency of every amount.
    pub currency: Currency,
    /// Whether recommended findings were to be met too.
    pub with_recommended: bool,
    /// A part for each vessel, in the order given.
    pub vessels: Vec<VesselQuote>,
    /// What is ordered from each supplier of whom anything is.
    pub orders: Vec<SupplierOrder>,
    /// Everything together.
    pub cost: Cost,
    /// Whether it is proved that nothing cheaper will do.
    pub bound: Bound,
    /// The last day on which every price holds; `None` where none ends or
    /// nothing is ordered.
    pub holds: Option<Day>,
    /// What each supplier alone would cost, where that was asked, in the
    /// order of the catalogues; this quote is then the best of them.
    pub suppliers: Vec<Alone>,
    /// What measuring tools that are aboard could save.
    pub measuring: Option<Measuring>,
    /// Why this basket, where that was asked.
    pub explained: Option<Explained>,
}

impl Quote {
    /// The worst verdict after the order.
    pub fn verdict(&self) -> Verdict {
        let after = self.vessels.iter().map(|vessel| vessel.after.verdict);
        after.max().unwrap_or(Verdict::CannotTell)
    }

    /// How many vessels are ready without the order.
    pub fn ready_before(&self) -> usize {
        self.vessels.iter().filter(|vessel| vessel.before.verdict == Verdict::Ready).count()
    }

    /// How many vessels are ready with it.
    pub fn ready_after(&self) -> usize {
        self.vessels.iter().filter(|vessel| vessel.after.verdict == Verdict::Ready).count()
    }

    /// Whether everything that was asked for is there without an order.
    pub fn needs_nothing(&self) -> bool {
        let ready = self.orders.is_empty() && self.verdict() == Verdict::Ready;
        ready && self.vessels.iter().all(|vessel| vessel.unmet.is_empty())
    }

    /// The day on which the last of everything is delivered.
    pub fn arrives(&self) -> Option<Day> {
        self.orders.iter().map(|order| order.arrives).max()
    }

    /// The least that a cheaper basket could cost, if there may be one.
    pub fn cheaper_from(&self) -> Option<Money> {
        match self.bound {
            Bound::AtLeast(least) if least < self.cost.total => Some(least),
            Bound::AtLeast(_) | Bound::Cheapest => None,
        }
    }

    /// What an item is bought for: each requirement that it meets, once.
    pub fn purposes(&self, offer: Offer) -> Vec<Purpose> {
        let mut all: Vec<(&str, &str, Purpose)> = Vec::new();
        for (index, vessel) in self.vessels.iter().enumerate() {
            let lines = vessel.lines.iter().filter(|bought| bought.offer == offer);
            for cured in lines.flat_map(|bought| &bought.cures) {
                let profile = &vessel.after.judgements[cured.judgement].profile;
                let (rules, id) = (&profile.id, &profile.requirements[cured.requirement].id);
                match all.iter_mut().find(|(of, known, _)| of == rules && known == id) {
                    Some((_, _, purpose)) if purpose.on.contains(&index) => {}
                    Some((_, _, purpose)) => purpose.on.push(index),
                    None => all.push((rules, id, Purpose { finding: *cured, on: vec![index] })),
                }
            }
        }
        all.into_iter().map(|(_, _, purpose)| purpose).collect()
    }
}

/// A requirement that an item of the order meets.
#[derive(Debug, Clone)]
pub struct Purpose {
    /// The finding, on the first of the vessels.
    pub finding: Cured,
    /// The vessels on which it is met, by index; one at least.
    pub on: Vec<usize>,
}

/// What one supplier alone would cost.
#[derive(Debug, Clone)]
pub struct Alone {
    /// The catalogue.
    pub catalogue: usize,
    /// How many vessels are ready after the order.
    pub ready: usize,
    /// How many required findings stay open on all of them together.
    pub open: usize,
    /// What it costs.
    pub cost: Cost,
    /// Whether it is the one that this quote takes.
    pub taken: bool,
}

/// Goods, delivery, tax and their sum.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Cost {
    /// The goods, before tax.
    pub goods: Money,
    /// Delivery, before tax.
    pub delivery: Money,
    /// Tax on both, rounded once for each supplier.
    pub tax: Money,
    /// All of it.
    pub total: Money,
}

/// How good the basket is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Bound {
    /// Nothing cheaper will do.
    #[default]
    Cheapest,
    /// The search was stopped: nothing below this total will do.
    AtLeast(Money),
}

impl Bound {
    /// The stronger of two.
    pub(super) fn better(self, other: Self) -> Self {
        match (self, other) {
            (Self::AtLeast(one), Self::AtLeast(other)) => Self::AtLeast(one.max(other)),
            _ => Self::Cheapest,
        }
    }
}

/// One vessel's part of the quote.
#[derive(Debug, Clone)]
pub struct VesselQuote {
    /// The vessel's file, as it was named.
    pub file: Arc<str>,
    /// The check of the kit as it is, inspection records laid over.
    pub before: Check,
    /// The check of the kit with everything that is bought for it, by the
    /// same engine. Its kit lists the old tools first, in their order (a lot
    /// of which only some were lengthened or mended is split), then the new.
    pub after: Check,
    /// What is bought for it, by catalogue and item.
    pub lines: Vec<Bought>,
    /// Required findings (and recommended ones where these were asked for)
    /// that the order leaves open.
    pub unmet: Vec<Unmet>,
}

/// Something bought for one vessel.
#[derive(Debug, Clone)]
pub struct Bought {
    /// The item.
    pub offer: Offer,
    /// How many pieces.
    pub pieces: u32,
    /// The tool of the old kit that it lengthens or works on, by its index
    /// into the kit of `before`.
    pub on: Option<usize>,
    /// The tools that come of it, by index into the kit of `after`.
    pub tools: Vec<usize>,
    /// The findings that are met with it and were or would not be without.
    pub cures: Vec<Cured>,
    /// What these pieces cost at the price of a pack divided by its pieces,
    /// rounded to the smallest coin: a share, to compare lines by.
    pub share: Money,
    /// The day on which it arrives.
    pub arrives: Day,
}

/// A finding, by judgement and requirement.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Cured {
    /// The judgement, by index into those of the check.
    pub judgement: usize,
    /// The requirement, by index into its profile.
    pub requirement: usize,
}

/// A finding that the order leaves open.
#[derive(Debug, Clone)]
pub struct Unmet {
    /// Which one.
    pub finding: Cured,
    /// The offer that comes nearest, if any is of a kind that would do.
    pub nearest: Option<Nearest>,
}

/// An offer that comes near, and all that keeps it from serving.
#[derive(Debug, Clone)]
pub struct Nearest {
    /// The item.
    pub offer: Offer,
    /// The limits that its tool fails, at the vessel's worst freeboard.
    pub lacks: Vec<Reason>,
    /// What else stands in the way.
    pub hindrances: Vec<Hindrance>,
}

/// Why an item cannot be had in time.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Hindrance {
    /// Fewer packs are there than are needed, or than are sold at once.
    OutOfStock {
        /// How many packs there are.
        packs: u32,
    },
    /// It arrives after departure.
    Late {
        /// On which day.
        arrives: Day,
        /// How many days after departure.
        days: u32,
    },
    /// Its price no longer holds on the day of the order.
    PriceLapsed {
        /// The last day on which it did.
        held: Day,
    },
}

/// What measuring could save: tools aboard that nobody measured are not
/// relied on.
#[derive(Debug, Clone)]
pub struct Measuring {
    /// The tools to measure, by vessel and index into the kit of `before`.
    pub tools: Vec<(usize, usize)>,
    /// The least total if all of them turn out well.
    pub total: Money,
    /// What that saves at most.
    pub saves: Money,
}

/// Why this basket.
#[derive(Debug, Clone)]
pub struct Explained {
    /// The dearest line: the vessel and the line of it, and the least total
    /// without that item, or none if nothing else makes up for it.
    pub dearest: Option<Dearest>,
    /// The requirement that costs most.
    pub costliest: Option<Costliest>,
}

/// The dearest line of the order, and what doing without it would cost.
#[derive(Debug, Clone)]
pub struct Dearest {
    /// The item.
    pub offer: Offer,
    /// What its packs cost.
    pub price: Money,
    /// The least total without the item, with as many findings met; `None`
    /// where nothing else makes up for it.
    pub without: Option<Money>,
}

/// The requirement that costs most: what the order would cost without it.
#[derive(Debug, Clone)]
pub struct Costliest {
    /// The profile's id.
    pub profile: String,
    /// The requirement's id.
    pub requirement: String,
    /// A vessel and the finding there, to name it by.
    pub at: (usize, Cured),
    /// The least total if it asked for nothing.
    pub without: Money,
    /// What it costs: the difference.
    pub costs: Money,
}

/// What is ordered from one supplier.
#[derive(Debug, Clone)]
pub struct SupplierOrder {
    /// The catalogue.
    pub catalogue: usize,
    /// The lines, in the order of the catalogue.
    pub lines: Vec<OrderLine>,
    /// What it costs.
    pub cost: Cost,
    /// The last day on which every price of it holds.
    pub holds: Option<Day>,
    /// The day on which the last of it arrives.
    pub arrives: Day,
}

/// One line of an order.
#[derive(Debug, Clone)]
pub struct OrderLine {
    /// The item, by index into the catalogue.
    pub item: usize,
    /// How many packs.
    pub packs: u32,
    /// How many pieces the vessels use.
    pub used: u32,
    /// What the packs cost, before tax.
    pub sum: Money,
}

impl OrderLine {
    /// Pieces that are left over.
    pub fn spare(&self, pack: u32) -> u32 {
        (self.packs * pack).saturating_sub(self.used)
    }

    /// Why there is more of the item than the vessels use, if there is.
    pub fn surplus(&self, item: &Item) -> Option<Surplus> {
        let needed = self.used.div_ceil(item.pack.max(1));
        let more = self.packs.saturating_sub(needed.max(item.least));
        match self.spare(item.pack) {
            _ if self.used == 0 => Some(Surplus::Filler),
            0 => None,
            _ if more > 0 => Some(Surplus::FreeDelivery { packs: more }),
            _ if item.least > needed => Some(Surplus::LeastOrder),
            _ => Some(Surplus::RestOfPack),
        }
    }
}

/// Why more of an item is bought than the vessels use.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Surplus {
    /// No vessel uses any: it lifts the goods to where delivery is free.
    Filler,
    /// So many of the packs do the same.
    FreeDelivery {
        /// How many packs.
        packs: u32,
    },
    /// No fewer packs are sold at once.
    LeastOrder,
    /// A pack is not broken.
    RestOfPack,
}
