//! The page for the terminal: situation by situation the best way that is
//! open and the better ones that are closed, then what is closed, why, and
//! what opens it.
//!
//! Imports `options`, `model` and the page and words beside it; decides
//! nothing. The steps of the techniques stand on the card, not here.

mod closed;
mod groups;
mod situation;

use super::Shown;
use crate::model::options::OwnHooks;
use crate::model::vessel::Trust;
use crate::report::content::Tone;
use crate::report::content::check;
use crate::report::content::{Block, Headline, Lead, Role};
use crate::report::render::lines::Page;
use crate::report::render::terminal;
use crate::report::words::{options as said, pages};
use closed::Closed;
use groups::groups;

/// How far what belongs to a heading stands in.
const INDENT: usize = 2;

/// What is open as a page no wider than `width` columns, with colour codes.
pub fn table(shown: &Shown<'_>, width: usize) -> String {
    let mut page = Page::new(width);
    headline(&mut page, shown);
    worth(&mut page, shown);
    let mut closed = Closed::default();
    for group in groups(shown) {
        page.gap();
        page.prose(0, Tone::Strong, group.heading);
        for one in &group.shown {
            situation::write(&mut page, shown, &group, one, &mut closed);
        }
        situation::left_out(&mut page, shown.locale, &group);
    }
    closed.write(&mut page, shown.locale);
    minded(&mut page, shown);
    foot(&mut page, shown);
    page.finish()
}

/// Whose kit it is, on which trip, at which rail.
fn headline(page: &mut Page, shown: &Shown<'_>) {
    let (options, vessel) = (shown.options, &shown.options.vessel);
    let mut facts = check::trip(vessel, options.asked, shown.notices, shown.locale);
    facts.push(check::freeboard(vessel, shown.locale));
    facts.extend(check::records(vessel, shown.sources, shown.notices, shown.locale));
    let mut below = vec![Block::Facts(Role::Particulars, facts)];
    if options.asked.trust == Trust::Measured {
        below.push(Block::Paragraph(shown.locale.only_measured().into()));
    }
    let lead = Lead::Word(shown.locale.options_ways_open().to_owned(), Tone::Strong);
    let text = check::named(vessel).into();
    let headline = Block::Headline(Headline { lead, beside: None, text, more: None, below });
    let blocks: Vec<_> =
        std::iter::once(headline).chain(check::notices(shown.notices, shown.locale)).collect();
    terminal::write(page, &blocks, shown.locale);
    if options.outlook.all().any(|one| one.hooks == OwnHooks::NotSaid) {
        page.hang(
            0,
            (shown.locale.sheet_small_note(), Tone::Strong),
            (shown.locale.options_hooks_not_said(), Tone::Plain),
        );
    }
}

/// What the kit is worth, and the single tool that lifts most.
fn worth(page: &mut Page, shown: &Shown<'_>) {
    page.gap();
    let locale = shown.locale;
    let worth = said::worth(&shown.options.outlook.worth(), locale);
    page.prose(0, Tone::Strong, &pages::sentence(&worth));
    if let Some(even_so) = said::even_so(shown) {
        page.hang(0, (locale.options_even_so(), Tone::Bad), (&even_so, Tone::Strong));
    }
    let (Some(lift), Some(lifts)) = (shown.lift(), shown.lifts()) else {
        if !all_first(shown) {
            page.prose(0, Tone::Plain, locale.options_no_lift());
        }
        return;
    };
    let text = locale.options_lift(&pages::sentence(&lift), &lifts);
    page.hang(0, (locale.options_lifts_most(), Tone::Strong), (&text, Tone::Plain));
    let price = shown.price();
    let none = || (!shown.catalogues.is_empty()).then(|| locale.options_no_offer().to_owned());
    if let Some(text) = price.or_else(none) {
        page.hang(
            0,
            (locale.options_to_buy(), Tone::Strong),
            (&pages::sentence(&text), Tone::Plain),
        );
    }
}

/// Whether every situation that counts has its first choice open.
fn all_first(shown: &Shown<'_>) -> bool {
    let worth = shown.options.outlook.worth();
    worth.fallback + worth.unclear + worth.nothing == 0
}

/// What is to be minded with the ways that are shown as open, each once.
fn minded(page: &mut Page, shown: &Shown<'_>) {
    let minded = said::minded(shown);
    if minded.is_empty() {
        return;
    }
    page.gap();
    page.prose(0, Tone::Strong, shown.locale.options_mind());
    for (says, techniques) in minded {
        page.hang(INDENT, ("-", Tone::Plain), (&format!("{says} ({techniques})"), Tone::Plain));
    }
}

fn foot(page: &mut Page, shown: &Shown<'_>) {
    let (practice, locale) = (shown.practice, shown.locale);
    page.gap();
    page.prose(0, Tone::Strong, locale.options_take_care());
    let cautions: Vec<_> = practice.cautions.iter().map(ToString::to_string).collect();
    page.prose(INDENT, Tone::Plain, &cautions.join(" "));
    page.gap();
    page.prose(0, Tone::Strong, locale.options_how_judged());
    for note in &practice.notes {
        page.hang(INDENT, ("-", Tone::Plain), (&note.to_string(), Tone::Plain));
    }
    page.gap();
    page.prose(0, Tone::Plain, locale.options_steps_on_card());
    let source = format!("{}: {}", practice.title, practice.source);
    page.prose(0, Tone::Plain, &pages::sentence(&source));
    page.prose(0, Tone::Plain, locale.options_foot());
}
