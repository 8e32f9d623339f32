//! The outcome of every requirement in one scene: strict pass, generous
//! pass, and what they agree on.

use super::assign;
use super::pose::{self, Pass, View};
use super::scene::{self, Scene};
use super::seats::{Pose, Solution, Worth};
use crate::measure::Answer;
use crate::model::finding::{Outcome, Verdict};
use crate::model::profile::Level;

/// What one scene says.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Evaluation {
    /// By requirement; `None` where it does not bind.
    pub(super) outcomes: Vec<Option<Outcome>>,
    pub(super) verdict: Verdict,
}

/// One scene with both passes worked out.
pub(super) struct Worked<'a> {
    pub(super) views: Vec<View<'a>>,
    pub(super) strict: Solution,
    pub(super) generous: Solution,
    pub(super) evaluation: Evaluation,
}

/// The outcomes and the verdict in one scene.
pub(super) fn evaluate(scene: &Scene<'_>) -> Evaluation {
    work(scene).evaluation
}

/// The same with everything that it rests on.
pub(super) fn work<'a>(scene: &Scene<'a>) -> Worked<'a> {
    let views = pose::views(scene);
    let strict_pose = pose::pose(&views, scene, Pass::Strict);
    let strict = assign::assign(&strict_pose);
    // Where the strict pass meets everything, or nothing is open, the generous
    // one adds nothing.
    let generous = if all_met(&views, &strict_pose, &strict) {
        strict.clone()
    } else {
        let pose = pose::pose(&views, scene, Pass::Generous);
        if pose == strict_pose { strict.clone() } else { assign::assign(&pose) }
    };
    let outcomes: Vec<_> = views
        .iter()
        .enumerate()
        .map(|(index, view)| outcome(index, view, &strict, &generous))
        .collect();
    let verdict = verdict(&views, &strict, &generous);
    Worked { views, strict, generous, evaluation: Evaluation { outcomes, verdict } }
}

fn all_met(views: &[View<'_>], pose: &Pose, solution: &Solution) -> bool {
    let mut seats = pose.seats.iter().zip(&solution.uses);
    seats.all(|(seat, uses)| seat.worth == Worth::LeftOut || uses.is_some())
        && views.iter().all(|view| view.binds.is_ok())
}

fn outcome(
    index: usize,
    view: &View<'_>,
    strict: &Solution,
    generous: &Solution,
) -> Option<Outcome> {
    if let Some(own) = view.own {
        return pose::outcome_of(own, &view.binds);
    }
    let met = |solution: &Solution| solution.uses[index].is_some();
    match scene::answer(&view.binds) {
        Answer::No => None,
        // Where it may not bind, nothing can be said but that it is met.
        Answer::Unknown if met(strict) => Some(Outcome::Met),
        Answer::Unknown => Some(Outcome::CannotTell),
        Answer::Yes => Some(match (met(strict), met(generous)) {
            (true, true) => Outcome::Met,
            (false, false) if !generous.stopped => Outcome::NotMet,
            _ => Outcome::CannotTell,
        }),
    }
}

/// Ready if the strict pass meets every required finding, not ready if the
/// generous pass cannot.
fn verdict(views: &[View<'_>], strict: &Solution, generous: &Solution) -> Verdict {
    let mut worst = Verdict::Ready;
    for (index, view) in views.iter().enumerate() {
        if view.requirement.level != Level::Required || view.binds == Ok(false) {
            continue;
        }
        let binding = view.binds == Ok(true);
        let (sure, possible) = match view.own {
            Some(answer) => (answer == Answer::Yes, answer != Answer::No),
            None => {
                (strict.uses[index].is_some(), generous.uses[index].is_some() || generous.stopped)
            }
        };
        if binding && !possible {
            return Verdict::NotReady;
        }
        if !sure {
            worst = Verdict::CannotTell;
        }
    }
    worst
}
