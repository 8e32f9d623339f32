//! What is asked of a check.

use crate::measure::Day;
use crate::model::inspection::Inspection;
use crate::model::profile::Profile;
use crate::model::vessel::{Trust, Vessel};
use crate::model::vocabulary::Vocabulary;
use std::sync::Arc;

/// What to check.
#[derive(Debug, Clone, Copy)]
pub struct Request<'a> {
    /// The trade's words.
    pub vocabulary: &'a Vocabulary,
    /// Every profile that is known.
    pub profiles: &'a [Arc<Profile>],
    /// The profiles that were asked for; if none, every one that binds.
    pub asked: &'a [Arc<Profile>],
    /// The vessel as declared.
    pub vessel: &'a Vessel,
    /// Inspection records to lay over it, in any order.
    pub inspections: &'a [Inspection],
    /// The day of departure.
    pub departure: Day,
    /// The day of return; a trip of one day if it is not known.
    pub back: Option<Day>,
    /// Which figures are believed.
    pub trust: Trust,
    /// How much is worked out.
    pub depth: Depth,
}

/// What one vessel after another is checked by: a request without a vessel.
#[derive(Debug, Clone, Copy)]
pub struct Terms<'a> {
    /// The trade's words.
    pub vocabulary: &'a Vocabulary,
    /// Every profile that is known.
    pub profiles: &'a [Arc<Profile>],
    /// The profiles that were asked for; if none, every one that binds.
    pub asked: &'a [Arc<Profile>],
    /// The day of departure.
    pub departure: Day,
    /// The day of return; a trip of one day if it is not known.
    pub back: Option<Day>,
    /// Which figures are believed.
    pub trust: Trust,
    /// How much is worked out.
    pub depth: Depth,
}

/// How much of a check is worked out.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Depth {
    /// Everything, the inverses too.
    #[default]
    Whole,
    /// The verdict, the findings and *ready until*, for many vessels at once.
    Findings,
    /// The same, with clashes and the shortest way to ready, but without the
    /// freeboards beyond the vessel's own.
    Way,
}
