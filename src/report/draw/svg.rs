//! The strokes of a picture: an image with its name and its facts as text,
//! lines, boxes, and labels that keep within their room.
//!
//! Imports `model::text` and `measure`. Floating point is for places on the
//! page alone: every figure that is printed was reckoned exactly.

use crate::measure::Length;
use crate::model::text::visible as shown;
use maud::{Markup, html};

/// How wide a drawing is, in its own units: as wide as a phone's page, so
/// that its type is as large as the page's.
pub(super) const WIDTH: f64 = 328.0;
/// How wide a character is taken to be where a label must keep inside.
const CHARACTER: f64 = 9.6;
/// The same for a label that is set closer together only if it is longer
/// than its room.
const NARROW: f64 = 8.2;

/// A drawing as an image with a name and the same facts in words; `id` is
/// unique on the page.
pub(super) fn image(id: &str, height: f64, (title, facts): (&str, &str), body: &Markup) -> Markup {
    let (titled, described) = (format!("{id}-t"), format!("{id}-d"));
    html! {
        svg class="drawing" id=(id)
            viewBox={ "0 0 " (n(WIDTH)) " " (n(height)) }
            role="img" aria-labelledby={ (titled) " " (described) } {
            title id=(titled) { (shown(title)) }
            desc id=(described) { (shown(facts)) }
            (body)
        }
    }
}

/// A place on the page, to a tenth of a unit.
pub(super) fn n(place: f64) -> String {
    let place = if place.is_finite() { place } else { 0.0 };
    let tenths = format!("{place:.1}");
    tenths.strip_suffix(".0").map_or(tenths.clone(), str::to_owned)
}

/// A straight line.
pub(super) fn line(class: &str, from: (f64, f64), to: (f64, f64)) -> Markup {
    html! { line class=(class) x1=(n(from.0)) y1=(n(from.1)) x2=(n(to.0)) y2=(n(to.1)) {} }
}

/// A filled box.
pub(super) fn area(class: &str, (x, y): (f64, f64), (width, height): (f64, f64)) -> Markup {
    html! {
        rect class=(class) x=(n(x)) y=(n(y)) width=(n(width.max(0.0))) height=(n(height.max(0.0))) {}
    }
}

/// A label that begins there, set closer where it is longer than its room.
pub(super) fn label(class: &str, place: (f64, f64), room: f64, text: &str) -> Markup {
    anchored(class, place, None, room, text)
}

/// A label that ends there, set closer where it is longer than its room.
pub(super) fn label_to(class: &str, place: (f64, f64), room: f64, text: &str) -> Markup {
    anchored(class, place, Some("end"), room, text)
}

fn anchored(
    class: &str,
    (x, y): (f64, f64),
    anchor: Option<&str>,
    room: f64,
    text: &str,
) -> Markup {
    let close = closer(room, text);
    html! {
        text class=(class) x=(n(x)) y=(n(y)) text-anchor=[anchor]
            textLength=[close.as_deref()] lengthAdjust=[close.as_ref().map(|_| "spacingAndGlyphs")] {
            (shown(text))
        }
    }
}

/// The room, if the text would not fit into it.
fn closer(room: f64, text: &str) -> Option<String> {
    (places(text.chars().count()) * NARROW > room).then(|| n(room))
}

/// A label around that place, moved so that it keeps within the drawing.
pub(super) fn label_at(class: &str, (x, y): (f64, f64), text: &str) -> Markup {
    let half = places(text.chars().count()) * CHARACTER / 2.0;
    let x = x.min(WIDTH - half).max(half.min(WIDTH / 2.0));
    html! { text class=(class) x=(n(x)) y=(n(y)) text-anchor="middle" { (shown(text)) } }
}

/// A length in millimetres, to be drawn.
#[allow(clippy::cast_precision_loss, reason = "a place on the page, never a verdict")]
pub(super) fn drawn(length: Length) -> f64 {
    length.nanometres() as f64 / 1e6
}

/// A count as a number of places.
#[allow(clippy::cast_precision_loss, reason = "a place on the page, never a verdict")]
pub(super) fn places(count: usize) -> f64 {
    count as f64
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_place_is_always_a_number() {
        assert_eq!(n(f64::NAN), "0");
        assert_eq!(n(f64::INFINITY), "0");
        assert_eq!(n(12.0), "12");
        assert_eq!(n(12.34), "12.3");
    }

    #[test]
    fn a_label_longer_than_its_room_is_set_closer() {
        // 8.2 for each of ten signs.
        let fits = label("", (0.0, 0.0), 82.0, "ten signs!").into_string();
        assert!(!fits.contains("textLength"), "{fits}");
        let close = label("", (0.0, 0.0), 81.0, "ten signs!").into_string();
        assert!(close.contains("textLength=\"81\""), "{close}");
    }

    #[test]
    fn a_label_keeps_within_the_drawing() {
        let text = label_at("", (0.0, 10.0), "ten signs!").into_string();
        assert!(text.contains("x=\"48\""), "{text}");
        let text = label_at("", (WIDTH, 10.0), "ten signs!").into_string();
        assert!(text.contains("x=\"280\""), "{text}");
    }
}
