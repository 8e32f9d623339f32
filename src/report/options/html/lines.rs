//! The situations of the wall card: a line for each with the technique that
//! is open, and loud boxes where none is.
//!
//! Imports `model` and the words.

use super::plan::{Case, Group, Plan, named};
use crate::measure::Answer;
use crate::model::options::{Choice, OwnHooks, Standing};
use crate::report::render::base::{prose, shown as safe};
use crate::report::words::options as said;
use crate::report::words::pages::{capital, sentence};
use maud::{Markup, html};

/// A group of situations.
pub(super) fn group(plan: &Plan<'_>, group: &Group<'_>) -> Markup {
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
                    "Left out, no such hook aboard: "
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
    let best = case.answered.best().and_then(|best| case.answered.choices.get(best));
    let uses = best.map(|choice| plan.shown.uses(choice)).unwrap_or_default();
    html! {
        li data-case=(safe(&case.situation.id)) {
            div.situation {
                span.what {
                    (prose(&case.title))
                    @if case.answered.hooks == OwnHooks::NotSaid { " " span.soft { "(hooks aboard not known)" } }
                }
                span.way {
                    @for (index, technique) in case.way().unwrap_or_default().iter().enumerate() {
                        @if index > 0 { " then " }
                        (reference(plan, *technique))
                    }
                    " " (marks(&uses))
                    (or_else(plan, case))
                }
            }
            (better(plan, case))
        }
    }
}

/// What cuts the line should the way fail, or that nothing does.
fn or_else(plan: &Plan<'_>, case: &Case<'_>) -> Markup {
    let Some(last) = plan.last(case) else {
        return html! { @if plan.lacks_a_cut(case) { " " span.else { b { "else no line cut" } } } };
    };
    html! {
        " " span.else {
            "else "
            @for (index, technique) in last.iter().enumerate() {
                @if index > 0 { " then " }
                (reference(plan, *technique))
            }
        }
    }
}

/// The tools of a way by their marks, each kept together.
fn marks(uses: &str) -> Markup {
    html! {
        span.uses {
            @if uses.is_empty() { "by hand" }
            @for mark in uses.split_inclusive(", ") { span.mark { (safe(mark.trim_end())) } " " }
        }
    }
}

/// A link to the box of a technique, called by its place and title.
fn reference(plan: &Plan<'_>, technique: usize) -> Markup {
    let Some(place) = plan.place(technique) else { return html! {} };
    let title = named(plan, &[technique]);
    html! { a.ref href={ "#" (place) } aria-label={ (place) ": " (safe(&title)) } { (place) } }
}

/// The better choices that are closed, by the label of what closes them.
fn better(plan: &Plan<'_>, case: &Case<'_>) -> Markup {
    let all = case.better();
    let part = |kept: fn(&Choice) -> bool, says: &'static str| {
        let part: Vec<_> = all.iter().filter(|(_, choice)| kept(choice)).collect();
        html! {
            @if !part.is_empty() {
                p.better {
                    (says)
                    @for (index, (techniques, choice)) in part.iter().enumerate() {
                        @if index > 0 { "; " }
                        (prose(&said::small(&named(plan, techniques))))
                        " " span.label { (plan.label(choice)) }
                    }
                }
            }
        }
    };
    html! {
        (part(Choice::is_short, "Open, but short: "))
        (part(|c| !c.is_open() && c.answer == Answer::No, "Better, but closed: "))
        (part(|c| !c.is_open() && c.answer == Answer::Unknown, "Better, but can't tell: "))
    }
}

/// Situations of which nothing is known to be open, those with the same way
/// out together.
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
    let (class, sign, says) = match standing {
        Standing::Unclear => ("open", "? ", said::CANNOT_TELL),
        _ => ("bad", "✕ ", no_way(&found)),
    };
    html! {
        @if !found.is_empty() {
            div class={ "loud " (class) } {
                p.big { (sign) (says) }
                @if let Some(even_so) = plan.shown.practice.even_so.as_ref().filter(|_| class == "bad") {
                    p { b { "Even so: " } (prose(&even_so.to_string())) }
                }
                @for (out, like) in &found {
                    ul {
                        @for case in like {
                            li data-case=(safe(&case.situation.id)) { (prose(&case.title)) }
                        }
                    }
                    @for yet in &out.yet { p { b { "Yet " } (prose(yet)) "." } }
                    p {
                        b { (out.head) } (prose(&out.says))
                        @if let Some(techniques) = out.then {
                            " Then: " (prose(&said::small(&named(plan, techniques)))) "."
                        }
                    }
                }
            }
        }
    }
}

/// The loud words over situations of which nothing is open: milder where each
/// has a way at some hauling station.
fn no_way(found: &[(WayOut<'_>, Vec<&Case<'_>>)]) -> &'static str {
    if found.iter().all(|(out, _)| !out.yet.is_empty()) {
        return said::NOT_AT_EVERY_RAIL;
    }
    said::NO_WAY
}

/// What leads out of a situation of which nothing is known to be open.
#[derive(PartialEq, Eq)]
struct WayOut<'a> {
    /// What is open at some hauling stations by themselves.
    yet: Vec<String>,
    head: &'static str,
    says: String,
    /// The techniques that are open then.
    then: Option<&'a [usize]>,
}

impl<'a> WayOut<'a> {
    /// The steps that take least; where nobody can tell, those that find out,
    /// or at least what is not known.
    fn of(plan: &Plan<'a>, case: &Case<'a>) -> Self {
        let unclear = case.standing() == Standing::Unclear;
        let choices = &case.answered.choices;
        let unknown =
            |index: usize| choices.get(index).is_some_and(|c| c.answer == Answer::Unknown);
        let first = said::get_first(plan.shown, case.answered, case.situation);
        let yet = said::at_stations(plan.shown, case.situation);
        if let Some((index, steps)) = first.filter(|(index, _)| !unclear || unknown(*index)) {
            let head = if unclear { "Measure first: " } else { "Get first: " };
            let then = case.situation.choices.get(index).map(Vec::as_slice);
            return Self { yet, head, says: said::steps(&steps), then };
        }
        let open = choices.iter().find(|choice| choice.answer == Answer::Unknown);
        let whys = open.into_iter().flat_map(|choice| plan.shown.wanting(choice));
        let whys: Vec<String> =
            whys.filter(|w| w.open).map(|w| format!("{}: {}", w.what, w.why)).collect();
        let (head, says) = match whys.is_empty() {
            true => ("", sentence(said::NOTHING_OPENS_ANY)),
            false => ("Not known: ", sentence(&whys.join("; "))),
        };
        Self { yet, head, says, then: None }
    }
}
