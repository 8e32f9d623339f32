//! A gear supplier's catalogue: what can be bought, at which price, by when.

use super::place::Place;
use super::vessel::Tool;
use super::vocabulary::KindId;
use crate::measure::{Currency, Day, Interval, Length, Money, Percent};

/// A supplier's catalogue.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Catalogue {
    /// The supplier's name.
    pub supplier: String,
    /// The supplier's port, if given.
    pub port: Option<String>,
    /// The currency of every amount in it.
    pub currency: Currency,
    /// What delivery costs, once an order.
    pub delivery: Delivery,
    /// The tax on goods and delivery.
    pub tax: Percent,
    /// What the supplier writes about terms, if anything.
    pub terms: Option<String>,
    /// The items, in the order written.
    pub items: Vec<Item>,
    /// Where it is written.
    pub place: Place,
}

/// What delivery costs, once an order, however many vessels it is for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Delivery {
    /// The charge, before tax.
    pub charge: Money,
    /// From this sum of goods on, before tax, nothing is charged.
    pub free_from: Option<Money>,
}

impl Delivery {
    /// The charge for goods of that sum.
    pub fn charge_for(&self, goods: Money) -> Money {
        match self.free_from {
            Some(from) if goods >= from => Money::ZERO,
            _ => self.charge,
        }
    }
}

/// Something that can be bought.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Item {
    /// The supplier's number, unique in the catalogue.
    pub number: String,
    /// What it is, in the supplier's words.
    pub description: String,
    /// What one piece gives.
    pub gives: Gives,
    /// The price of one pack, before tax.
    pub price: Money,
    /// How many pieces a pack holds; at least one.
    pub pack: u32,
    /// The fewest packs that are sold at once; at least one.
    pub least: u32,
    /// How many packs there are; `None` where there is no end of them.
    pub stock: Option<u32>,
    /// How many calendar days after the order it is delivered.
    pub lead: u32,
    /// The last day on which the price holds; `None` without end.
    pub holds: Option<Day>,
    /// Where it is written.
    pub place: Place,
}

impl Item {
    /// Whether the price holds for an order of that day.
    pub fn holds_on(&self, day: Day) -> bool {
        self.holds.is_none_or(|last| day <= last)
    }
}

/// What one piece of an item gives.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Gives {
    /// A tool, or the tools of a set, which stays on one vessel.
    Tools(Vec<Given>),
    /// A piece that lengthens a tool that is aboard.
    Extension {
        /// Tools of these kinds.
        kinds: Vec<KindId>,
        /// By how much.
        by: Length,
        /// How many may be put on one tool; at least one.
        per_tool: u32,
    },
    /// Work on a tool that is aboard.
    Service {
        /// Tools of these kinds.
        kinds: Vec<KindId>,
        /// It works afterwards.
        mends: bool,
        /// It counts as the inspection that is due.
        inspects: bool,
    },
}

/// A tool that is bought.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Given {
    /// The tool as it comes: its mark is the item's number (with a letter in
    /// a set), its count how many of it are in one piece, its condition
    /// serviceable. Days that count from its delivery are not set.
    pub tool: Tool,
    /// Clauses to which the supplier declares that it conforms.
    pub conforms: Vec<String>,
    /// Whether it is inspected when it is delivered.
    pub inspected: bool,
    /// How long it is good from its delivery on, if it expires.
    pub lasts: Option<Interval>,
    /// For spares: what they fit.
    pub fits: Vec<Fits>,
}

/// What spares fit.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Fits {
    /// The tools of another item of the catalogue, by its number.
    Item(String),
    /// Every tool of a kind.
    Kind(KindId),
}
