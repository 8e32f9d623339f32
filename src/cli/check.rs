//! The command `check`: one vessel, one trip.
//!
//! Imports `load`, `engine` and `report`. Every file that was named is read
//! before anything is judged, so that everything wrong is told at once.

use super::arguments::{CheckArguments, Format};
use super::exit::Exit;
use super::library::{self, Named, named};
use super::output::{self, Terminal};
use super::{Stop, inputs, library::of_id};
use crate::engine::{self, Depth, Request};
use crate::load::{self, Library, Problem, Refusal, Source};
use crate::measure::{Day, DaySpan, Units};
use crate::model::check::{Check, Notice};
use crate::model::profile::Profile;
use crate::model::text::visible;
use crate::model::vessel::{Inspection, PlannedTrip, Trust, Vessel};
use crate::report::{self, Subject};
use std::sync::Arc;

/// Everything that a check works on.
pub(super) struct Input {
    pub(super) library: Library,
    asked: Vec<Arc<Profile>>,
    vessel: Vessel,
    inspections: Vec<Inspection>,
    pub(super) sources: Vec<Source>,
    departure: Day,
    back: Option<Day>,
}

impl Input {
    /// Judges the vessel, as deeply as asked. A record that names a sheet is
    /// told if the sheet was printed from another file or other rules.
    pub(super) fn check(&self, trust: Trust, depth: Depth, units: Units) -> Check {
        let vocabulary = &self.library.vocabulary;
        let mut check = engine::check(&Request {
            vocabulary,
            profiles: &self.library.profiles,
            asked: &self.asked,
            vessel: &self.vessel,
            inspections: &self.inspections,
            departure: self.departure,
            back: self.back,
            trust,
            depth,
        });
        let subject = Subject { check: &check, vocabulary, sources: &self.sources, units };
        let digest = report::sheet::digest(&subject);
        let stale = self.inspections.iter().filter_map(|record| {
            let (vessel, rules) = digest.agrees(record.sheet.as_deref()?);
            (!vessel || !rules).then_some(Notice::SheetOutOfDate {
                on: record.on,
                vessel: !vessel,
                rules: !rules,
            })
        });
        let stale: Vec<_> = stale.collect();
        check.notices.extend(stale);
        check
    }
}

/// Checks the vessel and prints or writes what came out.
pub(super) fn run(arguments: &CheckArguments, terminal: &Terminal) -> Result<Exit, Stop> {
    if let Some(path) = &arguments.output {
        inputs::spare(path, arguments)?;
    }
    let input = read(arguments)?;
    let units = arguments.units.into();
    let check = input.check(arguments.trust.into(), Depth::Whole, units);
    let subject = Subject {
        check: &check,
        vocabulary: &input.library.vocabulary,
        sources: &input.sources,
        units,
    };
    let place = if arguments.output.is_some() { Terminal::of_a_file() } else { *terminal };
    let text = match arguments.format {
        Format::Table => report::table(&subject, place.width),
        Format::Html => report::check_html(&subject),
        Format::Json => report::json::json(&subject)
            .map_err(|error| Stop::usage(format!("the result has no JSON form: {error}"), ""))?,
    };
    match &arguments.output {
        Some(path) => output::write_whole(path, &text)?,
        None => output::print(&text)?,
    }
    Ok(check.verdict.into())
}

/// Reads every file that was named.
pub(super) fn read(arguments: &CheckArguments) -> Result<Input, Stop> {
    let mut refusals: Vec<Refusal> = Vec::new();
    let mut library = library::open(arguments.requirements.as_deref(), &mut refusals)?;
    let files = library::add_files(&mut library, &arguments.profile, &mut refusals);
    let mut sources = Vec::new();
    let vessel = match load::load_vessel(&arguments.vessel, &library.vocabulary) {
        Ok((vessel, source)) => {
            sources.push(source);
            Some(vessel)
        }
        Err(refusal) => {
            refusals.push(refusal);
            None
        }
    };
    let mut inspections = Vec::new();
    for path in &arguments.inspection {
        match load::load_inspection(path, &library.vocabulary) {
            Ok((inspection, source)) => {
                refusals.extend(vessel.as_ref().and_then(|v| of_another(v, &inspection, &source)));
                inspections.push(inspection);
                sources.push(source);
            }
            Err(refusal) => refusals.push(refusal),
        }
    }
    let Some(vessel) = vessel.filter(|_| refusals.is_empty()) else {
        return Err(Stop::Refused(refusals));
    };
    let (departure, back) = trip(arguments.on, arguments.back, &vessel.trip, today)?;
    let days = DaySpan { from: Some(departure), until: Some(back.unwrap_or(departure)) };
    let asked = asked(&library, &arguments.profile, files, days)?;
    Ok(Input { library, asked, vessel, inspections, sources, departure, back })
}

/// That an inspection record speaks of another vessel than the inventory.
/// Capitals and blanks make no other name.
fn of_another(vessel: &Vessel, record: &Inspection, source: &Source) -> Option<Refusal> {
    let bare = |name: &str| name.split_whitespace().collect::<String>().to_lowercase();
    if bare(&vessel.name) == bare(&record.vessel) {
        return None;
    }
    let place = record.place.below("vessel");
    let problem = Problem {
        position: source.positions().locate(&place.key),
        place,
        offending: Some(visible(&record.vessel)),
        what: "this inspection record is of another vessel".to_owned(),
        expected: Some(format!("`{}`, the vessel of `{}`", vessel.name, vessel.place.file)),
        mend: Some("name the record of this vessel, or write the name as the vessel does".into()),
    };
    Some(Refusal { file: source.file.to_string(), problems: vec![problem] })
}

/// The profiles that were asked for, in the order typed, each once.
fn asked(
    library: &Library,
    typed: &[String],
    files: Vec<Arc<Profile>>,
    days: DaySpan,
) -> Result<Vec<Arc<Profile>>, Stop> {
    let mut files = files.into_iter();
    let mut asked: Vec<Arc<Profile>> = Vec::new();
    for text in typed {
        let found = match named(text) {
            Named::File(_) => files.next().into_iter().collect(),
            Named::Id(id) => of_id(library, id, days)?,
        };
        for profile in found {
            if asked.iter().all(|other| other.id != profile.id) {
                asked.push(profile);
            }
        }
    }
    Ok(asked)
}

/// The days of the trip: what was typed, else what is planned, else today.
/// A planned return that lies before the departure belongs to another trip.
fn trip(
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
    Stop::usage(
        format!("the return on {back} lies before the departure on {departure}"),
        "give `--return` a day that is not before the day of `--on`",
    )
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
    fn a_record_of_another_vessel_is_refused_and_both_are_named() {
        let words = Library::shipped().unwrap().vocabulary;
        let (vessel, _) =
            load::read_vessel("v.yaml", "format: vessel/1\nname: Grey Almeja\nkit: []\n", &words)
                .unwrap();
        let record = |name: &str| {
            let text = format!("format: inspection/1\nvessel: {name}\non: 2026-03-01\nfound: []\n");
            load::read_inspection("r.yaml", &text, &words).unwrap()
        };
        let (same, source) = record("\"grey  ALMEJA \"");
        assert_eq!(of_another(&vessel, &same, &source), None);
        let (other, source) = record("Grey Berberecho");
        let refusal = of_another(&vessel, &other, &source).unwrap();
        let text = report::refusals(&[refusal], 80);
        for part in ["r.yaml:2:9:", "`Grey Berberecho`", "`Grey Almeja`", "`v.yaml`"] {
            assert!(text.contains(part), "{part}: {text}");
        }
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
