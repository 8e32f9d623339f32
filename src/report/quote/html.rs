//! A quote as one self-contained page of HTML.
//!
//! Imports `quote` and `model`, and the frame of every page.

use super::{Shown, finding, requirement};
use crate::quote::{SupplierOrder, VesselQuote};
use crate::report::audit::html::STYLE;
use crate::report::html::{document, prose, shown as safe, verdict};
use crate::report::words::{self, fleet};
use maud::{Markup, html};

/// The quote as one document.
pub fn html(shown: &Shown<'_>) -> String {
    let quote = shown.quote;
    let body = html! {
        main {
            h1 { "Quote: " (shown.money(quote.cost.total)) }
            @if let Some(customer) = shown.customer { p { "For " (safe(customer)) } }
            p { (prose(&format!("Ordered on {}; {}.", quote.ordered, words::quote::bound(shown)))) }
            @for order in &quote.orders { (supplier(shown, order)) }
            @for (index, one) in quote.vessels.iter().enumerate() { (vessel(shown, index, one)) }
            @for refusal in shown.refused {
                p { "Not read: " (safe(&refusal.to_string())) }
            }
            @for left_out in shown.left_out {
                p {
                    "Record not laid over: " (safe(&left_out.file)) ": "
                    (safe(&fleet::left_out(left_out)))
                }
            }
            p { (words::CAUTION) }
            p { (words::FOOT) }
        }
    };
    document("Quote", STYLE, &body)
}

fn supplier(shown: &Shown<'_>, order: &SupplierOrder) -> Markup {
    let catalogue = &shown.catalogues[order.catalogue];
    let cost = order.cost;
    html! {
        h2 { "From " (safe(&catalogue.supplier)) }
        table {
            tr { th { "Number" } th { "What" } th { "Packs" } th { "Price" } th { "Sum" } }
            @for line in &order.lines {
                @let item = &catalogue.items[line.item];
                tr {
                    td { (safe(&item.number)) }
                    td { (safe(&item.description)) }
                    td { (line.packs) }
                    td { (shown.money(item.price)) }
                    td { (shown.money(line.sum)) }
                }
            }
        }
        p {
            "Goods " (shown.money(cost.goods)) ", delivery " (shown.money(cost.delivery))
            ", tax of " (catalogue.tax) " " (shown.money(cost.tax)) ", total "
            (shown.money(cost.total))
            (prose(&format!("; all there on {}.", order.arrives)))
        }
    }
}

fn vessel(shown: &Shown<'_>, index: usize, vessel: &VesselQuote) -> Markup {
    let after = &vessel.after;
    html! {
        h2 { (safe(&after.vessel.name)) ": " (verdict(after.verdict)) }
        p { (prose(&format!("Leaves on {}.", after.asked.departure))) }
        @if let Some(note) = words::quote::departure(shown, index, vessel) { p { (prose(&note)) } }
        @for told in words::quote::beyond(vessel) { p { (prose(&told)) } }
        ul {
            @for line in &vessel.lines {
                li {
                    (line.pieces) " of " (safe(&shown.item(line.offer).number)) ": "
                    @for cured in &line.cures {
                        (safe(&requirement(after, *cured).title.to_string())) " ("
                        (safe(&requirement(after, *cured).clause)) ") "
                    }
                }
            }
            @for unmet in &vessel.unmet {
                @let words = shown.words(after, unmet.finding.judgement);
                li {
                    "Open: " (safe(&requirement(after, unmet.finding).title.to_string()))
                    @if let Some(finding) = finding(after, unmet.finding) {
                        ": " (prose(&words.first_reason(finding)))
                    }
                }
            }
        }
    }
}
