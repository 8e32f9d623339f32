//! What is wanted in one scene, made small: tools that stand in for each
//! other brought together, and what the own kit settles by itself left out.

use super::outcome::Cured;
use super::wide::{Origin, Wide};
use crate::engine::wants::{Lent, Place, SceneWants, Want};
use crate::model::profile::Level;
use std::collections::{BTreeMap, BTreeSet};

/// One scene in numbers. Classes are sets of tools of the wide kit that can
/// stand in for each other here.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Small {
    pub(super) seats: Vec<SmallSeat>,
    pub(super) classes: Vec<Vec<usize>>,
    /// Classes of which together one tool serves once.
    pub(super) parts: Vec<Vec<usize>>,
}

impl Small {
    /// How many tools of the class can be of use at most.
    pub(super) fn wanted(&self, class: usize) -> u32 {
        let places = self.seats.iter().flat_map(|seat| seat.types.iter().flatten());
        places.filter(|place| place.classes.contains(&class)).map(|place| place.count).sum()
    }
}

/// One finding that wants something here.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct SmallSeat {
    pub(super) finding: Cured,
    pub(super) level: Level,
    pub(super) least: usize,
    pub(super) types: Vec<Vec<SmallPlace>>,
    /// Seats (by index here) that lend their tools, and which classes.
    pub(super) lent: Vec<(usize, Option<Vec<usize>>)>,
    /// For spares: the seat served, and for each class what it fits.
    pub(super) spares: Option<(Option<usize>, BTreeMap<usize, FitsClasses>)>,
}

/// The classes that spares fit; `None`: any.
pub(super) type FitsClasses = Option<Vec<usize>>;

/// So many tools out of these classes.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct SmallPlace {
    pub(super) count: u32,
    pub(super) classes: Vec<usize>,
}

/// One scene with what matters in it only.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Reduced {
    /// The judgement, by index into those of the check.
    pub(super) judgement: usize,
    /// What is wanted, by requirement.
    pub(super) wants: SceneWants,
}

impl Reduced {
    /// Leaves out what does not count here: `takes` says which findings are
    /// to be met, or might be; `believed`, which tools of the own kit are
    /// taken as sure although a fact of them is missing.
    pub(super) fn of(
        wants: &SceneWants,
        judgement: usize,
        wide: &Wide,
        takes: impl Fn(Cured, Level) -> bool,
        believed: impl Fn(usize) -> bool,
    ) -> Self {
        let mut wanted: BTreeMap<usize, Want> = BTreeMap::new();
        for (index, want) in wants.seats.iter().enumerate() {
            let Some(want) = want else { continue };
            if takes(Cured { judgement, requirement: index }, want.level) {
                wanted.insert(index, trusting(want, wide, &believed));
            }
        }
        add_lenders(&mut wanted, wants);
        leave_out_settled(&mut wanted, wants, wide);
        let there: BTreeSet<usize> = wanted.keys().copied().collect();
        for want in wanted.values_mut() {
            want.lent.retain(|lent| there.contains(&lent.from));
            if let Some(spares) = want.spares.as_mut().filter(|s| !there.contains(&s.served)) {
                spares.fits.clear();
            }
        }
        let mut seats = vec![None; wants.seats.len()];
        wanted.into_iter().for_each(|(index, want)| seats[index] = Some(want));
        let used: BTreeSet<usize> = seats.iter().flatten().flat_map(tools_of).collect();
        let parts = wants.parts.iter().map(|part| {
            part.iter().copied().filter(|tool| used.contains(tool)).collect::<Vec<_>>()
        });
        let parts = parts.filter(|part| !part.is_empty()).collect();
        Self { judgement, wants: SceneWants { seats, parts } }
    }

    /// Whether nothing is wanted.
    pub(super) fn is_empty(&self) -> bool {
        self.wants.seats.iter().all(Option::is_none)
    }

    /// The findings that want something.
    pub(super) fn findings(&self) -> impl Iterator<Item = (Cured, &Want)> {
        let judgement = self.judgement;
        self.wants.seats.iter().enumerate().filter_map(move |(requirement, want)| {
            want.as_ref().map(|want| (Cured { judgement, requirement }, want))
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
        let seat = |(requirement, want): (usize, &Option<Want>)| {
            let want = want.as_ref()?;
            findings.contains(&Cured { judgement, requirement }).then(|| {
                let mut want = want.clone();
                for place in want.types.iter_mut().flatten() {
                    place.tools = all(&place.tools);
                    place.open.clear();
                }
                for lent in &mut want.lent {
                    lent.tools = lent.tools.as_deref().map(all);
                }
                if let Some(spares) = &mut want.spares {
                    spares.fits = spares
                        .fits
                        .iter()
                        .filter_map(|(tool, fits)| {
                            Some((*number.get(tool)?, fits.as_deref().map(all)))
                        })
                        .collect();
                }
                want
            })
        };
        let seats = self.wants.seats.iter().enumerate().map(seat).collect();
        let parts = self.wants.parts.iter().map(|part| all(part)).filter(|part| !part.is_empty());
        Self { judgement, wants: SceneWants { seats, parts: parts.collect() } }
    }

    /// The same without the findings that are not among these, and what
    /// leans on them.
    pub(super) fn meeting(&self, findings: &BTreeSet<Cured>) -> Self {
        let mut less = self.clone();
        let judgement = self.judgement;
        let there = |requirement: usize| findings.contains(&Cured { judgement, requirement });
        for (requirement, seat) in less.wants.seats.iter_mut().enumerate() {
            if !there(requirement) {
                *seat = None;
                continue;
            }
            for want in seat.iter_mut() {
                want.lent.retain(|lent| there(lent.from));
                if let Some(spares) = want.spares.as_mut().filter(|s| !there(s.served)) {
                    spares.fits.clear();
                }
            }
        }
        less
    }
}

/// Every tool that a want speaks of as serving it.
pub(super) fn tools_of(want: &Want) -> impl Iterator<Item = usize> {
    want.types.iter().flatten().flat_map(|place| place.tools.iter().copied())
}

/// Makes a scene small.
pub(super) fn small(scene: &Reduced) -> Small {
    let wanted: BTreeMap<usize, &Want> = scene
        .wants
        .seats
        .iter()
        .enumerate()
        .filter_map(|(index, want)| want.as_ref().map(|want| (index, want)))
        .collect();
    let classes = Classes::of(&wanted, &scene.wants);
    let at: BTreeMap<usize, usize> = wanted.keys().enumerate().map(|(at, i)| (*i, at)).collect();
    let seats = wanted.iter().map(|(index, want)| SmallSeat {
        finding: Cured { judgement: scene.judgement, requirement: *index },
        level: want.level,
        least: want.least,
        types: want
            .types
            .iter()
            .map(|places| places.iter().map(|place| classes.place(place)).collect())
            .collect(),
        lent: want.lent.iter().filter_map(|lent| classes.lent(lent, &at)).collect(),
        spares: want.spares.as_ref().map(|spares| {
            let fits = spares.fits.iter().filter_map(|(tool, fits)| {
                let class = classes.of_tool.get(tool)?;
                Some((*class, fits.as_ref().map(|fits| classes.all(fits))))
            });
            (at.get(&spares.served).copied(), fits.collect())
        }),
    });
    let seats = seats.collect();
    let parts = scene.wants.parts.iter().map(|tools| classes.all(tools));
    let parts = parts.filter(|classes| !classes.is_empty()).collect();
    Small { seats, parts, classes: classes.tools }
}

/// Recommended findings that nobody asked for take part all the same where
/// they lend their tools to one that counts.
fn add_lenders(wanted: &mut BTreeMap<usize, Want>, scene: &SceneWants) {
    loop {
        let leaned = wanted.values().flat_map(|want| {
            let spares = want.spares.as_ref().map(|spares| spares.served);
            want.lent.iter().map(|lent| lent.from).chain(spares)
        });
        let next = leaned.filter(|index| !wanted.contains_key(index)).find_map(|index| {
            let want = scene.seats.get(index)?.as_ref()?;
            (want.level == Level::Recommended).then(|| (index, want.clone()))
        });
        let Some((index, want)) = next else { return };
        wanted.insert(index, want);
    }
}

/// The want with open tools that are believed taken as sure.
fn trusting(want: &Want, wide: &Wide, believed: impl Fn(usize) -> bool) -> Want {
    let mut want = want.clone();
    for place in want.types.iter_mut().flatten() {
        let own = |tool: &&usize| match wide.origins[**tool] {
            Origin::Own(own) => believed(own),
            _ => false,
        };
        place.tools.extend(place.open.iter().filter(own));
    }
    want
}

/// Leaves out what the own kit meets with tools that nothing else wants, and
/// on which nothing leans.
fn leave_out_settled(wanted: &mut BTreeMap<usize, Want>, scene: &SceneWants, wide: &Wide) {
    let mut places: BTreeMap<usize, u32> = BTreeMap::new();
    for place in wanted.values().flat_map(|want| want.types.iter().flatten()) {
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
    let parts: BTreeSet<usize> = scene.parts.iter().flatten().copied().collect();
    let leaned: BTreeSet<usize> = wanted
        .values()
        .flat_map(|want| {
            let spares = want.spares.as_ref().map(|spares| spares.served);
            want.lent.iter().map(|lent| lent.from).chain(spares)
        })
        .collect();
    let free = |tool: usize| match wide.origins[tool] {
        Origin::Own(_) if places.get(&tool) == Some(&1) => {
            !changed.contains(&tool) && !parts.contains(&tool)
        }
        _ => false,
    };
    let filled = |place: &Place| {
        let tools = place.tools.iter().filter(|tool| free(**tool));
        let there: u32 = tools.map(|tool| wide.vessel.kit[*tool].count).sum();
        there >= place.count
    };
    wanted.retain(|index, want| {
        let settled = want.types.iter().filter(|places| places.iter().all(filled)).count();
        leaned.contains(index) || want.spares.is_some() || settled < want.least
    });
}

/// Tools with the same standing everywhere in a scene.
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
    fn of(wanted: &BTreeMap<usize, &Want>, scene: &SceneWants) -> Self {
        let mut standings: BTreeMap<usize, Standing> = BTreeMap::new();
        for (index, want) in wanted {
            for (of_type, places) in want.types.iter().enumerate() {
                for (at, place) in places.iter().enumerate() {
                    for tool in &place.tools {
                        standings.entry(*tool).or_default().places.push((*index, of_type, at));
                    }
                }
            }
        }
        for (index, want) in wanted {
            for (at, lent) in want.lent.iter().enumerate() {
                for tool in lent.tools.iter().flatten() {
                    if let Some(standing) = standings.get_mut(tool) {
                        standing.lent.push((*index, at));
                    }
                }
            }
            for (spare, fits) in want.spares.iter().flat_map(|spares| &spares.fits) {
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
        for tool in scene.parts.iter().flatten() {
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

    fn place(&self, place: &Place) -> SmallPlace {
        SmallPlace { count: place.count, classes: self.all(&place.tools) }
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
