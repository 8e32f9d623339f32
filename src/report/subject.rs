//! What each command's result is shown from: the result, and all that is
//! needed to put it into words.
//!
//! Imports `fleet`, `quote`, `options`, `load` and what lies below, and the
//! words; no page and no format, each of which begins here.

use super::words::Words;
use crate::fleet::compare::Comparison;
use crate::fleet::draft::Drafted;
use crate::fleet::{Audit, Judged, LeftOut};
use crate::freeing::Options;
use crate::load::{Refusal, Source};
use crate::measure::Money;
use crate::model::catalogue::{Catalogue, Item};
use crate::model::check::{Check, Judgement, Notice};
use crate::model::finding::Finding;
use crate::model::profile::{Profile, Requirement};
use crate::model::technique::Practice;
use crate::model::vocabulary::Vocabulary;
use crate::quote::{Cured, Offer, Quote, VesselQuote};
use crate::report::Locale;

/// A check's result with all that is needed to put it into words.
#[derive(Debug, Clone, Copy)]
pub struct Subject<'a> {
    /// The result.
    pub check: &'a Check,
    /// The words for kinds and attributes.
    pub vocabulary: &'a Vocabulary,
    /// The files that were read, to find lines and columns in.
    pub sources: &'a [Source],
    /// The language and the units of the page.
    pub locale: Locale,
    /// Which ways of freeing a turtle the kit leaves open, where that was
    /// asked.
    pub freeing: Option<OptionsShown<'a>>,
}

impl<'a> Subject<'a> {
    /// The words for one judgement of the check.
    pub(crate) fn words(&self, judgement: &'a Judgement) -> Words<'a> {
        Words {
            vocabulary: self.vocabulary,
            vessel: &self.check.vessel,
            profile: &judgement.profile,
            locale: self.locale,
        }
    }
}

/// An audit with all that is needed to put it into words.
#[derive(Debug, Clone, Copy)]
pub struct Fleet<'a> {
    /// The audit.
    pub audit: &'a Audit,
    /// The words for kinds and attributes.
    pub vocabulary: &'a Vocabulary,
    /// The language and the units of the page.
    pub locale: Locale,
    /// What changed since an earlier audit, where one was given.
    pub against: Option<&'a Comparison>,
    /// What a draft would do, where one was given.
    pub draft: Option<&'a Drafted>,
    /// Which ways of freeing a turtle the kits leave open, where that was
    /// asked.
    pub freeing: Option<Freeing<'a>>,
}

/// Which ways of freeing a turtle the kits of a fleet leave open.
#[derive(Debug, Clone, Copy)]
pub struct Freeing<'a> {
    /// The techniques.
    pub practice: &'a Practice,
    /// One for each vessel of the audit's rows, in their order.
    pub options: &'a [Options],
    /// The catalogues that a tool was priced by.
    pub catalogues: &'a [Catalogue],
}

impl<'a> Fleet<'a> {
    /// What the kit of a vessel leaves open, by its index among those shown.
    pub(crate) fn freeing(&self, index: usize, judged: &'a Judged) -> Option<OptionsShown<'a>> {
        let freeing = self.freeing?;
        Some(OptionsShown {
            options: freeing.options.get(index)?,
            practice: freeing.practice,
            vocabulary: self.vocabulary,
            catalogues: freeing.catalogues,
            sources: &judged.sources,
            notices: &[],
            locale: self.locale,
        })
    }
}

/// What a kit leaves open, with all that is needed to put it into words.
#[derive(Debug, Clone, Copy)]
pub struct OptionsShown<'a> {
    /// What the kit leaves open.
    pub options: &'a Options,
    /// The techniques.
    pub practice: &'a Practice,
    /// The trade's words.
    pub vocabulary: &'a Vocabulary,
    /// The catalogues that a tool was priced by.
    pub catalogues: &'a [Catalogue],
    /// The files that were read, to find lines and columns in: the vessel's
    /// and those of the records laid over it.
    pub sources: &'a [Source],
    /// What is to be told of the trip and of the records.
    pub notices: &'a [Notice],
    /// The language and the units of the page.
    pub locale: Locale,
}

impl<'a> OptionsShown<'a> {
    /// The words about the tools of a choice.
    pub(crate) fn words(&self, judgement: &'a Judgement) -> Words<'a> {
        Words {
            vocabulary: self.vocabulary,
            vessel: &self.options.vessel,
            profile: &judgement.profile,
            locale: self.locale,
        }
    }
}

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
