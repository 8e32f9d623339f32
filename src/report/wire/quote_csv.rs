//! A quote as CSV (RFC 4180). The column `sum` adds up to the total of the
//! order: it has the packs of each item, delivery and tax, and nothing else.
//! No cell can be taken for a formula by a spreadsheet.
//!
//! Imports `quote`, what lies below, and words.

use super::form::Named;
use super::rows::problems;
use super::text::{Row, csv};
use crate::measure::Day;
use crate::model::check::Check;
use crate::model::text::visible;
use crate::quote::{Bought, Cured, Offer, OrderLine, SupplierOrder, Unmet, VesselQuote};
use crate::report::subject::{QuoteShown, finding, requirement};
use crate::report::words::{fleet, quote as said};

/// The columns, in their order.
const HEAD: &str = "row,supplier,number,description,packs,pack,unit price,sum,currency,total,\
    file,vessel,register,on tool,pieces,left over,share,arrives,departure,price holds until,\
    cures,clauses,verdict before,verdict after,open requirement,open clause,reasons,\
    nearest offer,it lacks,note";

/// A row that says first what it is.
fn row(kind: &str) -> Row {
    Row::new(HEAD).text("row", kind)
}

/// The quote as CSV, lines ending as the standard says.
///
/// # Errors
/// None in practice: it is written to memory.
pub fn quote_csv(shown: &QuoteShown<'_>) -> Result<String, csv::Error> {
    csv(HEAD, rows(shown))
}

fn rows(shown: &QuoteShown<'_>) -> Vec<Row> {
    let mut rows = Vec::new();
    for order in &shown.quote.orders {
        rows.extend(of_supplier(shown, order));
    }
    let quote = shown.quote;
    rows.push(
        row("order total")
            .text("total", &quote.cost.total.show(quote.currency))
            .text("currency", quote.currency.code())
            .text("price holds until", &day(quote.holds))
            .text("note", &said::bound(shown)),
    );
    for (index, vessel) in quote.vessels.iter().enumerate() {
        let odd = said::odd_departure(shown, index, vessel).into_iter();
        let note: Vec<_> = odd.chain(said::beyond(vessel, shown.locale)).collect();
        rows.push(
            of_vessel("vessel", vessel)
                .text("verdict before", vessel.before.verdict.word())
                .text("verdict after", vessel.after.verdict.word())
                .text("note", &note.join("; ")),
        );
        rows.extend(vessel.unmet.iter().map(|unmet| open(shown, vessel, unmet)));
    }
    let refused = shown.refused.iter();
    rows.extend(refused.map(|refusal| {
        row("not read").text("file", &refusal.file).text("note", &problems(refusal))
    }));
    rows.extend(shown.left_out.iter().map(|left_out| {
        row("record not laid over")
            .text("file", &left_out.file)
            .text("vessel", &left_out.vessel)
            .text("note", &fleet::left_out(left_out, shown.locale))
    }));
    rows
}

/// The items of one supplier, below each the vessels that it is for, then
/// what comes on top.
fn of_supplier(shown: &QuoteShown<'_>, order: &SupplierOrder) -> Vec<Row> {
    let catalogue = &shown.catalogues[order.catalogue];
    let currency = shown.quote.currency;
    let own =
        |kind| row(kind).text("supplier", &catalogue.supplier).text("currency", currency.code());
    let mut rows = Vec::new();
    for line in &order.lines {
        let offer = Offer { catalogue: order.catalogue, item: line.item };
        rows.push(of_item(shown, offer, line));
        for vessel in &shown.quote.vessels {
            let lines = vessel.lines.iter().filter(|bought| bought.offer == offer);
            rows.extend(lines.map(|bought| of_bought(shown, vessel, bought)));
        }
    }
    rows.push(own("delivery").text("sum", &order.cost.delivery.show(currency)));
    let tax = own("tax").text("sum", &order.cost.tax.show(currency));
    rows.push(tax.text("description", &format!("tax of {}", catalogue.tax)));
    rows.push(
        own("supplier total")
            .text("total", &order.cost.total.show(currency))
            .text("arrives", &order.arrives.to_string())
            .text("price holds until", &day(order.holds)),
    );
    rows
}

/// A row about an item, in whatever role.
fn row_of(shown: &QuoteShown<'_>, kind: &str, offer: Offer) -> Row {
    let item = shown.item(offer);
    row(kind)
        .text("supplier", &shown.catalogue(offer).supplier)
        .text("number", &item.number)
        .text("description", &item.description)
        .text("currency", shown.quote.currency.code())
}

fn of_item(shown: &QuoteShown<'_>, offer: Offer, line: &OrderLine) -> Row {
    let (item, currency) = (shown.item(offer), shown.quote.currency);
    row_of(shown, "item", offer)
        .text("packs", &line.packs.to_string())
        .text("pack", &item.pack.to_string())
        .text("unit price", &item.price.show(currency))
        .text("sum", &line.sum.show(currency))
        .text("pieces", &line.used.to_string())
        .text("left over", &line.spare(item.pack).to_string())
        .text("price holds until", &day(item.holds))
}

fn of_bought(shown: &QuoteShown<'_>, vessel: &VesselQuote, bought: &Bought) -> Row {
    let after = &vessel.after;
    let on = bought.on.and_then(|tool| vessel.before.vessel.kit.get(tool));
    let all = |told: &dyn Fn(Cured) -> String| {
        let each: Vec<_> = bought.cures.iter().map(|cured| told(*cured)).collect();
        each.join("; ")
    };
    with_vessel(row_of(shown, "for", bought.offer), vessel)
        .text("on tool", on.map_or("", |tool| &tool.mark))
        .text("pieces", &bought.pieces.to_string())
        .text("share", &bought.share.show(shown.quote.currency))
        .text("arrives", &bought.arrives.to_string())
        .text("cures", &all(&|cured| requirement(after, cured).title.to_string()))
        .text("clauses", &all(&|cured| clause(after, cured)))
}

fn of_vessel(kind: &str, vessel: &VesselQuote) -> Row {
    with_vessel(row(kind), vessel)
}

fn with_vessel(row: Row, vessel: &VesselQuote) -> Row {
    let own = &vessel.before.vessel;
    row.text("file", &vessel.file)
        .text("vessel", &own.name)
        .text("register", own.register.as_deref().unwrap_or_default())
        .text("departure", &vessel.before.asked.departure.to_string())
}

/// Something that stays open, and the offer that comes nearest.
fn open(shown: &QuoteShown<'_>, vessel: &VesselQuote, unmet: &Unmet) -> Row {
    let (after, cured) = (&vessel.after, unmet.finding);
    let words = shown.words(after, cured.judgement);
    let reasons = finding(after, cured).into_iter().flat_map(|finding| &finding.reasons);
    let reasons: Vec<_> = reasons.map(|because| words.told(because)).collect();
    let row = of_vessel("open", vessel)
        .text("open requirement", &requirement(after, cured).title.to_string())
        .text("open clause", &clause(after, cured))
        .text("reasons", &reasons.join("; "));
    let Some(nearest) = &unmet.nearest else { return row };
    let item = shown.item(nearest.offer);
    let lacks = nearest.lacks.iter().map(|reason| words.reason(reason));
    let hindrances = nearest.hindrances.iter().map(|one| said::hindrance(*one, shown.locale));
    let lacks: Vec<_> = lacks.chain(hindrances).collect();
    let supplier = &shown.catalogue(nearest.offer).supplier;
    row.text("nearest offer", &format!("{supplier}, {}: {}", item.number, item.description))
        .text("it lacks", &lacks.join("; "))
}

/// The rule and the clause of a requirement.
fn clause(check: &Check, cured: Cured) -> String {
    let source = &check.judgements[cured.judgement].profile.source;
    format!("{source}, {}", visible(&requirement(check, cured).clause))
}

fn day(day: Option<Day>) -> String {
    day.map(|day| day.to_string()).unwrap_or_default()
}
