//! Which ways of freeing a turtle the kits of a fleet leave open: one row a
//! vessel, every count by itself.
//!
//! Imports `fleet`, `options` and the words. Counts nothing that was not
//! counted below.

use super::{Block, Item, Lead, Role, Section, Tone, more};
use crate::fleet::{Judged, Row};
use crate::freeing::{Tally, tally};
use crate::model::options::Worth;
use crate::report::options::Shown;
use crate::report::subject::{Fleet, Freeing};
use crate::report::words::fleet::count;
use crate::report::words::pages::{capital, sentence};

/// The columns of the counts.
const COUNTS: [&str; 4] = ["first choice", "fallback", "can't tell", "nothing"];

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

/// The section: all of them in one sentence, then vessel by vessel.
pub(super) fn section(of: &Fleet<'_>, most: usize) -> Option<Block> {
    let freeing = of.freeing.as_ref()?;
    let vessels = vessels(of);
    let mut body = vec![Block::Paragraph(told(freeing).into())];
    body.extend(vessels.iter().take(most).map(|(judged, shown)| {
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
        let text = format!("{}: {}", judged.check.vessel.name, numbers.join(", "));
        let change = change(shown).map(|change| Block::Paragraph(change.into()));
        Item::new(Lead::Bullet(tone), text).with(change.into_iter().collect()).into()
    }));
    body.extend(more(vessels.len(), most));
    body.push(Block::Paragraph(of.locale.options_foot().into()));
    Some(Section::block(Role::Part, "Ways of freeing a turtle, situations counted", body))
}
