//! Catalogues, items and the order from each supplier in the JSON of a quote.
//!
//! Imports `quote` and `model`.

use super::super::Shown;
use super::{CostJson, money};
use crate::model::catalogue::Catalogue;
use crate::quote::{Offer, OrderLine, SupplierOrder};
use crate::report::json::MoneyJson;
use schemars::JsonSchema;
use serde::Serialize;

/// A catalogue that was given.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "CatalogueOfQuote")]
pub(super) struct CatalogueJson {
    /// The supplier's name.
    supplier: String,
    /// The port.
    port: Option<String>,
    /// The file, as it was given.
    file: String,
    /// The tax on goods and delivery.
    tax_rate: String,
    /// Its terms, in words.
    terms: Option<String>,
}

/// An item, by what is needed to order it.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "Item")]
pub(super) struct ItemJson {
    /// The supplier's name.
    supplier: String,
    /// The number under which it is ordered.
    number: String,
    /// What it is, in words.
    description: String,
}

/// The order to one supplier.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "Order")]
pub(super) struct SupplierJson {
    /// The supplier's name.
    supplier: String,
    /// What is ordered.
    lines: Vec<OrderLineJson>,
    #[serde(flatten)]
    cost: CostJson,
    /// The tax on goods and delivery.
    tax_rate: String,
    /// The last day on which every price holds.
    #[schemars(extend("format" = "date"))]
    holds: Option<String>,
    /// The last of it.
    #[schemars(extend("format" = "date"))]
    arrives: String,
}

/// One line of an order.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "OrderLine")]
struct OrderLineJson {
    /// The number under which it is ordered.
    number: String,
    /// What it is, in words.
    description: String,
    /// How many packs.
    packs: u32,
    /// How many pieces a pack holds.
    pack: u32,
    /// How many pieces the vessels take.
    used: u32,
    /// How many are left over.
    left_over: u32,
    /// The price of a pack.
    unit_price: MoneyJson,
    /// Of all packs.
    sum: MoneyJson,
    /// The last day on which the price holds.
    #[schemars(extend("format" = "date"))]
    holds: Option<String>,
}

impl CatalogueJson {
    pub(super) fn new(catalogue: &Catalogue) -> Self {
        Self {
            supplier: catalogue.supplier.clone(),
            port: catalogue.port.clone(),
            file: catalogue.place.file.to_string(),
            tax_rate: catalogue.tax.to_string(),
            terms: catalogue.terms.clone(),
        }
    }
}

impl ItemJson {
    pub(super) fn new(shown: &Shown<'_>, offer: Offer) -> Self {
        let item = shown.item(offer);
        Self {
            supplier: shown.catalogue(offer).supplier.clone(),
            number: item.number.clone(),
            description: item.description.clone(),
        }
    }
}

impl SupplierJson {
    pub(super) fn new(shown: &Shown<'_>, order: &SupplierOrder) -> Self {
        let catalogue = &shown.catalogues[order.catalogue];
        Self {
            supplier: catalogue.supplier.clone(),
            lines: order.lines.iter().map(|l| OrderLineJson::new(shown, catalogue, l)).collect(),
            cost: CostJson::new(order.cost, shown.quote.currency),
            tax_rate: catalogue.tax.to_string(),
            holds: order.holds.map(|day| day.to_string()),
            arrives: order.arrives.to_string(),
        }
    }
}

impl OrderLineJson {
    fn new(shown: &Shown<'_>, catalogue: &Catalogue, line: &OrderLine) -> Self {
        let item = &catalogue.items[line.item];
        Self {
            number: item.number.clone(),
            description: item.description.clone(),
            packs: line.packs,
            pack: item.pack,
            used: line.used,
            left_over: line.spare(item.pack),
            unit_price: money(shown.quote, item.price),
            sum: money(shown.quote, line.sum),
            holds: item.holds.map(|day| day.to_string()),
        }
    }
}
