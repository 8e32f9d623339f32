//! What each command's result is shown from: the result, and all that is
//! needed to put it into words.
//!
//! Imports `fleet`, `freeing`, `load` and what lies below, and the
//! words; no page and no format, each of which begins here.

#[cfg(feature = "quote")]
mod quote;

#[cfg(feature = "quote")]
pub use quote::QuoteShown;
#[cfg(feature = "quote")]
pub(crate) use quote::{finding, requirement};

use super::words::Words;
use crate::fleet::compare::Comparison;
use crate::fleet::draft::Drafted;
use crate::fleet::{Audit, Judged};
use crate::freeing::{Options, Prospect};
use crate::load::Source;
use crate::model::catalogue::Catalogue;
use crate::model::check::{Check, Judgement, Notice};
use crate::model::technique::Practice;
use crate::model::vocabulary::Vocabulary;
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
            findings: &judgement.findings,
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
    /// Every situation, those that go along with others behind these.
    pub(crate) fn prospects(&self) -> impl Iterator<Item = Prospect<'a>> + Clone {
        self.options.prospects(self.practice)
    }

    /// Those that the vessel's own hooks can make arise.
    pub(crate) fn arising(&self) -> impl Iterator<Item = Prospect<'a>> + Clone {
        self.prospects().filter(|of| !of.answered.is_left_out())
    }

    /// The words about the tools of a choice.
    pub(crate) fn words(&self, judgement: &'a Judgement) -> Words<'a> {
        Words {
            vocabulary: self.vocabulary,
            vessel: &self.options.vessel,
            profile: &judgement.profile,
            findings: &judgement.findings,
            locale: self.locale,
        }
    }
}
