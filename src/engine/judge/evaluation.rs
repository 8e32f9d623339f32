//! The outcome of every requirement at one point: a strict and a generous
//! assignment, and what they agree on.

use crate::engine::assign::candidates::{self, Pass};
use crate::engine::assign::contest::{Contest, contests};
use crate::engine::assign::groups::Groups;
use crate::engine::assign::search::Stopped;
use crate::engine::assign::slots::{Assignment, Problem, Worth};
use crate::engine::assign::{assign, can_be_met, ties};
use crate::engine::evaluate::condition::answer;
use crate::engine::evaluate::point::Point;
use crate::engine::evaluate::requirement::{View, views};
use crate::engine::work::Work;
use crate::measure::Answer;
use crate::model::finding::{Outcome, Verdict};
use crate::model::profile::Level;

/// How many steps of an assignment one fit of a tool takes the time of, with its
/// share of all that is done at a point. Measured on kits of 200 tools.
const STEPS_OF_FIT: u64 = 12;

/// What one point says, with everything that it rests on.
pub(crate) struct Evaluation<'a> {
    pub(crate) point: Point<'a>,
    pub(crate) views: Vec<View<'a>>,
    /// What the strict pass was asked.
    pub(crate) problem: Problem,
    pub(crate) strict: Assignment,
    pub(crate) generous: Assignment,
    /// Sets of requirements that compete for too few tools as equals.
    pub(crate) ties: Vec<Vec<usize>>,
    /// Where facts are missing: requirements that want the same tools.
    pub(crate) rivals: Vec<Vec<usize>>,
    /// The others that want the same tools, where not all are met.
    pub(crate) known: Vec<Vec<usize>>,
    /// By requirement; `None` where it does not bind.
    pub(crate) outcomes: Vec<Option<Outcome>>,
    pub(crate) verdict: Verdict,
}

impl Evaluation<'_> {
    /// Whether the requirement is not asked, or may be met.
    pub(crate) fn may_meet(&self, requirement: usize) -> bool {
        let view = &self.views[requirement];
        let own = view.own.map(|own| own != Answer::No);
        view.binds != Ok(true) || own.unwrap_or(self.generous.uses[requirement].is_some())
    }

    /// Whether a search behind it was stopped before it was complete.
    pub(crate) fn is_stopped(&self) -> bool {
        self.strict.stopped || self.generous.stopped
    }

    /// Whether everything is met for certain here, and is by the same tools at
    /// that point, so that every outcome is the same.
    pub(crate) fn stands_at(&self, point: &Point<'_>, work: &Work) -> bool {
        let (here, there) = (&self.point, point);
        let same =
            std::ptr::eq(here.profile, there.profile) && std::ptr::eq(here.vessel, there.vessel);
        let met = self.outcomes.iter().flatten().all(|outcome| *outcome == Outcome::Met);
        let looked_at = self.views.iter().zip(&self.strict.uses).enumerate();
        let mut looked_at = looked_at.filter(|(index, _)| point.looks_at(*index));
        same && met
            && looked_at.all(|(_, (view, uses))| {
                let fits = uses.as_ref().map_or(1, Vec::len);
                work.take(STEPS_OF_FIT * fits as u64);
                view.stands_at(point)
                    && uses.iter().flatten().all(|used| candidates::serves(used, view, point))
            })
    }
}

/// Evaluates one point.
pub(crate) fn evaluate<'a>(point: &Point<'a>, work: &Work) -> Evaluation<'a> {
    let views = views(point);
    let fits = views.iter().map(|view| view.all_fits().len());
    work.take(STEPS_OF_FIT * fits.sum::<usize>() as u64);
    let strict_problem = candidates::problem(&views, point, Pass::Strict);
    let strict = assign(&strict_problem, work);
    let mut passes = Passes {
        strict: &strict,
        generous: strict.clone(),
        known: Vec::new(),
        ties: Ok(Vec::new()),
        open: None,
    };
    if !all_met(&views, &strict_problem, &strict) {
        // Where the strict pass meets everything, or nothing is open, the
        // generous one adds nothing.
        let problem = candidates::problem(&views, point, Pass::Generous);
        let is_known = |demand: &usize| problem.demands[*demand] == strict_problem.demands[*demand];
        let groups = Groups::of(&problem);
        let (known, rivals) = groups.together().partition(|group| group.iter().all(is_known));
        passes.known = known;
        passes.ties = ties(&problem, &strict, &passes.known, work);
        if problem != strict_problem {
            passes.generous = assign(&problem, work);
            let contests = contests(&strict_problem, &problem);
            passes.open = Some(Open { views: &views, problem, contests, rivals, work });
        }
    }
    let each = views.iter().enumerate();
    let outcomes = each.map(|(index, view)| passes.outcome(index, view)).collect();
    let verdict = verdict(&views, &strict, &passes.generous);
    let ties = passes.ties.unwrap_or_default();
    let rivals = passes.open.map_or_else(Vec::new, |open| open.rivals);
    let Passes { generous, known, .. } = passes;
    Evaluation {
        point: *point,
        views,
        problem: strict_problem,
        strict,
        generous,
        ties,
        rivals,
        known,
        outcomes,
        verdict,
    }
}

fn all_met(views: &[View<'_>], problem: &Problem, assignment: &Assignment) -> bool {
    let mut demands = problem.demands.iter().zip(&assignment.uses);
    demands.all(|(demand, uses)| demand.worth == Worth::LeftOut || uses.is_some())
        && views.iter().all(|view| view.binds.is_ok())
}

/// The two assignments of a point, and what is known of what they leave.
struct Passes<'p> {
    strict: &'p Assignment,
    generous: Assignment,
    /// Requirements that want the same tools, of which everything is known.
    known: Vec<Vec<usize>>,
    /// Which of them compete as equals.
    ties: Result<Vec<Vec<usize>>, Stopped>,
    /// Where facts are missing.
    open: Option<Open<'p>>,
}

/// What the generous pass is asked.
struct Open<'v> {
    views: &'v [View<'v>],
    problem: Problem,
    contests: Vec<Contest>,
    /// Requirements that want the same tools, of which facts are missing.
    rivals: Vec<Vec<usize>>,
    work: &'v Work,
}

impl Passes<'_> {
    fn outcome(&self, index: usize, view: &View<'_>) -> Option<Outcome> {
        let binds = answer(&view.binds);
        let met = match view.own {
            _ if binds == Answer::No => return None,
            Some(own) => own,
            None => self.met(index, binds),
        };
        Some(match (binds, met) {
            (_, Answer::Yes) => Outcome::Met,
            (Answer::Yes, Answer::No) => Outcome::NotMet,
            _ => Outcome::CannotTell,
        })
    }

    /// Whether a requirement that wants tools is met by every best assignment.
    fn met(&self, index: usize, binds: Answer) -> Answer {
        let is_known = self.known.iter().flatten().any(|known| *known == index);
        match (self.open.as_ref().filter(|_| !is_known), &self.ties) {
            (Some(at), _) => self.open(at, index, binds),
            (None, Ok(ties)) if !self.strict.stopped => {
                let tied = ties.iter().flatten().any(|tied| *tied == index);
                (self.strict.uses[index].is_some() && !tied).into()
            }
            (None, _) => Answer::Unknown,
        }
    }

    /// The same where facts are missing. Among rivals the two passes settle
    /// only what nothing can come between: as one more tool comes to serve,
    /// another requirement may come to be the one that goes short.
    fn open(&self, at: &Open<'_>, index: usize, binds: Answer) -> Answer {
        let strict = |demand: &usize| self.strict.uses[*demand].is_some();
        let possible = self.generous.stopped || self.generous.uses[index].is_some();
        let met = match at.contests[index] {
            Contest::Sure => Answer::Yes,
            Contest::Hopeless => Answer::No,
            Contest::Alone if strict(&index) => Answer::Yes,
            Contest::Alone if possible => Answer::Unknown,
            Contest::Alone => Answer::No,
            Contest::Contested => {
                let level = |demand: &usize| at.views[*demand].requirement.level;
                let comes_first = |one: &&usize| {
                    level(one) == Level::Required || level(&index) == Level::Recommended
                };
                let group = at.rivals.iter().find(|group| group.contains(&index));
                let sure = |group: &Vec<usize>| group.iter().filter(comes_first).all(strict);
                match strict(&index) && group.is_none_or(sure) {
                    true => Answer::Yes,
                    false if !possible && !can_be_met(&at.problem, index, at.work) => Answer::No,
                    false => Answer::Unknown,
                }
            }
        };
        // Where it may not be asked, nothing can be said but that it is met.
        if binds == Answer::Yes || met == Answer::Yes { met } else { Answer::Unknown }
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
