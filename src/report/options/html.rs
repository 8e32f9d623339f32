//! The wall card: what a kit leaves open as one self-contained page of HTML,
//! made to be printed and hung up in the wheelhouse.
//!
//! Imports `model` and `measure`, and the frame of every page. Decides nothing:
//! what is open is told, and where it stands on the paper.

mod boxes;
mod cards;
mod closed;
mod columns;
mod lines;
mod parts;
mod plan;

use super::Shown;
use crate::measure::DaySpan;
use crate::model::vessel::Trust;
use crate::report::content::check::stated_freeboard;
use crate::report::render::base::{document, prose, shown as safe};
use crate::report::words::{self, options as said, pages};
use maud::{Markup, html};
use parts::foot;
use plan::{Plan, Sheet};

const STYLE: &str = include_str!("card.css");

/// The wall card as one document.
pub fn html(shown: &Shown<'_>) -> String {
    let plan = Plan::new(shown);
    let title = shown.locale.options_card(&shown.options.vessel.name);
    let body = html! {
        main.wall-card {
            (head(shown))
            @for sheet in &plan.sheets { (page(&plan, sheet)) }
            (cards::page(&plan))
        }
    };
    document(&title, STYLE, &body)
}

/// Whose card it is, for which trip, and what the kit is worth.
fn head(shown: &Shown<'_>) -> Markup {
    let (options, locale) = (shown.options, shown.locale);
    let trip = DaySpan { from: Some(options.asked.departure), until: Some(options.asked.back) };
    let freeboard = stated_freeboard(&options.vessel, shown.locale);
    html! {
        header.rail {
            h1 { (safe(&options.vessel.name)) " " span.for { (locale.options_card_for()) } }
        }
        dl.facts {
            div { dt { (locale.options_card_freeboard()) } dd { (prose(&freeboard)) } }
            div { dt { (locale.options_card_trip()) } dd { (prose(&words::span(trip, shown.locale))) } }
            @if options.asked.trust == Trust::Measured {
                div {
                    dt { (locale.options_card_figures()) }
                    dd { (locale.options_card_measured_only()) }
                }
            }
        }
        (notices(shown))
        p.worth { (prose(&pages::sentence(&said::worth(&options.outlook.worth(), locale)))) }
    }
}

/// What bears on the whole card.
fn notices(shown: &Shown<'_>) -> Markup {
    let (outlook, locale) = (&shown.options.outlook, shown.locale);
    html! {
        @for notice in shown.notices {
            p.note {
                b { (locale.sheet_note()) " " } (prose(&words::notice(notice, shown.locale))) ". "
                @if let Some(remedy) = words::notice_remedy(notice, shown.locale) {
                    b { (locale.sheet_do()) " " } (prose(&remedy)) "."
                }
            }
        }
        @if outlook.hooks_not_said() {
            p.note { b { (locale.sheet_note()) " " } (prose(locale.options_hooks_not_said())) "." }
        }
    }
}

/// One page of situations: where the animal is, its cases, how each technique
/// goes, and what is never done.
fn page(plan: &Plan<'_>, sheet: &Sheet<'_>) -> Markup {
    let id = format!("sheet-{}", sheet.letter);
    html! {
        section.sheet aria-labelledby=(id) {
            div.rows {
                h2 id=(id) { span.badge { (sheet.letter) } " " (prose(&sheet.title)) }
                div.groups { @for group in &sheet.groups { (lines::group(plan, group)) } }
                (boxes::nevers(plan, sheet))
                (boxes::cautions(plan, sheet))
                div.boxes {
                    @for technique in &sheet.techniques { (boxes::technique(plan, sheet, *technique)) }
                    @if sheet.closed_among { (closed::table(plan, sheet)) }
                }
                @if !sheet.closed_among { (closed::table(plan, sheet)) }
            }
            (foot(plan.shown, &format!("{} {}", sheet.letter, sheet.title)))
        }
    }
}
