//! What the profiles want of a kit, scene by scene, in numbers: for whoever
//! works out what to bring aboard.
//!
//! A basket that meets every want in every scene makes the vessel ready, so
//! far as tools can; the check says whether it did.

use super::assign;
use super::bench::{self, Bench};
use super::edges;
use super::fit;
use super::groups;
use super::pose::{self, Pass};
use super::scene::Scene;
use super::seats::{Candidate, Link, Places, Pose, Seat, Tools, Worth};
use super::select::{self, Course};
use super::{Terms, deeds};
use crate::measure::{Day, DaySpan, Length};
use crate::model::profile::{Level, Profile};
use crate::model::reason::Reason;
use crate::model::rule::Need;
use crate::model::vessel::Vessel;
use crate::model::vocabulary::KindId;
use std::sync::Arc;

/// What one judgement of a check wants.
#[derive(Debug, Clone)]
pub struct Wants {
    /// The profile that judges.
    pub profile: Arc<Profile>,
    /// What it wants in each scene that differs from the others.
    pub scenes: Vec<SceneWants>,
}

/// What is wanted at one freeboard on one day.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct SceneWants {
    /// By requirement; `None` where it asks for no tool here.
    pub seats: Vec<Option<Want>>,
    /// For each part that several tools share: those tools, of which one
    /// serves once.
    pub parts: Vec<Vec<usize>>,
}

/// What one requirement wants; tools are indices into the kit.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Want {
    /// Whether it counts towards the verdict.
    pub level: Level,
    /// How many different types are wanted.
    pub least: usize,
    /// The types; for a type to count each of its places has to be filled.
    pub types: Vec<Vec<Place>>,
    /// Other requirements whose tools count here too.
    pub lent: Vec<Lent>,
    /// For spares: the requirement that has to be met, with a tool that they
    /// fit.
    pub spares: Option<Spares>,
}

/// So many tools, each of these; each tool fills one place of one
/// requirement only.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Place {
    /// How many.
    pub count: u32,
    /// Tools that do for certain.
    pub tools: Vec<usize>,
    /// Tools of which a fact is missing.
    pub open: Vec<usize>,
}

/// Tools that fill a place of another requirement and count here too, each
/// as often as it does there.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Lent {
    /// The other requirement.
    pub from: usize,
    /// Which tools; `None`: those that do for the place here.
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

/// What each judgement wants of the vessel, in the order in which a check
/// judges: both ends of every stretch of freeboards over which the same
/// requirements bind, and these further freeboards.
///
/// The kit may hold what is only offered; then a want lists that too.
pub fn wants(terms: &Terms<'_>, vessel: &Vessel, further: &[Length]) -> Vec<Wants> {
    let of_course = |bench: &Bench<'_>, profile: &Profile| {
        let mut wanted: Vec<SceneWants> = Vec::new();
        for scene in scenes(bench, profile, further) {
            let wants = scene_wants(&scene);
            if !wanted.contains(&wants) {
                wanted.push(wants);
            }
        }
        wanted
    };
    each_course(terms, vessel, |bench, profile| Wants {
        profile: Arc::clone(profile),
        scenes: of_course(bench, profile),
    })
}

/// The freeboards of the vessel at which anything can change with this very
/// kit.
pub fn turning_points(terms: &Terms<'_>, vessel: &Vessel) -> Vec<Length> {
    let points = each_course(terms, vessel, |bench, profile| {
        let first = bench.course.days.from.unwrap_or(bench.departure);
        edges::freeboards(&bench.scene(profile, Ok(Length::ZERO), first))
    });
    let mut points: Vec<Length> = points.into_iter().flatten().collect();
    points.sort_unstable();
    points.dedup();
    points
}

/// The kinds on whose being aboard it depends what else is wanted.
pub fn deciding_kinds(terms: &Terms<'_>, vessel: &Vessel) -> Vec<KindId> {
    let mut kinds = Vec::new();
    each_course(terms, vessel, |_, profile| {
        edges::kinds_named(&profile.binds.when, &mut kinds);
        for requirement in &profile.requirements {
            edges::kinds_named(&requirement.when, &mut kinds);
            requirement.unless.iter().for_each(|group| edges::kinds_named(group, &mut kinds));
            edges::specs(&requirement.need)
                .for_each(|spec| edges::kinds_named(&spec.when, &mut kinds));
        }
    });
    kinds.sort_unstable();
    kinds.dedup();
    kinds
}

/// Every reason why a tool of the kit does not serve a requirement of the
/// judgement with that index, over all scenes; of several alternatives the
/// one that it comes nearest to. `None` if it is of no kind that is asked.
pub fn shortcomings(
    terms: &Terms<'_>,
    vessel: &Vessel,
    judgement: usize,
    requirement: usize,
    tools: &[usize],
) -> Vec<Option<Vec<Reason>>> {
    let mut at = 0;
    let found = each_course(terms, vessel, |bench, profile| {
        at += 1;
        (at - 1 == judgement).then(|| {
            let scenes = scenes(bench, profile, &[]);
            let one = |tool: &usize| nearest_spec(profile, requirement, *tool, &scenes);
            tools.iter().map(one).collect()
        })
    });
    found.into_iter().flatten().next().unwrap_or_else(|| vec![None; tools.len()])
}

fn nearest_spec(
    profile: &Profile,
    requirement: usize,
    tool: usize,
    scenes: &[Scene<'_>],
) -> Option<Vec<Reason>> {
    let requirement = profile.requirements.get(requirement)?;
    let Need::Tools { types, .. } = &requirement.need else { return None };
    let mut nearest: Option<Vec<Reason>> = None;
    for the_type in types {
        for spec in the_type.members.iter().flat_map(|member| &member.choices) {
            let mut reasons = Vec::new();
            for scene in scenes.iter().filter(|scene| scene.binds(requirement) != Ok(false)) {
                let tool = &scene.vessel.kit[tool];
                if spec.kind != tool.kind || scene.holds_all(&spec.when) == Ok(false) {
                    continue;
                }
                let clause = the_type.clause.as_deref();
                for reason in fit::fit(tool, spec, clause, requirement, scene) {
                    deeds::add(&mut reasons, reason);
                }
            }
            let asked = scenes.first().is_some_and(|s| s.vessel.kit[tool].kind == spec.kind);
            if asked && nearest.as_ref().is_none_or(|best| reasons.len() < best.len()) {
                nearest = Some(reasons);
            }
        }
    }
    nearest
}

/// Calls `each` for every course of a check, in its order.
fn each_course<T>(
    terms: &Terms<'_>,
    vessel: &Vessel,
    mut each: impl FnMut(&Bench<'_>, &Arc<Profile>) -> T,
) -> Vec<T> {
    let back = terms.back.unwrap_or(terms.departure).max(terms.departure);
    let days = DaySpan { from: Some(terms.departure), until: Some(back) };
    let courses: Vec<Course<'_>> = select::select(terms, vessel, days).courses;
    let judged = courses.iter().map(|course| {
        let bench =
            Bench { vocabulary: terms.vocabulary, vessel, course, departure: terms.departure };
        each(&bench, &course.profile)
    });
    judged.collect()
}

/// Every scene that the vessel has to stand under the profile.
fn scenes<'s>(bench: &Bench<'s>, profile: &'s Profile, further: &[Length]) -> Vec<Scene<'s>> {
    if !profile.encoded {
        return Vec::new();
    }
    let days: Vec<Day> = bench.days(profile, bench.course.days);
    let waters = match bench.waters(profile) {
        Ok(waters) => waters,
        Err(missing) => {
            return days.iter().map(|day| bench.scene(profile, Err(missing), *day)).collect();
        }
    };
    let mut scenes = bench::scenes(bench, profile, &days);
    let inside =
        |length: &&Length| waters.iter().flatten().any(|(low, high)| (low..=high).contains(length));
    let further: Vec<_> = further.iter().filter(inside).collect();
    for day in &days {
        scenes.extend(further.iter().map(|length| bench.scene(profile, Ok(**length), *day)));
    }
    scenes
}

fn scene_wants(scene: &Scene<'_>) -> SceneWants {
    let views = pose::views(scene);
    let strict = pose::pose(&views, scene, Pass::Strict);
    let generous = pose::pose(&views, scene, Pass::Generous);
    let parts = (0..strict.part_count).map(|part| {
        let with = |tool: &usize| strict.parts[*tool].contains(&part);
        (0..strict.listed).filter(with).collect()
    });
    // Each may lean only on those that are settled before it.
    let order = groups::order(&strict);
    let before = |one: usize, other: usize| {
        let at = |seat: usize| order.iter().position(|s| *s == seat);
        at(one).is_some_and(|one| at(other).is_some_and(|other| one < other))
    };
    let seat = |index: usize| {
        let seat = &strict.seats[index];
        let mut want = want(seat, generous.seats.get(index), &strict)?;
        want.lent.retain(|lent| before(lent.from, index));
        Some(want)
    };
    SceneWants { seats: (0..strict.seats.len()).map(seat).collect(), parts: parts.collect() }
}

fn want(seat: &Seat, generous: Option<&Seat>, pose: &Pose) -> Option<Want> {
    let level = match seat.worth {
        Worth::Required => Level::Required,
        Worth::Recommended => Level::Recommended,
        Worth::Nothing | Worth::LeftOut => return None,
    };
    let listed = |candidates: &[Candidate]| -> Vec<usize> {
        candidates.iter().map(|c| c.tool).filter(|tool| *tool < pose.listed).collect()
    };
    let place = |of_type: usize, at: usize, places: &Places| {
        let tools = listed(&places.candidates);
        let wider = generous.and_then(|seat| seat.types.get(of_type)).and_then(|t| t.get(at));
        let mut open = wider.map_or_else(Vec::new, |places| listed(&places.candidates));
        open.retain(|tool| !tools.contains(tool));
        Place { count: places.count, tools, open }
    };
    let types = seat.types.iter().enumerate().map(|(of_type, places)| {
        places.iter().enumerate().map(|(at, places)| place(of_type, at, places)).collect()
    });
    let lent = seat.links.iter().map(|link| Lent {
        from: link.from,
        tools: match &link.tools {
            Tools::These(tools) => Some(tools.clone()),
            Tools::Fitting => None,
        },
    });
    let spares =
        seat.fits.as_ref().map(|(served, fits)| Spares { served: *served, fits: fits.clone() });
    Some(Want { level, least: seat.least, types: types.collect(), lent: lent.collect(), spares })
}

/// The wants of one scene, to be tried with one kit after another.
#[derive(Debug, Clone)]
pub struct Seating(Pose);

impl Seating {
    /// The wants of a scene over so many tools; `optional` are those that
    /// need not be met.
    pub fn of(wants: &SceneWants, tools: usize, optional: impl Fn(usize) -> bool) -> Self {
        let seat = |(index, want): (usize, &Option<Want>)| match want {
            None => Seat { worth: Worth::LeftOut, ..Seat::default() },
            Some(want) => Seat {
                worth: if optional(index) { Worth::Recommended } else { Worth::Required },
                least: want.least,
                types: want.types.iter().map(|t| t.iter().map(places).collect()).collect(),
                links: want.lent.iter().map(link).collect(),
                fits: want.spares.as_ref().map(|spares| (spares.served, spares.fits.clone())),
            },
        };
        let mut parts = vec![Vec::new(); tools];
        for (part, shared) in wants.parts.iter().enumerate() {
            shared.iter().for_each(|tool| parts[*tool].push(part));
        }
        Self(Pose {
            seats: wants.seats.iter().enumerate().map(seat).collect(),
            capacity: vec![0; tools],
            listed: tools,
            parts,
            part_count: wants.parts.len(),
            lot_parts: None,
            groups: 0,
        })
    }

    /// Whether every want that is not optional can be met with so many of
    /// each tool. A search that was stopped says no.
    pub fn is_met(&self, there: &[u32]) -> bool {
        let solution = assign::assign_from(&self.0, there);
        let mut seats = self.0.seats.iter().zip(&solution.uses);
        seats.all(|(seat, uses)| seat.worth != Worth::Required || uses.is_some())
    }
}

fn places(place: &Place) -> Places {
    let candidate = |tool: &usize| Candidate { tool: *tool, price: 0, once: None };
    Places { count: place.count, candidates: place.tools.iter().map(candidate).collect() }
}

fn link(lent: &Lent) -> Link {
    let tools = match &lent.tools {
        Some(tools) => Tools::These(tools.clone()),
        None => Tools::Fitting,
    };
    Link { from: lent.from, tools }
}
