//! The trade's words: kinds of tool, what is measured on them, and tags.

use crate::measure::{LengthUnit, QuantityKind};
use std::borrow::Cow;
use std::collections::BTreeMap;

/// A kind of tool or document, as an index into the vocabulary.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct KindId(pub u16);

/// Something that can be known of a tool, as an index into the vocabulary.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct AttributeId(pub u16);

/// What sort of thing a kind is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Class {
    /// A tool, with a condition.
    Tool,
    /// A set of spares, which names the tool that it fits.
    Spare,
    /// A document or placard.
    Document,
    /// Fishing gear: hooks, lines.
    Gear,
    /// A certificate held by a person.
    Certificate,
}

impl Class {
    /// What can be carried aboard as a thing of its own: what a kit, a
    /// requirement's `carry` and an inspection record can name.
    pub const CARRIED: [Self; 3] = [Self::Tool, Self::Spare, Self::Document];
}

/// How an attribute is told.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum AttributeShape {
    /// By a quantity.
    Quantity(QuantityKind),
    /// By yes or no.
    Feature,
    /// By one word out of a list.
    Choice(Vec<String>),
    /// By any text, compared as written (a document's edition).
    Name,
}

/// Something that can be known of a tool.
#[derive(Debug, Clone)]
pub struct Attribute {
    /// The key in files, like `handle`.
    pub id: String,
    /// The name in print.
    pub name: String,
    /// How it is told.
    pub shape: AttributeShape,
    /// How it is measured, from where to where, in words.
    pub measure: Option<String>,
    /// Whether a tape or an eye can show it; what cannot be shown may be
    /// settled by a dated statement of conformity.
    pub shown: bool,
    /// For a choice: words that leave others open (`stainless` may be 316L).
    pub may_be: BTreeMap<String, Vec<String>>,
    /// For a choice: other ways to write a word, with the word.
    pub also: BTreeMap<String, String>,
    /// Whether the tool can be lengthened in this dimension.
    pub lengthens: bool,
    /// In which unit people say it, of a length.
    pub unit: LengthUnit,
}

impl Attribute {
    /// The word of a choice that a text is, in any case or by a synonym.
    pub fn word(&self, text: &str) -> Option<&String> {
        let AttributeShape::Choice(words) = &self.shape else { return None };
        let wanted = text.trim().to_lowercase();
        let known = words.iter().find(|word| word.to_lowercase() == wanted);
        known.or_else(|| self.also.get(&wanted))
    }
}

/// A kind of tool or document.
#[derive(Debug, Clone)]
pub struct Kind {
    /// The key in files, like `long-line-cutter`.
    pub id: String,
    /// The name in print.
    pub name: String,
    /// Other names that the trade uses; files may use them too.
    pub also: Vec<String>,
    /// What sort of thing it is.
    pub class: Class,
    /// What can be known of it.
    pub attributes: Vec<AttributeId>,
    /// In which unit people say all its lengths, where not each dimension in
    /// its own.
    pub unit: Option<LengthUnit>,
}

/// An everyday word that is wider than what rules name: by it a tool may be of
/// any of several kinds. No rule can name it.
#[derive(Debug, Clone)]
pub struct WideKind {
    /// The key in files, like `long-dehooker`.
    pub id: String,
    /// The name in print.
    pub name: String,
    /// Other names for the same.
    pub also: Vec<String>,
    /// The kinds of which it may be any; at least two.
    pub may_be: Vec<KindId>,
}

impl WideKind {
    /// Every name that files may use.
    pub fn names(&self) -> impl Iterator<Item = &String> {
        [&self.id, &self.name].into_iter().chain(&self.also)
    }
}

/// A tag for permits, gear or areas, or a role of a person.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Tag {
    /// The name in print.
    pub name: String,
    /// Other words for the same; files may use them too.
    pub also: Vec<String>,
    /// The wider tags that it also counts as.
    pub counts_as: Vec<String>,
    /// The tags of which it may be any: an everyday word that is wider than
    /// what rules name. No rule can name it.
    pub may_be: Vec<String>,
}

/// Tags of one sort, by id.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Tags(pub BTreeMap<String, Tag>);

impl std::ops::Deref for Tags {
    type Target = BTreeMap<String, Tag>;

    fn deref(&self) -> &Self::Target {
        &self.0
    }
}

impl Tags {
    /// The id of a tag by its id, its name or a synonym, in any case.
    pub fn find(&self, text: &str) -> Option<&str> {
        if let Some((id, _)) = self.get_key_value(text) {
            return Some(id);
        }
        let wanted = fold(text);
        let is = |tag: &Tag| {
            std::iter::once(&tag.name).chain(&tag.also).any(|name| fold(name) == wanted)
        };
        let found = self.iter().find(|(id, tag)| **id == wanted || is(tag));
        found.map(|(id, _)| id.as_str())
    }

    /// The tag, and every wider one that it counts as.
    pub fn with_wider<'a>(&'a self, id: &'a str) -> Vec<&'a str> {
        let mut tags = vec![id];
        let mut next = 0;
        while let Some(id) = tags.get(next) {
            for wider in self.get(*id).iter().flat_map(|tag| &tag.counts_as) {
                if !tags.contains(&wider.as_str()) {
                    tags.push(wider);
                }
            }
            next += 1;
        }
        tags
    }

    /// Whether a word is meant; none where it may be, since nobody knows it or
    /// it may be several of which some are meant.
    pub fn means(&self, word: &str, is_meant: &dyn Fn(&str) -> bool) -> Option<bool> {
        let tag = self.get(word)?;
        if tag.may_be.is_empty() {
            return Some(is_meant(word));
        }
        let meant = |one: &String| self.with_wider(one).into_iter().any(is_meant);
        let (some, all) = (tag.may_be.iter().any(meant), tag.may_be.iter().all(meant));
        (some == all).then_some(all)
    }
}

/// All the words.
#[derive(Debug, Clone, Default)]
pub struct Vocabulary {
    /// Attributes, by index.
    pub attributes: Vec<Attribute>,
    /// Kinds, by index.
    pub kinds: Vec<Kind>,
    /// Words that may be several kinds.
    pub wide_kinds: Vec<WideKind>,
    /// Kinds by id, name and synonym, in lower case.
    pub kind_names: BTreeMap<String, KindId>,
    /// Words that may be several kinds, by index, under the same names.
    pub wide_names: BTreeMap<String, usize>,
    /// Attributes by id.
    pub attribute_names: BTreeMap<String, AttributeId>,
    /// Permits by id.
    pub permits: Tags,
    /// Gear by id.
    pub gears: Tags,
    /// Areas by id.
    pub areas: Tags,
    /// Roles of people by id.
    pub roles: Tags,
    /// Features of a vessel by id.
    pub vessel_features: Tags,
    /// Changes made to a tool, with the attributes whose earlier readings
    /// each retires; `None` retires all.
    pub changes: BTreeMap<String, Option<Vec<AttributeId>>>,
}

impl Vocabulary {
    /// The kind with that index.
    pub fn kind(&self, id: KindId) -> &Kind {
        &self.kinds[usize::from(id.0)]
    }

    /// The attribute with that index.
    pub fn attribute(&self, id: AttributeId) -> &Attribute {
        &self.attributes[usize::from(id.0)]
    }

    /// In which unit people say the length of a thing of that kind.
    pub fn unit(&self, kind: Option<KindId>, attribute: AttributeId) -> LengthUnit {
        let whole = kind.and_then(|kind| self.kind(kind).unit);
        whole.unwrap_or(self.attribute(attribute).unit)
    }

    /// The kind of that id, name or synonym, in any case, with spaces or
    /// hyphens, in the singular or with a plural `s`.
    pub fn find_kind(&self, name: &str) -> Option<KindId> {
        found(&self.kind_names, name).copied()
    }

    /// The word of that id, name or synonym that may be several kinds, in the
    /// same spellings.
    pub fn find_wide_kind(&self, name: &str) -> Option<&WideKind> {
        found(&self.wide_names, name).map(|index| &self.wide_kinds[*index])
    }

    /// The attribute of that id, with spaces or hyphens.
    pub fn find_attribute(&self, id: &str) -> Option<AttributeId> {
        self.attribute_names.get(id).or_else(|| self.attribute_names.get(&fold(id))).copied()
    }
}

/// What stands under the name, or its singular.
fn found<'a, T>(names: &'a BTreeMap<String, T>, name: &str) -> Option<&'a T> {
    let key = fold(name);
    names.get(&key).or_else(|| names.get(key.strip_suffix('s')?))
}

/// A name in the form in which the vocabulary is searched: lower case, words
/// joined by hyphens.
pub fn fold(name: &str) -> String {
    let lower = if name.is_ascii() { Cow::from(name) } else { name.to_lowercase().into() };
    let mut folded = String::with_capacity(lower.len());
    for word in lower.split_whitespace() {
        if !folded.is_empty() {
            folded.push('-');
        }
        folded.extend(word.chars().map(|c| if c == '_' { '-' } else { c.to_ascii_lowercase() }));
    }
    folded
}

#[cfg(test)]
mod tests {
    use super::fold;

    #[test]
    fn a_name_is_folded_whatever_its_case_and_spaces() {
        for name in ["Dip Net", " dip_net", "DIP\u{a0}net\t", "dip-net"] {
            assert_eq!(fold(name), "dip-net", "{name:?}");
        }
        assert_eq!(fold("Éperlan Σ_"), "éperlan-σ-");
        assert_eq!(fold("  "), "");
    }
}
