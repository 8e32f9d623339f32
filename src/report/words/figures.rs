//! Figures and limits in print, rounded to the side that misleads nobody.
//!
//! Imports `model` and `measure` only. A least is never printed smaller than
//! it is, a most never larger, a shortfall never smaller; what is aboard
//! stands as it was written.

use crate::measure::{Figure, Length, Percent, Quantity, QuantityKind, Rounding, System, Units};
use crate::model::reason::{Demand, Has};
use crate::model::rule::{Base, Bound, Limit};
use crate::report::Locale;

/// The finest mark on a customary tape: 1/64 in.
const SIXTY_FOURTH: i64 = 25_400_000 / 64;
/// The finest steps that are printed: 0.01 mm and 0.001 in.
const HUNDREDTH: i64 = 10_000;
const THOUSANDTH: i64 = 25_400;

/// What is aboard, as it was written.
pub(crate) fn aboard(has: &Has, locale: Locale) -> String {
    match has {
        Has::Figure(figure) => figure.show(locale.units, Rounding::Down),
        Has::Feature(yes) => yes_or_no(*yes).to_owned(),
        Has::Word(word) => word.clone(),
    }
}

/// What is asked, without its verb: `at least 6 ft (1.829 m)`, `yes`.
pub(crate) fn demand(demand: &Demand, locale: Locale) -> String {
    let up = |figure: &Figure| figure.show(locale.units, Rounding::Up);
    let down = |figure: &Figure| figure.show(locale.units, Rounding::Down);
    match demand {
        Demand::Least(figure) => format!("at least {}", up(figure)),
        Demand::Above(figure) => format!("more than {}", up(figure)),
        Demand::Most(figure) => format!("at most {}", down(figure)),
        Demand::Below(figure) => format!("less than {}", down(figure)),
        Demand::Between(low, high) if low.quantity == high.quantity => {
            format!("exactly {}", low.show_exact(locale.units))
        }
        Demand::Between(low, high) => format!("from {} to {}", up(low), down(high)),
        Demand::About(limit) => about(limit, locale),
        Demand::OneOf(words) => any_of(words),
        Demand::Is(yes) => yes_or_no(*yes).to_owned(),
        Demand::Open => "what a missing fact of the vessel decides".to_owned(),
    }
}

/// What a rule calls approximate, with the profile's margin. The low end
/// rounds up, the high end and the margin down, so that nothing passes on
/// paper that the check leaves open; a single figure has two sides and stands
/// to the last digit.
pub(crate) fn about(limit: &Limit, locale: Locale) -> String {
    match limit {
        Limit::About { low, high, margin } => {
            let margin = margin.show(locale.units, Rounding::Down);
            if low.quantity == high.quantity {
                return format!("about {}, within {margin}", low.show_exact(locale.units));
            }
            let (low, high) =
                (low.show(locale.units, Rounding::Up), high.show(locale.units, Rounding::Down));
            format!("about {low} to {high}, within {margin}")
        }
        _ => "what the rule calls approximate".to_owned(),
    }
}

/// A limit as the rule puts it, where the fact is missing that it is worked
/// out from: `at least the greater of 150 % of freeboard and 6 ft (1.829 m)`.
/// The governing figures are rounded here; what a rule itself rounds in
/// brackets never stands for them.
pub(crate) fn open_limit(limit: &Limit, locale: Locale) -> String {
    let up = |bound| open_bound(bound, &|figure| figure.show(locale.units, Rounding::Up));
    let down = |bound| open_bound(bound, &|figure| figure.show(locale.units, Rounding::Down));
    match limit {
        Limit::Any => "any".to_owned(),
        Limit::AtLeast(bound) => format!("at least {}", up(bound)),
        Limit::MoreThan(bound) => format!("more than {}", up(bound)),
        Limit::AtMost(bound) => format!("at most {}", down(bound)),
        Limit::LessThan(bound) => format!("less than {}", down(bound)),
        Limit::Within(low, high) if low == high => {
            format!("exactly {}", open_bound(low, &|figure| figure.show_exact(locale.units)))
        }
        Limit::Within(low, high) => format!("from {} to {}", up(low), down(high)),
        Limit::About { .. } => about(limit, locale),
    }
}

fn open_bound(bound: &Bound, show: &dyn Fn(&Figure) -> String) -> String {
    let all = |limbs: &[Bound]| {
        let limbs = limbs.iter().map(|limb| open_bound(limb, show));
        all_of(&limbs.collect::<Vec<_>>())
    };
    match bound {
        Bound::Fixed { figure, .. } => show(figure),
        Bound::Share(percent, base) => {
            let base = match base {
                Base::Freeboard => "freeboard",
                Base::HeaviestHook => "the heaviest hook aboard",
                Base::ThickestLine => "the thickest line aboard",
                Base::ThickestLeader => "the thickest leader aboard",
            };
            if *percent == Percent::ONE_HUNDRED && base != "freeboard" {
                return base.to_owned();
            }
            format!("{} of {base}", percent.to_string().replace('%', " %"))
        }
        Bound::Greater(limbs) => format!("the greater of {}", all(limbs)),
        Bound::Lesser(limbs) => format!("the lesser of {}", all(limbs)),
    }
}

/// A length that nobody wrote, led by the system that the reader thinks in.
pub(crate) fn length(length: Length, lead: System, locale: Locale, rounding: Rounding) -> String {
    beside(lead, locale, |system| length.show(system, rounding))
}

fn beside(lead: System, locale: Locale, show: impl Fn(System) -> String) -> String {
    match locale.units {
        Units::Metric => show(System::Metric),
        Units::Customary => show(System::Customary),
        Units::Both => format!("{} ({})", show(lead), show(lead.other())),
    }
}

/// A freeboard at which something was judged. One nanometre beyond a figure
/// that a tape can show is where a threshold was crossed: it prints as `just
/// over` that figure, never as the figure itself. It is no limit, so that it
/// rounds to the nearest mark of a tape.
pub(crate) fn freeboard(at: Length, lead: System, locale: Locale) -> String {
    let plain = |at: Length| beside(lead, locale, |system| at.show_nearest(system));
    if on_a_tape(at) {
        plain(at)
    } else if on_a_tape(at.just_below()) {
        format!("just over {}", plain(at.just_below()))
    } else if on_a_tape(at.just_above()) {
        format!("just under {}", plain(at.just_above()))
    } else {
        plain(at)
    }
}

/// The end of a stretch of freeboards, never printed larger than it is.
pub(crate) fn stretch_end(at: Length, lead: System, locale: Locale) -> String {
    let beside_a_mark = [at.just_below(), at.just_above()].into_iter().any(on_a_tape);
    if beside_a_mark && !on_a_tape(at) {
        freeboard(at, lead, locale)
    } else {
        length(at, lead, locale, Rounding::Down)
    }
}

fn on_a_tape(length: Length) -> bool {
    length.nanometres() % SIXTY_FOURTH == 0 || length.nanometres() % 100_000 == 0
}

/// By how much a length falls short or goes over, never printed smaller.
pub(crate) fn difference(by: Length, lead: System, locale: Locale) -> String {
    beside(lead, locale, |system| match system {
        System::Metric if by.nanometres() < HUNDREDTH => "less than 0.01 mm".to_owned(),
        System::Customary if by.nanometres() < THOUSANDTH => "less than 0.001 in".to_owned(),
        system => by.show(system, Rounding::Up),
    })
}

/// By how much a quantity misses its limit.
pub(crate) fn quantity_difference(by: Quantity, lead: System, locale: Locale) -> String {
    match by {
        Quantity::Length(by) => difference(by, lead, locale),
        Quantity::HookSize(_) => match by.steps() {
            1 => "1 size".to_owned(),
            sizes => format!("{sizes} sizes"),
        },
        Quantity::Mass(mass) if mass.micrograms() < 1_000_000 => "less than 1 g".to_owned(),
        // A mass prints rounded down, which would make a shortfall look
        // smaller than it is: a gram is added where something was dropped.
        Quantity::Mass(mass) => {
            let grams = (mass.micrograms() + 999_999) / 1_000_000;
            Quantity::from_steps(QuantityKind::Mass, grams * 1_000_000).show(lead, Rounding::Up)
        }
        other => other.show(lead, Rounding::Up),
    }
}

/// The system that a demand's author wrote in.
pub(crate) fn system_of(demand: &Demand) -> Option<System> {
    match demand {
        Demand::Least(figure)
        | Demand::Above(figure)
        | Demand::Most(figure)
        | Demand::Below(figure)
        | Demand::Between(figure, _) => Some(figure.system),
        Demand::About(_) | Demand::OneOf(_) | Demand::Is(_) | Demand::Open => None,
    }
}

/// `yes` or `no`.
pub(crate) fn yes_or_no(yes: bool) -> &'static str {
    if yes { "yes" } else { "no" }
}

/// `a, b or c`.
pub(crate) fn any_of(words: &[String]) -> String {
    joined(words, "or")
}

/// `a, b and c`.
pub(crate) fn all_of(words: &[String]) -> String {
    joined(words, "and")
}

fn joined(words: &[String], last: &str) -> String {
    match words {
        [] => String::new(),
        [only] => only.clone(),
        [head @ .., tail] => format!("{} {last} {tail}", head.join(", ")),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::sync::Arc;

    fn figure(text: &str) -> Figure {
        Figure::parse(text, QuantityKind::Length).unwrap()
    }

    fn nanometres(count: i64) -> Length {
        Length::from_nanometres(count).unwrap()
    }

    #[test]
    fn a_least_rounds_up_and_a_most_down() {
        let both = |demanded| demand(&demanded, Locale::from(Units::Both));
        assert_eq!(both(Demand::Least(figure("6 ft"))), "at least 6 ft (1.829 m)");
        assert_eq!(both(Demand::Most(figure("6 ft"))), "at most 6 ft (1.828 m)");
        assert_eq!(both(Demand::Above(figure("1.83 m"))), "more than 1.83 m (6 ft 1/16 in)");
        assert_eq!(
            both(Demand::Between(figure("16 in"), figure("24 in"))),
            "from 16 in (407 mm) to 24 in (609 mm)"
        );
        assert_eq!(
            both(Demand::Between(figure("5 mm"), figure("5 mm"))),
            "exactly 5 mm (about 0.197 in)"
        );
    }

    #[test]
    fn a_difference_finer_than_the_tape_says_so() {
        let customary =
            |count| difference(nanometres(count), System::Customary, Locale::from(Units::Both));
        assert_eq!(customary(1), "less than 0.001 in (less than 0.01 mm)");
        assert_eq!(customary(1_000_000), "0.04 in (1 mm)");
        assert_eq!(customary(12_700_000), "1/2 in (12.7 mm)");
        assert_eq!(customary(SIXTY_FOURTH), "1/64 in (0.4 mm)");
        let metric = |locale| difference(nanometres(12_700_001), System::Metric, locale);
        assert_eq!(metric(Locale::from(Units::Metric)), "12.71 mm");
        assert_eq!(metric(Locale::from(Units::Customary)), "0.501 in");
    }

    #[test]
    fn a_threshold_crossed_by_a_nanometre_is_told_from_the_threshold() {
        let four_feet = nanometres(1_219_200_000);
        let show = |at| freeboard(at, System::Customary, Locale::from(Units::Customary));
        assert_eq!(show(four_feet), "4 ft");
        assert_eq!(show(four_feet.just_above()), "just over 4 ft");
        assert_eq!(show(four_feet.just_below()), "just under 4 ft");
        assert_eq!(
            freeboard(nanometres(1_200_000_000), System::Metric, Locale::from(Units::Metric)),
            "1.2 m"
        );
    }

    #[test]
    fn a_stretch_never_seems_to_end_later_than_it_does() {
        // Two thirds of 6 ft 4 in: 4 ft 2 2/3 in, nearer to 11/16 than to 5/8.
        let show = |at| stretch_end(at, System::Customary, Locale::from(Units::Customary));
        assert_eq!(show(nanometres(1_286_933_333)), "4 ft 2 5/8 in");
        assert_eq!(show(nanometres(1_219_200_000)), "4 ft");
        assert_eq!(show(nanometres(1_219_199_999)), "just under 4 ft");
        let metric = |at| stretch_end(at, System::Metric, Locale::from(Units::Both));
        assert_eq!(metric(nanometres(1_220_000_000)), "1.22 m (4 ft)");
    }

    #[test]
    fn shortfalls_of_other_quantities_round_up_too() {
        let mass = Quantity::from_steps(QuantityKind::Mass, 1_000_001);
        assert_eq!(
            quantity_difference(mass, System::Metric, Locale::from(Units::Both)),
            "0.002 kg"
        );
        let sizes = Quantity::from_steps(QuantityKind::HookSize, 2);
        assert_eq!(
            quantity_difference(sizes, System::Metric, Locale::from(Units::Both)),
            "2 sizes"
        );
    }

    #[test]
    fn what_the_rule_calls_approximate_keeps_its_margin() {
        let limit =
            Limit::About { low: figure("12 in"), high: figure("12 in"), margin: figure("1 in") };
        let text = demand(&Demand::About(Arc::new(limit)), Locale::from(Units::Customary));
        assert_eq!(text, "about 12 in, within 1 in");
    }

    #[test]
    fn nothing_passes_on_paper_that_the_check_leaves_open() {
        // 4 in is 101.6 mm and 6 in 152.4 mm; within 1/2 in of them ends at
        // 88.9 mm and 165.1 mm, and 102 - 12.7 and 152 + 12.7 lie within.
        let about = |low, high, margin| Limit::About {
            low: figure(low),
            high: figure(high),
            margin: figure(margin),
        };
        let range = about("4 in", "6 in", "1/2 in");
        assert_eq!(
            super::about(&range, Locale::from(Units::Both)),
            "about 4 in (102 mm) to 6 in (152 mm), within 1/2 in (12.7 mm)"
        );
        let single = about("12 in", "12 in", "1/2 in");
        assert_eq!(
            super::about(&single, Locale::from(Units::Both)),
            "about 12 in (304.8 mm), within 1/2 in (12.7 mm)"
        );
        assert_eq!(
            super::about(&single, Locale::from(Units::Metric)),
            "about 304.8 mm, within 12.7 mm"
        );
    }

    #[test]
    fn a_limit_that_hangs_on_a_missing_fact_keeps_its_governing_figure() {
        let six = Bound::Fixed { figure: figure("6 ft"), bracket: Some("1.8 m".into()) };
        let share = |text| Bound::Share(Percent::parse(text).unwrap(), Base::Freeboard);
        let greater = Limit::AtLeast(Bound::Greater(vec![share("150%"), six.clone()]));
        for (locale, told) in [
            (
                Locale::from(Units::Both),
                "at least the greater of 150 % of freeboard and 6 ft (1.829 m)",
            ),
            (Locale::from(Units::Metric), "at least the greater of 150 % of freeboard and 1.829 m"),
            (Locale::from(Units::Customary), "at least the greater of 150 % of freeboard and 6 ft"),
        ] {
            assert_eq!(open_limit(&greater, locale), told);
        }
        let most = Limit::AtMost(Bound::Lesser(vec![share("100%"), six]));
        assert_eq!(
            open_limit(&most, Locale::from(Units::Both)),
            "at most the lesser of 100 % of freeboard and 6 ft (1.828 m)"
        );
    }

    #[test]
    fn words_are_joined_as_people_join_them() {
        let words = ["a", "b", "c"].map(str::to_owned);
        assert_eq!(any_of(&words), "a, b or c");
        assert_eq!(all_of(&words[..2]), "a and b");
        assert_eq!(any_of(&words[..1]), "a");
    }
}
