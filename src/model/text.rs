//! Text for people, in one language or several, and text made safe to show.

use std::collections::BTreeMap;

/// Text for people: one string, or one for each language.
#[derive(Debug, Clone, PartialEq, Eq, Default, Hash)]
pub struct Text {
    /// The text in the governing language (or the only one).
    pub main: String,
    /// Translations by language tag, for the reader's convenience.
    pub others: BTreeMap<String, String>,
}

impl Text {
    /// Text in one language.
    pub fn plain(main: impl Into<String>) -> Self {
        Self { main: main.into(), others: BTreeMap::new() }
    }
}

impl std::fmt::Display for Text {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&self.main)
    }
}

/// Whether a character steers a terminal, turns the reading direction or
/// cannot be seen at all, so that two names would look alike. (Unicode's
/// `Default_Ignorable_Code_Point` without the variation selectors that pictures
/// need, and its line and paragraph separators.)
pub fn steers(c: char) -> bool {
    (c.is_control() && c != '\n' && c != '\t')
        || matches!(c, '\u{ad}' | '\u{34f}' | '\u{61c}' | '\u{115f}' | '\u{1160}')
        || matches!(c, '\u{17b4}' | '\u{17b5}' | '\u{180b}'..='\u{180f}' | '\u{3164}')
        || matches!(c, '\u{200b}'..='\u{200f}' | '\u{2028}'..='\u{202e}' | '\u{2060}'..='\u{206f}')
        || matches!(c, '\u{feff}' | '\u{ffa0}' | '\u{fff0}'..='\u{fffb}')
        || matches!(c, '\u{1bca0}'..='\u{1bca3}' | '\u{1d173}'..='\u{1d17a}' | '\u{e0000}'..='\u{e0fff}')
}

/// The text with every steering character, line break and tab replaced by
/// its code, so that it can be shown anywhere on one line.
pub fn visible(text: &str) -> String {
    let mut out = String::with_capacity(text.len());
    for c in text.chars() {
        if steers(c) || c == '\n' || c == '\t' {
            out.extend(c.escape_unicode());
        } else {
            out.push(c);
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn steering_characters_become_visible() {
        assert_eq!(visible("a\u{1b}[31m"), "a\\u{1b}[31m");
        assert_eq!(visible("x\u{202e}y"), "x\\u{202e}y");
        assert_eq!(visible("PL\u{ad}1\u{e0041}"), "PL\\u{ad}1\\u{e0041}");
        assert_eq!(visible("Mañana – ½ ⛵\u{fe0f}"), "Mañana – ½ ⛵\u{fe0f}");
    }
}
