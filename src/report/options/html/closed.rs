//! What is closed on this vessel and what opens it, each once, with a label
//! that the lines of the situations refer to.
//!
//! Imports `model` and the words.

use super::columns;
use super::plan::{Plan, Sheet, label};
use crate::model::options::Choice;
use crate::report::Locale;
use crate::report::options::Shown;
use crate::report::render::base::prose;
use crate::report::words::options::{self as said, Wanting};
use crate::report::words::pages::sentence;
use maud::{Markup, html};

/// Why a choice is closed and what opens it; the same for several choices
/// that lack the same.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(super) struct Closed {
    wanting: Vec<Wanting>,
    opens: Vec<String>,
    /// What is said where no step opens it.
    never: &'static str,
}

impl Closed {
    /// That of a choice which is not open.
    pub(super) fn of<'a>(shown: &Shown<'a>, choice: &'a Choice) -> Self {
        Self {
            wanting: shown.wanting(choice).into_iter().map(Wanting::bare).collect(),
            opens: shown.opens(choice),
            never: said::nothing_opens(shown, choice),
        }
    }

    /// About what it says, to guess its height.
    fn text(&self, locale: Locale) -> String {
        let whys = self.wanting.iter().map(|lack| format!("{}: {}; ", lack.what, lack.why));
        let opens = match self.opens.is_empty() {
            true => self.never.to_owned(),
            false => format!("{} {}", locale.options_card_opens_it(), said::steps(&self.opens)),
        };
        whys.collect::<String>() + &opens
    }
}

/// What closes better choices on this page, if it stands among the boxes.
pub(super) fn among_boxes(plan: &Plan<'_>, sheet: &Sheet<'_>) -> Markup {
    if sheet.closed_among {
        table(plan, sheet)
    } else {
        html! {}
    }
}

/// The same, if it takes the whole width below them.
pub(super) fn below_boxes(plan: &Plan<'_>, sheet: &Sheet<'_>) -> Markup {
    if sheet.closed_among {
        html! {}
    } else {
        table(plan, sheet)
    }
}

/// How high it is about, over one column and over both.
pub(super) fn heights(plan: &Plan<'_>, sheet: &Sheet<'_>) -> [usize; 2] {
    let rows = rows(plan, sheet);
    let texts = rows.iter().map(|(_, closed)| closed.text(plan.shown.locale));
    let texts: Vec<String> = texts.collect();
    [false, true].map(|whole| match texts.is_empty() {
        true => 0,
        false => columns::height_of_rows(&texts, whole),
    })
}

/// What closes better choices on this page, by label.
fn rows<'a>(plan: &'a Plan<'_>, sheet: &Sheet<'_>) -> Vec<(String, &'a Closed)> {
    let cases = sheet.groups.iter().flat_map(|group| &group.cases);
    let better = cases.flat_map(|case| case.better());
    let here: Vec<String> = better.map(|(_, choice)| plan.label(choice)).collect();
    let rows = plan.closed.iter().enumerate().map(|(index, closed)| (label(index), closed));
    rows.filter(|(label, _)| here.contains(label)).collect()
}

/// The rows under their heading; nothing where there are none.
fn table(plan: &Plan<'_>, sheet: &Sheet<'_>) -> Markup {
    let (rows, locale) = (rows(plan, sheet), plan.shown.locale);
    html! {
        @if !rows.is_empty() {
            section class="box closed" {
                h3 { (locale.options_card_closed()) }
                ul.rows-of {
                    @for (label, closed) in rows {
                        li { span.label { (label) } div { (row(closed, locale)) } }
                    }
                }
            }
        }
    }
}

fn row(closed: &Closed, locale: Locale) -> Markup {
    html! {
        @for (index, wanting) in closed.wanting.iter().enumerate() {
            @if index > 0 { "; " }
            b { (prose(&wanting.what)) } ": "
            @if wanting.open { (prose(&locale.options_card_not_told(&wanting.why))) }
            @else { (prose(&wanting.why)) }
        }
        ". "
        @if closed.opens.is_empty() {
            (prose(&sentence(closed.never)))
        } @else {
            span.opens { b { (locale.options_card_opens_it()) " " } (prose(&sentence(&said::steps(&closed.opens)))) }
        }
    }
}
