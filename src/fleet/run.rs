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
/// in order. `tick` is called once a file, from any thread. Where the program
/// itself fails over one file, that one is refused and the rest goes on.
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
                Ok(path) => survive(|| orders.row(path, records)).unwrap_or_else(|| failed(path)),
                Err(refusal) => Row::Refused(refusal.clone()),
            };
            tick();
            match file {
                Ok(path) => survive(|| finish(row)).unwrap_or_else(|| finish(failed(path))),
                Err(_) => finish(row),
            }
        })
        .collect()
}

/// What comes of the work, or nothing where the program fails over it. What
/// the work had in hand is dropped with it.
fn survive<T>(work: impl FnOnce() -> T) -> Option<T> {
    std::panic::catch_unwind(std::panic::AssertUnwindSafe(work)).ok()
}

fn failed(path: &Path) -> Row {
    Row::Refused(Refusal::of_program(&path.to_string_lossy()))
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::engine::Depth;
    use crate::load::Library;
    use crate::measure::Day;
    use crate::model::vessel::Trust;

    #[test]
    fn a_failure_over_one_vessel_is_a_row_of_its_own() {
        let library = Library::shipped().unwrap();
        let orders = Orders {
            library: &library,
            asked: &[],
            on: None,
            back: None,
            date: Day::parse("2026-03-02").unwrap(),
            trust: Trust::All,
            depth: Depth::Findings,
        };
        let home = Path::new(env!("CARGO_MANIFEST_DIR")).join("vessels");
        let names = ["marlow-tern.yaml", "salt-pomelo.yaml", "little-knot.yaml"];
        let files: Vec<_> = names.iter().map(|name| Ok(home.join(name))).collect();
        let finish = |row: Row| match row {
            Row::Vessel(judged) if judged.file.ends_with(names[1]) => panic!("over this vessel"),
            Row::Vessel(judged) => Ok(judged.check.vessel.name),
            Row::Refused(refusal) => Err(refusal),
        };
        let rows = rows(&orders, &files, &Records::default(), finish, || ());
        assert_eq!(rows.iter().filter(|row| row.is_ok()).count(), 2);
        let refusal = rows[1].as_ref().unwrap_err();
        assert!(refusal.file.ends_with(names[1]), "{refusal}");
        assert!(refusal.to_string().contains("fault of the program"), "{refusal}");
        assert!(survive(|| -> () { panic!("while judging") }).is_none());
    }
}
