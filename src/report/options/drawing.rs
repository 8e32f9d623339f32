//! The drawings of the wall card: what a technique looks like, in lines.
//!
//! Imports maud and the messages alone. Every drawing is made of plain shapes in one hand: ink
//! for animal, hook and vessel, the accent for the tool and what it does, the
//! dashed line for the water. They show a hold, never a measure.

mod care;
mod deck;
mod rail;
mod shapes;

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
    Sketch { name: "net", title: Locale::options_drawing_net, shapes: rail::net },
    Sketch {
        name: "long-dehooker",
        title: Locale::options_drawing_long_dehooker,
        shapes: rail::long_dehooker,
    },
    Sketch {
        name: "inverted-v",
        title: Locale::options_drawing_inverted_v,
        shapes: rail::inverted_v,
    },
    Sketch {
        name: "long-cutter",
        title: Locale::options_drawing_long_cutter,
        shapes: rail::long_cutter,
    },
    Sketch { name: "gag", title: Locale::options_drawing_gag, shapes: deck::gag },
    Sketch {
        name: "bolt-cutters",
        title: Locale::options_drawing_bolt_cutters,
        shapes: deck::bolt_cutters,
    },
    Sketch {
        name: "push-through",
        title: Locale::options_drawing_push_through,
        shapes: deck::push_through,
    },
    Sketch { name: "recovery", title: Locale::options_drawing_recovery, shapes: care::recovery },
    Sketch { name: "release", title: Locale::options_drawing_release, shapes: care::release },
];

/// The drawing of that name as an image with a name of its own; none where
/// there is no such drawing.
pub(super) fn drawing(name: &str, locale: Locale) -> Option<Markup> {
    let sketch = SKETCHES.iter().find(|sketch| sketch.name == name)?;
    let title = (sketch.title)(locale);
    Some(html! {
        svg class="sketch" viewBox={ "0 0 " (WIDTH) " " (HEIGHT) } role="img" aria-label=(title) {
            title { (title) }
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
            assert!(drawing(&name, Locale::default()).is_some(), "{name}");
        }
        assert!(drawing("no such drawing", Locale::default()).is_none());
    }

    #[test]
    fn every_drawing_is_named_by_something_and_says_what_it_shows() {
        let named = named();
        for sketch in &SKETCHES {
            assert!(named.iter().any(|name| name == sketch.name), "{}", sketch.name);
            let text = drawing(sketch.name, Locale::default()).unwrap().into_string();
            let title = (sketch.title)(Locale::default());
            assert!(text.contains("role=\"img\""), "{text}");
            assert!(text.contains(&format!("<title>{title}</title>")), "{text}");
        }
    }
}
