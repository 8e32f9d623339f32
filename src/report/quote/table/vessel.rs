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
            let text = format!("{}; {}", said::vessel(vessel), said::NEEDS_NOTHING);
            let label = format!("{} ", shown.locale.verdict_aloud(Verdict::Ready));
            page.hang(0, (&label, Tone::Good), (&text, Tone::Plain));
        }
    }
}

fn whole(page: &mut Page, shown: &Shown<'_>, index: usize, vessel: &VesselQuote) {
    let after = vessel.after.verdict;
    let label = format!("{} ", shown.locale.verdict_aloud(after));
    page.hang(0, (&label, tone(after)), (&said::vessel(vessel), Tone::Strong));
    let before =
        said::before(vessel, shown.locale).map_or(String::new(), |before| format!("{before}; "));
    page.prose(BODY, Tone::Plain, &format!("{before}leaves on {}", said::leaves(vessel)));
    page.prose(BODY, Tone::Plain, &said::judged(vessel, shown.locale));
    if let Some(note) = said::departure(shown, index, vessel) {
        page.hang(BODY, ("note:", Tone::Open), (&note, Tone::Plain));
    }
    for notice in &vessel.after.notices {
        page.hang(BODY, ("note:", Tone::Open), (&words::notice(notice, shown.locale), Tone::Plain));
    }
    vessel.lines.iter().for_each(|line| bought(page, shown, vessel, line));
    for judgement in &vessel.after.judgements {
        if !judgement.profile.encoded {
            let text = format!("`{}`: {}", judgement.profile.id, said::NOT_ENCODED);
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
        text.push_str(&format!("; {}", said::share(shown, line)));
    }
    page.prose(LINE, Tone::Plain, &text);
    for cured in &line.cures {
        let text = said::asked(&vessel.after, *cured);
        page.hang(LINE, ("for:", Tone::Plain), (&text, Tone::Plain));
    }
}

fn open(page: &mut Page, shown: &Shown<'_>, vessel: &VesselQuote, unmet: &Unmet) {
    let outcome = finding(&vessel.after, unmet.finding).map(|finding| finding.outcome);
    let (sign, tone) = match outcome {
        Some(Outcome::CannotTell) => (words::sign(Outcome::CannotTell), Tone::Open),
        _ => (words::sign(Outcome::NotMet), Tone::Bad),
    };
    let title = format!("open: {}", said::asked(&vessel.after, unmet.finding));
    page.hang(BODY, (sign, tone), (&title, Tone::Strong));
    let told = said::open(shown, vessel, unmet);
    for why in &told.why {
        page.prose(LINE, Tone::Plain, why);
    }
    page.prose(LINE, Tone::Plain, &told.offer);
    if let Some(remedy) = &told.remedy {
        page.hang(LINE, ("do:", Tone::Plain), (remedy, Tone::Strong));
    }
}
