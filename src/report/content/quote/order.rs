//! The order as it goes to each supplier, what it adds up to, and what each
//! supplier alone would cost.

use crate::measure::Money;
use crate::model::catalogue::{Catalogue, Item};
use crate::quote::{Alone, Cost, OrderLine, SupplierOrder, Surplus};
use crate::report::Locale;
use crate::report::content::{Block, Column, Line, Role, Row, Section, Table, Tone};
use crate::report::subject::QuoteShown;
use crate::report::words::quote as said;

/// The orders, and all of them together where there are several.
pub(super) fn all(shown: &QuoteShown<'_>) -> Vec<Block> {
    let orders = &shown.quote.orders;
    let mut blocks: Vec<_> = orders.iter().map(|order| supplier(shown, order)).collect();
    if orders.len() > 1 {
        let caption = shown.locale.quote_all_orders();
        let sums = Table {
            role: Role::Amounts,
            caption: caption.to_owned(),
            columns: vec![Column::default(), Column { right: true, ..Column::default() }],
            rows: Vec::new(),
            sums: sums(shown, shown.quote.cost, None),
        };
        blocks.push(Section::block(Role::Part, caption, vec![Block::Table(sums)]));
    }
    blocks
}

fn supplier(shown: &QuoteShown<'_>, order: &SupplierOrder) -> Block {
    let (catalogue, locale) = (&shown.catalogues[order.catalogue], shown.locale);
    let supplier = match &catalogue.port {
        Some(port) => format!("{}, {port}", catalogue.supplier),
        None => catalogue.supplier.clone(),
    };
    let caption = locale.quote_order_from(&supplier);
    let row = |line: &OrderLine| {
        let item = &catalogue.items[line.item];
        let cells = [said::item(item), packs(shown, line, item), shown.money(line.sum)];
        Row::new(None, cells.map(Line::from).into())
    };
    let table = Table {
        role: Role::Amounts,
        caption: caption.clone(),
        columns: vec![
            Column::new(locale.quote_head_what()),
            Column::new(locale.quote_head_packs()),
            amounts(locale.quote_head_sum()),
        ],
        rows: order.lines.iter().map(row).collect(),
        sums: sums(shown, order.cost, Some(catalogue)),
    };
    let by_when = match order.holds {
        Some(last) => locale.quote_all_there_until(&order.arrives, &last),
        None => locale.quote_all_there(&order.arrives),
    };
    let terms =
        locale.quote_terms(&catalogue.terms.as_deref().unwrap_or(locale.quote_terms_open()));
    let below = [by_when, terms].map(|text| Block::Paragraph(text.into()));
    let body = [Block::Table(table)].into_iter().chain(below).collect();
    Section::block(Role::Part, caption, body)
}

/// A column of amounts.
fn amounts(head: &str) -> Column {
    Column { right: true, ..Column::new(head) }
}

/// How many packs at which price, and what of them is used.
fn packs(shown: &QuoteShown<'_>, line: &OrderLine, item: &Item) -> String {
    let (price, locale) = (shown.money(item.price), shown.locale);
    let told = match item.pack {
        1 => locale.quote_at_price(&line.packs, &price),
        pack => locale.quote_packs_at_price(line.packs, &pack, &price),
    };
    match line.surplus(item) {
        Some(why) => format!("{told}; {}", left_over(line, item, why, locale)),
        None => told,
    }
}

/// What is not used of the packs, and why it is bought even so.
fn left_over(line: &OrderLine, item: &Item, why: Surplus, locale: Locale) -> String {
    let told = locale.quote_left_over(&line.used, &line.spare(item.pack));
    match why {
        Surplus::Filler => locale.quote_not_needed().to_owned(),
        Surplus::FreeDelivery { packs } => {
            format!("{told}; {}", locale.quote_for_free_delivery(packs))
        }
        Surplus::LeastOrder => format!("{told}; {}", locale.quote_least_sold(&item.least)),
        Surplus::RestOfPack => told,
    }
}

/// What an order adds up to, row by row: one supplier's, or all of them.
fn sums(shown: &QuoteShown<'_>, cost: Cost, catalogue: Option<&Catalogue>) -> Vec<[Line; 2]> {
    let locale = shown.locale;
    let free_from = catalogue.and_then(|catalogue| catalogue.delivery.free_from);
    let delivery = match free_from {
        Some(from) => locale.quote_delivery_free_from(&shown.money(from)),
        None => locale.quote_delivery().to_owned(),
    };
    let tax = match catalogue {
        Some(catalogue) => locale.quote_tax_of(&catalogue.tax.to_string().replace('%', " %")),
        None => locale.quote_tax().to_owned(),
    };
    let plain = Tone::Plain;
    vec![
        sum(shown, plain, locale.quote_goods(), cost.goods),
        sum(shown, plain, &delivery, cost.delivery),
        sum(shown, plain, &tax, cost.tax),
        sum(shown, Tone::Strong, locale.quote_total(), cost.total),
    ]
}

/// A text and the amount that belongs to it.
fn sum(shown: &QuoteShown<'_>, tone: Tone, text: &str, amount: Money) -> [Line; 2] {
    [text, &shown.money(amount)].map(|cell| Line::from(cell).toned(tone))
}

/// What each supplier alone would cost, where one was to supply everything.
pub(super) fn compared(shown: &QuoteShown<'_>) -> Option<Block> {
    let locale = shown.locale;
    let caption = locale.quote_one_supplier();
    let rows = shown.quote.suppliers.iter().map(|alone| {
        let tone = if alone.taken { Tone::Strong } else { Tone::Plain };
        Row::new(None, sum(shown, tone, &how_far(shown, alone), alone.cost.total).into())
    });
    let table = Table {
        role: Role::Amounts,
        caption: caption.to_owned(),
        columns: vec![
            Column::new(locale.quote_head_supplier()),
            amounts(locale.quote_head_total()),
        ],
        rows: rows.collect(),
        sums: Vec::new(),
    };
    let any = !shown.quote.suppliers.is_empty();
    any.then(|| Section::block(Role::Part, caption, vec![Block::Table(table)]))
}

/// How far one supplier alone would come.
fn how_far(shown: &QuoteShown<'_>, alone: &Alone) -> String {
    let locale = shown.locale;
    let supplier = &shown.catalogues[alone.catalogue].supplier;
    let mut told = locale.quote_alone(supplier, &alone.ready, shown.quote.vessels.len());
    if alone.open > 0 {
        told = locale.quote_alone_but(&told, &locale.quote_alone_open(alone.open));
    }
    if alone.taken { locale.quote_alone_taken(&told) } else { told }
}
