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
pub use figure::{Figure, Quantity, QuantityKind};
pub use hook_size::HookSize;
pub use length::{Length, Rounding, System, Units};
pub use mass::Mass;
pub use money::{Currency, Money};
pub use percent::Percent;

/// Why a piece of text is not the quantity that was expected.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum QuantityError {
    /// A number without its unit.
    #[error("a figure without its unit")]
    NoUnit,
    /// A unit that this quantity does not have.
    #[error("`{0}` is not a unit that is read here")]
    UnknownUnit(String),
    /// A minus sign.
    #[error("a figure below zero")]
    Negative,
    /// A thousands comma, which could also be a decimal comma.
    #[error("a comma before three digits could be a decimal or a thousands mark")]
    AmbiguousComma,
    /// More than the tool reckons with.
    #[error("more than is reckoned with here (the most is {0})")]
    TooLarge(&'static str),
    /// Finer than the smallest unit, so that it would have to be rounded.
    #[error("finer than {0}, the smallest step that is kept exactly")]
    TooFine(&'static str),
    /// Units in an order or mix in which nobody writes them.
    #[error("units out of order or mixed")]
    OutOfOrder,
    /// No such calendar day.
    #[error("no such day in the calendar")]
    NoSuchDay,
    /// Anything else.
    #[error("not readable as {0}")]
    Nonsense(&'static str),
}
