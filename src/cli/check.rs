//! The command `check`: one vessel, one trip.
//!
//! Imports `load`, `engine` and `report`. Every file that was named is read
//! before anything is judged, so that everything wrong is told at once.

use super::arguments::{CheckArguments, Format};
use super::exit::Exit;
use super::library;
use super::output::{self, Terminal};
use super::stop::Stop;
use super::trip::{today, trip};
use super::{inputs, quote};
use crate::engine::{self, Depth, Request};
use crate::fleet;
use crate::freeing::Prepared;
use crate::freeing::{self, Terms};
use crate::load::{self, Library, Problem, Refusal, Source};
use crate::measure::{Day, DaySpan};
use crate::model::check::{Check, Notice};
use crate::model::inspection::Inspection;
use crate::model::profile::Profile;
use crate::model::text::visible;
use crate::model::vessel::{Trust, Vessel};
use crate::report::options::Shown;
use crate::report::{self, Locale, Subject};
use std::sync::Arc;

/// Everything that a check works on.
pub(super) struct Input {
    pub(super) library: Library,
    asked: Vec<Arc<Profile>>,
    pub(super) vessel: Vessel,
    pub(super) inspections: Vec<Inspection>,
    pub(super) sources: Vec<Source>,
    pub(super) departure: Day,
    pub(super) back: Option<Day>,
}

impl Input {
    /// Judges the vessel, as deeply as asked. A record that names a sheet is
    /// told if the sheet was printed from another file or other rules.
    pub(super) fn check(&self, trust: Trust, depth: Depth, locale: Locale) -> Check {
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
        let subject =
            Subject { check: &check, vocabulary, sources: &self.sources, locale, freeing: None };
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

impl Input {
    /// The findings for another state of the vessel, on the same trip and by
    /// the same profiles, with no record laid over it.
    pub(super) fn check_as(&self, vessel: &Vessel) -> Check {
        engine::check(&Request {
            vocabulary: &self.library.vocabulary,
            profiles: &self.library.profiles,
            asked: &self.asked,
            vessel,
            inspections: &[],
            departure: self.departure,
            back: self.back,
            trust: Trust::All,
            depth: Depth::Findings,
        })
    }
}

/// Checks the vessel and prints or writes what came out.
pub(super) fn run(arguments: &CheckArguments, terminal: &Terminal) -> Result<Exit, Stop> {
    if let Some(path) = &arguments.output {
        inputs::spare(path, arguments)?;
    }
    quote::once_believed(&arguments.catalogue, arguments.trust.into())?;
    let (input, catalogues) = read_with(arguments, |library, refusals| {
        quote::catalogues(&arguments.catalogue, library, refusals)
    })?;
    quote::one_currency(&catalogues)?;
    let locale = arguments.units.into();
    let mut check = input.check(arguments.trust.into(), Depth::Whole, locale);
    // Whoever names the day of a trip knows that it is over.
    let date = arguments
        .on
        .map_or_else(|| arguments.date.unwrap_or_else(today), |_| check.asked.departure);
    check.notices.extend(fleet::notices(&check, date));
    let vocabulary = &input.library.vocabulary;
    let practice = input.library.practice.as_ref();
    let freeing = practice.map(|practice| {
        let prepared = &Prepared::new(practice);
        let terms = Terms { vocabulary, prepared, catalogues: &catalogues };
        (practice, freeing::of_check(&terms, &check))
    });
    let freeing = freeing.as_ref().map(|(practice, options)| Shown {
        options,
        practice,
        vocabulary,
        catalogues: &catalogues,
        sources: &input.sources,
        notices: &check.notices,
        locale,
    });
    let subject = Subject { check: &check, vocabulary, sources: &input.sources, locale, freeing };
    let place = if arguments.output.is_some() { Terminal::of_a_file() } else { *terminal };
    let text = match arguments.format {
        Format::Table => report::table(&subject, place.width),
        Format::Html => report::check_html(&subject),
        Format::Json => report::wire::check(&subject).map_err(|error| Stop::no_json(&error))?,
    };
    match &arguments.output {
        Some(path) => output::write_whole(path, &text)?,
        None => output::print(&text)?,
    }
    Ok(check.verdict.into())
}

/// Reads every file that was named.
pub(super) fn read(arguments: &CheckArguments) -> Result<Input, Stop> {
    read_with(arguments, |_, _| ()).map(|(input, ())| input)
}

/// The same, with more files that are read beside them by `more`, which notes
/// what it refuses.
pub(super) fn read_with<More>(
    arguments: &CheckArguments,
    more: impl FnOnce(&Library, &mut Vec<Refusal>) -> More,
) -> Result<(Input, More), Stop> {
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
    let more = more(&library, &mut refusals);
    let Some(vessel) = vessel.filter(|_| refusals.is_empty()) else {
        return Err(Stop::Refused(refusals));
    };
    let (departure, back) = trip(arguments.on, arguments.back, &vessel.trip, today)?;
    let days = DaySpan { from: Some(departure), until: Some(back.unwrap_or(departure)) };
    let asked = library::asked(&library, &arguments.profile, files, days)?;
    Ok((Input { library, asked, vessel, inspections, sources, departure, back }, more))
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
        fault: load::Fault::RecordOfAnother {
            vessel: vessel.name.clone(),
            file: vessel.place.file.to_string(),
        },
        known: Vec::new(),
        meant: None,
    };
    Some(Refusal { file: source.file.to_string(), problems: vec![problem] })
}

#[cfg(test)]
mod tests {
    use super::*;

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
}
