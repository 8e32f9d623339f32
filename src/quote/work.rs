//! From what is asked to the quote: what the vessels need, the cheapest
//! basket for it, and what the engine says of the vessels with it aboard.

use super::basket::{self, Basket, Part};
use super::deliver;
use super::needs::{self, Needs};
use super::order::{NoQuote, Order};
use super::outcome::{Alone, Cost, Offer, Quote, VesselQuote};
use super::search::{OfVessel, Search, Solved};
use super::unmet;
use super::why;
use super::wide;
use crate::engine::{Depth, Request, check, demand};
use crate::measure::{Currency, Length};
use crate::model::catalogue::Gives;
use crate::model::check::Check;
use crate::model::finding::Verdict;
use crate::model::vessel::Trust;
use std::collections::BTreeSet;
use std::time::Instant;

/// Works out the quote.
///
/// # Errors
/// No catalogue, or catalogues in different currencies.
pub fn quote(order: &Order<'_>) -> Result<Quote, NoQuote> {
    let currency = currency(order)?;
    let before: Vec<Check> = order.vessels.iter().map(|one| before(order, one)).collect();
    let deadline = Instant::now() + order.patience;
    let desk = Desk { order, before: &before, deadline };
    let (chosen, suppliers) = match order.one_supplier {
        false => (desk.solved(&BTreeSet::new())?, Vec::new()),
        true => desk.best_supplier()?,
    };
    let vessels = desk.vessels(&chosen);
    let orders = chosen.cheapest.basket.orders(order);
    let cost = basket::sum(&orders);
    let total = cost.total;
    let why = why::Why { order, before: &before, solved: &chosen, total, deadline };
    Ok(Quote {
        ordered: order.ordered,
        currency,
        with_recommended: order.with_recommended,
        holds: orders.iter().filter_map(|order| order.holds).min(),
        measuring: why.measuring(),
        explained: order.explain.then(|| why.explained(&vessels)),
        vessels,
        orders,
        cost,
        bound: chosen.cheapest.bound,
        suppliers,
    })
}

fn currency(order: &Order<'_>) -> Result<Currency, NoQuote> {
    let first = order.catalogues.first().ok_or(NoQuote::NoCatalogue)?;
    match order.catalogues.iter().find(|other| other.currency != first.currency) {
        None => Ok(first.currency),
        Some(other) => Err(NoQuote::Currencies(
            first.supplier.clone(),
            first.currency,
            other.supplier.clone(),
            other.currency,
        )),
    }
}

fn before(order: &Order<'_>, one: &super::OneVessel) -> Check {
    check(&Request {
        vocabulary: order.vocabulary,
        profiles: order.profiles,
        asked: order.asked,
        vessel: &one.vessel,
        inspections: &one.inspections,
        departure: one.departure,
        back: one.back,
        trust: Trust::All,
        depth: Depth::Findings,
    })
}

struct Desk<'a> {
    order: &'a Order<'a>,
    before: &'a [Check],
    deadline: Instant,
}

/// How often the engine may point out a freeboard that was not looked at.
const MOST_ROUNDS: usize = 8;

impl Desk<'_> {
    /// The cheapest basket, as the engine bears it out.
    fn solved(&self, barred: &BTreeSet<Offer>) -> Result<Solved, NoQuote> {
        let mut further: Vec<Vec<Length>> = vec![Vec::new(); self.order.vessels.len()];
        let mut needs: Vec<Needs> =
            (0..further.len()).map(|vessel| self.needs(vessel, barred, &[])).collect();
        for round in 0.. {
            let search = Search {
                order: self.order,
                needs: &needs,
                barred,
                believed: &BTreeSet::new(),
                deadline: self.deadline,
            };
            let mut cheapest = search.run()?;
            cheapest.basket = self.trimmed(cheapest.basket);
            let after = self.after(&cheapest.basket);
            let doubted = self.doubted(&cheapest.open, &after);
            let mut news = false;
            for vessel in doubted {
                let one = &self.order.vessels[vessel];
                let terms = needs::terms(self.order, one, Depth::Findings);
                let points = demand::breakpoints(&terms, &after[vessel].vessel);
                let new: Vec<Length> =
                    points.into_iter().filter(|p| !further[vessel].contains(p)).collect();
                if !new.is_empty() && round < MOST_ROUNDS {
                    further[vessel].extend(new);
                    needs[vessel] = self.needs(vessel, barred, &further[vessel]);
                    news = true;
                }
            }
            if !news {
                let barred = barred.clone();
                return Ok(Solved { needs, barred, cheapest, after });
            }
        }
        Err(NoQuote::Search("the engine was never content".to_owned()))
    }

    /// What the vessel needs; nothing if it has all.
    fn needs(&self, vessel: usize, barred: &BTreeSet<Offer>, further: &[Length]) -> Needs {
        let (one, before) = (&self.order.vessels[vessel], &self.before[vessel]);
        if deliver::open(before, self.order.with_recommended).is_empty() {
            return Needs::default();
        }
        let mut offers = unmet::everything(self.order);
        offers.retain(|offer| {
            let item = wide::item(self.order, *offer);
            !barred.contains(offer)
                && unmet::hindrances(self.order.ordered, one.departure, item).is_empty()
        });
        Needs::of(self.order, one, &before.vessel, &offers, further)
    }

    fn trimmed(&self, basket: Basket) -> Basket {
        let mut trimmed = basket.clone();
        for (vessel, part) in trimmed.parts.iter_mut().enumerate() {
            let (one, before) = (&self.order.vessels[vessel], &self.before[vessel]);
            if !part.goods.is_empty() || !part.changes.is_empty() {
                *part = deliver::trimmed(self.order, one, &before.vessel, part);
            }
        }
        self.hand_out(&mut trimmed);
        // Fewer packs, unless that costs more (free delivery is lost).
        let fewer = Basket { packs: trimmed.needed(self.order), ..trimmed.clone() };
        let total = |basket: &Basket| basket::sum(&basket.orders(self.order)).total;
        if total(&fewer) <= total(&basket) { fewer } else { trimmed }
    }

    /// What is left over of the packs goes to vessels that are still in want
    /// of it. (Where not all can be met, the engine may see a finding open
    /// that the search took for met.)
    fn hand_out(&self, basket: &mut Basket) {
        let used = basket.used();
        for (offer, packs) in basket.packs.clone() {
            let item = wide::item(self.order, offer);
            let mut left =
                (packs * item.pack).saturating_sub(used.get(&offer).copied().unwrap_or(0));
            if !matches!(item.gives, Gives::Tools(_)) {
                continue;
            }
            for vessel in 0..basket.parts.len() {
                let (one, own) = (&self.order.vessels[vessel], &self.before[vessel].vessel);
                let hindered = unmet::hindrances(self.order.ordered, one.departure, item);
                let open = |part: &Part| {
                    let depth = Depth::Findings;
                    let check = deliver::check_after(self.order, one, own, part, depth);
                    deliver::open(&check, self.order.with_recommended).len()
                };
                let mut still = if left == 0 { 0 } else { open(&basket.parts[vessel]) };
                while left > 0 && still > 0 && hindered.is_empty() {
                    let mut more = basket.parts[vessel].clone();
                    *more.goods.entry(offer).or_default() += 1;
                    let then = open(&more);
                    if then >= still {
                        break;
                    }
                    (basket.parts[vessel], left, still) = (more, left - 1, then);
                }
            }
        }
    }

    fn after(&self, basket: &Basket) -> Vec<Check> {
        let one = |(vessel, part)| {
            let (one, before): (_, &Check) = (&self.order.vessels[vessel], &self.before[vessel]);
            deliver::check_after(self.order, one, &before.vessel, part, Depth::Whole)
        };
        basket.parts.iter().enumerate().map(one).collect()
    }

    /// Vessels of which the search thinks better than the engine.
    fn doubted(&self, open: &BTreeSet<OfVessel>, after: &[Check]) -> Vec<usize> {
        let doubted = |vessel: &usize| {
            let (before, after) = (&self.before[*vessel], &after[*vessel]);
            let left = deliver::open(after, self.order.with_recommended);
            left.iter().any(|finding| {
                let judgement =
                    &before.judgements[finding.judgement.min(before.judgements.len() - 1)];
                let requirement = &judgement.profile.requirements[finding.requirement];
                requirement.wants_tools() && !open.contains(&(*vessel, *finding))
            })
        };
        (0..after.len()).filter(doubted).collect()
    }

    fn vessels(&self, solved: &Solved) -> Vec<VesselQuote> {
        let part = |vessel: usize| {
            let (one, before) = (&self.order.vessels[vessel], &self.before[vessel]);
            let (part, after) = (&solved.cheapest.basket.parts[vessel], &solved.after[vessel]);
            let open = deliver::open(after, self.order.with_recommended);
            VesselQuote {
                file: one.file.clone(),
                before: before.clone(),
                after: after.clone(),
                lines: deliver::lines(self.order, one, &before.vessel, part, after),
                unmet: unmet::unmet(self.order, one, &after.vessel, &open),
            }
        };
        (0..self.order.vessels.len()).map(part).collect()
    }

    /// Each supplier alone; the best of them.
    fn best_supplier(&self) -> Result<(Solved, Vec<Alone>), NoQuote> {
        let mut all = Vec::new();
        for catalogue in 0..self.order.catalogues.len() {
            let mut barred: BTreeSet<Offer> = unmet::everything(self.order).into_iter().collect();
            barred.retain(|offer| offer.catalogue != catalogue);
            let solved = self.solved(&barred)?;
            let ready = solved.after.iter().filter(|after| after.verdict == Verdict::Ready).count();
            let open = solved.after.iter().map(|after| deliver::open(after, false).len()).sum();
            let cost: Cost = basket::sum(&solved.cheapest.basket.orders(self.order));
            all.push((solved, Alone { catalogue, ready, open, cost, taken: false }));
        }
        let rank = |alone: &Alone| (usize::MAX - alone.ready, alone.open, alone.cost.total);
        let best = (0..all.len()).min_by_key(|at| rank(&all[*at].1)).unwrap_or(0);
        all[best].1.taken = true;
        let suppliers = all.iter().map(|(_, alone)| alone.clone()).collect();
        Ok((all.swap_remove(best).0, suppliers))
    }
}
