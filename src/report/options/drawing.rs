//! The drawings of the wall card: what a technique looks like, in lines.
//!
//! Imports maud alone. Every drawing is made of plain shapes in one hand: ink
//! for animal, hook and vessel, the accent for the tool and what it does, the
//! dashed line for the water. They show a hold, never a measure.

mod care;
mod deck;
mod rail;
mod shapes;

use maud::{Markup, html};

/// How wide and how high every drawing is, in its own units.
const WIDTH: u32 = 200;
const HEIGHT: u32 = 150;

/// A drawing by its name.
struct Sketch {
    /// As a technique names it.
    name: &'static str,
    /// What it shows.
    title: &'static str,
    /// Its shapes.
    shapes: fn() -> Markup,
}

const SKETCHES: [Sketch; 9] = [
    Sketch {
        name: "net",
        title: "A net on a long handle is held under a turtle and lifted from the rail.",
        shapes: rail::net,
    },
    Sketch {
        name: "long-dehooker",
        title: "A long pole reaches from the rail along the line; its open end sits in the bend of the hook.",
        shapes: rail::long_dehooker,
    },
    Sketch {
        name: "inverted-v",
        title: "One pole draws the line near the hook up into an inverted V, another holds a flipper.",
        shapes: rail::inverted_v,
    },
    Sketch {
        name: "long-cutter",
        title: "A cutter on a long pole reaches from the rail down the line; its blade is at the eye of the hook.",
        shapes: rail::long_cutter,
    },
    Sketch {
        name: "gag",
        title: "An open mouth from the front: a block keeps the jaws apart, and the point of the hook is turned to the side, away from the airway.",
        shapes: deck::gag,
    },
    Sketch {
        name: "bolt-cutters",
        title: "A hook whose point and barb show: bolt cutters cut it close to the skin.",
        shapes: deck::bolt_cutters,
    },
    Sketch {
        name: "push-through",
        title: "First the point is pushed out through the skin; then point and barb are cut off and the rest is backed out.",
        shapes: deck::push_through,
    },
    Sketch {
        name: "recovery",
        title: "A limp turtle lies belly down on a tire, its rear end raised, a damp cloth on the shell, a shade above.",
        shapes: care::recovery,
    },
    Sketch {
        name: "release",
        title: "A turtle slides head first into the water over the lowest part of the rail while the propeller stands still.",
        shapes: care::release,
    },
];

/// The drawing of that name as an image with a name of its own; none where
/// there is no such drawing.
pub(super) fn drawing(name: &str) -> Option<Markup> {
    let sketch = SKETCHES.iter().find(|sketch| sketch.name == name)?;
    Some(html! {
        svg class="sketch" viewBox={ "0 0 " (WIDTH) " " (HEIGHT) } role="img" aria-label=(sketch.title) {
            title { (sketch.title) }
            ((sketch.shapes)())
        }
    })
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
            assert!(drawing(&name).is_some(), "{name}");
        }
        assert!(drawing("no such drawing").is_none());
    }

    #[test]
    fn every_drawing_is_named_by_something_and_says_what_it_shows() {
        let named = named();
        for sketch in &SKETCHES {
            assert!(named.iter().any(|name| name == sketch.name), "{}", sketch.name);
            let text = drawing(sketch.name).unwrap().into_string();
            assert!(text.contains("role=\"img\""), "{text}");
            assert!(text.contains(&format!("<title>{}</title>", sketch.title)), "{text}");
        }
    }
}
