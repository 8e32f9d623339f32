//! Opening a file that may be far longer than an inventory: an audit on
//! record.
//!
//! The same care as `guard.rs` (what kind of thing it is, how large, whether
//! it is text), with the limit as an argument.

use super::problem::{Problem, Refusal};
use crate::model::place::Place;
use std::io::{ErrorKind, Read};
use std::path::Path;
use std::sync::Arc;

/// Reads a file as text, if it is no longer than `most` bytes.
///
/// # Errors
/// It does not exist, cannot be read, is a folder or another special file,
/// is longer than `most`, or no UTF-8 text.
pub fn read_long(path: &Path, most: u64) -> Result<String, Refusal> {
    let name: Arc<str> = path.display().to_string().into();
    let refuse = |what: &str, expected: &str| {
        let problem = Problem::new(Place::new(&name, ""), what);
        let problem = if expected.is_empty() { problem } else { problem.expected(expected) };
        Refusal::new(&name, vec![problem])
    };
    let told = |error: &std::io::Error| match error.kind() {
        ErrorKind::NotFound => refuse("there is no such file", ""),
        ErrorKind::PermissionDenied => refuse("this file may not be read", ""),
        _ => refuse("this file cannot be read", ""),
    };
    let metadata = std::fs::metadata(path).map_err(|error| told(&error))?;
    if metadata.is_dir() {
        return Err(refuse("this is a folder", "a file"));
    }
    if !metadata.is_file() {
        return Err(refuse("this is a pipe, a device or the like", "a regular file"));
    }
    let limit = format!("at most {} MiB", most / 1024 / 1024);
    if metadata.len() > most {
        return Err(refuse("this file is too large", &limit));
    }
    let bytes = read_capped(path, most).map_err(|error| told(&error))?;
    if bytes.len() as u64 > most {
        return Err(refuse("this file is too large", &limit));
    }
    String::from_utf8(bytes).map_err(|_| refuse("this file is not text in UTF-8", "text in UTF-8"))
}

#[allow(clippy::disallowed_methods)] // this is where files are opened
fn read_capped(path: &Path, most: u64) -> std::io::Result<Vec<u8>> {
    let mut bytes = Vec::new();
    // The file may have grown since its size was looked up.
    std::fs::File::open(path)?.take(most + 1).read_to_end(&mut bytes)?;
    Ok(bytes)
}

#[cfg(test)]
#[allow(clippy::disallowed_methods)] // the tests write the files that they read
mod tests {
    use super::*;

    #[test]
    fn what_is_no_text_of_that_length_is_told_apart() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("a");
        let what =
            |path: &Path, most| read_long(path, most).map_err(|r| r.problems[0].what.clone());
        let told = |text: &str| Err::<String, _>(text.to_owned());
        assert_eq!(what(&path, 4), told("there is no such file"));
        assert_eq!(what(folder.path(), 4), told("this is a folder"));
        std::fs::write(&path, b"12345").unwrap();
        assert_eq!(what(&path, 4), told("this file is too large"));
        assert_eq!(what(&path, 5), Ok("12345".to_owned()));
        std::fs::write(&path, b"\xff").unwrap();
        assert_eq!(what(&path, 4), told("this file is not text in UTF-8"));
    }
}
