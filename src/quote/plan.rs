//! The order as an integer program: which packs, which pieces for which
//! vessel, which tool where at each point.
//!
//! Amounts are in whole units of the currency; the tax is a whole number of
//! coins, rounded as the order's tax is.

use super::basket::{Basket, Part};
use super::case::Case;
use super::outcome::{Cured, Offer};
use super::program::{Found, Program, Side, Sum};
use super::wide::{self, Changed};
use crate::model::profile::Level;
use std::collections::BTreeMap;

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

    /// Packs, stock, delivery and tax.
    pub(super) fn order(&mut self, case: &Case<'_>) {
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

/// By how much the row of the tax is written larger.
const LARGE: f64 = 1000.0;

/// The most coins of tax.
const MOST_TAX: u32 = 2_000_000_000;
