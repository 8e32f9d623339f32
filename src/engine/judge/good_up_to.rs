//! Good up to: how much freeboard the kit could stand, and what gives out
//! there.

use super::breakpoints::{self, Range, Subject};
use super::verdict::{self, Trip};
use crate::engine::completions::{self, Part};
use crate::engine::evaluate::point::Point;
use crate::engine::work::Work;
use crate::measure::{DaySpan, Length};
use crate::model::finding::{GoodUpTo, Outcome, Stretch, Verdict};
use crate::model::profile::Level;
use crate::model::vessel::{Freeboard, FreeboardReading, Station};

/// One piece of freeboards over which the answer is the same.
struct Piece {
    from: Length,
    /// The last freeboard; `None` for the last piece, which has no end.
    to: Option<Length>,
    verdict: Verdict,
    fails: Vec<usize>,
}

/// The answer, and every stretch from zero to twice the vessel's own
/// freeboard (to the last change if the vessel has none).
pub(crate) fn good_up_to(subject: &Subject<'_>, work: &Work) -> (GoodUpTo, Vec<Stretch>) {
    let pieces = pieces(subject, work);
    if work.ran_out() {
        return (GoodUpTo::None, Vec::new());
    }
    let ranges: Vec<Range> = subject.freeboards.iter().flatten().flatten().copied().collect();
    let own = ranges.iter().map(|(_, high)| *high).max();
    let answer = match own {
        Some(own) => from_own(&pieces, &ranges, own),
        None => from_zero(&pieces),
    };
    (answer, stretches(&pieces, own))
}

fn pieces(subject: &Subject<'_>, work: &Work) -> Vec<Piece> {
    let starts = breakpoints::freeboards(subject.point.profile, subject.point.vessel);
    let ends = starts.iter().skip(1).map(|next| Some(next.just_below())).chain([None]);
    let trips = verdict::at_each(subject, &starts, work);
    let pieces = trips.zip(starts.iter().zip(ends)).map(|(mut trip, (from, to))| {
        settle(subject, *from, &mut trip, work);
        let fails = |index: &usize| {
            let required = subject.point.profile.requirements[*index].level == Level::Required;
            required && trip.worst.outcomes[*index].is_some_and(|at| at.outcome != Outcome::Met)
        };
        let fails = (0..trip.worst.outcomes.len()).filter(fails).collect();
        Piece { from: *from, to, verdict: trip.worst.verdict, fails }
    });
    pieces.collect()
}

/// What holds of the vessel at that freeboard under every completion.
fn settle(subject: &Subject<'_>, freeboard: Length, trip: &mut Trip<'_>, work: &Work) {
    if !completions::is_open(trip) {
        return;
    }
    let mut vessel = subject.point.vessel.clone();
    vessel.freeboard = Freeboard {
        from: subject.point.profile.freeboard_from,
        stations: vec![Station::of(vec![FreeboardReading::exactly(freeboard)])],
        other: Vec::new(),
    };
    let point = Point { vessel: &vessel, ..subject.point };
    let (first, last) = (subject.days.first(), subject.days.last());
    let part = Part { point, days: DaySpan { from: first.copied(), until: last.copied() } };
    if let Some(settled) = completions::settle(&[part], &[trip], work) {
        settled.carry_into(0, trip);
    }
}

fn holds(piece: &Piece, freeboard: Length) -> bool {
    piece.from <= freeboard && piece.to.is_none_or(|to| freeboard <= to)
}

/// From the vessel's own freeboard upward, if it is ready over all of it;
/// else the greatest ready freeboard below the lowest at which it is not.
fn from_own(pieces: &[Piece], ranges: &[Range], own: Length) -> GoodUpTo {
    let covers = |piece: &Piece| {
        let meets =
            |(low, high): &Range| piece.from <= *high && piece.to.is_none_or(|to| *low <= to);
        ranges.iter().any(meets)
    };
    let ready = |piece: &Piece| piece.verdict == Verdict::Ready;
    let failing = pieces.iter().position(|piece| covers(piece) && !ready(piece));
    let Some(failing) = failing else {
        let top = pieces.iter().position(|piece| holds(piece, own));
        return match top.and_then(|top| end_of_ready(pieces, top)) {
            Some((length, gives_out)) => GoodUpTo::Freeboard { length, gives_out },
            None => GoodUpTo::NoLimit,
        };
    };
    let below = (0..failing).rev().find(|index| ready(&pieces[*index]));
    match below.and_then(|index| end_of_ready(pieces, index)) {
        Some((length, gives_out)) => GoodUpTo::OnlyBelow { length, gives_out },
        None => GoodUpTo::None,
    }
}

/// Without a freeboard of its own: the end of the stretch from zero.
fn from_zero(pieces: &[Piece]) -> GoodUpTo {
    if pieces.first().is_none_or(|piece| piece.verdict != Verdict::Ready) {
        return GoodUpTo::None;
    }
    match end_of_ready(pieces, 0) {
        Some((length, gives_out)) => GoodUpTo::Freeboard { length, gives_out },
        None => GoodUpTo::NoLimit,
    }
}

/// The end of the unbroken ready stretch that holds the piece, with what
/// fails just above; `None` if it has no end.
fn end_of_ready(pieces: &[Piece], at: usize) -> Option<(Length, Vec<usize>)> {
    let next = pieces[at..].iter().find(|piece| piece.verdict != Verdict::Ready)?;
    Some((next.from.just_below(), next.fails.clone()))
}

fn stretches(pieces: &[Piece], own: Option<Length>) -> Vec<Stretch> {
    let last = own.map(|own| own.plus(own));
    let mut stretches: Vec<Stretch> = Vec::new();
    for piece in pieces {
        if last.is_some_and(|last| piece.from > last) {
            break;
        }
        let end = match (piece.to, last) {
            (Some(to), Some(last)) => to.min(last),
            (Some(to), None) => to,
            (None, Some(last)) => last,
            (None, None) => piece.from,
        };
        match stretches.last_mut() {
            Some(before) if before.verdict == piece.verdict && before.fails == piece.fails => {
                before.to = end;
            }
            _ => stretches.push(Stretch {
                from: piece.from,
                to: end,
                verdict: piece.verdict,
                fails: piece.fails.clone(),
            }),
        }
    }
    stretches
}
