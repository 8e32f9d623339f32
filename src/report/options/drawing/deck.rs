//! What is done on deck: the gag, the bolt cutters, the point pushed through.
//!
//! Imports the shapes beside it.

use super::shapes::{head, stroke};
use maud::{Markup, html};

/// An open mouth from the front, with a block between the jaws.
pub(super) fn gag() -> Markup {
    html! {
        path class="skin" d="M100 4 C150 4 178 40 176 78 C174 122 140 148 100 148 C60 148 26 122 24 78 C22 40 50 4 100 4 Z" {}
        path class="fine" d="M66 12 L78 28 L100 34 L122 28 L134 12 M78 28 L60 36 M122 28 L140 36 M100 34 V46 M26 92 L46 98 M174 92 L154 98 M40 118 L56 114 M160 118 L144 114" {}
        circle class="dot" cx="93" cy="56" r="2" {} circle class="dot" cx="107" cy="56" r="2" {}
        path class="fine" d="M40 82 C50 46 86 38 100 44 C114 38 150 46 160 82" {}
        circle class="skin" cx="45" cy="52" r="9" {} circle class="dot" cx="44" cy="53" r="4" {}
        circle class="skin" cx="155" cy="52" r="9" {} circle class="dot" cx="156" cy="53" r="4" {}
        path class="mouth" d="M52 84 C60 58 88 50 100 68 C112 50 140 58 148 84 C150 116 128 140 100 140 C72 140 50 116 52 84 Z" {}
        path class="skin" d="M74 128 C76 106 124 106 126 128 C116 138 84 138 74 128 Z" {}
        ellipse class="dot" cx="103" cy="94" rx="11" ry="8" {}
        path class="wood" d="M122 62 H138 V129 H122 Z" {}
        path class="fine tool-fine" d="M127 68 V122 M133 72 V126" {}
        (stroke("line", "M84 150 L82 136"))
        circle class="hook" cx="82" cy="132" r="4" {}
        path class="hook" d="M82 128 L84 94 C84 78 64 78 63 92 L58 106 M58 107 L68 102" {}
        (stroke("arrow", "M98 78 C88 66 74 68 66 74"))
        (head(56, 79, -128))
    }
}

/// Flesh with a flat top: from there to there, down to the lower edge.
fn flesh(from: i32, to: i32, top: i32) -> Markup {
    html! {
        path class="flesh" d={ "M" (from) " " (top) " H" (to) " V150 H" (from) " Z" } {}
        path class="stroke heavy" d={ "M" (from) " " (top) " H" (to) } {}
    }
}

/// Bolt cutters at the shank of a hook whose point shows.
pub(super) fn bolt_cutters() -> Markup {
    html! {
        (flesh(0, 200, 88))
        path class="hook buried" d="M88 88 C88 132 34 132 34 88" {}
        path class="hook" d="M88 88 V28 M34 88 L34 58 M34 56 L46 72" {}
        circle class="hook" cx="88" cy="22" r="6" {}
        (stroke("line", "M92 18 L112 0"))
        path class="tool" d="M80 66 L112 71 L192 44 M80 82 L112 77 L192 104" {}
        path class="blade" d="M80 66 L104 69 L98 74 L80 69 Z M80 82 L104 79 L98 74 L80 79 Z" {}
        circle class="hand" cx="116" cy="74" r="5" {}
    }
}

/// First the point comes through, then it is cut off.
pub(super) fn push_through() -> Markup {
    html! {
        (flesh(0, 92, 100))
        path class="hook buried" d="M72 100 C72 136 30 136 30 100" {}
        path class="hook" d="M72 100 V44 M30 100 V76 M30 74 L40 88" {}
        circle class="hook" cx="72" cy="38" r="6" {}
        (stroke("arrow", "M12 104 V72"))
        (head(12, 62, 0))
        path class="fine" d="M100 6 V144" {}
        (flesh(108, 200, 100))
        path class="hook buried" d="M172 100 C172 136 136 136 136 100" {}
        path class="hook" d="M172 100 V44 M136 100 V92 M136 72 V62 M136 60 L146 74" {}
        circle class="hook" cx="172" cy="38" r="6" {}
        path class="tool" d="M148 74 L130 81 L107 62 M148 90 L130 82 L107 30" {}
        (stroke("arrow", "M190 84 V46"))
        (head(190, 36, 0))
    }
}
