//! Calendar days, spans of days and intervals.

use super::QuantityError;
use chrono::{Datelike, Days, Months, NaiveDate};

/// A calendar day, without time or zone.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Day(NaiveDate);

impl Day {
    /// Reads `2026-03-09`, years 1900 to 2999.
    ///
    /// # Errors
    /// Another form, or a day that the calendar does not have.
    pub fn parse(text: &str) -> Result<Self, QuantityError> {
        let nonsense = QuantityError::Nonsense("a day, like `2026-03-09`");
        let bytes = text.trim().as_bytes();
        let shaped = bytes.len() == 10
            && bytes.iter().enumerate().all(|(i, b)| match i {
                4 | 7 => *b == b'-',
                _ => b.is_ascii_digit(),
            });
        if !shaped {
            return Err(nonsense);
        }
        let number = |digits: &[u8]| digits.iter().fold(0, |n, d| n * 10 + u32::from(d - b'0'));
        let (year, month, day) = (number(&bytes[..4]), number(&bytes[5..7]), number(&bytes[8..]));
        i32::try_from(year)
            .ok()
            .filter(|year| (1900..3000).contains(year))
            .and_then(|year| NaiveDate::from_ymd_opt(year, month, day))
            .map(Self)
            .ok_or(QuantityError::NoSuchDay)
    }

    /// The day of a calendar date.
    pub fn from_date(date: NaiveDate) -> Self {
        Self(date)
    }

    /// The next day.
    pub fn next(self) -> Self {
        Self(self.0.succ_opt().unwrap_or(self.0))
    }

    /// The day before.
    pub fn previous(self) -> Self {
        Self(self.0.pred_opt().unwrap_or(self.0))
    }

    /// The month, 1 to 12.
    pub fn month(self) -> u8 {
        u8::try_from(self.0.month()).unwrap_or(12)
    }

    /// Days from `other` to this day; negative if it lies before.
    pub fn days_since(self, other: Self) -> i64 {
        self.0.signed_duration_since(other.0).num_days()
    }

    /// The last day on which something dated this day is still good for
    /// `interval`: the day before the anniversary, where an anniversary that
    /// the month does not have is the month's last day (so the shorter of the
    /// two ways to count governs: 29 February plus a year runs to 27
    /// February).
    pub fn through(self, interval: Interval) -> Self {
        let anniversary = match interval {
            Interval::Days(days) => self.0.checked_add_days(Days::new(u64::from(days))),
            Interval::Months(months) => self.0.checked_add_months(Months::new(months)),
        };
        Self(anniversary.unwrap_or(NaiveDate::MAX)).previous()
    }
}

impl std::fmt::Display for Day {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{}", self.0.format("%Y-%m-%d"))
    }
}

/// How long something stays good.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Interval {
    /// A number of days; a week is seven.
    Days(u32),
    /// A number of months; a year is twelve.
    Months(u32),
}

impl Interval {
    /// Reads `12 months`, `3 years`, `90 days`, `2 weeks`.
    ///
    /// # Errors
    /// Another form, zero, or more than a century.
    pub fn parse(text: &str) -> Result<Self, QuantityError> {
        let nonsense = QuantityError::Nonsense("an interval, like `12 months`");
        let (number, unit) = text.trim().split_once(' ').ok_or(nonsense.clone())?;
        let number: u32 = number.parse().map_err(|_| nonsense.clone())?;
        if number == 0 || number > 36_500 {
            return Err(nonsense);
        }
        match unit.trim() {
            "day" | "days" => Ok(Self::Days(number)),
            "week" | "weeks" if number <= 5200 => Ok(Self::Days(number * 7)),
            "month" | "months" if number <= 1200 => Ok(Self::Months(number)),
            "year" | "years" if number <= 100 => Ok(Self::Months(number * 12)),
            _ => Err(nonsense),
        }
    }
}

impl std::fmt::Display for Interval {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        let (number, unit) = match self {
            Self::Months(months) if months % 12 == 0 && *months > 12 => (months / 12, "year"),
            Self::Months(months) => (*months, "month"),
            Self::Days(days) => (*days, "day"),
        };
        write!(f, "{number} {unit}{}", if number == 1 { "" } else { "s" })
    }
}

/// A span of days, open on either side; both ends count.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Hash)]
pub struct DaySpan {
    /// The first day, if there is one.
    pub from: Option<Day>,
    /// The last day, if there is one.
    pub until: Option<Day>,
}

impl DaySpan {
    /// Every day.
    pub const ALWAYS: Self = Self { from: None, until: None };

    /// Whether the day lies in the span.
    pub fn holds(self, day: Day) -> bool {
        self.from.is_none_or(|from| from <= day) && self.until.is_none_or(|until| day <= until)
    }

    /// Whether the two spans share a day.
    pub fn meets(self, other: Self) -> bool {
        let before = |end: Option<Day>, start: Option<Day>| {
            end.zip(start).is_some_and(|(end, start)| end < start)
        };
        !before(self.until, other.from) && !before(other.until, self.from)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn day(text: &str) -> Day {
        Day::parse(text).unwrap()
    }

    #[test]
    fn days_that_the_calendar_lacks_are_refused() {
        for text in ["2026-02-30", "2025-02-29", "2026-13-01", "0000-01-01", "9999-01-01"] {
            assert_eq!(Day::parse(text).unwrap_err(), QuantityError::NoSuchDay, "{text}");
        }
        for text in ["2026-3-9", "09/03/2026", "", "yesterday", "2026-03-09T10:00", "+026-03-09"] {
            assert!(Day::parse(text).is_err(), "{text}");
        }
    }

    #[test]
    fn a_year_runs_to_the_day_before_the_anniversary() {
        let year = Interval::parse("12 months").unwrap();
        assert_eq!(day("2026-03-09").through(year), day("2027-03-08"));
        assert_eq!(day("2024-02-29").through(year), day("2025-02-27"));
        assert_eq!(day("2026-01-31").through(Interval::Months(1)), day("2026-02-27"));
        assert_eq!(
            day("2026-01-01").through(Interval::parse("2 weeks").unwrap()),
            day("2026-01-14")
        );
    }

    #[test]
    fn spans_count_both_ends() {
        let span = DaySpan { from: Some(day("2026-01-01")), until: Some(day("2026-01-31")) };
        assert!(span.holds(day("2026-01-01")) && span.holds(day("2026-01-31")));
        assert!(!span.holds(day("2026-02-01")) && !span.holds(day("2025-12-31")));
        let touching = DaySpan { from: Some(day("2026-01-31")), until: None };
        assert!(span.meets(touching) && touching.meets(span));
        assert!(!span.meets(DaySpan { from: Some(day("2026-02-01")), until: None }));
    }

    #[test]
    fn intervals_are_read_and_printed() {
        for text in ["12 months", "3 years", "90 days", "1 day", "1 month"] {
            assert_eq!(Interval::parse(text).unwrap().to_string(), text);
        }
        for text in ["0 days", "12", "months", "-1 month", "1e3 days", "101 years"] {
            assert!(Interval::parse(text).is_err(), "{text}");
        }
    }

    #[test]
    fn an_interval_is_a_century_at_most() {
        let read = |text: &str| Interval::parse(text).ok();
        assert_eq!(read("36500 days"), Some(Interval::Days(36_500)));
        assert_eq!(read("5200 weeks"), Some(Interval::Days(36_400)));
        assert_eq!(read("1200 months"), Some(Interval::Months(1200)));
        assert_eq!(read("100 years"), Some(Interval::Months(1200)));
        for text in ["36501 days", "40000 days", "5201 weeks", "1201 months", "101 years"] {
            assert_eq!(read(text), None, "{text}");
        }
    }
}
