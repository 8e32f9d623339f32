//! What there is to tell about a check as a whole, and what to do about it.
//!
//! Imports `model` only.

use super::figures;
use super::reasons::readings_told;
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
        Notice::SheetOutOfDate { on, vessel, rules } => match (vessel, rules) {
            (true, true) => locale.notice_sheet_of_other_vessel_and_rules(on),
            (true, false) => locale.notice_sheet_of_other_vessel(on),
            (false, _) => locale.notice_sheet_of_other_rules(on),
        },
        Notice::TooManyFacts => locale.notice_too_many_facts().to_owned(),
        Notice::Remark { mark, on, remark } => locale.notice_remark(mark, on, remark),
        Notice::MarkReadAs { mark, on, read } => locale.notice_mark_read_as(mark, on, read),
        Notice::Unmarked { mark, on } => locale.notice_unmarked(mark, on),
        Notice::UnlistedMark { mark, on } => locale.notice_unlisted_mark(mark, on),
        Notice::KindDisputed { mark, kinds, by_name } => match by_name {
            true => locale.notice_kind_open(mark, &figures::any_of(kinds, locale)),
            false => locale.notice_kind_disputed(mark, &figures::any_of(kinds, locale)),
        },
        Notice::ReadingsDiffer { mark, attribute, counted, overruled } => {
            let told = |readings| readings_told(readings, locale);
            locale.notice_readings_differ(mark, attribute, &told(counted), &told(overruled))
        }
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
        Notice::MarkReadAs { .. } => locale.notice_mend_mark(),
        Notice::Unmarked { .. } => locale.notice_give_mark(),
        Notice::UnlistedMark { .. } => locale.notice_list_mark(),
        Notice::KindDisputed { .. } => locale.notice_settle_kind(),
        Notice::TripOver { .. } => locale.notice_other_day(),
        Notice::ListOld { .. } => locale.notice_list_again(),
        Notice::Remark { .. }
        | Notice::ReadingsDiffer { .. }
        | Notice::NoRuleNamesVessel
        | Notice::NotInForce { .. }
        | Notice::DoesNotBind { .. }
        | Notice::TooManyFacts
        | Notice::NoReturn => return None,
    };
    Some(text.to_owned())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::Day;
    use crate::model::reason::{DisputedReading, Has};
    use crate::model::vessel::How;

    #[test]
    fn every_notice_has_words_and_what_can_be_mended_a_remedy() {
        let locale = Locale::default();
        let day = Day::parse("2026-03-02").unwrap();
        let words = vec!["reef".to_owned(), "crab".to_owned()];
        let unknown = words.clone();
        let id = || "example".to_owned();
        let reading =
            |how| vec![DisputedReading { has: Has::Feature(true), by: None, on: None, how }];
        let (counted, overruled) = (reading(How::Measured), reading(How::Label));
        let notices = [
            (Notice::NoRuleNamesVessel, None),
            (Notice::NotInForce { profile: id() }, None),
            (Notice::DoesNotBind { profile: id() }, None),
            (Notice::NoEdition { rule: id(), day }, Some("port office")),
            (
                Notice::UnknownWords { what: VesselFact::Permits, words: words.clone() },
                Some("kitmuster words"),
            ),
            (Notice::MayBind { rule: id(), fact: VesselFact::Gear }, Some("`gear: []`")),
            (Notice::RecordAfterDeparture { on: day }, Some("2026-03-02 or later")),
            (
                Notice::SheetOutOfDate { on: day, vessel: true, rules: false },
                Some("same tools and figures"),
            ),
            (Notice::TooManyFacts, None),
            (Notice::Remark { mark: id(), on: day, remark: id() }, None),
            (Notice::MarkReadAs { mark: id(), on: day, read: id() }, Some("which of the two")),
            (Notice::Unmarked { mark: id(), on: day }, Some("give it a mark")),
            (Notice::UnlistedMark { mark: id(), on: day }, Some("list it")),
            (
                Notice::KindDisputed { mark: id(), kinds: words.clone(), by_name: true },
                Some("the right kind"),
            ),
            (
                Notice::KindDisputed { mark: id(), kinds: words, by_name: false },
                Some("look at it again"),
            ),
            (Notice::ReadingsDiffer { mark: id(), attribute: id(), counted, overruled }, None),
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
        for (what, told) in [
            (VesselFact::Permits, "no permit called `reef` or `crab`"),
            (VesselFact::Gear, "no fishing gear called `reef` or `crab`"),
            (VesselFact::Areas, "no area called `reef` or `crab`"),
        ] {
            let unknown = Notice::UnknownWords { what, words: unknown.clone() };
            assert!(notice(&unknown, locale).contains(told), "{told}");
        }
    }
}
