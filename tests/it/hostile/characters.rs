//! Encodings that are not ours, and characters that steer instead of being
//! seen, wherever a file can hold them.

use super::table::{Case, GOOD, Kind, and, hold, read, refused, with};

fn wide(unit: impl Fn(char) -> Vec<u8>, mark: bool) -> Vec<u8> {
    let begin = if mark { "\u{feff}" } else { "" };
    begin.chars().chain(GOOD.chars()).flat_map(unit).collect()
}

fn utf16(big: bool, mark: bool) -> Vec<u8> {
    let of = |c: char| {
        let units = c.encode_utf16(&mut [0; 2]).to_vec();
        units
            .into_iter()
            .flat_map(|u| if big { u.to_be_bytes() } else { u.to_le_bytes() })
            .collect()
    };
    wide(of, mark)
}

fn utf32(big: bool, mark: bool) -> Vec<u8> {
    let of = |c: char| {
        let c = u32::from(c);
        if big { c.to_be_bytes() } else { c.to_le_bytes() }.to_vec()
    };
    wide(of, mark)
}

fn bytes(before: &str, bytes: &[u8], after: &str) -> Vec<u8> {
    [before.as_bytes(), bytes, after.as_bytes()].concat()
}

fn encodings() -> Vec<Case> {
    const UTF16: &[&str] = &[
        "vessel.yaml: this file is written in UTF-16",
        "expected text in UTF-8",
        "mend: save it again with the encoding UTF-8",
    ];
    const UTF32: &[&str] = &[
        "vessel.yaml: this file is written in UTF-32",
        "expected text in UTF-8",
        "mend: save it again with the encoding UTF-8",
    ];
    const NUL: &[&str] = &["a NUL character: this is no text file"];
    let (head, tail) = GOOD.split_at(GOOD.find("Kittiwake").unwrap());
    vec![
        read(
            "UTF-8 with a byte order mark",
            format!("\u{feff}{GOOD}"),
            1,
            &["NOT READY Test Kittiwake"],
        ),
        read(
            "lines of another system",
            GOOD.replace('\n', "\r\n"),
            1,
            &["NOT READY Test Kittiwake"],
        ),
        refused("UTF-16, small end first", utf16(false, true), UTF16),
        refused("UTF-16, big end first", utf16(true, true), UTF16),
        refused("UTF-16 without a mark", utf16(false, false), UTF16),
        refused("UTF-16, big end first, without a mark", utf16(true, false), UTF16),
        refused("UTF-32, small end first", utf32(false, true), UTF32),
        refused("UTF-32, big end first", utf32(true, true), UTF32),
        refused(
            "Latin-1",
            bytes(head, b"Ni\xf1a ", tail),
            &[
                "vessel.yaml:2:14: this file is not text in UTF-8",
                "mend: save it again with the encoding UTF-8",
            ],
        ),
        refused(
            "half a character at the end",
            bytes(GOOD, b"# \xc3", ""),
            &["vessel.yaml:11:3: this file is not text in UTF-8"],
        ),
        refused(
            "an overlong slash",
            bytes(head, b"\xc0\xaf", tail),
            &["vessel.yaml:2:12: this file is not text in UTF-8"],
        ),
        refused(
            "half a pair, as UTF-8",
            bytes(head, b"\xed\xa0\x80", tail),
            &["vessel.yaml:2:12: this file is not text in UTF-8"],
        ),
        refused(
            "a NUL byte",
            bytes(head, b"\0", tail),
            &["vessel.yaml:2:12: a NUL character: this is no text file"],
        ),
        refused(
            "a NUL by its code",
            with("Test Kittiwake", "\"a\\0b\""),
            &[
                "vessel.yaml:2:7: a character that steers the screen",
                "mend: take the character away",
            ],
        ),
        refused("a megabyte of NUL bytes", vec![0; 1_000_000], NUL),
        refused(
            "a picture",
            b"\x89PNG\r\n\x1a\n\0\0\0\rIHDR".to_vec(),
            &["vessel.yaml:1:1: this file is not text in UTF-8"],
        ),
        read(
            "a second byte order mark",
            format!("\u{feff}\u{feff}{GOOD}"),
            1,
            &["NOT READY Test Kittiwake"],
        ),
    ]
}

/// What steers, and how it is shown.
const STEERING: [(&str, &str, &str); 20] = [
    ("a colour", "\u{1b}[31m", "\\u{1b}"),
    ("a window title", "\u{1b}]0;gone\u{7}", "\\u{7}"),
    ("a link of the terminal", "\u{1b}]8;;javascript:alert(1)\u{1b}\\", "\\u{1b}]8"),
    ("a C1 control", "\u{9b}2J", "\\u{9b}"),
    ("a next line", "\u{85}", "\\u{85}"),
    ("a delete", "\u{7f}", "\\u{7f}"),
    ("a backspace", "\u{8}\u{8}", "\\u{8}"),
    ("a bell", "\u{7}", "\\u{7}"),
    ("a carriage return", "\r", "\\u{d}"),
    ("an override to the left", "\u{202e}", "\\u{202e}"),
    ("an embedding", "\u{202b}", "\\u{202b}"),
    ("an isolate", "\u{2067}", "\\u{2067}"),
    ("a mark to the left", "\u{200f}", "\\u{200f}"),
    ("an Arabic mark", "\u{61c}", "\\u{61c}"),
    ("a blank of no width", "\u{200b}", "\\u{200b}"),
    ("a word joiner", "\u{2060}", "\\u{2060}"),
    ("a line separator", "\u{2028}", "\\u{2028}"),
    ("a soft hyphen", "\u{ad}", "\\u{ad}"),
    ("an invisible letter", "\u{e0041}", "\\u{e0041}"),
    ("a blank letter", "\u{3164}", "\\u{3164}"),
];

/// Codes of a text in quotes, so that every character gets into the YAML.
fn coded(text: &str) -> String {
    let code = |c: char| match u32::from(c) {
        n if c.is_ascii_graphic() && !matches!(c, '"' | '\\') => {
            format!("{}", char::from_u32(n).unwrap())
        }
        n => format!("\\U{n:08X}"),
    };
    text.chars().map(code).collect()
}

/// Where a steering text can stand.
fn at(place: usize, text: &str) -> String {
    let text = format!("\"x{}\"", coded(text));
    let places = [
        with("Test Kittiwake", &text),
        with("PL-1", &text),
        with("kind: pliers", &format!("kind: {text}")),
        and(&format!("port: {text}\n")),
        and(&format!("{text}: yes\n")),
        with("gulf-reef-fish-commercial", &text),
        with("12 in", &text),
        with("serviceable", &text),
        with("wheelhouse", &text),
        and(&format!("register: {text}\n")),
    ];
    places[place % places.len()].clone()
}

#[test]
fn other_encodings_are_refused_with_the_way_out() {
    hold("encodings", Kind::Vessel, encodings());
}

/// Every character at a place of its own, and every place several times.
#[test]
fn what_steers_is_refused_wherever_it_stands_and_shown_by_its_code() {
    let cases = STEERING.iter().enumerate().map(|(index, (name, text, shown))| {
        let shown: &'static [&'static str] =
            Box::leak(Box::new(["a character that steers the screen", shown]));
        refused(name, at(index, text), shown)
    });
    hold("steering", Kind::Vessel, cases);
}

/// As it is in the file, without quotes and codes, every other one: YAML
/// itself allows some.
#[test]
fn what_steers_is_refused_unquoted_too() {
    let raw = STEERING.iter().step_by(2).map(|(name, text, _)| {
        let told: &'static [&'static str] = &["vessel.yaml:", "mend:"];
        refused(name, with("Test Kittiwake", &format!("Test {text}Kittiwake")), told)
    });
    hold("steering, raw", Kind::Vessel, raw);
}
