//! Whether a file is as files usually are, so that the quick parser may read
//! it: everything that is bounded, refused or told differently in the marked
//! tree is left to that.

use crate::load::read::limits::{LONGEST_REMARK, MOST_LISTED};
use crate::model::text::steers;

/// The longest line, and the deepest brackets, of a usual text. The quick
/// parser's time grows with the square of either.
const USUAL_LINE: usize = 2000;
/// See [`USUAL_LINE`]; brackets inside quotes and comments count too, which
/// only costs a little time.
const USUAL_DEPTH: usize = 32;

/// Whether a text is better read through the tree, which bounds everything.
pub(crate) fn is_unusual(text: &str) -> bool {
    let (mut depth, mut line) = (0_usize, 0);
    let (mut commas, mut lines) = (0, 0);
    let bytes = text.as_bytes();
    for (at, byte) in bytes.iter().enumerate().filter(|(_, byte)| NOTABLE[usize::from(**byte)]) {
        commas += usize::from(*byte == b',');
        lines += usize::from(*byte == b'\n');
        match byte {
            // An anchor: what its aliases unfold to is bounded in the tree.
            b'&' if bytes.get(at + 1).is_some_and(|next| !next.is_ascii_whitespace()) => {
                return true;
            }
            // A tag, which the quick way passes over; a `?` that touches a key
            // in braces, which it takes for a mark and not for part of the key.
            b'!' | b'?'
                if at == 0
                    || matches!(bytes[at - 1], b' ' | b'\t' | b'\n' | b'[' | b'{' | b',') =>
            {
                return true;
            }
            // `0x10` and `+5` lose their wording on the quick way.
            b'0' if matches!(bytes.get(at + 1), Some(b'x' | b'o' | b'b')) => return true,
            b'\n' if at - line > USUAL_LINE => return true,
            b'\n' => line = at + 1,
            // Alone it ends a line too, which nothing here counts.
            b'\r' if bytes.get(at + 1) != Some(&b'\n') => return true,
            b'\r' => {}
            b'+' if at > 0 && bytes[at - 1] == b' ' => return true,
            b'[' | b'{' => depth += 1,
            b']' | b'}' => depth = depth.saturating_sub(1),
            // It may hide a steering character, which only the tree shows.
            b'\\' => return true,
            b if b.is_ascii_control() => return true,
            _ => {}
        }
        // A list may be too long, in brackets or line by line; only the tree
        // counts what is in it.
        if depth > USUAL_DEPTH || commas.max(lines) >= MOST_LISTED {
            return true;
        }
    }
    bytes.len() - line > USUAL_LINE
        || may_hold_long_text(text)
        || !text.is_ascii() && text.chars().any(|c| c != '\r' && steers(c))
}

/// The bytes at which a text may be unusual.
const NOTABLE: [bool; 256] = {
    let mut notable = [false; 256];
    let marks = b"\n0+[]{},&!?\\\x7f";
    let mut at = 0;
    while at < marks.len() {
        notable[marks[at] as usize] = true;
        at += 1;
    }
    let mut control = 0;
    while control < 0x20 {
        notable[control] = control as u8 != b'\t';
        control += 1;
    }
    notable
};

/// Whether a text that goes over several lines may be longer than any text may
/// be: a block, a quotation that is not closed on its line, or plain lines of
/// which none begins a value. What only looks like one costs a little time.
fn may_hold_long_text(text: &str) -> bool {
    let longest = usize::try_from(LONGEST_REMARK).unwrap_or(usize::MAX);
    if text.len() <= longest {
        return false;
    }
    let (mut run, mut began_at, mut after_key) = (0, 0, true);
    for line in text.lines() {
        if opens_block(line) || leaves_quotation_open(line) {
            return true;
        }
        let words = line.trim();
        let indent = line.len() - line.trim_start().len();
        // Deeper than where a text began, a hyphen is a part of it.
        let entry = words.starts_with("- ") && (after_key || indent <= began_at);
        let begins =
            entry || words.starts_with('#') || words.contains(": ") || words.ends_with(':');
        if begins {
            (run, began_at) = (0, indent);
        }
        after_key = words.ends_with(':');
        run += line.len();
        if run > longest {
            return true;
        }
    }
    false
}

fn opens_block(line: &str) -> bool {
    let value = line.split(" #").next().unwrap_or(line);
    value.split_whitespace().last().is_some_and(|word| word.starts_with(['|', '>']))
}

/// Whether a quotation begins in the line that does not end there.
fn leaves_quotation_open(line: &str) -> bool {
    ['"', '\''].iter().any(|quote| {
        line.match_indices(*quote).any(|(at, _)| {
            let before = line[..at].chars().next_back();
            let begins = before.is_none_or(|c| c.is_whitespace() || "[{,".contains(c));
            begins && line[at + 1..].matches(*quote).count().is_multiple_of(2)
        })
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::load::Library;

    /// A profile whose note is written so; `N` stands for the long text.
    fn problems(note: &str, text: &str) -> Vec<String> {
        let profile = format!(
            "format: profile/1\nid: t\nrule: t\nedition: one\ntitle: T\nstanding: good practice\n\
             requirements:\n  - id: one\n    title: One\n    verified: common practice\n    \
             carry: 1 pliers\n    note: {}\n",
            note.replace('N', text)
        );
        match Library::shipped().unwrap().draft_text("t.yaml", &profile) {
            Ok(_) => Vec::new(),
            Err(refusal) => refusal.problems.iter().map(|problem| problem.what.clone()).collect(),
        }
    }

    const STYLES: [&str; 11] = [
        "|\n      N",
        "|-\n      N",
        ">2-\n      N",
        "> # folded\n      N",
        "\n      |\n       N",
        "\"N\"",
        "'it''s N'",
        "\n      \"N\"",
        "N",
        "a\n      - N",
        "{ en: a,\n      es: N }",
    ];

    /// Words over many lines, none of them long.
    fn lines(words: usize) -> String {
        let line = "of the longest line aboard".to_owned();
        vec![line; words / 5].join("\n       ")
    }

    #[test]
    fn a_text_that_is_too_long_is_refused_however_it_is_written() {
        for style in STYLES {
            let told = problems(style, &lines(1000));
            assert_eq!(told, ["this text is too long"], "{style:?}");
            assert_eq!(problems(style, &lines(100)), [""; 0], "{style:?}");
        }
    }

    /// Files of the usual sorts are left to the quick parser, however long.
    #[test]
    fn what_is_shipped_is_usual() {
        for source in Library::shipped().unwrap().texts() {
            assert!(!may_hold_long_text(&source.text), "{}", source.file);
        }
        let permits: String = (0..2000).map(|n| format!("  - permit-{n}\n")).collect();
        assert!(!may_hold_long_text(&format!("permits:\n{permits}areas: []\n")));
    }
}
