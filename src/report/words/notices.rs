//! What there is to tell about a check as a whole, and what to do about it.
//!
//! Imports `model` only.

use super::figures;
use crate::model::check::Notice;
use crate::model::reason::VesselFact;

/// Something to tell about the check as a whole.
pub(crate) fn notice(notice: &Notice) -> String {
    match notice {
        Notice::NoRuleNamesVessel => "no rule that is known here names this vessel: good practice \
            was used instead; whether a rule binds it is for the skipper to find out"
            .to_owned(),
        Notice::NotInForce { profile } => {
            format!("`{profile}` was asked for, but is not in force on these days")
        }
        Notice::DoesNotBind { profile } => {
            format!("`{profile}` was asked for, but does not bind this vessel")
        }
        Notice::NoEdition { rule, day } => format!(
            "can't tell: `{rule}` binds this vessel, but no edition of it is known for {day}"
        ),
        Notice::UnknownWords { what, words } => format!(
            "can't tell: no {} called {} is known here, so that no rule was looked up by it",
            one_of(what),
            quoted(words)
        ),
        Notice::MayBind { rule, fact } => format!(
            "`{rule}` may bind this vessel and was not judged: its file does not say {}",
            said_of(fact)
        ),
        Notice::RecordAfterDeparture { on } => {
            format!("the inspection record of {on} is dated after departure and was not laid over")
        }
        Notice::FreeboardOtherPlace { on } => format!(
            "the freeboard in the record of {on} was taken from the other place (rail or working \
             deck) than the declared one, and does not count"
        ),
        Notice::SheetOutOfDate { on, vessel, rules } => {
            let what = match (vessel, rules) {
                (true, true) => "another state of the vessel's file and other rules",
                (true, false) => "another state of the vessel's file",
                (false, _) => "other rules, or another revision of them",
            };
            format!("the sheet of the inspection record of {on} was printed from {what}")
        }
        Notice::NoReturn => "no day of return is known: judged as a trip of one day".to_owned(),
    }
}

/// What to do about it, in the imperative, where something is to be done.
pub(crate) fn notice_remedy(notice: &Notice) -> Option<String> {
    match notice {
        Notice::NoEdition { day, .. } => {
            Some(format!("ask the port office which text binds on {day}, and go by that"))
        }
        Notice::UnknownWords { .. } => Some(
            "mend the spelling if it is a slip (`kitmuster words` lists those that are known); \
             else ask the port office which rule binds"
                .to_owned(),
        ),
        Notice::MayBind { fact, .. } => match key_of(fact) {
            Some(key) => {
                Some(format!("write `{key}:` into the vessel's file, `{key}: []` if there is none"))
            }
            None => Some("write it into the vessel's file".to_owned()),
        },
        Notice::RecordAfterDeparture { on } => Some(format!(
            "check a trip that departs on {on} or later, or mend the day of the record"
        )),
        Notice::SheetOutOfDate { .. } => Some(
            "see that its rows still mean the same tools and figures; the record counts as it \
             stands"
                .to_owned(),
        ),
        Notice::FreeboardOtherPlace { .. } => {
            Some("measure the freeboard again from where the rule takes it".to_owned())
        }
        Notice::NoRuleNamesVessel
        | Notice::NotInForce { .. }
        | Notice::DoesNotBind { .. }
        | Notice::NoReturn => None,
    }
}

/// The key of a vessel's file that holds the fact.
fn key_of(fact: &VesselFact) -> Option<&'static str> {
    match fact {
        VesselFact::Permits => Some("permits"),
        VesselFact::Gear => Some("gear"),
        VesselFact::Areas => Some("areas"),
        _ => None,
    }
}

fn one_of(fact: &VesselFact) -> &'static str {
    match fact {
        VesselFact::Permits => "permit",
        VesselFact::Gear => "fishing gear",
        VesselFact::Areas => "area",
        _ => "fact",
    }
}

fn said_of(fact: &VesselFact) -> &'static str {
    match fact {
        VesselFact::Permits => "which permits it holds",
        VesselFact::Gear => "which fishing gear is aboard",
        VesselFact::Areas => "to which areas the trip goes",
        VesselFact::Freeboard | VesselFact::FreeboardDisputed | VesselFact::FreeboardFrom => {
            "for sure what its freeboard is"
        }
        _ => "all that decides it",
    }
}

fn quoted(words: &[String]) -> String {
    let quoted: Vec<_> = words.iter().map(|word| format!("`{word}`")).collect();
    figures::any_of(&quoted)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::measure::Day;

    #[test]
    fn every_notice_has_words_and_what_can_be_mended_a_remedy() {
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
        ];
        for (told, part) in &notices {
            assert!(!notice(told).is_empty() && !notice(told).contains("  "), "{told:?}");
            let remedy = notice_remedy(told);
            assert_eq!(remedy.is_some(), part.is_some(), "{told:?}");
            assert!(remedy.unwrap_or_default().contains(part.unwrap_or("")), "{told:?}");
        }
        assert!(notice(&notices[4].0).contains("no permit called `reef` or `crab`"));
    }
}
