//! From the requirements at a point to the problem that the assignment solves:
//! which tools are candidates for which slots.

use super::slots::{Candidate, Link, Problem, Slot, SpareFit, ToolDemand, Tools, Use, Worth};
use crate::engine::evaluate::point::Point;
use crate::engine::evaluate::requirement::{Fitted, View, may_be_unlisted};
use crate::engine::evaluate::satisfy;
use crate::measure::Answer;
use crate::model::profile::{Deemed, Level, Requirement};
use crate::model::rule::{Member, Need};
use crate::model::vessel::Tool;

/// How unknown facts are taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Pass {
    /// As no.
    Strict,
    /// As yes.
    Generous,
}

/// Fills the demands for one pass.
pub(crate) fn problem(views: &[View<'_>], point: &Point<'_>, pass: Pass) -> Problem {
    let kit = &point.vessel.kit;
    let mut problem = Problem {
        capacity: kit.iter().map(|tool| tool.count).collect(),
        listed: kit.len(),
        ..Problem::default()
    };
    demand_parts(&mut problem, point);
    for view in views {
        let demand = demand(view, views, point, pass, &mut problem);
        problem.demands.push(demand);
    }
    problem
}

/// A part serves one tool at a time; one that the kit lists as a tool of its
/// own cannot serve by itself beside it. Of a lot each piece is such a part.
fn demand_parts(problem: &mut Problem, point: &Point<'_>) {
    let kit = &point.vessel.kit;
    let mut names: Vec<&str> = Vec::new();
    for part in kit.iter().flat_map(|tool| &tool.parts) {
        if !point.profile.parts_shared && !names.contains(&part.as_str()) {
            names.push(part);
        }
    }
    let index = |name: &str| names.iter().position(|known| *known == name);
    for tool in kit {
        let own = tool.parts.iter().map(String::as_str).chain([tool.mark.as_str()]);
        problem.parts.push(own.filter_map(index).collect());
    }
    let there = |name: &&str| {
        let listed = kit.iter().filter(|tool| tool.mark == **name).map(|tool| tool.count);
        listed.reduce(u32::saturating_add).unwrap_or(1)
    };
    problem.parts_there = names.iter().map(there).collect();
}

fn worth(view: &View<'_>, pass: Pass) -> Worth {
    match (&view.binds, pass, view.requirement.level) {
        (Ok(false), _, _) => Worth::LeftOut,
        // Where it may not bind it asks nothing in the best case, but lends
        // its tool to what leans on it.
        (Err(_), Pass::Generous, _) => Worth::Nothing,
        (_, _, Level::Required) => Worth::Required,
        (_, _, Level::Recommended) => Worth::Recommended,
    }
}

fn demand(
    view: &View<'_>,
    views: &[View<'_>],
    point: &Point<'_>,
    pass: Pass,
    problem: &mut Problem,
) -> ToolDemand {
    let Need::Tools { least, types, spare_for } = &view.requirement.need else {
        return ToolDemand { worth: Worth::LeftOut, ..ToolDemand::default() };
    };
    let mut demand = ToolDemand {
        worth: worth(view, pass),
        least: usize::try_from(*least).unwrap_or(usize::MAX),
        ..ToolDemand::default()
    };
    if demand.worth == Worth::LeftOut {
        return demand;
    }
    for (of_type, the_type) in types.iter().enumerate() {
        let members = the_type.members.iter().enumerate();
        let slots = members
            .map(|(at, member)| slot(member, view.fits_of(of_type, at), point, pass, problem))
            .collect();
        demand.types.push(slots);
    }
    demand.links = links(view.requirement, point, pass);
    demand.fits = spare_for.map(|served| (served, spare_fits(&demand, point, pass)));
    if pass == Pass::Strict {
        // What may not bind has no tool to lend for certain.
        let may_not_bind = |index: usize| views[index].binds.is_err();
        demand.links.retain(|link| !may_not_bind(link.from));
        if let Some((_, fits)) = demand.fits.as_mut().filter(|(served, _)| may_not_bind(*served)) {
            fits.clear();
        }
    }
    demand
}

fn slot(
    member: &Member,
    fits: &[Fitted],
    point: &Point<'_>,
    pass: Pass,
    problem: &mut Problem,
) -> Slot {
    let mut candidates: Vec<Candidate> = Vec::with_capacity(fits.len());
    for fitted in fits {
        let serves = match pass {
            Pass::Strict => fitted.answer == Answer::Yes,
            Pass::Generous => fitted.answer != Answer::No,
        };
        if !serves || candidates.iter().any(|c| c.tool == fitted.tool) {
            continue;
        }
        let tests = &member.choices[fitted.choice].tests;
        let spare = satisfy::to_spare(&point.vessel.kit[fitted.tool], tests, point);
        let price = u128::try_from(spare.nanometres()).unwrap_or(0);
        candidates.push(Candidate { tool: fitted.tool, price, once: None });
    }
    if pass == Pass::Generous && !may_be_unlisted(member, point).is_empty() {
        let tool = unlisted(problem, member.count);
        candidates.push(Candidate { tool, price: 0, once: None });
    }
    Slot { count: member.count, candidates }
}

/// Adds a tool that nobody listed, as many as are asked.
pub(crate) fn unlisted(problem: &mut Problem, count: u32) -> usize {
    problem.capacity.push(count);
    problem.parts.push(Vec::new());
    problem.capacity.len() - 1
}

/// Whether a use of the strict pass at another point holds at this one too.
pub(crate) fn serves(used: &Use, view: &View<'_>, point: &Point<'_>) -> bool {
    let tool = &point.vessel.kit[used.tool];
    let fits = || view.fits_at((used.of_type, used.slot), tool, point);
    let Some(from) = used.through else { return fits() };
    let mut deemed = view.requirement.deemed.iter().filter(|deemed| deemed.requirement == from);
    deemed.any(|deemed| counts(deemed, tool, point) == Answer::Yes)
        || view.requirement.shares.contains(&from) && fits()
}

/// Whether a tool that serves the other requirement counts here too.
fn counts(deemed: &Deemed, tool: &Tool, point: &Point<'_>) -> Answer {
    // Of a tool that cannot serve the other there is nothing to ask.
    match point.profile.requirements[deemed.requirement].asks(tool.kind) {
        true => satisfy::keeps(&deemed.tests, tool, point),
        false => Answer::No,
    }
}

fn links(requirement: &Requirement, point: &Point<'_>, pass: Pass) -> Vec<Link> {
    let deemed = requirement.deemed.iter().map(|deemed| {
        let counts = |tool: &Tool| match counts(deemed, tool, point) {
            Answer::Yes => true,
            Answer::Unknown => pass == Pass::Generous,
            Answer::No => false,
        };
        let kit = point.vessel.kit.iter().enumerate();
        let tools = kit.filter(|(_, tool)| counts(tool)).map(|(index, _)| index).collect();
        Link { from: deemed.requirement, tools: Tools::These(tools) }
    });
    let shared = requirement.shares.iter().map(|from| Link { from: *from, tools: Tools::Fitting });
    deemed.chain(shared).collect()
}

fn spare_fits(demand: &ToolDemand, point: &Point<'_>, pass: Pass) -> Vec<SpareFit> {
    let kit = &point.vessel.kit;
    let mut fits = Vec::new();
    for candidate in demand.types.iter().flatten().flat_map(|slot| &slot.candidates) {
        let Some(spare) = kit.get(candidate.tool) else {
            fits.push((candidate.tool, None));
            continue;
        };
        if spare.fits.is_empty() {
            if pass == Pass::Generous {
                fits.push((candidate.tool, None));
            }
            continue;
        }
        let named = |mark: &String| kit.iter().any(|tool| tool.mark == *mark);
        if pass == Pass::Generous && !spare.fits.iter().all(named) {
            // The tool that they name may be one that nobody listed.
            fits.push((candidate.tool, None));
            continue;
        }
        let tools = (0..kit.len()).filter(|index| spare.fits.contains(&kit[*index].mark)).collect();
        fits.push((candidate.tool, Some(tools)));
    }
    fits
}
