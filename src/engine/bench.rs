//! One vessel under one course: its freeboards and days cut into scenes, and
//! the outcomes over many scenes brought together.

use super::edges;
use super::evaluate::{self, Evaluation, Worked};
use super::scene::{Missing, Scene};
use super::select::{Course, Governing};
use crate::measure::{Day, DaySpan, Length};
use crate::model::check::Why;
use crate::model::finding::{Outcome, Verdict};
use crate::model::profile::Profile;
use crate::model::vessel::Vessel;
use crate::model::vocabulary::Vocabulary;
use std::cmp::Ordering;

/// What stays the same while one vessel is judged under one course.
#[derive(Clone, Copy)]
pub(super) struct Bench<'a> {
    pub(super) vocabulary: &'a Vocabulary,
    pub(super) vessel: &'a Vessel,
    pub(super) course: &'a Course<'a>,
    pub(super) departure: Day,
}

/// Where one requirement came out as it did.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct At {
    pub(super) outcome: Outcome,
    pub(super) freeboard: Result<Length, Missing>,
    pub(super) day: Day,
    /// Readings of the freeboard differ on it.
    pub(super) disputed: bool,
}

/// The outcomes over several scenes.
#[derive(Debug, Clone)]
pub(super) struct Tally {
    pub(super) findings: Vec<Option<At>>,
    pub(super) verdict: Verdict,
}

impl<'a> Bench<'a> {
    pub(super) fn scene<'s>(
        &self,
        profile: &'s Profile,
        freeboard: Result<Length, Missing>,
        day: Day,
    ) -> Scene<'s>
    where
        'a: 's,
    {
        Scene {
            vocabulary: self.vocabulary,
            profile,
            vessel: self.vessel,
            freeboard,
            day,
            departure: self.departure,
            asked: matches!(self.course.why, Why::Asked | Why::Fallback),
            missed: false,
        }
    }

    /// The freeboards of the vessel, station by station, reading by reading,
    /// each from low to high; or the fact that is missing.
    pub(super) fn waters(&self, profile: &Profile) -> Result<Vec<Vec<(Length, Length)>>, Missing> {
        let freeboard = &self.vessel.freeboard;
        let stations = &freeboard.stations;
        if stations.is_empty() || stations.iter().any(|station| station.readings.is_empty()) {
            return Err(Missing::NotMeasured);
        }
        if freeboard.from != profile.freeboard_from {
            return Err(Missing::OtherPlace);
        }
        let mut waters = Vec::new();
        for station in stations {
            let mut ranges = Vec::new();
            for reading in &station.readings {
                let (low, high) = (reading.lowest(), reading.highest());
                ranges.push((low, high));
                if let Some(error) = reading.error.as_ref().and_then(|error| error.length()) {
                    ranges.extend(self.within(low, high, error, profile));
                }
            }
            // Two readings that say the same dispute nothing.
            ranges.sort_unstable();
            ranges.dedup();
            waters.push(ranges);
        }
        Ok(waters)
    }

    /// What a reading may mean within the tape's error: rivals that may
    /// differ, at both ends of the error and at every edge between.
    fn within(
        &self,
        low: Length,
        high: Length,
        error: Length,
        profile: &Profile,
    ) -> Vec<(Length, Length)> {
        let (least, most) = (low.less(error), high.plus(error));
        let mut rivals = vec![(least, high.less(error).max(least)), (low.plus(error), most)];
        if low == high {
            let scene = self.scene(profile, Err(Missing::NotMeasured), self.departure);
            let edges = edges::freeboards(&scene);
            let inside = edges.into_iter().filter(|edge| (least..=most).contains(edge));
            rivals.extend(inside.map(|edge| (edge, edge)));
        }
        rivals
    }

    /// The verdict and the outcomes over all freeboards of the vessel on one
    /// day.
    pub(super) fn on(&self, day: Day, profile: &Profile) -> Tally {
        self.noted_on(day, profile, &mut |_, _| ())
    }

    /// The same; every scene is shown to `note` once it is worked out.
    pub(super) fn noted_on<'s>(
        &self,
        day: Day,
        profile: &'s Profile,
        note: &mut Note<'_, 's>,
    ) -> Tally
    where
        'a: 's,
    {
        let scene = self.scene(profile, Err(Missing::NotMeasured), day);
        match self.waters(profile) {
            Err(missing) => tally_of(&Scene { freeboard: Err(missing), ..scene }, note),
            Ok(waters) => {
                // At a single freeboard nothing lies between.
                let wide = waters.iter().flatten().any(|(low, high)| low < high);
                let edges = if wide { edges::freeboards(&scene) } else { Vec::new() };
                let tallies: Vec<Tally> =
                    waters.iter().map(|readings| station(readings, &edges, &scene, note)).collect();
                tallies.into_iter().reduce(worse).unwrap_or_else(|| tally_of(&scene, note))
            }
        }
    }

    /// The verdict on one day under whatever edition governs then.
    pub(super) fn verdict_on(&self, day: Day) -> Verdict {
        match self.course.governing(day) {
            Governing::NotKnown => Verdict::CannotTell,
            Governing::Edition(profile) => self.on(day, profile).verdict,
        }
    }

    /// The days to look at: the first, and every edge up to the last.
    pub(super) fn days(&self, profile: &Profile, span: DaySpan) -> Vec<Day> {
        let first = span.from.unwrap_or(self.departure);
        let last = span.until.unwrap_or(first);
        let later =
            edges::days(self.vessel, &[profile], first).into_iter().filter(|day| *day <= last);
        std::iter::once(first).chain(later).collect()
    }
}

/// Is shown a scene that was worked out.
pub(super) type Note<'n, 's> = dyn FnMut(Scene<'s>, Worked<'s>) + 'n;

/// The tally of a single scene.
fn tally_of<'s>(scene: &Scene<'s>, note: &mut Note<'_, 's>) -> Tally {
    let worked = evaluate::work(scene);
    let at = |outcome| At { outcome, freeboard: scene.freeboard, day: scene.day, disputed: false };
    let Evaluation { outcomes, verdict } = &worked.evaluation;
    let tally = Tally { findings: outcomes.iter().map(|o| o.map(at)).collect(), verdict: *verdict };
    note(*scene, worked);
    tally
}

/// One station: the readings must agree, or nobody can tell.
fn station<'s>(
    readings: &[(Length, Length)],
    edges: &[Length],
    scene: &Scene<'s>,
    note: &mut Note<'_, 's>,
) -> Tally {
    let tallies: Vec<Tally> =
        readings.iter().map(|(low, high)| range(*low, *high, edges, scene, note)).collect();
    tallies.into_iter().reduce(agreeing).unwrap_or_else(|| tally_of(scene, note))
}

/// One range of freeboards: the worst over every piece of it, shown at the
/// freeboard where it is worst.
fn range<'s>(
    low: Length,
    high: Length,
    edges: &[Length],
    scene: &Scene<'s>,
    note: &mut Note<'_, 's>,
) -> Tally {
    if low == high {
        return tally_of(&Scene { freeboard: Ok(low), ..*scene }, note);
    }
    let later = edges.iter().copied().filter(|edge| *edge > low && *edge <= high);
    let starts: Vec<_> = std::iter::once(low).chain(later).collect();
    let pieces: Vec<_> = starts
        .iter()
        .enumerate()
        .map(|(index, start)| {
            let end = starts.get(index + 1).map_or(high, |next| next.just_below());
            (*start, end, tally_of(&Scene { freeboard: Ok(*start), ..*scene }, note))
        })
        .collect();
    let count = scene.profile.requirements.len();
    let findings = (0..count).map(|index| worst_piece(index, &pieces)).collect();
    let verdict = pieces.iter().map(|(_, _, tally)| tally.verdict).max();
    Tally { findings, verdict: verdict.unwrap_or(Verdict::CannotTell) }
}

/// Where the finding is worst: at the top of the last piece in which it
/// binds, if it is as bad there as anywhere (a least length grows with the
/// freeboard), else at the bottom of the first piece where it is.
fn worst_piece(index: usize, pieces: &[(Length, Length, Tally)]) -> Option<At> {
    let binding: Vec<_> = pieces
        .iter()
        .filter_map(|(_, end, tally)| tally.findings[index].map(|at| (*end, at)))
        .collect();
    let worst = binding.iter().map(|(_, at)| at.outcome).max()?;
    let (end, last) = binding.last()?;
    if last.outcome == worst {
        return Some(At { freeboard: Ok(*end), ..*last });
    }
    binding.iter().map(|(_, at)| *at).find(|at| at.outcome == worst)
}

/// The worse of the two; of two that are as bad the one at the higher
/// freeboard, where the least length is greatest.
fn worse_of(a: At, b: At) -> At {
    match a.outcome.cmp(&b.outcome) {
        Ordering::Greater => a,
        Ordering::Equal if a.freeboard.ok() > b.freeboard.ok() => a,
        Ordering::Equal | Ordering::Less => b,
    }
}

/// The worse of the two for every finding.
fn worse(a: Tally, b: Tally) -> Tally {
    let findings = a
        .findings
        .into_iter()
        .zip(b.findings)
        .map(|pair| match pair {
            (Some(a), Some(b)) => Some(worse_of(a, b)),
            (a, b) => a.or(b),
        })
        .collect();
    Tally { findings, verdict: a.verdict.max(b.verdict) }
}

/// What two readings of one freeboard agree on.
fn agreeing(a: Tally, b: Tally) -> Tally {
    let verdict = if a.verdict == b.verdict { a.verdict } else { Verdict::CannotTell };
    let findings = a
        .findings
        .into_iter()
        .zip(b.findings)
        .map(|pair| match pair {
            (Some(a), Some(b)) if a.outcome == b.outcome => Some(worse_of(a, b)),
            (Some(a), Some(b)) => {
                let worst = worse_of(a, b);
                Some(At { outcome: Outcome::CannotTell, disputed: true, ..worst })
            }
            // It binds at one reading only; if it is met there, no matter.
            (Some(at), None) | (None, Some(at)) if at.outcome == Outcome::Met => Some(at),
            (Some(at), None) | (None, Some(at)) => {
                Some(At { outcome: Outcome::CannotTell, disputed: true, ..at })
            }
            (None, None) => None,
        })
        .collect();
    Tally { findings, verdict }
}

/// Every scene that the vessel has to stand: both ends of each piece of its
/// freeboards, on each day on which something changes.
pub(super) fn scenes<'s>(bench: &Bench<'s>, profile: &'s Profile, days: &[Day]) -> Vec<Scene<'s>> {
    let Ok(waters) = bench.waters(profile) else {
        return Vec::new();
    };
    // A least length is worst at the top of a stretch over which the same
    // requirements bind, a greatest length at the bottom.
    let edges = edges::thresholds(profile);
    let mut freeboards: Vec<Length> = Vec::new();
    for (low, high) in waters.into_iter().flatten() {
        freeboards.extend([low, high]);
        for edge in edges.iter().filter(|edge| **edge > low && **edge <= high) {
            freeboards.extend([edge.just_below(), *edge]);
        }
    }
    freeboards.sort_unstable();
    freeboards.dedup();
    let at = |day: &Day| {
        let day = *day;
        freeboards.iter().map(move |f| bench.scene(profile, Ok(*f), day)).collect::<Vec<_>>()
    };
    days.iter().flat_map(at).collect()
}
