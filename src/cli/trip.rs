//! The days of a trip, and the one place where the clock is read.
//!
//! Imports `measure` and `model`.

use super::stop::Stop;
use crate::measure::Day;
use crate::model::vessel::PlannedTrip;
use crate::report::desk;

/// The days of the trip: what was typed, else what is planned, else today.
/// A planned return that lies before the departure belongs to another trip.
pub(super) fn trip(
    on: Option<Day>,
    back: Option<Day>,
    planned: &PlannedTrip,
    today: impl FnOnce() -> Day,
) -> Result<(Day, Option<Day>), Stop> {
    let departure = on.or(planned.departure).unwrap_or_else(today);
    match back {
        Some(back) if back < departure => Err(return_before_departure(departure, back)),
        Some(back) => Ok((departure, Some(back))),
        None => Ok((departure, planned.back.filter(|back| *back >= departure))),
    }
}

/// That the days of a trip are the wrong way round.
pub(super) fn return_before_departure(departure: Day, back: Day) -> Stop {
    Stop::usage(desk::command_return_first(&back, &departure), desk::command_return_later())
}

#[allow(clippy::disallowed_methods, reason = "the clock is read here and nowhere else")]
pub(super) fn today() -> Day {
    Day::from_date(chrono::Local::now().date_naive())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn day(text: &str) -> Day {
        Day::parse(text).unwrap()
    }

    fn planned(departure: Option<&str>, back: Option<&str>) -> PlannedTrip {
        PlannedTrip { departure: departure.map(day), back: back.map(day) }
    }

    fn never() -> Day {
        panic!("the clock was read")
    }

    #[test]
    fn the_planned_trip_stands_where_nothing_was_typed() {
        let trip = trip(None, None, &planned(Some("2026-03-02"), Some("2026-03-09")), never);
        assert_eq!(trip.unwrap(), (day("2026-03-02"), Some(day("2026-03-09"))));
    }

    #[test]
    fn without_a_plan_the_trip_begins_today() {
        let trip = trip(None, None, &planned(None, None), || day("2026-05-01"));
        assert_eq!(trip.unwrap(), (day("2026-05-01"), None));
    }

    #[test]
    fn a_planned_return_before_a_typed_departure_is_of_another_trip() {
        let plan = planned(Some("2026-03-02"), Some("2026-03-09"));
        let later = trip(Some(day("2026-04-01")), None, &plan, never);
        assert_eq!(later.unwrap(), (day("2026-04-01"), None));
        let within = trip(Some(day("2026-03-04")), None, &plan, never);
        assert_eq!(within.unwrap(), (day("2026-03-04"), Some(day("2026-03-09"))));
    }

    #[test]
    fn a_return_before_the_departure_is_refused() {
        let plan = planned(None, None);
        assert!(trip(Some(day("2026-04-02")), Some(day("2026-04-01")), &plan, never).is_err());
        assert!(trip(Some(day("2026-04-01")), Some(day("2026-04-01")), &plan, never).is_ok());
    }
}
