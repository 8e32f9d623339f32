//! What is wanted at one point, made small: tools that stand in for each
//! other brought together, and what the own kit settles by itself left out.

use super::outcome::Cured;
use super::wide::{Origin, Wide};
use crate::engine::demand::{Lent, OpenDemand, OpenSlot, PointDemands, SharedPart};
use crate::model::profile::Level;
use std::collections::{BTreeMap, BTreeSet};

/// One point in numbers. Classes are sets of tools of the wide kit that can
/// stand in for each other here.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Small {
    pub(super) demands: Vec<SmallDemand>,
    pub(super) classes: Vec<Vec<usize>>,
    /// Classes of which together one tool serves once.
    pub(super) parts: Vec<(Vec<usize>, u32)>,
}

impl Small {
    /// How many tools of the class can be of use at most.
    pub(super) fn wanted(&self, class: usize) -> u32 {
        let places = self.demands.iter().flat_map(|demand| demand.types.iter().flatten());
        places.filter(|place| place.classes.contains(&class)).map(|place| place.count).sum()
    }
}

/// One finding that wants something here.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct SmallDemand {
    pub(super) finding: Cured,
    pub(super) level: Level,
    pub(super) least: usize,
    pub(super) types: Vec<Vec<SmallSlot>>,
    /// Demands (by index here) that lend their tools, and which classes.
    pub(super) lent: Vec<(usize, Option<Vec<usize>>)>,
    /// For spares: the demand served, and for each class what it fits.
    pub(super) spares: Option<(Option<usize>, BTreeMap<usize, FitsClasses>)>,
}

/// The classes that spares fit; `None`: any.
pub(super) type FitsClasses = Option<Vec<usize>>;

/// So many tools out of these classes.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct SmallSlot {
    pub(super) count: u32,
    pub(super) classes: Vec<usize>,
}

/// One point with what matters in it only.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Reduced {
    /// The judgement, by index into those of the check.
    pub(super) judgement: usize,
    /// What is wanted, by requirement.
    pub(super) demands: PointDemands,
}

impl Reduced {
    /// Leaves out what does not count here: `takes` says which findings are
    /// to be met, or might be; `believed`, which tools of the own kit are
    /// taken as sure although a fact of them is missing.
    pub(super) fn of(
        demands: &PointDemands,
        judgement: usize,
        wide: &Wide,
        takes: impl Fn(Cured, Level) -> bool,
        believed: impl Fn(usize) -> bool,
    ) -> Self {
        let mut wanted: BTreeMap<usize, OpenDemand> = BTreeMap::new();
        for (index, demand) in demands.by_requirement.iter().enumerate() {
            let Some(demand) = demand else { continue };
            if takes(Cured { judgement, requirement: index }, demand.level) {
                wanted.insert(index, trusting(demand, wide, &believed));
            }
        }
        add_lenders(&mut wanted, demands);
        leave_out_settled(&mut wanted, demands, wide);
        let there: BTreeSet<usize> = wanted.keys().copied().collect();
        for demand in wanted.values_mut() {
            demand.lent.retain(|lent| there.contains(&lent.from));
            if let Some(spares) = demand.spares.as_mut().filter(|s| !there.contains(&s.served)) {
                spares.fits.clear();
            }
        }
        let mut by_requirement = vec![None; demands.by_requirement.len()];
        wanted.into_iter().for_each(|(index, demand)| by_requirement[index] = Some(demand));
        let used: BTreeSet<usize> = by_requirement.iter().flatten().flat_map(tools_of).collect();
        let parts = demands.parts.iter().map(|part| {
            let tools = part.tools.iter().copied().filter(|tool| used.contains(tool)).collect();
            SharedPart { tools, ..*part }
        });
        let parts = parts.filter(|part| !part.tools.is_empty()).collect();
        Self { judgement, demands: PointDemands { by_requirement, parts } }
    }

    /// Whether nothing is wanted.
    pub(super) fn is_empty(&self) -> bool {
        self.demands.by_requirement.iter().all(Option::is_none)
    }

    /// The findings that want something.
    pub(super) fn findings(&self) -> impl Iterator<Item = (Cured, &OpenDemand)> {
        let judgement = self.judgement;
        self.demands.by_requirement.iter().enumerate().filter_map(move |(requirement, demand)| {
            demand.as_ref().map(|demand| (Cured { judgement, requirement }, demand))
        })
    }

    /// Only what these findings want, tools numbered anew.
    pub(super) fn of_these(
        &self,
        findings: &BTreeSet<Cured>,
        number: &BTreeMap<usize, usize>,
    ) -> Self {
        let judgement = self.judgement;
        let all = |tools: &[usize]| -> Vec<usize> {
            tools.iter().filter_map(|tool| number.get(tool)).copied().collect()
        };
        let demand = |(requirement, demand): (usize, &Option<OpenDemand>)| {
            let demand = demand.as_ref()?;
            findings.contains(&Cured { judgement, requirement }).then(|| {
                let mut demand = demand.clone();
                for place in demand.types.iter_mut().flatten() {
                    place.tools = all(&place.tools);
                    place.open.clear();
                }
                for lent in &mut demand.lent {
                    lent.tools = lent.tools.as_deref().map(all);
                }
                if let Some(spares) = &mut demand.spares {
                    spares.fits = spares
                        .fits
                        .iter()
                        .filter_map(|(tool, fits)| {
                            Some((*number.get(tool)?, fits.as_deref().map(all)))
                        })
                        .collect();
                }
                demand
            })
        };
        let by_requirement = self.demands.by_requirement.iter().enumerate().map(demand).collect();
        let parts = self.demands.parts.iter();
        let parts = parts.map(|part| SharedPart { tools: all(&part.tools), ..*part });
        let parts = parts.filter(|part| !part.tools.is_empty());
        Self { judgement, demands: PointDemands { by_requirement, parts: parts.collect() } }
    }

    /// The same without the findings that are not among these, and what
    /// leans on them.
    pub(super) fn meeting(&self, findings: &BTreeSet<Cured>) -> Self {
        let mut less = self.clone();
        let judgement = self.judgement;
        let there = |requirement: usize| findings.contains(&Cured { judgement, requirement });
        for (requirement, demand) in less.demands.by_requirement.iter_mut().enumerate() {
            if !there(requirement) {
                *demand = None;
                continue;
            }
            for demand in demand.iter_mut() {
                demand.lent.retain(|lent| there(lent.from));
                if let Some(spares) = demand.spares.as_mut().filter(|s| !there(s.served)) {
                    spares.fits.clear();
                }
            }
        }
        less
    }
}

/// Every tool that a demand speaks of as serving it.
pub(super) fn tools_of(demand: &OpenDemand) -> impl Iterator<Item = usize> {
    demand.types.iter().flatten().flat_map(|place| place.tools.iter().copied())
}

/// Makes a point small.
pub(super) fn small(point: &Reduced) -> Small {
    let wanted: BTreeMap<usize, &OpenDemand> = point
        .demands
        .by_requirement
        .iter()
        .enumerate()
        .filter_map(|(index, demand)| demand.as_ref().map(|demand| (index, demand)))
        .collect();
    let classes = Classes::of(&wanted, &point.demands);
    let at: BTreeMap<usize, usize> = wanted.keys().enumerate().map(|(at, i)| (*i, at)).collect();
    let demands = wanted.iter().map(|(index, demand)| SmallDemand {
        finding: Cured { judgement: point.judgement, requirement: *index },
        level: demand.level,
        least: demand.least,
        types: demand
            .types
            .iter()
            .map(|places| places.iter().map(|place| classes.place(place)).collect())
            .collect(),
        lent: demand.lent.iter().filter_map(|lent| classes.lent(lent, &at)).collect(),
        spares: demand.spares.as_ref().map(|spares| {
            let fits = spares.fits.iter().filter_map(|(tool, fits)| {
                let class = classes.of_tool.get(tool)?;
                Some((*class, fits.as_ref().map(|fits| classes.all(fits))))
            });
            (at.get(&spares.served).copied(), fits.collect())
        }),
    });
    let demands = demands.collect();
    let parts = point.demands.parts.iter();
    let parts = parts.map(|part| (classes.all(&part.tools), part.there));
    let parts = parts.filter(|(classes, _)| !classes.is_empty()).collect();
    Small { demands, parts, classes: classes.tools }
}

/// Recommended findings that nobody asked for take part all the same where
/// they lend their tools to one that counts.
fn add_lenders(wanted: &mut BTreeMap<usize, OpenDemand>, point: &PointDemands) {
    loop {
        let leaned = wanted.values().flat_map(|demand| {
            let spares = demand.spares.as_ref().map(|spares| spares.served);
            demand.lent.iter().map(|lent| lent.from).chain(spares)
        });
        let next = leaned.filter(|index| !wanted.contains_key(index)).find_map(|index| {
            let demand = point.by_requirement.get(index)?.as_ref()?;
            (demand.level == Level::Recommended).then(|| (index, demand.clone()))
        });
        let Some((index, demand)) = next else { return };
        wanted.insert(index, demand);
    }
}

/// The demand with open tools that are believed taken as sure.
fn trusting(demand: &OpenDemand, wide: &Wide, believed: impl Fn(usize) -> bool) -> OpenDemand {
    let mut demand = demand.clone();
    for place in demand.types.iter_mut().flatten() {
        let own = |tool: &&usize| match wide.origins[**tool] {
            Origin::Own(own) => believed(own),
            _ => false,
        };
        place.tools.extend(place.open.iter().filter(own));
    }
    demand
}

/// Leaves out what the own kit meets with tools that nothing else wants, and
/// on which nothing leans.
fn leave_out_settled(wanted: &mut BTreeMap<usize, OpenDemand>, point: &PointDemands, wide: &Wide) {
    let mut places: BTreeMap<usize, u32> = BTreeMap::new();
    for place in wanted.values().flat_map(|demand| demand.types.iter().flatten()) {
        for tool in &place.tools {
            *places.entry(*tool).or_default() += 1;
        }
    }
    let changed: BTreeSet<usize> = wide
        .origins
        .iter()
        .filter_map(|origin| match origin {
            Origin::Changed(changed) => Some(changed.tool),
            _ => None,
        })
        .collect();
    let parts: BTreeSet<usize> = point.parts.iter().flat_map(|part| &part.tools).copied().collect();
    let leaned: BTreeSet<usize> = wanted
        .values()
        .flat_map(|demand| {
            let spares = demand.spares.as_ref().map(|spares| spares.served);
            demand.lent.iter().map(|lent| lent.from).chain(spares)
        })
        .collect();
    let free = |tool: usize| match wide.origins[tool] {
        Origin::Own(_) if places.get(&tool) == Some(&1) => {
            !changed.contains(&tool) && !parts.contains(&tool)
        }
        _ => false,
    };
    let filled = |place: &OpenSlot| {
        let tools = place.tools.iter().filter(|tool| free(**tool));
        let there: u32 = tools.map(|tool| wide.vessel.kit[*tool].count).sum();
        there >= place.count
    };
    wanted.retain(|index, demand| {
        let settled = demand.types.iter().filter(|places| places.iter().all(filled)).count();
        leaned.contains(index) || demand.spares.is_some() || settled < demand.least
    });
}

/// Tools with the same standing everywhere at a point.
struct Classes {
    tools: Vec<Vec<usize>>,
    of_tool: BTreeMap<usize, usize>,
}

/// Where a tool can serve, and what speaks of it by itself.
#[derive(Default, PartialEq, Eq, PartialOrd, Ord, Clone)]
struct Standing {
    places: Vec<(usize, usize, usize)>,
    lent: Vec<(usize, usize)>,
    named: Vec<usize>,
    fits: Vec<(usize, Option<Vec<usize>>)>,
    /// A tool that shares a part stands alone.
    part_of: Option<usize>,
}

impl Classes {
    fn of(wanted: &BTreeMap<usize, &OpenDemand>, point: &PointDemands) -> Self {
        let mut standings: BTreeMap<usize, Standing> = BTreeMap::new();
        for (index, demand) in wanted {
            for (of_type, places) in demand.types.iter().enumerate() {
                for (at, place) in places.iter().enumerate() {
                    for tool in &place.tools {
                        standings.entry(*tool).or_default().places.push((*index, of_type, at));
                    }
                }
            }
        }
        for (index, demand) in wanted {
            for (at, lent) in demand.lent.iter().enumerate() {
                for tool in lent.tools.iter().flatten() {
                    if let Some(standing) = standings.get_mut(tool) {
                        standing.lent.push((*index, at));
                    }
                }
            }
            for (spare, fits) in demand.spares.iter().flat_map(|spares| &spares.fits) {
                if let Some(standing) = standings.get_mut(spare) {
                    standing.fits.push((*index, fits.clone()));
                }
                for tool in fits.iter().flatten() {
                    if let Some(standing) = standings.get_mut(tool) {
                        standing.named.push(*spare);
                    }
                }
            }
        }
        for tool in point.parts.iter().flat_map(|part| &part.tools) {
            if let Some(standing) = standings.get_mut(tool) {
                standing.part_of = Some(*tool);
            }
        }
        let mut classes: BTreeMap<Standing, Vec<usize>> = BTreeMap::new();
        for (tool, standing) in standings {
            classes.entry(standing).or_default().push(tool);
        }
        let mut tools: Vec<Vec<usize>> = classes.into_values().collect();
        tools.sort();
        let number = |(class, tools): (usize, &Vec<usize>)| {
            tools.iter().map(move |tool| (*tool, class)).collect::<Vec<_>>()
        };
        let of_tool = tools.iter().enumerate().flat_map(number).collect();
        Self { tools, of_tool }
    }

    fn all(&self, tools: &[usize]) -> Vec<usize> {
        let classes: BTreeSet<usize> =
            tools.iter().filter_map(|tool| self.of_tool.get(tool)).copied().collect();
        classes.into_iter().collect()
    }

    fn place(&self, place: &OpenSlot) -> SmallSlot {
        SmallSlot { count: place.count, classes: self.all(&place.tools) }
    }

    fn lent(
        &self,
        lent: &Lent,
        at: &BTreeMap<usize, usize>,
    ) -> Option<(usize, Option<Vec<usize>>)> {
        let from = at.get(&lent.from)?;
        Some((*from, lent.tools.as_ref().map(|tools| self.all(tools))))
    }
}
