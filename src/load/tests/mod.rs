//! The whole way from a text to the model and back to a reader, on small texts of
//! their own. Each helper that several of them use stands beside its sample.

pub(crate) mod catalogue;
pub(crate) mod catalogue_refusal;
pub(crate) mod hostile;
pub(crate) mod inspection;
pub(crate) mod library;
pub(crate) mod situation_refusal;
pub(crate) mod slips;
pub(crate) mod technique_refusal;
pub(crate) mod techniques;
pub(crate) mod vessel;
