//! Values that may be written in a short and in a longer form: plain text,
//! a group of lines, or a list of either.
//!
//! The visitors are written by hand: serde's untagged enums lose the place
//! of a mistake inside them.

use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde::de::value::{MapAccessDeserializer, SeqAccessDeserializer};
use serde::de::{Deserialize, Deserializer, Error, MapAccess, SeqAccess, Visitor};
use std::borrow::Cow;
use std::fmt;
use std::marker::PhantomData;

/// Plain text, or a group of lines.
#[derive(Debug, Clone)]
pub(crate) enum Single<T> {
    /// Plain text.
    Plain(String),
    /// The longer form.
    Form(Box<T>),
}

/// One of them, or a list.
#[derive(Debug, Clone)]
pub(crate) enum Loose<T> {
    /// Just one.
    One(Single<T>),
    /// A list of them.
    Many(Vec<Single<T>>),
}

/// A list of texts, in the order written. An entry without a text is refused:
/// it would read as the word `null`.
#[derive(Debug, Clone, Default)]
pub(crate) struct Texts(pub(crate) Vec<String>);

impl std::ops::Deref for Texts {
    type Target = [String];

    fn deref(&self) -> &Self::Target {
        &self.0
    }
}

impl IntoIterator for Texts {
    type Item = String;
    type IntoIter = std::vec::IntoIter<String>;

    fn into_iter(self) -> Self::IntoIter {
        self.0.into_iter()
    }
}

impl<'t> IntoIterator for &'t Texts {
    type Item = &'t String;
    type IntoIter = std::slice::Iter<'t, String>;

    fn into_iter(self) -> Self::IntoIter {
        self.0.iter()
    }
}

/// One text, or a list of texts.
#[derive(Debug, Clone)]
pub(crate) enum Words {
    /// Just one.
    One(String),
    /// A list of them.
    Many(Texts),
}

/// In a change of a requirement: a new value, or `dropped`.
#[derive(Debug, Clone)]
pub(crate) enum Slot<T> {
    /// The key goes.
    Dropped,
    /// The new value.
    Is(T),
}

/// The word that takes a line away in a change.
pub(crate) const DROPPED: &str = "dropped";

impl<T> Slot<T> {
    /// The value, if there is one.
    pub(crate) fn value(&self) -> Option<&T> {
        match self {
            Self::Is(value) => Some(value),
            Self::Dropped => None,
        }
    }
}

/// Implements the visits of plain scalars through `$plain(String)`. A number
/// with a point or an exponent has lost its wording by the time a visitor
/// sees it (`2.10` is `2.1`), so it is refused here and the file is read
/// again from the marked tree, which keeps the wording.
macro_rules! plain_visits {
    ($plain:expr) => {
        fn visit_str<E: Error>(self, text: &str) -> Result<Self::Value, E> {
            $plain(text.to_owned())
        }

        fn visit_string<E: Error>(self, text: String) -> Result<Self::Value, E> {
            $plain(text)
        }

        fn visit_bool<E: Error>(self, yes: bool) -> Result<Self::Value, E> {
            $plain(yes.to_string())
        }

        fn visit_u64<E: Error>(self, number: u64) -> Result<Self::Value, E> {
            $plain(number.to_string())
        }

        fn visit_i64<E: Error>(self, number: i64) -> Result<Self::Value, E> {
            $plain(number.to_string())
        }
    };
}

struct SingleVisitor<T>(PhantomData<T>);

impl<'de, T: Deserialize<'de>> Visitor<'de> for SingleVisitor<T> {
    type Value = Single<T>;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("plain text or a group of lines")
    }

    plain_visits!(|text| Ok(Single::Plain(text)));

    fn visit_map<A: MapAccess<'de>>(self, map: A) -> Result<Self::Value, A::Error> {
        T::deserialize(MapAccessDeserializer::new(map)).map(Box::new).map(Single::Form)
    }
}

impl<'de, T: Deserialize<'de>> Deserialize<'de> for Single<T> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(SingleVisitor(PhantomData))
    }
}

struct LooseVisitor<T>(PhantomData<T>);

impl<'de, T: Deserialize<'de>> Visitor<'de> for LooseVisitor<T> {
    type Value = Loose<T>;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("plain text, a group of lines or a list")
    }

    plain_visits!(|text| Ok(Loose::One(Single::Plain(text))));

    fn visit_map<A: MapAccess<'de>>(self, map: A) -> Result<Self::Value, A::Error> {
        SingleVisitor(PhantomData).visit_map(map).map(Loose::One)
    }

    fn visit_seq<A: SeqAccess<'de>>(self, list: A) -> Result<Self::Value, A::Error> {
        Vec::deserialize(SeqAccessDeserializer::new(list)).map(Loose::Many)
    }
}

impl<'de, T: Deserialize<'de>> Deserialize<'de> for Loose<T> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(LooseVisitor(PhantomData))
    }
}

/// An entry of a list of texts.
struct Entry(String);

struct EntryVisitor;

/// Only where no wording is lost; anything else is read again from the marked
/// tree, which has a text for each of them but nothing.
impl Visitor<'_> for EntryVisitor {
    type Value = Entry;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("plain text")
    }

    fn visit_str<E: Error>(self, text: &str) -> Result<Entry, E> {
        Ok(Entry(text.to_owned()))
    }

    fn visit_string<E: Error>(self, text: String) -> Result<Entry, E> {
        Ok(Entry(text))
    }

    fn visit_u64<E: Error>(self, number: u64) -> Result<Entry, E> {
        Ok(Entry(number.to_string()))
    }
}

impl<'de> Deserialize<'de> for Entry {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(EntryVisitor)
    }
}

impl<'de> Deserialize<'de> for Texts {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let entries = Vec::<Entry>::deserialize(deserializer)?;
        Ok(Self(entries.into_iter().map(|Entry(text)| text).collect()))
    }
}

struct WordsVisitor;

impl<'de> Visitor<'de> for WordsVisitor {
    type Value = Words;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("plain text or a list of texts")
    }

    plain_visits!(|text| Ok(Words::One(text)));

    fn visit_seq<A: SeqAccess<'de>>(self, list: A) -> Result<Self::Value, A::Error> {
        Texts::deserialize(SeqAccessDeserializer::new(list)).map(Words::Many)
    }
}

impl<'de> Deserialize<'de> for Words {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(WordsVisitor)
    }
}

struct SlotVisitor<T>(PhantomData<T>);

impl<'de, T: Deserialize<'de>> Visitor<'de> for SlotVisitor<T> {
    type Value = Slot<T>;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("`dropped`, a group of lines or a list")
    }

    fn visit_str<E: Error>(self, text: &str) -> Result<Self::Value, E> {
        if text == DROPPED { Ok(Slot::Dropped) } else { Err(E::custom("no plain text here")) }
    }

    fn visit_map<A: MapAccess<'de>>(self, map: A) -> Result<Self::Value, A::Error> {
        T::deserialize(MapAccessDeserializer::new(map)).map(Slot::Is)
    }

    fn visit_seq<A: SeqAccess<'de>>(self, list: A) -> Result<Self::Value, A::Error> {
        T::deserialize(SeqAccessDeserializer::new(list)).map(Slot::Is)
    }
}

impl<'de, T: Deserialize<'de>> Deserialize<'de> for Slot<T> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_any(SlotVisitor(PhantomData))
    }
}

impl<T: JsonSchema> JsonSchema for Single<T> {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> Cow<'static, str> {
        format!("{} or text", T::schema_name()).into()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        json_schema!({ "anyOf": [{ "type": "string" }, generator.subschema_for::<T>()] })
    }
}

impl<T: JsonSchema> JsonSchema for Loose<T> {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> Cow<'static, str> {
        format!("{} or text or a list", T::schema_name()).into()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        let form = generator.subschema_for::<T>();
        json_schema!({ "anyOf": [
            { "type": "string" },
            form,
            { "type": "array", "items": { "anyOf": [{ "type": "string" }, form] } },
        ] })
    }
}

impl JsonSchema for Texts {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> Cow<'static, str> {
        "texts".into()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        Vec::<String>::json_schema(generator)
    }
}

impl JsonSchema for Words {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> Cow<'static, str> {
        "text or texts".into()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        let texts = generator.subschema_for::<Texts>();
        json_schema!({ "anyOf": [{ "type": "string" }, texts] })
    }
}

impl<T: JsonSchema> JsonSchema for Slot<T> {
    fn inline_schema() -> bool {
        true
    }

    fn schema_name() -> Cow<'static, str> {
        format!("{} or dropped", T::schema_name()).into()
    }

    fn json_schema(generator: &mut SchemaGenerator) -> Schema {
        json_schema!({ "anyOf": [{ "const": DROPPED }, generator.subschema_for::<T>()] })
    }
}
