//! The outcome of every requirement at one point: a strict and a generous
//! assignment, and what they agree on.

use crate::engine::assign::assign;
use crate::engine::assign::candidates::{self, Pass};
use crate::engine::assign::slots::{Assignment, Problem, Worth};
use crate::engine::evaluate::condition::answer;
use crate::engine::evaluate::point::Point;
use crate::engine::evaluate::requirement::{View, views};
use crate::measure::Answer;
use crate::model::finding::{Outcome, Verdict};
use crate::model::profile::Level;

/// What one point says, with everything that it rests on.
pub(crate) struct Evaluation<'a> {
    pub(crate) point: Point<'a>,
    pub(crate) views: Vec<View<'a>>,
    pub(crate) strict: Assignment,
    pub(crate) generous: Assignment,
    /// By requirement; `None` where it does not bind.
    pub(crate) outcomes: Vec<Option<Outcome>>,
    pub(crate) verdict: Verdict,
}

/// Evaluates one point.
pub(crate) fn evaluate<'a>(point: &Point<'a>) -> Evaluation<'a> {
    let views = views(point);
    let strict_problem = candidates::problem(&views, point, Pass::Strict);
    let strict = assign(&strict_problem);
    // Where the strict pass meets everything, or nothing is open, the generous
    // one adds nothing.
    let generous = if all_met(&views, &strict_problem, &strict) {
        strict.clone()
    } else {
        let problem = candidates::problem(&views, point, Pass::Generous);
        if problem == strict_problem { strict.clone() } else { assign(&problem) }
    };
    let each = views.iter().enumerate();
    let outcomes = each.map(|(index, view)| outcome(index, view, &strict, &generous)).collect();
    let verdict = verdict(&views, &strict, &generous);
    Evaluation { point: *point, views, strict, generous, outcomes, verdict }
}

fn all_met(views: &[View<'_>], problem: &Problem, assignment: &Assignment) -> bool {
    let mut demands = problem.demands.iter().zip(&assignment.uses);
    demands.all(|(demand, uses)| demand.worth == Worth::LeftOut || uses.is_some())
        && views.iter().all(|view| view.binds.is_ok())
}

fn outcome(
    index: usize,
    view: &View<'_>,
    strict: &Assignment,
    generous: &Assignment,
) -> Option<Outcome> {
    let by = |assignment: &Assignment| assignment.uses[index].is_some();
    let met = match (view.own, &view.binds) {
        (Some(own), _) => own,
        // Where it may not bind, nothing can be said but that it is met.
        (None, Err(_)) if by(strict) => Answer::Yes,
        (None, Err(_)) => Answer::Unknown,
        (None, Ok(_)) => match (by(strict), by(generous)) {
            (true, true) => Answer::Yes,
            (false, false) if !generous.stopped => Answer::No,
            _ => Answer::Unknown,
        },
    };
    match (answer(&view.binds), met) {
        (Answer::No, _) => None,
        (_, Answer::Yes) => Some(Outcome::Met),
        (Answer::Yes, Answer::No) => Some(Outcome::NotMet),
        _ => Some(Outcome::CannotTell),
    }
}

/// Ready if the strict pass meets every required finding, not ready if the
/// generous pass cannot.
fn verdict(views: &[View<'_>], strict: &Assignment, generous: &Assignment) -> Verdict {
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
