//! The assignment with types, sets, links, parts and spares against a search
//! that tries every way to put every tool somewhere or nowhere.

use super::slots::*;
use super::*;
use proptest::prelude::*;

/// A place in a problem: demand, type, slot.
type Spot = (usize, usize, usize);

fn spots(problem: &Problem) -> Vec<Spot> {
    let mut spots = Vec::new();
    let taking_part = |(_, demand): &(usize, &ToolDemand)| demand.worth != Worth::LeftOut;
    for (demand, wanted) in problem.demands.iter().enumerate().filter(taking_part) {
        for (of_type, slots) in wanted.types.iter().enumerate() {
            spots.extend((0..slots.len()).map(|slot| (demand, of_type, slot)));
        }
    }
    spots
}

/// Puts every tool (one of each) at a spot where it is a candidate, or
/// nowhere; keeps the best.
fn brute(problem: &Problem, tool: usize, put: &mut Vec<Option<Spot>>, best: &mut (u32, u32)) {
    if tool == problem.capacity.len() {
        if parts_apart(problem, put) && nothing_idle(problem, put) {
            *best = (*best).max(met(problem, put));
        }
        return;
    }
    put.push(None);
    brute(problem, tool + 1, put, best);
    put.pop();
    for (demand, of_type, slot) in spots(problem) {
        let candidates = &problem.demands[demand].types[of_type][slot].candidates;
        if candidates.iter().any(|c| c.tool == tool) {
            put.push(Some((demand, of_type, slot)));
            brute(problem, tool + 1, put, best);
            put.pop();
        }
    }
}

fn parts_apart(problem: &Problem, put: &[Option<Spot>]) -> bool {
    (0..problem.parts_there.len()).all(|part| {
        put.iter()
            .enumerate()
            .filter(|(t, s)| s.is_some() && problem.parts[*t].contains(&part))
            .count()
            <= problem.parts_there[part] as usize
    })
}

/// Whether every tool that was placed serves: its demand is met, in a choice
/// of types that has all that was placed there, and no place is overfull.
fn nothing_idle(problem: &Problem, put: &[Option<Spot>]) -> bool {
    spots(problem).into_iter().all(|(demand, of_type, slot)| {
        let here = put.iter().filter(|p| **p == Some((demand, of_type, slot))).count();
        let wanted = problem.demands[demand].types[of_type][slot].count as usize;
        here == 0 || (here <= wanted && demand_met(problem, put, demand))
    })
}

/// How many required and recommended demands such a placing meets. A tool
/// placed at one demand may fill a place of a demand that leans on it; whether
/// that works out is tried in every way.
fn met(problem: &Problem, put: &[Option<Spot>]) -> (u32, u32) {
    let (mut required, mut recommended) = (0, 0);
    for (index, demand) in problem.demands.iter().enumerate() {
        if demand_met(problem, put, index) {
            match demand.worth {
                Worth::Required => required += 1,
                Worth::Recommended => recommended += 1,
                Worth::Nothing | Worth::LeftOut => {}
            }
        }
    }
    (required, recommended)
}

fn demand_met(problem: &Problem, put: &[Option<Spot>], index: usize) -> bool {
    let demand = &problem.demands[index];
    let subsets = 0_u32..(1 << demand.types.len());
    let touched = put.iter().flatten().filter(|(s, _, _)| *s == index).map(|(_, t, _)| *t);
    let touched = touched.fold(0_u32, |all, of_type| all | 1 << of_type);
    let fitting =
        subsets.filter(|s| s.count_ones() as usize == demand.least && s & touched == touched);
    fitting.into_iter().any(|subset| {
        let chosen: Vec<usize> =
            (0..demand.types.len()).filter(|t| subset & (1 << t) != 0).collect();
        lent_fills(problem, put, index, &chosen)
    })
}

/// Whether the chosen types can be filled by what was placed there and by
/// what other demands lend, each lent tool once.
fn lent_fills(problem: &Problem, put: &[Option<Spot>], index: usize, chosen: &[usize]) -> bool {
    let demand = &problem.demands[index];
    let mut missing: Vec<(usize, usize)> = Vec::new();
    for of_type in chosen {
        for (at, slot) in demand.types[*of_type].iter().enumerate() {
            let here = (0..put.len()).filter(|tool| {
                put[*tool] == Some((index, *of_type, at)) && spare_fits(problem, put, index, *tool)
            });
            let here = u32::try_from(here.count()).unwrap();
            missing.extend((here..slot.count).map(|_| (*of_type, at)));
        }
    }
    let lent: Vec<usize> = (0..put.len())
        .filter(|tool| {
            demand.links.iter().any(|link| {
                put[*tool]
                    .is_some_and(|(from, _, _)| from == link.from && demand_met(problem, put, from))
            })
        })
        .collect();
    fill(problem, put, index, &missing, &lent)
}

fn fill(
    problem: &Problem,
    put: &[Option<Spot>],
    index: usize,
    missing: &[(usize, usize)],
    lent: &[usize],
) -> bool {
    let Some(((of_type, slot), rest)) = missing.split_first() else { return true };
    lent.iter().any(|tool| {
        let from = put[*tool].map(|(demand, _, _)| demand);
        let counts = problem.demands[index].links.iter().any(|link| {
            Some(link.from) == from
                && match &link.tools {
                    Tools::These(tools) => tools.contains(tool),
                    Tools::Fitting => problem.demands[index].types[*of_type][*slot]
                        .candidates
                        .iter()
                        .any(|c| c.tool == *tool),
                }
        });
        let others: Vec<usize> = lent.iter().copied().filter(|other| other != tool).collect();
        counts && fill(problem, put, index, rest, &others)
    })
}

fn spare_fits(problem: &Problem, put: &[Option<Spot>], index: usize, tool: usize) -> bool {
    let Some((served, fits)) = &problem.demands[index].fits else { return true };
    let Some((_, named)) = fits.iter().find(|(spare, _)| *spare == tool) else { return false };
    demand_met(problem, put, *served)
        && named.as_ref().is_none_or(|tools| {
            tools.iter().any(|t| put[*t].is_some_and(|(demand, _, _)| demand == *served))
        })
}

fn small_slots() -> impl Strategy<Value = Slot> {
    (1_u32..3, prop::collection::vec(any::<bool>(), TOOLS)).prop_map(|(count, fits)| Slot {
        count,
        candidates: (0..TOOLS)
            .filter(|tool| fits[*tool])
            .map(|tool| Candidate { tool, price: 0, once: None })
            .collect(),
    })
}

const TOOLS: usize = 5;

fn worth() -> impl Strategy<Value = Worth> {
    let worths = [Worth::Required, Worth::Recommended, Worth::Nothing, Worth::LeftOut];
    prop::sample::select(worths.to_vec())
}

/// The demands from the last to the first, each leaning on what it leaned on.
fn turn_around(demands: &mut [ToolDemand]) {
    let last = demands.len() - 1;
    demands.reverse();
    for demand in demands {
        demand.links.iter_mut().for_each(|link| link.from = last - link.from);
        demand.fits.iter_mut().for_each(|(served, _)| *served = last - *served);
    }
}

prop_compose! {
    fn small_problem()(
        types in prop::collection::vec(prop::collection::vec(prop::collection::vec(small_slots(), 1..3), 1..3), 1..4),
        worths in [worth(), worth(), worth()],
        link in (0_u8..4, prop::collection::vec(any::<bool>(), TOOLS)),
        spare in (any::<bool>(), prop::collection::vec(any::<bool>(), TOOLS)),
        parts in prop::collection::vec(0_usize..3, TOOLS),
        there in 1_u32..3,
        least in any::<[bool; 3]>(),
        backwards in any::<bool>(),
    ) -> Problem {
        let mut demands: Vec<ToolDemand> = types.into_iter().enumerate().map(|(index, types)| ToolDemand {
            worth: worths[index],
            least: if least[index] { types.len() } else { 1 },
            types,
            ..ToolDemand::default()
        }).collect();
        let named: Vec<usize> = (0..TOOLS).filter(|t| spare.1[*t]).collect();
        if demands.len() > 1 {
            let tools: Vec<usize> = (0..TOOLS).filter(|t| link.1[*t]).collect();
            let tools = if link.0 == 1 { Tools::Fitting } else { Tools::These(tools) };
            if link.0 > 0 {
                demands[1].links.push(Link { from: 0, tools });
            }
        }
        if demands.len() > 2 && spare.0 {
            let fits = (0..TOOLS).map(|t| (t, Some(named.clone()))).collect();
            demands[2].fits = Some((0, fits));
        }
        if backwards {
            turn_around(&mut demands);
        }
        Problem {
            demands,
            capacity: vec![1; TOOLS],
            listed: TOOLS,
            // Part 0 is shared by chance, the rest have none.
            parts: parts.into_iter().map(|p| if p == 0 { vec![0] } else { vec![] }).collect(),
            parts_there: vec![there],
            ..Problem::default()
        }
    }
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn with_sets_links_parts_and_spares_it_is_as_good_as_brute_force(problem in small_problem()) {
        let assignment = assign(&problem, &Work::share());
        let mut best = (0, 0);
        brute(&problem, 0, &mut Vec::new(), &mut best);
        prop_assert_eq!((assignment.score.required, assignment.score.recommended), best);
        prop_assert!(!assignment.stopped);
    }
}
