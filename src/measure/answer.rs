//! The three-valued answer of a test: yes, no, can't tell.

/// What is known of a yes-or-no question.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Answer {
    /// It holds.
    Yes,
    /// It does not hold.
    No,
    /// A fact that decides is missing.
    Unknown,
}

impl Answer {
    /// Both hold: a single *no* settles it.
    pub fn and(self, other: Self) -> Self {
        match (self, other) {
            (Self::No, _) | (_, Self::No) => Self::No,
            (Self::Yes, Self::Yes) => Self::Yes,
            _ => Self::Unknown,
        }
    }

    /// One of them holds: a single *yes* settles it.
    pub fn or(self, other: Self) -> Self {
        match (self, other) {
            (Self::Yes, _) | (_, Self::Yes) => Self::Yes,
            (Self::No, Self::No) => Self::No,
            _ => Self::Unknown,
        }
    }

    /// The opposite; the unknown stays unknown.
    pub fn negated(self) -> Self {
        match self {
            Self::Yes => Self::No,
            Self::No => Self::Yes,
            Self::Unknown => Self::Unknown,
        }
    }

    /// All of them hold; of none, it is true.
    pub fn all(answers: impl IntoIterator<Item = Self>) -> Self {
        answers.into_iter().fold(Self::Yes, Self::and)
    }

    /// At least one holds; of none, it is false.
    pub fn any(answers: impl IntoIterator<Item = Self>) -> Self {
        answers.into_iter().fold(Self::No, Self::or)
    }

    /// What rival readings agree on; where they differ, nobody can tell.
    /// Of no reading at all nothing is known.
    pub fn consensus(answers: impl IntoIterator<Item = Self>) -> Self {
        let mut answers = answers.into_iter();
        let Some(first) = answers.next() else {
            return Self::Unknown;
        };
        if answers.all(|answer| answer == first) { first } else { Self::Unknown }
    }
}

impl From<bool> for Answer {
    fn from(holds: bool) -> Self {
        if holds { Self::Yes } else { Self::No }
    }
}

#[cfg(test)]
mod tests {
    use super::Answer::{self, No, Unknown, Yes};

    const EVERY: [Answer; 3] = [Yes, No, Unknown];

    #[test]
    fn a_no_settles_and_a_yes_settles() {
        for answer in EVERY {
            assert_eq!(No.and(answer), No);
            assert_eq!(Yes.or(answer), Yes);
            assert_eq!(Yes.and(answer), answer);
            assert_eq!(No.or(answer), answer);
        }
    }

    #[test]
    fn negation_carries_and_into_or() {
        for a in EVERY {
            for b in EVERY {
                assert_eq!(a.and(b).negated(), a.negated().or(b.negated()));
            }
        }
    }

    #[test]
    fn rivals_that_differ_leave_it_open() {
        assert_eq!(Answer::consensus([Yes, Yes]), Yes);
        assert_eq!(Answer::consensus([No, No]), No);
        assert_eq!(Answer::consensus([Yes, No]), Unknown);
        assert_eq!(Answer::consensus([]), Unknown);
        assert_eq!(Answer::all([]), Yes);
        assert_eq!(Answer::any([]), No);
    }
}
