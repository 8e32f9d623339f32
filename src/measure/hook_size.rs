//! Trade hook sizes: `16/0` is smaller than `18/0`, and size 4 than size 1.

use super::QuantityError;

/// A trade hook size, ordered from small to large: …, 2, 1, 1/0, 2/0, ….
///
/// Sizes compare only between hooks of one type; makers differ.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct HookSize(i16);

impl HookSize {
    /// Reads `16/0` or a plain size such as `4`.
    ///
    /// # Errors
    /// Anything that is no trade size.
    pub fn parse(text: &str) -> Result<Self, QuantityError> {
        let nonsense = || QuantityError::Nonsense("a trade hook size, like `16/0`");
        let text = text.trim();
        if text.starts_with('-') {
            return Err(QuantityError::Negative);
        }
        let digits = text.strip_suffix("/0").unwrap_or(text);
        if digits.is_empty() || digits.len() > 2 || !digits.bytes().all(|b| b.is_ascii_digit()) {
            return Err(nonsense());
        }
        let number: i16 = digits.parse().map_err(|_| nonsense())?;
        match (number, text.ends_with("/0")) {
            (0, _) => Err(nonsense()),
            (number, true) => Ok(Self(number)),
            (number, false) => Ok(Self(1 - number)),
        }
    }

    /// The rank from small to large: 1/0 is 1, size 1 is 0, size 2 is -1.
    pub fn rank(self) -> i64 {
        i64::from(self.0)
    }

    /// The size of that rank; none beyond 99/0 or size 99.
    pub fn from_rank(rank: i64) -> Option<Self> {
        i16::try_from(rank).ok().filter(|r| (-98..=99).contains(r)).map(Self)
    }

    /// As the trade writes it.
    pub fn show(self) -> String {
        if self.0 > 0 { format!("{}/0", self.0) } else { (1 - self.0).to_string() }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn sizes_order_as_the_trade_orders_them() {
        let sizes: Vec<_> =
            ["4", "1", "1/0", "9/0", "16/0", "18/0"].map(|s| HookSize::parse(s).unwrap()).into();
        assert!(sizes.is_sorted());
        for text in ["4", "1", "1/0", "16/0"] {
            assert_eq!(HookSize::parse(text).unwrap().show(), text);
        }
        for text in ["0", "0/0", "16/1", "-4", "", "big", "160/0"] {
            assert!(HookSize::parse(text).is_err(), "{text}");
        }
    }
}
