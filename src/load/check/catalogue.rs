//! From a supplier's catalogue as written to the catalogue: its terms, and of
//! each item the number, the price, packs and times.
//!
//! Imports `model`; what an item gives is read in `goods`. Goes on after a
//! problem, so that all of them are found at once.

use crate::load::check::goods::{GoodsReader, Numbers};
use crate::load::check::reading::Unsaid;
use crate::load::check::value::kept;
use crate::load::form::catalogue::{
    CatalogueFile, DeliveryForm, ItemForm, LARGEST_STOCK, MOST_ITEMS, MOST_PACKS,
};
use crate::load::form::loose::Single;
use crate::load::read::fault::Fault;
use crate::load::read::spot::{Spot, filled};
use crate::measure::{Currency, Day, Money, Percent, QuantityError};
use crate::model::catalogue::{Catalogue, Delivery, Item};
use crate::model::vessel::How;
use crate::model::vocabulary::Vocabulary;
use std::sync::Arc;

/// Checks a catalogue.
pub(crate) fn check_catalogue(
    written: CatalogueFile,
    words: &Vocabulary,
    top: &Spot<'_>,
) -> Option<Catalogue> {
    let supplier = top.must("supplier", kept(written.supplier), Fault::NoSupplier);
    let currency = top.must("currency", filled(&written.currency), Fault::NoCurrency);
    let currency = currency.and_then(|text| currency_of(text, &top.key("currency")));
    let tax = top.must("tax", filled(&written.tax), Fault::NoTax);
    let tax = tax.and_then(|text| tax_of(text, &top.key("tax")));
    let delivery = top.must("delivery", written.delivery, Fault::NoDelivery);
    let delivery = delivery.and_then(|form| delivery_of(form, currency, &top.key("delivery")));
    let by = supplier.as_deref().map(Arc::from);
    let terms = Terms {
        currency,
        lead_written: filled(&written.lead).is_some(),
        lead: top.lead(&written.lead),
        holds: top.day("prices hold until", &written.prices_hold),
        unsaid: Unsaid { by, on: None, how: How::Label, same_day: false },
    };
    let items = items(written.items, &terms, words, top);
    Some(Catalogue {
        supplier: supplier?,
        port: kept(written.port),
        currency: currency?,
        delivery: delivery?,
        tax: tax?,
        terms: kept(written.terms),
        items,
        place: top.place(),
    })
}

/// What items do not say for themselves.
struct Terms {
    currency: Option<Currency>,
    /// Whether there is a lead for all items, be it readable or not.
    lead_written: bool,
    lead: Option<u32>,
    holds: Option<Day>,
    unsaid: Unsaid,
}

fn currency_of(text: &str, spot: &Spot<'_>) -> Option<Currency> {
    Currency::find(text).or_else(|| spot.wrong(Fault::UnknownCurrency).of(text).none())
}

fn tax_of(text: &str, spot: &Spot<'_>) -> Option<Percent> {
    let is_bare = text.bytes().all(|b| b.is_ascii_digit() || b == b'.');
    let fault = match Percent::parse(text) {
        Ok(tax) if tax < Percent::ONE_HUNDRED => return Some(tax),
        Ok(_) => Fault::TaxTooHigh,
        Err(QuantityError::Nonsense(_)) if is_bare => Fault::TaxWithoutSign(text.to_owned()),
        Err(QuantityError::Nonsense(_)) => Fault::TaxNoPercentage,
        Err(other) => Fault::TaxNoFigure(other),
    };
    spot.wrong(fault).of(text).none()
}

/// The charge for delivery: a plain amount, or one with a sum from which it
/// is free.
fn delivery_of(
    written: Single<DeliveryForm>,
    currency: Option<Currency>,
    spot: &Spot<'_>,
) -> Option<Delivery> {
    let form = match written {
        Single::Plain(text) => {
            let charge = spot.amount_of(&text, currency)?;
            return Some(Delivery { charge, free_from: None });
        }
        Single::Form(form) => *form,
    };
    let charge = spot.must("charge", filled(&form.charge), Fault::NoCharge)?;
    let charge = spot.key("charge").amount_of(charge, currency);
    let free_from =
        spot.read("free from", &form.free_from, |at, text| at.amount_of(text, currency));
    Some(Delivery { charge: charge?, free_from })
}

fn items(
    written: Option<Vec<ItemForm>>,
    terms: &Terms,
    words: &Vocabulary,
    top: &Spot<'_>,
) -> Vec<Item> {
    let forms = written.filter(|forms| !forms.is_empty());
    let Some(forms) = top.must("items", forms, Fault::NoItems) else { return Vec::new() };
    if forms.len() > MOST_ITEMS {
        let fault = Fault::TooManyItems { items: forms.len(), most: MOST_ITEMS };
        top.wrong_key("items", fault).tell();
        return Vec::new();
    }
    let numbers = Numbers::of(&forms, words, &top.key("items"));
    let reader = GoodsReader { words, unsaid: &terms.unsaid, numbers: &numbers };
    top.each("items", forms, |at, form| item(form, terms, &reader, at))
}

fn item(form: ItemForm, terms: &Terms, reader: &GoodsReader<'_>, spot: &Spot<'_>) -> Option<Item> {
    let (gives, form) = reader.gives(form, spot);
    let number = spot.must("number", kept(form.number), Fault::NoNumber);
    let description = spot.must("description", kept(form.description), Fault::NoDescription);
    let price = spot.must("price", filled(&form.price), Fault::NoPrice);
    let price = price.and_then(|text| price_of(text, terms.currency, &spot.key("price")));
    let pack = spot.count("pack", &form.pack, 1, MOST_PACKS);
    let least = spot.count("least order", &form.least, 1, MOST_PACKS);
    let stock = spot.count("stock", &form.stock, 0, LARGEST_STOCK);
    let lead = match filled(&form.lead) {
        Some(_) => spot.lead(&form.lead),
        None => terms.lead,
    };
    if filled(&form.lead).is_none() && !terms.lead_written {
        spot.missing("lead", Fault::NoLeadTime);
    }
    let holds = spot.day("price holds until", &form.price_holds).or(terms.holds);
    Some(Item {
        number: number?,
        description: description?,
        gives: gives?,
        price: price?,
        pack: pack.unwrap_or(1),
        least: least.unwrap_or(1),
        stock,
        lead: lead?,
        holds,
        place: spot.place(),
    })
}

fn price_of(text: &str, currency: Option<Currency>, spot: &Spot<'_>) -> Option<Money> {
    let price = spot.amount_of(text, currency)?;
    if price != Money::ZERO {
        return Some(price);
    }
    spot.wrong(Fault::PriceOfNothing).of(text).none()
}
