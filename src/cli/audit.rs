//! The command `audit`: many vessels in one run.
//!
//! Imports `load`, `fleet` and `report`. A file that is refused is a row of
//! the report; only profiles that are refused stop it.

mod outcomes;
mod record;

use record::Asides;

use super::arguments::{AuditArguments, FleetFormat};
use super::exit::Exit;
use super::library;
use super::output::{self, Terminal, Whole};
use super::stop::Stop;
use super::trip::{return_before_departure, today};
use super::{files, inputs};
use crate::engine::Depth;
use crate::fleet::{self, Audit, Counts, Files, LeftOut, Orders, Records, Row, Selection};
use crate::load::{Library, Refusal};
use crate::measure::DaySpan;
use crate::model::finding::Verdict;
use crate::model::profile::Profile;
use crate::report::{self, audit::Fleet, desk};
use indicatif::ProgressBar;
use std::io::IsTerminal;
use std::path::{Path, PathBuf};
use std::sync::Arc;

/// How many vessels are judged before their lines are written.
const AT_ONCE: usize = 1024;

/// From how many files on a bar shows how far the audit is.
const LONG: usize = 500;

/// Everything that an audit works on.
struct Input {
    library: Library,
    asked: Vec<Arc<Profile>>,
    files: Files,
    records: Records,
    refused_records: Vec<Refusal>,
}

/// Audits the vessels and prints or writes what came out.
pub(super) fn run(arguments: &AuditArguments, terminal: &Terminal) -> Result<Exit, Stop> {
    if let Some(path) = &arguments.output {
        inputs::spare_audit("--output", path, arguments)?;
    }
    record::sensible(arguments)?;
    outcomes::sensible(arguments)?;
    let pool = rayon::ThreadPoolBuilder::new()
        .num_threads(usize::from(arguments.threads.unwrap_or(0)))
        .build();
    let pool = pool.map_err(|error| Stop::usage(desk::command_no_threads(&error), ""))?;
    if let (Some(on), Some(back)) = (arguments.on, arguments.back)
        && back < on
    {
        return Err(return_before_departure(on, back));
    }
    pool.install(|| {
        let input = read(arguments)?;
        if arguments.format == FleetFormat::Lines {
            return lines(arguments, input);
        }
        let asides = record::asides(arguments, &input.library, orders(arguments, &input).date)?;
        whole(arguments, terminal, input, &asides)
    })
}

fn orders<'a>(arguments: &AuditArguments, input: &'a Input) -> Orders<'a> {
    Orders {
        library: &input.library,
        asked: &input.asked,
        on: arguments.on,
        back: arguments.back,
        date: arguments.date.unwrap_or_else(today),
        trust: arguments.trust.into(),
        depth: match arguments.format {
            FleetFormat::Html => Depth::Whole,
            _ => Depth::Findings,
        },
    }
}

fn whole(
    arguments: &AuditArguments,
    terminal: &Terminal,
    input: Input,
    asides: &Asides,
) -> Result<Exit, Stop> {
    let catalogues = outcomes::catalogues(arguments, &input.library)?;
    let orders = orders(arguments, &input);
    let mut records = input.records.clone();
    let left_out = fleet::settle(&orders, &input.files.vessels, &mut records);
    let bar = bar(input.files.vessels.len(), false);
    let mut rows = fleet::rows(&orders, &input.files.vessels, &records, |row| row, || bar.inc(1));
    bar.finish_and_clear();
    rows.extend(input.refused_records.iter().cloned().map(Row::Refused));
    let vocabulary = &input.library.vocabulary;
    let (selection, order) = (selection(arguments, &input.library), arguments.order.into());
    let beside = record::beside(arguments, &orders, &selection, &rows, asides);
    let mut audit = Audit::new(orders.date, orders.trust, rows, vocabulary, &selection, order);
    audit.left_out = left_out;
    let outcomes =
        arguments.outcomes.then(|| outcomes::outcomes(&input.library, &audit, catalogues));
    let outcomes = outcomes.transpose()?;
    let of = Fleet {
        audit: &audit,
        vocabulary,
        locale: arguments.units.into(),
        against: beside.against.as_ref(),
        draft: beside.draft.as_ref(),
        freeing: outcomes.as_ref().map(outcomes::Outcomes::shown),
    };
    let text = text(arguments, terminal, &of)?;
    // Record and report take their names only once both are on the disk.
    let report = arguments.output.as_deref().map(|path| settled(path, &text)).transpose()?;
    record::keep(arguments, &beside)?;
    match report {
        Some(report) => report.finish()?,
        None => output::print(&text)?,
    }
    Ok(exit(&audit.counts, audit.left_out.iter().any(LeftOut::is_doubtful)))
}

/// A file that lacks nothing but its name.
fn settled(path: &Path, text: &str) -> Result<Whole, Stop> {
    let mut whole = Whole::of(path, text)?;
    whole.settle()?;
    Ok(whole)
}

fn text(arguments: &AuditArguments, terminal: &Terminal, of: &Fleet<'_>) -> Result<String, Stop> {
    let place = if arguments.output.is_some() { Terminal::of_a_file() } else { *terminal };
    match arguments.format {
        FleetFormat::Table | FleetFormat::Lines => Ok(report::audit::table(of, place.width)),
        FleetFormat::Json => report::wire::audit(of).map_err(|error| Stop::formless(&error)),
        FleetFormat::Csv => report::wire::audit_csv(of).map_err(|error| Stop::formless(&error)),
        FleetFormat::Html => Ok(report::audit::html(of)),
    }
}

/// One line a vessel, written as the vessels are judged, so that no more
/// than a few are held at a time.
fn lines(arguments: &AuditArguments, input: Input) -> Result<Exit, Stop> {
    let orders = orders(arguments, &input);
    let mut records = input.records.clone();
    let left_out = fleet::settle(&orders, &input.files.vessels, &mut records);
    let selection = selection(arguments, &input.library);
    let (vocabulary, locale) = (&input.library.vocabulary, arguments.units.into());
    let mut out = match &arguments.output {
        Some(path) => Out::File(Box::new(Whole::begin(path)?)),
        None => Out::Screen,
    };
    let on_screen = arguments.output.is_none() && std::io::stdout().is_terminal();
    let bar = bar(input.files.vessels.len(), on_screen);
    let mut counts = Counts::default();
    let finish = |row: Row| {
        let (concerned, shown) = match &row {
            Row::Vessel(judged) => {
                (selection.concerns(&judged.check), selection.shows(&judged.check))
            }
            Row::Refused(_) => (true, true),
        };
        let mut counts = Counts::default();
        if concerned {
            counts.add(&row);
        }
        let wanted = concerned && shown;
        let line = wanted.then(|| report::wire::audit_line(&row, vocabulary, locale));
        (counts, line.transpose())
    };
    let refused: Vec<_> = input.refused_records.iter().cloned().map(Err).collect();
    for part in input.files.vessels.chunks(AT_ONCE).chain(refused.chunks(AT_ONCE)) {
        let mut text = String::new();
        for (one, line) in fleet::rows(&orders, part, &records, finish, || bar.inc(1)) {
            counts.sum(&one);
            text.push_str(&line.map_err(|error| Stop::formless(&error))?.unwrap_or_default());
        }
        out.write(&text)?;
    }
    for left in &left_out {
        out.write(
            &report::wire::left_out_line(left, locale).map_err(|error| Stop::formless(&error))?,
        )?;
    }
    bar.finish_and_clear();
    out.finish()?;
    Ok(exit(&counts, left_out.iter().any(LeftOut::is_doubtful)))
}

/// Where lines go.
enum Out {
    Screen,
    File(Box<Whole>),
}

impl Out {
    fn write(&mut self, text: &str) -> Result<(), Stop> {
        match self {
            Self::Screen => output::print(text),
            Self::File(file) => file.write(text),
        }
    }

    fn finish(self) -> Result<(), Stop> {
        match self {
            Self::Screen => Ok(()),
            Self::File(file) => file.finish(),
        }
    }
}

/// A file that could not be read, or a record of which the vessel cannot be
/// told, outranks every verdict.
fn exit(counts: &Counts, doubtful_record: bool) -> Exit {
    if counts.refused > 0 || doubtful_record {
        return Exit::Refused;
    }
    let all_ready = counts.not_ready == 0 && counts.cannot_tell == 0 && counts.ready > 0;
    if all_ready { Exit::Ready } else { Exit::NotReady }
}

fn selection(arguments: &AuditArguments, library: &Library) -> Selection {
    let mut rules: Vec<String> = Vec::new();
    for id in &arguments.bound_by {
        let of_id = library.find(id).map(|profile| profile.rule.clone());
        rules.push(of_id.unwrap_or_else(|| id.clone()));
    }
    Selection {
        verdicts: arguments.verdict.iter().map(|verdict| Verdict::from(*verdict)).collect(),
        gears: arguments.gear.clone(),
        ports: arguments.port.clone(),
        bound_by: arguments.bound_by.clone(),
        bound_by_rules: rules,
        requirements: arguments.requirement.clone(),
    }
}

/// A bar on a terminal's standard error, where the run is long and no lines
/// run over the same screen meanwhile.
fn bar(files: usize, lines_on_screen: bool) -> ProgressBar {
    if files < LONG || lines_on_screen {
        return ProgressBar::hidden();
    }
    ProgressBar::new(u64::try_from(files).unwrap_or(u64::MAX))
}

fn read(arguments: &AuditArguments) -> Result<Input, Stop> {
    let mut refusals: Vec<Refusal> = Vec::new();
    let mut library = library::open(arguments.requirements.as_deref(), &mut refusals)?;
    let files = library::add_files(&mut library, &arguments.profile, &mut refusals);
    if !refusals.is_empty() {
        return Err(Stop::Refused(refusals));
    }
    let asked = library::asked(&library, &arguments.profile, files, DaySpan::ALWAYS)?;
    known(&library, arguments)?;
    let files = files::find(&arguments.paths, &arguments.inspection)?;
    let paths = files.records.iter().map(PathBuf::as_path);
    let (records, refused_records) = Records::read(paths, &library.vocabulary);
    Ok(Input { library, asked, files, records, refused_records })
}

/// That what vessels are selected by is known: a slip would select nothing
/// and look like a clean fleet.
fn known(library: &Library, arguments: &AuditArguments) -> Result<(), Stop> {
    for gear in &arguments.gear {
        if !library.vocabulary.gears.contains_key(gear) {
            let ids: Vec<_> = library.vocabulary.gears.keys().map(|id| format!("`{id}`")).collect();
            return Err(Stop::usage(
                desk::command_no_gear(gear),
                desk::command_give_one_of(&ids.join(", ")),
            ));
        }
    }
    for id in &arguments.bound_by {
        library::of_id(library, id, DaySpan::ALWAYS)?;
    }
    for id in &arguments.requirement {
        let mut all = library.profiles.iter().flat_map(|profile| &profile.requirements);
        if !all.any(|requirement| requirement.id == *id) {
            return Err(Stop::usage(
                desk::command_no_requirement(id),
                desk::command_requirements_listed(),
            ));
        }
    }
    Ok(())
}
