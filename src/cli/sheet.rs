//! The command `sheet`: paper for the deck, and the way back from paper to
//! data.
//!
//! Imports `load`, `engine` and `report`. It reads and judges a vessel as
//! `check` does; the exit code says only whether the paper was written.

use super::arguments::{CheckArguments, Format, ReaderArgument, SheetArguments, TrustArgument};
use super::check::Input;
use super::exit::Exit;
use super::library::{self, Named, named, of_id};
use super::stop::Stop;
use super::{check, inputs, output};
use crate::engine::Depth;
use crate::load::Refusal;
use crate::measure::{DaySpan, Figure, Length, Quantity, Rounding};
use crate::model::check::Check;
use crate::model::profile::Profile;
use crate::model::vessel::{FreeboardReading, Station, Trust};
use crate::report::{self, Subject, desk};
use std::path::PathBuf;
use std::sync::Arc;

/// Writes the paper, or the file to fill in, that was asked for.
pub(super) fn run(arguments: &SheetArguments) -> Result<Exit, Stop> {
    let text = match (&arguments.blank_vessel, &arguments.vessel) {
        (Some(profile), _) => blank(arguments, profile)?,
        (None, Some(vessel)) => of_vessel(arguments, vessel.clone())?,
        (None, None) => {
            return Err(Stop::usage(desk::command_no_vessel(), desk::command_name_vessel()));
        }
    };
    let is_form = arguments.record_form || arguments.blank_vessel.is_some();
    match &arguments.output {
        Some(path) if is_form => output::write_form(path, &text, arguments.force)?,
        Some(path) => output::write_whole(path, &text)?,
        None => output::print(&text)?,
    }
    Ok(Exit::Ready)
}

/// What `check` would read for the same vessel.
fn as_check(arguments: &SheetArguments, vessel: PathBuf) -> CheckArguments {
    CheckArguments {
        vessel,
        profile: arguments.profile.clone(),
        requirements: arguments.requirements.clone(),
        on: arguments.on,
        date: None,
        back: arguments.back,
        inspection: arguments.inspection.clone(),
        catalogue: Vec::new(),
        trust: TrustArgument::All,
        units: arguments.units,
        format: Format::Table,
        output: arguments.output.clone(),
    }
}

fn of_vessel(arguments: &SheetArguments, vessel: PathBuf) -> Result<String, Stop> {
    if arguments.record_form && arguments.reader == Some(ReaderArgument::Skipper) {
        return Err(Stop::usage(
            desk::command_form_or_skipper(),
            desk::command_form_of_inspector(),
        ));
    }
    let asked = as_check(arguments, vessel);
    if let Some(path) = &asked.output {
        inputs::spare(path, &asked)?;
    }
    let input = check::read(&asked)?;
    let skipper = arguments.reader == Some(ReaderArgument::Skipper);
    let depth = if skipper { Depth::Whole } else { Depth::Findings };
    let locale = arguments.units.into();
    let check = input.check(Trust::All, depth, locale);
    let subject = Subject {
        check: &check,
        vocabulary: &input.library.vocabulary,
        sources: &input.sources,
        locale,
        freeing: None,
    };
    Ok(if skipper {
        let measured = input.check(Trust::Measured, Depth::Findings, locale);
        report::sheet::for_skipper(&subject, &measured)
    } else {
        let above = above(&input, &check);
        match arguments.record_form {
            true => report::sheet::empty_record(&subject, above.as_ref()),
            false => report::sheet::for_inspector(&subject, above.as_ref()),
        }
    })
}

/// The same vessel, records laid over, judged from its highest freeboard to
/// somewhat above it, and then without a freeboard, since none was measured
/// there; nothing where its freeboard is not known.
fn above(input: &Input, check: &Check) -> Option<Check> {
    let mut vessel = check.vessel.clone();
    let stations = &vessel.freeboard.stations;
    if stations.iter().any(|station| station.readings.is_empty()) {
        return None;
    }
    let reading = stations.iter().flat_map(|station| &station.readings);
    let reading = reading.max_by_key(|reading| reading.highest())?;
    let system = reading.high.system;
    let figure = |length: Length| Figure::reckoned(Quantity::Length(length), system, Rounding::Up);
    // Just above the end, so that a threshold at the end is crossed.
    let end = reading.highest().plus(report::sheet::NEAR_ABOVE).just_above();
    let (low, high) = (reading.high.clone(), figure(end));
    let readings = vec![FreeboardReading { low, high, error: None, ..reading.clone() }];
    vessel.freeboard.stations = vec![Station::of(readings)];
    let mut above = input.check_as(&vessel);
    above.vessel.freeboard.stations.clear();
    Some(above)
}

/// An inventory to fill in for one profile.
fn blank(arguments: &SheetArguments, typed: &str) -> Result<String, Stop> {
    refuse_beside_blank(arguments)?;
    if let Some(path) = &arguments.output {
        let mut read = as_check(arguments, PathBuf::from(typed));
        read.profile = vec![typed.to_owned()];
        inputs::spare(path, &read)?;
    }
    let mut refusals: Vec<Refusal> = Vec::new();
    let mut library = library::open(arguments.requirements.as_deref(), &mut refusals)?;
    let files = library::add_files(&mut library, &[typed.to_owned()], &mut refusals);
    if !refusals.is_empty() {
        return Err(Stop::Refused(refusals));
    }
    let day = arguments.on.unwrap_or_else(super::trip::today);
    let days = DaySpan { from: Some(day), until: Some(arguments.back.unwrap_or(day)) };
    let profiles = match named(typed) {
        Named::File(_) => files,
        Named::Id(id) => of_id(&library, id, days)?,
    };
    let profile = only(typed, &profiles)?;
    Ok(report::sheet::blank_vessel(profile, &library.vocabulary, arguments.units.into()))
}

/// What has no meaning for a file that is of no vessel yet.
fn refuse_beside_blank(arguments: &SheetArguments) -> Result<(), Stop> {
    let beside = [
        ("--record-form", arguments.record_form),
        ("--inspection", !arguments.inspection.is_empty()),
        ("--for", arguments.reader.is_some()),
        ("--profile", !arguments.profile.is_empty()),
    ];
    let flag = beside.into_iter().find(|(_, given)| *given);
    let what = match (arguments.vessel.is_some(), flag) {
        (true, _) => desk::command_vessel_beside_blank().to_owned(),
        (false, Some((flag, _))) => desk::command_flag_beside_blank(&flag),
        (false, None) => return Ok(()),
    };
    Err(Stop::usage(what, desk::command_blank_is_no_vessel()))
}

/// The one profile that is meant, if what it asks is known.
fn only<'p>(typed: &str, profiles: &'p [Arc<Profile>]) -> Result<&'p Profile, Stop> {
    match profiles {
        [profile] if profile.encoded => Ok(profile),
        [profile] => Err(Stop::usage(
            desk::command_not_encoded(&profile.id),
            desk::command_list_by_hand(&profile.source),
        )),
        several => {
            let ids: Vec<_> = several.iter().map(|profile| format!("`{}`", profile.id)).collect();
            Err(Stop::usage(
                desk::command_several_editions(&typed, &ids.join(", ")),
                desk::command_name_one_of_them(),
            ))
        }
    }
}
