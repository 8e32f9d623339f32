//! What the pages and formats of a quote are shown from.

use crate::fleet::LeftOut;
use crate::load::Refusal;
use crate::measure::Money;
use crate::model::catalogue::{Catalogue, Item};
use crate::model::check::Check;
use crate::model::finding::Finding;
use crate::model::profile::{Profile, Requirement};
use crate::model::vocabulary::Vocabulary;
use crate::quote::{Cured, Offer, Quote, VesselQuote};
use crate::report::Locale;
use crate::report::words::Words;

/// A quote with all that is needed to put it into words.
#[derive(Debug, Clone, Copy)]
pub struct QuoteShown<'a> {
    /// The quote.
    pub quote: &'a Quote,
    /// The catalogues that it is out of, in the order given.
    pub catalogues: &'a [Catalogue],
    /// The words for kinds and attributes.
    pub vocabulary: &'a Vocabulary,
    /// The language and the units of the page.
    pub locale: Locale,
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

impl<'a> QuoteShown<'a> {
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
            findings: &check.judgements[judgement].findings,
            locale: self.locale,
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
