//! Numbers that look drawn by chance and are the same for the same seed
//! (splitmix64, public domain).

/// A row of numbers.
pub(crate) struct Chance(u64);

impl Chance {
    /// The row of a seed and a number within it.
    pub(crate) fn new(seed: u64, number: u64) -> Self {
        let mut chance = Self(seed ^ number.wrapping_mul(0x9e37_79b9_7f4a_7c15));
        chance.next();
        chance
    }

    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// A number below `count`.
    pub(crate) fn below(&mut self, count: usize) -> usize {
        usize::try_from(self.next() % count as u64).unwrap()
    }

    /// True in so many of a thousand cases.
    pub(crate) fn in_thousand(&mut self, cases: usize) -> bool {
        self.below(1_000) < cases
    }

    /// One of several.
    pub(crate) fn one_of<'t, T>(&mut self, things: &'t [T]) -> &'t T {
        &things[self.below(things.len())]
    }
}
