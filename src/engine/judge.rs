//! One profile over one vessel for one trip: every freeboard of the vessel,
//! every day of the trip, the worst of it.

use super::evaluate::{self, Evaluation};
use super::scene::{Missing, Scene};
use super::select::{Course, Governing};
use super::{clash, edges, explain, until, upto, way};
use crate::measure::{Day, DaySpan, Length};
use crate::model::check::{Judgement, Why};
use crate::model::finding::{Asked, Finding, GoodUpTo, Outcome, ReadyUntil, Verdict, WayToReady};
use crate::model::profile::Profile;
use crate::model::reason::{Reason, VesselFact};
use crate::model::vessel::Vessel;
use crate::model::vocabulary::Vocabulary;
use std::sync::Arc;

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
                match reading.error.as_ref().and_then(|error| error.length()) {
                    // Within its error a reading is two that may differ.
                    Some(error) => {
                        ranges.push((low.less(error), high.less(error)));
                        ranges.push((low.plus(error), high.plus(error)));
                    }
                    None => ranges.push((low, high)),
                }
            }
            // Two readings that say the same dispute nothing.
            ranges.sort_unstable();
            ranges.dedup();
            waters.push(ranges);
        }
        Ok(waters)
    }

    /// The verdict and the outcomes over all freeboards of the vessel on one
    /// day.
    pub(super) fn on(&self, day: Day, profile: &Profile) -> Tally {
        let scene = self.scene(profile, Err(Missing::NotMeasured), day);
        match self.waters(profile) {
            Err(missing) => tally_of(&Scene { freeboard: Err(missing), ..scene }),
            Ok(waters) => {
                let edges = edges::freeboards(&scene);
                let stations = waters.iter().map(|readings| station(readings, &edges, &scene));
                stations.reduce(worse).unwrap_or_else(|| tally_of(&scene))
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
        let scene = self.scene(profile, Err(Missing::NotMeasured), first);
        let later = edges::days(&scene, &[profile], first).into_iter().filter(|day| *day <= last);
        std::iter::once(first).chain(later).collect()
    }
}

/// The tally of a single scene.
fn tally_of(scene: &Scene<'_>) -> Tally {
    let Evaluation { outcomes, verdict } = evaluate::evaluate(scene);
    let at = |outcome| At { outcome, freeboard: scene.freeboard, day: scene.day, disputed: false };
    Tally { findings: outcomes.into_iter().map(|o| o.map(at)).collect(), verdict }
}

/// One station: the readings must agree, or nobody can tell.
fn station(readings: &[(Length, Length)], edges: &[Length], scene: &Scene<'_>) -> Tally {
    readings
        .iter()
        .map(|(low, high)| range(*low, *high, edges, scene))
        .reduce(agreeing)
        .unwrap_or_else(|| tally_of(scene))
}

/// One range of freeboards: the worst over every piece of it, shown at the
/// freeboard where it is worst.
fn range(low: Length, high: Length, edges: &[Length], scene: &Scene<'_>) -> Tally {
    let later = edges.iter().copied().filter(|edge| *edge > low && *edge <= high);
    let starts: Vec<_> = std::iter::once(low).chain(later).collect();
    let pieces: Vec<_> = starts
        .iter()
        .enumerate()
        .map(|(index, start)| {
            let end = starts.get(index + 1).map_or(high, |next| next.just_below());
            (*start, end, tally_of(&Scene { freeboard: Ok(*start), ..*scene }))
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
        .filter_map(|(start, end, tally)| tally.findings[index].map(|at| (*start, *end, at)))
        .collect();
    let worst = binding.iter().map(|(_, _, at)| at.outcome).max()?;
    let (_, end, last) = binding.last()?;
    if last.outcome == worst {
        return Some(At { freeboard: Ok(*end), ..*last });
    }
    let (start, _, first) = binding.iter().find(|(_, _, at)| at.outcome == worst)?;
    Some(At { freeboard: Ok(*start), ..*first })
}

/// The worse of the two for every finding; of equals the later one.
fn worse(a: Tally, b: Tally) -> Tally {
    let findings = a
        .findings
        .into_iter()
        .zip(b.findings)
        .map(|pair| match pair {
            (Some(a), Some(b)) => Some(if b.outcome >= a.outcome { b } else { a }),
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
            (Some(a), Some(b)) if a.outcome == b.outcome => Some(b),
            (Some(a), Some(b)) => {
                let worst = if b.outcome >= a.outcome { b } else { a };
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

/// Over several days: the worst, shown on the first day that is as bad.
fn worst_of_days(tallies: Vec<Tally>) -> Option<Tally> {
    tallies.into_iter().reduce(|first, later| {
        let findings = first
            .findings
            .into_iter()
            .zip(later.findings)
            .map(|pair| match pair {
                (Some(a), Some(b)) => Some(if b.outcome > a.outcome { b } else { a }),
                (a, b) => a.or(b),
            })
            .collect();
        Tally { findings, verdict: first.verdict.max(later.verdict) }
    })
}

/// Judges the vessel under one course.
pub(super) fn judge(
    vocabulary: &Vocabulary,
    vessel: &Vessel,
    course: &Course<'_>,
    asked: Asked,
) -> Judgement {
    let bench = Bench { vocabulary, vessel, course, departure: asked.departure };
    let profile = Arc::clone(&course.profile);
    if !profile.encoded {
        return not_encoded(course);
    }
    let tallies = bench.days(&profile, course.days).into_iter().map(|day| bench.on(day, &profile));
    let tally = worst_of_days(tallies.collect())
        .unwrap_or(Tally { findings: Vec::new(), verdict: Verdict::CannotTell });
    let findings = findings(&bench, &profile, &tally);
    let clashes = clash::clashes(&bench, &profile, &tally);
    let way = way::shortest(&bench, &profile, tally.verdict);
    let (good_up_to, stretches) = upto::good_up_to(&bench, &profile);
    Judgement {
        why: course.why.clone(),
        days: course.days,
        verdict: tally.verdict,
        findings,
        ready_until: until::ready_until(&bench),
        good_up_to,
        stretches,
        clashes,
        way,
        profile: Arc::clone(&profile),
    }
}

fn not_encoded(course: &Course<'_>) -> Judgement {
    Judgement {
        profile: Arc::clone(&course.profile),
        why: course.why.clone(),
        days: course.days,
        verdict: Verdict::CannotTell,
        findings: Vec::new(),
        ready_until: ReadyUntil::None,
        good_up_to: GoodUpTo::None,
        stretches: Vec::new(),
        clashes: Vec::new(),
        way: WayToReady::None,
    }
}

fn findings(bench: &Bench<'_>, profile: &Profile, tally: &Tally) -> Vec<Finding> {
    let mut worked: Vec<(Result<Length, Missing>, Day, explain::Explained<'_>)> = Vec::new();
    let mut findings = Vec::new();
    for (index, at) in tally.findings.iter().enumerate() {
        let Some(at) = at else { continue };
        let known = worked.iter().position(|(f, d, _)| *f == at.freeboard && *d == at.day);
        let position = known.unwrap_or_else(|| {
            let scene = bench.scene(profile, at.freeboard, at.day);
            worked.push((at.freeboard, at.day, explain::Explained::new(scene)));
            worked.len() - 1
        });
        let mut finding = worked[position].2.finding(index, at.outcome);
        if at.disputed {
            let reason = Reason::VesselFactUnknown { fact: VesselFact::FreeboardDisputed };
            finding.reasons.insert(0, crate::model::finding::Because { tool: None, reason });
        }
        findings.push(finding);
    }
    findings
}
