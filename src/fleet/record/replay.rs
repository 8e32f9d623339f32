//! The inputs of a record, read again.
//!
//! Imports `load`, `engine`, `model` and `measure`.

use super::{AuditRecord, InputFile};
use crate::engine::{self, Depth, Request};
use crate::load::{self, Library, Refusal};
use crate::measure::Day;
use crate::model::check::Check;
use crate::model::inspection::Inspection;
use crate::model::profile::Profile;
use crate::model::vessel::{Trust, Vessel};
use crate::model::vocabulary::Vocabulary;
use std::collections::BTreeMap;
use std::sync::Arc;

/// A record whose inputs are read again.
#[derive(Debug)]
pub(in crate::fleet) struct Replay<'a> {
    record: &'a AuditRecord,
    inspections: BTreeMap<&'a str, &'a InputFile>,
}

/// A vessel of a record with what is laid over it.
#[derive(Debug, Clone)]
pub(in crate::fleet) struct Aboard {
    pub(in crate::fleet) vessel: Vessel,
    pub(in crate::fleet) inspections: Vec<Inspection>,
}

/// By what a vessel is judged.
#[derive(Debug, Clone, Copy)]
pub(in crate::fleet) struct Rules<'a> {
    pub(in crate::fleet) vocabulary: &'a Vocabulary,
    pub(in crate::fleet) profiles: &'a [Arc<Profile>],
    pub(in crate::fleet) asked: &'a [Arc<Profile>],
    pub(in crate::fleet) trust: Trust,
}

impl<'a> Replay<'a> {
    pub(in crate::fleet) fn new(record: &'a AuditRecord) -> Self {
        let inspections = record.inputs.inspections.iter();
        Self { record, inspections: inspections.map(|input| (&*input.file, input)).collect() }
    }

    /// The library as it is on record.
    pub(in crate::fleet) fn library(&self) -> Result<Library, Refusal> {
        let inputs = &self.record.inputs;
        let text = |input: &'a InputFile| (input.file.as_str(), input.text.as_str());
        let profiles: Vec<_> = inputs.profiles.iter().map(text).collect();
        Library::rebuilt(text(&inputs.vocabulary), &profiles)
    }

    /// The vessel at this place of the record.
    pub(in crate::fleet) fn aboard(
        &self,
        index: usize,
        vocabulary: &Vocabulary,
    ) -> Result<Aboard, Refusal> {
        let input = &self.record.inputs.vessels[index];
        let (vessel, _) = load::read_vessel(&input.file, &input.text, vocabulary)?;
        let inspections = self
            .laid(index)
            .map(|input| {
                load::read_inspection(&input.file, &input.text, vocabulary).map(|(i, _)| i)
            })
            .collect::<Result<_, _>>()?;
        Ok(Aboard { vessel, inspections })
    }

    /// The inspection records laid over the vessel at this place.
    pub(in crate::fleet) fn laid(&self, index: usize) -> impl Iterator<Item = &'a InputFile> {
        let laid = self.record.vessels[index].inspections.iter();
        laid.filter_map(|file| self.inspections.get(file.as_str()).copied())
    }

    /// The profiles that were asked for, as far as this library has them.
    pub(in crate::fleet) fn asked(&self, library: &Library) -> Vec<Arc<Profile>> {
        self.record.asked.profiles.iter().filter_map(|id| library.find(id).cloned()).collect()
    }
}

impl Aboard {
    /// Judges it on these days of departure and return.
    pub(in crate::fleet) fn judge(&self, rules: Rules<'_>, trip: (Day, Option<Day>)) -> Check {
        engine::check(&Request {
            vocabulary: rules.vocabulary,
            profiles: rules.profiles,
            asked: rules.asked,
            vessel: &self.vessel,
            inspections: &self.inspections,
            departure: trip.0,
            back: trip.1,
            trust: rules.trust,
            depth: Depth::Findings,
        })
    }
}
