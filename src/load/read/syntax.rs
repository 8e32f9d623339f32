//! Plain words for what is wrong with the YAML itself. The parser's own
//! message is never shown.

use crate::load::read::problem::Position;
use saphyr_parser::ScanError;

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
fn reworded(message: &str) -> (&'static str, Option<&'static str>) {
    REWORDINGS
        .iter()
        .find(|(part, _, _)| message.contains(part))
        .map(|(_, what, mend)| (*what, *mend))
        .unwrap_or((
            "something here is not as YAML wants it",
            Some("look for a missing quotation mark, bracket, colon or indent at or above it"),
        ))
}

/// Why there is no tree: a position, what is wrong, how to mend it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct NoTree {
    /// Where reading stopped.
    pub(crate) at: Position,
    /// What is wrong.
    pub(crate) what: String,
    /// How to mend it.
    pub(crate) mend: Option<String>,
}

impl NoTree {
    /// What is wrong at a position.
    pub(crate) fn new(at: Position, what: impl Into<String>) -> Self {
        Self { at, what: what.into(), mend: None }
    }

    /// A tab that was met while looking for the next key is told before the
    /// line's end that came first; it stands at the begin of a later line.
    pub(crate) fn at_the_tab(mut self, text: &str) -> Self {
        if self.what.contains("a tab stands") {
            let indented = text.lines().enumerate().skip(self.at.line.saturating_sub(1));
            let column = |line: &str| {
                let blank = line.chars().take_while(|c| c.is_whitespace());
                blank.take_while(|c| *c != '\t').count()
            };
            let tab = indented.map(|(index, line)| (index, column(line), line));
            let mut tab = tab.filter(|(_, before, line)| line.chars().nth(*before) == Some('\t'));
            if let Some((index, before, _)) = tab.next() {
                self.at = Position { line: index + 1, column: before + 1 };
            }
            return self;
        }
        // The parser knows no tab between a key and its value.
        let line = text.lines().nth(self.at.line.saturating_sub(1)).unwrap_or_default();
        if line.contains(":\t") {
            self.what = "this line cannot be read as YAML: a tab stands behind a colon".to_owned();
            self.mend = Some("write a space there".to_owned());
        }
        self
    }
}

/// Why there is no tree, by the parser.
pub(crate) fn syntax(error: &ScanError) -> NoTree {
    let at = Position { line: error.marker().line().max(1), column: error.marker().col() + 1 };
    let (what, mend) = reworded(error.info());
    NoTree {
        at,
        what: format!("this line cannot be read as YAML: {what}"),
        mend: mend.map(str::to_owned),
    }
}
