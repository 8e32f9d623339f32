//! The time line: a bar for what is good over the same days, against the trip
//! and the last day on which the kit is ready.

use super::svg::{WIDTH, area, image, label, label_at, label_to, line, places};
use crate::measure::Day;
use crate::model::finding::Asked;
use crate::report::Locale;
use maud::{Markup, html};

/// Where the line begins and ends, from the left.
const LEFT: f64 = 26.0;
const RIGHT: f64 = WIDTH - 8.0;
/// Where the first row begins and how tall a row is.
const TOP: f64 = 30.0;
const ROW: f64 = 40.0;
/// How many days before departure are drawn, and how many after the return at
/// most: a certificate of years would make a week at sea a hair.
const BEFORE: i64 = 14;
const AFTER: i64 = 200;

/// The days on which something is good.
pub(in crate::report) struct Bar {
    /// The first, if there is one.
    pub(in crate::report) from: Option<Day>,
    /// The last.
    pub(in crate::report) until: Day,
}

/// The bars as an image; `ready` is the last day on which the kit is ready.
pub(in crate::report) fn picture(
    id: &str,
    texts: (&str, &str),
    ready: Option<Day>,
    asked: Asked,
    bars: &[Bar],
    locale: Locale,
) -> Markup {
    image(id, TOP + places(bars.len()) * ROW + 50.0, texts, &body(ready, asked, bars, locale))
}

/// A, B, … Z, then 27, 28.
pub(in crate::report) fn letter(index: usize) -> String {
    match u8::try_from(index) {
        Ok(index) if index < 26 => char::from(b'A' + index).to_string(),
        _ => (index + 1).to_string(),
    }
}

/// The days that are drawn.
struct Axis {
    first: Day,
    last: Day,
}

impl Axis {
    fn new(ready: Option<Day>, asked: Asked, bars: &[Bar]) -> Self {
        let mut last = asked.back;
        for day in bars.iter().map(|bar| bar.until).chain(ready) {
            if day > last && day.days_since(asked.back) <= AFTER {
                last = day;
            }
        }
        for _ in 0..BEFORE {
            last = last.next();
        }
        let mut first = asked.departure;
        for _ in 0..BEFORE {
            first = first.previous();
        }
        Self { first, last }
    }

    /// Where the trip begins and ends.
    fn trip(&self, asked: Asked) -> (f64, f64) {
        let out = self.at(asked.departure);
        (out, self.at(asked.back.next()).max(out + 2.0))
    }

    /// Where a day begins, within what is drawn.
    #[allow(clippy::cast_precision_loss, reason = "a place on the page, never a verdict")]
    fn at(&self, day: Day) -> f64 {
        let all = self.last.days_since(self.first).max(1) as f64;
        let share = day.days_since(self.first) as f64 / all;
        LEFT + share.clamp(0.0, 1.0) * (RIGHT - LEFT)
    }
}

fn body(ready: Option<Day>, asked: Asked, bars: &[Bar], locale: Locale) -> Markup {
    let axis = Axis::new(ready, asked, bars);
    let bottom = TOP + places(bars.len()) * ROW;
    let (out, home) = axis.trip(asked);
    let ready = ready.map(|day| (day, axis.at(day.next())));
    html! {
        (label_at("strong", ((out + home) / 2.0, TOP - 12.0), locale.drawing_trip()))
        (area("trip-bar", (out, TOP - 6.0), (home - out, 5.0)))
        @for (index, bar) in bars.iter().enumerate() {
            @let y = TOP + places(index) * ROW;
            // Behind the bars alone, so that nothing runs through a label.
            (area("trip", (out, y + 18.0), (home - out, 19.0)))
            (row(&axis, bar, asked, index, locale))
            @if let Some((_, x)) = ready { (line("own", (x, y + 16.0), (x, y + 38.0))) }
        }
        (line("axis", (LEFT, bottom + 4.0), (RIGHT, bottom + 4.0)))
        @if let Some((day, x)) = ready {
            (line("own", (x, bottom), (x, bottom + 8.0)))
            @let beyond = if day >= axis.last { " →" } else { "" };
            (label_at("strong", (x, bottom + 44.0), &format!("{}{beyond}", locale.picture_until_day(&day))))
        }
        (label("", (LEFT, bottom + 23.0), 120.0, &axis.first.to_string()))
        (label_to("", (RIGHT, bottom + 23.0), 120.0, &axis.last.to_string()))
    }
}

/// One bar under its letter and its last day: what runs on beyond the drawing
/// has an arrow, what ends before the return says so.
fn row(axis: &Axis, bar: &Bar, asked: Asked, index: usize, locale: Locale) -> Markup {
    let y = TOP + places(index) * ROW;
    let from = bar.from.map_or(LEFT, |day| axis.at(day));
    let to = axis.at(bar.until.next());
    let (class, text) = match bar.until {
        until if until < asked.departure => {
            ("bar over", format!("✕ {}", locale.drawing_to_before_trip(&until)))
        }
        until if until < asked.back => {
            ("bar over", format!("✕ {}", locale.drawing_to_during_trip(&until)))
        }
        until if until >= axis.last => ("bar", format!("{} →", locale.drawing_to(&until))),
        until => ("bar", locale.drawing_to(&until)),
    };
    html! {
        (label("strong", (4.0, y + 31.0), LEFT - 6.0, &letter(index)))
        (label("", (LEFT + 2.0, y + 15.0), RIGHT - LEFT, &text))
        (area(class, (from.min(RIGHT - 2.0), y + 20.0), ((to - from).max(2.0), 12.0)))
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::model::vessel::Trust;

    #[test]
    fn trip_bars_and_ready_stand_where_the_days_are() {
        let day = |text: &str| Day::parse(text).unwrap();
        let asked =
            Asked { departure: day("2026-03-16"), back: day("2026-03-22"), trust: Trust::All };
        let bar = |from: Option<&str>, until| Bar { from: from.map(day), until: day(until) };
        // 14 days before departure, 14 after the last bar that ends soon enough
        // after the return: 42 days from 26 to 320, 7 for each.
        let bars = [
            bar(None, "2026-03-15"),
            bar(Some("2026-03-01"), "2026-03-21"),
            bar(Some("2026-03-09"), "2026-03-30"),
            bar(Some("2026-03-16"), "2026-10-09"),
        ];
        let drawn = body(Some(day("2026-03-19")), asked, &bars, Locale::default()).into_string();
        assert!(drawn.contains(">2026-03-02<") && drawn.contains(">2026-04-13<"), "{drawn}");
        for expected in [
            "<rect class=\"trip-bar\" x=\"124\" y=\"24\" width=\"49\" height=\"5\">",
            "<text class=\"strong\" x=\"148.5\" y=\"18\" text-anchor=\"middle\">",
            "<rect class=\"bar over\" x=\"26\" y=\"50\" width=\"98\" height=\"12\">",
            "<rect class=\"bar over\" x=\"26\" y=\"90\" width=\"140\" height=\"12\">",
            "<rect class=\"bar\" x=\"75\" y=\"130\" width=\"154\" height=\"12\">",
            "<rect class=\"bar\" x=\"124\" y=\"170\" width=\"196\" height=\"12\">",
            "<line class=\"own\" x1=\"152\" y1=\"46\" x2=\"152\" y2=\"68\">",
            "✕ to 2026-03-15, before",
            "✕ to 2026-03-21, during",
            ">to 2026-03-30<",
            ">to 2026-10-09 →<",
            ">ready until 2026-03-19<",
        ] {
            assert!(drawn.contains(expected), "{expected}: {drawn}");
        }
        // What ends on the day of departure or of return does not end before it.
        let axis = Axis::new(None, asked, &bars);
        for (until, told) in
            [("2026-03-16", "✕ to 2026-03-16, during"), ("2026-03-22", ">to 2026-03-22<")]
        {
            let row = row(&axis, &bar(None, until), asked, 0, Locale::default()).into_string();
            assert!(row.contains(told), "{told}: {row}");
        }
        // 200 days after the return is soon enough, and the day after is not.
        let last = |until| Axis::new(None, asked, &[bar(None, until)]).last;
        assert_eq!(last("2026-10-08"), day("2026-10-22"));
        assert_eq!(last("2026-10-09"), day("2026-04-05"));
        let ready = Axis::new(Some(day("2026-03-30")), asked, &[]);
        assert_eq!(ready.last, day("2026-04-13"));
    }

    #[test]
    fn bars_are_lettered_and_then_numbered() {
        assert_eq!([0, 25, 26].map(letter), ["A", "Z", "27"]);
    }
}
