//! Catalogues, items and the order from each supplier in the JSON of a quote.
//!
//! Imports `quote` and `model`.

use super::super::Shown;
use super::{CostJson, MoneyJson};
use crate::model::catalogue::Catalogue;
use crate::quote::{Offer, OrderLine, SupplierOrder};
use serde::Serialize;

#[derive(Serialize)]
pub(super) struct CatalogueJson {
    supplier: String,
    port: Option<String>,
    file: String,
    tax_rate: String,
    terms: Option<String>,
}

/// An item, by what is needed to order it.
#[derive(Serialize)]
pub(super) struct ItemJson {
    supplier: String,
    number: String,
    description: String,
}

#[derive(Serialize)]
pub(super) struct SupplierJson {
    supplier: String,
    lines: Vec<OrderLineJson>,
    #[serde(flatten)]
    cost: CostJson,
    tax_rate: String,
    holds: Option<String>,
    arrives: String,
}

#[derive(Serialize)]
struct OrderLineJson {
    number: String,
    description: String,
    packs: u32,
    pack: u32,
    used: u32,
    left_over: u32,
    unit_price: MoneyJson,
    sum: MoneyJson,
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
            unit_price: MoneyJson::of(shown.quote, item.price),
            sum: MoneyJson::of(shown.quote, line.sum),
            holds: item.holds.map(|day| day.to_string()),
        }
    }
}
