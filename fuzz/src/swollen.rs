//! A text in which one piece is repeated until the file is large: whatever
//! takes more than linear time shows here first, as a text that takes longer
//! than any may (`main.rs`).
//!
//! The first letter names the reader; the piece stands between two `§`.

use crate::{
    catalogue, figures, inspection, length, profile, record, techniques, vessel, vocabulary,
};

/// How large the text becomes; an eighth of the largest file that is read.
const SIZE: usize = 128 * 1024;

pub fn run(text: &str) {
    let Some(letter) = text.chars().next() else { return };
    let target = match letter {
        'v' => vessel::run,
        'i' => inspection::run,
        'c' => catalogue::run,
        'p' => profile::run,
        'w' => vocabulary::run,
        't' => techniques::run,
        'r' => record::run,
        'l' => length::run,
        'f' => figures::run,
        _ => return,
    };
    let mut parts = text[1..].splitn(3, '§');
    let (head, piece) = (parts.next().unwrap_or_default(), parts.next().unwrap_or_default());
    let tail = parts.next().unwrap_or_default();
    if piece.is_empty() {
        return;
    }
    let swollen = format!("{head}{}{tail}", piece.repeat(SIZE / piece.len()));
    target(&swollen);
}
