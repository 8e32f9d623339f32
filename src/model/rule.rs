//! What a profile asks of a tool and of a vessel: tests, bounds, conditions.

use super::vocabulary::{AttributeId, KindId};
use crate::measure::{Day, Figure, Interval, Length, Percent};

/// What a percentage in a bound is taken of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Base {
    /// The vessel's freeboard.
    Freeboard,
    /// The wire of the heaviest hook aboard.
    HeaviestHook,
    /// The diameter of the thickest fishing line aboard.
    ThickestLine,
    /// The diameter of the thickest leader aboard: the line that a hook hangs
    /// on.
    ThickestLeader,
}

/// One side of a limit.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Bound {
    /// A fixed figure, with the rule's own rounding in the other system.
    Fixed {
        /// The figure that governs.
        figure: Figure,
        /// What the rule prints in brackets; recorded, never compared.
        bracket: Option<String>,
    },
    /// A percentage of a base.
    Share(Percent, Base),
    /// The greater of several.
    Greater(Vec<Bound>),
    /// The lesser of several.
    Lesser(Vec<Bound>),
}

/// A limit on a quantity.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Limit {
    /// Any value; the rule only asks that there is one (a handle of any
    /// length).
    Any,
    /// At least the bound.
    AtLeast(Bound),
    /// More than the bound.
    MoreThan(Bound),
    /// At most the bound.
    AtMost(Bound),
    /// Less than the bound.
    LessThan(Bound),
    /// From the first to the second bound, both included. `exactly` is a
    /// range whose ends are equal.
    Within(Bound, Bound),
    /// "Approximately": met between the figures widened by the margin,
    /// can't tell outside, never not met.
    About {
        /// The lower figure.
        low: Figure,
        /// The upper figure (the same as the lower for a single one).
        high: Figure,
        /// The margin, a reading of the profile's author.
        margin: Figure,
    },
}

/// One test of a tool.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Test {
    /// A limit on a quantity.
    Limit {
        /// Of which dimension.
        attribute: AttributeId,
        /// The limit.
        limit: Limit,
        /// The profile's own phrase.
        written: String,
    },
    /// A feature that must or must not be there.
    Feature {
        /// Which feature.
        attribute: AttributeId,
        /// Whether it must be there.
        wanted: bool,
    },
    /// One word out of several (a material, a form).
    Choice {
        /// Of which attribute.
        attribute: AttributeId,
        /// The words that will do, in lower case.
        allowed: Vec<String>,
    },
    /// Acquired before a day (old gear tolerated).
    AcquiredBefore(Day),
    /// At least one of several groups holds in full.
    AnyOf(Vec<Vec<Test>>),
    /// Rival readings of the rule's wording: what they agree on counts,
    /// where they differ nobody can tell.
    Readings(Vec<Vec<Test>>),
}

/// On which side of a threshold a freeboard lies.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Side {
    /// At the threshold or below.
    AtMost,
    /// Above the threshold.
    MoreThan,
    /// Below the threshold.
    LessThan,
    /// At the threshold or above.
    AtLeast,
}

/// One condition on the vessel or the trip.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Condition {
    /// A freeboard threshold.
    Freeboard {
        /// On which side.
        side: Side,
        /// Of which figure.
        threshold: Length,
        /// The figure as the profile writes it.
        written: String,
    },
    /// A feature of the vessel (a wheelhouse).
    Feature {
        /// Its id.
        feature: String,
        /// Whether it must be there.
        wanted: bool,
    },
    /// Something of the kind aboard and serviceable.
    Aboard {
        /// Of which kind.
        kind: KindId,
        /// Whether it must be there.
        wanted: bool,
    },
    /// The vessel carries this gear.
    Gear(String),
    /// The trip goes to this area.
    Area(String),
    /// The trip goes to a listed area other than this one.
    AreaOtherThan(String),
    /// The vessel holds this permit.
    Permit(String),
    /// Months of the year, both included; may run over the year's end.
    Months(u8, u8),
    /// At least one of several groups holds in full.
    AnyOf(Vec<Vec<Condition>>),
}

/// What can serve: one kind of tool with its tests.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Spec {
    /// Of which kind.
    pub kind: KindId,
    /// The clause of this alternative, if it has one of its own.
    pub clause: Option<String>,
    /// When this alternative is open.
    pub when: Vec<Condition>,
    /// All of these must hold.
    pub tests: Vec<Test>,
}

/// A number of tools, each of one of the alternatives.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Member {
    /// How many.
    pub count: u32,
    /// Each of these will do.
    pub choices: Vec<Spec>,
}

/// One type: a set of members, all of which must be there.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ToolType {
    /// The name of the type, where the rule has several.
    pub name: Option<String>,
    /// The clause of the type, if it has one of its own.
    pub clause: Option<String>,
    /// The members of the set.
    pub members: Vec<Member>,
}

/// How many certified people a rule wants.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Holders {
    /// At least one for each of these roles; one person may fill several.
    EachRole(Vec<String>),
    /// At least so many people of any role.
    People(u32),
}

/// What a requirement wants.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Need {
    /// Tools or documents: at least `least` different types.
    Tools {
        /// How many different types.
        least: u32,
        /// The types; one for a plain `carry`.
        types: Vec<ToolType>,
        /// For spares: the requirement (by index) whose tool they must fit.
        spare_for: Option<usize>,
    },
    /// Certificates held by people.
    Certificates {
        /// Of which kind.
        kind: KindId,
        /// Held by whom.
        holders: Holders,
        /// How long one stays valid from its issue.
        valid: Option<Interval>,
    },
    /// Every piece of the vessel's own gear of a kind must fit one of the
    /// alternatives.
    Gear {
        /// Of which kind.
        kind: KindId,
        /// Each of these will do; all of one kind.
        choices: Vec<Spec>,
    },
}

impl Limit {
    /// Its bounds: one, two for a range, none for a figure that is only asked
    /// for or approximate.
    pub fn bounds(&self) -> impl Iterator<Item = &Bound> {
        let (first, second) = match self {
            Self::Any | Self::About { .. } => (None, None),
            Self::AtLeast(b) | Self::MoreThan(b) | Self::AtMost(b) | Self::LessThan(b) => {
                (Some(b), None)
            }
            Self::Within(low, high) => (Some(low), Some(high)),
        };
        first.into_iter().chain(second)
    }

    /// The percentages of the base that stand anywhere in it.
    pub fn shares_of(&self, base: Base) -> Vec<Percent> {
        let mut shares = Vec::new();
        self.bounds().for_each(|bound| bound.collect_shares(base, &mut shares));
        shares
    }

    /// The fixed figures that stand anywhere in it.
    pub fn figures(&self) -> impl Iterator<Item = &Figure> {
        let about = match self {
            Self::About { low, high, .. } => vec![low, high],
            _ => Vec::new(),
        };
        about.into_iter().chain(self.bounds().flat_map(Bound::figures))
    }

    /// Whether it grows with the freeboard.
    pub fn is_reach(&self) -> bool {
        !self.shares_of(Base::Freeboard).is_empty()
    }

    /// Whether the least that it asks grows with the freeboard.
    pub fn is_least_reach(&self) -> bool {
        match self {
            Self::AtLeast(least) | Self::MoreThan(least) | Self::Within(least, _) => {
                least.bases().contains(&Base::Freeboard)
            }
            Self::Any | Self::AtMost(_) | Self::LessThan(_) | Self::About { .. } => false,
        }
    }
}

impl Bound {
    /// What it is a percentage of.
    pub fn bases(&self) -> Vec<Base> {
        match self {
            Self::Fixed { .. } => Vec::new(),
            Self::Share(_, base) => vec![*base],
            Self::Greater(limbs) | Self::Lesser(limbs) => {
                limbs.iter().flat_map(Self::bases).collect()
            }
        }
    }

    /// The fixed figures in it.
    fn figures(&self) -> Vec<&Figure> {
        match self {
            Self::Fixed { figure, .. } => vec![figure],
            Self::Share(..) => Vec::new(),
            Self::Greater(limbs) | Self::Lesser(limbs) => {
                limbs.iter().flat_map(Self::figures).collect()
            }
        }
    }

    /// Where an answer turns with the freeboard is reckoned from these
    /// (`engine/judge/breakpoints.rs`): a bound that grows with it in another
    /// way has its turns told there, or a range is judged at its start alone.
    fn collect_shares(&self, base: Base, shares: &mut Vec<Percent>) {
        match self {
            Self::Fixed { .. } => {}
            Self::Share(percent, of) => shares.extend((*of == base).then_some(*percent)),
            Self::Greater(limbs) | Self::Lesser(limbs) => {
                limbs.iter().for_each(|limb| limb.collect_shares(base, shares));
            }
        }
    }
}

impl Test {
    /// Shows each single test, those inside groups too, in the order of the
    /// profile.
    pub fn each<'a>(list: &'a [Self], see: &mut dyn FnMut(&'a Self)) {
        for test in list {
            match test {
                Self::AnyOf(groups) | Self::Readings(groups) => {
                    groups.iter().for_each(|group| Self::each(group, see));
                }
                single => see(single),
            }
        }
    }
}

impl Condition {
    /// Shows each single condition, those inside groups too, in the order of
    /// the profile.
    pub fn each<'a>(list: &'a [Self], see: &mut dyn FnMut(&'a Self)) {
        for condition in list {
            match condition {
                Self::AnyOf(groups) => groups.iter().for_each(|group| Self::each(group, see)),
                single => see(single),
            }
        }
    }

    /// The kind of tool on whose being aboard it depends.
    pub fn kind_aboard(&self) -> Option<KindId> {
        match self {
            Self::Aboard { kind, .. } => Some(*kind),
            _ => None,
        }
    }
}

impl Need {
    /// Every alternative that can serve.
    pub fn specs(&self) -> impl Iterator<Item = &Spec> {
        let (types, gear): (&[ToolType], &[Spec]) = match self {
            Self::Tools { types, .. } => (types, &[]),
            Self::Gear { choices, .. } => (&[], choices),
            Self::Certificates { .. } => (&[], &[]),
        };
        types.iter().flat_map(|t| &t.members).flat_map(|m| &m.choices).chain(gear)
    }
}
