//! Texts as they go into a file of YAML that somebody else fills in.
//!
//! Imports `model::text` only. What comes out of a file keeps its value and
//! steers nothing: marks that need it stand in quotes, steering characters as
//! escapes.

use crate::model::text::{steers, visible};

/// How wide a file may be, in columns.
const WIDEST: usize = 80;

/// A text as one value.
pub(super) fn scalar(text: &str) -> String {
    const WORDS: [&str; 9] = ["yes", "no", "true", "false", "null", "on", "off", "y", "n"];
    let plain =
        text.chars().all(|c| c.is_ascii_alphanumeric() || matches!(c, ' ' | '-' | '_' | '/'));
    let starts = text.starts_with(|c: char| c.is_ascii_alphabetic()) && !text.ends_with(' ');
    if plain && starts && !WORDS.contains(&text.to_ascii_lowercase().as_str()) {
        return text.to_owned();
    }
    let mut out = String::from('"');
    for c in text.chars() {
        match c {
            '"' | '\\' => out.extend(['\\', c]),
            '\n' => out.push_str("\\n"),
            '\t' => out.push_str("\\t"),
            c if steers(c) => out.push_str(&format!("\\u{:04x}", u32::from(c))),
            c => out.push(c),
        }
    }
    out.push('"');
    out
}

/// A file that grows line by line.
#[derive(Debug, Default)]
pub(super) struct File {
    text: String,
}

impl File {
    /// A line as it is.
    pub(super) fn line(&mut self, text: &str) {
        self.text.push_str(text.trim_end());
        self.text.push('\n');
    }

    /// An empty line.
    pub(super) fn gap(&mut self) {
        self.text.push('\n');
    }

    /// A comment, wrapped, that far in. `hash` stands in front of it where
    /// the whole block is a comment.
    pub(super) fn note(&mut self, indent: usize, hash: &str, text: &str) {
        let shown = visible(text);
        let width = WIDEST.saturating_sub(indent + hash.len() + 2);
        for line in textwrap::wrap(&shown, width) {
            self.line(&format!("{:indent$}{hash}# {line}", ""));
        }
    }

    /// A comment, wrapped, that far in.
    pub(super) fn comment(&mut self, indent: usize, text: &str) {
        self.note(indent, "", text);
    }

    /// A key with its value, and a comment behind it if there is room, else
    /// above it.
    pub(super) fn key(&mut self, indent: usize, key: &str, value: &str, comment: &str) {
        self.key_in(indent, "", key, value, comment);
    }

    /// The same in a block that is a comment as a whole.
    pub(super) fn key_in(
        &mut self,
        indent: usize,
        hash: &str,
        key: &str,
        value: &str,
        comment: &str,
    ) {
        let shown = visible(comment);
        let line = format!("{:indent$}{hash}{key}: {value}", "").trim_end().to_owned();
        let both = format!("{line}  # {shown}");
        if comment.is_empty() {
            self.line(&line);
        } else if both.chars().count() <= WIDEST {
            self.line(&both);
        } else {
            self.note(indent, hash, comment);
            self.line(&line);
        }
    }

    /// The file.
    pub(super) fn finish(self) -> String {
        self.text
    }
}

#[cfg(test)]
mod tests {
    use super::scalar;

    #[test]
    fn what_yaml_would_read_otherwise_stands_in_quotes() {
        for (text, written) in [
            ("LC-1", "LC-1"),
            ("Marlow Tern", "Marlow Tern"),
            ("no", "\"no\""),
            ("1e3", "\"1e3\""),
            ("a: b # c", "\"a: b # c\""),
            ("say \"x\" \\", "\"say \\\"x\\\" \\\\\""),
            ("a\u{202e}b\u{1b}[1m\nc", "\"a\\u202eb\\u001b[1m\\nc\""),
            ("", "\"\""),
        ] {
            assert_eq!(scalar(text), written);
        }
    }
}
