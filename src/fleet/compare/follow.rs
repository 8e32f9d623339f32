//! One outcome followed through the steps: where it changes, and what it is
//! called in the end.
//!
//! Imports `model`. Knows no vessels and no rules: states in a row, each with
//! what its step shows.

use crate::model::finding::Outcome;

/// What changed an outcome.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Cause {
    /// The program judges the same inputs otherwise.
    Program,
    /// A mistake in the encoding of a rule was mended, and its revision
    /// raised.
    Encoding,
    /// The rules' files or the vocabulary are others, no revision was raised.
    RuleFile,
    /// The audit was asked for other profiles, or to trust other figures.
    Asked,
    /// Another edition of the rule governs.
    Edition,
    /// The trip is another: something lapsed, or a date passed.
    Calendar,
    /// The vessel, its kit or what an inspection found.
    Vessel,
    /// An inspection record that was laid over then is not laid over now.
    Record,
    /// It cannot be told: a step between could not be worked out.
    Untold,
}

/// One change of an outcome; none where the requirement is not asked.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Flip {
    /// What changed it.
    pub cause: Cause,
    /// From.
    pub from: Option<Outcome>,
    /// To.
    pub to: Option<Outcome>,
}

impl Flip {
    /// Whether it opened or closed something.
    pub fn turns(&self) -> bool {
        is_open(self.from) != is_open(self.to)
    }
}

/// What became of a finding between two audits.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Fate {
    /// It is open now and was not.
    Opened,
    /// It was open and is.
    StillOpen,
    /// It was open and is no longer.
    Closed,
    /// It was opened and closed again in between.
    Passing,
}

/// What following gave.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Path {
    pub(super) then: Option<Outcome>,
    pub(super) now: Option<Outcome>,
    pub(super) fate: Fate,
    pub(super) cause: Option<Cause>,
    pub(super) flips: Vec<Flip>,
}

/// One step: what it shows, and what is so after it.
pub(super) type Step = (Cause, After);

/// What is so after a step.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum After {
    /// This outcome; none where the requirement is not asked.
    Is(Option<Outcome>),
    /// Nothing is said of it: nobody can tell of the rule as a whole. What was
    /// open is not put right by that, and what was not is not opened: that is
    /// told of the rule.
    Unsaid,
    /// The step could not be worked out.
    Hole,
}

/// Whether something is to be put right or found out.
fn is_open(outcome: Option<Outcome>) -> bool {
    matches!(outcome, Some(Outcome::NotMet | Outcome::CannotTell))
}

/// Follows an outcome from what is on record through the steps. None where it
/// was never open.
pub(super) fn follow(then: Option<Outcome>, steps: &[Step]) -> Option<Path> {
    let (mut at, mut hole, mut flips) = (then, false, Vec::new());
    for (cause, after) in steps {
        let after = match *after {
            After::Is(after) => after,
            After::Unsaid if is_open(at) => Some(Outcome::CannotTell),
            After::Unsaid => at,
            After::Hole => {
                hole = true;
                continue;
            }
        };
        if after != at {
            let cause = if hole { Cause::Untold } else { *cause };
            flips.push(Flip { cause, from: at, to: after });
        }
        (at, hole) = (after, false);
    }
    let last = flips.iter().rfind(|flip: &&Flip| flip.turns()).map(|flip| flip.cause);
    let (fate, cause) = match (is_open(then), is_open(at)) {
        (true, true) => (Fate::StillOpen, None),
        (true, false) => (Fate::Closed, last),
        (false, true) => (Fate::Opened, last),
        (false, false) => {
            last?;
            (Fate::Passing, last)
        }
    };
    Some(Path { then, now: at, fate, cause, flips })
}

#[cfg(test)]
mod tests {
    use super::*;

    const MET: Option<Outcome> = Some(Outcome::Met);
    const NOT: Option<Outcome> = Some(Outcome::NotMet);
    const OPEN: Option<Outcome> = Some(Outcome::CannotTell);
    /// The requirement is not asked.
    const NO: Option<Outcome> = None;

    const CAUSES: [Cause; 6] = [
        Cause::Program,
        Cause::Encoding,
        Cause::Asked,
        Cause::Edition,
        Cause::Calendar,
        Cause::Vessel,
    ];

    /// A, then B, C, Q, E, T and D.
    fn path(states: [Option<Outcome>; 7]) -> Option<Path> {
        let steps: Vec<Step> =
            CAUSES.into_iter().zip(&states[1..]).map(|(c, s)| (c, After::Is(*s))).collect();
        follow(states[0], &steps)
    }

    fn called(states: [Option<Outcome>; 7]) -> Option<(Fate, Option<Cause>, usize)> {
        path(states).map(|path| (path.fate, path.cause, path.flips.len()))
    }

    #[test]
    fn each_step_alone_opens_and_closes() {
        for (index, cause) in CAUSES.into_iter().enumerate() {
            let turned = |before, after| {
                let mut states = [before; 7];
                states[index + 1..].fill(after);
                called(states)
            };
            for (shut, open) in [(MET, NOT), (MET, OPEN), (NO, NOT), (NO, OPEN)] {
                assert_eq!(turned(shut, open), Some((Fate::Opened, Some(cause), 1)));
                assert_eq!(turned(open, shut), Some((Fate::Closed, Some(cause), 1)));
            }
            assert_eq!(turned(NOT, OPEN), Some((Fate::StillOpen, None, 1)));
            assert_eq!(turned(MET, NO), None, "what was never open is not told");
        }
    }

    proptest::proptest! {
        #[test]
        fn whatever_happens_the_changes_lead_from_then_to_now(
            states in proptest::collection::vec(0..5_usize, 1..8)
        ) {
            let state = |index: &usize| match index {
                0 => After::Is(NO),
                1 => After::Is(MET),
                2 => After::Is(NOT),
                3 => After::Is(OPEN),
                _ => After::Unsaid,
            };
            let steps: Vec<Step> =
                CAUSES.into_iter().cycle().zip(states[1..].iter().map(state)).collect();
            let then = if let After::Is(then) = state(&states[0]) { then } else { NO };
            let Some(path) = follow(then, &steps) else {
                let open = steps.iter().any(|(_, s)| matches!(s, After::Is(s) if is_open(*s)));
                proptest::prop_assert!(!is_open(then) && !open);
                return Ok(());
            };
            let mut at = then;
            for flip in &path.flips {
                proptest::prop_assert_eq!(flip.from, at);
                proptest::prop_assert_ne!(flip.from, flip.to);
                at = flip.to;
            }
            proptest::prop_assert_eq!(at, path.now);
            let fate = match (is_open(then), is_open(path.now)) {
                (true, true) => Fate::StillOpen,
                (true, false) => Fate::Closed,
                (false, true) => Fate::Opened,
                (false, false) => Fate::Passing,
            };
            proptest::prop_assert_eq!(path.fate, fate);
            proptest::prop_assert_eq!(path.cause.is_none(), fate == Fate::StillOpen);
        }
    }

    #[test]
    fn nothing_changed_is_nothing_new() {
        assert_eq!(called([MET; 7]), None);
        assert_eq!(called([NO; 7]), None);
        assert_eq!(called([NOT; 7]), Some((Fate::StillOpen, None, 0)));
    }

    #[test]
    fn the_last_turn_decides_and_all_are_told() {
        // A correction opened it, the vessel mended it: nothing was open at
        // either audit, and yet something was done.
        let states = [MET, MET, NOT, NOT, NOT, NOT, MET];
        assert_eq!(called(states), Some((Fate::Passing, Some(Cause::Vessel), 2)));
        // A correction closed it, the vessel opened it again.
        let states = [NOT, NOT, MET, MET, MET, MET, NOT];
        assert_eq!(called(states), Some((Fate::StillOpen, None, 2)));
        // The edition asks what the old one did not, the vessel had it, and
        // then it lapsed.
        let states = [NO, NO, NO, NO, MET, NOT, NOT];
        assert_eq!(called(states), Some((Fate::Opened, Some(Cause::Calendar), 2)));
        // The program, the edition and the vessel in turn.
        let states = [NOT, MET, MET, MET, NOT, NOT, MET];
        assert_eq!(called(states), Some((Fate::Closed, Some(Cause::Vessel), 3)));
    }

    #[test]
    fn a_change_of_kind_does_not_take_the_name_from_the_turn() {
        // The correction opened it; that the vessel's new figure settles it
        // for the worse is told, and is not what opened it.
        let states = [MET, MET, OPEN, OPEN, OPEN, OPEN, NOT];
        let path = path(states).unwrap();
        assert_eq!((path.fate, path.cause), (Fate::Opened, Some(Cause::Encoding)));
        assert_eq!(path.flips[1], Flip { cause: Cause::Vessel, from: OPEN, to: NOT });
    }

    #[test]
    fn without_the_record_that_found_it_it_is_the_records_and_not_the_vessels() {
        let steps = [
            (Cause::Calendar, After::Is(NOT)),
            (Cause::Vessel, After::Is(NOT)),
            (Cause::Record, After::Is(MET)),
        ];
        let path = follow(NOT, &steps).unwrap();
        assert_eq!((path.fate, path.cause), (Fate::Closed, Some(Cause::Record)));
        // A record that cannot be read any more lets nobody say who did it.
        let steps = [(Cause::Vessel, After::Hole), (Cause::Record, After::Is(MET))];
        let path = follow(NOT, &steps).unwrap();
        assert_eq!((path.fate, path.cause), (Fate::Closed, Some(Cause::Untold)));
    }

    #[test]
    fn the_rule_opened_it_though_the_vessel_would_have_too() {
        let states = [MET, MET, NOT, NOT, NOT, NOT, NOT];
        assert_eq!(called(states), Some((Fate::Opened, Some(Cause::Encoding), 1)));
    }

    #[test]
    fn a_requirement_of_one_edition_alone_comes_and_goes_with_it() {
        let comes = [NO, NO, NO, NO, NOT, NOT, NOT];
        assert_eq!(called(comes), Some((Fate::Opened, Some(Cause::Edition), 1)));
        let goes = [NOT, NOT, NOT, NOT, NO, NO, NO];
        assert_eq!(called(goes), Some((Fate::Closed, Some(Cause::Edition), 1)));
        let bought_for_it = [NO, NO, NO, NO, NOT, NOT, MET];
        assert_eq!(called(bought_for_it), Some((Fate::Passing, Some(Cause::Vessel), 2)));
    }

    #[test]
    fn across_a_hole_no_cause_is_told() {
        let steps = [
            (Cause::Program, After::Is(MET)),
            (Cause::Encoding, After::Hole),
            (Cause::Edition, After::Hole),
            (Cause::Vessel, After::Is(NOT)),
        ];
        let path = follow(MET, &steps).unwrap();
        assert_eq!((path.fate, path.cause), (Fate::Opened, Some(Cause::Untold)));
        // A hole over which nothing changed hides nothing.
        let steps = [
            (Cause::Program, After::Hole),
            (Cause::Encoding, After::Is(MET)),
            (Cause::Vessel, After::Is(NOT)),
        ];
        let path = follow(MET, &steps).unwrap();
        assert_eq!(path.cause, Some(Cause::Vessel));
    }

    #[test]
    fn where_nobody_can_tell_of_the_rule_nothing_is_put_right_or_opened() {
        // The edition that governs the new trip is known, not encoded.
        let steps = [
            (Cause::Edition, After::Unsaid),
            (Cause::Calendar, After::Unsaid),
            (Cause::Vessel, After::Unsaid),
        ];
        let path = follow(NOT, &steps).unwrap();
        assert_eq!((path.fate, path.now, path.flips.len()), (Fate::StillOpen, OPEN, 1));
        assert_eq!(follow(MET, &steps), None);
        assert_eq!(follow(NO, &steps), None);
        // It was not encoded then and is now: what the vessel lacks is new.
        let steps = [(Cause::Program, After::Unsaid), (Cause::Edition, After::Is(NOT))];
        let path = follow(NO, &steps).unwrap();
        assert_eq!((path.fate, path.cause), (Fate::Opened, Some(Cause::Edition)));
    }
}
