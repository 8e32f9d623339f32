//! Masses as whole micrograms.

use super::decimal::{decimal, take_numeral};
use super::{QuantityError, System};

/// A mass of zero or more, exact: a count of micrograms.
///
/// 1 lb = 0.453 592 37 kg by definition (NIST SP 811 Appendix B).
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Mass(i64);

const KILOGRAM: i64 = 1_000_000_000;
const POUND: i64 = 453_592_370;
const MOST: i64 = 100_000 * KILOGRAM;

impl Mass {
    /// Reads `100 lb`, `45.4 kg`, `500 g`, and tells the system of the unit.
    ///
    /// # Errors
    /// No unit, an unknown unit, a negative, more than 100 t, or finer than
    /// a microgram.
    pub fn parse(text: &str) -> Result<(Self, System), QuantityError> {
        let (number, rest) = take_numeral(text.trim())?.ok_or(QuantityError::Nonsense("a mass"))?;
        let (unit, system) = match rest.trim().to_ascii_lowercase().as_str() {
            "" => return Err(QuantityError::NoUnit),
            "lb" | "lbs" | "lb." | "pound" | "pounds" => (POUND, System::Customary),
            "kg" | "kilogram" | "kilograms" => (KILOGRAM, System::Metric),
            "g" | "gram" | "grams" => (KILOGRAM / 1000, System::Metric),
            other => return Err(QuantityError::UnknownUnit(other.chars().take(20).collect())),
        };
        number.times(unit, MOST, "a microgram", "100 t").map(|count| (Self(count), system))
    }

    /// The exact count of micrograms.
    pub fn micrograms(self) -> i64 {
        self.0
    }

    /// A count of micrograms; none if negative or above 100 t.
    pub fn from_micrograms(count: i64) -> Option<Self> {
        (0..=MOST).contains(&count).then_some(Self(count))
    }

    /// In kilograms to the gram, rounded down.
    pub fn show(self) -> String {
        decimal(self.0, KILOGRAM, 3, "kg")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_hundred_pounds_is_more_than_the_printed_kilograms_of_one_rule() {
        let hundred = Mass::parse("100 lb").unwrap().0;
        assert_eq!(hundred.micrograms(), 45_359_237_000);
        assert!(hundred > Mass::parse("34.1 kg").unwrap().0);
        assert!(hundred < Mass::parse("45.4 kg").unwrap().0);
        assert_eq!(hundred.show(), "45.359 kg");
    }

    #[test]
    fn what_is_no_mass_is_refused() {
        for text in ["100", "-1 kg", "5 stone", "", "1e9 kg", "999999999 kg"] {
            assert!(Mass::parse(text).is_err(), "{text}");
        }
    }
}
