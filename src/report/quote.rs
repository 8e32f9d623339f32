//! A quote in every format: a page for the terminal, JSON, CSV and HTML.
//!
//! Imports `quote`, `fleet` (records that were laid over no vessel) and what
//! lies below. Decides nothing: lines come chosen, added up and judged.

mod csv;
mod entries;
mod html;
mod json;
mod table;
#[cfg(test)]
mod tests;

pub use self::csv::csv;
pub(in crate::report) use entries::ENTRY;
pub use html::html;
pub(in crate::report) use json::QuoteJson;
pub use json::json;
pub use table::table;

use super::page::{Page, Tone};
use super::problems;
use super::words::{Words, fleet, notice, quote as said};
use crate::fleet::LeftOut;
use crate::load::Refusal;
use crate::measure::{Money, Units};
use crate::model::catalogue::{Catalogue, Item};
use crate::model::check::Check;
use crate::model::finding::{Finding, Verdict};
use crate::model::profile::{Profile, Requirement};
use crate::model::vocabulary::Vocabulary;
use crate::quote::{Cured, Offer, Quote, VesselQuote};

/// A quote with all that is needed to put it into words.
#[derive(Debug, Clone, Copy)]
pub struct Shown<'a> {
    /// The quote.
    pub quote: &'a Quote,
    /// The catalogues that it is out of, in the order given.
    pub catalogues: &'a [Catalogue],
    /// The words for kinds and attributes.
    pub vocabulary: &'a Vocabulary,
    /// Which units are shown.
    pub units: Units,
    /// For whom it is, if that is to stand on the page.
    pub customer: Option<&'a str>,
    /// Whether everything was to come from one supplier.
    pub one_supplier: bool,
    /// Vessels, by index, for which no day of departure is known: they are
    /// taken to leave on the day of the order.
    pub undated: &'a [usize],
    /// Files of vessels and records that were refused.
    pub refused: &'a [Refusal],
    /// Inspection records that were laid over no vessel.
    pub left_out: &'a [LeftOut],
}

impl<'a> Shown<'a> {
    /// The catalogue of an offer.
    pub(crate) fn catalogue(&self, offer: Offer) -> &'a Catalogue {
        &self.catalogues[offer.catalogue]
    }

    /// The item of an offer.
    pub(crate) fn item(&self, offer: Offer) -> &'a Item {
        &self.catalogue(offer).items[offer.item]
    }

    /// An amount with its currency, like `184.50 USD`.
    pub(crate) fn money(&self, amount: Money) -> String {
        format!("{} {}", amount.show(self.quote.currency), self.quote.currency)
    }

    /// Whether a vessel leaves before the day of the order, so that nothing
    /// can be there in time.
    pub(crate) fn left_before(&self, vessel: &VesselQuote) -> bool {
        vessel.before.asked.departure < self.quote.ordered
    }

    /// The words for one judgement of a check.
    pub(crate) fn words(&self, check: &'a Check, judgement: usize) -> Words<'a> {
        Words {
            vocabulary: self.vocabulary,
            vessel: &check.vessel,
            profile: profile(check, judgement),
            units: self.units,
        }
    }
}

/// The profile of a judgement.
fn profile(check: &Check, judgement: usize) -> &Profile {
    &check.judgements[judgement].profile
}

/// The requirement that a finding of the quote is about.
pub(crate) fn requirement(check: &Check, cured: Cured) -> &Requirement {
    &profile(check, cured.judgement).requirements[cured.requirement]
}

/// The finding of a check for that requirement, if it has one.
pub(crate) fn finding(check: &Check, cured: Cured) -> Option<&Finding> {
    let findings = &check.judgements.get(cured.judgement)?.findings;
    findings.iter().find(|finding| finding.requirement == cured.requirement)
}

/// What is odd about the day on which a vessel leaves, where that matters: of
/// a trip that is over nothing is told if nothing was needed for it.
pub(crate) fn odd_departure(
    shown: &Shown<'_>,
    index: usize,
    vessel: &VesselQuote,
) -> Option<String> {
    let over = shown.left_before(vessel) && vessel.after.verdict == Verdict::Ready;
    said::departure(shown, index, vessel).filter(|_| !over)
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

/// What is told beside the quote, whatever its format: files that could not
/// be read, records that belong to no vessel, days that make no sense.
/// Empty where there is nothing to tell.
pub fn aside(shown: &Shown<'_>, width: usize) -> String {
    let mut text = String::new();
    if !shown.refused.is_empty() {
        text.push_str(&problems::all(shown.refused, "the quote is for the other files", width));
    }
    let mut page = Page::new(width);
    for left_out in shown.left_out {
        let told = format!("{}: {}", left_out.file, fleet::left_out(left_out));
        page.hang(0, ("record not laid over:", Tone::Open), (&told, Tone::Plain));
    }
    for (index, vessel) in shown.quote.vessels.iter().enumerate() {
        if let Some(note) = odd_departure(shown, index, vessel) {
            let told = format!("{}: {note}", vessel.file);
            page.hang(0, ("note:", Tone::Open), (&told, Tone::Plain));
        }
    }
    text.push_str(&page.finish());
    text
}
