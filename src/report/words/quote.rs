//! Words for a quote: the verdict on the order, and what each vessel gets.
//!
//! Imports `quote`, `model` and `measure` only. What stays open, what goes to
//! a supplier and why this basket are told by the files below.

mod goods;
mod open;
mod why;

pub(crate) use goods::{by_when, delivery, left_over, packs, supplier, tax, terms};
pub(crate) use open::{beyond, hindrance, odd_departure, open};
pub(crate) use why::{measuring, otherwise, reasons, to_measure};

use super::fleet::count;
use super::{figures, pages};
use crate::measure::Day;
use crate::model::catalogue::{Gives, Item};
use crate::model::check::Check;
use crate::model::finding::Verdict;
use crate::model::profile::Level;
use crate::model::vessel::Tool;
use crate::quote::{Alone, Bought, Bound, Cured, Quote, VesselQuote};
use crate::report::subject::{QuoteShown as Shown, requirement};

/// What stands beside a list of goods to be delivered.
const CHECK_GOODS: &str = "Check the goods when they are delivered: count them, \
    measure them and read their labels. This page rests on what the suppliers state; a tool \
    counts once it is aboard.";

/// What stands at the foot of a quote.
pub(crate) fn foot(quote: &Quote) -> Vec<&'static str> {
    let goods = (!quote.orders.is_empty()).then_some(CHECK_GOODS);
    goods.into_iter().chain([super::CAUTION, super::FOOT]).collect()
}

/// What stands above the tools that are better measured first.
pub(crate) const MEASURE: &str = "Measure or look up first; the order does not rely on these:";

/// What is told of a rule that is known and not encoded.
pub(crate) const NOT_ENCODED: &str = "known, not encoded; no order settles it";

/// What is told of a vessel that has all that is asked.
pub(crate) const NEEDS_NOTHING: &str = "nothing needed";

/// Why there is no basket to explain.
pub(crate) const NO_BASKET: &str = "Nothing is ordered, so there is nothing to explain.";

/// What is told where no price ends.
pub(crate) const NO_END: &str = "no last day is stated";

/// What is signed below a quote.
pub(crate) const ACCEPT: &str = "The order above is placed as it stands, at these prices and \
    terms.";

/// What is written on the lines below it.
pub(crate) const SIGNED: [&str; 3] = ["Place and day", "For the customer", "For the supplier"];

/// The verdict on the order, as a page prints it in its first line.
pub(crate) fn verdict(quote: &Quote) -> String {
    let word = super::verdict(quote.verdict());
    match quote.orders.is_empty() {
        false => format!("{word} AFTER THIS ORDER"),
        true if needs_nothing(quote) => format!("{word}, NOTHING NEEDED"),
        true => format!("{word}, NOTHING ORDERED"),
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
    let all = quote.vessels.len();
    let ready = ready(quote, |vessel| &vessel.after);
    let mut text = format!("{ready} of {} ready", count(all, "vessel"));
    if let Some(last) = last_arrival(quote) {
        text.push_str(&format!("; {}, there by {last}", shown.money(quote.cost.total)));
    }
    text
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
pub(crate) fn ordered(quote: &Quote) -> String {
    if quote.orders.is_empty() {
        return format!("for an order of {}", quote.ordered);
    }
    let before = match (quote.vessels.len(), ready(quote, |vessel| &vessel.before)) {
        (1, _) => String::new(),
        (_, 0) => "; none ready without it".to_owned(),
        (_, before) => format!("; {before} ready without it"),
    };
    let holds = match quote.holds {
        Some(day) => format!("; prices hold until {day}"),
        None => "; no last day is stated for these prices".to_owned(),
    };
    format!("order of {}{holds}{before}", quote.ordered)
}

/// What was to be met, where that is more than what is required.
pub(crate) const WITH_RECOMMENDED: &str = "what is recommended was to be met too";

/// How good the basket is, in one clause.
pub(crate) fn bound(shown: &Shown<'_>) -> String {
    match short_of(shown) {
        None if shown.one_supplier => "nothing cheaper from one supplier does the same".to_owned(),
        None => "nothing cheaper does the same".to_owned(),
        Some(least) => {
            format!("the search was stopped: a cheaper basket may exist, none below {least}")
        }
    }
}

/// The least that a cheaper basket could cost, if there may be one.
fn short_of(shown: &Shown<'_>) -> Option<String> {
    match shown.quote.bound {
        Bound::AtLeast(least) if least < shown.quote.cost.total => Some(shown.money(least)),
        _ => None,
    }
}

/// What is shouted where the basket is not proved the cheapest.
pub(crate) const NOT_PROVED: &str = "NOT PROVED THE CHEAPEST";

/// How far from the cheapest the basket can be; nothing where it is proved.
pub(crate) fn not_proved(shown: &Shown<'_>) -> Option<String> {
    let least = short_of(shown)?;
    let quote = shown.quote;
    let Bound::AtLeast(bound) = quote.bound else { return None };
    let gap = shown.money(quote.cost.total.less(bound));
    let mut text = format!(
        "the search was stopped. A cheaper basket may exist, by {gap} at most: none below {least} \
         does the same; `--time-limit` gives the search longer"
    );
    if quote.vessels.iter().any(|vessel| !vessel.unmet.is_empty()) {
        text.push_str(". Nor is it proved that no more requirements can be met");
    }
    Some(text)
}

/// What is odd about the day on which a vessel leaves.
pub(crate) fn departure(shown: &Shown<'_>, index: usize, vessel: &VesselQuote) -> Option<String> {
    let departure = vessel.before.asked.departure;
    if shown.left_before(vessel) {
        return Some(format!(
            "leaves on {departure}, before the day of the order, {}; nothing can be there in time",
            shown.quote.ordered
        ));
    }
    shown.undated.contains(&index).then(|| {
        format!(
            "no day of departure is planned; taken to leave on {departure}, the day of the \
             order; `--on DATE` gives another"
        )
    })
}

/// The vessel's name with register and port.
pub(crate) fn vessel(quoted: &VesselQuote) -> String {
    let vessel = &quoted.before.vessel;
    let register = vessel.register.as_ref().map(|register| format!(" ({register})"));
    let port = vessel.port.as_ref().map(|port| format!(", {port}"));
    format!("{}{}{}", vessel.name, register.unwrap_or_default(), port.unwrap_or_default())
}

/// The day on which the vessel leaves, and where things for it come on
/// several days, when the last of them is there.
pub(crate) fn leaves(vessel: &VesselQuote) -> String {
    let departure = vessel.before.asked.departure;
    let arrivals = || vessel.lines.iter().map(|line| line.arrives);
    match (arrivals().min(), arrivals().max()) {
        (Some(first), Some(last)) if first < last => {
            format!("{departure}; the last for it is there on {last}, {}", ahead(last, departure))
        }
        _ => departure.to_string(),
    }
}

/// By which profiles the vessel is judged, and in which file it is.
pub(crate) fn judged(vessel: &VesselQuote) -> String {
    let ids = vessel.after.judgements.iter().map(|judged| format!("`{}`", judged.profile.id));
    match figures::all_of(&ids.collect::<Vec<_>>()) {
        ids if ids.is_empty() => vessel.file.to_string(),
        ids => format!("{}; judged by {ids}", vessel.file),
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
fn ahead(arrives: Day, departure: Day) -> String {
    match departure.days_since(arrives) {
        0 => "the day of departure".to_owned(),
        days @ 1.. => format!("{} before departure", count_days(days)),
        days => format!("{} after departure", count_days(days)),
    }
}

fn count_days(days: i64) -> String {
    count(usize::try_from(days.unsigned_abs()).unwrap_or(usize::MAX), "day")
}

/// What is bought: the supplier's number and words.
pub(crate) fn item(item: &Item) -> String {
    format!("{}, {}", item.number, item.description)
}

/// How many pieces, on which tool, and when they are there: `2 pieces`, `1
/// piece on LC-1 (long-handled line cutter)`, `work on 2 of the 3 PL-1
/// (pliers)`.
pub(crate) fn pieces(shown: &Shown<'_>, vessel: &VesselQuote, bought: &Bought) -> String {
    let gives = &shown.item(bought.offer).gives;
    let noun = match gives {
        Gives::Tools(given) if given.len() > 1 => "set",
        _ => "piece",
    };
    let pieces = count(bought.pieces as usize, noun);
    let old = bought.on.and_then(|tool| vessel.before.vessel.kit.get(tool));
    let Some(old) = old else { return pieces };
    let kind = &shown.vocabulary.kind(old.kind).name;
    let which = format!("{} ({kind})", which(vessel, bought, old));
    match gives {
        Gives::Service { .. } => format!("work on {which}"),
        _ => format!("{pieces} on {which}"),
    }
}

/// When a line is there, or the work is done.
pub(crate) fn arrival(shown: &Shown<'_>, vessel: &VesselQuote, bought: &Bought) -> String {
    let done = match shown.item(bought.offer).gives {
        Gives::Service { .. } => "done",
        _ => "there",
    };
    let ahead = ahead(bought.arrives, vessel.before.asked.departure);
    format!("{done} on {}, {ahead}", bought.arrives)
}

/// What a vessel's pieces are worth, of packs that others share.
pub(crate) fn share(shown: &Shown<'_>, bought: &Bought) -> String {
    format!("its share {} before tax", shown.money(bought.share))
}

/// The tool that is worked on, of a lot with how many of it.
fn which(vessel: &VesselQuote, bought: &Bought, old: &Tool) -> String {
    let new = bought.tools.first().and_then(|tool| vessel.after.vessel.kit.get(*tool));
    match new.map(|new| new.count) {
        Some(some) if old.count > 1 => format!("{some} of the {} {}", old.count, old.mark),
        _ => old.mark.clone(),
    }
}

/// A requirement with its clause; with the profile's id where several
/// profiles judge the vessel, and told apart where it is only recommended.
pub(crate) fn asked(check: &Check, cured: Cured) -> String {
    let asked = requirement(check, cured);
    let mut clause = asked.clause.clone();
    if check.judgements.len() > 1 {
        clause.push_str(&format!("; {}", check.judgements[cured.judgement].profile.id));
    }
    if asked.level == Level::Recommended {
        clause.push_str("; recommended");
    }
    format!("{} ({clause})", asked.title)
}

/// How far one supplier alone would come.
pub(crate) fn alone(shown: &Shown<'_>, alone: &Alone) -> String {
    let supplier = &shown.catalogues[alone.catalogue].supplier;
    let vessels = count(shown.quote.vessels.len(), "vessel");
    let mut text = format!("{supplier}: {} of {vessels} ready", alone.ready);
    if alone.open > 0 {
        text.push_str(&format!(", {} open", count(alone.open, "requirement")));
    }
    if alone.taken {
        text.push_str("; this quote");
    }
    text
}

/// Names of several vessels, or how many they are.
fn names(shown: &Shown<'_>, vessels: &[usize]) -> String {
    const MOST_NAMED: usize = 3;
    if vessels.len() > MOST_NAMED {
        return count(vessels.len(), "vessel");
    }
    let name = |index: &usize| shown.quote.vessels[*index].before.vessel.name.clone();
    figures::all_of(&vessels.iter().map(name).collect::<Vec<_>>())
}

/// What the vessel was before the order.
pub(crate) fn before(vessel: &VesselQuote) -> Option<String> {
    let (before, after) = (vessel.before.verdict, vessel.after.verdict);
    match before == after {
        true if vessel.lines.is_empty() => None,
        true => Some(format!("{} before this order either", pages::verdict(before))),
        false => Some(format!("{} before this order", pages::verdict(before))),
    }
}
