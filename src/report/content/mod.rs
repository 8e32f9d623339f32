//! What is shown, and in which order: one document for each command, out of
//! which every page is written, on the terminal and in HTML.
//!
//! Two closed sets of types, blocks and inlines. Nothing here knows a colour,
//! a width or a tag; nothing in a document knows a command. Text out of files
//! stands here as it is: the renderers make it harmless.

pub(crate) mod audit;
pub(crate) mod case;
pub(crate) mod check;
mod closed;
pub(crate) mod compare;
mod freeing;
pub(crate) mod options;
mod profile;
#[cfg(feature = "quote")]
pub(crate) mod quote;
mod shared;
pub(crate) mod situations;
mod way;

use crate::model::finding::{Outcome, Verdict};
use crate::report::Locale;
use maud::Markup;

/// A whole page.
#[derive(Debug)]
pub(crate) struct Document {
    /// What the page is called.
    pub(crate) title: String,
    /// What stands on it.
    pub(crate) blocks: Vec<Block>,
}

/// How a piece of text is meant. A tone repeats what the words say; it never
/// says anything alone.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(crate) enum Tone {
    /// As it comes.
    #[default]
    Plain,
    /// Set off from the rest.
    Strong,
    /// Beside the point.
    Soft,
    /// In order.
    Good,
    /// To be put right.
    Bad,
    /// Not known.
    Open,
}

impl From<Verdict> for Tone {
    fn from(verdict: Verdict) -> Self {
        match verdict {
            Verdict::Ready => Self::Good,
            Verdict::CannotTell => Self::Open,
            Verdict::NotReady => Self::Bad,
        }
    }
}

impl From<Outcome> for Tone {
    fn from(outcome: Outcome) -> Self {
        match outcome {
            Outcome::Met => Self::Good,
            Outcome::CannotTell => Self::Open,
            Outcome::NotMet => Self::Bad,
        }
    }
}

/// What a part of a page is for; in HTML a class.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Role {
    /// A part of its own: an order, a vessel of a quote.
    Part,
    /// What a whole audit adds up to.
    Overview,
    /// All that is told of one vessel.
    Vessel,
    /// What one profile says.
    Profile,
    /// Where and when: facts that frame what follows.
    Particulars,
    /// The answers that come with a verdict.
    Answers,
    /// Findings that are met, with what serves.
    Met,
    /// What one edition says of a fleet.
    Edition,
    /// Vessel by requirement.
    Matrix,
    /// Rows beside each other, no more.
    List,
    /// What is paid for: two columns or more, the last one amounts.
    Amounts,
    /// What stands at the end of every page.
    Foot,
}

/// A piece of a page.
#[derive(Debug)]
#[cfg_attr(not(feature = "quote"), expect(dead_code, reason = "a quote alone is signed"))]
pub(crate) enum Block {
    /// The first thing to know, and what frames it.
    Headline(Headline),
    /// A part with its heading.
    Section(Section),
    /// Running text.
    Paragraph(Line),
    /// Short statements, one below the other.
    Lines(Vec<Line>),
    /// A sign or a word in front of a text, with what hangs below it.
    Item(Item),
    /// Steps, one after the other.
    Steps(Vec<Item>),
    /// What hangs below the block before it.
    Within(Vec<Block>),
    /// Labels with their values.
    Facts(Role, Vec<Fact>),
    /// Rows and columns.
    Table(Table),
    /// A drawing, where drawings can be shown; it tells nothing that words on
    /// the page do not tell.
    Picture(Picture),
    /// A place to sign, where a page can be printed.
    Signature(Signature),
}

/// A drawing with its heading.
#[derive(Debug)]
pub(crate) struct Picture {
    /// Its heading.
    pub(crate) heading: &'static str,
    /// What was drawn.
    pub(crate) drawn: Markup,
}

/// Where something is agreed to in writing.
#[derive(Debug)]
pub(crate) struct Signature {
    /// Its heading.
    pub(crate) heading: &'static str,
    /// What is agreed to.
    pub(crate) text: &'static str,
    /// What is written on each line.
    pub(crate) lines: Vec<&'static str>,
}

/// The first thing to know.
#[derive(Debug)]
pub(crate) struct Headline {
    /// The word that is read from afar.
    pub(crate) lead: Lead,
    /// What bears on that word, beside it.
    pub(crate) beside: Option<Line>,
    /// Of what it is said.
    pub(crate) text: Line,
    /// What tells it from others of the name.
    pub(crate) more: Option<String>,
    /// What frames it.
    pub(crate) below: Vec<Block>,
}

/// A part with its heading.
#[derive(Debug)]
pub(crate) struct Section {
    /// What it is for.
    pub(crate) role: Role,
    /// By what links find it.
    pub(crate) id: Option<String>,
    /// The verdict in front of its heading.
    pub(crate) verdict: Option<Verdict>,
    /// Its heading, if it has one.
    pub(crate) heading: Option<Line>,
    /// What stands in it.
    pub(crate) body: Vec<Block>,
}

impl Section {
    /// A section of that heading.
    pub(crate) fn block(role: Role, heading: impl Into<Line>, body: Vec<Block>) -> Block {
        let heading = Some(heading.into());
        Block::Section(Self { role, id: None, verdict: None, heading, body })
    }
}

/// What stands in front of an item.
#[derive(Debug, Clone, PartialEq, Eq)]
#[cfg_attr(not(feature = "quote"), expect(dead_code, reason = "some stand in a quote alone"))]
pub(crate) enum Lead {
    /// A verdict.
    Verdict(Verdict),
    /// A verdict in a few words, aloud.
    Says(Verdict, String),
    /// What a finding came to.
    Outcome(Outcome),
    /// What a finding came to that nothing on the page puts right.
    LeftOpen(Outcome),
    /// One of several: a sign in that tone.
    Bullet(Tone),
    /// That it is worse than before.
    Worse,
    /// That it is as before and not known for sure.
    Unproved,
    /// That it is better than before.
    Better,
    /// Something to know.
    Note(Tone),
    /// The same in a word of our own.
    Warning(&'static str, Tone),
    /// Something to do.
    Do,
    /// A word of our own.
    Word(String, Tone),
}

/// A sign or a word in front of a text.
#[derive(Debug)]
pub(crate) struct Item {
    /// By what links find it.
    pub(crate) id: Option<String>,
    /// What stands in front.
    pub(crate) lead: Lead,
    /// The text.
    pub(crate) text: Line,
    /// What stands at the end of its line: a clause.
    pub(crate) end: Option<Line>,
    /// What only a page with room enough shows.
    pub(crate) aside: Option<Line>,
    /// What hangs below.
    pub(crate) below: Vec<Block>,
}

impl Item {
    /// An item with nothing but a text.
    pub(crate) fn new(lead: Lead, text: impl Into<Line>) -> Self {
        let text = text.into();
        Self { id: None, lead, text, end: None, aside: None, below: Vec::new() }
    }

    /// A text behind a word of our own.
    pub(crate) fn labelled(label: &str, tone: Tone, text: impl Into<Line>) -> Block {
        Self::new(Lead::Word(label.to_owned(), tone), text).into()
    }

    /// The same with something below it.
    pub(crate) fn with(self, below: Vec<Block>) -> Self {
        Self { below, ..self }
    }
}

impl From<Item> for Block {
    fn from(item: Item) -> Self {
        Self::Item(item)
    }
}

/// A label with its value.
#[derive(Debug)]
pub(crate) struct Fact {
    /// The label, in small letters.
    pub(crate) label: &'static str,
    /// The value.
    pub(crate) value: Line,
}

impl Fact {
    /// A fact.
    pub(crate) fn new(label: &'static str, value: impl Into<Line>) -> Self {
        Self { label, value: value.into() }
    }
}

/// Rows and columns.
#[derive(Debug)]
pub(crate) struct Table {
    /// What it is for.
    pub(crate) role: Role,
    /// What it shows, for whoever does not see it.
    pub(crate) caption: String,
    /// Its columns; the first one names the row.
    pub(crate) columns: Vec<Column>,
    /// Its rows.
    pub(crate) rows: Vec<Row>,
    /// What they add up to: a text and an amount each.
    pub(crate) sums: Vec<[Line; 2]>,
}

/// A column.
#[derive(Debug, Default)]
pub(crate) struct Column {
    /// Its head; a table of columns without heads has none.
    pub(crate) head: Option<Line>,
    /// Whether it is set to the right, as figures are.
    pub(crate) right: bool,
    /// Whether it goes first where there is little room.
    pub(crate) wide_only: bool,
    /// The most signs that it may take on a narrow page.
    pub(crate) most: Option<usize>,
}

impl Column {
    /// A column with a head.
    pub(crate) fn new(head: impl Into<Line>) -> Self {
        Self { head: Some(head.into()), ..Self::default() }
    }
}

/// A row.
#[derive(Debug)]
pub(crate) struct Row {
    /// By what links find it.
    pub(crate) id: Option<String>,
    /// What stands in front of its first cell.
    pub(crate) lead: Option<Lead>,
    /// Its cells, one for each column.
    pub(crate) cells: Vec<Line>,
}

impl Row {
    /// A row of cells.
    pub(crate) fn new(lead: Option<Lead>, cells: Vec<Line>) -> Self {
        Self { id: None, lead, cells }
    }
}

/// A line of text: one tone, and what in it is more than text.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub(crate) struct Line {
    /// The tone of all of it.
    pub(crate) tone: Tone,
    /// Its parts.
    pub(crate) parts: Vec<Inline>,
}

/// A part of a line.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum Inline {
    /// Text.
    Text(String),
    /// An id or a command, as it is typed.
    Code(String),
    /// A way to another part of the page.
    Link {
        /// The id of that part.
        to: String,
        /// The text.
        text: String,
    },
    /// A verdict in a sentence.
    Verdict(Verdict),
    /// What a finding came to, in a sentence.
    Outcome(Outcome),
}

impl Line {
    /// The line in another tone.
    pub(crate) fn toned(self, tone: Tone) -> Self {
        Self { tone, ..self }
    }

    /// A strong line.
    pub(crate) fn strong(text: impl Into<Self>) -> Self {
        text.into().toned(Tone::Strong)
    }

    /// The line with more behind it.
    pub(crate) fn and(mut self, more: impl Into<Self>) -> Self {
        self.parts.extend(more.into().parts);
        self
    }
}

/// Text with what stands in backticks as code.
impl From<&str> for Line {
    fn from(text: &str) -> Self {
        let pieces: Vec<&str> = text.split('`').collect();
        let last = pieces.len() - 1;
        let mut parts: Vec<Inline> = Vec::new();
        for (number, piece) in pieces.into_iter().enumerate() {
            match number % 2 {
                // A backtick without its other half stays what it is.
                1 if number == last => parts.push(Inline::Text(format!("`{piece}"))),
                1 => parts.push(Inline::Code(piece.to_owned())),
                _ if piece.is_empty() => {}
                _ => parts.push(Inline::Text(piece.to_owned())),
            }
        }
        Self { tone: Tone::Plain, parts }
    }
}

impl From<String> for Line {
    fn from(text: String) -> Self {
        text.as_str().into()
    }
}

impl From<Inline> for Line {
    fn from(part: Inline) -> Self {
        Self { tone: Tone::Plain, parts: vec![part] }
    }
}

/// That a list goes on, and where it is whole.
fn more(all: usize, most: usize, locale: Locale) -> Option<Block> {
    let left = all.checked_sub(most).filter(|left| *left > 0)?;
    Some(Block::Paragraph(locale.audit_more(&left).into()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_stands_in_backticks_is_code_and_a_single_one_is_text() {
        let code = |text: &str| Inline::Code(text.to_owned());
        let text = |text: &str| Inline::Text(text.to_owned());
        assert_eq!(
            Line::from("see `a` or `b`").parts,
            [text("see "), code("a"), text(" or "), code("b")]
        );
        assert_eq!(Line::from("5` long").parts, [text("5"), text("` long")]);
        assert_eq!(Line::from("").parts, []);
    }
}
