//! The supplier's quote: exactly what is missing, at the lowest cost that
//! makes the vessels ready, checked by the engine before anybody sees it.
//!
//! Imports `measure`, `model`, `engine` and `load`. Prints nothing. Floating
//! point is used by the solver only: what it finds is reckoned again in exact
//! money and judged again by the engine.

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
