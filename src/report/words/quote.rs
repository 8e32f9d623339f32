//! Words for a quote: the verdict on the order, what is bought and what it is
//! for, what stands in the way of an offer, what the order adds up to.
//!
//! Imports `quote`, `model` and `measure` only. Why this basket is told in
//! `quote/why.rs`.

mod why;

pub(crate) use why::{measuring, otherwise, reasons};

use super::fleet::count;
use super::{figures, pages};
use crate::measure::Day;
use crate::model::catalogue::{Catalogue, Gives, Item};
use crate::model::check::Check;
use crate::model::finding::Verdict;
use crate::model::profile::Level;
use crate::model::vessel::Tool;
use crate::quote::{
    Alone, Bought, Bound, Cured, Hindrance, Nearest, OrderLine, Quote, SupplierOrder, Unmet,
    VesselQuote,
};
use crate::report::quote::{Shown, finding, requirement};

/// What stands beside a list of goods to be delivered.
pub(crate) const CHECK_GOODS: &str = "Check the goods when they are delivered: count them, \
    measure them and read their labels. This page rests on what the suppliers state; a tool \
    counts once it is aboard.";

/// What stands where a supplier writes no terms.
pub(crate) const NO_TERMS: &str = "to be agreed with the supplier";

/// What is told of a finding that goods do not settle.
pub(crate) const NO_GOODS: &str = "no goods settle this";

/// What is told of a finding for which nobody sells anything of the kind.
pub(crate) const NOTHING_NEAR: &str = "nothing on offer is of a kind that would do";

/// What is told of a rule that is known and not encoded.
pub(crate) const NOT_ENCODED: &str = "known, not encoded; no order settles it";

/// What is told of a vessel that has all that is asked.
pub(crate) const NEEDS_NOTHING: &str = "nothing needed";

/// Why there is no basket to explain.
pub(crate) const NO_BASKET: &str = "Nothing is ordered, so there is nothing to explain.";

/// What is told where no price ends.
pub(crate) const NO_END: &str = "no end is stated";

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
        (_, before) => format!("; {before} ready without it"),
    };
    let holds = match quote.holds {
        Some(day) => format!("; prices hold until {day}"),
        None => "; no end of these prices is stated".to_owned(),
    };
    format!("order of {}{holds}{before}", quote.ordered)
}

/// What was to be met, where that is more than what is required.
pub(crate) const WITH_RECOMMENDED: &str = "what is recommended was to be met too";

/// How good the basket is, in one clause.
pub(crate) fn bound(shown: &Shown<'_>) -> String {
    match short_of(shown) {
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

/// Why an item cannot be had in time.
pub(crate) fn hindrance(hindrance: Hindrance) -> String {
    match hindrance {
        Hindrance::OutOfStock { packs: 0 } => "out of stock".to_owned(),
        Hindrance::OutOfStock { packs } => {
            format!("not enough in stock: {}", count(packs as usize, "pack"))
        }
        Hindrance::Late { arrives, days } => {
            format!("arrives on {arrives}, {} after departure", count(days as usize, "day"))
        }
        Hindrance::PriceLapsed { held } => format!("the price held until {held}"),
    }
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

/// The day on which the vessel leaves, and where several things are bought for it, when
/// the last of them is there.
pub(crate) fn leaves(vessel: &VesselQuote) -> String {
    let departure = vessel.before.asked.departure;
    match vessel.lines.iter().map(|line| line.arrives).max() {
        Some(last) if vessel.lines.len() > 1 => {
            format!("{departure}; all for it is there on {last}, {}", ahead(last, departure))
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
pub(crate) fn ahead(arrives: Day, departure: Day) -> String {
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

/// How many pieces, and on which tool: `2 pieces`, `1 piece on LC-1
/// (long-handled line cutter)`, `work on 2 of the 3 PL-1 (pliers)`.
pub(crate) fn pieces(shown: &Shown<'_>, vessel: &VesselQuote, bought: &Bought) -> String {
    let pieces = count(bought.pieces as usize, "piece");
    let old = bought.on.and_then(|tool| vessel.before.vessel.kit.get(tool));
    let Some(old) = old else { return pieces };
    let kind = &shown.vocabulary.kind(old.kind).name;
    let which = format!("{} ({kind})", which(vessel, bought, old));
    match shown.item(bought.offer).gives {
        Gives::Service { .. } => format!("work on {which}"),
        _ => format!("{pieces} on {which}"),
    }
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

/// What is told of a finding that stays open.
#[derive(Debug, Clone)]
pub(crate) struct Open {
    /// Why, the nearest tool first.
    pub(crate) why: Vec<String>,
    /// What to do about it.
    pub(crate) remedy: Option<String>,
    /// The nearest offer and what it lacks, or that there is none.
    pub(crate) offer: String,
}

/// The most reasons of one finding that are told.
const MOST_REASONS: usize = 3;

/// Why a finding stays open.
pub(crate) fn open(shown: &Shown<'_>, vessel: &VesselQuote, unmet: &Unmet) -> Open {
    let (after, cured) = (&vessel.after, unmet.finding);
    let words = shown.words(after, cured.judgement);
    let found = finding(after, cured);
    let mut why: Vec<String> = Vec::new();
    for because in found.iter().flat_map(|finding| &finding.reasons) {
        let told = words.told(because);
        if !why.contains(&told) && why.len() < MOST_REASONS {
            why.push(told);
        }
    }
    let offer = match &unmet.nearest {
        Some(nearest) => near(shown, nearest, &words),
        None if !requirement(after, cured).wants_tools() => NO_GOODS.to_owned(),
        None => NOTHING_NEAR.to_owned(),
    };
    Open { why, remedy: found.and_then(|finding| words.remedy(finding, &[])), offer }
}

/// The nearest offer and what it lacks.
fn near(shown: &Shown<'_>, nearest: &Nearest, words: &super::Words<'_>) -> String {
    let lacks = nearest.lacks.iter().map(|reason| words.reason(reason));
    let hindrances = nearest.hindrances.iter().map(|one| hindrance(*one));
    let lacks: Vec<_> = lacks.chain(hindrances).collect();
    let supplier = &shown.catalogue(nearest.offer).supplier;
    let item = item(shown.item(nearest.offer));
    format!("nearest offer: {item}, from {supplier}: {}", lacks.join("; "))
}

/// Who supplies, and from where.
pub(crate) fn supplier(catalogue: &Catalogue) -> String {
    match &catalogue.port {
        Some(port) => format!("{}, {port}", catalogue.supplier),
        None => catalogue.supplier.clone(),
    }
}

/// How many packs at which price, and what of them is used.
pub(crate) fn packs(shown: &Shown<'_>, line: &OrderLine, item: &Item) -> String {
    let price = shown.money(item.price);
    let mut text = match item.pack {
        1 => format!("{} at {price}", line.packs),
        pack => format!("{} of {pack} at {price}", count(line.packs as usize, "pack")),
    };
    if let Some(rest) = left_over(line, item) {
        text.push_str(&format!("; {rest}"));
    }
    text
}

/// What is not used of the packs, and why it is bought even so.
pub(crate) fn left_over(line: &OrderLine, item: &Item) -> Option<String> {
    let spare = line.spare(item.pack);
    if line.used == 0 {
        return Some(
            "no vessel needs it: it lifts the goods to where delivery is free, which makes the \
             order cheaper"
                .to_owned(),
        );
    }
    let mut text = match spare {
        0 => return None,
        spare => format!("{} used, {spare} left over", line.used),
    };
    let needed = line.used.div_ceil(item.pack.max(1));
    let more = line.packs.saturating_sub(needed.max(item.least));
    if more > 0 {
        let lifts = if more == 1 { "lifts" } else { "lift" };
        text.push_str(&format!("; {more} of them only {lifts} the goods to free delivery"));
    } else if item.least > needed {
        text.push_str(&format!("; no fewer than {} are sold at once", item.least));
    }
    Some(text)
}

/// What delivery costs, and from which sum on it is free.
pub(crate) fn delivery(shown: &Shown<'_>, catalogue: &Catalogue) -> String {
    match catalogue.delivery.free_from {
        Some(from) => format!("delivery, free from {} of goods on", shown.money(from)),
        None => "delivery".to_owned(),
    }
}

/// Which tax is added to what.
pub(crate) fn tax(catalogue: &Catalogue) -> String {
    let rate = catalogue.tax.to_string().replace('%', " %");
    format!("tax, {rate} of goods and delivery, rounded once")
}

/// By when an order is there, and until when its prices hold.
pub(crate) fn by_when(order: &SupplierOrder) -> String {
    match order.holds {
        Some(day) => format!("all there on {}; these prices hold until {day}", order.arrives),
        None => format!("all there on {}; no end of these prices is stated", order.arrives),
    }
}

/// What the supplier writes about terms.
pub(crate) fn terms(catalogue: &Catalogue) -> String {
    format!("Terms: {}", catalogue.terms.as_deref().unwrap_or(NO_TERMS))
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
        true => Some(format!("{} before this order too", pages::verdict(before))),
        false => Some(format!("{} before this order", pages::verdict(before))),
    }
}
