//! What an order leaves open: why, the nearest offer and what it lacks.
//!
//! Imports `quote` and `model` only.

use super::item;
use crate::model::finding::Verdict;
use crate::quote::{Hindrance, Nearest, Unmet, VesselQuote};
use crate::report::Locale;
use crate::report::subject::{QuoteShown as Shown, finding, requirement};
use crate::report::words::{Words, notice};

/// What is told of a finding that stays open.
#[derive(Debug, Clone)]
pub(crate) struct Open {
    /// Why, the nearest tool first.
    pub(crate) why: Vec<String>,
    /// What to do about it.
    pub(crate) remedy: Option<String>,
    /// The nearest offer and what it lacks, or that there is none.
    pub(crate) offer: String,
}

/// The most reasons of one finding that are told.
const MOST_REASONS: usize = 3;

/// Why a finding stays open.
pub(crate) fn open(shown: &Shown<'_>, vessel: &VesselQuote, unmet: &Unmet) -> Open {
    let (after, cured) = (&vessel.after, unmet.finding);
    let words = shown.words(after, cured.judgement);
    let found = finding(after, cured);
    let mut why: Vec<String> = Vec::new();
    for because in found.iter().flat_map(|finding| &finding.reasons) {
        let told = words.told(because);
        if !why.contains(&told) && why.len() < MOST_REASONS {
            why.push(told);
        }
    }
    let offer = match &unmet.nearest {
        Some(nearest) => near(shown, nearest, &words),
        None if !requirement(after, cured).wants_tools() => {
            shown.locale.quote_no_goods().to_owned()
        }
        None => shown.locale.quote_nothing_near().to_owned(),
    };
    Open { why, remedy: found.and_then(|finding| words.remedy(finding, &[])), offer }
}

/// The nearest offer and what it lacks.
fn near(shown: &Shown<'_>, nearest: &Nearest, words: &Words<'_>) -> String {
    let lacks = nearest.lacks.iter().map(|reason| words.reason(reason));
    let hindrances = nearest.hindrances.iter().map(|one| hindrance(*one, shown.locale));
    let mut lacks: Vec<_> = lacks.chain(hindrances).collect();
    if lacks.is_empty() {
        lacks.push(shown.locale.quote_would_do().to_owned());
    }
    let supplier = &shown.catalogue(nearest.offer).supplier;
    let item = item(shown.item(nearest.offer));
    shown.locale.quote_nearest(&item, supplier, &lacks.join("; "))
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

/// What is odd about the day on which a vessel leaves, where that matters: of
/// a trip that is over nothing is told if nothing was needed for it.
pub(crate) fn odd_departure(
    shown: &Shown<'_>,
    index: usize,
    vessel: &VesselQuote,
) -> Option<String> {
    let over = shown.left_before(vessel) && vessel.after.verdict == Verdict::Ready;
    super::departure(shown, index, vessel).filter(|_| !over)
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
