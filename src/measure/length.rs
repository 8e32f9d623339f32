//! Lengths as whole nanometres.

use super::decimal::decimal;
use super::percent::Percent;

/// A length of zero or more, exact: a count of nanometres.
///
/// 1 in = 25.4 mm by definition (international yard and pound agreement of
/// 1959; NIST SP 811 Appendix B), so feet, inches, 1/64 in, fathoms and all
/// metric units land on whole nanometres.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Length(i64);

/// A family of units.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum System {
    /// Metres and their parts.
    Metric,
    /// Feet and inches.
    Customary,
}

impl System {
    /// The other one.
    pub fn other(self) -> Self {
        match self {
            Self::Metric => Self::Customary,
            Self::Customary => Self::Metric,
        }
    }

    /// A page in this system alone.
    pub fn alone(self) -> Units {
        match self {
            Self::Metric => Units::Metric,
            Self::Customary => Units::Customary,
        }
    }
}

/// Which units a page shows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Units {
    /// Metres and their parts only.
    Metric,
    /// Feet and inches only.
    Customary,
    /// As written, the other system beside it.
    #[default]
    Both,
}

/// To which side a printed figure is rounded, so that it misleads nobody.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Rounding {
    /// A minimum, or a shortfall: never printed smaller than it is.
    Up,
    /// A maximum, or what is aboard: never printed larger than it is.
    Down,
}

pub(super) const MILLIMETRE: i64 = 1_000_000;
pub(super) const INCH: i64 = 25_400_000;
pub(super) const FOOT: i64 = 12 * INCH;
/// The greatest length that is reckoned with: ten kilometres.
pub(super) const MOST: i64 = 10_000_000 * MILLIMETRE;
/// 1/64 in, the finest mark on a customary tape.
const TAPE_STEP: i64 = INCH / 64;
/// The step of a printed small length: 0.01 mm, or 0.001 in.
const SMALL_METRIC: i64 = MILLIMETRE / 100;
const SMALL_CUSTOMARY: i64 = INCH / 1000;

impl Length {
    /// No length at all.
    pub const ZERO: Self = Self(0);

    /// A count of nanometres; none if negative or above ten kilometres.
    pub const fn from_nanometres(count: i64) -> Option<Self> {
        if count < 0 || count > MOST { None } else { Some(Self(count)) }
    }

    /// A count of millimetres, clamped to what is reckoned with.
    pub fn from_millimetres(count: u32) -> Self {
        Self((i64::from(count) * MILLIMETRE).min(MOST))
    }

    pub(super) const fn raw(count: i64) -> Self {
        Self(count)
    }

    /// The exact count of nanometres.
    pub const fn nanometres(self) -> i64 {
        self.0
    }

    /// One nanometre more, stopping at the most that is reckoned with.
    pub fn just_above(self) -> Self {
        Self((self.0 + 1).min(MOST))
    }

    /// One nanometre less, stopping at zero.
    pub fn just_below(self) -> Self {
        Self((self.0 - 1).max(0))
    }

    /// The sum, stopping at the most that is reckoned with.
    pub fn plus(self, other: Self) -> Self {
        Self((self.0 + other.0).min(MOST))
    }

    /// The difference, zero if `other` is longer.
    pub fn less(self, other: Self) -> Self {
        Self((self.0 - other.0).max(0))
    }

    /// The smallest whole length that is at least `percent` of this.
    pub fn percent_up(self, percent: Percent) -> Self {
        let product = i128::from(self.0) * i128::from(percent.thousandths());
        clamp((product + i128::from(Percent::WHOLE - 1)) / i128::from(Percent::WHOLE))
    }

    /// The greatest whole length that is at most `percent` of this.
    pub fn percent_down(self, percent: Percent) -> Self {
        let product = i128::from(self.0) * i128::from(percent.thousandths());
        clamp(product / i128::from(Percent::WHOLE))
    }

    /// The greatest base of which `percent` is still at most this length;
    /// none for zero percent, where every base will do.
    pub fn greatest_base(self, percent: Percent) -> Option<Self> {
        if percent.thousandths() == 0 {
            return None;
        }
        let product = i128::from(self.0) * i128::from(Percent::WHOLE);
        Some(clamp(product / i128::from(percent.thousandths())))
    }

    /// In print, in one system, rounded to the safe side where the system
    /// cannot say it exactly: to 1/16 in or to the millimetre, and below an
    /// inch to 0.001 in or to 0.01 mm, where a coarser step would mislead.
    pub fn show(self, system: System, rounding: Rounding) -> String {
        let step = self.print_step(system);
        Self(round(self.0, step, rounding)).in_print(system)
    }

    /// In print, in one system, rounded to the nearest step: for what is
    /// neither a limit nor held against one, like a freeboard as it was
    /// measured.
    pub fn show_nearest(self, system: System) -> String {
        let step = self.print_step(system);
        Self(round(self.0 + step / 2, step, Rounding::Down)).in_print(system)
    }

    /// In print, in one system, to the last digit; `None` where the system
    /// has no tape mark or short decimal for it.
    pub fn show_exact(self, system: System) -> Option<String> {
        match system {
            System::Metric if self.0 < 1000 * MILLIMETRE => {
                Some(decimal(self.0, MILLIMETRE, 6, "mm"))
            }
            System::Metric => Some(self.show_metric_exact()),
            System::Customary => {
                (self.0 % self.print_step(system) == 0).then(|| self.in_print(system))
            }
        }
    }

    /// In metric print to the last digit, as a threshold needs it:
    /// 4 ft is `1.2192 m`.
    pub fn show_metric_exact(self) -> String {
        decimal(self.0, 1000 * MILLIMETRE, 9, "m")
    }

    fn print_step(self, system: System) -> i64 {
        match system {
            System::Metric if self.0 < INCH => SMALL_METRIC,
            System::Metric => MILLIMETRE,
            System::Customary if self.0 % TAPE_STEP == 0 => TAPE_STEP,
            System::Customary if self.0 < INCH => SMALL_CUSTOMARY,
            System::Customary => INCH / 16,
        }
    }

    /// A length that is a whole number of printed steps.
    fn in_print(self, system: System) -> String {
        match system {
            System::Metric if self.0 >= 1000 * MILLIMETRE => {
                decimal(self.0, 1000 * MILLIMETRE, 3, "m")
            }
            System::Metric => decimal(self.0, MILLIMETRE, 2, "mm"),
            System::Customary if self.0 % TAPE_STEP != 0 => decimal(self.0, INCH, 3, "in"),
            System::Customary => self.in_feet_and_inches(),
        }
    }

    fn in_feet_and_inches(self) -> String {
        let (feet, rest) = (self.0 / FOOT, self.0 % FOOT);
        let (inches, part) = (rest / INCH, rest % INCH / TAPE_STEP);
        let inches = inches_text(inches, part);
        match (feet, inches) {
            (0, Some(inches)) => format!("{inches} in"),
            (0, None) => "0 in".to_owned(),
            (feet, Some(inches)) => format!("{feet} ft {inches} in"),
            (feet, None) => format!("{feet} ft"),
        }
    }
}

fn clamp(count: i128) -> Length {
    Length(i64::try_from(count).unwrap_or(MOST).clamp(0, MOST))
}

fn round(count: i64, step: i64, rounding: Rounding) -> i64 {
    match rounding {
        Rounding::Up => (count + step - 1) / step * step,
        Rounding::Down => count / step * step,
    }
}

fn inches_text(whole: i64, sixty_fourths: i64) -> Option<String> {
    if sixty_fourths == 0 {
        return (whole > 0).then(|| whole.to_string());
    }
    let shift = sixty_fourths.trailing_zeros().min(6);
    let (top, bottom) = (sixty_fourths >> shift, 64 >> shift);
    Some(if whole > 0 { format!("{whole} {top}/{bottom}") } else { format!("{top}/{bottom}") })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::length::System::{Customary, Metric};

    fn length(text: &str) -> Length {
        Length::parse(text).unwrap().0
    }

    #[test]
    fn millimetres_are_counted_up_to_the_most() {
        assert_eq!(Length::from_millimetres(1).nanometres(), 1_000_000);
        assert_eq!(Length::from_millimetres(100), Length::parse("10 cm").unwrap().0);
        assert_eq!(Length::from_millimetres(u32::MAX), Length::parse("10000 m").unwrap().0);
    }

    #[test]
    fn from_a_metre_on_a_metric_length_is_in_metres() {
        assert_eq!(length("999.999999 mm").show_exact(Metric).unwrap(), "999.999999 mm");
        assert_eq!(length("1 m").show_exact(Metric).unwrap(), "1 m");
    }

    #[test]
    fn a_minimum_rounds_up_and_a_maximum_down() {
        let six_feet = length("6 ft");
        assert_eq!(six_feet.show(Metric, Rounding::Up), "1.829 m");
        assert_eq!(six_feet.show(Metric, Rounding::Down), "1.828 m");
        let metric = length("1.83 m");
        assert_eq!(metric.show(Customary, Rounding::Up), "6 ft 1/16 in");
        assert_eq!(metric.show(Customary, Rounding::Down), "6 ft");
    }

    #[test]
    fn a_threshold_prints_to_the_last_digit() {
        assert_eq!(length("4 ft").show_metric_exact(), "1.2192 m");
    }

    #[test]
    fn one_and_a_half_times_four_feet_three_is_six_feet_four_and_a_half() {
        let percent = Percent::parse("150%").unwrap();
        assert_eq!(length("4 ft 3 in").percent_up(percent), length("6 ft 4 1/2 in"));
        assert_eq!(length("4 ft 3 in").percent_down(percent), length("6 ft 4 1/2 in"));
    }

    #[test]
    fn a_percentage_that_is_no_whole_nanometre_is_never_rounded_into_a_pass() {
        // 150 % of 4 ft 1/64 in is 1 829 395 312.5 nm.
        let percent = Percent::parse("150%").unwrap();
        let base = length("4 ft 1/64 in");
        assert_eq!(base.percent_up(percent).nanometres(), 1_829_395_313);
        assert_eq!(base.percent_down(percent).nanometres(), 1_829_395_312);
    }

    #[test]
    fn the_greatest_base_is_the_inverse_of_the_percentage() {
        let percent = Percent::parse("150%").unwrap();
        let handle = length("6 ft 4 in");
        let base = handle.greatest_base(percent).unwrap();
        assert!(base.percent_up(percent) <= handle);
        assert!(base.just_above().percent_up(percent) > handle);
    }

    #[test]
    fn small_lengths_print_in_their_own_steps() {
        assert_eq!(length("3/16 in").show(Customary, Rounding::Up), "3/16 in");
        assert_eq!(length("2.1 mm").show(Metric, Rounding::Up), "2.1 mm");
        assert_eq!(length("1 mm").show(Customary, Rounding::Down), "0.039 in");
        assert_eq!(length("1 mm").show(Customary, Rounding::Up), "0.04 in");
        assert_eq!(length("2.1 mm").show(Customary, Rounding::Up), "0.083 in");
        assert_eq!(length("3/16 in").show(Metric, Rounding::Down), "4.76 mm");
        assert_eq!(length("1/2 in").show(Metric, Rounding::Up), "12.7 mm");
        assert_eq!(length("12 in").show(Customary, Rounding::Up), "1 ft");
        assert_eq!(length("25.399 mm").show(Customary, Rounding::Up), "1 in");
        assert_eq!(length("25.399 mm").show(Metric, Rounding::Up), "25.4 mm");
        assert_eq!(length("1 in").show(Metric, Rounding::Down), "25 mm");
    }

    #[test]
    fn what_is_no_limit_prints_to_the_nearest_step() {
        assert_eq!(length("4 ft 6 in").show_nearest(Metric), "1.372 m");
        assert_eq!(length("4 ft 6 in").show(Metric, Rounding::Down), "1.371 m");
        assert_eq!(length("1.20 m").show_nearest(Customary), "3 ft 11 1/4 in");
        assert_eq!(length("1.85 m").show_nearest(Customary), "6 ft 13/16 in");
        assert_eq!(length("3 ft").show_nearest(Customary), "3 ft");
    }

    #[test]
    fn an_exact_figure_prints_exactly_or_not_at_all() {
        assert_eq!(length("6 in").show_exact(Metric).unwrap(), "152.4 mm");
        assert_eq!(length("3/16 in").show_exact(Metric).unwrap(), "4.7625 mm");
        assert_eq!(length("4 ft").show_exact(Metric).unwrap(), "1.2192 m");
        assert_eq!(length("304.8 mm").show_exact(Customary).unwrap(), "1 ft");
        assert_eq!(length("2.54 mm").show_exact(Customary).unwrap(), "0.1 in");
        assert_eq!(length("5 mm").show_exact(Customary), None);
        assert_eq!(length("1 m").show_exact(Customary), None);
    }
}
