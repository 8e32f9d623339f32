//! What a file may hold at most.

/// The longest remark, note or description, in characters.
pub(crate) const LONGEST_REMARK: u64 = 4000;

/// The most lines that one group may have.
pub(crate) const MOST_LINES: usize = 1000;

/// The most entries that one list may have, where the check of the file tells
/// no lower number.
pub(crate) const MOST_LISTED: usize = 2000;
