//! The drawings of the wall card: what a technique looks like, in lines.
//!
//! Imports maud and the messages alone. Every drawing is made of plain shapes in one hand: ink
//! for animal, hook and vessel, the accent for the tool and what it does, the
//! dashed line for the water. They show a hold, never a measure.

use crate::report::Locale;
use crate::report::words::locale::Fixed;
use maud::{Markup, html};

/// How wide and how high every drawing is, in its own units.
const WIDTH: u32 = 200;
const HEIGHT: u32 = 150;

/// A drawing by its name.
struct Sketch {
    /// As a technique names it.
    name: &'static str,
    /// What it shows.
    title: Fixed,
    /// Its shapes.
    shapes: fn() -> Markup,
}

const SKETCHES: [Sketch; 9] = [
    Sketch { name: "net", title: Locale::options_drawing_net, shapes: net },
    Sketch {
        name: "long-dehooker",
        title: Locale::options_drawing_long_dehooker,
        shapes: long_dehooker,
    },
    Sketch { name: "inverted-v", title: Locale::options_drawing_inverted_v, shapes: inverted_v },
    Sketch { name: "long-cutter", title: Locale::options_drawing_long_cutter, shapes: long_cutter },
    Sketch { name: "gag", title: Locale::options_drawing_gag, shapes: gag },
    Sketch {
        name: "bolt-cutters",
        title: Locale::options_drawing_bolt_cutters,
        shapes: bolt_cutters,
    },
    Sketch {
        name: "push-through",
        title: Locale::options_drawing_push_through,
        shapes: push_through,
    },
    Sketch { name: "recovery", title: Locale::options_drawing_recovery, shapes: recovery },
    Sketch { name: "release", title: Locale::options_drawing_release, shapes: release },
];

/// The drawing of that name as an image with a name of its own; none where
/// there is no such drawing.
pub(in crate::report) fn sketch(name: &str, locale: Locale) -> Option<Markup> {
    let sketch = SKETCHES.iter().find(|sketch| sketch.name == name)?;
    let title = (sketch.title)(locale);
    Some(html! {
        svg class="sketch" viewBox={ "0 0 " (WIDTH) " " (HEIGHT) } role="img" aria-label=(title) {
            title { (title) }
            ((sketch.shapes)())
        }
    })
}

/// A net lowered under a turtle.
fn net() -> Markup {
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
    let (crest, bend) = (top - 4, top + 14);
    let edge = format!("M-36 {top} C-24 {crest} -10 {top} -7 {bend} C-5 26 -8 32 -12 35");
    html! {
        path class="flesh" d={ (edge) " C-26 30 -37 16 -36 " (top) " Z" } {}
        (stroke("fine", &edge))
    }
}

/// The open end of a dehooker in the bend of the hook.
fn long_dehooker() -> Markup {
    along_the_line(&html! {
        (caught(-6))
        (stroke("line", "M6 -36 L9 -23"))
        (at(9, -19, 0, (108, 108), &hook()))
        path class="tool" d="M26 -28 L17 2 C14 17 2 22 -4 12" {}
    })
}

/// The blade of a cutter at the eye of the hook.
fn long_cutter() -> Markup {
    along_the_line(&html! {
        (caught(6))
        (stroke("line", "M0 -37 L4 -6"))
        (at(5, -1, 0, (86, 86), &hook()))
        path class="tool" d="M32 -18 L20 -16 M-9 -27 L20 -16 L-9 -8" {}
        path class="edge" d="M17 -16 L4 -21 V-12 Z" {}
    })
}

/// The line drawn up into an inverted V, a flipper held.
fn inverted_v() -> Markup {
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

/// An open mouth from the front, with a block between the jaws.
fn gag() -> Markup {
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
fn bolt_cutters() -> Markup {
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
fn push_through() -> Markup {
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

/// A limp turtle on a tire in the shade.
fn recovery() -> Markup {
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
fn release() -> Markup {
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

/// Shapes set down at a place, turned clockwise by so many degrees, scaled in
/// hundredths; a scale across of less than nothing mirrors.
fn at(x: i32, y: i32, turn: i32, scale: (i32, i32), shapes: &Markup) -> Markup {
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
fn stroke(class: &str, path: &str) -> Markup {
    html! { path class={ "stroke " (class) } d=(path) {} }
}

/// A turtle from the side, looking to the right.
fn turtle() -> Markup {
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
fn water(from: i32, level: i32) -> Markup {
    html! {
        rect class="water" x=(from) y=(level) width=(200 - from) height=(150 - level) {}
        path class="surface" d={ "M" (from) " " (level) "H200" } {}
    }
}

/// The vessel's side with the rail, somebody standing behind it.
fn vessel() -> Markup {
    html! {
        path class="skin" d="M18 46 C17 30 22 24 32 24 C42 24 46 32 46 46 Z" {}
        circle class="skin" cx="33" cy="14" r="9" {}
        path class="hull" d="M0 46 H60 L52 150 H0 Z" {}
        path class="side" d="M60 46 L52 150" {}
        path class="rail-cap" d="M0 46 H63" {}
    }
}

/// An arm of the one behind the rail, with the hand at the pole.
fn arm(x: i32, y: i32) -> Markup {
    html! {
        path class="limb" d={ "M38 30 L" (x) " " (y) } {}
        circle class="hand" cx=(x) cy=(y) r="4" {}
    }
}

/// A hook close up: eye at the middle, hanging down, its point to the left
/// and buried.
fn hook() -> Markup {
    html! {
        circle class="hook" cx="0" cy="0" r="4" {}
        path class="hook" d="M0 4 V30 A12 12 0 0 1 -22 36" {}
        path class="hook buried" d="M-24 32 V16" {}
    }
}

/// A hook as small as it is in a whole scene, its line coming from above.
fn small_hook() -> Markup {
    html! { path class="hook thin" d="M0 0 C5 5 8 12 2 14 C-2 15 -5 12 -5 8" {} }
}

/// The end of a tool close up: a round lens, tied to the place it shows.
fn lens(shown: (i32, i32), shapes: &Markup) -> Markup {
    html! {
        path class="fine" d={ "M138 66 L" (shown.0) " " (shown.1) } {}
        circle class="lens" cx="158" cy="40" r="37" {}
        (at(158, 40, 0, (100, 100), shapes))
    }
}

/// An arrow head, pointing up, its tip at the middle.
fn head(x: i32, y: i32, turn: i32) -> Markup {
    at(x, y, turn, (100, 100), &html! { path class="tip" d="M0 0 L7 12 H-7 Z" {} })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::load::Library;

    /// Every drawing that the shipped techniques and cards name.
    fn named() -> Vec<String> {
        let practice = Library::shipped().unwrap().practice.unwrap();
        let techniques = practice.techniques.iter().filter_map(|t| t.drawing.clone());
        techniques.chain(practice.cards.iter().filter_map(|c| c.drawing.clone())).collect()
    }

    #[test]
    fn every_drawing_that_is_named_exists() {
        let named = named();
        assert!(named.len() > 9, "{named:?}");
        for name in named {
            assert!(sketch(&name, Locale::default()).is_some(), "{name}");
        }
        assert!(sketch("no such drawing", Locale::default()).is_none());
    }

    #[test]
    fn every_drawing_is_named_by_something_and_says_what_it_shows() {
        let named = named();
        for one in &SKETCHES {
            assert!(named.iter().any(|name| name == one.name), "{}", one.name);
            let text = sketch(one.name, Locale::default()).unwrap().into_string();
            let title = (one.title)(Locale::default());
            assert!(text.contains("role=\"img\""), "{text}");
            assert!(text.contains(&format!("<title>{title}</title>")), "{text}");
        }
    }

    #[test]
    fn every_drawing_has_its_parts() {
        for (name, parts) in [
            ("net", vec![water(50, 92), vessel(), turtle(), arm(54, 22), head(190, 62, 0)]),
            ("long-dehooker", vec![vessel(), turtle(), small_hook(), hook(), caught(-6)]),
            ("long-cutter", vec![vessel(), turtle(), small_hook(), hook(), caught(6)]),
            ("inverted-v", vec![vessel(), turtle(), small_hook(), arm(54, 24)]),
            ("gag", vec![stroke("line", "M84 150 L82 136"), head(56, 79, -128)]),
            ("bolt-cutters", vec![flesh(0, 200, 88)]),
            ("push-through", vec![flesh(0, 92, 100), flesh(108, 200, 100)]),
            ("recovery", vec![turtle(), head(30, 84, 0)]),
            ("release", vec![water(0, 96), turtle(), arm(68, 42)]),
        ] {
            let drawn = sketch(name, Locale::default()).unwrap().into_string();
            for part in parts.into_iter().map(Markup::into_string) {
                assert!(part.contains(" d=\"M") && drawn.contains(&part), "{part}: {drawn}");
            }
        }
        let edge = "M-36 -6 C-24 -10 -10 -6 -7 8 C-5 26";
        assert_eq!(caught(-6).into_string().matches(edge).count(), 2);
    }

    #[test]
    fn shapes_are_set_down_turned_and_mirrored() {
        let set = at(3, 4, 5, (-76, 105), &turtle()).into_string();
        let expected = "translate(3 4) rotate(5) scale(-0.76 1.05)";
        assert!(set.contains(expected) && set.contains(&turtle().into_string()), "{set}");
    }
}
