//! `vocabulary.yaml` as it is written.
//!
//! Texts only; what they mean is judged in `check::vocabulary`.

use crate::load::form::loose::{Single, Texts, Words};
use crate::load::form::open::Open;
use crate::load::form::{LONGEST_NAME, flags, words};
use crate::load::read::fault::FileKind;
use crate::load::read::parse::WrittenFile;
use crate::measure::{LengthUnit, QuantityKind};
use crate::model::vocabulary::Class;
use schemars::JsonSchema;
use serde::Deserialize;
use std::collections::BTreeMap;
use validator::Validate;

/// How an attribute is told, before the words of a choice are known.
#[derive(Clone, Copy)]
pub(crate) enum Told {
    Quantity(QuantityKind),
    Feature,
    Choice,
    Name,
}

pub(crate) const TOLD: [(&str, Told); 8] = [
    ("length", Told::Quantity(QuantityKind::Length)),
    ("mass", Told::Quantity(QuantityKind::Mass)),
    ("angle", Told::Quantity(QuantityKind::Angle)),
    ("hook size", Told::Quantity(QuantityKind::HookSize)),
    ("count", Told::Quantity(QuantityKind::Count)),
    ("feature", Told::Feature),
    ("choice", Told::Choice),
    ("name", Told::Name),
];

pub(crate) const CLASSES: [(&str, Class); 5] = [
    ("tool", Class::Tool),
    ("spare", Class::Spare),
    ("document", Class::Document),
    ("gear", Class::Gear),
    ("certificate", Class::Certificate),
];

pub(crate) const UNITS: [(&str, LengthUnit); 2] =
    [("ft", LengthUnit::Feet), ("in", LengthUnit::Inches)];

/// The trade's words.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema, Validate)]
#[serde(deny_unknown_fields, default)]
#[schemars(title = "Vocabulary")]
pub(crate) struct VocabularyFile {
    /// `vocabulary/1`.
    #[validate(length(max = LONGEST_NAME))]
    pub(crate) format: Option<String>,
    /// What can be known of a tool, by key.
    #[schemars(extend("x-ids" = true, "x-filled" = true))]
    pub(crate) attributes: Option<Open<AttributeForm>>,
    /// Kinds of tool, document, gear and certificate, by key.
    #[schemars(extend("x-ids" = true))]
    pub(crate) kinds: Option<Open<KindForm>>,
    /// Permits by id.
    #[schemars(extend("x-ids" = true))]
    pub(crate) permits: Option<Open<Single<TagForm>>>,
    /// Fishing gear by id.
    #[schemars(extend("x-ids" = true))]
    pub(crate) gear: Option<Open<Single<TagForm>>>,
    /// Areas by id.
    #[schemars(extend("x-ids" = true))]
    pub(crate) areas: Option<Open<Single<TagForm>>>,
    /// Roles of people by id; owner, operator and crew if missing.
    #[schemars(extend("x-ids" = true))]
    pub(crate) roles: Option<Open<Single<TagForm>>>,
    /// Features of a vessel by id.
    #[serde(rename = "vessel features")]
    #[schemars(extend("x-ids" = true))]
    pub(crate) vessel_features: Option<Open<Single<FeatureForm>>>,
    /// Changes made to a tool, with the attributes whose readings each
    /// retires, or `all`.
    pub(crate) changes: Option<Open<Words>>,
}

/// Something that can be known of a tool.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
#[schemars(rename = "Attribute")]
pub(crate) struct AttributeForm {
    /// The name in print; the key if missing.
    pub(crate) name: Option<String>,
    /// `length`, `mass`, `angle`, `hook size`, `count`, `feature`, `choice`
    /// or `name`.
    #[schemars(extend("x-needed" = true, "x-words" = words(&TOLD)))]
    pub(crate) quantity: Option<String>,
    /// How it is measured, from where to where.
    pub(crate) measure: Option<String>,
    /// `yes` if the tool can be lengthened in it.
    #[schemars(extend("x-words" = flags()))]
    pub(crate) lengthens: Option<String>,
    /// The unit in which people say such a length, `ft` or `in`; if missing,
    /// feet where the tool can be lengthened in it.
    #[schemars(extend("x-words" = words(&UNITS)))]
    pub(crate) unit: Option<String>,
    /// The words of a choice.
    pub(crate) words: Option<Texts>,
    /// For a choice: words that leave others open, with those others.
    #[serde(rename = "may be")]
    pub(crate) may_be: Option<BTreeMap<String, Texts>>,
    /// For a choice: words, with other ways to write each.
    pub(crate) also: Option<BTreeMap<String, Texts>>,
    /// `no` if neither a tape nor an eye can show it on deck.
    #[schemars(extend("x-words" = flags()))]
    pub(crate) shown: Option<String>,
}

/// A kind of tool.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
#[schemars(rename = "Kind")]
pub(crate) struct KindForm {
    /// The name in print; the key if missing.
    pub(crate) name: Option<String>,
    /// Synonyms that the trade uses.
    pub(crate) also: Option<Texts>,
    /// `tool` (taken if missing), `spare`, `document`, `gear` or
    /// `certificate`.
    #[schemars(extend("x-words" = words(&CLASSES)))]
    pub(crate) class: Option<String>,
    /// The attributes that it has.
    pub(crate) attributes: Option<Texts>,
    /// The kinds of which it may be any, instead of `class` and `attributes`;
    /// no rule can then name it.
    #[serde(rename = "may be")]
    pub(crate) may_be: Option<Texts>,
    /// The unit in which people say all its lengths, `ft` or `in`; that of
    /// each attribute if missing.
    #[schemars(extend("x-words" = words(&UNITS)))]
    pub(crate) unit: Option<String>,
}

/// A feature of a vessel with other words for it.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
#[schemars(rename = "Feature")]
pub(crate) struct FeatureForm {
    /// The name in print.
    pub(crate) name: Option<String>,
    /// Other words for the same.
    pub(crate) also: Option<Texts>,
}

/// A tag with other words for it, or one that is wider or narrower than
/// others.
#[derive(Debug, Clone, Default, Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
#[schemars(rename = "Tag")]
pub(crate) struct TagForm {
    /// The name in print.
    pub(crate) name: Option<String>,
    /// Other words for the same.
    pub(crate) also: Option<Texts>,
    /// The wider tags.
    #[serde(rename = "counts as")]
    pub(crate) counts_as: Option<Texts>,
    /// The tags of which it may be any; no rule can then name it.
    #[serde(rename = "may be")]
    pub(crate) may_be: Option<Texts>,
}

impl WrittenFile for VocabularyFile {
    const KIND: FileKind = FileKind::Vocabulary;

    fn format(&self) -> &Option<String> {
        &self.format
    }
}
