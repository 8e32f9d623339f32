//! The order as it goes to a supplier: packs, what is left of them, delivery,
//! tax, dates and terms.
//!
//! Imports `quote`, `model` and `measure` only.

use crate::measure::Money;
use crate::model::catalogue::{Catalogue, Item};
use crate::quote::{Cost, OrderLine, SupplierOrder};
use crate::report::Locale;
use crate::report::subject::QuoteShown as Shown;

/// Who supplies, and from where.
pub(crate) fn supplier(catalogue: &Catalogue) -> String {
    match &catalogue.port {
        Some(port) => format!("{}, {port}", catalogue.supplier),
        None => catalogue.supplier.clone(),
    }
}

/// How many packs at which price, and what of them is used.
pub(crate) fn packs(shown: &Shown<'_>, line: &OrderLine, item: &Item) -> String {
    let (price, locale) = (shown.money(item.price), shown.locale);
    let told = match item.pack {
        1 => locale.quote_at_price(&line.packs, &price),
        pack => locale.quote_packs_at_price(line.packs, &pack, &price),
    };
    match left_over(line, item, locale) {
        Some(rest) => format!("{told}; {rest}"),
        None => told,
    }
}

/// What is not used of the packs, and why it is bought even so.
pub(crate) fn left_over(line: &OrderLine, item: &Item, locale: Locale) -> Option<String> {
    if line.used == 0 {
        return Some(locale.quote_not_needed().to_owned());
    }
    let told = match line.spare(item.pack) {
        0 => return None,
        spare => locale.quote_left_over(&line.used, &spare),
    };
    let needed = line.used.div_ceil(item.pack.max(1));
    let more = line.packs.saturating_sub(needed.max(item.least));
    let why = if more > 0 {
        locale.quote_for_free_delivery(more)
    } else if item.least > needed {
        locale.quote_least_sold(&item.least)
    } else {
        return Some(told);
    };
    Some(format!("{told}; {why}"))
}

/// What an order adds up to, row by row: one supplier's, or all of them.
pub(crate) fn sums(
    shown: &Shown<'_>,
    cost: Cost,
    catalogue: Option<&Catalogue>,
) -> [(String, Money); 4] {
    let locale = shown.locale;
    let free_from = catalogue.and_then(|catalogue| catalogue.delivery.free_from);
    let delivery = match free_from {
        Some(from) => locale.quote_delivery_free_from(&shown.money(from)),
        None => locale.quote_delivery().to_owned(),
    };
    let tax = match catalogue {
        Some(catalogue) => locale.quote_tax_of(&catalogue.tax.to_string().replace('%', " %")),
        None => locale.quote_tax().to_owned(),
    };
    [
        (locale.quote_goods().to_owned(), cost.goods),
        (delivery, cost.delivery),
        (tax, cost.tax),
        (locale.quote_total().to_owned(), cost.total),
    ]
}

/// By when an order is there, and until when its prices hold.
pub(crate) fn by_when(order: &SupplierOrder, locale: Locale) -> String {
    match order.holds {
        Some(last) => locale.quote_all_there_until(&order.arrives, &last),
        None => locale.quote_all_there(&order.arrives),
    }
}

/// What the supplier writes about terms.
pub(crate) fn terms(catalogue: &Catalogue, locale: Locale) -> String {
    locale.quote_terms(&catalogue.terms.as_deref().unwrap_or(locale.quote_terms_open()))
}
