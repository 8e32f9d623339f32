//! Groups of lines whose keys are not all fixed: ordered, without duplicates.
//!
//! Imports nothing of the model.

use crate::load::form::loose::{Loose, OneOrMore, Shaped};
use crate::load::form::words;
use crate::load::read::tree::MOST_LINES;
use crate::model::vessel::How;
use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde::de::value::{BorrowedStrDeserializer, MapAccessDeserializer, SeqAccessDeserializer};
use serde::de::{Deserialize, DeserializeSeed, Deserializer, Error, MapAccess, SeqAccess, Visitor};
use std::borrow::Cow;
use std::fmt;
use std::marker::PhantomData;
use validator::{Validate, ValidationErrors};

/// Refuses a key that the lines already have, and more lines than a group
/// may have.
fn refuse_duplicate<T, E: Error>(lines: &[(String, T)], key: &str) -> Result<(), E> {
    if lines.len() >= MOST_LINES {
        return Err(E::custom("too many lines"));
    }
    if lines.iter().any(|(known, _)| known == key) {
        return Err(E::custom("a key is written twice"));
    }
    Ok(())
}

/// What is made of a group of lines, and nothing else.
trait Grouped<'de>: Sized {
    fn of<A: MapAccess<'de>>(map: A) -> Result<Self, A::Error>;
}

struct GroupVisitor<T>(PhantomData<T>);

impl<'de, T: Grouped<'de>> Visitor<'de> for GroupVisitor<T> {
    type Value = T;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a group of lines")
    }

    fn visit_map<A: MapAccess<'de>>(self, map: A) -> Result<T, A::Error> {
        T::of(map)
    }
}

/// A group with keys of the author's own, in the order written. A key
/// without a value is `None`.
#[derive(Debug, Clone)]
pub(crate) struct Open<T>(pub(crate) Vec<(String, Option<T>)>);

impl<T> Default for Open<T> {
    fn default() -> Self {
        Self(Vec::new())
    }
}

impl<'de, T: Deserialize<'de>> Grouped<'de> for Open<T> {
    fn of<A: MapAccess<'de>>(mut map: A) -> Result<Self, A::Error> {
        let mut lines: Vec<(String, Option<T>)> = Vec::new();
        while let Some(key) = map.next_key::<String>()? {
            refuse_duplicate(&lines, &key)?;
            lines.push((key, map.next_value()?));
        }
        Ok(Self(lines))
    }
}

impl<'de, T: Deserialize<'de>> Deserialize<'de> for Open<T> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_map(GroupVisitor(PhantomData))
    }
}

impl<T: JsonSchema> JsonSchema for Open<T> {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> Cow<'static, str> {
        format!("group of {}", T::schema_name()).into()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        json_schema!({
            "type": "object",
            "additionalProperties": generator.subschema_for::<Option<T>>(),
            "maxProperties": MOST_LINES,
        })
    }
}

/// How a figure came about, in words.
pub(crate) const HOW: [(&str, How); 3] =
    [("measured", How::Measured), ("stated", How::Stated), ("label", How::Label)];

/// One reading of a figure, a feature or a word.
#[derive(Debug, Clone, Default, serde::Deserialize, JsonSchema)]
#[serde(deny_unknown_fields, default)]
#[schemars(rename = "Reading")]
pub(crate) struct ReadingForm {
    /// What it says.
    pub(crate) value: Option<String>,
    /// By whom.
    pub(crate) by: Option<String>,
    /// On which day.
    #[schemars(extend("x-day" = true))]
    pub(crate) on: Option<String>,
    /// `measured`, `stated` or `label`.
    #[schemars(extend("x-words" = words(&HOW)))]
    pub(crate) how: Option<String>,
    /// The tape's error.
    pub(crate) error: Option<String>,
}

/// Attributes as they are written: open keys, in order.
pub(crate) type WrittenAttributes = Vec<(String, Option<Loose<ReadingForm>>)>;

/// A form with fixed keys, and attributes of the vocabulary beside them.
#[derive(Debug, Clone)]
pub(crate) struct Attributed<F> {
    /// The fixed keys.
    pub(crate) form: F,
    /// The names of the fixed keys, written or not.
    pub(crate) keys: &'static [&'static str],
    /// The attributes.
    pub(crate) attributes: WrittenAttributes,
}

impl<F: Validate> Validate for Attributed<F> {
    fn validate(&self) -> Result<(), ValidationErrors> {
        self.form.validate()
    }
}

impl<F: JsonSchema> JsonSchema for Attributed<F> {
    fn schema_name() -> Cow<'static, str> {
        F::schema_name()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        let mut form = F::json_schema(generator);
        json_schema!({
            "description": form.remove("description"),
            "type": "object",
            "properties": form.remove("properties"),
            "additionalProperties": generator.subschema_for::<Option<Loose<ReadingForm>>>(),
        })
    }
}

impl<'de, F: Deserialize<'de>> Grouped<'de> for Attributed<F> {
    fn of<A: MapAccess<'de>>(map: A) -> Result<Self, A::Error> {
        let (mut keys, mut attributes): (&[&str], _) = (&[], Vec::new());
        let form = F::deserialize(Sorting { map, keys: &mut keys, attributes: &mut attributes })?;
        Ok(Self { form, keys, attributes })
    }
}

impl<'de, F: Deserialize<'de>> Deserialize<'de> for Attributed<F> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_map(GroupVisitor(PhantomData))
    }
}

/// Hands the fixed keys of a group to a form and keeps the others.
struct Sorting<'k, A> {
    map: A,
    keys: &'k mut &'static [&'static str],
    attributes: &'k mut WrittenAttributes,
}

impl<'de, A: MapAccess<'de>> Deserializer<'de> for Sorting<'_, A> {
    type Error = A::Error;

    fn deserialize_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, A::Error> {
        visitor.visit_map(self)
    }

    fn deserialize_struct<V: Visitor<'de>>(
        self,
        _: &'static str,
        keys: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, A::Error> {
        *self.keys = keys;
        visitor.visit_map(self)
    }

    serde::forward_to_deserialize_any! {
        bool i8 i16 i32 i64 i128 u8 u16 u32 u64 u128 f32 f64 char str string bytes byte_buf unit
        option seq map unit_struct newtype_struct tuple tuple_struct enum identifier ignored_any
    }
}

impl<'de, A: MapAccess<'de>> MapAccess<'de> for Sorting<'_, A> {
    type Error = A::Error;

    fn next_key_seed<K: DeserializeSeed<'de>>(
        &mut self,
        seed: K,
    ) -> Result<Option<K::Value>, A::Error> {
        loop {
            match self.map.next_key_seed(KnownKey(self.keys))? {
                None => return Ok(None),
                Some(Ok(known)) => {
                    return seed.deserialize(BorrowedStrDeserializer::new(known)).map(Some);
                }
                Some(Err(open)) => {
                    refuse_duplicate(self.attributes, &open)?;
                    self.attributes.push((open, self.map.next_value()?));
                }
            }
        }
    }

    fn next_value_seed<V: DeserializeSeed<'de>>(&mut self, seed: V) -> Result<V::Value, A::Error> {
        self.map.next_value_seed(seed)
    }
}

/// Reads a key: one of these, or another.
struct KnownKey(&'static [&'static str]);

impl<'de> DeserializeSeed<'de> for KnownKey {
    type Value = Result<&'static str, String>;

    fn deserialize<D: Deserializer<'de>>(self, from: D) -> Result<Self::Value, D::Error> {
        from.deserialize_str(self)
    }
}

impl Visitor<'_> for KnownKey {
    type Value = Result<&'static str, String>;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("a key")
    }

    fn visit_str<E: Error>(self, key: &str) -> Result<Self::Value, E> {
        let known = self.0.iter().find(|known| **known == key);
        Ok(known.copied().ok_or_else(|| key.to_owned()))
    }
}

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

impl<'de, K: GroupKeys> Grouped<'de> for Group<K> {
    fn of<A: MapAccess<'de>>(mut map: A) -> Result<Self, A::Error> {
        let mut lines = Vec::new();
        while let Some(key) = map.next_key::<String>()? {
            refuse_duplicate(&lines, &key)?;
            let line = if K::NESTED.iter().any(|(nested, _)| *nested == key) {
                map.next_value::<Option<Vec<Self>>>()?.map_or(Line::Empty, Line::Groups)
            } else {
                map.next_value::<Option<String>>()?.map_or(Line::Empty, Line::Text)
            };
            lines.push((key, line));
        }
        Ok(Self { lines, keys: PhantomData })
    }
}

impl<'de, K: GroupKeys> Deserialize<'de> for Group<K> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_map(GroupVisitor(PhantomData))
    }
}

impl<'de, K: GroupKeys> Shaped<'de> for OneOrMore<Group<K>> {
    fn group<A: MapAccess<'de>>(map: A) -> Result<Self, A::Error> {
        Group::deserialize(MapAccessDeserializer::new(map)).map(Self::One)
    }

    fn list<A: SeqAccess<'de>>(list: A) -> Result<Self, A::Error> {
        Vec::deserialize(SeqAccessDeserializer::new(list)).map(Self::Many)
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
