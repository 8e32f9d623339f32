//! The order as it goes to each supplier, and what it adds up to.
//!
//! Imports `quote` and `model`. Amounts stand below each other at the right.

use super::super::Shown;
use super::BODY;
use crate::model::catalogue::Catalogue;
use crate::quote::{Cost, SupplierOrder};
use crate::report::content::Tone;
use crate::report::render::lines::Page;
use crate::report::words::quote as said;

/// The orders, and all of them together where there are several.
pub(super) fn write(page: &mut Page, shown: &Shown<'_>) {
    let orders = &shown.quote.orders;
    orders.iter().for_each(|order| supplier(page, shown, order));
    if orders.len() > 1 {
        page.gap();
        page.prose(0, Tone::Strong, shown.locale.quote_all_orders());
        sums(page, shown, shown.quote.cost, None);
    }
}

fn supplier(page: &mut Page, shown: &Shown<'_>, order: &SupplierOrder) {
    let catalogue = &shown.catalogues[order.catalogue];
    page.gap();
    let heading = shown.locale.quote_order_from(&said::supplier(catalogue));
    page.prose(0, Tone::Strong, &heading);
    for line in &order.lines {
        let item = &catalogue.items[line.item];
        page.prose(BODY, Tone::Plain, &said::item(item));
        let packs = said::packs(shown, line, item);
        page.amount(BODY + 2, (&packs, Tone::Plain), &shown.money(line.sum));
    }
    sums(page, shown, order.cost, Some(catalogue));
    page.prose(BODY, Tone::Plain, &said::by_when(order, shown.locale));
    page.prose(BODY, Tone::Plain, &said::terms(catalogue, shown.locale));
}

fn sums(page: &mut Page, shown: &Shown<'_>, cost: Cost, catalogue: Option<&Catalogue>) {
    let rows = said::sums(shown, cost, catalogue);
    for (place, (text, amount)) in rows.iter().enumerate() {
        let tone = if place + 1 == rows.len() { Tone::Strong } else { Tone::Plain };
        page.amount(BODY, (text, tone), &shown.money(*amount));
    }
}
