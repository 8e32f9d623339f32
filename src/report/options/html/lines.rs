//! The situations of the wall card: a line for each with the technique that
//! is open, and loud boxes where none is.
//!
//! Imports `model` and the words.

use super::plan::{Case, Group, Plan};
use crate::measure::Answer;
use crate::model::options::{Choice, OwnHooks, Standing};
use crate::report::Locale;
use crate::report::render::base::{prose, shown as safe};
use crate::report::words::options as said;
use crate::report::words::pages::{capital, sentence};
use maud::{Markup, html};

/// A group of situations.
pub(super) fn group(plan: &Plan<'_>, group: &Group<'_>) -> Markup {
    let locale = plan.shown.locale;
    let told = |case: &&Case<'_>| !case.left_out() && case.way().is_some();
    let left_out: Vec<_> = group.cases.iter().filter(|case| case.left_out()).collect();
    html! {
        div class={ "group" @if group.along { " along" } @else if group.title.is_none() { " wide" } } {
            @if let Some(title) = &group.title { h3 { (prose(title)) } }
            @if !group.about.is_empty() { p.small { (prose(&capital(&group.about.join("; ")))) } }
            (loud(plan, group, Standing::Nothing))
            (loud(plan, group, Standing::Unclear))
            @if group.cases.iter().any(|case| told(&case)) {
                ul.situations { @for case in group.cases.iter().filter(told) { (line(plan, case)) } }
            }
            @if !left_out.is_empty() {
                p.small {
                    (locale.options_card_left_out()) " "
                    @for (index, case) in left_out.iter().enumerate() {
                        @if index > 0 { "; " }
                        span data-case=(safe(&case.situation.id)) { (prose(&case.title)) }
                    }
                    "."
                }
            }
        }
    }
}

/// One situation: what it is, where the way is told, and with which tools.
fn line(plan: &Plan<'_>, case: &Case<'_>) -> Markup {
    let locale = plan.shown.locale;
    let best = case.answered.best().and_then(|best| case.answered.choices.get(best));
    let uses = best.map(|choice| plan.shown.uses(choice)).unwrap_or_default();
    html! {
        li data-case=(safe(&case.situation.id)) {
            div.situation {
                span.what {
                    (prose(&case.title))
                    @if case.answered.hooks == OwnHooks::NotSaid {
                        " " span.soft { "(" (locale.options_hooks_not_known()) ")" }
                    }
                }
                span.way {
                    (references(plan, case.way().unwrap_or_default()))
                    " " (marks(&uses, locale))
                    (or_else(plan, case))
                }
            }
            (better(plan, case))
        }
    }
}

/// What cuts the line should the way fail, or that nothing does.
fn or_else(plan: &Plan<'_>, case: &Case<'_>) -> Markup {
    let locale = plan.shown.locale;
    html! {
        @if let Some(last) = plan.last(case) {
            " " span.else { (locale.options_card_else()) " " (references(plan, last)) }
        } @else if plan.lacks_a_cut(case) {
            " " span.else { b { (locale.options_card_else_no_cut()) } }
        }
    }
}

/// Links to the boxes of techniques, one after the other.
fn references(plan: &Plan<'_>, techniques: &[usize]) -> Markup {
    html! {
        @for (index, technique) in techniques.iter().enumerate() {
            @if index > 0 { " " (plan.shown.locale.options_card_then()) " " }
            (reference(plan, *technique))
        }
    }
}

/// The tools of a way by their marks, each kept together.
fn marks(uses: &str, locale: Locale) -> Markup {
    html! {
        span.uses {
            @if uses.is_empty() { (locale.options_card_by_hand()) }
            @for mark in uses.split_inclusive(", ") { span.mark { (safe(mark.trim_end())) } " " }
        }
    }
}

/// A link to the box of a technique, called by its place and title.
fn reference(plan: &Plan<'_>, technique: usize) -> Markup {
    let Some(place) = plan.place(technique) else { return html! {} };
    let title = plan.shown.choice(&[technique]);
    html! { a.ref href={ "#" (place) } aria-label={ (place) ": " (safe(&title)) } { (place) } }
}

/// The better choices that are closed, by the label of what closes them.
fn better(plan: &Plan<'_>, case: &Case<'_>) -> Markup {
    let (all, locale) = (case.better(), plan.shown.locale);
    let part = |kept: fn(&Choice) -> bool, says: &'static str| {
        let part: Vec<_> = all.iter().filter(|(_, choice)| kept(choice)).collect();
        html! {
            @if !part.is_empty() {
                p.better {
                    (says) " "
                    @for (index, (techniques, choice)) in part.iter().enumerate() {
                        @if index > 0 { "; " }
                        (prose(&said::small(&plan.shown.choice(techniques))))
                        " " span.label { (plan.label(choice)) }
                    }
                }
            }
        }
    };
    html! {
        (part(Choice::is_short, locale.options_card_open_but_short()))
        (part(|c| !c.is_open() && c.answer == Answer::No, locale.options_card_better_but_closed()))
        (part(
            |c| !c.is_open() && c.answer == Answer::Unknown,
            locale.options_card_better_but_not_told(),
        ))
    }
}

/// Situations of which nothing is known to be open, those with the same way
/// out together; the words are milder where each has a way at some station.
fn loud(plan: &Plan<'_>, group: &Group<'_>, standing: Standing) -> Markup {
    let cases = group.cases.iter().filter(|c| !c.left_out() && c.standing() == standing);
    let mut found: Vec<(WayOut<'_>, Vec<&Case<'_>>)> = Vec::new();
    for case in cases {
        let out = WayOut::of(plan, case);
        match found.iter_mut().find(|(known, _)| *known == out) {
            Some((_, like)) => like.push(case),
            None => found.push((out, vec![case])),
        }
    }
    let locale = plan.shown.locale;
    let (class, sign, says) = match standing {
        Standing::Unclear => ("open", "? ", locale.options_cannot_tell()),
        _ if found.iter().all(|(out, _)| !out.yet.is_empty()) => {
            ("bad", "✕ ", locale.options_not_at_every_rail())
        }
        _ => ("bad", "✕ ", locale.options_no_way()),
    };
    html! {
        @if !found.is_empty() {
            div class={ "loud " (class) } {
                p.big { (sign) (says) }
                @if let Some(even_so) = plan.shown.practice.even_so.as_ref().filter(|_| class == "bad") {
                    p { b { (locale.options_even_so()) " " } (prose(&even_so.to_string())) }
                }
                @for (out, like) in &found {
                    ul {
                        @for case in like {
                            li data-case=(safe(&case.situation.id)) { (prose(&case.title)) }
                        }
                    }
                    @for yet in &out.yet { p { b { (locale.options_card_yet()) " " } (prose(yet)) "." } }
                    p {
                        @if let Some(head) = out.head { b { (head) " " } }
                        (prose(&out.says))
                        @if let Some(techniques) = out.then {
                            @let way = said::small(&plan.shown.choice(techniques));
                            " " (prose(&locale.options_card_then_way(&way)))
                        }
                    }
                }
            }
        }
    }
}

/// What leads out of a situation of which nothing is known to be open.
#[derive(PartialEq, Eq)]
struct WayOut<'a> {
    /// What is open at some hauling stations by themselves.
    yet: Vec<String>,
    head: Option<&'static str>,
    says: String,
    /// The techniques that are open then.
    then: Option<&'a [usize]>,
}

impl<'a> WayOut<'a> {
    /// The steps that take least; where nobody can tell, those that find out,
    /// or at least what is not known.
    fn of(plan: &Plan<'a>, case: &Case<'a>) -> Self {
        let locale = plan.shown.locale;
        let unclear = case.standing() == Standing::Unclear;
        let choices = &case.answered.choices;
        let unknown =
            |index: usize| choices.get(index).is_some_and(|c| c.answer == Answer::Unknown);
        let first = said::get_first(plan.shown, case.answered, case.situation);
        let yet = said::at_stations(plan.shown, case.situation);
        if let Some((index, steps)) = first.filter(|(index, _)| !unclear || unknown(*index)) {
            let head = match unclear {
                true => locale.options_card_measure_first(),
                false => locale.options_card_get_first(),
            };
            let then = case.situation.choices.get(index).map(Vec::as_slice);
            return Self { yet, head: Some(head), says: said::steps(&steps), then };
        }
        let open = choices.iter().find(|choice| choice.answer == Answer::Unknown);
        let whys = open.into_iter().flat_map(|choice| plan.shown.wanting(choice));
        let whys: Vec<String> =
            whys.filter(|w| w.open).map(|w| format!("{}: {}", w.what, w.why)).collect();
        let (head, says) = match whys.is_empty() {
            true => (None, sentence(locale.options_nothing_opens_any())),
            false => (Some(locale.options_card_not_known()), sentence(&whys.join("; "))),
        };
        Self { yet, head, says, then: None }
    }
}
