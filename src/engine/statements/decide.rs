//! What several statements of one property come to. Of two the later decides,
//! on one day what was seen before what was listed; what has no day is older
//! than all that has one. Those of equal weight that differ dispute it.

use crate::measure::Day;

/// How much a statement weighs against others of its property: by its day, then
/// by whether the thing was seen for it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Weight {
    /// Of which day; none is older than any.
    pub(super) on: Option<Day>,
    /// Whether the thing was seen, and not only listed.
    pub(super) seen: bool,
}

impl Weight {
    /// Of what is written in a list of that day.
    pub(super) fn listed(on: Option<Day>) -> Self {
        Self { on, seen: false }
    }

    /// Of what was seen on that day.
    pub(super) fn seen(on: Day) -> Self {
        Self { on: Some(on), seen: true }
    }
}

/// A statement of one property: what it says, and its weight.
pub(super) type Statement<T> = (T, Weight);

/// What was decided.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Decided<T> {
    /// What the weightiest statements say, each thing once: one where they agree,
    /// several where they dispute it. Their order means nothing.
    pub(super) says: Vec<T>,
    /// Their weight.
    pub(super) weight: Weight,
}

/// Decides a property; none where nothing is said of it.
pub(super) fn decide<T: PartialEq>(
    statements: impl IntoIterator<Item = Statement<T>>,
) -> Option<Decided<T>> {
    let mut decided: Option<Decided<T>> = None;
    for (says, weight) in statements {
        match &mut decided {
            Some(best) if weight < best.weight => {}
            Some(best) if weight == best.weight => {
                if !best.says.contains(&says) {
                    best.says.push(says);
                }
            }
            _ => decided = Some(Decided { says: vec![says], weight }),
        }
    }
    decided
}

impl<T: Clone> Decided<T> {
    /// The one thing that is said, or what stands for a dispute.
    pub(super) fn or(&self, disputed: T) -> T {
        match &self.says[..] {
            [only] => only.clone(),
            _ => disputed,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn weight(day: &str, seen: bool) -> Weight {
        Weight { on: Day::parse(day).ok(), seen }
    }

    #[test]
    fn the_later_day_decides_and_on_one_day_what_was_seen() {
        let (first, second) = ("2026-02-01", "2026-02-02");
        for (older, newer) in [
            (weight(first, true), weight(second, false)),
            (weight(first, false), weight(first, true)),
            (weight("", true), weight(first, false)),
        ] {
            for both in [[("old", older), ("new", newer)], [("new", newer), ("old", older)]] {
                assert_eq!(decide(both).unwrap().says, ["new"], "{both:?}");
            }
        }
    }

    #[test]
    fn equals_that_differ_dispute_and_those_that_agree_do_not() {
        let seen = weight("2026-02-01", true);
        let decided = decide([(1, seen), (3, seen), (1, seen)]).unwrap();
        assert_eq!((&decided.says[..], decided.or(0)), (&[1, 3][..], 0));
        assert_eq!(decide([(1, seen), (1, seen)]).unwrap().or(0), 1);
        assert_eq!(decide::<u32>([]), None);
    }
}
