//! Money: exact decimal amounts in one currency, tax rounded once.
//!
//! The decimal arithmetic is `rust_decimal`'s; codes and smallest coins are
//! those of ISO 4217, as `iso_currency` lists them.

use super::{Percent, QuantityError};
use rust_decimal::{Decimal, RoundingStrategy};

/// A currency of ISO 4217 that has a smallest coin.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Currency(iso_currency::Currency);

impl Currency {
    /// The currency of a three-letter code, in any case.
    pub fn find(code: &str) -> Option<Self> {
        let currency = iso_currency::Currency::from_code(&code.trim().to_ascii_uppercase())?;
        // Gold, test codes and units of account have no coin to round to.
        currency.exponent().map(|_| Self(currency))
    }

    /// The three-letter code.
    pub fn code(self) -> &'static str {
        self.0.code()
    }

    /// How many digits stand after the point.
    pub fn digits(self) -> u32 {
        self.0.exponent().map_or(2, u32::from)
    }
}

impl std::fmt::Display for Currency {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(self.code())
    }
}

/// An amount of money of zero or more, kept exactly; which currency it is in
/// stands beside it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub struct Money(Decimal);

/// The most that one price may be, in whole units of a currency: sums of all
/// that a fleet can order stay far below what is kept exactly.
const MOST: i64 = 10_000_000;

impl Money {
    /// Nothing.
    pub const ZERO: Self = Self(Decimal::ZERO);

    /// Reads `184`, `184.50` or `184,50`, without a currency sign.
    ///
    /// # Errors
    /// Anything else; a comma before three digits, which might set thousands
    /// apart; an amount below zero, above ten million, or finer than the
    /// currency's smallest coin.
    pub fn parse(text: &str, currency: Currency) -> Result<Self, QuantityError> {
        let text = text.trim();
        let nonsense = || QuantityError::Nonsense("an amount of money, like `184.50`");
        if text.starts_with('-') {
            return Err(QuantityError::Negative);
        }
        if let Some((_, after)) = text.split_once(',')
            && (after.len() == 3 || after.contains([',', '.']))
        {
            return Err(QuantityError::AmbiguousComma);
        }
        let plain = text.replace(',', ".");
        let (whole, rest) = plain.split_once('.').unwrap_or((&plain, "0"));
        let digits = |part: &str| !part.is_empty() && part.bytes().all(|b| b.is_ascii_digit());
        if !digits(whole) || !digits(rest) {
            return Err(nonsense());
        }
        if whole.len() > 12 {
            return Err(QuantityError::TooLarge("10 000 000"));
        }
        if rest.trim_end_matches('0').len() > currency.digits() as usize {
            return Err(QuantityError::TooFine("the smallest coin"));
        }
        let amount = Decimal::from_str_exact(&plain).map_err(|_| nonsense())?;
        if amount > Decimal::from(MOST) {
            return Err(QuantityError::TooLarge("10 000 000"));
        }
        Ok(Self(amount))
    }

    /// This many smallest coins.
    pub fn of_coins(coins: u64, currency: Currency) -> Self {
        Self(Decimal::from(coins) / power_of_ten(currency.digits()))
    }

    /// How many smallest coins it is.
    pub fn coins(self, currency: Currency) -> u64 {
        let coins = self.0 * power_of_ten(currency.digits());
        u64::try_from(coins.trunc()).unwrap_or(u64::MAX)
    }

    /// Both together.
    #[must_use]
    pub fn plus(self, other: Self) -> Self {
        Self(self.0 + other.0)
    }

    /// What is left of it, at least nothing.
    #[must_use]
    pub fn less(self, other: Self) -> Self {
        Self((self.0 - other.0).max(Decimal::ZERO))
    }

    /// So many times as much.
    #[must_use]
    pub fn times(self, count: u64) -> Self {
        Self(self.0 * Decimal::from(count))
    }

    /// The tax on it: rounded once to the smallest coin, half a coin up.
    #[must_use]
    pub fn tax(self, rate: Percent, currency: Currency) -> Self {
        let whole = Decimal::from(Percent::WHOLE);
        let exact = self.0 * Decimal::from(rate.thousandths()) / whole;
        let rounding = RoundingStrategy::MidpointAwayFromZero;
        Self(exact.round_dp_with_strategy(currency.digits(), rounding))
    }

    /// With all the digits of the currency after the point, like `1 184.50`
    /// without the space: `1184.50`.
    pub fn show(self, currency: Currency) -> String {
        format!("{:.*}", currency.digits() as usize, self.0)
    }
}

impl std::iter::Sum for Money {
    fn sum<I: Iterator<Item = Self>>(amounts: I) -> Self {
        amounts.fold(Self::ZERO, Self::plus)
    }
}

fn power_of_ten(digits: u32) -> Decimal {
    Decimal::from(10_u64.pow(digits))
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn of(code: &str) -> Currency {
        Currency::find(code).unwrap()
    }

    fn money(text: &str) -> Money {
        Money::parse(text, of("USD")).unwrap()
    }

    #[test]
    fn amounts_are_read_as_people_write_them() {
        for (text, shown) in [("184", "184.00"), ("184.5", "184.50"), (" 0,05 ", "0.05")] {
            assert_eq!(money(text).show(of("USD")), shown);
        }
        assert_eq!(Money::parse("1200", of("JPY")).unwrap().show(of("JPY")), "1200");
        assert_eq!(Money::parse("1.125", of("KWD")).unwrap().show(of("KWD")), "1.125");
    }

    #[test]
    fn twelve_digits_are_read_and_thirteen_are_too_many() {
        assert_eq!(money("000000000184"), money("184"));
        let said = Err(QuantityError::TooLarge("10 000 000"));
        assert_eq!(Money::parse("0000000000184", of("USD")), said);
        assert_eq!(Money::parse("10000000.01", of("USD")), said);
        assert!(Money::parse("10000000", of("USD")).is_ok());
    }

    #[test]
    fn what_is_no_amount_is_refused() {
        for text in
            ["", "-1", "1e3", "1,200", "1,200.00", "$5", "5 USD", ".5", "5.", "0.005", "12000000"]
        {
            assert!(Money::parse(text, of("USD")).is_err(), "{text}");
        }
        assert!(Money::parse("1.5", of("JPY")).is_err());
    }

    #[test]
    fn a_currency_has_a_code_of_the_standard_and_a_coin() {
        assert_eq!(of("usd").code(), "USD");
        for code in ["XAU", "XXX", "US", "DOLLAR", ""] {
            assert!(Currency::find(code).is_none(), "{code}");
        }
    }

    #[test]
    fn half_a_coin_of_tax_is_rounded_up_once() {
        let rate = |text| Percent::parse(text).unwrap();
        let tax = |amount, percent| money(amount).tax(rate(percent), of("USD")).show(of("USD"));
        // 0.10 at 5 % is half a cent.
        assert_eq!(tax("0.10", "5%"), "0.01");
        assert_eq!(tax("0.09", "5%"), "0.00");
        assert_eq!(tax("0.30", "5%"), "0.02");
        assert_eq!(tax("2.50", "7%"), "0.18");
        assert_eq!(tax("100.00", "7.125%"), "7.13");
        // Rounded once on the sum, not on each of ten lines.
        let lines = (0..10).map(|_| money("0.10"));
        let each: Money = lines.clone().map(|line| line.tax(rate("5%"), of("USD"))).sum();
        assert_eq!(each.show(of("USD")), "0.10");
        assert_eq!(lines.sum::<Money>().tax(rate("5%"), of("USD")).show(of("USD")), "0.05");
    }

    proptest! {
        #[test]
        fn sums_of_coins_never_drift(coins in proptest::collection::vec(0_u64..1_000_000, 0..200)) {
            let usd = of("USD");
            let sum: Money = coins.iter().map(|c| Money::of_coins(*c, usd)).sum();
            prop_assert_eq!(sum.coins(usd), coins.iter().sum::<u64>());
        }

        #[test]
        fn tax_is_the_nearest_coin_half_up(coins in 0_u64..100_000_000, rate in 0_u32..100_000) {
            let usd = of("USD");
            let text = format!("{}.{:03}%", rate / 1000, rate % 1000);
            let tax = Money::of_coins(coins, usd).tax(Percent::parse(&text).unwrap(), usd);
            let exact = u128::from(coins) * u128::from(rate);
            let nearest = (2 * exact + 100_000) / 200_000;
            prop_assert_eq!(u128::from(tax.coins(usd)), nearest);
        }
    }
}
