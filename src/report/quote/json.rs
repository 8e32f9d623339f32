//! A quote as one JSON document: the format `kitmuster/quote/1`.
//!
//! The types are the format's own. Documented in DEVELOPERS.md. What is to be
//! written into the inventories comes from `entries` beside this.

mod basket;
mod vessel;

use super::Shown;
use crate::measure::{Currency, Money};
use crate::model::finding::Verdict;
use crate::model::stable::stable_words;
use crate::quote::{Alone, Bound, Cost, Explained, Measuring, Quote};
use crate::report::audit::json::{LeftOutJson, RefusedJson};
use crate::report::json::{MoneyJson, ProgramJson, VERDICTS, harmless, verdict};
use basket::{CatalogueJson, ItemJson, SupplierJson};
use schemars::JsonSchema;
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

/// The cheapest order that makes vessels ready.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "Quote")]
pub(in crate::report) struct QuoteJson {
    /// The name and version of the format.
    #[schemars(extend("const" = SCHEMA))]
    schema: &'static str,
    /// The program that wrote it.
    program: ProgramJson,
    /// For whom, as given.
    customer: Option<String>,
    /// The day of the order.
    #[schemars(extend("format" = "date"))]
    ordered: String,
    /// Its code of ISO 4217.
    currency: &'static str,
    /// Whether recommendations are met too.
    with_recommended: bool,
    /// Whether all comes from one supplier.
    one_supplier: bool,
    /// The worst of all vessels after the order.
    #[schemars(extend("enum" = VERDICTS))]
    verdict: &'static str,
    /// What it adds up to.
    totals: TotalsJson,
    /// What it costs.
    cost: CostJson,
    /// Whether anything cheaper does the same.
    bound: BoundJson,
    /// The last day on which every price holds.
    #[schemars(extend("format" = "date"))]
    holds: Option<String>,
    /// All that were given.
    catalogues: Vec<CatalogueJson>,
    /// One for each supplier of whom anything is ordered.
    orders: Vec<SupplierJson>,
    /// The vessels.
    vessels: Vec<VesselQuoteJson>,
    /// What each supplier alone could do, with `--one-supplier`.
    compared: Vec<AloneJson>,
    /// What measuring could save.
    measuring: Option<MeasuringJson>,
    /// Why this basket, with `--explain`.
    explained: Option<ExplainedJson>,
    /// Files that were refused.
    refused: Vec<RefusedJson>,
    /// Inspection records that were laid over no vessel.
    records_left_out: Vec<LeftOutJson>,
}

/// Counts of vessels.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "QuoteTotals")]
struct TotalsJson {
    /// How many were quoted.
    vessels: usize,
    /// How many files were refused.
    refused: usize,
    /// Before the order.
    before: CountsJson,
    /// After it.
    after: CountsJson,
}

/// Vessels by verdict.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "Counts")]
struct CountsJson {
    /// How many are ready.
    ready: usize,
    /// How many are not ready.
    not_ready: usize,
    /// Of how many nobody can tell.
    cannot_tell: usize,
}

/// What something costs.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "Cost")]
struct CostJson {
    /// The goods.
    goods: MoneyJson,
    /// Their delivery.
    delivery: MoneyJson,
    /// The tax on both.
    tax: MoneyJson,
    /// All of it.
    total: MoneyJson,
}

/// Whether anything cheaper does the same.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "Bound")]
struct BoundJson {
    /// `at-least`: the search was stopped.
    #[schemars(extend("enum" = BOUNDS))]
    state: &'static str,
    /// Nothing below this does.
    #[serde(skip_serializing_if = "Option::is_none")]
    least: Option<MoneyJson>,
    /// For people; its wording may change.
    text: String,
}

/// What one supplier alone could do.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "Alone")]
struct AloneJson {
    /// The supplier's name.
    supplier: String,
    /// Vessels that are ready then.
    ready: usize,
    /// Required findings that stay open.
    open: usize,
    /// What it costs.
    cost: CostJson,
    /// Whether this one was taken.
    taken: bool,
}

/// Tools of which a fact is missing.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "Measuring")]
struct MeasuringJson {
    /// What to measure.
    tools: Vec<ToMeasureJson>,
    /// What the order comes to if all of them measure well.
    total: MoneyJson,
    /// So much less than this one.
    saves: MoneyJson,
}

/// A tool to measure.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "ToMeasure")]
struct ToMeasureJson {
    /// The file, as it was given.
    file: String,
    /// The vessel's name.
    vessel: String,
    /// The mark of the tool.
    tool: String,
    /// The kind, by its id.
    kind: String,
}

/// Why this basket.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "Explained")]
struct ExplainedJson {
    /// The dearest item.
    dearest: Option<DearestJson>,
    /// The requirement that costs most.
    costliest: Option<CostliestJson>,
}

/// The dearest item.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "Dearest")]
struct DearestJson {
    #[serde(flatten)]
    item: ItemJson,
    /// What it costs in this order.
    price: MoneyJson,
    /// What the order would come to without it; null where nothing makes up for it.
    total_without: Option<MoneyJson>,
}

/// The requirement that costs most.
#[derive(JsonSchema, Serialize)]
#[schemars(rename = "Costliest")]
struct CostliestJson {
    #[serde(flatten)]
    requirement: RequirementJson,
    /// What the order would come to without it.
    total_without: MoneyJson,
    /// What it costs.
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

/// An amount in the currency of the quote.
fn money(quote: &Quote, amount: Money) -> MoneyJson {
    MoneyJson::new(amount, quote.currency)
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
        let bound = shown.quote.bound;
        let least = match bound {
            Bound::Cheapest => None,
            Bound::AtLeast(least) => Some(money(shown.quote, least)),
        };
        Self { state: bound_state(bound), least, text: crate::report::words::quote::bound(shown) }
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
            total: money(shown.quote, measuring.total),
            saves: money(shown.quote, measuring.saves),
        }
    }
}

impl ExplainedJson {
    fn new(shown: &Shown<'_>, explained: &Explained) -> Self {
        let money = |amount| money(shown.quote, amount);
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

stable_words! {
    fn bound_state(Bound) in BOUNDS {
        Bound::Cheapest => "cheapest",
        Bound::AtLeast(_) => "at-least",
    }
}
