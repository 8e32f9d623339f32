//! What an order leaves open: why, the nearest offer and what it lacks.
//!
//! Imports `quote` and `model` only.

use super::item;
use crate::model::finding::Verdict;
use crate::quote::{Hindrance, Nearest, Unmet, VesselQuote};
use crate::report::subject::{QuoteShown as Shown, finding, requirement};
use crate::report::words::fleet::count;
use crate::report::words::{Words, notice};

/// What is told of a finding that goods do not settle.
const NO_GOODS: &str = "no goods settle this";

/// What is told of a finding for which nobody sells anything of the kind.
const NOTHING_NEAR: &str = "nothing on offer is of a kind that would do";

/// What is told of an offer that lacks nothing by itself.
const REST: &str = "would do by itself, once what stands in the way is settled";

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
        None if !requirement(after, cured).wants_tools() => NO_GOODS.to_owned(),
        None => NOTHING_NEAR.to_owned(),
    };
    Open { why, remedy: found.and_then(|finding| words.remedy(finding, &[])), offer }
}

/// The nearest offer and what it lacks.
fn near(shown: &Shown<'_>, nearest: &Nearest, words: &Words<'_>) -> String {
    let lacks = nearest.lacks.iter().map(|reason| words.reason(reason));
    let hindrances = nearest.hindrances.iter().map(|one| hindrance(*one));
    let mut lacks: Vec<_> = lacks.chain(hindrances).collect();
    if lacks.is_empty() {
        lacks.push(REST.to_owned());
    }
    let supplier = &shown.catalogue(nearest.offer).supplier;
    let item = item(shown.item(nearest.offer));
    format!("nearest offer: {item}, from {supplier}: {}", lacks.join("; "))
}

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
pub(crate) fn beyond(vessel: &VesselQuote) -> Vec<String> {
    if vessel.after.verdict == Verdict::Ready {
        return Vec::new();
    }
    let judgements = vessel.after.judgements.iter();
    let stubs = judgements.filter(|judgement| !judgement.profile.encoded);
    let stubs =
        stubs.map(|stub| format!("`{}` is known, not encoded: can't tell", stub.profile.id));
    stubs.chain(vessel.after.notices.iter().map(notice)).collect()
}
