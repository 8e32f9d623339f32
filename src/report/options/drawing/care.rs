//! Care for the animal: laid down to recover, and let go.
//!
//! Imports the shapes beside it.

use super::shapes::{arm, at, head, stroke, turtle, water};
use maud::{Markup, html};

/// A limp turtle on a tire in the shade.
pub(super) fn recovery() -> Markup {
    html! {
        circle class="skin" cx="26" cy="16" r="9" {}
        path class="fine" d="M26 0 V3 M42 16 H45 M10 16 H7 M37 5 L39 3 M15 5 L13 3" {}
        path class="tool" d="M10 40 C60 28 140 28 190 40" {}
        path class="fine tool-fine" d="M14 39 V54 L32 49 L50 45 L74 42 L100 41 L126 42 L150 45 L168 49 L186 54 V39" {}
        path class="stroke heavy" d="M10 40 V142 M190 40 V142 M0 142 H200" {}
        path class="tire" d="M58 116 H146 A13 13 0 0 1 146 142 H58 A13 13 0 0 1 58 116 Z" {}
        path class="fine" d="M62 118 V140 M76 117 V141 M90 117 V141 M104 117 V141 M118 117 V141 M132 117 V141 M144 118 V140" {}
        path class="skin" d="M52 96 H84 V116 H52 Z" {}
        (at(102, 96, 14, (88, 88), &turtle()))
        (at(102, 96, 14, (88, 88), &html! {
            path class="cloth" d="M-34 -6 C-26 -24 -8 -31 10 -27 C24 -24 32 -16 36 -8 C28 -2 24 -8 18 -2 C12 4 6 -4 0 1 C-8 6 -12 -3 -18 1 C-26 5 -28 -3 -34 -6 Z" {}
        }))
        path class="drop" d="M86 52 C82 59 80 61 80 64 A6 6 0 0 0 92 64 C92 61 90 59 86 52 Z" {}
        path class="drop" d="M112 48 C108 55 106 57 106 60 A6 6 0 0 0 118 60 C118 57 116 55 112 48 Z" {}
        (stroke("arrow", "M30 116 V94"))
        (head(30, 84, 0))
    }
}

/// A turtle slides over the lowest part of the rail; the propeller is still.
pub(super) fn release() -> Markup {
    html! {
        (water(0, 96))
        path class="skin" d="M18 46 C17 30 22 24 32 24 C42 24 46 32 46 46 V66 H18 Z" {}
        circle class="skin" cx="33" cy="14" r="9" {}
        path class="hull" d="M0 40 H22 C30 40 32 68 42 68 H86 L81 110 H0 Z" {}
        path class="side" d="M86 68 L81 110 H0" {}
        path class="rail-cap" d="M0 40 H22 C30 40 32 68 42 68 H88" {}
        (at(106, 61, 32, (80, 80), &turtle()))
        (arm(68, 42))
        path class="stroke heavy" d="M28 110 V129 H58" {}
        path class="skin" d="M62 129 C55 124 55 116 62 113 C69 116 69 124 62 129 C69 134 69 142 62 145 C55 142 55 134 62 129 Z" {}
        circle class="tool thin" cx="62" cy="129" r="19" {}
        path class="tool thin" d="M49 115 L75 143" {}
        (stroke("arrow", "M160 42 C172 50 178 58 181 70"))
        (head(184, 81, 166))
    }
}
