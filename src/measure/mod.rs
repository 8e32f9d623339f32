//! Exact quantities and the three-valued answer.
//!
//! Imports nothing of this crate. No floating point: every figure is a whole
//! number of a small unit, and percentages are compared by cross-multiplying.
#![deny(clippy::float_arithmetic)]

mod angle;
mod answer;
mod day;
mod decimal;
mod figure;
mod hook_size;
mod length;
mod length_text;
mod mass;
mod money;
mod percent;

pub use angle::Angle;
pub use answer::Answer;
pub use day::{Day, DaySpan, Interval};
pub use figure::{Figure, LengthUnit, Quantity, QuantityKind};
pub use hook_size::HookSize;
pub use length::{Length, Rounding, System, Units};
pub use mass::Mass;
pub use money::{Currency, Money};
pub use percent::Percent;

/// Why a piece of text is not the quantity that was expected; its words stand
/// with those of other problems.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum QuantityError {
    /// A number without its unit.
    NoUnit,
    /// A unit that this quantity does not have.
    UnknownUnit(String),
    /// A minus sign.
    Negative,
    /// A thousands comma, which could also be a decimal comma.
    AmbiguousComma,
    /// More than the tool reckons with.
    TooLarge(&'static str),
    /// Finer than the smallest unit, so that it would have to be rounded.
    TooFine(&'static str),
    /// Units in an order or mix in which nobody writes them.
    OutOfOrder,
    /// No such calendar day.
    NoSuchDay,
    /// Anything else.
    Nonsense(&'static str),
}
