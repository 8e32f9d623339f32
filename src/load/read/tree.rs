//! A YAML document as a tree that remembers where everything stands, and
//! from which the forms are read.
//!
//! Nesting, and what aliases and anchors unfold to (values and text), are
//! bounded: a short file can stand for more than any memory holds.

use crate::load::read::fault::Fault;
use crate::load::read::problem::Position;
use crate::load::read::syntax::{NoTree, Text, parser, syntax};
use crate::model::text::steers;
use saphyr_parser::{Event, Parser, ScalarStyle, Span};
use std::borrow::Cow;
use std::collections::BTreeMap;

/// The longest remark, note or description, in characters.
pub(crate) const LONGEST_REMARK: u64 = 4000;

/// The most lines that one group may have.
pub(crate) const MOST_LINES: usize = 1000;

/// The most entries that one list may have, where the check of the file tells
/// no lower number.
pub(crate) const MOST_LISTED: usize = 2000;

/// The deepest nesting that is read.
pub(crate) const DEEPEST: usize = 64;
/// The most values that a file may hold, aliases unfolded.
pub(crate) const MOST_VALUES: usize = 200_000;
/// The most text that aliases and anchors may stand for, in bytes: four times
/// the largest file.
const MOST_UNFOLDED: usize = 4 * 1024 * 1024;

/// A value and where it stands.
#[derive(Debug, Clone)]
pub(crate) struct Node<'t> {
    /// Where it begins.
    pub(crate) at: Position,
    /// Whether it carries a YAML tag such as `!!binary`.
    pub(crate) tagged: bool,
    /// The value.
    pub(crate) content: Content<'t>,
}

/// A value.
#[derive(Debug, Clone)]
pub(crate) enum Content<'t> {
    /// A text; `plain` if it is written without quotes.
    Text {
        /// The text.
        text: Cow<'t, str>,
        /// Whether it has no quotes.
        plain: bool,
    },
    /// A list.
    List(Vec<Node<'t>>),
    /// A group of lines.
    Map(Vec<Pair<'t>>),
    /// Something that was wrong and is left out.
    Pruned,
}

/// A key and its value.
#[derive(Debug, Clone)]
pub(crate) struct Pair<'t> {
    /// The key.
    pub(crate) key: Cow<'t, str>,
    /// Where the key stands.
    pub(crate) key_at: Position,
    /// The value.
    pub(crate) value: Node<'t>,
}

impl Node<'_> {
    /// Whether the value is empty (`~`, `null` or nothing at all).
    pub(crate) fn is_null(&self) -> bool {
        match &self.content {
            Content::Text { text, plain } => {
                *plain && matches!(&**text, "" | "~" | "null" | "Null" | "NULL")
            }
            Content::Pruned => true,
            Content::List(_) | Content::Map(_) => false,
        }
    }

    /// The text, if it is one.
    pub(crate) fn text(&self) -> Option<&str> {
        match &self.content {
            Content::Text { text, .. } => Some(text),
            _ => None,
        }
    }

    fn size(&self) -> Size {
        let own = Size { values: 1, text: 0 };
        match &self.content {
            Content::Text { text, .. } => own.and(Size { values: 0, text: text.len() }),
            Content::Pruned => own,
            Content::List(entries) => entries.iter().map(Self::size).fold(own, Size::and),
            Content::Map(pairs) => {
                let of = |pair: &Pair<'_>| {
                    pair.value.size().and(Size { values: 1, text: pair.key.len() })
                };
                pairs.iter().map(of).fold(own, Size::and)
            }
        }
    }
}

/// A document.
#[derive(Debug)]
pub(crate) struct Tree<'t> {
    /// Its value.
    pub(crate) root: Node<'t>,
    /// Whether it holds a tag, or a text, a list or a group that may not
    /// stand in any file.
    pub(crate) is_odd: bool,
}

/// Whether a text can be shown anywhere and is no longer than a remark.
fn is_harmless(text: &str) -> bool {
    let plain = |byte: u8| byte.is_ascii() && !byte.is_ascii_control();
    text.len() as u64 <= LONGEST_REMARK && (text.bytes().all(plain) || !text.chars().any(steers))
}

/// How much a value holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
struct Size {
    /// Values, keys among them.
    values: usize,
    /// Bytes of text.
    text: usize,
}

impl Size {
    fn and(self, other: Self) -> Self {
        Self { values: self.values + other.values, text: self.text + other.text }
    }
}

/// Reads the one document of a text.
///
/// # Errors
/// It is no YAML, holds no document or several, or is nested too deep or
/// unfolds to too many values.
pub(crate) fn read_tree(text: &str) -> Result<Tree<'_>, NoTree> {
    tree_of(text).map_err(|none| none.at_the_tab(text))
}

fn tree_of(text: &str) -> Result<Tree<'_>, NoTree> {
    let mut builder = Builder {
        parser: parser(text),
        anchors: BTreeMap::new(),
        values: 0,
        unfolded: 0,
        is_odd: false,
    };
    let nothing = || NoTree { at: Position { line: 1, column: 1 }, fault: Fault::NothingWritten };
    loop {
        match builder.next()? {
            (Event::StreamEnd, _) => return Err(nothing()),
            (Event::DocumentStart(_), _) => break,
            _ => {}
        }
    }
    let root = builder.node(0)?;
    loop {
        match builder.next()? {
            (Event::StreamEnd, _) => return Ok(Tree { root, is_odd: builder.is_odd }),
            (Event::DocumentStart(_), span) => {
                return Err(NoTree { at: position(span), fault: Fault::SecondDocument });
            }
            _ => {}
        }
    }
}

struct Builder<'t> {
    parser: Parser<'t, Text<'t>>,
    /// Finished anchored values with their sizes; `None` while unfinished.
    anchors: BTreeMap<usize, Option<(Node<'t>, Size)>>,
    values: usize,
    /// Bytes of text that were copied for anchors and aliases.
    unfolded: usize,
    is_odd: bool,
}

impl<'t> Builder<'t> {
    fn next(&mut self) -> Result<(Event<'t>, Span), NoTree> {
        match self.parser.next_event() {
            Some(Ok(event)) => Ok(event),
            Some(Err(error)) => Err(syntax(&error)),
            None => Ok((Event::StreamEnd, Span::default())),
        }
    }

    fn count(&mut self, more: usize, at: Position) -> Result<(), NoTree> {
        self.values += more;
        if self.values > MOST_VALUES {
            return Err(NoTree { at, fault: Fault::TooManyValues(MOST_VALUES) });
        }
        Ok(())
    }

    /// The same for what is copied once more.
    fn count_copy(&mut self, size: Size, at: Position) -> Result<(), NoTree> {
        self.unfolded += size.text;
        if self.unfolded > MOST_UNFOLDED {
            return Err(NoTree { at, fault: Fault::AliasesTooLong(MOST_UNFOLDED / 1024) });
        }
        self.count(size.values, at)
    }

    fn node(&mut self, depth: usize) -> Result<Node<'t>, NoTree> {
        let (event, span) = self.next()?;
        self.node_from(event, span, depth)
    }

    fn node_from(
        &mut self,
        event: Event<'t>,
        span: Span,
        depth: usize,
    ) -> Result<Node<'t>, NoTree> {
        let at = position(span);
        if depth > DEEPEST {
            return Err(NoTree { at, fault: Fault::TooDeep(DEEPEST) });
        }
        self.count(1, at)?;
        match event {
            Event::Alias(id) => self.alias(id, at),
            Event::Scalar(text, style, anchor, tag) => {
                let plain = style == ScalarStyle::Plain;
                self.is_odd |= tag.is_some() || !is_harmless(&text);
                self.anchored(
                    anchor,
                    Node { at, tagged: tag.is_some(), content: Content::Text { text, plain } },
                )
            }
            Event::SequenceStart(anchor, tag) => {
                self.begin(anchor);
                let entries = self.entries(depth)?;
                self.is_odd |= tag.is_some() || entries.len() > MOST_LISTED;
                let content = Content::List(entries);
                self.anchored(anchor, Node { at, tagged: tag.is_some(), content })
            }
            Event::MappingStart(anchor, tag) => {
                self.begin(anchor);
                let pairs = self.pairs(depth)?;
                self.is_odd |= tag.is_some() || pairs.len() > MOST_LINES;
                let content = Content::Map(pairs);
                self.anchored(anchor, Node { at, tagged: tag.is_some(), content })
            }
            _ => Err(NoTree { at, fault: Fault::UnknownYaml }),
        }
    }

    fn entries(&mut self, depth: usize) -> Result<Vec<Node<'t>>, NoTree> {
        let mut entries = Vec::new();
        loop {
            match self.next()? {
                (Event::SequenceEnd, _) => return Ok(entries),
                (event, span) => entries.push(self.node_from(event, span, depth + 1)?),
            }
        }
    }

    fn pairs(&mut self, depth: usize) -> Result<Vec<Pair<'t>>, NoTree> {
        let mut pairs = Vec::new();
        loop {
            let (event, span) = self.next()?;
            if event == Event::MappingEnd {
                return Ok(pairs);
            }
            let key = self.node_from(event, span, depth + 1)?;
            let key_at = key.at;
            let Content::Text { text: key, .. } = key.content else {
                return Err(NoTree { at: key_at, fault: Fault::KeyNoText });
            };
            let value = self.node(depth + 1)?;
            pairs.push(Pair { key, key_at, value });
        }
    }

    fn begin(&mut self, anchor: usize) {
        if anchor > 0 {
            self.anchors.insert(anchor, None);
        }
    }

    /// Keeps a copy of what an alias may stand for. Copies count, since
    /// anchors within anchors would be kept once for each.
    fn anchored(&mut self, anchor: usize, node: Node<'t>) -> Result<Node<'t>, NoTree> {
        if anchor > 0 {
            let size = node.size();
            self.count_copy(size, node.at)?;
            self.anchors.insert(anchor, Some((node.clone(), size)));
        }
        Ok(node)
    }

    fn alias(&mut self, id: usize, at: Position) -> Result<Node<'t>, NoTree> {
        match self.anchors.get(&id) {
            Some(Some((_, size))) => {
                let size = *size;
                self.count_copy(size, at)?;
                match self.anchors.get(&id) {
                    Some(Some((node, _))) => Ok(node.clone()),
                    _ => Err(NoTree { at, fault: Fault::AliasOfNothing }),
                }
            }
            Some(None) => Err(NoTree { at, fault: Fault::AliasInside }),
            None => Err(NoTree { at, fault: Fault::AliasOfNothing }),
        }
    }
}

fn position(span: Span) -> Position {
    Position { line: span.start.line().max(1), column: span.start.col() + 1 }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::load::read::problem::Problem;
    use crate::model::place::Place;

    fn fault(text: &str) -> Fault {
        read_tree(text).unwrap_err().fault
    }

    #[test]
    fn every_value_knows_where_it_stands() {
        let root = read_tree("name: A\nkit:\n  - mark: LC-1\n    handle: 6 ft\n").unwrap().root;
        let Content::Map(pairs) = &root.content else { panic!("no map") };
        let Content::List(kit) = &pairs[1].value.content else { panic!("no list") };
        let Content::Map(tool) = &kit[0].content else { panic!("no tool") };
        assert_eq!(pairs[1].key_at, Position { line: 2, column: 1 });
        assert_eq!(tool[1].key_at, Position { line: 4, column: 5 });
        assert_eq!(tool[1].value.at, Position { line: 4, column: 13 });
        assert_eq!(tool[1].value.text(), Some("6 ft"));
    }

    #[test]
    fn aliases_unfold_up_to_a_bound() {
        let root = read_tree("a: &x [1, 2]\nb: *x\n").unwrap().root;
        assert_eq!(root.size(), Size { values: 9, text: 6 });
        let mut bomb = String::from("a0: &a0 [x,x,x,x,x,x,x,x,x,x]\n");
        for i in 1..12 {
            let list = vec![format!("*a{}", i - 1); 10].join(",");
            bomb.push_str(&format!("a{i}: &a{i} [{list}]\n"));
        }
        assert!(fault(&bomb) == Fault::TooManyValues(200_000));
        assert!(fault("a: &a [*a]") == Fault::AliasInside);
    }

    #[test]
    fn what_is_copied_for_anchors_and_aliases_is_bounded() {
        let long = "x".repeat(500_000);
        let many = format!("a: &a {long}\nb: [{}]\n", "*a,".repeat(1000));
        assert!(fault(&many) == Fault::AliasesTooLong(4096));
        let nested: String = (0..60).map(|i| format!("&a{i} [")).collect();
        let wide = format!("a: {nested}{}{}", "x,".repeat(100_000), "]".repeat(60));
        assert!(fault(&wide) == Fault::TooManyValues(200_000));
        let few = format!("a: &a {}\nb: [{}]\n", &long[..1000], "*a,".repeat(1000));
        assert!(read_tree(&few).is_ok());
    }

    #[test]
    fn deep_nesting_ends_quickly() {
        let deep = "[".repeat(20_000);
        assert!(read_tree(&deep).is_err());
        let deep: String = (0..200).map(|i| format!("{}a:\n", " ".repeat(i))).collect();
        assert!(matches!(fault(&deep), Fault::TooDeep(_)));
    }

    #[test]
    fn a_tab_is_told_in_its_own_line() {
        for (text, line, column) in [("a:\n  b: 1\n\tc: 1\n", 3, 1), ("a:\n\tb: 1\n", 2, 1)] {
            let none = read_tree(text).unwrap_err();
            let at = Position { line, column };
            assert_eq!(none, NoTree { at, fault: Fault::Tab }, "{text:?}");
        }
    }

    #[test]
    fn one_document_only() {
        let problem = read_tree("a: 1\n---\nb: 2\n").unwrap_err();
        assert_eq!((problem.at.line, problem.fault), (2, Fault::SecondDocument));
        assert_eq!(fault("# nothing\n"), Fault::NothingWritten);
    }

    #[test]
    fn common_slips_are_told_in_plain_words() {
        let cases = [
            ("a:\n\tb: 1\n", "tab"),
            ("a: \"6 ft\nb: 1\n", "quotation mark"),
            ("a: [1, 2\nb: 1\n", "bracket"),
            ("a: {x: 1\nb: 1\n", "brace"),
            ("a: b: c\n", "colon"),
            ("a: 1\n  b: 2\n", "colon"),
            ("a:\n  - 1\n - 2\n", "indented"),
            ("a: 1\nb\nc: 2\n", "colon"),
            ("a: *none\n", "names nothing"),
            ("a: @b\n", "quotes"),
            ("a: 'x' y\n", ""),
            ("a: ]\n", "never opened"),
        ];
        for (text, word) in cases {
            let problem = Problem::new(Place::new(&"a".into(), ""), fault(text));
            let told = problem.to_string();
            assert!(told.contains(word), "{text:?}: {told}");
            assert!(!told.contains("scalar") && !told.contains("parsing"), "{told}");
        }
    }
}
