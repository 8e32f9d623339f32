//! What is left on a page in plain letters.

use std::collections::BTreeMap;
use std::fmt::Debug;

/// What `measure` writes behind a figure.
const UNITS: [&str; 9] = ["ft", "in", "mm", "m", "kg", "g", "lb", "degrees", "months"];

/// Texts that came out of files, by their first word.
#[derive(Default)]
pub(super) struct Known(BTreeMap<String, Vec<String>>);

impl Known {
    /// Takes in every text of a value that was read.
    pub(super) fn learn(&mut self, of: &impl Debug) {
        for text in quoted(&format!("{of:?}")) {
            // What stands in backticks is left out of a page's text too.
            text.split('`').step_by(2).for_each(|piece| self.add(piece));
        }
    }

    fn add(&mut self, text: &str) {
        let text = plain(text);
        let text = text.trim_start_matches(|c: char| !c.is_ascii_alphabetic());
        let text = text.trim_end_matches(|c: char| !c.is_alphanumeric());
        if let Some(first) = words(text).next() {
            let all = self.0.entry(first.1.to_owned()).or_default();
            if !all.iter().any(|known| known == text) {
                all.push(text.to_owned());
            }
        }
    }

    /// How much of the text, which begins with a word, is a known one.
    fn at(&self, text: &str) -> Option<usize> {
        let first = words(text).next()?.1;
        let ends = |known: &&String| {
            let rest = text.strip_prefix(known.as_str());
            rest.is_some_and(|rest| !rest.starts_with(char::is_alphanumeric))
        };
        self.0.get(first)?.iter().filter(ends).map(String::len).max()
    }
}

/// The words in plain letters on a page, of HTML or for the terminal, that no
/// file holds, each with what stands around it.
pub(super) fn leftovers(page: &str, known: &Known) -> Vec<String> {
    let text = match page.starts_with("<!DOCTYPE") {
        true => of_html(page),
        false => anstream::adapter::strip_str(page).to_string(),
    };
    text.lines().flat_map(|line| of_line(line, known)).collect()
}

fn of_line(line: &str, known: &Known) -> Vec<String> {
    // What stands in backticks is typed as it is.
    let line = plain(&line.split('`').step_by(2).collect::<Vec<_>>().join("·"));
    let (mut found, mut end) = (Vec::new(), 0);
    for (at, word) in words(&line) {
        if at < end {
            continue;
        }
        if let Some(length) = known.at(&line[at..]) {
            end = at + length;
        } else if !is_no_word(&line[..at], word, &line[at + word.len()..]) {
            let before: Vec<char> = line[..at].chars().rev().take(40).collect();
            let behind = line[at..].chars().take(60);
            found.push(before.into_iter().rev().chain(behind).collect());
        }
    }
    found
}

/// A unit behind its figure, the letter of a row or of a way of measuring, or a
/// part of a digest.
fn is_no_word(before: &str, word: &str, behind: &str) -> bool {
    let is_digit = |c: char| c.is_ascii_digit();
    let is_unit = before.trim_end().ends_with(is_digit) && UNITS.contains(&word);
    let is_letter = word.len() < 3 && before.ends_with('(') && behind.starts_with(')');
    let is_key = is_letter || word.len() == 1 && word != "a";
    let of_digest = behind.strip_prefix('-').is_some_and(|rest| rest.starts_with(is_digit));
    is_unit || is_key || of_digest || before.ends_with(is_digit) || behind.starts_with(is_digit)
}

/// The words in plain letters, each with its place.
fn words(text: &str) -> impl Iterator<Item = (usize, &str)> {
    let mut at = 0;
    std::iter::from_fn(move || {
        let begin = at + text[at..].find(|c: char| c.is_ascii_alphabetic())?;
        let rest = &text[begin..];
        let end = rest.find(|c: char| !c.is_ascii_alphabetic()).unwrap_or(rest.len());
        at = begin + end;
        Some((begin, &rest[..end]))
    })
}

/// In small letters, with single blanks.
fn plain(text: &str) -> String {
    text.replace('\u{a0}', " ")
        .split_whitespace()
        .collect::<Vec<_>>()
        .join(" ")
        .to_ascii_lowercase()
}

/// Every text between quotation marks of what `Debug` prints.
fn quoted(text: &str) -> Vec<String> {
    let (mut all, mut signs) = (Vec::new(), text.chars());
    while signs.any(|sign| sign == '"') {
        let mut inside = String::new();
        while let Some(sign) = signs.next() {
            match sign {
                '"' => break,
                '\\' => match signs.next() {
                    Some('n' | 't' | 'r') => inside.push(' '),
                    Some(sign) => inside.push(sign),
                    None => {}
                },
                sign => inside.push(sign),
            }
        }
        all.push(inside);
    }
    all
}

/// What of a page of HTML is shown or read aloud, a line for each piece.
fn of_html(page: &str) -> String {
    let mut days = page.split("<span class=\"day\">");
    let first = days.next().unwrap_or_default().to_owned();
    // A day is kept on one line, but it is no piece of its own.
    let page = days.fold(first, |page, rest| page + &rest.replacen("</span>", "", 1));
    let (mut out, mut rest) = (String::new(), page.as_str());
    while let Some((before, tag)) = rest.split_once('<') {
        let (tag, after) = tag.split_once('>').unwrap_or((tag, ""));
        let name = tag.split(' ').next().unwrap_or_default();
        let is_unread = matches!(name, "style" | "code");
        let after = match is_unread {
            true => after.split_once(&format!("</{name}>")).map_or("", |(_, after)| after),
            false => after,
        };
        out.push_str(before);
        out.push_str(if name == "code" { "·" } else { "\n" });
        for attribute in ["aria-label", "alt", "title"] {
            if let Some((_, value)) = tag.split_once(&format!(" {attribute}=\"")) {
                out.push_str(value.split('"').next().unwrap_or_default());
                out.push('\n');
            }
        }
        rest = after;
    }
    let plain = [("&lt;", "<"), ("&gt;", ">"), ("&quot;", "\""), ("&amp;", "&")];
    plain.iter().fold(out, |text, (from, to)| text.replace(from, to))
}
