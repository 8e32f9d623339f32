//! Opening a file with care: what kind of thing it is, how large, and
//! whether it is text at all.

use super::problem::{Position, Problem, Refusal};
use super::source::Source;
use crate::model::place::Place;
use std::io::{ErrorKind, Read};
use std::path::Path;
use std::sync::Arc;

/// The largest vessel, inspection record, profile or vocabulary that is
/// read, in bytes: 1 MiB.
pub const LARGEST_FILE: u64 = 1024 * 1024;

/// Reads a file as text.
///
/// # Errors
/// It does not exist, cannot be read, is a folder or another special file,
/// is larger than [`LARGEST_FILE`], empty, or no UTF-8 text.
pub(super) fn read_source(path: &Path) -> Result<Source, Refusal> {
    let name: Arc<str> = path.display().to_string().into();
    let refuse = |problem: Problem| Refusal::new(&name, vec![problem]);
    let whole = || Place::new(&name, "");
    let told = |error: &std::io::Error| match error.kind() {
        ErrorKind::NotFound => Problem::new(whole(), "there is no such file")
            .mend("check the name, and the folder it is looked for in"),
        ErrorKind::PermissionDenied => {
            Problem::new(whole(), "this file may not be read").mend("check its permissions")
        }
        _ => Problem::new(whole(), "this file cannot be read"),
    };
    let metadata = std::fs::metadata(path).map_err(|error| refuse(told(&error)))?;
    if metadata.is_dir() {
        return Err(refuse(Problem::new(whole(), "this is a folder").expected("a file")));
    }
    // A pipe or a device could block, or never end.
    if !metadata.is_file() {
        return Err(refuse(
            Problem::new(whole(), "this is a pipe, a device or the like")
                .expected("a regular file"),
        ));
    }
    if metadata.len() > LARGEST_FILE {
        return Err(refuse(too_large(whole())));
    }
    let bytes = read_capped(path, metadata.len()).map_err(|error| refuse(told(&error)))?;
    if bytes.len() as u64 > LARGEST_FILE {
        return Err(refuse(too_large(whole())));
    }
    text_of(&name, bytes)
}

#[allow(clippy::disallowed_methods)] // this is where files are opened
fn read_capped(path: &Path, length: u64) -> std::io::Result<Vec<u8>> {
    // With room to spare the end is seen without asking again.
    let mut bytes = Vec::with_capacity(usize::try_from(length + 64).unwrap_or_default());
    // The file may have grown since its size was looked up.
    std::fs::File::open(path)?.take(LARGEST_FILE + 1).read_to_end(&mut bytes)?;
    Ok(bytes)
}

fn too_large(place: Place) -> Problem {
    Problem::new(place, "this file is too large")
        .expected(format!("at most {} KiB", LARGEST_FILE / 1024))
}

/// The text of a file's bytes.
fn text_of(name: &Arc<str>, bytes: Vec<u8>) -> Result<Source, Refusal> {
    let refuse = |problem: Problem| Refusal::new(name, vec![problem]);
    let whole = || Place::new(name, "");
    if bytes.starts_with(&[0xff, 0xfe]) || bytes.starts_with(&[0xfe, 0xff]) {
        return Err(refuse(
            Problem::new(whole(), "this file is written in UTF-16")
                .expected("text in UTF-8")
                .mend("save it again with the encoding UTF-8"),
        ));
    }
    match String::from_utf8(bytes) {
        Ok(text) => source_of(name, &text),
        Err(error) => {
            let good = error.utf8_error().valid_up_to();
            let before = String::from_utf8_lossy(&error.as_bytes()[..good]).into_owned();
            Err(refuse(
                Problem::new(whole(), "this file is not text in UTF-8")
                    .at(end_of(&before))
                    .expected("text in UTF-8")
                    .mend("save it again with the encoding UTF-8"),
            ))
        }
    }
}

/// A source of text that is already in memory, judged in the same way.
///
/// # Errors
/// It is too large, empty, or holds NUL characters.
pub(super) fn source_of(name: &Arc<str>, text: &str) -> Result<Source, Refusal> {
    let refuse = |problem: Problem| Refusal::new(name, vec![problem]);
    let whole = || Place::new(name, "");
    if text.len() as u64 > LARGEST_FILE {
        return Err(refuse(too_large(whole())));
    }
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    if let Some(at) = text.find('\0') {
        return Err(refuse(
            Problem::new(whole(), "a NUL character: this is no text file").at(end_of(&text[..at])),
        ));
    }
    if text.trim().is_empty() {
        return Err(refuse(Problem::new(whole(), "this file is empty")));
    }
    Ok(Source { file: Arc::clone(name), text: text.into() })
}

/// The position after a text.
fn end_of(text: &str) -> Position {
    let line = text.matches('\n').count() + 1;
    let tail = text.rsplit('\n').next().unwrap_or("");
    Position { line, column: tail.chars().count() + 1 }
}

#[cfg(test)]
#[allow(clippy::disallowed_methods)] // the tests write the files that they read
mod tests {
    use super::*;

    fn what(name: &str, bytes: &[u8]) -> (String, Option<Position>) {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join(name);
        std::fs::write(&path, bytes).unwrap();
        let problem = read_source(&path).unwrap_err().problems.remove(0);
        (problem.what, problem.position)
    }

    #[test]
    fn what_is_no_text_file_is_told_apart() {
        assert_eq!(what("a", b"").0, "this file is empty");
        assert_eq!(what("a", b" \n").0, "this file is empty");
        assert_eq!(what("a", b"\xff\xfea\0").0, "this file is written in UTF-16");
        assert_eq!(what("a", b"a: 1\nb\0").0, "a NUL character: this is no text file");
        assert_eq!(
            what("a", b"a: 1\nb: \xe9"),
            ("this file is not text in UTF-8".into(), Some(Position { line: 2, column: 4 }))
        );
        let large = vec![b'a'; usize::try_from(LARGEST_FILE).unwrap() + 1];
        assert_eq!(what("a", &large).0, "this file is too large");
    }

    #[test]
    fn what_is_no_file_is_told_apart() {
        let folder = tempfile::tempdir().unwrap();
        let what = |path: &Path| read_source(path).unwrap_err().problems.remove(0).what;
        assert_eq!(what(folder.path()), "this is a folder");
        assert_eq!(what(&folder.path().join("none")), "there is no such file");
        #[cfg(unix)]
        assert_eq!(what(Path::new("/dev/null")), "this is a pipe, a device or the like");
    }

    #[test]
    fn a_byte_order_mark_is_skipped() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("a");
        std::fs::write(&path, "\u{feff}a: 1").unwrap();
        assert_eq!(&*read_source(&path).unwrap().text, "a: 1");
    }
}
