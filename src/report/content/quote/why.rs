//! Why this basket: what each item is for and what was wrong before, what the
//! order would cost otherwise, what measuring could save.

use crate::measure::Money;
use crate::model::check::Check;
use crate::model::finding::Because;
use crate::quote::{Costliest, Dearest, Measuring, Offer, OrderLine, Purpose};
use crate::report::content::{Block, Item, Lead, Line, Role, Section, Tone};
use crate::report::subject::{QuoteShown, finding};
use crate::report::words::{figures, pages::sentence, quote as said};

fn paragraph(text: impl Into<Line>) -> Block {
    Block::Paragraph(text.into())
}

/// What to measure before ordering, and what that could save.
pub(super) fn measuring(shown: &QuoteShown<'_>) -> Option<Block> {
    let (measuring, locale) = (shown.quote.measuring.as_ref()?, shown.locale);
    let (tools, saves) = (measuring.tools.len(), shown.money(measuring.saves));
    let so = match measuring.total {
        none if none == Money::ZERO => locale.quote_measured_none(tools, &saves),
        total => locale.quote_measured_less(tools, &shown.money(total), &saves),
    };
    let mut body = vec![paragraph(locale.quote_measure_first())];
    let items = to_measure(shown, measuring);
    body.extend(items.map(|tool| Item::new(Lead::Bullet(Tone::Open), tool).into()));
    body.push(paragraph(so));
    Some(Section::block(Role::Part, locale.quote_before_you_order(), body))
}

/// The tools to measure: of which vessel, and what is missing.
fn to_measure<'a>(
    shown: &'a QuoteShown<'_>,
    measuring: &'a Measuring,
) -> impl Iterator<Item = String> {
    let several = shown.quote.vessels.len() > 1;
    measuring.tools.iter().filter_map(move |(index, tool)| {
        let vessel = shown.quote.vessels.get(*index)?;
        let mark = &vessel.before.vessel.kit.get(*tool)?.mark;
        let told = missing(shown, &vessel.before, *tool).unwrap_or_else(|| mark.clone());
        let of = if several { format!("{}: ", vessel.before.vessel.name) } else { String::new() };
        Some(format!("{of}{told}"))
    })
}

/// What is not known of a tool, as the check before the order says it first.
fn missing(shown: &QuoteShown<'_>, check: &Check, tool: usize) -> Option<String> {
    check.judgements.iter().enumerate().find_map(|(index, judgement)| {
        let reasons = judgement.findings.iter().flat_map(|finding| &finding.reasons);
        let open = |because: &&Because| because.tool == Some(tool) && because.reason.is_open();
        reasons.into_iter().find(open).map(|because| shown.words(check, index).told(because))
    })
}

/// Why this basket, where that was asked.
pub(super) fn explained(shown: &QuoteShown<'_>) -> Option<Block> {
    let (quote, locale) = (shown.quote, shown.locale);
    let explained = quote.explained.as_ref()?;
    let orders = quote.orders.iter();
    let lines = orders.flat_map(|order| order.lines.iter().map(|line| (order.catalogue, line)));
    let mut body: Vec<Block> =
        lines.map(|(catalogue, line)| reasons(shown, catalogue, line)).collect();
    if body.is_empty() {
        body.push(paragraph(locale.quote_no_basket()));
    } else {
        body.extend(explained.dearest.as_ref().map(|one| paragraph(dearest(shown, one))));
        body.extend(explained.costliest.as_ref().map(|one| paragraph(costliest(shown, one))));
    }
    Some(Section::block(Role::Part, locale.quote_why(), body))
}

/// An item of the order and what it is there for.
fn reasons(shown: &QuoteShown<'_>, catalogue: usize, line: &OrderLine) -> Block {
    let offer = Offer { catalogue, item: line.item };
    let mut below: Vec<Block> =
        shown.quote.purposes(offer).iter().map(|one| paragraph(meets(shown, one))).collect();
    if below.is_empty() {
        below.push(paragraph(sentence(match line.used {
            0 => shown.locale.quote_not_needed(),
            _ => shown.locale.quote_together(),
        })));
    }
    let item = Line::strong(said::item(shown.item(offer)));
    Item::new(Lead::Bullet(Tone::Plain), item).with(below).into()
}

/// What is met, on which vessels, and, of a single vessel, what was wrong.
fn meets(shown: &QuoteShown<'_>, purpose: &Purpose) -> String {
    let (locale, cured) = (shown.locale, purpose.finding);
    let vessel = &shown.quote.vessels[purpose.on[0]];
    let asked = said::asked(&vessel.after, cured, locale);
    let mut told = match shown.quote.vessels.len() {
        1 => locale.quote_why_for(&asked),
        _ => locale.quote_why_for_on(&asked, &names(shown, &purpose.on)),
    };
    if let (1, Some(wrong)) = (purpose.on.len(), finding(&vessel.before, cured)) {
        let wrong = shown.words(&vessel.before, cured.judgement).first_reason(wrong);
        if !wrong.is_empty() {
            told = locale.quote_why_was_open(&told, &wrong);
        }
    }
    sentence(&told)
}

/// Names of several vessels, or how many they are.
fn names(shown: &QuoteShown<'_>, vessels: &[usize]) -> String {
    const MOST_NAMED: usize = 3;
    if vessels.len() > MOST_NAMED {
        return shown.locale.quote_vessels(vessels.len());
    }
    let name = |index: &usize| shown.quote.vessels[*index].before.vessel.name.clone();
    figures::all_of(&vessels.iter().map(name).collect::<Vec<_>>(), shown.locale)
}

/// The dearest line, and what doing without it would cost.
fn dearest(shown: &QuoteShown<'_>, dearest: &Dearest) -> String {
    let (locale, total) = (shown.locale, shown.quote.cost.total);
    let what = said::item(shown.item(dearest.offer));
    let head = locale.quote_dearest(&what, &shown.money(dearest.price));
    let rest = match dearest.without {
        None => locale.quote_dearest_only().to_owned(),
        Some(without) if without > total => {
            locale.quote_dearest_saves(&shown.money(without), &shown.money(without.less(total)))
        }
        Some(_) => locale.quote_dearest_same().to_owned(),
    };
    format!("{head} {rest}")
}

/// The requirement that costs most, and how much.
fn costliest(shown: &QuoteShown<'_>, costliest: &Costliest) -> String {
    let locale = shown.locale;
    if costliest.costs == Money::ZERO {
        return locale.quote_costliest_none().to_owned();
    }
    let (vessel, cured) = costliest.at;
    let check = &shown.quote.vessels[vessel].after;
    let head = locale.quote_costliest(&said::asked(check, cured, locale));
    let rest = match costliest.without {
        none if none == Money::ZERO => locale.quote_costliest_all().to_owned(),
        without => {
            let costs = shown.money(costliest.costs);
            locale.quote_costliest_saves(&shown.money(without), &costs)
        }
    };
    format!("{head} {rest}")
}
