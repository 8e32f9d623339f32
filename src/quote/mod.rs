//! The supplier's quote: exactly what is missing, at the lowest cost that
//! makes the vessels ready, checked by the engine before anybody sees it.
//!
//! Imports `measure`, `model`, `engine` and `load`. Prints nothing. Floating
//! point is used by the solver only: what it finds is reckoned again in exact
//! money and judged again by the engine.
//!
//! The cheapest basket is the least total, with packs, least orders, delivery and
//! tax; so an item may be bought that cures nothing, where it lifts the order to
//! free delivery for less, and the page says so. Packs are shared by the vessels of
//! an order, a set stays on one. Extensions and services are for tools aboard, not
//! for what is bought. A bound equal to the total is a proof.

mod basket;
mod case;
mod cluster;
mod deliver;
mod needs;
mod order;
mod outcome;
mod plan;
mod program;
mod prune;
mod rows;
#[cfg(test)]
mod sample;
mod search;
mod setup;
mod small;
mod trial;
mod unmet;
mod why;
mod wide;
mod work;

pub use order::{NoQuote, OneVessel, Order};
pub use outcome::{
    Alone, Bought, Bound, Cost, Costliest, Cured, Dearest, Explained, Hindrance, Measuring,
    Nearest, Offer, OrderLine, Purpose, Quote, SupplierOrder, Surplus, Unmet, VesselQuote,
};
pub use work::quote;
