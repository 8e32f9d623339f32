//! The evaluation point: one profile over one vessel at one freeboard on one
//! day. Between two breakpoints every point gives the same answers.

use crate::measure::{Day, Length, System};
use crate::model::profile::Profile;
use crate::model::reason::VesselFact;
use crate::model::vessel::Vessel;
use crate::model::vocabulary::Vocabulary;

/// One profile over one vessel at one freeboard on one day.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Point<'a> {
    pub(crate) vocabulary: &'a Vocabulary,
    pub(crate) profile: &'a Profile,
    pub(crate) vessel: &'a Vessel,
    /// The freeboard, or the fact that is missing.
    pub(crate) freeboard: Result<Length, Missing>,
    pub(crate) day: Day,
    /// The day of departure, to tell a lapse at sea from one before it.
    pub(crate) departure: Day,
    /// True where the profile was asked for by name: whom it binds is then
    /// no question.
    pub(crate) asked: bool,
    /// True where a limit that is missed for certain is put into a figure.
    pub(crate) missed: bool,
    /// Which requirements are looked at, by index; none where all are.
    pub(crate) only: Option<&'a [bool]>,
}

/// Why there is no freeboard.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Missing {
    NotMeasured,
    OtherPlace,
}

impl From<Missing> for VesselFact {
    fn from(missing: Missing) -> Self {
        match missing {
            Missing::NotMeasured => Self::Freeboard,
            Missing::OtherPlace => Self::FreeboardFrom,
        }
    }
}

impl<'a> Point<'a> {
    /// The vessel under the profile on the day of departure, before its
    /// freeboard is looked at.
    pub(crate) fn of(
        vocabulary: &'a Vocabulary,
        profile: &'a Profile,
        vessel: &'a Vessel,
        departure: Day,
        asked: bool,
    ) -> Self {
        let (freeboard, day, missed) = (Err(Missing::NotMeasured), departure, false);
        let only = None;
        Self { vocabulary, profile, vessel, freeboard, day, departure, asked, missed, only }
    }

    /// Whether the requirement with that index is looked at.
    pub(crate) fn looks_at(&self, requirement: usize) -> bool {
        self.only.is_none_or(|only| only[requirement])
    }

    /// The system of units that the vessel measures in.
    pub(crate) fn system(&self) -> System {
        self.vessel
            .freeboard
            .stations
            .first()
            .and_then(|station| station.readings.first())
            .map_or(System::Customary, |reading| reading.high.system)
    }
}
