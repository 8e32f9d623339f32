//! The shortest way to ready: the fewest changes, and among equals those
//! that cost least trouble.

pub(crate) mod apply;
pub(crate) mod mend;
mod settle;
mod tools;

use crate::engine::evaluate::point::Point;
use crate::engine::judge::breakpoints::Subject;
use crate::engine::judge::ready_until;
use crate::engine::judge::verdict::Look;
use crate::engine::work::Work;
use crate::measure::Day;
use crate::model::finding::{Step, Target, Verdict, WayToReady};

/// The shortest way to ready for the vessel on all days of the edition.
pub(crate) fn shortest(subject: &Subject<'_>, verdict: Verdict, work: &Work) -> WayToReady {
    if verdict == Verdict::Ready {
        return WayToReady::Already;
    }
    let (settled, mut steps) = settle::settle(subject);
    let known = subject.points().first().copied();
    let point = Point { vessel: &settled, ..subject.point };
    let subject = Subject::new(point, subject.days.clone());
    let (profile, points) = (point.profile, subject.points());
    steps.extend(settle::for_people_and_gear(profile, &points));
    steps.extend(tools::for_tools(profile, &points, work));
    let makes_ready = |steps: &[Step]| {
        let vessel = apply::apply(&point, steps, &points);
        is_ready(Point { vessel: &vessel, ..point }, &subject.days, work)
    };
    if !makes_ready(&steps) {
        return WayToReady::None;
    }
    drop_needless(&mut steps, makes_ready);
    // A fact of the vessel that is settled one way might be shorter another.
    let settled_facts = steps.iter().any(|step| step.target == Target::Vessel);
    let of_tools = |step: &&Step| matches!(step.target, Target::Tool(_) | Target::Type(_));
    let changes = steps.iter().filter(of_tools).count();
    // No way for all the points is shorter than that for any of them.
    let least = |point| tools::least_changes(profile, std::slice::from_ref(point), work);
    let is_least = |point| least(point) == Some(changes);
    let fewest = !settled_facts && (points.is_empty() || points.iter().any(is_least));
    known.iter().for_each(|known| settle::demand_what_is_known(&mut steps, known));
    WayToReady::Steps { steps, fewest }
}

fn is_ready(point: Point<'_>, days: &[Day], work: &Work) -> bool {
    let mut look = Look::new(work);
    days.iter().all(|day| ready_until::on(point, *day, &mut look) == Verdict::Ready)
}

/// Of the steps that the rest can do without, the most that can be left out at
/// once, whatever their order; among as many the first ones. Needed where the best
/// assignment differs from one freeboard or day to another.
fn drop_needless(steps: &mut Vec<Step>, makes_ready: impl Fn(&[Step]) -> bool) {
    let without = |dropped: &[usize]| -> Vec<Step> {
        let kept = steps.iter().enumerate().filter(|(index, _)| !dropped.contains(index));
        kept.map(|(_, step)| step.clone()).collect()
    };
    let can_go = |dropped: &[usize]| makes_ready(&without(dropped));
    let of_tools = (0..steps.len()).filter(|index| steps[*index].target != Target::Vessel);
    let single: Vec<usize> = of_tools.filter(|index| can_go(&[*index])).collect();
    let mut most: Vec<Vec<usize>> = single.iter().map(|index| vec![*index]).collect();
    let mut tried = 0;
    while tried < MOST_TRIED {
        let one_more = most.iter().flat_map(|dropped| {
            let later = single.iter().filter(|next| Some(*next) > dropped.last());
            later.map(|next| [dropped.as_slice(), &[*next]].concat())
        });
        let tries = one_more.take(MOST_TRIED - tried).inspect(|_| tried += 1);
        let more: Vec<Vec<usize>> = tries.filter(|dropped| can_go(dropped)).collect();
        if more.is_empty() {
            break;
        }
        most = more;
    }
    let Some(mut dropped) = most.into_iter().next() else { return };
    for next in single {
        if !dropped.contains(&next) && can_go(&[dropped.as_slice(), &[next]].concat()) {
            dropped.push(next);
        }
    }
    *steps = without(&dropped);
}

/// So many sets of steps are tried; beyond, one step after another is left out.
const MOST_TRIED: usize = 200;
