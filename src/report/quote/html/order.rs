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
                h2 { (shown.locale.quote_all_orders()) }
                table.goods {
                    tfoot { (sums(shown, shown.quote.cost, None, 1)) }
                }
            }
        }
    }
}

fn supplier(shown: &Shown<'_>, order: &SupplierOrder) -> Markup {
    let catalogue = &shown.catalogues[order.catalogue];
    let locale = shown.locale;
    html! {
        section.part {
            h2 { (safe(&locale.quote_order_from(&said::supplier(catalogue)))) }
            table class="goods ordered" {
                colgroup { col.number; col.what; col.packs; col.price; col.sum; }
                thead {
                    tr {
                        th scope="col" { (locale.quote_head_number()) }
                        th scope="col" { (locale.quote_head_what()) }
                        th.figure scope="col" { (locale.quote_head_packs()) }
                        th.figure scope="col" { (locale.quote_head_unit_price()) }
                        th.figure scope="col" { (locale.quote_head_sum()) }
                    }
                }
                tbody { @for line in &order.lines { (row(shown, catalogue, line)) } }
                tfoot { (sums(shown, order.cost, Some(catalogue), 4)) }
            }
            p { (prose(&pages::sentence(&said::by_when(order, locale)))) }
            p { (prose(&said::terms(catalogue, locale))) }
        }
    }
}

fn row(shown: &Shown<'_>, catalogue: &Catalogue, line: &OrderLine) -> Markup {
    let (item, locale) = (&catalogue.items[line.item], shown.locale);
    html! {
        tr {
            th scope="row" { (safe(&item.number)) }
            td {
                (prose(&item.description))
                @if let Some(rest) = said::left_over(line, item, locale) { p.soft { (prose(&rest)) } }
            }
            td.figure data-as=(locale.quote_head_packs()) {
                @if item.pack > 1 { (locale.quote_packs_of(&line.packs, &item.pack)) }
                @else { (line.packs) }
            }
            td.figure data-as=(locale.quote_head_unit_price()) { (shown.money(item.price)) }
            td.figure data-as=(locale.quote_head_sum()) { (shown.money(line.sum)) }
        }
    }
}

/// Goods, delivery, tax and total, below so many columns of words.
fn sums(shown: &Shown<'_>, cost: Cost, catalogue: Option<&Catalogue>, columns: u8) -> Markup {
    html! {
        @for (text, amount) in said::sums(shown, cost, catalogue) {
            tr {
                th scope="row" colspan=(columns) { (prose(&pages::capital(&text))) }
                td.figure { (shown.money(amount)) }
            }
        }
    }
}
