//! The search for the cheapest basket: as many vessels ready as can be, then
//! as many findings met, then the least total.

use super::basket::{self, Basket, Part};
use super::case::Case;
use super::needs::Needs;
use super::order::{NoQuote, Order};
use super::outcome::{Bound, Cured, Offer};
use super::plan::Plan;
use super::program::{Failure, Found, Goal, Sum};
use super::trial::Trial;
use super::wide::Origin;
use crate::measure::{Currency, Money};
use crate::model::check::Check;
use std::collections::{BTreeMap, BTreeSet};
use std::time::{Duration, Instant};

/// A finding of one of the vessels.
pub(super) type OfVessel = (usize, Cured);

/// What is searched for.
#[derive(Debug, Clone, Copy)]
pub(super) struct Search<'a> {
    pub(super) order: &'a Order<'a>,
    pub(super) needs: &'a [Needs],
    /// Items that may not be bought.
    pub(super) barred: &'a BTreeSet<Offer>,
    /// Tools aboard, by vessel and index, that are believed although a fact
    /// of them is missing.
    pub(super) believed: &'a BTreeSet<(usize, usize)>,
    /// When to stop.
    pub(super) deadline: Instant,
}

/// The cheapest basket found.
#[derive(Debug, Clone, Default)]
pub(super) struct Cheapest {
    pub(super) basket: Basket,
    /// Findings that stay open.
    pub(super) open: BTreeSet<OfVessel>,
    /// What it costs, and what is proved of it.
    pub(super) total: Money,
    pub(super) bound: Bound,
}

/// The cheapest basket with what was needed to find it.
#[derive(Debug, Clone)]
pub(super) struct Solved {
    pub(super) needs: Vec<Needs>,
    pub(super) barred: BTreeSet<Offer>,
    pub(super) cheapest: Cheapest,
    /// What the engine says of the vessels with it aboard.
    pub(super) after: Vec<Check>,
}

/// The least time that is spent on one vessel, whatever is left.
const LEAST_SHARE: Duration = Duration::from_millis(100);

/// Nothing is gone yet.
static NOTHING: BTreeMap<Offer, u32> = BTreeMap::new();

impl Search<'_> {
    /// The cheapest basket with which as much as possible is met.
    pub(super) fn run(&self) -> Result<Cheapest, NoQuote> {
        let mut impossible = BTreeSet::new();
        let mut contended = false;
        for vessel in 0..self.needs.len() {
            let alone = self.alone(vessel)?;
            contended |= alone.contended;
            impossible.extend(alone.impossible);
        }
        // Some of the time is kept for one vessel after another.
        let left = self.deadline.saturating_duration_since(Instant::now());
        let together = Search { deadline: self.deadline - left * 2 / 5, ..*self };
        if !contended {
            let hard = together.solve(&self.case(&impossible));
            if let Some(found) = self.or_one_by_one(hard, &impossible)? {
                return Ok(found);
            }
        }
        let soft = together.solve(&Case { soft: true, ..self.case(&impossible) });
        self.or_one_by_one(soft, &impossible).map(|found| found.unwrap_or_default())
    }

    /// The cheapest basket with which all but the waived findings are met;
    /// none if there is none, or none was found in time.
    pub(super) fn meeting(&self, waived: &BTreeSet<OfVessel>) -> Option<Cheapest> {
        self.solve(&self.case(waived)).ok()
    }

    fn case<'c>(&'c self, waived: &'c BTreeSet<OfVessel>) -> Case<'c> {
        Case {
            order: self.order,
            needs: self.needs,
            waived,
            barred: self.barred,
            believed: self.believed,
            only: None,
            taken: &NOTHING,
            soft: false,
            relaxed: false,
            pruned: true,
        }
    }

    /// Findings of one vessel that no basket meets, were it alone.
    fn alone(&self, vessel: usize) -> Result<Alone, NoQuote> {
        let mut alone = Alone { impossible: BTreeSet::new(), contended: false };
        let nothing = BTreeSet::new();
        let case = self.case(&nothing);
        if self.needs[vessel].branches.len() > 1 {
            return self.alone_in_branches(vessel);
        }
        for cluster in case.clusters(vessel).into_iter().flatten() {
            let open = |origin: &Origin| match origin {
                Origin::Bought { offer, .. } => !self.barred.contains(offer),
                _ => true,
            };
            let asked = case.asked(&cluster);
            let (impossible, contended) = Trial::new(&cluster, open).impossible(&asked);
            alone.contended |= contended;
            alone.impossible.extend(impossible.into_iter().map(|finding| (vessel, finding)));
        }
        Ok(alone)
    }

    /// The same where it depends on what comes aboard what is wanted.
    fn alone_in_branches(&self, vessel: usize) -> Result<Alone, NoQuote> {
        let feasible = |waived: &BTreeSet<OfVessel>| {
            if self.is_late() {
                return Ok(true);
            }
            let plan = Plan::of(&Case { only: Some(vessel), ..self.case(waived) });
            match self.least(&plan, &Vec::new(), 1.0) {
                Ok(_) | Err(Failure::OutOfTime) => Ok(true),
                Err(Failure::Infeasible) => Ok(false),
                Err(Failure::Gave(why)) => Err(NoQuote::Search(why)),
            }
        };
        let mut impossible = BTreeSet::new();
        if feasible(&impossible)? {
            return Ok(Alone { impossible, contended: false });
        }
        let case = Case { only: Some(vessel), soft: true, ..self.case(&impossible) };
        let plan = Plan::of(&case);
        let mut never = BTreeSet::new();
        for (finding, (_, column)) in &plan.met {
            let most = self.least(&plan, &vec![(*column, -1.0)], 1.0);
            if most.is_ok_and(|found| found.values[*column] < 0.5) {
                never.insert(*finding);
            }
        }
        impossible.extend(never);
        let contended = !feasible(&impossible)?;
        Ok(Alone { impossible, contended })
    }

    /// The cheapest basket of a case; where findings may stay open, of those
    /// with the most vessels ready, then the most findings met.
    fn solve(&self, case: &Case<'_>) -> Result<Cheapest, Failure> {
        let (plan, found) = self.solve_one(case)?;
        if plan.is_filled(&found) {
            // It paid for nothing to reach free delivery: what could be
            // bought for that money is looked at too.
            if let Ok((whole, better)) = self.solve_one(&Case { pruned: false, ..*case }) {
                let bound = found.bound.max(better.bound);
                return Ok(self.cheapest(&whole, &Found { bound, ..better }, case));
            }
        }
        Ok(self.cheapest(&plan, &found, case))
    }

    fn solve_one(&self, case: &Case<'_>) -> Result<(Plan, Found), Failure> {
        // To write the program down takes its time too.
        if self.is_late() {
            return Err(Failure::OutOfTime);
        }
        let mut plan = Plan::of(case);
        let mut met = None;
        if !plan.met.is_empty() {
            let lost = lost(&plan, case);
            let best = self.least(&plan, &lost, 1.0)?;
            plan.keep_as_good(&best.values, case);
            met = Some(best);
        }
        let digits = self.order.catalogues[0].currency.digits();
        let coin = 10_f64.powi(-i32::try_from(digits).unwrap_or(2));
        let found = or_as_good(self.least(&plan, &plan.cost, coin), met)?;
        Ok((plan, found))
    }

    fn is_late(&self) -> bool {
        Instant::now() >= self.deadline
    }

    fn least(&self, plan: &Plan, objective: &Sum, step: f64) -> Result<Found, Failure> {
        plan.program.least(&Goal { objective, step, deadline: self.deadline })
    }

    fn cheapest(&self, plan: &Plan, found: &Found, case: &Case<'_>) -> Cheapest {
        let basket = plan.basket(found);
        let total = basket::sum(&basket.orders(self.order)).total;
        let least = coins(found.bound, self.order.catalogues[0].currency);
        let bound = if least < total { Bound::AtLeast(least) } else { Bound::Cheapest };
        let left = plan.met.iter().filter(|(_, (_, column))| found.values[*column] < 0.5);
        let open = left.map(|(finding, _)| *finding).chain(case.waived.iter().copied()).collect();
        Cheapest { basket, open, total, bound }
    }

    /// The basket; or, where the time ran out, that of one vessel after
    /// another if it is cheaper.
    fn or_one_by_one(
        &self,
        found: Result<Cheapest, Failure>,
        waived: &BTreeSet<OfVessel>,
    ) -> Result<Option<Cheapest>, NoQuote> {
        match found {
            Err(Failure::Infeasible) => Ok(None),
            Err(Failure::Gave(why)) => Err(NoQuote::Search(why)),
            Err(Failure::OutOfTime) => self.one_by_one(waived).map(Some),
            Ok(found) if found.bound == Bound::Cheapest => Ok(Some(found)),
            Ok(found) => {
                let other = self.one_by_one(waived)?;
                let better = (other.open.len(), other.total) < (found.open.len(), found.total);
                let bound = found.bound.better(other.bound);
                let best = if better { other } else { found };
                Ok(Some(Cheapest { bound, ..best }))
            }
        }
    }

    /// One vessel after another, each as cheap as it can be by itself with
    /// what the others left. No order can cost less than what each vessel
    /// would with broken packs and nothing for delivery.
    fn one_by_one(&self, waived: &BTreeSet<OfVessel>) -> Result<Cheapest, NoQuote> {
        let mut all = Cheapest::default();
        all.open.extend(waived);
        let mut taken: BTreeMap<Offer, u32> = BTreeMap::new();
        let mut least = Some(0.0);
        for vessel in 0..self.needs.len() {
            let left = self.deadline.saturating_duration_since(Instant::now());
            let share = left / u32::try_from(self.needs.len() - vessel).unwrap_or(1);
            let deadline = Instant::now() + share.max(LEAST_SHARE) * 2;
            let one = Search { deadline, ..*self };
            let case = Case { only: Some(vessel), taken: &taken, ..self.case(waived) };
            let found = match one.solve(&case) {
                Err(Failure::Infeasible) => one.solve(&Case { soft: true, ..case }),
                found => found,
            };
            let part = match found {
                Ok(found) => {
                    all.open.extend(found.open);
                    found.basket.parts[vessel].clone()
                }
                Err(Failure::Gave(why)) => return Err(NoQuote::Search(why)),
                // Nothing is bought for it then.
                Err(Failure::Infeasible | Failure::OutOfTime) => {
                    let clusters = case.clusters(vessel).into_iter().flatten();
                    let wanted = clusters.flat_map(|cluster| case.asked(&cluster));
                    all.open.extend(wanted.map(|finding| (vessel, finding)));
                    Part::default()
                }
            };
            let relaxed = Case { relaxed: true, taken: &NOTHING, ..case };
            let share = (!self.is_late()).then(|| self.below_any(&Plan::of(&relaxed))).flatten();
            least = least.zip(share).map(|(least, share)| least + share);
            all.basket.parts.push(part);
            // Pieces of broken packs are shared with the vessels before.
            taken = all.basket.needed(self.order);
        }
        all.basket.packs = taken.clone();
        all.total = basket::sum(&all.basket.orders(self.order)).total;
        let least = coins(least.unwrap_or(0.0), self.order.catalogues[0].currency);
        let complete = all.open.len() == waived.len();
        all.bound = Bound::AtLeast(if complete { least.min(all.total) } else { Money::ZERO });
        Ok(all)
    }

    /// What no basket of the plan can cost less than, without much searching.
    fn below_any(&self, plan: &Plan) -> Option<f64> {
        let deadline = Instant::now() + LEAST_SHARE;
        let goal = Goal { objective: &plan.cost, step: 1e-5, deadline };
        plan.program.below_any(&goal)
    }
}

/// What one vessel alone cannot have.
struct Alone {
    impossible: BTreeSet<OfVessel>,
    /// Whether findings compete even so.
    contended: bool,
}

/// The cheapest found; or, where none was in time, the basket that is known to
/// meet as much.
fn or_as_good(cheapest: Result<Found, Failure>, met: Option<Found>) -> Result<Found, Failure> {
    match (cheapest, met) {
        (Err(Failure::OutOfTime), Some(met)) => Ok(Found { bound: 0.0, proved: false, ..met }),
        // More may be met then, and at any price.
        (Ok(found), Some(met)) if !met.proved => Ok(Found { bound: 0.0, proved: false, ..found }),
        (cheapest, _) => cheapest,
    }
}

/// What it costs to leave a finding open: a vessel made ready outweighs all
/// findings, a required finding all recommended ones.
fn lost(plan: &Plan, case: &Case<'_>) -> Sum {
    let [ready, required, recommended] = plan.worthwhile(case);
    let least = recommended.len() as f64 + 1.0;
    let most = (required.len() as f64 + 1.0) * least;
    let weighed = [(ready, most), (required, least), (recommended, 1.0)];
    let columns = weighed
        .into_iter()
        .flat_map(|(columns, worth)| columns.into_iter().map(move |column| (column, -worth)));
    columns.collect()
}

/// An amount in whole units of a currency, to the coin below.
fn coins(amount: f64, currency: Currency) -> Money {
    let unit = 10_f64.powi(i32::try_from(currency.digits()).unwrap_or(2));
    Money::of_coins((amount * unit + 1e-6).floor().max(0.0) as u64, currency)
}

#[cfg(test)]
mod tests {
    use super::super::sample::Sample;
    use super::*;

    fn found(value: f64, proved: bool) -> Found {
        Found { values: vec![value], bound: 7.0, proved }
    }

    #[test]
    fn a_basket_that_meets_as_much_is_kept_where_the_time_runs_out_over_the_price() {
        let kept = or_as_good(Err(Failure::OutOfTime), Some(found(1.0, true))).unwrap();
        assert_eq!((kept.values, kept.bound, kept.proved), (vec![1.0], 0.0, false));
        let none = or_as_good(Err(Failure::OutOfTime), None);
        assert_eq!(none.unwrap_err(), Failure::OutOfTime);
        let cheaper = or_as_good(Ok(found(2.0, true)), Some(found(1.0, false))).unwrap();
        assert_eq!((cheaper.values, cheaper.bound, cheaper.proved), (vec![2.0], 0.0, false));
        assert!(or_as_good(Ok(found(2.0, true)), None).unwrap().proved);
    }

    fn dollars(dollars: u64) -> Money {
        Money::of_coins(100 * dollars, Currency::find("USD").unwrap())
    }

    /// A search for the sample with all the time that it takes.
    fn searching<T>(sample: &Sample, ask: impl FnOnce(&Search<'_>) -> T) -> T {
        let (order, needs) = (&sample.order(), &sample.needs());
        let (barred, believed) = (&BTreeSet::new(), &BTreeSet::new());
        let deadline = Instant::now() + Duration::from_secs(60);
        ask(&Search { order, needs, barred, believed, deadline })
    }

    fn one_by_one(sample: &Sample) -> Cheapest {
        searching(sample, |search| search.one_by_one(&BTreeSet::new()).unwrap())
    }

    const TIRE: &[&str] = &["carry: 1 tire"];

    /// Two vessels that share a pack of two tires.
    fn shared_pack() -> Sample {
        Sample::new(TIRE, &["", ""], "7", &["tool: { kind: tire }, price: 10, pack: 2"])
    }

    #[test]
    fn vessels_one_by_one_share_packs_and_cost_no_less_than_broken_packs_undelivered() {
        let found = one_by_one(&shared_pack());
        assert_eq!(found.basket.packs.into_values().collect::<Vec<_>>(), [1]);
        assert_eq!((found.total, found.bound), (dollars(17), Bound::AtLeast(dollars(10))));
        assert_eq!(found.open, BTreeSet::new());
    }

    #[test]
    fn vessels_one_by_one_take_what_the_others_left() {
        let scarce = "tool: { kind: tire }, price: 10, stock: 1";
        let items = [scarce, "tool: { kind: tire }, price: 20"];
        let found = one_by_one(&Sample::new(TIRE, &["", ""], "0", &items));
        assert_eq!((found.total, found.bound), (dollars(30), Bound::AtLeast(dollars(20))));
        let asked = [TIRE[0], "carry: 1 hoist"];
        let items = [scarce, "tool: { kind: hoist }, price: 20"];
        let found = one_by_one(&Sample::new(&asked, &["", ""], "0", &items));
        let tire_of_the_second = (1, Cured { judgement: 0, requirement: 0 });
        assert_eq!(found.open, BTreeSet::from([tire_of_the_second]));
        assert_eq!((found.total, found.bound), (dollars(50), Bound::AtLeast(Money::ZERO)));
    }

    #[test]
    fn the_better_of_both_searches_is_taken_with_the_better_bound() {
        let best = |found: Result<Cheapest, Failure>| {
            searching(&shared_pack(), |search| search.or_one_by_one(found, &BTreeSet::new()))
        };
        let told = |found: Cheapest| {
            let best = best(Ok(found)).unwrap().unwrap();
            (best.total, best.bound)
        };
        let found =
            |total: u64, bound| Cheapest { total: dollars(total), bound, ..Cheapest::default() };
        let from = |least: u64| Bound::AtLeast(dollars(least));
        // One by one it is 17, and not below 10.
        assert_eq!(told(found(20, from(12))), (dollars(17), from(12)));
        assert_eq!(told(found(15, from(3))), (dollars(15), from(10)));
        assert_eq!(told(found(20, Bound::Cheapest)), (dollars(20), Bound::Cheapest));
        let open = BTreeSet::from([(0, Cured { judgement: 0, requirement: 0 })]);
        assert_eq!(told(Cheapest { open, ..found(15, from(3)) }), (dollars(17), from(10)));
        assert_eq!(best(Err(Failure::OutOfTime)).unwrap().unwrap().total, dollars(17));
        assert!(best(Err(Failure::Infeasible)).unwrap().is_none());
        let gave = Err(Failure::Gave("up".to_owned()));
        assert_eq!(best(gave).unwrap_err(), NoQuote::Search("up".to_owned()));
    }

    #[test]
    fn money_paid_for_nothing_bounds_the_total() {
        let delivery = "{ charge: 7, free from: 12 }";
        let sample = Sample::new(TIRE, &[""], delivery, &["tool: { kind: tire }, price: 10"]);
        searching(&sample, |search| {
            let nothing = BTreeSet::new();
            let case = search.case(&nothing);
            let (plan, found) = search.solve_one(&case).unwrap();
            let filled = search.cheapest(&plan, &found, &case);
            assert_eq!(filled.bound, Bound::AtLeast(dollars(12)));
            let whole = search.solve(&case).unwrap();
            assert_eq!((whole.total, whole.bound), (dollars(17), Bound::Cheapest));
        });
    }

    #[test]
    fn a_vessel_ready_outweighs_all_findings_and_a_required_one_all_that_is_recommended() {
        let kinds = ["tire", "hoist", "gaff"];
        let asked = kinds.map(|kind| match kind {
            "gaff" => "level: recommended, carry: 1 gaff".to_owned(),
            _ => format!("carry: 1 {kind}"),
        });
        let items = kinds.map(|kind| format!("tool: {{ kind: {kind} }}, price: 10, stock: 1"));
        let (asked, items) = (asked.each_ref().map(|a| &**a), items.each_ref().map(|i| &**i));
        searching(&Sample::new(&asked, &["", ""], "0", &items), |search| {
            let nothing = BTreeSet::new();
            let case = Case { soft: true, ..search.case(&nothing) };
            let plan = Plan::of(&case);
            let lost: BTreeMap<usize, f64> = lost(&plan, &case).into_iter().collect();
            let worth = |column: &usize| -lost[column];
            let worths = |columns: Vec<usize>| columns.iter().map(worth).collect::<Vec<f64>>();
            let [ready, required, recommended] = plan.worthwhile(&case).map(worths);
            assert_eq!([ready.len(), required.len(), recommended.len()], [2, 4, 2]);
            let all = |worths: &[f64]| worths.iter().sum::<f64>();
            assert!(recommended.iter().all(|worth| *worth > 0.0));
            assert!(required.iter().all(|worth| *worth > all(&recommended)));
            assert!(ready.iter().all(|worth| *worth > all(&required) + all(&recommended)));
        });
    }
}
