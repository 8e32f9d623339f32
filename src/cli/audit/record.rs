//! What an audit does beside its report: it is kept on record, compared with
//! an earlier one, and judged under a draft too.
//!
//! Imports `load`, `fleet` and `report`. Each of the three leaves the report
//! and the exit code as they are.

use super::super::arguments::{AuditArguments, FleetFormat};
use super::super::library::{Named, named, of_id, warn};
use super::super::stop::Stop;
use super::super::{inputs, output, verify};
use crate::fleet::compare::{self, Comparison};
use crate::fleet::draft::{self, Drafted};
use crate::fleet::record::{AuditRecord, Entry, LARGEST_RECORD, Making};
use crate::fleet::{Orders, Row, Selection};
use crate::load::{Library, Refusal};
use crate::measure::{Day, DaySpan};
use crate::model::profile::Profile;
use crate::report::{self, desk};
use rayon::prelude::*;
use std::path::Path;
use std::sync::Arc;

/// Refuses what makes no sense before anything is judged.
pub(super) fn sensible(arguments: &AuditArguments) -> Result<(), Stop> {
    let lines = arguments.format == FleetFormat::Lines;
    let flags = [
        ("--record", arguments.record.is_some()),
        ("--against", arguments.against.is_some()),
        ("--draft", arguments.draft.is_some()),
    ];
    if let Some((flag, _)) = flags.iter().find(|(_, given)| lines && *given) {
        return Err(Stop::usage(desk::command_needs_all(flag), desk::command_another_format()));
    }
    if arguments.draft.is_some() && !arguments.profile.is_empty() {
        return Err(Stop::usage(desk::command_draft_or_profile(), desk::command_draft_alone()));
    }
    let Some(record) = &arguments.record else { return Ok(()) };
    inputs::spare_audit("--record", record, arguments)?;
    if arguments.output.as_ref().is_some_and(|output| same(output, record)) {
        return Err(Stop::usage(
            desk::command_both_name(&record.display()),
            desk::command_each_its_own(),
        ));
    }
    Ok(())
}

fn same(a: &Path, b: &Path) -> bool {
    let real = |path: &Path| {
        let whole = path.canonicalize().or_else(|_| std::path::absolute(path));
        whole.unwrap_or_else(|_| path.to_path_buf())
    };
    real(a) == real(b)
}

/// What is read beside the vessels.
pub(super) struct Asides {
    against: Option<AuditRecord>,
    draft: Option<Arc<Profile>>,
}

/// Reads the record to compare with, and the draft.
pub(super) fn asides(
    arguments: &AuditArguments,
    library: &Library,
    date: Day,
) -> Result<Asides, Stop> {
    let against = arguments.against.as_deref().map(verify::open).transpose()?;
    if let Some(record) = against.as_ref().filter(|record| record.date > date) {
        return Err(Stop::usage(
            desk::command_record_later(&record.date, &date),
            desk::command_compare_earlier(),
        ));
    }
    let draft = arguments.draft.as_deref().map(|typed| draft(typed, library)).transpose()?;
    Ok(Asides { against, draft })
}

/// The draft: a file, or the id of one edition.
fn draft(typed: &str, library: &Library) -> Result<Arc<Profile>, Stop> {
    let profile = match named(typed) {
        Named::File(path) => {
            let profile = library.draft(path).map_err(|refusal| Stop::Refused(vec![refusal]))?;
            warn(library, std::slice::from_ref(&profile));
            profile
        }
        Named::Id(id) => {
            let found = of_id(library, id, DaySpan::ALWAYS)?;
            let several = found.iter().map(|p| format!("`{}`", p.id)).collect::<Vec<_>>();
            match <[_; 1]>::try_from(found) {
                Ok([profile]) => profile,
                Err(_) => {
                    return Err(Stop::usage(
                        desk::command_rule_of_several(&id, &several.join(", ")),
                        desk::command_name_draft(),
                    ));
                }
            }
        }
    };
    if profile.base || !profile.encoded {
        let what = match profile.base {
            true => desk::command_draft_is_list(&profile.id),
            false => desk::command_draft_not_encoded(&profile.id),
        };
        return Err(Stop::usage(what, desk::command_name_requirements()));
    }
    Ok(profile)
}

/// What comes out beside the report.
pub(super) struct Beside {
    pub(super) against: Option<Comparison>,
    pub(super) draft: Option<Drafted>,
    record: Option<AuditRecord>,
}

/// Compares the rows, judges them under the draft and puts them on record, as
/// far as each was asked for.
pub(super) fn beside(
    arguments: &AuditArguments,
    orders: &Orders<'_>,
    selection: &Selection,
    rows: &[Row],
    asides: &Asides,
) -> Beside {
    let against = asides.against.as_ref();
    let against = against.map(|old| compare::compare(old, orders, selection, rows));
    let draft = asides.draft.as_ref();
    let draft = draft.map(|profile| draft::under_draft(profile, orders, selection, rows));
    let record = arguments.record.as_ref();
    let record = record.map(|_| on_record(arguments, orders, selection, rows, against.as_ref()));
    Beside { against, draft, record }
}

/// The audit as it goes on record: every vessel that it is about, shown or
/// not.
fn on_record(
    arguments: &AuditArguments,
    orders: &Orders<'_>,
    selection: &Selection,
    rows: &[Row],
    against: Option<&Comparison>,
) -> AuditRecord {
    let mut entries: Vec<Entry> = rows
        .par_iter()
        .filter_map(|row| match row {
            Row::Vessel(judged) if selection.concerns(&judged.check) => {
                Some(Entry::new(judged, orders.date))
            }
            _ => None,
        })
        .collect();
    if let Some(comparison) = against {
        comparison.carry_over(&mut entries);
    }
    let refused = rows.iter().filter_map(|row| match row {
        Row::Refused(refusal) => Some(refusal),
        Row::Vessel(_) => None,
    });
    let refused: Vec<&Refusal> = refused.collect();
    let making = Making { orders, selection, auditor: arguments.auditor.as_deref() };
    making.record(entries, &refused)
}

/// Writes the record, whole or not at all, and tells on standard error what a
/// spreadsheet does not hold.
pub(super) fn keep(arguments: &AuditArguments, beside: &Beside) -> Result<(), Stop> {
    if let (Some(path), Some(record)) = (&arguments.record, &beside.record) {
        write(path, record)?;
    }
    if arguments.format == FleetFormat::Csv {
        let against = beside.against.as_ref().map(report::audit::in_one_line);
        let draft = beside.draft.as_ref().map(report::audit::draft_in_one_line);
        for told in against.into_iter().chain(draft) {
            output::complain(&format!("{}\n", desk::command_told_whole(&told)));
        }
    }
    Ok(())
}

fn write(path: &Path, record: &AuditRecord) -> Result<(), Stop> {
    let text = report::wire::record(record).map_err(|error| Stop::formless(&error))?;
    if text.len() as u64 > LARGEST_RECORD {
        let most = LARGEST_RECORD / 1024 / 1024;
        return Err(Stop::usage(
            desk::command_record_too_large(&most),
            desk::command_audit_in_parts(),
        ));
    }
    output::write_whole(path, &text)
}
