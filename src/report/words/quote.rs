//! Words for a quote that its page and the formats for programs share.
//!
//! Imports `quote`, `model` and what a quote is shown from.

use crate::model::catalogue::Item;
use crate::model::check::Check;
use crate::model::finding::Verdict;
use crate::model::profile::Level;
use crate::quote::{Cured, Hindrance, VesselQuote};
use crate::report::Locale;
use crate::report::subject::{QuoteShown, requirement};
use crate::report::words::notice;

/// How good the basket is, in one clause.
pub(crate) fn bound(shown: &QuoteShown<'_>) -> String {
    match shown.quote.cheaper_from() {
        None if shown.one_supplier => shown.locale.quote_cheapest_of_one().to_owned(),
        None => shown.locale.quote_cheapest().to_owned(),
        Some(least) => shown.locale.quote_stopped(&shown.money(least)),
    }
}

/// What is bought: the supplier's number and words.
pub(crate) fn item(item: &Item) -> String {
    format!("{}, {}", item.number, item.description)
}

/// A requirement with its clause; with the profile's id where several
/// profiles judge the vessel, and told apart where it is only recommended.
pub(crate) fn asked(check: &Check, cured: Cured, locale: Locale) -> String {
    let asked = requirement(check, cured);
    let mut clause = vec![asked.clause.as_str()];
    if check.judgements.len() > 1 {
        clause.push(&check.judgements[cured.judgement].profile.id);
    }
    if asked.level == Level::Recommended {
        clause.push(locale.sheet_recommended());
    }
    format!("{} ({})", asked.title, clause.join("; "))
}

/// Why an item cannot be had in time.
pub(crate) fn hindrance(hindrance: Hindrance, locale: Locale) -> String {
    match hindrance {
        Hindrance::OutOfStock { packs: 0 } => locale.quote_out_of_stock().to_owned(),
        Hindrance::OutOfStock { packs } => locale.quote_too_few_in_stock(packs),
        Hindrance::Late { arrives, days } => locale.quote_late(&arrives, days),
        Hindrance::PriceLapsed { held } => locale.quote_price_lapsed(&held),
    }
}

/// What is odd about the day on which a vessel leaves.
pub(crate) fn departure(
    shown: &QuoteShown<'_>,
    index: usize,
    vessel: &VesselQuote,
) -> Option<String> {
    let departure = vessel.before.asked.departure;
    if shown.left_before(vessel) {
        return Some(shown.locale.quote_left_before(&departure, &shown.quote.ordered));
    }
    shown.undated.contains(&index).then(|| shown.locale.quote_undated(&departure))
}

/// The same where it matters: of a trip that is over nothing is told if
/// nothing was needed for it.
pub(crate) fn odd_departure(
    shown: &QuoteShown<'_>,
    index: usize,
    vessel: &VesselQuote,
) -> Option<String> {
    let over = shown.left_before(vessel) && vessel.after.verdict == Verdict::Ready;
    departure(shown, index, vessel).filter(|_| !over)
}

/// What keeps a vessel from being ready that nothing bought could put right,
/// beside findings: rules that are not in this program, facts that are missing.
pub(crate) fn beyond(vessel: &VesselQuote, locale: Locale) -> Vec<String> {
    if vessel.after.verdict == Verdict::Ready {
        return Vec::new();
    }
    let judgements = vessel.after.judgements.iter();
    let stubs = judgements.filter(|judgement| !judgement.profile.encoded);
    let stubs = stubs.map(|stub| locale.quote_stub(&stub.profile.id));
    stubs.chain(vessel.after.notices.iter().map(|one| notice(one, locale))).collect()
}
