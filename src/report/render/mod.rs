//! A document in, text out: for the terminal and in HTML. Nothing here knows
//! a command. Text out of files becomes harmless here and nowhere else.

pub(crate) mod base;
pub(crate) mod html;
pub(crate) mod lines;
pub(crate) mod terminal;
