//! Every message for people about a check, in the trade's words.
//!
//! Imports `model` and `measure` only. Texts are plain: no colour, no
//! wrapping, nothing made visible yet (`page` does that). The sentences stand
//! in `messages/`; the code here chooses among them.

mod asked;
pub(crate) mod compare;
mod facts;
pub(crate) mod figures;
pub(crate) mod fleet;
mod limits;
pub(crate) mod locale;
mod notices;
pub(crate) mod options;
pub(crate) mod pages;
pub(crate) mod problems;
#[cfg(feature = "quote")]
pub(crate) mod quote;
mod reasons;
mod remedies;
mod serving;
pub(crate) mod sheet;
mod steps;
mod unknowns;

pub(crate) use asked::specs;
pub(crate) use notices::{notice, notice_remedy};
pub(crate) use remedies::fact_of;

use crate::measure::{DaySpan, Length, System};
use crate::model::check::Why;
use crate::model::finding::{Finding, Outcome};
use crate::model::profile::{FreeboardFrom, Profile, Requirement};
use crate::model::rule::{Need, ToolType};
use crate::model::vessel::{Datum, Tool, Vessel};
use crate::model::vocabulary::{AttributeId, KindId, Vocabulary};
use crate::report::Locale;

/// What the words are about: one vessel under one profile.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Words<'a> {
    /// Names of kinds and attributes.
    pub(crate) vocabulary: &'a Vocabulary,
    /// The vessel as judged.
    pub(crate) vessel: &'a Vessel,
    /// The profile whose findings are told.
    pub(crate) profile: &'a Profile,
    /// What was found under it, for what one finding says of another.
    pub(crate) findings: &'a [Finding],
    /// The language and the units of the page.
    pub(crate) locale: Locale,
}

/// Which requirement a remedy is for, at which freeboard, and whether it
/// tells how a figure is taken.
#[derive(Debug, Clone, Copy)]
struct Case {
    requirement: usize,
    freeboard: Option<Length>,
    explain: bool,
}

impl<'a> Words<'a> {
    pub(crate) fn kind(&self, id: KindId) -> &'a str {
        &self.vocabulary.kind(id).name
    }

    pub(super) fn kinds(&self, ids: &[KindId]) -> String {
        let names: Vec<_> = ids.iter().map(|id| self.kind(*id).to_owned()).collect();
        figures::any_of(&names, self.locale)
    }

    pub(super) fn attribute(&self, id: AttributeId) -> &'a str {
        &self.vocabulary.attribute(id).name
    }

    pub(super) fn attributes(&self, ids: &[AttributeId]) -> String {
        let names: Vec<_> = ids.iter().map(|id| self.attribute(*id).to_owned()).collect();
        figures::all_of(&names, self.locale)
    }

    pub(super) fn tool(&self, index: usize) -> Option<&'a Tool> {
        self.vessel.kit.get(index)
    }

    /// The mark of a tool.
    pub(crate) fn mark(&self, index: usize) -> &'a str {
        self.tool(index).map_or("", |tool| &tool.mark)
    }

    pub(crate) fn requirement(&self, index: usize) -> Option<&'a Requirement> {
        self.profile.requirements.get(index)
    }

    /// The id of a requirement.
    pub(crate) fn id(&self, index: usize) -> String {
        self.requirement(index).map(|r| r.id.clone()).unwrap_or_default()
    }

    /// The name of one of a requirement's types of tool, if it has one.
    pub(crate) fn type_name(&self, requirement: usize, index: usize) -> Option<String> {
        self.types(requirement).get(index)?.name.clone()
    }

    /// The types of tool that a requirement tells apart.
    fn types(&self, requirement: usize) -> &'a [ToolType] {
        match self.requirement(requirement).map(|requirement| &requirement.need) {
            Some(Need::Tools { types, .. }) => types,
            _ => &[],
        }
    }

    /// The names of a requirement's types, where it has several.
    fn type_names(&self, requirement: usize) -> Vec<String> {
        self.types(requirement).iter().filter_map(|of_type| of_type.name.clone()).collect()
    }

    /// What a requirement is called.
    pub(crate) fn title(&self, index: usize) -> String {
        self.requirement(index).map(|r| r.title.to_string()).unwrap_or_default()
    }

    /// The titles of several requirements.
    pub(crate) fn titles(&self, indices: &[usize]) -> String {
        let titles: Vec<_> = indices.iter().map(|index| self.title(*index)).collect();
        figures::all_of(&titles, self.locale)
    }

    /// The system in which this vessel's people write.
    pub(crate) fn system(&self) -> System {
        system_of(self.vessel)
    }

    /// Whether the vessel has more than one freeboard, so that a finding has
    /// to say at which it is worst.
    pub(crate) fn has_several_freeboards(&self) -> bool {
        self.vessel.freeboard.is_several()
    }

    /// A freeboard at which something was judged.
    pub(crate) fn freeboard(&self, at: Length) -> String {
        figures::freeboard(at, self.system(), self.locale)
    }

    /// Why the profile was used.
    pub(crate) fn why(&self, why: &Why) -> String {
        match why {
            Why::Binds => self.locale.why_binds().to_owned(),
            Why::MayBind(fact) => self.locale.why_may_bind(&self.unknown(fact)),
            Why::Asked => self.locale.why_asked().to_owned(),
            Why::Fallback => self.locale.why_fallback().to_owned(),
        }
    }
}

/// The system in which a vessel's people write: that of its freeboard, else
/// that of the first length of its kit.
pub(crate) fn system_of(vessel: &Vessel) -> System {
    let readings = vessel.freeboard.stations.iter().flat_map(|station| &station.readings);
    if let Some(reading) = readings.into_iter().next() {
        return reading.high.system;
    }
    let readings = vessel.kit.iter().flat_map(|tool| &tool.attributes).flat_map(|(_, all)| all);
    readings
        .filter_map(|reading| match &reading.datum {
            Datum::Figure(figure) => figure.length().map(|_| figure.system),
            _ => None,
        })
        .next()
        .unwrap_or(System::Metric)
}

/// The sign in front of a finding.
pub(crate) fn sign(outcome: Outcome) -> &'static str {
    match outcome {
        Outcome::Met => "+",
        Outcome::CannotTell => "?",
        Outcome::NotMet => "-",
    }
}

/// The days of a trip or of a part of it.
pub(crate) fn span(days: DaySpan, locale: Locale) -> String {
    match (days.from, days.until) {
        (Some(from), Some(until)) if from == until => locale.days_one(&from),
        (Some(from), Some(until)) => locale.days_between(&from, &until),
        (Some(from), None) => locale.days_from(&from),
        (None, Some(until)) => locale.days_until(&until),
        (None, None) => locale.days_any().to_owned(),
    }
}

/// From where to the water the freeboard is taken.
pub(crate) fn taken_from(from: FreeboardFrom, locale: Locale) -> &'static str {
    match from {
        FreeboardFrom::Rail => locale.place_rail(),
        FreeboardFrom::Deck => locale.place_deck(),
    }
}

#[cfg(test)]
mod tests;
