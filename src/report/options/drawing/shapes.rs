//! The shapes that drawings share: the turtle, the vessel's side with one of
//! its crew, the water, hooks, arrows, and the lens that shows an end close up.
//!
//! Imports maud alone. A shape is drawn around its own middle and set down
//! with `at`.

use maud::{Markup, html};

/// Shapes set down at a place, turned clockwise by so many degrees, scaled in
/// hundredths; a scale across of less than nothing mirrors.
pub(super) fn at(x: i32, y: i32, turn: i32, scale: (i32, i32), shapes: &Markup) -> Markup {
    let part = |hundredths: i32| {
        let sign = if hundredths < 0 { "-" } else { "" };
        format!("{sign}{}.{:02}", hundredths.abs() / 100, hundredths.abs() % 100)
    };
    let scale = format!("{} {}", part(scale.0), part(scale.1));
    html! {
        g transform={ "translate(" (x) " " (y) ") rotate(" (turn) ") scale(" (scale) ")" } { (shapes) }
    }
}

/// A line without a filling.
pub(super) fn stroke(class: &str, path: &str) -> Markup {
    html! { path class={ "stroke " (class) } d=(path) {} }
}

/// A turtle from the side, looking to the right.
pub(super) fn turtle() -> Markup {
    html! {
        path class="skin" d="M-30 8 C-40 12 -50 22 -60 21 C-63 20 -61 16 -57 14 C-50 11 -45 6 -38 2 Z" {}
        path class="skin" d="M34 -8 C44 -18 60 -20 68 -10 C71 -6 71 -2 67 1 C58 4 48 6 38 8 Z" {}
        path class="skin" d="M-42 7 C-37 -16 -12 -29 10 -24 C28 -20 40 -6 43 5 C28 15 -20 17 -42 7 Z" {}
        path class="fine" d="M-42 6 C-14 1 20 0 42 4 M-27 3 L-19 -16 M-5 1 L-3 -25 M18 1 L14 -22 M-19 -16 C-8 -12 4 -12 27 -14" {}
        path class="skin" d="M8 9 C7 24 -4 36 -20 43 C-24 44 -25 40 -22 37 C-12 31 -8 20 -10 10 Z M8 9 L-10 10" {}
        circle class="dot" cx="57" cy="-9" r="2.6" {}
        path class="fine" d="M69 -3 L60 -1" {}
    }
}

/// The water with its dashed line, from there to the right edge.
pub(super) fn water(from: i32, level: i32) -> Markup {
    html! {
        rect class="water" x=(from) y=(level) width=(200 - from) height=(150 - level) {}
        path class="surface" d={ "M" (from) " " (level) "H200" } {}
    }
}

/// The vessel's side with the rail, somebody standing behind it.
pub(super) fn vessel() -> Markup {
    html! {
        path class="skin" d="M18 46 C17 30 22 24 32 24 C42 24 46 32 46 46 Z" {}
        circle class="skin" cx="33" cy="14" r="9" {}
        path class="hull" d="M0 46 H60 L52 150 H0 Z" {}
        path class="side" d="M60 46 L52 150" {}
        path class="rail-cap" d="M0 46 H63" {}
    }
}

/// An arm of the one behind the rail, with the hand at the pole.
pub(super) fn arm(x: i32, y: i32) -> Markup {
    html! {
        path class="limb" d={ "M38 30 L" (x) " " (y) } {}
        circle class="hand" cx=(x) cy=(y) r="4" {}
    }
}

/// A hook close up: eye at the middle, hanging down, its point to the left
/// and buried.
pub(super) fn hook() -> Markup {
    html! {
        circle class="hook" cx="0" cy="0" r="4" {}
        path class="hook" d="M0 4 V30 A12 12 0 0 1 -22 36" {}
        path class="hook buried" d="M-24 32 V16" {}
    }
}

/// A hook as small as it is in a whole scene, its line coming from above.
pub(super) fn small_hook() -> Markup {
    html! { path class="hook thin" d="M0 0 C5 5 8 12 2 14 C-2 15 -5 12 -5 8" {} }
}

/// The end of a tool close up: a round lens, tied to the place it shows.
pub(super) fn lens(shown: (i32, i32), shapes: &Markup) -> Markup {
    html! {
        path class="fine" d={ "M138 66 L" (shown.0) " " (shown.1) } {}
        circle class="lens" cx="158" cy="40" r="37" {}
        (at(158, 40, 0, (100, 100), shapes))
    }
}

/// An arrow head, pointing up, its tip at the middle.
pub(super) fn head(x: i32, y: i32, turn: i32) -> Markup {
    at(x, y, turn, (100, 100), &html! { path class="tip" d="M0 0 L7 12 H-7 Z" {} })
}
