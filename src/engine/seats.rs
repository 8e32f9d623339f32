//! A kit and what is wanted of it, as numbers: seats, tools by index and
//! prices; nothing of vessels.

/// A tool that may serve a member of a seat.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Candidate {
    pub(super) tool: usize,
    /// Paid for each use.
    pub(super) price: u128,
    /// Paid once, when anything of the group is first used.
    pub(super) once: Option<(usize, u128)>,
}

/// So many tools out of these candidates.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub(super) struct Places {
    pub(super) count: u32,
    pub(super) candidates: Vec<Candidate>,
}

/// A tool of another seat that counts for this one too.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Link {
    /// The other seat.
    pub(super) from: usize,
    /// Tools that count; for a shared one each must be a candidate here.
    pub(super) tools: Tools,
}

/// Which of another seat's tools count.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) enum Tools {
    /// These, whatever this seat asks.
    These(Vec<usize>),
    /// Those that are candidates here.
    Fitting,
}

/// A requirement that wants tools.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub(super) struct Seat {
    /// How much meeting it is worth.
    pub(super) worth: Worth,
    /// How many different types it wants.
    pub(super) least: usize,
    /// The types, each a set of places.
    pub(super) types: Vec<Vec<Places>>,
    pub(super) links: Vec<Link>,
    /// For spares: the seat whose tool they must fit, and for each candidate
    /// tool the tools that it fits (`None`: any).
    pub(super) fits: Option<(usize, Vec<SpareFit>)>,
}

/// A spare by its tool index, and the tools that it fits (`None`: any).
pub(super) type SpareFit = (usize, Option<Vec<usize>>);

/// How much meeting a seat is worth.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(super) enum Worth {
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

/// A kit and what is wanted of it.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub(super) struct Pose {
    pub(super) seats: Vec<Seat>,
    /// How many of each tool there are.
    pub(super) capacity: Vec<u32>,
    /// Tools from this index on are none of the kit's: what nobody listed,
    /// or what may be acquired. They fit whatever leans on them.
    pub(super) listed: usize,
    /// The parts that each tool is put together from.
    pub(super) parts: Vec<Vec<usize>>,
    /// How many parts there are.
    pub(super) part_count: usize,
    /// Parts from this index on stand for what a whole lot is made into: one
    /// tool may use them as often as it serves, no other beside it.
    pub(super) lot_parts: Option<usize>,
    /// How many groups of `once` prices there are.
    pub(super) groups: usize,
}

/// One use of a tool.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) struct Use {
    pub(super) tool: usize,
    /// The type and the place in it that it fills.
    pub(super) of_type: usize,
    pub(super) place: usize,
    /// The seat through which it counts, if not directly.
    pub(super) through: Option<usize>,
}

/// The best assignment found.
#[derive(Debug, Clone, Default)]
pub(super) struct Solution {
    /// The uses for each seat; `None` where it is not met.
    pub(super) uses: Vec<Option<Vec<Use>>>,
    pub(super) score: Score,
    /// True if the search was stopped before it was complete.
    pub(super) stopped: bool,
}

/// What an assignment achieves; more met is better, then a lower price.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(super) struct Score {
    pub(super) required: u32,
    pub(super) recommended: u32,
    pub(super) price: u128,
}

impl Score {
    /// What meeting a seat of this worth at this price achieves.
    pub(super) fn of(worth: Worth, price: u128) -> Self {
        let (required, recommended) = match worth {
            Worth::Required => (1, 0),
            Worth::Recommended => (0, 1),
            Worth::Nothing | Worth::LeftOut => (0, 0),
        };
        Self { required, recommended, price }
    }

    pub(super) fn add(&mut self, other: Self) {
        self.required += other.required;
        self.recommended += other.recommended;
        self.price += other.price;
    }

    pub(super) fn beats(self, other: Self) -> bool {
        (self.required, self.recommended, std::cmp::Reverse(self.price))
            > (other.required, other.recommended, std::cmp::Reverse(other.price))
    }
}
