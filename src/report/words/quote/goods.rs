//! The order as it goes to a supplier: packs, what is left of them, delivery,
//! tax, dates and terms.
//!
//! Imports `quote` and `model` only.

use crate::model::catalogue::{Catalogue, Item};
use crate::quote::{OrderLine, SupplierOrder};
use crate::report::subject::QuoteShown as Shown;
use crate::report::words::fleet::count;

/// What stands where a supplier writes no terms.
const NO_TERMS: &str = "to be agreed with the supplier";

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
        None => format!("all there on {}; no last day is stated for these prices", order.arrives),
    }
}

/// What the supplier writes about terms.
pub(crate) fn terms(catalogue: &Catalogue) -> String {
    format!("Terms: {}", catalogue.terms.as_deref().unwrap_or(NO_TERMS))
}
