//! The single tool that would lift most situations, in the JSON of options.
//!
//! Imports `options`, `model` and `measure`.

use super::super::Shown;
use super::situation;
use crate::options::{Lift, Lifted, Priced};
use crate::report::json::{DEEDS, MoneyJson, deed};
use schemars::JsonSchema;
use serde::Serialize;

/// The single tool that would lift most situations.
#[derive(Debug, JsonSchema, Serialize)]
#[schemars(rename = "Lift")]
pub(super) struct LiftJson {
    /// For people; its wording may change.
    text: String,
    /// What is to be done.
    #[schemars(extend("enum" = DEEDS))]
    deed: &'static str,
    /// What it lifts.
    situations: Vec<LiftedJson>,
    /// What it costs; null without a catalogue that has one.
    price: Option<PriceJson>,
}

/// A situation that is lifted.
#[derive(Debug, JsonSchema, Serialize)]
#[schemars(rename = "Lifted")]
struct LiftedJson {
    /// Its id.
    id: String,
    /// True for what goes along with the others.
    along: bool,
    /// The best open choice before, from 0; null where none was.
    from: Option<usize>,
    /// The best open choice then.
    to: usize,
}

/// The cheapest item that does as much.
#[derive(Debug, JsonSchema, Serialize)]
#[schemars(rename = "Priced")]
struct PriceJson {
    /// The supplier's name.
    supplier: String,
    /// The number under which it is ordered.
    number: String,
    /// What it is, in words.
    description: String,
    /// The fewest sold.
    packs: u32,
    /// How many pieces a pack holds.
    pack: u32,
    /// For these packs, without delivery and tax.
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
