//! Lengths as people write them: `6 ft 4 1/2 in`, `4'-8"`, `4ft3`, `1.83 m`.

use super::QuantityError;
use super::decimal::{Rational, take_numeral};
use super::length::{FOOT, INCH, Length, MILLIMETRE, MOST, System};

const MOST_TEXT: &str = "10 km";
const STEP_TEXT: &str = "a nanometre";

/// Where feet and inches stand among the units.
const FEET: usize = 1;
const INCHES: usize = 2;

/// Units from large to small; a length names them in this order.
const UNITS: [(&[&str], i64, System); 6] = [
    (&["fathoms", "fathom", "fm"], 6 * FOOT, System::Customary),
    (&["feet", "foot", "ft.", "ft", "'", "’", "′"], FOOT, System::Customary),
    (&["inches", "inch", "in.", "in", "\"", "”", "″"], INCH, System::Customary),
    (&["metres", "metre", "meters", "meter", "m"], 1000 * MILLIMETRE, System::Metric),
    (
        &["centimetres", "centimetre", "centimeters", "centimeter", "cm"],
        10 * MILLIMETRE,
        System::Metric,
    ),
    (&["millimetres", "millimetre", "millimeters", "millimeter", "mm"], MILLIMETRE, System::Metric),
];

impl Length {
    /// Reads what people write, with its unit, and tells in which system it
    /// was written.
    ///
    /// # Errors
    /// A bare number, a negative, an ambiguous comma, an unknown unit, a
    /// length above ten kilometres or one finer than a nanometre.
    pub fn parse(text: &str) -> Result<(Self, System), QuantityError> {
        let mut rest = text.trim();
        let mut sum: i64 = 0;
        let mut last: Option<usize> = None;
        let mut system = System::Metric;
        let (mut broken_by_fraction, mut is_close) = (false, false);
        while !rest.is_empty() {
            let (number, after) = take_numeral(rest)?.ok_or(QuantityError::Nonsense("a length"))?;
            let (unit, tail) = match last {
                // `4ft3` and `4'8`: what stands close behind feet is inches.
                Some(FEET) if is_close && after.is_empty() => (INCHES, after),
                _ => take_unit(after.trim_start())?,
            };
            if broken_by_fraction || last.is_some_and(|l| !follows(l, unit, number)) {
                return Err(QuantityError::OutOfOrder);
            }
            broken_by_fraction = number.denominator != 1;
            sum = sum
                .checked_add(number.times(UNITS[unit].1, MOST, STEP_TEXT, MOST_TEXT)?)
                .filter(|sum| *sum <= MOST)
                .ok_or(QuantityError::TooLarge(MOST_TEXT))?;
            system = UNITS[unit].2;
            last = Some(unit);
            is_close = tail.starts_with(|c: char| c.is_ascii_digit());
            rest = tail.trim_start();
            // `4'-8"`: a hyphen may join what the larger unit leaves over.
            if let Some(after) = rest.strip_prefix(['-', '\u{2011}']) {
                rest = after.trim_start();
                if rest.is_empty() {
                    return Err(QuantityError::Nonsense("a length"));
                }
            }
        }
        if last.is_none() {
            return Err(QuantityError::Nonsense("a length"));
        }
        Ok((Self::raw(sum), system))
    }
}

/// Whether a figure in `unit` may stand after one in `last`: smaller, of the
/// same system, and less than one of the larger (nobody writes 6 ft 14 in).
fn follows(last: usize, unit: usize, number: Rational) -> bool {
    let (larger, smaller) = (UNITS[last], UNITS[unit]);
    unit > last
        && larger.2 == smaller.2
        && number.numerator * i128::from(smaller.1) < i128::from(larger.1) * number.denominator
}

fn take_unit(text: &str) -> Result<(usize, &str), QuantityError> {
    let word_end = text.find(|c: char| !c.is_alphabetic()).unwrap_or(text.len());
    let first = text.as_bytes().first().map(u8::to_ascii_lowercase);
    for (index, (names, _, _)) in UNITS.iter().enumerate() {
        for name in names.iter().filter(|name| name.as_bytes().first().copied() == first) {
            let Some(head) = text.get(..name.len()) else {
                continue;
            };
            let whole_word = name.len() >= word_end;
            if whole_word && head.eq_ignore_ascii_case(name) {
                return Ok((index, &text[name.len()..]));
            }
        }
    }
    if text.is_empty() || text.starts_with(|c: char| c.is_ascii_digit()) {
        return Err(QuantityError::NoUnit);
    }
    let shown = if word_end == 0 { text } else { &text[..word_end] };
    Err(QuantityError::UnknownUnit(shown.chars().take(20).collect()))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn nanometres(text: &str) -> i64 {
        Length::parse(text).unwrap().0.nanometres()
    }

    /// Conversions of `numbers`: international yard and pound agreement of
    /// 1959; NIST SP 811 Appendix B; NIST Handbook 44 Appendix C.
    #[test]
    fn the_defined_conversions_are_exact() {
        assert_eq!(nanometres("1 in"), 25_400_000);
        assert_eq!(nanometres("1 ft"), 304_800_000);
        assert_eq!(nanometres("1 fathom"), 1_828_800_000);
        assert_eq!(nanometres("1/64 in"), 396_875);
    }

    #[test]
    fn the_smaller_unit_is_less_than_one_of_the_larger() {
        assert_eq!(nanometres("5 ft 11 15/16 in"), 5 * 304_800_000 + 303_212_500);
        for text in ["5 ft 12 in", "5 ft 13 in", "1 m 100 cm", "1 fathom 6 ft"] {
            assert_eq!(Length::parse(text), Err(QuantityError::OutOfOrder), "{text}");
        }
    }

    #[test]
    fn one_unit_is_not_said_twice() {
        for text in ["6 ft 1/2 ft", "6 ft 0 ft", "6 in 2 ft", "1 m 1/2 ft"] {
            assert_eq!(Length::parse(text), Err(QuantityError::OutOfOrder), "{text}");
        }
    }

    #[test]
    fn what_people_write_is_read() {
        let six_four_and_a_half = 6 * FOOT + 4 * INCH + INCH / 2;
        for text in [
            "6 ft 4 1/2 in",
            "6ft 4 1/2in",
            "6' 4 1/2\"",
            "6 feet 4.5 inches",
            "76.5 in",
            "76 1/2 in",
            "6 ft 4-1/2 in",
            "6 ft 4½ in",
            "6 FT 4 1/2 IN",
        ] {
            assert_eq!(nanometres(text), six_four_and_a_half, "{text}");
        }
        for text in ["1.83 m", "183 cm", "1830 mm", "1,83 m", "1 m 83 cm", "1.83 metres"] {
            assert_eq!(nanometres(text), 1_830_000_000, "{text}");
        }
        assert_eq!(nanometres("0,125 m"), 125_000_000);
        assert_eq!(nanometres("1943.099999 mm"), 1_943_099_999);
    }

    #[test]
    fn feet_and_inches_are_read_close_together_and_joined_by_a_hyphen() {
        let four_eight = 4 * FOOT + 8 * INCH;
        for text in [
            "4ft8",
            "4'8",
            "4’8",
            "4'-8\"",
            "4’8”",
            "4’-8”",
            "4' - 8\"",
            "4 ft-8 in",
            "4\u{2032}8\u{2033}",
        ] {
            assert_eq!(nanometres(text), four_eight, "{text}");
        }
        assert_eq!(nanometres("4ft3"), 4 * FOOT + 3 * INCH);
        assert_eq!(nanometres("4ft3 1/2"), 4 * FOOT + 3 * INCH + INCH / 2);
        assert_eq!(nanometres("4'-8-1/2\""), four_eight + INCH / 2);
        for (text, error) in [
            ("4ft12", QuantityError::OutOfOrder),
            ("4'-5'", QuantityError::OutOfOrder),
            ("4in3", QuantityError::NoUnit),
            ("4m3", QuantityError::NoUnit),
            ("4ft 3", QuantityError::NoUnit),
            ("4ft-3", QuantityError::NoUnit),
        ] {
            assert_eq!(Length::parse(text).unwrap_err(), error, "{text}");
        }
        for text in ["4'-", "4'--8\"", "-4'", "4-'8\"", "4–8 in", "4'–8\""] {
            assert!(Length::parse(text).is_err(), "{text}");
        }
    }

    #[test]
    fn what_is_no_length_is_refused() {
        let cases = [
            ("6", QuantityError::NoUnit),
            ("1.83", QuantityError::NoUnit),
            ("6 ft 4", QuantityError::NoUnit),
            ("-6 ft", QuantityError::Negative),
            ("1,830 m", QuantityError::AmbiguousComma),
            ("1.830,5 m", QuantityError::AmbiguousComma),
            ("6 yd", QuantityError::UnknownUnit("yd".into())),
            ("1e3 m", QuantityError::UnknownUnit("e".into())),
            ("0x10", QuantityError::UnknownUnit("x".into())),
            ("6 ft 14 in", QuantityError::OutOfOrder),
            ("4 in 6 ft", QuantityError::OutOfOrder),
            ("6 ft 4 cm", QuantityError::OutOfOrder),
            ("6.5 ft 1 in", QuantityError::OutOfOrder),
            ("99999999999 m", QuantityError::TooLarge("10 km")),
            ("10001 m", QuantityError::TooLarge("10 km")),
            ("1/3 mm", QuantityError::TooFine("a nanometre")),
            ("0.0000001 mm", QuantityError::TooFine("a nanometre")),
        ];
        for (text, error) in cases {
            assert_eq!(Length::parse(text).unwrap_err(), error, "{text}");
        }
        for text in ["", " ", "ft", "~", "six feet", "1/0 in", "6 ft\u{0}", "6 ft in", "1 2/1 in"] {
            assert!(Length::parse(text).is_err(), "{text:?}");
        }
    }
}
