//! One vessel under one applicable edition: the freeboards and days that it
//! has to stand, and the evaluation points in them.

use super::breakpoints;
use super::editions::ApplicableEdition;
use crate::engine::evaluate::point::{Missing, Point};
use crate::measure::{Day, Length};
use crate::model::check::Why;
use crate::model::profile::Profile;
use crate::model::vessel::Vessel;
use crate::model::vocabulary::Vocabulary;

/// What stays the same while one vessel is judged under one edition.
#[derive(Clone, Copy)]
pub(crate) struct Subject<'a> {
    pub(crate) vocabulary: &'a Vocabulary,
    pub(crate) vessel: &'a Vessel,
    pub(crate) edition: &'a ApplicableEdition<'a>,
    pub(crate) departure: Day,
}

/// Freeboards from a low one to a high one.
pub(crate) type Range = (Length, Length);

impl<'a> Subject<'a> {
    /// The point at that freeboard on that day.
    pub(crate) fn point<'s>(
        &self,
        profile: &'s Profile,
        freeboard: Result<Length, Missing>,
        day: Day,
    ) -> Point<'s>
    where
        'a: 's,
    {
        Point {
            vocabulary: self.vocabulary,
            profile,
            vessel: self.vessel,
            freeboard,
            day,
            departure: self.departure,
            asked: matches!(self.edition.why, Why::Asked | Why::Fallback),
            missed: false,
        }
    }

    /// The freeboards of the vessel, station by station, reading by reading;
    /// or the fact that is missing.
    pub(crate) fn freeboards(&self, profile: &Profile) -> Result<Vec<Vec<Range>>, Missing> {
        let freeboard = &self.vessel.freeboard;
        let stations = &freeboard.stations;
        if stations.is_empty() || stations.iter().any(|station| station.readings.is_empty()) {
            return Err(Missing::NotMeasured);
        }
        if freeboard.from != profile.freeboard_from {
            return Err(Missing::OtherPlace);
        }
        let ranges = stations.iter().map(|station| {
            let mut ranges = Vec::new();
            for reading in &station.readings {
                let (low, high) = (reading.lowest(), reading.highest());
                ranges.push((low, high));
                if let Some(error) = reading.error.as_ref().and_then(|error| error.length()) {
                    ranges.extend(self.within((low, high), error, profile));
                }
            }
            // Two readings that say the same dispute nothing.
            ranges.sort_unstable();
            ranges.dedup();
            ranges
        });
        Ok(ranges.collect())
    }

    /// What a reading may mean within the tape's error: rivals that may
    /// differ, at both ends of the error and at every breakpoint between.
    fn within(&self, (low, high): Range, error: Length, profile: &Profile) -> Vec<Range> {
        let (least, most) = (low.less(error), high.plus(error));
        let mut rivals = vec![(least, high.less(error).max(least)), (low.plus(error), most)];
        if low == high {
            let inside = breakpoints::freeboards(profile, self.vessel);
            let inside = inside.into_iter().filter(|length| (least..=most).contains(length));
            rivals.extend(inside.map(|length| (length, length)));
        }
        rivals
    }

    /// The days of the trip to look at.
    pub(crate) fn days(&self, profile: &Profile) -> Vec<Day> {
        let first = self.edition.days.from.unwrap_or(self.departure);
        let last = self.edition.days.until.unwrap_or(first);
        breakpoints::days_of(self.vessel, profile, first, last)
    }

    /// Every point that the vessel has to stand: both ends of each stretch of
    /// its freeboards over which the same requirements bind, on each of the
    /// days.
    pub(crate) fn points<'s>(&self, profile: &'s Profile, days: &[Day]) -> Vec<Point<'s>>
    where
        'a: 's,
    {
        let Ok(ranges) = self.freeboards(profile) else {
            return Vec::new();
        };
        // A least length is worst at the top of a stretch over which the same
        // requirements bind, a greatest length at the bottom.
        let thresholds = breakpoints::thresholds(profile);
        let mut freeboards: Vec<Length> = Vec::new();
        for (low, high) in ranges.into_iter().flatten() {
            freeboards.extend([low, high]);
            for length in thresholds.iter().filter(|length| **length > low && **length <= high) {
                freeboards.extend([length.just_below(), *length]);
            }
        }
        freeboards.sort_unstable();
        freeboards.dedup();
        let at = |day| freeboards.iter().map(move |length| self.point(profile, Ok(*length), day));
        days.iter().flat_map(|day| at(*day)).collect()
    }
}
