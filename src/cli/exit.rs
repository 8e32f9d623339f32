//! The exit codes, the one place where they are written down.
//!
//! | code | meaning |
//! | --- | --- |
//! | 0 | ready; ready after the order quoted; every first choice open; a record with the same findings; or a list, help or version was printed |
//! | 1 | not ready, or can't tell, even after the order; a first choice closed, or nobody can tell; a record with other findings |
//! | 2 | bad input, bad usage, a changed record, or a report that could not be written |
//!
//! Bad input outranks a verdict: where a file is refused nothing is judged.
//! Other codes are reserved.

use crate::model::finding::Verdict;
use std::process::ExitCode;

/// How the program ended.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Exit {
    /// Ready, or nothing was to be judged.
    Ready,
    /// Not ready, or can't tell.
    NotReady,
    /// Bad input or usage.
    Refused,
}

impl Exit {
    /// The number for the shell.
    pub fn code(self) -> u8 {
        match self {
            Self::Ready => 0,
            Self::NotReady => 1,
            Self::Refused => 2,
        }
    }
}

impl From<Verdict> for Exit {
    fn from(verdict: Verdict) -> Self {
        match verdict {
            Verdict::Ready => Self::Ready,
            Verdict::CannotTell | Verdict::NotReady => Self::NotReady,
        }
    }
}

impl From<Exit> for ExitCode {
    fn from(exit: Exit) -> Self {
        Self::from(exit.code())
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_a_ready_vessel_ends_in_zero() {
        assert_eq!(Exit::from(Verdict::Ready).code(), 0);
        assert_eq!(Exit::from(Verdict::CannotTell).code(), 1);
        assert_eq!(Exit::from(Verdict::NotReady).code(), 1);
        assert_eq!(Exit::Refused.code(), 2);
    }
}
