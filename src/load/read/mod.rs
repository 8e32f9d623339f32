//! From a file to a tree that knows where everything stands, and what is wrong
//! with it.
//!
//! Imports `model` only; knows no kind of file.

pub(crate) mod fault;
pub(crate) mod guard;
pub(crate) mod parse;
pub(crate) mod problem;
mod shape;
pub(crate) mod spot;
mod syntax;
pub(crate) mod tree;
mod tree_de;
