//! The vocabulary: what a word means, and what is measured on what.

use super::yaml::{file, pairs, text, texts};
use serde_json::{Map, Value as Json, json};
use std::collections::{BTreeMap, BTreeSet};

/// The words of the trade.
pub(crate) struct Words {
    kinds: BTreeMap<String, String>,
    quantities: BTreeMap<String, String>,
    wider: BTreeMap<String, Vec<String>>,
    /// Every permit, gear and area that is known.
    pub(crate) tags: BTreeSet<String>,
    classes: BTreeMap<String, String>,
    /// The attributes of each kind.
    pub(crate) attributes: BTreeMap<String, Vec<String>>,
    /// The words of each attribute that is a choice.
    pub(crate) choices: BTreeMap<String, Vec<String>>,
    /// What the policy has to know of words.
    pub(crate) data: Json,
}

impl Words {
    /// Read from the vocabulary.
    pub(crate) fn read() -> Self {
        let file = file("vocabulary.yaml");
        let (mut kinds, mut classes, mut attributes) =
            (BTreeMap::new(), BTreeMap::new(), BTreeMap::new());
        // Words that may be several kinds or tags are not drawn.
        for (id, kind) in
            pairs(&file["kinds"]).into_iter().filter(|(_, k)| k.get("may be").is_none())
        {
            kinds.insert(id.to_lowercase(), id.clone());
            kinds.insert(text(&kind["name"]).to_lowercase(), id.clone());
            for word in kind.get("also").map(texts).unwrap_or_default() {
                kinds.insert(word.to_lowercase(), id.clone());
            }
            classes.insert(id.clone(), text(&kind["class"]));
            attributes.insert(id, texts(&kind["attributes"]));
        }
        let (mut quantities, mut choices, mut hidden, mut may_be) =
            (BTreeMap::new(), BTreeMap::new(), Vec::new(), Map::new());
        for (id, attribute) in pairs(&file["attributes"]) {
            quantities.insert(id.clone(), text(&attribute["quantity"]));
            if let Some(words) = attribute.get("words") {
                choices.insert(id.clone(), texts(words));
            }
            if attribute.get("shown").map(text).as_deref() == Some("no") {
                hidden.push(id.clone());
            }
            for (word, open) in attribute.get("may be").map(pairs).unwrap_or_default() {
                let open: Vec<_> = texts(&open).iter().map(|w| w.to_lowercase()).collect();
                may_be.insert(word.to_lowercase(), json!(open));
            }
        }
        let (mut wider, mut tags) = (BTreeMap::new(), BTreeSet::new());
        for section in ["permits", "gear", "areas"] {
            for (id, tag) in
                pairs(&file[section]).into_iter().filter(|(_, t)| t.get("may be").is_none())
            {
                tags.insert(id.clone());
                if let Some(ids) = tag.get("counts as") {
                    wider.insert(id, texts(ids));
                }
            }
        }
        let data = json!({ "hidden": hidden, "may_be": may_be, "tags": tags });
        Self { kinds, quantities, wider, tags, classes, attributes, choices, data }
    }

    /// The kind that an id, a name or a synonym means.
    pub(crate) fn kind(&self, word: &str) -> String {
        let known = self.kinds.get(&word.to_lowercase());
        known.unwrap_or_else(|| panic!("no kind: `{word}`")).clone()
    }

    /// `tool`, `spare`, `document`, `gear` or `certificate`.
    pub(crate) fn class(&self, kind: &str) -> &str {
        &self.classes[kind]
    }

    /// The quantity of an attribute.
    pub(crate) fn quantity(&self, attribute: &str) -> &str {
        let known = self.quantities.get(attribute);
        known.unwrap_or_else(|| panic!("no attribute: `{attribute}`"))
    }

    /// The tags with the wider ones that they count as.
    pub(crate) fn with_wider(&self, tags: &[String]) -> Vec<String> {
        let more = tags.iter().filter_map(|tag| self.wider.get(tag)).flatten();
        tags.iter().chain(more).cloned().collect()
    }
}
