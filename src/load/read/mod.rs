//! Text to a tree with positions.

pub(crate) mod bounds;
pub(crate) mod guard;
pub(crate) mod limits;
pub(crate) mod long;
pub(crate) mod parse;
pub(crate) mod problem;
pub(crate) mod shape;
pub(crate) mod source;
pub(crate) mod spot;
pub(crate) mod suggest;
pub(crate) mod syntax;
pub(crate) mod tree;
pub(crate) mod tree_de;
pub(crate) mod usual;
