//! The findings of a vessel in clusters that no tool links: each is provided
//! for by itself, and all of them share only what is bought.

use super::needs::Branch;
use super::outcome::Cured;
use super::small::{Reduced, Small, small, tools_of};
use super::wide::{Changed, Origin};
use crate::model::profile::Level;
use std::collections::{BTreeMap, BTreeSet};

/// Findings that tools link, with everything that could serve them.
#[derive(Debug, Clone)]
pub(super) struct Cluster {
    /// The findings, those that only lend their tools among them.
    pub(super) findings: BTreeSet<Cured>,
    /// What they want, over the tools of the cluster.
    pub(super) points: Vec<Reduced>,
    /// Where each tool is from.
    pub(super) origins: Vec<Origin>,
    /// How many of each tool of the own kit there are; none of the others.
    pub(super) own: Vec<u32>,
    /// The points made small, one for each.
    pub(super) smalls: Vec<Small>,
}

impl Cluster {
    /// The clusters of a branch, or all of it as one.
    pub(super) fn all(branch: &Branch, points: &[Reduced], whole: bool) -> Vec<Self> {
        let mut links = Links::default();
        let everything: BTreeSet<Cured> =
            points.iter().flat_map(|point| point.findings().map(|(finding, _)| finding)).collect();
        for point in points {
            link(point, branch, &mut links);
        }
        let mut groups: BTreeMap<Cured, BTreeSet<Cured>> = BTreeMap::new();
        for finding in &everything {
            let head = if whole { everything.first().copied() } else { None };
            let head = head.unwrap_or_else(|| links.head(*finding));
            groups.entry(head).or_default().insert(*finding);
        }
        groups.into_values().map(|findings| Self::of(branch, points, findings)).collect()
    }

    fn of(branch: &Branch, points: &[Reduced], findings: BTreeSet<Cured>) -> Self {
        let mut tools: BTreeSet<usize> = BTreeSet::new();
        for (finding, demand) in points.iter().flat_map(Reduced::findings) {
            if findings.contains(&finding) {
                tools.extend(tools_of(demand));
            }
        }
        // A lot counts what was changed of it.
        let lots = tools.iter().filter_map(|tool| match &branch.wide.origins[*tool] {
            Origin::Changed(changed) => Some(changed.tool),
            _ => None,
        });
        let lots: Vec<usize> = lots.collect();
        tools.extend(lots);
        let number: BTreeMap<usize, usize> =
            tools.iter().enumerate().map(|(new, old)| (*old, new)).collect();
        let mut own_points: Vec<Reduced> = Vec::new();
        for point in points {
            let point = point.of_these(&findings, &number);
            if !point.is_empty() && !own_points.contains(&point) {
                own_points.push(point);
            }
        }
        let origins = tools.iter().map(|tool| branch.wide.origins[*tool].clone());
        let origins = origins.collect();
        let own = tools.iter().map(|tool| match branch.wide.origins[*tool] {
            Origin::Own(_) => branch.wide.vessel.kit[*tool].count,
            _ => 0,
        });
        let smalls = own_points.iter().map(small).collect();
        Self { findings, points: own_points, own: own.collect(), origins, smalls }
    }
}

impl Cluster {
    /// Whether the finding counts towards the verdict.
    pub(super) fn level(&self, finding: Cured) -> Level {
        let of = |point: &Reduced| {
            let demand = point.demands.by_requirement.get(finding.requirement)?.as_ref()?;
            (point.judgement == finding.judgement).then_some(demand.level)
        };
        self.points.iter().find_map(of).unwrap_or(Level::Required)
    }

    /// How many tools the lot has that is changed.
    pub(super) fn lot(&self, changed: &Changed) -> u32 {
        let lot = self.origins.iter().position(|origin| *origin == Origin::Own(changed.tool));
        lot.map_or(0, |lot| self.own[lot])
    }
}

/// Which findings are linked.
#[derive(Default)]
struct Links {
    above: BTreeMap<Cured, Cured>,
    of_tool: BTreeMap<usize, Cured>,
}

impl Links {
    fn head(&self, mut finding: Cured) -> Cured {
        while let Some(above) = self.above.get(&finding) {
            finding = *above;
        }
        finding
    }

    fn join(&mut self, one: Cured, other: Cured) {
        let (one, other) = (self.head(one), self.head(other));
        if one != other {
            self.above.insert(one.max(other), one.min(other));
        }
    }

    fn claim(&mut self, finding: Cured, tool: usize) {
        match self.of_tool.get(&tool).copied() {
            Some(other) => self.join(finding, other),
            None => drop(self.of_tool.insert(tool, finding)),
        }
    }
}

fn link(point: &Reduced, branch: &Branch, links: &mut Links) {
    let judgement = point.judgement;
    for (finding, demand) in point.findings() {
        for tool in tools_of(demand) {
            links.claim(finding, tool);
            if let Origin::Changed(changed) = &branch.wide.origins[tool] {
                links.claim(finding, changed.tool);
            }
        }
        let spares = demand.spares.as_ref().map(|spares| spares.served);
        for requirement in demand.lent.iter().map(|lent| lent.from).chain(spares) {
            let other = Cured { judgement, requirement };
            if point.demands.by_requirement[requirement].is_some() {
                links.join(finding, other);
            }
        }
    }
    for part in &point.demands.parts {
        let first = part.tools.first().and_then(|tool| links.of_tool.get(tool)).copied();
        for tool in &part.tools {
            if let (Some(first), Some(other)) = (first, links.of_tool.get(tool).copied()) {
                links.join(first, other);
            }
        }
    }
}
