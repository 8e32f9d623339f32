//! Every page in a made-up language: what is left on it in plain letters, and
//! came out of no file, was written outside the files of messages.

mod leftovers;
mod pages;

use super::words::locale::{Language, OF_DESK};
use leftovers::{Known, leftovers};

#[test]
fn nothing_on_a_page_was_written_in_code() {
    OF_DESK.set(Language::MadeUp);
    let mut known = Known::default();
    let pages = pages::all(&mut known);
    let found = pages.iter().flat_map(|(page, text)| {
        leftovers(text, &known).into_iter().map(move |around| format!("{page}: {around}"))
    });
    let found: Vec<_> = found.collect();
    assert!(found.is_empty(), "{} words are left:\n{}", found.len(), found.join("\n"));
}

#[test]
fn what_came_out_of_a_file_is_told_from_what_was_written_in_code() {
    let mut known = Known::default();
    known.learn(&["one set of blades, see `kit:`", "18/0 and larger"]);
    for page in [
        "\u{434}\u{435}: one set of blades, see `kit:`",
        "6 ft 4 1/2 in (1.944 m); (a) r46bn-3p4kn",
        "<!DOCTYPE html><style>p { color: red }</style><p class=\"none\">18/0 and larger</p>",
        "<!DOCTYPE html><p>One set of blades, see <code>kit:</code>, <code>kitmuster</code></p>",
    ] {
        assert_eq!(leftovers(page, &known), [""; 0], "{page}");
    }
    for page in [
        "\u{434}\u{435} in one set of blades, see `kit:`",
        "18/0 and larger in",
        "<!DOCTYPE html><p aria-label=\"in\">\u{434}</p>",
        "<!DOCTYPE html><p>\u{434} <b>in</b></p>",
    ] {
        assert_eq!(leftovers(page, &known).len(), 1, "{page}");
    }
}
