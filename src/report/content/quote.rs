//! What is told of a quote: the verdict on the order first, then what each
//! vessel gets and what stays open on it, then the order as it goes to each
//! supplier, a place to accept it, and why it is this one.
//!
//! Decides nothing: lines come chosen, added up and judged.

mod order;
mod vessel;
mod why;

use super::{Block, Document, Fact, Headline, Item, Lead, Line, Role, Section, Signature, Tone};
use crate::load::Refusal;
use crate::report::subject::QuoteShown;
use crate::report::words::{fleet, quote as said};

/// The quote as a page; `problems` tells what is wrong in a file.
pub(crate) fn document(
    shown: &QuoteShown<'_>,
    problems: impl Fn(&Refusal) -> Vec<Block>,
) -> Document {
    let title = match shown.customer {
        Some(customer) => shown.locale.quote_title_for(&customer),
        None => shown.locale.quote_title().to_owned(),
    };
    let mut blocks = vec![headline(shown), Block::Within(frame(shown))];
    if !shown.refused.is_empty() {
        let heading = shown.locale.quote_not_read(&shown.refused.len());
        let body = shown.refused.iter().flat_map(problems).collect();
        blocks.push(Section::block(Role::Part, heading, body));
    }
    blocks.extend(vessel::all(shown));
    blocks.extend(order::all(shown));
    blocks.extend(order::compared(shown));
    blocks.extend(why::measuring(shown));
    blocks.extend(acceptance(shown));
    blocks.extend(why::explained(shown));
    blocks.push(foot(shown));
    Document { title, blocks }
}

/// How many vessels of how many are ready, what it costs and by when it is
/// there.
fn headline(shown: &QuoteShown<'_>) -> Block {
    let (quote, locale) = (shown.quote, shown.locale);
    let word = locale.verdict_aloud(quote.verdict());
    let verdict = match quote.orders.is_empty() {
        false => locale.quote_after_order(&word),
        true if quote.needs_nothing() => locale.quote_nothing_needed(&word),
        true => locale.quote_nothing_ordered(&word),
    };
    let ready = locale.quote_ready(&quote.ready_after(), quote.vessels.len());
    let text = match quote.arrives() {
        Some(last) => locale.quote_there_by(&ready, &shown.money(quote.cost.total), &last),
        None => ready,
    };
    Block::Headline(Headline {
        lead: Lead::Says(quote.verdict(), verdict),
        beside: None,
        text: text.into(),
        more: None,
        below: Vec::new(),
    })
}

/// For whom and when it is, how good the basket is, and what is missing.
fn frame(shown: &QuoteShown<'_>) -> Vec<Block> {
    let (quote, locale) = (shown.quote, shown.locale);
    let customer = shown.customer.map(|name| Fact::new(locale.quote_for_customer(), name));
    let facts = customer.into_iter().chain([ordered(shown)]).collect();
    let mut blocks = vec![Block::Facts(Role::Particulars, facts)];
    if quote.with_recommended {
        blocks.push(Block::Paragraph(locale.quote_with_recommended().into()));
    }
    let warning = |label, tone, text| Item::new(Lead::Warning(label, tone), text).into();
    match not_proved(shown) {
        Some(text) => blocks.push(warning(locale.quote_not_proved(), Tone::Bad, text)),
        None if quote.orders.is_empty() => {}
        None => blocks.push(Block::Paragraph(said::bound(shown).into())),
    }
    if !shown.refused.is_empty() {
        let text = Line::from(locale.quote_for_the_others(shown.refused.len()));
        blocks.push(Block::Paragraph(text.toned(Tone::Bad)));
    }
    blocks.extend(shown.left_out.iter().map(|left_out| {
        let text = format!("{}: {}", left_out.file, fleet::left_out(left_out, locale));
        warning(locale.quote_record_not_laid(), Tone::Open, text)
    }));
    blocks
}

/// When it was ordered, until when the prices hold, and how many vessels are
/// ready without it.
fn ordered(shown: &QuoteShown<'_>) -> Fact {
    let (quote, locale) = (shown.quote, shown.locale);
    if quote.orders.is_empty() {
        return Fact::new(locale.quote_for_an_order(), quote.ordered.to_string());
    }
    let mut parts = vec![quote.ordered.to_string()];
    parts.push(match quote.holds {
        Some(day) => locale.quote_holds_until(&day),
        None => locale.quote_holds_no_end().to_owned(),
    });
    if quote.vessels.len() > 1 {
        parts.push(match quote.ready_before() {
            0 => locale.quote_none_before().to_owned(),
            before => locale.quote_some_before(&before),
        });
    }
    Fact::new(locale.quote_order_of(), parts.join("; "))
}

/// How far from the cheapest the basket can be; nothing where it is proved.
fn not_proved(shown: &QuoteShown<'_>) -> Option<String> {
    let least = shown.quote.cheaper_from()?;
    let gap = shown.money(shown.quote.cost.total.less(least));
    let told = shown.locale.quote_how_far(&gap, &shown.money(least));
    let open = shown.quote.vessels.iter().any(|vessel| !vessel.unmet.is_empty());
    Some(if open { shown.locale.quote_nor_proved(&told) } else { told })
}

/// Where the order is accepted in writing.
fn acceptance(shown: &QuoteShown<'_>) -> Option<Block> {
    let locale = shown.locale;
    let signature = Signature {
        heading: locale.quote_acceptance(),
        text: locale.quote_accept(),
        lines: vec![
            locale.quote_place_and_day(),
            locale.quote_for_the_customer(),
            locale.quote_for_the_supplier(),
        ],
    };
    (!shown.quote.orders.is_empty()).then_some(Block::Signature(signature))
}

fn foot(shown: &QuoteShown<'_>) -> Block {
    let goods = !shown.quote.orders.is_empty();
    let goods = goods.then(|| shown.locale.quote_check_goods());
    let texts = goods.into_iter().chain([shown.locale.caution(), shown.locale.foot()]);
    let body = texts.map(|text| Block::Paragraph(text.into())).collect();
    Block::Section(Section { role: Role::Foot, id: None, verdict: None, heading: None, body })
}
