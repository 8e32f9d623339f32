//! Why this basket, in sentences: what each item is for and what was wrong
//! before, what the order would cost otherwise, what measuring could save.
//!
//! Imports `quote`, `model` and `measure` only.

use super::{asked, item, left_over, names};
use crate::measure::Money;
use crate::model::check::Check;
use crate::model::finding::Because;
use crate::quote::{Costliest, Cured, Dearest, Explained, Measuring, Offer, OrderLine};
use crate::report::subject::{QuoteShown as Shown, finding, requirement};
use crate::report::words::pages;

/// An item of the order and what it is there for.
#[derive(Debug, Clone)]
pub(crate) struct Reasons {
    /// The item.
    pub(crate) item: String,
    /// What it is there for, a sentence each.
    pub(crate) what: Vec<String>,
}

/// What each item of the order is there for.
pub(crate) fn reasons(shown: &Shown<'_>) -> Vec<Reasons> {
    let orders = shown.quote.orders.iter();
    let lines = orders.flat_map(|order| order.lines.iter().map(|line| (order.catalogue, line)));
    let of = |(catalogue, line): (usize, &OrderLine)| {
        let offer = Offer { catalogue, item: line.item };
        Reasons { item: item(shown.item(offer)), what: what_for(shown, offer, line) }
    };
    lines.map(of).collect()
}

/// A requirement that an item meets, and on which vessels.
struct Met {
    on: Vec<usize>,
    cured: Cured,
    id: (String, String),
}

fn what_for(shown: &Shown<'_>, offer: Offer, line: &OrderLine) -> Vec<String> {
    let mut all: Vec<Met> = Vec::new();
    for (index, vessel) in shown.quote.vessels.iter().enumerate() {
        let lines = vessel.lines.iter().filter(|bought| bought.offer == offer);
        for cured in lines.flat_map(|bought| &bought.cures) {
            let profile = &vessel.after.judgements[cured.judgement].profile;
            let id = (profile.id.clone(), requirement(&vessel.after, *cured).id.clone());
            match all.iter_mut().find(|met| met.id == id) {
                Some(met) if met.on.contains(&index) => {}
                Some(met) => met.on.push(index),
                None => all.push(Met { on: vec![index], cured: *cured, id }),
            }
        }
    }
    if all.is_empty() {
        let why = left_over(line, shown.item(offer), shown.locale).filter(|_| line.used == 0);
        let why = why.unwrap_or_else(|| shown.locale.quote_together().to_owned());
        return vec![pages::sentence(&why)];
    }
    all.iter().map(|met| meets(shown, met)).collect()
}

/// What is met, on which vessels, and, of a single vessel, what was wrong.
fn meets(shown: &Shown<'_>, met: &Met) -> String {
    let first = met.on.first().map(|index| &shown.quote.vessels[*index]);
    let Some(vessel) = first else { return String::new() };
    let locale = shown.locale;
    let asked = asked(&vessel.after, met.cured, locale);
    let mut told = match shown.quote.vessels.len() {
        1 => locale.quote_why_for(&asked),
        _ => locale.quote_why_for_on(&asked, &names(shown, &met.on)),
    };
    if let (1, Some(wrong)) = (met.on.len(), finding(&vessel.before, met.cured)) {
        let words = shown.words(&vessel.before, met.cured.judgement);
        let wrong = words.first_reason(wrong);
        if !wrong.is_empty() {
            told = locale.quote_why_was_open(&told, &wrong);
        }
    }
    pages::sentence(&told)
}

/// What the order would cost otherwise, a paragraph each.
pub(crate) fn otherwise(shown: &Shown<'_>, explained: &Explained) -> Vec<String> {
    let dearest = explained.dearest.as_ref().map(|one| dearest(shown, one));
    let costliest = explained.costliest.as_ref().and_then(|one| costliest(shown, one));
    dearest.into_iter().chain(costliest).collect()
}

/// The dearest line, and what doing without it would cost.
fn dearest(shown: &Shown<'_>, dearest: &Dearest) -> String {
    let (locale, total) = (shown.locale, shown.quote.cost.total);
    let what = item(shown.item(dearest.offer));
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
fn costliest(shown: &Shown<'_>, costliest: &Costliest) -> Option<String> {
    let locale = shown.locale;
    let (vessel, cured) = costliest.at;
    let check = &shown.quote.vessels.get(vessel)?.after;
    if costliest.costs == Money::ZERO {
        return Some(locale.quote_costliest_none().to_owned());
    }
    let head = locale.quote_costliest(&asked(check, cured, locale));
    let rest = match costliest.without {
        none if none == Money::ZERO => locale.quote_costliest_all().to_owned(),
        without => {
            let costs = shown.money(costliest.costs);
            locale.quote_costliest_saves(&shown.money(without), &costs)
        }
    };
    Some(format!("{head} {rest}"))
}

/// The tools to measure: of which vessel, and what is missing.
pub(crate) fn to_measure(shown: &Shown<'_>, measuring: &Measuring) -> Vec<String> {
    let several = shown.quote.vessels.len() > 1;
    let tools = measuring.tools.iter().filter_map(|(index, tool)| {
        let vessel = shown.quote.vessels.get(*index)?;
        let mark = &vessel.before.vessel.kit.get(*tool)?.mark;
        let told = missing(shown, &vessel.before, *tool).unwrap_or_else(|| mark.clone());
        let of = if several { format!("{}: ", vessel.before.vessel.name) } else { String::new() };
        Some(format!("{of}{told}"))
    });
    tools.collect()
}

/// What is not known of a tool, as the check before the order says it first.
fn missing(shown: &Shown<'_>, check: &Check, tool: usize) -> Option<String> {
    check.judgements.iter().enumerate().find_map(|(index, judgement)| {
        let reasons = judgement.findings.iter().flat_map(|finding| &finding.reasons);
        let open = |because: &&Because| because.tool == Some(tool) && because.reason.is_open();
        reasons.into_iter().find(open).map(|because| shown.words(check, index).told(because))
    })
}

/// What measuring them could save.
pub(crate) fn measuring(shown: &Shown<'_>, measuring: &Measuring) -> String {
    let (tools, saves) = (measuring.tools.len(), shown.money(measuring.saves));
    match measuring.total {
        none if none == Money::ZERO => shown.locale.quote_measured_none(tools, &saves),
        total => shown.locale.quote_measured_less(tools, &shown.money(total), &saves),
    }
}
