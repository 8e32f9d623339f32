//! The files of a run over many vessels: inventories and inspection records,
//! named or found in folders.
//!
//! Imports `fleet` and `load`. Opens nothing.

use super::stop::Stop;
use crate::fleet::Files;
use crate::load::Refusal;
use crate::report::desk;
use std::path::PathBuf;

/// Every file of these paths, and the records named beside them.
pub(super) fn find(paths: &[PathBuf], inspection: &[PathBuf]) -> Result<Files, Stop> {
    let mut files = Files::find(paths);
    files.records.extend(named_records(inspection, &mut files.vessels));
    if files.vessels.is_empty() { Err(no_vessel(paths)) } else { Ok(files) }
}

/// That there is no inventory in any of these places.
pub(super) fn no_vessel(paths: &[PathBuf]) -> Stop {
    let paths: Vec<_> = paths.iter().map(|path| format!("`{}`", path.display())).collect();
    Stop::usage(desk::command_no_inventory(&paths.join(", ")), desk::command_name_files())
}

/// The records that were named, folders with all that lies below them.
fn named_records(named: &[PathBuf], refused: &mut Vec<Result<PathBuf, Refusal>>) -> Vec<PathBuf> {
    let mut records = Vec::new();
    for found in named.iter().flat_map(|path| crate::load::find_files(path)) {
        match found {
            Ok(found) => records.push(found.path),
            Err(refusal) => refused.push(Err(refusal)),
        }
    }
    records
}
