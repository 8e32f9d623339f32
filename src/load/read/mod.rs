//! From a file to a tree that knows where everything stands, and what is wrong
//! with it.
//!
//! Imports `model` only; knows no kind of file.

pub(crate) mod guard;
pub(crate) mod limits;
pub(crate) mod long;
pub(crate) mod parse;
pub(crate) mod problem;
mod shape;
pub(crate) mod source;
pub(crate) mod spot;
pub(crate) mod suggest;
mod syntax;
mod tree;
mod tree_de;
