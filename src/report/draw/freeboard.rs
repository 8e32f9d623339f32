//! The freeboard line: from zero to twice the vessel's own freeboard, a lane
//! for each verdict.

use super::svg::{WIDTH, area, drawn, image, label, label_at, label_to, line, places};
use crate::measure::Length;
use crate::model::finding::{Stretch, Verdict};
use crate::report::Locale;
use maud::{Markup, html};

/// Where the line begins and ends, from the left.
const LEFT: f64 = 112.0;
const RIGHT: f64 = WIDTH - 8.0;
/// How tall one lane is, and where the first begins.
const LANE: f64 = 30.0;
const TOP: f64 = 36.0;

/// The lanes from above: a verdict each, so that the place says what the
/// colour says.
const LANES: [(Verdict, &str, &str); 3] = [
    (Verdict::Ready, "good", "✓"),
    (Verdict::CannotTell, "open", "?"),
    (Verdict::NotReady, "bad", "✕"),
];

/// What the line shows.
pub(in crate::report) struct Line<'a> {
    /// The stretches, in order, and the end of the last.
    pub(in crate::report) parts: &'a [Stretch],
    /// That end, in the picture's one system of units.
    pub(in crate::report) end: (Length, String),
    /// The vessel's own freeboards, each with its ends, and all in words.
    pub(in crate::report) own: (&'a [(Length, Length)], String),
    /// Above what the kit gives out, if it does.
    pub(in crate::report) gives_out: Option<String>,
    /// How verdicts are named.
    pub(in crate::report) locale: Locale,
}

/// The line as an image.
pub(in crate::report) fn picture(id: &str, texts: (&str, &str), of: &Line<'_>) -> Markup {
    image(id, TOP + 3.0 * LANE + 50.0, texts, &body(of))
}

fn body(of: &Line<'_>) -> Markup {
    let at = |freeboard: Length| LEFT + drawn(freeboard) / drawn(of.end.0) * (RIGHT - LEFT);
    let bottom = TOP + 3.0 * LANE;
    let (own, own_in_words) = &of.own;
    let ends = || own.iter().flat_map(|(low, high)| [*low, *high]);
    let middle = ends().min().zip(ends().max()).map(|(low, high)| (at(low) + at(high)) / 2.0);
    html! {
        @for (index, (verdict, class, sign)) in LANES.iter().enumerate() {
            @let y = TOP + places(index) * LANE;
            (line("lane", (LEFT, y + LANE), (RIGHT, y + LANE)))
            @let name = format!("{sign} {}", of.locale.verdict(*verdict));
            (label("", (4.0, y + 21.0), LEFT - 8.0, &name))
            @for part in of.parts.iter().filter(|part| part.verdict == *verdict) {
                @let width = (at(part.to) - at(part.from)).max(2.0).min(RIGHT - at(part.from).min(RIGHT - 2.0));
                (area(&format!("lane-{class}"), (at(part.from).min(RIGHT - 2.0), y + 4.0), (width, LANE - 7.0)))
            }
        }
        @for (low, high) in *own {
            @if low != high { (area("own-range", (at(*low), TOP - 6.0), (at(*high) - at(*low), bottom - TOP + 12.0))) }
            (line("own", (at(*low), TOP - 8.0), (at(*low), bottom + 6.0)))
            @if low != high { (line("own", (at(*high), TOP - 8.0), (at(*high), bottom + 6.0))) }
        }
        @if let Some(middle) = middle {
            (label_at("strong", (middle, TOP - 14.0), own_in_words))
        }
        (label("", (LEFT, bottom + 22.0), 20.0, "0"))
        (label_to("", (RIGHT, bottom + 22.0), 160.0, &of.end.1))
        @if let Some(gives_out) = &of.gives_out {
            (label_to("", (RIGHT, bottom + 41.0), RIGHT - 4.0, gives_out))
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn lanes_marks_and_label_stand_where_the_freeboards_are() {
        let millimetres = Length::from_millimetres;
        let part = |from, to, verdict| Stretch {
            from: millimetres(from),
            to: millimetres(to),
            verdict,
            fails: Vec::new(),
        };
        // From 112 to 320: 104 for a metre.
        let line = Line {
            parts: &[part(0, 1000, Verdict::Ready), part(1000, 2000, Verdict::NotReady)],
            end: (millimetres(2000), "2 m".into()),
            own: (
                &[
                    (millimetres(500), millimetres(500)),
                    (millimetres(1000), millimetres(1250)),
                    (millimetres(1500), millimetres(1500)),
                ],
                "own".into(),
            ),
            gives_out: None,
            locale: Locale::default(),
        };
        let drawn = picture("id", ("", ""), &line).into_string();
        assert!(drawn.contains("viewBox=\"0 0 328 176\""), "{drawn}");
        let mark = |x| format!("<line class=\"own\" x1=\"{x}\" y1=\"28\" x2=\"{x}\" y2=\"132\">");
        assert_eq!(drawn.matches("class=\"own\"").count(), 4, "{drawn}");
        for expected in [
            "<rect class=\"lane-good\" x=\"112\" y=\"40\" width=\"104\" height=\"23\">",
            "<rect class=\"lane-bad\" x=\"216\" y=\"100\" width=\"104\" height=\"23\">",
            &mark(164),
            &mark(216),
            &mark(242),
            &mark(268),
            "<rect class=\"own-range\" x=\"216\" y=\"30\" width=\"26\" height=\"102\">",
            // Above the middle of all of them.
            "<text class=\"strong\" x=\"216\" y=\"22\" text-anchor=\"middle\">own",
        ] {
            assert!(drawn.contains(expected), "{expected}: {drawn}");
        }
    }
}
