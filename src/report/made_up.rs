//! Every page in a made-up language: what is left on it in plain letters, and
//! came out of no file, was written outside the files of messages.

mod leftovers;
mod pages;

use super::words::locale::{Language, OF_DESK};
use leftovers::{Known, leftovers};

/// Texts that are still written in code, by the page that they are on: a list
/// that only shrinks.
const OPEN: [(&str, &str); 3] =
    [("card", "the clause was"), ("options", " and "), ("quote html", "can't tell")];

#[test]
fn nothing_on_a_page_was_written_in_code() {
    OF_DESK.set(Language::MadeUp);
    let mut known = Known::default();
    let pages = pages::all(&mut known);
    let is_open = |page: &str, around: &str| {
        OPEN.iter().position(|(of, text)| page.starts_with(of) && around.contains(text))
    };
    let (mut found, mut open) = (Vec::new(), [false; OPEN.len()]);
    for (page, text) in &pages {
        for around in leftovers(text, &known) {
            match is_open(page, &around) {
                Some(index) => open[index] = true,
                None => found.push(format!("{page}: {around}")),
            }
        }
    }
    assert!(found.is_empty(), "{} words are left:\n{}", found.len(), found.join("\n"));
    let quoted = cfg!(feature = "quote");
    for ((page, text), still) in
        OPEN.iter().zip(open).filter(|((page, _), _)| quoted || !page.starts_with("quote"))
    {
        assert!(still, "nobody writes `{text}` on a page of {page} any more: strike it out");
    }
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
