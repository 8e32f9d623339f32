//! The command `options`: which ways of freeing a turtle a kit leaves open.
//!
//! Imports `load`, `engine`, `options` and `report`. A vessel is read as
//! `check` reads it: every file before anything is judged.

mod said;

use super::arguments::{CheckArguments, Format, OptionsArguments};
use super::check::{self, Input};
use super::exit::Exit;
use super::output::{self, Terminal};
use super::stop::Stop;
use super::{inputs, quote};
use crate::engine::Depth;
use crate::freeing::Prepared;
use crate::freeing::{Options, Request, Terms, options};
use crate::load::Library;
use crate::model::catalogue::Catalogue;
use crate::model::check::Notice;
use crate::model::options::{Answered, Standing};
use crate::model::technique::Practice;
use crate::report::desk;
use crate::report::options::{self as report, Shown};
use crate::report::wire;
use said::Asked;
use std::path::PathBuf;
use std::sync::Arc;

/// Works out what is open and prints or writes it.
pub(super) fn run(arguments: &OptionsArguments, terminal: &Terminal) -> Result<Exit, Stop> {
    sensible(arguments)?;
    let (input, catalogues) = read(arguments)?;
    let practice = practice(&input.library)?;
    let asked = arguments.case.as_deref().map(|case| said::case(case, &practice)).transpose()?;
    quote::one_currency(&catalogues)?;
    let prepared = Prepared::new(&practice);
    let options = options(&Request {
        terms: Terms {
            vocabulary: &input.library.vocabulary,
            prepared: &prepared,
            catalogues: &catalogues,
        },
        vessel: &input.vessel,
        inspections: &input.inspections,
        departure: input.departure,
        back: input.back,
        trust: arguments.trust.into(),
    });
    let notices = notices(&input, arguments);
    let shown = Shown {
        options: &options,
        practice: &practice,
        vocabulary: &input.library.vocabulary,
        catalogues: &catalogues,
        sources: &input.sources,
        notices: &notices,
        locale: arguments.units.into(),
    };
    let place = if arguments.output.is_some() { Terminal::of_a_file() } else { *terminal };
    let text = text(arguments.format, &shown, asked.as_ref(), place)?;
    match &arguments.output {
        Some(path) => output::write_whole(path, &text)?,
        None => output::print(&text)?,
    }
    if asked.is_some() && arguments.format == Format::Table {
        output::complain(&report::beside_case(&shown, terminal.width_of_errors));
    }
    Ok(exit(&options, asked.as_ref()))
}

fn text(
    format: Format,
    shown: &Shown<'_>,
    asked: Option<&Asked>,
    place: Terminal,
) -> Result<String, Stop> {
    match (format, asked) {
        (Format::Table, None) => Ok(report::table(shown, place.width)),
        (Format::Table, Some((question, answers))) => {
            Ok(report::case(shown, question, answers, place.width_of_lines))
        }
        (Format::Html, _) => Ok(report::html(shown)),
        (Format::Json, _) => {
            let asked = asked.map(|(question, answers)| (question, answers.as_slice()));
            wire::options(shown, asked).map_err(|error| Stop::no_json(&error))
        }
    }
}

/// What can be told before any file is read.
fn sensible(arguments: &OptionsArguments) -> Result<(), Stop> {
    if arguments.case.is_some() && arguments.format == Format::Html {
        return Err(Stop::usage(desk::command_case_or_card(), desk::command_print_case()));
    }
    if let Some(path) = &arguments.output {
        inputs::spare_all(path, || everything(arguments))?;
    }
    quote::once_believed(&arguments.catalogue, arguments.trust.into())
}

/// Every file that is read.
fn everything(arguments: &OptionsArguments) -> Vec<PathBuf> {
    inputs::inputs(&as_check(arguments))
}

/// What `check` would read for the same vessel.
fn as_check(arguments: &OptionsArguments) -> CheckArguments {
    CheckArguments {
        vessel: arguments.vessel.clone(),
        profile: Vec::new(),
        requirements: arguments.requirements.clone(),
        on: arguments.on,
        date: None,
        back: arguments.back,
        inspection: arguments.inspection.clone(),
        catalogue: arguments.catalogue.clone(),
        trust: arguments.trust,
        units: arguments.units,
        format: arguments.format,
        output: arguments.output.clone(),
    }
}

fn read(arguments: &OptionsArguments) -> Result<(Input, Vec<Catalogue>), Stop> {
    check::read_with(&as_check(arguments), |library, refusals| {
        quote::catalogues(&arguments.catalogue, library, refusals)
    })
}

/// What a check would tell of the trip and of the records; which rules bind is
/// not asked here.
fn notices(input: &Input, arguments: &OptionsArguments) -> Vec<Notice> {
    let check = input.check(arguments.trust.into(), Depth::Findings, arguments.units.into());
    let bears = |notice: &Notice| match notice {
        Notice::NoReturn
        | Notice::RecordAfterDeparture { .. }
        | Notice::SheetOutOfDate { .. }
        | Notice::Remark { .. }
        | Notice::MarkReadAs { .. }
        | Notice::Unmarked { .. }
        | Notice::UnlistedMark { .. }
        | Notice::KindDisputed { .. }
        | Notice::ReadingsDiffer { .. }
        | Notice::TripOver { .. }
        | Notice::ListOld { .. } => true,
        Notice::NoRuleNamesVessel
        | Notice::NotInForce { .. }
        | Notice::DoesNotBind { .. }
        | Notice::NoEdition { .. }
        | Notice::UnknownWords { .. }
        | Notice::MayBind { .. }
        | Notice::TooManyFacts => false,
    };
    check.notices.into_iter().filter(bears).collect()
}

/// The techniques of the library.
fn practice(library: &Library) -> Result<Arc<Practice>, Stop> {
    let practice = library.practice.clone();
    practice.ok_or_else(|| Stop::no_techniques(desk::command_no_choice()))
}

/// Zero only where every first choice is open that is asked about.
fn exit(options: &Options, asked: Option<&Asked>) -> Exit {
    let outlook = &options.outlook;
    let first = |answered: &Answered| answered.standing() == Standing::First;
    let all_first = match asked {
        None => outlook.worth().is_best(),
        Some((_, answers)) => answers.iter().all(|answer| {
            let along = answer.along.iter().filter_map(|index| outlook.along.get(*index));
            outlook.situations.get(answer.situation).into_iter().chain(along).all(first)
        }),
    };
    if all_first { Exit::Ready } else { Exit::NotReady }
}
