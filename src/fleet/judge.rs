//! One row of an audit: a file to a vessel to a check.
//!
//! A file that is refused becomes a row with its message, so that it never
//! stops the rest.

use super::records::Records;
use crate::engine::{self, Depth, Terms};
use crate::load::{self, Library, Refusal, Source};
use crate::measure::Day;
use crate::model::check::Check;
use crate::model::inspection::Inspection;
use crate::model::profile::Profile;
use crate::model::vessel::{PlannedTrip, Trust, Vessel};
use std::path::Path;
use std::sync::Arc;

/// What an audit is asked.
#[derive(Debug, Clone, Copy)]
pub struct Orders<'a> {
    /// The vocabulary and every profile that is known.
    pub library: &'a Library,
    /// The profiles that were asked for; if none, every one that binds.
    pub asked: &'a [Arc<Profile>],
    /// The day of departure of every vessel; if none, that of its planned
    /// trip, else the day of the audit.
    pub on: Option<Day>,
    /// The day of return, where a day of departure was given too.
    pub back: Option<Day>,
    /// The day of the audit.
    pub date: Day,
    /// Which figures are believed.
    pub trust: Trust,
    /// How much is worked out for each vessel.
    pub depth: Depth,
}

/// One vessel, judged.
#[derive(Debug, Clone)]
pub struct Judged {
    /// The file as it was given.
    pub file: Arc<str>,
    /// What came out.
    pub check: Check,
    /// The vessel's file, then the records laid over it.
    pub sources: Vec<Source>,
}

/// One row of an audit, in the order of the input.
#[derive(Debug, Clone)]
pub enum Row {
    /// A vessel, judged.
    Vessel(Box<Judged>),
    /// A file that was refused.
    Refused(Refusal),
}

impl Orders<'_> {
    /// Reads and judges one vessel, with the records of its name laid over.
    pub fn row(&self, path: &Path, records: &Records) -> Row {
        match load::load_vessel(path, &self.library.vocabulary) {
            Ok((vessel, source)) => Row::Vessel(Box::new(self.judged(vessel, source, records))),
            Err(refusal) => Row::Refused(refusal),
        }
    }

    /// Judges one vessel that was read, with the records of its name.
    pub fn judged(&self, vessel: Vessel, source: Source, records: &Records) -> Judged {
        let laid = records.of(&vessel.name);
        let inspections: Vec<Inspection> =
            laid.iter().map(|record| record.inspection.clone()).collect();
        let check = self.check(vessel, &inspections);
        let file = Arc::clone(&source.file);
        let sources = std::iter::once(source).chain(laid.iter().map(|r| r.source.clone()));
        Judged { file, check, sources: sources.collect() }
    }

    /// Checks one vessel.
    pub fn check(&self, vessel: Vessel, inspections: &[Inspection]) -> Check {
        let (departure, back) = self.trip(&vessel.trip);
        let terms = Terms {
            vocabulary: &self.library.vocabulary,
            profiles: &self.library.profiles,
            asked: self.asked,
            departure,
            back,
            trust: self.trust,
            depth: self.depth,
        };
        engine::check_own(vessel, inspections, &terms)
    }

    /// The days of a vessel's trip: those of the orders, else those planned,
    /// else the day of the audit. A planned return before the departure
    /// belongs to another trip.
    pub fn trip(&self, planned: &PlannedTrip) -> (Day, Option<Day>) {
        let departure = self.on.or(planned.departure).unwrap_or(self.date);
        let back = self.back.or(planned.back).filter(|back| *back >= departure);
        (departure, back)
    }
}
