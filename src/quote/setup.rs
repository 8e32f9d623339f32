//! From a case to its program: the columns and rows of each vessel, then
//! those of the order.

use super::case::Case;
use super::cluster::Cluster;
use super::needs::{Branch, Needs};
use super::outcome::Offer;
use super::plan::Plan;
use super::program::{Side, Sum};
use super::prune;
use super::rows::{Desk, MOST_PIECES};
use super::trial::Trial;
use super::wide::{self, Changed, Origin};
use std::collections::{BTreeMap, BTreeSet};

impl Plan {
    /// The program of the case.
    pub(super) fn of(case: &Case<'_>) -> Self {
        let mut plan = Self::default();
        let clusters: Vec<Vec<Vec<Cluster>>> =
            (0..case.needs.len()).map(|vessel| case.clusters(vessel)).collect();
        let (kept, demand) = prune::kept(case, &clusters);
        for (vessel, needs) in case.needs.iter().enumerate() {
            plan.goods.push(BTreeMap::new());
            plan.changes.push(Vec::new());
            plan.ready.push(None);
            let shop = Shop { kept: &kept[vessel], demand: &demand };
            plan.vessel(case, vessel, needs, &clusters[vessel], shop);
        }
        plan.order(case);
        plan
    }

    fn vessel(
        &mut self,
        case: &Case<'_>,
        vessel: usize,
        needs: &Needs,
        clusters: &[Vec<Cluster>],
        shop: Shop<'_>,
    ) {
        let kept = shop.kept;
        let branches = case.branches(vessel, needs);
        let gates: Vec<Option<usize>> = match branches.len() {
            1 => vec![None],
            _ => branches.iter().map(|_| Some(self.program.whole(1))).collect(),
        };
        if gates.len() > 1 {
            let one = gates.iter().flatten().map(|gate| (*gate, 1.0)).collect();
            self.program.row(one, Side::Equal, 1.0);
        }
        let changes = match clusters {
            [clusters] if case.pruned => prune::changes(case, clusters, kept, shop.demand),
            _ => changes(branches, clusters, kept),
        };
        let mut useful: BTreeMap<Offer, u32> = BTreeMap::new();
        for (clusters, gate) in clusters.iter().zip(&gates) {
            for cluster in clusters {
                let point_useful = BTreeMap::new();
                let (gate, changes) = (*gate, &changes);
                let soft = case.soft && (gate.is_some() || shop.is_scarce(case, cluster));
                let mut desk = Desk {
                    plan: self,
                    case,
                    vessel,
                    cluster,
                    gate,
                    kept,
                    changes,
                    soft,
                    point_useful,
                };
                desk.cluster();
                for (offer, count) in desk.point_useful {
                    *useful.entry(offer).or_default() += count;
                }
            }
        }
        for changed in &changes {
            // One that no point mentions may bring something aboard.
            if !self.changes[vessel].iter().any(|(known, _)| known == changed) {
                let kit = branches.first().map(|branch| &branch.wide.vessel.kit);
                let column = self.program.whole(kit.map_or(0, |kit| kit[changed.tool].count));
                self.changes[vessel].push((changed.clone(), column));
            }
        }
        if gates.len() > 1 {
            for offer in bringing(branches).filter(|offer| kept.contains(offer)) {
                *useful.entry(offer).or_default() += 1;
                let program = &mut self.program;
                self.goods[vessel].entry(offer).or_insert_with(|| program.whole(MOST_PIECES));
            }
        }
        for (branch, gate) in branches.iter().zip(gates) {
            if let Some(gate) = gate {
                self.comes_aboard(vessel, branch, gate);
            }
        }
        for (offer, count) in useful {
            *self.useful.entry(offer).or_default() += count;
        }
        // No lot is changed oftener than it has tools.
        let mut lots: BTreeMap<usize, Sum> = BTreeMap::new();
        for (changed, column) in &self.changes[vessel] {
            lots.entry(changed.tool).or_default().push((*column, 1.0));
        }
        let kit = branches.first().map(|branch| &branch.wide.vessel.kit);
        for (tool, sum) in lots {
            let count = kit.map_or(0, |kit| kit[tool].count);
            self.program.row(sum, Side::AtMost, f64::from(count));
        }
    }

    /// In a branch for certain kinds these come aboard, and what the branch
    /// leaves out does not.
    fn comes_aboard(&mut self, vessel: usize, branch: &Branch, gate: usize) {
        let (goods, changes) = (&self.goods[vessel], &self.changes[vessel]);
        let column = |origin: &Origin| match origin {
            Origin::Own(_) => None,
            Origin::Changed(changed) => changes.iter().find(|(c, _)| c == changed).map(|(_, c)| *c),
            Origin::Bought { offer, .. } => goods.get(offer).copied(),
        };
        let origins = &branch.wide.origins;
        let here: BTreeSet<usize> = origins.iter().filter_map(column).collect();
        let all = goods.values().copied().chain(changes.iter().map(|(_, column)| *column));
        let left_out: Vec<usize> = all.filter(|column| !here.contains(column)).collect();
        let brought = branch.with.iter().map(|kind| {
            let brings = |tool: &usize| branch.brings(*tool, *kind);
            let tools = (0..origins.len()).filter(brings);
            let columns: BTreeSet<usize> =
                tools.filter_map(|tool| column(&origins[tool])).collect();
            columns.into_iter().map(|column| (column, 1.0)).chain([(gate, -1.0)]).collect()
        });
        let brought: Vec<Sum> = brought.collect();
        for sum in brought {
            self.program.row(sum, Side::AtLeast, 0.0);
        }
        let most = f64::from(MOST_PIECES);
        for column in left_out {
            self.program.row(vec![(column, 1.0), (gate, most)], Side::AtMost, most);
        }
    }
}

/// What is sold.
#[derive(Clone, Copy)]
struct Shop<'s> {
    /// The items that take part.
    kept: &'s BTreeSet<Offer>,
    /// How many tools of each could be of use to all vessels together.
    demand: &'s BTreeMap<Offer, u32>,
}

impl Shop<'_> {
    /// Whether the cluster needs goods for which vessels may compete. If not
    /// it can be met whatever the others do.
    fn is_scarce(self, case: &Case<'_>, cluster: &Cluster) -> bool {
        let plenty = |origin: &Origin| match origin {
            Origin::Bought { offer, .. } if self.kept.contains(offer) => {
                let pack = wide::item(case.order, *offer).pack;
                let wanted = self.demand.get(offer).copied().unwrap_or(0);
                case.stock(*offer).is_none_or(|stock| stock.saturating_mul(pack) >= wanted)
            }
            _ => false,
        };
        let asked = case.asked(cluster);
        let (impossible, contended) = Trial::new(cluster, plenty).impossible(&asked);
        contended || !impossible.is_empty()
    }
}

/// The items that bring a kind aboard on which it depends what else is wanted.
fn bringing(branches: &[Branch]) -> impl Iterator<Item = Offer> {
    branches.iter().flat_map(|branch| {
        let origins = branch.wide.origins.iter().enumerate();
        origins.filter_map(|(tool, origin)| match origin {
            Origin::Bought { offer, .. }
                if branch.with.iter().any(|kind| branch.brings(tool, *kind)) =>
            {
                Some(*offer)
            }
            _ => None,
        })
    })
}

/// The changes of tools aboard that serve anywhere, with items that may be
/// bought.
fn changes(branches: &[Branch], clusters: &[Vec<Cluster>], kept: &BTreeSet<Offer>) -> Vec<Changed> {
    let mut changes: Vec<Changed> = Vec::new();
    for (branch, clusters) in branches.iter().zip(clusters) {
        let brought = (0..branch.wide.origins.len())
            .filter(|tool| branch.with.iter().any(|kind| branch.brings(*tool, *kind)))
            .map(|tool| &branch.wide.origins[tool]);
        let serving = clusters.iter().flat_map(|cluster| &cluster.origins);
        for origin in serving.chain(brought) {
            if let Origin::Changed(changed) = origin
                && changed.by.iter().all(|(offer, _)| kept.contains(offer))
                && !changes.contains(changed)
            {
                changes.push(changed.clone());
            }
        }
    }
    changes
}
