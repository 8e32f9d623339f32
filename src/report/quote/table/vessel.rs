//! What each vessel gets of an order and what stays open on it.
//!
//! Imports `quote` and `model`. A vessel that needs nothing stands on one
//! line, unless there is something to note of it.

use super::super::{Shown, finding};
use super::{BODY, tone};
use crate::model::finding::{Outcome, Verdict};
use crate::quote::{Bought, Unmet, VesselQuote};
use crate::report::content::Tone;
use crate::report::render::lines::Page;
use crate::report::words::{self, quote as said};

/// Where what belongs to a line of a vessel begins.
const LINE: usize = BODY + 2;

/// The vessels, in their order.
pub(super) fn write(page: &mut Page, shown: &Shown<'_>) {
    page.gap();
    let mut brief = true;
    for (index, vessel) in shown.quote.vessels.iter().enumerate() {
        let long = said::is_long(shown, index, vessel);
        if long || !brief {
            page.gap();
        }
        brief = !long;
        if long {
            whole(page, shown, index, vessel);
        } else {
            let text = shown.locale.quote_needs_nothing(&said::vessel(vessel));
            let label = format!("{} ", shown.locale.verdict_aloud(Verdict::Ready));
            page.hang(0, (&label, Tone::Good), (&text, Tone::Plain));
        }
    }
}

fn whole(page: &mut Page, shown: &Shown<'_>, index: usize, vessel: &VesselQuote) {
    let (after, locale) = (vessel.after.verdict, shown.locale);
    let label = format!("{} ", shown.locale.verdict_aloud(after));
    page.hang(0, (&label, tone(after)), (&said::vessel(vessel), Tone::Strong));
    let leaves = said::leaves(vessel, locale);
    let leaves = match said::before(vessel, locale) {
        Some(before) => locale.quote_before_leaves_on(&before, &leaves),
        None => locale.quote_leaves_on(&leaves),
    };
    page.prose(BODY, Tone::Plain, &leaves);
    page.prose(BODY, Tone::Plain, &said::judged(vessel, locale));
    if let Some(note) = said::departure(shown, index, vessel) {
        page.hang(BODY, (locale.quote_small_note(), Tone::Open), (&note, Tone::Plain));
    }
    for notice in &vessel.after.notices {
        page.hang(
            BODY,
            (locale.quote_small_note(), Tone::Open),
            (&words::notice(notice, shown.locale), Tone::Plain),
        );
    }
    vessel.lines.iter().for_each(|line| bought(page, shown, vessel, line));
    for judgement in &vessel.after.judgements {
        if !judgement.profile.encoded {
            let text = format!("`{}`: {}", judgement.profile.id, locale.quote_not_encoded());
            page.hang(BODY, (words::sign(Outcome::CannotTell), Tone::Open), (&text, Tone::Plain));
        }
    }
    vessel.unmet.iter().for_each(|unmet| open(page, shown, vessel, unmet));
}

fn bought(page: &mut Page, shown: &Shown<'_>, vessel: &VesselQuote, line: &Bought) {
    let item = said::item(shown.item(line.offer));
    page.hang(BODY, ("+", Tone::Good), (&item, Tone::Strong));
    let pieces = said::pieces(shown, vessel, line);
    let mut text = format!("{pieces}, {}", said::arrival(shown, vessel, line));
    if shown.quote.vessels.len() > 1 {
        text.push_str(&format!("; {}", shown.locale.quote_share(&shown.money(line.share))));
    }
    page.prose(LINE, Tone::Plain, &text);
    for cured in &line.cures {
        let text = said::asked(&vessel.after, *cured, shown.locale);
        page.hang(LINE, (shown.locale.quote_for(), Tone::Plain), (&text, Tone::Plain));
    }
}

fn open(page: &mut Page, shown: &Shown<'_>, vessel: &VesselQuote, unmet: &Unmet) {
    let outcome = finding(&vessel.after, unmet.finding).map(|finding| finding.outcome);
    let (sign, tone) = match outcome {
        Some(Outcome::CannotTell) => (words::sign(Outcome::CannotTell), Tone::Open),
        _ => (words::sign(Outcome::NotMet), Tone::Bad),
    };
    let title = said::asked(&vessel.after, unmet.finding, shown.locale);
    let title = shown.locale.quote_open(&title);
    page.hang(BODY, (sign, tone), (&title, Tone::Strong));
    let told = said::open(shown, vessel, unmet);
    for why in &told.why {
        page.prose(LINE, Tone::Plain, why);
    }
    page.prose(LINE, Tone::Plain, &told.offer);
    if let Some(remedy) = &told.remedy {
        page.hang(LINE, (shown.locale.quote_small_do(), Tone::Plain), (remedy, Tone::Strong));
    }
}
