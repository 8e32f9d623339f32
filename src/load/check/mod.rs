//! Form to model.

pub(crate) mod amount;
pub(crate) mod capability;
pub(crate) mod catalogue;
pub(crate) mod condition;
pub(crate) mod facts;
pub(crate) mod fits;
pub(crate) mod freeboard;
pub(crate) mod goods;
pub(crate) mod inspection;
pub(crate) mod judge_forbidden;
pub(crate) mod judge_practice;
pub(crate) mod judge_tags;
pub(crate) mod lines;
pub(crate) mod need;
pub(crate) mod people;
pub(crate) mod phrase;
pub(crate) mod profile;
pub(crate) mod reading;
pub(crate) mod requirement;
pub(crate) mod situations;
pub(crate) mod techniques;
pub(crate) mod tool;
pub(crate) mod value;
pub(crate) mod vessel;
pub(crate) mod vocabulary;
pub(crate) mod work;
