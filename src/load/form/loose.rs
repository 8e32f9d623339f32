//! Values that may be written in a short and in a longer form: plain text,
//! a group of lines, or a list of either.
//!
//! One visitor, written by hand, reads them all: serde's untagged enums lose
//! the place of a mistake inside them.

use schemars::{JsonSchema, Schema, SchemaGenerator, json_schema};
use serde::de::value::{MapAccessDeserializer, SeqAccessDeserializer};
use serde::de::{Deserialize, Deserializer, Error, MapAccess, SeqAccess, Visitor};
use serde_json::{Value, json};
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
pub(crate) enum OneOrMore<T> {
    /// Just one.
    One(T),
    /// A list of them.
    Many(Vec<T>),
}

/// One value in a short or a longer form, or a list of them.
pub(crate) type Loose<T> = OneOrMore<Single<T>>;

/// One text, or a list of texts.
pub(crate) type Words = OneOrMore<String>;

/// A list of texts, in the order written. An entry without a text is refused:
/// it would read as the word `null`.
#[derive(Debug, Clone, Default)]
pub(crate) struct Texts(pub(crate) Vec<String>);

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

impl<'t, T> From<&'t OneOrMore<T>> for OneOrMore<&'t T> {
    fn from(written: &'t OneOrMore<T>) -> Self {
        match written {
            OneOrMore::One(one) => Self::One(one),
            OneOrMore::Many(many) => Self::Many(many.iter().collect()),
        }
    }
}

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

/// What can be made of plain text, of a group of lines or of a list; what
/// cannot is refused.
pub(crate) trait Shaped<'de>: Sized {
    /// Reads one.
    fn read<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        from.deserialize_any(ShapeVisitor(PhantomData))
    }

    /// Of plain text.
    fn plain<E: Error>(_: String) -> Result<Self, E> {
        Err(E::custom("no plain text here"))
    }

    /// Of a group of lines.
    fn group<A: MapAccess<'de>>(_: A) -> Result<Self, A::Error> {
        Err(A::Error::custom("no group of lines here"))
    }

    /// Of a list.
    fn list<A: SeqAccess<'de>>(_: A) -> Result<Self, A::Error> {
        Err(A::Error::custom("no list here"))
    }
}

struct ShapeVisitor<T>(PhantomData<T>);

impl<'de, T: Shaped<'de>> Visitor<'de> for ShapeVisitor<T> {
    type Value = T;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("plain text, a group of lines or a list")
    }

    fn visit_str<E: Error>(self, text: &str) -> Result<T, E> {
        T::plain(text.to_owned())
    }

    fn visit_map<A: MapAccess<'de>>(self, map: A) -> Result<T, A::Error> {
        T::group(map)
    }

    fn visit_seq<A: SeqAccess<'de>>(self, list: A) -> Result<T, A::Error> {
        T::list(list)
    }
}

impl<'de, T: Deserialize<'de>> Shaped<'de> for Single<T> {
    fn plain<E: Error>(text: String) -> Result<Self, E> {
        Ok(Self::Plain(text))
    }

    fn group<A: MapAccess<'de>>(map: A) -> Result<Self, A::Error> {
        T::deserialize(MapAccessDeserializer::new(map)).map(Box::new).map(Self::Form)
    }
}

/// The text of an entry.
struct Entry(String);

impl<'de> Shaped<'de> for Entry {
    fn plain<E: Error>(text: String) -> Result<Self, E> {
        Ok(Self(text))
    }
}

impl<'de> Shaped<'de> for Texts {
    fn list<A: SeqAccess<'de>>(list: A) -> Result<Self, A::Error> {
        let entries = Vec::<Entry>::deserialize(SeqAccessDeserializer::new(list))?;
        Ok(Self(entries.into_iter().map(|Entry(text)| text).collect()))
    }
}

impl<'de> Shaped<'de> for Words {
    fn plain<E: Error>(text: String) -> Result<Self, E> {
        Ok(Self::One(text))
    }

    fn list<A: SeqAccess<'de>>(list: A) -> Result<Self, A::Error> {
        Texts::list(list).map(|texts| Self::Many(texts.0))
    }
}

impl<'de, T: Deserialize<'de>> Shaped<'de> for Loose<T> {
    fn plain<E: Error>(text: String) -> Result<Self, E> {
        Ok(Self::One(Single::Plain(text)))
    }

    fn group<A: MapAccess<'de>>(map: A) -> Result<Self, A::Error> {
        Single::group(map).map(Self::One)
    }

    fn list<A: SeqAccess<'de>>(list: A) -> Result<Self, A::Error> {
        Vec::deserialize(SeqAccessDeserializer::new(list)).map(Self::Many)
    }
}

impl<'de, T: Deserialize<'de>> Shaped<'de> for Slot<T> {
    fn plain<E: Error>(text: String) -> Result<Self, E> {
        if text == DROPPED { Ok(Self::Dropped) } else { Err(E::custom("no plain text here")) }
    }

    fn group<A: MapAccess<'de>>(map: A) -> Result<Self, A::Error> {
        T::deserialize(MapAccessDeserializer::new(map)).map(Self::Is)
    }

    fn list<A: SeqAccess<'de>>(list: A) -> Result<Self, A::Error> {
        T::deserialize(SeqAccessDeserializer::new(list)).map(Self::Is)
    }
}

/// Implements `Deserialize` through [`Shaped`].
macro_rules! shaped {
    ($(<$t:ident: $bound:ident> $type:ty;)* $(== $plain:ty;)*) => {
        $(impl<'de, $t: $bound<'de>> Deserialize<'de> for $type {
            fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
                Self::read(from)
            }
        })*
        $(impl<'de> Deserialize<'de> for $plain {
            fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
                Self::read(from)
            }
        })*
    };
}

shaped! { <T: Deserialize> Single<T>; <T: Deserialize> Slot<T>; == Entry; == Texts; }

impl<'de, T> Deserialize<'de> for OneOrMore<T>
where
    Self: Shaped<'de>,
{
    fn deserialize<D: Deserializer<'de>>(from: D) -> Result<Self, D::Error> {
        Self::read(from)
    }
}

/// Implements the schema of a value that stands where it is used.
macro_rules! inline_schema {
    ($type:ty, $name:literal, |$generator:ident| $schema:expr) => {
        impl<T: JsonSchema> JsonSchema for $type {
            fn inline_schema() -> bool {
                true
            }

            fn schema_name() -> Cow<'static, str> {
                format!(concat!("{} ", $name), T::schema_name()).into()
            }

            fn json_schema($generator: &mut SchemaGenerator) -> Schema {
                $schema
            }
        }
    };
}

inline_schema!(Single<T>, "or text", |generator| {
    json_schema!({ "anyOf": [{ "type": "string" }, generator.subschema_for::<T>()] })
});

inline_schema!(Slot<T>, "or dropped", |generator| {
    json_schema!({ "anyOf": [{ "const": DROPPED }, generator.subschema_for::<T>()] })
});

inline_schema!(OneOrMore<T>, "or a list", |generator| {
    let one = generator.subschema_for::<T>();
    let list = json!({ "type": "array", "items": one });
    let mut ways = match one.get("anyOf") {
        Some(Value::Array(ways)) => ways.clone(),
        _ => vec![one.to_value()],
    };
    ways.push(list);
    json_schema!({ "anyOf": ways })
});

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
