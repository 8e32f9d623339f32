//! By what kits are judged.
//!
//! Imports `model`.

use super::choices::Prepared;
use crate::model::catalogue::Catalogue;
use crate::model::vocabulary::Vocabulary;

/// By what kits are judged, one vessel after another.
#[derive(Debug, Clone, Copy)]
pub struct Terms<'a> {
    /// The trade's words.
    pub vocabulary: &'a Vocabulary,
    /// The techniques, made ready for judging.
    pub prepared: &'a Prepared,
    /// Catalogues to price a tool by; all of one currency.
    pub catalogues: &'a [Catalogue],
}
