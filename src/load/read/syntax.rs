//! The YAML parser: what it is given, and what it finds wrong. Its own message
//! is never shown.

use crate::load::read::fault::Fault;
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

/// Part of the parser's message, and what is told instead; the first whose
/// part occurs in the message is taken.
const FAULTS: [(&str, Fault); 26] = [
    ("tab", Fault::Tab),
    ("quoted scalar, found unexpected end", Fault::QuoteOpen),
    ("quoted scalar, found unexpected document", Fault::QuoteOpenBefore),
    ("trailing content after double-quoted", Fault::AfterQuote),
    ("unknown escape character", Fault::Escape),
    ("hexadecimal", Fault::EscapeIncomplete),
    ("Unicode character escape", Fault::EscapeNoCharacter),
    ("indentation in quoted", Fault::QuoteIndent),
    ("flow sequence", Fault::ListOpen),
    ("flow mapping", Fault::GroupOpen),
    ("in flow construct", Fault::BracketOpenBefore),
    ("in flow mode", Fault::BracketOpen),
    ("illegal placement of ':'", Fault::KeyInList),
    ("misplaced bracket", Fault::BracketNeverOpened),
    ("recursion limit", Fault::BracketsTooDeep),
    ("mapping values are not allowed", Fault::StrayColon),
    ("block sequence entries are not allowed", Fault::StrayEntry),
    ("did not find expected '-'", Fault::EntryIndent),
    ("did not find expected key", Fault::KeyIndent),
    ("indentation", Fault::Indent),
    ("indented", Fault::Indent),
    ("simple key", Fault::NoColon),
    ("anchor", Fault::UnknownAnchor),
    ("alias", Fault::UnknownAnchor),
    ("unprintable", Fault::Unprintable),
    ("unexpected character", Fault::StraySign),
];

/// Why there is no tree.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct NoTree {
    /// Where reading stopped.
    pub(crate) at: Position,
    /// What is wrong.
    pub(crate) fault: Fault,
}

impl NoTree {
    /// A tab that was met while looking for the next key is told before the
    /// line's end that came first; it stands at the begin of a later line.
    pub(crate) fn at_the_tab(mut self, text: &str) -> Self {
        if self.fault == Fault::Tab {
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
    let known = FAULTS.into_iter().find(|(part, _)| error.info().contains(part));
    NoTree { at, fault: known.map_or(Fault::NoYaml, |(_, fault)| fault) }
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
