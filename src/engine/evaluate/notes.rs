//! What a test leaves behind: every reason spelled out, or only the answer
//! that the reasons come to, which is all that most points need.

use crate::measure::Answer;
use crate::model::reason::Reason;

/// Where faults and missing facts are noted. A reason is only spelled out
/// by those who keep it.
pub(crate) trait Notes: Default {
    /// A fault: it settles that the tool does not serve.
    fn fault(&mut self, reason: impl FnOnce() -> Reason);

    /// A missing fact: nobody can tell.
    fn open(&mut self, reason: impl FnOnce() -> Reason);

    /// What was noted comes to this: a fault settles it, a missing fact
    /// leaves it open.
    fn answer(&self) -> Answer;

    /// Adds what was noted elsewhere.
    fn append(&mut self, other: Self);

    /// Whether nothing that could still be noted is worth asking.
    fn is_settled(&self) -> bool;
}

impl Notes for Vec<Reason> {
    fn fault(&mut self, reason: impl FnOnce() -> Reason) {
        self.push(reason());
    }

    fn open(&mut self, reason: impl FnOnce() -> Reason) {
        self.push(reason());
    }

    fn answer(&self) -> Answer {
        answer(self)
    }

    fn append(&mut self, other: Self) {
        self.extend(other);
    }

    /// Of what is not there nothing more is worth asking.
    fn is_settled(&self) -> bool {
        self.contains(&Reason::Missing)
    }
}

/// Only what the reasons come to.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Sum(Answer);

impl Default for Sum {
    fn default() -> Self {
        Self(Answer::Yes)
    }
}

impl Notes for Sum {
    fn fault(&mut self, _: impl FnOnce() -> Reason) {
        self.0 = Answer::No;
    }

    fn open(&mut self, _: impl FnOnce() -> Reason) {
        self.0 = self.0.and(Answer::Unknown);
    }

    fn answer(&self) -> Answer {
        self.0
    }

    fn append(&mut self, other: Self) {
        self.0 = self.0.and(other.0);
    }

    fn is_settled(&self) -> bool {
        self.0 == Answer::No
    }
}

/// The answer of a list of reasons.
pub(crate) fn answer(reasons: &[Reason]) -> Answer {
    if reasons.iter().any(|reason| !reason.is_open()) {
        Answer::No
    } else if reasons.is_empty() {
        Answer::Yes
    } else {
        Answer::Unknown
    }
}
