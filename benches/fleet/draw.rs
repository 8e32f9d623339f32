//! Numbers that look like chance and are the same on every machine.

/// A stream of numbers (the mixing function of `SplitMix64`, which is in the
/// public domain).
pub(crate) struct Draw(u64);

impl Draw {
    /// The stream of one vessel: the same for the same seed and number.
    pub(crate) fn of(seed: u64, number: u64) -> Self {
        Self(seed.wrapping_mul(0x9e37_79b9_7f4a_7c15) ^ number.wrapping_mul(0xd1b5_4a32_d192_ed03))
    }

    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        z ^ (z >> 31)
    }

    /// A number below `end`, which is above zero.
    pub(crate) fn below(&mut self, end: u64) -> u64 {
        self.next() % end
    }

    /// A number from `low` to `high`, both included.
    pub(crate) fn between(&mut self, low: i64, high: i64) -> i64 {
        low + i64::try_from(self.below(u64::try_from(high - low + 1).unwrap())).unwrap()
    }

    /// True in so many of a hundred cases.
    pub(crate) fn percent(&mut self, of_hundred: u64) -> bool {
        self.below(100) < of_hundred
    }

    /// One of the list.
    pub(crate) fn one<'a, T: ?Sized>(&mut self, list: &[&'a T]) -> &'a T {
        list[usize::try_from(self.below(list.len() as u64)).unwrap()]
    }
}
