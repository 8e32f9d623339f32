//! Whether a cluster of findings could be met at all, by the engine's own
//! assignment, if everything came aboard that is of use.

use super::cluster::Cluster;
use super::outcome::Cured;
use super::small::Reduced;
use super::wide::{Changed, Origin};
use crate::engine::demand::Feasibility;
use std::collections::{BTreeMap, BTreeSet};

/// Tools that can stand in for each other throughout a cluster: bought ones,
/// or those of a lot that are changed in one way.
#[derive(Debug, Clone)]
struct Ware {
    /// The tools, by index into the cluster's.
    tools: Vec<usize>,
    /// How many can be of use.
    most: u32,
}

/// Tries kits on a cluster.
pub(super) struct Trial<'c> {
    cluster: &'c Cluster,
    wares: Vec<Ware>,
}

impl<'c> Trial<'c> {
    /// A trial with the tools that `open` allows.
    pub(super) fn new(cluster: &'c Cluster, open: impl Fn(&Origin) -> bool) -> Self {
        let mut most = vec![0_u32; cluster.origins.len()];
        let mut standing: Vec<Vec<Option<usize>>> = vec![Vec::new(); cluster.origins.len()];
        for small in &cluster.smalls {
            standing.iter_mut().for_each(|standing| standing.push(None));
            for (class, tools) in small.classes.iter().enumerate() {
                let wanted = small.wanted(class);
                for tool in tools {
                    most[*tool] = most[*tool].max(wanted);
                    if let Some(last) = standing[*tool].last_mut() {
                        *last = Some(class);
                    }
                }
            }
        }
        let mut goods: BTreeMap<&Vec<Option<usize>>, Vec<usize>> = BTreeMap::new();
        let mut groups: Vec<Vec<usize>> = Vec::new();
        for (tool, origin) in cluster.origins.iter().enumerate() {
            match origin {
                _ if most[tool] == 0 || !open(origin) => {}
                Origin::Own(_) => {}
                Origin::Changed(_) => groups.push(vec![tool]),
                Origin::Bought { .. } => goods.entry(&standing[tool]).or_default().push(tool),
            }
        }
        groups.extend(goods.into_values());
        let lot = |tools: &Vec<usize>| match &cluster.origins[tools[0]] {
            Origin::Changed(Changed { tool: lot, .. }) => {
                cluster.origins.iter().position(|origin| *origin == Origin::Own(*lot))
            }
            _ => None,
        };
        let lots: Vec<Option<usize>> = groups.iter().map(lot).collect();
        let wares = groups.into_iter().zip(&lots).map(|(tools, lot)| {
            let there = lot.map_or(u32::MAX, |lot| cluster.own[lot]);
            Ware { most: most[tools[0]].min(there), tools }
        });
        Self { cluster, wares: wares.collect() }
    }

    /// More of everything than can be of use; lots that are changed count
    /// twice.
    fn at_best(&self) -> Vec<u32> {
        let mut there = self.cluster.own.clone();
        self.wares.iter().for_each(|ware| there[ware.tools[0]] += ware.most);
        there
    }

    /// The findings that cannot be met whatever comes aboard, and whether the
    /// others cannot be met together.
    pub(super) fn impossible(&self, asked: &BTreeSet<Cured>) -> (BTreeSet<Cured>, bool) {
        let best = self.at_best();
        if Points::of(self.cluster, asked, asked).is_met(&best) {
            return (BTreeSet::new(), false);
        }
        let alone = |finding: &&Cured| {
            let one = BTreeSet::from([**finding]);
            !Points::leaning(self.cluster, &one).is_met(&best)
        };
        let impossible: BTreeSet<Cured> = asked.iter().filter(alone).copied().collect();
        let rest: BTreeSet<Cured> = asked.difference(&impossible).copied().collect();
        let contended = !Points::of(self.cluster, &rest, &rest).is_met(&best);
        (impossible, contended)
    }
}

/// The points of a cluster, to be tried.
struct Points(Vec<Feasibility>);

impl Points {
    /// Of the findings that are asked only these are met; those that only
    /// lend their tools may be.
    fn of(cluster: &Cluster, asked: &BTreeSet<Cured>, met: &BTreeSet<Cured>) -> Self {
        let lenders = cluster.findings.difference(asked).copied();
        let there: BTreeSet<Cured> = met.iter().copied().chain(lenders).collect();
        Self::demands(cluster, met, |point| point.meeting(&there))
    }

    /// These are met; all others may be.
    fn leaning(cluster: &Cluster, met: &BTreeSet<Cured>) -> Self {
        Self::demands(cluster, met, Reduced::clone)
    }

    fn demands(
        cluster: &Cluster,
        met: &BTreeSet<Cured>,
        point: impl Fn(&Reduced) -> Reduced,
    ) -> Self {
        let seating = |reduced: &Reduced| {
            let (reduced, judgement) = (point(reduced), reduced.judgement);
            let optional = |requirement| !met.contains(&Cured { judgement, requirement });
            Feasibility::of(&reduced.demands, cluster.origins.len(), optional)
        };
        Self(cluster.points.iter().map(seating).collect())
    }

    fn is_met(&self, there: &[u32]) -> bool {
        self.0.iter().all(|seating| seating.is_met(there))
    }
}
