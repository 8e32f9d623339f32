//! Many files at once: in parallel, in the order given, the same whatever the
//! number of threads.

use super::judge::{Orders, Row};
use super::records::{LeftOut, Records};
use crate::load::{self, FoundFile, Refusal};
use rayon::prelude::*;
use std::path::{Path, PathBuf};

/// The files of an audit.
#[derive(Debug, Clone, Default)]
pub struct Files {
    /// Vessels' inventories, or why a place could not be listed, in order.
    pub vessels: Vec<Result<PathBuf, Refusal>>,
    /// Inspection records.
    pub records: Vec<PathBuf>,
}

impl Files {
    /// Every file of these paths, folders with all that lies below them, each
    /// file once.
    pub fn find(paths: &[PathBuf]) -> Self {
        let mut files = Self::default();
        for found in paths.iter().flat_map(|path| load::find_files(path)) {
            match found {
                Ok(FoundFile { path, is_record: true }) => files.records.push(path),
                Ok(FoundFile { path, is_record: false }) => files.vessels.push(Ok(path)),
                Err(refusal) => files.vessels.push(Err(refusal)),
            }
        }
        if paths.len() > 1 {
            files.drop_twins();
        }
        files
    }

    /// Drops what was named twice, in whatever way.
    fn drop_twins(&mut self) {
        let mut seen = std::collections::BTreeSet::new();
        let mut first =
            |path: &Path| seen.insert(path.canonicalize().unwrap_or_else(|_| path.to_path_buf()));
        self.vessels.retain(|found| found.as_ref().map_or(true, |path| first(path)));
        self.records.retain(|path| first(path));
    }
}

/// The rows of these files, each put through `finish` where it was judged,
/// in order. `tick` is called once a file, from any thread.
pub fn rows<T: Send>(
    orders: &Orders<'_>,
    files: &[Result<PathBuf, Refusal>],
    records: &Records,
    finish: impl Fn(Row) -> T + Sync,
    tick: impl Fn() + Sync,
) -> Vec<T> {
    files
        .par_iter()
        .map(|file| {
            let row = match file {
                Ok(path) => orders.row(path, records),
                Err(refusal) => Row::Refused(refusal.clone()),
            };
            tick();
            finish(row)
        })
        .collect()
}

/// Takes out the records that belong to no vessel of these files, or to one
/// of several of the same name. The vessels are read for their names only
/// where there are records at all.
pub fn settle(
    orders: &Orders<'_>,
    files: &[Result<PathBuf, Refusal>],
    records: &mut Records,
) -> Vec<LeftOut> {
    if records.is_empty() {
        return Vec::new();
    }
    let names: Vec<String> = files
        .par_iter()
        .filter_map(|file| {
            let path = file.as_ref().ok()?;
            let (vessel, _) = load::load_vessel(path, &orders.library.vocabulary).ok()?;
            Some(vessel.name)
        })
        .collect();
    records.settle(names.iter().map(String::as_str))
}
