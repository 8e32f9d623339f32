//! A quote as a page for the terminal.
//!
//! Imports `quote` and `model`. Decides nothing.

use super::{Shown, finding, requirement};
use crate::model::finding::{Outcome, Verdict};
use crate::quote::{Bought, SupplierOrder, Unmet, VesselQuote};
use crate::report::page::{Page, Tone};
use crate::report::words::{self, fleet};

/// Where what belongs to a heading begins.
const BODY: usize = 2;

/// The quote as a page no wider than `width` columns, with colour codes.
pub fn table(shown: &Shown<'_>, width: usize) -> String {
    let mut page = Page::new(width);
    headline(&mut page, shown);
    shown.quote.orders.iter().for_each(|order| supplier(&mut page, shown, order));
    for (index, one) in shown.quote.vessels.iter().enumerate() {
        vessel(&mut page, shown, index, one);
    }
    aside(&mut page, shown);
    page.gap();
    page.prose(0, Tone::Plain, words::CAUTION);
    page.prose(0, Tone::Plain, words::FOOT);
    page.finish()
}

fn headline(page: &mut Page, shown: &Shown<'_>) {
    let quote = shown.quote;
    let total = format!("{} for {}", shown.money(quote.cost.total), vessels(shown));
    page.hang(0, ("QUOTE", tone(quote.verdict())), (&total, Tone::Strong));
    if let Some(customer) = shown.customer {
        page.prose(BODY, Tone::Plain, &format!("for {customer}"));
    }
    let holds = quote.holds.map_or(String::new(), |day| format!(", prices hold until {day}"));
    page.prose(BODY, Tone::Plain, &format!("ordered on {}{holds}", quote.ordered));
    page.prose(BODY, Tone::Plain, &words::quote::bound(shown));
    let cost = quote.cost;
    let parts = [("goods", cost.goods), ("delivery", cost.delivery), ("tax", cost.tax)];
    let parts = parts.map(|(name, amount)| format!("{name} {}", shown.money(amount)));
    page.prose(BODY, Tone::Plain, &parts.join(", "));
}

/// How many vessels there are, and how many are ready after the order.
fn vessels(shown: &Shown<'_>) -> String {
    let all = &shown.quote.vessels;
    let ready = all.iter().filter(|vessel| vessel.after.verdict == Verdict::Ready).count();
    format!("{}, {ready} ready after the order", fleet::count(all.len(), "vessel"))
}

fn supplier(page: &mut Page, shown: &Shown<'_>, order: &SupplierOrder) {
    let catalogue = &shown.catalogues[order.catalogue];
    page.gap();
    let total = shown.money(order.cost.total);
    page.ends(0, ("From", Tone::Plain), &catalogue.supplier, &total);
    for line in &order.lines {
        let item = &catalogue.items[line.item];
        let spare = match line.spare(item.pack) {
            0 => String::new(),
            spare => format!("; {spare} left over"),
        };
        let text = format!(
            "{} of {}, {}, at {}: {} for {}{spare}",
            fleet::count(line.packs as usize, "pack"),
            item.number,
            item.description,
            shown.money(item.price),
            shown.money(line.sum),
            fleet::count(line.used as usize, "piece"),
        );
        page.hang(BODY, ("-", Tone::Plain), (&text, Tone::Plain));
    }
    let cost = order.cost;
    let text = format!(
        "goods {}, delivery {}, tax of {} {}; all there on {}",
        shown.money(cost.goods),
        shown.money(cost.delivery),
        catalogue.tax,
        shown.money(cost.tax),
        order.arrives,
    );
    page.prose(BODY, Tone::Plain, &text);
}

fn vessel(page: &mut Page, shown: &Shown<'_>, index: usize, vessel: &VesselQuote) {
    page.gap();
    let (before, after) = (vessel.before.verdict, vessel.after.verdict);
    let name = &vessel.before.vessel.name;
    let text = match before == after && vessel.lines.is_empty() {
        true => name.clone(),
        false => format!("{name}, {} before", words::verdict(before).to_lowercase()),
    };
    page.hang(0, (words::verdict(after), tone(after)), (&text, Tone::Strong));
    let asked = &vessel.before.asked;
    let trip = format!("trip {} to {}; {}", asked.departure, asked.back, vessel.file);
    page.prose(BODY, Tone::Plain, &trip);
    if let Some(note) = words::quote::departure(shown, index, vessel) {
        page.hang(BODY, ("note:", Tone::Open), (&note, Tone::Plain));
    }
    for told in words::quote::beyond(vessel) {
        page.hang(BODY, ("note:", Tone::Open), (&told, Tone::Plain));
    }
    vessel.lines.iter().for_each(|line| bought(page, shown, vessel, line));
    vessel.unmet.iter().for_each(|unmet| open(page, shown, vessel, unmet));
}

fn bought(page: &mut Page, shown: &Shown<'_>, vessel: &VesselQuote, line: &Bought) {
    let item = shown.item(line.offer);
    let on = line.on.and_then(|tool| vessel.before.vessel.kit.get(tool));
    let on = on.map_or(String::new(), |tool| format!(" for {}", tool.mark));
    let text = format!(
        "{} of {}, {}{on}, there on {}",
        fleet::count(line.pieces as usize, "piece"),
        item.number,
        item.description,
        line.arrives,
    );
    page.hang(BODY, ("+", Tone::Good), (&text, Tone::Plain));
    for cured in &line.cures {
        let asked = requirement(&vessel.after, *cured);
        page.prose(BODY + 2, Tone::Plain, &format!("{} ({})", asked.title, asked.clause));
    }
}

fn open(page: &mut Page, shown: &Shown<'_>, vessel: &VesselQuote, unmet: &Unmet) {
    let (after, cured) = (&vessel.after, unmet.finding);
    let words = shown.words(after, cured.judgement);
    let asked = requirement(after, cured);
    let finding = finding(after, cured);
    let (sign, tone) = match finding.map(|finding| finding.outcome) {
        Some(Outcome::CannotTell) => (words::sign(Outcome::CannotTell), Tone::Open),
        _ => (words::sign(Outcome::NotMet), Tone::Bad),
    };
    let why = finding.map(|finding| words.first_reason(finding)).unwrap_or_default();
    let text = format!("{} ({}): {why}", asked.title, asked.clause);
    page.hang(BODY, (sign, tone), (&text, Tone::Plain));
    if let Some(nearest) = &unmet.nearest {
        let item = shown.item(nearest.offer);
        let lacks = nearest.lacks.iter().map(|reason| words.reason(reason));
        let hindrances = nearest.hindrances.iter().map(|one| words::quote::hindrance(*one));
        let lacks: Vec<_> = lacks.chain(hindrances).collect();
        let supplier = &shown.catalogue(nearest.offer).supplier;
        let text = format!(
            "nearest offer: {}, {}, of {supplier}: {}",
            item.number,
            item.description,
            lacks.join("; ")
        );
        page.prose(BODY + 2, Tone::Plain, &text);
    }
}

/// What could not be read, and records of no vessel.
fn aside(page: &mut Page, shown: &Shown<'_>) {
    if !shown.refused.is_empty() {
        page.gap();
        page.prose(0, Tone::Strong, &format!("Not read ({})", shown.refused.len()));
        for refusal in shown.refused {
            crate::report::problems::write_first(page, BODY, refusal);
        }
    }
    for left_out in shown.left_out {
        let text = format!("{}: {}", left_out.file, fleet::left_out(left_out));
        page.hang(0, ("record not laid over:", Tone::Open), (&text, Tone::Plain));
    }
}

fn tone(verdict: Verdict) -> Tone {
    match verdict {
        Verdict::Ready => Tone::Good,
        Verdict::CannotTell => Tone::Open,
        Verdict::NotReady => Tone::Bad,
    }
}
