//! Which ways of freeing a turtle kits leave open, within other pages: of a
//! fleet one row a vessel, of one vessel a few lines beside its check. The
//! whole of it is the page of `options`.
//!
//! Counts nothing that was not counted below.

use super::{Block, Inline, Item, Lead, Line, Role, Section, Tone, more};
use crate::fleet::{Judged, Row};
use crate::freeing::{Tally, tally};
use crate::model::options::{Standing, Worth};
use crate::report::Locale;
use crate::report::subject::{Fleet, Freeing, OptionsShown as Shown};
use crate::report::words::options::worth;
use crate::report::words::pages::{capital, sentence};
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

/// What a kit is worth in outcomes, as a part of its vessel's account: the
/// counts; the situations that have no way at all; the single tool that would
/// change most, with its price.
pub(super) fn summary(shown: &Shown<'_>) -> Block {
    let locale = shown.locale;
    let counts = worth(&shown.options.outlook.worth(), locale);
    let nothing = shown.arising().filter(|of| of.answered.standing() == Standing::Nothing);
    let nothing: Vec<_> = nothing.map(|of| shown.placed(of.situation)).collect();
    let nothing = (!nothing.is_empty()).then(|| locale.options_summary_no_way(&nothing.join("; ")));
    let most = shown.lift().zip(shown.lifts());
    let most = most.map(|(step, lifts)| locale.options_summary_most(&step, &lifts));
    let lines = [
        (Tone::Plain, Some(sentence(&capital(&counts)))),
        (Tone::Bad, nothing),
        (Tone::Strong, most),
        (Tone::Plain, shown.price().map(|price| sentence(&capital(&price)))),
    ];
    let lines = lines.into_iter().filter_map(|(tone, text)| Some(Line::from(text?).toned(tone)));
    let file = &shown.options.vessel.place.file;
    let pointer = Line::from(Inline::Code(format!("kitmuster options {file}")))
        .and(format!(", {}", locale.options_summary_pointer()));
    let body = lines.chain([pointer]).map(Block::Paragraph).collect();
    Section::block(Role::Part, locale.options_summary(), body)
}
