//! Words for a quote: the verdict on the order, and what each vessel gets.
//!
//! Imports `quote`, `model` and `measure` only. What stays open, what goes to
//! a supplier and why this basket are told by the files below.

mod goods;
mod open;
mod why;

pub(crate) use goods::{by_when, left_over, packs, sums, supplier, terms};
pub(crate) use open::{beyond, hindrance, odd_departure, open};
pub(crate) use why::{measuring, otherwise, reasons, to_measure};

use super::figures;
use crate::measure::{Day, Money};
use crate::model::catalogue::{Gives, Item};
use crate::model::check::Check;
use crate::model::finding::Verdict;
use crate::model::profile::Level;
use crate::model::vessel::Tool;
use crate::quote::{Alone, Bought, Bound, Cured, Quote, VesselQuote};
use crate::report::Locale;
use crate::report::content::check;
use crate::report::subject::{QuoteShown as Shown, requirement};

/// What stands at the foot of a quote.
pub(crate) fn foot(shown: &Shown<'_>) -> Vec<&'static str> {
    let goods = !shown.quote.orders.is_empty();
    let goods = goods.then(|| shown.locale.quote_check_goods());
    goods.into_iter().chain([shown.locale.caution(), shown.locale.foot()]).collect()
}

/// The verdict on the order, as a page prints it in its first line.
pub(crate) fn verdict(shown: &Shown<'_>) -> String {
    let (quote, locale) = (shown.quote, shown.locale);
    let word = locale.verdict_aloud(quote.verdict());
    match quote.orders.is_empty() {
        false => locale.quote_after_order(&word),
        true if needs_nothing(quote) => locale.quote_nothing_needed(&word),
        true => locale.quote_nothing_ordered(&word),
    }
}

/// Whether everything that was asked for is there already.
fn needs_nothing(quote: &Quote) -> bool {
    quote.verdict() == Verdict::Ready && quote.vessels.iter().all(|one| one.unmet.is_empty())
}

/// How many vessels of how many are ready, what it costs and by when it is
/// there.
pub(crate) fn headline(shown: &Shown<'_>) -> String {
    let quote = shown.quote;
    let ready = ready(quote, |vessel| &vessel.after);
    let ready = shown.locale.quote_ready(&ready, quote.vessels.len());
    match last_arrival(quote) {
        Some(last) => shown.locale.quote_there_by(&ready, &shown.money(quote.cost.total), &last),
        None => ready,
    }
}

/// How many vessels are ready by one of their checks.
fn ready(quote: &Quote, check: impl Fn(&VesselQuote) -> &Check) -> usize {
    quote.vessels.iter().filter(|vessel| check(vessel).verdict == Verdict::Ready).count()
}

/// The day on which the last of everything is delivered.
fn last_arrival(quote: &Quote) -> Option<Day> {
    quote.orders.iter().map(|order| order.arrives).max()
}

/// When it was ordered, how many vessels are ready without it, and until
/// when the prices hold.
pub(crate) fn ordered(shown: &Shown<'_>) -> String {
    let (quote, locale) = (shown.quote, shown.locale);
    if quote.orders.is_empty() {
        return locale.quote_for_an_order(&quote.ordered);
    }
    let holds = quote.holds.map(|day| locale.quote_holds_until(&day));
    let mut parts = vec![
        locale.quote_order_of(&quote.ordered),
        holds.unwrap_or_else(|| locale.quote_holds_no_end().to_owned()),
    ];
    if quote.vessels.len() > 1 {
        parts.push(match ready(quote, |vessel| &vessel.before) {
            0 => locale.quote_none_before().to_owned(),
            before => locale.quote_some_before(&before),
        });
    }
    parts.join("; ")
}

/// How good the basket is, in one clause.
pub(crate) fn bound(shown: &Shown<'_>) -> String {
    match short_of(shown) {
        None if shown.one_supplier => shown.locale.quote_cheapest_of_one().to_owned(),
        None => shown.locale.quote_cheapest().to_owned(),
        Some(least) => shown.locale.quote_stopped(&shown.money(least)),
    }
}

/// The least that a cheaper basket could cost, if there may be one.
fn short_of(shown: &Shown<'_>) -> Option<Money> {
    match shown.quote.bound {
        Bound::AtLeast(least) if least < shown.quote.cost.total => Some(least),
        _ => None,
    }
}

/// How far from the cheapest the basket can be; nothing where it is proved.
pub(crate) fn not_proved(shown: &Shown<'_>) -> Option<String> {
    let least = short_of(shown)?;
    let gap = shown.money(shown.quote.cost.total.less(least));
    let told = shown.locale.quote_how_far(&gap, &shown.money(least));
    let open = shown.quote.vessels.iter().any(|vessel| !vessel.unmet.is_empty());
    Some(if open { shown.locale.quote_nor_proved(&told) } else { told })
}

/// What is odd about the day on which a vessel leaves.
pub(crate) fn departure(shown: &Shown<'_>, index: usize, vessel: &VesselQuote) -> Option<String> {
    let departure = vessel.before.asked.departure;
    if shown.left_before(vessel) {
        return Some(shown.locale.quote_left_before(&departure, &shown.quote.ordered));
    }
    shown.undated.contains(&index).then(|| shown.locale.quote_undated(&departure))
}

/// The vessel's name with register and port.
pub(crate) fn vessel(quoted: &VesselQuote) -> String {
    check::named(&quoted.before.vessel)
}

/// The day on which the vessel leaves, and where things for it come on
/// several days, when the last of them is there.
pub(crate) fn leaves(vessel: &VesselQuote, locale: Locale) -> String {
    let departure = vessel.before.asked.departure;
    let arrivals = || vessel.lines.iter().map(|line| line.arrives);
    match (arrivals().min(), arrivals().max()) {
        (Some(first), Some(last)) if first < last => {
            let ahead = ahead(last, departure, locale);
            locale.quote_last_is_there(&departure, &last, &ahead)
        }
        _ => departure.to_string(),
    }
}

/// By which profiles the vessel is judged, and in which file it is.
pub(crate) fn judged(vessel: &VesselQuote, locale: Locale) -> String {
    let ids = vessel.after.judgements.iter().map(|judged| format!("`{}`", judged.profile.id));
    match figures::all_of(&ids.collect::<Vec<_>>(), locale) {
        ids if ids.is_empty() => vessel.file.to_string(),
        ids => locale.quote_judged_by(&vessel.file, &ids),
    }
}

/// Whether there is more to tell of a vessel than that it needs nothing.
pub(crate) fn is_long(shown: &Shown<'_>, index: usize, vessel: &VesselQuote) -> bool {
    vessel.after.verdict != Verdict::Ready
        || !vessel.lines.is_empty()
        || !vessel.unmet.is_empty()
        || !vessel.after.notices.is_empty()
        || departure(shown, index, vessel).is_some()
        || shown.quote.vessels.len() == 1
}

/// How long before departure something arrives.
fn ahead(arrives: Day, departure: Day, locale: Locale) -> String {
    let days = departure.days_since(arrives);
    match days {
        0 => locale.quote_day_of_departure().to_owned(),
        1.. => locale.quote_days_before(days.unsigned_abs()),
        _ => locale.quote_days_after(days.unsigned_abs()),
    }
}

/// What is bought: the supplier's number and words.
pub(crate) fn item(item: &Item) -> String {
    format!("{}, {}", item.number, item.description)
}

/// How many pieces, on which tool, and when they are there: `2 pieces`, `1
/// piece on LC-1 (long-handled line cutter)`, `work on 2 of the 3 PL-1
/// (pliers)`.
pub(crate) fn pieces(shown: &Shown<'_>, vessel: &VesselQuote, bought: &Bought) -> String {
    let locale = shown.locale;
    let gives = &shown.item(bought.offer).gives;
    let pieces = match gives {
        Gives::Tools(given) if given.len() > 1 => locale.quote_sets(bought.pieces),
        _ => locale.quote_pieces(bought.pieces),
    };
    let old = bought.on.and_then(|tool| vessel.before.vessel.kit.get(tool));
    let Some(old) = old else { return pieces };
    let kind = &shown.vocabulary.kind(old.kind).name;
    let tool = format!("{} ({kind})", which(vessel, bought, old, locale));
    match gives {
        Gives::Service { .. } => locale.quote_work_on(&tool),
        _ => locale.quote_pieces_on(&pieces, &tool),
    }
}

/// When a line is there, or the work is done.
pub(crate) fn arrival(shown: &Shown<'_>, vessel: &VesselQuote, bought: &Bought) -> String {
    let locale = shown.locale;
    let ahead = ahead(bought.arrives, vessel.before.asked.departure, locale);
    match shown.item(bought.offer).gives {
        Gives::Service { .. } => locale.quote_done_on(&bought.arrives, &ahead),
        _ => locale.quote_there_on(&bought.arrives, &ahead),
    }
}

/// The tool that is worked on, of a lot with how many of it.
fn which(vessel: &VesselQuote, bought: &Bought, old: &Tool, locale: Locale) -> String {
    let new = bought.tools.first().and_then(|tool| vessel.after.vessel.kit.get(*tool));
    match new.map(|new| new.count) {
        Some(some) if old.count > 1 => locale.quote_some_of_lot(&some, &old.count, &old.mark),
        _ => old.mark.clone(),
    }
}

/// A requirement with its clause; with the profile's id where several
/// profiles judge the vessel, and told apart where it is only recommended.
pub(crate) fn asked(check: &Check, cured: Cured, locale: Locale) -> String {
    let asked = requirement(check, cured);
    let mut clause = vec![asked.clause.as_str()];
    if check.judgements.len() > 1 {
        clause.push(&check.judgements[cured.judgement].profile.id);
    }
    if asked.level == Level::Recommended {
        clause.push(locale.sheet_recommended());
    }
    format!("{} ({})", asked.title, clause.join("; "))
}

/// How far one supplier alone would come.
pub(crate) fn alone(shown: &Shown<'_>, alone: &Alone) -> String {
    let locale = shown.locale;
    let supplier = &shown.catalogues[alone.catalogue].supplier;
    let mut told = locale.quote_alone(supplier, &alone.ready, shown.quote.vessels.len());
    if alone.open > 0 {
        told = locale.quote_alone_but(&told, &locale.quote_alone_open(alone.open));
    }
    if alone.taken { locale.quote_alone_taken(&told) } else { told }
}

/// Names of several vessels, or how many they are.
fn names(shown: &Shown<'_>, vessels: &[usize]) -> String {
    const MOST_NAMED: usize = 3;
    if vessels.len() > MOST_NAMED {
        return shown.locale.quote_vessels(vessels.len());
    }
    let name = |index: &usize| shown.quote.vessels[*index].before.vessel.name.clone();
    figures::all_of(&vessels.iter().map(name).collect::<Vec<_>>(), shown.locale)
}

/// What the vessel was before the order.
pub(crate) fn before(vessel: &VesselQuote, locale: Locale) -> Option<String> {
    let (before, after) = (vessel.before.verdict, vessel.after.verdict);
    let verdict = locale.verdict(before);
    match before == after {
        true if vessel.lines.is_empty() => None,
        true => Some(locale.quote_before_either(&verdict)),
        false => Some(locale.quote_before(&verdict)),
    }
}
