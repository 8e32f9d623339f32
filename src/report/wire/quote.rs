//! A quote as one JSON document: the format `kitmuster/quote/1`.
//!
//! Imports `quote`, what lies below, and words. A vessel's part stands in
//! `quote_vessel` beside this.

use super::form::{Day, Word, day, objects, word};
use super::parts::{Item, Money, Program, RecordLeftOut};
use super::quote_vessel::{RequirementOfQuote, VesselOfQuote, money};
use super::rows::Refused;
use super::text::document;
use crate::measure::Currency;
use crate::model::catalogue::Catalogue;
use crate::model::finding::Verdict;
use crate::model::vessel::Tool;
use crate::quote;
use crate::report::subject::QuoteShown;
use crate::report::words::quote as said;

/// The name and version of the format.
const SCHEMA: &str = "kitmuster/quote/1";

/// The quote as pretty-printed JSON, ending in a line feed.
///
/// # Errors
/// None in practice: the types of the format all have a JSON form.
pub fn quote(shown: &QuoteShown<'_>) -> Result<String, serde_json::Error> {
    document(&Quote::new(shown))
}

objects! {
    /// The cheapest order that makes vessels ready.
    pub(super) Quote(shown: &QuoteShown<'_>) {
        let quote = shown.quote;
        let orders = quote.orders.iter();
        let vessels = 0..quote.vessels.len();
        let alone = quote.suppliers.iter();
        let catalogues = shown.catalogues.iter();
        let left_out = shown.left_out.iter();
        /// The name and version of the format.
        #[schemars(extend("const" = SCHEMA))]
        schema: &'static str = SCHEMA,
        /// The program that wrote it.
        program: Program = Program::new(),
        /// For whom, as given.
        customer: Option<String> = shown.customer.map(str::to_owned),
        /// The day of the order.
        ordered: Day = day(quote.ordered),
        /// Its code of ISO 4217.
        currency: &'static str = quote.currency.code(),
        /// Whether recommendations are met too.
        with_recommended: bool = quote.with_recommended,
        /// Whether all comes from one supplier.
        one_supplier: bool = shown.one_supplier,
        /// The worst of all vessels after the order.
        verdict: Word<Verdict> = word(&quote.verdict()),
        /// What it adds up to.
        totals: QuoteTotals = QuoteTotals::new(shown),
        /// What it costs.
        cost: Cost = Cost::new(quote.cost, quote.currency),
        /// Whether anything cheaper does the same.
        bound: Bound = Bound::new(shown),
        /// The last day on which every price holds.
        holds: Option<Day> = quote.holds.map(day),
        /// All that were given.
        catalogues: Vec<CatalogueOfQuote> = catalogues.map(CatalogueOfQuote::new).collect(),
        /// One for each supplier of whom anything is ordered.
        orders: Vec<Order> = orders.map(|order| Order::new(shown, order)).collect(),
        /// The vessels.
        vessels: Vec<VesselOfQuote> = vessels.map(|at| VesselOfQuote::new(shown, at)).collect(),
        /// What each supplier alone could do, with `--one-supplier`.
        compared: Vec<Alone> = alone.map(|alone| Alone::new(shown, alone)).collect(),
        /// What measuring could save.
        measuring: Option<Measuring> = quote.measuring.as_ref().map(|m| Measuring::new(shown, m)),
        /// Why this basket, with `--explain`.
        explained: Option<Explained> = quote.explained.as_ref().map(|e| Explained::new(shown, e)),
        /// Files that were refused.
        refused: Vec<Refused> = shown.refused.iter().map(Refused::new).collect(),
        /// Inspection records that were laid over no vessel.
        records_left_out: Vec<RecordLeftOut> = left_out.map(|one| RecordLeftOut::new(one, shown.locale)).collect(),
    }

    /// Counts of vessels.
    QuoteTotals(shown: &QuoteShown<'_>) {
        let vessels = &shown.quote.vessels;
        /// How many were quoted.
        vessels: usize = vessels.len(),
        /// How many files were refused.
        refused: usize = shown.refused.len(),
        /// Before the order.
        before: Counts = Counts::new(vessels.iter().map(|vessel| vessel.before.verdict).collect()),
        /// After it.
        after: Counts = Counts::new(vessels.iter().map(|vessel| vessel.after.verdict).collect()),
    }

    /// Vessels by verdict.
    Counts(verdicts: Vec<Verdict>) {
        let count = |of| verdicts.iter().filter(|verdict| **verdict == of).count();
        /// How many are ready.
        ready: usize = count(Verdict::Ready),
        /// How many are not ready.
        not_ready: usize = count(Verdict::NotReady),
        /// Of how many nobody can tell.
        cannot_tell: usize = count(Verdict::CannotTell),
    }

    /// What something costs.
    Cost(cost: quote::Cost, currency: Currency) {
        let money = |amount| Money::new(amount, currency);
        /// The goods.
        goods: Money = money(cost.goods),
        /// Their delivery.
        delivery: Money = money(cost.delivery),
        /// The tax on both.
        tax: Money = money(cost.tax),
        /// All of it.
        total: Money = money(cost.total),
    }

    /// Whether anything cheaper does the same.
    Bound(shown: &QuoteShown<'_>) {
        let bound = shown.quote.bound;
        let least = match bound {
            quote::Bound::Cheapest => None,
            quote::Bound::AtLeast(least) => Some(least),
        };
        /// `at-least`: the search was stopped.
        state: Word<quote::Bound> = word(&bound),
        /// Nothing below this does.
        #[serde(skip_serializing_if = "Option::is_none")]
        least: Option<Money> = least.map(|least| money(shown, least)),
        /// For people; its wording may change.
        text: String = said::bound(shown),
    }

    /// What one supplier alone could do.
    Alone(shown: &QuoteShown<'_>, alone: &quote::Alone) {
        /// The supplier's name.
        supplier: String = shown.catalogues[alone.catalogue].supplier.clone(),
        /// Vessels that are ready then.
        ready: usize = alone.ready,
        /// Required findings that stay open.
        open: usize = alone.open,
        /// What it costs.
        cost: Cost = Cost::new(alone.cost, shown.quote.currency),
        /// Whether this one was taken.
        taken: bool = alone.taken,
    }

    /// Tools of which a fact is missing.
    Measuring(shown: &QuoteShown<'_>, measuring: &quote::Measuring) {
        let tools = measuring.tools.iter().filter_map(|(vessel, tool)| {
            let vessel = shown.quote.vessels.get(*vessel)?;
            let tool = vessel.before.vessel.kit.get(*tool)?;
            Some(ToMeasure::new(shown, vessel, tool))
        });
        /// What to measure.
        tools: Vec<ToMeasure> = tools.collect(),
        /// What the order comes to if all of them measure well.
        total: Money = money(shown, measuring.total),
        /// So much less than this one.
        saves: Money = money(shown, measuring.saves),
    }

    /// A tool to measure.
    ToMeasure(shown: &QuoteShown<'_>, vessel: &quote::VesselQuote, tool: &Tool) {
        /// The file, as it was given.
        file: String = vessel.file.to_string(),
        /// The vessel's name.
        vessel: String = vessel.before.vessel.name.clone(),
        /// The mark of the tool.
        tool: String = tool.mark.clone(),
        /// The kind, by its id.
        kind: String = shown.vocabulary.kind(tool.kind).id.clone(),
    }

    /// Why this basket.
    Explained(shown: &QuoteShown<'_>, explained: &quote::Explained) {
        let dearest = explained.dearest.as_ref();
        let costliest = explained.costliest.as_ref();
        /// The dearest item.
        dearest: Option<Dearest> = dearest.map(|dearest| Dearest::new(shown, dearest)),
        /// The requirement that costs most.
        costliest: Option<Costliest> = costliest.map(|costliest| Costliest::new(shown, costliest)),
    }

    /// The dearest item.
    Dearest(shown: &QuoteShown<'_>, dearest: &quote::Dearest) {
        #[serde(flatten)]
        item: Item = Item::of(shown, dearest.offer),
        /// What it costs in this order.
        price: Money = money(shown, dearest.price),
        /// What the order would come to without it; null where nothing makes up for it.
        total_without: Option<Money> = dearest.without.map(|without| money(shown, without)),
    }

    /// The requirement that costs most.
    Costliest(shown: &QuoteShown<'_>, costliest: &quote::Costliest) {
        let (vessel, cured) = costliest.at;
        let check = &shown.quote.vessels[vessel].after;
        #[serde(flatten)]
        requirement: RequirementOfQuote = RequirementOfQuote::new(check, cured),
        /// What the order would come to without it.
        total_without: Money = money(shown, costliest.without),
        /// What it costs.
        costs: Money = money(shown, costliest.costs),
    }

    /// A catalogue that was given.
    CatalogueOfQuote(catalogue: &Catalogue) {
        /// The supplier's name.
        supplier: String = catalogue.supplier.clone(),
        /// The port.
        port: Option<String> = catalogue.port.clone(),
        /// The file, as it was given.
        file: String = catalogue.place.file.to_string(),
        /// The tax on goods and delivery.
        tax_rate: String = catalogue.tax.to_string(),
        /// Its terms, in words.
        terms: Option<String> = catalogue.terms.clone(),
    }

    /// The order to one supplier.
    Order(shown: &QuoteShown<'_>, order: &quote::SupplierOrder) {
        let catalogue = &shown.catalogues[order.catalogue];
        let lines = order.lines.iter();
        /// The supplier's name.
        supplier: String = catalogue.supplier.clone(),
        /// What is ordered.
        lines: Vec<OrderLine> = lines.map(|line| OrderLine::new(shown, catalogue, line)).collect(),
        #[serde(flatten)]
        cost: Cost = Cost::new(order.cost, shown.quote.currency),
        /// The tax on goods and delivery.
        tax_rate: String = catalogue.tax.to_string(),
        /// The last day on which every price holds.
        holds: Option<Day> = order.holds.map(day),
        /// The last of it.
        arrives: Day = day(order.arrives),
    }

    /// One line of an order.
    OrderLine(shown: &QuoteShown<'_>, catalogue: &Catalogue, line: &quote::OrderLine) {
        let item = &catalogue.items[line.item];
        /// The number under which it is ordered.
        number: String = item.number.clone(),
        /// What it is, in words.
        description: String = item.description.clone(),
        /// How many packs.
        packs: u32 = line.packs,
        /// How many pieces a pack holds.
        pack: u32 = item.pack,
        /// How many pieces the vessels take.
        used: u32 = line.used,
        /// How many are left over.
        left_over: u32 = line.spare(item.pack),
        /// The price of a pack.
        unit_price: Money = money(shown, item.price),
        /// Of all packs.
        sum: Money = money(shown, line.sum),
        /// The last day on which the price holds.
        holds: Option<Day> = item.holds.map(day),
    }
}
