//! Shipped files.

pub(crate) mod drafts;
pub(crate) mod folder;
pub(crate) mod manual;
pub(crate) mod merge;
pub(crate) mod shelf;
