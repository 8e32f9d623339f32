//! A document as one self-contained page of HTML.

use super::base::{self, prose, shown};
use crate::model::finding::Outcome;
use crate::report::content::{
    Block, Column, Document, Fact, Headline, Inline, Item, Lead, Line, Role, Row, Section, Table,
    Tone,
};
use crate::report::words::locale::Locale;
use crate::report::words::pages::capital;
use maud::{Markup, html};

/// The style of pages that are made of a document.
const STYLE: &str = include_str!("style/document.css");

/// The document as a page; a part's heading takes its level from how deep the
/// part stands.
pub(crate) fn page(document: &Document, locale: Locale) -> String {
    let html = Html { locale };
    let title = html! { h1 { (prose(&document.title)) } };
    let body = html! {
        main {
            @match document.blocks.as_slice() {
                // A page of one account is headed by the account itself.
                blocks @ [Block::Section(first), ..] if first.role == Role::Vessel => {
                    (html.blocks(blocks, 1))
                }
                [Block::Headline(first), rest @ ..] => {
                    (html.headline(first, Some(&title), 2)) (html.blocks(rest, 2))
                }
                blocks => { header class="rail" { (title) } (html.blocks(blocks, 2)) }
            }
        }
    };
    base::document(&document.title, STYLE, &body)
}

#[derive(Clone, Copy)]
struct Html {
    locale: Locale,
}

impl Html {
    fn blocks(self, blocks: &[Block], level: u8) -> Markup {
        let is_bullet = |block: &Block| matches!(block, Block::Item(item) if is_bullet(&item.lead));
        let runs = blocks.chunk_by(|one, next| is_bullet(one) && is_bullet(next));
        html! {
            @for run in runs {
                @if run.iter().all(is_bullet) {
                    ul.plain { @for block in run { (self.block(block, level)) } }
                } @else {
                    @for block in run { (self.block(block, level)) }
                }
            }
        }
    }

    fn block(self, block: &Block, level: u8) -> Markup {
        match block {
            Block::Headline(headline) => self.headline(headline, None, level),
            Block::Section(section) => self.section(section, level),
            Block::Paragraph(line) => html! { p class=[tone(line.tone)] { (self.line(line)) } },
            Block::Lines(lines) => html! { ul { @for line in lines { li { (self.line(line)) } } } },
            Block::Item(item) => self.item(item, level),
            Block::Steps(steps) => html! {
                ol { @for step in steps {
                    li { (self.line(&step.text)) (self.blocks(&step.below, level)) }
                } }
            },
            Block::Within(blocks) => html! { div.within { (self.blocks(blocks, level)) } },
            Block::Facts(role, facts) => self.facts(*role, facts),
            Block::Table(table) => self.table(table),
            Block::Picture(picture) => html! {
                section.picture {
                    (base::heading(level, &html! { (picture.heading) }))
                    (picture.drawn)
                }
            },
            Block::Signature(place) => html! {
                section.signature {
                    (base::heading(level, &html! { (place.heading) }))
                    p { (place.text) }
                    div.lines { @for line in &place.lines { div { (line) } } }
                }
            },
        }
    }

    /// The first thing to know, below the page's title if that stands nowhere
    /// else. The name of an account heads it, with its verdict; what an audit
    /// adds up to is a sentence.
    fn headline(self, headline: &Headline, title: Option<&Markup>, level: u8) -> Markup {
        let is_account = matches!(headline.lead, Lead::Verdict(_));
        html! {
            header class=[(is_account || title.is_some()).then_some("rail")] {
                @if let Some(title) = title { (title) }
                @if is_account {
                    (base::heading(level.saturating_sub(1), &self.line(&headline.text)))
                }
                p.headline {
                    // Any other lead says what the title says.
                    @if is_account || matches!(headline.lead, Lead::Says(..)) {
                        (self.lead(&headline.lead)) " "
                    }
                    @if !is_account { (self.line(&headline.text)) }
                    @if let Some(beside) = &headline.beside { " " (self.line(beside)) }
                    @if let Some(more) = &headline.more {
                        " " span.soft { (prose(more.trim_start_matches([' ', ',']))) }
                    }
                }
            }
            (self.blocks(&headline.below, level))
        }
    }

    fn section(self, section: &Section, level: u8) -> Markup {
        let deeper = u8::from(section.heading.is_some() || section.role == Role::Vessel);
        let body = html! {
            @if let Some(heading) = &section.heading {
                (base::heading(level, &html! {
                    (self.line(heading))
                    @if let Some(verdict) = section.verdict { " " (base::verdict(verdict, self.locale)) }
                }))
            }
            (self.blocks(&section.body, level + deeper))
        };
        let (class, id) = (class(section.role), section.id.as_deref());
        match section.role {
            Role::Vessel => html! { article class=(class) id=[id] { (body) } },
            Role::Foot => html! { footer { (body) } },
            _ => html! { section class=(class) id=[id] { (body) } },
        }
    }

    fn item(self, item: &Item, level: u8) -> Markup {
        let text = html! {
            (self.lead(&item.lead)) " "
            @if item.end.is_some() { b { (self.line(&item.text)) } } @else { (self.line(&item.text)) }
            @if let Some(end) = &item.end {
                " " span.soft {
                    (self.line(end))
                    @if let Some(aside) = &item.aside { "; " (self.line(aside)) }
                }
            } @else if let Some(aside) = &item.aside { " " span.soft { (self.line(aside)) } }
        };
        let below = html! {
            @if !item.below.is_empty() { div.below { (self.blocks(&item.below, level)) } }
        };
        let edged = item.end.is_some() || matches!(item.lead, Lead::LeftOpen(_));
        match &item.lead {
            Lead::Outcome(outcome) | Lead::LeftOpen(outcome) if edged => html! {
                div class={ "finding " (edge(*outcome)) } id=[item.id.as_deref()] {
                    p.what { (text) } (below)
                }
            },
            Lead::Note(_) => html! { div.caution id=[item.id.as_deref()] { p { (text) } (below) } },
            Lead::Warning(_, weight) => html! {
                div class={ "caution " (tone(*weight).unwrap_or_default()) } { p { (text) } (below) }
            },
            lead if is_bullet(lead) => html! { li id=[item.id.as_deref()] { (text) (below) } },
            _ => html! { p id=[item.id.as_deref()] { (text) } (below) },
        }
    }

    fn facts(self, role: Role, facts: &[Fact]) -> Markup {
        html! {
            dl class={ "facts " (class(role)) } {
                @for fact in facts {
                    div { dt { (capital(fact.label)) } dd { (self.line(&fact.value)) } }
                }
            }
        }
    }

    fn table(self, table: &Table) -> Markup {
        let heads = table.columns.iter().any(|column| column.head.is_some());
        let caption = (table.role == Role::Amounts).then(|| shown(&table.caption));
        let rows = html! {
            table class=(class(table.role)) aria-label=[caption] {
                @if heads {
                    thead { tr { @for column in &table.columns { (self.head(column)) } } }
                }
                @if !table.rows.is_empty() {
                    tbody { @for row in &table.rows { (self.row(table, row)) } }
                }
                @if !table.sums.is_empty() {
                    tfoot { @for sum in &table.sums { (self.sum(table, sum)) } }
                }
            }
        };
        match table.role {
            // These fold on a narrow screen; any other scrolls in a box of its
            // own, with a name of its own.
            Role::List | Role::Met => rows,
            _ => html! {
                div.scroll tabindex="0" role="region" aria-label=(shown(&table.caption)) { (rows) }
            },
        }
    }

    fn head(self, column: &Column) -> Markup {
        html! {
            th scope="col" class=[column.right.then_some("figure")] {
                @if let Some(head) = &column.head { span { (self.line(head)) } }
            }
        }
    }

    fn row(self, table: &Table, row: &Row) -> Markup {
        let cells = table.columns.iter().zip(&row.cells).enumerate();
        html! {
            tr id=[row.id.as_deref()] {
                @for (number, (column, cell)) in cells {
                    @if number == 0 {
                        th scope="row" {
                            @if let Some(lead) = &row.lead { (self.lead(lead)) " " }
                            (self.line(cell))
                        }
                    } @else if let [Inline::Outcome(outcome)] = cell.parts.as_slice() {
                        (self.cell(*outcome))
                    } @else {
                        td class=[column.right.then_some("figure")] { (self.line(cell)) }
                    }
                }
            }
        }
    }

    /// What rows add up to, its text below all columns but the last.
    fn sum(self, table: &Table, [text, amount]: &[Line; 2]) -> Markup {
        html! {
            tr {
                th scope="row" colspan=(table.columns.len() - 1) { (self.line(text)) }
                td.figure { (self.line(amount)) }
            }
        }
    }

    /// A cell that is an outcome and no more: a sign above its word.
    fn cell(self, outcome: Outcome) -> Markup {
        let (class, sign) = outcome_sign(outcome);
        html! { td class=(class) { b { (sign) } " " (self.locale.outcome(outcome)) } }
    }

    fn lead(self, lead: &Lead) -> Markup {
        let sign = |class: &str, sign: &str| html! { span class={ "word " (class) } { (sign) } };
        match lead {
            Lead::Verdict(verdict) => base::verdict(*verdict, self.locale),
            Lead::Says(verdict, words) => base::judged(*verdict, &words.to_lowercase()),
            Lead::Outcome(outcome) | Lead::LeftOpen(outcome) => self.outcome(*outcome),
            Lead::Bullet(tone) => match tone {
                Tone::Bad => sign("bad", "✕"),
                Tone::Good => sign("good", "✓"),
                Tone::Open => sign("open", "–"),
                Tone::Plain | Tone::Strong | Tone::Soft => html! { "–" },
            },
            Lead::Worse => sign("bad", "✕"),
            Lead::Unproved => sign("open", "?"),
            Lead::Better => sign("good", "✓"),
            Lead::Note(_) => html! { b { (capital(self.locale.lead_note())) ":" } },
            Lead::Warning(word, _) => html! { b { (capital(word)) } },
            Lead::Do => html! { b { (capital(self.locale.lead_do())) ":" } },
            Lead::Word(word, _) => html! { b { (shown(&capital(word))) } },
        }
    }

    /// An outcome as a sign and a word, coloured besides.
    fn outcome(self, outcome: Outcome) -> Markup {
        let (class, sign) = outcome_sign(outcome);
        html! { span class={ "word " (class) } { (sign) " " (self.locale.outcome(outcome)) } }
    }

    fn line(self, line: &Line) -> Markup {
        let parts = html! {
            @for part in &line.parts {
                @match part {
                    Inline::Text(text) => { (prose(text)) }
                    Inline::Code(text) => { code { (shown(text)) } }
                    Inline::Link { to, text } => { a href={ "#" (to) } { (prose(text)) } }
                    Inline::Verdict(verdict) => { (base::verdict(*verdict, self.locale)) }
                    Inline::Outcome(outcome) => { (self.outcome(*outcome)) }
                }
            }
        };
        match line.tone {
            Tone::Strong => html! { b { (parts) } },
            Tone::Soft => html! { span.soft { (parts) } },
            Tone::Plain | Tone::Good | Tone::Bad | Tone::Open => parts,
        }
    }
}

/// Whether items of that lead stand in a list.
fn is_bullet(lead: &Lead) -> bool {
    matches!(lead, Lead::Bullet(_) | Lead::Worse | Lead::Unproved | Lead::Better | Lead::Verdict(_))
}

fn outcome_sign(outcome: Outcome) -> (&'static str, &'static str) {
    match outcome {
        Outcome::Met => ("good", "✓"),
        Outcome::CannotTell => ("open", "?"),
        Outcome::NotMet => ("bad", "✕"),
    }
}

/// The edge of a finding.
fn edge(outcome: Outcome) -> &'static str {
    match outcome {
        Outcome::Met => "met",
        Outcome::CannotTell => "unknown",
        Outcome::NotMet => "not-met",
    }
}

/// The class of a paragraph.
fn tone(tone: Tone) -> Option<&'static str> {
    match tone {
        Tone::Plain | Tone::Strong | Tone::Soft => None,
        Tone::Good => Some("good"),
        Tone::Bad => Some("bad"),
        Tone::Open => Some("open"),
    }
}

/// The class of a part.
fn class(role: Role) -> &'static str {
    match role {
        Role::Part => "part",
        Role::Overview => "overview",
        Role::Vessel => "vessel",
        Role::Profile => "profile",
        Role::Particulars => "particulars",
        Role::Answers => "answers",
        Role::Met => "met",
        Role::Edition => "edition",
        Role::Matrix => "matrix",
        Role::List => "list",
        Role::Amounts => "amounts",
        Role::Foot => "foot",
    }
}
