//! The short digest that ties a sheet to what it was printed from: five
//! signs for the vessel's file, five for the rules.
//!
//! Imports `model`. Nobody's secret hangs on it: it tells whether something
//! was changed since, not by whom.

use crate::model::profile::Profile;
use sha2::{Digest as _, Sha256};
use std::fmt;

/// Signs that a pencil keeps apart: no I, L, O or U.
const SIGNS: &[u8; 32] = b"0123456789ABCDEFGHJKMNPQRSTVWXYZ";

/// How many signs each half has.
const HALF: usize = 5;

/// The digest of a sheet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Digest {
    /// That of the vessel's file.
    vessel: String,
    /// That of the rules: ids, editions and revisions of their encoding.
    rules: String,
}

impl Digest {
    /// The digest of a vessel's file, as its text, and the rules that it is
    /// judged by, in their order.
    pub fn new<'p>(vessel: &str, rules: impl Iterator<Item = &'p Profile>) -> Self {
        let mut all = Sha256::new();
        for profile in rules {
            for part in [&profile.id, &profile.edition, &profile.encoding.to_string()] {
                all.update(part.as_bytes());
                all.update([0]);
            }
        }
        Self {
            vessel: signs(Sha256::digest(vessel.as_bytes()).as_slice()),
            rules: signs(all.finalize().as_slice()),
        }
    }

    /// Whether this one, as somebody keyed it in, has the same half for the
    /// vessel's file, and the same for the rules. Small letters, blanks and
    /// the signs that are mistaken for others are taken as they are meant.
    pub fn agrees(&self, keyed: &str) -> (bool, bool) {
        let meant: String = keyed
            .chars()
            .filter(char::is_ascii_alphanumeric)
            .map(|sign| match sign.to_ascii_uppercase() {
                'I' | 'L' => '1',
                'O' => '0',
                'U' => 'V',
                sign => sign,
            })
            .collect();
        (meant.get(..HALF) == Some(&self.vessel), meant.get(HALF..) == Some(&self.rules))
    }
}

impl fmt::Display for Digest {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}-{}", self.vessel, self.rules)
    }
}

/// The first bits of a hash, five to a sign.
fn signs(hash: &[u8]) -> String {
    let mut bits = hash.iter().take(8).fold(0u64, |all, byte| (all << 8) | u64::from(*byte));
    (0..HALF)
        .map(|_| {
            let sign = usize::try_from(bits >> 59).unwrap_or_default();
            bits <<= 5;
            char::from(SIGNS[sign])
        })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::report::sample;

    #[test]
    fn each_half_tells_its_own_change() {
        let old = sample::profile();
        let mut new = sample::profile();
        new.encoding += 1;
        let digest = |text, profile: &Profile| Digest::new(text, std::iter::once(profile));
        let printed = digest("a", &old).to_string();
        assert_eq!(printed.len(), 11, "{printed}");
        assert_eq!(digest("a", &old).agrees(&printed), (true, true));
        assert_eq!(digest("b", &old).agrees(&printed), (false, true));
        assert_eq!(digest("a", &new).agrees(&printed), (true, false));
        assert_eq!(digest("a", &old).agrees("nonsense"), (false, false));
    }

    #[test]
    fn what_a_cold_hand_writes_is_read_as_it_is_meant() {
        let digest = Digest { vessel: "01A0V".into(), rules: "7K1QZ".into() };
        assert_eq!(digest.agrees("oiao u7KLqz"), (true, true));
    }

    #[test]
    fn the_digest_is_the_same_on_every_machine() {
        // SHA-256 of the empty text begins e3b0c442 98fc1c14.
        let none = Digest::new("", std::iter::empty());
        assert_eq!(none.to_string(), "WERC8-WERC8");
    }
}
