//! The cards of their own: a limp turtle, and letting it go, each with its
//! published source; then what the whole card takes for granted.
//!
//! Imports `model`, the words and the drawings.

use super::parts::{cited, foot, lines, stop_when};
use super::plan::Plan;
use crate::model::technique::{Card, Cited, Line, Practice, Technique};
use crate::report::Locale;
use crate::report::draw::sketch;
use crate::report::render::base::prose;
use maud::{Markup, html};

/// The page of cards, and of what the whole card stands on.
pub(super) fn page(plan: &Plan<'_>) -> Markup {
    let practice = plan.shown.practice;
    let mut titles: Vec<String> =
        practice.cards.iter().map(|card| card.title.to_string()).collect();
    if titles.is_empty() {
        titles.push(plan.shown.locale.options_card_granted().to_lowercase());
    }
    html! {
        div.sheet {
            div.rows {
                @for (index, of) in practice.cards.iter().enumerate() { (card(plan, index, of)) }
                (notes(plan))
            }
            (foot(plan.shown, &titles.join(", ")))
        }
    }
}

fn card(plan: &Plan<'_>, index: usize, card: &Card) -> Markup {
    let locale = plan.shown.locale;
    let letter = plan.next_letter(index);
    let id = format!("card-{letter}");
    let sources = sources(card);
    html! {
        section.card id=(letter) aria-labelledby=(id) {
            h2 id=(id) { span.badge { (letter) } " " (prose(&card.title.to_string())) }
            @if let Some(picture) = card.drawing.as_deref().and_then(|name| sketch(name, locale)) { (picture) }
            @for technique in plan.on_card(index) { (way(technique, locale)) }
            ol.steps { @for step in &card.steps { li { (with_source(step, &sources)) } } }
            @if !card.nevers.is_empty() {
                p.stop { @for never in &card.nevers { b { (with_source(never, &sources)) } " " } }
            }
            @for caution in &card.cautions { p.own { (with_source(caution, &sources)) } }
            p.small {
                b { (locale.options_card_source()) " " } (prose(&cited(&card.cited, locale))) "."
                @for (index, source) in sources.iter().enumerate() {
                    " " b { (index + 1) } " " (prose(&cited(source, locale))) "."
                }
            }
        }
    }
}

/// A technique that the situations lead to and this card shows: all that it
/// says, for what the card does not say itself.
fn way(technique: &Technique, locale: Locale) -> Markup {
    html! {
        p.way-here {
            b { (prose(&technique.title.to_string())) ": " }
            @for step in &technique.steps { (prose(&step.says.to_string())) " " }
            @if !technique.stop.is_empty() { (stop_when(technique, locale)) }
            span.small { "(" (prose(&cited(&technique.cited, locale))) ")" }
        }
        (lines("own", &technique.cautions, locale))
    }
}

/// The sources of single lines, each once.
fn sources(card: &Card) -> Vec<&Cited> {
    let lines = card.steps.iter().chain(&card.nevers).chain(&card.cautions);
    let mut all: Vec<&Cited> = Vec::new();
    for source in lines.filter_map(|line| line.cited.as_ref()) {
        if !all.contains(&source) {
            all.push(source);
        }
    }
    all
}

/// A line with the number of its source.
fn with_source(line: &Line, sources: &[&Cited]) -> Markup {
    let number = line.cited.as_ref().and_then(|own| sources.iter().position(|s| *s == own));
    html! {
        (prose(&line.says.to_string()))
        @if let Some(number) = number { "\u{a0}" sup { (number + 1) } }
    }
}

/// What the card takes for granted: the practice with its id and the revision
/// of its file, and its notes.
fn notes(plan: &Plan<'_>) -> Markup {
    let (practice, locale) = (plan.shown.practice, plan.shown.locale);
    let Practice { title, id, encoding, source, .. } = practice;
    html! {
        section.notes {
            h2 { (locale.options_card_granted()) }
            ul.small {
                li { (prose(&locale.options_card_practice(title, id, encoding, source))) }
                @for note in &practice.notes { li { (prose(&note.to_string())) } }
            }
        }
    }
}
