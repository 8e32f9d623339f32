//! The command `quote`: what to order so that the vessels are ready.
//!
//! Imports `load`, `fleet` (which files there are, and whose a record is),
//! `quote` and `report`. A vessel's file that is refused stops nothing; a
//! catalogue or a profile that is refused stops everything, since a basket
//! without one supplier or one rule would not be the answer.

use super::arguments::{QuoteArguments, QuoteFormat};
use super::exit::Exit;
use super::library;
use super::output::{self, Terminal};
use super::stop::Stop;
use super::trip::{return_before_departure, today, trip};
use super::{files, inputs};
use crate::fleet::{Files, LeftOut, Records, bare};
use crate::load::{self, Library, Refusal, Source};
use crate::measure::{Day, DaySpan};
use crate::model::catalogue::Catalogue;
use crate::model::profile::Profile;
use crate::model::vessel::{Trust, Vessel};
use crate::quote::{self, NoQuote, OneVessel, Order};
use crate::report::{self, desk, quote::Shown};
use rayon::prelude::*;
use std::collections::BTreeMap;
use std::path::{Path, PathBuf};
use std::sync::Arc;
use std::time::Duration;

/// Everything that a quote works on.
struct Input {
    library: Library,
    asked: Vec<Arc<Profile>>,
    catalogues: Vec<Catalogue>,
    vessels: Vec<OneVessel>,
    /// Vessels that plan no trip, by index: they are taken to leave on the
    /// day of the order.
    undated: Vec<usize>,
    refused: Vec<Refusal>,
    left_out: Vec<LeftOut>,
}

/// Works out the order and prints or writes it.
pub(super) fn run(arguments: &QuoteArguments, terminal: &Terminal) -> Result<Exit, Stop> {
    sensible(arguments)?;
    let ordered = arguments.ordered.unwrap_or_else(today);
    let input = read(arguments, ordered)?;
    let quote = quote::quote(&Order {
        vocabulary: &input.library.vocabulary,
        profiles: &input.library.profiles,
        asked: &input.asked,
        catalogues: &input.catalogues,
        vessels: &input.vessels,
        ordered,
        with_recommended: arguments.with_recommended,
        one_supplier: arguments.one_supplier,
        explain: arguments.explain,
        patience: Duration::from_secs(arguments.time_limit),
    });
    let quote = quote.map_err(|none| no_quote(&none))?;
    let shown = Shown {
        quote: &quote,
        catalogues: &input.catalogues,
        vocabulary: &input.library.vocabulary,
        locale: arguments.units.into(),
        customer: arguments.customer.as_deref(),
        one_supplier: arguments.one_supplier,
        undated: &input.undated,
        refused: &input.refused,
        left_out: &input.left_out,
    };
    let place = if arguments.output.is_some() { Terminal::of_a_file() } else { *terminal };
    let text = text(arguments.format, &shown, place)?;
    match &arguments.output {
        Some(path) => output::write_whole(path, &text)?,
        None => output::print(&text)?,
    }
    output::complain(&report::quote::aside(&shown, terminal.width_of_errors));
    // What could not be read outranks every verdict, as in an audit.
    let doubtful = input.left_out.iter().any(LeftOut::is_doubtful);
    if doubtful || !input.refused.is_empty() {
        return Ok(Exit::Refused);
    }
    Ok(quote.verdict().into())
}

fn text(format: QuoteFormat, shown: &Shown<'_>, place: Terminal) -> Result<String, Stop> {
    match format {
        QuoteFormat::Table => Ok(report::quote::table(shown, place.width)),
        QuoteFormat::Json => report::wire::quote(shown).map_err(|error| Stop::formless(&error)),
        QuoteFormat::Csv => report::wire::quote_csv(shown).map_err(|error| Stop::formless(&error)),
        QuoteFormat::Html => Ok(report::quote::html(shown)),
    }
}

/// What can be told before any file is read.
fn sensible(arguments: &QuoteArguments) -> Result<(), Stop> {
    if let Some(path) = &arguments.output {
        inputs::spare_all(path, || everything(arguments))?;
    }
    if let (Some(on), Some(back)) = (arguments.on, arguments.back)
        && back < on
    {
        return Err(return_before_departure(on, back));
    }
    once(&arguments.catalogue)
}

/// That a catalogue's figures, which are labels, are not asked for where only
/// measured ones are believed; and that none is given twice.
pub(super) fn once_believed(paths: &[PathBuf], trust: Trust) -> Result<(), Stop> {
    if trust == Trust::Measured && !paths.is_empty() {
        return Err(Stop::usage(
            desk::command_trust_or_catalogue(),
            desk::command_labels_not_believed(),
        ));
    }
    once(paths)
}

/// That no catalogue is given twice, by whatever name.
fn once(paths: &[PathBuf]) -> Result<(), Stop> {
    let mut seen = BTreeMap::new();
    for path in paths {
        if let Some(first) = seen.insert(real(path), path) {
            return Err(Stop::usage(
                desk::command_catalogue_twice(&path.display()),
                if first == path {
                    desk::command_each_once().to_owned()
                } else {
                    desk::command_same_file(&first.display())
                },
            ));
        }
    }
    Ok(())
}

/// The file that a path leads to, by whatever name.
fn real(path: &Path) -> PathBuf {
    path.canonicalize().unwrap_or_else(|_| path.to_path_buf())
}

/// Every file that is read.
fn everything(arguments: &QuoteArguments) -> Vec<PathBuf> {
    let paths = arguments.paths.iter().chain(&arguments.inspection);
    let found = paths.flat_map(|path| load::find_files(path)).flatten();
    let mut all: Vec<_> = found.map(|found| found.path).collect();
    all.extend(arguments.catalogue.iter().cloned());
    all.extend(inputs::profiles(&arguments.profile, arguments.requirements.as_deref()));
    all
}

fn read(arguments: &QuoteArguments, ordered: Day) -> Result<Input, Stop> {
    let mut refusals: Vec<Refusal> = Vec::new();
    let mut library = library::open(arguments.requirements.as_deref(), &mut refusals)?;
    let profiles = library::add_files(&mut library, &arguments.profile, &mut refusals);
    let catalogues = catalogues(&arguments.catalogue, &library, &mut refusals);
    let found = find(arguments)?;
    let (vessels, mut refused) = vessels(&found, &library);
    let paths = found.records.iter().map(PathBuf::as_path);
    let (mut records, refused_records) = Records::read(paths, &library.vocabulary);
    refused.extend(refused_records);
    if !refusals.is_empty() || vessels.is_empty() {
        refusals.extend(refused);
        return Err(Stop::Refused(refusals));
    }
    together(&catalogues)?;
    let asked = library::asked(&library, &arguments.profile, profiles, DaySpan::ALWAYS)?;
    let left_out = records.settle(vessels.iter().map(|(vessel, _)| vessel.name.as_str()));
    let plans = |vessel: &Vessel| arguments.on.or(vessel.trip.departure).is_some();
    let undated = vessels.iter().enumerate().filter(|(_, (vessel, _))| !plans(vessel));
    let undated = undated.map(|(index, _)| index).collect();
    let vessels = vessels.into_iter().map(|(vessel, source)| {
        let (departure, back) = trip(arguments.on, arguments.back, &vessel.trip, || ordered)?;
        let laid = records.of(&vessel.name).iter().map(|record| record.inspection.clone());
        let inspections = laid.collect();
        Ok(OneVessel { file: source.file, vessel, inspections, departure, back })
    });
    let vessels = vessels.collect::<Result<_, Stop>>()?;
    Ok(Input { library, asked, catalogues, vessels, undated, refused, left_out })
}

/// The vessels' files and the records. A catalogue that lies in a folder of
/// theirs is no vessel.
fn find(arguments: &QuoteArguments) -> Result<Files, Stop> {
    let catalogues: Vec<_> = arguments.catalogue.iter().map(|path| real(path)).collect();
    let is_catalogue = |path: &Path| catalogues.contains(&real(path));
    if let Some(path) = arguments.paths.iter().find(|path| is_catalogue(path)) {
        return Err(Stop::usage(
            desk::command_vessel_and_catalogue(&path.display()),
            desk::command_vessels_first(),
        ));
    }
    let mut found = files::find(&arguments.paths, &arguments.inspection)?;
    found.vessels.retain(|file| file.as_ref().map_or(true, |path| !is_catalogue(path)));
    if found.vessels.is_empty() { Err(files::no_vessel(&arguments.paths)) } else { Ok(found) }
}

/// The catalogues in the order given; what is refused is noted.
pub(super) fn catalogues(
    paths: &[PathBuf],
    library: &Library,
    refusals: &mut Vec<Refusal>,
) -> Vec<Catalogue> {
    let mut catalogues = Vec::new();
    for path in paths {
        match load::load_catalogue(path, &library.vocabulary) {
            Ok((catalogue, _)) => catalogues.push(catalogue),
            Err(refusal) => refusals.push(refusal),
        }
    }
    catalogues
}

/// That the catalogues can be added up: a supplier each, and one currency.
fn together(catalogues: &[Catalogue]) -> Result<(), Stop> {
    for (index, second) in catalogues.iter().enumerate() {
        let twin = |first: &&Catalogue| bare(&first.supplier) == bare(&second.supplier);
        if let Some(first) = catalogues[..index].iter().find(twin) {
            return Err(Stop::usage(
                desk::command_same_supplier(
                    &first.place.file,
                    &second.place.file,
                    &second.supplier,
                ),
                desk::command_one_a_supplier(),
            ));
        }
    }
    one_currency(catalogues)
}

/// That prices out of the catalogues can be compared.
pub(super) fn one_currency(catalogues: &[Catalogue]) -> Result<(), Stop> {
    let Some(first) = catalogues.first() else { return Ok(()) };
    match catalogues.iter().find(|other| other.currency != first.currency) {
        Some(other) => Err(Stop::usage(
            desk::command_two_currencies(
                &first.place.file,
                &first.currency,
                &other.place.file,
                &other.currency,
            ),
            desk::command_one_currency(),
        )),
        None => Ok(()),
    }
}

/// A vessel that was read, and its text.
type Read = (Vessel, Source);

/// Reads the inventories, in the order found; what is refused stands apart.
fn vessels(found: &Files, library: &Library) -> (Vec<Read>, Vec<Refusal>) {
    let read: Vec<Result<Read, Refusal>> = found
        .vessels
        .par_iter()
        .map(|file| match file {
            Ok(path) => load::load_vessel(path, &library.vocabulary),
            Err(refusal) => Err(refusal.clone()),
        })
        .collect();
    let (mut vessels, mut refused) = (Vec::new(), Vec::new());
    for one in read {
        match one {
            Ok(read) => vessels.push(read),
            Err(refusal) => refused.push(refusal),
        }
    }
    (vessels, refused)
}

fn no_quote(none: &NoQuote) -> Stop {
    Stop::usage(none.to_string(), desk::command_not_quoted())
}
