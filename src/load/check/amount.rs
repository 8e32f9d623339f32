//! Amounts of money and leads, read with what was expected and how to write
//! them.
//!
//! Imports `measure` only.

use crate::load::check::value::filled;
use crate::load::read::problem::{Problem, Problems};
use crate::load::read::spot::Spot;
use crate::measure::{Currency, Money, QuantityError};

/// The longest lead, in days.
const LONGEST_LEAD: u32 = 730;

/// A currency with a coin as fine as almost any, to read amounts in where the
/// catalogue's own is not known.
const FINEST: &str = "KWD";

/// How many calendar days after the order something is delivered.
pub(crate) fn lead(text: Option<&str>, spot: &Spot<'_>, problems: &mut Problems) -> Option<u32> {
    let text = filled(text)?;
    let (number, unit) = text.split_once(' ').unwrap_or((text, ""));
    let number = (number.len() <= 6 && number.bytes().all(|b| b.is_ascii_digit()))
        .then(|| number.parse::<u32>().ok())
        .flatten();
    let days = match (number, unit.trim()) {
        (Some(number), "day" | "days") => Some(number),
        (Some(number), "week" | "weeks") => Some(number * 7),
        _ => None,
    };
    if let Some(days) = days.filter(|days| *days <= LONGEST_LEAD) {
        return Some(days);
    }
    let what = if days.is_some() { "out of range" } else { "this is not a number of days" };
    let mend = number.filter(|_| unit.is_empty()).map(|number| format!("write `{number} days`"));
    problems.add(
        Problem::new(spot.place(), what)
            .offending(text)
            .expected(format!("calendar days from 0 to {LONGEST_LEAD}, like `3 days`"))
            .mend_if(mend),
    );
    None
}

/// An amount of money, without a currency sign; of no currency where that
/// is not known, so that only what is no amount at all is told.
pub(crate) fn amount(
    text: &str,
    currency: Option<Currency>,
    spot: &Spot<'_>,
    problems: &mut Problems,
) -> Option<Money> {
    let read_in = currency.or_else(|| Currency::find(FINEST))?;
    let error = match Money::parse(text, read_in) {
        Ok(amount) => return Some(amount),
        Err(error) => error,
    };
    let example = if read_in.digits() > 0 { ["184.50", "1200.00"] } else { ["184", "1200"] };
    let what = match &error {
        QuantityError::Nonsense(_) => "this is not an amount of money".to_owned(),
        QuantityError::Negative => "an amount below zero".to_owned(),
        QuantityError::TooFine(_) => "finer than the smallest coin".to_owned(),
        other => other.to_string(),
    };
    let mend = match &error {
        QuantityError::Nonsense(_) if text.chars().any(|c| !c.is_ascii_digit() && c != '.') => {
            Some("write the number alone; the currency stands once, after `currency`".to_owned())
        }
        QuantityError::AmbiguousComma => {
            Some(format!("write it without a mark between thousands, like `{}`", example[1]))
        }
        _ => None,
    };
    let whose = currency.map(|currency| format!(" in {currency}")).unwrap_or_default();
    problems.add(
        Problem::new(spot.place(), what)
            .offending(text)
            .expected(format!("an amount{whose}, like `{}`", example[0]))
            .mend_if(mend),
    );
    None
}
