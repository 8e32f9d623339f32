//! Which seats can disturb each other: they want one tool, part or price, or
//! lean on each other's tools.

use super::seats::{Pose, Seat, Worth};

/// The seats that take part, in groups between which nothing is shared.
pub(super) struct Groups {
    /// Seats in an order in which each comes after those that it leans on.
    order: Vec<usize>,
    /// For each seat, another of its group, or itself at the group's head.
    above: Vec<usize>,
    /// For each seat: whether its tools can be taken without a search.
    plain: Vec<bool>,
}

impl Groups {
    /// The groups of a pose.
    pub(super) fn of(pose: &Pose) -> Self {
        let seats = pose.seats.len();
        let order = order(pose);
        let mut groups = Self { order, above: (0..seats).collect(), plain: vec![true; seats] };
        let mut tools = vec![None; pose.capacity.len()];
        let mut parts = vec![None; pose.part_count];
        let mut prices = vec![None; pose.groups];
        for at in 0..groups.order.len() {
            let index = groups.order[at];
            let seat = &pose.seats[index];
            groups.plain[index] = matches!(seat.worth, Worth::Required | Worth::Recommended);
            for from in leans_on(seat) {
                groups.plain[index] = false;
                // What is left out is of no group: at its head nobody would
                // look for the rest of it.
                if pose.seats[from].worth != Worth::LeftOut {
                    groups.join(index, from);
                }
            }
            for candidate in seat.types.iter().flatten().flat_map(|places| &places.candidates) {
                groups.claim(index, &mut tools[candidate.tool]);
                for part in &pose.parts[candidate.tool] {
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

    /// The seats that can be filled one by one, whatever the others take.
    pub(super) fn alone(&self) -> impl Iterator<Item = usize> {
        let sizes = self.sizes();
        self.order.iter().copied().filter(move |seat| self.is_alone(*seat, &sizes))
    }

    /// The groups of the other seats, each in order.
    pub(super) fn together(&self) -> impl Iterator<Item = Vec<usize>> {
        let sizes = self.sizes();
        let heads = (0..self.above.len()).filter(move |seat| {
            self.head(*seat) == *seat && sizes[*seat] > 0 && !self.is_alone(*seat, &sizes)
        });
        heads.map(|head| {
            self.order.iter().copied().filter(|seat| self.head(*seat) == head).collect()
        })
    }

    fn is_alone(&self, seat: usize, sizes: &[usize]) -> bool {
        self.plain[seat] && sizes[self.head(seat)] == 1
    }

    /// How many seats that take part each head has.
    fn sizes(&self) -> Vec<usize> {
        let mut sizes = vec![0; self.above.len()];
        for seat in &self.order {
            sizes[self.head(*seat)] += 1;
        }
        sizes
    }

    fn head(&self, mut seat: usize) -> usize {
        while self.above[seat] != seat {
            seat = self.above[seat];
        }
        seat
    }

    fn join(&mut self, one: usize, other: usize) {
        let (one, other) = (self.head(one), self.head(other));
        self.above[one.max(other)] = one.min(other);
    }

    /// A seat wants a thing that another may want too, or the seat itself in
    /// another place.
    fn claim(&mut self, seat: usize, owner: &mut Option<usize>) {
        match *owner {
            None => *owner = Some(seat),
            Some(same) if same == seat => self.plain[seat] = false,
            Some(other) => self.join(seat, other),
        }
    }
}

/// The seats that take part, each after those that it leans on.
pub(super) fn order(pose: &Pose) -> Vec<usize> {
    let mut order = Vec::with_capacity(pose.seats.len());
    let mut seen = vec![false; pose.seats.len()];
    for seat in 0..pose.seats.len() {
        visit(pose, seat, &mut seen, &mut order);
    }
    order
}

fn visit(pose: &Pose, seat: usize, seen: &mut [bool], order: &mut Vec<usize>) {
    if std::mem::replace(&mut seen[seat], true) {
        return;
    }
    for before in leans_on(&pose.seats[seat]) {
        visit(pose, before, seen, order);
    }
    if pose.seats[seat].worth != Worth::LeftOut {
        order.push(seat);
    }
}

/// The seats whose tools count for this one, or whose tools it fits.
pub(super) fn leans_on(seat: &Seat) -> impl Iterator<Item = usize> {
    let spare = seat.fits.as_ref().map(|(served, _)| *served);
    seat.links.iter().map(|link| link.from).chain(spare)
}
