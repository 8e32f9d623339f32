//! Reads figures as the files write them into whole numbers: nanometres,
//! micrograms, thousandths of a degree, days as `20260302`. A reading of its
//! own: nothing of the program's is used here, so that a slip in one of the
//! two shows as a disagreement.

/// What one of the unit is in the smallest whole unit of its quantity.
const UNITS: [(&str, i128); 13] = [
    ("ft", 304_800_000),
    ("in", 25_400_000),
    ("m", 1_000_000_000),
    ("cm", 10_000_000),
    ("mm", 1_000_000),
    ("lb", 453_592_370),
    ("kg", 1_000_000_000),
    ("g", 1_000_000),
    ("degrees", 1_000),
    ("degree", 1_000),
    ("months", 1),
    ("years", 12),
    ("", 1),
];

/// A number as written: `4`, `76.5`, `1/2`; numerator and denominator.
fn number(text: &str) -> Option<(i128, i128)> {
    if let Some((over, under)) = text.split_once('/') {
        return Some((over.parse().ok()?, under.parse().ok()?));
    }
    let (whole, part) = text.split_once('.').unwrap_or((text, ""));
    let scale = 10_i128.pow(u32::try_from(part.len()).ok()?);
    let whole: i128 = whole.parse().ok()?;
    let part: i128 = if part.is_empty() { 0 } else { part.parse().ok()? };
    Some((whole * scale + part, scale))
}

/// A figure with its unit, without the rule's own rounding in brackets:
/// `6 ft 4 1/2 in (1.94 m)`. A trade size of hook, `16/0`, is its number.
pub(crate) fn figure(text: &str) -> i64 {
    let plain = text.split(" (").next().unwrap_or_default().trim();
    if let Some(size) = plain.strip_suffix("/0") {
        return size.parse().unwrap_or_else(|_| panic!("no hook size: `{text}`"));
    }
    let mut sum = 0_i128;
    let mut waiting: Vec<(i128, i128)> = Vec::new();
    let mut take = |numbers: &mut Vec<(i128, i128)>, unit: i128| {
        for (over, under) in numbers.drain(..) {
            assert_eq!(over * unit % under, 0, "`{text}` is no whole number");
            sum += over * unit / under;
        }
    };
    for word in plain.split_whitespace() {
        if let Some(number) = number(word) {
            waiting.push(number);
            continue;
        }
        let unit = UNITS.iter().find(|(name, _)| *name == word);
        let (_, unit) = unit.unwrap_or_else(|| panic!("no unit: `{word}` in `{text}`"));
        take(&mut waiting, *unit);
    }
    take(&mut waiting, 1);
    i64::try_from(sum).unwrap_or_else(|_| panic!("too great: `{text}`"))
}

/// A day, `2026-03-02`, as the number 20260302.
pub(crate) fn day(text: &str) -> i64 {
    let digits: String = text.chars().filter(char::is_ascii_digit).collect();
    assert_eq!((text.len(), digits.len()), (10, 8), "no day: `{text}`");
    digits.parse().unwrap_or_else(|_| panic!("no day: `{text}`"))
}

fn month_length(year: i64, month: i64) -> i64 {
    match month {
        2 if year % 4 == 0 && (year % 100 != 0 || year % 400 == 0) => 29,
        2 => 28,
        4 | 6 | 9 | 11 => 30,
        _ => 31,
    }
}

/// The day after.
pub(crate) fn next(day: i64) -> i64 {
    let (year, month, date) = (day / 10_000, day / 100 % 100, day % 100);
    if date < month_length(year, month) {
        day + 1
    } else if month < 12 {
        year * 10_000 + (month + 1) * 100 + 1
    } else {
        (year + 1) * 10_000 + 101
    }
}

/// The day before.
pub(crate) fn previous(day: i64) -> i64 {
    let (year, month, date) = (day / 10_000, day / 100 % 100, day % 100);
    if date > 1 {
        day - 1
    } else if month > 1 {
        year * 10_000 + (month - 1) * 100 + month_length(year, month - 1)
    } else {
        (year - 1) * 10_000 + 1_231
    }
}

/// The day written out.
pub(crate) fn written(day: i64) -> String {
    format!("{:04}-{:02}-{:02}", day / 10_000, day / 100 % 100, day % 100)
}

#[test]
fn figures_are_read_as_written() {
    assert_eq!(figure("6 ft 4 1/2 in (1.94 m)"), 1_943_100_000);
    assert_eq!(figure("1 7/8 in"), 47_625_000);
    assert_eq!(figure("7.94 cm"), 79_400_000);
    assert_eq!(figure("1905.000001 mm"), 1_905_000_001);
    assert_eq!(figure("100 lb (34.1 kg)"), 45_359_237_000);
    assert_eq!(figure("16/0"), 16);
    assert_eq!(figure("40"), 40);
    assert_eq!(next(20_200_228), 20_200_229);
    assert_eq!(next(20_241_231), 20_250_101);
    assert_eq!(previous(20_240_301), 20_240_229);
    assert_eq!(written(day("2026-03-02")), "2026-03-02");
}
