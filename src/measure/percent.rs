//! Percentages, to a thousandth of a percent.

use super::QuantityError;
use super::decimal::take_numeral;

/// A percentage of zero or more, kept in thousandths of a percent.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Percent(i64);

impl Percent {
    /// One hundred percent, in thousandths.
    pub(super) const WHOLE: i64 = 100_000;
    /// One hundred percent.
    pub const ONE_HUNDRED: Self = Self(Self::WHOLE);

    /// Reads `150%` or `12.5 %`.
    ///
    /// # Errors
    /// No percent sign, a negative, more than 10 000 %, or finer than a
    /// thousandth of a percent.
    pub fn parse(text: &str) -> Result<Self, QuantityError> {
        let nonsense = QuantityError::Nonsense("a percentage, like `150%`");
        let (number, rest) = take_numeral(text.trim())?.ok_or(nonsense.clone())?;
        if rest.trim() != "%" && rest.trim() != "percent" {
            return Err(nonsense);
        }
        number.times(1000, 10_000_000, "a thousandth of a percent", "10 000 %").map(Self)
    }

    /// In thousandths of a percent.
    pub fn thousandths(self) -> i64 {
        self.0
    }
}

impl std::fmt::Display for Percent {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let text = super::decimal::decimal(self.0, 1000, 3, "%");
        f.write_str(&text.replace(' ', ""))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn percentages_are_read_and_printed() {
        for (text, printed) in [("150%", "150%"), ("12.5 %", "12.5%"), ("0.001%", "0.001%")] {
            assert_eq!(Percent::parse(text).unwrap().to_string(), printed);
        }
        for text in ["150", "-5%", "1e3%", "0.0001%", "99999%", "%"] {
            assert!(Percent::parse(text).is_err(), "{text}");
        }
    }
}
