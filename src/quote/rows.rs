//! The rows of one cluster: which tool serves where in each of its scenes,
//! and that no more of it serves than there is.

use super::cluster::Cluster;
use super::outcome::{Cured, Offer};
use super::plan::{Case, Plan};
use super::program::{Side, Sum};
use super::scene::{Small, SmallPlace, SmallSeat};
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
    /// How many pieces can be of use in the scene.
    pub(super) scene_useful: BTreeMap<Offer, u32>,
}

/// Where the tools of a class serve in a scene.
type Serving = BTreeMap<(usize, usize), Sum>;

impl Desk<'_> {
    /// The cluster in each of its scenes.
    pub(super) fn cluster(&mut self) {
        let mut all: BTreeMap<Offer, u32> = BTreeMap::new();
        for scene in &self.cluster.smalls {
            self.scene(scene);
            for (offer, count) in std::mem::take(&mut self.scene_useful) {
                let most = all.entry(offer).or_default();
                *most = (*most).max(count);
            }
        }
        self.scene_useful = all;
    }

    fn scene(&mut self, scene: &Small) {
        let (mut direct, mut lent): (Serving, Serving) = (BTreeMap::new(), BTreeMap::new());
        let switches: Vec<Switch> = scene.seats.iter().map(|seat| self.switch(seat)).collect();
        for (index, seat) in scene.seats.iter().enumerate() {
            let types = self.types(seat, switches[index]);
            for (places, on) in seat.types.iter().zip(types) {
                for place in places {
                    let mut sum: Sum = Vec::new();
                    for class in &place.classes {
                        let column = self.plan.program.whole(place.count);
                        direct.entry((index, *class)).or_default().push((column, 1.0));
                        sum.push((column, 1.0));
                    }
                    for class in lendable(scene, seat, place) {
                        let column = self.plan.program.whole(place.count);
                        lent.entry((index, class.1 + class.0 * scene.classes.len()))
                            .or_default()
                            .push((column, 1.0));
                        sum.push((column, 1.0));
                    }
                    let right = on.less(f64::from(place.count), &mut sum);
                    self.plan.program.row(sum, Side::Equal, right);
                }
            }
        }
        self.lending(scene, &direct, &lent);
        self.spares(scene, &direct, &lent, &switches);
        self.capacities(scene, &direct);
        self.parts(scene, &direct);
    }

    /// Whether the finding is met here.
    fn switch(&mut self, seat: &SmallSeat) -> Switch {
        let asked = seat.level == Level::Required || self.case.order.with_recommended;
        if !asked {
            // It may be met to lend its tool; nobody counts it.
            return Switch::Column(self.plan.program.whole(1));
        }
        let met = self.soft.then(|| self.met(seat.finding));
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
    fn types(&mut self, seat: &SmallSeat, on: Switch) -> Vec<Switch> {
        if seat.least == seat.types.len() {
            return vec![on; seat.types.len()];
        }
        let columns: Vec<usize> = seat.types.iter().map(|_| self.plan.program.whole(1)).collect();
        let mut sum: Sum = columns.iter().map(|column| (*column, 1.0)).collect();
        let right = on.less(seat.least as f64, &mut sum);
        self.plan.program.row(sum, Side::Equal, right);
        columns.into_iter().map(Switch::Column).collect()
    }

    /// A tool counts elsewhere at most as often as it serves where it is.
    fn lending(&mut self, scene: &Small, direct: &Serving, lent: &Serving) {
        for ((_, key), sum) in lent {
            let (from, class) = (key / scene.classes.len(), key % scene.classes.len());
            let mut sum = sum.clone();
            let there = direct.get(&(from, class)).into_iter().flatten();
            sum.extend(there.map(|(column, _)| (*column, -1.0)));
            self.plan.program.row(sum, Side::AtMost, 0.0);
        }
    }

    /// Spares count where a tool that they fit serves.
    fn spares(&mut self, scene: &Small, direct: &Serving, lent: &Serving, on: &[Switch]) {
        for (index, seat) in scene.seats.iter().enumerate() {
            let Some((served, fits)) = &seat.spares else { continue };
            let own = direct.iter().filter(|((seat, _), _)| *seat == index);
            for ((_, class), sum) in own {
                let mut sum = sum.clone();
                let most: u32 = seat.types.iter().flatten().map(|place| place.count).sum();
                let most = f64::from(most);
                let mut right = 0.0;
                match (served, fits.get(class)) {
                    (Some(served), Some(None)) => right = on[*served].less(most, &mut sum),
                    (Some(served), Some(Some(tools))) => {
                        let direct = tools.iter().filter_map(|tool| direct.get(&(*served, *tool)));
                        let through = lent.iter().filter(|((seat, key), _)| {
                            seat == served && tools.contains(&(key % scene.classes.len()))
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
    fn capacities(&mut self, scene: &Small, direct: &Serving) {
        for (class, tools) in scene.classes.iter().enumerate() {
            let of_class = direct.iter().filter(|((_, c), _)| *c == class);
            let mut sum: Sum = of_class.flat_map(|(_, sum)| sum.iter().copied()).collect();
            let wanted = scene.wanted(class);
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
            *self.scene_useful.entry(*offer).or_default() += wanted.min(count) * pieces;
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
        *self.scene_useful.entry(offer).or_default() += wanted;
        let program = &mut self.plan.program;
        let goods = &mut self.plan.goods[self.vessel];
        *goods.entry(offer).or_insert_with(|| program.whole(MOST_PIECES))
    }

    /// One tool of those that share a part serves, once.
    fn parts(&mut self, scene: &Small, direct: &Serving) {
        for classes in &scene.parts {
            let those = direct.iter().filter(|((_, class), _)| classes.contains(class));
            let sum: Sum = those.flat_map(|(_, sum)| sum.iter().copied()).collect();
            if !sum.is_empty() {
                self.plan.program.row(sum, Side::AtMost, 1.0);
            }
        }
    }
}

/// The most pieces of one item for one vessel.
pub(super) const MOST_PIECES: u32 = 1000;

/// The seats and classes that count for a place because they serve elsewhere.
fn lendable(scene: &Small, seat: &SmallSeat, place: &SmallPlace) -> BTreeSet<(usize, usize)> {
    let mut all = BTreeSet::new();
    for (from, classes) in &seat.lent {
        let there = scene.seats[*from].types.iter().flatten().flat_map(|place| &place.classes);
        let counts = |class: &&usize| match classes {
            Some(classes) => classes.contains(class),
            None => place.classes.contains(class),
        };
        all.extend(there.filter(counts).map(|class| (*from, *class)));
    }
    all
}
