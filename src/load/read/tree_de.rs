//! Feeds a marked tree to serde, so that what is left of a faulty file can
//! still be checked. Every scalar is given as the text it was written as.

use crate::load::read::tree::{Content, Node, Pair};
use serde::de::value::BorrowedStrDeserializer;
use serde::de::{
    DeserializeSeed, Deserializer, Error, IntoDeserializer, MapAccess, SeqAccess, Visitor,
};
use serde::forward_to_deserialize_any;

/// A tree that does not fit the type after all.
#[derive(Debug)]
pub(crate) struct Misfit(String);

impl std::fmt::Display for Misfit {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&self.0)
    }
}

impl std::error::Error for Misfit {}

impl Error for Misfit {
    fn custom<T: std::fmt::Display>(message: T) -> Self {
        Self(message.to_string())
    }
}

impl<'de> Deserializer<'de> for &'de Node<'de> {
    type Error = Misfit;

    fn deserialize_any<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Misfit> {
        match &self.content {
            Content::Text { .. } if self.is_null() => visitor.visit_unit(),
            Content::Text { text, .. } => visitor.visit_borrowed_str(text),
            Content::List(entries) => visitor.visit_seq(Entries(entries.iter())),
            Content::Map(pairs) => visitor.visit_map(Pairs { pairs: pairs.iter(), value: None }),
            // What may be a text or a group is an empty text, so that the rest
            // of the file can be read on.
            Content::Pruned => visitor.visit_borrowed_str(""),
        }
    }

    fn deserialize_option<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Misfit> {
        if self.is_null() { visitor.visit_none() } else { visitor.visit_some(self) }
    }

    fn deserialize_str<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Misfit> {
        match &self.content {
            Content::Text { text, .. } => visitor.visit_borrowed_str(text),
            Content::Pruned => visitor.visit_borrowed_str(""),
            _ => self.deserialize_any(visitor),
        }
    }

    fn deserialize_string<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Misfit> {
        self.deserialize_str(visitor)
    }

    fn deserialize_map<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Misfit> {
        match &self.content {
            Content::Pruned => visitor.visit_map(Pairs { pairs: [].iter(), value: None }),
            _ => self.deserialize_any(visitor),
        }
    }

    fn deserialize_struct<V: Visitor<'de>>(
        self,
        _: &'static str,
        _: &'static [&'static str],
        visitor: V,
    ) -> Result<V::Value, Misfit> {
        // A list is no group of keys, though a visitor would take its entries
        // for the fields in their order.
        match &self.content {
            Content::List(_) => Err(Misfit("a list where keys are expected".to_owned())),
            _ => self.deserialize_map(visitor),
        }
    }

    fn deserialize_seq<V: Visitor<'de>>(self, visitor: V) -> Result<V::Value, Misfit> {
        match &self.content {
            Content::Pruned => visitor.visit_seq(Entries([].iter())),
            _ => self.deserialize_any(visitor),
        }
    }

    forward_to_deserialize_any! {
        bool i8 i16 i32 i64 i128 u8 u16 u32 u64 u128 f32 f64 char bytes byte_buf unit
        unit_struct newtype_struct tuple tuple_struct enum identifier ignored_any
    }
}

struct Entries<'de>(std::slice::Iter<'de, Node<'de>>);

impl<'de> SeqAccess<'de> for Entries<'de> {
    type Error = Misfit;

    fn next_element_seed<T: DeserializeSeed<'de>>(
        &mut self,
        seed: T,
    ) -> Result<Option<T::Value>, Misfit> {
        self.0.next().map(|node| seed.deserialize(node)).transpose()
    }
}

struct Pairs<'de> {
    pairs: std::slice::Iter<'de, Pair<'de>>,
    value: Option<&'de Node<'de>>,
}

impl<'de> MapAccess<'de> for Pairs<'de> {
    type Error = Misfit;

    fn next_key_seed<K: DeserializeSeed<'de>>(
        &mut self,
        seed: K,
    ) -> Result<Option<K::Value>, Misfit> {
        let Some(pair) = self.pairs.next() else { return Ok(None) };
        self.value = Some(&pair.value);
        let key: BorrowedStrDeserializer<'de, Misfit> = BorrowedStrDeserializer::new(&pair.key);
        seed.deserialize(key.into_deserializer()).map(Some)
    }

    fn next_value_seed<V: DeserializeSeed<'de>>(&mut self, seed: V) -> Result<V::Value, Misfit> {
        match self.value.take() {
            Some(node) => seed.deserialize(node),
            None => Err(Misfit::custom("a value without its key")),
        }
    }
}
