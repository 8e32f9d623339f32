//! A quote as a page for the terminal: the verdict on the order first, then
//! what each vessel gets and what stays open, then the order as it goes to
//! each supplier.
//!
//! Imports `quote` and `model`. Decides nothing.

mod order;
mod vessel;

use super::Shown;
use crate::model::finding::Verdict;
use crate::report::content::Block;
use crate::report::content::Tone;
use crate::report::problems;
use crate::report::render::lines::Page;
use crate::report::render::terminal;
use crate::report::words::{fleet, quote as said};

/// Where what belongs to a heading begins.
const BODY: usize = 2;

/// The quote as a page no wider than `width` columns, with colour codes.
pub fn table(shown: &Shown<'_>, width: usize) -> String {
    let mut page = Page::new(width);
    headline(&mut page, shown);
    not_read(&mut page, shown);
    vessel::write(&mut page, shown);
    order::write(&mut page, shown);
    compared(&mut page, shown);
    measuring(&mut page, shown);
    why(&mut page, shown);
    page.gap();
    for text in said::foot(shown) {
        page.prose(0, Tone::Plain, text);
    }
    page.finish()
}

fn headline(page: &mut Page, shown: &Shown<'_>) {
    let (quote, locale) = (shown.quote, shown.locale);
    let label = format!("{} ", said::verdict(shown));
    page.hang(0, (&label, tone(quote.verdict())), (&said::headline(shown), Tone::Strong));
    if let Some(customer) = shown.customer {
        page.prose(BODY, Tone::Plain, &locale.quote_for_customer(&customer));
    }
    page.prose(BODY, Tone::Plain, &said::ordered(shown));
    if quote.with_recommended {
        page.prose(BODY, Tone::Plain, locale.quote_with_recommended());
    }
    match said::not_proved(shown) {
        Some(text) => page.hang(BODY, (locale.quote_not_proved(), Tone::Bad), (&text, Tone::Plain)),
        None if quote.orders.is_empty() => {}
        None => page.prose(BODY, Tone::Plain, &said::bound(shown)),
    }
    if !shown.refused.is_empty() {
        page.prose(BODY, Tone::Bad, &locale.quote_for_the_others(shown.refused.len()));
    }
    for left_out in shown.left_out {
        let text = format!("{}: {}", left_out.file, fleet::left_out(left_out, shown.locale));
        page.hang(BODY, (locale.quote_record_not_laid(), Tone::Open), (&text, Tone::Plain));
    }
}

fn not_read(page: &mut Page, shown: &Shown<'_>) {
    if shown.refused.is_empty() {
        return;
    }
    page.gap();
    page.prose(0, Tone::Strong, &shown.locale.quote_not_read(&shown.refused.len()));
    let first: Vec<_> = shown.refused.iter().filter_map(problems::first).collect();
    terminal::write(page, &[Block::Within(first)], shown.locale);
}

/// What each supplier alone would cost, where one was to supply everything.
fn compared(page: &mut Page, shown: &Shown<'_>) {
    if shown.quote.suppliers.is_empty() {
        return;
    }
    page.gap();
    page.prose(0, Tone::Strong, shown.locale.quote_one_supplier());
    for alone in &shown.quote.suppliers {
        let tone = if alone.taken { Tone::Strong } else { Tone::Plain };
        let total = shown.money(alone.cost.total);
        page.amount(BODY, (&said::alone(shown, alone), tone), &total);
    }
}

fn measuring(page: &mut Page, shown: &Shown<'_>) {
    if let Some(measuring) = &shown.quote.measuring {
        page.gap();
        page.prose(0, Tone::Strong, shown.locale.quote_before_you_order());
        page.prose(BODY, Tone::Plain, shown.locale.quote_measure_first());
        for tool in said::to_measure(shown, measuring) {
            page.hang(BODY, ("-", Tone::Open), (&tool, Tone::Plain));
        }
        page.prose(BODY, Tone::Plain, &said::measuring(shown, measuring));
    }
}

/// Why this basket, where that was asked.
fn why(page: &mut Page, shown: &Shown<'_>) {
    let Some(explained) = &shown.quote.explained else { return };
    page.gap();
    page.prose(0, Tone::Strong, shown.locale.quote_why());
    if shown.quote.orders.is_empty() {
        page.prose(BODY, Tone::Plain, shown.locale.quote_no_basket());
        return;
    }
    for reasons in said::reasons(shown) {
        page.hang(BODY, ("-", Tone::Plain), (&reasons.item, Tone::Strong));
        for what in &reasons.what {
            page.prose(BODY + 2, Tone::Plain, what);
        }
    }
    for text in said::otherwise(shown, explained) {
        page.prose(BODY, Tone::Plain, &text);
    }
}

fn tone(verdict: Verdict) -> Tone {
    match verdict {
        Verdict::Ready => Tone::Good,
        Verdict::CannotTell => Tone::Open,
        Verdict::NotReady => Tone::Bad,
    }
}
