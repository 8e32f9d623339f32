//! The supplier's quote: exactly what is missing, at the lowest cost that
//! makes the vessels ready, checked by the engine before anybody sees it.
//!
//! Imports `measure`, `model`, `engine` and `load`. Prints nothing. Floating
//! point is used by the solver only: what it finds is reckoned again in exact
//! money and judged again by the engine.

mod order;
mod outcome;

pub use order::{NoQuote, OneVessel, Order, quote};
pub use outcome::{
    Alone, Bought, Bound, Cost, Costliest, Cured, Dearest, Explained, Hindrance, Measuring,
    Nearest, Offer, OrderLine, Quote, SupplierOrder, Unmet, VesselQuote,
};
