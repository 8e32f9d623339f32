//! The rows of one cluster: which tool serves where in each of its points,
//! and that no more of it serves than there is.

use super::case::Case;
use super::cluster::Cluster;
use super::outcome::{Cured, Offer};
use super::plan::Plan;
use super::program::{Side, Sum};
use super::small::{Small, SmallDemand, SmallSlot};
use super::wide::{Changed, Origin};
use crate::model::profile::Level;
use std::collections::{BTreeMap, BTreeSet};

/// Whether something is so: always, or where a column is one.
#[derive(Debug, Clone, Copy)]
enum Switch {
    On,
    Column(usize),
}

impl Switch {
    /// Adds so many times the switch to the left side of a row; what is
    /// always on goes to the right.
    fn less(self, times: f64, sum: &mut Sum) -> f64 {
        match self {
            Self::On => times,
            Self::Column(column) => {
                sum.push((column, -times));
                0.0
            }
        }
    }
}

/// Adds one branch of one vessel.
pub(super) struct Desk<'d> {
    pub(super) plan: &'d mut Plan,
    pub(super) case: &'d Case<'d>,
    pub(super) vessel: usize,
    pub(super) cluster: &'d Cluster,
    pub(super) gate: Option<usize>,
    pub(super) kept: &'d BTreeSet<Offer>,
    /// The changes of tools aboard that can be of use anywhere.
    pub(super) changes: &'d [Changed],
    /// Whether findings of the cluster may stay open.
    pub(super) soft: bool,
    /// How many pieces can be of use at the point.
    pub(super) point_useful: BTreeMap<Offer, u32>,
}

/// Where the tools of a class serve at a point.
type Serving = BTreeMap<(usize, usize), Sum>;

impl Desk<'_> {
    /// The cluster in each of its points.
    pub(super) fn cluster(&mut self) {
        let mut all: BTreeMap<Offer, u32> = BTreeMap::new();
        for point in &self.cluster.smalls {
            self.point(point);
            for (offer, count) in std::mem::take(&mut self.point_useful) {
                let most = all.entry(offer).or_default();
                *most = (*most).max(count);
            }
        }
        self.point_useful = all;
    }

    fn point(&mut self, point: &Small) {
        let (mut direct, mut lent): (Serving, Serving) = (BTreeMap::new(), BTreeMap::new());
        let switches: Vec<Switch> =
            point.demands.iter().map(|demand| self.switch(demand)).collect();
        for (index, demand) in point.demands.iter().enumerate() {
            let types = self.types(demand, switches[index]);
            for (places, on) in demand.types.iter().zip(types) {
                for place in places {
                    let mut sum: Sum = Vec::new();
                    for class in &place.classes {
                        let column = self.plan.program.whole(place.count);
                        direct.entry((index, *class)).or_default().push((column, 1.0));
                        sum.push((column, 1.0));
                    }
                    for class in lendable(point, demand, place) {
                        let column = self.plan.program.whole(place.count);
                        lent.entry((index, class.1 + class.0 * point.classes.len()))
                            .or_default()
                            .push((column, 1.0));
                        sum.push((column, 1.0));
                    }
                    let right = on.less(f64::from(place.count), &mut sum);
                    self.plan.program.row(sum, Side::Equal, right);
                }
            }
        }
        self.lending(point, &direct, &lent);
        self.spares(point, &direct, &lent, &switches);
        self.capacities(point, &direct);
        self.parts(point, &direct);
    }

    /// Whether the finding is met here.
    fn switch(&mut self, demand: &SmallDemand) -> Switch {
        let asked = demand.level == Level::Required || self.case.order.with_recommended;
        if !asked {
            // It may be met to lend its tool; nobody counts it.
            return Switch::Column(self.plan.program.whole(1));
        }
        let met = self.soft.then(|| self.met(demand.finding));
        match (met, self.gate) {
            (None, None) => Switch::On,
            (Some(column), None) | (None, Some(column)) => Switch::Column(column),
            (Some(met), Some(gate)) => {
                let both = self.plan.program.whole(1);
                let program = &mut self.plan.program;
                program.row(vec![(both, 1.0), (met, -1.0)], Side::AtMost, 0.0);
                program.row(vec![(both, 1.0), (gate, -1.0)], Side::AtMost, 0.0);
                let sum = vec![(both, 1.0), (met, -1.0), (gate, -1.0)];
                program.row(sum, Side::AtLeast, -1.0);
                Switch::Column(both)
            }
        }
    }

    fn met(&mut self, finding: Cured) -> usize {
        let key = (self.vessel, finding);
        if let Some((_, column)) = self.plan.met.get(&key) {
            return *column;
        }
        let column = self.plan.program.whole(1);
        let level = self.cluster.level(finding);
        self.plan.met.insert(key, (level, column));
        if level == Level::Required {
            let program = &mut self.plan.program;
            let ready = *self.plan.ready[self.vessel].get_or_insert_with(|| program.whole(1));
            program.row(vec![(ready, 1.0), (column, -1.0)], Side::AtMost, 0.0);
        }
        column
    }

    /// Which types are complete.
    fn types(&mut self, demand: &SmallDemand, on: Switch) -> Vec<Switch> {
        if demand.least == demand.types.len() {
            return vec![on; demand.types.len()];
        }
        let columns: Vec<usize> = demand.types.iter().map(|_| self.plan.program.whole(1)).collect();
        let mut sum: Sum = columns.iter().map(|column| (*column, 1.0)).collect();
        let right = on.less(demand.least as f64, &mut sum);
        self.plan.program.row(sum, Side::Equal, right);
        columns.into_iter().map(Switch::Column).collect()
    }

    /// A tool counts elsewhere at most as often as it serves where it is.
    fn lending(&mut self, point: &Small, direct: &Serving, lent: &Serving) {
        for ((_, key), sum) in lent {
            let (from, class) = (key / point.classes.len(), key % point.classes.len());
            let mut sum = sum.clone();
            let there = direct.get(&(from, class)).into_iter().flatten();
            sum.extend(there.map(|(column, _)| (*column, -1.0)));
            self.plan.program.row(sum, Side::AtMost, 0.0);
        }
    }

    /// Spares count where a tool that they fit serves.
    fn spares(&mut self, point: &Small, direct: &Serving, lent: &Serving, on: &[Switch]) {
        for (index, demand) in point.demands.iter().enumerate() {
            let Some((served, fits)) = &demand.spares else { continue };
            let own = direct.iter().filter(|((demand, _), _)| *demand == index);
            for ((_, class), sum) in own {
                let mut sum = sum.clone();
                let most: u32 = demand.types.iter().flatten().map(|place| place.count).sum();
                let most = f64::from(most);
                let mut right = 0.0;
                match (served, fits.get(class)) {
                    (Some(served), Some(None)) => right = on[*served].less(most, &mut sum),
                    (Some(served), Some(Some(tools))) => {
                        let direct = tools.iter().filter_map(|tool| direct.get(&(*served, *tool)));
                        let through = lent.iter().filter(|((demand, key), _)| {
                            demand == served && tools.contains(&(key % point.classes.len()))
                        });
                        let serving = direct.chain(through.map(|(_, sum)| sum)).flatten();
                        sum.extend(serving.map(|(column, _)| (*column, -most)));
                    }
                    _ => {}
                }
                self.plan.program.row(sum, Side::AtMost, right);
            }
        }
    }

    /// No tool serves oftener than it is there.
    fn capacities(&mut self, point: &Small, direct: &Serving) {
        for (class, tools) in point.classes.iter().enumerate() {
            let of_class = direct.iter().filter(|((_, c), _)| *c == class);
            let mut sum: Sum = of_class.flat_map(|(_, sum)| sum.iter().copied()).collect();
            let wanted = point.wanted(class);
            let mut there = 0.0;
            for tool in tools {
                match &self.cluster.origins[*tool] {
                    Origin::Own(own) => {
                        let count = self.cluster.own[*tool];
                        there += f64::from(count);
                        let changes = self.changes.iter().filter(|c| c.tool == *own);
                        for changed in changes {
                            sum.push((self.change(changed, 0, count), 1.0));
                        }
                    }
                    Origin::Changed(changed) => {
                        if self.changes.contains(changed) {
                            let count = self.cluster.lot(changed);
                            sum.push((self.change(changed, wanted, count), -1.0));
                        }
                    }
                    Origin::Bought { offer, count, .. } => {
                        if self.kept.contains(offer) {
                            let column = self.goods(*offer, wanted.div_ceil(*count));
                            sum.push((column, -f64::from(*count)));
                        }
                    }
                }
            }
            self.plan.program.row(sum, Side::AtMost, there);
        }
    }

    fn change(&mut self, changed: &Changed, wanted: u32, count: u32) -> usize {
        for (offer, pieces) in &changed.by {
            *self.point_useful.entry(*offer).or_default() += wanted.min(count) * pieces;
        }
        let changes = &mut self.plan.changes[self.vessel];
        if let Some((_, column)) = changes.iter().find(|(known, _)| known == changed) {
            return *column;
        }
        let column = self.plan.program.whole(count);
        changes.push((changed.clone(), column));
        column
    }

    fn goods(&mut self, offer: Offer, wanted: u32) -> usize {
        *self.point_useful.entry(offer).or_default() += wanted;
        let program = &mut self.plan.program;
        let goods = &mut self.plan.goods[self.vessel];
        *goods.entry(offer).or_insert_with(|| program.whole(MOST_PIECES))
    }

    /// Of tools that share a part so many serve as there are of it.
    fn parts(&mut self, point: &Small, direct: &Serving) {
        for (classes, there) in &point.parts {
            let those = direct.iter().filter(|((_, class), _)| classes.contains(class));
            let sum: Sum = those.flat_map(|(_, sum)| sum.iter().copied()).collect();
            if !sum.is_empty() {
                self.plan.program.row(sum, Side::AtMost, f64::from(*there));
            }
        }
    }
}

/// The most pieces of one item for one vessel.
pub(super) const MOST_PIECES: u32 = 1000;

/// The demands and classes that count for a place because they serve elsewhere.
fn lendable(point: &Small, demand: &SmallDemand, place: &SmallSlot) -> BTreeSet<(usize, usize)> {
    let mut all = BTreeSet::new();
    for (from, classes) in &demand.lent {
        let there = point.demands[*from].types.iter().flatten().flat_map(|place| &place.classes);
        let counts = |class: &&usize| match classes {
            Some(classes) => classes.contains(class),
            None => place.classes.contains(class),
        };
        all.extend(there.filter(counts).map(|class| (*from, *class)));
    }
    all
}
