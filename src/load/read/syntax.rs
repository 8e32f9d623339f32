//! Plain words for what is wrong with the YAML itself. The parser's own
//! message is never shown.

/// Part of the parser's message, what is told instead, and how to mend it.
type Rewording = (&'static str, &'static str, Option<&'static str>);

/// The first whose part occurs in the message is taken.
const REWORDINGS: [Rewording; 26] = [
    ("tab", "a tab stands where only spaces may", Some("indent with spaces, never with tabs")),
    (
        "quoted scalar, found unexpected end",
        "a quotation mark is opened and never closed",
        Some("close it, or put the whole text in the other kind of quotes"),
    ),
    (
        "quoted scalar, found unexpected document",
        "a quotation mark is opened and never closed",
        Some("close it before this line"),
    ),
    (
        "trailing content after double-quoted",
        "something follows the closing quotation mark",
        Some("put the whole text in quotes, as in `'6 ft 4\"'`"),
    ),
    (
        "unknown escape character",
        "a backslash in double quotes is followed by a letter that means nothing",
        Some("use single quotes, or write two backslashes"),
    ),
    ("hexadecimal", "a backslash code in double quotes is incomplete", Some("use single quotes")),
    ("Unicode character escape", "a backslash code in double quotes is no character", None),
    (
        "indentation in quoted",
        "a quoted text goes on in a line that is not indented enough",
        Some("close the quotation mark, or indent the line"),
    ),
    (
        "flow sequence",
        "a square bracket is opened and not closed, or a comma is missing",
        Some("write a list like `[one, two]`"),
    ),
    (
        "flow mapping",
        "a brace is opened and not closed, or a comma is missing",
        Some("write a group like `{ key: value, key: value }`"),
    ),
    (
        "in flow construct",
        "a bracket or brace is opened and not closed before this line",
        Some("close it, or indent the line"),
    ),
    ("in flow mode", "a bracket or brace is opened and not closed", None),
    (
        "illegal placement of ':'",
        "a key where a list in brackets goes on: a bracket above is not closed, or a text with a \
         colon has no quotes",
        Some("close the bracket above, or put the text in quotes"),
    ),
    ("misplaced bracket", "a closing bracket or brace that was never opened", None),
    ("recursion limit", "brackets are nested too deep", None),
    (
        "mapping values are not allowed",
        "a colon where none may stand",
        Some("indent the line like the ones before it, or put a text with a colon in quotes"),
    ),
    (
        "block sequence entries are not allowed",
        "a list entry where none may stand",
        Some("write the `-` on a line of its own level"),
    ),
    (
        "did not find expected '-'",
        "this line is not indented like the list entries before it",
        Some("give every `-` of a list the same indent"),
    ),
    (
        "did not find expected key",
        "this line is not indented like the lines before it",
        Some("give every key of a group the same indent"),
    ),
    (
        "indentation",
        "this line is not indented as it should be",
        Some("give lines of one group the same indent"),
    ),
    (
        "indented",
        "this line is not indented as it should be",
        Some("give lines of one group the same indent"),
    ),
    (
        "simple key",
        "a key without its colon, or a line that is not indented enough",
        Some("write `key: value`, with a space after the colon"),
    ),
    ("anchor", "an `&` or `*` that names nothing", Some("put a text that begins so in quotes")),
    ("alias", "an `&` or `*` that names nothing", Some("put a text that begins so in quotes")),
    ("unprintable", "a character that cannot be printed", None),
    (
        "unexpected character",
        "a text that begins with a sign that means something else in YAML",
        Some("put the text in quotes"),
    ),
];

/// The plain words for a parser's message, and how to mend it.
pub(crate) fn reworded(message: &str) -> (&'static str, Option<&'static str>) {
    REWORDINGS
        .iter()
        .find(|(part, _, _)| message.contains(part))
        .map(|(_, what, mend)| (*what, *mend))
        .unwrap_or((
            "something here is not as YAML wants it",
            Some("look for a missing quotation mark, bracket, colon or indent at or above it"),
        ))
}
