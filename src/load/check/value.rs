//! Single texts read as what they stand for, each refusal worded with what
//! was expected and how to write it.

use crate::load::read::problem::{Problem, Problems};
use crate::load::read::spot::Spot;
use crate::load::read::suggest::{did_you_mean, nearest, or_list};
use crate::measure::{Day, DaySpan, Figure, Interval, QuantityError, QuantityKind};
use crate::model::vocabulary::{Class, Kind, KindId, Vocabulary};

/// The text without the space around it; none where nothing is left.
pub(crate) fn filled(text: Option<&str>) -> Option<&str> {
    text.map(str::trim).filter(|text| !text.is_empty())
}

/// The text as it is kept; none where nothing is left.
pub(crate) fn kept(text: Option<String>) -> Option<String> {
    let text = text?;
    let trimmed = text.trim();
    if trimmed.len() == text.len() {
        return (!text.is_empty()).then_some(text);
    }
    (!trimmed.is_empty()).then(|| trimmed.to_owned())
}

/// Whether the text says that something is not known.
pub(crate) fn is_unknown(text: &str) -> bool {
    text.trim().is_empty() || text.trim().eq_ignore_ascii_case("unknown")
}

/// Tells that a required key is missing.
pub(crate) fn missing(above: &Spot<'_>, key: &str, problems: &mut Problems, mend: &str) {
    let place = above.key(key).place();
    problems.add_at_key(Problem::new(place, format!("`{key}` is missing")).mend(mend));
}

/// A calendar day.
pub(crate) fn day(text: Option<&str>, spot: &Spot<'_>, problems: &mut Problems) -> Option<Day> {
    let text = filled(text)?;
    match Day::parse(text) {
        Ok(day) => Some(day),
        Err(error) => {
            let problem = match error {
                QuantityError::NoSuchDay => Problem::new(spot.place(), error.to_string())
                    .expected("a day of the years 1900 to 2999"),
                _ => Problem::new(spot.place(), "this is not a day").expected("a calendar day"),
            };
            let mend = "write year, month and day, like `2026-03-09`";
            problems.add(problem.offending(text).mend(mend));
            None
        }
    }
}

/// The first and last day of a span, in order.
pub(crate) fn span(
    from: Option<&str>,
    until: Option<&str>,
    above: &Spot<'_>,
    problems: &mut Problems,
) -> DaySpan {
    let span = DaySpan {
        from: day(from, &above.key("from"), problems),
        until: day(until, &above.key("until"), problems),
    };
    if let (Some(first), Some(last)) = (span.from, span.until)
        && last < first
    {
        problems.add(
            Problem::new(above.key("until").place(), "the last day lies before the first")
                .offending(&last.to_string())
                .expected(format!("a day on or after {first}")),
        );
    }
    span
}

/// An interval, like `12 months`, with or without `every` before it.
pub(crate) fn interval(text: &str, spot: &Spot<'_>, problems: &mut Problems) -> Option<Interval> {
    let bare = text.trim();
    let bare = bare.strip_prefix("every ").unwrap_or(bare);
    let read = Interval::parse(bare).ok();
    if read.is_none() {
        problems.add(
            Problem::new(spot.place(), "this is not an interval")
                .offending(text)
                .expected("a number of days, weeks, months or years")
                .mend("write it like `12 months`"),
        );
    }
    read
}

/// Yes or no.
pub(crate) fn flag(text: &str, spot: &Spot<'_>, problems: &mut Problems) -> Option<bool> {
    let word = text.trim();
    let is = |known: &&str| word.eq_ignore_ascii_case(known);
    if ["yes", "true"].iter().any(is) {
        return Some(true);
    }
    if ["no", "false"].iter().any(is) {
        return Some(false);
    }
    problems.add(
        Problem::new(spot.place(), "neither yes nor no").offending(text).expected("`yes` or `no`"),
    );
    None
}

/// One of several fixed words.
pub(crate) fn choice<T: Copy>(
    text: &str,
    words: &[(&str, T)],
    spot: &Spot<'_>,
    problems: &mut Problems,
) -> Option<T> {
    if let Some((_, meant)) = words.iter().find(|(word, _)| same_word(word, text.trim())) {
        return Some(*meant);
    }
    let names: Vec<&str> = words.iter().map(|(word, _)| *word).collect();
    problems.add(
        Problem::new(spot.place(), "this word is not known here")
            .offending(text)
            .expected(or_list(&names))
            .mend_if(did_you_mean(nearest(text, names.iter().copied()))),
    );
    None
}

/// A whole number from `least` to `most`.
pub(crate) fn count(
    text: &str,
    least: u32,
    most: u32,
    spot: &Spot<'_>,
    problems: &mut Problems,
) -> Option<u32> {
    let text = text.trim();
    let plain = !text.is_empty() && text.len() <= 9 && text.bytes().all(|b| b.is_ascii_digit());
    let number = plain.then(|| text.parse::<u32>().ok()).flatten();
    if number.is_some_and(|number| (least..=most).contains(&number)) {
        return number;
    }
    let what = if number.is_some() { "out of range" } else { "this is not a whole number" };
    problems.add(
        Problem::new(spot.place(), what)
            .offending(text)
            .expected(format!("a whole number from {least} to {most}")),
    );
    None
}

/// A figure of the given kind of quantity.
pub(crate) fn figure(
    text: &str,
    kind: QuantityKind,
    spot: &Spot<'_>,
    problems: &mut Problems,
) -> Option<Figure> {
    match Figure::parse(text, kind) {
        Ok(figure) => Some(figure),
        Err(error) => {
            problems.add(quantity_problem(&error, text, kind, spot));
            None
        }
    }
}

/// The same of a text that is kept as it is.
pub(crate) fn figure_of(
    text: String,
    kind: QuantityKind,
    spot: &Spot<'_>,
    problems: &mut Problems,
) -> Option<Figure> {
    match Figure::of_text(text, kind) {
        Ok(figure) => Some(figure),
        Err((error, text)) => {
            problems.add(quantity_problem(&error, &text, kind, spot));
            None
        }
    }
}

/// The problem of a text that is not the quantity that was expected.
pub(crate) fn quantity_problem(
    error: &QuantityError,
    text: &str,
    kind: QuantityKind,
    spot: &Spot<'_>,
) -> Problem {
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
    Problem::new(spot.place(), what).offending(text).expected(expected).mend_if(quantity_mend(
        error,
        text.trim(),
        kind,
    ))
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

/// A kind of the vocabulary, of one of these classes.
pub(crate) fn kind(
    text: &str,
    classes: &[Class],
    vocabulary: &Vocabulary,
    spot: &Spot<'_>,
    problems: &mut Problems,
) -> Option<KindId> {
    let Some(id) = vocabulary.find_kind(text) else {
        let open = |kind: &&Kind| classes.contains(&kind.class);
        let names = vocabulary.kinds.iter().filter(open).flat_map(kind_names);
        problems.add(
            Problem::new(spot.place(), "no kind of this name is known")
                .offending(text)
                .expected("a kind of the vocabulary, by id, name or synonym")
                .mend_if(did_you_mean(nearest(text, names))),
        );
        return None;
    };
    let class = vocabulary.kind(id).class;
    if classes.contains(&class) {
        return Some(id);
    }
    let wanted: Vec<&str> = classes.iter().map(|class| class_name(*class)).collect();
    let mend = match class {
        Class::Certificate => Some("write a certificate under the person who holds it".to_owned()),
        Class::Gear => Some("write fishing gear under `hooks` or `lines`".to_owned()),
        _ => None,
    };
    problems.add(
        Problem::new(spot.place(), format!("this is {}", class_name(class)))
            .offending(text)
            .expected(wanted.join(" or "))
            .mend_if(mend),
    );
    None
}

/// Every name of a kind.
pub(crate) fn kind_names(kind: &Kind) -> impl Iterator<Item = &str> {
    [kind.id.as_str(), kind.name.as_str()].into_iter().chain(kind.also.iter().map(String::as_str))
}

/// Whether two words are the same but for capitals.
pub(crate) fn same_word(one: &str, other: &str) -> bool {
    one == other || one.to_lowercase() == other.to_lowercase()
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::sync::Arc;

    fn mend_of(text: &str, kind: QuantityKind) -> Option<String> {
        let file: Arc<str> = "a.yaml".into();
        let mut problems = Problems::default();
        assert!(figure(text, kind, &Spot::top(&file), &mut problems).is_none(), "{text}");
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
        let file: Arc<str> = "a.yaml".into();
        let top = Spot::top(&file);
        let mut problems = Problems::default();
        assert!(day(Some("2026-02-30"), &top, &mut problems).is_none());
        assert!(day(Some("  "), &top, &mut problems).is_none());
        span(Some("2026-02-02"), Some("2026-02-01"), &top, &mut problems);
        let whats: Vec<_> = problems.into_found().into_iter().map(|(p, _)| p.what).collect();
        assert_eq!(whats, ["no such day in the calendar", "the last day lies before the first"]);
    }
}
