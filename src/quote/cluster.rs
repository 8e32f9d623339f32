//! The findings of a vessel in clusters that no tool links: each is provided
//! for by itself, and all of them share only what is bought.

use super::needs::Branch;
use super::outcome::Cured;
use super::scene::{self, Reduced, Small, tools_of};
use super::wide::{Changed, Origin};
use crate::model::profile::Level;
use std::collections::{BTreeMap, BTreeSet};

/// Findings that tools link, with everything that could serve them.
#[derive(Debug, Clone)]
pub(super) struct Cluster {
    /// The findings, those that only lend their tools among them.
    pub(super) findings: BTreeSet<Cured>,
    /// What they want, over the tools of the cluster.
    pub(super) scenes: Vec<Reduced>,
    /// Where each tool is from.
    pub(super) origins: Vec<Origin>,
    /// How many of each tool of the own kit there are; none of the others.
    pub(super) own: Vec<u32>,
    /// The scenes made small, one for each.
    pub(super) smalls: Vec<Small>,
}

impl Cluster {
    /// The clusters of a branch, or all of it as one.
    pub(super) fn all(branch: &Branch, scenes: &[Reduced], whole: bool) -> Vec<Self> {
        let mut links = Links::default();
        let everything: BTreeSet<Cured> =
            scenes.iter().flat_map(|scene| scene.findings().map(|(finding, _)| finding)).collect();
        for scene in scenes {
            link(scene, branch, &mut links);
        }
        let mut groups: BTreeMap<Cured, BTreeSet<Cured>> = BTreeMap::new();
        for finding in &everything {
            let head = if whole { everything.first().copied() } else { None };
            let head = head.unwrap_or_else(|| links.head(*finding));
            groups.entry(head).or_default().insert(*finding);
        }
        groups.into_values().map(|findings| Self::of(branch, scenes, findings)).collect()
    }

    fn of(branch: &Branch, scenes: &[Reduced], findings: BTreeSet<Cured>) -> Self {
        let mut tools: BTreeSet<usize> = BTreeSet::new();
        for (finding, want) in scenes.iter().flat_map(Reduced::findings) {
            if findings.contains(&finding) {
                tools.extend(tools_of(want));
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
        let mut own_scenes: Vec<Reduced> = Vec::new();
        for scene in scenes {
            let scene = scene.of_these(&findings, &number);
            if !scene.is_empty() && !own_scenes.contains(&scene) {
                own_scenes.push(scene);
            }
        }
        let origins = tools.iter().map(|tool| branch.wide.origins[*tool].clone());
        let origins = origins.collect();
        let own = tools.iter().map(|tool| match branch.wide.origins[*tool] {
            Origin::Own(_) => branch.wide.vessel.kit[*tool].count,
            _ => 0,
        });
        let smalls = own_scenes.iter().map(scene::small).collect();
        Self { findings, scenes: own_scenes, own: own.collect(), origins, smalls }
    }
}

impl Cluster {
    /// Whether the finding counts towards the verdict.
    pub(super) fn level(&self, finding: Cured) -> Level {
        let of = |scene: &Reduced| {
            let seat = scene.wants.seats.get(finding.requirement)?.as_ref()?;
            (scene.judgement == finding.judgement).then_some(seat.level)
        };
        self.scenes.iter().find_map(of).unwrap_or(Level::Required)
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

fn link(scene: &Reduced, branch: &Branch, links: &mut Links) {
    let judgement = scene.judgement;
    for (finding, want) in scene.findings() {
        for tool in tools_of(want) {
            links.claim(finding, tool);
            if let Origin::Changed(changed) = &branch.wide.origins[tool] {
                links.claim(finding, changed.tool);
            }
        }
        let spares = want.spares.as_ref().map(|spares| spares.served);
        for requirement in want.lent.iter().map(|lent| lent.from).chain(spares) {
            let other = Cured { judgement, requirement };
            if scene.wants.seats[requirement].is_some() {
                links.join(finding, other);
            }
        }
    }
    for part in &scene.wants.parts {
        let first = part.first().and_then(|tool| links.of_tool.get(tool)).copied();
        for tool in part {
            if let (Some(first), Some(other)) = (first, links.of_tool.get(tool).copied()) {
                links.join(first, other);
            }
        }
    }
}
