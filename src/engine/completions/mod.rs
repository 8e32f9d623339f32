//! What holds under every completion: a vessel of which facts are missing is
//! ready if it is ready whatever they turn out to be, not ready if it never is.
//!
//! The two passes of an evaluation point are a bound from either side, since each
//! takes a missing fact as free at each place where it is asked. Where they differ
//! the facts that decide are given one value after another, at the breakpoints
//! where an answer turns, until the bound is the answer. A value that shows an
//! outcome which was seen before adds nothing, so that two completions, the best
//! and the worst, settle most vessels.

mod attribute;
mod fact;
mod value;
mod world;

use super::judge::verdict::{self, At, Trip};
use super::work::Work;
use crate::model::finding::{Outcome, Verdict};
use fact::{Fact, Item};
use std::collections::{BTreeMap, BTreeSet};
use world::World;

pub(crate) use fact::Part;

impl Settled {
    /// The trip of a part with what came out of it in place of its bounds.
    pub(crate) fn carry_into(&self, part: usize, trip: &mut Trip<'_>) {
        let settled = &self.parts[part];
        trip.worst.verdict = settled.verdict;
        for (at, (outcome, left_open)) in trip.worst.outcomes.iter_mut().zip(&settled.outcomes) {
            *at = at.zip(*outcome).map(|(at, outcome)| At {
                outcome,
                disputed: at.disputed && outcome == Outcome::CannotTell,
                left_open: *left_open,
                ..at
            });
        }
    }
}

/// What came out over all completions.
#[derive(Debug, Clone)]
pub(crate) struct Settled {
    /// All editions together.
    pub(crate) verdict: Verdict,
    /// By edition.
    pub(crate) parts: Vec<SettledPart>,
    /// Whether the verdicts were gone through; what was not is *can't tell*.
    pub(crate) exact: bool,
}

/// What came out under one edition.
#[derive(Debug, Clone)]
pub(crate) struct SettledPart {
    pub(crate) verdict: Verdict,
    /// By requirement; `None` where it is not asked; with whether worlds were left
    /// out that may turn it.
    pub(crate) outcomes: Vec<(Option<Outcome>, bool)>,
}

/// Which outcomes were seen in a world.
#[derive(Debug, Clone, Copy, Default)]
struct Seen {
    met: bool,
    not_met: bool,
    unasked: bool,
}

/// What the bounds say of an item in a world.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Bound {
    /// This for certain.
    Sure(Option<Outcome>),
    /// Met if it is asked.
    MetIfAsked,
    /// Anything.
    Open,
}

impl Bound {
    fn of(at: &Option<At>) -> Self {
        match at {
            Some(At { outcome: Outcome::CannotTell, .. }) => Self::Open,
            Some(At { outcome: Outcome::Met, asked: false, .. }) => Self::MetIfAsked,
            _ => Self::Sure(at.map(|at| at.outcome)),
        }
    }

    fn of_verdict(verdict: Verdict) -> Self {
        match verdict {
            Verdict::Ready => Self::Sure(Some(Outcome::Met)),
            Verdict::CannotTell => Self::Open,
            Verdict::NotReady => Self::Sure(Some(Outcome::NotMet)),
        }
    }
}

impl Seen {
    const EITHER: Self = Self { met: true, not_met: true, unasked: false };

    fn add(&mut self, bound: Bound) {
        match bound {
            Bound::Sure(None) => self.unasked = true,
            Bound::Sure(Some(Outcome::Met)) => self.met = true,
            Bound::Sure(Some(Outcome::NotMet)) => self.not_met = true,
            Bound::Sure(Some(Outcome::CannotTell)) | Bound::MetIfAsked | Bound::Open => {}
        }
    }

    /// Whether what is bound so can still change the answer.
    fn may_change_by(self, bound: Bound) -> bool {
        match bound {
            Bound::Sure(_) => false,
            Bound::MetIfAsked => !self.met,
            Bound::Open => !(self.not_met && (self.met || self.unasked)),
        }
    }

    /// What it comes to. Where it is met or not asked, it is met.
    fn outcome(self) -> Option<Outcome> {
        match (self.met, self.not_met, self.unasked) {
            (false, true, false) => Some(Outcome::NotMet),
            (true, false, _) => Some(Outcome::Met),
            (false, false, true) => None,
            _ => Some(Outcome::CannotTell),
        }
    }
}

fn as_verdict(seen: Seen) -> Verdict {
    match seen.outcome() {
        Some(Outcome::Met) | None => Verdict::Ready,
        Some(Outcome::CannotTell) => Verdict::CannotTell,
        Some(Outcome::NotMet) => Verdict::NotReady,
    }
}

/// Whether the bounds of the trip leave anything open.
pub(crate) fn is_open(trip: &Trip<'_>) -> bool {
    items(&[trip]).any(|(_, bound)| !matches!(bound, Bound::Sure(_)))
}

/// What holds under every completion of the vessel, where the bounds of the
/// trips leave anything open; none where they do not.
pub(crate) fn settle(parts: &[Part<'_>], trips: &[&Trip<'_>], work: &Work) -> Option<Settled> {
    let open: Vec<Vec<bool>> =
        parts.iter().zip(trips).map(|(part, trip)| open_in(part, trip)).collect();
    run(Search::new(parts, trips, &open, work), trips)
}

/// The verdict of one edition alone under every completion.
pub(crate) fn verdict(part: Part<'_>, trip: &Trip<'_>, work: &Work) -> Verdict {
    let (parts, trips) = ([part], [trip]);
    let open = [open_in(&part, trip)];
    let mut search = Search::new(&parts, &trips, &open, work);
    search.seen.retain(|item, _| *item == (None, None));
    run(search, &trips).map_or(trip.worst.verdict, |settled| settled.verdict)
}

fn run(mut search: Search<'_, '_>, trips: &[&Trip<'_>]) -> Option<Settled> {
    if search.seen.is_empty() {
        return None;
    }
    let world = World::of(search.parts.first()?);
    // Trips that kept their points are the world of which nothing is given.
    let judged = match trips.iter().all(|trip| trip.evaluations.is_empty()) {
        true => search.judge(&world),
        false => Vec::new(),
    };
    let first = if judged.is_empty() { trips.to_vec() } else { judged.iter().collect() };
    let items: Vec<Item> = search.seen.keys().copied().collect();
    let facts = fact::of_items(&first, &items);
    search.dive(world.clone(), facts.clone(), End::Best);
    search.dive(world.clone(), facts, End::Worst);
    for item in items {
        if !search.is_settled(item) {
            search.explore_from(&world, &first, item);
        }
    }
    Some(search.settled(trips))
}

/// Which end of its values a fact is given.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum End {
    Best,
    Worst,
}

struct Search<'s, 'a> {
    parts: &'s [Part<'a>],
    /// Of each part which requirements are open, or want the tools of one that
    /// is: the others come out in every world as they do here.
    open: &'s [Vec<bool>],
    work: &'s Work,
    /// What the bounds leave open, and what was seen of it.
    seen: BTreeMap<Item, (Bound, Seen)>,
    /// Items of which a world was left out, or a fact has no values that can be
    /// tried.
    cut: BTreeSet<Item>,
}

/// Rounds of a dive: a fact that is given may uncover others.
const MOST_ROUNDS: usize = 12;

impl<'s, 'a> Search<'s, 'a> {
    fn new(
        parts: &'s [Part<'a>],
        trips: &[&Trip<'_>],
        open: &'s [Vec<bool>],
        work: &'s Work,
    ) -> Self {
        let unsure = items(trips).filter(|(_, bound)| !matches!(bound, Bound::Sure(_)));
        let seen = unsure.map(|(item, bound)| (item, (bound, Seen::default()))).collect();
        Self { parts, open, work, seen, cut: BTreeSet::new() }
    }

    fn judge<'w>(&self, world: &'w World<'_>) -> Vec<Trip<'w>>
    where
        'a: 'w,
        's: 'w,
    {
        let trip = |(part, only): (&Part<'a>, &'w [bool])| {
            let mut subject = world.subject(part);
            subject.point.only = Some(only);
            verdict::of_trip(&subject, self.work)
        };
        self.parts.iter().zip(self.open.iter().map(Vec::as_slice)).map(trip).collect()
    }

    /// Notes what is settled in a world, and gives what is still to be asked
    /// of it.
    fn note(&mut self, trips: &[&Trip<'_>]) -> Vec<Item> {
        let mut open = Vec::new();
        for (item, bound) in items(trips) {
            let Some((_, seen)) = self.seen.get_mut(&item) else { continue };
            seen.add(bound);
            if seen.may_change_by(bound) {
                open.push(item);
            }
        }
        open
    }

    fn is_settled(&self, item: Item) -> bool {
        self.seen.get(&item).is_none_or(|(bound, seen)| !seen.may_change_by(*bound))
    }

    /// Whether worlds were left out that may turn it.
    fn is_left_open(&self, item: Item) -> bool {
        self.cut.contains(&item) && !self.is_settled(item)
    }

    /// Gives all missing facts their best or their worst value, and those that
    /// come to light by it.
    fn dive(&mut self, mut world: World<'_>, mut facts: Vec<Fact>, end: End) {
        for _ in 0..MOST_ROUNDS {
            let before = world.given;
            for fact in facts {
                let values = value::values(&fact, &world, self.parts);
                let value = match end {
                    End::Best => values.first(),
                    End::Worst => values.last(),
                };
                if let Some(value) = value {
                    world.give(&fact, value, self.parts);
                }
            }
            if world.given == before || !self.work.take_world() {
                return;
            }
            let trips = self.judge(&world);
            let trips: Vec<_> = trips.iter().collect();
            let open = self.note(&trips);
            facts = fact::of_items(&trips, &open);
        }
    }

    /// Judges a world, and goes on from there where the item is still open.
    fn explore(&mut self, world: &World<'_>, item: Item) {
        if !self.work.take_world() {
            self.cut.insert(item);
            return;
        }
        let trips = self.judge(world);
        let trips: Vec<_> = trips.iter().collect();
        if self.note(&trips).contains(&item) {
            self.explore_from(world, &trips, item);
        }
    }

    /// Gives one fact on which the item hangs each of its values.
    fn explore_from(&mut self, world: &World<'_>, trips: &[&Trip<'_>], item: Item) {
        let Some(fact) = fact::of_item(trips, item).into_iter().next() else {
            self.note_ends(world, trips, item);
            return;
        };
        let values = value::values(&fact, world, self.parts);
        if values.is_empty() || !value::are_all(&fact, &values, world, self.parts) {
            self.cut.insert(item);
        }
        for value in values {
            if self.is_settled(item) {
                return;
            }
            let mut next = world.clone();
            next.give(&fact, &value, self.parts);
            self.explore(&next, item);
        }
    }

    /// Where nothing but tools that nobody listed may still come to light: the
    /// world without any, and the one with all of them, which is the generous
    /// pass.
    fn note_ends(&mut self, world: &World<'_>, trips: &[&Trip<'_>], item: Item) {
        if trips.iter().flat_map(|trip| &trip.evaluations).any(|at| at.is_stopped()) {
            self.cut.insert(item);
            return;
        }
        let without = world.without_unlisted();
        let trips_without = self.judge(&without);
        if self.note(&trips_without.iter().collect::<Vec<_>>()).contains(&item) {
            // It hangs on something that has no values here.
            self.cut.insert(item);
            return;
        }
        let (part, requirement) = item;
        let mut of_item = trips.iter().enumerate().filter(|(i, _)| part.is_none_or(|p| p == *i));
        let met = of_item.all(|(_, trip)| {
            trip.evaluations.iter().all(|at| match requirement {
                Some(requirement) => at.may_meet(requirement),
                None => at.verdict != Verdict::NotReady,
            })
        });
        if let Some((_, seen)) = self.seen.get_mut(&item) {
            (seen.met, seen.not_met) = (seen.met || met, seen.not_met || !met);
        }
    }

    /// The answer of each item: what was seen, or the bound where that said
    /// it already.
    fn settled(&self, trips: &[&Trip<'_>]) -> Settled {
        let answer = |item: &Item, bound: Bound| match self.seen.get(item) {
            Some((bound, seen)) if self.is_left_open(*item) => match bound {
                Bound::MetIfAsked => Seen { met: true, ..*seen },
                Bound::Open | Bound::Sure(_) => Seen::EITHER,
            },
            Some((_, seen)) => *seen,
            None => {
                let mut seen = Seen::default();
                seen.add(bound);
                seen
            }
        };
        let of: BTreeMap<Item, Seen> =
            items(trips).map(|(item, bound)| (item, answer(&item, bound))).collect();
        let part = |(index, trip): (usize, &&Trip<'_>)| SettledPart {
            verdict: as_verdict(of[&(Some(index), None)]),
            outcomes: (0..trip.worst.outcomes.len())
                .map(|requirement| (Some(index), Some(requirement)))
                .map(|item| (of[&item].outcome(), self.is_left_open(item)))
                .collect(),
        };
        Settled {
            verdict: as_verdict(of[&(None, None)]),
            parts: trips.iter().enumerate().map(part).collect(),
            exact: !self.cut.iter().any(|item| item.1.is_none() && self.is_left_open(*item)),
        }
    }
}

/// Which requirements of the trip are open, or want the tools of one that is, or
/// lend it theirs.
fn open_in(part: &Part<'_>, trip: &Trip<'_>) -> Vec<bool> {
    let is_open = |at: &Option<At>| !matches!(Bound::of(at), Bound::Sure(_));
    let mut open: Vec<bool> = trip.worst.outcomes.iter().map(is_open).collect();
    let requirements = part.point.profile.requirements.iter().enumerate();
    let lends = requirements.flat_map(|(index, one)| one.leans_on().map(move |on| (index, on)));
    let lends: Vec<(usize, usize)> = lends.collect();
    loop {
        let before = open.clone();
        for group in trip.sharing.iter().filter(|group| group.iter().any(|one| before[*one])) {
            group.iter().for_each(|one| open[*one] = true);
        }
        lends.iter().filter(|(one, _)| before[*one]).for_each(|(_, on)| open[*on] = true);
        if open == before {
            return open;
        }
    }
}

/// Every item with what the bounds of the trips say of it.
fn items<'t>(trips: &'t [&Trip<'_>]) -> impl Iterator<Item = (Item, Bound)> + 't {
    let verdicts = trips.iter().map(|trip| trip.worst.verdict);
    let all = verdicts.max().map(|verdict| ((None, None), Bound::of_verdict(verdict)));
    let each = trips.iter().enumerate().flat_map(|(index, trip)| {
        let verdict = ((Some(index), None), Bound::of_verdict(trip.worst.verdict));
        let outcomes = trip.worst.outcomes.iter().enumerate();
        let outcomes = outcomes
            .map(move |(requirement, at)| ((Some(index), Some(requirement)), Bound::of(at)));
        std::iter::once(verdict).chain(outcomes)
    });
    all.into_iter().chain(each)
}
