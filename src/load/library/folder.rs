//! Which files a folder holds: every YAML file below it, in the order of
//! their names, links followed, loops of links told.
//!
//! Opens nothing; what cannot be listed becomes a refusal of its own.

use crate::load::read::fault::Fault;
use crate::load::read::guard::links_in_a_circle;
use crate::load::read::problem::Refusal;
use std::io::ErrorKind;
use std::path::{Path, PathBuf};
use walkdir::{DirEntry, WalkDir};

/// The name of the folders in which inspection records lie.
pub const RECORDS: &str = "inspections";

/// A file that was found.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FoundFile {
    /// Where it is.
    pub path: PathBuf,
    /// Whether it lies in a folder of inspection records.
    pub is_record: bool,
}

/// The file itself, or every YAML file below the folder, in the order of
/// their names; hidden ones are left out. A file that was named is taken
/// whatever it is called.
pub fn find_files(path: &Path) -> Vec<Result<FoundFile, Refusal>> {
    if !path.is_dir() {
        return vec![Ok(FoundFile { path: path.to_path_buf(), is_record: false })];
    }
    let walk = WalkDir::new(path).follow_links(true).sort_by_file_name().into_iter();
    let seen = walk.filter_entry(|entry| entry.depth() == 0 || !is_hidden(entry));
    seen.filter_map(|entry| match entry {
        Ok(entry) if entry.file_type().is_dir() || !is_yaml(entry.path()) => None,
        Ok(entry) => Some(Ok(found(path, entry.into_path()))),
        Err(error) => Some(Err(refusal(path, &error))),
    })
    .collect()
}

fn found(root: &Path, path: PathBuf) -> FoundFile {
    let within = path.strip_prefix(root).ok().and_then(Path::parent);
    let below = within.is_some_and(|folder| folder.iter().any(|part| part == RECORDS));
    let is_record = below || root.file_name().is_some_and(|name| name == RECORDS);
    FoundFile { path, is_record }
}

fn is_hidden(entry: &DirEntry) -> bool {
    entry.file_name().to_string_lossy().starts_with('.')
}

fn is_yaml(path: &Path) -> bool {
    let extension = path.extension().and_then(|extension| extension.to_str());
    extension.is_some_and(|e| e.eq_ignore_ascii_case("yaml") || e.eq_ignore_ascii_case("yml"))
}

fn refusal(root: &Path, error: &walkdir::Error) -> Refusal {
    let name = error.path().unwrap_or(root).display().to_string();
    let fault = if error.loop_ancestor().is_some() {
        Fault::LinkIntoItself
    } else if error.path().is_some_and(links_in_a_circle) {
        Fault::LinkToItself
    } else {
        match error.io_error().map(std::io::Error::kind) {
            Some(ErrorKind::PermissionDenied) => Fault::EntryMayNotBeRead,
            Some(ErrorKind::NotFound) => Fault::NothingThere,
            _ => Fault::EntryCannotBeRead,
        }
    };
    Refusal::whole(&name, fault)
}

#[cfg(test)]
#[allow(clippy::disallowed_methods)] // the tests write the files that are found
mod tests {
    use super::*;

    fn names(root: &Path) -> Vec<(String, bool)> {
        let told = |found: Result<FoundFile, Refusal>| match found {
            Ok(found) => {
                let name = found.path.strip_prefix(root).unwrap().display().to_string();
                (name, found.is_record)
            }
            Err(refusal) => (format!("refused: {}", refusal.problems[0]), false),
        };
        find_files(root).into_iter().map(told).collect()
    }

    #[test]
    fn files_are_found_by_name_and_records_by_their_folder() {
        let folder = tempfile::tempdir().unwrap();
        for name in ["b.yaml", "a.YML", "c.txt", ".d.yaml", "in/e.yaml", "inspections/f.yaml"] {
            let path = folder.path().join(name);
            std::fs::create_dir_all(path.parent().unwrap()).unwrap();
            std::fs::write(path, "x").unwrap();
        }
        let expected = [
            ("a.YML", false),
            ("b.yaml", false),
            ("in/e.yaml", false),
            ("inspections/f.yaml", true),
        ]
        .map(|(name, is_record)| (name.to_owned(), is_record));
        assert_eq!(names(folder.path()), expected);
        let records = folder.path().join(RECORDS);
        assert_eq!(names(&records), [("f.yaml".to_owned(), true)]);
    }

    #[cfg(unix)]
    #[test]
    fn a_loop_of_links_is_told_and_the_rest_is_found() {
        let folder = tempfile::tempdir().unwrap();
        std::fs::create_dir(folder.path().join("in")).unwrap();
        std::fs::write(folder.path().join("in/a.yaml"), "x").unwrap();
        std::os::unix::fs::symlink(folder.path(), folder.path().join("in/loop")).unwrap();
        let names = names(folder.path());
        assert_eq!(names[0], ("in/a.yaml".to_owned(), false));
        assert!(names[1].0.contains("leads back"), "{names:?}");
        assert_eq!(names.len(), 2);
    }
}
