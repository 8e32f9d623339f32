//! Angles as whole millidegrees.

use super::QuantityError;
use super::decimal::{decimal, take_numeral};

/// An angle from 0 to 360 degrees, exact: a count of millidegrees.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Angle(i64);

impl Angle {
    /// Reads `10 degrees`, `10 deg`, `10°`.
    ///
    /// # Errors
    /// No unit, a negative, more than 360 degrees, or finer than a
    /// thousandth.
    pub fn parse(text: &str) -> Result<Self, QuantityError> {
        let (number, rest) =
            take_numeral(text.trim())?.ok_or(QuantityError::Nonsense("an angle"))?;
        match rest.trim() {
            "degrees" | "degree" | "deg" | "°" => {}
            "" => return Err(QuantityError::NoUnit),
            other => return Err(QuantityError::UnknownUnit(other.chars().take(20).collect())),
        }
        number.times(1000, 360_000, "a thousandth of a degree", "360 degrees").map(Self)
    }

    /// The exact count of millidegrees.
    pub fn millidegrees(self) -> i64 {
        self.0
    }

    /// A count of millidegrees; none outside 0 to 360 degrees.
    pub fn from_millidegrees(count: i64) -> Option<Self> {
        (0..=360_000).contains(&count).then_some(Self(count))
    }

    /// In degrees.
    pub fn show(self) -> String {
        decimal(self.0, 1000, 3, "degrees")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_angle_is_its_count_of_thousandths() {
        assert_eq!(Angle::parse("0 degrees").unwrap().millidegrees(), 0);
        assert_eq!(Angle::parse("2.5 deg").unwrap().millidegrees(), 2500);
        assert_eq!(Angle::parse("360°").unwrap().millidegrees(), 360_000);
        assert_eq!(Angle::from_millidegrees(360_000), Angle::parse("360°").ok());
        assert_eq!(Angle::from_millidegrees(360_001), None);
        assert_eq!(Angle::from_millidegrees(-1), None);
    }

    #[test]
    fn angles_are_read_with_their_unit_only() {
        assert_eq!(Angle::parse("10°").unwrap(), Angle::parse("10 degrees").unwrap());
        assert_eq!(Angle::parse("2.5 deg").unwrap().show(), "2.5 degrees");
        for text in ["10", "-1 deg", "361 deg", "ten", "10 rad"] {
            assert!(Angle::parse(text).is_err(), "{text}");
        }
    }
}
