//! A gear supplier's catalogue as it is written.
//!
//! Texts only; what they mean is judged in `check::catalogue` and
//! `check::goods`.

use crate::load::form::loose::{Single, Texts};
use crate::load::form::open::Attributed;
use crate::load::form::vessel::LARGEST_LOT;
use crate::load::form::{LONGEST_NAME, flags, just_one, lead_somewhere, words};
use crate::load::read::fault::FileKind;
use crate::load::read::parse::WrittenFile;
use crate::load::read::tree::LONGEST_REMARK;
use schemars::JsonSchema;
use serde::Deserialize;
use validator::Validate;

/// The most items that a catalogue may list.
pub const MOST_ITEMS: usize = 2000;

/// The most pieces in a pack, and the most packs of a least order.
pub(crate) const MOST_PACKS: u32 = 10_000;

/// The most packs in stock that are told apart from no end of them.
pub(crate) const LARGEST_STOCK: u32 = 1_000_000;

/// The most tools of a set: each has a letter of its own.
pub(crate) const MOST_OF_A_SET: usize = 26;

/// The keys of which an item has exactly one.
pub(crate) const GIVING: &[&str] = &["tool", "tools", "lengthens", "service"];

/// The most pieces that lengthen one tool.
pub(crate) const MOST_PER_TOOL: u32 = 10;

/// What a service does, in words, and whether it is the inspection that is
/// due; the others make a tool work.
pub(crate) const DOES: [(&str, bool); 3] =
    [("inspection", true), ("repair", false), ("sharpening", false)];

/// The longest number of an item, in characters; a line of an order has room
/// for it.
const LONGEST_NUMBER: u64 = 40;

/// A gear supplier's catalogue.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema, Validate)]
#[serde(deny_unknown_fields, default)]
#[schemars(title = "Catalogue")]
#[schemars(extend("x-also" = lead_somewhere()))]
pub(crate) struct CatalogueFile {
    /// `catalogue/1`.
    #[validate(length(max = LONGEST_NAME))]
    pub(crate) format: Option<String>,
    /// The supplier's name.
    #[validate(length(max = LONGEST_NAME))]
    #[schemars(extend("x-needed" = true))]
    pub(crate) supplier: Option<String>,
    /// The supplier's port.
    #[validate(length(max = LONGEST_NAME))]
    pub(crate) port: Option<String>,
    /// The currency of every amount, by its code of ISO 4217.
    #[schemars(extend("x-needed" = true))]
    pub(crate) currency: Option<String>,
    /// The tax on goods and delivery, like `7.25%`.
    #[schemars(extend("x-needed" = true))]
    pub(crate) tax: Option<String>,
    /// What delivery costs, once an order.
    #[schemars(extend("x-needed" = true))]
    pub(crate) delivery: Option<Single<DeliveryForm>>,
    /// The last day on which prices hold, for items that do not say.
    #[serde(rename = "prices hold until")]
    #[schemars(extend("x-day" = true))]
    pub(crate) prices_hold: Option<String>,
    /// From the order to the delivery, for items that do not say.
    pub(crate) lead: Option<String>,
    /// Terms, in words.
    #[validate(length(max = LONGEST_REMARK))]
    pub(crate) terms: Option<String>,
    /// What is sold.
    #[validate(nested)]
    #[schemars(extend("x-needed" = true, "x-listed" = [1, MOST_ITEMS]))]
    pub(crate) items: Option<Vec<ItemForm>>,
}

/// What delivery costs, once an order.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
#[schemars(rename = "Delivery")]
pub(crate) struct DeliveryForm {
    /// The charge, before tax.
    #[schemars(extend("x-needed" = true))]
    pub(crate) charge: Option<String>,
    /// The sum of goods, before tax, from which it is free.
    #[serde(rename = "free from")]
    pub(crate) free_from: Option<String>,
}

/// Something that can be bought.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema, Validate)]
#[serde(deny_unknown_fields, default)]
#[schemars(rename = "Sold")]
#[schemars(extend("x-also" = just_one(GIVING)))]
pub(crate) struct ItemForm {
    /// The number under which it is ordered.
    #[validate(length(max = LONGEST_NUMBER))]
    #[schemars(extend("x-needed" = true))]
    pub(crate) number: Option<String>,
    /// What it is, in words.
    #[validate(length(max = LONGEST_NAME))]
    #[schemars(extend("x-needed" = true))]
    pub(crate) description: Option<String>,
    /// The tool that one piece is.
    #[validate(nested)]
    pub(crate) tool: Option<Attributed<GoodsForm>>,
    /// The tools of a set.
    #[validate(nested)]
    #[schemars(extend("x-listed" = [1, MOST_OF_A_SET]))]
    pub(crate) tools: Option<Vec<Attributed<GoodsForm>>>,
    /// What a piece that lengthens a tool lengthens.
    pub(crate) lengthens: Option<LengthensForm>,
    /// Work on a tool.
    pub(crate) service: Option<ServiceForm>,
    /// The price of a pack, before tax.
    #[schemars(extend("x-needed" = true))]
    pub(crate) price: Option<String>,
    /// How many pieces a pack holds.
    #[schemars(extend("x-whole" = [1, MOST_PACKS]))]
    pub(crate) pack: Option<String>,
    /// The fewest packs that are sold at once.
    #[serde(rename = "least order")]
    #[schemars(extend("x-whole" = [1, MOST_PACKS]))]
    pub(crate) least: Option<String>,
    /// How many packs there are.
    #[schemars(extend("x-whole" = [0, LARGEST_STOCK]))]
    pub(crate) stock: Option<String>,
    /// From the order to the delivery, like `3 days`.
    pub(crate) lead: Option<String>,
    /// The last day on which the price holds.
    #[serde(rename = "price holds until")]
    #[schemars(extend("x-day" = true))]
    pub(crate) price_holds: Option<String>,
}

/// A tool or a document that is sold; the open keys are attributes of its
/// kind.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema, Validate)]
#[schemars(rename = "Goods")]
pub(crate) struct GoodsForm {
    /// The kind, by id, name or synonym of the vocabulary.
    #[validate(length(max = LONGEST_NAME))]
    #[schemars(extend("x-needed" = true))]
    pub(crate) kind: Option<String>,
    /// How many equal ones are in one piece.
    #[schemars(extend("x-whole" = [1, LARGEST_LOT]))]
    pub(crate) count: Option<String>,
    /// A name in words.
    #[validate(length(max = LONGEST_NAME))]
    pub(crate) name: Option<String>,
    /// Clauses to which the supplier declares that it conforms.
    pub(crate) conforms: Option<Texts>,
    /// Whether it is inspected when it is delivered.
    #[schemars(extend("x-words" = flags()))]
    pub(crate) inspected: Option<String>,
    /// How long it is good from its delivery on.
    pub(crate) lasts: Option<String>,
    /// For spares: numbers of items, or kinds, that they fit.
    pub(crate) fits: Option<Texts>,
}

/// What a piece lengthens, and by how much.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
#[schemars(rename = "Lengthens")]
pub(crate) struct LengthensForm {
    /// Tools of these kinds.
    #[schemars(extend("x-needed" = true))]
    pub(crate) kinds: Option<Texts>,
    /// By this length.
    #[schemars(extend("x-needed" = true))]
    pub(crate) by: Option<String>,
    /// How many may be put on one tool.
    #[serde(rename = "per tool")]
    #[schemars(extend("x-whole" = [1, MOST_PER_TOOL]))]
    pub(crate) per_tool: Option<String>,
}

/// Work on a tool.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
#[schemars(rename = "Service")]
pub(crate) struct ServiceForm {
    /// On tools of these kinds.
    #[schemars(extend("x-needed" = true))]
    pub(crate) kinds: Option<Texts>,
    /// `inspection`, `repair`, `sharpening`.
    #[schemars(extend("x-needed" = true, "x-words" = words(&DOES)))]
    pub(crate) does: Option<Texts>,
}

impl WrittenFile for CatalogueFile {
    const KIND: FileKind = FileKind::Catalogue;

    fn format(&self) -> &Option<String> {
        &self.format
    }
}
