//! Why a command gave no result.
//!
//! Imports `load` for refusals, and the desk's messages.

use crate::load::Refusal;
use crate::report::desk;

/// Why a command gave no result.
#[derive(Debug)]
pub(super) enum Stop {
    /// Files were refused.
    Refused(Vec<Refusal>),
    /// The program was called in a way that makes no sense.
    Usage {
        /// What is wrong.
        what: String,
        /// How to mend it.
        mend: String,
    },
}

impl Stop {
    pub(super) fn usage(what: impl Into<String>, mend: impl Into<String>) -> Self {
        Self::Usage { what: what.into(), mend: mend.into() }
    }

    /// That a result has no form in what it was to be written in.
    pub(super) fn formless(error: &dyn std::error::Error) -> Self {
        Self::usage(desk::command_formless(error), "")
    }

    /// The same of the JSON of one vessel.
    pub(super) fn no_json(error: &serde_json::Error) -> Self {
        Self::usage(desk::command_no_json(error), "")
    }

    /// That there is no file of techniques, and what cannot be told for want
    /// of it.
    pub(super) fn no_techniques(what: &str) -> Self {
        Self::usage(what, desk::command_put_techniques())
    }
}
