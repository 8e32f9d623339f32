//! One profile over one vessel for one trip: every freeboard of the vessel,
//! every day of the trip, the worst of it.

use super::bench::{Bench, Tally};
use super::scene::Missing;
use super::select::Course;
use super::{Depth, Request, clash, explain, until, upto, way};
use crate::measure::{Day, Length};
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
    request: &Request<'_>,
    vessel: &Vessel,
    course: &Course<'_>,
    asked: Asked,
) -> Judgement {
    let bench =
        Bench { vocabulary: request.vocabulary, vessel, course, departure: asked.departure };
    let profile = Arc::clone(&course.profile);
    if !profile.encoded {
        return not_encoded(course);
    }
    let tallies = bench.days(&profile, course.days).into_iter().map(|day| bench.on(day, &profile));
    let tally = worst_of_days(tallies.collect())
        .unwrap_or(Tally { findings: Vec::new(), verdict: Verdict::CannotTell });
    let findings = findings(&bench, &profile, &tally);
    let inverses = match request.depth {
        Depth::Whole => Some(inverses(&bench, &profile, &tally)),
        Depth::Findings => None,
    };
    Judgement {
        why: course.why.clone(),
        days: course.days,
        verdict: tally.verdict,
        findings,
        ready_until: until::ready_until(&bench),
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
            finding.reasons.insert(0, Because { tool: None, reason });
        }
        findings.push(finding);
    }
    findings
}
