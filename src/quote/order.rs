//! What is asked of a quote.

use crate::measure::{Currency, Day};
use crate::model::catalogue::Catalogue;
use crate::model::inspection::Inspection;
use crate::model::profile::Profile;
use crate::model::vessel::Vessel;
use crate::model::vocabulary::Vocabulary;
use std::sync::Arc;
use std::time::Duration;

/// What is asked of a quote.
#[derive(Debug, Clone, Copy)]
pub struct Order<'a> {
    /// The trade's words.
    pub vocabulary: &'a Vocabulary,
    /// Every profile that is known.
    pub profiles: &'a [Arc<Profile>],
    /// The profiles that were asked for; if none, every one that binds.
    pub asked: &'a [Arc<Profile>],
    /// The suppliers' catalogues; at least one.
    pub catalogues: &'a [Catalogue],
    /// The vessels, in the order given.
    pub vessels: &'a [OneVessel],
    /// The day of the order.
    pub ordered: Day,
    /// Whether recommended findings are to be met too.
    pub with_recommended: bool,
    /// Whether everything is to come from one supplier.
    pub one_supplier: bool,
    /// Whether it is to be explained why this basket.
    pub explain: bool,
    /// How long to search for the cheapest basket before the best one so far
    /// is taken, with what is proved of it.
    pub patience: Duration,
}

/// A vessel that a quote is for.
#[derive(Debug, Clone)]
pub struct OneVessel {
    /// Its file, as it was named.
    pub file: Arc<str>,
    /// The vessel as declared.
    pub vessel: Vessel,
    /// Inspection records to lay over it.
    pub inspections: Vec<Inspection>,
    /// The day of departure.
    pub departure: Day,
    /// The day of return, if it is known.
    pub back: Option<Day>,
}

/// Why there is no quote at all.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum NoQuote {
    /// No catalogue was given.
    #[error("no catalogue was given")]
    NoCatalogue,
    /// Two catalogues are in different currencies.
    #[error("`{0}` asks {1} and `{2}` asks {3}")]
    Currencies(String, Currency, String, Currency),
    /// The search failed, which the tests of this crate rule out.
    #[error("no basket was found: {0}")]
    Search(String),
}
