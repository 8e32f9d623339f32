//! What there is to tell about a check as a whole, and what to do about it.
//!
//! Imports `model` only.

use super::figures;
use crate::model::check::Notice;
use crate::model::reason::VesselFact;
use crate::report::Locale;

/// Something to tell about the check as a whole.
pub(crate) fn notice(notice: &Notice, locale: Locale) -> String {
    match notice {
        Notice::NoRuleNamesVessel => locale.notice_no_rule_names_vessel().to_owned(),
        Notice::NotInForce { profile } => locale.notice_not_in_force(profile),
        Notice::DoesNotBind { profile } => locale.notice_does_not_bind(profile),
        Notice::NoEdition { rule, day } => locale.notice_no_edition(rule, day),
        Notice::UnknownWords { what, words } => {
            let words: Vec<_> = words.iter().map(|word| format!("`{word}`")).collect();
            let words = figures::any_of(&words, locale);
            match what {
                VesselFact::Permits => locale.notice_unknown_permit(&words),
                VesselFact::Gear => locale.notice_unknown_gear(&words),
                VesselFact::Areas => locale.notice_unknown_area(&words),
                _ => locale.notice_unknown_fact(&words),
            }
        }
        Notice::MayBind { rule, fact } => match fact {
            VesselFact::Permits => locale.notice_may_bind_by_permits(rule),
            VesselFact::Gear => locale.notice_may_bind_by_gear(rule),
            VesselFact::Areas => locale.notice_may_bind_by_areas(rule),
            VesselFact::Freeboard | VesselFact::FreeboardDisputed | VesselFact::FreeboardFrom => {
                locale.notice_may_bind_by_freeboard(rule)
            }
            _ => locale.notice_may_bind_by_fact(rule),
        },
        Notice::RecordAfterDeparture { on } => locale.notice_record_after_departure(on),
        Notice::FreeboardOtherPlace { on } => locale.notice_freeboard_other_place(on),
        Notice::SheetOutOfDate { on, vessel, rules } => match (vessel, rules) {
            (true, true) => locale.notice_sheet_of_other_vessel_and_rules(on),
            (true, false) => locale.notice_sheet_of_other_vessel(on),
            (false, _) => locale.notice_sheet_of_other_rules(on),
        },
        Notice::NoReturn => locale.notice_no_return().to_owned(),
        Notice::TripOver { back } => locale.notice_trip_over(back),
        Notice::ListOld { declared } => locale.notice_list_old(declared),
    }
}

/// What to do about it, in the imperative, where something is to be done.
pub(crate) fn notice_remedy(notice: &Notice, locale: Locale) -> Option<String> {
    let text = match notice {
        Notice::NoEdition { day, .. } => return Some(locale.notice_ask_port_office(day)),
        Notice::UnknownWords { .. } => locale.notice_mend_spelling(),
        Notice::MayBind { fact: VesselFact::Permits, .. } => locale.notice_write_permits(),
        Notice::MayBind { fact: VesselFact::Gear, .. } => locale.notice_write_gear(),
        Notice::MayBind { fact: VesselFact::Areas, .. } => locale.notice_write_areas(),
        Notice::MayBind { .. } => locale.notice_write_fact(),
        Notice::RecordAfterDeparture { on } => return Some(locale.notice_mend_day(on)),
        Notice::SheetOutOfDate { .. } => locale.notice_check_rows(),
        Notice::FreeboardOtherPlace { .. } => locale.notice_measure_freeboard(),
        Notice::TripOver { .. } => locale.notice_other_day(),
        Notice::ListOld { .. } => locale.notice_list_again(),
        Notice::NoRuleNamesVessel
        | Notice::NotInForce { .. }
        | Notice::DoesNotBind { .. }
        | Notice::NoReturn => return None,
    };
    Some(text.to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::Day;

    #[test]
    fn every_notice_has_words_and_what_can_be_mended_a_remedy() {
        let locale = Locale::default();
        let day = Day::parse("2026-03-02").unwrap();
        let words = vec!["reef".to_owned(), "crab".to_owned()];
        let id = || "example".to_owned();
        let notices = [
            (Notice::NoRuleNamesVessel, None),
            (Notice::NotInForce { profile: id() }, None),
            (Notice::DoesNotBind { profile: id() }, None),
            (Notice::NoEdition { rule: id(), day }, Some("port office")),
            (Notice::UnknownWords { what: VesselFact::Permits, words }, Some("kitmuster words")),
            (Notice::MayBind { rule: id(), fact: VesselFact::Gear }, Some("`gear: []`")),
            (Notice::RecordAfterDeparture { on: day }, Some("2026-03-02 or later")),
            (Notice::FreeboardOtherPlace { on: day }, Some("measure the freeboard again")),
            (
                Notice::SheetOutOfDate { on: day, vessel: true, rules: false },
                Some("same tools and figures"),
            ),
            (Notice::NoReturn, None),
            (Notice::TripOver { back: day }, Some("`--on DATE`")),
            (Notice::ListOld { declared: day }, Some("`declared:`")),
        ];
        for (told, part) in &notices {
            assert!(
                !notice(told, locale).is_empty() && !notice(told, locale).contains("  "),
                "{told:?}"
            );
            let remedy = notice_remedy(told, locale);
            assert_eq!(remedy.is_some(), part.is_some(), "{told:?}");
            assert!(remedy.unwrap_or_default().contains(part.unwrap_or("")), "{told:?}");
        }
        assert!(notice(&notices[4].0, locale).contains("no permit called `reef` or `crab`"));
    }
}
