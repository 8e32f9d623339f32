//! The verdict of one vessel under one edition: the outcomes at its evaluation
//! points, the worst over its freeboards, what its readings agree on, the
//! worst of the days of the trip.

use super::breakpoints::{Range, Subject};
use super::evaluation::{Evaluation, evaluate};
use crate::engine::evaluate::point::{Missing, Point};
use crate::engine::evaluate::requirement::View;
use crate::engine::evaluate::{holders, notes};
use crate::engine::work::Work;
use crate::measure::{Answer, Day, Length};
use crate::model::finding::{Outcome, Verdict};
use crate::model::profile::{Level, Requirement};
use std::cmp::Ordering;

/// Where one requirement came out as it did.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct At {
    pub(crate) outcome: Outcome,
    pub(crate) freeboard: Result<Length, Missing>,
    pub(crate) day: Day,
    /// Readings of the freeboard differ on it.
    pub(crate) disputed: bool,
    /// Whether it is asked for certain.
    pub(crate) asked: bool,
    /// Whether completions were left out, so that it may be settled already.
    pub(crate) left_open: bool,
}

/// The outcomes over several points, by requirement, and the verdict.
#[derive(Debug, Clone)]
pub(crate) struct Combined {
    pub(crate) outcomes: Vec<Option<At>>,
    pub(crate) verdict: Verdict,
}

/// The whole trip.
pub(crate) struct Trip<'a> {
    /// The worst of it.
    pub(crate) worst: Combined,
    /// The verdict on each day that was looked at.
    pub(crate) verdicts: Vec<(Day, Verdict)>,
    /// Every point that was evaluated.
    pub(crate) evaluations: Vec<Evaluation<'a>>,
    /// Requirements that want the same tools at a point where not all are met.
    pub(crate) sharing: Vec<Vec<usize>>,
}

/// Looks at one point after another.
pub(crate) struct Look<'w, 'a> {
    pub(crate) work: &'w Work,
    /// What was evaluated.
    evaluations: Vec<Evaluation<'a>>,
}

/// Judges every day of the trip.
pub(crate) fn of_trip<'a>(subject: &Subject<'a>, work: &Work) -> Trip<'a> {
    let mut look = Look::new(work);
    let days = &subject.days;
    let by_day: Vec<Combined> = days.iter().map(|day| kept_on(subject, *day, &mut look)).collect();
    let verdicts = days.iter().zip(&by_day).map(|(day, of)| (*day, of.verdict)).collect();
    let worst = by_day.into_iter().reduce(worse_day).unwrap_or_else(nothing);
    Trip { worst, verdicts, sharing: look.sharing(), evaluations: look.evaluations }
}

/// Judges one day after others, on which mostly the same tools serve.
pub(crate) fn on_next<'a>(subject: &Subject<'a>, day: Day, look: &mut Look<'_, 'a>) -> Trip<'a> {
    let worst = kept_on(subject, day, look);
    let sharing = look.sharing();
    look.keep_last();
    Trip { verdicts: vec![(day, worst.verdict)], worst, evaluations: Vec::new(), sharing }
}

/// The trips at each of the freeboards, in place of the vessel's own; none
/// after the work ran out.
pub(crate) fn at_each<'s>(
    subject: &'s Subject<'s>,
    freeboards: &'s [Length],
    work: &'s Work,
) -> impl Iterator<Item = Trip<'s>> {
    // From one freeboard to the next the same tools mostly serve, each day.
    let looks = subject.days.iter().map(|day| (*day, Look::new(work)));
    let mut looks: Vec<_> = looks.collect();
    freeboards.iter().take_while(|_| !work.ran_out()).map(move |freeboard| {
        let mut sharing = Vec::new();
        let by_day = looks.iter_mut().map(|(day, look)| {
            let combined =
                look.at(&Point { freeboard: Ok(*freeboard), day: *day, ..subject.point });
            sharing.extend(look.sharing());
            look.keep_last();
            combined
        });
        let worst = by_day.reduce(worse_day).unwrap_or_else(nothing);
        Trip { worst, verdicts: Vec::new(), evaluations: Vec::new(), sharing }
    })
}

fn nothing() -> Combined {
    Combined { outcomes: Vec::new(), verdict: Verdict::CannotTell }
}

fn kept_on<'a>(subject: &Subject<'a>, day: Day, look: &mut Look<'_, 'a>) -> Combined {
    let point = Point { day, ..subject.point };
    let stations = match &subject.freeboards {
        Err(missing) => return look.at(&Point { freeboard: Err(*missing), ..point }),
        Ok(stations) => stations,
    };
    let mut over = |range: &Range| over_range(*range, &subject.between, &point, look);
    // The readings of one station must agree, or nobody can tell.
    let mut at_stations = Vec::with_capacity(stations.len());
    for readings in stations {
        let readings: Vec<Combined> = readings.iter().map(&mut over).collect();
        at_stations.extend(readings.into_iter().reduce(agreeing));
    }
    at_stations.into_iter().reduce(worse).unwrap_or_else(|| look.at(&point))
}

impl<'w, 'a> Look<'w, 'a> {
    /// Before the first point.
    pub(crate) fn new(work: &'w Work) -> Self {
        Self { work, evaluations: Vec::new() }
    }

    /// The outcomes at a single point. Where all that was met at the one before
    /// is met by the same tools, it is not evaluated anew.
    fn at(&mut self, point: &Point<'a>) -> Combined {
        if self.work.is_spent() && !self.evaluations.is_empty() {
            return not_looked_at(point);
        }
        let stands = self.evaluations.last().filter(|last| last.stands_at(point, self.work));
        if let Some(last) = stands {
            return outcomes(last, point);
        }
        let evaluation = evaluate(point, self.work);
        let combined = outcomes(&evaluation, point);
        self.evaluations.push(evaluation);
        combined
    }

    fn sharing(&self) -> Vec<Vec<usize>> {
        self.evaluations.iter().flat_map(|at| at.rivals.iter().chain(&at.known)).cloned().collect()
    }

    /// Lets go of all but the last.
    fn keep_last(&mut self) {
        let last = self.evaluations.len().saturating_sub(1);
        self.evaluations.drain(..last);
    }
}

/// What is known of a point without looking at any tool.
fn not_looked_at(point: &Point<'_>) -> Combined {
    let at = |requirement: &Requirement| {
        let (freeboard, day, binds) = (point.freeboard, point.day, point.binds(requirement));
        let own = holders::reasons(requirement, point).map(|own| notes::answer(&own));
        let outcome = match own {
            _ if binds == Ok(false) => return None,
            Some(Answer::Yes) => Outcome::Met,
            Some(Answer::No) if binds == Ok(true) => Outcome::NotMet,
            _ => Outcome::CannotTell,
        };
        let asked = binds == Ok(true);
        Some(At { outcome, freeboard, day, disputed: false, asked, left_open: false })
    };
    let outcomes: Vec<Option<At>> = point.profile.requirements.iter().map(at).collect();
    let not_met = outcomes.iter().zip(&point.profile.requirements).any(|(at, requirement)| {
        at.is_some_and(|at| at.outcome == Outcome::NotMet) && requirement.level == Level::Required
    });
    let verdict = if not_met { Verdict::NotReady } else { Verdict::CannotTell };
    Combined { outcomes, verdict }
}

/// The outcomes of the evaluation, which stands at that point.
fn outcomes(evaluation: &Evaluation<'_>, point: &Point<'_>) -> Combined {
    let at = |(outcome, view): (&Option<Outcome>, &View<'_>)| {
        let (freeboard, day, asked) = (point.freeboard, point.day, view.binds == Ok(true));
        let disputed = false;
        outcome.map(|outcome| At { outcome, freeboard, day, disputed, asked, left_open: false })
    };
    let outcomes = evaluation.outcomes.iter().zip(&evaluation.views).map(at).collect();
    Combined { outcomes, verdict: evaluation.verdict }
}

/// One range of freeboards: the worst over every piece of it, shown at the
/// freeboard where it is worst.
fn over_range<'a>(
    (low, high): Range,
    breakpoints: &[Length],
    point: &Point<'a>,
    look: &mut Look<'_, 'a>,
) -> Combined {
    let mut at = |length| look.at(&Point { freeboard: Ok(length), ..*point });
    if low == high {
        return at(low);
    }
    let later = breakpoints.iter().copied().filter(|length| *length > low && *length <= high);
    let starts: Vec<_> = std::iter::once(low).chain(later).collect();
    let ends = starts.iter().skip(1).map(|next| next.just_below()).chain([high]);
    let pieces: Vec<_> = starts.iter().zip(ends).map(|(start, end)| (end, at(*start))).collect();
    let count = point.profile.requirements.len();
    let outcomes = (0..count).map(|index| worst_piece(index, &pieces)).collect();
    let verdict = pieces.iter().map(|(_, piece)| piece.verdict).max();
    Combined { outcomes, verdict: verdict.unwrap_or(Verdict::CannotTell) }
}

/// Where the finding is worst: at the top of the last piece in which it
/// binds, if it is as bad there as anywhere (a least length grows with the
/// freeboard), else at the bottom of the first piece where it is. Each piece
/// goes by its end.
fn worst_piece(index: usize, pieces: &[(Length, Combined)]) -> Option<At> {
    let binding = || pieces.iter().filter_map(|(end, of)| Some((*end, of.outcomes[index]?)));
    let worst = binding().map(|(_, at)| at.outcome).max()?;
    let (end, last) = binding().next_back()?;
    let asked = binding().any(|(_, at)| at.asked);
    if last.outcome == worst {
        return Some(At { freeboard: Ok(end), asked, ..last });
    }
    let at = binding().map(|(_, at)| at).find(|at| at.outcome == worst)?;
    Some(At { asked, ..at })
}

impl Combined {
    /// Brings two together, requirement by requirement.
    fn with(
        self,
        other: Self,
        verdict: Verdict,
        each: impl Fn(Option<At>, Option<At>) -> Option<At>,
    ) -> Self {
        let pairs = self.outcomes.into_iter().zip(other.outcomes);
        Self { outcomes: pairs.map(|(a, b)| each(a, b)).collect(), verdict }
    }
}

/// The worse of the two; of two that are as bad the one at the higher
/// freeboard, where the least length is greatest.
fn worse_of(a: At, b: At) -> At {
    let worse = match a.outcome.cmp(&b.outcome) {
        Ordering::Greater => a,
        Ordering::Equal if a.freeboard.ok() > b.freeboard.ok() => a,
        Ordering::Equal | Ordering::Less => b,
    };
    At { asked: a.asked || b.asked, ..worse }
}

/// The worse of the two for every requirement.
fn worse(a: Combined, b: Combined) -> Combined {
    let verdict = a.verdict.max(b.verdict);
    a.with(b, verdict, |a, b| match (a, b) {
        (Some(a), Some(b)) => Some(worse_of(a, b)),
        (a, b) => a.or(b),
    })
}

/// What two readings of one freeboard agree on.
fn agreeing(a: Combined, b: Combined) -> Combined {
    let verdict = if a.verdict == b.verdict { a.verdict } else { Verdict::CannotTell };
    let disputed = |at| At { outcome: Outcome::CannotTell, disputed: true, ..at };
    a.with(b, verdict, |a, b| match (a, b) {
        (Some(a), Some(b)) => {
            let at = At { asked: a.asked && b.asked, ..worse_of(a, b) };
            Some(if a.outcome == b.outcome { at } else { disputed(at) })
        }
        // It binds at one reading only; if it is met there, no matter.
        (Some(at), None) | (None, Some(at)) => {
            let at = At { asked: false, ..at };
            Some(if at.outcome == Outcome::Met { at } else { disputed(at) })
        }
        (None, None) => None,
    })
}

/// Over several days: the worst, shown on the first day that is as bad.
fn worse_day(first: Combined, later: Combined) -> Combined {
    let verdict = first.verdict.max(later.verdict);
    first.with(later, verdict, |a, b| match (a, b) {
        (Some(a), Some(b)) => {
            let worse = if b.outcome > a.outcome { b } else { a };
            Some(At { asked: a.asked || b.asked, ..worse })
        }
        (a, b) => a.or(b),
    })
}
