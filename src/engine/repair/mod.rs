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
    let (tool_steps, most) = tools::for_tools(profile, &points, work);
    steps.extend(tool_steps);
    let makes_ready = |steps: &[Step]| {
        let vessel = apply::apply(&point, steps, &points);
        is_ready(Point { vessel: &vessel, ..point }, &subject.days, work)
    };
    if !makes_ready(&steps) {
        return WayToReady::None;
    }
    let before = steps.len();
    drop_needless(&mut steps, makes_ready);
    // A fact of the vessel that is settled one way might be shorter another.
    let settled_facts = steps.iter().any(|step| step.target == Target::Vessel);
    let of_point = |point| tools::for_tools(profile, std::slice::from_ref(point), work).1;
    let mut of_points = points.iter().map(of_point);
    // No way for all the points is shorter than that for any of them.
    let is_least = |least| least == most || steps.len() + most == before + least;
    let fewest = !settled_facts && (points.is_empty() || of_points.any(is_least));
    known.iter().for_each(|known| settle::demand_what_is_known(&mut steps, known));
    WayToReady::Steps { steps, fewest }
}

fn is_ready(point: Point<'_>, days: &[Day], work: &Work) -> bool {
    let mut look = Look::new(work);
    days.iter().all(|day| ready_until::on(point, *day, &mut look) == Verdict::Ready)
}

/// A step that the rest can do without is left out. Needed where the best
/// assignment differs from one freeboard or day to another.
fn drop_needless(steps: &mut Vec<Step>, makes_ready: impl Fn(&[Step]) -> bool) {
    let mut index = 0;
    while index < steps.len() {
        if steps[index].target == Target::Vessel {
            index += 1;
            continue;
        }
        let mut rest = steps.clone();
        rest.remove(index);
        if makes_ready(&rest) {
            *steps = rest;
        } else {
            index += 1;
        }
    }
}
