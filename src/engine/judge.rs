//! One profile over one vessel for one trip: every freeboard of the vessel,
//! every day of the trip, the worst of it.

use super::bench::{Bench, Tally};
use super::evaluate::Worked;
use super::explain::Explained;
use super::scene::Scene;
use super::select::Course;
use super::{Depth, Terms, clash, until, upto, way};
use crate::measure::Day;
use crate::model::check::{Inverses, Judgement};
use crate::model::finding::{Asked, Because, Finding, GoodUpTo, ReadyUntil, Verdict, WayToReady};
use crate::model::profile::Profile;
use crate::model::reason::{Reason, VesselFact};
use crate::model::vessel::Vessel;
use std::sync::Arc;

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
    terms: &Terms<'_>,
    vessel: &Vessel,
    course: &Course<'_>,
    asked: Asked,
) -> Judgement {
    let bench = Bench { vocabulary: terms.vocabulary, vessel, course, departure: asked.departure };
    let profile = Arc::clone(&course.profile);
    if !profile.encoded {
        return not_encoded(course);
    }
    let mut scenes: Vec<(Scene<'_>, Worked<'_>)> = Vec::new();
    let mut note = |scene, worked| scenes.push((scene, worked));
    let days = bench.days(&profile, course.days);
    let tallies: Vec<Tally> =
        days.iter().map(|day| bench.noted_on(*day, &profile, &mut note)).collect();
    let judged: Vec<(Day, Verdict)> =
        days.iter().zip(&tallies).map(|(day, tally)| (*day, tally.verdict)).collect();
    let tally = worst_of_days(tallies)
        .unwrap_or(Tally { findings: Vec::new(), verdict: Verdict::CannotTell });
    let findings = findings(&bench, &profile, &tally, course.days.until, scenes);
    let inverses = match terms.depth {
        Depth::Whole => Some(inverses(&bench, &profile, &tally)),
        Depth::Way => Some(way_alone(&bench, &profile, &tally)),
        Depth::Findings => None,
    };
    Judgement {
        why: course.why.clone(),
        days: course.days,
        verdict: tally.verdict,
        findings,
        ready_until: until::ready_until(&bench, &judged),
        inverses,
        profile: Arc::clone(&profile),
    }
}

fn inverses(bench: &Bench<'_>, profile: &Arc<Profile>, tally: &Tally) -> Inverses {
    let (good_up_to, stretches) = upto::good_up_to(bench, profile);
    Inverses {
        good_up_to,
        stretches,
        clashes: clash::clashes(bench, profile, tally),
        way: way::shortest(bench, profile, tally.verdict),
    }
}

/// Clashes and the shortest way, without the freeboards beyond the vessel's.
fn way_alone(bench: &Bench<'_>, profile: &Arc<Profile>, tally: &Tally) -> Inverses {
    Inverses {
        good_up_to: GoodUpTo::None,
        stretches: Vec::new(),
        clashes: clash::clashes(bench, profile, tally),
        way: way::shortest(bench, profile, tally.verdict),
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
        inverses: Some(Inverses {
            good_up_to: GoodUpTo::None,
            stretches: Vec::new(),
            clashes: Vec::new(),
            way: WayToReady::None,
        }),
    }
}

/// The findings, each explained in the scene where it is worst.
fn findings<'s>(
    bench: &Bench<'s>,
    profile: &'s Profile,
    tally: &Tally,
    through: Option<Day>,
    mut scenes: Vec<(Scene<'s>, Worked<'s>)>,
) -> Vec<Finding> {
    let mut explained: Vec<Explained<'s>> = Vec::new();
    let mut findings = Vec::with_capacity(tally.findings.len());
    for (index, at) in tally.findings.iter().enumerate() {
        let Some(at) = at else { continue };
        let is_there = |scene: &Scene<'_>| scene.freeboard == at.freeboard && scene.day == at.day;
        let known = explained.iter().position(|explained| is_there(explained.scene()));
        let position = known.unwrap_or_else(|| {
            let worked = scenes.iter().position(|(scene, _)| is_there(scene));
            explained.push(match worked {
                Some(worked) => Explained::of(scenes.swap_remove(worked)),
                None => Explained::new(bench.scene(profile, at.freeboard, at.day)),
            });
            explained.len() - 1
        });
        let mut finding = explained[position].finding(index, at.outcome, through.unwrap_or(at.day));
        if at.disputed {
            let reason = Reason::VesselFactUnknown { fact: VesselFact::FreeboardDisputed };
            finding.reasons.insert(0, Because { tool: None, reason });
        }
        findings.push(finding);
    }
    findings
}
