//! The problem that an assignment solves, in numbers: what is demanded of a
//! kit, slot by slot, tools by index, prices; nothing of vessels.

/// A tool that may fill a slot.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Candidate {
    pub(crate) tool: usize,
    /// Paid for each use.
    pub(crate) price: u128,
    /// Paid once, when anything of the group is first used.
    pub(crate) once: Option<(usize, u128)>,
}

/// What so many tools have to fill, out of these candidates.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub(crate) struct Slot {
    pub(crate) count: u32,
    pub(crate) candidates: Vec<Candidate>,
}

/// A tool of another demand that counts for this one too.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Link {
    /// The other demand.
    pub(crate) from: usize,
    /// Tools that count; for a shared one each must be a candidate here.
    pub(crate) tools: Tools,
}

/// Which of another demand's tools count.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) enum Tools {
    /// These, whatever this demand asks.
    These(Vec<usize>),
    /// Those that are candidates here.
    Fitting,
}

/// What one requirement demands of the kit.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub(crate) struct ToolDemand {
    /// How much meeting it is worth.
    pub(crate) worth: Worth,
    /// How many different types it asks.
    pub(crate) least: usize,
    /// The types, each a set of slots.
    pub(crate) types: Vec<Vec<Slot>>,
    pub(crate) links: Vec<Link>,
    /// For spares: the demand whose tool they must fit, and for each candidate
    /// tool the tools that it fits (`None`: any).
    pub(crate) fits: Option<(usize, Vec<SpareFit>)>,
}

/// A spare by its tool index, and the tools that it fits (`None`: any).
pub(crate) type SpareFit = (usize, Option<Vec<usize>>);

/// How much meeting a demand is worth.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(crate) enum Worth {
    /// It counts first.
    #[default]
    Required,
    /// It counts after every required one.
    Recommended,
    /// It counts nothing, but others may lean on its tool.
    Nothing,
    /// It is left out.
    LeftOut,
}

impl Worth {
    /// Whether meeting it counts.
    pub(crate) fn is_wanted(self) -> bool {
        matches!(self, Self::Required | Self::Recommended)
    }
}

/// A kit and what is demanded of it.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub(crate) struct Problem {
    pub(crate) demands: Vec<ToolDemand>,
    /// How many of each tool there are.
    pub(crate) capacity: Vec<u32>,
    /// Tools from this index on are none of the kit's: what nobody listed,
    /// or what may be acquired. They fit whatever leans on them.
    pub(crate) listed: usize,
    /// The parts that each tool is put together from.
    pub(crate) parts: Vec<Vec<usize>>,
    /// How many there are of each part: so many tools with it serve at once.
    pub(crate) parts_there: Vec<u32>,
    /// Parts from this index on stand for what a whole lot is made into: one
    /// tool may use them as often as it serves, no other beside it, however
    /// many there are.
    pub(crate) lot_parts: Option<usize>,
    /// How many groups of `once` prices there are.
    pub(crate) groups: usize,
}

/// One use of a tool.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct Use {
    pub(crate) tool: usize,
    /// The type and the slot in it that it fills.
    pub(crate) of_type: usize,
    pub(crate) slot: usize,
    /// The demand through which it counts, if not directly.
    pub(crate) through: Option<usize>,
}

/// The best assignment found.
#[derive(Debug, Clone, Default)]
pub(crate) struct Assignment {
    /// The uses for each demand; `None` where it is not met.
    pub(crate) uses: Vec<Option<Vec<Use>>>,
    pub(crate) score: Score,
    /// True if the search was stopped before it was complete.
    pub(crate) stopped: bool,
}

/// What an assignment achieves; more met is better, then a lower price.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(crate) struct Score {
    pub(crate) required: u32,
    pub(crate) recommended: u32,
    pub(crate) price: u128,
}

impl Score {
    /// What meeting a demand of this worth at this price achieves.
    pub(crate) fn of(worth: Worth, price: u128) -> Self {
        let (required, recommended) = match worth {
            Worth::Required => (1, 0),
            Worth::Recommended => (0, 1),
            Worth::Nothing | Worth::LeftOut => (0, 0),
        };
        Self { required, recommended, price }
    }

    pub(crate) fn add(&mut self, other: Self) {
        self.required += other.required;
        self.recommended += other.recommended;
        self.price += other.price;
    }

    pub(crate) fn beats(self, other: Self) -> bool {
        (self.required, self.recommended, std::cmp::Reverse(self.price))
            > (other.required, other.recommended, std::cmp::Reverse(other.price))
    }
}
