//! Every other figure: what is read prints and reads again to the same.

use kitmuster::measure::{
    Angle, Currency, Day, Figure, HookSize, Interval, Mass, Money, Percent, Quantity,
    QuantityError, QuantityKind, Rounding, Units,
};

const KINDS: [QuantityKind; 5] = [
    QuantityKind::Length,
    QuantityKind::Mass,
    QuantityKind::Angle,
    QuantityKind::HookSize,
    QuantityKind::Count,
];

/// A gram in micrograms: the last digit of a mass in print.
const GRAM: i64 = 1_000_000;

pub fn run(text: &str) {
    if let Some(angle) = sound(Angle::parse(text)) {
        assert_eq!(Angle::parse(&angle.show()), Ok(angle));
        assert_eq!(Angle::from_millidegrees(angle.millidegrees()), Some(angle));
    }
    if let Some((mass, _)) = sound(Mass::parse(text)) {
        let (shown, _) = Mass::parse(&mass.show()).expect("a mass in print");
        assert!((0..GRAM).contains(&(mass.micrograms() - shown.micrograms())));
        assert_eq!(Mass::from_micrograms(mass.micrograms()), Some(mass));
    }
    if let Some(size) = sound(HookSize::parse(text)) {
        assert_eq!(HookSize::parse(&size.show()), Ok(size));
        assert_eq!(HookSize::from_rank(size.rank()), Some(size));
    }
    if let Some(percent) = sound(Percent::parse(text)) {
        assert_eq!(Percent::parse(&percent.to_string()), Ok(percent));
    }
    if let Some(day) = sound(Day::parse(text)) {
        assert_eq!(Day::parse(&day.to_string()), Ok(day));
        assert_eq!(day.next().days_since(day), 1);
        assert_eq!(day.next().previous(), day);
    }
    if let Some(interval) = sound(Interval::parse(text)) {
        assert_eq!(Interval::parse(&interval.to_string()), Ok(interval));
        let day = crate::aboard::day();
        let through = day.through(interval);
        assert!(through >= day, "{interval} after {day} is {through}");
        if let Interval::Days(days) = interval {
            assert_eq!(through.days_since(day), i64::from(days) - 1);
        }
    }
    for code in ["USD", "JPY", "KWD"] {
        money(text, Currency::find(code).expect("a currency"));
    }
    for kind in KINDS {
        figure(text, kind);
    }
}

/// What was read; a refusal has words.
fn sound<T>(read: Result<T, QuantityError>) -> Option<T> {
    match read {
        Ok(read) => Some(read),
        Err(error) => {
            assert!(!error.to_string().trim().is_empty());
            None
        }
    }
}

fn money(text: &str, currency: Currency) {
    let Some(amount) = sound(Money::parse(text, currency)) else { return };
    assert_eq!(Money::parse(&amount.show(currency), currency), Ok(amount));
    assert_eq!(Money::of_coins(amount.coins(currency), currency), amount);
    assert_eq!(amount.tax(Percent::ONE_HUNDRED, currency), amount);
    assert_eq!(amount.plus(amount), amount.times(2));
    assert_eq!(amount.plus(amount).less(amount), amount);
}

fn figure(text: &str, kind: QuantityKind) {
    let Some(figure) = sound(Figure::parse(text, kind)) else { return };
    assert_eq!(figure.quantity.kind(), kind);
    assert_eq!(Quantity::from_steps(kind, figure.quantity.steps()), figure.quantity);
    assert_eq!(Figure::parse(&figure.written, kind).as_ref(), Ok(&figure));
    assert_eq!(Figure::of_text(text.to_owned(), kind).as_ref(), Ok(&figure));
    for units in [Units::Metric, Units::Customary, Units::Both] {
        for rounding in [Rounding::Up, Rounding::Down] {
            assert!(!figure.show(units, rounding).is_empty());
        }
        assert!(!figure.show_exact(units).is_empty());
        assert!(!figure.show_nearest(units).is_empty());
    }
}
