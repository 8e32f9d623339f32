//! Assignment: which tool serves which requirement, the best one found.
//! Seats that cannot disturb each other are filled one by one; the search
//! over those that can is in `search.rs`.

use super::groups::Groups;
use super::prune;
use super::search::Search;
use super::seats::{Places, Pose, Score, Seat, Solution, Use};

/// Finds the best assignment: most required seats, then most recommended,
/// then the lowest price, then the first in order.
pub(super) fn assign(pose: &Pose) -> Solution {
    assign_from(pose, &pose.capacity)
}

/// The same with so many of each tool.
pub(super) fn assign_from(pose: &Pose, capacity: &[u32]) -> Solution {
    let left = prune::capacities(pose, capacity);
    let groups = Groups::of(pose);
    let mut solution = Solution { uses: vec![None; pose.seats.len()], ..Solution::default() };
    for seat in groups.alone() {
        fill_alone(pose, &left, seat, &mut solution);
    }
    let mut search = None;
    for group in groups.together() {
        let search = search.get_or_insert_with(|| Search::new(pose, capacity, left.clone()));
        search.solve(&group, &mut solution);
    }
    solution
}

/// Fills a seat whose tools are wanted nowhere else: each of its types on its
/// own, the cheapest first, among equals the first in order.
fn fill_alone(pose: &Pose, left: &[u32], index: usize, solution: &mut Solution) {
    let seat = &pose.seats[index];
    let Some((uses, price)) = cheapest(seat, left) else { return };
    solution.uses[index] = Some(uses);
    solution.score.add(Score::of(seat.worth, price));
}

fn cheapest(seat: &Seat, left: &[u32]) -> Option<(Vec<Use>, u128)> {
    let mut filled: Vec<(u128, usize)> = Vec::with_capacity(seat.types.len());
    for (of_type, places) in seat.types.iter().enumerate() {
        let prices = places.iter().map(|places| fill(places, left, |_| ()));
        if let Some(price) = prices.sum::<Option<u128>>() {
            filled.push((price, of_type));
        }
    }
    if filled.len() < seat.least {
        return None;
    }
    // A stable sort: of types at one price the first goes before.
    filled.sort_by_key(|(price, _)| *price);
    filled.truncate(seat.least);
    filled.sort_by_key(|(_, of_type)| *of_type);
    let mut uses = Vec::new();
    for (_, of_type) in &filled {
        for (place, places) in seat.types[*of_type].iter().enumerate() {
            let first = uses.len();
            fill(places, left, |tool| {
                uses.push(Use { tool, of_type: *of_type, place, through: None });
            });
            in_order(&mut uses[first..], places);
        }
    }
    Some((uses, filled.iter().map(|(price, _)| price).sum()))
}

/// Takes as many tools as are asked, the cheapest first, and gives their
/// price; none if there are too few.
fn fill(places: &Places, left: &[u32], mut take: impl FnMut(usize)) -> Option<u128> {
    let (mut missing, mut price) = (places.count, 0);
    if let [only] = places.candidates.as_slice() {
        let count = missing.min(left[only.tool]);
        (0..count).for_each(|_| take(only.tool));
        return (count == missing).then_some(u128::from(count) * only.price);
    }
    let mut candidates: Vec<_> = places.candidates.iter().collect();
    candidates.sort_by_key(|candidate| candidate.price);
    for candidate in candidates {
        let count = missing.min(left[candidate.tool]);
        (0..count).for_each(|_| take(candidate.tool));
        price += u128::from(count) * candidate.price;
        missing -= count;
    }
    (missing == 0).then_some(price)
}

/// The uses in the order of the candidates.
fn in_order(uses: &mut [Use], places: &Places) {
    if uses.len() > 1 {
        uses.sort_by_key(|used| places.candidates.iter().position(|c| c.tool == used.tool));
    }
}

#[cfg(test)]
#[path = "assign_tests.rs"]
mod tests;

#[cfg(test)]
#[path = "assign_brute.rs"]
mod brute;
