//! The boxes of the wall card: how each technique goes, and what is never
//! done.
//!
//! Imports `model`, the words and the drawings.

use super::parts::{cited, cited_line, lines, stop_when};
use super::plan::{Plan, Sheet};
use crate::model::technique::Never;
use crate::report::draw::sketch;
use crate::report::render::base::prose;
use crate::report::words::options::without_never;
use maud::{Markup, html};

/// One technique: its steps, when to stop, its cautions, its drawing.
pub(super) fn technique(plan: &Plan<'_>, sheet: &Sheet<'_>, index: usize) -> Markup {
    let (practice, locale) = (plan.shown.practice, plan.shown.locale);
    let Some((technique, place)) = practice.techniques.get(index).zip(plan.place(index)) else {
        return html! {};
    };
    let name = format!("{place}-name");
    let shown_at = plan.drawn_before(sheet, index).and_then(|other| plan.place(other));
    let shared = plan.shared_cautions(sheet);
    html! {
        article.box id=(place) aria-labelledby=(name) {
            h3 id=(name) { span.badge { (place) } " " (prose(&technique.title.to_string())) }
            @if let Some(picture) = technique.drawing.as_deref().and_then(|name| sketch(name, locale)) {
                @if shown_at.is_some() { div.on-screen { (picture) } } @else { (picture) }
            }
            ol.steps { @for step in &technique.steps { li { (prose(&step.says.to_string())) } } }
            @if !technique.stop.is_empty() {
                p.stop { (stop_when(technique, locale)) }
            }
            @for line in &technique.cautions {
                @let class = if shared.iter().any(|(own, _)| *own == line) { "own on-screen" } else { "own" };
                (lines(class, std::slice::from_ref(line), locale))
            }
            p.small {
                @if let Some(other) = shown_at { span.on-paper { (locale.options_card_drawn_at(&other)) " " } }
                (prose(&cited(&technique.cited, locale)))
            }
        }
    }
}

/// The cautions that several boxes of a page share, with the boxes: on paper
/// each stands once above them, on a screen in each of them.
pub(super) fn cautions(plan: &Plan<'_>, sheet: &Sheet<'_>) -> Markup {
    html! {
        @for (line, techniques) in plan.shared_cautions(sheet) {
            @let places: Vec<&str> = techniques.iter().filter_map(|index| plan.place(*index)).collect();
            p class="own on-paper shared" {
                b { (places.join(", ")) ": " } (cited_line(line, plan.shown.locale))
            }
        }
    }
}

/// What is never done in the cases of a page, each once.
pub(super) fn nevers(plan: &Plan<'_>, sheet: &Sheet<'_>) -> Markup {
    let holds = |never: &&Never| {
        let mut cases = sheet.groups.iter().flat_map(|group| &group.cases);
        cases.any(|case| never.when.meets(&case.of.situation.when))
    };
    let here = plan.shown.practice.nevers.iter().filter(holds);
    let here: Vec<String> = here.map(|never| without_never(&never.says.to_string())).collect();
    html! {
        @if !here.is_empty() {
            section.never {
                h3 { (plan.shown.locale.options_card_never()) }
                ul { @for never in here { li { (prose(&never)) } } }
            }
        }
    }
}
