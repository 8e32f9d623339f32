//! The single tool that would lift most situations, in the JSON of options.
//!
//! Imports `options`, `model` and `measure`.

use super::super::Shown;
use super::situation;
use crate::options::{Lift, Lifted, Priced};
use crate::report::json::deed;
use crate::report::quote::MoneyJson;
use serde::Serialize;

#[derive(Debug, Serialize)]
pub(super) struct LiftJson {
    text: String,
    deed: &'static str,
    situations: Vec<LiftedJson>,
    price: Option<PriceJson>,
}

#[derive(Debug, Serialize)]
struct LiftedJson {
    id: String,
    along: bool,
    from: Option<usize>,
    to: usize,
}

#[derive(Debug, Serialize)]
struct PriceJson {
    supplier: String,
    number: String,
    description: String,
    packs: u32,
    pack: u32,
    price: MoneyJson,
}

impl LiftJson {
    pub(super) fn new(shown: &Shown<'_>, lift: &Lift) -> Self {
        let one = |lifted: &Lifted| LiftedJson {
            id: situation(shown.practice, lifted.situation, lifted.along).id.clone(),
            along: lifted.along,
            from: lifted.from,
            to: lifted.to,
        };
        Self {
            text: shown.lift().unwrap_or_default(),
            deed: deed(lift.step.deed),
            situations: lift.lifted.iter().map(one).collect(),
            price: lift.price.as_ref().and_then(|priced| PriceJson::new(shown, priced)),
        }
    }
}

impl PriceJson {
    fn new(shown: &Shown<'_>, priced: &Priced) -> Option<Self> {
        let catalogue = shown.catalogues.get(priced.catalogue)?;
        let item = catalogue.items.get(priced.item)?;
        Some(Self {
            supplier: catalogue.supplier.clone(),
            number: item.number.clone(),
            description: item.description.clone(),
            packs: priced.packs,
            pack: item.pack,
            price: MoneyJson::new(priced.price, catalogue.currency),
        })
    }
}
