//! Opening a file with care: what kind of thing it is, how large, and
//! whether it is text at all.

use crate::load::read::fault::Fault;
use crate::load::read::problem::{Position, Problem, Refusal};
use crate::load::read::spot::Source;
use crate::model::place::Place;
use std::io::{ErrorKind, Read};
use std::path::Path;
use std::sync::Arc;

/// The largest vessel, inspection record, profile or vocabulary that is
/// read, in bytes: 1 MiB.
pub const LARGEST_FILE: u64 = 1024 * 1024;

/// The most lines of a file that begin with `%`, as YAML's directives do.
const MOST_DIRECTIVES: usize = 10;

/// Reads a file as text.
///
/// # Errors
/// It does not exist, cannot be read, is a folder or another special file,
/// is larger than [`LARGEST_FILE`], empty, or no UTF-8 text.
pub(crate) fn read_source(path: &Path) -> Result<Source, Refusal> {
    let name: Arc<str> = path.display().to_string().into();
    text_of(&name, bytes_of(path, LARGEST_FILE, Fault::TooLarge(LARGEST_FILE / 1024))?)
}

/// Reads a file as the text of a JSON object, if it is no longer than `most`
/// bytes. Whether it is one is not judged; but a file longer than an inventory
/// may be that does not begin like one is not read to its end.
///
/// # Errors
/// It does not exist, cannot be read, is a folder or another special file,
/// is longer than `most`, begins otherwise, or is no UTF-8 text.
pub fn read_long(path: &Path, most: u64) -> Result<String, Refusal> {
    let name: Arc<str> = path.display().to_string().into();
    let bytes = bytes_of(path, most, Fault::LongTooLarge(most / 1024 / 1024))?;
    String::from_utf8(bytes).map_err(|_| Refusal::whole(&name, Fault::LongNoUtf8))
}

/// The name of standard input in place of a file's.
const STANDARD_INPUT: &str = "-";

/// The bytes of a regular file, or of standard input under its name, if there
/// are no more than `most`.
fn bytes_of(path: &Path, most: u64, too_large: Fault) -> Result<Vec<u8>, Refusal> {
    let name: Arc<str> = path.display().to_string().into();
    let told = |error: &std::io::Error| Refusal::whole(&name, unread(path, error));
    if path == Path::new(STANDARD_INPUT) {
        let mut bytes = Vec::new();
        let read = std::io::stdin().lock().take(most + 1).read_to_end(&mut bytes);
        read.map_err(|error| told(&error))?;
        let too_long = bytes.len() as u64 > most;
        return if too_long { Err(Refusal::whole(&name, too_large)) } else { Ok(bytes) };
    }
    let metadata = std::fs::metadata(path).map_err(|error| told(&error))?;
    if metadata.is_dir() {
        return Err(Refusal::whole(&name, Fault::IsFolder));
    }
    // A pipe or a device could block, or never end.
    if !metadata.is_file() {
        return Err(Refusal::whole(&name, Fault::NoRegularFile));
    }
    if metadata.len() > most {
        return Err(Refusal::whole(&name, too_large));
    }
    let (mut file, mut bytes) = begin(path).map_err(|error| told(&error))?;
    if metadata.len() > LARGEST_FILE && !begins_an_object(&bytes) {
        return Err(Refusal::whole(&name, Fault::NoJson));
    }
    read_on(&mut file, &mut bytes, metadata.len(), most).map_err(|error| told(&error))?;
    if bytes.len() as u64 > most {
        return Err(Refusal::whole(&name, too_large));
    }
    Ok(bytes)
}

/// Why the system does not give a file.
fn unread(path: &Path, error: &std::io::Error) -> Fault {
    match error.kind() {
        ErrorKind::NotFound => Fault::NoSuchFile,
        ErrorKind::PermissionDenied => Fault::MayNotBeRead,
        ErrorKind::NotADirectory => Fault::PathThroughFile,
        _ if links_in_a_circle(path) => Fault::LinkToItself,
        _ => Fault::CannotBeRead,
    }
}

/// Whether a path is a link that the system cannot follow to an end. (The kind
/// of error that says so has no stable name yet.)
pub(crate) fn links_in_a_circle(path: &Path) -> bool {
    path.is_symlink()
        && path.metadata().is_err_and(|error| {
            !matches!(error.kind(), ErrorKind::NotFound | ErrorKind::PermissionDenied)
        })
}

/// The text of a file's bytes.
fn text_of(name: &Arc<str>, bytes: Vec<u8>) -> Result<Source, Refusal> {
    if let Some(encoding) = wide_encoding(&bytes) {
        return Err(Refusal::whole(name, Fault::OtherEncoding(encoding)));
    }
    match String::from_utf8(bytes) {
        Ok(text) => source_of(name, &text),
        Err(error) => {
            let good = error.utf8_error().valid_up_to();
            let before = String::from_utf8_lossy(&error.as_bytes()[..good]).into_owned();
            Err(refused_at(name, Fault::NoUtf8, end_of(&before)))
        }
    }
}

/// The refusal of a file because of what stands there.
fn refused_at(name: &Arc<str>, fault: Fault, at: Position) -> Refusal {
    Refusal::new(name, vec![Problem::new(Place::new(name, ""), fault).at(at)])
}

/// The encoding of a text whose characters are all two or four bytes wide: by
/// its byte order mark, or because its first character is one of ASCII.
fn wide_encoding(bytes: &[u8]) -> Option<&'static str> {
    let is_ascii = |byte: u8| byte != 0 && byte < 0x80;
    match *bytes.get(..4)? {
        [0xff, 0xfe, 0, 0] | [0, 0, 0xfe, 0xff] => Some("UTF-32"),
        [0xff, 0xfe, ..] | [0xfe, 0xff, ..] => Some("UTF-16"),
        [a, 0, 0, 0] | [0, 0, 0, a] if is_ascii(a) => Some("UTF-32"),
        [a, 0, b, 0] | [0, a, 0, b] if is_ascii(a) && is_ascii(b) => Some("UTF-16"),
        _ => None,
    }
}

/// A source of text that is already in memory, judged in the same way.
///
/// # Errors
/// It is too large, empty, or holds NUL characters.
pub(crate) fn source_of(name: &Arc<str>, text: &str) -> Result<Source, Refusal> {
    if text.len() as u64 > LARGEST_FILE {
        return Err(Refusal::whole(name, Fault::TooLarge(LARGEST_FILE / 1024)));
    }
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    if let Some(at) = text.find('\0') {
        return Err(refused_at(name, Fault::NulCharacter, end_of(&text[..at])));
    }
    if text.trim().is_empty() {
        return Err(Refusal::whole(name, Fault::Empty));
    }
    if let Some(line) = directives(text).nth(MOST_DIRECTIVES) {
        let fault = Fault::TooManyDirectives(MOST_DIRECTIVES);
        return Err(refused_at(name, fault, Position { line, column: 1 }));
    }
    Ok(Source { file: Arc::clone(name), text: text.into() })
}

/// The lines that can be YAML's directives, counted from 1; each is compared
/// with all before it by what parses them.
fn directives(text: &str) -> impl Iterator<Item = usize> {
    lines(text).enumerate().filter(|(_, line)| line.starts_with('%')).map(|(index, _)| index + 1)
}

/// The lines as YAML counts them: a carriage return alone ends one too.
fn lines(text: &str) -> impl Iterator<Item = &str> {
    text.split('\n').flat_map(|line| line.strip_suffix('\r').unwrap_or(line).split('\r'))
}

/// The position after a text.
fn end_of(text: &str) -> Position {
    let tail = lines(text).last().unwrap_or("");
    Position { line: lines(text).count(), column: tail.chars().count() + 1 }
}

/// How much of a file is looked at before the rest is read, in bytes.
const HEAD: usize = 4096;

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

    fn what(name: &str, bytes: &[u8]) -> (String, Option<Position>) {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join(name);
        std::fs::write(&path, bytes).unwrap();
        let problem = read_source(&path).unwrap_err().problems.remove(0);
        (problem.wording().what, problem.position)
    }

    #[test]
    fn a_carriage_return_alone_ends_a_line_too() {
        for text in ["a: 1\rb: 2\rc: \0", "a: 1\nb: 2\nc: \0", "a: 1\r\nb: 2\r\nc: \0"] {
            let (_, at) = what("lines.yaml", text.as_bytes());
            assert_eq!(at, Some(Position { line: 3, column: 4 }), "{text:?}");
        }
        let many = "%TAG !a! b\r".repeat(MOST_DIRECTIVES + 1);
        let (what, at) = what("many.yaml", many.as_bytes());
        assert_eq!(what, "too many lines that begin with `%`");
        assert_eq!(at, Some(Position { line: MOST_DIRECTIVES + 1, column: 1 }));
    }

    #[test]
    fn what_is_no_text_file_is_told_apart() {
        assert_eq!(what("a", b"").0, "this file is empty");
        assert_eq!(what("a", b" \n").0, "this file is empty");
        assert_eq!(what("a", b"\xff\xfea\0").0, "this file is written in UTF-16");
        assert_eq!(what("a", b"a\0:\0").0, "this file is written in UTF-16");
        assert_eq!(what("a", b"\0\0\0a").0, "this file is written in UTF-32");
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
        let what = |path: &Path| read_source(path).unwrap_err().problems.remove(0).wording().what;
        assert_eq!(what(folder.path()), "this is a folder");
        assert_eq!(what(&folder.path().join("none")), "there is no such file");
        #[cfg(unix)]
        assert_eq!(what(Path::new("/dev/null")), "this is a pipe, a device or the like");
    }

    #[cfg(unix)]
    #[test]
    fn a_link_to_itself_and_a_path_through_a_file_are_told_apart() {
        let folder = tempfile::tempdir().unwrap();
        let what = |path: &Path| read_source(path).unwrap_err().problems.remove(0).wording().what;
        let (circle, plain) = (folder.path().join("circle"), folder.path().join("plain"));
        std::os::unix::fs::symlink(&circle, &circle).unwrap();
        std::fs::write(&plain, "x").unwrap();
        assert_eq!(what(&circle), "this link leads back to itself");
        assert_eq!(what(&plain.join("below")), "part of this path is no folder");
    }

    #[test]
    fn endless_directives_are_refused_before_they_are_parsed() {
        let text = format!("{}---\na: 1\n", "%TAG !a! tag:a,2000:\n".repeat(11));
        let refusal = source_of(&"a".into(), &text).unwrap_err();
        assert_eq!(refusal.problems[0].position, Some(Position { line: 11, column: 1 }));
        assert!(source_of(&"a".into(), "%YAML 1.2\n---\na: 1\n").is_ok());
    }

    #[test]
    fn a_byte_order_mark_is_skipped() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("a");
        std::fs::write(&path, "\u{feff}a: 1").unwrap();
        assert_eq!(&*read_source(&path).unwrap().text, "a: 1");
    }
}

#[cfg(test)]
#[allow(clippy::disallowed_methods)] // the tests write the files that they read
mod long_tests {
    use super::*;

    #[test]
    fn what_is_no_text_of_that_length_is_told_apart() {
        let folder = tempfile::tempdir().unwrap();
        let path = folder.path().join("a");
        let what =
            |path: &Path, most| read_long(path, most).map_err(|r| r.problems[0].wording().what);
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
