//! Whether claims about one vessel and trip can be true together, by what the
//! conditions of a profile say alone.
//!
//! Imports `model`. Exact up to a number of steps, after which nothing is
//! said; a tag that counts as a wider one is taken for a tag of its own.

use crate::measure::Length;
use crate::model::rule::{Condition, Side};

/// How many steps are spent on one profile; a claim carried into a trial is one.
const MOST_STEPS: u32 = 100_000;

/// When something is asked: where all the conditions hold, no group of the
/// exceptions holds in full, and what it belongs to is asked as well.
#[derive(Clone, Copy)]
pub(super) struct Asked<'a> {
    pub(super) when: &'a [Condition],
    pub(super) unless: &'a [Vec<Condition>],
    pub(super) above: Option<&'a Asked<'a>>,
}

/// One claim, true or false.
#[derive(Clone, Copy)]
pub(super) enum What<'a> {
    /// A single condition holds.
    One(&'a Condition),
    /// All of these hold.
    All(&'a [Condition]),
    /// One of the groups holds in full.
    Any(&'a [Vec<Condition>]),
    /// It is asked.
    Asked(&'a Asked<'a>),
}

/// A claim of the vessel, at one freeboard where one is named.
#[derive(Clone, Copy)]
pub(super) struct Claim<'a> {
    pub(super) what: What<'a>,
    pub(super) holds: bool,
    pub(super) at: Option<Length>,
}

impl<'a> Claim<'a> {
    /// That it holds, at whatever freeboard.
    pub(super) fn of(what: What<'a>) -> Self {
        Self { what, holds: true, at: None }
    }

    /// What it comes to: claims of which all are needed, or one.
    fn parts(self) -> Parts<'a> {
        let one = |what, holds| Self { what, holds, ..self };
        let conditions = |list: &'a [Condition], holds| {
            list.iter().map(move |condition| one(What::One(condition), holds))
        };
        let groups = |list: &'a [Vec<Condition>], holds| {
            list.iter().map(move |group| one(What::All(group), holds))
        };
        let (parts, all): (Vec<Self>, bool) = match (self.what, self.holds) {
            (What::One(Condition::AnyOf(list)), holds) => (groups(list, holds).collect(), !holds),
            (What::One(condition), holds) => return Parts::Fact(condition, holds),
            (What::All(list), holds) => (conditions(list, holds).collect(), holds),
            (What::Any(list), holds) => (groups(list, holds).collect(), !holds),
            (What::Asked(asked), holds) => {
                let own = [one(What::All(asked.when), holds), one(What::Any(asked.unless), !holds)];
                let above = asked.above.map(|above| one(What::Asked(above), holds));
                (own.into_iter().chain(above).collect(), holds)
            }
        };
        if all { Parts::All(parts) } else { Parts::OneOf(parts) }
    }
}

enum Parts<'a> {
    Fact(&'a Condition, bool),
    All(Vec<Claim<'a>>),
    OneOf(Vec<Claim<'a>>),
}

/// Tries claims against each other, within its steps.
pub(super) struct Search {
    left: u32,
}

impl Default for Search {
    fn default() -> Self {
        Self { left: MOST_STEPS }
    }
}

impl Search {
    /// Whether there are no steps left.
    pub(super) fn is_spent(&self) -> bool {
        self.left == 0
    }

    fn spend(&mut self, steps: u32) -> Option<()> {
        let left = self.left.checked_sub(steps);
        self.left = left.unwrap_or_default();
        left.map(|_| ())
    }

    /// Whether all the claims can be true of one vessel; none where that took
    /// too long.
    pub(super) fn can(&mut self, claims: &[Claim<'_>]) -> Option<bool> {
        self.spend(u32::try_from(claims.len()).unwrap_or(u32::MAX))?;
        self.fit(World::default(), claims.to_vec(), Vec::new())
    }

    /// The same in a world, with choices that are still open.
    fn fit<'a>(
        &mut self,
        mut world: World<'a>,
        mut todo: Vec<Claim<'a>>,
        mut open: Vec<Vec<Claim<'a>>>,
    ) -> Option<bool> {
        while let Some(claim) = todo.pop() {
            self.spend(1)?;
            match claim.parts() {
                Parts::Fact(condition, holds) => {
                    if !world.takes(condition, holds, claim.at) {
                        return Some(false);
                    }
                }
                Parts::All(claims) => todo.extend(claims),
                Parts::OneOf(claims) => open.push(claims),
            }
        }
        let Some(choice) = open.pop() else { return Some(true) };
        for claim in choice {
            let carried = u32::try_from(open.len() + world.facts.len()).unwrap_or(u32::MAX);
            self.spend(carried)?;
            if self.fit(world.clone(), vec![claim], open.clone())? {
                return Some(true);
            }
        }
        Some(false)
    }
}

/// What was claimed so far.
#[derive(Clone)]
struct World<'a> {
    facts: Vec<(&'a Condition, bool)>,
    /// The freeboard in nanometres, from and to.
    freeboard: (i64, i64),
    /// The months that the day may lie in, one bit each.
    months: u16,
}

impl Default for World<'_> {
    fn default() -> Self {
        Self { facts: Vec::new(), freeboard: (1, i64::MAX), months: 0xfff }
    }
}

impl<'a> World<'a> {
    /// Takes one more fact; false where that cannot be.
    fn takes(&mut self, condition: &'a Condition, holds: bool, at: Option<Length>) -> bool {
        match condition {
            Condition::Freeboard { side, threshold, .. } => {
                let range = below_or_above(*side, *threshold, holds);
                if let Some(at) = at {
                    return (range.0..=range.1).contains(&at.nanometres());
                }
                let (from, to) = self.freeboard;
                self.freeboard = (from.max(range.0), to.min(range.1));
                self.freeboard.0 <= self.freeboard.1
            }
            Condition::Months(first, last) => {
                let within = (1..=12).filter(|month| match first <= last {
                    true => (first..=last).contains(&month),
                    false => month >= first || month <= last,
                });
                let within = within.fold(0u16, |mask, month: u8| mask | 1 << (month - 1));
                self.months &= if holds { within } else { !within };
                self.months != 0
            }
            _ => {
                let fits = self.facts.iter().all(|fact| !clash(*fact, (condition, holds)));
                self.facts.push((condition, holds));
                fits
            }
        }
    }
}

/// The freeboards on one side of a threshold, or on the other.
fn below_or_above(side: Side, threshold: Length, holds: bool) -> (i64, i64) {
    let limit = threshold.nanometres();
    match (side, holds) {
        (Side::AtMost, true) | (Side::MoreThan, false) => (i64::MIN, limit),
        (Side::MoreThan, true) | (Side::AtMost, false) => (limit + 1, i64::MAX),
        (Side::LessThan, true) | (Side::AtLeast, false) => (i64::MIN, limit - 1),
        (Side::AtLeast, true) | (Side::LessThan, false) => (limit, i64::MAX),
    }
}

/// Whether two facts cannot both be true.
fn clash(one: (&Condition, bool), other: (&Condition, bool)) -> bool {
    use Condition::{Aboard, Area, AreaOtherThan, Feature};
    match (one.0, other.0) {
        (Feature { feature, wanted }, Feature { feature: same, wanted: too })
            if feature == same =>
        {
            (*wanted == one.1) != (*too == other.1)
        }
        (Aboard { kind, wanted }, Aboard { kind: same, wanted: too }) if kind == same => {
            (*wanted == one.1) != (*too == other.1)
        }
        // No other area than one, and yet another.
        (Area(area), AreaOtherThan(only)) if area != only => one.1 && !other.1,
        (AreaOtherThan(only), Area(area)) if area != only => other.1 && !one.1,
        (first, second) => first == second && one.1 != other.1,
    }
}
