//! The lines under `with:` and under `when:`: fixed keys, open ones, and
//! nested groups.

use crate::load::form::open::refuse_duplicate;
use crate::load::read::limits::MOST_LINES;
use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde::de::{Deserialize, Deserializer, MapAccess, Visitor};
use std::borrow::Cow;
use std::fmt;
use std::marker::PhantomData;

/// Which keys of a group are fixed.
pub(crate) trait GroupKeys {
    /// The name of such a group in the schema.
    const NAME: &'static str;
    /// What the open keys are.
    const OPEN: &'static str;
    /// Keys with a text, and what they say.
    const FIXED: &'static [(&'static str, &'static str)];
    /// Keys with a list of groups, and what they say.
    const NESTED: &'static [(&'static str, &'static str)];
}

/// The keys under `with:`; the open ones are attributes of the vocabulary.
#[derive(Debug, Clone, Copy)]
pub(crate) struct With;

impl GroupKeys for With {
    const NAME: &'static str = "With";
    const OPEN: &'static str = "an attribute of the vocabulary, and what is asked of it";
    const FIXED: &'static [(&'static str, &'static str)] =
        &[("acquired", "old gear tolerated, like `before 2019-06-01`")];
    const NESTED: &'static [(&'static str, &'static str)] = &[
        ("any of", "at least one of these groups must hold in full"),
        ("read as", "rival readings of the rule's wording"),
    ];
}

/// The keys under `when:` and `unless:`; the open ones are features of the
/// vessel.
#[derive(Debug, Clone, Copy)]
pub(crate) struct When;

impl GroupKeys for When {
    const NAME: &'static str = "When";
    const OPEN: &'static str = "a feature of the vessel, yes or no";
    const FIXED: &'static [(&'static str, &'static str)] = &[
        ("freeboard", "a threshold, like `more than 4 ft` or `4 ft or less`"),
        ("aboard", "a kind of which something serviceable is aboard"),
        ("not aboard", "a kind of which nothing serviceable is aboard"),
        ("gear", "gear that the vessel carries"),
        ("area", "an area that the trip goes to"),
        ("area other than", "the trip goes to a listed area that is not this one"),
        ("permit", "a permit that the vessel holds"),
        ("months", "months of the year, like `January to June`"),
    ];
    const NESTED: &'static [(&'static str, &'static str)] =
        &[("any of", "at least one of these groups must hold in full")];
}

/// A group of lines, in the order written.
#[derive(Debug, Clone)]
pub(crate) struct Group<K> {
    /// The lines.
    pub(crate) lines: Vec<(String, Line<K>)>,
    keys: PhantomData<K>,
}

/// What stands after a key of a group.
#[derive(Debug, Clone)]
pub(crate) enum Line<K> {
    /// Nothing.
    Empty,
    /// A phrase.
    Text(String),
    /// A list of groups.
    Groups(Vec<Group<K>>),
}

impl<K> Default for Group<K> {
    fn default() -> Self {
        Self { lines: Vec::new(), keys: PhantomData }
    }
}

struct GroupVisitor<K>(PhantomData<K>);

impl<'de, K: GroupKeys> Visitor<'de> for GroupVisitor<K> {
    type Value = Group<K>;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a group of lines")
    }

    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Self::Value, A::Error> {
        let mut lines = Vec::new();
        while let Some(key) = map.next_key::<String>()? {
            refuse_duplicate(&lines, &key)?;
            let line = if K::NESTED.iter().any(|(nested, _)| *nested == key) {
                map.next_value::<Option<Vec<Group<K>>>>()?.map_or(Line::Empty, Line::Groups)
            } else {
                map.next_value::<Option<String>>()?.map_or(Line::Empty, Line::Text)
            };
            lines.push((key, line));
        }
        Ok(Group { lines, keys: PhantomData })
    }
}

impl<'de, K: GroupKeys> Deserialize<'de> for Group<K> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_map(GroupVisitor(PhantomData))
    }
}

impl<K: GroupKeys> JsonSchema for Group<K> {
    fn schema_name() -> Cow<'static, str> {
        K::NAME.into()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        let mut properties = serde_json::Map::new();
        for (key, says) in K::FIXED {
            let schema = json_schema!({ "type": "string", "description": says });
            properties.insert((*key).to_owned(), schema.into());
        }
        let nested = generator.subschema_for::<Vec<Self>>();
        for (key, says) in K::NESTED {
            let mut schema = nested.clone();
            schema.insert("description".to_owned(), (*says).into());
            properties.insert((*key).to_owned(), schema.into());
        }
        json_schema!({
            "type": "object",
            "properties": properties,
            "additionalProperties": { "type": "string", "description": K::OPEN },
            "maxProperties": MOST_LINES,
        })
    }
}
