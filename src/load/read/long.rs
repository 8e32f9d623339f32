//! Opening a file that may be far longer than an inventory: an audit on
//! record.
//!
//! The same care as `guard.rs` (what kind of thing it is, how large, whether
//! it is text), with the limit as an argument.

use crate::load::read::guard::{LARGEST_FILE, unread};
use crate::load::read::problem::{Problem, Refusal};
use crate::model::place::Place;
use std::io::Read;
use std::path::Path;
use std::sync::Arc;

/// How much of a file is looked at before the rest is read, in bytes.
const HEAD: usize = 4096;

/// Reads a file as the text of a JSON object, if it is no longer than `most`
/// bytes. Whether it is one is not judged; but a file longer than an inventory
/// may be that does not begin like one is not read to its end.
///
/// # Errors
/// It does not exist, cannot be read, is a folder or another special file,
/// is longer than `most`, begins otherwise, or is no UTF-8 text.
pub fn read_long(path: &Path, most: u64) -> Result<String, Refusal> {
    let name: Arc<str> = path.display().to_string().into();
    let refuse = |what: &str, expected: &str| {
        Refusal::new(&name, vec![Problem::new(Place::new(&name, ""), what).expected(expected)])
    };
    let told = |error: &std::io::Error| Refusal::new(&name, vec![unread(path, error)]);
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
    let (mut file, mut bytes) = begin(path).map_err(|error| told(&error))?;
    if metadata.len() > LARGEST_FILE && !begins_an_object(&bytes) {
        return Err(refuse("this does not begin like JSON", "`{` as the first character"));
    }
    read_on(&mut file, &mut bytes, metadata.len(), most).map_err(|error| told(&error))?;
    if bytes.len() as u64 > most {
        return Err(refuse("this file is too large", &limit));
    }
    String::from_utf8(bytes).map_err(|_| refuse("this file is not text in UTF-8", "text in UTF-8"))
}

#[allow(clippy::disallowed_methods)] // this is where files are opened
fn begin(path: &Path) -> std::io::Result<(std::fs::File, Vec<u8>)> {
    let mut file = std::fs::File::open(path)?;
    let mut bytes = Vec::new();
    Read::by_ref(&mut file).take(HEAD as u64).read_to_end(&mut bytes)?;
    Ok((file, bytes))
}

/// Reads the rest, as long as the whole is no longer than `most` and a byte.
fn read_on(
    file: &mut std::fs::File,
    bytes: &mut Vec<u8>,
    length: u64,
    most: u64,
) -> std::io::Result<()> {
    // With room to spare nothing is copied into twice the room to see the end.
    bytes.reserve_exact(usize::try_from(length + 64).unwrap_or_default());
    // The file may have grown since its size was looked up.
    let rest = (most + 1).saturating_sub(bytes.len() as u64);
    file.take(rest).read_to_end(bytes).map(|_| ())
}

/// Whether an opening brace comes first, blanks and a byte order mark aside.
fn begins_an_object(bytes: &[u8]) -> bool {
    let bytes = bytes.strip_prefix("\u{feff}".as_bytes()).unwrap_or(bytes);
    bytes.iter().find(|byte| !byte.is_ascii_whitespace()) == Some(&b'{')
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
        let long = |begin: &str| format!("{begin}{}", " ".repeat(LARGEST_FILE as usize));
        std::fs::write(&path, long("\n[")).unwrap();
        assert_eq!(what(&path, u64::MAX / 2), told("this does not begin like JSON"));
        std::fs::write(&path, long("\u{feff} {")).unwrap();
        assert!(what(&path, u64::MAX / 2).is_ok());
        std::fs::write(&path, b"\xff").unwrap();
        assert_eq!(what(&path, 4), told("this file is not text in UTF-8"));
    }
}
