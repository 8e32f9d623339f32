//! What is done from the rail: net, long dehooker, inverted V, long cutter.
//!
//! Imports the shapes beside it.

use super::shapes::{arm, at, head, hook, lens, small_hook, stroke, turtle, vessel, water};
use maud::{Markup, html};

/// A net lowered under a turtle.
pub(super) fn net() -> Markup {
    html! {
        (water(50, 92))
        (vessel())
        path class="mesh" d="M88 113 C92 144 168 146 176 113 Z" {}
        path class="fine tool-fine" d="M98 120 L112 134 M114 121 L130 138 M132 121 L148 136 M150 121 L161 130 M105 129 L113 121 M121 136 L133 121 M140 136 L152 121 M156 132 L166 119" {}
        path class="tool" d="M88 113 A44 8 0 0 1 176 113" {}
        (at(130, 97, 0, (74, 74), &turtle()))
        path class="tool" d="M88 113 A44 8 0 0 0 176 113" {}
        path class="tool" d="M49 10 L88 113" {}
        (arm(54, 22)) (arm(60, 38))
        (stroke("arrow", "M190 124 V72"))
        (head(190, 62, 0))
    }
}

/// The scene of a long pole that follows the line down to the hook.
fn along_the_line(end: &Markup) -> Markup {
    html! {
        (water(50, 92))
        (vessel())
        (stroke("line", "M62 44 C84 66 102 84 121 99"))
        (at(152, 110, 0, (-76, 76), &turtle()))
        (at(121, 99, 0, (90, 90), &small_hook()))
        path class="tool" d="M48 8 L117 94" {}
        (arm(55, 17)) (arm(67, 32))
        (lens((122, 96), end))
    }
}

/// The flesh that a hook sits in, close up, its upper end at that height.
fn caught(top: i32) -> Markup {
    html! {
        path class="flesh"
            d={ "M-36 " (top) " C-24 " (top - 4) " -10 " (top) " -7 " (top + 14) " C-5 26 -8 32 -12 35 C-26 30 -37 16 -36 " (top) " Z" } {}
        (stroke("fine", &format!("M-36 {top} C-24 {} -10 {top} -7 {} C-5 26 -8 32 -12 35", top - 4, top + 14)))
    }
}

/// The open end of a dehooker in the bend of the hook.
pub(super) fn long_dehooker() -> Markup {
    along_the_line(&html! {
        (caught(-6))
        (stroke("line", "M6 -36 L9 -23"))
        (at(9, -19, 0, (108, 108), &hook()))
        path class="tool" d="M26 -28 L17 2 C14 17 2 22 -4 12" {}
    })
}

/// The blade of a cutter at the eye of the hook.
pub(super) fn long_cutter() -> Markup {
    along_the_line(&html! {
        (caught(6))
        (stroke("line", "M0 -37 L4 -6"))
        (at(5, -1, 0, (86, 86), &hook()))
        path class="tool" d="M32 -18 L20 -16 M-9 -27 L20 -16 L-9 -8" {}
        path class="edge" d="M17 -16 L4 -21 V-12 Z" {}
    })
}

/// The line drawn up into an inverted V, a flipper held.
pub(super) fn inverted_v() -> Markup {
    html! {
        (water(50, 92))
        (vessel())
        (stroke("line heavy", "M84 150 L94 92 L124 31"))
        (at(138, 102, 0, (76, 76), &turtle()))
        (stroke("line heavy", "M124 31 L158 92"))
        (at(158, 92, 0, (90, 90), &small_hook()))
        path class="tool" d="M44 23 L122 30 C132 31 133 41 124 42" {}
        (arm(54, 24)) (arm(68, 25))
        path class="tool thin" d="M48 47 L130 118 M130 118 C136 112 146 118 141 125 C137 132 127 127 130 118" {}
    }
}
