//! Words that only pages of HTML need: what a picture shows, told as text,
//! and what stands beside the parts of a page.
//!
//! Imports `model` and `measure` only. The hold that the reach drawing shows
//! is a picture, never a verdict; it is reckoned in whole nanometres all the
//! same.

use super::Words;
use super::figures;
use crate::engine::validity::End;
use crate::measure::{Day, Figure, Length, Rounding};
use crate::model::finding::{Stretch, Verdict};

/// How much of a pole is held inboard: 12 in. Common practice, no source.
pub(crate) const GRIP: Length = match Length::from_nanometres(12 * 25_400_000) {
    Some(grip) => grip,
    None => Length::ZERO,
};

/// From here on a reach into the water is more than a touch: 3 in. Common
/// practice, no source.
pub(crate) const TOUCH: Length = match Length::from_nanometres(3 * 25_400_000) {
    Some(touch) => touch,
    None => Length::ZERO,
};

/// The cosine of the working slant, 30 degrees from the vertical, in
/// millionths, rounded down.
const SLANT: i128 = 866_025;

/// What the drawing of a hold takes for granted.
pub(crate) const HOLD: &str = "Drawn to one scale, each tool at the rail with 12 in (305 mm) of \
    it held inboard. A pole slants 30 degrees from the vertical, a rope hangs straight (grip and \
    slant: common practice, no source). How far a tool reaches when it is held so is no part of \
    the verdict: the rule asks for its length.";

/// The same where the freeboard is that of the deck.
pub(crate) const HOLD_AT_DECK: &str = "The freeboard was taken from the working deck, so the \
    tools are drawn at the deck; how high the rail stands above it is not written.";

/// What a stub means.
pub(crate) const STUB: &str = "Known, not encoded: this rule exists, but what it asks is not in \
    this program, so nobody can tell here whether the kit keeps it.";

/// That something does not bind.
pub(crate) const NOT_ASKED: &str = "not asked: the requirement does not bind this vessel on its \
    trip at its freeboard";

/// What happens to a step that measures.
pub(crate) const TURNS_OUT_WELL: &str =
    "What is to be measured or looked up is taken to turn out well.";

/// How far down from the rail a tool reaches that is held as drawn, never
/// more than it does.
pub(crate) fn reach_down(length: Length, hangs: bool) -> Length {
    let outboard = length.less(GRIP);
    if hangs {
        return outboard;
    }
    let down = i128::from(outboard.nanometres()) * SLANT / 1_000_000;
    i64::try_from(down).ok().and_then(Length::from_nanometres).unwrap_or(outboard)
}

/// How a held tool stands to the water.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Touch {
    /// It ends so far above.
    Above(Length),
    /// It only just touches, so far in.
    Just(Length),
    /// It reaches so far in.
    Into(Length),
}

impl Touch {
    /// At this freeboard.
    pub(crate) fn of(down: Length, freeboard: Length) -> Self {
        if down < freeboard {
            return Self::Above(freeboard.less(down));
        }
        let depth = down.less(freeboard);
        if depth < TOUCH { Self::Just(depth) } else { Self::Into(depth) }
    }
}

impl Words<'_> {
    /// What a tool has and what is asked: `handle 6 ft 4 in (1.930 m) aboard,
    /// at least 6 ft 4 1/2 in (1.944 m) asked: 1/2 in (12.7 mm) too short`.
    pub(crate) fn has_and_asked(
        &self,
        attribute: &str,
        has: Option<&Figure>,
        least: Option<&Figure>,
        short: Option<Length>,
    ) -> String {
        let mut text = match has {
            Some(has) => {
                format!("{attribute} {} aboard", has.show(self.units, Rounding::Down))
            }
            None => format!("{attribute} not measured"),
        };
        if let Some(least) = least {
            let least = least.show(self.units, Rounding::Up);
            text.push_str(&format!(", at least {least} asked"));
        }
        if let Some(short) = short {
            text.push_str(&format!(": {} too short", self.shortfall(short)));
        }
        text
    }

    /// By how much something is too short, as the page prints it.
    pub(crate) fn shortfall(&self, short: Length) -> String {
        figures::difference(short, self.system(), self.units)
    }

    /// How far a held tool reaches, against the water at a freeboard.
    pub(crate) fn reaches(&self, down: Length, freeboard: Length) -> String {
        let length =
            |length, rounding| figures::length(length, self.system(), self.units, rounding);
        let depth = |depth| length(depth, Rounding::Down);
        let touch = match Touch::of(down, freeboard) {
            Touch::Above(by) => {
                format!("it ends {} above the water", length(by, Rounding::Up))
            }
            Touch::Just(by) if by == Length::ZERO => "it only just touches the water".to_owned(),
            Touch::Just(by) => format!("it only just touches the water ({} into it)", depth(by)),
            Touch::Into(by) => format!("{} into the water", depth(by)),
        };
        let several = if self.has_several_freeboards() {
            format!(" at a freeboard of {}", self.freeboard(freeboard))
        } else {
            String::new()
        };
        format!("held so, it reaches {} down; {touch}{several}", depth(down))
    }

    /// One stretch of freeboards and what fails there.
    pub(crate) fn stretch(&self, stretch: &Stretch) -> String {
        let (from, to) = (self.freeboard(stretch.from), self.freeboard(stretch.to));
        if stretch.from == stretch.to { format!("at {from}") } else { format!("{from} to {to}") }
    }
}

/// A verdict in the middle of a sentence.
pub(crate) fn verdict(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Ready => "ready",
        Verdict::CannotTell => "can't tell",
        Verdict::NotReady => "not ready",
    }
}

/// Until when something is good and what ends it.
pub(crate) fn good_through(what: &str, certificate: bool, end: End, day: Day) -> String {
    match (certificate, end) {
        (true, _) => format!("certificate of {what}: good through {day}"),
        (false, End::Inspection) => format!("inspection of {what}: good through {day}"),
        (false, End::Expiry) => format!("{what}: good through {day} by its own date"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn length(text: &str) -> Length {
        Length::parse(text).unwrap().0
    }

    #[test]
    fn a_legal_length_may_only_just_touch_the_water() {
        // 150 % of 4 ft 3 in is 6 ft 4 1/2 in; of it 5 ft 4 1/2 in hang
        // outboard, at 30 degrees 55.85 in deep, 4.85 in into the water.
        let down = reach_down(length("6 ft 4 1/2 in"), false);
        assert!(matches!(Touch::of(down, length("4 ft 3 in")), Touch::Into(_)), "{down:?}");
        // 150 % of 3 ft is less than 6 ft, which reaches further; 4 ft 6 in
        // of 3 ft (150 %) would end 36.37 in down.
        let down = reach_down(length("4 ft 6 in"), false);
        assert!(matches!(Touch::of(down, length("3 ft")), Touch::Just(_)), "{down:?}");
        // 100 % of 6 ft ends above the water.
        let down = reach_down(length("6 ft"), false);
        assert!(matches!(Touch::of(down, length("6 ft")), Touch::Above(_)), "{down:?}");
    }

    #[test]
    fn a_rope_hangs_straight() {
        assert_eq!(reach_down(length("7 ft"), true), length("6 ft"));
        assert_eq!(reach_down(length("6 in"), true), Length::ZERO);
    }
}
