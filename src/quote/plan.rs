//! The order as an integer program: which packs, which pieces for which
//! vessel, which tool where at each point.
//!
//! Amounts are in whole units of the currency; the tax is a whole number of
//! coins, rounded as the order's tax is.

use super::basket::{Basket, Part};
use super::cluster::Cluster;
use super::needs::{Branch, Needs};
use super::order::Order;
use super::outcome::{Cured, Offer};
use super::program::{Found, Program, Side, Sum};
use super::rows::{Desk, MOST_PIECES};
use super::trial::Trial;
use super::unmet;
use super::wide::{self, Changed, Origin};
use crate::model::catalogue::Gives;
use crate::model::profile::Level;
use std::collections::{BTreeMap, BTreeSet};

/// What the program is to hold.
#[derive(Debug, Clone, Copy)]
pub(super) struct Case<'a> {
    /// What was asked.
    pub(super) order: &'a Order<'a>,
    /// What the vessels need.
    pub(super) needs: &'a [Needs],
    /// Findings that are not looked at, by vessel.
    pub(super) waived: &'a BTreeSet<(usize, Cured)>,
    /// Items that may not be bought.
    pub(super) barred: &'a BTreeSet<Offer>,
    /// The only vessel that is looked at, if not all are.
    pub(super) only: Option<usize>,
    /// Packs that are gone already.
    pub(super) taken: &'a BTreeMap<Offer, u32>,
    /// Whether findings may stay open.
    pub(super) soft: bool,
    /// Whether packs may be broken, and delivery and the tax's rounding cost
    /// nothing: what no vessel's share of any order can be below.
    pub(super) relaxed: bool,
    /// Tools aboard, by vessel and index, that are believed although a fact
    /// of them is missing.
    pub(super) believed: &'a BTreeSet<(usize, usize)>,
    /// Whether items that others undercut are left out. Free delivery is
    /// then reached by any sum, which may be too good to be true.
    pub(super) pruned: bool,
}

/// The program and what its columns mean.
#[derive(Debug, Default)]
pub(super) struct Plan {
    pub(super) program: Program,
    /// What the order costs.
    pub(super) cost: Sum,
    /// Findings that may stay open.
    pub(super) met: BTreeMap<(usize, Cured), (Level, usize)>,
    /// For each vessel, whether all its required findings are met.
    pub(super) ready: Vec<Option<usize>>,
    /// Money that is paid for nothing to reach free delivery.
    fillers: Vec<usize>,
    pub(super) packs: BTreeMap<Offer, usize>,
    pub(super) goods: Vec<BTreeMap<Offer, usize>>,
    pub(super) changes: Vec<Vec<(Changed, usize)>>,
    /// How many pieces could be of use.
    pub(super) useful: BTreeMap<Offer, u32>,
}

impl Plan {
    /// The program of the case.
    pub(super) fn of(case: &Case<'_>) -> Self {
        let mut plan = Self::default();
        let clusters: Vec<Vec<Vec<Cluster>>> =
            (0..case.needs.len()).map(|vessel| case.clusters(vessel)).collect();
        let (kept, demand) = super::prune::kept(case, &clusters);
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

    /// What the solver found, as a basket.
    pub(super) fn basket(&self, found: &Found) -> Basket {
        let value = |column: usize| found.values[column].max(0.0) as u32;
        let bought = |(offer, column): (&Offer, &usize)| {
            Some((*offer, value(*column))).filter(|(_, count)| *count > 0)
        };
        let parts = self.goods.iter().zip(&self.changes).map(|(goods, changes)| Part {
            goods: goods.iter().filter_map(bought).collect(),
            changes: changes
                .iter()
                .map(|(changed, column)| (changed.clone(), value(*column)))
                .filter(|(_, times)| *times > 0)
                .collect(),
        });
        let parts = parts.collect();
        Basket { packs: self.packs.iter().filter_map(bought).collect(), parts }
    }

    /// Whether money was paid for nothing, so that the cost is only a bound.
    pub(super) fn is_filled(&self, found: &Found) -> bool {
        self.fillers.iter().any(|column| found.values[*column] > 1e-6)
    }

    /// Columns that say whether a vessel is ready, a required and a
    /// recommended finding is met; of vessels that can be ready at all.
    pub(super) fn worthwhile(&self, case: &Case<'_>) -> [Vec<usize>; 3] {
        let of = |level: Level| {
            let met = self.met.values().filter(move |(of, _)| *of == level);
            met.map(|(_, column)| *column).collect()
        };
        let hopeless = |vessel: usize| {
            let required = |finding: &Cured| {
                let demands = case.needs[vessel].branches.first().map(|branch| &branch.demands);
                let of = demands.and_then(|demands| demands.get(finding.judgement));
                let requirement = of.map(|of| &of.profile.requirements[finding.requirement]);
                requirement.is_none_or(|requirement| requirement.level == Level::Required)
            };
            case.waived.iter().any(|(v, finding)| *v == vessel && required(finding))
        };
        let ready = self.ready.iter().enumerate().filter(|(vessel, _)| !hopeless(*vessel));
        let ready = ready.filter_map(|(_, column)| *column).collect();
        [ready, of(Level::Required), of(Level::Recommended)]
    }

    /// From now on as much is to be met as with these values.
    pub(super) fn keep_as_good(&mut self, values: &[f64], case: &Case<'_>) {
        for columns in self.worthwhile(case) {
            let met: f64 = columns.iter().map(|column| values[*column]).sum();
            let sum = columns.into_iter().map(|column| (column, 1.0)).collect();
            self.program.row(sum, Side::AtLeast, met);
        }
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
            [clusters] if case.pruned => super::prune::changes(case, clusters, kept, shop.demand),
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

    /// Packs, stock, delivery and tax.
    fn order(&mut self, case: &Case<'_>) {
        let mut pieces: BTreeMap<Offer, Sum> = BTreeMap::new();
        for (goods, changes) in self.goods.iter().zip(&self.changes) {
            for (offer, column) in goods {
                pieces.entry(*offer).or_default().push((*column, 1.0));
            }
            for (changed, column) in changes {
                for (offer, count) in &changed.by {
                    pieces.entry(*offer).or_default().push((*column, f64::from(*count)));
                }
            }
        }
        if !case.pruned {
            for offer in case.fillers() {
                pieces.entry(offer).or_default();
            }
        }
        for catalogue in 0..case.order.catalogues.len() {
            let own = pieces.iter().filter(|(offer, _)| offer.catalogue == catalogue);
            let own: Vec<_> = own.map(|(offer, sum)| (*offer, sum.clone())).collect();
            if !own.is_empty() {
                self.supplier(case, catalogue, own);
            }
        }
    }

    fn supplier(&mut self, case: &Case<'_>, catalogue: usize, pieces: Vec<(Offer, Sum)>) {
        let supplier = &case.order.catalogues[catalogue];
        let unit = 10_f64.powi(i32::try_from(supplier.currency.digits()).unwrap_or(2));
        let amount = |money: crate::measure::Money| money.coins(supplier.currency) as f64 / unit;
        let charge = if case.relaxed { 0.0 } else { amount(supplier.delivery.charge) };
        let free_from = supplier.delivery.free_from.map(amount);
        let pays = (charge > 0.0).then(|| self.program.ranked(1, 3));
        let free = pays.and(free_from).map(|_| self.program.ranked(1, 3));
        let mut goods: Sum = Vec::new();
        for (offer, sum) in pieces {
            let item = wide::item(case.order, offer);
            let price = amount(item.price);
            let useful = self.useful.get(&offer).copied().unwrap_or(0).div_ceil(item.pack);
            let filling = match (case.pruned, free_from) {
                (false, Some(from)) => (from / price).ceil() as u32,
                _ => 0,
            };
            let most = useful.max(filling).max(item.least);
            let most = most.min(case.stock(offer).unwrap_or(u32::MAX));
            let packs = self.program.ranked(most, 2);
            self.program.columns[packs].whole = !case.relaxed;
            self.packs.insert(offer, packs);
            goods.push((packs, price));
            let mut enough = sum;
            enough.push((packs, -f64::from(item.pack)));
            self.program.row(enough, Side::AtMost, 0.0);
            if item.least > 1 && !case.relaxed {
                let any = self.program.ranked(1, 3);
                let least = vec![(packs, 1.0), (any, -f64::from(item.least))];
                self.program.row(least, Side::AtLeast, 0.0);
                self.program.row(vec![(packs, 1.0), (any, -f64::from(most))], Side::AtMost, 0.0);
            }
            if let Some(pays) = pays {
                let mut used = vec![(packs, 1.0), (pays, -f64::from(most))];
                used.extend(free.map(|free| (free, -f64::from(most))));
                self.program.row(used, Side::AtMost, 0.0);
            }
        }
        if let (Some(free), Some(from)) = (free, free_from) {
            let mut reached = goods.clone();
            if case.pruned {
                let filler = self.program.amount();
                self.fillers.push(filler);
                goods.push((filler, 1.0));
                reached.push((filler, 1.0));
            }
            reached.push((free, -from));
            self.program.row(reached, Side::AtLeast, 0.0);
        }
        let mut cost = goods;
        cost.extend(pays.map(|pays| (pays, charge)));
        let rate = supplier.tax.thousandths() as f64 / 100_000.0;
        if rate > 0.0 {
            let tax = self.program.ranked(MOST_TAX, 0);
            self.program.columns[tax].whole = !case.relaxed;
            // Half a coin is rounded up: the tax is more than what is half a
            // coin less. Rates have five digits after the point; the row is
            // written large, so that no solver takes the difference for none.
            let mut row = vec![(tax, LARGE)];
            row.extend(cost.iter().map(|(column, f)| (*column, -f * rate * unit * LARGE)));
            self.program.least_with.push((tax, self.program.rows.len()));
            self.program.row(row, Side::AtLeast, (-0.5 + 9e-6) * LARGE);
            cost.push((tax, 1.0 / unit));
        }
        self.cost.extend(cost);
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

impl Case<'_> {
    /// The clusters of each branch of the vessel.
    pub(super) fn clusters(&self, vessel: usize) -> Vec<Vec<Cluster>> {
        let takes = |finding, level| self.takes(vessel, finding, level);
        let believed = |tool| self.believed.contains(&(vessel, tool));
        let branches = self.branches(vessel, &self.needs[vessel]);
        let whole = branches.len() > 1;
        branches
            .iter()
            .map(|branch| Cluster::all(branch, &branch.points(takes, believed), whole))
            .collect()
    }

    /// The findings of a cluster that are to be met, not only to lend.
    pub(super) fn asked(&self, cluster: &Cluster) -> BTreeSet<Cured> {
        let asked = |finding: &&Cured| {
            self.order.with_recommended || cluster.level(**finding) == Level::Required
        };
        cluster.findings.iter().filter(asked).copied().collect()
    }

    /// The branches of the vessel, if it is looked at.
    pub(super) fn branches<'n>(&self, vessel: usize, needs: &'n Needs) -> &'n [Branch] {
        if self.only.is_none_or(|only| only == vessel) { &needs.branches } else { &[] }
    }

    /// How many packs of the item there still are.
    pub(super) fn stock(&self, offer: Offer) -> Option<u32> {
        let stock = wide::item(self.order, offer).stock?;
        Some(stock.saturating_sub(self.taken.get(&offer).copied().unwrap_or(0)))
    }

    /// Goods that may be bought for no other reason than that delivery is
    /// free then, if that is cheaper.
    fn fillers(&self) -> impl Iterator<Item = Offer> {
        let order = self.order;
        let last = order.vessels.iter().map(|one| one.departure).max();
        unmet::everything(order).into_iter().filter(move |offer| {
            let item = wide::item(order, *offer);
            let in_time =
                last.is_some_and(|last| unmet::hindrances(order.ordered, last, item).is_empty());
            let free = order.catalogues[offer.catalogue].delivery.free_from;
            let goods = matches!(item.gives, Gives::Tools(_));
            free.is_some() && goods && in_time && !self.barred.contains(offer)
        })
    }

    /// Whether the finding is to be met, or might be.
    fn takes(&self, vessel: usize, finding: Cured, level: Level) -> bool {
        (level == Level::Required || self.order.with_recommended)
            && !self.waived.contains(&(vessel, finding))
    }
}

/// By how much the row of the tax is written larger.
const LARGE: f64 = 1000.0;

/// The most coins of tax.
const MOST_TAX: u32 = 2_000_000_000;

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
