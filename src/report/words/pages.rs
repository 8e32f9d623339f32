//! Words that only pages of HTML need: what a picture shows, told as text,
//! and what stands beside the parts of a page.
//!
//! Imports `model`, `measure` and `engine::validity`. The hold that the reach
//! drawing shows is a picture, never a verdict; it is reckoned in whole
//! nanometres all the same.

use super::Words;
use super::figures;
use crate::engine::validity::End;
use crate::measure::{Day, Figure, Length, Rounding, System};
use crate::model::finding::{ReadyUntil, Stretch};
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
                self.locale.reach_aboard(&attribute, &has.show(self.locale.units, Rounding::Down))
            }
            None => self.locale.reason_not_measured(&attribute),
        };
        if let Some(least) = least {
            let least = least.show(self.locale.units, Rounding::Up);
            text += &format!(", {}", self.locale.reach_asked(&least));
        }
        if let Some(short) = short {
            let lead = has.map_or_else(|| self.system(), |has| has.system);
            let short = figures::difference(short, lead, self.locale);
            text += &format!(": {}", self.locale.reach_short(&short));
        }
        text
    }

    /// How far a held tool reaches, against the water at a freeboard.
    pub(crate) fn reaches(&self, down: Length, freeboard: Length) -> String {
        let about = |length, rounding| roughly(length, self.system(), self.locale, rounding);
        let depth = about(down, Rounding::Down);
        let text = match Touch::of(down, freeboard) {
            Touch::Above(by) => self.locale.reach_above(&depth, &about(by, Rounding::Up)),
            Touch::Just(_) => self.locale.reach_just(&depth),
            Touch::Into(by) => self.locale.reach_into(&depth, &about(by, Rounding::Down)),
        };
        if self.has_several_freeboards() {
            self.locale.reach_at(&text, &self.freeboard(freeboard))
        } else {
            text
        }
    }

    /// One stretch of freeboards, where the one before it ends or at zero.
    pub(crate) fn stretch(&self, stretch: &Stretch) -> String {
        let end = figures::stretch_end(stretch.to, self.system(), self.locale);
        match (stretch.from == Length::ZERO, stretch.from == stretch.to) {
            (true, true) => self.locale.stretch_nowhere().to_owned(),
            (true, false) => self.locale.stretch_first(&end),
            (false, true) => self.locale.stretch_at(&end),
            (false, false) => self.locale.stretch_next(&end),
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
    figures::beside(lead, locale, |system| {
        let (step, count) = (step(system), length.nanometres());
        let steps = match rounding {
            Rounding::Up => (count + step - 1) / step,
            Rounding::Down => count / step,
        };
        let rounded = Length::from_nanometres(steps * step).unwrap_or(length);
        rounded.show(system, rounding)
    })
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

/// Until when the kit is ready, in few words.
pub(crate) fn ready_until(until: ReadyUntil, locale: Locale) -> String {
    match until {
        ReadyUntil::None => locale.until_none().to_owned(),
        ReadyUntil::Day(day) => locale.picture_until_day(&day),
        ReadyUntil::NoEnd => locale.picture_until_no_end().to_owned(),
    }
}

/// Until when something is good and what ends it.
pub(crate) fn good_through(
    what: &str,
    certificate: bool,
    end: End,
    day: Day,
    locale: Locale,
) -> String {
    match (certificate, end) {
        (true, _) => locale.good_certificate(&what, &day),
        (false, End::Inspection) => locale.good_inspection(&what, &day),
        (false, End::Expiry) => locale.good_tool(&what, &day),
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
