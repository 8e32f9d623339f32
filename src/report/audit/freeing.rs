//! Which ways of freeing a turtle the kits of a fleet leave open: one row a
//! vessel, every count by itself.
//!
//! Imports `fleet`, `options` and the words. Counts nothing that was not
//! counted below.

use super::{Fleet, Freeing};
use crate::fleet::{Judged, Row};
use crate::freeing::{Tally, tally};
use crate::model::options::Worth;
use crate::report::html as base;
use crate::report::options::Shown;
use crate::report::page::{Page, Tone};
use crate::report::words::fleet::count;
use crate::report::words::options as words;
use crate::report::words::pages::{capital, sentence};
use maud::{Markup, html};

/// The columns of the counts.
const COUNTS: [&str; 4] = ["first choice", "fallback", "can't tell", "nothing"];

/// The most vessels that the page for the terminal lists.
const MOST_LISTED: usize = 40;

/// The vessels of the audit with what their kits leave open.
fn vessels<'a>(of: &Fleet<'a>) -> Vec<(&'a Judged, Shown<'a>)> {
    let rows = of.audit.rows.iter().filter_map(|row| match row {
        Row::Vessel(judged) => Some(&**judged),
        Row::Refused(_) => None,
    });
    let all = rows.enumerate();
    all.filter_map(|(index, judged)| Some((judged, of.freeing(index, judged)?))).collect()
}

/// The vessels by their worst situation, in one sentence.
fn told(freeing: &Freeing<'_>) -> String {
    let Tally { first, fallback, unclear, nothing } = tally(freeing.options);
    let parts = [
        (first, "with the first choice open in every situation"),
        (fallback, "with only a fallback in some"),
        (unclear, "of which nobody can tell in some"),
        (nothing, "with no way at all in some"),
    ];
    let parts = parts.into_iter().filter(|(number, _)| *number > 0);
    let parts: Vec<_> = parts.map(|(number, what)| format!("{number} {what}")).collect();
    let all = count(freeing.options.len(), "vessel");
    sentence(&format!("{all}: {}", parts.join("; ")))
}

fn counts(worth: &Worth) -> [usize; 4] {
    [worth.first, worth.fallback, worth.unclear, worth.nothing]
}

/// The single tool that would lift most, and what it lifts.
fn change(shown: &Shown<'_>) -> Option<String> {
    let (step, lifts) = (shown.lift()?, shown.lifts()?);
    let price = shown.price().map(|price| format!("; {price}")).unwrap_or_default();
    Some(sentence(&capital(&format!("{step} (lifts {lifts}){price}"))))
}

/// Puts the section on a page for the terminal.
pub(super) fn write(page: &mut Page, of: &Fleet<'_>) {
    let Some(freeing) = &of.freeing else { return };
    page.gap();
    page.prose(0, Tone::Strong, "ways of freeing a turtle, situations counted");
    page.prose(2, Tone::Plain, &told(freeing));
    let vessels = vessels(of);
    for (judged, shown) in vessels.iter().take(MOST_LISTED) {
        let worth = shown.options.outlook.worth();
        let tone = match (worth.nothing, worth.unclear + worth.fallback) {
            (0, 0) => Tone::Good,
            (0, _) => Tone::Open,
            _ => Tone::Bad,
        };
        let numbers: Vec<_> = counts(&worth)
            .iter()
            .zip(COUNTS)
            .map(|(number, what)| format!("{what} {number}"))
            .collect();
        page.prose(2, tone, &format!("{}: {}", judged.check.vessel.name, numbers.join(", ")));
        if let Some(change) = change(shown) {
            page.prose(4, Tone::Plain, &change);
        }
    }
    if let Some(left) = vessels.len().checked_sub(MOST_LISTED).filter(|left| *left > 0) {
        let text =
            format!("and {} more; the JSON of the audit has them all", count(left, "vessel"));
        page.prose(2, Tone::Plain, &text);
    }
    page.prose(2, Tone::Plain, words::FOOT);
}

/// The section of the overview.
pub(super) fn section(of: &Fleet<'_>) -> Markup {
    let Some(freeing) = &of.freeing else { return html! {} };
    html! {
        section {
            h2 id="freeing" { "Ways of freeing a turtle" }
            p { (base::prose(&told(freeing))) }
            div.scroll tabindex="0" role="region" aria-labelledby="freeing" {
                table.outcomes {
                    thead { tr {
                        th scope="col" { "Vessel" }
                        @for name in COUNTS { th scope="col" { (name) } }
                        th scope="col" { "Most would change with one tool" }
                    } }
                    tbody {
                        @for (judged, shown) in vessels(of) {
                            tr {
                                th scope="row" { (base::shown(&judged.check.vessel.name)) }
                                @for number in counts(&shown.options.outlook.worth()) { td { (number) } }
                                td { (base::prose(&change(&shown).unwrap_or_default())) }
                            }
                        }
                    }
                }
            }
            p { (words::FOOT) }
        }
    }
}
