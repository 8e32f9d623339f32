//! Tests.

pub(crate) mod catalogue;
pub(crate) mod catalogue_refusal;
pub(crate) mod hostile;
pub(crate) mod library;
pub(crate) mod situation_refusal;
pub(crate) mod technique_refusal;
pub(crate) mod techniques;
pub(crate) mod vessel;
