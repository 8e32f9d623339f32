//! A page of lines no wider than asked: prose, hanging labels, columns.
//!
//! Imports `model::text` and the currencies. Knows nothing of vessels or
//! rules. Whatever is put on a page is made visible and wrapped between words
//! here, so that no caller can forget it.

use crate::measure::Currency;
use crate::model::text::visible;
use crate::report::content::Tone;
use anstyle::{AnsiColor, Style};
use comfy_table::{ContentArrangement, Table, presets};
use textwrap::core::display_width;
use textwrap::{Options, WordSeparator, WordSplitter};

/// The narrowest page: below it a figure would no longer fit on a line.
pub(crate) const NARROWEST: usize = 40;

/// The least room between a text and the amount behind it.
const AMOUNT_GAP: usize = 3;

/// The narrowest text beside an amount; a longer one stands above it.
const NARROWEST_TEXT: usize = 14;

/// Keeps two words on one line while wrapping; never printed.
const TIE: char = '\u{a0}';

fn style(tone: Tone) -> Style {
    let colour = |colour: AnsiColor| Style::new().bold().fg_color(Some(colour.into()));
    match tone {
        Tone::Plain | Tone::Soft => Style::new(),
        Tone::Strong => Style::new().bold(),
        Tone::Good => colour(AnsiColor::BrightGreen),
        Tone::Bad => colour(AnsiColor::BrightRed),
        Tone::Open => colour(AnsiColor::BrightYellow),
    }
}

fn paint(tone: Tone, text: &str) -> String {
    let style = style(tone);
    if style.is_plain() || text.is_empty() {
        return text.to_owned();
    }
    format!("{style}{text}{style:#}")
}

/// A page in the making.
#[derive(Debug)]
pub(crate) struct Page {
    width: usize,
    text: String,
}

/// A row of cells; the tone is that of the first.
pub(crate) type Shown = (Tone, Vec<String>);

impl Page {
    /// How wide it is.
    pub(crate) fn width(&self) -> usize {
        self.width
    }

    /// An empty page, at least [`NARROWEST`] wide.
    pub(crate) fn new(width: usize) -> Self {
        Self { width: width.max(NARROWEST), text: String::new() }
    }

    /// What was put on it, with colour codes, ending in a line feed.
    pub(crate) fn finish(self) -> String {
        self.text
    }

    /// An empty line, unless the page begins here or one is there already.
    pub(crate) fn gap(&mut self) {
        if !self.text.is_empty() && !self.text.ends_with("\n\n") {
            self.text.push('\n');
        }
    }

    /// Wrapped prose, all of it indented.
    pub(crate) fn prose(&mut self, indent: usize, tone: Tone, text: &str) {
        for line in wrap(text, self.width.saturating_sub(indent)) {
            self.push(indent, &paint(tone, &line));
        }
    }

    /// Wrapped prose that hangs from a label (of our own words, never out of a
    /// file) in front of its first line.
    pub(crate) fn hang(
        &mut self,
        indent: usize,
        (label, label_tone): (&str, Tone),
        (text, tone): (&str, Tone),
    ) {
        let hang = indent + display_width(label) + 1;
        let lines = wrap(text, self.width.saturating_sub(hang));
        for (number, line) in lines.iter().enumerate() {
            if number == 0 {
                let first = format!("{} {}", paint(label_tone, label), paint(tone, line));
                self.push(indent, &first);
            } else {
                self.push(hang, &paint(tone, line));
            }
        }
    }

    /// A line with something at its right end; below each other where both
    /// do not fit on one.
    pub(crate) fn ends(
        &mut self,
        indent: usize,
        (label, label_tone): (&str, Tone),
        left: &str,
        right: &str,
    ) {
        let (left, right) = (tidy(left), tidy(right));
        let used = indent + display_width(label) + 1 + display_width(&left);
        let room = self.width.saturating_sub(used + display_width(&right));
        if right.is_empty() || used + display_width(&right) + 3 > self.width {
            self.hang(indent, (label, label_tone), (&left, Tone::Strong));
            self.prose(indent + display_width(label) + 1, Tone::Plain, &right);
            return;
        }
        let line = format!(
            "{} {}{}{right}",
            paint(label_tone, label),
            paint(Tone::Strong, &left),
            " ".repeat(room)
        );
        self.push(indent, &line);
    }

    /// Wrapped text with an amount at the right edge of its last line, so that
    /// amounts stand below each other.
    pub(crate) fn amount(&mut self, indent: usize, (text, tone): (&str, Tone), amount: &str) {
        let amount = tidy(amount);
        let taken = display_width(&amount) + AMOUNT_GAP;
        let room = self.width.saturating_sub(indent + taken);
        let narrow = room < NARROWEST_TEXT;
        let mut lines = wrap(text, if narrow { self.width.saturating_sub(indent) } else { room });
        let last = if narrow { String::new() } else { lines.pop().unwrap_or_default() };
        for line in lines {
            self.push(indent, &paint(tone, &line));
        }
        let blank = (room + AMOUNT_GAP).saturating_sub(display_width(&last));
        let line = format!("{}{}{}", paint(tone, &last), " ".repeat(blank), paint(tone, &amount));
        self.push(indent, &line);
    }

    /// Rows in columns, two spaces apart, each as wide as its content but no
    /// wider than its share; the last column takes what is left. The tone is
    /// that of the first cell.
    pub(crate) fn columns(&mut self, indent: usize, most: &[usize], rows: &[Shown]) {
        let widths = self.column_widths(indent, most, rows);
        let mut table = Table::new();
        table.load_style(presets::NOTHING);
        table.set_content_arrangement(ContentArrangement::Disabled);
        for (_, cells) in rows {
            let wrapped = cells.iter().zip(&widths).map(|(cell, width)| wrap(cell, *width));
            table.add_row(wrapped.map(|lines| lines.join("\n")).collect::<Vec<_>>());
        }
        let last = widths.len().saturating_sub(1);
        for (index, column) in table.column_iter_mut().enumerate() {
            column.set_padding((0, if index == last { 0 } else { 2 }));
        }
        // A row's first line begins with its first cell; the tones follow
        // the rows, so they are laid on where a row begins.
        let mut starts = Vec::new();
        for (tone, cells) in rows {
            let heights = cells.iter().zip(&widths).map(|(cell, width)| wrap(cell, *width).len());
            starts.push(Some(*tone));
            starts.extend((1..heights.max().unwrap_or(1)).map(|_| None));
        }
        let first = widths.first().copied().unwrap_or(0);
        for (line, tone) in table.trim_fmt().lines().zip(starts) {
            let head: String = line.chars().take(first).collect();
            let painted = paint(tone.unwrap_or_default(), head.trim_end());
            self.push(indent, &format!("{painted}{}", &line[head.trim_end().len()..]));
        }
    }

    fn column_widths(&self, indent: usize, most: &[usize], rows: &[Shown]) -> Vec<usize> {
        let mut left = self.width.saturating_sub(indent);
        let mut widths = Vec::new();
        for (index, most) in most.iter().enumerate() {
            let longest = rows.iter().filter_map(|(_, cells)| cells.get(index));
            let longest = longest.map(|cell| display_width(&tidy(cell))).max().unwrap_or(0);
            // On a narrow page no column may starve those behind it.
            let share = if index + 1 == rows.first().map_or(0, |(_, cells)| cells.len()) {
                left
            } else {
                left * 3 / 5
            };
            let width = longest.min(*most).min(share).max(1);
            left = left.saturating_sub(width + 2);
            widths.push(width);
        }
        widths
    }

    fn push(&mut self, indent: usize, line: &str) {
        self.text.extend(std::iter::repeat_n(' ', indent));
        self.text.push_str(line);
        let kept = self.text.trim_end_matches(' ').len();
        self.text.truncate(kept);
        self.text.push('\n');
    }
}

/// Text on one line: line breaks and runs of blanks become one space, what
/// would steer the terminal becomes visible.
pub(crate) fn tidy(text: &str) -> String {
    visible(&text.split_whitespace().collect::<Vec<_>>().join(" "))
}

/// The text in lines no wider than `width`, broken between words only, a
/// figure kept with its unit. A single word wider than the whole line is the
/// one thing that is divided, since nothing may be cut off.
pub(crate) fn wrap(text: &str, width: usize) -> Vec<String> {
    let options = Options::new(width.max(1))
        .word_separator(WordSeparator::AsciiSpace)
        .word_splitter(WordSplitter::NoHyphenation);
    let tied = tie_figures(&tidy(text));
    textwrap::wrap(&tied, options).into_iter().map(|line| line.replace(TIE, " ")).collect()
}

/// `6 ft 4 1/2 in` is one word to whoever wraps it.
pub(super) fn tie_figures(text: &str) -> String {
    let words: Vec<&str> = text.split(' ').collect();
    let mut out = String::with_capacity(text.len());
    for (index, word) in words.iter().enumerate() {
        if let Some(before) = index.checked_sub(1).map(|i| words[i]) {
            let next = words.get(index + 1).copied().unwrap_or("");
            out.push(if belongs(before, word, next) { TIE } else { ' ' });
        }
        out.push_str(word);
    }
    out
}

fn belongs(before: &str, word: &str, next: &str) -> bool {
    const UNITS: [&str; 12] =
        ["ft", "in", "mm", "cm", "m", "kg", "g", "lb", "degrees", "%", "days", "day"];
    let bare = |word: &str| word.trim_matches(|c| "(),;:.".contains(c)).to_owned();
    let is_number = |word: &str| {
        let word = bare(word);
        word.ends_with(|c: char| c.is_ascii_digit())
            && word.chars().all(|c| c.is_ascii_digit() || ".,/-".contains(c))
    };
    let is_unit = |word: &str| {
        let word = bare(word);
        let capitals = word.bytes().all(|byte| byte.is_ascii_uppercase());
        UNITS.contains(&word.as_str()) || (capitals && Currency::find(&word).is_some())
    };
    let open = !before.ends_with([',', ';', ':', ')']);
    open && match (is_number(before), is_number(word)) {
        (true, false) => is_unit(word),
        (true, true) => word.contains('/'),
        (false, true) => {
            let inches = is_unit(next) || next.contains('/');
            bare(before) == "ft" && !word.starts_with('(') && inches
        }
        (false, false) => false,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn plain(page: Page) -> String {
        anstream::adapter::strip_str(&page.finish()).to_string()
    }

    #[test]
    fn a_figure_is_never_parted_from_its_unit() {
        for width in 16..40 {
            for line in wrap("it must be at least 6 ft 4 1/2 in (1.944 m) at 4 ft 3 in", width) {
                assert!(line.len() <= width, "{line}");
                for bad in ["6", "6 ft", "6 ft 4", "6 ft 4 1/2", "(1.944", "4", "4 ft", "4 ft 3"] {
                    assert!(!line.ends_with(&format!(" {bad}")), "{line}");
                }
            }
        }
    }

    #[test]
    fn an_amount_is_never_parted_from_its_currency() {
        assert_eq!(wrap("it comes to 52.50 USD less", 17), ["it comes to", "52.50 USD less"]);
        // No currency: a code of federal regulations, and plain words.
        assert_eq!(wrap("it is in 50 CFR 622", 11), ["it is in 50", "CFR 622"]);
        assert_eq!(wrap("they are 12 all in", 11), ["they are 12", "all in"]);
    }

    #[test]
    fn words_with_hyphens_stay_whole() {
        let lines = wrap("a long-handled line-cutter", 14);
        assert_eq!(lines, ["a long-handled", "line-cutter"]);
    }

    #[test]
    fn nothing_is_lost_even_if_one_word_is_wider_than_the_page() {
        let word = "x".repeat(95);
        let lines = wrap(&word, 40);
        assert!(lines.iter().all(|line| line.len() <= 40));
        assert_eq!(lines.concat(), word);
    }

    #[test]
    fn what_steers_a_terminal_is_shown_instead() {
        let mut page = Page::new(60);
        page.prose(2, Tone::Plain, "a\u{1b}[31mred\u{202e}\nb");
        page.columns(0, &[20, 20], &[(Tone::Plain, vec!["x\u{7}".into(), "y\r\nz".into()])]);
        let text = page.finish();
        assert!(!text.contains(['\u{1b}', '\u{202e}', '\u{7}', '\r']), "{text:?}");
        assert!(text.contains("\\u{1b}") && text.contains("y z"), "{text:?}");
    }

    #[test]
    fn columns_line_up_and_stay_within_the_page() {
        let mut page = Page::new(40);
        let row = |a: &str, b: &str| (Tone::Good, vec!["+".to_owned(), a.to_owned(), b.to_owned()]);
        page.columns(
            2,
            &[1, 14, 80],
            &[row("pliers", "PL-1"), row("a long-handled line cutter", "LC-1 and a remark on it")],
        );
        assert_eq!(
            plain(page),
            "  +  pliers          PL-1\n  +  a long-handled  LC-1 and a remark\n     line cutter     on it\n"
        );
    }

    #[test]
    fn amounts_stand_below_each_other_at_the_right_edge() {
        let mut page = Page::new(40);
        page.amount(2, ("goods", Tone::Plain), "45.00 USD");
        page.amount(2, ("delivery, free from 1500.00 USD of goods on", Tone::Plain), "0.00 USD");
        page.amount(2, ("total", Tone::Strong), "999999999999999999.00 USD");
        assert_eq!(
            plain(page),
            "  goods                        45.00 USD\n  delivery, free from\n  1500.00 USD of \
             goods on       0.00 USD\n  total\n               999999999999999999.00 USD\n"
        );
    }

    #[test]
    fn the_right_end_moves_below_where_it_does_not_fit() {
        let mut page = Page::new(40);
        page.ends(0, ("-", Tone::Bad), "Pliers", "Appendix F, A.9");
        page.ends(0, ("-", Tone::Bad), "Long-handled line cutter", "Appendix F, A.10(b)");
        assert_eq!(
            plain(page),
            "- Pliers                 Appendix F, A.9\n- Long-handled line cutter\n  Appendix F, A.10(b)\n"
        );
    }

    #[test]
    fn on_a_narrow_page_no_column_starves_those_behind_it() {
        let mut page = Page::new(40);
        let cells = ["one of the cells that is longer than the page", "and what stands beside it"];
        page.columns(0, &[80, 80], &[(Tone::Plain, cells.map(str::to_owned).to_vec())]);
        assert_eq!(
            plain(page),
            "one of the cells that is  and what\nlonger than the page      stands beside\n\
             \x20                         it\n"
        );
    }
}
