//! What meeting a demand costs at least, whatever the other demands take: the
//! search leaves a way that cannot become cheaper than the best it knows.

use super::slots::{Candidate, Problem, Slot, ToolDemand, Tools};

/// Up to so many prices that several tools of a type pay once, every choice of
/// those that are paid is tried; beyond, they count as paid.
const FEW_GROUPS: usize = 4;

/// Who pays the `once` price of each group.
pub(crate) struct Payers(Vec<Payer>);

#[derive(Clone, Copy, PartialEq, Eq)]
enum Payer {
    Nobody,
    /// One tool, of which there is one: each use of it pays.
    Tool(usize),
    /// Several tools or uses of one demand.
    Demand(usize),
    /// Several demands: one may find it paid.
    Anybody,
}

impl Payers {
    pub(crate) fn of(problem: &Problem) -> Self {
        let mut payers = vec![Payer::Nobody; problem.groups];
        for (index, demand) in problem.demands.iter().enumerate() {
            for candidate in demand.types.iter().flatten().flat_map(|slot| &slot.candidates) {
                let Some((group, _)) = candidate.once else { continue };
                let single = problem.capacity[candidate.tool] == 1;
                payers[group] = match payers[group] {
                    Payer::Nobody if single => Payer::Tool(candidate.tool),
                    Payer::Tool(tool) if tool == candidate.tool => Payer::Tool(tool),
                    Payer::Nobody => Payer::Demand(index),
                    Payer::Demand(same) if same == index => Payer::Demand(index),
                    _ => Payer::Anybody,
                };
            }
        }
        Self(payers)
    }

    /// The least that meeting the demand costs with so many of each tool.
    pub(crate) fn least(&self, demand: &ToolDemand, capacity: &[u32]) -> u128 {
        if demand.links.iter().any(|link| matches!(link.tools, Tools::These(_))) {
            return 0;
        }
        let of_type = |slots: &Vec<Slot>| match demand.links.is_empty() {
            true => self.of_type(slots, capacity),
            // A tool of another demand pays its price alone, as often as it is lent.
            false => slots.iter().map(lent).sum(),
        };
        let mut prices: Vec<u128> = demand.types.iter().filter_map(of_type).collect();
        prices.sort_unstable();
        prices.iter().take(demand.least).sum()
    }

    fn of_type(&self, slots: &[Slot], capacity: &[u32]) -> Option<u128> {
        let mut groups: Vec<(usize, u128)> = Vec::new();
        for candidate in slots.iter().flat_map(|slot| &slot.candidates) {
            if let Some((group, price)) = candidate.once
                && matches!(self.0[group], Payer::Demand(_))
                && !groups.iter().any(|(other, _)| *other == group)
            {
                groups.push((group, price));
            }
        }
        if groups.len() > FEW_GROUPS {
            let paid = |_| true;
            return self.with_paid(slots, capacity, &paid);
        }
        let choices = (0..1_usize << groups.len()).filter_map(|choice| {
            let is_paid = |place: usize| choice & (1 << place) != 0;
            let place = |group| groups.iter().position(|(other, _)| *other == group);
            let paid = |group| place(group).is_none_or(is_paid);
            let prices = groups.iter().enumerate().filter(|(place, _)| is_paid(*place));
            let prices: u128 = prices.map(|(_, (_, price))| price).sum();
            Some(prices + self.with_paid(slots, capacity, &paid)?)
        });
        choices.min()
    }

    /// The same where these groups are paid, and nothing of the others is used.
    fn with_paid(
        &self,
        slots: &[Slot],
        capacity: &[u32],
        paid: &dyn Fn(usize) -> bool,
    ) -> Option<u128> {
        let price = |candidate: &Candidate| match candidate.once {
            None => Some(candidate.price),
            Some((group, once)) => match self.0[group] {
                Payer::Tool(_) => Some(candidate.price + once),
                Payer::Anybody => Some(candidate.price),
                _ => paid(group).then_some(candidate.price),
            },
        };
        let least = |slot: &Slot| {
            let open = slot.candidates.iter();
            let mut open: Vec<(u128, u32)> =
                open.filter_map(|c| Some((price(c)?, capacity[c.tool]))).collect();
            open.sort_unstable();
            let (mut missing, mut sum) = (slot.count, 0);
            for (price, there) in open {
                let count = missing.min(there);
                sum += u128::from(count) * price;
                missing -= count;
            }
            (missing == 0).then_some(sum)
        };
        slots.iter().map(least).sum()
    }
}

fn lent(slot: &Slot) -> Option<u128> {
    let prices = slot.candidates.iter().map(|candidate| candidate.price);
    Some(u128::from(slot.count) * prices.min().unwrap_or(0))
}
