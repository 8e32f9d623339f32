//! Words that only pages of HTML need: what a picture shows, told as text,
//! and what stands beside the parts of a page.
//!
//! Imports `model`, `measure` and `engine::validity`. The hold that the reach
//! drawing shows is a picture, never a verdict; it is reckoned in whole
//! nanometres all the same.

use super::Words;
use super::figures;
use crate::engine::validity::End;
use crate::measure::{Day, Figure, Length, Rounding, System, Units};
use crate::model::finding::{ReadyUntil, Stretch, Verdict};
use crate::report::Locale;

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
                format!("{attribute} {} aboard", has.show(self.locale.units, Rounding::Down))
            }
            None => format!("{attribute} not measured"),
        };
        if let Some(least) = least {
            let least = least.show(self.locale.units, Rounding::Up);
            text.push_str(&format!(", at least {least} asked"));
        }
        if let Some(short) = short {
            let lead = has.map_or_else(|| self.system(), |has| has.system);
            let short = figures::difference(short, lead, self.locale);
            text.push_str(&format!(": {short} too short"));
        }
        text
    }

    /// How far a held tool reaches, against the water at a freeboard.
    pub(crate) fn reaches(&self, down: Length, freeboard: Length) -> String {
        let about = |length, rounding| roughly(length, self.system(), self.locale, rounding);
        let touch = match Touch::of(down, freeboard) {
            Touch::Above(by) => {
                format!("it ends {} above the water", about(by, Rounding::Up))
            }
            Touch::Just(_) => "it only just touches the water".to_owned(),
            Touch::Into(by) => format!("{} into the water", about(by, Rounding::Down)),
        };
        let several = if self.has_several_freeboards() {
            format!(" at a freeboard of {}", self.freeboard(freeboard))
        } else {
            String::new()
        };
        format!("held so, it reaches {} down: {touch}{several}", about(down, Rounding::Down))
    }

    /// One stretch of freeboards, where the one before it ends or at zero.
    pub(crate) fn stretch(&self, stretch: &Stretch) -> String {
        let end = figures::stretch_end(stretch.to, self.system(), self.locale);
        match (stretch.from == Length::ZERO, stretch.from == stretch.to) {
            (true, true) => "at no freeboard at all".to_owned(),
            (true, false) => format!("up to {end}"),
            (false, true) => format!("at {end}"),
            (false, false) => format!("above that, up to {end}"),
        }
    }
}

/// A length in steps that suit a hand-held pole: a quarter of an inch, or five
/// millimetres.
fn roughly(length: Length, lead: System, locale: Locale, rounding: Rounding) -> String {
    let step = |system| match system {
        System::Customary => 25_400_000 / 4,
        System::Metric => 5_000_000,
    };
    let show = |system: System| {
        let (step, count) = (step(system), length.nanometres());
        let steps = match rounding {
            Rounding::Up => (count + step - 1) / step,
            Rounding::Down => count / step,
        };
        let rounded = Length::from_nanometres(steps * step).unwrap_or(length);
        rounded.show(system, rounding)
    };
    match locale.units {
        Units::Metric => show(System::Metric),
        Units::Customary => show(System::Customary),
        Units::Both => format!("{} ({})", show(lead), show(lead.other())),
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

/// A sentence of its own: a capital in front, a full stop behind.
pub(crate) fn sentence(text: &str) -> String {
    let stop = if text.ends_with('.') { "" } else { "." };
    format!("{}{stop}", capital(text))
}

/// The text with a capital in front.
pub(crate) fn capital(text: &str) -> String {
    let mut signs = text.chars();
    let first = signs.next().map(|first| first.to_uppercase().to_string()).unwrap_or_default();
    format!("{first}{}", signs.as_str())
}

/// That what fails below fails here too.
pub(crate) const AS_BEFORE: &str = "as before";

/// Until when the kit is ready, in few words.
pub(crate) fn ready_until(until: ReadyUntil) -> String {
    match until {
        ReadyUntil::None => "not ready at departure".to_owned(),
        ReadyUntil::Day(day) => format!("ready until {day}"),
        ReadyUntil::NoEnd => "ready, and nothing aboard runs out".to_owned(),
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
