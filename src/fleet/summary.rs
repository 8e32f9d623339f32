//! A whole audit: its rows in order, and what they add up to.

use super::doubts::{Doubt, doubts};
use super::judge::{Judged, Row};
use super::lapses::{Lapse, lapses};
use super::marks::{SameMark, same_marks};
use super::missed::{Missed, most_missed};
use super::records::LeftOut;
use super::select::{Order, Selection};
use crate::load::Refusal;
use crate::measure::Day;
use crate::model::finding::Verdict;
use crate::model::profile::Standing;
use crate::model::vessel::Trust;
use crate::model::vocabulary::Vocabulary;

/// How many vessels came out how.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Counts {
    /// Ready.
    pub ready: usize,
    /// Ready by good practice only, no rule being checked: among the ready.
    pub ready_by_practice: usize,
    /// Not ready.
    pub not_ready: usize,
    /// Can't tell.
    pub cannot_tell: usize,
    /// Files that were refused.
    pub refused: usize,
}

/// A whole audit.
#[derive(Debug, Clone)]
pub struct Audit {
    /// The day of the audit.
    pub date: Day,
    /// Which figures were believed.
    pub trust: Trust,
    /// The rows that are shown, in the order asked for.
    pub rows: Vec<Row>,
    /// How every vessel came out that the audit is about, shown or not.
    pub counts: Counts,
    /// How many vessels were read but lie outside the selection by gear,
    /// port or profile.
    pub outside: usize,
    /// The requirements most often missed.
    pub missed: Vec<Missed>,
    /// What lapses soon.
    pub lapses: Vec<Lapse>,
    /// Marks that stand on several vessels at sea together.
    pub marks: Vec<SameMark>,
    /// What makes the totals doubtful.
    pub doubts: Vec<Doubt>,
    /// Records that were laid over no vessel.
    pub left_out: Vec<LeftOut>,
}

impl Counts {
    /// Counts one row.
    pub fn add(&mut self, row: &Row) {
        match row {
            Row::Refused(_) => self.refused += 1,
            Row::Vessel(judged) => match judged.check.verdict {
                Verdict::Ready => {
                    self.ready += 1;
                    let practice = judged.check.standing() == Standing::GoodPractice;
                    self.ready_by_practice += usize::from(practice);
                }
                Verdict::CannotTell => self.cannot_tell += 1,
                Verdict::NotReady => self.not_ready += 1,
            },
        }
    }

    /// Adds the other's.
    pub fn sum(&mut self, other: &Self) {
        self.ready += other.ready;
        self.ready_by_practice += other.ready_by_practice;
        self.not_ready += other.not_ready;
        self.cannot_tell += other.cannot_tell;
        self.refused += other.refused;
    }

    /// Of all rows.
    pub fn of(rows: &[Row]) -> Self {
        let mut counts = Self::default();
        rows.iter().for_each(|row| counts.add(row));
        counts
    }

    /// How many vessels were judged.
    pub fn vessels(&self) -> usize {
        self.ready + self.not_ready + self.cannot_tell
    }
}

impl Audit {
    /// The vessels that were judged.
    pub fn judged(&self) -> impl Iterator<Item = &Judged> {
        self.rows.iter().filter_map(|row| match row {
            Row::Vessel(judged) => Some(&**judged),
            Row::Refused(_) => None,
        })
    }

    /// The files that were refused.
    pub fn refused(&self) -> impl Iterator<Item = &Refusal> {
        self.rows.iter().filter_map(|row| match row {
            Row::Refused(refusal) => Some(refusal),
            Row::Vessel(_) => None,
        })
    }

    /// The worst verdict of all vessels; can't tell where there is none.
    pub fn verdict(&self) -> Verdict {
        let counts = &self.counts;
        match (counts.not_ready, counts.cannot_tell, counts.ready) {
            (0, 0, 0) => Verdict::CannotTell,
            (0, 0, _) => Verdict::Ready,
            (0, _, _) => Verdict::CannotTell,
            _ => Verdict::NotReady,
        }
    }

    /// Adds up the rows: those outside the selection by gear, port or profile
    /// are dropped, the rest is counted; then what the selection does not
    /// show is dropped too, and the rows are sorted.
    pub fn new(
        date: Day,
        trust: Trust,
        mut rows: Vec<Row>,
        vocabulary: &Vocabulary,
        selection: &Selection,
        order: Order,
    ) -> Self {
        let read = rows.len();
        rows.retain(|row| match row {
            Row::Vessel(judged) => selection.concerns(&judged.check),
            Row::Refused(_) => true,
        });
        let outside = read - rows.len();
        let counts = Counts::of(&rows);
        let (missed, lapses) = (most_missed(&rows), lapses(&rows, vocabulary, date));
        let (marks, doubts) = (same_marks(&rows, vocabulary), doubts(&rows, date));
        rows.retain(|row| match row {
            Row::Vessel(judged) => selection.shows(&judged.check),
            Row::Refused(_) => true,
        });
        order.sort(&mut rows);
        Self {
            date,
            trust,
            rows,
            counts,
            outside,
            missed,
            lapses,
            marks,
            doubts,
            left_out: Vec::new(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_count_is_added() {
        let one =
            Counts { ready: 1, ready_by_practice: 2, not_ready: 3, cannot_tell: 4, refused: 5 };
        let mut both = one;
        both.sum(&Counts { refused: 1, ..one });
        let wanted =
            Counts { ready: 2, ready_by_practice: 4, not_ready: 6, cannot_tell: 8, refused: 6 };
        assert_eq!(both, wanted);
    }
}
