//! A document as a page for the terminal, with colour codes.

use super::lines::{Page, Shown};
use crate::model::finding::Outcome;
use crate::report::content::{
    Block, Document, Fact, Headline, Inline, Item, Lead, Line, Role, Section, Table, Tone,
};
use crate::report::words::{self, locale::Locale};
use textwrap::core::display_width;

/// How far the body of a part stands in.
const STEP: usize = 2;
/// The width of the longest verdict, so that what is behind them lines up.
const VERDICT: usize = 10;
/// From this width on a page has room for what is beside the point.
const WIDE: usize = 110;

/// The document as a page no wider than `width` columns.
pub(crate) fn page(document: &Document, locale: Locale, width: usize) -> String {
    let mut page = Page::new(width);
    write(&mut page, &document.blocks, locale);
    page.finish()
}

/// Writes blocks on a page that is put together otherwise.
pub(crate) fn write(page: &mut Page, blocks: &[Block], locale: Locale) {
    Terminal { page, locale }.blocks(0, blocks, 0);
}

struct Terminal<'a> {
    page: &'a mut Page,
    locale: Locale,
}

impl Terminal<'_> {
    /// Writes blocks that far in; `depth` counts the parts around them.
    fn blocks(&mut self, indent: usize, blocks: &[Block], depth: usize) {
        for block in blocks {
            match block {
                Block::Headline(headline) => self.headline(indent, headline, depth),
                Block::Section(section) => self.section(indent, section, depth),
                Block::Paragraph(line) => self.prose(indent, line),
                Block::Lines(lines) => lines.iter().for_each(|line| self.prose(indent, line)),
                Block::Item(item) => self.item(indent, item, depth),
                Block::Steps(steps) => self.steps(indent, steps, depth),
                Block::Within(blocks) => self.blocks(indent + STEP, blocks, depth),
                Block::Facts(role, facts) => self.facts(indent, *role, facts),
                Block::Table(table) => self.table(indent, table),
                Block::Picture(_) | Block::Signature(_) => {}
            }
        }
    }

    fn prose(&mut self, indent: usize, line: &Line) {
        self.page.prose(indent, line.tone, &self.text(line));
    }

    fn headline(&mut self, indent: usize, headline: &Headline, depth: usize) {
        let (lead, tone) = self.lead(&headline.lead);
        let label = format!("{} ", lead.trim_end());
        let below = indent + display_width(&label) + 1;
        let more = headline.more.as_deref().unwrap_or_default();
        let text = format!("{}{more}", self.text(&headline.text));
        match &headline.beside {
            None => self.page.hang(indent, (&label, tone), (&text, Tone::Strong)),
            Some(beside) => {
                let beside = self.text(beside);
                self.page.hang(indent, (&label, tone), (&beside, Tone::Strong));
                self.page.prose(below, Tone::Strong, &text);
            }
        }
        self.blocks(below, &headline.below, depth);
    }

    /// A part: its heading after an empty line, its body a step in. Parts
    /// within a part do not stand in further.
    fn section(&mut self, indent: usize, section: &Section, depth: usize) {
        self.page.gap();
        if let Some(heading) = &section.heading {
            let text = self.text(heading);
            match section.verdict {
                None => self.page.prose(indent, Tone::Strong, &text),
                Some(verdict) => {
                    let label = format!("{} ", self.locale.verdict_aloud(verdict));
                    self.page.hang(indent, (&label, verdict.into()), (&text, Tone::Strong));
                }
            }
        }
        let stands_in = section.heading.is_some() && depth == 0;
        let indent = if stands_in { indent + STEP } else { indent };
        self.blocks(indent, &section.body, depth + usize::from(section.heading.is_some()));
    }

    fn item(&mut self, indent: usize, item: &Item, depth: usize) {
        let (label, tone) = self.lead(&item.lead);
        let text = self.text(&item.text);
        let strong = match item.lead {
            Lead::Do => Tone::Strong,
            _ => item.text.tone,
        };
        match &item.end {
            None => self.page.hang(indent, (&label, tone), (&text, strong)),
            Some(end) => self.page.ends(indent, (&label, tone), &text, &self.text(end)),
        }
        self.blocks(indent + display_width(&label) + 1, &item.below, depth);
    }

    fn steps(&mut self, indent: usize, steps: &[Item], depth: usize) {
        for (number, step) in steps.iter().enumerate() {
            let label = format!("{:>2}.", number + 1);
            let text = self.text(&step.text);
            self.page.hang(indent, (&label, Tone::Plain), (&text, Tone::Strong));
            self.blocks(indent + display_width(&label) + 1, &step.below, depth);
        }
    }

    /// What frames something runs on as text; answers stand in two columns.
    fn facts(&mut self, indent: usize, role: Role, facts: &[Fact]) {
        if role == Role::Particulars {
            for fact in facts {
                let text = format!("{} {}", fact.label, self.text(&fact.value));
                self.page.prose(indent, fact.value.tone, &text);
            }
            return;
        }
        self.page.gap();
        let rows = facts.iter().map(|fact| {
            let value = self.text(&fact.value);
            (Tone::Strong, vec![fact.label.to_owned(), value])
        });
        self.page.columns(indent, &[VERDICT + 2, usize::MAX], &rows.collect::<Vec<_>>());
    }

    fn table(&mut self, indent: usize, table: &Table) {
        if table.role == Role::Amounts {
            return self.amounts(indent, table);
        }
        let shown: Vec<_> = (0..table.columns.len())
            .filter(|column| self.page.width() >= WIDE || !table.columns[*column].wide_only)
            .collect();
        let mut rows: Vec<Shown> = Vec::new();
        let with_lead = table.rows.iter().any(|row| row.lead.is_some());
        let heads = shown.iter().map(|column| table.columns[*column].head.as_ref());
        if table.role != Role::Met && heads.clone().any(|head| head.is_some()) {
            let heads = heads.map(|head| head.map(|head| self.text(head)).unwrap_or_default());
            let lead = with_lead.then(String::new);
            rows.push((Tone::Strong, lead.into_iter().chain(heads).collect()));
        }
        for row in &table.rows {
            let lead = row.lead.as_ref().map(|lead| self.lead(lead));
            let tone = lead.as_ref().map_or(Tone::Strong, |(_, tone)| *tone);
            let lead = lead.map(|(label, _)| label.trim_end().to_owned());
            let cells = shown.iter().filter_map(|column| row.cells.get(*column));
            let cells = cells.map(|cell| self.text(cell));
            rows.push((tone, lead.into_iter().chain(cells).collect()));
        }
        let most = shown.iter().map(|column| table.columns[*column].most.unwrap_or(usize::MAX));
        let most: Vec<_> = with_lead.then_some(VERDICT).into_iter().chain(most).collect();
        self.page.columns(indent, &most, &rows);
    }

    /// Amounts stand below each other at the right edge, with what they are
    /// for in front; if that are several cells, the last one is nearest.
    fn amounts(&mut self, indent: usize, table: &Table) {
        let rows = table.rows.iter().map(|row| row.cells.as_slice());
        for cells in rows.chain(table.sums.iter().map(|sum| sum.as_slice())) {
            let [above @ .., text, amount] = cells else { continue };
            above.iter().for_each(|cell| self.prose(indent, cell));
            let indent = if above.is_empty() { indent } else { indent + STEP };
            self.page.amount(indent, (&self.text(text), text.tone), &self.text(amount));
        }
    }

    /// What stands in front of a text, and its tone.
    fn lead(&self, lead: &Lead) -> (String, Tone) {
        let sign = |sign: &str, tone| (sign.to_owned(), tone);
        match lead {
            Lead::Verdict(verdict) => {
                (format!("{:<VERDICT$}", self.locale.verdict_aloud(*verdict)), (*verdict).into())
            }
            Lead::Outcome(outcome) => {
                let mark = match outcome {
                    Outcome::Met => "+ ",
                    Outcome::CannotTell => "? ",
                    Outcome::NotMet => "- ",
                };
                sign(mark, (*outcome).into())
            }
            Lead::Says(verdict, word) => (word.clone(), (*verdict).into()),
            Lead::LeftOpen(outcome) => sign(words::sign(*outcome), (*outcome).into()),
            Lead::Bullet(tone) => sign("-", *tone),
            Lead::Worse => sign("!", Tone::Bad),
            Lead::Unproved => sign("?", Tone::Open),
            Lead::Better => sign("+", Tone::Good),
            Lead::Note(tone) => (format!("{}:", self.locale.lead_note()), *tone),
            Lead::Warning(word, tone) => sign(word, *tone),
            Lead::Do => (format!("{}:", self.locale.lead_do()), Tone::Strong),
            Lead::Word(word, tone) => (word.clone(), *tone),
        }
    }

    fn text(&self, line: &Line) -> String {
        let parts = line.parts.iter().map(|part| match part {
            Inline::Text(text) | Inline::Link { text, .. } => text.clone(),
            Inline::Code(text) => format!("`{text}`"),
            Inline::Verdict(verdict) => self.locale.verdict(*verdict).to_owned(),
            Inline::Outcome(outcome) => self.locale.outcome(*outcome).to_owned(),
        });
        parts.collect()
    }
}
