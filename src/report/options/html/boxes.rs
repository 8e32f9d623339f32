//! The boxes of the wall card: how each technique goes, and what is never
//! done.
//!
//! Imports `model`, the words and the drawings.

use super::super::drawing::drawing;
use super::cards::{cited, lines};
use super::plan::{Plan, Sheet};
use crate::model::technique::{Never, Technique};
use crate::report::html::prose;
use crate::report::words::options::without_never;
use crate::report::words::pages::sentence;
use maud::{Markup, html};

/// One technique: its steps, when to stop, its cautions, its drawing.
pub(super) fn technique(plan: &Plan<'_>, index: usize) -> Markup {
    let practice = plan.shown.practice;
    let Some((technique, place)) = practice.techniques.get(index).zip(plan.place(index)) else {
        return html! {};
    };
    let name = format!("{place}-name");
    html! {
        article.box id=(place) aria-labelledby=(name) {
            h3 id=(name) { span.badge { (place) } " " (prose(&technique.title.to_string())) }
            @if let Some(picture) = picture(plan, technique) { (picture) }
            ol.steps { @for step in &technique.steps { li { (prose(&step.says.to_string())) } } }
            @if !technique.stop.is_empty() {
                p.stop { b { "Stop when: " }
                    @for stop in &technique.stop { (prose(&sentence(&stop.to_string()))) " " }
                }
            }
            (lines("own", &technique.cautions))
            p.small { (prose(&cited(&technique.cited))) }
        }
    }
}

/// The drawing of a technique, unless a card of its own shows it larger.
fn picture(plan: &Plan<'_>, technique: &Technique) -> Option<Markup> {
    let name = technique.drawing.as_deref()?;
    let on_card =
        plan.shown.practice.cards.iter().any(|card| card.drawing.as_deref() == Some(name));
    if on_card { None } else { drawing(name) }
}

/// What is never done in the cases of a page, each once.
pub(super) fn nevers(plan: &Plan<'_>, sheet: &Sheet<'_>) -> Markup {
    let holds = |never: &&Never| {
        let mut cases = sheet.groups.iter().flat_map(|group| &group.cases);
        cases.any(|case| never.when.meets(&case.situation.when))
    };
    let here = plan.shown.practice.nevers.iter().filter(holds);
    let here: Vec<String> = here.map(|never| without_never(&never.says.to_string())).collect();
    html! {
        @if !here.is_empty() {
            section.never {
                h3 { "Never" }
                ul { @for never in here { li { (prose(&never)) } } }
            }
        }
    }
}
