//! Quantities in the JSON format: exact steps under the name of their unit,
//! and the text for people.
//!
//! Imports `measure`.

use crate::measure::{Currency, Figure, Length, Money, Quantity, Rounding, Units};
use crate::report::words::{Words, figures};
use schemars::JsonSchema;
use serde::Serialize;

/// A quantity: one of the exact counts, and its print.
#[derive(Debug, Default, PartialEq, Eq, JsonSchema, Serialize)]
#[schemars(rename = "Quantity")]
pub(super) struct QuantityJson {
    /// A length.
    #[serde(skip_serializing_if = "Option::is_none")]
    nanometres: Option<i64>,
    /// A mass.
    #[serde(skip_serializing_if = "Option::is_none")]
    micrograms: Option<i64>,
    /// An angle.
    #[serde(skip_serializing_if = "Option::is_none")]
    millidegrees: Option<i64>,
    /// `1/0` is 1, size `1` is 0.
    #[serde(skip_serializing_if = "Option::is_none")]
    hook_size_rank: Option<i64>,
    /// A number.
    #[serde(skip_serializing_if = "Option::is_none")]
    count: Option<i64>,
    /// For people; its wording may change.
    text: String,
}

impl QuantityJson {
    /// A quantity with its text.
    pub(super) fn new(quantity: Quantity, text: String) -> Self {
        let steps = Some(quantity.steps());
        let empty = Self { text, ..Self::default() };
        match quantity {
            Quantity::Length(_) => Self { nanometres: steps, ..empty },
            Quantity::Mass(_) => Self { micrograms: steps, ..empty },
            Quantity::Angle(_) => Self { millidegrees: steps, ..empty },
            Quantity::HookSize(_) => Self { hook_size_rank: steps, ..empty },
            Quantity::Count(_) => Self { count: steps, ..empty },
        }
    }

    /// A figure, as its author wrote it with the other system beside it.
    pub(super) fn of_figure(figure: &Figure, units: Units, rounding: Rounding) -> Self {
        Self::new(figure.quantity, figure.show(units, rounding))
    }

    /// A figure that is no limit, the other system to the nearest step.
    pub(super) fn as_measured(figure: &Figure, units: Units) -> Self {
        Self::new(figure.quantity, figure.show_nearest(units))
    }

    /// A length that nobody wrote.
    pub(super) fn of_length(length: Length, words: &Words<'_>, rounding: Rounding) -> Self {
        let text = figures::length(length, words.system(), words.units, rounding);
        Self::new(Quantity::Length(length), text)
    }

    /// A freeboard at which something was judged.
    pub(super) fn of_freeboard(length: Length, words: &Words<'_>) -> Self {
        Self::new(Quantity::Length(length), words.freeboard(length))
    }

    /// The end of a stretch of freeboards, never printed beyond it.
    pub(super) fn of_stretch_end(length: Length, words: &Words<'_>) -> Self {
        let text = figures::stretch_end(length, words.system(), words.units);
        Self::new(Quantity::Length(length), text)
    }
}

/// An amount, with every digit of its currency.
#[derive(Debug, JsonSchema, Serialize)]
#[schemars(rename = "Money")]
pub(in crate::report) struct MoneyJson {
    /// The amount.
    amount: String,
    /// The code of ISO 4217.
    currency: &'static str,
}

impl MoneyJson {
    /// The amount in its currency.
    pub(in crate::report) fn new(amount: Money, currency: Currency) -> Self {
        Self { amount: amount.show(currency), currency: currency.code() }
    }
}
