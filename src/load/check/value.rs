//! Single texts read as what they stand for, each refusal worded with what
//! was expected and how to write it.
//!
//! A reader that ends in `_of` reads a text where it stands; the others read
//! what stands after a key, if anything does.

use crate::load::form::loose::OneOrMore;
use crate::load::read::fault::Fault;
use crate::load::read::problem::Wrong;
use crate::load::read::spot::{Spot, filled};
use crate::measure::{
    Currency, Day, DaySpan, Figure, Interval, LengthUnit, Money, QuantityError, QuantityKind,
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

    /// A calendar day.
    pub(crate) fn day(&self, key: &str, text: &Option<String>) -> Option<Day> {
        self.read(key, text, |spot, text| {
            let fault = match Day::parse(text) {
                Ok(day) => return Some(day),
                Err(QuantityError::NoSuchDay) => Fault::NoSuchDay,
                Err(_) => Fault::NoDay,
            };
            spot.wrong(fault).of(text).none()
        })
    }

    /// The first and last day of a span below this spot, in order.
    pub(crate) fn span(&self, from: &Option<String>, until: &Option<String>) -> DaySpan {
        let span = DaySpan { from: self.day("from", from), until: self.day("until", until) };
        self.in_order("until", span.from, span.until, Fault::SpanReversed);
        span
    }

    /// Tells of a day after a key that lies before another one.
    pub(crate) fn in_order(
        &self,
        key: &str,
        first: Option<Day>,
        last: Option<Day>,
        fault: fn(Day) -> Fault,
    ) {
        let (Some(first), Some(last)) = (first, last) else { return };
        if last < first {
            self.key(key).wrong(fault(first)).of(&last.to_string()).tell();
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
        read.or_else(|| self.wrong(Fault::NoInterval).of(text).none())
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
        self.wrong(Fault::NoFlag).of(text).none()
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
            self.wrong(Fault::UnknownWord).none_of(text, names).none()
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
        let fault = match number {
            Some(_) => Fault::OutOfRange { least, most },
            None => Fault::NoWholeNumber { least, most },
        };
        self.wrong(fault).of(text).none()
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
        self.figure_in(text.to_owned(), kind, LengthUnit::default())
    }

    /// A figure of a text that is kept as it is, of a length that people say
    /// in that unit.
    pub(crate) fn figure_in(
        &self,
        text: String,
        kind: QuantityKind,
        unit: LengthUnit,
    ) -> Option<Figure> {
        Figure::of_text(text, kind)
            .or_else(|(error, text)| self.no_figure(error, &text, kind, unit).none().ok_or(()))
            .ok()
    }

    /// A length, or a range of lengths, that stands here.
    pub(crate) fn range_of(&self, text: &str) -> Option<(Figure, Figure)> {
        let kind = QuantityKind::Length;
        let reads = |text: &str| Figure::parse_range(text, kind);
        let error = match reads(text) {
            Ok(range) => return Some(range),
            Err(error) => error,
        };
        let units = kind.units(LengthUnit::default());
        let meant = Figure::meant(text, &error, units, |text| reads(text).is_ok());
        self.wrong(Fault::NoFigure { error, kind, meant }).of(text).none()
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
            if let Some(wide) = words.find_wide_kind(text) {
                let known = wide.may_be.iter().map(|kind| words.kind(*kind).name.as_str());
                let known: Vec<&str> = known.collect();
                return self.wrong(Fault::MayBeSeveral).of(text).one_of(&known).none();
            }
            let open = |kind: &&Kind| classes.contains(&kind.class);
            let known = words.kinds.iter().filter(open).flat_map(kind_names);
            return self.wrong(Fault::UnknownKind).unlike(text, known).none();
        };
        let class = words.kind(id).class;
        if classes.contains(&class) {
            return Some(id);
        }
        let fault = Fault::WrongClass { is: class, wanted: classes.to_vec() };
        self.wrong(fault).of(text).none()
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
            let fault = match (days, number) {
                (Some(_), _) => Fault::LeadOutOfRange(LONGEST_LEAD),
                (None, Some(number)) if unit.is_empty() => {
                    Fault::LeadWithoutUnit { number, most: LONGEST_LEAD }
                }
                _ => Fault::NoLead(LONGEST_LEAD),
            };
            spot.wrong(fault).of(text).none()
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
        let fault = Fault::NoAmount { error, text: text.to_owned(), currency };
        self.wrong(fault).of(text).none()
    }

    /// Begins the problem of a text that is not the quantity that was expected.
    pub(crate) fn no_figure(
        &self,
        error: QuantityError,
        text: &str,
        kind: QuantityKind,
        unit: LengthUnit,
    ) -> Wrong<'_> {
        let reads = |text: &str| Figure::parse(text, kind).is_ok();
        let meant = Figure::meant(text, &error, kind.units(unit), reads);
        self.wrong(Fault::NoFigure { error, kind, meant }).of(text)
    }
}

/// The number that up to `most` digits make.
fn digits(text: &str, most: usize) -> Option<u32> {
    let plain = !text.is_empty() && text.len() <= most && text.bytes().all(|b| b.is_ascii_digit());
    plain.then(|| text.parse().ok()).flatten()
}

/// Every name of a kind.
pub(crate) fn kind_names(kind: &Kind) -> impl Iterator<Item = &str> {
    [kind.id.as_str(), kind.name.as_str()].into_iter().chain(kind.also.iter().map(String::as_str))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::load::check::phrase::limit;
    use crate::load::read::problem::Problems;
    use proptest::prelude::*;
    use std::sync::Arc;

    fn mend_of(text: &str, kind: QuantityKind) -> Option<String> {
        let (file, problems): (Arc<str>, _) = ("a.yaml".into(), Problems::default());
        assert!(Spot::top(&file, &problems).figure_of(text, kind).is_none(), "{text}");
        problems.into_found().remove(0).0.wording().mend
    }

    #[test]
    fn a_bare_number_is_told_in_the_unit_of_its_dimension() {
        let (file, problems): (Arc<str>, _) = ("a.yaml".into(), Problems::default());
        let top = Spot::top(&file, &problems);
        assert!(top.figure_in("18".to_owned(), QuantityKind::Length, LengthUnit::Inches).is_none());
        assert!(top.range_of("4-5").is_none());
        assert_eq!(told(problems), ["18 in", "18 cm", "4-5 ft", "4-5 m"]);
    }

    #[test]
    fn a_bare_number_shows_how_to_write_it() {
        assert_eq!(
            mend_of("6", QuantityKind::Length).unwrap(),
            "write `6 ft` or `6 m`, whichever was measured"
        );
        assert_eq!(mend_of("6 ft 4", QuantityKind::Length).unwrap(), "write `6 ft 4 in`");
        assert_eq!(
            mend_of("1,830 m", QuantityKind::Length).unwrap(),
            "write `1830 m` or `1.830 m`, whichever is meant"
        );
    }

    /// The texts in backticks of what mends a problem.
    fn told(problems: Problems) -> Vec<String> {
        let mends = problems.into_found().into_iter().filter_map(|(p, _)| p.wording().mend);
        mends
            .flat_map(|mend| {
                mend.split('`').skip(1).step_by(2).map(str::to_owned).collect::<Vec<_>>()
            })
            .collect()
    }

    proptest! {
        /// A figure that is suggested can be read where the other could not.
        #[test]
        fn what_a_mend_suggests_is_read(
            text in "( ?([0-9]{1,4}|[0-9],[0-9]{3}|[0-9]/[0-9]|½|\\.[0-9])( ?(ft|in|m|cm|mm|lb|kg|'|\"|’|”|degrees|/0|to|-|–|,|\\.))?){1,4}",
            inches in any::<bool>(),
        ) {
            let file: Arc<str> = "a.yaml".into();
            let unit = if inches { LengthUnit::Inches } else { LengthUnit::Feet };
            let kinds = [
                QuantityKind::Length,
                QuantityKind::Mass,
                QuantityKind::Angle,
                QuantityKind::HookSize,
                QuantityKind::Count,
            ];
            for kind in kinds {
                let problems = Problems::default();
                Spot::top(&file, &problems).figure_in(text.clone(), kind, unit);
                for told in told(problems) {
                    prop_assert!(Figure::parse(&told, kind).is_ok(), "{kind:?}: {text} -> {told}");
                }
                let problems = Problems::default();
                let top = Spot::top(&file, &problems);
                top.take(limit(&format!("at least {text}"), kind, unit, &top));
                top.take(limit(&text, kind, unit, &top));
                for told in told(problems) {
                    let again = Problems::default();
                    let reads = limit(&told, kind, unit, &Spot::top(&file, &again)).is_ok()
                        || Figure::parse(&told, kind).is_ok();
                    prop_assert!(reads, "{kind:?}: {text} -> {told}");
                }
            }
            let problems = Problems::default();
            Spot::top(&file, &problems).range_of(&text);
            for told in told(problems) {
                let reads = Figure::parse_range(&told, QuantityKind::Length).is_ok();
                prop_assert!(reads, "{text} -> {told}");
            }
        }
    }

    #[test]
    fn days_and_spans_are_judged() {
        let (file, problems): (Arc<str>, _) = ("a.yaml".into(), Problems::default());
        let top = Spot::top(&file, &problems);
        let text = |text: &str| Some(text.to_owned());
        assert!(top.day("on", &text("2026-02-30")).is_none());
        assert!(top.day("on", &text("  ")).is_none());
        top.span(&text("2026-02-02"), &text("2026-02-01"));
        let faults: Vec<_> = problems.into_found().into_iter().map(|(p, _)| p.fault).collect();
        let first = Day::parse("2026-02-02").unwrap();
        assert_eq!(faults, [Fault::NoSuchDay, Fault::SpanReversed(first)]);
    }
}
