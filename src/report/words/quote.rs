//! Words for a quote: what stands in the way of an offer, how good the basket
//! is, days that make no sense.
//!
//! Imports `quote`, `model` and `measure` only.

use super::fleet::count;
use super::notice;
use crate::model::finding::Verdict;
use crate::quote::{Bound, Hindrance, VesselQuote};
use crate::report::quote::Shown;

/// Why an item cannot be had in time.
pub(crate) fn hindrance(hindrance: Hindrance) -> String {
    match hindrance {
        Hindrance::OutOfStock { packs: 0 } => "out of stock".to_owned(),
        Hindrance::OutOfStock { packs } => {
            format!("not enough in stock: {}", count(packs as usize, "pack"))
        }
        Hindrance::Late { arrives, days } => {
            format!("arrives on {arrives}, {} after departure", count(days as usize, "day"))
        }
        Hindrance::PriceLapsed { held } => format!("the price held until {held}"),
    }
}

/// How good the basket is, in one clause.
pub(crate) fn bound(shown: &Shown<'_>) -> String {
    match shown.quote.bound {
        Bound::Cheapest => "nothing cheaper does the same".to_owned(),
        Bound::AtLeast(least) => format!(
            "the search was stopped: a cheaper basket may exist, none below {}",
            shown.money(least)
        ),
    }
}

/// What is odd about the day on which a vessel leaves.
pub(crate) fn departure(shown: &Shown<'_>, index: usize, vessel: &VesselQuote) -> Option<String> {
    let departure = vessel.before.asked.departure;
    if shown.left_before(vessel) && vessel.after.verdict != Verdict::Ready {
        return Some(format!(
            "leaves on {departure}, before the day of the order, {}; nothing can be there in time",
            shown.quote.ordered
        ));
    }
    shown.undated.contains(&index).then(|| {
        format!(
            "no day of departure is planned; taken to leave on {departure}, the day of the \
             order; `--on DATE` gives another"
        )
    })
}

/// What keeps a vessel from being ready that nothing bought could put right,
/// beside findings: rules that are not in this program, facts that are missing.
pub(crate) fn beyond(vessel: &VesselQuote) -> Vec<String> {
    if vessel.after.verdict == Verdict::Ready {
        return Vec::new();
    }
    let judgements = vessel.after.judgements.iter();
    let stubs = judgements.filter(|judgement| !judgement.profile.encoded);
    let stubs = stubs.map(|stub| {
        format!("`{}` binds and is known, not encoded: can't tell", stub.profile.id)
    });
    stubs.chain(vessel.after.notices.iter().map(notice)).collect()
}
