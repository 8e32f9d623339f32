//! A quote as one JSON document: the format `kitmuster/quote/1`.
//!
//! The types are the format's own. Documented in DEVELOPERS.md. What is to be
//! written into the inventories comes from `entries` beside this.

mod basket;
mod vessel;

use super::Shown;
use crate::measure::{Currency, Money};
use crate::model::finding::Verdict;
use crate::quote::{Alone, Bound, Cost, Explained, Measuring, Quote};
use crate::report::audit::json::{LeftOutJson, RefusedJson};
use crate::report::json::{ProgramJson, harmless, verdict};
use basket::{CatalogueJson, ItemJson, SupplierJson};
use serde::Serialize;
use vessel::{RequirementJson, VesselQuoteJson};

/// The name and version of the format.
const SCHEMA: &str = "kitmuster/quote/1";

/// The quote as pretty-printed JSON, ending in a line feed.
///
/// # Errors
/// None in practice: the types of the format all have a JSON form.
pub fn json(shown: &Shown<'_>) -> Result<String, serde_json::Error> {
    let mut text = serde_json::to_string_pretty(&QuoteJson::new(shown))?;
    text.push('\n');
    Ok(harmless(text))
}

#[derive(Serialize)]
struct QuoteJson {
    schema: &'static str,
    program: ProgramJson,
    customer: Option<String>,
    ordered: String,
    currency: &'static str,
    with_recommended: bool,
    one_supplier: bool,
    verdict: &'static str,
    totals: TotalsJson,
    cost: CostJson,
    bound: BoundJson,
    holds: Option<String>,
    catalogues: Vec<CatalogueJson>,
    orders: Vec<SupplierJson>,
    vessels: Vec<VesselQuoteJson>,
    compared: Vec<AloneJson>,
    measuring: Option<MeasuringJson>,
    explained: Option<ExplainedJson>,
    refused: Vec<RefusedJson>,
    records_left_out: Vec<LeftOutJson>,
}

#[derive(Serialize)]
struct TotalsJson {
    vessels: usize,
    refused: usize,
    before: CountsJson,
    after: CountsJson,
}

#[derive(Serialize)]
struct CountsJson {
    ready: usize,
    not_ready: usize,
    cannot_tell: usize,
}

/// An amount, with every digit of its currency.
#[derive(Debug, Serialize)]
pub(in crate::report) struct MoneyJson {
    amount: String,
    currency: &'static str,
}

#[derive(Serialize)]
struct CostJson {
    goods: MoneyJson,
    delivery: MoneyJson,
    tax: MoneyJson,
    total: MoneyJson,
}

#[derive(Serialize)]
struct BoundJson {
    state: &'static str,
    #[serde(skip_serializing_if = "Option::is_none")]
    least: Option<MoneyJson>,
    text: String,
}

#[derive(Serialize)]
struct AloneJson {
    supplier: String,
    ready: usize,
    open: usize,
    cost: CostJson,
    taken: bool,
}

#[derive(Serialize)]
struct MeasuringJson {
    tools: Vec<ToMeasureJson>,
    total: MoneyJson,
    saves: MoneyJson,
}

#[derive(Serialize)]
struct ToMeasureJson {
    file: String,
    vessel: String,
    tool: String,
    kind: String,
}

#[derive(Serialize)]
struct ExplainedJson {
    dearest: Option<DearestJson>,
    costliest: Option<CostliestJson>,
}

#[derive(Serialize)]
struct DearestJson {
    #[serde(flatten)]
    item: ItemJson,
    price: MoneyJson,
    total_without: Option<MoneyJson>,
}

#[derive(Serialize)]
struct CostliestJson {
    #[serde(flatten)]
    requirement: RequirementJson,
    total_without: MoneyJson,
    costs: MoneyJson,
}

impl QuoteJson {
    fn new(shown: &Shown<'_>) -> Self {
        let quote = shown.quote;
        let orders = quote.orders.iter();
        let vessels = quote.vessels.iter().enumerate();
        Self {
            schema: SCHEMA,
            program: ProgramJson::this(),
            customer: shown.customer.map(str::to_owned),
            ordered: quote.ordered.to_string(),
            currency: quote.currency.code(),
            with_recommended: quote.with_recommended,
            one_supplier: shown.one_supplier,
            verdict: verdict(quote.verdict()),
            totals: TotalsJson::new(shown),
            cost: CostJson::new(quote.cost, quote.currency),
            bound: BoundJson::new(shown),
            holds: quote.holds.map(|day| day.to_string()),
            catalogues: shown.catalogues.iter().map(CatalogueJson::new).collect(),
            orders: orders.map(|order| SupplierJson::new(shown, order)).collect(),
            vessels: vessels.map(|(i, vessel)| VesselQuoteJson::new(shown, i, vessel)).collect(),
            compared: quote.suppliers.iter().map(|alone| AloneJson::new(shown, alone)).collect(),
            measuring: quote.measuring.as_ref().map(|m| MeasuringJson::new(shown, m)),
            explained: quote.explained.as_ref().map(|e| ExplainedJson::new(shown, e)),
            refused: shown.refused.iter().map(RefusedJson::new).collect(),
            records_left_out: shown.left_out.iter().map(LeftOutJson::new).collect(),
        }
    }
}

impl TotalsJson {
    fn new(shown: &Shown<'_>) -> Self {
        let vessels = &shown.quote.vessels;
        Self {
            vessels: vessels.len(),
            refused: shown.refused.len(),
            before: CountsJson::new(vessels.iter().map(|vessel| vessel.before.verdict)),
            after: CountsJson::new(vessels.iter().map(|vessel| vessel.after.verdict)),
        }
    }
}

impl CountsJson {
    fn new(verdicts: impl Iterator<Item = Verdict>) -> Self {
        let mut counts = Self { ready: 0, not_ready: 0, cannot_tell: 0 };
        for verdict in verdicts {
            match verdict {
                Verdict::Ready => counts.ready += 1,
                Verdict::NotReady => counts.not_ready += 1,
                Verdict::CannotTell => counts.cannot_tell += 1,
            }
        }
        counts
    }
}

impl MoneyJson {
    /// The amount in its currency.
    pub(in crate::report) fn new(amount: Money, currency: Currency) -> Self {
        Self { amount: amount.show(currency), currency: currency.code() }
    }

    fn of(quote: &Quote, amount: Money) -> Self {
        Self::new(amount, quote.currency)
    }
}

impl CostJson {
    fn new(cost: Cost, currency: Currency) -> Self {
        let money = |amount| MoneyJson::new(amount, currency);
        Self {
            goods: money(cost.goods),
            delivery: money(cost.delivery),
            tax: money(cost.tax),
            total: money(cost.total),
        }
    }
}

impl BoundJson {
    fn new(shown: &Shown<'_>) -> Self {
        let (state, least) = match shown.quote.bound {
            Bound::Cheapest => ("cheapest", None),
            Bound::AtLeast(least) => ("at-least", Some(MoneyJson::of(shown.quote, least))),
        };
        Self { state, least, text: crate::report::words::quote::bound(shown) }
    }
}

impl AloneJson {
    fn new(shown: &Shown<'_>, alone: &Alone) -> Self {
        Self {
            supplier: shown.catalogues[alone.catalogue].supplier.clone(),
            ready: alone.ready,
            open: alone.open,
            cost: CostJson::new(alone.cost, shown.quote.currency),
            taken: alone.taken,
        }
    }
}

impl MeasuringJson {
    fn new(shown: &Shown<'_>, measuring: &Measuring) -> Self {
        let tools = measuring.tools.iter().filter_map(|(vessel, tool)| {
            let vessel = shown.quote.vessels.get(*vessel)?;
            let tool = vessel.before.vessel.kit.get(*tool)?;
            Some(ToMeasureJson {
                file: vessel.file.to_string(),
                vessel: vessel.before.vessel.name.clone(),
                tool: tool.mark.clone(),
                kind: shown.vocabulary.kind(tool.kind).id.clone(),
            })
        });
        Self {
            tools: tools.collect(),
            total: MoneyJson::of(shown.quote, measuring.total),
            saves: MoneyJson::of(shown.quote, measuring.saves),
        }
    }
}

impl ExplainedJson {
    fn new(shown: &Shown<'_>, explained: &Explained) -> Self {
        let money = |amount| MoneyJson::of(shown.quote, amount);
        let dearest = explained.dearest.as_ref().map(|dearest| DearestJson {
            item: ItemJson::new(shown, dearest.offer),
            price: money(dearest.price),
            total_without: dearest.without.map(money),
        });
        let costliest = explained.costliest.as_ref().and_then(|costliest| {
            let (vessel, cured) = costliest.at;
            let check = &shown.quote.vessels.get(vessel)?.after;
            Some(CostliestJson {
                requirement: RequirementJson::new(shown, check, cured),
                total_without: money(costliest.without),
                costs: money(costliest.costs),
            })
        });
        Self { dearest, costliest }
    }
}
