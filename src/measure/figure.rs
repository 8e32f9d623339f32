//! A quantity of any kind, and a figure: the quantity as its author wrote it.

use super::{Angle, HookSize, Length, Mass, QuantityError, Rounding, System, Units};

/// Which kind of quantity a dimension is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum QuantityKind {
    /// A length.
    Length,
    /// A mass.
    Mass,
    /// An angle.
    Angle,
    /// A trade hook size.
    HookSize,
    /// A whole number of things.
    Count,
}

/// A measured or demanded quantity, exact.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Quantity {
    /// A length in nanometres.
    Length(Length),
    /// A mass in micrograms.
    Mass(Mass),
    /// An angle in millidegrees.
    Angle(Angle),
    /// A trade hook size.
    HookSize(HookSize),
    /// A whole number of things.
    Count(u32),
}

impl QuantityKind {
    /// An example of how to write such a quantity, for messages.
    pub fn example(self) -> &'static str {
        match self {
            Self::Length => "6 ft 4 1/2 in",
            Self::Mass => "100 lb",
            Self::Angle => "10 degrees",
            Self::HookSize => "16/0",
            Self::Count => "2",
        }
    }

    /// The units in which such a quantity is said, the usual ones first, of
    /// which that of a length is told.
    pub fn units(self, length: LengthUnit) -> &'static [&'static str] {
        match (self, length) {
            (Self::Length, LengthUnit::Feet) => &["ft", "m", "in", "cm", "mm"],
            (Self::Length, LengthUnit::Inches) => &["in", "cm", "mm"],
            (Self::Mass, _) => &["lb", "kg"],
            (Self::Angle, _) => &["degrees"],
            (Self::HookSize | Self::Count, _) => &[],
        }
    }
}

impl Quantity {
    /// Which kind of quantity this is.
    pub fn kind(self) -> QuantityKind {
        match self {
            Self::Length(_) => QuantityKind::Length,
            Self::Mass(_) => QuantityKind::Mass,
            Self::Angle(_) => QuantityKind::Angle,
            Self::HookSize(_) => QuantityKind::HookSize,
            Self::Count(_) => QuantityKind::Count,
        }
    }

    /// The length, if it is one.
    pub fn length(self) -> Option<Length> {
        match self {
            Self::Length(length) => Some(length),
            _ => None,
        }
    }

    /// The count of smallest steps, comparable within one kind.
    pub fn steps(self) -> i64 {
        match self {
            Self::Length(length) => length.nanometres(),
            Self::Mass(mass) => mass.micrograms(),
            Self::Angle(angle) => angle.millidegrees(),
            Self::HookSize(size) => size.rank(),
            Self::Count(count) => i64::from(count),
        }
    }

    /// The quantity of a kind with that many smallest steps, stopping at the
    /// ends of what the kind can hold.
    pub fn from_steps(kind: QuantityKind, steps: i64) -> Self {
        match kind {
            QuantityKind::Length => Self::Length(Length::ZERO.plus(Length::raw(steps.max(0)))),
            QuantityKind::Mass => {
                Self::Mass(Mass::from_micrograms(steps.max(0)).unwrap_or_else(|| {
                    Mass::from_micrograms(0).unwrap_or_else(|| unreachable!("zero is a mass"))
                }))
            }
            QuantityKind::Angle => Self::Angle(
                Angle::from_millidegrees(steps.clamp(0, 360_000))
                    .unwrap_or_else(|| unreachable!("clamped into the circle")),
            ),
            QuantityKind::HookSize => Self::HookSize(
                HookSize::from_rank(steps.clamp(-98, 99))
                    .unwrap_or_else(|| unreachable!("clamped into the sizes")),
            ),
            QuantityKind::Count => Self::Count(u32::try_from(steps.max(0)).unwrap_or(u32::MAX)),
        }
    }

    /// In print, in one system, rounded to the safe side.
    pub fn show(self, system: System, rounding: Rounding) -> String {
        match self {
            Self::Length(length) => length.show(system, rounding),
            Self::Mass(mass) => mass.show(),
            Self::Angle(angle) => angle.show(),
            Self::HookSize(size) => size.show(),
            Self::Count(count) => count.to_string(),
        }
    }
}

/// The unit in which people say a length of some sort.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Hash)]
pub enum LengthUnit {
    /// Feet, or metres.
    #[default]
    Feet,
    /// Inches, or centimetres.
    Inches,
}

/// A quantity as its author wrote it.
#[derive(Debug, Clone, PartialEq, Eq, Hash)]
pub struct Figure {
    /// The exact quantity.
    pub quantity: Quantity,
    /// The author's own text.
    pub written: String,
    /// The system that the author wrote in.
    pub system: System,
}

impl Figure {
    /// Reads a figure of the given kind.
    ///
    /// # Errors
    /// As the quantity's own parser.
    pub fn parse(text: &str, kind: QuantityKind) -> Result<Self, QuantityError> {
        let text = text.trim();
        let (quantity, system) = read(text, kind)?;
        Ok(Self { quantity, written: text.to_owned(), system })
    }

    /// Reads a figure, or two with the lower first: `4 ft to 5 ft`, `4–5 ft`,
    /// `4-5 ft`. A figure without a unit has that of the one after it.
    ///
    /// # Errors
    /// As the quantity's own parser.
    pub fn parse_range(text: &str, kind: QuantityKind) -> Result<(Self, Self), QuantityError> {
        let error = match Self::parse(text, kind) {
            Ok(only) => return Ok((only.clone(), only)),
            Err(error) => error,
        };
        for (low, high) in RANGE_SIGNS.iter().filter_map(|sign| text.split_once(sign)) {
            let upper = match Self::parse(high, kind) {
                Ok(upper) => upper,
                Err(QuantityError::NoUnit) => return Err(QuantityError::NoUnit),
                Err(_) => continue,
            };
            if let Ok(lower) = Self::parse(low, kind) {
                return Ok((lower, upper));
            }
            let unit = high.trim_start_matches(|c: char| !c.is_alphabetic() && !is_mark(c));
            let unit = unit.split(|c: char| c.is_ascii_digit()).next().unwrap_or_default();
            let blank = if unit.starts_with(is_mark) { "" } else { " " };
            if let Ok(lower) = Self::parse(&format!("{}{blank}{unit}", low.trim()), kind) {
                return Ok((lower, upper));
            }
        }
        Err(error)
    }

    /// What a text may mean that is no figure, in the units of its dimension:
    /// only what is one, as `reads` tells.
    pub fn meant(
        text: &str,
        error: &QuantityError,
        units: &[&str],
        reads: impl Fn(&str) -> bool,
    ) -> Vec<String> {
        let text = text.trim();
        let tried: Vec<String> = match error {
            QuantityError::NoUnit => units.iter().map(|unit| format!("{text} {unit}")).collect(),
            QuantityError::AmbiguousComma => vec![text.replace(',', ""), text.replace(',', ".")],
            _ => Vec::new(),
        };
        tried.into_iter().filter(|text| reads(text)).take(2).collect()
    }

    /// The same of a text that becomes the figure's own.
    ///
    /// # Errors
    /// As [`Figure::parse`], with the text.
    pub fn of_text(text: String, kind: QuantityKind) -> Result<Self, (QuantityError, String)> {
        let bare = text.trim();
        match read(bare, kind) {
            Err(error) => Err((error, text)),
            Ok((quantity, system)) => {
                let written = if bare.len() == text.len() { text } else { bare.to_owned() };
                Ok(Self { quantity, written, system })
            }
        }
    }

    /// A figure that was worked out, not written: its text is its print.
    pub fn reckoned(quantity: Quantity, system: System, rounding: Rounding) -> Self {
        Self { quantity, written: quantity.show(system, rounding), system }
    }

    /// The length, if it is one.
    pub fn length(&self) -> Option<Length> {
        self.quantity.length()
    }

    /// In print for a reader: as written, with the other system beside it.
    pub fn show(&self, units: Units, rounding: Rounding) -> String {
        self.beside(units, |length, other| length.show(other, rounding))
    }

    /// Like [`Figure::show`], the other system to the nearest step.
    pub fn show_nearest(&self, units: Units) -> String {
        self.beside(units, Length::show_nearest)
    }

    /// Like [`Figure::show`], the other system to the last digit; where it
    /// cannot say that, the figure as written stays and the other is called
    /// about right.
    pub fn show_exact(&self, units: Units) -> String {
        let other = self.system.other();
        match self.length().map(|length| (length, length.show_exact(other))) {
            Some((length, None)) if units != self.system.alone() => {
                format!("{} (about {})", self.written, length.show_nearest(other))
            }
            Some((_, Some(exact))) => self.beside(units, |_, _| exact),
            _ => self.written.clone(),
        }
    }

    fn beside(&self, units: Units, other: impl FnOnce(Length, System) -> String) -> String {
        match self.length() {
            Some(length) if units == Units::Both => {
                format!("{} ({})", self.written, other(length, self.system.other()))
            }
            Some(length) if units != self.system.alone() => other(length, self.system.other()),
            _ => self.written.clone(),
        }
    }
}

/// What stands between the two figures of a range.
const RANGE_SIGNS: [&str; 4] = [" to ", "–", "—", "-"];

/// The marks that stand for feet and inches.
fn is_mark(c: char) -> bool {
    matches!(c, '\'' | '’' | '′' | '"' | '”' | '″')
}

/// The quantity of a text without space around it, and its system.
fn read(text: &str, kind: QuantityKind) -> Result<(Quantity, System), QuantityError> {
    Ok(match kind {
        QuantityKind::Length => {
            let (length, system) = Length::parse(text)?;
            (Quantity::Length(length), system)
        }
        QuantityKind::Mass => {
            let (mass, system) = Mass::parse(text)?;
            (Quantity::Mass(mass), system)
        }
        QuantityKind::Angle => (Quantity::Angle(Angle::parse(text)?), System::Metric),
        QuantityKind::HookSize => (Quantity::HookSize(HookSize::parse(text)?), System::Metric),
        QuantityKind::Count => (Quantity::Count(parse_count(text)?), System::Metric),
    })
}

fn parse_count(text: &str) -> Result<u32, QuantityError> {
    if text.starts_with('-') {
        return Err(QuantityError::Negative);
    }
    let digits = !text.is_empty() && text.bytes().all(|b| b.is_ascii_digit());
    if !digits || text.len() > 9 {
        return Err(QuantityError::Nonsense("a whole number"));
    }
    text.parse().map_err(|_| QuantityError::Nonsense("a whole number"))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_figure_prints_as_written_with_the_other_system_beside_it() {
        let figure = Figure::parse("6 ft 4 1/2 in", QuantityKind::Length).unwrap();
        assert_eq!(figure.show(Units::Both, Rounding::Up), "6 ft 4 1/2 in (1.944 m)");
        assert_eq!(figure.show(Units::Customary, Rounding::Up), "6 ft 4 1/2 in");
        assert_eq!(figure.show(Units::Metric, Rounding::Up), "1.944 m");
        let count = Figure::parse("2", QuantityKind::Count).unwrap();
        assert_eq!(count.show(Units::Both, Rounding::Up), "2");
    }

    #[test]
    fn the_text_is_kept_as_written_without_blanks_around_it() {
        for text in ["6 ft", " 6 ft", "6 ft  ", "\t6 ft "] {
            let figure = Figure::of_text(text.to_owned(), QuantityKind::Length).unwrap();
            assert_eq!(figure.written, "6 ft", "{text:?}");
        }
    }

    #[test]
    fn a_range_is_read_as_people_write_it() {
        let length = |text: &str| Length::parse(text).unwrap().0;
        for (text, low, high) in [
            ("4 ft to 5 ft", "4 ft", "5 ft"),
            ("4 to 5 ft", "4 ft", "5 ft"),
            ("4–5 ft", "4 ft", "5 ft"),
            ("4-5 ft", "4 ft", "5 ft"),
            ("4 – 5 ft 6 in", "4 ft", "5 ft 6 in"),
            ("4-4 1/2 ft", "4 ft", "4 ft 6 in"),
            ("4'–5'6\"", "4 ft", "5 ft 6 in"),
            ("4'-5'", "4 ft", "5 ft"),
            ("4-5'", "4 ft", "5 ft"),
            ("1.2-1.5 m", "1.2 m", "1.5 m"),
            ("4-1/2 ft", "4 ft 6 in", "4 ft 6 in"),
            ("4'-8\"", "4 ft 8 in", "4 ft 8 in"),
        ] {
            let (from, to) = Figure::parse_range(text, QuantityKind::Length).unwrap();
            assert_eq!(
                (from.length(), to.length()),
                (Some(length(low)), Some(length(high))),
                "{text}"
            );
        }
        for text in ["4-5", "4 to 5", "-5 ft", "4 ft-", "4-5-6 ft", "to 5 ft", "4 kg to 5 ft"] {
            assert!(Figure::parse_range(text, QuantityKind::Length).is_err(), "{text}");
        }
    }

    #[test]
    fn a_mass_keeps_the_system_of_its_unit() {
        let system = |text: &str| Figure::parse(text, QuantityKind::Mass).unwrap().system;
        for text in ["45 kg", "45 kilograms", "1 kilogram", "500 g", "500 grams", "1 gram"] {
            assert_eq!(system(text), System::Metric, "{text}");
        }
        for text in ["100 lb", "100 lbs", "100 lb.", "1 pound", "100 pounds"] {
            assert_eq!(system(text), System::Customary, "{text}");
        }
    }

    #[test]
    fn a_count_is_nine_plain_digits_at_most() {
        assert_eq!(parse_count("999999999"), Ok(999_999_999));
        assert_eq!(parse_count("-1"), Err(QuantityError::Negative));
        for text in ["1000000000", "0000000001", "", "+5", "5.0", "٣", "0x5"] {
            let said = Err(QuantityError::Nonsense("a whole number"));
            assert_eq!(parse_count(text), said, "{text}");
        }
    }

    #[test]
    fn an_exact_figure_keeps_its_last_digit_in_the_other_system() {
        let exact = |text: &str, units| {
            Figure::parse(text, QuantityKind::Length).unwrap().show_exact(units)
        };
        assert_eq!(exact("6 in", Units::Both), "6 in (152.4 mm)");
        assert_eq!(exact("6 in", Units::Metric), "152.4 mm");
        assert_eq!(exact("6 in", Units::Customary), "6 in");
        assert_eq!(exact("5 mm", Units::Both), "5 mm (about 0.197 in)");
        assert_eq!(exact("5 mm", Units::Customary), "5 mm (about 0.197 in)");
        assert_eq!(exact("5 mm", Units::Metric), "5 mm");
    }

    #[test]
    fn counts_are_whole() {
        for text in ["-1", "1.5", "", "1e3", "0x10", "9999999999"] {
            assert!(Figure::parse(text, QuantityKind::Count).is_err(), "{text}");
        }
    }
}
