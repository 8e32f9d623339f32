//! What the profiles demand of a kit, point by point, in numbers: for whoever
//! works out what to bring aboard.
//!
//! A basket that meets every demand at every point makes the vessel ready, so
//! far as tools can; the check says whether it did.

use super::assign::candidates::{self, Pass};
use super::assign::slots::{Candidate, Link, Problem, Slot, ToolDemand, Tools, Worth};
use super::assign::{assign_from, groups};
use super::evaluate::fit;
use super::evaluate::point::Point;
use super::evaluate::requirement::views;
use super::judge::breakpoints::{self, Subject};
use super::judge::editions::{self, ApplicableEdition};
use super::repair::mend;
use super::request::Terms;
use super::work::Work;
use crate::measure::{Day, DaySpan, Length};
use crate::model::profile::{Level, Profile};
use crate::model::reason::Reason;
use crate::model::rule::Need;
use crate::model::vessel::Vessel;
use crate::model::vocabulary::KindId;
use std::sync::Arc;

/// What one judgement of a check demands.
#[derive(Debug, Clone)]
pub struct Demands {
    /// The profile that judges.
    pub profile: Arc<Profile>,
    /// What it demands at each point that differs from the others.
    pub points: Vec<PointDemands>,
}

/// What is wanted at one freeboard on one day.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct PointDemands {
    /// By requirement; `None` where it asks for no tool here.
    pub by_requirement: Vec<Option<OpenDemand>>,
    /// The parts that tools are put together from.
    pub parts: Vec<SharedPart>,
}

/// A part, or a lot of equal parts, that several tools share.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct SharedPart {
    /// The tools that have one, and the part itself where the kit lists it.
    pub tools: Vec<usize>,
    /// How many there are: so many of the tools serve at once.
    pub there: u32,
}

/// What one requirement demands; tools are indices into the kit.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OpenDemand {
    /// Whether it counts towards the verdict.
    pub level: Level,
    /// How many different types are wanted.
    pub least: usize,
    /// The types; for a type to count each of its slots has to be filled.
    pub types: Vec<Vec<OpenSlot>>,
    /// Other requirements whose tools count here too.
    pub lent: Vec<Lent>,
    /// For spares: the requirement that has to be met, with a tool that they
    /// fit.
    pub spares: Option<Spares>,
}

/// So many tools, each of these; each tool fills one slot of one
/// requirement only.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct OpenSlot {
    /// How many.
    pub count: u32,
    /// Tools that do for certain.
    pub tools: Vec<usize>,
    /// Tools of which a fact is missing.
    pub open: Vec<usize>,
}

/// Tools that fill a slot of another requirement and count here too, each
/// as often as it does there.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Lent {
    /// The other requirement.
    pub from: usize,
    /// Which tools; `None`: those that do for the slot here.
    pub tools: Option<Vec<usize>>,
}

/// Which tools spares fit.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Spares {
    /// The requirement that they are for.
    pub served: usize,
    /// For each spare the tools that it fits, one of which has to serve
    /// there; `None`: any. A spare that is not listed fits none.
    pub fits: Vec<(usize, Option<Vec<usize>>)>,
}

/// What each judgement demands of the vessel, in the order in which a check
/// judges: both ends of every stretch of freeboards over which the same
/// requirements bind, and these further freeboards.
///
/// The kit may hold what is only offered; then a demand lists that too.
pub fn demands(terms: &Terms<'_>, vessel: &Vessel, further: &[Length]) -> Vec<Demands> {
    let of_edition = |subject: &Subject<'_>| {
        let mut wanted: Vec<PointDemands> = Vec::new();
        for point in points(subject, further) {
            let demands = point_demands(&point);
            if !wanted.contains(&demands) {
                wanted.push(demands);
            }
        }
        wanted
    };
    each_edition(terms, vessel, |subject, profile| Demands {
        profile: Arc::clone(profile),
        points: of_edition(subject),
    })
}

/// The freeboards of the vessel at which anything can change with this very
/// kit.
pub fn breakpoints(terms: &Terms<'_>, vessel: &Vessel) -> Vec<Length> {
    let points = each_edition(terms, vessel, |_, profile| breakpoints::freeboards(profile, vessel));
    let mut points: Vec<Length> = points.into_iter().flatten().collect();
    points.sort_unstable();
    points.dedup();
    points
}

/// The kinds on whose being aboard it depends what else is wanted.
pub fn deciding_kinds(terms: &Terms<'_>, vessel: &Vessel) -> Vec<KindId> {
    let mut kinds = Vec::new();
    each_edition(terms, vessel, |_, profile| {
        profile.each_condition(&mut |condition| kinds.extend(condition.kind_aboard()));
    });
    kinds.sort_unstable();
    kinds.dedup();
    kinds
}

/// Every reason why a tool of the kit does not serve a requirement of the
/// judgement with that index, over all points; of several alternatives the
/// one that it comes nearest to. `None` if it is of no kind that is asked.
pub fn shortcomings(
    terms: &Terms<'_>,
    vessel: &Vessel,
    judgement: usize,
    requirement: usize,
    tools: &[usize],
) -> Vec<Option<Vec<Reason>>> {
    let mut at = 0;
    let found = each_edition(terms, vessel, |subject, profile| {
        at += 1;
        (at - 1 == judgement).then(|| {
            let points = points(subject, &[]);
            let one = |tool: &usize| nearest_spec(profile, requirement, *tool, &points);
            tools.iter().map(one).collect()
        })
    });
    found.into_iter().flatten().next().unwrap_or_else(|| vec![None; tools.len()])
}

fn nearest_spec(
    profile: &Profile,
    requirement: usize,
    tool: usize,
    points: &[Point<'_>],
) -> Option<Vec<Reason>> {
    let requirement = profile.requirements.get(requirement)?;
    let Need::Tools { types, .. } = &requirement.need else { return None };
    let mut nearest: Option<Vec<Reason>> = None;
    for the_type in types {
        for spec in the_type.members.iter().flat_map(|member| &member.choices) {
            let mut reasons = Vec::new();
            for point in points.iter().filter(|point| point.binds(requirement) != Ok(false)) {
                let tool = &point.vessel.kit[tool];
                if spec.kind != tool.kind || point.holds_all(&spec.when) == Ok(false) {
                    continue;
                }
                let clause = the_type.clause.as_deref();
                for reason in fit::fit(tool, spec, clause, requirement, point) {
                    mend::add(&mut reasons, reason);
                }
            }
            let asked = points.first().is_some_and(|s| s.vessel.kit[tool].kind == spec.kind);
            if asked && nearest.as_ref().is_none_or(|best| reasons.len() < best.len()) {
                nearest = Some(reasons);
            }
        }
    }
    nearest
}

/// Calls `each` for every edition of a check, in its order.
fn each_edition<T>(
    terms: &Terms<'_>,
    vessel: &Vessel,
    mut each: impl FnMut(&Subject<'_>, &Arc<Profile>) -> T,
) -> Vec<T> {
    let back = terms.back.unwrap_or(terms.departure).max(terms.departure);
    let days = DaySpan { from: Some(terms.departure), until: Some(back) };
    let editions: Vec<ApplicableEdition<'_>> = editions::applicable(terms, vessel, days).editions;
    let judged = editions.iter().map(|edition| {
        let (profile, by_name) = (&edition.profile, edition.why.is_asked());
        let point = Point::of(terms.vocabulary, profile, vessel, terms.departure, by_name);
        each(&Subject::over(point, edition.days), profile)
    });
    judged.collect()
}

/// Every point that the vessel has to stand, and those of the further
/// freeboards that it may have.
fn points<'a>(subject: &Subject<'a>, further: &[Length]) -> Vec<Point<'a>> {
    let at = |freeboard, day: &Day| Point { freeboard, day: *day, ..subject.point };
    let freeboards = match &subject.freeboards {
        _ if !subject.point.profile.encoded => return Vec::new(),
        Err(missing) => return subject.days.iter().map(|day| at(Err(*missing), day)).collect(),
        Ok(freeboards) => freeboards,
    };
    let inside = |length: &&Length| {
        freeboards.iter().flatten().any(|(low, high)| (low..=high).contains(length))
    };
    let further: Vec<&Length> = further.iter().filter(inside).collect();
    let on = |day| further.iter().map(move |length| at(Ok(**length), day));
    let further = subject.days.iter().flat_map(on);
    subject.points().into_iter().chain(further).collect()
}

fn point_demands(point: &Point<'_>) -> PointDemands {
    let views = views(point);
    let strict = candidates::problem(&views, point, Pass::Strict);
    let generous = candidates::problem(&views, point, Pass::Generous);
    let parts = strict.parts_there.iter().enumerate().map(|(part, there)| {
        let with = |tool: &usize| strict.parts[*tool].contains(&part);
        SharedPart { tools: (0..strict.listed).filter(with).collect(), there: *there }
    });
    // Each may lean only on those that are settled before it.
    let order = groups::order(&strict);
    let before = |one: usize, other: usize| {
        let at = |demand: usize| order.iter().position(|s| *s == demand);
        at(one).is_some_and(|one| at(other).is_some_and(|other| one < other))
    };
    let demand = |index: usize| {
        let mut demand = open_demand(&strict.demands[index], generous.demands.get(index), &strict)?;
        demand.lent.retain(|lent| before(lent.from, index));
        Some(demand)
    };
    PointDemands {
        by_requirement: (0..strict.demands.len()).map(demand).collect(),
        parts: parts.collect(),
    }
}

fn open_demand(
    demand: &ToolDemand,
    generous: Option<&ToolDemand>,
    problem: &Problem,
) -> Option<OpenDemand> {
    let level = match demand.worth {
        Worth::Required => Level::Required,
        Worth::Recommended => Level::Recommended,
        Worth::Nothing | Worth::LeftOut => return None,
    };
    let listed = |candidates: &[Candidate]| -> Vec<usize> {
        candidates.iter().map(|c| c.tool).filter(|tool| *tool < problem.listed).collect()
    };
    let open_slot = |of_type: usize, at: usize, slot: &Slot| {
        let tools = listed(&slot.candidates);
        let wider = generous.and_then(|demand| demand.types.get(of_type)).and_then(|t| t.get(at));
        let mut open = wider.map_or_else(Vec::new, |slot| listed(&slot.candidates));
        open.retain(|tool| !tools.contains(tool));
        OpenSlot { count: slot.count, tools, open }
    };
    let types = demand.types.iter().enumerate().map(|(of_type, slots)| {
        slots.iter().enumerate().map(|(at, slot)| open_slot(of_type, at, slot)).collect()
    });
    let lent = demand.links.iter().map(|link| Lent {
        from: link.from,
        tools: match &link.tools {
            Tools::These(tools) => Some(tools.clone()),
            Tools::Fitting => None,
        },
    });
    let spares =
        demand.fits.as_ref().map(|(served, fits)| Spares { served: *served, fits: fits.clone() });
    Some(OpenDemand {
        level,
        least: demand.least,
        types: types.collect(),
        lent: lent.collect(),
        spares,
    })
}

/// The demands of one point, to be tried with one kit after another.
#[derive(Debug, Clone)]
pub struct Feasibility(Problem);

impl Feasibility {
    /// The demands of a point over so many tools; `optional` are those that
    /// need not be met.
    pub fn of(demands: &PointDemands, tools: usize, optional: impl Fn(usize) -> bool) -> Self {
        let demand = |(index, demand): (usize, &Option<OpenDemand>)| match demand {
            None => ToolDemand { worth: Worth::LeftOut, ..ToolDemand::default() },
            Some(demand) => ToolDemand {
                worth: if optional(index) { Worth::Recommended } else { Worth::Required },
                least: demand.least,
                types: demand.types.iter().map(|t| t.iter().map(sure_slot).collect()).collect(),
                links: demand.lent.iter().map(link).collect(),
                fits: demand.spares.as_ref().map(|spares| (spares.served, spares.fits.clone())),
            },
        };
        let mut parts = vec![Vec::new(); tools];
        for (part, shared) in demands.parts.iter().enumerate() {
            shared.tools.iter().for_each(|tool| parts[*tool].push(part));
        }
        Self(Problem {
            demands: demands.by_requirement.iter().enumerate().map(demand).collect(),
            capacity: vec![0; tools],
            listed: tools,
            parts,
            parts_there: demands.parts.iter().map(|part| part.there).collect(),
            lot_parts: None,
            groups: 0,
        })
    }

    /// Whether every demand that is not optional can be met with so many of
    /// each tool. A search that was stopped says no.
    pub fn is_met(&self, there: &[u32]) -> bool {
        let assignment = assign_from(&self.0, there, &Work::share());
        let mut demands = self.0.demands.iter().zip(&assignment.uses);
        demands.all(|(demand, uses)| demand.worth != Worth::Required || uses.is_some())
    }
}

fn sure_slot(slot: &OpenSlot) -> Slot {
    let candidate = |tool: &usize| Candidate { tool: *tool, price: 0, once: None };
    Slot { count: slot.count, candidates: slot.tools.iter().map(candidate).collect() }
}

fn link(lent: &Lent) -> Link {
    let tools = match &lent.tools {
        Some(tools) => Tools::These(tools.clone()),
        None => Tools::Fitting,
    };
    Link { from: lent.from, tools }
}
