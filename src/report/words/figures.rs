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
        Has::Feature(yes) => yes_or_no(*yes, locale).to_owned(),
        Has::Word(word) => word.clone(),
    }
}

/// What is asked, without its verb: `at least 6 ft (1.829 m)`, `yes`.
pub(crate) fn demand(demand: &Demand, locale: Locale) -> String {
    let up = |figure: &Figure| figure.show(locale.units, Rounding::Up);
    let down = |figure: &Figure| figure.show(locale.units, Rounding::Down);
    match demand {
        Demand::Least(figure) => locale.demand_least(&up(figure)),
        Demand::Above(figure) => locale.demand_above(&up(figure)),
        Demand::Most(figure) => locale.demand_most(&down(figure)),
        Demand::Below(figure) => locale.demand_below(&down(figure)),
        Demand::Between(low, high) if low.quantity == high.quantity => {
            locale.demand_exactly(&low.show_exact(locale.units))
        }
        Demand::Between(low, high) => locale.demand_between(&up(low), &down(high)),
        Demand::About(limit) => about(limit, locale),
        Demand::OneOf(words) => any_of(words, locale),
        Demand::Is(yes) => yes_or_no(*yes, locale).to_owned(),
        Demand::Open => locale.demand_open().to_owned(),
    }
}

/// What a rule calls approximate, with the profile's margin. The low end
/// rounds up, the high end and the margin down, so that nothing passes on
/// paper that the check leaves open; a single figure has two sides and stands
/// to the last digit.
pub(crate) fn about(limit: &Limit, locale: Locale) -> String {
    let down = |figure: &Figure| figure.show(locale.units, Rounding::Down);
    match limit {
        Limit::About { low, high, margin } if low.quantity == high.quantity => {
            locale.demand_about(&low.show_exact(locale.units), &down(margin))
        }
        Limit::About { low, high, margin } => {
            let low = low.show(locale.units, Rounding::Up);
            locale.demand_about_between(&low, &down(high), &down(margin))
        }
        _ => locale.demand_approximate().to_owned(),
    }
}

/// A limit as the rule puts it, where the fact is missing that it is worked
/// out from: `at least the greater of 150 % of freeboard and 6 ft (1.829 m)`.
/// The governing figures are rounded here; what a rule itself rounds in
/// brackets never stands for them.
pub(crate) fn open_limit(limit: &Limit, locale: Locale) -> String {
    let up = |bound| open_bound(bound, locale, &|figure| figure.show(locale.units, Rounding::Up));
    let down =
        |bound| open_bound(bound, locale, &|figure| figure.show(locale.units, Rounding::Down));
    let exact = |bound| open_bound(bound, locale, &|figure| figure.show_exact(locale.units));
    match limit {
        Limit::Any => locale.demand_any().to_owned(),
        Limit::AtLeast(bound) => locale.demand_least(&up(bound)),
        Limit::MoreThan(bound) => locale.demand_above(&up(bound)),
        Limit::AtMost(bound) => locale.demand_most(&down(bound)),
        Limit::LessThan(bound) => locale.demand_below(&down(bound)),
        Limit::Within(low, high) if low == high => locale.demand_exactly(&exact(low)),
        Limit::Within(low, high) => locale.demand_between(&up(low), &down(high)),
        Limit::About { .. } => about(limit, locale),
    }
}

fn open_bound(bound: &Bound, locale: Locale, show: &dyn Fn(&Figure) -> String) -> String {
    let all = |limbs: &[Bound]| {
        let limbs = limbs.iter().map(|limb| open_bound(limb, locale, show));
        all_of(&limbs.collect::<Vec<_>>(), locale)
    };
    match bound {
        Bound::Fixed { figure, .. } => show(figure),
        Bound::Share(percent, base) => {
            let told = match base {
                Base::Freeboard => locale.base_freeboard(),
                Base::HeaviestHook => locale.base_heaviest_hook(),
                Base::ThickestLine => locale.base_thickest_line(),
                Base::ThickestLeader => locale.base_thickest_leader(),
            };
            if *percent == Percent::ONE_HUNDRED && *base != Base::Freeboard {
                return told.to_owned();
            }
            locale.bound_share(&percent.to_string().replace('%', " %"), &told)
        }
        Bound::Greater(limbs) => locale.bound_greater(&all(limbs)),
        Bound::Lesser(limbs) => locale.bound_lesser(&all(limbs)),
    }
}

/// A length that nobody wrote, led by the system that the reader thinks in.
pub(crate) fn length(length: Length, lead: System, locale: Locale, rounding: Rounding) -> String {
    beside(lead, locale, |system| length.show(system, rounding))
}

/// What `show` makes of it in the units of the page, the leading system first.
pub(super) fn beside(lead: System, locale: Locale, show: impl Fn(System) -> String) -> String {
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
        locale.freeboard_just_over(&plain(at.just_below()))
    } else if on_a_tape(at.just_above()) {
        locale.freeboard_just_under(&plain(at.just_above()))
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
        System::Metric if by.nanometres() < HUNDREDTH => locale.difference_below(&"0.01 mm"),
        System::Customary if by.nanometres() < THOUSANDTH => locale.difference_below(&"0.001 in"),
        system => by.show(system, Rounding::Up),
    })
}

/// By how much a quantity misses its limit.
pub(crate) fn quantity_difference(by: Quantity, lead: System, locale: Locale) -> String {
    match by {
        Quantity::Length(by) => difference(by, lead, locale),
        Quantity::HookSize(_) => locale.difference_sizes(by.steps().unsigned_abs()),
        Quantity::Mass(mass) if mass.micrograms() < 1_000_000 => locale.difference_below(&"1 g"),
        // A mass prints rounded down, which would make a shortfall look
        // smaller than it is: a gram is added where something was dropped.
        Quantity::Mass(mass) => {
            let grams = (mass.micrograms() + 999_999) / 1_000_000;
            Quantity::from_steps(QuantityKind::Mass, grams * 1_000_000).show(lead, Rounding::Up)
        }
        other => other.show(lead, Rounding::Up),
    }
}

fn yes_or_no(yes: bool, locale: Locale) -> &'static str {
    if yes { locale.yes() } else { locale.no() }
}

/// `a, b or c`.
pub(crate) fn any_of(words: &[String], locale: Locale) -> String {
    joined(words, |head, last| locale.list_any(&head, last))
}

/// `a, b and c`.
pub(crate) fn all_of(words: &[String], locale: Locale) -> String {
    joined(words, |head, last| locale.list_all(&head, last))
}

fn joined(words: &[String], with_last: impl Fn(String, &String) -> String) -> String {
    match words {
        [] => String::new(),
        [only] => only.clone(),
        [head @ .., last] => with_last(head.join(", "), last),
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
    fn every_limit_reads_as_the_rule_puts_it() {
        let six = || Bound::Fixed { figure: figure("6 ft"), bracket: None };
        let share = |text, of| Bound::Share(Percent::parse(text).unwrap(), of);
        for (limit, told) in [
            (Limit::Any, "any"),
            (Limit::AtLeast(six()), "at least 6 ft (1.829 m)"),
            (Limit::MoreThan(six()), "more than 6 ft (1.829 m)"),
            (Limit::AtMost(six()), "at most 6 ft (1.828 m)"),
            (Limit::LessThan(six()), "less than 6 ft (1.828 m)"),
            (Limit::Within(six(), six()), "exactly 6 ft (1.8288 m)"),
            (
                Limit::Within(share("50%", Base::HeaviestHook), six()),
                "from 50 % of the heaviest hook aboard to 6 ft (1.828 m)",
            ),
            (
                Limit::AtLeast(share("100%", Base::ThickestLine)),
                "at least the thickest line aboard",
            ),
            (Limit::AtLeast(share("100%", Base::Freeboard)), "at least 100 % of freeboard"),
        ] {
            assert_eq!(open_limit(&limit, Locale::from(Units::Both)), told);
        }
    }

    #[test]
    fn what_is_aboard_stands_as_it_was_written() {
        let locale = Locale::from(Units::Both);
        assert_eq!(aboard(&Has::Figure(figure("6 ft")), locale), "6 ft (1.828 m)");
        assert_eq!(aboard(&Has::Feature(true), locale), "yes");
        assert_eq!(aboard(&Has::Word("316L".into()), locale), "316L");
    }

    #[test]
    fn words_are_joined_as_people_join_them() {
        let locale = Locale::default();
        let words = ["a", "b", "c"].map(str::to_owned);
        assert_eq!(any_of(&words, locale), "a, b or c");
        assert_eq!(all_of(&words[..2], locale), "a and b");
        assert_eq!(any_of(&words[..1], locale), "a");
    }
}
