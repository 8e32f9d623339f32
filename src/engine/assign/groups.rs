//! Which demands can disturb each other: they ask one tool, part or price, or
//! lean on each other's tools.

use super::slots::{Problem, ToolDemand, Worth};

/// The demands that take part, in groups between which nothing is shared.
pub(crate) struct Groups {
    /// Demands in an order in which each comes after those that it leans on.
    order: Vec<usize>,
    /// For each demand, another of its group, or itself at the group's head.
    above: Vec<usize>,
    /// For each demand: whether its tools can be taken without a search.
    plain: Vec<bool>,
}

impl Groups {
    /// The groups of a problem.
    pub(crate) fn of(problem: &Problem) -> Self {
        let demands = problem.demands.len();
        let order = order(problem);
        let mut groups = Self { order, above: (0..demands).collect(), plain: vec![true; demands] };
        let mut tools = vec![None; problem.capacity.len()];
        let mut parts = vec![None; problem.parts_there.len()];
        let mut prices = vec![None; problem.groups];
        for at in 0..groups.order.len() {
            let index = groups.order[at];
            let demand = &problem.demands[index];
            groups.plain[index] = demand.worth.is_wanted();
            for from in leans_on(demand) {
                groups.plain[index] = false;
                // What is left out is of no group: at its head nobody would
                // look for the rest of it.
                if problem.demands[from].worth != Worth::LeftOut {
                    groups.join(index, from);
                }
            }
            for candidate in demand.types.iter().flatten().flat_map(|slot| &slot.candidates) {
                groups.claim(index, &mut tools[candidate.tool]);
                for part in &problem.parts[candidate.tool] {
                    groups.plain[index] = false;
                    groups.claim(index, &mut parts[*part]);
                }
                if let Some((price, _)) = candidate.once {
                    groups.plain[index] = false;
                    groups.claim(index, &mut prices[price]);
                }
            }
        }
        groups
    }

    /// The demands that can be filled one by one, whatever the others take.
    pub(crate) fn alone(&self) -> impl Iterator<Item = usize> {
        let sizes = self.sizes();
        self.order.iter().copied().filter(move |demand| self.is_alone(*demand, &sizes))
    }

    /// The groups of the other demands, each in order.
    pub(crate) fn together(&self) -> impl Iterator<Item = Vec<usize>> {
        let sizes = self.sizes();
        let heads = (0..self.above.len()).filter(move |demand| {
            self.head(*demand) == *demand && sizes[*demand] > 0 && !self.is_alone(*demand, &sizes)
        });
        heads.map(|head| {
            self.order.iter().copied().filter(|demand| self.head(*demand) == head).collect()
        })
    }

    fn is_alone(&self, demand: usize, sizes: &[usize]) -> bool {
        self.plain[demand] && sizes[self.head(demand)] == 1
    }

    /// How many demands that take part each head has.
    fn sizes(&self) -> Vec<usize> {
        let mut sizes = vec![0; self.above.len()];
        for demand in &self.order {
            sizes[self.head(*demand)] += 1;
        }
        sizes
    }

    fn head(&self, mut demand: usize) -> usize {
        while self.above[demand] != demand {
            demand = self.above[demand];
        }
        demand
    }

    fn join(&mut self, one: usize, other: usize) {
        let (one, other) = (self.head(one), self.head(other));
        self.above[one.max(other)] = one.min(other);
    }

    /// A demand asks a thing that another may ask too, or the demand itself in
    /// another place.
    fn claim(&mut self, demand: usize, owner: &mut Option<usize>) {
        match *owner {
            None => *owner = Some(demand),
            Some(same) if same == demand => self.plain[demand] = false,
            Some(other) => self.join(demand, other),
        }
    }
}

/// The demands that take part, each after those that it leans on.
pub(crate) fn order(problem: &Problem) -> Vec<usize> {
    let mut order = Vec::with_capacity(problem.demands.len());
    let mut seen = vec![false; problem.demands.len()];
    for demand in 0..problem.demands.len() {
        visit(problem, demand, &mut seen, &mut order);
    }
    order
}

fn visit(problem: &Problem, demand: usize, seen: &mut [bool], order: &mut Vec<usize>) {
    if std::mem::replace(&mut seen[demand], true) {
        return;
    }
    for before in leans_on(&problem.demands[demand]) {
        visit(problem, before, seen, order);
    }
    if problem.demands[demand].worth != Worth::LeftOut {
        order.push(demand);
    }
}

/// The demands whose tools count for this one, or whose tools it fits.
pub(crate) fn leans_on(demand: &ToolDemand) -> impl Iterator<Item = usize> {
    let spare = demand.fits.as_ref().map(|(served, _)| *served);
    demand.links.iter().map(|link| link.from).chain(spare)
}
