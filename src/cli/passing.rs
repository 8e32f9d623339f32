//! Files under a passing name: none stays behind a run that is stopped.
//!
//! Imports nothing of this crate. A run that a signal ends takes its own away;
//! what a run that was killed outright left is taken away by the next that
//! writes a file of the same name.

use sha2::{Digest, Sha256};
use std::ffi::OsStr;
use std::io;
use std::path::{Path, PathBuf};
use std::sync::{Mutex, MutexGuard, PoisonError};
use std::time::Duration;
use tempfile::NamedTempFile;

/// What every passing name begins with; no command reads files of such a name.
const BEGINNING: &str = ".kitmuster-";

/// A file that nobody wrote to for so long is of no run that still goes on.
const STALE: Duration = Duration::from_secs(60 * 60);

/// The files of this run that have not got their names yet.
static PASSING: Mutex<Vec<PathBuf>> = Mutex::new(Vec::new());

fn passing() -> MutexGuard<'static, Vec<PathBuf>> {
    PASSING.lock().unwrap_or_else(PoisonError::into_inner)
}

/// Makes a file beside the one that it is to become, prepared as it asks.
pub(super) fn make(
    target: &Path,
    prepare: impl FnOnce(&mut tempfile::Builder<'_, '_>, &Path),
) -> io::Result<NamedTempFile> {
    let folder = match target.parent() {
        Some(folder) if !folder.as_os_str().is_empty() => folder,
        _ => Path::new("."),
    };
    let beginning = beginning(target.file_name().unwrap_or_default());
    take_stale(folder, &beginning);
    clean_on_signals();
    let mut builder = tempfile::Builder::new();
    builder.prefix(&beginning);
    prepare(&mut builder, target);
    // A signal waits until the file is known.
    let mut passing = passing();
    let file = builder.tempfile_in(folder)?;
    passing.push(file.path().to_path_buf());
    Ok(file)
}

/// Forgets a file that got its name, or was dropped.
pub(super) fn forget(path: &Path) {
    passing().retain(|one| one != path);
}

/// With what the passing names of a file begin: of fixed length, whatever the
/// file is called, and without its ending.
fn beginning(name: &OsStr) -> String {
    let digest = Sha256::digest(name.as_encoded_bytes());
    let hex: String = digest.iter().take(4).map(|byte| format!("{byte:02x}")).collect();
    format!("{BEGINNING}{hex}-")
}

/// Takes away what stopped runs left of the same name. What cannot be taken
/// away is no reason to write nothing.
#[allow(clippy::disallowed_methods, reason = "names alone are read, no file is opened")]
fn take_stale(folder: &Path, beginning: &str) {
    for entry in std::fs::read_dir(folder).into_iter().flatten().flatten() {
        let name = entry.file_name();
        let age = || entry.metadata().ok()?.modified().ok()?.elapsed().ok();
        if name.to_string_lossy().starts_with(beginning) && age().is_some_and(|age| age > STALE) {
            let _ = std::fs::remove_file(entry.path());
        }
    }
}

/// From the first file on, a signal that ends the run takes its files away
/// first.
#[cfg(unix)]
fn clean_on_signals() {
    use signal_hook::consts::{SIGHUP, SIGINT, SIGTERM};
    use signal_hook::iterator::Signals;
    static ONCE: std::sync::Once = std::sync::Once::new();
    ONCE.call_once(|| {
        let Ok(mut signals) = Signals::new([SIGHUP, SIGINT, SIGTERM]) else { return };
        std::thread::spawn(move || {
            for signal in signals.forever() {
                // Held to the end, so that no file is made after this.
                let passing = passing();
                for path in passing.iter() {
                    let _ = std::fs::remove_file(path);
                }
                let _ = signal_hook::low_level::emulate_default_handler(signal);
            }
        });
    });
}

#[cfg(not(unix))]
fn clean_on_signals() {}

#[cfg(test)]
#[allow(clippy::disallowed_methods, reason = "the tests make the files that are taken away")]
mod tests {
    use super::*;
    use std::time::SystemTime;

    #[test]
    #[allow(clippy::disallowed_methods, reason = "a file is made to look old")]
    fn what_a_stopped_run_left_of_the_same_name_is_taken_away() {
        let folder = tempfile::tempdir().unwrap();
        let target = folder.path().join("report.html");
        let aged = |name: &str, minutes: u64| {
            let path = folder.path().join(name);
            let file = std::fs::File::create(&path).unwrap();
            file.set_modified(SystemTime::now() - Duration::from_secs(60 * minutes)).unwrap();
            path
        };
        let own = beginning(OsStr::new("report.html"));
        let old = aged(&format!("{own}a1B2c3"), 61);
        let kept = [
            // Another run may still be at it.
            aged(&format!("{own}d4E5f6"), 59),
            aged(&format!("{}a1B2c3", beginning(OsStr::new("other.html"))), 61),
            aged("report.html", 61),
        ];
        let file = make(&target, |_, _| ()).unwrap();
        assert!(!old.exists());
        assert!(kept.iter().all(|path| path.exists()));
        assert!(passing().contains(&file.path().to_path_buf()));
        forget(file.path());
        assert!(!passing().contains(&file.path().to_path_buf()));
    }
}
