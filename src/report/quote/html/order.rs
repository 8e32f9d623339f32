//! The order as it goes to each supplier, in HTML, and what it adds up to.
//!
//! Imports `quote` and `model`.

use super::super::Shown;
use crate::model::catalogue::Catalogue;
use crate::quote::{Cost, OrderLine, SupplierOrder};
use crate::report::render::base::{prose, shown as safe};
use crate::report::words::{pages, quote as said};
use maud::{Markup, html};

/// The orders, and all of them together where there are several.
pub(super) fn all(shown: &Shown<'_>) -> Markup {
    let orders = &shown.quote.orders;
    html! {
        @for order in orders { (supplier(shown, order)) }
        @if orders.len() > 1 {
            section.part {
                h2 { "All orders together" }
                table.goods {
                    tfoot { (sums(shown, shown.quote.cost, "Delivery", "Tax", 1)) }
                }
            }
        }
    }
}

fn supplier(shown: &Shown<'_>, order: &SupplierOrder) -> Markup {
    let catalogue = &shown.catalogues[order.catalogue];
    let delivery = pages::capital(&said::delivery(shown, catalogue));
    let tax = pages::capital(&said::tax(catalogue));
    html! {
        section.part {
            h2 { "Order from " (safe(&said::supplier(catalogue))) }
            table class="goods ordered" {
                colgroup { col.number; col.what; col.packs; col.price; col.sum; }
                thead {
                    tr {
                        th scope="col" { "Number" }
                        th scope="col" { "What" }
                        th.figure scope="col" { "Packs" }
                        th.figure scope="col" { "Unit price" }
                        th.figure scope="col" { "Sum" }
                    }
                }
                tbody { @for line in &order.lines { (row(shown, catalogue, line)) } }
                tfoot { (sums(shown, order.cost, &delivery, &tax, 4)) }
            }
            p { (prose(&pages::sentence(&said::by_when(order)))) }
            p { (prose(&said::terms(catalogue))) }
        }
    }
}

fn row(shown: &Shown<'_>, catalogue: &Catalogue, line: &OrderLine) -> Markup {
    let item = &catalogue.items[line.item];
    html! {
        tr {
            th scope="row" { (safe(&item.number)) }
            td {
                (prose(&item.description))
                @if let Some(rest) = said::left_over(line, item) { p.soft { (prose(&rest)) } }
            }
            td.figure data-as="Packs" {
                (line.packs) @if item.pack > 1 { " of " (item.pack) }
            }
            td.figure data-as="Unit price" { (shown.money(item.price)) }
            td.figure data-as="Sum" { (shown.money(line.sum)) }
        }
    }
}

/// Goods, delivery, tax and total, below so many columns of words.
fn sums(shown: &Shown<'_>, cost: Cost, delivery: &str, tax: &str, columns: u8) -> Markup {
    let rows =
        [("Goods", cost.goods), (delivery, cost.delivery), (tax, cost.tax), ("Total", cost.total)];
    html! {
        @for (text, amount) in rows {
            tr {
                th scope="row" colspan=(columns) { (prose(text)) }
                td.figure { (shown.money(amount)) }
            }
        }
    }
}
