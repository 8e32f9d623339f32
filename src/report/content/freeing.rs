//! Which ways of freeing a turtle the kits of a fleet leave open: one row a
//! vessel, every count by itself.
//!
//! Imports `fleet`, `options` and the words. Counts nothing that was not
//! counted below.

use super::{Block, Item, Lead, Role, Section, Tone, more};
use crate::fleet::{Judged, Row};
use crate::freeing::{Tally, tally};
use crate::model::options::Worth;
use crate::report::Locale;
use crate::report::options::Shown;
use crate::report::subject::{Fleet, Freeing};
use crate::report::words::pages::sentence;
use std::fmt::Display;

/// The vessels of the audit with what their kits leave open.
fn vessels<'a>(of: &Fleet<'a>) -> Vec<(&'a Judged, Shown<'a>)> {
    let rows = of.audit.rows.iter().filter_map(|row| match row {
        Row::Vessel(judged) => Some(&**judged),
        Row::Refused(_) => None,
    });
    let all = rows.enumerate();
    all.filter_map(|(index, judged)| Some((judged, of.freeing(index, judged)?))).collect()
}

/// A number of something as it is told.
type Told = fn(Locale, &dyn Display) -> String;

/// The vessels by their worst situation, in one sentence.
fn told(freeing: &Freeing<'_>, locale: Locale) -> String {
    let Tally { first, fallback, unclear, nothing } = tally(freeing.options);
    let parts: [(usize, Told); 4] = [
        (first, Locale::freeing_vessels_first),
        (fallback, Locale::freeing_vessels_fallback),
        (unclear, Locale::freeing_vessels_unclear),
        (nothing, Locale::freeing_vessels_nothing),
    ];
    let parts = parts.into_iter().filter(|(number, _)| *number > 0);
    let parts: Vec<_> = parts.map(|(number, told)| told(locale, &number)).collect();
    sentence(&locale.freeing_vessels(freeing.options.len(), &parts.join("; ")))
}

/// The situations of a vessel, counted by what is open in them.
fn counts(worth: &Worth, locale: Locale) -> String {
    [
        locale.freeing_first(&worth.first),
        locale.freeing_fallback(&worth.fallback),
        locale.freeing_unclear(&worth.unclear),
        locale.freeing_nothing(&worth.nothing),
    ]
    .join(", ")
}

/// The single tool that would lift most, and what it lifts.
fn change(shown: &Shown<'_>) -> Option<String> {
    let (step, lifts, say) = (shown.lift()?, shown.lifts()?, shown.locale);
    let told = match shown.price() {
        Some(price) => say.freeing_lift_price(&step, &lifts, &price),
        None => say.freeing_lift(&step, &lifts),
    };
    Some(sentence(&told))
}

/// The section: all of them in one sentence, then vessel by vessel.
pub(super) fn section(of: &Fleet<'_>, most: usize) -> Option<Block> {
    let freeing = of.freeing.as_ref()?;
    let vessels = vessels(of);
    let mut body = vec![Block::Paragraph(told(freeing, of.locale).into())];
    body.extend(vessels.iter().take(most).map(|(judged, shown)| {
        let worth = shown.options.outlook.worth();
        let tone = match (worth.nothing, worth.unclear + worth.fallback) {
            (0, 0) => Tone::Good,
            (0, _) => Tone::Open,
            _ => Tone::Bad,
        };
        let text = format!("{}: {}", judged.check.vessel.name, counts(&worth, of.locale));
        let change = change(shown).map(|change| Block::Paragraph(change.into()));
        Item::new(Lead::Bullet(tone), text).with(change.into_iter().collect()).into()
    }));
    body.extend(more(vessels.len(), most, of.locale));
    body.push(Block::Paragraph(of.locale.options_foot().into()));
    Some(Section::block(Role::Part, of.locale.freeing_heading(), body))
}
