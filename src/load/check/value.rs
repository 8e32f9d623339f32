//! Single texts read as what they stand for, each refusal worded with what
//! was expected and how to write it.
//!
//! A reader that ends in `_of` reads a text where it stands; the others read
//! what stands after a key, if anything does.

use crate::load::form::loose::OneOrMore;
use crate::load::read::problem::Wrong;
use crate::load::read::spot::{Spot, filled};
use crate::measure::{
    Currency, Day, DaySpan, Figure, Interval, Money, QuantityError, QuantityKind,
};
use crate::model::vocabulary::{Class, Kind, KindId, Vocabulary};

/// The longest lead, in days.
const LONGEST_LEAD: u32 = 730;

/// A currency with a coin as fine as almost any, to read amounts in where the
/// catalogue's own is not known.
const FINEST: &str = "KWD";

/// The text as it is kept; none where nothing is left.
pub(crate) fn kept(text: Option<String>) -> Option<String> {
    let text = text?;
    let trimmed = text.trim();
    if trimmed.len() == text.len() {
        return (!text.is_empty()).then_some(text);
    }
    (!trimmed.is_empty()).then(|| trimmed.to_owned())
}

/// A copy of the text as it is kept.
pub(crate) fn copied(text: &Option<String>) -> Option<String> {
    filled(text).map(str::to_owned)
}

/// Whether the text says that something is not known.
pub(crate) fn is_unknown(text: &str) -> bool {
    text.trim().is_empty() || text.trim().eq_ignore_ascii_case("unknown")
}

/// Whether two words are the same but for capitals.
pub(crate) fn same_word(one: &str, other: &str) -> bool {
    one == other || one.to_lowercase() == other.to_lowercase()
}

impl Spot<'_> {
    /// Reads what stands here, or every entry of the list that does.
    pub(crate) fn each_of<T, R>(
        &self,
        written: impl Into<OneOrMore<T>>,
        mut by: impl FnMut(&Spot<'_>, T) -> Option<R>,
    ) -> Vec<R> {
        match written.into() {
            OneOrMore::One(one) => by(self, one).into_iter().collect(),
            OneOrMore::Many(many) => {
                let entries = many.into_iter().enumerate();
                entries.filter_map(|(index, one)| by(&self.entry(index), one)).collect()
            }
        }
    }

    /// Tells that a list is longer than it may be.
    pub(crate) fn too_many(&self, key: &str, many: usize, what: &str, most: String) -> Wrong<'_> {
        self.wrong_key(key, format!("{many} {what} are too many"))
            .expected(format!("at most {most}"))
    }

    /// A calendar day.
    pub(crate) fn day(&self, key: &str, text: &Option<String>) -> Option<Day> {
        self.read(key, text, |spot, text| {
            let error = match Day::parse(text) {
                Ok(day) => return Some(day),
                Err(error) => error,
            };
            let wrong = match error {
                QuantityError::NoSuchDay => {
                    spot.wrong(error.to_string()).expected("a day of the years 1900 to 2999")
                }
                _ => spot.wrong("this is not a day").expected("a calendar day"),
            };
            wrong.of(text).mend("write year, month and day, like `2026-03-09`").none()
        })
    }

    /// The first and last day of a span below this spot, in order.
    pub(crate) fn span(&self, from: &Option<String>, until: &Option<String>) -> DaySpan {
        let span = DaySpan { from: self.day("from", from), until: self.day("until", until) };
        self.in_order("until", span.from, span.until, "the last day lies before the first");
        span
    }

    /// Tells of a day after a key that lies before another one.
    pub(crate) fn in_order(&self, key: &str, first: Option<Day>, last: Option<Day>, what: &str) {
        let (Some(first), Some(last)) = (first, last) else { return };
        if last < first {
            let wrong = self.key(key).wrong(what).of(&last.to_string());
            wrong.expected(format!("a day on or after {first}")).tell();
        }
    }

    /// An interval, like `12 months`, with or without `every` before it.
    pub(crate) fn interval(&self, key: &str, text: &Option<String>) -> Option<Interval> {
        self.read(key, text, |spot, text| spot.interval_of(text))
    }

    /// An interval that stands here.
    pub(crate) fn interval_of(&self, text: &str) -> Option<Interval> {
        let bare = text.trim();
        let read = Interval::parse(bare.strip_prefix("every ").unwrap_or(bare)).ok();
        read.or_else(|| {
            self.wrong("this is not an interval")
                .of(text)
                .expected("a number of days, weeks, months or years")
                .mend("write it like `12 months`")
                .none()
        })
    }

    /// Yes or no.
    pub(crate) fn flag(&self, key: &str, text: &Option<String>) -> Option<bool> {
        self.read(key, text, |spot, text| spot.flag_of(text))
    }

    /// Yes or no, that stands here.
    pub(crate) fn flag_of(&self, text: &str) -> Option<bool> {
        let is = |known: &&str| text.trim().eq_ignore_ascii_case(known);
        if ["yes", "true"].iter().any(is) {
            return Some(true);
        }
        if ["no", "false"].iter().any(is) {
            return Some(false);
        }
        self.wrong("neither yes nor no").of(text).expected("`yes` or `no`").none()
    }

    /// One of several fixed words.
    pub(crate) fn word<T: Copy>(
        &self,
        key: &str,
        text: &Option<String>,
        words: &[(&str, T)],
    ) -> Option<T> {
        self.read(key, text, |spot, text| spot.word_of(text, words))
    }

    /// One of several fixed words, that stands here.
    pub(crate) fn word_of<T: Copy>(&self, text: &str, words: &[(&str, T)]) -> Option<T> {
        let found = words.iter().find(|(word, _)| same_word(word, text.trim()));
        found.map(|(_, meant)| *meant).or_else(|| {
            let names = words.iter().map(|(word, _)| *word);
            self.wrong("this word is not known here").none_of(text, names).none()
        })
    }

    /// A whole number from `least` to `most`.
    pub(crate) fn count(
        &self,
        key: &str,
        text: &Option<String>,
        least: u32,
        most: u32,
    ) -> Option<u32> {
        self.read(key, text, |spot, text| spot.count_of(text, least, most))
    }

    /// A whole number that stands here.
    pub(crate) fn count_of(&self, text: &str, least: u32, most: u32) -> Option<u32> {
        let text = text.trim();
        let number = digits(text, 9);
        if number.is_some_and(|number| (least..=most).contains(&number)) {
            return number;
        }
        let what = if number.is_some() { "out of range" } else { "this is not a whole number" };
        let expected = format!("a whole number from {least} to {most}");
        self.wrong(what).of(text).expected(expected).none()
    }

    /// A figure of the given kind of quantity.
    pub(crate) fn figure(
        &self,
        key: &str,
        text: &Option<String>,
        kind: QuantityKind,
    ) -> Option<Figure> {
        self.read(key, text, |spot, text| spot.figure_of(text, kind))
    }

    /// A figure that stands here.
    pub(crate) fn figure_of(&self, text: &str, kind: QuantityKind) -> Option<Figure> {
        Figure::parse(text, kind)
            .or_else(|error| self.no_figure(&error, text, kind).none().ok_or(()))
            .ok()
    }

    /// A figure of a text that is kept as it is.
    pub(crate) fn figure_in(&self, text: String, kind: QuantityKind) -> Option<Figure> {
        Figure::of_text(text, kind)
            .or_else(|(error, text)| self.no_figure(&error, &text, kind).none().ok_or(()))
            .ok()
    }

    /// A kind of the vocabulary, of one of these classes.
    pub(crate) fn kind(
        &self,
        key: &str,
        text: &Option<String>,
        classes: &[Class],
        words: &Vocabulary,
    ) -> Option<KindId> {
        self.read(key, text, |spot, text| spot.kind_of(text, classes, words))
    }

    /// A kind that stands here.
    pub(crate) fn kind_of(
        &self,
        text: &str,
        classes: &[Class],
        words: &Vocabulary,
    ) -> Option<KindId> {
        let Some(id) = words.find_kind(text) else {
            let open = |kind: &&Kind| classes.contains(&kind.class);
            return self
                .wrong("no kind of this name is known")
                .unlike(text, words.kinds.iter().filter(open).flat_map(kind_names))
                .expected("a kind of the vocabulary, by id, name or synonym")
                .none();
        };
        let class = words.kind(id).class;
        if classes.contains(&class) {
            return Some(id);
        }
        let wanted: Vec<&str> = classes.iter().map(|class| class_name(*class)).collect();
        let mend = match class {
            Class::Certificate => Some("write a certificate under the person who holds it"),
            Class::Gear => Some("write fishing gear under `hooks` or `lines`"),
            _ => None,
        };
        self.wrong(format!("this is {}", class_name(class)))
            .of(text)
            .expected(wanted.join(" or "))
            .mend_if(mend.map(str::to_owned))
            .none()
    }

    /// How many calendar days after the order something is delivered.
    pub(crate) fn lead(&self, text: &Option<String>) -> Option<u32> {
        self.read("lead", text, |spot, text| {
            let (number, unit) = text.split_once(' ').unwrap_or((text, ""));
            let number = digits(number, 6);
            let days = match (number, unit.trim()) {
                (Some(number), "day" | "days") => Some(number),
                (Some(number), "week" | "weeks") => Some(number * 7),
                _ => None,
            };
            if let Some(days) = days.filter(|days| *days <= LONGEST_LEAD) {
                return Some(days);
            }
            let no_days = "this is not a number of days";
            let bare = number.filter(|_| unit.is_empty());
            spot.wrong(if days.is_some() { "out of range" } else { no_days })
                .of(text)
                .expected(format!("calendar days from 0 to {LONGEST_LEAD}, like `3 days`"))
                .mend_if(bare.map(|number| format!("write `{number} days`")))
                .none()
        })
    }

    /// An amount of money, without a currency sign; of no currency where that
    /// is not known, so that only what is no amount at all is told.
    pub(crate) fn amount_of(&self, text: &str, currency: Option<Currency>) -> Option<Money> {
        let read_in = currency.or_else(|| Currency::find(FINEST))?;
        let error = match Money::parse(text, read_in) {
            Ok(amount) => return Some(amount),
            Err(error) => error,
        };
        let example = if read_in.digits() > 0 { ["184.50", "1200.00"] } else { ["184", "1200"] };
        let what = match &error {
            QuantityError::Nonsense(_) => "this is not an amount of money".to_owned(),
            QuantityError::Negative => "an amount below zero".to_owned(),
            QuantityError::TooFine(_) => "finer than the smallest coin".to_owned(),
            other => other.to_string(),
        };
        let mend = match &error {
            QuantityError::Nonsense(_) if text.chars().any(|c| !c.is_ascii_digit() && c != '.') => {
                let once = "write the number alone; the currency stands once, after `currency`";
                Some(once.to_owned())
            }
            QuantityError::AmbiguousComma => {
                Some(format!("write it without a mark between thousands, like `{}`", example[1]))
            }
            _ => None,
        };
        let whose = currency.map(|currency| format!(" in {currency}")).unwrap_or_default();
        self.wrong(what)
            .of(text)
            .expected(format!("an amount{whose}, like `{}`", example[0]))
            .mend_if(mend)
            .none()
    }

    /// Begins the problem of a text that is not the quantity that was expected.
    pub(crate) fn no_figure(
        &self,
        error: &QuantityError,
        text: &str,
        kind: QuantityKind,
    ) -> Wrong<'_> {
        let example = kind.example();
        let expected = match kind {
            QuantityKind::Length => format!("a length with its unit, like `{example}` or `1.83 m`"),
            QuantityKind::Mass => format!("a mass with its unit, like `{example}` or `45.4 kg`"),
            QuantityKind::Angle => format!("an angle with its unit, like `{example}`"),
            QuantityKind::HookSize => format!("a trade hook size, like `{example}`"),
            QuantityKind::Count => format!("a whole number, like `{example}`"),
        };
        let what = match error {
            QuantityError::Nonsense(_) => "this cannot be read as a figure".to_owned(),
            other => other.to_string(),
        };
        let mend = quantity_mend(error, text.trim(), kind);
        self.wrong(what).of(text).expected(expected).mend_if(mend)
    }
}

/// The number that up to `most` digits make.
fn digits(text: &str, most: usize) -> Option<u32> {
    let plain = !text.is_empty() && text.len() <= most && text.bytes().all(|b| b.is_ascii_digit());
    plain.then(|| text.parse().ok()).flatten()
}

fn quantity_mend(error: &QuantityError, text: &str, kind: QuantityKind) -> Option<String> {
    match (error, kind) {
        (QuantityError::NoUnit, QuantityKind::Length) if text.contains([' ', '\'']) => {
            Some(format!("write the last unit too, like `{text} in`"))
        }
        (QuantityError::NoUnit, QuantityKind::Length) => {
            Some(format!("write `{text} ft` or `{text} m`, whichever was measured"))
        }
        (QuantityError::NoUnit, QuantityKind::Mass) => {
            Some(format!("write `{text} lb` or `{text} kg`, whichever was weighed"))
        }
        (QuantityError::NoUnit, QuantityKind::Angle) => Some(format!("write `{text} degrees`")),
        (QuantityError::UnknownUnit(_), QuantityKind::Length) => {
            Some("write it in ft and in, fathoms, m, cm or mm".to_owned())
        }
        (QuantityError::UnknownUnit(_), QuantityKind::Mass) => {
            Some("write it in lb, kg or g".to_owned())
        }
        (QuantityError::AmbiguousComma, _) => Some(format!(
            "write `{}` or `{}`, whichever is meant",
            text.replace(',', ""),
            text.replace(',', ".")
        )),
        (QuantityError::OutOfOrder, _) => Some(
            "write the larger unit first and the smaller below one of the larger, of one system"
                .to_owned(),
        ),
        (QuantityError::Negative, _) => Some("write it without the minus sign".to_owned()),
        _ => None,
    }
}

/// What a kind is called by its class, in a sentence.
fn class_name(class: Class) -> &'static str {
    match class {
        Class::Tool => "a tool",
        Class::Spare => "a set of spares",
        Class::Document => "a document",
        Class::Gear => "fishing gear",
        Class::Certificate => "a certificate",
    }
}

/// Every name of a kind.
pub(crate) fn kind_names(kind: &Kind) -> impl Iterator<Item = &str> {
    [kind.id.as_str(), kind.name.as_str()].into_iter().chain(kind.also.iter().map(String::as_str))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::load::read::problem::Problems;
    use std::sync::Arc;

    fn mend_of(text: &str, kind: QuantityKind) -> Option<String> {
        let (file, problems): (Arc<str>, _) = ("a.yaml".into(), Problems::default());
        assert!(Spot::top(&file, &problems).figure_of(text, kind).is_none(), "{text}");
        problems.into_found().remove(0).0.mend
    }

    #[test]
    fn a_bare_number_shows_how_to_write_it() {
        assert_eq!(
            mend_of("6", QuantityKind::Length).unwrap(),
            "write `6 ft` or `6 m`, whichever was measured"
        );
        assert_eq!(
            mend_of("6 ft 4", QuantityKind::Length).unwrap(),
            "write the last unit too, like `6 ft 4 in`"
        );
        assert_eq!(
            mend_of("1,830 m", QuantityKind::Length).unwrap(),
            "write `1830 m` or `1.830 m`, whichever is meant"
        );
    }

    #[test]
    fn days_and_spans_are_judged() {
        let (file, problems): (Arc<str>, _) = ("a.yaml".into(), Problems::default());
        let top = Spot::top(&file, &problems);
        let text = |text: &str| Some(text.to_owned());
        assert!(top.day("on", &text("2026-02-30")).is_none());
        assert!(top.day("on", &text("  ")).is_none());
        top.span(&text("2026-02-02"), &text("2026-02-01"));
        let whats: Vec<_> = problems.into_found().into_iter().map(|(p, _)| p.what).collect();
        assert_eq!(whats, ["no such day in the calendar", "the last day lies before the first"]);
    }
}
