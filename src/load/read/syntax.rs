//! The YAML parser: what it is given, and plain words for what it finds wrong.
//! Its own message is never shown.

use crate::load::read::problem::Position;
use saphyr_parser::input::SkipTabs;
use saphyr_parser::{Input, Parser, ScanError, StrInput};

/// A parser of this text.
pub(crate) fn parser(text: &str) -> Parser<'_, Text<'_>> {
    Parser::new(Text(StrInput::new(text)))
}

/// A text in which tabs alone separate a key from its value, as in YAML 1.2.
/// The parser asks for a space among them (so that no group begins behind a
/// tab), and for nothing else what this changes.
pub(crate) struct Text<'t>(StrInput<'t>);

impl Input for Text<'_> {
    fn skip_ws_to_eol(&mut self, tabs: SkipTabs) -> (usize, Result<SkipTabs, &'static str>) {
        let (count, found) = self.0.skip_ws_to_eol(tabs);
        let separates = |found: SkipTabs| {
            let tabs = found.found_tabs();
            SkipTabs::Result(tabs, tabs || found.has_valid_yaml_ws())
        };
        (count, found.map(separates))
    }

    fn lookahead(&mut self, count: usize) {
        self.0.lookahead(count);
    }

    fn buflen(&self) -> usize {
        self.0.buflen()
    }

    fn bufmaxlen(&self) -> usize {
        self.0.bufmaxlen()
    }

    fn raw_read_ch(&mut self) -> char {
        self.0.raw_read_ch()
    }

    fn raw_read_non_breakz_ch(&mut self) -> Option<char> {
        self.0.raw_read_non_breakz_ch()
    }

    fn skip(&mut self) {
        self.0.skip();
    }

    fn skip_n(&mut self, count: usize) {
        self.0.skip_n(count);
    }

    fn peek(&self) -> char {
        self.0.peek()
    }

    fn peek_nth(&self, n: usize) -> char {
        self.0.peek_nth(n)
    }

    fn peek_opt(&self) -> Option<char> {
        self.0.peek_opt()
    }
}

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

#[cfg(test)]
mod tests {
    use crate::load::read::tree::read_tree;
    use proptest::prelude::*;

    /// A value in any style; `¦` is where a separation may stand. Its own tabs
    /// belong to the text.
    fn value() -> impl Strategy<Value = &'static str> {
        prop::sample::select(vec![
            "pliers",
            "12 in",
            "-5",
            "a\tb",
            "&x a",
            "'a:\tb'",
            "\"a:\tb -\tc\"",
            "[¦a,¦b¦]",
            "{¦a¦:¦b,¦-c:¦-d¦}",
            "one\n   two\tthree",
            "|\n   a:\tb\n   -\tc\n   \t# d",
            ">-\n   a:\tb",
        ])
    }

    /// A line or several, at one indent.
    fn line() -> impl Strategy<Value = String> {
        let (wide, comment) = ("¦{1,3}", "(¦{1,2}# a:\tb)?");
        prop_oneof![
            ("[a-z-]{0,3}[a-z]", "¦?", wide, value())
                .prop_map(|(key, before, after, value)| format!("{key}{before}:{after}{value}\n")),
            ("¦?", wide, comment)
                .prop_map(|(before, after, end)| format!("k{before}:{after}plain{end}\n")),
            (wide, value(), wide, value())
                .prop_map(|(a, one, b, two)| format!("list:\n -{a}{one}\n -{b}{two}\n")),
            (wide, value()).prop_map(|(after, value)| format!("group:\n a:{after}{value}\n")),
        ]
    }

    proptest! {
        #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

        /// Whatever blanks and tabs stand between a key or a dash and its
        /// value, the same is read, at the same lines and columns.
        #[test]
        fn tabs_separate_like_blanks(
            lines in prop::collection::vec(line(), 1..6),
            tabs in prop::collection::vec(any::<bool>(), 8),
        ) {
            let marked = lines.concat();
            let mut tabs = tabs.iter().cycle();
            let mixed = marked.chars().map(|c| match c {
                '¦' if tabs.next() == Some(&true) => '\t',
                '¦' => ' ',
                other => other,
            });
            let mixed: String = mixed.collect();
            let blanks = marked.replace('¦', " ");
            let [mixed, blanks] = [&mixed, &blanks].map(|text| read_tree(text).unwrap());
            prop_assert_eq!(format!("{mixed:?}"), format!("{blanks:?}"));
        }
    }
}
