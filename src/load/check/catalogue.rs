//! From a supplier's catalogue as written to the catalogue: its terms, and of
//! each item the number, the price, packs and times.
//!
//! Imports `model`; what an item gives is read in `check_goods`. Goes on after
//! a problem, so that all of them are found at once.

use crate::load::check::amount::{amount, lead};
use crate::load::check::fits::Numbers;
use crate::load::check::goods::GoodsReader;
use crate::load::check::reading::Unsaid;
use crate::load::check::value::{count, day, filled, kept, missing};
use crate::load::form::catalogue::LARGEST_STOCK;
use crate::load::form::catalogue::MOST_ITEMS;
use crate::load::form::catalogue::MOST_PACKS;
use crate::load::form::catalogue::{CatalogueFile, DeliveryForm, ItemForm};
use crate::load::form::loose::Single;
use crate::load::read::problem::{Problem, Problems};
use crate::load::read::spot::Spot;
use crate::measure::{Currency, Day, Money, Percent, QuantityError};
use crate::model::catalogue::{Catalogue, Delivery, Gives, Item};
use crate::model::vessel::How;
use crate::model::vocabulary::Vocabulary;
use std::sync::Arc;

/// Checks a catalogue.
pub(crate) fn check_catalogue(
    written: CatalogueFile,
    vocabulary: &Vocabulary,
    top: &Spot<'_>,
    problems: &mut Problems,
) -> Option<Catalogue> {
    let mut desk = Desk { top, problems };
    let supplier = kept(written.supplier);
    if supplier.is_none() {
        desk.missing("supplier", "write the supplier's name");
    }
    let currency = desk.currency(written.currency.as_deref());
    let tax = desk.tax(written.tax.as_deref());
    let delivery = desk.delivery(written.delivery, currency);
    let terms = Terms {
        currency,
        lead_written: filled(written.lead.as_deref()).is_some(),
        lead: lead(written.lead.as_deref(), &top.key("lead"), desk.problems),
        holds: day(written.prices_hold.as_deref(), &top.key("prices hold until"), desk.problems),
        unsaid: Unsaid {
            by: supplier.as_deref().map(Arc::from),
            on: None,
            how: How::Label,
            same_day: false,
        },
    };
    let items = desk.items(written.items, &terms, vocabulary);
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

/// What the readers of single keys share.
struct Desk<'a> {
    top: &'a Spot<'a>,
    problems: &'a mut Problems,
}

impl Desk<'_> {
    fn missing(&mut self, key: &str, mend: &str) {
        missing(self.top, key, self.problems, mend);
    }

    fn currency(&mut self, text: Option<&str>) -> Option<Currency> {
        let Some(text) = filled(text) else {
            self.missing("currency", "write the code of the currency, like `USD`");
            return None;
        };
        let found = Currency::find(text);
        if found.is_none() {
            self.problems.add(
                Problem::new(
                    self.top.key("currency").place(),
                    "no currency with a coin has this code",
                )
                .offending(text)
                .expected("a code of three letters by ISO 4217")
                .mend("write it like `USD`"),
            );
        }
        found
    }

    fn tax(&mut self, text: Option<&str>) -> Option<Percent> {
        let Some(text) = filled(text) else {
            self.missing("tax", "write `tax: 0%` if none is charged");
            return None;
        };
        let read = Percent::parse(text);
        if let Ok(tax) = &read
            && *tax < Percent::ONE_HUNDRED
        {
            return Some(*tax);
        }
        let (what, mend) = match read {
            Ok(_) => ("more than any tax is".to_owned(), None),
            Err(QuantityError::Nonsense(_)) => {
                let bare = text.bytes().all(|b| b.is_ascii_digit() || b == b'.');
                ("this is not a percentage".to_owned(), bare.then(|| format!("write `{text}%`")))
            }
            Err(other) => (other.to_string(), None),
        };
        self.problems.add(
            Problem::new(self.top.key("tax").place(), what)
                .offending(text)
                .expected("a percentage from `0%` to below `100%`, like `7.25%`")
                .mend_if(mend),
        );
        None
    }

    /// The charge for delivery: a plain amount, or one with a sum from which
    /// it is free.
    fn delivery(
        &mut self,
        written: Option<Single<DeliveryForm>>,
        currency: Option<Currency>,
    ) -> Option<Delivery> {
        let spot = self.top.key("delivery");
        let form = match written {
            None => {
                self.missing("delivery", "write `delivery: 0` if nothing is charged");
                return None;
            }
            Some(Single::Plain(text)) => {
                let charge = amount(&text, currency, &spot, self.problems)?;
                return Some(Delivery { charge, free_from: None });
            }
            Some(Single::Form(form)) => *form,
        };
        let Some(charge) = filled(form.charge.as_deref()) else {
            missing(&spot, "charge", self.problems, "write what delivery costs, once an order");
            return None;
        };
        let charge = amount(charge, currency, &spot.key("charge"), self.problems);
        let free_from = filled(form.free_from.as_deref())
            .and_then(|text| amount(text, currency, &spot.key("free from"), self.problems));
        Some(Delivery { charge: charge?, free_from })
    }

    fn items(
        &mut self,
        written: Option<Vec<ItemForm>>,
        terms: &Terms,
        vocabulary: &Vocabulary,
    ) -> Vec<Item> {
        let Some(forms) = written.filter(|forms| !forms.is_empty()) else {
            self.missing("items", "list what is sold");
            return Vec::new();
        };
        let list = self.top.key("items");
        if forms.len() > MOST_ITEMS {
            let what = format!("{} items are too many", forms.len());
            self.problems.add_at_key(
                Problem::new(list.place(), what)
                    .expected(format!("at most {MOST_ITEMS} in a catalogue"))
                    .mend("split it into several catalogues"),
            );
            return Vec::new();
        }
        let numbers = Numbers::of(&forms, vocabulary, &list, self.problems);
        let mut items = Vec::with_capacity(forms.len());
        for (index, form) in forms.into_iter().enumerate() {
            if self.problems.is_full() {
                break;
            }
            let mut reader = GoodsReader {
                vocabulary,
                unsaid: &terms.unsaid,
                numbers: &numbers,
                problems: self.problems,
            };
            let spot = list.entry(index);
            let (gives, form) = reader.gives(form, &spot);
            items.extend(self.item(form, gives, terms, &spot));
        }
        items
    }

    /// An item, of which it is known already what it gives.
    fn item(
        &mut self,
        form: ItemForm,
        gives: Option<Gives>,
        terms: &Terms,
        spot: &Spot<'_>,
    ) -> Option<Item> {
        let number = kept(form.number);
        if number.is_none() {
            let mend = "write the number under which it is ordered, like `TS-110`";
            missing(spot, "number", self.problems, mend);
        }
        let description = kept(form.description);
        if description.is_none() {
            missing(spot, "description", self.problems, "write what it is, in a few words");
        }
        let price = self.price(form.price.as_deref(), terms.currency, spot);
        let pack = self.number(form.pack.as_deref(), "pack", 1, MOST_PACKS, spot);
        let least = self.number(form.least.as_deref(), "least order", 1, MOST_PACKS, spot);
        let stock = self.number(form.stock.as_deref(), "stock", 0, LARGEST_STOCK, spot);
        let lead = self.lead(form.lead.as_deref(), terms, spot);
        let holds = form.price_holds.as_deref();
        let holds = day(holds, &spot.key("price holds until"), self.problems).or(terms.holds);
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

    fn number(
        &mut self,
        text: Option<&str>,
        key: &str,
        least: u32,
        most: u32,
        spot: &Spot<'_>,
    ) -> Option<u32> {
        count(filled(text)?, least, most, &spot.key(key), self.problems)
    }

    fn price(
        &mut self,
        text: Option<&str>,
        currency: Option<Currency>,
        spot: &Spot<'_>,
    ) -> Option<Money> {
        let Some(text) = filled(text) else {
            missing(spot, "price", self.problems, "write the price of a pack, before tax");
            return None;
        };
        let spot = spot.key("price");
        let price = amount(text, currency, &spot, self.problems)?;
        if price == Money::ZERO {
            self.problems.add(
                Problem::new(spot.place(), "a price of nothing")
                    .offending(text)
                    .expected("the price of a pack, above zero"),
            );
            return None;
        }
        Some(price)
    }

    fn lead(&mut self, text: Option<&str>, terms: &Terms, spot: &Spot<'_>) -> Option<u32> {
        if filled(text).is_some() {
            return lead(text, &spot.key("lead"), self.problems);
        }
        if !terms.lead_written {
            let mend = "write how long it takes to come, like `3 days`, here or once at the top";
            missing(spot, "lead", self.problems, mend);
        }
        terms.lead
    }
}
