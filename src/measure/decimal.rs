//! Decimal numerals and fractions as people write them, kept exact.

use super::QuantityError;

/// A non-negative rational number: `numerator / denominator`.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Rational {
    pub(super) numerator: i128,
    pub(super) denominator: i128,
}

impl Rational {
    /// This many units of `unit` smallest steps, or a refusal where no whole
    /// number of steps comes out or it would pass `most`.
    pub(super) fn times(
        self,
        unit: i64,
        most: i64,
        step: &'static str,
        most_text: &'static str,
    ) -> Result<i64, QuantityError> {
        let product = self
            .numerator
            .checked_mul(i128::from(unit))
            .ok_or(QuantityError::TooLarge(most_text))?;
        if self.denominator == 1 && product <= i128::from(most) {
            return i64::try_from(product).map_err(|_| QuantityError::TooLarge(most_text));
        }
        if product / self.denominator > i128::from(most) {
            return Err(QuantityError::TooLarge(most_text));
        }
        if product % self.denominator != 0 {
            return Err(QuantityError::TooFine(step));
        }
        i64::try_from(product / self.denominator).map_err(|_| QuantityError::TooLarge(most_text))
    }

    fn plus(self, other: Self) -> Option<Self> {
        let left = self.numerator.checked_mul(other.denominator)?;
        let right = other.numerator.checked_mul(self.denominator)?;
        Some(Self {
            numerator: left.checked_add(right)?,
            denominator: self.denominator.checked_mul(other.denominator)?,
        })
    }
}

/// The longest numeral that is read; anything longer is no measurement.
const LONGEST: usize = 24;

/// Takes a numeral off the front: `6`, `1.83`, `1,83`, `1/2`, `4 1/2`,
/// `4-1/2`, `4½`. Returns it with what follows.
pub(super) fn take_numeral(text: &str) -> Result<Option<(Rational, &str)>, QuantityError> {
    if text.starts_with(['-', '−', '–']) {
        return Err(QuantityError::Negative);
    }
    let text = text.strip_prefix('+').unwrap_or(text);
    if let Some((fraction, rest)) = take_glyph(text) {
        return Ok(Some((fraction, rest)));
    }
    let end =
        text.find(|c: char| !(c.is_ascii_digit() || c == '.' || c == ',')).unwrap_or(text.len());
    let (head, rest) = text.split_at(end);
    if head.is_empty() {
        return Ok(None);
    }
    if let Some(after) = rest.strip_prefix('/') {
        let (bottom, rest) = take_whole(after).ok_or(QuantityError::Nonsense("a fraction"))?;
        return Ok(Some((fraction(parse_whole(head)?, bottom)?, rest)));
    }
    let number = parse_decimal(head)?;
    match take_fraction_after(head, rest)? {
        Some((part, rest)) => {
            let sum = number.plus(part).ok_or(QuantityError::Nonsense("a number"))?;
            Ok(Some((sum, rest)))
        }
        None => Ok(Some((number, rest))),
    }
}

/// The fraction of a mixed number: after a space, a hyphen or at once.
fn take_fraction_after<'t>(
    head: &str,
    rest: &'t str,
) -> Result<Option<(Rational, &'t str)>, QuantityError> {
    let whole = head.bytes().all(|b| b.is_ascii_digit());
    let after = rest.strip_prefix('-').unwrap_or(rest).trim_start();
    if !whole {
        return Ok(None);
    }
    if let Some(found) = take_glyph(after) {
        return Ok(Some(found));
    }
    let Some((top, tail)) = take_whole(after) else {
        return Ok(None);
    };
    let Some(tail) = tail.strip_prefix('/') else {
        return Ok(None);
    };
    let (bottom, tail) = take_whole(tail).ok_or(QuantityError::Nonsense("a fraction"))?;
    if top >= bottom {
        return Err(QuantityError::Nonsense("a mixed number (its fraction is not below one)"));
    }
    Ok(Some((fraction(top, bottom)?, tail)))
}

fn take_glyph(text: &str) -> Option<(Rational, &str)> {
    let first = text.chars().next()?;
    let (numerator, denominator) = match first {
        '½' => (1, 2),
        '¼' => (1, 4),
        '¾' => (3, 4),
        '⅛' => (1, 8),
        '⅜' => (3, 8),
        '⅝' => (5, 8),
        '⅞' => (7, 8),
        _ => return None,
    };
    Some((Rational { numerator, denominator }, &text[first.len_utf8()..]))
}

fn take_whole(text: &str) -> Option<(i128, &str)> {
    let end = text.find(|c: char| !c.is_ascii_digit()).unwrap_or(text.len());
    let value = parse_whole(&text[..end]).ok()?;
    Some((value, &text[end..]))
}

fn parse_whole(digits: &str) -> Result<i128, QuantityError> {
    if digits.is_empty() || digits.len() > LONGEST || !digits.bytes().all(|b| b.is_ascii_digit()) {
        return Err(QuantityError::Nonsense("a whole number"));
    }
    digits.parse().map_err(|_| QuantityError::Nonsense("a whole number"))
}

fn fraction(numerator: i128, denominator: i128) -> Result<Rational, QuantityError> {
    if denominator == 0 || denominator > 1024 {
        return Err(QuantityError::Nonsense("a fraction of an inch"));
    }
    Ok(Rational { numerator, denominator })
}

/// A decimal numeral with a point or a decimal comma.
fn parse_decimal(text: &str) -> Result<Rational, QuantityError> {
    if text.len() > LONGEST {
        return Err(QuantityError::Nonsense("a number of a sensible length"));
    }
    let marks = text.bytes().filter(|b| !b.is_ascii_digit()).count();
    let Some(mark) = text.find(['.', ',']) else {
        return Ok(Rational { numerator: parse_whole(text)?, denominator: 1 });
    };
    let (whole, places) = (&text[..mark], &text[mark + 1..]);
    if marks > 1 {
        return Err(QuantityError::AmbiguousComma);
    }
    // `0,125` can only be a decimal: no thousands mark follows a lone zero.
    if &text[mark..=mark] == "," && places.len() == 3 && !whole.trim_start_matches('0').is_empty() {
        return Err(QuantityError::AmbiguousComma);
    }
    if whole.is_empty() || places.is_empty() {
        return Err(QuantityError::Nonsense("a number (digits on both sides of the mark)"));
    }
    let power = u32::try_from(places.len()).map_err(|_| QuantityError::Nonsense("a number"))?;
    let denominator = 10_i128.checked_pow(power).ok_or(QuantityError::Nonsense("a number"))?;
    let numerator = parse_whole(whole)?
        .checked_mul(denominator)
        .and_then(|n| n.checked_add(parse_whole(places).ok()?))
        .ok_or(QuantityError::Nonsense("a number"))?;
    Ok(Rational { numerator, denominator })
}

/// `count / unit` as a decimal of at most `places`, trailing zeros dropped,
/// but `1.83 m` keeps what a tape shows.
pub(super) fn decimal(count: i64, unit: i64, places: usize, name: &str) -> String {
    let (whole, mut rest) = (count / unit, count % unit);
    let mut digits = String::new();
    let mut step = unit / 10;
    while rest > 0 && digits.len() < places {
        digits.push(char::from(b'0' + u8::try_from(rest / step).unwrap_or(9)));
        rest %= step;
        step /= 10;
    }
    if digits.is_empty() { format!("{whole} {name}") } else { format!("{whole}.{digits} {name}") }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::Length;

    fn numeral(text: &str) -> Result<(i128, i128), QuantityError> {
        take_numeral(text).map(|found| {
            let (number, rest) = found.unwrap();
            assert_eq!(rest, "", "{text}");
            (number.numerator, number.denominator)
        })
    }

    #[test]
    fn digits_stand_on_both_sides_of_a_mark() {
        let expected = QuantityError::Nonsense("a number (digits on both sides of the mark)");
        for text in [".5", "5.", ",5", "5,", "."] {
            assert_eq!(parse_decimal(text).unwrap_err(), expected, "{text}");
        }
    }

    #[test]
    fn every_fraction_of_one_sign_is_its_figure() {
        let signs = [('½', 1, 2), ('¼', 1, 4), ('¾', 3, 4), ('⅛', 1, 8), ('⅜', 3, 8)];
        for (sign, top, bottom) in signs.into_iter().chain([('⅝', 5, 8), ('⅞', 7, 8)]) {
            assert_eq!(numeral(&sign.to_string()), Ok((top, bottom)), "{sign}");
            for text in [format!("2{sign}"), format!("2 {sign}"), format!("2-{sign}")] {
                assert_eq!(numeral(&text), Ok((2 * bottom + top, bottom)), "{text}");
            }
        }
    }

    #[test]
    fn a_numeral_may_have_24_signs_and_no_more() {
        let digits = |count: usize| "0".repeat(count - 1) + "6";
        assert_eq!(numeral(&digits(24)), Ok((6, 1)));
        assert_eq!(
            numeral(&digits(25)),
            Err(QuantityError::Nonsense("a number of a sensible length"))
        );
        let point = format!("{}.5", "0".repeat(22));
        assert_eq!(numeral(&point), Ok((5, 10)));
        assert!(numeral(&format!("0{point}")).is_err());
        assert_eq!(numeral(&format!("{}/8", digits(24))), Ok((6, 8)));
        assert!(numeral(&format!("{}/8", digits(25))).is_err());
    }

    #[test]
    fn a_fraction_goes_down_to_a_thousand_and_twenty_fourth() {
        assert_eq!(numeral("1/1024"), Ok((1, 1024)));
        for text in ["1/1025", "1/0", "1/2000", "4 1/1025"] {
            let said = Err(QuantityError::Nonsense("a fraction of an inch"));
            assert_eq!(numeral(text), said, "{text}");
        }
    }

    #[test]
    fn exactly_the_most_is_read_however_it_is_written() {
        let ten_kilometres = Length::parse("10000 m").unwrap();
        for text in ["10000.0 m", "20000/2 m", "10000,00 m"] {
            assert_eq!(Length::parse(text).unwrap(), ten_kilometres, "{text}");
        }
        for text in ["10000.1 m", "20001/2 m", "10001 m"] {
            let said = Length::parse(text).map(|(length, _)| length);
            assert!(matches!(said, Err(QuantityError::TooLarge(_))), "{text}");
        }
    }

    #[test]
    fn a_whole_count_above_the_most_is_too_large() {
        let six = Rational { numerator: 6, denominator: 1 };
        assert_eq!(six.times(10, 60, "a step", "60"), Ok(60));
        assert_eq!(six.times(10, 59, "a step", "59"), Err(QuantityError::TooLarge("59")));
    }
}
