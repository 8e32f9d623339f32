//! The situations of the wall card: a line for each with the technique that
//! is open, and loud boxes where none is.
//!
//! Imports `model` and the words.

use super::parts::cited;
use super::plan::Plan;
use crate::freeing::{Prospect, Way};
use crate::measure::Answer;
use crate::model::options::{Access, OwnHooks, Standing};
use crate::report::Locale;
use crate::report::content::situations::{Case, Group};
use crate::report::render::base::{prose, shown as safe};
use crate::report::words::options as said;
use crate::report::words::pages::{capital, sentence};
use maud::{Markup, html};

/// A group of situations.
pub(super) fn group(plan: &Plan<'_>, group: &Group<'_>) -> Markup {
    let locale = plan.shown.locale;
    let (left_out, counted): (Vec<_>, Vec<_>) =
        group.cases.iter().partition(|case| case.of.answered.is_left_out());
    let told: Vec<_> = counted.iter().filter_map(|case| Some((*case, case.of.best()?))).collect();
    let about = if group.along { Vec::new() } else { about(plan, &group.words) };
    html! {
        div class={ "group" @if group.along { " along" } @else if group.title.is_none() { " wide" } } {
            @if let Some(title) = &group.title { h3 { (prose(title)) } }
            @if !about.is_empty() { p.small { (prose(&capital(&about.join("; ")))) } }
            (loud(plan, &counted, Standing::Nothing))
            (loud(plan, &counted, Standing::Unclear))
            @if !told.is_empty() {
                ul.situations { @for (case, best) in told { (line(plan, case, &best)) } }
            }
            @if !left_out.is_empty() {
                p.small {
                    (locale.options_card_left_out()) " "
                    @for (index, case) in left_out.iter().enumerate() {
                        @if index > 0 { "; " }
                        span data-case=(safe(&case.of.situation.id)) { (prose(&case.title)) }
                    }
                    "."
                }
            }
        }
    }
}

/// What the answers to the second fact say, with their sources.
fn about(plan: &Plan<'_>, words: &[usize]) -> Vec<String> {
    let Some(fact) = plan.shown.practice.facts.get(1) else { return Vec::new() };
    let words = words.iter().filter_map(|word| fact.words.get(*word));
    let told = words.map(|word| match &word.cited {
        Some(source) => cited(source, plan.shown.locale),
        None => word.says.to_string(),
    });
    told.collect()
}

/// One situation: what it is, where the way is told, and with which tools.
fn line<'a>(plan: &Plan<'a>, case: &Case<'a>, best: &Way<'a>) -> Markup {
    let locale = plan.shown.locale;
    html! {
        li data-case=(safe(&case.of.situation.id)) {
            div.situation {
                span.what {
                    (prose(&case.title))
                    @if case.of.answered.hooks == OwnHooks::NotSaid {
                        " " span.soft { "(" (locale.options_hooks_not_known()) ")" }
                    }
                }
                span.way {
                    (references(plan, best.techniques))
                    " " (marks(&plan.shown.uses(best.choice), locale))
                    (or_else(plan, &case.of))
                }
            }
            (better(plan, &case.of))
        }
    }
}

/// What cuts the line should the way fail, or that nothing does.
fn or_else(plan: &Plan<'_>, of: &Prospect<'_>) -> Markup {
    let locale = plan.shown.locale;
    html! {
        @if let Some(last) = of.cut_behind() {
            " " span.else { (locale.options_card_else()) " " (references(plan, last.techniques)) }
        } @else if of.lacks_a_cut() {
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
fn better<'a>(plan: &Plan<'a>, of: &Prospect<'a>) -> Markup {
    let (all, locale) = (of.first_better(), plan.shown.locale);
    let part = |access: Access, says: &'static str| {
        let way = all.iter().find(|way| way.choice.access() == access);
        html! {
            @if let Some(way) = way {
                p.better {
                    (says) " "
                    (prose(&said::small(&plan.shown.choice(way.techniques))))
                    " " span.label { (plan.label(way.choice)) }
                }
            }
        }
    };
    html! {
        (part(Access::Short, locale.options_card_open_but_short()))
        (part(Access::Closed, locale.options_card_better_but_closed()))
        (part(Access::Unknown, locale.options_card_better_but_not_told()))
    }
}

/// Situations of which nothing is known to be open, those with the same way
/// out together; the words are milder where each has a way at some station.
fn loud<'a>(plan: &Plan<'a>, cases: &[&Case<'a>], standing: Standing) -> Markup {
    let mut found: Vec<(WayOut<'_>, Vec<&Case<'_>>)> = Vec::new();
    for case in cases.iter().filter(|case| case.of.answered.standing() == standing) {
        let out = WayOut::of(plan, &case.of);
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
                            li data-case=(safe(&case.of.situation.id)) { (prose(&case.title)) }
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
    fn of(plan: &Plan<'a>, of: &Prospect<'a>) -> Self {
        let (shown, locale) = (plan.shown, plan.shown.locale);
        let unclear = of.answered.standing() == Standing::Unclear;
        let unknown = |way: &Way<'_>| way.choice.answer == Answer::Unknown;
        let yet = said::at_stations(shown, of);
        if let Some(first) = of.first_to_open().filter(|first| !unclear || unknown(first)) {
            let head = match unclear {
                true => locale.options_card_measure_first(),
                false => locale.options_card_get_first(),
            };
            let says = said::steps(&shown.opens(first.choice));
            return Self { yet, head: Some(head), says, then: Some(first.techniques) };
        }
        let whys = of.ways().find(unknown).map(|way| shown.wanting(way.choice));
        let whys = whys.into_iter().flatten().filter(|wanting| wanting.open);
        let whys: Vec<String> = whys.map(|w| format!("{}: {}", w.what, w.why)).collect();
        let (head, says) = match whys.is_empty() {
            true => (None, sentence(locale.options_nothing_opens_any())),
            false => (Some(locale.options_card_not_known()), sentence(&whys.join("; "))),
        };
        Self { yet, head, says, then: None }
    }
}
